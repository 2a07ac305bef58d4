/**
 * A room as measured: the numbers a person typed, in ticks, with nothing drawn yet.
 *
 * Wall 1 is the far wall, run left to right as you face it, and the walls follow clockwise; a walk the other way round
 * is taken as well. A rectangle's walls are 1 far, 2 right, 3 near, 4 left.
 */
import type { Ticks } from '../geometry/length';

export interface MeasuredRoom {
  readonly shape: MeasuredShape;
  /** Walls that are not straight; none where it is not given. */
  readonly bows?: readonly MeasuredBow[];
  readonly cutouts: readonly MeasuredCutout[];
  readonly doorways: readonly MeasuredDoorway[];
}

export type MeasuredShape =
  | { readonly kind: 'rectangle'; readonly length: Ticks; readonly width: Ticks }
  | MeasuredFourWalls
  | { readonly kind: 'walls in order'; readonly walls: readonly MeasuredWall[] }
  | { readonly kind: 'taped'; readonly walls: readonly TapedWall[]; readonly distances: readonly MeasuredDistance[] }
  | { readonly kind: 'rectangles'; readonly rectangles: readonly MeasuredRectangle[] };

/** Out of square: the diagonal from the start of wall 1 to the end of wall 2, the other from its end to that of wall 3. */
export interface MeasuredFourWalls {
  readonly kind: 'four walls';
  readonly walls: readonly [Ticks, Ticks, Ticks, Ticks];
  readonly diagonal: Ticks;
  /** Null when not measured. */
  readonly otherDiagonal: Ticks | null;
}

export interface MeasuredWall {
  readonly length: Ticks;
  /** Degrees turned at its end, right positive (R = 90, L = -90); null (or 0) where the last one is not given. */
  readonly turn: number | null;
}

/** A wall of a room that is held by distances between its corners. */
export interface TapedWall {
  /** Null where it was not measured; then distances to both its corners hold it. */
  readonly length: Ticks | null;
  /** Degrees turned at its end as it looks, right positive; null where the last one is not given. */
  readonly turn: number | null;
}

/** A distance between two corners, by tape. */
export interface MeasuredDistance {
  /** Counted from 1: corner i is where wall i starts. */
  readonly fromCorner: number;
  readonly toCorner: number;
  readonly length: Ticks;
}

/**
 * A wall that leaves the straight line between its corners: by distances from that line at some places (`out` away from
 * the room, negative into it), or as an arc that rises so far from its chord.
 */
export type MeasuredBow =
  | {
      readonly kind: 'places';
      readonly wallNumber: number;
      readonly places: readonly { readonly along: Ticks; readonly out: Ticks }[];
    }
  | { readonly kind: 'curve'; readonly wallNumber: number; readonly rise: Ticks };

export interface MeasuredRectangle {
  readonly change: 'add' | 'take away';
  /** Offsets of its near left corner from a common corner; may be negative. */
  readonly fromLeft: Ticks;
  readonly fromNear: Ticks;
  readonly length: Ticks;
  readonly width: Ticks;
}

/** A part that gets no floor, or that stands over the floor. */
export interface MeasuredCutout {
  /**
   * `curved`: a rectangle whose front bulges into the room, an arc by its chord and rise. `covered`: a rectangle with floor
   * under it, where planks cannot be tilted.
   */
  readonly kind: 'rectangle' | 'round' | 'curved' | 'covered';
  /** Counted from 1. */
  readonly wallNumber: number;
  /** From the start of the wall to its near side. */
  readonly along: Ticks;
  /** From the wall to its near side; 0 stands against the wall. */
  readonly off: Ticks;
  /** Along the wall; the diameter of a round one. */
  readonly length: Ticks;
  /** Away from the wall, at the deepest; of no meaning for a round one. */
  readonly depth: Ticks;
  /** Of a curved one: how much deeper it is in the middle than at its sides. */
  readonly rise?: Ticks;
}

export interface MeasuredDoorway {
  /** Counted from 1. */
  readonly wallNumber: number;
  /** From the start of the wall to the first jamb. */
  readonly along: Ticks;
  readonly width: Ticks;
  readonly floor: DoorwayFloor;
  /** How far the floor runs into the doorway from the face of the wall; 0 = it keeps its gap to the wall's line. */
  readonly depth: Ticks;
}

/** `stays shut`: no floor under the door; `transition`: the floor ends under it; `goes on`: into the next room. */
export type DoorwayFloor = 'transition' | 'goes on' | 'stays shut';
