/**
 * What a person typed, as typed: plain JSON, shared by the sheet, the sidebar, the `Rooms` tab and room files.
 * Nothing here has been read yet: `readRoom.ts` does that once.
 *
 * Room coordinates: wall 1 is the far wall, run left to right as you face it; the walls follow to the right
 * (clockwise). A rectangle's walls are 1 far, 2 right, 3 near, 4 left; `length` lies along walls 1 and 3.
 */
import type { Units } from '../geometry/length';

/** A cell or field as typed: text such as `12' 6 1/2"`, a bare number in the entry's units, or '' for the default. */
export type Typed = string | number;

export interface RoomEntry {
  readonly name: string;
  readonly units: Units;
  readonly shape: ShapeEntry;
  readonly cutouts: readonly CutoutEntry[];
  readonly doorways: readonly DoorwayEntry[];
  readonly product: ProductEntry;
  readonly rules: RulesEntry;
}

export type ShapeEntry =
  | { readonly kind: 'rectangle'; readonly length: Typed; readonly width: Typed }
  /** Out of square: walls 1 to 4, one diagonal from the start of wall 1 to the end of wall 2, the other if measured. */
  | {
      readonly kind: 'four walls';
      readonly walls: readonly [Typed, Typed, Typed, Typed];
      readonly diagonal: Typed;
      readonly otherDiagonal: Typed;
    }
  /** Each wall with the turn at its end: `R`, `L`, or degrees, right positive. The last turn may be blank. */
  | { readonly kind: 'walls in order'; readonly walls: readonly WallEntry[] }
  /** Rectangles added and taken away; offsets of the near left corner from a common corner, negative allowed. */
  | { readonly kind: 'rectangles'; readonly rectangles: readonly RectangleEntry[] };

export interface WallEntry {
  readonly length: Typed;
  readonly turn: Typed;
}

export interface RectangleEntry {
  readonly change: 'add' | 'take away';
  readonly fromLeft: Typed;
  readonly fromNear: Typed;
  readonly length: Typed;
  readonly width: Typed;
}

/** A part that gets no floor, placed by a wall and two distances from it. */
export interface CutoutEntry {
  readonly kind: 'rectangle' | 'round';
  /** Number of the wall it is measured from. */
  readonly wall: Typed;
  /** From the start of the wall, along it, to the near side of the cut-out. */
  readonly along: Typed;
  /** From the wall to the near side of the cut-out; 0 stands against the wall. */
  readonly off: Typed;
  /** Along the wall; the diameter of a round one. */
  readonly length: Typed;
  /** Away from the wall; ignored for a round one. */
  readonly depth: Typed;
}

export interface DoorwayEntry {
  readonly wall: Typed;
  /** From the start of the wall, along it, to the first jamb. */
  readonly along: Typed;
  readonly width: Typed;
  /** `stays shut`: no floor under the door; `transition`: the floor ends under it; `goes on`: it runs into the next room. */
  readonly floor: 'transition' | 'goes on' | 'stays shut';
  /** How far the floor runs into the doorway from the face of the wall; blank = 0. */
  readonly depth: Typed;
  /** Name of the room it goes on into, laid as one floor with this one; blank = none. */
  readonly leadsTo: string;
  /** Number of that room's doorway that faces this one; blank = 1. */
  readonly itsDoorway: Typed;
  /** Between the faces of the wall; blank = the depths of the two doorways together. */
  readonly wallThickness: Typed;
}

export type ProductKind = 'laminate' | 'engineered wood' | 'solid wood' | 'rigid vinyl';

export interface ProductEntry {
  readonly name: string;
  readonly kind: ProductKind;
  readonly plankLength: Typed;
  readonly plankWidth: Typed;
  readonly thickness: Typed;
  /** Either of the two tells how many planks are in a box. */
  readonly planksPerBox: Typed;
  readonly boxCoverage: Typed;
  readonly pricePerBox: Typed;
}

/** Blank fields take the default of `layout/rules.ts`; `BLANK_RULES` is all of them. */
export interface RulesEntry {
  readonly expansionGap: Typed;
  readonly minStagger: Typed;
  readonly minPiece: Typed;
  readonly minRip: Typed;
  readonly kerf: Typed;
  readonly play: Typed;
  readonly alignedDistance: Typed;
  readonly markingStep: Typed;
  /** `length`, `width`, `wall 3`, degrees such as `45`, or `best`: searched. */
  readonly layDirection: Typed;
  /**
   * Which side of the floor (seen along the rows) the first row lies on; blank = `near`. `middle`: rows both ways from a
   * line through a doorway that the floor goes on through, or through the middle.
   */
  readonly startSide: '' | 'near' | 'far' | 'middle' | 'best';
  /** Blank = full plank unless the last row would be under the minimum rip; `best` = searched. */
  readonly firstRow: Typed;
  /** `yes`: a strip ripped off the first row may serve in the last. */
  readonly reuseStrips: '' | 'yes' | 'no';
  readonly spare: Typed;
  /** Longest unbroken floor along the rows and across them; blank = by the kind of product, see `RUN_LIMITS`. */
  readonly longestAlong: Typed;
  readonly longestAcross: Typed;
  /** Gap for every metre (every 10 ft) of floor across the rows, where that asks for more than the expansion gap. */
  readonly gapBySpan: Typed;
}

/** Every rule at its default. */
export const BLANK_RULES: RulesEntry = {
  expansionGap: '',
  minStagger: '',
  minPiece: '',
  minRip: '',
  kerf: '',
  play: '',
  alignedDistance: '',
  markingStep: '',
  layDirection: '',
  startSide: '',
  firstRow: '',
  reuseStrips: '',
  spare: '',
  longestAlong: '',
  longestAcross: '',
  gapBySpan: '',
};
