/** How many rows a depth takes and how wide the first and last come out. */
import type { Ticks } from '../geometry/length';

export interface RowsAcross {
  readonly rowCount: number;
  /** Width the first row is laid at; the plank's own when it is not ripped. */
  readonly first: Ticks;
  readonly last: Ticks;
  /** Width the last row would have if the first were a full plank. */
  readonly lastAfterFull: Ticks;
}

/**
 * Rows across a depth: the first a full plank unless the last would then be under `minRip`; in that case the two share
 * what is left and one plank, and come out equal (to a tick).
 *
 * Source: half-unit rule - NAVEDTRA 14044 (1994) p. 7-23: what is left over plus one full unit, halved.
 *
 * @param depth what is to be covered, gaps taken off, ticks, > 0; not over a plank's width, it is one ripped row
 * @param minRip a last row of exactly this is wide enough
 */
export function rowsAcross(depth: Ticks, plankWidth: Ticks, minRip: Ticks): RowsAcross {
  if (depth <= plankWidth) return { rowCount: 1, first: depth, last: depth, lastAfterFull: depth };
  const rest = depth % plankWidth;
  const fullCount = (depth - rest) / plankWidth;
  if (rest === 0) return { rowCount: fullCount, first: plankWidth, last: plankWidth, lastAfterFull: plankWidth };
  const rowCount = fullCount + 1;
  if (rest >= minRip) return { rowCount, first: plankWidth, last: rest, lastAfterFull: rest };
  const last = Math.floor((rest + plankWidth) / 2);
  return { rowCount, first: rest + plankWidth - last, last, lastAfterFull: rest };
}
