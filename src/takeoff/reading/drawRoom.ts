/** A room as read -> its outline and what of it gets floor. Or the problems of the room. */
import { type Ticks, toTicks } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { boundsOf } from '../../geometry/polygon';
import { frameOf, regionToFrame } from '../../geometry/turn';
import { degreesOf } from '../../layout/direction';
import { gapForSpan } from '../../layout/expansion';
import type { RoomFault } from '../../room/faults';
import { bodyOf, floorOf } from '../../room/floor';
import { type Room, roomAreaOf, roomOf } from '../../room/outline';
import type { RoomEntry } from '../entry';
import { checkedRowsOf, noRowProblem } from '../planning/ways';
import type { Problem } from '../result';
import { lengthText } from '../text/lengthText';
import type { DrawnRoom } from './drawnRoom';
import { fieldOfFault } from './faultField';
import { MOST_PLANKS, MOST_ROWS, MOST_STEPS } from './limits';
import { problems } from './problems';
import { type ReadRoom, readRoom } from './readRoom';
import { roomFaultText } from './roomProblems';

/** A room that was drawn, or every problem that keeps it from being. */
export interface Drawing {
  readonly room: DrawnRoom | null;
  readonly problems: readonly Problem[];
}

/** Reads and draws a room: an outline and what of it gets floor. */
export function drawRoom(entry: RoomEntry): Drawing {
  const { room, problems: found } = readRoom(entry);
  return room === null ? { room, problems: found } : drawReadRoom(entry, room);
}

/** Draws a room that was read. */
export function drawReadRoom(entry: RoomEntry, read: ReadRoom): Drawing {
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
export function withRows(room: DrawnRoom): Drawing {
  const checked = checkedRowsOf(room);
  return checked ? { room: { ...room, checked }, problems: [] } : { room: null, problems: [noRowProblem(room)] };
}

/** The middle of the box round some points. */
export function middleOf(points: readonly Point[]): Point {
  const { x0, y0, x1, y1 } = boundsOf([points]);
  return { x: toTicks((x0 + x1) / 2), y: toTicks((y0 + y1) / 2) };
}

/** What of a room gets floor, with and without what runs into its doorways. The gap in ticks. */
export function floorsOf(room: Room, gap: Ticks): Pick<DrawnRoom, 'floor' | 'body'> {
  return { floor: floorOf(room, gap), body: bodyOf(room, gap) };
}

/**
 * The gap in the rules, or what a gap by span asks for across the rows (either way, where the direction is left
 * open). Ticks.
 */
export function gapFor({ rules, limits, start }: ReadRoom, room: Room): Ticks {
  if (limits.gapPerMetre === 0) return rules.expansionGap;
  const degrees = degreesOf(rules.layDirection, room) ?? 0;
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
