/** The walls of a room and places measured along them. */

import { inwards } from '../geometry/inwards';
import { type Ticks, toTicks } from '../geometry/length';
import { entryAfter } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { type FacePlace, outAt } from './bows';
import type { WallCorners } from './corners';
import { bad, type Checked, good } from './faults';

export interface Wall {
  /** Counted from 1, in the person's order. */
  readonly wallNumber: number;
  /** In the direction in which the person walked. */
  readonly from: Point;
  readonly to: Point;
  /** As drawn, to the nearest tick. */
  readonly length: Ticks;
  /** As measured; a misfit that was spread makes the two differ. */
  readonly measured: Ticks;
  /** Unit direction from start to end, and from the wall into the room. */
  readonly along: Direction;
  readonly inward: Direction;
  /** Where its face leaves the straight line, in the order of walking; empty for a straight wall. */
  readonly face: readonly FacePlace[];
}

export interface Direction {
  readonly x: number;
  readonly y: number;
}

export function wallsOf(
  { corners, measured }: WallCorners,
  isClockwise: boolean,
  faces: readonly (readonly FacePlace[])[] = [],
): readonly Wall[] {
  return corners.map((from, i) => {
    const to = entryAfter(corners, i);
    const exact = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2);
    const along = { x: (to.x - from.x) / exact, y: (to.y - from.y) / exact };
    const inward = isClockwise ? { x: along.y, y: 0 - along.x } : { x: 0 - along.y, y: along.x };
    return {
      wallNumber: i + 1,
      from,
      to,
      length: toTicks(exact),
      measured: measured[i],
      along,
      inward,
      face: faces[i] ?? [],
    };
  });
}

/** Our choice: walls nearer in direction than this are out of square to each other, not a direction of their own. */
export const OUT_OF_SQUARE_DEGREES = 5;

/** A wall whose ends were rounded one by one may be this far off level or upright, ticks. */
const LEVEL_ROUNDING: Ticks = 2;

/** Direction of a wall, degrees anticlockwise from x, 0 up to 180: exact for level and upright walls. */
export function degreesAlong({ from, to }: Wall): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (Math.abs(dy) <= LEVEL_ROUNDING) return 0;
  if (Math.abs(dx) <= LEVEL_ROUNDING) return 90;
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  return degrees < 0 ? degrees + 180 : degrees;
}

/** Rows have no forward: the same direction above -45 and up to 135 degrees, so that what is near stays near. */
export function rowDegrees(degrees: number): number {
  const turn = ((degrees % 180) + 180) % 180;
  return turn > 135 ? turn - 180 : turn;
}

/** Our choice: of walls as long as this share of the longest the one nearest to level counts as the longest. */
const AS_LONG = 0.99;

/**
 * Which way is lengthwise, degrees as by `rowDegrees`: along the longest straight wall.
 *
 * @param isFree whether any wall may be it; else only one that runs along x, give or take what is out of square: in a room
 *   that was measured as length and width it is known which way its length lies
 */
export function lengthwiseOf(walls: readonly Wall[], isFree: boolean): number {
  const offLevel = (wall: Wall) => Math.min(degreesAlong(wall), 180 - degreesAlong(wall));
  const straight = walls.filter(({ face }) => face.length === 0);
  const open = isFree ? straight : straight.filter((wall) => offLevel(wall) <= OUT_OF_SQUARE_DEGREES);
  const longest = Math.max(0, ...open.map(({ length }) => length));
  const asLong = open.filter(({ length }) => length >= longest * AS_LONG);
  const levelFirst = asLong.sort((a, b) => offLevel(a) - offLevel(b));
  return levelFirst.length > 0 ? rowDegrees(degreesAlong(levelFirst[0])) : 0;
}

/** The wall a cut-out or doorway is measured from. */
export function wallNumbered(
  walls: readonly Wall[],
  wallNumber: number,
  what: 'cut-out' | 'doorway',
  number: number,
): Checked<Wall> {
  const wall = walls.find((candidate) => candidate.wallNumber === wallNumber);
  if (wall) return good(wall);
  return bad({ code: 'no such wall', what, number, found: wallNumber, wallCount: walls.length });
}

/** The point of a wall's face `along` ticks from its start, wherever it bows. */
export function faceAt(wall: Wall, along: Ticks): Point {
  return placeAt(wall, along, -outAt(wall.face, along, wall.length));
}

/** Points where the face of a wall turns, in the order of walking, its corners left out. */
export function facePointsOf(wall: Wall): readonly Point[] {
  return wall.face.map(({ along, out }) => placeAt(wall, along, -out));
}

/**
 * The point `along` ticks from the start of a wall and `off` ticks into the room: exact at level and upright walls,
 * else to the nearest tick, or away from `from` when that is given.
 */
export function placeAt(
  wall: Wall,
  along: number,
  off: number,
  from?: { readonly x: number; readonly y: number },
): Point {
  const x = wall.from.x + along * wall.along.x + off * wall.inward.x;
  const y = wall.from.y + along * wall.along.y + off * wall.inward.y;
  if (!from) return { x: toTicks(x), y: toTicks(y) };
  return { x: inwards(x, x - from.x), y: inwards(y, y - from.y) };
}
