/** Which way the rows run: a rule as typed -> degrees, and the directions worth trying in a room. */
import type { Room } from '../room/outline';
import type { Wall } from '../room/walls';
import type { LayDirection } from './rules';

/**
 * Degrees anticlockwise from x of the room: 0 up to 180 for walls (rows have no forward), up to 360 for a typed angle.
 * Null for a wall the room does not have.
 */
export function degreesOf(direction: LayDirection, walls: readonly Wall[]): number | null {
  switch (direction.along) {
    case 'length':
      return 0;
    case 'width':
      return 90;
    case 'angle':
      return ((direction.degrees % 360) + 360) % 360;
    case 'wall': {
      const wall = walls.find((candidate) => candidate.wallNumber === direction.wallNumber);
      return wall ? degreesAlong(wall) : null;
    }
  }
}

/** Degrees of a wall, 0 up to 180: exact for level and upright walls. */
function degreesAlong({ from, to }: Wall): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  if (dy === 0) return 0;
  if (dx === 0) return 90;
  const degrees = (Math.atan2(dy, dx) * 180) / Math.PI;
  return degrees < 0 ? degrees + 180 : degrees;
}

/** Our choice: walls nearer in direction than this are out of square to each other, not a direction of their own. */
const OUT_OF_SQUARE_DEGREES = 5;

/** Along and across the room, then along each wall that runs another way: the longest walls first. */
export function directionsIn({ walls }: Pick<Room, 'walls'>): readonly number[] {
  const longestFirst = [...walls].sort((a, b) => b.length - a.length).map(degreesAlong);
  const directions = [0, 90];
  for (const degrees of longestFirst) {
    const isNew = directions.every((other) => {
      const apart = Math.abs(other - degrees);
      return Math.min(apart, 180 - apart) > OUT_OF_SQUARE_DEGREES;
    });
    if (isNew) directions.push(degrees);
  }
  return directions;
}
