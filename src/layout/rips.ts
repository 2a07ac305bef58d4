/** How many rows a depth takes and how wide the first and last come out. */
import { ceilToStep } from '../geometry/length';

export interface RowsAcross {
  readonly rowCount: number;
  /** Width the first row is laid at; the plank's own when it is not ripped. */
  readonly first: number;
  readonly last: number;
  /** Width the last row would have if the first were a full plank. */
  readonly lastAfterFull: number;
  /** What is left beside full rows and is too narrow to be laid: the gap at the last wall takes it. */
  readonly leftInGap: number;
  readonly note: RowsNote;
}

export interface RowsAcrossOptions {
  /** A last row of exactly this is wide enough. It is asked only of a row that is laid. */
  readonly minRip: number;
  /** A shared first row is ripped to whole steps of this, the last takes the rest; 1 when not given. */
  readonly step?: number;
  /** What is left beside full rows is laid from this width on; a step when not given. */
  readonly leastRow?: number;
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
 * All lengths are whole numbers of one unit: ticks, or fine ticks, in which a plank's width is the decimal it was typed as.
 *
 * Source: half-unit rule - NAVEDTRA 14044, Builder 3 & 2, Vol. 2 (1994), p. 7-23: what is left over plus one full
 * unit, halved.
 *
 * @param depth what is to be covered, gaps taken off; not over a plank's width, it is one ripped row
 * @throws RangeError if depth or plank width is not above 0: a caller's mistake, not a user's
 */
export function rowsAcross(
  depth: number,
  plankWidth: number,
  { minRip, step = 1, leastRow = step }: RowsAcrossOptions,
): RowsAcross {
  if (!(depth > 0 && plankWidth > 0)) throw new RangeError(`rows of ${plankWidth} across ${depth}`);
  if (depth <= plankWidth) {
    const note = depth < minRip ? 'under the minimum rip' : depth === plankWidth ? 'all rows full' : 'one row';
    return { rowCount: 1, first: depth, last: depth, lastAfterFull: depth, leftInGap: 0, note };
  }
  const rest = depth % plankWidth;
  const fullRows = Math.round((depth - rest) / plankWidth);
  if (rest < leastRow) {
    const full = { first: plankWidth, last: plankWidth, lastAfterFull: plankWidth };
    return { rowCount: fullRows, ...full, leftInGap: rest, note: 'all rows full' };
  }
  const ripped = { rowCount: fullRows + 1, lastAfterFull: rest, leftInGap: 0 };
  if (rest >= minRip) return { ...ripped, first: plankWidth, last: rest, note: 'last row ripped' };
  const first = Math.min(plankWidth, ceilToStep((rest + plankWidth) / 2, step));
  const last = rest + plankWidth - first;
  const note = last < minRip ? 'under the minimum rip' : 'first and last row alike';
  return { ...ripped, first, last, note };
}

/**
 * Rows across a depth when the first row's width is chosen: whole numbers of one unit.
 *
 * @param first > 0, at most a plank
 */
export function rowsAfterFirst(
  depth: number,
  plankWidth: number,
  first: number,
): { readonly rowCount: number; readonly last: number } {
  if (depth <= first) return { rowCount: 1, last: depth };
  const rest = (depth - first) % plankWidth;
  return { rowCount: 1 + Math.ceil((depth - first) / plankWidth), last: rest || plankWidth };
}
