/**
 * Moves of the search for a plan that people can follow. A move is made, looked at and, if it costs too much, taken back:
 *
 * - two runs of one rest change places and take the pieces they share planks with along,
 * - a first, last or wall-to-wall piece goes over to another plank, and the piece of its kind there comes back for it,
 * - a first piece grows or shrinks.
 *
 * Where pieces do not fit then, runs along the path of shared planks give way.
 */
import { alignedJoints, alignedOfBoth, type Goals, stairsOfBoth, stairsWith } from '../goals/goals';
import { costsByPair, type PreparedRun } from '../runs/prepared';
import { nearAt } from '../runs/stagger';
import { drawBelow } from '../search/seeded';
import { setFirst } from '../search/trial';
import { book, isLast, measure, put, type Sharing, shortOn, takeOff } from './sharing';

/** What the goals weigh against each other and against the prices of waiting, whole numbers. */
export interface FollowWeights {
  readonly rowWaited: number;
  readonly cut: number;
  /** A cut above so many. */
  readonly cutAbove: number;
  readonly cutsFree: number;
  readonly aligned: number;
  readonly stair: number;
  /** A unit of what does not fit its plank (see `Sharing.over`). */
  readonly over: number;
  readonly plank: number;
  /** A plank shared against the natural way (see `Sharing.turned`). */
  readonly turned: number;
}

export interface Moving {
  readonly sharing: Sharing;
  weights: FollowWeights;
  /** Planks struck out of the books while a move is tried. */
  readonly touched: Int32Array;
  touchedCount: number;
  /** Runs that have moved in this move, the first pieces they had, and those they have. */
  readonly moved: Int32Array;
  readonly oldFirsts: Int32Array;
  readonly newFirsts: Int32Array;
  movedCount: number;
  /** Room for the two ends of a range. */
  readonly range: Int32Array;
}

/** Per cent of the pieces that go over which are cut to fill their plank up, and of those that grow which keep it full. */
const FILL_SHARE = 50;
const RIGID_SHARE = 70;
/** Runs that may give way in one move. */
const MOST_MOVED = 12;

export function movingOf(sharing: Sharing, weights: FollowWeights): Moving {
  return {
    sharing,
    weights,
    touched: new Int32Array(2 * MOST_MOVED + 8),
    touchedCount: 0,
    moved: new Int32Array(MOST_MOVED),
    oldFirsts: new Int32Array(MOST_MOVED),
    newFirsts: new Int32Array(MOST_MOVED),
    movedCount: 0,
    range: new Int32Array(2),
  };
}

/** What everything costs now. */
export function costOf(moving: Moving): number {
  const { goals } = moving.sharing;
  return bookedCost(moving) + moving.weights.aligned * goals.aligned + moving.weights.stair * goals.stairs;
}

/** What the books cost now, all but the joints. */
function bookedCost({ sharing, weights }: Moving): number {
  const above = sharing.cuts - weights.cutsFree;
  return (
    sharing.price +
    weights.rowWaited * sharing.rowsWaited +
    weights.cut * sharing.cuts +
    (above > 0 ? weights.cutAbove * above : 0) +
    weights.over * sharing.over +
    weights.plank * sharing.used +
    weights.turned * sharing.turned
  );
}

/** More than joints can be bettered by in one move. */
function hopeOf({ sharing, weights }: Moving): number {
  return weights.aligned * sharing.goals.aligned + 6 * weights.stair;
}

/** Whether two runs may change places: each can be laid with the first piece of the other, and no strips bind them. */
export function areAlike(a: PreparedRun, b: PreparedRun): boolean {
  return a.rest === b.rest && a.isWallToWall === b.isWallToWall && isUnbound(a) && isUnbound(b);
}

function isUnbound(run: PreparedRun): boolean {
  return run.strips.role === 'none';
}

/** Two runs alike change places, if that costs no more than `most` above what is. */
export function tryChangePlaces(moving: Moving, a: PreparedRun, b: PreparedRun, most: number): boolean {
  const { sharing } = moving;
  const { trial, plankOf } = sharing;
  swapRuns(sharing, a, b);
  const isStaggered = nearAt(trial, a) === 0 && nearAt(trial, b) === 0;
  swapRuns(sharing, a, b);
  if (!isStaggered) return false;
  const before = begin(moving);
  touch(moving, plankOf[2 * a.index]);
  touch(moving, plankOf[2 * b.index]);
  if (!a.isWallToWall) {
    touch(moving, plankOf[2 * a.index + 1]);
    touch(moving, plankOf[2 * b.index + 1]);
  }
  changePlaces(sharing, a, b);
  bookTouched(moving, 1);
  const booked = bookedCost(moving) - before;
  if (booked - hopeOf(moving) <= most && jointsAllowSwap(moving, a, b, most - booked)) return true;
  bookTouched(moving, -1);
  changePlaces(sharing, a, b);
  bookTouched(moving, 1);
  return false;
}

function swapRuns({ trial }: Sharing, a: PreparedRun, b: PreparedRun): void {
  const at = trial.at[a.index];
  trial.at[a.index] = trial.at[b.index];
  trial.at[b.index] = at;
}

function changePlaces(sharing: Sharing, a: PreparedRun, b: PreparedRun): void {
  const { plankOf } = sharing;
  swapRuns(sharing, a, b);
  measure(sharing, a);
  measure(sharing, b);
  for (let i = 0; i < (a.isWallToWall ? 1 : 2); i++) {
    const p = 2 * a.index + i;
    const q = 2 * b.index + i;
    const plankOfP = plankOf[p];
    const plankOfQ = plankOf[q];
    if (plankOfP === plankOfQ) continue;
    put(sharing, plankOfP, q, p);
    put(sharing, plankOfQ, p, q);
  }
}

function jointsAllowSwap({ sharing, weights }: Moving, a: PreparedRun, b: PreparedRun, most: number): boolean {
  const { goals } = sharing;
  let aligned = alignedOfBoth(goals, a, b);
  let stairs = stairsOfBoth(goals, a, b);
  swapRuns(sharing, a, b);
  aligned -= alignedOfBoth(goals, a, b);
  stairs -= stairsOfBoth(goals, a, b);
  swapRuns(sharing, a, b);
  if (weights.aligned * aligned + weights.stair * stairs > most) return false;
  goals.aligned += aligned;
  goals.stairs += stairs;
  return true;
}

/**
 * A piece goes over to a plank, and the piece `back` of its kind there (-1 for none) comes back for it, if that costs no
 * more than `most` above what is. Where one does not fit, it or its partner is cut to what there is; what the other end
 * of that run gains, the next partner gives, and so on along the path of runs.
 */
export function tryGoOver(moving: Moving, piece: number, to: number, back: number, most: number): boolean {
  const { sharing } = moving;
  const { plankOf, isFixed } = sharing;
  const from = plankOf[piece];
  if (from === to || isFixed[from] === 1 || isFixed[to] === 1) return false;
  const isExact = drawBelow(sharing.trial.seeded, 100) < FILL_SHARE;
  const before = begin(moving);
  touch(moving, from);
  touch(moving, to);
  goOver(sharing, piece, from, to, back);
  const isSettled = settle(moving, to, -1, isExact) && settle(moving, from, -1, isExact);
  if (finish(moving, before, most, isSettled)) return true;
  goOver(sharing, piece, to, from, back);
  bookTouched(moving, 1);
  return false;
}

function goOver(sharing: Sharing, piece: number, from: number, to: number, back: number): void {
  if (back < 0) {
    takeOff(sharing, from, piece);
    put(sharing, to, piece, -1);
    return;
  }
  put(sharing, to, piece, back);
  put(sharing, from, back, piece);
}

/** A run gets another first piece, if that costs no more than `most` above what is. */
export function tryFirst(moving: Moving, run: PreparedRun, first: number, most: number): boolean {
  const { sharing } = moving;
  const { plankOf, trial } = sharing;
  if (!isInSameStretch(run, trial.at[run.index], first)) return false;
  const own = 2 * run.index;
  const before = begin(moving);
  remember(moving, run);
  const isRigid = drawBelow(sharing.trial.seeded, 100) < RIGID_SHARE;
  const isFirstFull = isRigid && isFull(sharing, plankOf[own]);
  const isLastFull = isRigid && isFull(sharing, plankOf[own + 1]);
  touch(moving, plankOf[own]);
  touch(moving, plankOf[own + 1]);
  lay(sharing, run, first);
  const isSettled =
    settle(moving, plankOf[own], own, isFirstFull) && settle(moving, plankOf[own + 1], own + 1, isLastFull);
  if (finish(moving, before, most, isSettled)) return true;
  bookTouched(moving, 1);
  return false;
}

/**
 * The shortest and the longest first piece that a run may have beside the partners of its ends, written into `range`; the
 * first is longer than the second where there is none.
 */
export function leftByPartners(sharing: Sharing, run: PreparedRun, range: Int32Array): void {
  const { trial, plankOf, lengthOf } = sharing;
  const s = trial.at[run.index];
  const first = 2 * run.index;
  const last = first + 1;
  const { from, to } = s < run.rest ? run.low : run.high;
  range[0] = from;
  range[1] = to;
  if (plankOf[first] < 0 || plankOf[first] === plankOf[last]) return;
  range[1] = Math.min(range[1], -shortOn(sharing, plankOf[first], first, first));
  range[0] = Math.max(range[0], s + lengthOf[last] + shortOn(sharing, plankOf[last], last, last));
}

function begin(moving: Moving): number {
  moving.touchedCount = 0;
  moving.movedCount = 0;
  return bookedCost(moving);
}

function touch(moving: Moving, plank: number): void {
  if (plank < 0) return;
  const { touched } = moving;
  for (let i = 0; i < moving.touchedCount; i++) if (touched[i] === plank) return;
  touched[moving.touchedCount++] = plank;
  book(moving.sharing, plank, -1);
}

function bookTouched(moving: Moving, by: number): void {
  for (let i = 0; i < moving.touchedCount; i++) book(moving.sharing, moving.touched[i], by);
}

/**
 * Books what was touched, if it may be and costs no more than `most` above what was; else sets the runs back that have
 * moved, and leaves everything touched struck out for the caller to undo the rest.
 */
function finish(moving: Moving, before: number, most: number, mayBe: boolean): boolean {
  if (mayBe && areStaggered(moving)) {
    bookTouched(moving, 1);
    const booked = bookedCost(moving) - before;
    if (booked - hopeOf(moving) <= most && jointsAllow(moving, most - booked)) return true;
    bookTouched(moving, -1);
  }
  const { runs } = moving.sharing.trial.prepared;
  for (let i = 0; i < moving.movedCount; i++) lay(moving.sharing, runs[moving.moved[i]], moving.oldFirsts[i]);
  return false;
}

/**
 * Makes the pieces of a plank (-1 for none) fit, with `kept` as it is; answers whether they do now.
 *
 * @param isExact whether they shall fill it up, if they can: a cut is saved where they do
 */
function settle(moving: Moving, plank: number, kept: number, isExact: boolean): boolean {
  const { sharing } = moving;
  const { plankOf, trial, isFixed } = sharing;
  let keep = kept;
  let fill = isExact;
  for (let at = plank; at >= 0; ) {
    const short = shortOn(sharing, at, -1, -1);
    if (short === 0 || (short < 0 && !fill)) return true;
    const giving = isFixed[at] === 1 ? -1 : drawGiving(sharing, at, keep);
    if (giving < 0) return short < 0;
    const run = trial.prepared.runs[giving >> 1];
    const s = trial.at[run.index];
    const first = isLast(giving) ? s + short : s - short;
    if (!isInSameStretch(run, s, first) || !remember(moving, run)) return short < 0;
    keep = giving ^ 1;
    at = plankOf[keep];
    fill = isFull(sharing, at);
    touch(moving, at);
    lay(sharing, run, first);
  }
  return true;
}

/** Whether pieces that share a plank fill it up. */
function isFull(sharing: Sharing, plank: number): boolean {
  return (
    plank >= 0 && sharing.firstOn[plank] >= 0 && sharing.lastOn[plank] >= 0 && shortOn(sharing, plank, -1, -1) === 0
  );
}

/** A first or last piece on a plank that may be cut shorter, not `kept`; -1 for none. */
function drawGiving(sharing: Sharing, plank: number, kept: number): number {
  const { firstOn, lastOn, trial } = sharing;
  const first = mayGive(sharing, firstOn[plank], kept) ? firstOn[plank] : -1;
  const last = mayGive(sharing, lastOn[plank], kept) ? lastOn[plank] : -1;
  if (first < 0 || last < 0) return Math.max(first, last);
  return drawBelow(trial.seeded, 2) === 0 ? first : last;
}

function mayGive({ trial }: Sharing, piece: number, kept: number): boolean {
  return piece >= 0 && piece !== kept && !costsByPair(trial.prepared.runs[piece >> 1]);
}

/** Notes the first piece of a run before it moves; false where it has moved already, or too many have. */
function remember(moving: Moving, run: PreparedRun): boolean {
  const { moved, oldFirsts, sharing } = moving;
  if (moving.movedCount === MOST_MOVED) return false;
  for (let i = 0; i < moving.movedCount; i++) if (moved[i] === run.index) return false;
  moved[moving.movedCount] = run.index;
  oldFirsts[moving.movedCount++] = sharing.trial.at[run.index];
  return true;
}

/** Whether a run has as many whole planks with one first piece as with another, and may have the other. */
function isInSameStretch(run: PreparedRun, s: number, other: number): boolean {
  const { from, to } = s < run.rest ? run.low : run.high;
  return other >= from && other <= to;
}

function lay(sharing: Sharing, run: PreparedRun, first: number): void {
  setFirst(sharing.trial, run, first);
  measure(sharing, run);
}

/** Whether the runs that have moved keep their stagger. */
function areStaggered({ sharing, moved, movedCount }: Moving): boolean {
  const { trial } = sharing;
  for (let i = 0; i < movedCount; i++) if (nearAt(trial, trial.prepared.runs[moved[i]]) > 0) return false;
  return true;
}

/** Whether aligned joints and stair-steps of the runs that have moved cost no more than `most`; counts them if so. */
function jointsAllow({ sharing, weights, moved, movedCount, oldFirsts, newFirsts }: Moving, most: number): boolean {
  if (movedCount === 0) return most >= 0;
  const { goals, trial } = sharing;
  const { runs } = trial.prepared;
  let aligned = 0;
  let stairs = 0;
  // One run after the other is set back, so that what lies between two of them counts once.
  for (let i = 0; i < movedCount; i++) {
    const run = runs[moved[i]];
    newFirsts[i] = trial.at[run.index];
    aligned += alignedOfRun(goals, run);
    stairs += stairsOfRun(goals, run);
    setFirst(trial, run, oldFirsts[i]);
    aligned -= alignedOfRun(goals, run);
    stairs -= stairsOfRun(goals, run);
  }
  for (let i = 0; i < movedCount; i++) setFirst(trial, runs[moved[i]], newFirsts[i]);
  if (weights.aligned * aligned + weights.stair * stairs > most) return false;
  goals.aligned += aligned;
  goals.stairs += stairs;
  return true;
}

function alignedOfRun(goals: Goals, run: PreparedRun): number {
  const { runs } = goals.trial.prepared;
  const { strips } = run;
  return strips.role === 'leads' ? alignedOfBoth(goals, run, runs[strips.follower]) : alignedJoints(goals, run);
}

function stairsOfRun(goals: Goals, run: PreparedRun): number {
  const { runs } = goals.trial.prepared;
  const { strips } = run;
  return strips.role === 'leads' ? stairsOfBoth(goals, run, runs[strips.follower]) : stairsWith(goals, run);
}
