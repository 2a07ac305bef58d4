/** Planned floors -> the pieces of one of them for the person who lays it, and the planks for the person at the saw. */
import type { KeptEnd, PlannedPiece } from '../../cutting/job';
import type { Ticks } from '../../geometry/length';
import { type Region, signedAreaOf } from '../../geometry/polygon';
import { jointsOf } from '../../layout/joints';
import { isAngledEnd, type LaidPiece, piecesOf } from '../../layout/pieces';
import type { PlannedFloors } from '../planning/planFloors';
import type { FloorPiece, SawPiece, SawPlank } from '../result';
import { areasOf } from './areas';
import { marksOf } from './marks';
import { type PlankUse, plankUses } from './offcuts';
import { namesFor } from './pieceNames';
import { cutsInOrder, isStripAsItIs, type SawBench, shortRipMarks } from './sawOrder';

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
  const uses = plankUses(all, floorIndex);
  const laid = numbered(piecesOf(layout, jointPlaces(all, floorIndex), size));
  const laidAs = new Map(laid.map(({ piece }) => [planOf(piece), piece]));
  const areaOf = areasOf(all.floors[floorIndex]);
  return laid.map(({ piece, label }): FloorPiece => {
    const planned = planOf(piece);
    const use = uses.get(planned);
    if (!use) throw new Error(`Internal: piece ${label} is cut from no plank.`);
    const bench: SawBench = {
      use,
      stripWidth: stripWidthOf(use, laidAs, all),
      step: read.rules.markingStep,
      units: read.units,
    };
    const cuts = cutsInOrder(piece, planned.length, bench);
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
      stripOf: use.stripOf,
      offcutOf: use.offcutOf,
      mayGrow: use.mayGrow,
      room: areaOf(piece),
      cuts,
      polygon: outerOf(piece.inRoom),
      holes: piece.inRoom.filter((outline) => outline !== outerOf(piece.inRoom)),
      marks: [
        ...shortRipMarks(cuts, planned.length, bench),
        ...marksOf(piece, layout.rows[rowIndexOf(piece)], {
          layout,
          startEdge: part === 'whole' ? 'tongue' : 'groove',
          step: read.rules.markingStep,
          units: read.units,
          strip: use.stripOf === '' ? null : isStripAsItIs(piece, bench) ? 'as it is' : 'wider',
        }),
      ],
      rest: use.rest,
    };
  });
}

/** Width of the strip that ripping a straight piece of this floor leaves; null where there is none, or not of one width. */
function stripWidthOf(
  { stripSource }: PlankUse,
  laidAs: ReadonlyMap<PlannedPiece, LaidPiece>,
  { markedJob }: PlannedFloors,
): Ticks | null {
  const source = stripSource && laidAs.get(stripSource);
  if (!source || source.widthLeft !== source.widthRight || source.slants.length > 0) return null;
  return markedJob.plankWidth - source.widthLeft - markedJob.kerf;
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
  const uses = plankUses(planned, indices[0]);
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
        const use = uses.get(planned.markedPlan.rows[piece.rowIndex].runs[piece.runIndex][piece.pieceIndex]);
        return { ...name, length: piece.length, keeps, stripOf: use?.stripOf ?? '', rest: use?.rest ?? '' };
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

/** The outline round all of a piece; the others are holes in it, or parts that a cut-out divides off. */
function outerOf(region: Region): Region[number] {
  return region.reduce((largest, outline) => (signedAreaOf(outline) > signedAreaOf(largest) ? outline : largest));
}
