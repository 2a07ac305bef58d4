/**
 * What one more run leaves of the offcuts against the wall while a floor is laid row by row.
 */
import { lastPieceOf, type PreparedRun } from '../runs/prepared';
import type { Standings } from './standings';
import type { Worth } from './worth';

/** The end pieces that an offcut may give; pieces from wall to wall come from any. */
export const FIRST = 1;
export const LAST = 2;

/** Where the end pieces of a run are cut from: offcuts by their place, a new plank, a strip, or the last from the plank of the first. */
export interface Cutting {
  readonly first: number;
  readonly firstOf: number;
  readonly lastOf: number;
}

export const NEW = -1;
export const SAME = -2;
export const STRIP = -3;

/** What an offcut must be to be kept, and what lies between two pieces of a plank. */
export interface Keeping {
  readonly plankLength: number;
  readonly kerf: number;
  readonly play: number;
  /** Play that a first and a last piece cost an offcut: which it is depends on the side that the floor is laid from. */
  readonly firstPlay: number;
  readonly lastPlay: number;
  /** The shortest offcut that any piece could be cut from. */
  readonly shortest: number;
  readonly hasWalls: boolean;
  readonly worth: Worth;
}

/** What a run leaves, with memory for two offcuts of which `count` are kept. */
export interface Leaving {
  readonly lengths: Int32Array;
  readonly gives: Int32Array;
  readonly values: Float64Array;
  /** Whether it is left of the plank of the last piece. */
  readonly isOfLast: boolean[];
  count: number;
  /** Cuts made. */
  cuts: number;
  /** Worth of what is left and not kept. */
  lost: number;
}

export function noLeaving(): Leaving {
  return {
    lengths: new Int32Array(2),
    gives: new Int32Array(2),
    values: new Float64Array(2),
    isOfLast: [false, false],
    count: 0,
    cuts: 0,
    lost: 0,
  };
}

/**
 * Cuts the end pieces of a run: what they leave that may serve another piece is written into `leaving`.
 *
 * @param start where the offcuts of the standing at work begin
 */
export function cutRun(
  leaving: Leaving,
  keeping: Keeping,
  { lengths, gives, values }: Standings,
  start: number,
  run: PreparedRun,
  { first, firstOf, lastOf }: Cutting,
): void {
  const { plankLength: L, kerf, play, firstPlay, lastPlay, worth } = keeping;
  const { plank, upTo } = worth;
  leaving.count = 0;
  leaving.cuts = 0;
  leaving.lost = 0;
  const isNew = firstOf < 0;
  const given = isNew ? FIRST | LAST : gives[start + firstOf];
  const value = isNew ? plank : values[start + firstOf];
  if (run.isWallToWall) {
    const rest = isNew ? L - run.length : lengths[start + firstOf] - kerf - run.length - play;
    keep(leaving, keeping, rest, given, value - worth.walls[run.index], false);
    return;
  }
  const last = lastPieceOf(run, first, L);
  const rest = isNew ? L - first : lengths[start + firstOf] - kerf - first - firstPlay;
  const restValue = value - upTo[first + kerf];
  const lastCost = plank - upTo[L - last];
  if (lastOf === SAME) {
    leaving.cuts++;
    keep(leaving, keeping, rest - kerf - last - play, 0, restValue - lastCost, false);
    return;
  }
  if (firstOf !== STRIP) keep(leaving, keeping, rest, given & LAST, restValue, false);
  if (lastOf === NEW) keep(leaving, keeping, L - last, FIRST, upTo[L - last], true);
  else if (lastOf !== STRIP) {
    const at = start + lastOf;
    keep(leaving, keeping, lengths[at] - kerf - last - lastPlay, gives[at] & FIRST, values[at] - lastCost, true);
  }
}

function keep(
  leaving: Leaving,
  { shortest, hasWalls }: Keeping,
  length: number,
  gives: number,
  value: number,
  isOfLast: boolean,
): void {
  if (length > 0) leaving.cuts++;
  if (length < shortest || (gives === 0 && !hasWalls)) {
    leaving.lost += value;
    return;
  }
  leaving.lengths[leaving.count] = length;
  leaving.gives[leaving.count] = gives;
  leaving.values[leaving.count] = value;
  leaving.isOfLast[leaving.count++] = isOfLast;
}
