/**
 * The folder in which the workbooks lie: one file each, their earlier states in `earlier`, removed ones in `bin`.
 * Every change of the folder is one rename, so that a crash leaves it as it was or as it is to be.
 */
import { join } from 'node:path';
import { type Disk, UNFINISHED, writeWhole } from './disk';
import { type EarlierState, earlierStates, keepEarlier, readEarlierState } from './earlier';
import { freeName, workbookName } from './names';
import { diskProblem, noPlaceIn, ShelfProblem } from './problem';
import { fileText, newWorkbookFile, readFileText, type WorkbookFile } from './workbookFile';

export interface ShelfEntry {
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly changed: number;
  readonly bytes: number;
}

export interface BinEntry {
  /** The name of its file in the bin. */
  readonly id: string;
  readonly name: string;
  readonly removed: string;
}

export interface Shelf {
  readonly folder: string;
  list(): Promise<readonly ShelfEntry[]>;
  /** @throws ShelfProblem where there is none of this name, or its file is not whole */
  read(name: string): Promise<WorkbookFile>;
  /** Puts in a new workbook under this name, or `name (2)` where that is taken. @returns its name */
  add(name: string, file: WorkbookFile): Promise<string>;
  /** Writes a workbook that is there, and keeps the state before as an earlier one every few minutes. */
  save(name: string, file: WorkbookFile): Promise<void>;
  rename(name: string, to: string): Promise<string>;
  remove(name: string): Promise<void>;
  bin(): Promise<readonly BinEntry[]>;
  takeFromBin(id: string): Promise<string>;
  earlier(name: string): Promise<readonly EarlierState[]>;
  /** Puts an earlier state in the place of the present one, which becomes an earlier one itself. */
  goBack(name: string, stamp: string): Promise<WorkbookFile>;
}

const ENDING = '.plank.json';
/** A time as it stands in a file's name, such as `2026-03-04T05-06-07Z`. */
const BIN_FILE = /^(\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ) (.+)\.plank\.json$/;

/** @param now what the clock shows */
export async function openShelf(disk: Disk, folder: string, now: () => Date): Promise<Shelf> {
  await disk.makeFolder(folder).catch(noPlaceIn(folder));
  await clearUnfinished(disk, folder);
  const inTurn = queue();
  const place = { disk, folder, now };
  return {
    folder,
    list: () => list(place),
    read: (name) => read(place, workbookName(name)),
    add: (name, file) => inTurn(() => add(place, name, file)),
    save: (name, file) => inTurn(() => save(place, workbookName(name), file)),
    rename: (name, to) => inTurn(() => rename(place, workbookName(name), workbookName(to))),
    remove: (name) => inTurn(() => remove(place, workbookName(name))),
    bin: () => bin(place),
    takeFromBin: (id) => inTurn(() => takeFromBin(place, id)),
    earlier: async (name) => earlierStates(disk, folder, await idOf(place, name)),
    goBack: (name, stamp) => inTurn(() => goBack(place, workbookName(name), stamp)),
  };
}

interface Place {
  readonly disk: Disk;
  readonly folder: string;
  readonly now: () => Date;
}

const fileOf = (folder: string, name: string) => join(folder, name + ENDING);

/** A time that sorts as text and may stand in a file's name. */
const stampOf = (time: Date) =>
  time
    .toISOString()
    .replace(/\.\d+Z$/, 'Z')
    .replaceAll(':', '-');

/** One after the other: two requests never change the folder at once. */
function queue(): <Result>(work: () => Promise<Result>) => Promise<Result> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const result = last.then(work);
    last = result.catch(() => {});
    return result;
  };
}

/** What a crash left half written, here and among the earlier states. */
async function clearUnfinished(disk: Disk, folder: string): Promise<void> {
  const earlier = (await disk.list(join(folder, 'earlier'))).map((id) => join(folder, 'earlier', id));
  for (const place of [folder, ...earlier]) {
    const left = (await disk.list(place).catch(() => [])).filter((name) => name.endsWith(UNFINISHED));
    for (const name of left) await disk.remove(join(place, name)).catch(() => {});
  }
}

async function namesIn({ disk, folder }: Place): Promise<string[]> {
  const files = await disk.list(folder);
  return files.filter((file) => file.endsWith(ENDING)).map((file) => file.slice(0, -ENDING.length));
}

async function list(place: Place): Promise<ShelfEntry[]> {
  const entries: ShelfEntry[] = [];
  for (const name of await namesIn(place)) {
    const facts = await place.disk.facts(fileOf(place.folder, name));
    if (facts) entries.push({ name, ...facts });
  }
  return entries.sort((a, b) => b.changed - a.changed || a.name.localeCompare(b.name));
}

async function read({ disk, folder }: Place, name: string): Promise<WorkbookFile> {
  const path = fileOf(folder, name);
  if (!(await disk.facts(path))) throw new ShelfProblem(`There is no workbook "${name}" in ${folder}.`, 404);
  return readFileText(await disk.readText(path), name);
}

async function add(place: Place, name: string, file: WorkbookFile): Promise<string> {
  const free = freeName(workbookName(name), await namesIn(place));
  await orTold(free, () => writeWhole(place.disk, fileOf(place.folder, free), fileText(file)));
  return free;
}

async function save(place: Place, name: string, file: WorkbookFile): Promise<void> {
  const { disk, folder, now } = place;
  const path = fileOf(folder, name);
  await orTold(name, async () => {
    await keepEarlier(disk, { folder, id: file.id, path, stamp: stampOf(now()) });
    await writeWhole(disk, path, fileText(file));
  });
}

async function orTold<Result>(name: string, write: () => Promise<Result>): Promise<Result> {
  try {
    return await write();
  } catch (failure) {
    throw new ShelfProblem(`"${name}" could not be saved: ${diskProblem(failure)}.`, 507);
  }
}

async function rename(place: Place, name: string, to: string): Promise<string> {
  const others = (await namesIn(place)).filter((other) => other.toLowerCase() !== name.toLowerCase());
  if (others.some((other) => other.toLowerCase() === to.toLowerCase())) {
    throw new ShelfProblem(`There is a workbook "${to}" already. Take another name.`, 409);
  }
  await mustBeThere(place, name);
  await orTold(name, () => place.disk.rename(fileOf(place.folder, name), fileOf(place.folder, to)));
  return to;
}

async function remove(place: Place, name: string): Promise<void> {
  const { disk, folder, now } = place;
  await mustBeThere(place, name);
  const taken = (await bin(place)).map(({ id }) => id.slice(0, -ENDING.length));
  const free = freeName(`${stampOf(now())} ${name}`, taken);
  await orTold(name, async () => {
    await disk.makeFolder(join(folder, 'bin'));
    await disk.rename(fileOf(folder, name), join(folder, 'bin', free + ENDING));
  });
}

async function mustBeThere({ disk, folder }: Place, name: string): Promise<void> {
  if (!(await disk.facts(fileOf(folder, name)))) {
    throw new ShelfProblem(`There is no workbook "${name}" in ${folder}.`, 404);
  }
}

async function bin({ disk, folder }: Place): Promise<BinEntry[]> {
  const found = (await disk.list(join(folder, 'bin'))).flatMap((file): BinEntry[] => {
    const [, removed, name] = BIN_FILE.exec(file) ?? [];
    return removed && name ? [{ id: file, name, removed }] : [];
  });
  return found.sort((a, b) => b.removed.localeCompare(a.removed));
}

async function takeFromBin(place: Place, id: string): Promise<string> {
  const entry = (await bin(place)).find((found) => found.id === id);
  if (!entry) throw new ShelfProblem('That workbook is no longer in the bin.', 404);
  const name = freeName(workbookName(entry.name), await namesIn(place));
  await orTold(name, () => place.disk.rename(join(place.folder, 'bin', id), fileOf(place.folder, name)));
  return name;
}

/** Also of a file that is not whole: its earlier states are what is left of it then. */
async function idOf(place: Place, typed: string): Promise<string> {
  const name = workbookName(typed);
  await mustBeThere(place, name);
  const text = await place.disk.readText(fileOf(place.folder, name));
  return /"id":"([0-9a-f-]{36})"/.exec(text.slice(0, 400))?.[1] ?? '';
}

async function goBack(place: Place, name: string, stamp: string): Promise<WorkbookFile> {
  const { disk, folder, now } = place;
  const id = await idOf(place, name);
  const text = await readEarlierState(disk, folder, id, stamp);
  const path = fileOf(folder, name);
  return orTold(name, async () => {
    // The same workbook, but a state that no window has seen: windows that are open take it in as a whole.
    const file = { ...newWorkbookFile(), ...readFileText(text, name), id };
    await keepEarlier(disk, { folder, id, path, stamp: stampOf(now()), always: true });
    await writeWhole(disk, path, fileText(file));
    return file;
  });
}
