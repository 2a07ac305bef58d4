/**
 * What stands in the form: a room entry, and beside the shape that is chosen the three that are not, so that nothing
 * typed is lost when a person looks at another way to measure. Fields go by the paths of `Problem.field`.
 */
import type { Units } from '../../geometry/length';
import { BLANK_RULES, blankOf, type RoomEntry, type ShapeEntry, type Typed } from '../../takeoff/entry';
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  WALL_FIELDS,
} from '../../takeoff/entryFields';
import { replacedAt } from './replacedAt';

/** The ways to measure a room. */
export type ShapeKind = ShapeEntry['kind'];

/** The form of a room as data. */
export interface Draft extends Omit<RoomEntry, 'shape'> {
  readonly kind: ShapeKind;
  readonly shapes: { readonly [K in ShapeKind]: Extract<ShapeEntry, { kind: K }> };
}

/** The lists of an entry, by their paths. */
export type ListPath = 'shape.walls' | 'shape.diagonals' | 'shape.rectangles' | 'bows' | 'cutouts' | 'doorways';

const BLANK_WALL = blankOf(WALL_FIELDS);
const BLANK_RECTANGLE = blankOf(RECTANGLES_FIELDS);
const BLANK_ITEMS: Readonly<Record<ListPath, object>> = {
  'shape.walls': BLANK_WALL,
  'shape.diagonals': blankOf(CORNER_DIAGONAL_FIELDS),
  'shape.rectangles': BLANK_RECTANGLE,
  bows: blankOf(BOW_FIELDS),
  cutouts: blankOf(CUTOUT_FIELDS),
  doorways: blankOf(DOORWAY_FIELDS),
};
const BLANK_SHAPES: Draft['shapes'] = {
  rectangle: { kind: 'rectangle', ...blankOf(RECTANGLE_FIELDS) },
  'four walls': { kind: 'four walls', walls: ['', '', '', ''], ...blankOf(DIAGONAL_FIELDS) },
  'walls in order': { kind: 'walls in order', walls: [BLANK_WALL, BLANK_WALL, BLANK_WALL, BLANK_WALL], diagonals: [] },
  rectangles: { kind: 'rectangles', rectangles: [BLANK_RECTANGLE, BLANK_RECTANGLE] },
};

/** A form nobody has typed into. */
export function blankDraft(units: Units): Draft {
  return {
    name: '',
    units,
    kind: 'rectangle',
    shapes: BLANK_SHAPES,
    bows: [],
    cutouts: [],
    doorways: [],
    product: blankOf(PRODUCT_FIELDS),
    rules: BLANK_RULES,
  };
}

/** A blank room with the product, the rules and the units of this one: the next room of the same job. */
export function nextRoom({ units, product, rules }: Draft): Draft {
  const { layDirection, firstRow } = blankDraft(units).rules;
  return { ...blankDraft(units), product, rules: { ...rules, layDirection, firstRow } };
}

/** The form of a saved room. */
export function draftOf({ shape, ...rest }: RoomEntry): Draft {
  return { ...rest, kind: shape.kind, shapes: { ...BLANK_SHAPES, [shape.kind]: shape } };
}

/** The entry as it stands in the form. */
export function entryOf({ kind, shapes, ...rest }: Draft): RoomEntry {
  const { name, units, bows, cutouts, doorways, product, rules } = rest;
  return { name, units, shape: shapes[kind], bows, cutouts, doorways, product, rules };
}

/** What stands in a field; '' where there is no such field. */
export function valueAt(draft: Draft, path: string): Typed {
  const found = keysOf(draft, path).reduce<unknown>((whole, key) => (whole as Parts | undefined)?.[key], draft);
  return typeof found === 'string' || typeof found === 'number' ? found : '';
}

/** The form with one field changed. */
export function withValue(draft: Draft, path: string, value: Typed): Draft {
  return replacedAt(draft, keysOf(draft, path), () => value) as Draft;
}

/** The items of a list; none when the shape that is chosen has no such list. */
export function itemsAt(draft: Draft, list: ListPath): readonly object[] {
  const found = keysOf(draft, list).reduce<unknown>((whole, key) => (whole as Parts | undefined)?.[key], draft);
  return Array.isArray(found) ? found : [];
}

/** The list with a blank item at its end. */
export function withItemAdded(draft: Draft, list: ListPath): Draft {
  return withItems(draft, list, [...itemsAt(draft, list), BLANK_ITEMS[list]]);
}

/** Cut-outs and doorways keep their walls, by whatever number these go now; one whose wall is gone is asked again. */
export function withItemRemoved(draft: Draft, list: ListPath, index: number): Draft {
  const without = withItems(
    draft,
    list,
    itemsAt(draft, list).filter((_, i) => i !== index),
  );
  const gone = index + 1;
  return list === 'shape.walls'
    ? withWalls(without, (wall) => (wall === gone ? '' : wall > gone ? wall - 1 : wall))
    : without;
}

/** Moves an item one place up (-1) or down (1); at the end of its list it stays. */
export function withItemMoved(draft: Draft, list: ListPath, index: number, by: -1 | 1): Draft {
  const items = [...itemsAt(draft, list)];
  const other = index + by;
  if (other < 0 || other >= items.length) return draft;
  [items[index], items[other]] = [items[other], items[index]];
  const moved = withItems(draft, list, items);
  const swap = (wall: number) => (wall === index + 1 ? other + 1 : wall === other + 1 ? index + 1 : wall);
  return list === 'shape.walls' ? withWalls(moved, swap) : moved;
}

type Parts = Readonly<Record<string, unknown>>;

function keysOf(draft: Draft, path: string): readonly string[] {
  const keys = path.split('.');
  if (path === 'shape.kind') return ['kind'];
  return keys[0] === 'shape' ? ['shapes', draft.kind, ...keys.slice(1)] : keys;
}

function withItems(draft: Draft, list: ListPath, items: readonly object[]): Draft {
  return replacedAt(draft, keysOf(draft, list), () => items) as Draft;
}

/** The form with every mention of a wall renumbered. */
function withWalls(draft: Draft, renumbered: (wall: number) => number | ''): Draft {
  const moved = (typed: Typed): Typed => (/^\s*\d+\s*$/.test(String(typed)) ? renumbered(Number(typed)) : typed);
  const direction = /^\s*wall\s*(\d+)\s*$/i.exec(String(draft.rules.layDirection));
  const wall = direction ? renumbered(Number(direction[1])) : '';
  const layDirection = direction ? (wall === '' ? '' : `wall ${wall}`) : draft.rules.layDirection;
  return {
    ...draft,
    bows: draft.bows.map((bow) => ({ ...bow, wall: moved(bow.wall) })),
    cutouts: draft.cutouts.map((cutout) => ({ ...cutout, wall: moved(cutout.wall) })),
    doorways: draft.doorways.map((doorway) => ({ ...doorway, wall: moved(doorway.wall) })),
    rules: { ...draft.rules, layDirection },
  };
}
