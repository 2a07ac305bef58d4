/**
 * Rooms kept in files: one JSON file a room, or a house of several.
 *
 *   { "source": "...", "entry": { ... } }                        one room, what a person typed; blanks may be left out
 *   { "rooms": [ { ... }, ... ], "lay": "as one floor" }         rooms that lead into one another
 *   { "rooms": [ { ... }, ... ], "lay": "sharing planks" }       each on its own, cut from the same planks
 *
 * A bare entry, without the braces round it, is taken as well. What comes out is every floor in millimetres.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { mmOf } from '../geometry/length';
import type { Point } from '../geometry/point';
import { planHouse } from '../order/planHouse';
import { checkedEntry } from '../tabs/checkedEntry';
import type { RoomEntry } from '../takeoff/entry';
import { takeoffAsOne } from '../takeoff/planning/joinedFloor';
import type { Problem, Takeoff } from '../takeoff/result';
import { takeoff } from '../takeoff/takeoff';

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
  readonly notes?: readonly string[];
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
 *
 * @throws Error with a sentence when a file cannot be read or is not JSON
 */
export function floorsOfFiles(path: string): Readonly<Record<string, WrittenFloor>> {
  const files = statSync(path).isDirectory()
    ? readdirSync(path)
        .filter((name) => name.endsWith('.json'))
        .sort()
        .map((name) => join(path, name))
    : [path];
  return Object.fromEntries(files.flatMap((file) => floorsOfFile(file)));
}

function floorsOfFile(file: string): readonly (readonly [string, WrittenFloor])[] {
  const id = basename(file, '.json');
  const { entries, lay, problems } = readRoomFile(jsonOf(file), id);
  if (problems.length > 0) return [[id, { name: id, problems }]];
  if (lay === 'as one floor') {
    const result = takeoffAsOne(entries);
    const name = entries.map((entry) => entry.name).join(' + ');
    return [[id, result.status === 'planned' ? writtenFloor(result.takeoff) : { name, problems: result.problems }]];
  }
  if (lay === 'sharing planks') {
    const plan = planHouse(entries, true);
    if (plan.status === 'problems') return [[id, { name: id, problems: plan.problems }]];
    return plan.planned.rooms.map((room) => [`${id}/${room.entry.name}`, writtenFloor(room)]);
  }
  return entries.map((entry) => {
    const result = takeoff(entry);
    const key = entries.length === 1 ? id : `${id}/${entry.name}`;
    return [
      key,
      result.status === 'planned' ? writtenFloor(result.takeoff) : { name: entry.name, problems: result.problems },
    ];
  });
}

function jsonOf(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    throw new Error(`${file} is not a room file: ${error instanceof Error ? error.message : String(error)}.`);
  }
}

/** The entries of a file; a room without a name takes the file's. */
export function readRoomFile(
  value: unknown,
  id: string,
): {
  readonly entries: readonly RoomEntry[];
  readonly lay: (typeof LAYS)[number];
  readonly problems: readonly Problem[];
} {
  const file = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
  const given = Array.isArray(file.rooms) ? file.rooms : ['entry' in file ? file.entry : value];
  const checked = given.map((room) => checkedEntry(withDefaults(room, id)));
  const entries = checked.flatMap((one) => (one.ok ? [one.entry] : []));
  const problems = checked.flatMap((one) => (one.ok ? [] : one.problems));
  const lay = file.lay === undefined ? 'each on its own' : LAYS.find((known) => known === file.lay);
  if (lay) return { entries, lay, problems };
  const text = `lay: "${String(file.lay)}" is not a way to lay rooms. Choose ${LAYS.join(', ')}.`;
  return { entries, lay: 'each on its own', problems: [...problems, { field: 'lay', text }] };
}

/** A file may leave out what the sidebar always sends: the name, the units, the kind of floor, kinds in lists. */
function withDefaults(room: unknown, id: string): unknown {
  if (typeof room !== 'object' || room === null) return room;
  const given = room as Readonly<Record<string, unknown>>;
  const listed = (list: unknown, usual: object) =>
    Array.isArray(list) ? list.map((item) => ({ ...usual, ...item })) : list;
  return {
    ...given,
    name: given.name ?? id,
    units: given.units ?? 'us',
    cutouts: listed(given.cutouts, { kind: 'rectangle' }),
    doorways: listed(given.doorways, { floor: 'transition' }),
    product: { kind: 'laminate', ...(given.product as object) },
  };
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
    notes: planned.notes,
  };
}

/** Exact: a tick is 1/640 mm, and that has seven decimals. */
function ringOf(points: readonly Point[]): Ring {
  return points.map(({ x, y }) => [mmOf(x), mmOf(y)]);
}
