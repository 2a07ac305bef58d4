/** A takeoff as the table that `PLANK_CUTS` answers: a heading, a line a piece, then what there is to say. */
import type { Units } from '../geometry/length';
import { problems } from '../takeoff/problems';
import type { FloorPiece, TakeoffResult } from '../takeoff/result';
import type { CellAnswer } from './arguments';
import { lengthNumber } from './lengthFunctions';

const HEADING: readonly string[] = ['row', 'piece', 'length', 'width', 'plank', 'keeps', 'rest', 'notes'];

/** @throws Error with the first problem of the entry as its message */
export function cutTable(result: TakeoffResult, units: Units): CellAnswer[][] {
  if (result.status === 'problems') {
    throw new Error(problems.andMore(result.problems[0].text, result.problems.length - 1));
  }
  const { pieces, notes } = result.takeoff;
  const noteLines = notes.map((sentence) => HEADING.map((_, column) => (column === 0 ? sentence : '')));
  return [[...HEADING], ...pieces.map((piece) => pieceLine(piece, units)), ...noteLines];
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
