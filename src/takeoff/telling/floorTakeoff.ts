/** Planned floors -> what is shown of one of them. */

import { ledgerOf } from '../../cutting/plan/ledger';
import { finished, type Steps } from '../../cutting/steps';
import { type Ticks, toTicks } from '../../geometry/length';
import { distinct, lastOf, sumOf } from '../../geometry/lists';
import { areaOf } from '../../geometry/polygon';
import { toRoom } from '../../geometry/turn';
import { bandOf, type Row } from '../../layout/rows';
import { roomAreaOf } from '../../room/outline';
import { staggerAcross } from '../planning/middleStart';
import { type PlannedFloors, startEdgeOf } from '../planning/planFloors';
import type { LaidFloor } from '../reading/drawnRoom';
import type { FloorPiece, FloorRow, SawPlank, Summary, Takeoff, WayLine } from '../result';
import { floorPiecesInSteps, sawPlanksOf } from './cutList';
import { notesOf } from './notes';
import { waitingAfterRows } from './offcuts';
import { proofOf } from './proof';
import { shapingOf } from './shaping';
import { startLinesOf } from './starts';

/**
 * What the whole of a plan says about one of its floors; a floor on both sides of a middle line is shown as one.
 *
 * @param floorIndex of the floor, or of the part ahead of its line
 * @param ways the candidates it was chosen from
 */
export function floorTakeoffOf(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
  ways: readonly WayLine[],
): Takeoff {
  return finished(floorTakeoffInSteps(planned, floorIndex, ways));
}

/** The same in steps. */
export function* floorTakeoffInSteps(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
  ways: readonly WayLine[],
): Steps<Takeoff> {
  const { entry, read, room, layout, part } = planned.floors[floorIndex];
  const indices = part === 'ahead' ? [floorIndex, floorIndex + 1] : [floorIndex];
  const floors = indices.map((i) => planned.floors[i]);
  const pieces: FloorPiece[] = [];
  for (const i of indices) pieces.push(...(yield* floorPiecesInSteps(planned, i, shapingOf(planned.floors[i]))));
  yield;
  const planks = sawPlanksOf(planned, indices, pieces);
  yield;
  return {
    entry,
    rooms: read.rooms,
    units: read.units,
    plankLength: read.product.plankLength,
    markingStep: read.rules.markingStep,
    outline: room.outline,
    walls: room.walls.map(({ wallNumber, from, to }) => ({ wallNumber, from, to })),
    cutouts: room.cutouts,
    covered: room.covered,
    doorways: room.doorways.map(({ doorwayNumber, from, to, floor }) => ({ doorwayNumber, from, to, floor })),
    floor: floors.flatMap(({ floor }) => floor),
    rowAngle: layout.frame.degrees,
    rows: indices.flatMap((i) => floorRowsOf(planned, i)),
    startEdge: startEdgeOf(planned.floors[floorIndex]),
    pieces,
    planks,
    plan: planned.plan,
    summary: summaryOf(planned, indices, pieces, planks),
    ways,
    starts: startLinesOf(planned.floors[floorIndex]),
    notes: notesOf(planned, indices, pieces),
  };
}

function floorRowsOf(planned: PlannedFloors<LaidFloor>, floorIndex: number): readonly FloorRow[] {
  const laid = planned.floors[floorIndex];
  const waiting = waitingAfterRows(planned, floorIndex);
  return laid.layout.rows.map((row, i) => floorRowOf(row, laid, waiting[planned.firstRows[floorIndex] + i]));
}

function floorRowOf(row: Row, { layout, part }: LaidFloor, waiting: FloorRow['waiting']): FloorRow {
  const isReversed = part === 'behind';
  const { rowNumber, width, narrowest } = row;
  const polygon = bandOf(row, layout.frame);
  const narrowestAt = toRoom(layout.frame, { x: narrowest.x, y: toTicks((row.y0 + row.y1) / 2) });
  return { rowNumber, width, narrowest: narrowest.width, narrowestAt, isReversed, waiting, polygon };
}

function summaryOf(
  planned: PlannedFloors<LaidFloor>,
  indices: readonly number[],
  pieces: readonly FloorPiece[],
  planks: readonly SawPlank[],
): Summary {
  const floors = indices.map((i) => planned.floors[i]);
  const [{ read, room }] = floors;
  const { product, rules } = read;
  const plankArea = product.plankLength * product.plankWidth;
  const roomArea = roomAreaOf(room);
  const floorArea = sumOf(floors, ({ floor }) => areaOf(floor));
  // A plank counts where its first piece is laid, so that rooms that share planks add up to their plan.
  const plankCount = planks.filter((plank) => plank.pieces[0].room === '').length;
  const planksToBuy = plankCount + rules.spare;
  const boxes = (count: number) => (product.planksPerBox === null ? null : Math.ceil(count / product.planksPerBox));
  const tenPercentPlanks = Math.ceil((roomArea * 11) / (plankArea * 10));
  return {
    roomArea,
    floorArea,
    rowCount: sumOf(floors, ({ layout }) => layout.rows.length),
    ...wallRowsOf(floors),
    plankCount,
    planksToBuy,
    boxCount: boxes(planksToBuy),
    boughtWith: otherRoomsOf(planned, read.name),
    sharedWith: otherRoomsOf(planned, read.name),
    waste: wasteOf(planned),
    shortestPiece: Math.min(...pieces.map((piece) => piece.length)),
    ...countsOf(planned, indices),
    mostWaiting: planned.ledger.waiting.most,
    tenPercentPlanks,
    tenPercentBoxes: boxes(tenPercentPlanks),
    proof: proofOf(planned.markedPlan),
  };
}

function otherRoomsOf({ floors }: PlannedFloors<LaidFloor>, name: string): readonly string[] {
  return distinct(floors.map(({ read }) => read.name)).filter((other) => other !== name);
}

/** Of all the floors of a plan: how much of a shared plank is wasted cannot be told of one of them. */
function wasteOf({ floors, plan }: PlannedFloors<LaidFloor>): number {
  const { plankLength, plankWidth } = floors[0].read.product;
  const laid = sumOf(floors, ({ floor }) => areaOf(floor));
  return Math.max(0, 1 - laid / (plan.plankCount * plankLength * plankWidth));
}

/** Widths of the rows at the two walls; from a middle line the one behind it ends at the near wall. */
function wallRowsOf(floors: readonly LaidFloor[]): Pick<Summary, 'firstRowWidth' | 'lastRowWidth'> {
  const [{ layout: ahead }, behind] = floors;
  return { firstRowWidth: behind ? behind.layout.lastWidth : ahead.firstWidth, lastRowWidth: ahead.lastWidth };
}

/** What is counted within one floor: joints and cuts. */
function countsOf(
  planned: PlannedFloors<LaidFloor>,
  indices: readonly number[],
): { tightestStagger: Ticks | null; alignedJointCount: number; cutCount: number } {
  const [from, to] = [planned.firstRows[indices[0]], planned.firstRows[lastOf(indices) + 1]];
  const ripPairs = planned.markedJob.ripPairs
    .filter(([first, last]) => first >= from && last < to)
    .map(([first, last]) => [first - from, last - from] as const);
  const ledger =
    planned.floors.length === indices.length
      ? planned.ledger
      : ledgerOf(
          { ...planned.markedJob, rows: planned.markedJob.rows.slice(from, to), ripPairs },
          { ...planned.markedPlan, rows: planned.markedPlan.rows.slice(from, to) },
        );
  const across = indices.length > 1 ? staggerAcross(planned, indices[0]) : null;
  const staggers = [ledger.tightestStagger, across].filter((stagger): stagger is Ticks => stagger !== null);
  const tightestStagger = staggers.length > 0 ? Math.min(...staggers) : null;
  return { tightestStagger, alignedJointCount: ledger.alignedJointCount, cutCount: ledger.cutCount };
}
