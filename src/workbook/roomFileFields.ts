/** What stands in a room file, held against what may: a field under a wrong name would be left out without a word. */
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  type EntrySection,
  NAME_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  RULE_FIELDS,
  SHAPE_KIND_FIELDS,
  SHAPE_KINDS,
  WALL_FIELDS,
} from '../takeoff/entryFields';
import type { Problem } from '../takeoff/result';
import { nearestWord } from './nearestWord';

/** Fields by name, each with other words a person may know it by. */
type Known = ReadonlyMap<string, readonly string[]>;
type Fields = Readonly<Record<string, unknown>>;

const REMARKS = ['about', 'source', 'expect', 'allow'];
const ALLOWED = named(['brokenRules']);
const FILE = named([...REMARKS, 'entry', 'rooms', 'lay']);
const EXPECTED = named(['rows', 'planks', 'firstRow', 'lastRow', 'floorArea', 'mostRuns', 'sameAs', 'note']);
const ROOM = named(['name', 'units', 'shape', 'bows', 'cutouts', 'doorways', 'product', 'rules']);
/** A room may stand in its file without the braces round it, and the file's remarks then stand among its fields. */
const BARE_ROOM = named([...ROOM.keys(), ...REMARKS, 'lay']);

const SHAPES: Readonly<Record<(typeof SHAPE_KINDS)[number], Known>> = {
  rectangle: fieldsOf(SHAPE_KIND_FIELDS, RECTANGLE_FIELDS),
  'four walls': new Map([...fieldsOf(SHAPE_KIND_FIELDS, DIAGONAL_FIELDS), ['walls', []]]),
  'walls in order': new Map([...fieldsOf(SHAPE_KIND_FIELDS), ['walls', []], ['diagonals', []]]),
  rectangles: new Map([...fieldsOf(SHAPE_KIND_FIELDS), ['rectangles', []]]),
};
const BOW = fieldsOf(BOW_FIELDS);
const CORNER_DIAGONAL = fieldsOf(CORNER_DIAGONAL_FIELDS);
const CUTOUT = fieldsOf(CUTOUT_FIELDS);
const DOORWAY = fieldsOf(DOORWAY_FIELDS);
const WALL = fieldsOf(WALL_FIELDS);
const RECTANGLE = fieldsOf(RECTANGLES_FIELDS);
const PRODUCT = fieldsOf(PRODUCT_FIELDS);
const RULES = fieldsOf(RULE_FIELDS);
const ANY_SHAPE: Known = new Map(Object.values(SHAPES).flatMap((known) => [...known]));

/** Everything in a file that has no place in one, or another form than its place. */
export function fieldProblems(file: unknown): readonly Problem[] {
  if (!isFields(file)) {
    return [told('', `Found ${kindOf(file)} where a room is wanted, such as { "entry": { ... } }.`)];
  }
  const remarks = [
    ...problemsOfFields('expect', file.expect, EXPECTED),
    ...problemsOfFields('allow', file.allow, ALLOWED),
    ...problemsOfValue('lay', file.lay),
  ];
  const isOne = 'entry' in file;
  const isSeveral = 'rooms' in file;
  if (!isOne && !isSeveral) return [...remarks, ...problemsOfRoom('', file, BARE_ROOM)];
  const own = [...remarks, ...problemsOfNames('', file, FILE)];
  if (isOne && isSeveral) return [...own, told('rooms', 'The file has both "entry" and "rooms". Keep one of them.')];
  return [...own, ...(isOne ? problemsOfRoom('entry', file.entry, ROOM) : problemsOfRooms(file.rooms))];
}

function problemsOfRooms(rooms: unknown): readonly Problem[] {
  if (!Array.isArray(rooms) || rooms.length === 0) return [wanted('rooms', 'a list of rooms', kindOf(rooms))];
  return rooms.flatMap((room: unknown, i) => problemsOfRoom(`rooms.${i}`, room, ROOM));
}

function problemsOfRoom(path: string, room: unknown, known: Known): readonly Problem[] {
  if (!isFields(room)) return [wanted(path, 'a room in braces', kindOf(room))];
  return [
    ...problemsOfNames(path, room, known),
    ...NAME_FIELDS.fields.flatMap(({ key }) => problemsOfValue(under(path, key), room[key])),
    ...problemsOfShape(under(path, 'shape'), room.shape),
    ...problemsOfList(under(path, 'bows'), room.bows, BOW),
    ...problemsOfList(under(path, 'cutouts'), room.cutouts, CUTOUT),
    ...problemsOfList(under(path, 'doorways'), room.doorways, DOORWAY),
    ...problemsOfFields(under(path, 'product'), room.product, PRODUCT),
    ...problemsOfFields(under(path, 'rules'), room.rules, RULES),
  ];
}

function problemsOfShape(path: string, shape: unknown): readonly Problem[] {
  if (isBlank(shape)) return [];
  if (!isFields(shape)) return [wanted(path, 'fields in braces', kindOf(shape))];
  const kind = SHAPE_KINDS.find((known) => known === String(shape.kind).trim().toLowerCase());
  const { walls, diagonals, rectangles, ...values } = shape;
  return [
    ...problemsOfNames(path, shape, kind ? SHAPES[kind] : ANY_SHAPE, kind ? ` of a room measured as ${kind}` : ''),
    ...Object.entries(values).flatMap(([key, value]) => problemsOfValue(`${path}.${key}`, value)),
    ...(kind === 'four walls' ? problemsOfFourWalls(`${path}.walls`, walls) : []),
    ...(kind === 'walls in order' ? problemsOfList(`${path}.walls`, walls, WALL) : []),
    ...(kind === 'walls in order' ? problemsOfList(`${path}.diagonals`, diagonals, CORNER_DIAGONAL) : []),
    ...(kind === 'rectangles' ? problemsOfList(`${path}.rectangles`, rectangles, RECTANGLE) : []),
  ];
}

function problemsOfFourWalls(path: string, walls: unknown): readonly Problem[] {
  if (!Array.isArray(walls)) return [wanted(path, 'a list of four lengths', kindOf(walls))];
  if (walls.length !== 4) return [wanted(path, 'a list of four lengths', `a list of ${walls.length}`)];
  return walls.flatMap((wall: unknown, i) => problemsOfValue(`${path}.${i}`, wall));
}

function problemsOfList(path: string, list: unknown, known: Known): readonly Problem[] {
  if (isBlank(list)) return [];
  if (!Array.isArray(list)) return [wanted(path, 'a list', kindOf(list))];
  return list.flatMap((item: unknown, i) =>
    isFields(item)
      ? problemsOfFields(`${path}.${i}`, item, known)
      : [wanted(`${path}.${i}`, 'fields in braces', kindOf(item))],
  );
}

/** Fields in braces, each with a number or text; where nothing stands nothing is wrong. */
function problemsOfFields(path: string, fields: unknown, known: Known): readonly Problem[] {
  if (isBlank(fields)) return [];
  if (!isFields(fields)) return [wanted(path, 'fields in braces', kindOf(fields))];
  const values = Object.entries(fields).filter(([key]) => known.has(key));
  return [
    ...problemsOfNames(path, fields, known),
    ...values.flatMap(([key, value]) => problemsOfValue(`${path}.${key}`, value)),
  ];
}

function problemsOfValue(path: string, value: unknown): readonly Problem[] {
  const isPlain = isBlank(value) || typeof value === 'string' || (typeof value === 'number' && Number.isFinite(value));
  return isPlain ? [] : [wanted(path, 'a number or text', kindOf(value))];
}

function problemsOfNames(path: string, fields: Fields, known: Known, where = ''): readonly Problem[] {
  const place = path === '' ? '' : `${placeWords(path)}: `;
  return Object.keys(fields)
    .filter((key) => !known.has(key))
    .map((key) => {
      const nearest = nearestWord(key, known);
      const choice = nearest ? `The nearest is "${nearest}".` : `Known are ${[...known.keys()].join(', ')}.`;
      return told(under(path, key), `${place}"${shortened(key)}" is not a field${where}. ${choice}`);
    });
}

function told(field: string, text: string): Problem {
  return { field, text };
}

function wanted(path: string, what: string, found: string): Problem {
  return told(path, `${placeWords(path)}: found ${found} where ${what} should stand.`);
}

/** `rooms.1.cutouts.0` is `rooms 2, cutouts 1`: people count from 1. */
export function placeWords(path: string): string {
  return path.split('.').reduce((words, part) => {
    if (/^\d+$/.test(part)) return `${words} ${Number(part) + 1}`;
    return words === '' ? part : `${words}, ${part}`;
  }, '');
}

function kindOf(value: unknown): string {
  if (isBlank(value)) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'fields in braces';
  return typeof value === 'string' ? `"${shortened(value)}"` : String(value);
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 37)}...` : text;
}

function under(path: string, key: string): string {
  return path === '' ? key : `${path}.${key}`;
}

function named(names: readonly string[]): Known {
  return new Map(names.map((name) => [name, []]));
}

/** The fields of some sections, with the words the tabs have for them. */
function fieldsOf(...sections: readonly EntrySection[]): Known {
  return new Map(
    sections.flatMap(({ fields }) => fields.map(({ key, label }) => [key, [label.replace(/^.*#,? ?/, '')]] as const)),
  );
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Left out or blank: it has its default. */
export function isBlank(value: unknown): boolean {
  return value === undefined || value === null || (typeof value === 'string' && value.trim() === '');
}
