/** Our plans beside those of HiGHS, a general solver (npm `highs`), on the exact model of the same jobs. */
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { CutJob, JobRow, JobRun } from '../../src/cutting/job';
import { checkCutPlan } from '../../src/cutting/plan/ledger';
import { planCuts } from '../../src/cutting/search';
import { readCases } from '../bench/caseFile';
import { planOfAnswer, type Solver, solveExactly } from '../support/exactAnswer';
import { outsideModel } from '../support/exactModel';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

let solver: Solver;
beforeAll(async () => {
  solver = await loadHighs();
});

/** Jobs that HiGHS proves in about a second or less; the bench gives the others their time. */
const QUICKLY_PROVED = 'a15 a39 a41 a49 a57 a59 b01 b02 b18 b19 b22 b24 b37 b40'.split(' ');

describe('Jobs of the carried file', () => {
  const cases = readCases('tests/bench/cases.json').filter(({ id }) => QUICKLY_PROVED.includes(id));

  const titled = cases.map((one) => [one.id, one.category, one.best, one] as const);

  test.each(titled)(
    '%s (%s) takes %i planks, with HiGHS and with us',
    (_id, _category, _planks, { job, lower, best }) => {
      // The bound handed over is the one proved elsewhere, not ours.
      const answer = solveExactly(solver, job, Infinity, lower);
      expect([answer.status, answer.planks]).toEqual(['proved fewest', best]);
      expect(checkCutPlan(job, planOfAnswer(solver, job, answer))).toEqual([]);
      const plan = planCuts(job);
      expect([plan.plankCount, plan.bound <= plan.plankCount]).toEqual([answer.planks, true]);
    },
  );
});

describe('Small random floors: HiGHS proves the fewest planks with no bound from anyone', () => {
  test.each<[string, number, (random: SeededRandom) => CutJob]>([
    ['one room', 25, (random) => smallJob(random, roomRows(random, 0, random.whole(2, 5)))],
    ['two rooms', 15, (random) => smallJob(random, [...roomRows(random, 0, 3), ...roomRows(random, 1, 2)])],
    ['a room ripped at both ends', 20, rippedJob],
  ])('%s', (_, count, draw) => {
    for (let seed = 1; seed <= count; seed++) expectEqualCounts(draw(seededRandom(seed * 101)));
  });
});

test.each<[string, Partial<CutJob>, readonly (readonly JobRun[])[]]>([
  [
    'a column between the ripped rows',
    { plankLength: 240, kerf: 2, minPiece: 31, minStagger: 18 },
    [
      [{ x: 25, length: 881 }],
      [
        { x: 78, length: 250 },
        { x: 355, length: 259 },
      ],
      [{ x: 87, length: 904 }],
    ],
  ],
  [
    'a closet beside the ripped last row',
    { plankLength: 100, kerf: 0, minPiece: 19, minStagger: 31 },
    [
      [{ x: 0, length: 109 }],
      [
        { x: 0, length: 109 },
        { x: 166, length: 89 },
      ],
      [
        { x: 0, length: 109 },
        { x: 207, length: 157 },
      ],
    ],
  ],
])('Strips where rows have several runs: %s', (_, rules, runs) => {
  const rows = runs.map((row, i) => ({ room: 0, width: i === 1 ? 10 : 4, runs: row }));
  expectEqualCounts({ ...smallJob(seededRandom(1), rows), ...rules, ripPairs: [[0, 2]] });
});

/** Equal counts where a legal plan exists; where none does, ours has to say which rule it breaks. */
function expectEqualCounts(job: CutJob): void {
  const told = JSON.stringify(job);
  expect(outsideModel(job), told).toBeUndefined();
  const answer = solveExactly(solver, job, Infinity);
  const plan = planCuts(job);
  if (answer.status === 'no plan') {
    expect(plan.broken.length, told).toBeGreaterThan(0);
    return;
  }
  expect(answer.status, told).toBe('proved fewest');
  expect(checkCutPlan(job, planOfAnswer(solver, job, answer)), told).toEqual([]);
  expect([plan.plankCount, plan.broken], told).toEqual([answer.planks, []]);
  expect(plan.bound, told).toBeLessThanOrEqual(answer.planks ?? 0);
}

function smallJob(random: SeededRandom, rows: readonly JobRow[]): CutJob {
  return {
    plankLength: 60,
    plankWidth: 10,
    kerf: random.whole(0, 2),
    minPiece: random.whole(4, 14),
    minStagger: random.whole(0, 14),
    alignedDistance: 3,
    rows,
    ripPairs: [],
  };
}

/** Rows of one or two runs, some of them from wall to wall. */
function roomRows(random: SeededRandom, room: number, count: number): JobRow[] {
  return Array.from({ length: count }, () => {
    const runs: JobRun[] = [{ x: 0, length: random.whole(20, 200) }];
    if (random.whole(0, 2) === 0) runs.push({ x: runs[0].length + 15, length: random.whole(10, 120) });
    return { room, width: 10, runs };
  });
}

/** Equal rows, first and last ripped to less than half a plank. */
function rippedJob(random: SeededRandom): CutJob {
  const count = random.whole(3, 5);
  const length = random.whole(70, 200);
  const width = (i: number) => (i === 0 || i === count - 1 ? 4 : 10);
  const rows = Array.from({ length: count }, (_, i) => ({ room: 0, width: width(i), runs: [{ x: 0, length }] }));
  return { ...smallJob(random, rows), ripPairs: [[0, count - 1]] };
}
