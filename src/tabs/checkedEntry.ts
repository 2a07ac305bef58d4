/**
 * Checks that something from the sidebar or from cells is a room entry: every field is there, and of a kind that may be
 * in it. Whether a length can be read is not asked here; `readRoom` does that.
 */
import type { EntryOf, RoomEntry, ShapeEntry, Typed } from '../takeoff/entry';
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  type EntryField,
  type EntrySection,
  fieldLabel,
  NAME_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  RULE_FIELDS,
  SHAPE_KIND_FIELDS,
  WALL_FIELDS,
} from '../takeoff/entryFields';
import type { Problem } from '../takeoff/result';
import { isDate } from './dates';
import { tabProblems } from './tabProblems';

/** The entry, or every reason why it is none. */
export type CheckedEntry =
  | { readonly ok: true; readonly entry: RoomEntry }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Our choice: longer text is a slip of the clipboard, and a tab name has 100 characters at most. */
export const LONGEST_TEXT = 200;
export const LONGEST_ROOM_NAME = 80;
/** Our choice: more walls or cut-outs than any room has. */
const LONGEST_LIST = 500;

type Fields = Readonly<Record<string, unknown>>;
type Report = (field: string, text: string) => void;

/**
 * Checks anything at all. Missing fields that may be blank become blank; fields an entry does not have are dropped;
 * choices are taken in any case.
 */
export function checkedEntry(value: unknown): CheckedEntry {
  if (!isFields(value)) return { ok: false, problems: [{ field: '', text: tabProblems.noEntry() }] };
  const problems: Problem[] = [];
  const report: Report = (field, text) => problems.push({ field, text });
  const shape = shapeOf(fieldsOf(value.shape), report);
  const fields = {
    ...fieldsAt(NAME_FIELDS, value, '', report),
    bows: listAt(BOW_FIELDS, value.bows, report),
    cutouts: listAt(CUTOUT_FIELDS, value.cutouts, report),
    doorways: listAt(DOORWAY_FIELDS, value.doorways, report),
    product: fieldsAt(PRODUCT_FIELDS, fieldsOf(value.product), 'product.', report),
    rules: fieldsAt(RULE_FIELDS, fieldsOf(value.rules), 'rules.', report),
  };
  return problems.length > 0 || shape === null ? { ok: false, problems } : { ok: true, entry: { ...fields, shape } };
}

/** Null when its kind cannot be read, which has been told. */
function shapeOf(shape: Fields, report: Report): ShapeEntry | null {
  const { kind } = fieldsAt(SHAPE_KIND_FIELDS, shape, 'shape.', report);
  switch (kind) {
    case 'rectangle':
      return { kind, ...fieldsAt(RECTANGLE_FIELDS, shape, 'shape.', report) };
    case 'four walls':
      return { kind, walls: fourWalls(shape.walls, report), ...fieldsAt(DIAGONAL_FIELDS, shape, 'shape.', report) };
    case 'walls in order':
      return {
        kind,
        walls: listAt(WALL_FIELDS, shape.walls, report),
        diagonals: listAt(CORNER_DIAGONAL_FIELDS, shape.diagonals, report),
      };
    case 'rectangles':
      return { kind, rectangles: listAt(RECTANGLES_FIELDS, shape.rectangles, report) };
    default:
      kind satisfies never;
      return null;
  }
}

function fourWalls(walls: unknown, report: Report): readonly [Typed, Typed, Typed, Typed] {
  const given: readonly unknown[] = Array.isArray(walls) ? walls : [];
  if (given.length > 4) report('shape.walls', tabProblems.fourWalls(given.length));
  const wall = (i: number) => typedAt(WALL_FIELDS.fields[0], i + 1, given[i], `shape.walls.${i}`, report);
  return [wall(0), wall(1), wall(2), wall(3)];
}

function listAt<S extends EntrySection>(section: S, value: unknown, report: Report): EntryOf<S>[] {
  const where = section.fields[0].label.replace(/ #.*/, 's');
  if (value === undefined || value === null) return [];
  if (!Array.isArray(value)) {
    report(section.at, tabProblems.noList(where));
    return [];
  }
  if (value.length > LONGEST_LIST) {
    report(section.at, tabProblems.longList(where, value.length, LONGEST_LIST));
    return [];
  }
  return value.map((item, i) => fieldsAt(section, fieldsOf(item), `${section.at}.${i}.`, report, i + 1));
}

/** Every field of a section; a choice that cannot be made has been told, and is ''. */
function fieldsAt<S extends EntrySection>(
  section: S,
  values: Fields,
  path: string,
  report: Report,
  itemNumber = 0,
): EntryOf<S> {
  const read = section.fields.map((field) => [
    field.key,
    typedAt(field, itemNumber, values[field.key], path + field.key, report),
  ]);
  return Object.fromEntries(read) as EntryOf<S>;
}

function typedAt(field: EntryField, itemNumber: number, value: unknown, path: string, report: Report): Typed {
  const where = fieldLabel(field, itemNumber);
  const typed = value === undefined || value === null ? '' : value;
  if (isDate(typed)) {
    report(path, tabProblems.date(where));
    return '';
  }
  if ((typeof typed !== 'string' && typeof typed !== 'number') || !isShort(typed)) {
    report(path, typeof typed === 'string' ? tooLong(where, typed) : tabProblems.notTyped(where));
    return '';
  }
  if (field.use === 'words') return String(typed);
  return field.use === 'choice' ? choiceOf(field, where, String(typed), path, report) : typed;
}

function choiceOf(field: EntryField, where: string, found: string, path: string, report: Report): string {
  const choices = (field.choices ?? []).map(([value]) => value);
  const wanted = found.trim().toLowerCase();
  if (choices.indexOf(wanted) >= 0) return wanted;
  report(path, wanted === '' ? tabProblems.missing(where, choices) : tabProblems.choice(where, found, choices));
  return '';
}

/** A number that is not finite has no place in a cell either. */
function isShort(typed: Typed): boolean {
  return typeof typed === 'number' ? Number.isFinite(typed) : typed.length <= LONGEST_TEXT;
}

function tooLong(where: string, text: string): string {
  return tabProblems.longText(where, text.length, LONGEST_TEXT);
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function fieldsOf(value: unknown): Fields {
  return isFields(value) ? value : {};
}
