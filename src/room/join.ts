/**
 * Rooms joined through doorways into one: each next room is turned and moved so that its doorway faces the one it is
 * joined to, a wall's thickness away, and floor is laid between the jambs. What comes out is a room like any other.
 */
import { intersect, subtract, unite } from '../geometry/combine';
import { LONGEST_SIDE, type Ticks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { anticlockwise, boundsOf, type Outline, partsOf } from '../geometry/polygon';
import { type Doorway, openEndsOf, withTongues } from './doorways';
import type { Room } from './outline';
import {
  ALLOWED_MISFIT,
  atOrigin,
  type FoundJoin,
  faceToFaceOf,
  movedPoint,
  type Opening,
  type Placement,
  placementsOf,
  turned,
} from './placement';
import type { Wall } from './walls';

/** A doorway of one room that leads to a doorway of another; numbers count from 1. */
export interface RoomJoin {
  readonly room: number;
  readonly doorway: number;
  readonly toRoom: number;
  readonly toDoorway: number;
  readonly wallThickness: Ticks;
}

export type JoinFault =
  | {
      readonly code: 'no such doorway';
      readonly joinNumber: number;
      readonly roomNumber: number;
      readonly found: number;
    }
  | { readonly code: 'room not joined'; readonly roomNumber: number }
  /** Placed by other joins, the two doorways miss each other by this much. */
  | { readonly code: 'doorways do not meet'; readonly joinNumber: number; readonly by: Ticks; readonly allowed: Ticks }
  | { readonly code: 'rooms overlap'; readonly roomNumbers: readonly [number, number] }
  | { readonly code: 'joined side too long'; readonly found: Ticks; readonly longest: Ticks };

/** The floor between two joined doorways. */
export interface Passage {
  readonly joinNumber: number;
  /** Between the jambs, from the face of one wall to the face of the other. */
  readonly outline: Outline;
  /** By how much the two doorways differ in width; the narrower is laid. */
  readonly widthsDiffer: Ticks;
}

export interface JoinedRooms {
  /** All rooms as one: walls and doorways are numbered on through the rooms, joined doorways are left out. */
  readonly room: Room;
  /** Each room's number of its first wall in the joined room, and its outline there. */
  readonly rooms: readonly { readonly firstWallNumber: number; readonly outline: Outline }[];
  readonly passages: readonly Passage[];
}

export type JoinResult =
  | { readonly faults: readonly JoinFault[]; readonly joined: null }
  | { readonly faults: null; readonly joined: JoinedRooms };

/**
 * One room from several. Room 1 stays as it is; the others follow the joins.
 *
 * @param rooms each measured on its own; the joined doorways may be measured from either side
 */
export function joinRooms(rooms: readonly Room[], joins: readonly RoomJoin[]): JoinResult {
  const faults: JoinFault[] = [];
  const found = joins.flatMap((join, i): FoundJoin[] => {
    const from = openingOf(rooms, join.room, join.doorway);
    const to = openingOf(rooms, join.toRoom, join.toDoorway);
    if (!from) faults.push({ code: 'no such doorway', joinNumber: i + 1, roomNumber: join.room, found: join.doorway });
    if (!to)
      faults.push({ code: 'no such doorway', joinNumber: i + 1, roomNumber: join.toRoom, found: join.toDoorway });
    return from && to ? [{ joinNumber: i + 1, from, to, wallThickness: join.wallThickness }] : [];
  });
  if (faults.length > 0) return { faults, joined: null };
  const placements = placementsOf(rooms, found);
  const unplaced = placements.indexOf(null);
  if (unplaced >= 0) return { faults: [{ code: 'room not joined', roomNumber: unplaced + 1 }], joined: null };
  return joinPlaced(rooms, atOrigin(rooms, placements as Placement[]), found);
}

function openingOf(rooms: readonly Room[], roomNumber: number, doorwayNumber: number): Opening | null {
  const room = rooms[roomNumber - 1];
  const doorway = room?.doorways.find((candidate) => candidate.doorwayNumber === doorwayNumber);
  const wall = room?.walls.find((candidate) => candidate.wallNumber === doorway?.wallNumber);
  return doorway && wall ? { roomIndex: roomNumber - 1, doorway, wall } : null;
}

function joinPlaced(rooms: readonly Room[], placements: readonly Placement[], joins: readonly FoundJoin[]): JoinResult {
  const joinedDoorways = new Set(joins.flatMap(({ from, to }) => [from.doorway, to.doorway]));
  const moved = rooms.map((room, i) => movedRoom(room, placements[i], joinedDoorways));
  const outlines = moved.map((room) => room.outline);
  const faults: JoinFault[] = [...overlapsOf(outlines), ...sizeFaultsOf(outlines)];
  const passages = joins.map((join): Passage => {
    const { outline, widthsDiffer, missesBy } = faceToFaceOf(join, placements);
    const { joinNumber } = join;
    if (missesBy > ALLOWED_MISFIT) {
      faults.push({ code: 'doorways do not meet', joinNumber, by: missesBy, allowed: ALLOWED_MISFIT });
    }
    return { joinNumber, outline, widthsDiffer };
  });
  if (faults.length > 0) return { faults, joined: null };
  let firstWallNumber = 1;
  const placed = moved.map(({ outline, walls }) => {
    firstWallNumber += walls.length;
    return { firstWallNumber: firstWallNumber - walls.length, outline };
  });
  return { faults: null, joined: { room: mergedRoom(moved, passages), rooms: placed, passages } };
}

type MovedRoom = Pick<
  Room,
  'outline' | 'walls' | 'lengthwise' | 'cutouts' | 'taken' | 'covered' | 'doorways' | 'notes'
>;

function movedRoom(room: Room, placement: Placement, left: ReadonlySet<Doorway>): MovedRoom {
  const point = (p: Point) => movedPoint(placement, p);
  const outline = (corners: Outline) => corners.map(point);
  return {
    outline: outline(room.outline),
    walls: room.walls.map((wall) => ({
      ...wall,
      from: point(wall.from),
      to: point(wall.to),
      along: turned(placement, wall.along),
      inward: turned(placement, wall.inward),
    })),
    lengthwise: room.lengthwise,
    cutouts: room.cutouts.map(outline),
    taken: room.taken.map(outline),
    covered: room.covered.map((one) => ({ ...one, outline: outline(one.outline) })),
    doorways: room.doorways
      .filter((doorway) => !left.has(doorway))
      .map((doorway) => ({
        ...doorway,
        from: point(doorway.from),
        to: point(doorway.to),
        tongue: doorway.tongue && { endFrom: point(doorway.tongue.endFrom), endTo: point(doorway.tongue.endTo) },
      })),
    notes: room.notes,
  };
}

/** One outline round all rooms; a block of walls that the rooms go round becomes a cut-out. */
function mergedRoom(rooms: readonly MovedRoom[], passages: readonly Passage[]): Room {
  const between = passages.map((passage) => passage.outline);
  const all = unite(
    rooms.map((room) => room.outline),
    between,
  );
  const { outline, holes } = partsOf(all)[0];
  const walls: Wall[] = [];
  const doorways: Doorway[] = [];
  for (const room of rooms) {
    const before = walls.length;
    doorways.push(
      ...room.doorways.map((doorway, i) => ({
        ...doorway,
        doorwayNumber: doorways.length + i + 1,
        wallNumber: before + doorway.wallNumber,
      })),
    );
    walls.push(...room.walls.map((wall) => ({ ...wall, wallNumber: before + wall.wallNumber })));
  }
  const floors = rooms.flatMap((room) => withTongues(room.walls, room.doorways));
  const furniture = rooms.flatMap((room) => room.taken);
  const open = subtract(unite(floors, between), furniture);
  const blocks = holes.map(anticlockwise);
  return {
    outline,
    walls,
    // Room 1 is not turned, and the others are laid as it is.
    lengthwise: rooms[0].lengthwise,
    cutouts: [...rooms.flatMap((room) => room.cutouts), ...blocks],
    taken: [...furniture, ...blocks],
    covered: rooms.flatMap((room) => room.covered),
    doorways,
    open,
    openEnds: openEndsOf(doorways),
    notes: rooms.flatMap((room) => room.notes),
  };
}

/** Rooms that overlap or share a wall face: there is no place for a wall between them. */
function overlapsOf(outlines: readonly Outline[]): JoinFault[] {
  return outlines.flatMap((first, i) =>
    outlines.slice(i + 1).flatMap((second, j): JoinFault[] => {
      const isOne = intersect([first], [second]).length > 0 || partsOf(unite([first], [second])).length === 1;
      return isOne ? [{ code: 'rooms overlap', roomNumbers: [i + 1, i + j + 2] }] : [];
    }),
  );
}

function sizeFaultsOf(outlines: readonly Outline[]): JoinFault[] {
  const { x0, y0, x1, y1 } = boundsOf(outlines);
  const found = Math.max(x1 - x0, y1 - y0);
  return found > LONGEST_SIDE ? [{ code: 'joined side too long', found, longest: LONGEST_SIDE }] : [];
}
