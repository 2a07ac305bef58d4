/** Which way the rows run: a rule as typed -> degrees, and the directions worth comparing in a room. */
import { type Ticks, ticksOfInches } from '../geometry/length';
import type { Room } from '../room/outline';
import { degreesAlong, OUT_OF_SQUARE_DEGREES, rowDegrees, type Wall } from '../room/walls';
import type { LayDirection } from './rules';

/** What of a room its directions follow from. */
type Walled = Pick<Room, 'walls' | 'lengthwise'>;

/** A direction of the rows: degrees anticlockwise from x of the room, and the lay direction that one types for it. */
export interface RowDirection {
  readonly degrees: number;
  readonly typed: string;
}

/**
 * Degrees anticlockwise from x of the room: 0 up to 180 for walls, 0 up to 360 for a typed angle, else by `rowDegrees`.
 * Null for a wall the room does not have.
 */
export function degreesOf(direction: LayDirection, room: Walled): number | null {
  const { lengthwise } = room;
  switch (direction.along) {
    case 'length':
      return lengthwise;
    case 'width':
      return crosswise(lengthwise);
    case 'shared taper':
      return sharedTaperOf(room) ?? lengthwise;
    case 'angle':
      return ((direction.degrees % 360) + 360) % 360;
    case 'wall': {
      const wall = room.walls.find((candidate) => candidate.wallNumber === direction.wallNumber);
      return wall ? degreesAlong(wall) : null;
    }
  }
}

function crosswise(degrees: number): number {
  return rowDegrees(degrees + 90);
}

/** Our choice: what stands across a room or along a bay gives the rows their direction only if it is this long. */
const LEAST_SHARE_OF_LONGEST = 1 / 2;

/**
 * The directions worth comparing: lengthwise, then along each wall that runs another way and is at least half as long as
 * the longest, the longest first; last the taper shared by both walls, where there is one.
 */
export function directionsIn(room: Walled): readonly RowDirection[] {
  const { walls, lengthwise } = room;
  const longestFirst = [...walls].sort((a, b) => b.length - a.length);
  const long = longestFirst.filter(({ length }) => length >= longestFirst[0].length * LEAST_SHARE_OF_LONGEST);
  const directions: RowDirection[] = [{ degrees: lengthwise, typed: '' }];
  for (const wall of long) {
    // Out of square to the length by less than what counts as square, it runs across it.
    const across = crosswise(lengthwise);
    const degrees = isAlong(degreesAlong(wall), across) ? across : degreesAlong(wall);
    const isNew = directions.every((other) => !isAlong(other.degrees, degrees));
    if (isNew) directions.push({ degrees, typed: degrees === across ? 'width' : `wall ${wall.wallNumber}` });
  }
  const shared = sharedTaperOf(room);
  return shared === null ? directions : [...directions, { degrees: shared, typed: 'shared' }];
}

/** Whether two directions are one but for walls out of square. */
function isAlong(one: number, other: number): boolean {
  return Math.abs(turnBetween(one, other)) <= OUT_OF_SQUARE_DEGREES;
}

/** By how much one direction is turned from another: rows have no forward, so more than -90 and at most 90 degrees. */
function turnBetween(from: number, to: number): number {
  const apart = (((to - from) % 180) + 180) % 180;
  return apart > 90 ? apart - 180 : apart;
}

/** Source: a how-to page on laying wood floors: a taper under 1/4 in over 6 ft is left in the last row. */
const LEAST_TAPER: Ticks = ticksOfInches(1 / 4);
const TAPER_OVER: Ticks = ticksOfInches(72);

/**
 * The direction half way between the two longest walls that face each other along the room, so that the first row and
 * the last taper alike; null where they are too near parallel to be worth it.
 *
 * Source: a wood floor installer's published example: end walls of 15' and 15' 2" are laid with 1" of taper at each side.
 */
function sharedTaperOf({ walls, lengthwise }: Walled): number | null {
  const along = walls.filter((wall) => wall.face.length === 0 && isAlong(degreesAlong(wall), lengthwise));
  const longestFirst = [...along].sort((a, b) => b.length - a.length);
  const [first] = longestFirst;
  const opposite = longestFirst.find((wall) => isFacing(wall, first));
  if (!opposite || opposite.length < first.length * LEAST_SHARE_OF_LONGEST) return null;
  const turn = turnBetween(degreesAlong(first), degreesAlong(opposite));
  const taper = TAPER_OVER * Math.abs(Math.tan((turn * Math.PI) / 180));
  return taper < LEAST_TAPER ? null : rowDegrees(degreesAlong(first) + turn / 2);
}

function isFacing(one: Wall, other: Wall): boolean {
  return one.inward.x * other.inward.x + one.inward.y * other.inward.y < 0;
}
