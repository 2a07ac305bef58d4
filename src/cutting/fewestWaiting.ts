/** The planks that were found shared anew, and runs laid anew, until few offcuts wait. */
import { type Followed, follow, MANY_RUNS } from './follow/follow';
import { layRowByRow, type RowByRowGoal } from './follow/rowByRow';
import type { Shared } from './follow/sharing';
import { goalsOf } from './goals/goals';
import { polish } from './goals/polish';
import { isStaggered, type LaidFloor, worthIn } from './layFewest';
import { sharedOf } from './plan/pairing';
import { layAll } from './search/trial';
import type { Steps } from './steps';

/** Offcuts that may wait and what they cost, one try after another: with few ways kept, then with many. */
const TRIES = [2, 3, 5, 8].map((most) => ({ most, offcut: 3000 }));
const LONG_TRIES = [3, 5, 8, 8].map((most) => ({ most, offcut: 1000 }));
/** With so few waiting no other way is looked for, and with so few none that takes long. */
export const FEW_OFFCUTS = 3;
export const SOME_OFFCUTS = 5;
/** Cuts of a large floor laid row by row above which it is not taken, against those after the polish. */
const MANY_CUTS = 1.15;

export interface Waiting {
  /** Offcuts waiting at once for which no way is looked for that takes long. */
  readonly enough: number;
  /** False looks for another plan: changed until few offcuts wait, and not laid row by row. */
  readonly isRowByRow: boolean;
  readonly effort: number;
  /** Ways that take long, or know strips; without them it is done quickly. */
  readonly means?: Means;
}

interface Means extends Pick<RowByRowGoal, 'fromBehind' | 'pin'> {
  /** Lays a large floor in lengths of rows alike, in so many planks at the most (`layApart.ts`). */
  readonly apart: (laid: LaidFloor, most: number, how: Waiting) => Steps<Followed | undefined>;
}

/**
 * @param more planks that may be used beyond the fewest
 */
export function* fewestWaiting(laid: LaidFloor, more: number, how: Waiting): Steps<Followed> {
  const { limits } = laid;
  const { enough, isRowByRow, means } = how;
  const rows = isRowByRow && isStaggered(laid);
  const found = rows ? yield* withFewWays(laid, more, means) : undefined;
  if (found && found.most <= FEW_OFFCUTS) return found;
  const isLarge = laid.trial.prepared.runs.length > MANY_RUNS;
  const isTriedApart = means && rows && isLarge && (!found || found.most > enough);
  const apart = isTriedApart ? yield* means.apart(laid, laid.planks + more, how) : undefined;
  if (apart && apart.most < (found?.most ?? Number.POSITIVE_INFINITY)) return apart;
  const changed = yield* polishedWithin(laid, more);
  const best = found && found.most <= changed.most ? found : changed;
  if (!rows || !means || limits.manyWays === 0 || best.most <= enough) return best;
  const strips = best.shared.strips.length;
  const tries = [...LONG_TRIES, { most: best.most - 1, offcut: 1000 }].filter(({ most }) => most + strips <= best.most);
  const { fromBehind, pin } = means;
  const long = yield* rowByRowWithin(laid, more, { width: limits.manyWays, tries, fromBehind, pin });
  return long && long.most < best.most ? long : best;
}

function* withFewWays(laid: LaidFloor, more: number, means: Waiting['means']): Steps<Followed | undefined> {
  const { trial, limits, followed, isSavedByRows } = laid;
  if (isSavedByRows && more === 0) {
    layAll(trial, followed.at);
    return yield* follow(trial, followed.shared, { moves: limits.moves, spare: 0, isInOrder: true });
  }
  const found = yield* rowByRowWithin(laid, more, { width: limits.ways, tries: TRIES, pin: means?.pin });
  return found && !isSavedByRows && takesManyCuts(laid, found) ? undefined : found;
}

function* polishedWithin(laid: LaidFloor, more: number): Steps<Followed> {
  const { trial, limits, followed } = laid;
  const shared = polished(laid);
  yield;
  // Where no two pieces share a plank nothing waits, and the joints are polished.
  if (!maySavePlanks(laid) && !sharesPlanks(shared)) return { ...followed, at: trial.at.slice(), shared };
  return yield* follow(trial, shared, { moves: limits.moves, spare: more });
}

/** With play a plank may still be saved on the way: the count of a floor is the count of its plan. */
export function maySavePlanks({ trial, planks, bound }: LaidFloor): boolean {
  return (trial.prepared.job.play ?? 0) > 0 && planks > bound;
}

/** Planks shared anew after a short polish of joints and cuts; pieces that were made to fit their planks stay as they are. */
function polished({ trial, limits, followed, planks, isSavedByRows }: LaidFloor): Shared {
  const { prepared } = trial;
  layAll(trial, followed.at);
  if (isSavedByRows || prepared.kerf < prepared.job.kerf + (prepared.job.play ?? 0)) return followed.shared;
  trial.at.set(polish(trial, planks, limits.polish));
  return sharedOf(prepared, trial.at);
}

/** Laid row by row with the fewest offcuts waiting that are found; undefined where that takes more planks. */
function* rowByRowWithin(
  laid: LaidFloor,
  more: number,
  how: Omit<RowByRowGoal, 'planks'>,
): Steps<Followed | undefined> {
  const { trial, limits, followed } = laid;
  const goal = { planks: laid.planks + more, ...how };
  const found = yield* layRowByRow(trial, followed.at, worthIn(laid), goal);
  if (!found) return undefined;
  layAll(trial, found.at);
  const spare = goal.planks - found.planks;
  return yield* follow(trial, found.shared, { moves: limits.moves, spare, isInOrder: true });
}

/** Whether a large floor laid row by row takes more cuts than the polish and a few more; on small ones that is seldom so. */
export function takesManyCuts({ trial, followed, planks, limits }: LaidFloor, { cuts }: Followed): boolean {
  if (trial.prepared.runs.length <= MANY_RUNS) return false;
  layAll(trial, followed.at);
  trial.at.set(polish(trial, planks, limits.polish));
  return cuts > goalsOf(trial).cuts * MANY_CUTS;
}

/** Whether any plank gives two end pieces, or a strip. */
function sharesPlanks({ plankOf, strips }: Shared): boolean {
  const planks = plankOf.filter((plank) => plank >= 0);
  return strips.length > 0 || new Set(planks).size < planks.length;
}
