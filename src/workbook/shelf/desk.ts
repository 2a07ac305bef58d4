/**
 * The workbooks that are open in some window. A window sends each change as the engine's message; the desk puts the
 * changes of all windows into one order, passes them on and has the workbook saved.
 */
import { ShelfProblem } from './problem';
import type { Shelf } from './shelf';
import { revisionOf, type Start, type WorkbookFile } from './workbookFile';

/** What a window is told. */
export type DeskNews =
  /** A message of the engine, as text: another window's change, or its own come back as accepted. */
  | { readonly kind: 'engine'; readonly message: string }
  /** Everything up to this revision is on the disk. */
  | { readonly kind: 'saved'; readonly revision: string }
  | { readonly kind: 'not saved'; readonly text: string }
  /** The workbook was replaced as a whole: load it again. */
  | { readonly kind: 'reload' }
  | { readonly kind: 'renamed'; readonly to: string }
  | { readonly kind: 'removed' };

export type Listener = (news: DeskNews) => void;

/** A workbook as a window opens it. */
export interface OpenedWorkbook {
  readonly start: Start;
  readonly data: string;
  readonly changes: readonly string[];
}

export interface Desk {
  open(name: string): Promise<OpenedWorkbook>;
  /**
   * Takes in one message of the engine.
   *
   * @returns whether it came in time: a change made before another window's change was known is to be sent again
   */
  take(name: string, message: string): Promise<boolean>;
  /**
   * Takes in the whole of a workbook from a window that went on alone while the program stood still.
   *
   * @param seen the revisions that it has gone through
   * @returns false when another window has changed the workbook since
   */
  takeWhole(name: string, data: string, seen: readonly string[]): Promise<boolean>;
  /** The engine's name of the latest state. */
  revision(name: string): Promise<string>;
  /**
   * Tells a window of everything from a revision on.
   *
   * @returns what stops it
   */
  listen(name: string, since: string, listener: Listener): Promise<() => void>;
  rename(name: string, to: string): Promise<string>;
  remove(name: string): Promise<void>;
  goBack(name: string, stamp: string): Promise<void>;
  /** Saves everything that waits. */
  flush(): Promise<void>;
}

/** How long a change waits for others before it is saved, and how long until saving is tried again. */
const SAVE_AFTER_MS = 250;
const RETRY_AFTER_MS = 1_000;

interface OpenBook {
  name: string;
  file: WorkbookFile;
  revision: string;
  readonly listeners: Set<Listener>;
  /** Changed since it was last saved. */
  isDirty: boolean;
  timer: NodeJS.Timeout | undefined;
  saving: Promise<void>;
}

export function createDesk(shelf: Shelf): Desk {
  const books = new Map<string, Promise<OpenBook>>();
  const bookOf = (name: string) => {
    const key = name.toLowerCase();
    const found = books.get(key) ?? load(shelf, name);
    books.set(key, found);
    found.catch(() => books.delete(key));
    return found;
  };
  const moved = (from: string, book: OpenBook, to: string) => {
    books.delete(from.toLowerCase());
    books.set(to.toLowerCase(), Promise.resolve(book));
  };
  return {
    async open(name) {
      const { start, data, changes } = (await bookOf(name)).file;
      return { start, data, changes };
    },
    take: async (name, message) => take(shelf, await bookOf(name), message),
    takeWhole: async (name, data, seen) => takeWhole(shelf, await bookOf(name), data, seen),
    revision: async (name) => (await bookOf(name)).revision,
    listen: async (name, since, listener) => listen(await bookOf(name), since, listener),
    async rename(name, to) {
      const book = await bookOf(name);
      await saved(shelf, book);
      const renamed = await shelf.rename(name, to);
      book.name = renamed;
      moved(name, book, renamed);
      tell(book, { kind: 'renamed', to: renamed });
      return renamed;
    },
    async remove(name) {
      const book = await bookOf(name).catch(() => undefined);
      if (book) await saved(shelf, book);
      await shelf.remove(name);
      books.delete(name.toLowerCase());
      if (book) tell(book, { kind: 'removed' });
    },
    async goBack(name, stamp) {
      const book = await bookOf(name).catch(() => undefined);
      if (book) await saved(shelf, book);
      const file = await shelf.goBack(name, stamp);
      if (book) replace(book, file);
    },
    async flush() {
      for (const book of books.values()) {
        const opened = await book.catch(() => undefined);
        if (opened) await saved(shelf, opened);
      }
    },
  };
}

async function load(shelf: Shelf, name: string): Promise<OpenBook> {
  const file = await shelf.read(name);
  return {
    name,
    file,
    revision: revisionOf(file),
    listeners: new Set(),
    isDirty: false,
    timer: undefined,
    saving: Promise.resolve(),
  };
}

function tell(book: OpenBook, news: DeskNews): void {
  for (const listener of book.listeners) listener(news);
}

interface EngineMessage {
  readonly type: string;
  readonly serverRevisionId?: string;
  readonly nextRevisionId?: string;
  readonly data?: object;
}

function take(shelf: Shelf, book: OpenBook, text: string): boolean {
  const message = messageIn(text);
  // Where the cursor of another window stands: nothing of the workbook itself.
  if (message.type.startsWith('CLIENT_')) {
    tell(book, { kind: 'engine', message: text });
    return true;
  }
  if (message.serverRevisionId !== book.revision || !message.nextRevisionId) return false;
  if (message.type === 'SNAPSHOT' && !message.data)
    throw new ShelfProblem('The page sent something that is not a workbook.');
  book.revision = message.nextRevisionId;
  if (message.type === 'SNAPSHOT') takeSnapshot(book, message);
  else {
    book.file = { ...book.file, changes: [...book.file.changes, text] };
    tell(book, { kind: 'engine', message: text });
  }
  saveSoon(shelf, book);
  return true;
}

function messageIn(text: string): EngineMessage {
  try {
    const message = JSON.parse(text) as EngineMessage | null;
    if (typeof message?.type === 'string') return message;
  } catch {
    // Said below.
  }
  throw new ShelfProblem('The page sent something that is not a change of a workbook.');
}

/** The whole workbook in the place of its changes; windows forget what could be undone, as the engine wants it. */
function takeSnapshot(book: OpenBook, { data, serverRevisionId, nextRevisionId }: EngineMessage): void {
  book.file = { ...book.file, data: JSON.stringify(data), changes: [] };
  const created = { type: 'SNAPSHOT_CREATED', version: 1, serverRevisionId, nextRevisionId };
  tell(book, { kind: 'engine', message: JSON.stringify(created) });
}

function takeWhole(shelf: Shelf, book: OpenBook, data: string, seen: readonly string[]): boolean {
  if (!seen.includes(book.revision)) return false;
  replace(book, { ...book.file, data, changes: [] });
  saveSoon(shelf, book);
  return true;
}

function replace(book: OpenBook, file: WorkbookFile): void {
  book.revision = revisionOf(file);
  book.file = file;
  tell(book, { kind: 'reload' });
}

function listen(book: OpenBook, since: string, listener: Listener): () => void {
  const { changes } = book.file;
  const known = changes.findIndex((change) => messageIn(change).nextRevisionId === since);
  const isStart = since === revisionOf({ ...book.file, changes: [] });
  if (known < 0 && !isStart) listener({ kind: 'reload' });
  else for (const message of changes.slice(known + 1)) listener({ kind: 'engine', message });
  if (!book.isDirty) listener({ kind: 'saved', revision: book.revision });
  book.listeners.add(listener);
  return () => void book.listeners.delete(listener);
}

function saveSoon(shelf: Shelf, book: OpenBook, delay = SAVE_AFTER_MS): void {
  book.isDirty = true;
  book.timer ??= setTimeout(() => {
    book.timer = undefined;
    book.saving = book.saving.then(() => save(shelf, book));
  }, delay);
}

async function save(shelf: Shelf, book: OpenBook): Promise<void> {
  if (!book.isDirty) return;
  const { file, revision } = book;
  book.isDirty = false;
  try {
    await shelf.save(book.name, file);
    tell(book, { kind: 'saved', revision });
  } catch (failure) {
    book.isDirty = true;
    tell(book, { kind: 'not saved', text: (failure as Error).message });
    saveSoon(shelf, book, RETRY_AFTER_MS);
  }
}

/** Waits until nothing is left to save. @throws ShelfProblem when the disk does not take it */
async function saved(shelf: Shelf, book: OpenBook): Promise<void> {
  clearTimeout(book.timer);
  book.timer = undefined;
  book.saving = book.saving.then(() => save(shelf, book));
  await book.saving;
  if (book.isDirty) throw new ShelfProblem(`"${book.name}" could not be saved: try again in a moment.`, 507);
}
