/**
 * Waiting: an offcut waits from the row in which its plank is first cut until the row that takes the last piece of it,
 * and so does a strip until its row. Rows count in laying order, through all rooms. What is used in the row it was cut
 * in never waits.
 */
import type { CutJob } from '../job';
import type { PlankBooking } from './ledger';

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

/** @param planks pieces of each in laying order */
export function waitingOf(job: CutJob, planks: readonly PlankBooking[]): Waiting {
  const afterRow = job.rows.map(() => 0);
  let reuseCount = 0;
  let rowsWaited = 0;
  const wait = (from: number, to: number): void => {
    for (let row = from; row < to; row++) afterRow[row]++;
    rowsWaited += to - from;
  };
  for (const { pieces, strips } of planks) {
    reuseCount += Math.max(0, pieces.length - 1) + strips.length;
    if (pieces.length > 1) wait(pieces[0].rowIndex, pieces[pieces.length - 1].rowIndex);
    for (const { rowIndex, source } of strips) if (source) wait(source.rowIndex, rowIndex);
  }
  return { afterRow, most: afterRow.reduce((a, b) => Math.max(a, b), 0), reuseCount, rowsWaited };
}
