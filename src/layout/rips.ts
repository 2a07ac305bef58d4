/** How many rows a depth takes and how wide the first and last come out. */
import { ceilToStep, type Ticks } from '../geometry/length';

export interface RowsAcross {
  readonly rowCount: number;
  /** Width the first row is laid at; the plank's own when it is not ripped. */
  readonly first: Ticks;
  readonly last: Ticks;
  /** Width the last row would have if the first were a full plank. */
  readonly lastAfterFull: Ticks;
  readonly note: RowsNote;
}

/** How the rows come out; `under the minimum rip` when even sharing what is left does not give the minimum. */
export type RowsNote =
  | 'all rows full'
  | 'last row ripped'
  | 'first and last row alike'
  | 'one row'
  | 'under the minimum rip';

/**
 * Rows across a depth: the first a full plank unless the last would then be under `minRip`; in that case the two share
 * what is left and one plank, and come out equal (to a step).
 *
 * Source: half-unit rule - NAVEDTRA 14044, Builder 3 & 2, Vol. 2 (1994), p. 7-23: what is left over plus one full
 * unit, halved.
 *
 * @param depth what is to be covered, gaps taken off, ticks; not over a plank's width, it is one ripped row
 * @param minRip a last row of exactly this is wide enough
 * @param step a shared first row is ripped to whole steps of this, the last takes the rest; 1 tick when not given
 * @throws RangeError if depth or plank width is not above 0: a caller's mistake, not a user's
 */
export function rowsAcross(depth: Ticks, plankWidth: Ticks, minRip: Ticks, step: Ticks = 1): RowsAcross {
  if (!(depth > 0 && plankWidth > 0)) throw new RangeError(`rows of ${plankWidth} across ${depth}`);
  if (depth <= plankWidth) {
    const note = depth < minRip ? 'under the minimum rip' : depth === plankWidth ? 'all rows full' : 'one row';
    return { rowCount: 1, first: depth, last: depth, lastAfterFull: depth, note };
  }
  const rest = depth % plankWidth;
  const full = { first: plankWidth, last: rest || plankWidth, lastAfterFull: rest || plankWidth };
  const rowCount = Math.ceil(depth / plankWidth);
  if (rest === 0) return { rowCount, ...full, note: 'all rows full' };
  if (rest >= minRip) return { rowCount, ...full, note: 'last row ripped' };
  const first = Math.min(plankWidth, ceilToStep((rest + plankWidth) / 2, step));
  const last = rest + plankWidth - first;
  const note = last < minRip ? 'under the minimum rip' : 'first and last row alike';
  return { rowCount, first, last, lastAfterFull: rest, note };
}

/**
 * Rows across a depth when the first row's width is chosen.
 *
 * @param first ticks, > 0, at most a plank
 */
export function rowsAfterFirst(
  depth: Ticks,
  plankWidth: Ticks,
  first: Ticks,
): { readonly rowCount: number; readonly last: Ticks } {
  if (depth <= first) return { rowCount: 1, last: depth };
  const rest = (depth - first) % plankWidth;
  return { rowCount: 1 + Math.ceil((depth - first) / plankWidth), last: rest || plankWidth };
}
