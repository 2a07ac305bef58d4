/** Rectangles added and taken away, in the order given -> the corners of what is left. */

import { subtract, unite } from '../geometry/combine';
import { LONGEST_SIDE } from '../geometry/length';
import { entryAfter, lastOf } from '../geometry/lists';
import { anticlockwise, boundsOf, type Outline, partsOf, type Region } from '../geometry/polygon';
import type { WallCorners } from './corners';
import { bad, type Checked, good } from './faults';
import type { MeasuredRectangle } from './measured';

/**
 * The corners clockwise from the left end of the farthest wall (of several equally far, the leftmost), so that wall 1
 * is the far wall here too. What was taken away in the middle comes back as holes.
 */
export function cornersOfRectangles(rectangles: readonly MeasuredRectangle[]): Checked<WallCorners> {
  const { x0, y0, x1, y1 } = boundsOf(rectangles.map(outlineOfRectangle));
  const found = Math.max(x1 - x0, y1 - y0);
  if (found > LONGEST_SIDE) return bad({ code: 'side too long', found, longest: LONGEST_SIDE });
  let region: Region = [];
  for (const { change, outlines } of inStretches(rectangles)) {
    region = change === 'add' ? unite(region, outlines) : subtract(region, outlines);
  }
  const parts = partsOf(region);
  if (parts.length === 0) return bad({ code: 'nothing left' });
  if (parts.length > 1) return bad({ code: 'parts not connected', partCount: parts.length });
  const corners = clockwiseFromFarLeft(parts[0].outline);
  const measured = corners.map((from, i) => {
    const to = entryAfter(corners, i);
    return Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
  });
  return good({ corners, measured, holes: parts[0].holes.map(anticlockwise), notes: [] });
}

/** Rectangles of one kind in a row go together: their order makes no difference, and one step is faster than many. */
function inStretches(
  rectangles: readonly MeasuredRectangle[],
): readonly { readonly change: MeasuredRectangle['change']; readonly outlines: Outline[] }[] {
  const stretches: { change: MeasuredRectangle['change']; outlines: Outline[] }[] = [];
  for (const rectangle of rectangles) {
    const last = lastOf(stretches);
    if (last?.change === rectangle.change) last.outlines.push(outlineOfRectangle(rectangle));
    else stretches.push({ change: rectangle.change, outlines: [outlineOfRectangle(rectangle)] });
  }
  return stretches;
}

function outlineOfRectangle({ fromLeft: x, fromNear: y, length, width }: MeasuredRectangle): Outline {
  return [
    { x, y },
    { x: x + length, y },
    { x: x + length, y: y + width },
    { x, y: y + width },
  ];
}

function clockwiseFromFarLeft(outline: Outline): Outline {
  const clockwise = [...outline].reverse();
  const far = Math.max(...clockwise.map((p) => p.y));
  const left = Math.min(...clockwise.filter((p) => p.y === far).map((p) => p.x));
  const start = clockwise.findIndex((p) => p.x === left && p.y === far);
  return [...clockwise.slice(start), ...clockwise.slice(0, start)];
}
