/**
 * THE convention, said once: x to the right along the rows, y up across them, angles anticlockwise from x, an
 * outline runs anticlockwise (its inside is on the left), a hole clockwise. Coordinates are ticks (1/640 mm).
 */
import type { Ticks } from './length';

export interface Point {
  readonly x: Ticks;
  readonly y: Ticks;
}

/**
 * On which side of the line a -> b the point c lies: +1 left, -1 right, 0 on the line.
 * Exact while no two points are more than 100 m apart on an axis (see `LONGEST_SIDE`).
 */
export function sideOf(a: Point, b: Point, c: Point): -1 | 0 | 1 {
  const cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  if (cross > 0) return 1;
  return cross < 0 ? -1 : 0;
}

export function isSamePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** As the crow flies, of points in ticks or on paper. */
export function distanceBetween(a: { readonly x: number; readonly y: number }, b: typeof a): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
