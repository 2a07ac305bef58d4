/** Rows that can be cut: what a layer squares off or leaves off, and a first row moved where a strip cannot be made. */

import { floorToStep, TICKS_PER_MM } from '../../geometry/length';
import { madeOf } from '../../geometry/lists';
import { narrowRunsOf, type RowLayout, type RowOptions, rowsOf } from '../../layout/rows';
import { type LeaveOff, unmakeableStrips } from '../../layout/strips';
import type { DrawnRoom } from '../reading/drawnRoom';

/** What of a room's rows is squared off, left off and ripped from one plank. Trim goes along walls and casings, not round cut-outs. */
export function cuttingOf({ read, room }: DrawnRoom): Required<Pick<RowOptions, 'squareCut' | 'leaveOff' | 'kerf'>> {
  const { squareCut, leastStrip, trimCover, expansionGap, kerf } = read.rules;
  const under = Math.min(leastStrip, Math.max(0, trimCover - expansionGap));
  const leaveOff: LeaveOff = { under, bare: room.cutouts, reach: expansionGap + TICKS_PER_MM };
  return { squareCut, leaveOff, kerf };
}

/** First rows that are tried for one without strips that cannot be made: so many shares of a plank's width. */
const TRIED_WIDTHS = 32;

/**
 * The plain layout, or where it has strips that cannot be made, the nearest of those other first rows that leave the
 * fewest of them, and under them the fewest runs under the minimum rip.
 */
export function withoutUnmakeable(plain: RowLayout, drawn: DrawnRoom, options: RowOptions): RowLayout {
  const { leastStrip, minRip, markingStep } = drawn.read.rules;
  const unmakeable = (layout: RowLayout) => unmakeableStrips(layout, leastStrip).length;
  if (unmakeable(plain) === 0) return plain;
  const { plankWidth } = options;
  const widths = madeOf(TRIED_WIDTHS, (i) => {
    return floorToStep((plankWidth * (TRIED_WIDTHS - i)) / TRIED_WIDTHS, markingStep);
  }).filter((width) => width >= minRip && width <= plain.depth);
  const others = widths.map((firstRow) => rowsOf(drawn.floor, { ...options, firstRow }));
  const merit = (layout: RowLayout) => [unmakeable(layout), narrowRunsOf(layout, minRip).length, layout.rows.length];
  return [plain, ...others].reduce((best, layout) => (isLess(merit(layout), merit(best)) ? layout : best));
}

/** In the order of a dictionary. */
function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at >= 0 && a[at] < b[at];
}
