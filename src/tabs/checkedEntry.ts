/**
 * What came from the sidebar or from cells, checked to be a room entry: every field there, each of a kind that can
 * stand there. Whether a length can be read is not asked here; `readRoom` does that.
 */
import type { RoomEntry, ShapeEntry, Typed } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { isDate } from './dates';
import {
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  type EntryField,
  type EntrySection,
  NAME_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  RULE_FIELDS,
  SHAPE_KIND_FIELDS,
  WALL_FIELDS,
} from './entryFields';
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
  const entry = {
    ...fieldsAt(NAME_FIELDS, value, '', report),
    shape: shapeOf(fieldsOf(value.shape), report),
    cutouts: listAt(CUTOUT_FIELDS, value.cutouts, report),
    doorways: listAt(DOORWAY_FIELDS, value.doorways, report),
    product: fieldsAt(PRODUCT_FIELDS, fieldsOf(value.product), 'product.', report),
    rules: fieldsAt(RULE_FIELDS, fieldsOf(value.rules), 'rules.', report),
  };
  // The table of fields is the entry's own type, field by field: a test holds the two together.
  return problems.length > 0 ? { ok: false, problems } : { ok: true, entry: entry as unknown as RoomEntry };
}

function shapeOf(shape: Fields, report: Report): unknown {
  const { kind } = fieldsAt(SHAPE_KIND_FIELDS, shape, 'shape.', report) as { kind: ShapeEntry['kind'] | '' };
  switch (kind) {
    case 'rectangle':
      return { kind, ...fieldsAt(RECTANGLE_FIELDS, shape, 'shape.', report) };
    case 'four walls':
      return { kind, walls: fourWalls(shape.walls, report), ...fieldsAt(DIAGONAL_FIELDS, shape, 'shape.', report) };
    case 'walls in order':
      return { kind, walls: listAt(WALL_FIELDS, shape.walls, report) };
    case 'rectangles':
      return { kind, rectangles: listAt(RECTANGLES_FIELDS, shape.rectangles, report) };
    case '':
      return null;
  }
}

function fourWalls(walls: unknown, report: Report): Typed[] {
  const given: readonly unknown[] = Array.isArray(walls) ? walls : [];
  if (given.length > 4) report('shape.walls', tabProblems.fourWalls(given.length));
  return [0, 1, 2, 3].map((i) => typedAt(numbered(WALL_FIELDS.fields[0], i), given[i], `shape.walls.${i}`, report));
}

function listAt(section: EntrySection, value: unknown, report: Report): unknown[] {
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
  return value.map((item, i) => {
    const fields = section.fields.map((field) => numbered(field, i));
    return fieldsAt({ ...section, fields }, fieldsOf(item), `${section.at}.${i}.`, report);
  });
}

function fieldsAt(section: EntrySection, values: Fields, path: string, report: Report): Record<string, Typed> {
  const read: Record<string, Typed> = {};
  for (const field of section.fields) read[field.key] = typedAt(field, values[field.key], path + field.key, report);
  return read;
}

function typedAt(field: EntryField, value: unknown, path: string, report: Report): Typed {
  const typed = value === undefined || value === null ? '' : value;
  if (isDate(typed)) {
    report(path, tabProblems.date(field.label));
    return '';
  }
  if ((typeof typed !== 'string' && typeof typed !== 'number') || !isShort(typed)) {
    report(path, typeof typed === 'string' ? tooLong(field.label, typed) : tabProblems.notTyped(field.label));
    return '';
  }
  if (field.isText) return String(typed);
  return field.choices ? choiceOf(field.choices, field.label, String(typed), path, report) : typed;
}

function choiceOf(choices: readonly string[], where: string, found: string, path: string, report: Report): string {
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

function numbered(field: EntryField, index: number): EntryField {
  return { ...field, label: field.label.replace('#', String(index + 1)) };
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function fieldsOf(value: unknown): Fields {
  return isFields(value) ? value : {};
}
