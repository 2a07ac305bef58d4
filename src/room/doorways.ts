/** Doorways measured along a wall -> places in the room, and the floor that runs into them. */
import { intersect, tidy } from '../geometry/combine';
import type { Ticks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { areaOf, isOnEdge, type Outline, type Region, signedAreaOf } from '../geometry/polygon';
import { bad, type Checked, good, type RoomFault } from './faults';
import type { DoorwayFloor, MeasuredDoorway } from './measured';
import { faceAt, facePointsOf, placeAt, type Wall, wallNumbered } from './walls';

export interface Doorway {
  /** Counted from 1. */
  readonly doorwayNumber: number;
  readonly wallNumber: number;
  readonly floor: DoorwayFloor;
  /** The jambs at the face of the wall, in the direction in which the wall was walked. */
  readonly from: Point;
  readonly to: Point;
  readonly width: Ticks;
  /** How far the floor runs in; 0 for a door that stays shut. */
  readonly depth: Ticks;
  /** Where the floor stops in the doorway; null when it does not run in. */
  readonly tongue: Tongue | null;
}

export interface Tongue {
  /** Beyond `from` and `to` of the doorway. */
  readonly endFrom: Point;
  readonly endTo: Point;
}

/** An edge where the floor stops although no wall is there. */
export interface OpenEnd {
  readonly from: Point;
  readonly to: Point;
}

/** Places all doorways; a doorway that begins before its wall, ends after it or overlaps another is a fault. */
export function doorwaysOf(
  measured: readonly MeasuredDoorway[],
  walls: readonly Wall[],
  outline: Outline,
): Checked<readonly Doorway[]> {
  const faults: RoomFault[] = [];
  const doorways: Doorway[] = [];
  measured.forEach((entry, i) => {
    const placed = doorwayOf(entry, i + 1, walls);
    if (placed.faults) faults.push(...placed.faults);
    else doorways.push(placed.value);
  });
  faults.push(...overlapsOf(measured));
  for (const doorway of doorways) {
    if (meetsRoom(doorway, outline)) faults.push({ code: 'doorway meets room', doorwayNumber: doorway.doorwayNumber });
  }
  return faults.length > 0 ? bad(...faults) : good(doorways);
}

function doorwayOf(entry: MeasuredDoorway, doorwayNumber: number, walls: readonly Wall[]): Checked<Doorway> {
  const found = wallNumbered(walls, entry.wallNumber, 'doorway', doorwayNumber);
  if (found.faults) return found;
  const wall = found.value;
  const { along, width, floor } = entry;
  const end = along + width;
  if (along < 0 || end > wall.measured) {
    const { wallNumber, measured: wallLength } = wall;
    return bad({ code: 'doorway off its wall', doorwayNumber, wallNumber, start: along, end, wallLength });
  }
  // A wall that took its share of a misfit may be a little shorter than measured: jambs stay on it.
  const at = (distance: Ticks) => (distance >= wall.length ? wall.to : faceAt(wall, distance));
  const depth = floor === 'stays shut' ? 0 : Math.max(0, entry.depth);
  const from = at(along);
  const to = at(end);
  return good({
    doorwayNumber,
    wallNumber: wall.wallNumber,
    floor,
    from,
    to,
    width,
    depth,
    tongue: depth > 0 ? { endFrom: outside(wall, from, depth), endTo: outside(wall, to, depth) } : null,
  });
}

function outside(wall: Wall, jamb: Point, depth: Ticks): Point {
  return placeAt({ ...wall, from: jamb }, 0, -depth);
}

function overlapsOf(measured: readonly MeasuredDoorway[]): RoomFault[] {
  const faults: RoomFault[] = [];
  measured.forEach((first, i) => {
    measured.slice(i + 1).forEach((second, j) => {
      const apart = first.along + first.width <= second.along || second.along + second.width <= first.along;
      if (first.wallNumber === second.wallNumber && !apart) {
        faults.push({ code: 'doorways overlap', doorwayNumbers: [i + 1, i + j + 2] });
      }
    });
  });
  return faults;
}

/** The outline of the floor's place in a doorway; null when it has none. */
function tongueOutlineOf({ from, to, tongue }: Doorway): Outline | null {
  return tongue ? [from, tongue.endFrom, tongue.endTo, to] : null;
}

/** Whether the floor in a doorway lies in the room again: over more than the hairlines of a slanted wall, 1 %. */
function meetsRoom(doorway: Doorway, outline: Outline): boolean {
  const tongue = tongueOutlineOf(doorway);
  if (!tongue) return false;
  return areaOf(intersect([tongue], [outline])) * 100 > Math.abs(signedAreaOf(tongue));
}

/** The room with the floor in its doorways: each tongue is spliced into its wall, so that the two never come apart. */
export function withTongues(walls: readonly Wall[], doorways: readonly Doorway[]): Region {
  const walk = walls.flatMap((wall) => {
    const far = (p: Point) => (p.x - wall.from.x) * wall.along.x + (p.y - wall.from.y) * wall.along.y;
    const tongues = doorways.flatMap(({ wallNumber, from, to, tongue }) =>
      tongue && wallNumber === wall.wallNumber ? [[from, tongue.endFrom, tongue.endTo, to]] : [],
    );
    // What of a bowed face lies within a doorway is gone with the wall.
    const isGone = (p: Point) => tongues.some(([from, , , to]) => far(p) >= far(from) && far(p) <= far(to));
    const turns = facePointsOf(wall).flatMap((p) => (isGone(p) ? [] : [[p]]));
    const spliced = [...tongues, ...turns].sort(([a], [b]) => far(a) - far(b)).flat();
    return [wall.from, ...spliced];
  });
  return tidy([walk]);
}

/** The edges where the floor ends in its doorways. */
export function openEndsOf(doorways: readonly Doorway[]): readonly OpenEnd[] {
  return doorways.flatMap(({ tongue }) => (tongue ? [{ from: tongue.endFrom, to: tongue.endTo }] : []));
}

/** Whether an edge is (part of) an end of the floor in a doorway. */
export function isOpenEdge(openEnds: readonly OpenEnd[], from: Point, to: Point): boolean {
  return openEnds.some((end) => isOnEdge(end.from, end.to, from) && isOnEdge(end.from, end.to, to));
}
