/** Where the rooms of a joined floor lie: turned and moved so that joined doorways face each other. */
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks, toTicks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { boundsOf, type Outline } from '../geometry/polygon';
import type { Doorway } from './doorways';
import type { Room } from './outline';
import { type Direction, placeAt, type Wall } from './walls';

/** Doorways of rooms laid in a ring may miss each other by this much. Our choice, as for a walk round a room. */
export const ALLOWED_MISFIT: Ticks = TICKS_PER_INCH;

/** Passages reach this far into both rooms, so that rounding leaves no hairline between floor and floor. */
const LET_IN: Ticks = TICKS_PER_MM;

/** Where a room lies in the joined one: turned about its origin, then moved. */
export interface Placement {
  readonly cosine: number;
  readonly sine: number;
  readonly dx: Ticks;
  readonly dy: Ticks;
}

/** One side of a join, found. */
export interface Opening {
  readonly roomIndex: number;
  readonly doorway: Doorway;
  readonly wall: Wall;
}

export interface FoundJoin {
  readonly joinNumber: number;
  readonly from: Opening;
  readonly to: Opening;
  readonly wallThickness: Ticks;
}

/** Follows the joins from room 1; null for rooms they do not reach. */
export function placementsOf(rooms: readonly Room[], joins: readonly FoundJoin[]): readonly (Placement | null)[] {
  const placements: (Placement | null)[] = rooms.map((_, i) => (i === 0 ? { cosine: 1, sine: 0, dx: 0, dy: 0 } : null));
  for (let pass = 0; pass < rooms.length; pass++) {
    for (const { from, to, wallThickness } of joins) {
      for (const [placed, next] of [
        [from, to],
        [to, from],
      ]) {
        const placement = placements[placed.roomIndex];
        if (placement && !placements[next.roomIndex]) {
          placements[next.roomIndex] = facing(placement, placed, next, wallThickness);
        }
      }
    }
  }
  return placements;
}

/** The placement that puts the middle of the next doorway straight opposite, its wall facing the other. */
function facing(placement: Placement, placed: Opening, next: Opening, wallThickness: Ticks): Placement {
  const inward = turned(placement, placed.wall.inward);
  const own = next.wall.inward;
  const cosine = -(own.x * inward.x + own.y * inward.y);
  const sine = own.y * inward.x - own.x * inward.y;
  const middle = turned(placement, middleOf(placed.doorway));
  const nextMiddle = turned({ cosine, sine }, middleOf(next.doorway));
  return {
    cosine,
    sine,
    dx: toTicks(middle.x + placement.dx - inward.x * wallThickness - nextMiddle.x),
    dy: toTicks(middle.y + placement.dy - inward.y * wallThickness - nextMiddle.y),
  };
}

export function turned({ cosine, sine }: Pick<Placement, 'cosine' | 'sine'>, { x, y }: Direction): Direction {
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

function middleOf({ from, to }: Doorway): Direction {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

export function movedPoint(placement: Placement, p: Point): Point {
  const { x, y } = turned(placement, p);
  return { x: toTicks(x) + placement.dx, y: toTicks(y) + placement.dy };
}

/** All placements moved so that the lowest x and y of all rooms are 0. */
export function atOrigin(rooms: readonly Room[], placements: readonly Placement[]): readonly Placement[] {
  const { x0, y0 } = boundsOf(rooms.map((room, i) => room.outline.map((p) => movedPoint(placements[i], p))));
  return placements.map((placement) => ({ ...placement, dx: placement.dx - x0, dy: placement.dy - y0 }));
}

/** The floor between two doorways, and by how much they miss each other (infinite when the rooms are turned apart). */
export interface FaceToFace {
  readonly outline: Outline;
  readonly widthsDiffer: Ticks;
  readonly missesBy: Ticks;
}

/** As wide as the narrower doorway, from face to face and a little into both rooms. */
export function faceToFaceOf({ from, to, wallThickness }: FoundJoin, placements: readonly Placement[]): FaceToFace {
  const [narrow, wide] = from.doorway.width <= to.doorway.width ? [from, to] : [to, from];
  const here = placements[narrow.roomIndex];
  const there = placements[wide.roomIndex];
  const wanted = facing(here, narrow, wide, wallThickness);
  const isTurned = Math.abs(wanted.cosine - there.cosine) + Math.abs(wanted.sine - there.sine) > 0.01;
  const found = movedMiddle(there, wide.doorway);
  const ideal = movedMiddle(wanted, wide.doorway);
  const by = toTicks(Math.sqrt((ideal.x - found.x) ** 2 + (ideal.y - found.y) ** 2));
  const reach = -(wallThickness + by + LET_IN);
  const at = (jamb: Point, off: number) => movedPoint(here, placeAt({ ...narrow.wall, from: jamb }, 0, off));
  const { from: first, to: second, width } = narrow.doorway;
  return {
    outline: [at(first, LET_IN), at(second, LET_IN), at(second, reach), at(first, reach)],
    widthsDiffer: wide.doorway.width - width,
    missesBy: isTurned ? Number.POSITIVE_INFINITY : by,
  };
}

function movedMiddle(placement: Placement, doorway: Doorway): Direction {
  const { x, y } = turned(placement, middleOf(doorway));
  return { x: x + placement.dx, y: y + placement.dy };
}
