/** Planned floors -> the pieces of one of them for the person who lays it, and the planks for the person at the saw. */
import type { KeptEnd, PlannedPiece } from '../../cutting/job';
import type { BookedPiece, PlankBooking } from '../../cutting/plan/ledger';
import type { Ticks, Units } from '../../geometry/length';
import { type Region, signedAreaOf } from '../../geometry/polygon';
import { jointsOf } from '../../layout/joints';
import { isAngledEnd, type LaidPiece, piecesOf } from '../../layout/pieces';
import type { PlannedFloors } from '../planning/planFloors';
import type { FloorPiece, SawPiece, SawPlank } from '../result';
import { lengthText } from '../text/lengthText';
import { marksOf } from './marks';

/** How each kept end is told. */
const KEEPS: Readonly<Record<KeptEnd, FloorPiece['keeps']>> = {
  left: 'left end',
  right: 'right end',
  middle: 'no end',
  whole: 'both ends',
};

/** Every piece of one floor in laying order. */
export function floorPiecesOf(all: PlannedFloors, floorIndex: number): readonly FloorPiece[] {
  const { layout, read, part = 'whole' } = all.floors[floorIndex];
  const firstRow = all.firstRows[floorIndex];
  const rowIndexOf = (piece: LaidPiece) => piece.rowNumber - layout.rows[0].rowNumber;
  const planOf = (piece: LaidPiece) =>
    all.markedPlan.rows[firstRow + rowIndexOf(piece)].runs[piece.runNumber - 1][piece.pieceNumber - 1];
  const size = { ...read.product, markingStep: read.rules.markingStep };
  const strips = stripSourcesOf(all, floorIndex);
  const rests = restsOf(all, floorIndex);
  return numbered(piecesOf(layout, jointPlaces(all, floorIndex), size)).map(({ piece, label }): FloorPiece => {
    const planned = planOf(piece);
    return {
      label,
      rowNumber: piece.rowNumber,
      runNumber: piece.runNumber,
      pieceNumber: Number(label.split('-')[1]),
      length: planned.length,
      shortPoint: shortPointOf(piece, planned.length, read.rules.markingStep),
      widthLeft: piece.widthLeft,
      widthRight: piece.widthRight,
      plankNumber: planned.plank + 1,
      keeps: keptOf(planned, piece, read.rules.markingStep),
      stripOf: planned.isStrip ? (strips.get(planned) ?? '') : '',
      cuts: piece.cuts,
      polygon: outerOf(piece.inRoom),
      holes: piece.inRoom.filter((outline) => outline !== outerOf(piece.inRoom)),
      marks: marksOf(piece, layout.rows[rowIndexOf(piece)], {
        layout,
        startEdge: part === 'whole' ? 'tongue' : 'groove',
        step: read.rules.markingStep,
        units: read.units,
      }),
      rest: rests.get(planned) ?? '',
    };
  });
}

/** As marked: the steps that the piece is cut shorter come off both edges. Under a step the edge runs out to a point. */
function shortPointOf({ length, shortPoint }: LaidPiece, marked: Ticks, step: Ticks): Ticks {
  const left = shortPoint - (length - marked);
  return left < step ? 0 : left;
}

/** A whole plank keeps both its ends, unless one is cut off at an angle. */
function keptOf({ from }: PlannedPiece, piece: LaidPiece, step: Ticks): FloorPiece['keeps'] {
  if (from !== 'whole') return KEEPS[from];
  const [left, right] = [!isAngledEnd(piece, 'left', step), !isAngledEnd(piece, 'right', step)];
  if (left && right) return KEEPS.whole;
  return left ? KEEPS.left : right ? KEEPS.right : KEEPS.middle;
}

/**
 * Every plank that gives these floors a piece, with all that is cut from it, in the order in which it is first needed.
 *
 * @param indices of one floor, or of the two sides of a middle line; what the plank gives other floors names their room
 * @param own the pieces of these floors
 */
export function sawPlanksOf(
  planned: PlannedFloors,
  indices: readonly number[],
  own: readonly FloorPiece[],
): readonly SawPlank[] {
  const nameOf = namesFor(planned, indices[0]);
  const ownKept = new Map(own.map(({ label, keeps }) => [label, keeps]));
  const [from, to] = [planned.firstRows[indices[0]], planned.firstRows[indices[indices.length - 1] + 1]];
  return planned.ledger.planks
    .map((booking) => ({ booking, pieces: [...booking.pieces, ...booking.strips] }))
    .filter(({ pieces }) => pieces.some(({ rowIndex }) => rowIndex >= from && rowIndex < to))
    .map(({ booking, pieces }) => ({
      plankNumber: booking.plank + 1,
      pieces: pieces.map((piece): SawPiece => {
        const name = nameOf(piece);
        // A plank with an angled end gives nothing else, so it is never one that another room shares.
        const keeps = (name.room === '' ? ownKept.get(name.label) : undefined) ?? KEEPS[piece.from];
        return { ...name, length: piece.length, keeps };
      }),
      leftOver: booking.leftOver,
    }));
}

/** Places of the end joints, row -> run, in the laying frame of a floor. */
export function jointPlaces(planned: PlannedFloors, floorIndex: number): readonly (readonly (readonly Ticks[])[])[] {
  const firstRow = planned.firstRows[floorIndex];
  return planned.floors[floorIndex].layout.rows.map((row, i) =>
    row.runs.map((run, j) =>
      jointsOf(
        run.x0,
        planned.markedPlan.rows[firstRow + i].runs[j].map(({ length }) => length),
      ),
    ),
  );
}

/** `3-2` for each piece: its row, and its place in the row across all its runs. */
function numbered(pieces: readonly LaidPiece[]): readonly { readonly piece: LaidPiece; readonly label: string }[] {
  let row = 0;
  let place = 0;
  return pieces.map((piece) => {
    place = piece.rowNumber === row ? place + 1 : 1;
    row = piece.rowNumber;
    return { piece, label: `${row}-${place}` };
  });
}

/** A piece of the plan as one of its floors calls it: its label, and its room where that is another one. */
interface PieceName {
  /** '' for a piece of the floor itself. */
  readonly room: string;
  readonly label: string;
}

type NameOf = (place: Pick<BookedPiece, 'rowIndex' | 'runIndex' | 'pieceIndex'>) => PieceName;

/** How a floor calls the piece at a place of the job. Both sides of a middle line are one room. */
function namesFor({ floors, firstRows, markedPlan }: PlannedFloors, ownIndex: number): NameOf {
  return ({ rowIndex, runIndex, pieceIndex }) => {
    const floorIndex = firstRows.findIndex((_, i) => rowIndex < firstRows[i + 1]);
    const before = markedPlan.rows[rowIndex].runs.slice(0, runIndex).reduce((sum, run) => sum + run.length, 0);
    const { layout, read } = floors[floorIndex];
    const { rowNumber } = layout.rows[rowIndex - firstRows[floorIndex]];
    const room = read.name === floors[ownIndex].read.name ? '' : read.name;
    return { room, label: `${rowNumber}-${before + pieceIndex + 1}` };
  };
}

/** `4-1`, or `Hall 4-1` for a piece of another room. */
function labelsFor(planned: PlannedFloors, ownIndex: number): (...place: Parameters<NameOf>) => string {
  const nameOf = namesFor(planned, ownIndex);
  return (place) => {
    const { room, label } = nameOf(place);
    return room === '' ? label : `${room} ${label}`;
  };
}

/** For each strip piece the label of the first-row piece whose strip it is. */
function stripSourcesOf(planned: PlannedFloors, ownIndex: number): ReadonlyMap<PlannedPiece, string> {
  const labelOf = labelsFor(planned, ownIndex);
  const sources = new Map<PlannedPiece, string>();
  for (const { source, rowIndex, runIndex, pieceIndex } of planned.ledger.planks.flatMap(({ strips }) => strips)) {
    const strip = planned.markedPlan.rows[rowIndex].runs[runIndex][pieceIndex];
    if (source) sources.set(strip, labelOf(source));
  }
  return sources;
}

/** Where the rest of the plank goes once a piece is cut off it, in words. */
function restsOf(planned: PlannedFloors, ownIndex: number): ReadonlyMap<PlannedPiece, string> {
  const { units, rules } = planned.floors[ownIndex].read;
  const labelOf = labelsFor(planned, ownIndex);
  const rests = new Map<PlannedPiece, string>();
  for (const booking of planned.ledger.planks) {
    booking.pieces.forEach((booked, i) => {
      const { rowIndex, runIndex, pieceIndex } = booked;
      const next = booking.pieces[i + 1];
      const left = next ? `to ${labelOf(next)}` : wasteText(booking, units, rules.markingStep);
      const ripped = booking.strips.filter(({ source }) => source === booked);
      const parts = [left, ...ripped.map((strip) => `strip to ${labelOf(strip)}`)];
      rests.set(
        planned.markedPlan.rows[rowIndex].runs[runIndex][pieceIndex],
        parts.filter((part) => part !== '').join(', '),
      );
    });
  }
  return rests;
}

function wasteText({ leftOver }: PlankBooking, units: Units, step: Ticks): string {
  return leftOver < step ? '' : `waste ${lengthText(leftOver, units, 'piece')}`;
}

/** The outline round all of a piece; the others are holes in it, or parts that a cut-out divides off. */
function outerOf(region: Region): Region[number] {
  return region.reduce((largest, outline) => (signedAreaOf(outline) > signedAreaOf(largest) ? outline : largest));
}
