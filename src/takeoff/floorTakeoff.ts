/** Planned floors -> what is shown of one of them. */
import { ledgerOf } from '../cutting/ledger';
import type { Ticks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { areaOf } from '../geometry/polygon';
import { regionToRoom } from '../geometry/turn';
import type { Row, RowLayout } from '../layout/rows';
import { roomAreaOf } from '../room/outline';
import { floorPiecesOf, sawPlanksOf } from './cutList';
import { notesOf } from './notes';
import type { PlannedFloors } from './planFloors';
import { proofOf } from './proof';
import type { FloorPiece, FloorRow, SawPlank, Summary, Takeoff, WayLine } from './result';
import type { LaidFloor } from './ways';

/** What the whole of a plan says about one of its floors; `ways` are the candidates it was chosen from. */
export function floorTakeoffOf(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
  ways: readonly WayLine[],
): Takeoff {
  const { entry, read, room, floor, layout } = planned.floors[floorIndex];
  const pieces = floorPiecesOf(planned, floorIndex);
  const planks = sawPlanksOf(planned, floorIndex);
  return {
    entry,
    units: read.units,
    outline: room.outline,
    cutouts: room.cutouts,
    doorways: room.doorways.map(({ doorwayNumber, from, to, floor }) => ({ doorwayNumber, from, to, floor })),
    floor,
    rowAngle: layout.frame.degrees,
    rows: layout.rows.map((row) => floorRowOf(row, layout)),
    pieces,
    planks,
    plan: planned.plan,
    summary: summaryOf(planned, floorIndex, pieces, planks),
    ways,
    notes: notesOf(planned, floorIndex),
  };
}

function floorRowOf(row: Row, layout: RowLayout): FloorRow {
  const x0 = Math.min(...row.runs.map((run) => run.x0));
  const x1 = Math.max(...row.runs.map((run) => run.x1));
  const band: readonly Point[] = [
    { x: x0, y: row.y0 },
    { x: x1, y: row.y0 },
    { x: x1, y: row.y1 },
    { x: x0, y: row.y1 },
  ];
  const [polygon] = regionToRoom(layout.frame, [band]);
  return { rowNumber: row.rowNumber, width: row.width, narrowest: row.narrowest.width, polygon };
}

function summaryOf(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
  pieces: readonly FloorPiece[],
  planks: readonly SawPlank[],
): Summary {
  const { read, room, floor, layout } = planned.floors[floorIndex];
  const { product, rules } = read;
  const plankArea = product.plankLength * product.plankWidth;
  const roomArea = roomAreaOf(room);
  const floorArea = areaOf(floor);
  const planksToBuy = planks.length + rules.spare;
  const boxes = (plankCount: number) =>
    product.planksPerBox === null ? null : Math.ceil(plankCount / product.planksPerBox);
  const tenPercentPlanks = Math.ceil((roomArea * 11) / (plankArea * 10));
  return {
    roomArea,
    floorArea,
    rowCount: layout.rows.length,
    firstRowWidth: layout.firstWidth,
    lastRowWidth: layout.lastWidth,
    plankCount: planks.length,
    planksToBuy,
    boxCount: boxes(planksToBuy),
    waste: Math.max(0, 1 - floorArea / (planks.length * plankArea)),
    shortestPiece: Math.min(...pieces.map((piece) => piece.length)),
    ...countsOf(planned, floorIndex),
    tenPercentPlanks,
    tenPercentBoxes: boxes(tenPercentPlanks),
    proof: proofOf(planned.plan),
  };
}

/** What is counted within one floor: joints and cuts. */
function countsOf(
  planned: PlannedFloors<LaidFloor>,
  floorIndex: number,
): { tightestStagger: Ticks | null; alignedJointCount: number; cutCount: number } {
  const [from, to] = [planned.firstRows[floorIndex], planned.firstRows[floorIndex + 1]];
  const ledger =
    planned.floors.length === 1
      ? planned.ledger
      : ledgerOf(
          { ...planned.markedJob, rows: planned.markedJob.rows.slice(from, to), ripPairs: [] },
          { ...planned.markedPlan, rows: planned.markedPlan.rows.slice(from, to) },
        );
  const { tightestStagger, alignedJointCount, cutCount } = ledger;
  return { tightestStagger, alignedJointCount, cutCount };
}
