/** FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them. */
import { boundOf, fewestPossible } from './bound/bound';
import { type Followed, follow } from './follow/follow';
import { layNaturally } from './follow/natural';
import type { Shared } from './follow/sharing';
import { polish } from './goals/polish';
import type { CutJob, CutPlan } from './job';
import { ledgerOf } from './plan/ledger';
import { brokenRules, pairPieces, sharedOf } from './plan/pairing';
import { prepareJob } from './runs/prepared';
import { chainOf, layChain } from './search/chains';
import { emptyPrices } from './search/levelling';
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
 * @throws RangeError if a number of the job is not whole, a run is not longer than 0, or the effort is not above 0
 */
export function planCuts(job: CutJob, options: PlanOptions = {}): CutPlan {
  const effort = options.effort ?? 1;
  if (!(effort > 0 && effort < Number.POSITIVE_INFINITY))
    throw new RangeError(`The effort must be above 0, found ${effort}.`);
  const plan = planWithStrips(job, effort, options);
  return options.easyWithin && job.ripPairs.length > 0 ? easierOf(job, plan, options) : plan;
}

function planWithStrips(job: CutJob, effort: number, options: PlanOptions): CutPlan {
  const laid = layFewest(job, 'ties', effort);
  const plan = planOf(laid, effort, options);
  const isDone = plan.broken.length === 0 && laid.planks === laid.bound;
  if (isDone || !laid.trial.prepared.runs.some((run) => run.isTied)) return plan;
  return betterOf(plan, planOf(layFewest(job, 'no ties', effort), effort, options));
}

/** A plan within the planks that are bought anyway, or one that saves no strips up: those wait from the first row to the last. */
function easierOf(job: CutJob, plan: CutPlan, options: PlanOptions): CutPlan {
  const other = planCuts({ ...job, ripPairs: [] }, options);
  const mostOf = (one: CutPlan): number => ledgerOf(job, one).waiting.most;
  const isWithin = other.plankCount <= Math.max(plan.plankCount, options.easyWithin ?? 0);
  if (!isWithin || other.broken.length > plan.broken.length || mostOf(other) >= mostOf(plan)) return plan;
  // What strips might save is still in the bound.
  const { bound } = plan;
  return { ...other, bound, stop: bound === other.plankCount ? 'proved fewest' : 'step limit' };
}

/** A floor laid with the fewest planks found. */
interface LaidFloor {
  readonly trial: Trial;
  readonly followed: Followed;
  readonly planks: number;
  readonly bound: number;
}

/** With play, every second piece of a plank is given it at first; where that costs planks, the natural way may save them. */
function layFewest(job: CutJob, ties: 'ties' | 'no ties', effort: number): LaidFloor {
  const trial = emptyTrial(prepareJob(job, ties, 'play everywhere'));
  const fewest = fewestPlanks(trial, effort);
  const { prepared } = trial;
  const shared = sharedOf(prepared, fewest.at);
  const laid = { trial, followed: { at: fewest.at, shared, most: 0, rowsWaited: 0, fits: true }, ...fewest };
  if (prepared.kerf === job.kerf || fewest.planks === fewest.bound) return laid;
  const steps = STEPS.least + STEPS.forRun * prepared.runs.length;
  const goal = { ...fewest, steps: steps * effort, moves: movesFor(trial, effort) };
  const natural = layNaturally(prepareJob(job, ties), fewest.at, goal);
  return natural ? { ...natural, bound: fewest.bound } : laid;
}

function movesFor({ prepared }: Trial, effort: number): number {
  return Math.ceil(Math.min(MOVES.most, MOVES.least + MOVES.forRun * prepared.runs.length) * effort);
}

/** Planks shared anew after a short polish of joints and cuts; pieces that were made to fit their planks stay as they are. */
function polished({ trial, followed, planks }: LaidFloor, effort: number): Shared {
  const { prepared } = trial;
  layAll(trial, followed.at);
  if (prepared.kerf < prepared.job.kerf + (prepared.job.play ?? 0)) return followed.shared;
  const moves = Math.min(POLISH.least + POLISH.forRun * prepared.runs.length, POLISH.places / prepared.plankLength);
  trial.at.set(polish(trial, planks, Math.ceil(moves * effort)));
  return sharedOf(prepared, trial.at);
}

function planOf(laid: LaidFloor, effort: number, { secondGoals = true, easyWithin = 0 }: PlanOptions): CutPlan {
  const { trial, planks } = laid;
  const { prepared } = trial;
  const spare = Math.max(0, easyWithin - planks);
  const followed = secondGoals
    ? follow(trial, polished(laid, effort), { moves: movesFor(trial, effort), spare })
    : laid.followed;
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
function fewestPlanks(trial: Trial, effort: number): { at: Int32Array; planks: number; bound: number } {
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
  // A chain with play everywhere is not the fewest: the natural way needs none.
  let bound = chain && trial.prepared.kerf === job.kerf ? chain.planks : 0;
  TURNS.forEach((turn, i) => {
    if (i === 1 && chain && best.count > chain.planks && layChain(trial, chain)) keepBest();
    const boundEffort = turn.bound * Math.max(1, effort);
    if (best.count > bound) bound = Math.max(bound, atLeast.raise({ upTo: best.count, effort: boundEffort }));
    layAll(trial, best.at);
    const limit = stepLimit * turn.steps;
    while (best.count > bound && levelTo(trial, prices, best.count - 1, limit)) keepBest();
  });
  return { at: best.at, planks: best.count, bound };
}
