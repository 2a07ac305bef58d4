import { describe, expect, test, vi } from 'vitest';
import type { CutJob, CutPlan } from '../../../src/cutting/job';
import { judged } from '../../../src/cutting/judge/judged';
import { judgedOnward } from '../../../src/cutting/judge/onwardLaws';
import { planOnward } from '../../../src/cutting/onward/onward';
import type { OnwardJob } from '../../../src/cutting/onward/onwardJob';
import * as pairing from '../../../src/cutting/plan/pairing';
import { planCuts } from '../../../src/cutting/search';
import { PLANK_COUNT, PLANK_CUTS } from '../../../src/sheet/functions';
import { readJobFile } from '../../../src/workbook/jobFiles';
import { randomJob } from '../../support/randomJobs';
import { refusalOf } from '../../support/refusal';

// The pairing stands as it is until a test breaks it.
vi.mock('../../../src/cutting/plan/pairing', { spy: true });

const floor = randomJob('L', 3);

/** The first piece of the plan that shares a plank is a unit longer than it was. */
function overlong(plan: CutPlan): CutPlan {
  const rows = plan.rows.map((row, rowIndex) => ({
    runs: row.runs.map((run) =>
      run.map((piece, i) => (rowIndex + i === 0 ? { ...piece, length: 1 + piece.length } : piece)),
    ),
  }));
  return { ...plan, rows };
}

/** Every piece comes from the first plank. */
function breakThePairing(): void {
  vi.mocked(pairing.pairPieces).mockImplementationOnce((prepared, at) => {
    const { rows, plankCount } = pairing.pairPieces(prepared, at);
    const onOnePlank = rows.map((row) => ({
      runs: row.runs.map((run) => run.map((piece) => ({ ...piece, plank: 0 }))),
    }));
    return { rows: onOnePlank, plankCount };
  });
}

describe('the judge sits at the front door', () => {
  test('a plan that keeps the laws is handed on as it is', () => {
    const plan = planCuts(floor);
    expect(judged(floor, plan)).toBe(plan);
  });

  test('one that breaks a law is an internal mistake, told with the law and its numbers', () => {
    expect(() => judged(floor, overlong(planCuts(floor)))).toThrow(
      /^Internal: the plan breaks a law: row 1, run 1: pieces fill \d+ of \d+.*\. Please report it, with the job: \{"instances":\[/,
    );
  });

  test('a pairing that goes wrong is no plan, in whatever way it is asked for', () => {
    breakThePairing();
    expect(() => planCuts(floor)).toThrow(/^Internal: the plan breaks a law: plank 1: \d+ pieces keep its left end/);
    breakThePairing();
    expect(() => PLANK_COUNT([[12], [11]], 48)).toThrow(/^Internal: /);
    breakThePairing();
    expect(() => PLANK_CUTS(12, 10, 48, 7.5)).toThrow(/^Internal: /);
  });

  test('the job it is told with can be planned again from a file', () => {
    const job: CutJob = { ...floor, play: 4, ripPairs: [[0, floor.rows.length - 1]] };
    let said = '';
    try {
      judged(job, overlong(planCuts(floor)));
    } catch (error) {
      said = String(error);
    }
    const { jobs, problems } = readJobFile(said.slice(said.indexOf('{')));
    expect(problems).toEqual([]);
    expect(jobs.map((named) => named.job)).toEqual([job]);
  });

  test('so is the rest of a floor, with what lies and what is in hand', () => {
    const onward: OnwardJob = {
      job: { ...floor, play: 4, ripPairs: [] },
      before: [{ room: 0, joints: [700], joints2: [300] }],
      stock: [{ length: 500, ends: 'left' }],
      whole: 3,
    };
    const said = refusalOf(() => judgedOnward(onward, { ...planOnward(onward), short: -1 }));
    expect(said).toMatch(/^Internal: the plan of the rest breaks a law: /);
    const { jobs, problems } = readJobFile(said.slice(said.indexOf('{')));
    expect(problems).toEqual([]);
    expect(jobs.map((named) => named.onward)).toEqual([onward]);
  });
});
