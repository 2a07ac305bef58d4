/**
 * FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them.
 *
 * One plan, from top to bottom: the job is made ready (`prepareJob`), every run is laid where the load is least
 * (`layFromNothing`), search and bound take turns until they meet or their steps run out (`layFewest`), second goals
 * are met with the planks found (`fewestWaiting`), pieces are booked to planks (`pairPieces`), and the plan is judged.
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
 * `limits.ts`, `layFewest.ts`, `fewestWaiting.ts` and `layApart.ts` put them together.
 *
 * - `onward` the rest of a floor of which rows lie, with offcuts in hand: the second front door, above this one
 *
 * `trim` stands apart: plain one-dimensional cutting, for pieces whose ends are all alike.
 */
import { fewestPossible } from './bound/bound';
import { FEW_OFFCUTS, fewestWaiting, maySavePlanks, SOME_OFFCUTS, type Waiting } from './fewestWaiting';
import type { Followed } from './follow/follow';
import { layFromBehind } from './follow/fromBehind';
import { pinnings } from './follow/pinned';
import type { CutJob, CutPlan } from './job';
import { judged } from './judge/judged';
import { layApart } from './layApart';
import { type LaidFloor, layFewest } from './layFewest';
import type { WorkOptions } from './limits';
import { cutPiecesLast } from './plan/cutLast';
import { ledgerOf } from './plan/ledger';
import { brokenRules, pairPieces } from './plan/pairing';
import { isLaidItself } from './runs/prepared';
import { finished, type Steps } from './steps';

/** Planks beyond those that are bought anyway that an easy plan may take where more than a few offcuts wait. */
const MOST_BEYOND = 3;

export interface PlanOptions extends WorkOptions {
  /** False leaves the plan as it was when the count was found: for whoever wants the count alone. */
  readonly secondGoals?: boolean;
  /** False: runs that end with a whole plank stay as they were found, which is a better start for the rest of a floor. */
  readonly isTurned?: boolean;
  /** False gives another plan of the floor: changed until few offcuts wait, and not laid row by row. */
  readonly isRowByRow?: boolean;
  /**
   * Planks that are bought anyway where so many are the fewest: up to so many are used where that makes the floor easier
   * to lay, and a few more where more than three offcuts would wait. Missing: the plan takes the fewest planks.
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
  return finished(planCutsInSteps(job, options));
}

/** The same, letter for letter, in steps of some milliseconds: it is left at a row laid, a level of heat, a turn. */
export function* planCutsInSteps(job: CutJob, options: PlanOptions = {}): Steps<CutPlan> {
  const asked: Asked = { ...options, means: { fromBehind: layFromBehind, pin: pinnings, apart: layApart } };
  const plan = yield* planWithStrips(job, asked);
  const isEasy = options.easyWithin !== undefined && job.ripPairs.length > 0;
  const chosen = isEasy ? yield* easierOf(job, plan, asked) : plan;
  yield;
  return judged(job, turned(job, chosen, options));
}

/** The same where there is no time for the last few offcuts, nor strips to save up: in cells. */
export function planCutsQuickly(job: CutJob, options: PlanOptions = {}): CutPlan {
  return finished(planCutsQuicklyInSteps(job, options));
}

/** The same in steps. */
export function* planCutsQuicklyInSteps(job: CutJob, options: PlanOptions = {}): Steps<CutPlan> {
  return judged(job, turned(job, yield* planWithStrips(job, options), options));
}

function turned(job: CutJob, plan: CutPlan, { isTurned = true }: PlanOptions): CutPlan {
  return isTurned ? cutPiecesLast(job, plan) : plan;
}

interface Asked extends PlanOptions {
  readonly means?: Waiting['means'];
}

function* planWithStrips(job: CutJob, options: Asked): Steps<CutPlan> {
  const { effort = 1 } = options;
  if (!(effort > 0 && effort < Number.POSITIVE_INFINITY))
    throw new RangeError(`The effort must be above 0, found ${effort}.`);
  const laid = yield* layFewest(job, 'laid alike', options);
  const plan = yield* planOf(laid, options);
  const isDone = plan.broken.length === 0 && laid.planks === laid.bound;
  if (isDone || laid.trial.prepared.runs.every(isLaidItself)) return plan;
  const freely = yield* layFewest(job, 'laid freely', options);
  return betterOf(job, plan, yield* planOf(freely, options));
}

/** A plan within the planks that are bought anyway, or one that saves no strips up: those wait from the first row to the last. */
function* easierOf(job: CutJob, plan: CutPlan, options: Asked): Steps<CutPlan> {
  const other = yield* planWithStrips({ ...job, ripPairs: [] }, options);
  const isWithin = other.plankCount <= Math.max(plan.plankCount, options.easyWithin?.(plan.bound) ?? 0);
  const isWorthIt = isWithin || (mostWaiting(job, plan) > FEW_OFFCUTS && mostWaiting(job, other) <= FEW_OFFCUTS);
  if (!isWorthIt || other.broken.length > plan.broken.length || mostWaiting(job, other) >= mostWaiting(job, plan))
    return plan;
  // What strips might save is still in the bound.
  const { bound } = plan;
  return { ...other, bound, stop: bound === other.plankCount ? 'proved fewest' : 'step limit' };
}

function mostWaiting(job: CutJob, plan: CutPlan): number {
  return ledgerOf(job, plan).waiting.most;
}

function* planOf(
  laid: LaidFloor,
  { secondGoals = true, isRowByRow = true, easyWithin, effort = 1, means }: Asked,
): Steps<CutPlan> {
  const { trial, planks } = laid;
  const { prepared } = trial;
  const spare = Math.max(0, (easyWithin?.(planks) ?? planks) - planks);
  const isFollowed = secondGoals || maySavePlanks(laid);
  const enough = easyWithin ? FEW_OFFCUTS : SOME_OFFCUTS;
  const within = function* (more: number): Steps<Followed> {
    return isFollowed ? yield* fewestWaiting(laid, more, { enough, isRowByRow, effort, means }) : laid.followed;
  };
  let followed = yield* within(0);
  let used = 0;
  // More planks only where fewer offcuts wait for them: those that are bought anyway, and then as few as it takes.
  const most = !easyWithin || !isFollowed ? 0 : followed.shared.strips.length > 0 ? spare : spare + MOST_BEYOND;
  for (let more = spare; more <= most && followed.most > (more > spare ? FEW_OFFCUTS : 0); more++) {
    const other = more === 0 ? followed : yield* within(more);
    if (other.most >= followed.most) continue;
    followed = other;
    used = more;
  }
  yield;
  const paired = pairPieces(prepared, followed.at, followed.shared.plankOf);
  // Now and then what is easier to lay takes a plank more: that is never worth it.
  const isDearer = paired.plankCount > planks + used;
  const { rows, plankCount } = isDearer ? pairPieces(prepared, laid.followed.at, laid.followed.shared.plankOf) : paired;
  yield;
  const broken = brokenRules(prepared.job, rows);
  const bound = broken.length > 0 ? fewestPossible(prepared.job, { upTo: 0 }) : laid.bound;
  const stop = bound === plankCount ? 'proved fewest' : 'step limit';
  return { rows, plankCount, bound, stop, steps: trial.steps, broken };
}

/**
 * The plan that breaks fewer rules, then needs fewer planks, then leaves fewer offcuts waiting; with the better of both
 * bounds if both are legal.
 */
function betterOf(job: CutJob, a: CutPlan, b: CutPlan): CutPlan {
  const by =
    b.broken.length - a.broken.length || b.plankCount - a.plankCount || mostWaiting(job, b) - mostWaiting(job, a);
  const plan = by < 0 ? b : a;
  const bounds = [a, b].filter((one) => one.broken.length === plan.broken.length).map((one) => one.bound);
  const bound = Math.max(...bounds);
  const stop = bound === plan.plankCount ? 'proved fewest' : 'step limit';
  return { ...plan, bound, stop, steps: a.steps + b.steps };
}
