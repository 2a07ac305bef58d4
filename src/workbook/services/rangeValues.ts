import { passCell } from '../customFunctions';
import type { CellEdit, EngineCell, Zone } from '../engine';
import { a1OfZone } from './a1';
import { type Book, cellKey, extrasOf } from './book';
import { checkShape, valueEdit } from './typedValues';

type Range = GoogleAppsScript.Spreadsheet.Range;
type Grid = readonly (readonly unknown[])[];

/** Where a range lies, and the range itself for setters that answer it. */
export interface RangePlace {
  readonly book: Book;
  readonly tabId: string;
  readonly zone: Zone;
  readonly self: () => Range;
}

/** Something made of every cell, as rows. */
export function mapCells<Result>({ zone }: RangePlace, make: (row: number, column: number) => Result): Result[][] {
  const rows: Result[][] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    const made: Result[] = [];
    for (let column = zone.left; column <= zone.right; column++) made.push(make(row, column));
    rows.push(made);
  }
  return rows;
}

/** An edit of every cell, row by row. */
export function editsOf({ zone }: RangePlace, make: (row: number, column: number) => CellEdit): CellEdit[] {
  const edits: CellEdit[] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    for (let column = zone.left; column <= zone.right; column++) edits.push(make(row, column));
  }
  return edits;
}

/** One value for every cell of a range. */
export function filled<Value>({ zone }: RangePlace, value: Value): Value[][] {
  return Array.from({ length: zone.bottom - zone.top + 1 }, () => Array(zone.right - zone.left + 1).fill(value));
}

type ValueCall =
  | 'getValue'
  | 'getValues'
  | 'getDisplayValue'
  | 'getDisplayValues'
  | 'getFormula'
  | 'getFormulas'
  | 'setValue'
  | 'setValues'
  | 'setFormula'
  | 'setFormulas'
  | 'isBlank'
  | 'isChecked'
  | 'check'
  | 'uncheck';

/** Values and formulas of a range. */
export function rangeValues(place: RangePlace) {
  const { book, tabId, zone } = place;
  const cell = (row: number, column: number): EngineCell => book.engine.cell(tabId, row, column);
  const passed = (row: number, column: number) => passCell(cell(row, column), book.settings.timeZone);
  const formula = (row: number, column: number) => book.engine.formula(tabId, row, column);
  const write = (values: Grid) => {
    checkShape(values, zone);
    const edits = editsOf(place, (row, column) =>
      valueEdit(book, tabId, row, column, values[row - zone.top]?.[column - zone.left]),
    );
    book.engine.apply(edits);
    return place.self();
  };
  return {
    getValue: () => passed(zone.top, zone.left),
    getValues: () => mapCells(place, passed),
    getDisplayValue: () => cell(zone.top, zone.left).shown,
    getDisplayValues: () => mapCells(place, (row, column) => cell(row, column).shown),
    getFormula: () => formula(zone.top, zone.left),
    getFormulas: () => mapCells(place, formula),
    setValue: (value: unknown) => write(filled(place, value)),
    setValues: (values: Grid) => write(values),
    setFormula: (text: string) => write(filled(place, asFormula(text))),
    setFormulas: (texts: string[][]) => write(texts.map((row) => row.map(asFormula))),
    isBlank: () => mapCells(place, cell).every((row) => row.every(({ kind }) => kind === 'empty')),
    isChecked: () => {
      // Null where a cell has no box, or not all are alike (reference, Range).
      const hasBoxes = mapCells(place, (row, column) => book.engine.hasTickBox(tabId, row, column));
      if (!hasBoxes.flat().every(Boolean)) return null;
      const states = mapCells(place, (row, column) => cell(row, column).value === true).flat();
      return states.every((state) => state === states[0]) ? (states[0] as boolean) : null;
    },
    check: () => write(filled(place, true)),
    uncheck: () => write(filled(place, false)),
  } satisfies Pick<Range, ValueCall>;
}

function asFormula(text: string): string {
  return text === '' || text.startsWith('=') ? text : `=${text}`;
}

/** Notes, which the engine has no place for. */
export function rangeNotes(place: RangePlace) {
  const { book, tabId, zone } = place;
  const { notes } = extrasOf(book, tabId);
  const read = (row: number, column: number) => notes.get(cellKey(row, column)) ?? '';
  const write = (texts: readonly (readonly (string | null)[])[]) => {
    checkShape(texts, zone);
    mapCells(place, (row, column) => {
      const text = texts[row - zone.top]?.[column - zone.left];
      if (text) notes.set(cellKey(row, column), text);
      else notes.delete(cellKey(row, column));
    });
    return place.self();
  };
  return {
    getNote: () => read(zone.top, zone.left),
    // Most tabs have none, and are asked for all of them.
    getNotes: () => (notes.size === 0 ? filled(place, '') : mapCells(place, read)),
    setNote: (note: string | null) => write(filled(place, note)),
    setNotes: (texts: (string | null)[][]) => write(texts),
    clearNote: () => write(filled(place, null)),
  } satisfies Pick<Range, 'getNote' | 'getNotes' | 'setNote' | 'setNotes' | 'clearNote'>;
}

/** Where a range is. */
export function rangePosition({ zone }: RangePlace) {
  return {
    getA1Notation: () => a1OfZone(zone),
    getRow: () => zone.top + 1,
    getColumn: () => zone.left + 1,
    getLastRow: () => zone.bottom + 1,
    getLastColumn: () => zone.right + 1,
    getNumRows: () => zone.bottom - zone.top + 1,
    getNumColumns: () => zone.right - zone.left + 1,
    getHeight: () => zone.bottom - zone.top + 1,
    getWidth: () => zone.right - zone.left + 1,
  } satisfies Pick<
    Range,
    | 'getA1Notation'
    | 'getRow'
    | 'getColumn'
    | 'getLastRow'
    | 'getLastColumn'
    | 'getNumRows'
    | 'getNumColumns'
    | 'getHeight'
    | 'getWidth'
  >;
}
