/** Which distances fix the shape of a room: diagonals that divide it into triangles, all inside the room. */

import { entryAfter, entryBefore } from '../geometry/lists';
import { type Point, sideOf } from '../geometry/point';
import { isOnEdge, type Outline, signedAreaOf } from '../geometry/polygon';

/** Two corners, counted from 1. */
export type CornerPair = readonly [number, number];

/**
 * n - 3 diagonals that hold an outline of n corners, none of them through a wall, the roundest triangles first so that a
 * small slip of the tape stays small. Ear clipping (Meisters 1975), O(n³).
 *
 * @param outline simple, either way round
 */
export function advisedDiagonals(outline: Outline): readonly CornerPair[] {
  const isClockwise = signedAreaOf(outline) < 0;
  const left = outline.map((_, i) => i);
  const pairs: CornerPair[] = [];
  while (left.length > 3) {
    const best = roundestEar(outline, left, isClockwise);
    if (best < 0) return pairs;
    const before = entryBefore(left, best);
    const after = entryAfter(left, best);
    pairs.push([Math.min(before, after) + 1, Math.max(before, after) + 1]);
    left.splice(best, 1);
  }
  return pairs;
}

/** The corner that can be cut off by a diagonal inside the room and makes the roundest triangle; -1 where none can. */
function roundestEar(outline: Outline, left: readonly number[], isClockwise: boolean): number {
  let best = -1;
  let bestRoundness = 0;
  left.forEach((corner, i) => {
    const a = outline[entryBefore(left, i)];
    const b = outline[corner];
    const c = outline[entryAfter(left, i)];
    const side = sideOf(a, b, c) * (isClockwise ? -1 : 1);
    if (side <= 0 || left.some((other) => isInTriangle(outline[other], a, b, c))) return;
    const roundness = roundnessOf(a, b, c);
    if (roundness > bestRoundness) [best, bestRoundness] = [i, roundness];
  });
  return best;
}

/** Whether a corner other than the triangle's own lies in it or on its edge. */
function isInTriangle(p: Point, a: Point, b: Point, c: Point): boolean {
  if (p === a || p === b || p === c) return false;
  const sides = [sideOf(a, b, p), sideOf(b, c, p), sideOf(c, a, p)];
  return isOnEdge(a, c, p) || sides.every((side) => side >= 0) || sides.every((side) => side <= 0);
}

/** Twice the area over the square of the longest side. */
function roundnessOf(a: Point, b: Point, c: Point): number {
  const square = (p: Point, q: Point) => (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
  return Math.abs(2 * signedAreaOf([a, b, c])) / Math.max(square(a, b), square(b, c), square(c, a));
}
