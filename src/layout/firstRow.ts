/** Widths of the first and last row over a plain depth. */
import type { Ticks } from '../geometry/length';

/** How the rows come out; `under the minimum rip` when even sharing the difference leaves less than the minimum. */
export type RowsNote =
  | 'all rows full'
  | 'last row ripped'
  | 'first and last row ripped alike'
  | 'one row'
  | 'under the minimum rip';

export interface RowWidths {
  readonly rowCount: number;
  /** Width of the first row; less than a plank when it is ripped. */
  readonly first: Ticks;
  readonly last: Ticks;
  readonly note: RowsNote;
}

/**
 * Full first row, unless the last would then be under the minimum rip: then the two are equal, each half of the
 * remainder and a plank.
 *
 * @param depth across the rows, gaps taken off, > 0
 * @param minRip a last row of exactly this is wide enough
 * @param step the first row is ripped to whole steps of this (the last row takes the rest); 1 = to the tick
 * @throws RangeError if depth or plank width is not above 0
 *
 * Source: half-unit rule - NAVEDTRA 14044, Builder 3 & 2, Vol. 2 (1994), p. 7-23: to the remainder "add one full tile
 * size and divide by 2. The result is the size of end tiles."
 */
export function firstRowOf(depth: Ticks, plankWidth: Ticks, minRip: Ticks, step: Ticks = 1): RowWidths {
  if (!(depth > 0 && plankWidth > 0)) throw new RangeError(`rows of ${plankWidth} over a depth of ${depth}`);
  if (depth <= plankWidth) {
    return { rowCount: 1, first: depth, last: depth, note: depth < minRip ? 'under the minimum rip' : 'one row' };
  }
  const fullCount = Math.floor(depth / plankWidth);
  const rest = depth - fullCount * plankWidth;
  if (rest === 0) return { rowCount: fullCount, first: plankWidth, last: plankWidth, note: 'all rows full' };
  const rowCount = fullCount + 1;
  if (rest >= minRip) return { rowCount, first: plankWidth, last: rest, note: 'last row ripped' };
  const first = Math.max(step, Math.floor((rest + plankWidth) / 2 / step) * step);
  const last = rest + plankWidth - first;
  const note = Math.min(first, last) < minRip ? 'under the minimum rip' : 'first and last row ripped alike';
  return { rowCount, first, last, note };
}

/**
 * Rows and last width when the first row has a given width.
 *
 * @param first > 0, at most a plank
 */
export function rowsFromFirst(depth: Ticks, plankWidth: Ticks, first: Ticks): { rowCount: number; last: Ticks } {
  if (depth <= first) return { rowCount: 1, last: depth };
  const rowCount = 1 + Math.ceil((depth - first) / plankWidth);
  return { rowCount, last: depth - first - (rowCount - 2) * plankWidth };
}
