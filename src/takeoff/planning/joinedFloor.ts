/** Rooms that lead into one another, laid as one floor with the rows running through. */
import { finished, type Steps } from '../../cutting/steps';
import { type JoinFault, joinRooms, type RoomJoin } from '../../room/join';
import type { Room } from '../../room/outline';
import type { RoomEntry } from '../entry';
import type { DrawnRoom } from '../reading/drawnRoom';
import { type Drawing, drawRoom, floorsOf, gapFor, middleOf, withRows } from '../reading/drawRoom';
import { joinFaultText, planksUnlikeText } from '../reading/joinProblems';
import { problems } from '../reading/problems';
import type { Problem, TakeoffResult } from '../result';
import { roomInSteps } from '../takeoff';
import { lengthText, pieceText } from '../text/lengthText';
import { nameKey, sameName } from '../text/names';

/**
 * One floor through several rooms. Which doorways face each other is told by the doorways themselves (`leadsTo`);
 * product, rules and direction of laying are those of the first room. The joined room is drawn as the first one lies.
 *
 * @param entries at least one; rooms that no doorway leads to are a problem
 */
export function takeoffAsOne(entries: readonly RoomEntry[]): TakeoffResult {
  return finished(takeoffAsOneInSteps(entries));
}

/** The same in steps. */
export function* takeoffAsOneInSteps(entries: readonly RoomEntry[]): Steps<TakeoffResult> {
  const { room, problems: found } = drawAsOne(entries);
  if (room === null) return { status: 'problems', problems: found };
  yield;
  return { status: 'planned', takeoff: yield* roomInSteps(room) };
}

/** The joined room before a way to lay it is chosen, named `Den + Hall`; or every problem of the rooms and joins. */
export function drawAsOne(entries: readonly RoomEntry[]): Drawing {
  return joinDrawn(entries.map((entry) => ({ entry, ...drawRoom(entry) })));
}

/** The same of rooms that were drawn, each from its own entry. */
export function joinDrawn(drawn: readonly (Drawing & { readonly entry: RoomEntry })[]): Drawing {
  const found = drawn.flatMap(({ entry, problems: own }) =>
    own.map(({ field, text }) => ({ field, text: problems.inRoom(entry.name, text) })),
  );
  const rooms = drawn.flatMap(({ room }) => (room ? [room] : []));
  const { joins, faults } = joinsOf(rooms);
  if (found.length + faults.length > 0) return { room: null, problems: [...found, ...faults] };
  const unlike = planksUnlike(rooms);
  if (unlike.length > 0) return { room: null, problems: unlike };
  const result = joinRooms(
    rooms.map(({ room }) => room),
    joins,
  );
  if (result.faults) {
    return { room: null, problems: result.faults.map((fault) => joinProblem(fault, rooms, joins)) };
  }
  const through = result.joined.passages.map(({ outline }) => middleOf(outline));
  const areas = result.joined.rooms.map(({ outline }, i) => ({ name: rooms[i].entry.name, outline }));
  const joined = { ...joinedRoom(rooms, result.joined.room), through, areas };
  if (joined.floor.length > 0) return withRows(joined);
  const { rules, units, name } = joined.read;
  const text = problems.inRoom(
    name,
    problems.gapEatsRoom('expansion gap', lengthText(rules.expansionGap, units, 'piece')),
  );
  return { room: null, problems: [{ field: 'rules.gapBySpan', text }] };
}

/** Rules of other rooms can be left aside, and that is told; other planks cannot: nobody can lay them in one floor. */
function planksUnlike([first, ...rest]: readonly DrawnRoom[]): readonly Problem[] {
  const { units } = first.read;
  const sizeOf = ({ read: { product } }: DrawnRoom) =>
    [product.plankLength, product.plankWidth].map(pieceText(units)).join(' by ');
  const isUnlike = ({ read: { product } }: DrawnRoom) =>
    product.plankLength !== first.read.product.plankLength || product.plankWidth !== first.read.product.plankWidth;
  return rest.filter(isUnlike).map((other) => ({
    field: 'product.plankLength',
    text: planksUnlikeText(other.read.name, sizeOf(other), first.read.name, sizeOf(first)),
  }));
}

function joinedRoom(rooms: readonly DrawnRoom[], room: Room): Omit<DrawnRoom, 'through'> {
  const [first] = rooms;
  const names = rooms.map(({ entry }) => entry.name).sort(byName);
  const name = names.join(' + ');
  // A gap by span is that of the whole floor, never less than the first room takes for itself.
  const expansionGap = gapFor(first.read, room);
  const read = { ...first.read, name, rooms: names, rules: { ...first.read.rules, expansionGap } };
  const others = { first, rest: rooms.slice(1) };
  return { entry: { ...first.entry, name }, read, room, ...floorsOf(room, expansionGap), others };
}

/** One floor has one name, whichever of its rooms it is planned from. */
function byName(a: string, b: string): number {
  const [first, second] = [nameKey(a), nameKey(b)];
  return first < second ? -1 : first > second ? 1 : 0;
}

/** The joins that the doorways ask for; the two sides of one join may both ask. */
function joinsOf(rooms: readonly DrawnRoom[]): {
  readonly joins: readonly RoomJoin[];
  readonly faults: readonly Problem[];
} {
  const faults: Problem[] = [];
  const joins: RoomJoin[] = [];
  rooms.forEach(({ read }, i) => {
    for (const { doorwayNumber, leadsTo, itsDoorway, wallThickness } of read.joins) {
      const toIndex = rooms.findIndex((other) => sameName(other.read.name, leadsTo));
      if (toIndex < 0 || toIndex === i) {
        const text = problems.noRoomBehind(`${read.name}, doorway ${doorwayNumber}`, leadsTo);
        faults.push({ field: `doorways.${doorwayNumber - 1}.leadsTo`, text });
        continue;
      }
      const isTold = joins.some((join) => join.toRoom === i + 1 && join.toDoorway === doorwayNumber);
      if (isTold) continue;
      const depths = depthOf(rooms[i].room, doorwayNumber) + depthOf(rooms[toIndex].room, itsDoorway);
      joins.push({
        room: i + 1,
        doorway: doorwayNumber,
        toRoom: toIndex + 1,
        toDoorway: itsDoorway,
        wallThickness: wallThickness ?? depths,
      });
    }
  });
  return { joins, faults };
}

function depthOf({ doorways }: Room, doorwayNumber: number): number {
  return doorways.find((doorway) => doorway.doorwayNumber === doorwayNumber)?.depth ?? 0;
}

function joinProblem(fault: JoinFault, rooms: readonly DrawnRoom[], joins: readonly RoomJoin[]): Problem {
  const names = rooms.map(({ read }) => read.name);
  return { field: 'doorways', text: joinFaultText(fault, names, joins, rooms[0].read.units) };
}
