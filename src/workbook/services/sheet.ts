import type { Axis, Edit, EngineTab, Zone } from '../engine';
import { zoneOfA1 } from './a1';
import { type Book, extrasOf, placeOfKey, tabName } from './book';
import { engineConditionalRule } from './conditionalFormat';
import { metadataMembers } from './developerMetadata';
import { filterOf } from './filter';
import { protection, protectionOf } from './protection';
import { placeOf, rangeOf } from './range';
import { strict } from './strict';
import { renameTab } from './tabNames';

type Sheet = GoogleAppsScript.Spreadsheet.Sheet;
type Range = GoogleAppsScript.Spreadsheet.Range;
type ConditionalFormatRule = GoogleAppsScript.Spreadsheet.ConditionalFormatRule;

/** A tab as the script sees it, and what its parts share. */
interface TabPlace {
  readonly book: Book;
  readonly tabId: string;
  readonly self: () => Sheet;
  /** As it is now. @throws Error when the tab is gone */
  readonly tab: () => EngineTab;
  readonly edit: (...edits: Edit[]) => Sheet;
}

const tabIds = new WeakMap<object, string>();

/** The engine's id of a tab. @throws Error when it is no tab of an embedded workbook */
export function tabIdOf(sheet: Sheet): string {
  const tabId = tabIds.get(sheet);
  if (tabId === undefined) throw new Error('The embedded workbook was given something that is not a tab of its own');
  return tabId;
}

export function sheetOf(book: Book, tabId: string): Sheet {
  const place: TabPlace = {
    book,
    tabId,
    self: () => sheet,
    tab: () => {
      const tab = book.engine.tabs().find(({ id }) => id === tabId);
      if (!tab) throw new Error(`Sheet ${extrasOf(book, tabId).gid} not found`);
      return tab;
    },
    edit: (...edits) => {
      book.engine.apply(edits);
      return sheet;
    },
  };
  const sheet: Sheet = strict<Sheet>(book, 'Sheet', {
    ...sheetIdentity(place),
    ...sheetCells(place),
    ...sheetShape(place),
    ...sheetLooks(place),
    ...sheetRules(place),
    ...metadataMembers(book, tabId, () => sheet),
  });
  tabIds.set(sheet, tabId);
  return sheet;
}

function sheetIdentity({ book, tabId, self, tab, edit }: TabPlace) {
  return {
    getName: () => tabName(book, tab().id),
    setName: (name: string) => {
      renameTab(book, tab().id, name);
      return self();
    },
    getSheetName: () => tabName(book, tab().id),
    getSheetId: () => extrasOf(book, tabId).gid,
    getIndex: () => book.engine.tabs().findIndex(({ id }) => id === tabId) + 1,
    getParent: () => book.objects.spreadsheet(),
    isSheetHidden: () => tab().hidden,
    hideSheet: () => edit({ kind: 'tab visibility', tabId, visible: false }),
    showSheet: () => edit({ kind: 'tab visibility', tabId, visible: true }),
    activate: () => {
      book.engine.activate(tabId);
      return self();
    },
    copyTo: (_: GoogleAppsScript.Spreadsheet.Spreadsheet) => duplicate(book, tab()),
  } satisfies Partial<Sheet>;
}

/** A copy of a tab at the end, without its marks: whether the platform copies them is not documented. */
function duplicate(book: Book, { id, name }: EngineTab): Sheet {
  const newId = `${id}-copy-${book.engine.tabs().length}`;
  book.engine.apply([{ kind: 'duplicate tab', tabId: id, newId, name: `Copy of ${name}` }]);
  return sheetOf(book, newId);
}

function sheetCells(place: TabPlace) {
  const { book, tabId, self } = place;
  const last = () => book.engine.used(tabId);
  return {
    getRange: (...args: readonly unknown[]): Range => rangeOf(book, tabId, zoneFrom(place, args)),
    getDataRange: () => {
      const { row, column } = last();
      return rangeOf(book, tabId, { top: 0, left: 0, bottom: Math.max(row, 0), right: Math.max(column, 0) });
    },
    getLastRow: () => last().row + 1,
    getLastColumn: () => last().column + 1,
    clear: () => {
      rangeOf(book, tabId, wholeTab(place)).clear();
      return self();
    },
    clearContents: () => {
      rangeOf(book, tabId, wholeTab(place)).clearContent();
      return self();
    },
    clearFormats: () => {
      rangeOf(book, tabId, wholeTab(place)).clearFormat();
      return self();
    },
    appendRow: (values: unknown[]) => {
      const row = last().row + 1;
      if (row >= place.tab().rowCount) insertLines(place, 'rows', row, 1);
      rangeOf(book, tabId, { top: row, left: 0, bottom: row, right: values.length - 1 }).setValues([values]);
      return self();
    },
  } satisfies Partial<Sheet>;
}

function wholeTab({ tab }: TabPlace): Zone {
  return { top: 0, left: 0, bottom: tab().rowCount - 1, right: tab().columnCount - 1 };
}

/** The four ways to name a range: an address, or a first cell with up to two counts. */
function zoneFrom({ tab }: TabPlace, args: readonly unknown[]): Zone {
  const { rowCount, columnCount } = tab();
  if (typeof args[0] === 'string') {
    const zone = zoneOfA1(args[0].slice(args[0].lastIndexOf('!') + 1), { rowCount, columnCount });
    if (!zone || zone.bottom >= rowCount || zone.right >= columnCount) throw new Error('Range not found');
    return zone;
  }
  const [row, column, height = 1, width = 1] = args.map(Number) as [number, number, number?, number?];
  if (!(row >= 1)) throw new Error('The starting row of the range is too small.');
  if (!(column >= 1)) throw new Error('The starting column of the range is too small.');
  if (!(height >= 1)) throw new Error('The number of rows in the range must be at least 1.');
  if (!(width >= 1)) throw new Error('The number of columns in the range must be at least 1.');
  const zone = { top: row - 1, left: column - 1, bottom: row + height - 2, right: column + width - 2 };
  if (zone.bottom >= rowCount || zone.right >= columnCount) {
    throw new Error('The coordinates of the range are outside the dimensions of the sheet.');
  }
  return zone;
}

/** Rows and columns: how many, how large, which stay in view. The platform counts them from 1. */
function sheetShape(place: TabPlace) {
  const { book, tabId, tab, edit } = place;
  const resize = (axis: Axis, first: number, count: number, pixels: number | null) =>
    edit({ kind: 'resize', tabId, axis, first: first - 1, count, pixels });
  const insert = (axis: Axis, first: number, count: number) => insertLines(place, axis, first, count);
  const remove = (axis: Axis, first: number, count: number) =>
    edit({ kind: 'delete', tabId, axis, first: first - 1, count });
  /** Words from a report: github.com/google/ads-account-structure-script, issue 2. */
  const freeze = (axis: Axis, count: number) => {
    const lines = axis === 'rows' ? tab().rowCount : tab().columnCount;
    const isShown = (index: number) => !book.engine.isHidden(tabId, axis, index);
    if (count > 0 && !Array.from({ length: lines - count }, (_, i) => count + i).some(isShown)) {
      throw new Error(`You can't freeze all visible ${axis} on the sheet.`);
    }
    edit({ kind: 'freeze', tabId, axis, count });
  };
  return {
    getMaxRows: () => tab().rowCount,
    getMaxColumns: () => tab().columnCount,
    insertRowsAfter: (after: number, count: number) => insert('rows', after, count),
    insertRowsBefore: (before: number, count: number) => insert('rows', before - 1, count),
    insertColumnsAfter: (after: number, count: number) => insert('columns', after, count),
    insertColumnsBefore: (before: number, count: number) => insert('columns', before - 1, count),
    deleteRows: (first: number, count: number) => void remove('rows', first, count),
    deleteColumns: (first: number, count: number) => void remove('columns', first, count),
    hideRows: (first: number, count: number = 1) =>
      void edit({ kind: 'hide', tabId, axis: 'rows', first: first - 1, count }),
    showRows: (first: number, count: number = 1) =>
      void edit({ kind: 'show', tabId, axis: 'rows', first: first - 1, count }),
    hideColumns: (first: number, count: number = 1) =>
      void edit({ kind: 'hide', tabId, axis: 'columns', first: first - 1, count }),
    showColumns: (first: number, count: number = 1) =>
      void edit({ kind: 'show', tabId, axis: 'columns', first: first - 1, count }),
    getFilter: () => (book.engine.filters(tabId).length > 0 ? filterOf(book, tabId) : null),
    getFrozenRows: () => book.engine.frozen(tab().id).rows,
    getFrozenColumns: () => book.engine.frozen(tab().id).columns,
    setFrozenRows: (count: number) => freeze('rows', count),
    setFrozenColumns: (count: number) => freeze('columns', count),
    getColumnWidth: (column: number) => book.engine.columnWidth(tabId, column - 1),
    setColumnWidth: (column: number, width: number) => resize('columns', column, 1, width),
    setColumnWidths: (first: number, count: number, width: number) => resize('columns', first, count, width),
    autoResizeColumn: (column: number) => resize('columns', column, 1, null),
    autoResizeColumns: (first: number, count: number) => resize('columns', first, count, null),
    getRowHeight: (row: number) => book.engine.rowHeight(tabId, row - 1),
    setRowHeight: (row: number, height: number) => resize('rows', row, 1, height),
    setRowHeights: (first: number, count: number, height: number) => resize('rows', first, count, height),
    setRowHeightsForced: (first: number, count: number, height: number) => resize('rows', first, count, height),
    autoResizeRows: (first: number, count: number) => resize('rows', first, count, null),
  } satisfies Partial<Sheet>;
}

/** Notes and marks of cells move with the rows and columns that move. @param first index from 0 of the first new one */
function insertLines({ book, tabId, edit }: TabPlace, axis: Axis, first: number, count: number): Sheet {
  const { notes, plainText } = extrasOf(book, tabId);
  const moved = (key: string) => {
    const [row, column] = placeOfKey(key);
    const isRow = axis === 'rows';
    if ((isRow ? row : column) < first) return key;
    return isRow ? `${row + count},${column}` : `${row},${column + count}`;
  };
  const movedNotes = [...notes].map(([key, note]) => [moved(key), note] as const);
  const movedPlain = [...plainText].map(moved);
  notes.clear();
  plainText.clear();
  for (const [key, note] of movedNotes) notes.set(key, note);
  for (const key of movedPlain) plainText.add(key);
  return edit({ kind: 'insert', tabId, axis, first, count });
}

function sheetLooks({ book, tabId, edit }: TabPlace) {
  return {
    setTabColor: (color: string | null) => {
      extrasOf(book, tabId).tabColor = color;
      return edit({ kind: 'tab color', tabId, color });
    },
    getTabColor: () => extrasOf(book, tabId).tabColor,
    setHiddenGridlines: (hidden: boolean) => {
      extrasOf(book, tabId).gridlinesHidden = hidden;
      return edit({ kind: 'gridlines', tabId, visible: !hidden });
    },
    hasHiddenGridlines: () => extrasOf(book, tabId).gridlinesHidden,
  } satisfies Partial<Sheet>;
}

function sheetRules({ book, tabId, edit }: TabPlace) {
  const extras = extrasOf(book, tabId);
  return {
    protect: () => protection(book, tabId, null),
    getProtections: (type: unknown) =>
      extras.protections
        .filter((entry) => (entry.zone === null) === (String(type) === 'SHEET'))
        .map((entry) => protectionOf(book, tabId, entry)),
    getConditionalFormatRules: () => [...extras.conditionalRules],
    setConditionalFormatRules: (rules: ConditionalFormatRule[]) => {
      const elsewhere = rules.flatMap((rule) => rule.getRanges()).find((range) => placeOf(range).tabId !== tabId);
      if (elsewhere) throw new Error('Conditional format rule cannot reference a different sheet.');
      extras.conditionalRules = [...rules];
      edit({ kind: 'conditional formats', tabId, rules: rules.map(engineConditionalRule) });
    },
  } satisfies Partial<Sheet>;
}
