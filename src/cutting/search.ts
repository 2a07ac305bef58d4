/** FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them. */
import { type Bound, boundOf, fewestPossible, stepsOfBound } from './bound/bound';
import { tryEveryPlan } from './exact/everyPlan';
import { type Followed, follow, STEPS_A_MOVE } from './follow/follow';
import { layNaturally } from './follow/natural';
import type { Shared } from './follow/sharing';
import { polish } from './goals/polish';
import type { CutJob, CutPlan } from './job';
import { judged } from './judge/judged';
import { ledgerOf } from './plan/ledger';
import { brokenRules, pairPieces, sharedOf } from './plan/pairing';
import { isLaidItself, type PreparedJob, prepareJob } from './runs/prepared';
import { chainOf, layChain } from './search/chains';
import { emptyMoveMemory } from './search/levelling';
import { layFromNothing, levelTo } from './search/starts';
import { emptyTrial, layAll, plankCountOf, type Trial } from './search/trial';

/** Places visited at effort 1: some for every job, more for each run, and no more than the most. */
const STEPS = { least: 2_800_000, forRun: 60_000, most: 60_000_000 };
/** Moves of the search for a plan that people can follow, in the same way. */
const MOVES = { least: 1000, forRun: 1000, most: 500_000 };
/** Moves of the polish before it: enough to take most aligned joints out. The most places they may visit. */
const POLISH = { least: 4, forRun: 2, places: 1_500_000 };
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
  /**
   * Planks that are bought anyway: up to so many are used where that makes the floor easier to lay. Missing, or fewer
   * than the fewest: the plan takes the fewest planks.
   */
  readonly easyWithin?: number;
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
  const plan = planWithStrips(job, options);
  return options.easyWithin && job.ripPairs.length > 0 ? easierOf(job, plan, options) : plan;
}

function planWithStrips(job: CutJob, options: PlanOptions): CutPlan {
  const laid = layFewest(job, 'laid alike', options);
  const plan = planOf(laid, options);
  const isDone = plan.broken.length === 0 && laid.planks === laid.bound;
  if (isDone || laid.trial.prepared.runs.every(isLaidItself)) return plan;
  return betterOf(plan, planOf(layFewest(job, 'laid freely', options), options));
}

/** A plan within the planks that are bought anyway, or one that saves no strips up: those wait from the first row to the last. */
function easierOf(job: CutJob, plan: CutPlan, options: PlanOptions): CutPlan {
  const other = planUnjudged({ ...job, ripPairs: [] }, options);
  const mostOf = (one: CutPlan): number => ledgerOf(job, one).waiting.most;
  const isWithin = other.plankCount <= Math.max(plan.plankCount, options.easyWithin ?? 0);
  if (!isWithin || other.broken.length > plan.broken.length || mostOf(other) >= mostOf(plan)) return plan;
  // What strips might save is still in the bound.
  const { bound } = plan;
  return { ...other, bound, stop: bound === other.plankCount ? 'proved fewest' : 'step limit' };
}

/** Where each part of the work stops. */
interface Limits {
  readonly steps: number;
  /** Moves of the polish. */
  readonly polish: number;
  /** Moves of the search for a plan that people can follow. */
  readonly moves: number;
  readonly boundEffort: number;
  /** Every plan is tried within so many steps; 0 for floors that have more plans than could ever be tried. */
  readonly tries: number;
}

function limitsOf(prepared: PreparedJob, { effort = 1, mostSteps }: PlanOptions): Limits {
  const { runs, plankLength } = prepared;
  const steps = Math.min(STEPS.most, STEPS.least + STEPS.forRun * runs.length) * effort;
  const polish = Math.min(POLISH.least + POLISH.forRun * runs.length, POLISH.places / plankLength) * effort;
  const moves = Math.min(MOVES.most, MOVES.least + MOVES.forRun * runs.length) * effort;
  const boundEffort = Math.max(1, effort);
  const tries = runs.length > MOST_RUNS_TO_TRY ? 0 : steps * TRIES;
  const share = mostSteps === undefined ? 1 : Math.min(1, mostSteps / allSteps());
  return {
    steps: steps * share,
    polish: Math.ceil(polish * share),
    moves: Math.ceil(moves * share),
    boundEffort: boundEffort * share,
    tries: tries * share,
  };

  /** With or without second goals: the count of a floor is the count of its plan. */
  function allSteps(): number {
    const goals = polish * plankLength + STEPS_A_MOVE * moves;
    const all = steps + goals + boundEffort * stepsOfBound(prepared.job) + 2 * tries;
    return prepared.runs.every(isLaidItself) ? all : 2 * all;
  }
}

/** A floor laid with the fewest planks found. */
interface LaidFloor {
  readonly trial: Trial;
  readonly limits: Limits;
  readonly followed: Followed;
  readonly planks: number;
  readonly bound: number;
}

/** With play, every second piece of a plank is given it at first; where that costs planks, the natural way may save them. */
function layFewest(job: CutJob, lastRows: 'laid alike' | 'laid freely', options: PlanOptions): LaidFloor {
  const prepared = prepareJob(job, lastRows, 'play everywhere');
  const limits = limitsOf(prepared, options);
  const trial = emptyTrial(prepared);
  const { at, count: planks, bound } = fewestPlanks(trial, limits);
  const followed = { at, shared: sharedOf(prepared, at), most: 0, rowsWaited: 0, fits: true };
  const laid = { trial, limits, followed, planks, bound };
  if (prepared.kerf === job.kerf || planks === bound) return laid;
  const goal = { planks, bound, steps: limits.steps, moves: limits.moves };
  const natural = layNaturally(prepareJob(job, lastRows), at, goal);
  return natural ? { ...natural, limits, bound } : laid;
}

/** Planks shared anew after a short polish of joints and cuts; pieces that were made to fit their planks stay as they are. */
function polished({ trial, limits, followed, planks }: LaidFloor): Shared {
  const { prepared } = trial;
  layAll(trial, followed.at);
  if (prepared.kerf < prepared.job.kerf + (prepared.job.play ?? 0)) return followed.shared;
  trial.at.set(polish(trial, planks, limits.polish));
  return sharedOf(prepared, trial.at);
}

function planOf(laid: LaidFloor, { secondGoals = true, easyWithin = 0 }: PlanOptions): CutPlan {
  const { trial, limits, planks } = laid;
  const { prepared } = trial;
  const spare = Math.max(0, easyWithin - planks);
  // With play a plank may still be saved on the way: the count of a floor is the count of its plan.
  const maySavePlanks = (prepared.job.play ?? 0) > 0 && planks > laid.bound;
  const isFollowed = secondGoals || maySavePlanks;
  const followed = isFollowed ? follow(trial, polished(laid), { moves: limits.moves, spare }) : laid.followed;
  const { rows, plankCount } = pairPieces(prepared, followed.at, followed.shared.plankOf);
  const broken = brokenRules(prepared.job, rows);
  const bound = broken.length > 0 ? fewestPossible(prepared.job, { upTo: 0 }) : laid.bound;
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
  // A chain with play everywhere is not the fewest: the natural way needs none.
  const chained = chain && trial.prepared.kerf === job.kerf ? chain.planks : 0;
  const best: Fewest = { at: trial.at.slice(), count: plankCountOf(trial), bound: chained };
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
    // Which strip serves which piece is not tried in every way, nor the natural way to keep the play.
    else if (answer === 'none' && guide.runs.rowsLeftOut.size === 0 && prepared.kerf === prepared.job.kerf)
      best.bound = best.count;
    if (answer !== 'found') break;
  }
  trial.steps += tried.steps;
}
