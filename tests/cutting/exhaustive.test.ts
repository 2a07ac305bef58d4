import { describe, expect, test } from 'vitest';
import { fewestPossible } from '../../src/cutting/bound/bound';
import type { CutJob } from '../../src/cutting/job';
import { checkCutPlan } from '../../src/cutting/plan/ledger';
import { planCuts } from '../../src/cutting/search';
import { fewestByTrial } from '../support/exhaustive';
import { tightJob } from '../support/tightJobs';
import { tinyJob } from '../support/tinyJobs';

const JOBS = 600;
const TIGHT_JOBS = 260;
/** Seeds before it have a job or two of which it takes seconds to try every plan. */
const FIRST_TIGHT_SEED = 140;

interface Tried {
  readonly seed: number;
  readonly job: CutJob;
  /** The fewest planks, by trying every plan; null when no plan is legal. */
  readonly truth: number | null;
  readonly bound: number;
}

const TRIED: readonly Tried[] = Array.from({ length: JOBS }, (_, index) => tried(index + 1, tinyJob(index + 1)));

/** The same floors with a stagger of more than half a plank, which only rows of few pieces can keep. */
const TRIED_WIDE: readonly Tried[] = TRIED.slice(0, 150).map(({ seed, job }) =>
  tried(seed, { ...job, minStagger: Math.ceil(0.55 * job.plankLength) }),
);

function tried(seed: number, job: CutJob): Tried {
  return { seed, job, truth: fewestByTrial(job), bound: fewestPossible(job) };
}

/** What stands in the way, a line a job, with the job to replay it. */
function failures(judge: (tried: Tried) => string, jobs = TRIED): string[] {
  return jobs.flatMap((tried) => {
    const said = judge(tried);
    return said === '' ? [] : [`tiny job ${tried.seed}: ${said}, ${JSON.stringify(tried.job)}`];
  });
}

describe('trying every plan knows the answers that can be worked out by hand', () => {
  const room = (plankLength: number, lengths: readonly number[], rules: Partial<CutJob> = {}): CutJob => ({
    plankLength,
    plankWidth: 8,
    kerf: 0,
    minPiece: 1,
    minStagger: 0,
    alignedDistance: 0,
    rows: lengths.map((length) => ({ room: 0, width: 3, runs: [{ x: 0, length }] })),
    ripPairs: [],
    ...rules,
  });

  test.each<[string, CutJob, number | null]>([
    ['two halves and a whole from two planks', room(10, [15, 5]), 2],
    ['a kerf between the halves takes a plank more', room(10, [15, 5], { kerf: 1 }), 3],
    ['two ends of one hand never come from one plank', room(10, [12, 12], { minPiece: 2 }), 3],
    ['three wall-to-wall pieces from one plank', room(11, [3, 3, 3], { kerf: 1 }), 1],
    ['a strip of the first row serves in the last', room(10, [9, 9, 9], { ripPairs: [[0, 2]] }), 2],
    ['not when both widths are more than the plank', room(10, [9, 9, 9], { ripPairs: [[0, 2]], plankWidth: 5 }), 3],
    ['no plan when both ends are under the minimum', room(10, [11], { minPiece: 6 }), null],
    ['no plan when the joints cannot keep apart', room(10, [12, 12], { minPiece: 5, minStagger: 4 }), null],
  ])('%s', (_, job, planks) => {
    expect(fewestByTrial(job)).toBe(planks);
  });
});

describe(`${JOBS} tiny floors, every plan tried`, () => {
  test('they have rip pairs that fit, wall-to-wall pieces, several runs and several rooms in them', () => {
    const counts = {
      ripPairs: TRIED.filter(({ job }) =>
        job.ripPairs.some(
          ([a, b]) => (job.rows[a]?.width ?? 9) + (job.rows[b]?.width ?? 9) + job.kerf <= job.plankWidth,
        ),
      ).length,
      shortRuns: TRIED.filter(({ job }) =>
        job.rows.some((row) => row.runs.some((run) => run.length <= job.plankLength)),
      ).length,
      severalRuns: TRIED.filter(({ job }) => job.rows.some((row) => row.runs.length > 1)).length,
      severalRooms: TRIED.filter(({ job }) => new Set(job.rows.map((row) => row.room)).size > 1).length,
    };
    for (const count of Object.values(counts)) expect(count).toBeGreaterThan(50);
  });

  test('the bound is never above the truth', () => {
    const above = failures(({ truth, bound }) =>
      truth !== null && bound > truth ? `bound ${bound}, truth ${truth}` : '',
    );
    expect(above).toEqual([]);
  });

  test('the bound is the truth on nineteen of twenty', () => {
    const below = failures(({ truth, bound }) =>
      truth === null || bound === truth ? '' : `bound ${bound}, truth ${truth}`,
    );
    expect(below.length).toBeLessThan(JOBS / 20);
  });

  test('the planner finds the fewest planks, legally, and says so of no other', () => {
    expect(failures(faultOfPlan)).toEqual([]);
  });

  test('so it does, and so says the bound, where joints keep more than half a plank apart', () => {
    const isAbove = ({ truth, bound }: Tried): boolean => truth !== null && bound > truth;
    expect(TRIED_WIDE.filter(({ truth }) => truth !== null).length).toBeGreaterThan(50);
    expect(failures(faultOfPlan, TRIED_WIDE)).toEqual([]);
    expect(TRIED_WIDE.filter(isAbove)).toEqual([]);
  });
});

describe(`${TIGHT_JOBS} tight floors, every plan tried`, () => {
  const jobs = Array.from({ length: TIGHT_JOBS }, (_, index) =>
    tried(FIRST_TIGHT_SEED + index, tightJob(FIRST_TIGHT_SEED + index)),
  );

  test('few of them have no legal plan, and some have strips', () => {
    expect(jobs.filter(({ truth }) => truth === null).length).toBeLessThan(TIGHT_JOBS / 10);
    expect(jobs.filter(({ job }) => job.ripPairs.length > 0).length).toBeGreaterThan(TIGHT_JOBS / 10);
  });

  test('the planner finds the fewest planks of all of them', () => {
    expect(failures(faultOfPlan, jobs)).toEqual([]);
  });

  test('and proves it wherever there are no strips', () => {
    const withoutStrips = jobs.filter(({ job, truth }) => job.ripPairs.length === 0 && truth !== null);
    const unproved = failures(({ job }) => (planCuts(job).stop === 'proved fewest' ? '' : 'not proved'), withoutStrips);
    expect(unproved).toEqual([]);
  });
});

function faultOfPlan({ job, truth }: Tried): string {
  const plan = planCuts(job);
  const laws = checkCutPlan(job, plan);
  if (laws.length > 0) return laws.join('; ');
  if (truth === null) return plan.broken.length > 0 ? '' : 'legal where no plan is';
  if (plan.broken.length > 0) return `declares broken rules where a legal plan of ${truth} is`;
  return plan.plankCount === truth ? '' : `${plan.plankCount} planks, truth ${truth}`;
}
