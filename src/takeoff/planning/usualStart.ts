/** The rows as they are laid where nothing is said of the first row: as usual, or so that no strip is left. */
import { type RowLayout, type RowOptions, rowsOf } from '../../layout/rows';
import { type FoundStart, findStart, leavesStrips } from '../../layout/starts';
import { stopLinesOf } from '../../layout/stopLines';
import type { DrawnRoom } from '../reading/drawnRoom';
import { cuttingOf } from './cuttable';

/** What rows of a floor have in common, whichever way they lie. */
export function rowOptionsOf(drawn: DrawnRoom): Omit<RowOptions, 'degrees' | 'startSide' | 'firstRow'> {
  const { read, body } = drawn;
  const { plankWidth, asTyped } = read.product;
  const { minRip, markingStep } = read.rules;
  return { plankWidth, typedWidth: asTyped.width, minRip, markingStep, body, ...cuttingOf(drawn) };
}

/** The rows one way; those that the check of the room has laid are not laid again. */
export function layRows(
  drawn: DrawnRoom,
  degrees: number,
  startSide: 'near' | 'far',
  firstRow: RowOptions['firstRow'],
): RowLayout {
  const { checked, floor } = drawn;
  const isLaid = checked?.degrees === degrees && checked.startSide === startSide && checked.firstRow === firstRow;
  return isLaid ? checked.layout : rowsOf(floor, { ...rowOptionsOf(drawn), degrees, startSide, firstRow });
}

/**
 * The rows from one side, and those of the plain start. Where the usual first row leaves a strip under the minimum rip or one in a doorway, and wherever
 * rooms are joined, it is the start with the widest narrowest strip.
 */
export function usualStart(
  drawn: DrawnRoom,
  degrees: number,
  startSide: 'near' | 'far',
): { readonly plain: RowLayout; readonly layout: RowLayout; readonly start: FoundStart | null } {
  const { floor, room, others, read } = drawn;
  const { minRip, markingStep, squareCut } = read.rules;
  const lay = (firstRow: RowOptions['firstRow']) => layRows(drawn, degrees, startSide, firstRow);
  const plain = lay('auto');
  if (plain.rows.length === 0) return { plain, layout: plain, start: null };
  const lines = stopLinesOf(floor, plain.frame, room.openEnds);
  const tried = { plankWidth: plain.plankWidth, minRip, markingStep, squareCut };
  if (!others && !leavesStrips(plain, lines, tried)) return { plain, layout: plain, start: null };
  const start = findStart(plain, lines, lay, tried);
  return { plain, layout: start.layout, start };
}
