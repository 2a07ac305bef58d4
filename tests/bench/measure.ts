/** One job measured: its plan judged first and timed after. */
import type { CutJob, CutPlan } from '../../src/cutting/job';
import { checkCutPlan, ledgerOf } from '../../src/cutting/plan/ledger';
import type { Waiting } from '../../src/cutting/plan/waiting';
import { planCuts } from '../../src/cutting/search';
import { medianOf } from './sums';

/** How much of a plan lies about between rows. */
export interface Waits {
  /** Offcuts and strips that wait at once, at most. */
  readonly most: number;
  /** Rows one of them waits, on average; 0 where nothing is used again. */
  readonly mean: number;
}

export interface Measured {
  readonly plan: CutPlan;
  readonly cuts: number;
  /** Joints two rows apart nearer than the job's aligned distance. */
  readonly alignedJoints: number;
  readonly waits: Waits;
  /** Milliseconds, warm. */
  readonly least: number;
  readonly median: number;
  /** The same for the count alone, without the second goals: what a solver that only counts is held against. */
  readonly countMedian: number;
}

/** A plan is timed until this much time has gone, once at least. */
const MOST_REPEATS = 15;
const ENOUGH_MS = 500;

/**
 * Plans a job, checks the plan, then times the same call again and again.
 *
 * @throws Error with the broken laws when the plan is not legal: a wrong answer has no time
 */
export function measure(id: string, job: CutJob, effort: number): Measured {
  const plan = planCuts(job, { effort });
  const breaches = checkCutPlan(job, plan);
  if (breaches.length > 0) throw new Error(`The plan of ${id} is not legal: ${breaches.join('; ')}`);
  const { cutCount, alignedJointCount, waiting } = ledgerOf(job, plan);
  const count = planCuts(job, { effort, secondGoals: false }).plankCount;
  if (count < plan.plankCount) throw new Error(`The count of ${id} is ${count}, its plan has ${plan.plankCount}.`);
  const times = timesOf(() => planCuts(job, { effort }));
  const countTimes = timesOf(() => planCuts(job, { effort, secondGoals: false }));
  return {
    plan,
    cuts: cutCount,
    alignedJoints: alignedJointCount,
    waits: waitsOf(waiting),
    least: Math.min(...times),
    median: medianOf(times),
    countMedian: medianOf(countTimes),
  };
}

export function waitsOf({ most, reuseCount, rowsWaited }: Waiting): Waits {
  return { most, mean: reuseCount === 0 ? 0 : rowsWaited / reuseCount };
}

function timesOf(call: () => unknown): readonly number[] {
  const times: number[] = [];
  let spent = 0;
  while (spent < ENOUGH_MS && times.length < MOST_REPEATS) {
    const ms = timeOf(call);
    times.push(ms);
    spent += ms;
  }
  return times;
}

/** Milliseconds a call takes. */
export function timeOf(call: () => unknown): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}
