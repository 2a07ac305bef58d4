/** The rest of a floor as the list has it, as far as its planks and offcuts are still there. */

import type { OnwardJob, OnwardPiece, OnwardPlan } from '../../cutting/onward/onwardJob';
import type { Ticks } from '../../geometry/length';
import { addedUp } from '../../geometry/lists';
import type { ListedCut, ListedRun } from './asLaid';
import type { Books } from './begunRows';

/**
 * The listed rest. A plank that is gone is taken anew with all that was to be cut from it; the last piece of a run that was
 * found longer or shorter than drawn grows or shrinks with it. It need not be legal.
 */
export function followedRows(
  rows: readonly (readonly ListedRun[])[],
  { job }: OnwardJob,
  books: Books,
  unitsOf: (length: Ticks, rowIndex: number, runIndex: number, pieceIndex: number) => number,
): OnwardPlan['rows'] {
  const planks = new Map<number | ListedCut, number>();
  const plankOf = (listed: number | ListedCut) => {
    if (!planks.has(listed)) planks.set(listed, planks.size);
    return planks.get(listed) as number;
  };
  // In the place of a strip whose plank is begun: a plank of its own, until `withStrips` puts back what waits.
  const ofPlank = (piece: ListedCut): Pick<OnwardPiece, 'plank' | 'isStrip'> => {
    const { plankNumber, isStrip } = piece;
    const isBegun = books.opened.has(plankNumber) && !books.spoilt.has(plankNumber);
    return isStrip && isBegun
      ? { plank: plankOf(piece) }
      : { plank: plankOf(plankNumber), ...(isStrip && { isStrip }) };
  };
  const sourceOf = (piece: ListedCut): Pick<OnwardPiece, 'plank' | 'stock' | 'isStrip'> => {
    const { plankNumber, isCut } = piece;
    const index = books.sources.findIndex(({ name, keptFor }) => {
      return isCut ? keptFor === piece : name === `${plankNumber}`;
    });
    return index >= 0 ? { plank: -1, stock: index } : ofPlank(piece);
  };
  return rows.map((runs, i) => ({
    runs: runs.map(({ pieces }, j) => {
      const lengths = pieces.map(({ length }, k) => Math.min(job.plankLength, unitsOf(length, i, j, k)));
      const before = addedUp(lengths.slice(0, -1));
      return pieces.map((piece, k): OnwardPiece => {
        const length = k < pieces.length - 1 ? lengths[k] : job.rows[i].runs[j].length - before;
        const isWhole = length === job.plankLength;
        const from = isWhole ? 'whole' : piece.from === 'whole' ? (k === 0 ? 'right' : 'left') : piece.from;
        return { length, from, ...(isWhole || piece.isStrip ? ofPlank(piece) : sourceOf(piece)) };
      });
    }),
  }));
}
