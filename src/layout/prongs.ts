/** Prongs of a piece that are narrow along its row: beside a hearth or a jamb, across the grain, where they break off. */

import { subtract } from '../geometry/combine';
import type { Ticks } from '../geometry/length';
import { boundsOf, partsOf, type Region } from '../geometry/polygon';
import { mirrored } from '../geometry/turn';
import { type ThinStretch, thinStretchesOf } from './narrowest';
import { isBeside, type LeaveOff } from './strips';

export interface Prong {
  /** Along the row. */
  readonly width: Ticks;
  /** Across it. */
  readonly length: Ticks;
}

/** Prongs narrower than `least` that stand out further than they are wide; what runs out to a point is an end, not a prong. */
export function prongsOf(shape: Region, least: Ticks): readonly Prong[] {
  return stretchesOf(shape, least).map(({ from, to, width }) => ({ width, length: to - from }));
}

/** In the shape mirrored in the diagonal, so that what is narrow along the row is narrow across it. */
function stretchesOf(shape: Region, least: Ticks): readonly ThinStretch[] {
  // Nothing stands out of four corners.
  if (least <= 0 || shape.every((outline) => outline.length <= 4)) return [];
  return partsOf(mirrored(shape))
    .flatMap((part) => thinStretchesOf(part, 0, least))
    .filter(({ from, to, width, isTip }) => !isTip && to - from > width);
}

/** A piece without the prongs that may be left off, and how wide the widest of them is; null where it has none. */
export function withoutProngs(
  shape: Region,
  { under, bare, reach }: LeaveOff,
): { readonly region: Region; readonly widest: Ticks } | null {
  const prongs = stretchesOf(shape, under)
    .map(({ width, outlines }) => ({ width, outlines: mirrored(outlines) }))
    .filter(({ outlines }) => !isBeside(outlines, bare, reach, 0));
  if (prongs.length === 0) return null;
  const region = subtract(
    shape,
    prongs.flatMap(({ outlines }) => outlines),
  );
  const [before, after] = [boundsOf(shape), boundsOf(region)];
  const isAsLong = before.x0 === after.x0 && before.x1 === after.x1;
  return isAsLong ? { region, widest: Math.max(...prongs.map(({ width }) => width)) } : null;
}
