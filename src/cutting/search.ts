/** FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them. */
import { boundOf, fewestPossible } from './bound/bound';
import { polish } from './goals/polish';
import type { CutJob, CutPlan } from './job';
import { brokenRules, pairPieces } from './plan/pairing';
import { type PreparedJob, prepareJob } from './runs/prepared';
import { chainOf, layChain } from './search/chains';
import { emptyPrices } from './search/levelling';
import { layFromNothing, levelTo } from './search/starts';
import { emptyTrial, layAll, plankCountOf, type Trial } from './search/trial';

/** Places visited at effort 1: some for every job, more for each run, and no more than the most. */
const STEPS = { least: 2_800_000, forRun: 60_000, most: 60_000_000 };
/** Moves of the polish, in the same way, and the most places they may visit. */
const MOVES = { least: 400, forRun: 40, places: 30_000_000 };
/**
 * Search and bound take turns, each with a larger share of its limit: most floors reach the cheap bound at once, and
 * neither is let run on for what the other would have shown sooner.
 */
const TURNS = [
  { bound: 0, steps: 0.04 },
  { bound: 0.1, steps: 0.12 },
  { bound: 0.4, steps: 0.3 },
  { bound: 1, steps: 1 },
];

export interface PlanOptions {
  /** Multiplies the limits of steps, and above 1 those of the bound too; > 0, 1 where it is missing. */
  readonly effort?: number;
  /** False leaves the plan as it was when the count was found: for whoever wants the count alone. */
  readonly secondGoals?: boolean;
}

/**
 * Plans the cuts of a floor.
 *
 * @returns a legal plan; where none is found, the nearest one with the rules it breaks, and a bound that heeds no rule
 * @throws RangeError if a number of the job is not whole, a run is not longer than 0, or the effort is not above 0
 */
export function planCuts(job: CutJob, options: PlanOptions = {}): CutPlan {
  const effort = options.effort ?? 1;
  if (!(effort > 0 && effort < Number.POSITIVE_INFINITY))
    throw new RangeError(`The effort must be above 0, found ${effort}.`);
  const prepared = prepareJob(job, 'ties');
  const withGoals = options.secondGoals ?? true;
  const plan = planPrepared(prepared, effort, withGoals);
  const isDone = plan.broken.length === 0 && plan.stop === 'proved fewest';
  if (isDone || !prepared.runs.some((run) => run.isTied)) return plan;
  return betterOf(plan, planPrepared(prepareJob(job, 'no ties'), effort, withGoals));
}

function planPrepared(prepared: PreparedJob, effort: number, withGoals: boolean): CutPlan {
  const { job, runs } = prepared;
  const trial = emptyTrial(prepared);
  const fewest = fewestPlanks(trial, effort);
  layAll(trial, fewest.at);
  const moves = Math.min(MOVES.least + MOVES.forRun * runs.length, MOVES.places / prepared.plankLength);
  const at = withGoals ? polish(trial, plankCountOf(trial), Math.ceil(moves * effort)) : fewest.at;
  const { rows, plankCount } = pairPieces(prepared, at);
  const broken = brokenRules(job, rows);
  const bound = broken.length > 0 ? fewestPossible(job, { upTo: 0 }) : fewest.bound;
  const stop = bound === plankCount ? 'proved fewest' : 'step limit';
  return { rows, plankCount, bound, stop, steps: trial.steps, broken };
}

/** The plan that breaks fewer rules, then needs fewer planks, with the better of both bounds if both are legal. */
function betterOf(a: CutPlan, b: CutPlan): CutPlan {
  const isBetter =
    b.broken.length < a.broken.length || (b.broken.length === a.broken.length && b.plankCount < a.plankCount);
  const plan = isBetter ? b : a;
  const bounds = [a, b].filter((one) => one.broken.length === plan.broken.length).map((one) => one.bound);
  const bound = Math.max(...bounds);
  const stop = bound === plan.plankCount ? 'proved fewest' : 'step limit';
  return { ...plan, bound, stop, steps: a.steps + b.steps };
}

/** The best choice of first pieces found: one plank fewer, until the bound or the limit of steps is reached. */
function fewestPlanks(trial: Trial, effort: number): { at: Int32Array; bound: number } {
  const { job, plankLength, runs } = trial.prepared;
  const stepLimit = Math.min(STEPS.most, STEPS.least + STEPS.forRun * runs.length) * effort;
  const chain = chainOf(trial.prepared);
  const atLeast = boundOf(job);
  const prices = emptyPrices(plankLength);
  layFromNothing(trial, prices);
  const best = { at: trial.at.slice(), count: plankCountOf(trial) };
  const keepBest = (): void => {
    if (plankCountOf(trial) >= best.count) return;
    best.at = trial.at.slice();
    best.count = plankCountOf(trial);
  };
  let bound = chain?.planks ?? 0;
  TURNS.forEach((turn, i) => {
    if (i === 1 && chain && best.count > chain.planks && layChain(trial, chain)) keepBest();
    const boundEffort = turn.bound * Math.max(1, effort);
    if (best.count > bound) bound = Math.max(bound, atLeast.raise({ upTo: best.count, effort: boundEffort }));
    layAll(trial, best.at);
    const limit = stepLimit * turn.steps;
    while (best.count > bound && levelTo(trial, prices, best.count - 1, limit)) keepBest();
  });
  return { at: best.at, bound };
}
