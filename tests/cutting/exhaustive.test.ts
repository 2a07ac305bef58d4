import loadHighs from 'highs';
import { describe, expect, test } from 'vitest';
import { fewestPossible } from '../../src/cutting/bound/bound';
import type { CutJob } from '../../src/cutting/job';
import { checkCutPlan, ledgerOf } from '../../src/cutting/plan/ledger';
import { planCuts } from '../../src/cutting/search';
import { fewestByTrial, fewestWaitingByTrial } from '../support/exhaustive';
import { tightJob } from '../support/tightJobs';
import { tinyJob } from '../support/tinyJobs';
import { waitingAtLeast } from '../support/waitingAtLeast';

const JOBS = 600;
const TIGHT_JOBS = 260;
/** Seeds before it have a job or two of which it takes seconds to try every plan. */
const FIRST_TIGHT_SEED = 140;
/** Floors on which the bound has stayed below the truth so far: no more may. */
const MOST_BELOW = 16;
const MOST_BELOW_OF_TIGHT = 11;
/** The same of floors on which more wait than must. */
const MOST_MORE_WAITING = 9;

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

/** The same floors with play. */
const TRIED_PLAY: readonly Tried[] = TRIED.slice(0, 200).map(({ seed, job }) =>
  tried(seed, { ...job, play: 1 + (seed % 3) }),
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
    ['a last piece cut first, its rest as it is: no play', room(10, [14, 16], { minPiece: 4, play: 1 }), 3],
    ['a rest that ends a later row needs play', room(10, [15, 15], { minPiece: 5, play: 1 }), 3],
    ['two ends of one row, the first laid first', room(10, [20 - 10], { minPiece: 4, play: 1 }), 1],
    ['of two wall-to-wall pieces one needs play', room(10, [5, 5], { play: 1 }), 2],
    ['and of three two do', room(11, [3, 3, 3], { play: 1 }), 1],
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

  // A share that only ever shrinks: prices that are moved worse show it, and hardly anything else does.
  test(`the bound is the truth on all but ${MOST_BELOW}`, () => {
    const below = failures(faultOfBound);
    expect(below.length).toBeLessThanOrEqual(MOST_BELOW);
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

  test('with play the bound is never above the truth, and no plan takes a plank more', () => {
    expect(TRIED_PLAY.filter(({ truth }, i) => truth !== TRIED[i]?.truth).length).toBeGreaterThan(20);
    expect(
      failures(({ truth, bound }) => (truth !== null && bound > truth ? `${bound} > ${truth}` : ''), TRIED_PLAY),
    ).toEqual([]);
    expect(failures(faultOfPlan, TRIED_PLAY)).toEqual([]);
  });

  test('no plan has fewer offcuts waiting at once than all plans of as many planks, and most have no more', async () => {
    const solver = await loadHighs();
    const jobs = [...TRIED.slice(0, 120), ...TRIED_PLAY.slice(0, 60)].filter(({ truth }) => truth !== null);
    let asMany = 0;
    const more = jobs.filter(({ seed, job }) => {
      const plan = planCuts({ ...job, alignedDistance: 0 });
      const { most } = ledgerOf(job, plan).waiting;
      const truth = fewestWaitingByTrial(job, plan.plankCount) ?? Number.POSITIVE_INFINITY;
      expect(most, `tiny job ${seed}`).toBeGreaterThanOrEqual(truth);
      const least = Math.max(0, ...waitingAtLeast(solver, job, plan.plankCount));
      expect(least, `tiny job ${seed}`).toBeLessThanOrEqual(truth);
      if (truth > 0 && least === truth) asMany++;
      return most > truth;
    });
    expect(more.length).toBeLessThanOrEqual(MOST_MORE_WAITING);
    // What waits between two parts at the least is mostly all that waits: the sum is not only right but of use.
    expect(asMany).toBeGreaterThan(jobs.length / 3);
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

  test(`the bound is never above the truth, and below it on no more than ${MOST_BELOW_OF_TIGHT}`, () => {
    expect(jobs.filter(({ truth, bound }) => truth !== null && bound > truth)).toEqual([]);
    expect(failures(faultOfBound, jobs).length).toBeLessThanOrEqual(MOST_BELOW_OF_TIGHT);
  });

  test('the planner finds the fewest planks of all of them', () => {
    expect(failures(faultOfPlan, jobs)).toEqual([]);
  });

  test('and proves it wherever there are no strips', () => {
    const withoutStrips = jobs.filter(({ job, truth }) => job.ripPairs.length === 0 && truth !== null);
    const unproved = failures(({ job }) => (planOnce(job).stop === 'proved fewest' ? '' : 'not proved'), withoutStrips);
    expect(unproved).toEqual([]);
  });
});

const planned = new Map<CutJob, ReturnType<typeof planCuts>>();

/** The plan of a job, planned once for all that is asked of it. */
function planOnce(job: CutJob): ReturnType<typeof planCuts> {
  const plan = planned.get(job) ?? planCuts(job);
  planned.set(job, plan);
  return plan;
}

function faultOfBound({ truth, bound }: Tried): string {
  return truth === null || bound === truth ? '' : `bound ${bound}, truth ${truth}`;
}

function faultOfPlan({ job, truth }: Tried): string {
  const plan = planOnce(job);
  const laws = checkCutPlan(job, plan);
  if (laws.length > 0) return laws.join('; ');
  if (truth === null) return plan.broken.length > 0 ? '' : 'legal where no plan is';
  if (plan.broken.length > 0) return `declares broken rules where a legal plan of ${truth} is`;
  return plan.plankCount === truth ? '' : `${plan.plankCount} planks, truth ${truth}`;
}
