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
  note?: string;
}

export interface FakeBook {
  readonly sheets: FakeSheet[];
  readonly metadata: { key: string; value: string; sheet: FakeSheet }[];
  active: FakeSheet;
  readonly calls: Map<string, number>;
  /** Throws when this method is called for the n-th time from now. */
  failing: { method: string; countdown: number } | null;
  /** Told before every call, how many there have been; what it does happens just then, and what it throws the service throws. */
  onCall: ((count: number, method: string) => void) | null;
  readonly locale: string;
  /** Whether the apostrophe that marks a text stays in front of it, as one report says of the service. */
  keepsApostrophes: boolean;
  /** The cells of all tabs together that it takes. */
  mostCells: number;
}

/** A cell that nothing was written to. */
const BLANK: FakeCell = Object.freeze({ value: '', formula: '', format: 'General', looks: {}, box: null });

/** More than the columns of any sheet: a number is found faster than a text. */
const KEYS_A_ROW = 20_000;
const keyOf = (row: number, column: number) => row * KEYS_A_ROW + column;
const placeOf = (key: number) => [Math.floor(key / KEYS_A_ROW), key % KEYS_A_ROW] as const;

export class FakeSheet {
  cells = new Map<number, FakeCell>();
  rowCount = 1000;
  columnCount = 26;
  frozenRows = 0;
  frozenColumns = 0;
  isHidden = false;
  /** Against the person who fills. */
  isProtected = false;
  hasGridlines = true;
  /** What a person has done to its look, and a service may refuse to copy over or to put rows in beside: none is documented. */
  inTheWay = new Set<'filter' | 'merge' | 'hidden rows' | 'hidden columns'>();
  widths: number[] = [];
  heights: number[] = [];
  constructor(
    readonly book: FakeBook,
    public name: string,
  ) {}

  /** A cell to be written to. */
  at(row: number, column: number): FakeCell {
    const key = keyOf(row, column);
    const found = this.cells.get(key);
    if (found) return found;
    const cell = { ...BLANK, looks: {} };
    this.cells.set(key, cell);
    return cell;
  }

  /** A cell to be read. */
  seen(row: number, column: number): Readonly<FakeCell> {
    return this.cells.get(keyOf(row, column)) ?? BLANK;
  }

  /** Puts rows in before a row, counted from 1. */
  insertRows(before: number, count: number): void {
    this.rowCount += count;
    const moved = [...this.cells].map(([key, cell]) => {
      const [row, column] = placeOf(key);
      return [keyOf(row < before ? row : row + count, column), cell] as const;
    });
    this.cells = new Map(moved);
  }

  /** The values of the used part, row by row. */
  values(): unknown[][] {
    return this.used((cell) => cell.value);
  }

  /** One thing of every cell of the used part, row by row. */
  used(part: (cell: Readonly<FakeCell>) => unknown): unknown[][] {
    let [rows, columns] = [1, 1];
    for (const [key, { value }] of this.cells) {
      if (value === '') continue;
      const [row, column] = placeOf(key);
      rows = Math.max(rows, row);
      columns = Math.max(columns, column);
    }
    return this.read(rows, columns, part);
  }

  /** One thing of every cell of the first rows and columns. Most are blank: only those that were written to are looked at. */
  read(rows: number, columns: number, part: (cell: Readonly<FakeCell>) => unknown): unknown[][] {
    const blank = part(BLANK);
    const read = Array.from({ length: rows }, () => new Array<unknown>(columns).fill(blank));
    for (const [key, cell] of this.cells) {
      const [row, column] = placeOf(key);
      if (row <= rows && column <= columns) read[row - 1][column - 1] = part(cell);
    }
    return read;
  }
}

export function fakeBook(names: readonly string[] = ['Estimate'], locale = 'en_US'): FakeBook {
  const book: FakeBook = {
    sheets: [],
    metadata: [],
    active: null as never,
    calls: new Map(),
    failing: null,
    onCall: null,
    locale,
    keepsApostrophes: false,
    mostCells: 10_000_000,
  };
  for (const name of names) book.sheets.push(new FakeSheet(book, name));
  book.active = book.sheets[0];
  return book;
}

/** The same once more, with no call counted and none failing: what is done to the one is not done to the other. */
export function copyOfBook(book: FakeBook): FakeBook {
  const copy: FakeBook = { ...book, sheets: [], metadata: [], calls: new Map(), failing: null, onCall: null };
  const copied = new Map(book.sheets.map((sheet) => [sheet, copyOfSheet(copy, sheet)]));
  const behindCopy = (sheet: FakeSheet) => copied.get(sheet) as FakeSheet;
  copy.sheets.push(...copied.values());
  copy.metadata.push(...book.metadata.map((entry) => ({ ...entry, sheet: behindCopy(entry.sheet) })));
  copy.active = behindCopy(book.active);
  return copy;
}

function copyOfSheet(book: FakeBook, sheet: FakeSheet): FakeSheet {
  const { widths, heights, cells } = sheet;
  const own = [...cells].map(([key, cell]) => [key, { ...cell, looks: { ...cell.looks } }] as const);
  const copied = {
    ...{ book, widths: [...widths], heights: [...heights], cells: new Map(own) },
    inTheWay: new Set(sheet.inTheWay),
  };
  return Object.assign(new FakeSheet(book, sheet.name), sheet, copied);
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
      if (found.isHidden) throw new Error('A hidden sheet was to come to the front.');
      book.active = found;
    },
    getSheetByName: (name: string) => {
      const found = book.sheets.find((sheet) => sheet.name === name);
      return found ? sheetOf(found) : null;
    },
    getSpreadsheetLocale: () => book.locale,
    getSpreadsheetTimeZone: () => 'Etc/UTC',
    getId: () => 'a-book',
    insertSheet: (name: string, index: number) => {
      const sheet = new FakeSheet(book, name);
      checkName(book, name);
      checkSize(book, sheet.rowCount * sheet.columnCount);
      book.sheets.splice(index, 0, sheet);
      book.active = sheet;
      return sheetOf(sheet);
    },
    deleteSheet: (sheet: object) => {
      const gone = behind(sheet) as FakeSheet;
      if (!book.sheets.some((other) => other !== gone && !other.isHidden)) {
        throw new Error("You can't remove all the visible sheets in a document.");
      }
      book.sheets.splice(book.sheets.indexOf(gone), 1);
      for (const mark of book.metadata.filter((entry) => entry.sheet === gone)) {
        book.metadata.splice(book.metadata.indexOf(mark), 1);
      }
      if (book.active === gone) book.active = book.sheets.find((other) => !other.isHidden) as FakeSheet;
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

export function cellCount(book: FakeBook): number {
  return book.sheets.reduce((sum, { rowCount, columnCount }) => sum + rowCount * columnCount, 0);
}

function checkSize(book: FakeBook, more: number): void {
  if (cellCount(book) + more <= book.mostCells) return;
  throw new Error(
    `This action would increase the number of cells in the workbook above the limit of ${book.mostCells} cells.`,
  );
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
      checkPlain(sheet);
      checkSize(book, count * sheet.columnCount);
      sheet.rowCount += count;
    },
    insertRowsBefore: (before: number, count: number) => {
      checkSize(book, count * sheet.columnCount);
      sheet.insertRows(before, count);
      // The service lets new rows take over the format of their neighbours.
      for (let column = 1; column <= sheet.columnCount; column++) {
        const { format } = sheet.seen(before + count, column);
        for (let row = before; row < before + count; row++) sheet.at(row, column).format = format;
      }
    },
    insertColumnsAfter: (_: number, count: number) => {
      checkPlain(sheet);
      checkSize(book, count * sheet.rowCount);
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
    isSheetHidden: () => sheet.isHidden,
    showSheet: () => {
      sheet.isHidden = false;
    },
    getFilter: () => (sheet.inTheWay.has('filter') ? { remove: () => void sheet.inTheWay.delete('filter') } : null),
    showRows: () => void sheet.inTheWay.delete('hidden rows'),
    showColumns: () => void sheet.inTheWay.delete('hidden columns'),
    setHiddenGridlines: (areHidden: boolean) => {
      sheet.hasGridlines = !areHidden;
    },
    getDataRange: () => ({
      getValues: () => sheet.values(),
      getFormulas: () => sheet.used((cell) => cell.formula),
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

function checkPlain({ name, frozenRows, frozenColumns, inTheWay }: FakeSheet): void {
  const found = [...inTheWay, ...(frozenRows + frozenColumns > 0 ? ['frozen part'] : [])];
  if (found.length > 0) throw new Error(`You can't do that in ${name}: ${found.join(', ')}.`);
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
  const cellsOf = (part: (cell: Readonly<FakeCell>) => unknown) => sheet.read(rows, columns, part);
  const look = (name: string) => (given: unknown[][]) => each(given, (cell, value) => (cell.looks[name] = value));
  return counted(sheet.book, 'Range', {
    [BEHIND]: sheet,
    getValues: () => cellsOf((cell) => cell.value),
    getFormulas: () => cellsOf((cell) => cell.formula),
    getNotes: () => cellsOf((cell) => cell.note ?? ''),
    setNotes: (given: string[][]) => each(given, (cell, note) => (cell.note = note)),
    setValues: (given: unknown[][]) => each(given, (cell, value) => putValue(cell, value, sheet.book)),
    setNumberFormats: (given: string[][]) => each(given, (cell, format) => (cell.format = format)),
    setBackgrounds: look('background'),
    setFontColors: look('color'),
    setFontWeights: look('weight'),
    setFontSizes: look('size'),
    setHorizontalAlignments: look('align'),
    setVerticalAlignment: () => {},
    setWraps: look('wrap'),
    setDataValidations: (given: unknown[][]) => each(given, (cell, box) => (cell.box = box)),
    breakApart: () => void sheet.inTheWay.delete('merge'),
    clearDataValidations: () => {
      for (const cell of sheet.cells.values()) cell.box = null;
    },
    copyTo: (target: object) => {
      const other = behind(target) as FakeSheet;
      if (other.isProtected) throw new Error(PROTECTED);
      checkPlain(other);
      const isCopied = (key: number) => placeOf(key)[0] <= rows && placeOf(key)[1] <= columns;
      // Whether a copy carries notes is not documented: here it leaves those that stand there.
      for (const [key, { note }] of other.cells) {
        if (!isCopied(key) || sheet.cells.has(key)) continue;
        if (note) other.cells.set(key, { ...BLANK, looks: {}, note });
        else other.cells.delete(key);
      }
      for (const [key, source] of sheet.cells) {
        const { note } = other.cells.get(key) ?? {};
        if (isCopied(key)) other.cells.set(key, { ...source, looks: { ...source.looks }, note });
      }
    },
  });
}

/**
 * What is written is read as if typed. A leading apostrophe marks text in a cell of automatic format; in one of plain
 * text it is kept, as some services do: whoever relies on it being dropped there is found out.
 */
function putValue(cell: FakeCell, value: unknown, { keepsApostrophes }: FakeBook): void {
  cell.formula = '';
  cell.value = value;
  if (typeof value !== 'string' || cell.format === '@') return;
  if (value.startsWith("'")) cell.value = keepsApostrophes ? value : value.slice(1);
  else if (/^[=+@-]/.test(value)) Object.assign(cell, { formula: value, value: '#computed' });
  else if (/^\d+\/\d+$/.test(value)) cell.value = new Date(2026, 4, 8);
  else if (value.trim() !== '' && Number.isFinite(Number(value))) cell.value = Number(value);
}

function told(book: FakeBook, method: string): void {
  book.calls.set(method, (book.calls.get(method) ?? 0) + 1);
  book.onCall?.(callCount(book), method);
}

const WRITES = /[.](?:set|insert|add|clear|breakApart|show)/;
const PROTECTED = 'You are trying to edit a protected cell or object. Please contact the spreadsheet owner.';

/** Counts every call by name, and lets the one fail that is meant to. */
function counted<T>(book: FakeBook, service: string, members: object): T {
  return new Proxy(members, {
    get(target, name) {
      const member = (target as Record<string | symbol, unknown>)[name];
      if (typeof member !== 'function') return member;
      return (...given: unknown[]) => {
        const method = `${service}.${String(name)}`;
        told(book, method);
        const sheet = (target as Record<symbol, unknown>)[BEHIND];
        if (sheet instanceof FakeSheet && sheet.isProtected && WRITES.test(method)) throw new Error(PROTECTED);
        if (sheet instanceof FakeSheet && !book.sheets.includes(sheet)) throw new Error('Sheet not found');
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
      flush: () => told(book, 'flush'),
      getActiveSpreadsheet: () => spreadsheetOf(book),
      newDataValidation: () => ({
        requireCheckbox: () => ({ build: () => 'box to tick' }),
        requireValueInList: (words: readonly string[]) => ({
          setAllowInvalid: () => ({ build: () => `one of ${words.join(', ')}` }),
        }),
      }),
    },
    Utilities: {
      formatDate: (date: Date) => `${date.getFullYear()}-${date.getMonth() + 1}-${date.getDate()}`,
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
