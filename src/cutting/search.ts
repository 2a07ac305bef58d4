/**
 * FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them.
 *
 * One plan, from top to bottom: the job is made ready (`prepareJob`), every run is laid where the load is least
 * (`layFromNothing`), search and bound take turns until they meet or their steps run out (`fewestPlanks`), second goals
 * are met with the planks found (`polish`, then `follow`), pieces are booked to planks (`pairPieces`), and the plan is judged.
 *
 * The parts of this folder, each standing on those before it:
 *
 * - `job.ts` what is asked and what is answered
 * - `judge` the laws of a plan; it shares nothing with the parts below
 * - `runs` a job made ready for counting. Read `arcs.ts` first: all else stands on its picture of the load
 * - `search` first pieces are moved until the load is level: `trial.ts` is what moves, `levelling.ts` how
 * - `bound` the fewest planks that any plan could use
 * - `exact` every plan of a tight floor, led by the prices of the bound
 * - `goals` the better of two plans with equally many planks: joints and cuts
 * - `plan` which pieces share a plank; the books
 * - `follow` few offcuts waiting, and room to grow: planks are shared anew, runs alike change places
 *
 * `trim` stands apart: plain one-dimensional cutting, for pieces whose ends are all alike.
 */
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
/** What a move costs where scripts are not compiled, in places visited: measured on halls of 500 rows. */
const STEPS_UNCOMPILED = 10 * STEPS_A_MOVE;
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
   * Planks that are bought anyway where so many are the fewest: up to so many are used where that makes the floor easier
   * to lay. Missing: the plan takes the fewest planks.
   */
  readonly easyWithin?: (fewest: number) => number;
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
  const { easyWithin } = options;
  return easyWithin && job.ripPairs.length > 0 ? easierOf(job, plan, { ...options, easyWithin }) : plan;
}

function planWithStrips(job: CutJob, options: PlanOptions): CutPlan {
  const laid = layFewest(job, 'laid alike', options);
  const plan = planOf(laid, options);
  const isDone = plan.broken.length === 0 && laid.planks === laid.bound;
  if (isDone || laid.trial.prepared.runs.every(isLaidItself)) return plan;
  return betterOf(plan, planOf(layFewest(job, 'laid freely', options), options));
}

/** A plan within the planks that are bought anyway, or one that saves no strips up: those wait from the first row to the last. */
function easierOf(
  job: CutJob,
  plan: CutPlan,
  options: PlanOptions & Required<Pick<PlanOptions, 'easyWithin'>>,
): CutPlan {
  const other = planUnjudged({ ...job, ripPairs: [] }, options);
  const mostOf = (one: CutPlan): number => ledgerOf(job, one).waiting.most;
  const isWithin = other.plankCount <= Math.max(plan.plankCount, options.easyWithin(plan.bound));
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
    const goals = polish * plankLength + STEPS_UNCOMPILED * moves;
    // With play the floor may be levelled a second time, and made to fit.
    const natural = prepared.kerf === prepared.job.kerf ? 0 : steps + STEPS_UNCOMPILED * moves;
    const all = steps + goals + natural + boundEffort * stepsOfBound(prepared.job) + 2 * tries;
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
  // Where the stagger cannot be kept, the nearest plan is wanted, not one of fewer planks.
  const isStaggered = trial.stagger.every((kept) => kept >= job.minStagger);
  if (prepared.kerf === job.kerf || planks === bound || !isStaggered) return laid;
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

/** Whether any plank gives two end pieces, or a strip. */
function sharesPlanks({ plankOf, strips }: Shared): boolean {
  const planks = plankOf.filter((plank) => plank >= 0);
  return strips.length > 0 || new Set(planks).size < planks.length;
}

function planOf(laid: LaidFloor, { secondGoals = true, easyWithin }: PlanOptions): CutPlan {
  const { trial, limits, planks } = laid;
  const { prepared } = trial;
  const spare = Math.max(0, (easyWithin?.(planks) ?? planks) - planks);
  // With play a plank may still be saved on the way: the count of a floor is the count of its plan.
  const maySavePlanks = (prepared.job.play ?? 0) > 0 && planks > laid.bound;
  const isFollowed = secondGoals || maySavePlanks;
  const within = (more: number): Followed => {
    const shared = polished(laid);
    // Where no two pieces share a plank nothing waits, and the joints are polished.
    if (!maySavePlanks && !sharesPlanks(shared)) return { ...laid.followed, at: trial.at.slice(), shared };
    return follow(trial, shared, { moves: limits.moves, spare: more });
  };
  const fewest = isFollowed ? within(0) : laid.followed;
  // More planks than the fewest only where fewer offcuts wait for them.
  const easy = spare > 0 && isFollowed && fewest.most > 0 ? within(spare) : fewest;
  const followed = easy.most < fewest.most ? easy : fewest;
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
