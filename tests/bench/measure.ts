/** One job measured: its plan judged first and timed after. */
import type { CutJob, CutPlan } from '../../src/cutting/job';
import { checkCutPlan, ledgerOf } from '../../src/cutting/ledger';
import { planCuts } from '../../src/cutting/search';
import { medianOf } from './sums';

export interface Measured {
  readonly plan: CutPlan;
  readonly cuts: number;
  /** Joints two rows apart nearer than the job's aligned distance. */
  readonly alignedJoints: number;
  /** Milliseconds, warm. */
  readonly least: number;
  readonly median: number;
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
  const { cutCount, alignedJointCount } = ledgerOf(job, plan);
  const times: number[] = [];
  let spent = 0;
  while (spent < ENOUGH_MS && times.length < MOST_REPEATS) {
    const ms = timeOf(() => planCuts(job, { effort }));
    times.push(ms);
    spent += ms;
  }
  return { plan, cuts: cutCount, alignedJoints: alignedJointCount, least: Math.min(...times), median: medianOf(times) };
}

/** Milliseconds a call takes. */
export function timeOf(call: () => unknown): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}
