/** Planned floors -> the pieces of one of them for the person who lays it, and the planks for the person at the saw. */

import type { KeptEnd, PlannedPiece } from '../../cutting/job';
import { finished, type Steps } from '../../cutting/steps';
import type { Ticks } from '../../geometry/length';
import { lastOf, leastBy } from '../../geometry/lists';
import { type Region, signedAreaOf } from '../../geometry/polygon';
import { jointsOf } from '../../layout/joints';
import { isAngledEnd, type LaidPiece, piecesOfRow } from '../../layout/pieces';
import type { Row } from '../../layout/rows';
import { type FloorInRows, type PlannedFloors, startEdgeOf } from '../planning/planFloors';
import type { FloorPiece, SawPiece, SawPlank } from '../result';
import { areasOf } from './areas';
import { gluedMarks, type LabelledPiece, labelled, partAsPlanned, partsBeyond, partUse } from './lengthwise';
import { marksOf } from './marks';
import { type PlankUse, plankUses } from './offcuts';
import { namesFor } from './pieceNames';
import type { Bored } from './pipes';
import { cutsInOrder, isRippedLong, isStripAsItIs, type SawBench, shortRipMarks } from './sawOrder';
import type { Shaping } from './shaping';
import { slideMarks } from './slideIn';

/** How each kept end is told. */
const KEEPS: Readonly<Record<KeptEnd, FloorPiece['keeps']>> = {
  left: 'left end',
  right: 'right end',
  middle: 'no end',
  whole: 'both ends',
};

/** A floor as it is told: what its pieces have in common. */
interface ToldFloor {
  readonly all: PlannedFloors;
  readonly floor: FloorInRows;
  readonly uses: ReadonlyMap<PlannedPiece, PlankUse>;
  /** The parts of each planned piece: one, or several where a wall divides it lengthwise. */
  readonly parts: ReadonlyMap<PlannedPiece, readonly LabelledPiece[]>;
  readonly bored: ReadonlyMap<LaidPiece, Bored>;
  readonly shaped?: Shaping;
}

/**
 * Every piece of one floor in laying order.
 *
 * @param shaped what only floors with cut-outs and walls that bend need; nothing in a plain rectangle
 */
export function floorPiecesOf(all: PlannedFloors, floorIndex: number, shaped?: Shaping): readonly FloorPiece[] {
  return finished(floorPiecesInSteps(all, floorIndex, shaped));
}

/** The same in steps, row by row. */
export function* floorPiecesInSteps(
  all: PlannedFloors,
  floorIndex: number,
  shaped?: Shaping,
): Steps<readonly FloorPiece[]> {
  const floor = all.floors[floorIndex];
  const { layout, read } = floor;
  const firstRow = all.firstRows[floorIndex];
  const rowIndexOf = (piece: LaidPiece) => piece.rowNumber - layout.rows[0].rowNumber;
  const planOf = (piece: LaidPiece) =>
    all.markedPlan.rows[firstRow + rowIndexOf(piece)].runs[piece.runNumber - 1][piece.pieceNumber - 1];
  const { markingStep, squareCut, kerf } = read.rules;
  const size = { ...read.product, markingStep, squareCut, kerf };
  const joints = jointPlaces(all, floorIndex);
  const pieces: LaidPiece[] = [];
  for (const [i, row] of layout.rows.entries()) {
    pieces.push(...piecesOfRow(layout, row, joints[i], size, shaped?.bending));
    yield;
  }
  const laid = labelled(pieces);
  const parts = new Map<PlannedPiece, LabelledPiece[]>();
  for (const part of laid) parts.set(planOf(part.piece), [...(parts.get(planOf(part.piece)) ?? []), part]);
  const bored = shaped?.boredTogether(laid, layout, markingStep, read.units) ?? new Map<LaidPiece, Bored>();
  const told = { all, floor, uses: plankUses(all, floorIndex), parts, bored, shaped };
  const areaOf = areasOf(floor);
  const list: FloorPiece[] = [];
  for (const one of laid) {
    const { piece } = one;
    if (piece.pieceNumber === 1) yield;
    list.push({ ...toldPiece(one, planOf(piece), layout.rows[rowIndexOf(piece)], told), room: areaOf(piece) });
  }
  return list;
}

function toldPiece(one: LabelledPiece, whole: PlannedPiece, row: Row, told: ToldFloor): Omit<FloorPiece, 'room'> {
  const { piece, label } = one;
  const { all, floor, uses, bored } = told;
  const { layout, read } = floor;
  const { units, rules } = read;
  const step = rules.markingStep;
  const parts = told.parts.get(whole) ?? [];
  const planned = partAsPlanned(piece, parts, whole, step);
  const wholeUse = uses.get(whole);
  if (!wholeUse) throw new Error(`Internal: piece ${label} is cut from no plank.`);
  const rippedAt = isRippedLong(whole.length, wholeUse, units) ? wholeUse.stockLength : whole.length;
  const use = partUse(wholeUse, piece, parts, rippedAt);
  const bench: SawBench = { use, stripWidth: stripWidthOf(use, told.parts, all), step, units };
  const cuts = cutsInOrder(piece, planned.length, bench);
  const strip = use.stripOf === '' ? null : isStripAsItIs(piece, bench) ? 'as it is' : 'wider';
  const boring = bored.get(piece);
  const notches = piece.notches.filter((notch) => !boring?.notches.includes(notch));
  return {
    ...sizesOf(piece, label, planned, step),
    stripOf: use.stripOf,
    offcutOf: use.offcutOf,
    mayGrow: use.mayGrow,
    cuts,
    marks: [
      ...shortRipMarks(cuts, planned.length, bench),
      ...slideMarks(row, layout),
      ...(told.shaped?.coveredMarks(piece) ?? []),
      ...marksOf(
        { ...piece, notches },
        row,
        { layout, startEdge: startEdgeOf(floor), step, units, strip, length: planned.length },
        told.shaped?.shapedMarks,
      ),
      ...(boring?.marks ?? []),
      ...gluedMarks(piece, parts),
    ],
    rest: use.rest,
  };
}

/** Where a piece lies, how large it is, and what it keeps of its plank. */
function sizesOf(
  piece: LaidPiece,
  label: string,
  planned: PlannedPiece,
  step: Ticks,
): Omit<FloorPiece, 'stripOf' | 'offcutOf' | 'mayGrow' | 'room' | 'cuts' | 'marks' | 'rest'> {
  const outer = outerOf(piece.inRoom);
  return {
    label,
    rowNumber: piece.rowNumber,
    runNumber: piece.runNumber,
    pieceNumber: Number.parseInt(label.split('-')[1], 10),
    length: planned.length,
    shortPoint: shortPointOf(piece, planned.length, step),
    widthLeft: piece.widthLeft,
    widthRight: piece.widthRight,
    squaredBy: piece.squaredBy,
    leftOff: piece.leftOff,
    plankNumber: planned.plank + 1,
    keeps: keptOf(planned, piece, step),
    polygon: outer,
    holes: piece.inRoom.filter((outline) => outline !== outer),
  };
}

/** Width of the strip that ripping a straight piece of this floor leaves; null where there is none, or not of one width. */
function stripWidthOf(
  { stripSource }: PlankUse,
  partsOfPlan: ToldFloor['parts'],
  { markedJob }: PlannedFloors,
): Ticks | null {
  const parts = (stripSource && partsOfPlan.get(stripSource)) ?? [];
  if (parts.length !== 1) return null;
  const source = parts[0].piece;
  if (source.widthLeft !== source.widthRight || source.slants.length + source.bends.length > 0) return null;
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
  const ownPieces = new Map(own.map((piece) => [piece.label, piece]));
  const [from, to] = [planned.firstRows[indices[0]], planned.firstRows[lastOf(indices) + 1]];
  return planned.ledger.planks
    .map((booking) => ({ booking, pieces: [...booking.pieces, ...booking.strips] }))
    .filter(({ pieces }) => pieces.some(({ rowIndex }) => rowIndex >= from && rowIndex < to))
    .map(({ booking, pieces }) => ({
      plankNumber: booking.plank + 1,
      pieces: pieces.flatMap((piece): SawPiece[] => {
        const name = nameOf(piece);
        // A plank with an angled end gives nothing else, so it is never one that another room shares.
        const laid = name.room === '' ? ownPieces.get(name.label) : undefined;
        const use = uses.get(planned.markedPlan.rows[piece.rowIndex].runs[piece.runIndex][piece.pieceIndex]);
        const told = { length: piece.length, stripOf: use?.stripOf ?? '', rest: use?.rest ?? '' };
        if (laid) return [laid, ...partsBeyond(laid, ownPieces)].map(sawPieceOf);
        return [{ ...name, ...told, keeps: KEEPS[piece.from] }];
      }),
      leftOver: booking.leftOver,
    }));
}

function sawPieceOf({ label, length, keeps, stripOf, rest }: FloorPiece): SawPiece {
  return { room: '', label, length, keeps, stripOf, rest };
}

/** Places of the end joints, row -> run, in the laying frame of a floor. Ticks. */
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

/** The outline round all of a piece; the others are holes in it, or parts that a cut-out divides off. */
function outerOf(region: Region): Region[number] {
  return leastBy(region, (outline) => -signedAreaOf(outline));
}
