/** A rectangle as the table that `PLANK_CUTS` answers: a heading, one line per piece, then what there is to say. */
import type { Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import { planFloors } from '../takeoff/planning/planFloors';
import { STEPS_OF_A_CALL } from '../takeoff/planning/stepsOfACall';
import type { Product } from '../takeoff/reading/readRoom';
import { layRectangle, type Rectangle } from '../takeoff/rectangle';
import type { FloorPiece } from '../takeoff/result';
import { floorPiecesOf } from '../takeoff/telling/cutList';
import { KEPT_WORDS } from '../takeoff/telling/keptWords';
import { planNotesOf } from '../takeoff/telling/notes';
import type { CellAnswer } from './arguments';
import { lengthNumber } from './lengthFunctions';

const HEADING: readonly string[] = [
  'row',
  'piece',
  'length',
  'width',
  'plank',
  'keep factory end',
  'rest of plank',
  'notes',
];

/** @throws Error with a sentence when the room cannot be laid */
export function cutTable(room: Rectangle, product: Product, rules: Rules, units: Units): CellAnswer[][] {
  const laid = layRectangle(room, product, rules, units);
  if (typeof laid === 'string') throw new Error(laid);
  const planned = planFloors([laid], { mostSteps: STEPS_OF_A_CALL });
  const noteLines = planNotesOf(planned, 0).map((sentence) =>
    HEADING.map((_, column) => (column === 0 ? sentence : '')),
  );
  return [[...HEADING], ...floorPiecesOf(planned, 0).map((piece) => pieceLine(piece, units)), ...noteLines];
}

function pieceLine(piece: FloorPiece, units: Units): CellAnswer[] {
  const source = [
    ...(piece.offcutOf === '' ? [] : [`Offcut of ${piece.offcutOf}.`]),
    ...(piece.stripOf === '' ? [] : [`Strip of ${piece.stripOf}.`]),
  ];
  return [
    piece.rowNumber,
    piece.label,
    lengthNumber(piece.length, units),
    lengthNumber(piece.widthLeft, units),
    piece.plankNumber,
    KEPT_WORDS[piece.keeps],
    piece.rest,
    [...source, ...piece.marks].join(' '),
  ];
}
