/** A rectangle as the table that `PLANK_CUTS` answers: a heading, a line a piece, then what there is to say. */
import type { Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import { planFloors } from '../takeoff/planning/planFloors';
import type { Product } from '../takeoff/reading/readRoom';
import { layRectangle, type Rectangle } from '../takeoff/rectangle';
import type { FloorPiece } from '../takeoff/result';
import { floorPiecesOf } from '../takeoff/telling/cutList';
import { planNotesOf } from '../takeoff/telling/notes';
import type { CellAnswer } from './arguments';
import { lengthNumber } from './lengthFunctions';

const HEADING: readonly string[] = ['row', 'piece', 'length', 'width', 'plank', 'keeps', 'rest', 'notes'];

/** Our choice: with more rows than these the search takes no more steps than for them, so that a cell is answered in time. */
const ROWS_AT_FULL_EFFORT = 100;

/** @throws Error with a sentence when the room cannot be laid */
export function cutTable(room: Rectangle, product: Product, rules: Rules, units: Units): CellAnswer[][] {
  const laid = layRectangle(room, product, rules, units);
  if (typeof laid === 'string') throw new Error(laid);
  const effort = Math.min(1, ROWS_AT_FULL_EFFORT / laid.layout.rows.length);
  const planned = planFloors([laid], effort);
  const noteLines = planNotesOf(planned, 0).map((sentence) =>
    HEADING.map((_, column) => (column === 0 ? sentence : '')),
  );
  return [[...HEADING], ...floorPiecesOf(planned, 0).map((piece) => pieceLine(piece, units)), ...noteLines];
}

function pieceLine(piece: FloorPiece, units: Units): CellAnswer[] {
  const strip = piece.stripOf === '' ? [] : [`strip of ${piece.stripOf}`];
  return [
    piece.rowNumber,
    piece.label,
    lengthNumber(piece.length, units),
    lengthNumber(piece.widthLeft, units),
    piece.plankNumber,
    piece.keeps,
    piece.rest,
    [...strip, ...piece.marks].join(' '),
  ];
}
