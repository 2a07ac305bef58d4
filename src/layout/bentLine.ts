/** Lines through measured places: which of the places have to be marked, and which lie on the line between those. */

import type { Ticks } from '../geometry/length';
import { lastOf } from '../geometry/lists';
import type { Point } from '../geometry/point';

/**
 * The places of a line, from left to right, between which it is straight to within a distance: only its ends where all of it
 * is. Exactly `within` is near enough.
 */
export function placesToMark(line: readonly Point[], within: Ticks): readonly Point[] {
  const [first, last] = [line[0], lastOf(line)];
  const offs = line.map((place) => Math.abs(offLine(place, first, last)));
  const most = Math.max(...offs);
  if (!(most > within)) return [first, last];
  const farthest = offs.indexOf(most);
  return [...placesToMark(line.slice(0, farthest + 1), within), ...placesToMark(line.slice(farthest), within).slice(1)];
}

/** How far a place lies above the line from one to another. */
export function offLine({ x, y }: Point, from: Point, to: Point): number {
  return y - from.y - ((to.y - from.y) * (x - from.x)) / (to.x - from.x);
}
