/**
 * Which pieces share a plank, and what waits for it: the books of the search for a plan that people can follow, kept up
 * to date move by move. All of it is whole numbers.
 *
 * Pieces have numbers in laying order: 2r is the first piece of run r, or its only one, and 2r + 1 its last. Whole planks
 * between the ends are not in the books.
 */
import { madeOf } from '../../geometry/lists';
import { type Goals, goalsOf } from '../goals/goals';
import { lastPieceOf, type PreparedRun } from '../runs/prepared';
import type { Trial } from '../search/trial';

/** A strip that waits from the row it is ripped in to the row it serves. */
export interface StripWait {
  readonly from: number;
  readonly to: number;
}

/** Where the pieces come from before the search. */
export interface Shared {
  /** Plank of each piece; -1 for one that takes none, such as a strip. */
  readonly plankOf: Int32Array;
  /** Planks that no move may touch. */
  readonly fixedPlanks: readonly number[];
  readonly strips: readonly StripWait[];
}

export interface Sharing {
  readonly trial: Trial;
  readonly goals: Goals;
  readonly kerf: number;
  readonly play: number;
  /** Row and length of each piece, and its plank. */
  readonly rowOf: Int32Array;
  readonly lengthOf: Int32Array;
  readonly plankOf: Int32Array;
  /** First piece, last piece and wall-to-wall pieces of each plank; -1 for none. */
  readonly firstOn: Int32Array;
  readonly lastOn: Int32Array;
  readonly wallsOn: number[][];
  readonly isFixed: Uint8Array;
  /** Offcuts and strips that wait after each row. */
  readonly waiting: Int32Array;
  /** What so many that wait after one row cost. */
  readonly priceOf: Int32Array;
  /** Prices of all rows together. */
  price: number;
  rowsWaited: number;
  cuts: number;
  /** Planks in use. */
  used: number;
  /** Planks whose first piece is laid before the last one: it takes the end that the last piece cannot grow into. */
  turned: number;
  /** Planks whose pieces do not fit, `OVER_PLANK` each, and the units that are missing on them. */
  over: number;
}

/** A plank that does not fit counts as this many units, and those that are missing. */
const OVER_PLANK = 1000;

/** @param priceOf by how many wait after a row; as many entries as there are pieces and strips, and one */
export function sharingOf(trial: Trial, shared: Shared, priceOf: Int32Array): Sharing {
  const { runs, job } = trial.prepared;
  // A plank for every piece: a move may share less.
  const planks = 2 * runs.length;
  const sharing: Sharing = {
    trial,
    goals: goalsOf(trial),
    kerf: job.kerf,
    play: job.play ?? 0,
    rowOf: Int32Array.from({ length: 2 * runs.length }, (_, piece) => runs[piece >> 1].rowIndex),
    lengthOf: new Int32Array(2 * runs.length),
    plankOf: shared.plankOf.slice(),
    firstOn: new Int32Array(planks).fill(-1),
    lastOn: new Int32Array(planks).fill(-1),
    wallsOn: madeOf(planks, () => []),
    isFixed: new Uint8Array(planks),
    waiting: new Int32Array(job.rows.length),
    priceOf,
    price: 0,
    rowsWaited: 0,
    cuts: 0,
    used: 0,
    turned: 0,
    over: 0,
  };
  for (const plank of shared.fixedPlanks) sharing.isFixed[plank] = 1;
  for (const run of runs) measure(sharing, run);
  shared.plankOf.forEach((plank, piece) => {
    if (plank >= 0) put(sharing, plank, piece, -1);
  });
  for (const { from, to } of shared.strips) wait(sharing, from, to, 1);
  for (let plank = 0; plank < planks; plank++) book(sharing, plank, 1);
  return sharing;
}

/** Whether a piece ends a run longer than a plank. */
export function isLast(piece: number): boolean {
  return (piece & 1) === 1;
}

function isWallToWall({ trial }: Sharing, piece: number): boolean {
  return trial.prepared.runs[piece >> 1].isWallToWall;
}

/** Writes the lengths of a run's end pieces after its first piece has changed; the caller sees to the books. */
export function measure({ trial, lengthOf }: Sharing, run: PreparedRun): void {
  const { at, prepared } = trial;
  if (run.isWallToWall) {
    lengthOf[2 * run.index] = run.length;
    return;
  }
  lengthOf[2 * run.index] = at[run.index];
  lengthOf[2 * run.index + 1] = lastPieceOf(run, at[run.index], prepared.plankLength);
}

/** Enters (1) or strikes out (-1) what a plank contributes. */
export function book(sharing: Sharing, plank: number, by: number): void {
  const first = sharing.firstOn[plank];
  const last = sharing.lastOn[plank];
  const walls = sharing.wallsOn[plank];
  const count = (first < 0 ? 0 : 1) + (last < 0 ? 0 : 1) + walls.length;
  if (count === 0) return;
  const { rowOf } = sharing;
  sharing.used += by;
  if (first >= 0 && last > first) sharing.turned += by;
  const some = first >= 0 ? first : last >= 0 ? last : walls[0];
  let from = rowOf[some];
  let to = last >= 0 ? rowOf[last] : from;
  if (to < from) [from, to] = [to, from];
  for (let i = 0; i < walls.length; i++) {
    const row = rowOf[walls[i]];
    if (row < from) from = row;
    if (row > to) to = row;
  }
  const short = shortOn(sharing, plank, -1, -1);
  const left = playOn(sharing, plank, -1, -1) - short;
  sharing.cuts += by * (count - 1 + (left > 0 ? 1 : 0));
  if (short > 0) sharing.over += by * (OVER_PLANK + short);
  if (to > from) wait(sharing, from, to, by);
}

function wait(sharing: Sharing, from: number, to: number, by: number): void {
  const { waiting, priceOf } = sharing;
  let change = 0;
  for (let row = from; row < to; row++) {
    const before = waiting[row];
    waiting[row] = before + by;
    change += priceOf[before + by] - priceOf[before];
  }
  sharing.price += change;
  sharing.rowsWaited += by * (to - from);
}

/**
 * By how much pieces, kerfs and play are longer than their plank; not above 0 where they fit.
 *
 * @param without a piece that is left out, and `added` one that is counted in with no length; -1 for none
 */
export function shortOn(sharing: Sharing, plank: number, without: number, added: number): number {
  const { lengthOf, firstOn, lastOn, wallsOn, kerf, trial } = sharing;
  const first = firstOn[plank];
  const last = lastOn[plank];
  const walls = wallsOn[plank];
  let short = -trial.prepared.plankLength - kerf;
  if (first >= 0 && first !== without) short += lengthOf[first] + kerf;
  if (last >= 0 && last !== without) short += lengthOf[last] + kerf;
  for (let i = 0; i < walls.length; i++) if (walls[i] !== without) short += lengthOf[walls[i]] + kerf;
  if (added >= 0) short += kerf;
  return sharing.play === 0 ? short : short + playOn(sharing, plank, without, added);
}

/** Play of every last and wall-to-wall piece of a plank but the one that is laid first. */
function playOn(sharing: Sharing, plank: number, without: number, added: number): number {
  const { firstOn, lastOn, wallsOn, play } = sharing;
  if (play === 0) return 0;
  const last = lastOn[plank];
  const walls = wallsOn[plank];
  let earliest = Number.POSITIVE_INFINITY;
  let count = 0;
  const countIn = (piece: number): void => {
    if (piece < 0 || piece === without) return;
    count++;
    if (piece < earliest) earliest = piece;
  };
  countIn(last);
  for (let i = 0; i < walls.length; i++) countIn(walls[i]);
  if (added >= 0 && (isLast(added) || isWallToWall(sharing, added))) countIn(added);
  if (count === 0) return 0;
  const first = added >= 0 && !isLast(added) && !isWallToWall(sharing, added) ? added : firstOn[plank];
  const isFirstLaidFirst = first >= 0 && first !== without && first < earliest;
  return play * (isFirstLaidFirst ? count : count - 1);
}

/** Puts a piece onto a plank in place of another (-1 for none); the caller sees to the books and to the other. */
export function put(sharing: Sharing, plank: number, piece: number, instead: number): void {
  sharing.plankOf[piece] = plank;
  if (isLast(piece)) sharing.lastOn[plank] = piece;
  else if (!isWallToWall(sharing, piece)) sharing.firstOn[plank] = piece;
  else if (instead < 0) sharing.wallsOn[plank].push(piece);
  else sharing.wallsOn[plank][sharing.wallsOn[plank].indexOf(instead)] = piece;
}

/** Takes a piece off a plank; the caller sees to the books and to the piece. */
export function takeOff(sharing: Sharing, plank: number, piece: number): void {
  if (isLast(piece)) sharing.lastOn[plank] = -1;
  else if (!isWallToWall(sharing, piece)) sharing.firstOn[plank] = -1;
  else sharing.wallsOn[plank] = sharing.wallsOn[plank].filter((other) => other !== piece);
}

/** A plank that nothing is cut from, looked for from `start` on; -1 for none. */
export function emptyPlank({ firstOn, lastOn, wallsOn }: Sharing, start: number): number {
  const count = firstOn.length;
  for (let i = 0; i < count; i++) {
    const plank = (start + i) % count;
    if (firstOn[plank] < 0 && lastOn[plank] < 0 && wallsOn[plank].length === 0) return plank;
  }
  return -1;
}
