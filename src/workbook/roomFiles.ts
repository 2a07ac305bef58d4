/**
 * Rooms kept in files: one JSON file per room, or a house of several.
 *
 *   { "source": "...", "entry": { ... } }                        one room, what a person typed; blanks may be left out
 *   { "rooms": [ { ... }, ... ], "lay": "as one floor" }         rooms that lead into one another
 *   { "rooms": [ { ... }, ... ], "lay": "sharing planks" }       each on its own, cut from the same planks; `leadsTo` is
 *                                                                not looked at
 *
 * A bare entry, without the braces round it, is taken as well. What comes out is every floor in millimetres.
 */
import { readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { mmOf } from '../geometry/length';
import type { Point } from '../geometry/point';
import { houseProblems } from '../order/houseProblems';
import { planHouse } from '../order/planHouse';
import { checkedEntry } from '../tabs/checkedEntry';
import { blankOf, type RoomEntry } from '../takeoff/entry';
import { BOW_FIELDS, CUTOUT_FIELDS, DOORWAY_FIELDS, PRODUCT_FIELDS, RECTANGLES_FIELDS } from '../takeoff/entryFields';
import { takeoffAsOne } from '../takeoff/planning/joinedFloor';
import type { Problem, StartLine, Takeoff } from '../takeoff/result';
import { takeoff } from '../takeoff/takeoff';
import { nameKey } from '../takeoff/text/names';
import { codeOf, textOfFile } from './fileText';
import { fieldProblems, isBlank } from './roomFileFields';

type Ring = readonly (readonly [number, number])[];

/** One floor as written, millimetres. With problems everything else is left out. */
export interface WrittenFloor {
  readonly name: string;
  readonly problems: readonly Problem[];
  readonly room?: Ring;
  readonly cutouts?: readonly Ring[];
  /** What gets floor: outlines anticlockwise, holes clockwise, after the expansion gap. */
  readonly floor?: readonly Ring[];
  /** Degrees the rows are turned from the room's x axis, anticlockwise. */
  readonly rowAngle?: number;
  readonly rows?: readonly {
    readonly row: number;
    readonly width: number;
    readonly narrowest: number;
    readonly polygon: Ring;
  }[];
  readonly pieces?: readonly WrittenPiece[];
  /** Of all the rooms cut from the same planks, as are the bound and the numbers of the planks. */
  readonly planks?: number;
  readonly bound?: number;
  readonly stop?: string;
  /** Starts that were tried, the usual one first, with the strip that each leaves where rows stop. */
  readonly starts?: readonly WrittenStart[];
  readonly notes?: readonly string[];
}

interface WrittenStart {
  readonly firstRow: number;
  readonly narrowest: number;
  readonly chosen: boolean;
  readonly strips: Readonly<Record<string, number>>;
}

export interface WrittenPiece {
  readonly number: string;
  readonly row: number;
  readonly plank: number;
  readonly keeps: string;
  readonly length: number;
  readonly shortPoint: number;
  readonly widthLeft: number;
  readonly widthRight: number;
  readonly polygon: Ring;
  readonly holes: readonly Ring[];
  readonly cuts: readonly string[];
  readonly marks: readonly string[];
}

/** How the rooms of one file are laid. */
const LAYS = ['as one floor', 'sharing planks', 'each on its own'] as const;

/**
 * Every floor of a file, or of all `.json` files of a folder, by the file's name (and the room's, where it has several).
 * A file that cannot be read is told as a floor with problems, and keeps none of the others from being planned.
 *
 * @throws Error with a sentence when there is no such file or folder, or no room file in the folder
 */
export function floorsOfFiles(path: string): Readonly<Record<string, WrittenFloor>> {
  const floors = new Map<string, WrittenFloor>();
  for (const file of roomFilesAt(path)) {
    const named = idOf(file);
    // On some systems `den.json` and `den.JSON` are two files.
    const id = floors.has(named) ? basename(file) : named;
    for (const [key, floor] of floorsOfFile(file, id)) floors.set(key, floor);
  }
  return Object.fromEntries(floors);
}

type NamedFloor = readonly [id: string, floor: WrittenFloor];

const ENDING = /\.json$/i;

function roomFilesAt(path: string): readonly string[] {
  try {
    if (!statSync(path).isDirectory()) return [path];
    const files = readdirSync(path).filter((name) => ENDING.test(name));
    if (files.length > 0) return files.sort().map((name) => join(path, name));
  } catch (error) {
    throw new Error(`The room files cannot be read: ${path} (${codeOf(error)}).`);
  }
  throw new Error(`The folder ${path} holds no room files: their names end in .json.`);
}

function idOf(file: string): string {
  return basename(file).replace(ENDING, '');
}

/** Never throws: what is wrong with a file is told in its place. */
function floorsOfFile(file: string, id: string): readonly NamedFloor[] {
  const told = (text: string): readonly NamedFloor[] => [[id, { name: id, problems: [{ field: '', text }] }]];
  let content: unknown;
  try {
    content = JSON.parse(textOfFile(file));
  } catch (error) {
    return told(
      error instanceof SyntaxError
        ? `This is not JSON, as a room file is: ${error.message}.`
        : `The file cannot be read: ${codeOf(error)}.`,
    );
  }
  try {
    return plannedFloors(content, id);
  } catch (error) {
    const message = error instanceof Error ? error.message.replace(/^Internal: /, '') : String(error);
    return told(`Internal: the file could not be planned. Please report it, with the file: ${message}`);
  }
}

function plannedFloors(content: unknown, id: string): readonly NamedFloor[] {
  const { entries, lay, problems } = readRoomFile(content, id);
  if (problems.length > 0) return [[id, { name: id, problems }]];
  if (lay === 'as one floor') {
    const result = takeoffAsOne(entries);
    const name = entries.map((entry) => entry.name).join(' + ');
    return [[id, result.status === 'planned' ? writtenFloor(result.takeoff) : { name, problems: result.problems }]];
  }
  if (lay === 'sharing planks') {
    const plan = planHouse(entries.map(leadingNowhere), true);
    if (plan.status === 'problems') return [[id, { name: id, problems: plan.problems }]];
    return plan.planned.rooms.map((room) => [`${id}/${room.entry.name}`, writtenFloor(room)]);
  }
  return entries.map((entry) => {
    const result = takeoff(entry);
    const key = entries.length === 1 ? id : `${id}/${entry.name}`;
    const { name } = entry;
    return [key, result.status === 'planned' ? writtenFloor(result.takeoff) : { name, problems: result.problems }];
  });
}

/** Rooms that share planks are floors of their own: doorways that would make one floor of them end in the doorway. */
function leadingNowhere(entry: RoomEntry): RoomEntry {
  return { ...entry, doorways: entry.doorways.map((doorway) => ({ ...doorway, leadsTo: '' })) };
}

/** The rooms of a file, and how they are laid. */
export interface RoomFile {
  readonly entries: readonly RoomEntry[];
  readonly lay: (typeof LAYS)[number];
  /** What is wrong with the file or a room in it: then nothing is planned. */
  readonly problems: readonly Problem[];
}

/** Reads the content of a file; a room without a name takes the file's. */
export function readRoomFile(value: unknown, id: string): RoomFile {
  const found = fieldProblems(value);
  if (found.length > 0) return { entries: [], lay: 'each on its own', problems: found };
  const file = value as Readonly<Record<string, unknown>>;
  const given: readonly unknown[] = Array.isArray(file.rooms) ? file.rooms : [file.entry ?? withoutRemarks(file)];
  const checked = given.map((room, i) => checkedEntry(withDefaults(room, given.length > 1 ? `${id} ${i + 1}` : id)));
  const entries = checked.flatMap((one) => (one.ok ? [one.entry] : []));
  const problems = checked.flatMap((one, i) =>
    one.ok ? [] : one.problems.map((problem) => (given.length > 1 ? ofRoom(i, problem) : problem)),
  );
  const lay = isBlank(file.lay) ? 'each on its own' : LAYS.find((known) => known === file.lay);
  const text = `lay: "${String(file.lay)}" is not a way to lay rooms. Choose ${LAYS.join(', ')}.`;
  return {
    entries,
    lay: lay ?? 'each on its own',
    problems: [...problems, ...sameNames(entries), ...(lay ? [] : [{ field: 'lay', text }])],
  };
}

function ofRoom(index: number, { field, text }: Problem): Problem {
  return { field: `rooms.${index}.${field}`, text: `Room ${index + 1}: ${text}` };
}

/** Floors are told apart by the names of their rooms, and doorways lead to them by name. */
function sameNames(entries: readonly RoomEntry[]): readonly Problem[] {
  const keys = entries.map(({ name }) => nameKey(name));
  const twice = entries.filter((_, i) => keys.indexOf(keys[i]) < i);
  return twice.map(({ name }) => ({ field: 'rooms', text: houseProblems.sameRoomName(name.trim()) }));
}

/** A room without braces round it stands among the file's remarks. */
function withoutRemarks({ about, source, expect, allow, lay, ...room }: Readonly<Record<string, unknown>>): unknown {
  return room;
}

/** A file may leave out what the sidebar always sends: the name, the units, the kind of floor, kinds in lists. */
function withDefaults(room: unknown, name: string): unknown {
  const given = filledIn(room, { name, units: 'us' });
  const listed = (list: unknown, usual: Fields) =>
    Array.isArray(list) ? list.map((item) => filledIn(item, usual)) : undefined;
  const shape = filledIn(given.shape, {});
  return {
    ...given,
    shape: { ...shape, rectangles: listed(shape.rectangles, blankOf(RECTANGLES_FIELDS)) },
    bows: listed(given.bows, blankOf(BOW_FIELDS)),
    cutouts: listed(given.cutouts, blankOf(CUTOUT_FIELDS)),
    doorways: listed(given.doorways, blankOf(DOORWAY_FIELDS)),
    product: filledIn(given.product, blankOf(PRODUCT_FIELDS)),
  };
}

type Fields = Readonly<Record<string, unknown>>;

/** Fields with their usual value where they are left out or blank. */
function filledIn(fields: unknown, usual: Fields): Fields {
  const given = typeof fields === 'object' && fields !== null ? (fields as Fields) : {};
  const blank = Object.keys(usual).filter((key) => isBlank(given[key]));
  return { ...given, ...Object.fromEntries(blank.map((key) => [key, usual[key]])) };
}

function writtenFloor(planned: Takeoff): WrittenFloor {
  return {
    name: planned.entry.name,
    problems: [],
    room: ringOf(planned.outline),
    cutouts: planned.cutouts.map(ringOf),
    floor: planned.floor.map(ringOf),
    rowAngle: planned.rowAngle,
    rows: planned.rows.map(({ rowNumber, width, narrowest, polygon }) => ({
      row: rowNumber,
      width: mmOf(width),
      narrowest: mmOf(narrowest),
      polygon: ringOf(polygon),
    })),
    pieces: planned.pieces.map((piece) => ({
      number: piece.label,
      row: piece.rowNumber,
      plank: piece.plankNumber,
      keeps: piece.keeps,
      length: mmOf(piece.length),
      shortPoint: mmOf(piece.shortPoint),
      widthLeft: mmOf(piece.widthLeft),
      widthRight: mmOf(piece.widthRight),
      polygon: ringOf(piece.polygon),
      holes: piece.holes.map(ringOf),
      cuts: piece.cuts,
      marks: piece.marks,
    })),
    planks: planned.plan.plankCount,
    bound: planned.plan.bound,
    stop: planned.plan.stop,
    starts: planned.starts.map(writtenStart),
    notes: planned.notes,
  };
}

function writtenStart({ firstRowWidth, narrowest, isChosen, strips }: StartLine): WrittenStart {
  const widths = Object.fromEntries(strips.map(({ place, width }) => [place, mmOf(width)]));
  return { firstRow: mmOf(firstRowWidth), narrowest: mmOf(narrowest), chosen: isChosen, strips: widths };
}

/** Exact: a tick is 1/640 mm, and that has seven decimals. */
function ringOf(points: readonly Point[]): Ring {
  return points.map(({ x, y }) => [mmOf(x), mmOf(y)]);
}
