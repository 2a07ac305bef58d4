/**
 * Waiting: an offcut waits from the row in which its plank is first cut until the row that takes the last piece of it,
 * and so does a strip until its row. Rows count in laying order, through all rooms. What is used in the row it was cut
 * in never waits.
 */
import { lastOf } from '../../geometry/lists';
import type { CutJob } from '../job';

/** A plank by the rows in which it gives its pieces and the strips ripped from them. */
export interface WaitingPlank {
  /** In laying order. */
  readonly pieces: readonly { readonly rowIndex: number }[];
  readonly strips: readonly { readonly rowIndex: number; readonly source: { readonly rowIndex: number } | null }[];
}

export interface Waiting {
  /** For each row: offcuts that wait after it is laid, for rows still to be laid. */
  readonly afterRow: readonly number[];
  /** The most that wait at once. */
  readonly most: number;
  /** Pieces cut from what an earlier piece of their plank left, of the same row or of an earlier one. */
  readonly reuseCount: number;
  /** Rows from one piece of a plank to the next, over all planks: divided by the reuses, the mean wait. */
  readonly rowsWaited: number;
}

/**
 * @param planks pieces of each in laying order
 * @param order of the rows, where they are not laid as they stand
 */
export function waitingOf(
  job: CutJob,
  planks: readonly WaitingPlank[],
  order: readonly number[] = job.rows.map((_, row) => row),
): Waiting {
  const places: number[] = [];
  order.forEach((row, place) => {
    places[row] = place;
  });
  const afterRow = job.rows.map(() => 0);
  let reuseCount = 0;
  let rowsWaited = 0;
  const wait = (from: number, to: number): void => {
    for (let place = places[from]; place < places[to]; place++) afterRow[order[place]]++;
    rowsWaited += places[to] - places[from];
  };
  for (const { pieces, strips } of planks) {
    reuseCount += Math.max(0, pieces.length - 1) + strips.length;
    if (pieces.length > 1) wait(pieces[0].rowIndex, lastOf(pieces).rowIndex);
    for (const { rowIndex, source } of strips) if (source) wait(source.rowIndex, rowIndex);
  }
  return { afterRow, most: afterRow.reduce((a, b) => Math.max(a, b), 0), reuseCount, rowsWaited };
}
