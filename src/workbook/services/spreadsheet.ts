import { type Book, extrasOf, tabName } from './book';
import { metadataMembers } from './developerMetadata';
import { placeOf, rangeOf } from './range';
import { sheetOf, tabIdOf } from './sheet';
import { strict } from './strict';
import { checkFreeName, freeName, shownName } from './tabNames';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;
type Sheet = GoogleAppsScript.Spreadsheet.Sheet;
type Range = GoogleAppsScript.Spreadsheet.Range;

const SPREADSHEET_ID = 'embedded-workbook';
/** Size of a new tab on the platform. */
const NEW_TAB = { rows: 1000, columns: 26 };

export function spreadsheetOf(book: Book): Spreadsheet {
  const spreadsheet: Spreadsheet = strict<Spreadsheet>(book, 'Spreadsheet', {
    ...spreadsheetIdentity(book),
    ...spreadsheetTabs(book),
    ...spreadsheetRanges(book),
    ...metadataMembers(book, null, () => spreadsheet),
  });
  return spreadsheet;
}

function spreadsheetIdentity(book: Book) {
  return {
    getId: () => SPREADSHEET_ID,
    getUrl: () => `https://docs.google.com/spreadsheets/d/${SPREADSHEET_ID}/edit`,
    getName: () => book.settings.name,
    getSpreadsheetLocale: () => book.settings.locale,
    getSpreadsheetTimeZone: () => book.settings.timeZone,
    toast: (message: string, title?: unknown) => book.screen.toast(message, String(title ?? '')),
  } satisfies Partial<Spreadsheet>;
}

function spreadsheetTabs(book: Book) {
  const ids = () => book.engine.tabs().map((tab) => tab.id);
  return {
    getSheets: () => ids().map((id) => sheetOf(book, id)),
    getNumSheets: () => ids().length,
    getSheetByName: (name: string) => {
      const found = ids().find((id) => tabName(book, id).toLowerCase() === name.toLowerCase());
      return found === undefined ? null : sheetOf(book, found);
    },
    getActiveSheet: () => sheetOf(book, book.engine.activeTab()),
    setActiveSheet: (sheet: Sheet) => {
      book.engine.activate(tabIdOf(sheet));
      return sheet;
    },
    insertSheet: (...args: readonly unknown[]) => insertSheet(book, args),
    deleteSheet: (sheet: Sheet) => deleteSheet(book, tabIdOf(sheet)),
    deleteActiveSheet: () => {
      deleteSheet(book, book.engine.activeTab());
      return sheetOf(book, book.engine.activeTab());
    },
  } satisfies Partial<Spreadsheet>;
}

/** (), (name), (index), (name, index): a new tab comes to the front, after the active one unless told otherwise. */
function insertSheet(book: Book, args: readonly unknown[]): Sheet {
  const name = args.find((arg) => typeof arg === 'string') as string | undefined;
  const index = args.find((arg) => typeof arg === 'number') as number | undefined;
  if (args.some((arg) => typeof arg === 'object')) {
    throw new Error('Spreadsheet.insertSheet with options is not implemented in the embedded workbook');
  }
  const wanted = name ?? freeName(book);
  checkFreeName(book, wanted);
  // Every tab there is has its number before the new one gets the next.
  for (const tab of book.engine.tabs()) extrasOf(book, tab.id);
  const tabs = book.engine.tabs();
  const after = tabs.findIndex((tab) => tab.id === book.engine.activeTab()) + 1;
  const shown = shownName(wanted);
  const tabId = book.engine.addTab(shown, Math.min(index ?? after, tabs.length), NEW_TAB.rows, NEW_TAB.columns);
  extrasOf(book, tabId).name = { wanted, shown };
  book.engine.activate(tabId);
  return sheetOf(book, tabId);
}

function deleteSheet(book: Book, tabId: string): void {
  const tabs = book.engine.tabs();
  if (tabs.length === 1) throw new Error("You can't remove all the sheets in a document.");
  if (tabs.every(({ id, hidden }) => hidden || id === tabId)) {
    throw new Error("You can't remove all the visible sheets in a document.");
  }
  if (book.engine.activeTab() === tabId) {
    const at = tabs.findIndex((tab) => tab.id === tabId);
    book.engine.activate((tabs[at - 1] ?? tabs[at + 1])?.id ?? tabId);
  }
  book.engine.apply([{ kind: 'delete tab', tabId }]);
  book.extras.delete(tabId);
  const kept = book.metadata.filter((entry) => entry.tabId !== tabId);
  book.metadata.splice(0, book.metadata.length, ...kept);
}

function spreadsheetRanges(book: Book) {
  return {
    getRange: (a1: string) => {
      const bang = a1.lastIndexOf('!');
      const name = a1.slice(0, Math.max(bang, 0)).replace(/^'|'$/g, '').replaceAll("''", "'");
      const tab = book.engine.tabs().find(({ id }) => tabName(book, id) === name);
      if (bang >= 0 && !tab) throw new Error('Range not found');
      return sheetOf(book, tab?.id ?? book.engine.activeTab()).getRange(a1.slice(bang + 1));
    },
    getActiveRange: () => rangeOf(book, book.engine.activeTab(), book.engine.selection()),
    getRangeByName: (name: string) => {
      const found = book.namedRanges.get(name);
      return found ? rangeOf(book, found.tabId, found.zone) : null;
    },
    setNamedRange: (name: string, range: Range) => {
      const { tabId, zone } = placeOf(range);
      book.engine.apply([{ kind: 'named range', name, tabId, zone }]);
      book.namedRanges.set(name, { tabId, zone });
    },
    removeNamedRange: (name: string) => {
      if (!book.namedRanges.delete(name)) throw new Error(`The named range "${name}" does not exist.`);
      book.engine.apply([{ kind: 'remove named range', name }]);
    },
  } satisfies Partial<Spreadsheet>;
}
