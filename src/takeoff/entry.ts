/**
 * What a person typed, as typed: plain JSON, shared by the sheet, the sidebar, the `Rooms` tab and room files. Its fields
 * are those of `entryFields.ts`, where each is explained. Nothing here has been read yet: `readRoom.ts` does that once.
 *
 * Room coordinates: wall 1 is the far wall, run left to right as you face it; the walls follow to the right
 * (clockwise). A rectangle's walls are 1 far, 2 right, 3 near, 4 left; `length` lies along walls 1 and 3.
 */
import {
  type BOW_FIELDS,
  type CORNER_DIAGONAL_FIELDS,
  type CUTOUT_FIELDS,
  type DIAGONAL_FIELDS,
  type DOORWAY_FIELDS,
  type EntryField,
  type NAME_FIELDS,
  type PRODUCT_FIELDS,
  type RECTANGLE_FIELDS,
  type RECTANGLES_FIELDS,
  RULE_FIELDS,
  type WALL_FIELDS,
} from './entryFields';

/** A cell or field as typed: text such as `12' 6 1/2"`, a bare number in the entry's units, or '' for the default. */
export type Typed = string | number;

/** What may stand in a field: one of its choices, words, or whatever was typed. */
export type ValueOf<F> = F extends {
  readonly use: 'choice';
  readonly choices: readonly (readonly [infer Value, string])[];
}
  ? Value
  : F extends { readonly use: 'words' | 'date' }
    ? string
    : F extends { readonly use: 'list' }
      ? readonly string[]
      : Typed;

/** The fields of a section with what stands in them. */
export type EntryOf<S extends { readonly fields: readonly EntryField[] }> = {
  readonly [F in S['fields'][number] as F['key']]: ValueOf<F>;
};

export interface RoomEntry extends EntryOf<typeof NAME_FIELDS> {
  readonly shape: ShapeEntry;
  /** Walls that are not straight. */
  readonly bows: readonly BowEntry[];
  readonly cutouts: readonly CutoutEntry[];
  readonly doorways: readonly DoorwayEntry[];
  readonly product: ProductEntry;
  /** Blank fields take the default of `layout/rules.ts`; `BLANK_RULES` is all of them. */
  readonly rules: RulesEntry;
}

export type ShapeEntry =
  | ({ readonly kind: 'rectangle' } & EntryOf<typeof RECTANGLE_FIELDS>)
  /** Out of square: walls 1 to 4, one diagonal from the start of wall 1 to the end of wall 2, the other if measured. */
  | ({ readonly kind: 'four walls'; readonly walls: readonly [Typed, Typed, Typed, Typed] } & EntryOf<
      typeof DIAGONAL_FIELDS
    >)
  /**
   * Each wall with the turn at its end: `R`, `L`, or degrees, right positive; the last turn may be blank. With diagonals
   * the turns are what the corners look like, and the tape says how far they are out.
   */
  | {
      readonly kind: 'walls in order';
      readonly walls: readonly WallEntry[];
      readonly diagonals: readonly CornerDiagonalEntry[];
    }
  /** Rectangles added and taken away; offsets of the near left corner from a common corner, negative allowed. */
  | { readonly kind: 'rectangles'; readonly rectangles: readonly RectangleEntry[] };

export type WallEntry = EntryOf<typeof WALL_FIELDS>;
export type CornerDiagonalEntry = EntryOf<typeof CORNER_DIAGONAL_FIELDS>;
export type BowEntry = EntryOf<typeof BOW_FIELDS>;
export type RectangleEntry = EntryOf<typeof RECTANGLES_FIELDS>;
/** A part that gets no floor, placed by a wall and two distances from it. */
export type CutoutEntry = EntryOf<typeof CUTOUT_FIELDS>;
export type DoorwayEntry = EntryOf<typeof DOORWAY_FIELDS>;
export type ProductEntry = EntryOf<typeof PRODUCT_FIELDS>;
export type ProductKind = ProductEntry['kind'];
export type RulesEntry = EntryOf<typeof RULE_FIELDS>;

/** A section's fields before anybody has typed: choices at their usual, everything else blank. */
export function blankOf<S extends { readonly fields: readonly EntryField[] }>(section: S): EntryOf<S> {
  const blank = section.fields.map(({ key, use, choices, usual }) => [
    key,
    usual ?? (use === 'choice' ? choices?.[0][0] : ''),
  ]);
  return Object.fromEntries(blank) as EntryOf<S>;
}

/** Every rule at its default. */
export const BLANK_RULES: RulesEntry = blankOf(RULE_FIELDS);
