/**
 * The `Rooms` tab: one column per room, one line per field, everything as it was typed. A person may change any cell, add
 * lines of their own, and open the room again. A room that cannot be read is reported, and kept as it is.
 */
import { distinct } from '../geometry/lists';
import type { RoomEntry, ShapeEntry, Typed } from '../takeoff/entry';
import { ENTRY_SECTIONS, type EntrySection, ROOM_LABEL } from '../takeoff/entryFields';
import { nameKey, sameName } from '../takeoff/text/names';
import {
  type Cell,
  filledRows,
  HEADED,
  LIST,
  lookWith,
  numberCell,
  PLAIN,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { checkedEntry } from './checkedEntry';
import { dateText, isDate } from './dates';
import { aboveKept } from './oldTab';
import { fieldOfLabel, labelsInOrder, labelsOf, sameLabel } from './roomLabels';
import { tabProblems } from './tabProblems';

export const ROOMS_MARK = 'rooms';
export const ROOMS_TITLE = 'Rooms';

/** A room as it stands in the tab: its cells by the label of their line. */
export type RoomColumn = ReadonlyMap<string, Typed>;

export interface SavedRoom {
  readonly name: string;
  /** Null when it cannot be read, or when a room left of it has its name. */
  readonly entry: RoomEntry | null;
  readonly column: RoomColumn;
  /** Why it cannot be read; none when it can. */
  readonly problems: readonly string[];
}

export interface SavedRooms {
  readonly rooms: readonly SavedRoom[];
  readonly problems: readonly string[];
  /** Whether the tab is laid out so that it may be written again without losing what stands there. */
  readonly isReadable: boolean;
}

/** Stands for a wall of which nothing is typed yet, so that the wall is not lost. */
const BLANK_WALL = '(blank)';
const AS_BLANK_WALL = /^\(+blank\)+$/;
const GUIDE = 'Every room as it was typed. Change a cell, then open the room again in the sidebar and fill its tabs.';

/** The tab of these rooms, one column each, in this order. */
export function roomsBlock(columns: readonly RoomColumn[]): TabBlock {
  const labels = labelsInOrder(columns.flatMap((column) => [...column.keys()]));
  const lines = labels.map((label): Cell[] => {
    const look = label === ROOM_LABEL ? HEADED : PLAIN;
    return [textCell(label, { ...look, bold: true }), ...columns.map((column) => typedCell(column.get(label), look))];
  });
  const top = [[textCell(ROOMS_TITLE, TITLE)], [textCell(GUIDE, lookWith({ wrap: false }))], [textCell('', STRONG)]];
  return {
    title: ROOMS_TITLE,
    mark: ROOMS_MARK,
    cells: filledRows([...top, ...lines], columns.length + 1),
    columnWidths: [260, ...columns.map(() => 150)],
    ...LIST,
    frozenRows: top.length + 1,
  };
}

/** One room's column, from which `entriesFromCells` reads the same entry again. */
export function roomColumn(entry: RoomEntry): RoomColumn {
  const column = new Map<string, Typed>();
  const shown = { ...entry, shape: shownShape(entry.shape) };
  for (const section of ENTRY_SECTIONS) {
    const found = section.at === '' ? shown : section.at.split('.').reduce(partOf, shown);
    if (!section.isList) putFields(column, section, found, '');
    else if (Array.isArray(found)) {
      for (const [i, item] of found.entries()) putFields(column, section, item, String(i + 1));
    }
  }
  return column;
}

/** The same columns with this room put in the place of the one with its name, or at the end. */
export function withRoom(rooms: readonly SavedRoom[], entry: RoomEntry): readonly RoomColumn[] {
  const index = rooms.findIndex((room) => sameName(room.name, entry.name));
  const columns = rooms.map((room) => room.column);
  if (index < 0) return [...columns, roomColumn(entry)];
  const merged = new Map(roomColumn(entry));
  for (const [label, typed] of columns[index]) if (!fieldOfLabel(label)) merged.set(label, typed);
  return columns.map((column, i) => (i === index ? merged : column));
}

/** The same columns with a room under another name; doorways that lead to it follow. */
export function withNewName(rooms: readonly SavedRoom[], name: string, newName: string): readonly RoomColumn[] {
  const isNamed = (typed: Typed) => nameKey(String(typed)) === nameKey(name);
  const namesRoom = (label: string) => {
    const place = fieldOfLabel(label);
    return place?.section.at === 'doorways' && place.field.key === 'leadsTo';
  };
  const index = rooms.findIndex((room) => isNamed(room.name));
  return rooms.map(({ column }, i) => {
    const follows = (label: string, typed: Typed) =>
      isNamed(typed) && (namesRoom(label) || (i === index && label === ROOM_LABEL));
    return new Map([...column].map(([label, typed]) => [label, follows(label, typed) ? newName : typed]));
  });
}

/** The same columns without the leftmost room of that name. */
export function withoutRoom(rooms: readonly SavedRoom[], name: string): readonly RoomColumn[] {
  const index = rooms.findIndex((room) => sameName(room.name, name));
  return rooms.filter((_, i) => i !== index).map(({ column }) => column);
}

/** Reads the tab again, whatever has become of it. Never throws. */
export function entriesFromCells(cells: readonly (readonly unknown[])[]): SavedRooms {
  const values = aboveKept(cells);
  const first = values.findIndex((row) => sameLabel(row[0], ROOM_LABEL));
  const isEmpty = values.every((row) => row.every((cell) => cell === ''));
  if (first < 0) {
    return { rooms: [], problems: isEmpty ? [] : [tabProblems.noRoomLine(ROOM_LABEL)], isReadable: isEmpty };
  }
  const { labels, problems } = labelsOf(values.slice(first));
  const columnCount = values.reduce((most, row) => Math.max(most, row.length), 0);
  const rooms: SavedRoom[] = [];
  for (let i = 1; i < columnCount; i++) {
    const cells = values.slice(first).map((row) => row[i] ?? '');
    if (cells.every((cell) => cell === '')) continue;
    const read = savedRoom(labels, cells);
    const isTwice = rooms.some((other) => sameName(other.name, read.name));
    const twice = isTwice ? [tabProblems.savedTwice(read.name)] : [];
    const room = { ...read, entry: isTwice ? null : read.entry, problems: [...read.problems, ...twice] };
    problems.push(...room.problems);
    rooms.push(room);
  }
  return { rooms, problems, isReadable: true };
}

/** Both ways of giving walls by the same fields, and no wall without a cell. */
function shownShape(shape: ShapeEntry): unknown {
  if (shape.kind === 'four walls') return { ...shape, walls: shape.walls.map((length) => ({ length })) };
  if (shape.kind !== 'walls in order') return shape;
  return { ...shape, walls: shape.walls.map((wall) => ({ ...wall, length: shownWall(wall.length) })) };
}

function partOf(whole: unknown, key: string): unknown {
  return typeof whole === 'object' && whole !== null ? (whole as Record<string, unknown>)[key] : undefined;
}

function putFields(column: Map<string, Typed>, section: EntrySection, values: unknown, number: string): void {
  for (const field of section.fields) {
    const typed = partOf(values, field.key) as Typed | undefined;
    if (typed !== undefined) column.set(field.label.replace('#', number), typed);
  }
}

function shownWall(typed: Typed): Typed {
  if (typed === '') return BLANK_WALL;
  return typeof typed === 'string' && AS_BLANK_WALL.test(typed) ? `(${typed})` : typed;
}

function typedWall(shown: unknown): unknown {
  if (shown === BLANK_WALL) return '';
  return typeof shown === 'string' && AS_BLANK_WALL.test(shown) ? shown.slice(1, -1) : shown;
}

function typedCell(typed: Typed | undefined, look: typeof PLAIN): Cell {
  return typeof typed === 'number'
    ? numberCell(typed, 'General', { ...look, align: 'left' })
    : textCell(typed ?? '', look);
}

function savedRoom(labels: readonly string[], cells: readonly unknown[]): SavedRoom {
  const column = new Map<string, Typed>();
  const found: FoundField[] = [];
  cells.forEach((cell, i) => {
    if (cell === '') return;
    column.set(labels[i], keptCell(cell));
    const place = fieldOfLabel(labels[i]);
    if (place) found.push({ at: place.section.at, number: place.order[1], key: place.field.key, cell });
  });
  const checked = checkedEntry(entryOf(found));
  const name = String(column.get(ROOM_LABEL) ?? '');
  if (checked.ok) return { name, entry: checked.entry, column, problems: [] };
  return { name, entry: null, column, problems: checked.problems.map(({ text }) => tabProblems.inRoom(name, text)) };
}

interface FoundField {
  readonly at: EntrySection['at'];
  /** Of the item in its list, from 1; 0 outside lists. */
  readonly number: number;
  readonly key: string;
  readonly cell: unknown;
}

/** The cells put where they stand in an entry; whether it is one, `checkedEntry` says. */
function entryOf(found: readonly FoundField[]): Record<string, unknown> {
  const fields = (at: EntrySection['at'], number = 0): Record<string, unknown> =>
    Object.fromEntries(found.filter((f) => f.at === at && f.number === number).map((f) => [f.key, f.cell]));
  // An item whose cells were all cleared is gone; those after it move up.
  const items = (at: EntrySection['at']) =>
    distinct(found.filter((f) => f.at === at).map((f) => f.number))
      .sort((a, b) => a - b)
      .map((n) => fields(at, n));
  const shape = fields('shape');
  const isFourWalls = sameLabel(shape.kind, 'four walls');
  return {
    ...fields(''),
    shape: {
      ...shape,
      walls: isFourWalls
        ? lengthsOfWalls(found)
        : items('shape.walls').map((wall) => ({ ...wall, length: typedWall(wall.length) })),
      diagonals: items('shape.diagonals'),
      rectangles: items('shape.rectangles'),
    },
    bows: items('bows'),
    cutouts: items('cutouts'),
    doorways: items('doorways'),
    product: fields('product'),
    rules: fields('rules'),
  };
}

/** Of a room of four walls: the four, and any more that stand there, so that a fifth is told and not dropped. */
function lengthsOfWalls(found: readonly FoundField[]): readonly unknown[] {
  const lengths = found.filter(({ at, key }) => at === 'shape.walls' && key === 'length');
  const four = [1, 2, 3, 4].map((number) => lengths.find((length) => length.number === number)?.cell);
  return [...four, ...lengths.filter(({ number }) => number > 4).map(({ cell }) => cell)];
}

/** A cell of a room that is written again as it stands. Dates and ticks become text: still unreadable, still there. */
function keptCell(cell: unknown): Typed {
  if (typeof cell === 'string' || typeof cell === 'number') return cell;
  return isDate(cell) ? dateText(cell as Date) : String(cell).toUpperCase();
}
