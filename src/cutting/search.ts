/**
 * FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them.
 *
 * One plan, from top to bottom: the job is made ready (`prepareJob`), every run is laid where the load is least
 * (`layFromNothing`), search and bound take turns until they meet or their steps run out (`fewestPlanks`), second goals
 * are met with the planks found (`polish`), pieces are booked to planks (`pairPieces`), and the plan is judged.
 *
 * The parts of this folder, each standing on those before it:
 *
 * - `job.ts` what is asked and what is answered
 * - `judge` the laws of a plan; it shares nothing with the parts below
 * - `runs` a job made ready for counting. Read `arcs.ts` first: all else stands on its picture of the load
 * - `search` first pieces are moved until the load is level: `trial.ts` is what moves, `levelling.ts` how
 * - `bound` the fewest planks that any plan could use
 * - `exact` every plan of a tight floor, led by the prices of the bound
 * - `goals` the better of two plans with equally many planks
 * - `plan` which pieces share a plank; the books
 *
 * `trim` stands apart: plain one-dimensional cutting, for pieces whose ends are all alike.
 */
import { type Bound, boundOf, fewestPossible, stepsOfBound } from './bound/bound';
import { tryEveryPlan } from './exact/everyPlan';
import { polish } from './goals/polish';
import type { CutJob, CutPlan } from './job';
import { judged } from './judge/judged';
import { brokenRules, pairPieces } from './plan/pairing';
import { isLaidItself, type PreparedJob, prepareJob } from './runs/prepared';
import { chainOf, layChain } from './search/chains';
import { emptyMoveMemory } from './search/levelling';
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
  { bound: 0, steps: 0.04, triesEveryPlan: false },
  { bound: 0.1, steps: 0.12, triesEveryPlan: true },
  { bound: 0.4, steps: 0.3, triesEveryPlan: false },
  { bound: 1, steps: 1, triesEveryPlan: true },
];
/** Steps of one such trying of every plan, as a multiple of the limit of steps: it gives up far sooner if it is hopeless. */
const TRIES = 2;
/** Larger floors have more plans than could ever be tried. */
const MOST_RUNS_TO_TRY = 60;

export interface PlanOptions {
  /** Multiplies the limits of steps, and above 1 those of the bound too; > 0, 1 where it is missing. */
  readonly effort?: number;
  /**
   * Lowers the effort so that no more than about so many steps are taken in all, second goals, bound and a second try
   * included; but for the first start, which every plan needs.
   */
  readonly mostSteps?: number;
  /** False leaves the plan as it was when the count was found: for whoever wants the count alone. */
  readonly secondGoals?: boolean;
}

/**
 * Plans the cuts of a floor.
 *
 * @returns a legal plan; where none is found, the nearest one with the rules it breaks, and a bound that heeds no rule
 * @throws Error `Internal: ...` if the plan breaks a law of `judge/laws.ts`
 * @throws RangeError if a number of the job is not whole, a run is not longer than 0, or the effort is not above 0
 */
export function planCuts(job: CutJob, options: PlanOptions = {}): CutPlan {
  return judged(job, planUnjudged(job, options));
}

function planUnjudged(job: CutJob, options: PlanOptions): CutPlan {
  const effort = options.effort ?? 1;
  if (!(effort > 0 && effort < Number.POSITIVE_INFINITY))
    throw new RangeError(`The effort must be above 0, found ${effort}.`);
  const prepared = prepareJob(job, 'laid alike');
  const limits = limitsOf(prepared, options);
  const plan = planPrepared(prepared, limits);
  const isDone = plan.broken.length === 0 && plan.stop === 'proved fewest';
  if (isDone || prepared.runs.every(isLaidItself)) return plan;
  return betterOf(plan, planPrepared(prepareJob(job, 'laid freely'), limits));
}

/** Where each part of the work stops. */
interface Limits {
  readonly steps: number;
  /** Moves of the polish. */
  readonly moves: number;
  readonly boundEffort: number;
  /** Every plan is tried within so many steps; 0 for floors that have more plans than could ever be tried. */
  readonly tries: number;
}

function limitsOf(prepared: PreparedJob, { effort = 1, mostSteps, secondGoals = true }: PlanOptions): Limits {
  const { runs, plankLength } = prepared;
  const steps = Math.min(STEPS.most, STEPS.least + STEPS.forRun * runs.length) * effort;
  const most = Math.min(MOVES.least + MOVES.forRun * runs.length, MOVES.places / plankLength) * effort;
  const moves = secondGoals ? most : 0;
  const boundEffort = Math.max(1, effort);
  const tries = runs.length > MOST_RUNS_TO_TRY ? 0 : steps * TRIES;
  if (mostSteps === undefined) return { steps, moves: Math.ceil(moves), boundEffort, tries };
  // With or without second goals: the count of a floor is the count of its plan.
  const all = steps + most * plankLength + boundEffort * stepsOfBound(prepared.job) + 2 * tries;
  const share = Math.min(1, mostSteps / (prepared.runs.every(isLaidItself) ? all : 2 * all));
  return {
    steps: steps * share,
    moves: Math.ceil(moves * share),
    boundEffort: boundEffort * share,
    tries: tries * share,
  };
}

function planPrepared(prepared: PreparedJob, limits: Limits): CutPlan {
  const { job } = prepared;
  const trial = emptyTrial(prepared);
  const fewest = fewestPlanks(trial, limits);
  layAll(trial, fewest.at);
  const at = limits.moves > 0 ? polish(trial, plankCountOf(trial), limits.moves) : fewest.at;
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
function fewestPlanks(trial: Trial, limits: Limits): Fewest {
  const { job, plankLength } = trial.prepared;
  const chain = chainOf(trial.prepared);
  const atLeast = boundOf(job);
  const memory = emptyMoveMemory(plankLength);
  layFromNothing(trial, memory);
  const best: Fewest = { at: trial.at.slice(), count: plankCountOf(trial), bound: chain?.planks ?? 0 };
  const keepBest = (): void => {
    if (plankCountOf(trial) >= best.count) return;
    best.at = trial.at.slice();
    best.count = plankCountOf(trial);
  };
  TURNS.forEach((turn, i) => {
    if (i === 1 && chain && best.count > chain.planks && layChain(trial, chain)) keepBest();
    const boundEffort = turn.bound * limits.boundEffort;
    if (best.count > best.bound)
      best.bound = Math.max(best.bound, atLeast.raise({ upTo: best.count, effort: boundEffort }));
    layAll(trial, best.at);
    const limit = limits.steps * turn.steps;
    while (best.count > best.bound && levelTo(trial, memory, best.count - 1, limit)) keepBest();
    if (turn.triesEveryPlan) tryToBeat(trial, best, atLeast, limits.tries);
  });
  return best;
}

/** The best choice so far and what is known of the fewest planks. */
interface Fewest {
  at: Int32Array;
  count: number;
  bound: number;
}

/** Tries every plan of fewer planks; where all are tried and none is found, the best is the fewest. */
function tryToBeat(trial: Trial, best: Fewest, atLeast: Bound, stepLimit: number): void {
  const { prepared } = trial;
  if (best.count === best.bound || stepLimit === 0) return;
  const guide = atLeast.guide();
  if (!guide) return;
  const tried = emptyTrial(prepared);
  while (best.count > best.bound) {
    const answer = tryEveryPlan(tried, guide, { planks: best.count - 1, stepLimit });
    if (answer === 'found') {
      best.at = tried.at.slice();
      best.count = plankCountOf(tried);
    }
    // Which strip serves which piece is not tried in every way.
    else if (answer === 'none' && guide.runs.rowsLeftOut.size === 0) best.bound = best.count;
    if (answer !== 'found') break;
  }
  trial.steps += tried.steps;
}
