/** A room as read -> its outline and what of it gets floor. Or the problems of the room. */
import { type Ticks, toTicks } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { boundsOf, type Outline, type Region } from '../../geometry/polygon';
import { frameOf, regionToFrame } from '../../geometry/turn';
import { degreesOf } from '../../layout/direction';
import { gapForSpan } from '../../layout/expansion';
import type { RoomFault } from '../../room/faults';
import { bodyOf, floorOf } from '../../room/floor';
import { type Room, roomAreaOf, roomOf } from '../../room/outline';
import type { RoomEntry } from '../entry';
import { rowProblemsOf } from '../planning/ways';
import type { Problem } from '../result';
import { lengthText } from '../text/lengthText';
import { fieldOfFault } from './faultField';
import { MOST_PLANKS, MOST_ROWS, MOST_STEPS } from './limits';
import { problems } from './problems';
import { type ReadRoom, readRoom } from './readRoom';
import { roomFaultText } from './roomProblems';

/** A room with its floor, before a way to lay it is chosen. */
export interface DrawnRoom {
  readonly entry: RoomEntry;
  readonly read: ReadRoom;
  readonly room: Room;
  /** What gets floor, in the room. */
  readonly floor: Region;
  /** The floor without what runs into doorways: rows are counted out from the walls. */
  readonly body: Region;
  /** Middles of the doorways that the floor goes through: where a start from a middle line takes its line. */
  readonly through: readonly Point[];
  /** Of a floor through several rooms: the room whose product and rules count, and the others, each as drawn alone. */
  readonly others?: { readonly first: DrawnRoom; readonly rest: readonly DrawnRoom[] };
  /** Of a floor through several rooms: where each of them lies in it. */
  readonly areas?: readonly { readonly name: string; readonly outline: Outline }[];
}

/** Reads and draws a room: an outline and what of it gets floor. */
export function drawRoom(entry: RoomEntry): { readonly room: DrawnRoom | null; readonly problems: readonly Problem[] } {
  const { room: read, problems: found } = readRoom(entry);
  if (read === null) return { room: null, problems: found };
  const sizes = sizeProblemsOf(read, entry);
  if (sizes.length > 0) return { room: null, problems: sizes };
  const drawn = roomOf(read.measured);
  if (drawn.kind === 'faults') {
    return { room: null, problems: drawn.faults.map((fault) => faultProblem(fault, entry)) };
  }
  const unfit = unfitProblemsOf(read, drawn.room);
  if (unfit.length > 0) return { room: null, problems: unfit };
  const expansionGap = gapFor(read, drawn.room);
  const floors = floorsOf(drawn.room, expansionGap);
  if (floors.floor.length === 0) {
    const text = problems.gapEatsRoom('expansion gap', lengthText(expansionGap, read.units, 'piece'));
    return { room: null, problems: [{ field: 'rules.expansionGap', text }] };
  }
  const gapped = { ...read, rules: { ...read.rules, expansionGap } };
  const through = drawn.room.doorways
    .filter(({ floor }) => floor === 'goes on')
    .map(({ from, to }) => middleOf([from, to]));
  return withRows({ entry, read: gapped, room: drawn.room, ...floors, through });
}

/** The room, unless no way to lay it has a row. */
export function withRows(room: DrawnRoom): { readonly room: DrawnRoom | null; readonly problems: readonly Problem[] } {
  const found = rowProblemsOf(room);
  return { room: found.length > 0 ? null : room, problems: found };
}

/** The middle of the box round some points. */
export function middleOf(points: readonly Point[]): Point {
  const { x0, y0, x1, y1 } = boundsOf([points]);
  return { x: toTicks((x0 + x1) / 2), y: toTicks((y0 + y1) / 2) };
}

/** What of a room gets floor, with and without what runs into its doorways. */
export function floorsOf(room: Room, gap: Ticks): Pick<DrawnRoom, 'floor' | 'body'> {
  return { floor: floorOf(room, gap), body: bodyOf(room, gap) };
}

/** The gap in the rules, or what a gap by span asks for across the rows (either way, where the direction is left open). */
export function gapFor({ rules, limits, start }: ReadRoom, room: Room): Ticks {
  if (limits.gapPerMetre === 0) return rules.expansionGap;
  const degrees = degreesOf(rules.layDirection, room.walls) ?? 0;
  const { x0, y0, x1, y1 } = boundsOf(regionToFrame(frameOf([room.outline], degrees), [room.outline]));
  const span = start.direction === 'best' ? Math.max(x1 - x0, y1 - y0) : y1 - y0;
  return gapForSpan(span, limits.gapPerMetre, rules.expansionGap);
}

function faultProblem(fault: RoomFault, entry: RoomEntry): Problem {
  return { field: fieldOfFault(fault, entry.shape.kind), text: roomFaultText(fault, entry.units) };
}

function sizeProblemsOf({ rules, product }: ReadRoom, entry: RoomEntry): readonly Problem[] {
  if (product.plankLength / rules.markingStep <= MOST_STEPS) return [];
  const text = problems.stepTooFine('marking step', entry.rules.markingStep, MOST_STEPS);
  return [{ field: 'rules.markingStep', text }];
}

/** What reading could not see: a wall that is not there, a plank in the wrong unit. */
function unfitProblemsOf(read: ReadRoom, room: Room): readonly Problem[] {
  const { layDirection } = read.rules;
  if (layDirection.along === 'wall' && layDirection.wallNumber > room.walls.length) {
    const text = problems.noSuchWall('lay direction', layDirection.wallNumber, room.walls.length);
    return [{ field: 'rules.layDirection', text }];
  }
  const { x0, y0, x1, y1 } = boundsOf([room.outline]);
  const rowCount = Math.ceil(Math.max(x1 - x0, y1 - y0) / read.product.plankWidth);
  if (rowCount > MOST_ROWS) {
    return [{ field: 'product.plankWidth', text: problems.rowsTooMany('Plank width', rowCount, MOST_ROWS) }];
  }
  const plankCount = Math.ceil(roomAreaOf(room) / (read.product.plankLength * read.product.plankWidth));
  if (plankCount <= MOST_PLANKS) return [];
  return [{ field: 'product.plankLength', text: problems.tooManyPlanks('This room', plankCount, MOST_PLANKS) }];
}
