/**
 * The built script in an imitation of the platform that others wrote (`gas-digital-twin`, MIT), to be held against our embedded
 * spreadsheet. Theirs keeps cells and notes, in tabs by name. What it has not is put in here in the plainest way, and every
 * call is counted by who answers it, so that a test can say how much of the platform below it is really theirs.
 */
import { createSpreadsheet, loadGsCode, SpreadsheetApp, setup, teardown, Utilities } from 'gas-digital-twin';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;
type App = GoogleAppsScript.Spreadsheet.SpreadsheetApp;
type TheirSpreadsheet = ReturnType<typeof SpreadsheetApp.openById>;
type TheirSheet = ReturnType<TheirSpreadsheet['getSheets']>[number];
type Members = Readonly<Record<string, (...given: never[]) => unknown>>;

export interface OthersImitation {
  /** As the page calls the script: arguments and answer pass as text. */
  readonly runFromPage: (functionName: string, args: readonly unknown[]) => unknown;
  readonly spreadsheet: () => Spreadsheet;
  readonly answered: Answered;
}

/** How often each call was answered, such as `Range.setValues` -> 3. */
export interface Answered {
  readonly byThem: Map<string, number>;
  readonly byUs: Map<string, number>;
}

/** What is kept here because they have no place for it. */
interface Kept {
  active: TheirSheet | null;
  marks: { readonly sheet: TheirSheet; readonly key: string; value: string }[];
  readonly sizes: Map<TheirSheet, { rows: number; columns: number }>;
  readonly answered: Answered;
}

const WORKBOOK = 'their-workbook';
/** Size of a new tab on the platform; theirs have none. */
const NEW_TAB = { rows: 1000, columns: 26 };
/** Their classes, by the platform's names. */
const SERVICES: Readonly<Record<string, string>> = {
  SpreadsheetHandle: 'Spreadsheet',
  InMemorySheet: 'Sheet',
  InMemoryRange: 'Range',
};
const BEHIND = Symbol('what a service stands for');

/** There is one at a time: a new one takes the place of the last. @param code the built script */
export function othersImitation(code: string): OthersImitation {
  const answered: Answered = { byThem: new Map(), byUs: new Map() };
  const kept: Kept = { active: null, marks: [], sizes: new Map(), answered };
  const app = service(kept, 'SpreadsheetApp', SpreadsheetApp) as App;
  setup();
  Object.assign(globalThis, { SpreadsheetApp: app, Utilities: service(kept, 'Utilities', Utilities) });
  const script = loadGsCode(code, 'Code.js').exports;
  teardown();
  createSpreadsheet(WORKBOOK, 'Plank Ledger', { Sheet1: [] });
  const lock = putIn(kept, 'Lock', { tryLock: () => true, releaseLock: () => {} });
  const LockService = putIn(kept, 'LockService', { getDocumentLock: () => lock });
  return {
    answered,
    spreadsheet: () => app.getActiveSpreadsheet(),
    runFromPage: (name, args) => {
      // Their loader knows no locks: the script finds this one among the globals while it runs.
      Object.assign(globalThis, { LockService });
      try {
        return asText(script[name](...(asText(args) as unknown[])));
      } finally {
        Reflect.deleteProperty(globalThis, 'LockService');
      }
    },
  };
}

function asText(value: unknown): unknown {
  return value === undefined ? undefined : JSON.parse(JSON.stringify(value));
}

/** A service of theirs, which answers by itself unless something is put in for it. */
function service(kept: Kept, name: string, theirs: object, ours: Members = {}): object {
  return new Proxy(theirs, {
    get(_, member) {
      if (member === BEHIND) return theirs;
      if (typeof member === 'symbol') return undefined;
      const counts = Object.hasOwn(ours, member) ? kept.answered.byUs : kept.answered.byThem;
      const answer = (Object.hasOwn(ours, member) ? ours : (theirs as Members))[member];
      if (typeof answer !== 'function') throw new Error(`Nobody answers ${name}.${member}`);
      return (...given: unknown[]) => {
        counts.set(`${name}.${member}`, (counts.get(`${name}.${member}`) ?? 0) + 1);
        return passed(kept, answer.apply(theirs, given.map(behind) as never[]));
      };
    },
  });
}

/** A service they have not. */
function putIn(kept: Kept, name: string, members: Members): object {
  return service(kept, name, {}, members);
}

/** What is answered: objects of theirs as services, anything else as it is. */
function passed(kept: Kept, value: unknown): unknown {
  if (Array.isArray(value)) return serviceName(value[0]) ? value.map((one) => passed(kept, one)) : value;
  const name = serviceName(value);
  if (name === 'Spreadsheet') return service(kept, name, value as object, spreadsheetMembers(kept, value as never));
  if (name === 'Sheet') return service(kept, name, value as object, sheetMembers(kept, value as never));
  if (name === 'Range') return service(kept, name, value as object, rangeMembers(value as never));
  return value;
}

function serviceName(value: unknown): string | undefined {
  return typeof value === 'object' && value !== null ? SERVICES[value.constructor.name] : undefined;
}

function behind(given: unknown): unknown {
  return (given as Readonly<Record<symbol, unknown>> | null | undefined)?.[BEHIND] ?? given;
}

function spreadsheetMembers(kept: Kept, theirs: TheirSpreadsheet): Members {
  return {
    getActiveSheet: () => kept.active ?? theirs.getSheets()[0],
    setActiveSheet: (sheet: TheirSheet) => {
      kept.active = sheet;
    },
    deleteSheet: (sheet: TheirSheet) => {
      theirs._entry.sheets.delete(sheet.name);
      kept.marks = kept.marks.filter((mark) => mark.sheet !== sheet);
    },
    getSpreadsheetLocale: () => 'en_US',
    getSpreadsheetTimeZone: () => 'Etc/UTC',
    createDeveloperMetadataFinder: () => finderOf(kept),
  };
}

function finderOf(kept: Kept): object {
  const wanted: { key?: string; value?: string } = {};
  const finder: object = putIn(kept, 'DeveloperMetadataFinder', {
    withKey: (key: string) => Object.assign(wanted, { key }) && finder,
    withValue: (value: string) => Object.assign(wanted, { value }) && finder,
    find: () => {
      const found = kept.marks.filter(({ key, value }) => key === wanted.key && value === (wanted.value ?? value));
      return found.map((mark) => metadataOf(kept, mark));
    },
  });
  return finder;
}

function metadataOf(kept: Kept, mark: Kept['marks'][number]): object {
  return putIn(kept, 'DeveloperMetadata', {
    getKey: () => mark.key,
    getValue: () => mark.value,
    setValue: (value: string) => {
      mark.value = value;
    },
    getLocation: () => putIn(kept, 'DeveloperMetadataLocation', { getSheet: () => mark.sheet }),
  });
}

function sheetMembers(kept: Kept, theirs: TheirSheet): Members {
  const size = kept.sizes.get(theirs) ?? { ...NEW_TAB };
  kept.sizes.set(theirs, size);
  return {
    setName: (name: string) => rename(theirs, name),
    addDeveloperMetadata: (key: string, value: string) => void kept.marks.push({ sheet: theirs, key, value }),
    getDeveloperMetadata: () =>
      kept.marks.filter((mark) => mark.sheet === theirs).map((mark) => metadataOf(kept, mark)),
    getMaxRows: () => size.rows,
    getMaxColumns: () => size.columns,
    insertRowsAfter: (_: number, count: number) => void Object.assign(size, { rows: size.rows + count }),
    insertColumnsAfter: (_: number, count: number) => void Object.assign(size, { columns: size.columns + count }),
    getFilter: () => null,
    ...nothing(['setColumnWidths', 'setRowHeightsForced', 'setHiddenGridlines', 'showRows', 'showColumns']),
  };
}

/** Their tabs go by their names: the others keep their places. */
function rename(sheet: TheirSheet, name: string): void {
  const { sheets } = SpreadsheetApp.openById(WORKBOOK)._entry;
  sheet.name = name;
  const renamed = [...sheets.values()];
  sheets.clear();
  for (const one of renamed) sheets.set(one.name, one);
}

/** Their cells keep a formula as its text, and `getFormulas` answers with blanks. Looks are kept nowhere. */
function rangeMembers(theirs: { getValues(): unknown[][] }): Members {
  const formula = (value: unknown) => (typeof value === 'string' && value.startsWith('=') ? value : '');
  return {
    getFormulas: () => theirs.getValues().map((row) => row.map(formula)),
    ...nothing(['setNumberFormats', 'setBackgrounds', 'setFontColors', 'setFontWeights', 'setFontSizes', 'setWraps']),
    ...nothing(['setHorizontalAlignments', 'setVerticalAlignment', 'setDataValidations', 'clearDataValidations']),
    ...nothing(['breakApart']),
  };
}

function nothing(names: readonly string[]): Members {
  return Object.fromEntries(names.map((name) => [name, () => {}]));
}
