/**
 * A takeoff made without any planning: the room as it is measured, and the counts a test names. For what follows the
 * cut plan and asks only how many.
 */

import { subtract } from '../../src/geometry/combine';
import { areaOf } from '../../src/geometry/polygon';
import { roomOf } from '../../src/room/outline';
import type { DoorwayEntry, RoomEntry, Typed } from '../../src/takeoff/entry';
import { BLANK_RULES } from '../../src/takeoff/entry';
import { type ReadRoom, readRoom } from '../../src/takeoff/reading/readRoom';
import type { CutKind, FloorPiece, Summary, Takeoff } from '../../src/takeoff/result';

export interface BareCounts {
  readonly planks?: number;
  readonly spare?: number;
  readonly rows?: number;
  readonly cuts?: readonly CutKind[];
}

/** A doorway with nothing special about it. */
export function doorwayIn(
  wall: number,
  along: Typed,
  width: Typed,
  floor: DoorwayEntry['floor'] = 'transition',
): DoorwayEntry {
  return { wall, along, width, floor, depth: '', leadsTo: '', itsDoorway: '', wallThickness: '' };
}

/** A rectangular room of feet with planks of 48 in by 6 in, 10 a box. */
export function plainEntry(name: string, length: Typed, width: Typed, changes: Partial<RoomEntry> = {}): RoomEntry {
  return {
    name,
    units: 'us',
    shape: { kind: 'rectangle', length, width },
    bows: [],
    cutouts: [],
    doorways: [],
    product: {
      name: 'Plain oak',
      kind: 'laminate',
      plankLength: '48"',
      plankWidth: '6"',
      thickness: '1/2"',
      planksPerBox: 10,
      boxCoverage: '',
      pricePerBox: 50,
    },
    rules: BLANK_RULES,
    ...changes,
  };
}

export function bareTakeoff(entry: RoomEntry, counts: BareCounts = {}): Takeoff {
  const read = readRoom(entry);
  if (!read.room) throw new Error(read.problems.map((problem) => problem.text).join(' '));
  const result = roomOf(read.room.measured);
  if (result.kind !== 'room') throw new Error(`${entry.name}: ${result.faults.map((fault) => fault.code).join(', ')}`);
  const { outline, walls, cutouts, doorways } = result.room;
  const plankCount = counts.planks ?? 0;
  const cuts = counts.cuts ?? [];
  const roomArea = areaOf(subtract([outline], cutouts));
  const summary: Summary = {
    roomArea,
    floorArea: roomArea,
    rowCount: counts.rows ?? 0,
    firstRowWidth: 0,
    lastRowWidth: 0,
    plankCount,
    planksToBuy: plankCount + (counts.spare ?? 0),
    boxCount: null,
    boughtWith: [],
    sharedWith: [],
    waste: 0,
    shortestPiece: 0,
    tightestStagger: null,
    alignedJointCount: 0,
    cutCount: cuts.length,
    mostWaiting: 0,
    tenPercentPlanks: 0,
    tenPercentBoxes: null,
    proof: 'cannot be done with fewer',
  };
  return {
    entry,
    rooms: [entry.name],
    units: entry.units,
    plankLength: read.room.product.plankLength,
    markingStep: read.room.rules.markingStep,
    outline,
    walls,
    cutouts,
    covered: [],
    doorways: doorways.map(({ doorwayNumber, from, to, floor }) => ({ doorwayNumber, from, to, floor })),
    floor: subtract([outline], cutouts),
    rowAngle: 0,
    startEdge: 'tongue',
    rows: [],
    pieces: cuts.map((cut, i) => pieceWith(cut, i)),
    planks: [],
    plan: { rows: [], plankCount, bound: plankCount, stop: 'proved fewest', steps: 0, broken: [] },
    summary,
    ways: [],
    starts: [],
    notes: [],
  };
}

function pieceWith(cut: CutKind, index: number): FloorPiece {
  return {
    label: `1-${index + 1}`,
    rowNumber: 1,
    runNumber: 1,
    pieceNumber: index + 1,
    length: 0,
    shortPoint: 0,
    widthLeft: 0,
    widthRight: 0,
    squaredBy: 0,
    leftOff: 0,
    plankNumber: index + 1,
    keeps: 'no end',
    stripOf: '',
    offcutOf: '',
    mayGrow: null,
    room: '',
    cuts: [cut],
    polygon: [],
    holes: [],
    marks: [],
    rest: '',
  };
}

/** What those rooms were read as. */
export function readsOf(rooms: readonly Takeoff[]): readonly ReadRoom[] {
  return rooms.flatMap(({ entry }) => readRoom(entry).room ?? []);
}
