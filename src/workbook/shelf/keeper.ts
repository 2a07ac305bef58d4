/** FRONT DOOR of the shelf: everything that a page may ask of the folder of workbooks, by name. */
import type { Desk } from './desk';
import { createDesk } from './desk';
import type { Disk } from './disk';
import { freeName, nameFrom } from './names';
import { noPlaceIn, ShelfProblem } from './problem';
import { areKept, readSettings, type ShelfSettings, writeSettings } from './settings';
import { openShelf, type Shelf } from './shelf';
import { newWorkbookFile, revisionOf } from './workbookFile';

/** A file to be brought in that was named on the command line. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface KeeperOptions {
  readonly disk: Disk;
  readonly folder: string;
  readonly now: () => Date;
  /** Handed to the first page that asks for it. */
  readonly given?: GivenFile;
}

export interface Keeper {
  readonly token: string;
  readonly desk: Desk;
  readonly shelf: Shelf;
  readonly actions: Readonly<Record<string, Action>>;
  /** The file of the command line, once. */
  takeGiven(): GivenFile | undefined;
  /** Remembers where the program can be reached; '' when it ends. */
  setAddress(address: string): Promise<void>;
}

/** What was sent, field by field; nothing is believed of it. */
export type Sent = Readonly<Record<string, unknown>>;
export type Action = (sent: Sent) => Promise<unknown>;

const DEMO_NAME = 'Demo house';
const HALF_LAID_NAME = 'Half-laid floor';

export async function openKeeper({ disk, folder, now, given }: KeeperOptions): Promise<Keeper> {
  const shelf = await openShelf(disk, folder, now);
  const desk = createDesk(shelf);
  let settings = await readSettings(disk, folder);
  const remember = async (change: Partial<ShelfSettings>) => {
    const next = { ...settings, ...change };
    if (JSON.stringify(next) === JSON.stringify(settings)) return;
    settings = next;
    // What was open last is a convenience: a full disk must not keep a workbook from being opened.
    await writeSettings(disk, folder, settings).catch(() => {});
  };
  // On a full disk the workbooks that are there can still be opened, and taken elsewhere.
  if (!(await areKept(disk, folder, settings))) await writeSettings(disk, folder, settings).catch(noPlaceIn(folder));
  let waiting = given;
  return {
    token: settings.token,
    desk,
    shelf,
    takeGiven() {
      const taken = waiting;
      waiting = undefined;
      return taken;
    },
    setAddress: (address) => remember({ address }),
    actions: {
      ...listActions(shelf, () => ({ last: settings.last, given: waiting?.name ?? '' })),
      ...deskActions(shelf, desk),
      opened: async ({ name }) => void (await remember({ last: textOf(name) })),
    },
  };
}

/** Demo workbooks where the folder is empty, so that there is something to see. @returns a name to be opened */
async function firstWorkbook(shelf: Shelf, last: string): Promise<string> {
  const names = (await shelf.list()).map(({ name }) => name);
  if (names.length > 0) return names.find((name) => name === last) ?? names[0];
  await shelf.add(HALF_LAID_NAME, newWorkbookFile({ start: 'half laid' }));
  return shelf.add(DEMO_NAME, newWorkbookFile({ start: 'demo' }));
}

function listActions(shelf: Shelf, state: () => { readonly last: string; readonly given: string }) {
  return {
    list: async () => ({
      folder: shelf.folder,
      given: state().given,
      first: await firstWorkbook(shelf, state().last),
      workbooks: await shelf.list(),
      bin: await shelf.bin(),
    }),
    blank: async ({ name }: Sent) => ({ name: await shelf.add(textOf(name), newWorkbookFile()) }),
    demo: async () => ({ name: await shelf.add(DEMO_NAME, newWorkbookFile({ start: 'demo' })) }),
    halfLaid: async () => ({ name: await shelf.add(HALF_LAID_NAME, newWorkbookFile({ start: 'half laid' })) }),
    async bringIn({ name, from, data }: Sent) {
      const file = newWorkbookFile({ from: textOf(from ?? ''), data: dataOf(data) });
      return { name: await shelf.add(nameFrom(textOf(name), 'Workbook'), file) };
    },
    /** The workbook that was made from a file with this fingerprint, or ''. */
    async madeFrom({ from }: Sent) {
      for (const { name } of await shelf.list()) {
        const file = await shelf.read(name).catch(() => undefined);
        if (file?.from === from) return { name };
      }
      return { name: '' };
    },
    takeFromBin: async ({ id }: Sent) => ({ name: await shelf.takeFromBin(textOf(id)) }),
  };
}

function deskActions(shelf: Shelf, desk: Desk) {
  return {
    revision: async ({ name }: Sent) => ({ revision: await desk.revision(textOf(name)) }),
    async takeWhole({ name, data, seen }: Sent) {
      const revisions = Array.isArray(seen) ? seen.map(String) : [];
      return { accepted: await desk.takeWhole(textOf(name), dataOf(data), revisions) };
    },
    async copy({ name }: Sent) {
      await desk.flush();
      const file = await shelf.read(textOf(name));
      const taken = (await shelf.list()).map((entry) => entry.name);
      const copy = freeName(nameFrom(`Copy of ${textOf(name)}`, 'Copy'), taken);
      return { name: await shelf.add(copy, newWorkbookFile(file)) };
    },
    rename: async ({ name, to }: Sent) => ({ name: await desk.rename(textOf(name), textOf(to)) }),
    async remove({ name }: Sent) {
      await desk.remove(textOf(name));
      return {};
    },
    earlier: async ({ name }: Sent) => ({ states: await shelf.earlier(textOf(name)) }),
    async goBack({ name, stamp }: Sent) {
      await desk.goBack(textOf(name), textOf(stamp));
      return {};
    },
  };
}

/** What the engine exported, as text. @throws ShelfProblem when it is not that */
function dataOf(data: unknown): string {
  const text = typeof data === 'object' && data !== null ? JSON.stringify(data) : '';
  revisionOf({ data: text || '{}', changes: [] });
  return text;
}

function textOf(value: unknown): string {
  if (typeof value === 'string') return value;
  throw new ShelfProblem('The page sent something that is not a name.');
}
