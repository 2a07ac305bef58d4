/**
 * A spreadsheet in a few objects: it holds cells, takes text as if typed, counts every call, and fails where it is told
 * to. Only what the writer of tabs uses is there; anything else is not a function.
 */

export interface FakeCell {
  value: unknown;
  formula: string;
  format: string;
  looks: Record<string, unknown>;
  box: unknown;
}

export interface FakeBook {
  readonly sheets: FakeSheet[];
  readonly metadata: { key: string; value: string; sheet: FakeSheet }[];
  active: FakeSheet;
  readonly calls: Map<string, number>;
  /** Throws when this method is called for the n-th time from now. */
  failing: { method: string; countdown: number } | null;
  readonly locale: string;
}

export class FakeSheet {
  cells = new Map<string, FakeCell>();
  rowCount = 1000;
  columnCount = 26;
  frozenRows = 0;
  frozenColumns = 0;
  hasGridlines = true;
  widths: number[] = [];
  heights: number[] = [];
  constructor(
    readonly book: FakeBook,
    public name: string,
  ) {}

  at(row: number, column: number): FakeCell {
    const key = `${row},${column}`;
    const cell = this.cells.get(key) ?? { value: '', formula: '', format: 'General', looks: {}, box: null };
    this.cells.set(key, cell);
    return cell;
  }

  /** Puts rows in before a row, counted from 1. */
  insertRows(before: number, count: number): void {
    this.rowCount += count;
    const moved = [...this.cells].map(([key, cell]) => {
      const [row, column] = key.split(',').map(Number);
      return [`${row < before ? row : row + count},${column}`, cell] as const;
    });
    this.cells = new Map(moved);
  }

  /** The values of the used part, row by row. */
  values(): unknown[][] {
    const used = [...this.cells].filter(([, cell]) => cell.value !== '').map(([key]) => key.split(',').map(Number));
    const rows = Math.max(1, ...used.map(([row]) => row));
    const columns = Math.max(1, ...used.map(([, column]) => column));
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => this.at(r + 1, c + 1).value),
    );
  }
}

export function fakeBook(names: readonly string[] = ['Estimate'], locale = 'en_US'): FakeBook {
  const book: FakeBook = { sheets: [], metadata: [], active: null as never, calls: new Map(), failing: null, locale };
  for (const name of names) book.sheets.push(new FakeSheet(book, name));
  book.active = book.sheets[0];
  return book;
}

export function callCount(book: FakeBook): number {
  return [...book.calls.values()].reduce((sum, count) => sum + count, 0);
}

export function spreadsheetOf(book: FakeBook): GoogleAppsScript.Spreadsheet.Spreadsheet {
  return counted(book, 'Spreadsheet', {
    getSheets: () => book.sheets.map(sheetOf),
    getActiveSheet: () => sheetOf(book.active),
    setActiveSheet: (sheet: object) => {
      const found = book.sheets.find((candidate) => candidate === behind(sheet));
      if (!found) throw new Error('That sheet was deleted.');
      book.active = found;
    },
    getSheetByName: (name: string) => {
      const found = book.sheets.find((sheet) => sheet.name === name);
      return found ? sheetOf(found) : null;
    },
    getSpreadsheetLocale: () => book.locale,
    getId: () => 'a-book',
    insertSheet: (name: string, index: number) => {
      const sheet = new FakeSheet(book, name);
      checkName(book, name);
      book.sheets.splice(index, 0, sheet);
      book.active = sheet;
      return sheetOf(sheet);
    },
    deleteSheet: (sheet: object) => {
      const gone = behind(sheet) as FakeSheet;
      book.sheets.splice(book.sheets.indexOf(gone), 1);
      for (const mark of book.metadata.filter((entry) => entry.sheet === gone)) {
        book.metadata.splice(book.metadata.indexOf(mark), 1);
      }
      if (book.active === gone) book.active = book.sheets[0];
    },
    createDeveloperMetadataFinder: () => finderOf(book),
  });
}

function finderOf(book: FakeBook) {
  const wanted: { key: string; value?: string } = { key: '' };
  const finder: Record<string, unknown> = {
    withKey: (key: string) => Object.assign(wanted, { key }) && finder,
    withValue: (value: string) => Object.assign(wanted, { value }) && finder,
    find: () =>
      book.metadata
        .filter((entry) => entry.key === wanted.key && (wanted.value === undefined || entry.value === wanted.value))
        .map(metadataOf),
  };
  return finder;
}

function metadataOf(entry: FakeBook['metadata'][number]) {
  return {
    getKey: () => entry.key,
    getValue: () => entry.value,
    setValue: (value: string) => {
      entry.value = value;
    },
    getLocation: () => ({ getSheet: () => sheetOf(entry.sheet) }),
  };
}

function checkName(book: FakeBook, name: string): void {
  if (name.length > 100) throw new Error('The name of a sheet is too long.');
  if (book.sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase())) {
    throw new Error(`A sheet with the name "${name}" already exists.`);
  }
}

const BEHIND = Symbol('what a proxy stands for');

function behind(proxy: object): unknown {
  return (proxy as Record<symbol, unknown>)[BEHIND];
}

function sheetOf(sheet: FakeSheet): GoogleAppsScript.Spreadsheet.Sheet {
  const { book } = sheet;
  const members = {
    [BEHIND]: sheet,
    getName: () => sheet.name,
    getSheetId: () => book.sheets.indexOf(sheet),
    setName: (name: string) => {
      checkName(book, name);
      sheet.name = name;
    },
    addDeveloperMetadata: (key: string, value: string) => {
      book.metadata.push({ key, value, sheet });
    },
    getDeveloperMetadata: () => book.metadata.filter((entry) => entry.sheet === sheet).map(metadataOf),
    getMaxRows: () => sheet.rowCount,
    getMaxColumns: () => sheet.columnCount,
    insertRowsAfter: (_: number, count: number) => {
      sheet.rowCount += count;
    },
    insertRowsBefore: (before: number, count: number) => {
      sheet.insertRows(before, count);
      // The service lets new rows take over the format of their neighbours.
      for (let column = 1; column <= sheet.columnCount; column++) {
        const { format } = sheet.at(before + count, column);
        for (let row = before; row < before + count; row++) sheet.at(row, column).format = format;
      }
    },
    insertColumnsAfter: (_: number, count: number) => {
      sheet.columnCount += count;
    },
    setColumnWidths: (from: number, count: number, width: number) => fill(sheet.widths, from, count, width),
    setRowHeightsForced: (from: number, count: number, height: number) => fill(sheet.heights, from, count, height),
    setFrozenRows: (count: number) => {
      sheet.frozenRows = count;
    },
    setFrozenColumns: (count: number) => {
      sheet.frozenColumns = count;
    },
    setHiddenGridlines: (areHidden: boolean) => {
      sheet.hasGridlines = !areHidden;
    },
    getDataRange: () => ({
      getValues: () => sheet.values(),
      getFormulas: () => sheet.values().map((row, r) => row.map((_, c) => sheet.at(r + 1, c + 1).formula)),
    }),
    getRange: (row: number, column: number, rows: number, columns: number) => {
      if (row + rows - 1 > sheet.rowCount || column + columns - 1 > sheet.columnCount) {
        throw new Error('The coordinates of the range are outside the dimensions of the sheet.');
      }
      return rangeOf(sheet, rows, columns);
    },
  };
  return counted(book, 'Sheet', members);
}

function fill(sizes: number[], from: number, count: number, size: number): void {
  for (let i = from; i < from + count; i++) sizes[i] = size;
}

/** A range from the first cell of a sheet. */
function rangeOf(sheet: FakeSheet, rows: number, columns: number): GoogleAppsScript.Spreadsheet.Range {
  const each = <T>(given: readonly (readonly T[])[], put: (cell: FakeCell, value: T) => void) => {
    if (given.length !== rows || given.some((row) => row.length !== columns))
      throw new Error('Rows or columns differ.');
    given.forEach((row, r) => {
      row.forEach((value, c) => {
        put(sheet.at(r + 1, c + 1), value);
      });
    });
  };
  const cellsOf = (part: (cell: FakeCell) => unknown) =>
    Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => part(sheet.at(r + 1, c + 1))));
  const look = (name: string) => (given: unknown[][]) => each(given, (cell, value) => (cell.looks[name] = value));
  return counted(sheet.book, 'Range', {
    [BEHIND]: sheet,
    getValues: () => cellsOf((cell) => cell.value),
    getFormulas: () => cellsOf((cell) => cell.formula),
    setValues: (given: unknown[][]) => each(given, putValue),
    setNumberFormats: (given: string[][]) => each(given, (cell, format) => (cell.format = format)),
    setBackgrounds: look('background'),
    setFontColors: look('color'),
    setFontWeights: look('weight'),
    setFontSizes: look('size'),
    setHorizontalAlignments: look('align'),
    setWraps: look('wrap'),
    setDataValidations: (given: unknown[][]) => each(given, (cell, box) => (cell.box = box)),
    clearDataValidations: () => {
      for (const cell of sheet.cells.values()) cell.box = null;
    },
    copyTo: (target: object) => {
      const other = behind(target) as FakeSheet;
      for (let r = 1; r <= rows; r++) {
        for (let c = 1; c <= columns; c++) {
          const source = sheet.cells.get(`${r},${c}`);
          if (source) other.cells.set(`${r},${c}`, { ...source, looks: { ...source.looks } });
          else other.cells.delete(`${r},${c}`);
        }
      }
    },
  });
}

/**
 * What is written is read as if typed. A leading apostrophe marks text in a cell of automatic format; in one of plain
 * text it is kept, as some services do: whoever relies on it being dropped there is found out.
 */
function putValue(cell: FakeCell, value: unknown): void {
  cell.formula = '';
  cell.value = value;
  if (typeof value !== 'string' || cell.format === '@') return;
  if (value.startsWith("'")) cell.value = value.slice(1);
  else if (/^[=+@-]/.test(value)) Object.assign(cell, { formula: value, value: '#computed' });
  else if (/^\d+\/\d+$/.test(value)) cell.value = new Date(2026, 4, 8);
  else if (value.trim() !== '' && Number.isFinite(Number(value))) cell.value = Number(value);
}

/** Counts every call by name, and lets the one fail that is meant to. */
function counted<T>(book: FakeBook, service: string, members: object): T {
  return new Proxy(members, {
    get(target, name) {
      const member = (target as Record<string | symbol, unknown>)[name];
      if (typeof member !== 'function') return member;
      return (...given: unknown[]) => {
        const method = `${service}.${String(name)}`;
        book.calls.set(method, (book.calls.get(method) ?? 0) + 1);
        if (book.failing?.method === method && --book.failing.countdown === 0) throw new Error(`${method} failed`);
        return member(...given);
      };
    },
  }) as T;
}

/** Puts the spreadsheet where the add-on looks for it; returns the lock, to be held by somebody else. */
export function installFakes(book: FakeBook): { isHeld: boolean; waits: number } {
  const lock = { isHeld: false, waits: 0 };
  Object.assign(globalThis, {
    SpreadsheetApp: {
      flush: () => book.calls.set('flush', (book.calls.get('flush') ?? 0) + 1),
      getActiveSpreadsheet: () => spreadsheetOf(book),
      newDataValidation: () => ({ requireCheckbox: () => ({ build: () => 'box to tick' }) }),
    },
    LockService: {
      getDocumentLock: () => ({
        tryLock: () => {
          lock.waits++;
          if (lock.isHeld) return false;
          lock.isHeld = true;
          return true;
        },
        releaseLock: () => {
          lock.isHeld = false;
        },
      }),
    },
  });
  return lock;
}
