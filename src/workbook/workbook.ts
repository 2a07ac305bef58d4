/** FRONT DOOR of the embedded workbook: a built add-on in a spreadsheet of its own. */
import { isPrivate, legalArguments, legalResult } from './boundary';
import { findCellFunctions, passInput, takeAnswer } from './customFunctions';
import type { Engine } from './engine';
import { type ScriptRuntime, TIME_LIMITS, TimeLimitError } from './runtime';
import { createAccess } from './services/access';
import type { Book, BookSettings, HtmlPage, LockHolder, LockName, MenuEntry } from './services/book';
import { htmlService } from './services/html';
import { readBookTexts, textsOfBook } from './services/keptBook';
import { lockService } from './services/lock';
import { propertiesService } from './services/properties';
import { rangeOf } from './services/range';
import { sheetOf } from './services/sheet';
import { spreadsheetOf } from './services/spreadsheet';
import { spreadsheetApp } from './services/spreadsheetApp';
import { loggers, sessionService, utilitiesService } from './services/surroundings';

/** The built files of the add-on. */
export interface AddOn {
  readonly code: string;
  /** Pages by name without extension, such as `Sidebar`. */
  readonly pages: Readonly<Record<string, string>>;
}

export interface WorkbookOptions {
  readonly engine: Engine;
  readonly runtime: ScriptRuntime;
  readonly addOn: AddOn;
  readonly settings: BookSettings;
  /** Told whenever the script puts something on the screen. */
  readonly onScreen?: () => void;
  /** How long a custom function may take, ms; the platform's own limit unless a test asks for less. */
  readonly customFunctionLimit?: number;
}

/** What is on the screen beside the grid. */
export interface ScreenState {
  readonly toasts: { readonly message: string; readonly title: string }[];
  readonly alerts: { readonly title: string; readonly text: string }[];
  menu: MenuEntry | null;
  sidebar: HtmlPage | null;
  dialog: HtmlPage | null;
}

export interface Workbook {
  readonly engine: Engine;
  readonly screen: ScreenState;
  /** Lines the script wrote to its log. */
  readonly log: readonly string[];
  readonly spreadsheetApp: GoogleAppsScript.Spreadsheet.SpreadsheetApp;
  /** A spreadsheet opens: the menu is built. @param enabled false before an add-on is enabled in the spreadsheet */
  open(enabled?: boolean): void;
  /** A person picks an item of the menu. */
  choose(functionName: string): void;
  /** The sidebar calls through google.script.run: arguments and answer are checked copies. */
  runFromPage(functionName: string, args: readonly unknown[]): unknown;
  /** Saves with the workbook what its services keep. Done after every run; ask for it after calls from outside. */
  keep(): void;
  /** Service calls since the count was last set back, such as `Range.setValues` -> 3. */
  calls(): Readonly<Record<string, number>>;
  resetCalls(): void;
  /** Another person's run takes or gives back a lock. */
  setLock(name: LockName, holder: LockHolder): void;
}

/** Loads the add-on into an engine. Its custom functions answer in cells from then on. */
export function createWorkbook(options: WorkbookOptions): Workbook {
  const { engine, runtime, addOn } = options;
  const screen: ScreenState = { toasts: [], alerts: [], menu: null, sidebar: null, dialog: null };
  const log: string[] = [];
  const book = createBook(options, screen);
  const keep = keepingOf(book);
  const app = spreadsheetApp(book);
  book.access.within('loading', () => runtime.load(addOn.code, servicesOf(book, app, log)));
  defineCustomFunctions(book, options);
  engine.recalculate();
  const run = (name: string, args: readonly unknown[], limit: number) => {
    try {
      return runtime.call(name, args, limit);
    } finally {
      // What a script wrote before it failed stands, as on the platform.
      engine.flush();
      keep();
    }
  };
  return {
    engine,
    screen,
    log,
    spreadsheetApp: app,
    open(enabled = true) {
      const event = { authMode: enabled ? 'LIMITED' : 'NONE' };
      book.access.within(enabled ? 'full' : 'none', () => run('onOpen', [event], TIME_LIMITS.simpleTrigger));
    },
    choose: (functionName) => void run(functionName, [], TIME_LIMITS.script),
    runFromPage(functionName, args) {
      if (isPrivate(functionName) || !runtime.has(functionName)) {
        throw new Error(`Script function not found: ${functionName}`);
      }
      const answer = run(functionName, legalArguments(functionName, args), TIME_LIMITS.script);
      return legalResult(functionName, answer);
    },
    keep,
    calls: () => book.access.calls(),
    resetCalls: () => book.access.resetCalls(),
    setLock: (name, holder) => {
      book.locks[name] = holder;
    },
  };
}

/** Reads what was saved, follows what other windows change, and answers what saves the book as it stands. */
function keepingOf(book: Book): () => void {
  const { engine } = book;
  let seen: Readonly<Record<string, string>> = {};
  let isKeeping = false;
  const read = () => {
    // The engine tells of each text as it is kept: nothing is read back half way.
    if (isKeeping) return;
    const kept = { ...engine.kept() };
    const isSame = Object.keys({ ...kept, ...seen }).every((name) => kept[name] === seen[name]);
    if (isSame) return;
    seen = kept;
    readBookTexts(book, kept);
  };
  read();
  engine.onChange(read);
  return () => {
    const texts = textsOfBook(book);
    isKeeping = true;
    for (const name of Object.keys({ ...seen, ...texts })) {
      if (texts[name] !== seen[name]) engine.keep(name, texts[name]);
    }
    isKeeping = false;
    seen = { ...engine.kept() };
  };
}

function createBook({ engine, runtime, addOn, settings, onScreen }: WorkbookOptions, screen: ScreenState): Book {
  const shown = (change: () => void) => {
    change();
    onScreen?.();
  };
  const book: Book = {
    engine,
    settings,
    access: createAccess(),
    properties: { document: new Map(), user: new Map(), script: new Map() },
    locks: { document: 'nobody', user: 'nobody', script: 'nobody' },
    extras: new Map(),
    metadata: [],
    namedRanges: new Map(),
    htmlFiles: new Map(Object.entries(addOn.pages)),
    inside: (value) => runtime.inside(value),
    screen: {
      toast: (message, title) => shown(() => screen.toasts.push({ message, title })),
      alert: (title, text) => shown(() => screen.alerts.push({ title, text })),
      showSidebar: (page) => shown(() => (screen.sidebar = page)),
      showDialog: (page) => shown(() => (screen.dialog = page)),
      setMenu: (menu) => shown(() => (screen.menu = menu)),
    },
    objects: {
      spreadsheet: () => spreadsheetOf(book),
      sheet: (tabId) => sheetOf(book, tabId),
      range: (tabId, zone) => rangeOf(book, tabId, zone),
    },
  };
  return book;
}

/** Everything global that the script finds, by name. */
function servicesOf(book: Book, app: GoogleAppsScript.Spreadsheet.SpreadsheetApp, log: string[]) {
  return {
    SpreadsheetApp: app,
    HtmlService: htmlService(book),
    PropertiesService: propertiesService(book),
    LockService: lockService(book),
    Session: sessionService(book),
    Utilities: utilitiesService(book),
    ...loggers(book, log),
  };
}

function defineCustomFunctions(book: Book, { engine, runtime, addOn, customFunctionLimit }: WorkbookOptions): void {
  for (const definition of findCellFunctions(addOn.code)) {
    engine.defineFunction({
      ...definition,
      compute: (inputs) => {
        try {
          const { timeZone } = book.settings;
          const args = inputs.map((input) => passInput(input, timeZone));
          const limit = customFunctionLimit ?? TIME_LIMITS.customFunction;
          const call = () => runtime.call(definition.name, args, limit);
          return takeAnswer(book.access.within('custom function', call), timeZone);
        } catch (error) {
          return { error: cellMessage(error) };
        }
      },
    });
  }
}

/** What the platform shows when a person points at the failed cell. */
function cellMessage(error: unknown): string {
  if (error instanceof TimeLimitError) return 'Exceeded maximum execution time (line 0).';
  const { name = 'Error', message } = (error ?? {}) as { readonly name?: string; readonly message?: string };
  return message === undefined ? String(error) : `${name}: ${message}`;
}
