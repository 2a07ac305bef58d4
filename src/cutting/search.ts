/** FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them. */
import { fewestPossible } from './bound';
import type { CutJob, CutPlan } from './job';
import { emptyPrices, levelByDepth, levelTo } from './levelling';
import { keepStagger } from './nearest';
import { brokenRules, pairPieces } from './pairing';
import { prepareJob } from './prepared';
import { polish } from './polish';
import { emptyTrial, layAll, plankCountOf, type Trial } from './trial';

/** Places visited at effort 1, for each run. */
const STEPS_A_RUN = 300_000;
const LEAST_STEPS = 6_000_000;
/** Share of the steps spent before the dear bound is reckoned. */
const QUICK_SHARE = 0.04;

/**
 * Plans the cuts of a floor.
 *
 * @param options `effort` multiplies the limit of steps; 1 where it is missing
 * @returns a legal plan; where no plan is legal, the nearest one, with the rules it breaks
 * @throws RangeError if a number of the job is not whole or a run is not longer than 0
 */
export function planCuts(job: CutJob, options: { effort?: number } = {}): CutPlan {
  const prepared = prepareJob(job);
  const trial = emptyTrial(prepared);
  const stepLimit = Math.max(LEAST_STEPS, STEPS_A_RUN * prepared.runs.length) * (options.effort ?? 1);
  const { at, bound } = fewestPlanks(trial, stepLimit);
  layAll(trial, at);
  const polished = polish(trial, plankCountOf(trial), 400 + 40 * prepared.runs.length);
  const { rows, plankCount } = pairPieces(prepared, polished);
  return {
    rows,
    plankCount,
    bound,
    stop: bound === plankCount ? 'proved fewest' : 'step limit',
    steps: trial.steps,
    broken: brokenRules(job, rows),
  };
}

/** The best choice of first pieces found: one plank fewer, until the bound or the limit of steps is reached. */
function fewestPlanks(trial: Trial, stepLimit: number): { at: Int32Array; bound: number } {
  const { job, plankLength } = trial.prepared;
  const prices = emptyPrices(plankLength);
  levelByDepth(trial, prices, 3);
  keepStagger(trial);
  const best = { at: trial.at.slice(), count: plankCountOf(trial) };
  const lower = (bound: number, limit: number): void => {
    while (best.count > bound && levelTo(trial, prices, best.count - 1, limit)) {
      best.at = trial.at.slice();
      best.count = plankCountOf(trial);
    }
  };
  // The cheap bound first: most floors reach it, and never pay for the dear one.
  lower(fewestPossible(job, { upTo: 0 }), stepLimit * QUICK_SHARE);
  const bound = fewestPossible(job, { upTo: best.count });
  lower(bound, stepLimit);
  return { at: best.at, bound };
}
