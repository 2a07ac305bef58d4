/** Random rooms a little out of square, and what a tape finds in them. */
import type { Outline } from '../../src/geometry/polygon';
import { isSimple, signedAreaOf } from '../../src/geometry/polygon';
import type { MeasuredDistance, TapedWall } from '../../src/room/measured';
import { advisedDiagonals } from '../../src/room/tapeAdvice';
import { inches } from './floors';
import type { SeededRandom } from './seededRandom';

export interface TapedRoom {
  /** As it was meant: right angles only. Clockwise, wall 1 on the far side. */
  readonly drawn: Outline;
  /** As it was built. */
  readonly built: Outline;
}

/** A rectangle with up to three bays or chimney breasts, each corner up to `out` inches from where it was meant. */
export function tapedRoom(random: SeededRandom, out: number): TapedRoom {
  for (;;) {
    const drawn = squareRoom(random);
    const built = drawn.map(({ x, y }) => ({ x: x + astray(random, out), y: y + astray(random, out) }));
    if (isSimple(drawn) && isSimple(built) && !hasFlatTriangle(drawn)) return { drawn, built };
  }
}

/** A triangle flatter than walls are out of true has two shapes, and no tape can tell which. */
function hasFlatTriangle(drawn: Outline): boolean {
  const count = drawn.length;
  const pairs = [
    ...drawn.map((_, i) => [i, (i + 1) % count] as const),
    ...advisedDiagonals(drawn).map(([a, b]) => [a - 1, b - 1] as const),
  ];
  const areTied = (i: number, j: number) => pairs.some(([a, b]) => (a === i && b === j) || (a === j && b === i));
  return pairs.some(([a, b]) =>
    drawn.some((corner, c) => {
      if (c === a || c === b || !areTied(a, c) || !areTied(b, c)) return false;
      return Math.abs(2 * signedAreaOf([drawn[a], drawn[b], corner])) < inches(6) * apart(drawn, a, b);
    }),
  );
}

function astray(random: SeededRandom, out: number): number {
  return inches((random.whole(-1000, 1000) / 1000) * out);
}

function squareRoom(random: SeededRandom): Outline {
  const [length, width] = [random.whole(96, 360), random.whole(96, 300)];
  let corners = [
    { x: 0, y: width },
    { x: length, y: width },
    { x: length, y: 0 },
    { x: 0, y: 0 },
  ];
  for (let bays = random.whole(0, 3); bays > 0; bays--) corners = withBay(random, corners);
  return corners.map(({ x, y }) => ({ x: inches(x), y: inches(y) }));
}

/** A part of one wall moved out or in by 12 to 40 inches. */
function withBay(random: SeededRandom, corners: { x: number; y: number }[]): { x: number; y: number }[] {
  const i = random.whole(0, corners.length - 1);
  const [from, to] = [corners[i], corners[(i + 1) % corners.length]];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 40) return corners;
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const [start, end] = [Math.round(length * 0.3), Math.round(length * 0.7)];
  const depth = random.whole(12, 40) * (random.whole(0, 1) === 0 ? 1 : -1);
  const at = (along: number, off: number) => ({ x: from.x + ux * along + uy * off, y: from.y + uy * along - ux * off });
  const bay = [at(start, 0), at(start, depth), at(end, depth), at(end, 0)];
  return [...corners.slice(0, i + 1), ...bay, ...corners.slice(i + 1)];
}

/** Distance between two corners of an outline, ticks, not rounded. */
export function apart(outline: Outline, i: number, j: number): number {
  return Math.hypot(outline[i].x - outline[j].x, outline[i].y - outline[j].y);
}

/** The walls as a tape finds them, with the turns as a person sees them: right angles. */
export function tapedWalls({ drawn, built }: TapedRoom, read: (length: number) => number): readonly TapedWall[] {
  return built.map((_, i) => {
    const turn = i === built.length - 1 ? null : turnAt(drawn, i);
    return { length: read(apart(built, i, (i + 1) % built.length)), turn };
  });
}

export function tapedDistances(
  { built }: TapedRoom,
  pairs: readonly (readonly [number, number])[],
  read: (length: number) => number,
): readonly MeasuredDistance[] {
  return pairs.map(([fromCorner, toCorner]) => ({
    fromCorner,
    toCorner,
    length: read(apart(built, fromCorner - 1, toCorner - 1)),
  }));
}

/** Degrees turned at the end of wall i (from 0), right positive, of a room of right angles. */
function turnAt(drawn: Outline, i: number): number {
  const [a, b, c] = [drawn[i], drawn[(i + 1) % drawn.length], drawn[(i + 2) % drawn.length]];
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) < 0 ? 90 : -90;
}
