/**
 * The readers beside the custom functions: a room as the form sends it, a job as the form sends it, and the two kinds of
 * files. Each is read in ticks as typed, or told in sentences.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../../src/build.mjs';
import { emptyHouse, type HouseEntry } from '../../../src/order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../../src/order/houseFields';
import { readHouse } from '../../../src/order/readHouse';
import { checkedEntry } from '../../../src/tabs/checkedEntry';
import { checkedHouse } from '../../../src/tabs/checkedHouse';
import type { RoomEntry } from '../../../src/takeoff/entry';
import type { EntryField } from '../../../src/takeoff/entryFields';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import type { Problem } from '../../../src/takeoff/result';
import { readJobFile } from '../../../src/workbook/jobFiles';
import { readRoomFile } from '../../../src/workbook/roomFiles';
import { plainRoom } from '../roomEntries';
import { sentenceFault } from '../sentenceFault';
import { brokenJson } from './brokenJson';
import type { Draw } from './draw';
import { junkCell } from './junk';
import { type System, typedLength } from './typedLengths';

/** Something to be read. */
export interface Trial {
  readonly name: string;
  readonly given: unknown;
  /** What is wrong with what was read or told, or null. */
  readonly complaint: () => string | null;
}

export type TrialMaker = (draw: Draw) => Trial;

/** Rooms and jobs to break: those that the tests plan. */
const ROOM_FOLDER = join(projectFolder, 'tests/rooms');
const ROOM_FILES: readonly unknown[] = readdirSync(ROOM_FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(join(ROOM_FOLDER, name), 'utf8')));
const JOBS: readonly unknown[] = JSON.parse(
  readFileSync(join(projectFolder, 'tests/bench/cases.json'), 'utf8'),
).instances.slice(0, 6);
const ENTRIES: readonly RoomEntry[] = ROOM_FILES.flatMap((file) => readRoomFile(file, 'room').entries);

/** Part of a job in hand, so that its fields are broken too. */
const ONWARD = {
  ...(JOBS[0] as object),
  before: [{ room: 0, joints: [100, 400] }],
  stock: [{ length: 200, ends: 'left' }],
  whole: 3,
};

export const TRIALS: readonly TrialMaker[] = [goodRoom, brokenRoom, anyRoom, house, anyHouse, roomFile, jobFile];

/** Runs a trial; what is thrown is a complaint. */
export function trialFault(trial: Trial): string | null {
  try {
    return trial.complaint();
  } catch (error) {
    return `threw ${error instanceof Error ? error.stack : String(error)}`;
  }
}

function problemsFault(problems: readonly Problem[]): string | null {
  for (const { text } of problems) {
    const fault = sentenceFault(text);
    if (fault !== null) return `the sentence ${fault}: ${text}`;
  }
  return null;
}

/** Ticks, 1/640 mm, of ten-millionths of a millimetre: rounded once, halves up. */
function ticksOf(exact: bigint): number {
  return Number((2n * 640n * exact + 10_000_000n) / 20_000_000n);
}

/** A rectangle in any notation: its corners are where they were typed. */
function goodRoom(draw: Draw): Trial {
  const units = draw.pick<System>(['us', 'metric']);
  const [length, width] = [1, 2].map(() => typedLength(draw, [1500, 20_000], 'room', units));
  const [plank, face] = [typedLength(draw, [400, 2400], 'plank', units), typedLength(draw, [60, 400], 'plank', units)];
  const kerf = typedLength(draw, [0, 6], 'plank', units);
  const entry: RoomEntry = {
    ...{ ...plainRoom, units, shape: { kind: 'rectangle', length: length.cell, width: width.cell } },
    product: { ...plainRoom.product, plankLength: plank.cell, plankWidth: face.cell },
    rules: { ...plainRoom.rules, kerf: kerf.cell },
  };
  const wanted = [length, width, plank, face, kerf].map(({ exact }) => ticksOf(exact)).join();
  const complaint = () => {
    const { room, problems } = drawRoom(entry);
    if (room === null) return `refused what it should read: ${problems[0].text}`;
    const { plankLength, plankWidth } = room.read.product;
    const across = (axis: 'x' | 'y') => Math.max(...room.room.outline.map((corner) => corner[axis]));
    const found = [across('x'), across('y'), plankLength, plankWidth, room.read.rules.kerf].join();
    return found === wanted ? null : `read ${found} where ${wanted} is right`;
  };
  return { name: 'good room', given: entry, complaint };
}

/** What a form can send: text or a number in any field. */
function formJunk(draw: Draw): string | number {
  const junk = junkCell(draw);
  const isSent = typeof junk === 'string' || (typeof junk === 'number' && Number.isFinite(junk));
  return isSent ? (junk as string | number) : draw.pick(['', 'twelve', '-1']);
}

/** A room of the tests with junk in some of its fields, as the page hands it to the reader. */
function brokenRoom(draw: Draw): Trial {
  const whole = draw.pick(ENTRIES);
  let entry: unknown = whole;
  for (let changes = draw.whole(1, 3); changes > 0; changes--) entry = withJunkInField(draw, entry);
  return { name: 'broken room', given: entry, complaint: () => drawnFault(entry as RoomEntry) };
}

/** Choices and what kind of shape it is come from lists and buttons: those are left. */
const CHOSEN = ['kind', 'units', 'floor', 'change', 'way', 'startSide', 'reuseStrips', 'aim'];

function withJunkInField(draw: Draw, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return formJunk(draw);
  if (Array.isArray(value)) {
    const at = draw.whole(0, Math.max(0, value.length - 1));
    return value.map((item, i) => (i === at ? withJunkInField(draw, item) : item));
  }
  const fields = value as Readonly<Record<string, unknown>>;
  const key = draw.pick(Object.keys(fields));
  return CHOSEN.includes(key) ? fields : { ...fields, [key]: withJunkInField(draw, fields[key]) };
}

function drawnFault(entry: RoomEntry): string | null {
  const { room, problems } = drawRoom(entry);
  if (room === null) return problems.length === 0 ? 'refused without a word' : problemsFault(problems);
  const isWhole = [...room.room.outline, ...room.floor.flat()].every(
    ({ x, y }) => Number.isInteger(x) && Number.isInteger(y),
  );
  return isWhole ? null : 'drew corners that are no whole ticks';
}

/** Anything at all in the place of a room. */
function anyRoom(draw: Draw): Trial {
  const given = brokenJson(draw, draw.pick(ENTRIES));
  const complaint = () => {
    const checked = checkedEntry(given);
    return checked.ok ? drawnFault(checked.entry) : problemsFault(checked.problems);
  };
  return { name: 'any room', given, complaint };
}

/** A job with good and broken fields: lengths are read as typed, whatever else is told. */
function house(draw: Draw): Trial {
  const units = draw.pick<System>(['us', 'metric']);
  const entry: Record<string, unknown> = { ...emptyHouse(units) };
  for (const section of HOUSE_SECTIONS) {
    if (section.at === '' || draw.oneIn(2)) continue;
    const item = () => itemOf(draw, section, units);
    entry[section.at] = section.isList ? Array.from({ length: draw.whole(0, 3) }, item) : item();
  }
  const complaint = () => {
    const read = readHouse(entry as unknown as HouseEntry);
    return read.status === 'problems' ? problemsFault(read.problems) : finiteFault(read.house, '');
  };
  return { name: 'job', given: entry, complaint };
}

function itemOf(draw: Draw, { fields }: HouseSection, units: System): object {
  return Object.fromEntries(fields.map((field) => [field.key, fieldOf(draw, field, units)]));
}

function fieldOf(draw: Draw, { use, choices }: EntryField, units: System): unknown {
  if (use === 'list') return draw.pick([[], ['Den'], ['Den', 'Hall']]);
  if (choices) return draw.pick(choices.map(([value]) => value));
  if (draw.oneIn(3)) return '';
  // A line of work or of extras is called by its words, and a sentence about it begins with them.
  if (use === 'words') return draw.pick(['Oak', 'Den', `Den ${draw.text()}`]);
  if (draw.oneIn(12)) return formJunk(draw);
  switch (use) {
    case 'date':
      return draw.pick(['2026-12-05', '5/12/2026', '5 Dec 2026']);
    case 'species':
      return draw.pick(['white oak', 0.0037]);
    case 'degrees':
      return draw.whole(40, 90);
    case 'plank':
    case 'plank!':
      return typedLength(draw, [1, 900], 'plank', units).cell;
    case 'room':
    case 'room!':
      return typedLength(draw, [400, 9000], 'room', units).cell;
    default:
      return draw.pick<unknown>([draw.whole(0, 90), '12', '7.5', '5%', '$12']);
  }
}

/** Every number that was read is one. */
function finiteFault(value: unknown, path: string): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `read ${value} at ${path}`;
  if (value === undefined) return `read nothing at ${path}`;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    const fault = finiteFault(inner, `${path}.${key}`);
    if (fault !== null) return fault;
  }
  return null;
}

function anyHouse(draw: Draw): Trial {
  const given = brokenJson(draw, house(draw).given);
  const complaint = () => {
    const checked = checkedHouse(given);
    if (!checked.ok) return problemsFault(checked.problems);
    const read = readHouse(checked.entry);
    return read.status === 'problems' ? problemsFault(read.problems) : finiteFault(read.house, '');
  };
  return { name: 'any job', given, complaint };
}

function roomFile(draw: Draw): Trial {
  let given: unknown = draw.pick(ROOM_FILES);
  for (let changes = draw.whole(1, 2); changes > 0; changes--) given = brokenJson(draw, given);
  const complaint = () => {
    const { entries, problems } = readRoomFile(given, 'room');
    if (problems.length > 0)
      return problems.map(({ text }) => fileSentenceFault(text)).find((fault) => fault !== null) ?? null;
    return entries.map(drawnFault).find((fault) => fault !== null) ?? null;
  };
  return { name: 'room file', given, complaint };
}

function jobFile(draw: Draw): Trial {
  const jobs = brokenJson(draw, { instances: [draw.pick([...JOBS, ONWARD])] });
  const text = JSON.stringify(jobs) ?? '';
  const given = draw.oneIn(5) ? text.slice(0, draw.whole(0, text.length)) : text;
  const complaint = () => {
    try {
      const { problems } = readJobFile(given);
      return problems.map(fileSentenceFault).find((fault) => fault !== null) ?? null;
    } catch (error) {
      if (!(error instanceof Error) || error.name !== 'Error') throw error;
      return fileSentenceFault(error.message);
    }
  };
  return { name: 'job file', given, complaint };
}

/** A file goes by its fields: "null" may stand in it, and is quoted as it stands. */
function fileSentenceFault(text: string): string | null {
  if (/undefined|\[object|Internal|NaN/.test(text)) return `the sentence has words of the program: ${text}`;
  return text.length > 20 ? null : `the sentence says nothing: ${text}`;
}
