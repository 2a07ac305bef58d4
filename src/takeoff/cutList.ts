/** Planned floors -> the pieces of one of them for the person who lays it, and the planks for the person at the saw. */
import type { KeptEnd, PlannedPiece } from '../cutting/job';
import type { PlankBooking } from '../cutting/ledger';
import type { Ticks, Units } from '../geometry/length';
import { type Region, signedAreaOf } from '../geometry/polygon';
import { jointsOf } from '../layout/joints';
import { type LaidPiece, piecesOf } from '../layout/pieces';
import { lengthText } from './lengthText';
import { marksOf } from './marks';
import type { PlannedFloors } from './planFloors';
import type { FloorPiece, SawPlank } from './result';

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
  const strips = stripSourcesOf(all);
  const rests = restsOf(all, read.units, read.rules.markingStep);
  return numbered(piecesOf(layout, jointPlaces(all, floorIndex), size)).map(({ piece, label }): FloorPiece => {
    const planned = planOf(piece);
    return {
      label,
      rowNumber: piece.rowNumber,
      runNumber: piece.runNumber,
      pieceNumber: Number(label.split('-')[1]),
      length: planned.length,
      shortPoint: Math.max(0, piece.shortPoint - (piece.length - planned.length)),
      widthLeft: piece.widthLeft,
      widthRight: piece.widthRight,
      plankNumber: planned.plank + 1,
      keeps: KEEPS[planned.from],
      stripOf: planned.twin ? (strips.get(planned) ?? '') : '',
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

/** Every plank of the plan with what is cut from it, in the order in which it is first needed. */
export function sawPlanksOf(planned: PlannedFloors, floorIndex: number): readonly SawPlank[] {
  const labels = labelsOf(planned);
  const rowRange = [planned.firstRows[floorIndex], planned.firstRows[floorIndex + 1]];
  return planned.ledger.planks
    .filter((booking) => {
      const { rowIndex } = [...booking.pieces, ...booking.strips][0];
      return rowIndex >= rowRange[0] && rowIndex < rowRange[1];
    })
    .map((booking) => ({
      plankNumber: booking.plank + 1,
      pieces: [...booking.pieces, ...booking.strips].map((piece) => ({
        label: labels(piece.rowIndex, piece.runIndex, piece.pieceIndex),
        length: piece.length,
        keeps: KEEPS[piece.from],
      })),
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

/** The label of the piece at a place of the job; with several rooms the room's name stands before it. */
function labelsOf(planned: PlannedFloors): (rowIndex: number, runIndex: number, pieceIndex: number) => string {
  const isOneRoom = planned.floors.every(({ read }) => read.name === planned.floors[0].read.name);
  return (rowIndex, runIndex, pieceIndex) => {
    const floorIndex = planned.firstRows.findIndex((_, i) => rowIndex < planned.firstRows[i + 1]);
    const before = planned.markedPlan.rows[rowIndex].runs.slice(0, runIndex).reduce((sum, run) => sum + run.length, 0);
    const { layout, read } = planned.floors[floorIndex];
    const { rowNumber } = layout.rows[rowIndex - planned.firstRows[floorIndex]];
    const label = `${rowNumber}-${before + pieceIndex + 1}`;
    return isOneRoom ? label : `${read.name} ${label}`;
  };
}

/** For each strip piece the label of the first-row piece whose strip it is. */
function stripSourcesOf(planned: PlannedFloors): ReadonlyMap<PlannedPiece, string> {
  const labels = labelsOf(planned);
  const sources = new Map<PlannedPiece, string>();
  for (const { pieces, strips } of planned.ledger.planks) {
    const free = [...pieces];
    for (const strip of strips) {
      const at = free.findIndex(
        ({ from, length }) => (from === strip.from || from === 'whole') && length >= strip.length,
      );
      if (at < 0) continue;
      const [{ rowIndex, runIndex, pieceIndex }] = free.splice(at, 1);
      sources.set(
        planned.markedPlan.rows[strip.rowIndex].runs[strip.runIndex][strip.pieceIndex],
        labels(rowIndex, runIndex, pieceIndex),
      );
    }
  }
  return sources;
}

/** Where the rest of the plank goes once a piece is cut off it, in words. */
function restsOf(planned: PlannedFloors, units: Units, step: Ticks): ReadonlyMap<PlannedPiece, string> {
  const labels = labelsOf(planned);
  const rests = new Map<PlannedPiece, string>();
  for (const booking of planned.ledger.planks) {
    booking.pieces.forEach((booked, i) => {
      const { rowIndex, runIndex, pieceIndex } = booked;
      const next = booking.pieces[i + 1];
      const left = next
        ? `to ${labels(next.rowIndex, next.runIndex, next.pieceIndex)}`
        : wasteText(booking, units, step);
      const strip = booking.strips.map((s) => `strip to ${labels(s.rowIndex, s.runIndex, s.pieceIndex)}`);
      const parts = i === 0 ? [left, ...strip] : [left];
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
