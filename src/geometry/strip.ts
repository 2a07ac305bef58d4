/** A region cut along level or upright lines: rows, and the pieces of a row. */

import { tidy } from './combine';
import { xAtHeight, yAtWidth } from './inwards';
import type { Ticks } from './length';
import { entryBefore } from './lists';
import { isSamePoint, type Point } from './point';
import { type Outline, type Region, signedAreaOf } from './polygon';

/** A cutting line: upright at x, or level at y. */
export type CutLine = { readonly x: Ticks } | { readonly y: Ticks };

/** The part of a region between two heights. Heights in ticks. */
export function levelStripOf(region: Region, y0: Ticks, y1: Ticks): Region {
  return sideOfLine(sideOfLine(region, { y: y0 }, 1), { y: y1 }, -1);
}

/** The part of a region between two widths. Widths in ticks. */
export function uprightStripOf(region: Region, x0: Ticks, x1: Ticks): Region {
  return sideOfLine(sideOfLine(region, { x: x0 }, 1), { x: x1 }, -1);
}

/**
 * The part of a region on one side of a line: 1 = above or right of it, -1 = below or left. Where a slanted edge meets
 * the line, the corner is rounded inwards along the line, the same for the parts on both sides.
 *
 * Each outline is divided into the chains that lie strictly on the side; a chain closed along the line is an outline
 * of the answer. Only what turns clockwise lies inside another outline: where such a chain, or a hole on the line,
 * meets it there, the two are joined by `tidy`.
 */
export function sideOfLine(region: Region, line: CutLine, side: 1 | -1): Region {
  const kept: Outline[] = [];
  let needsTidying = false;
  for (const outline of region) {
    const heights = outline.map((p) => side * ('x' in line ? p.x - line.x : p.y - line.y));
    if (heights.every((height) => height >= 0)) {
      kept.push(outline);
      if (heights.includes(0) && signedAreaOf(outline) < 0) needsTidying = true;
    } else {
      for (const chain of chainsOf(outline, heights, line)) {
        const area = signedAreaOf(chain);
        if (area !== 0) kept.push(chain);
        if (area < 0) needsTidying = true;
      }
    }
  }
  return needsTidying ? tidy(kept) : kept;
}

/** Corners strictly on the wanted side in unbroken order, with the point on the line before and after them. */
function chainsOf(outline: Outline, heights: readonly number[], line: CutLine): Outline[] {
  const count = outline.length;
  const start = heights.findIndex((height) => height <= 0);
  const chains: Outline[] = [];
  let chain: Point[] = [];
  for (let step = 0; step < count; step++) {
    const i = (start + step) % count;
    const next = (i + 1) % count;
    if (heights[i] > 0) chain.push(outline[i]);
    if (heights[i] <= 0 && heights[next] > 0) chain.push(pointOnLine(outline[i], outline[next], line));
    if (heights[i] > 0 && heights[next] <= 0) {
      chain.push(pointOnLine(outline[i], outline[next], line));
      chains.push(chain);
      chain = [];
    }
  }
  return chains.map(withoutRepeats);
}

function pointOnLine(from: Point, to: Point, line: CutLine): Point {
  if ('x' in line) return { x: line.x, y: yAtWidth(from, to, line.x) };
  return { x: xAtHeight(from, to, line.y), y: line.y };
}

function withoutRepeats(outline: Outline): Outline {
  return outline.filter((p, i) => !isSamePoint(p, entryBefore(outline, i)));
}
