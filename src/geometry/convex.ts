/** A convex outline cut along any line. */

import { toTicks } from './length';
import { entryAfter } from './lists';
import type { Point } from './point';
import type { Outline } from './polygon';

/** The part of a convex outline on the left of the line a -> b, corners on it included; places to the nearest tick. */
export function outlineLeftOf(outline: Outline, a: Point, b: Point): Outline {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const leftBy = (p: Point) => dx * (p.y - a.y) - dy * (p.x - a.x);
  return outline.flatMap((p, i) => {
    const next = entryAfter(outline, i);
    const here = leftBy(p);
    const there = leftBy(next);
    const kept = here >= 0 ? [p] : [];
    if (here * there >= 0) return kept;
    const share = here / (here - there);
    return [...kept, { x: toTicks(p.x + share * (next.x - p.x)), y: toTicks(p.y + share * (next.y - p.y)) }];
  });
}
