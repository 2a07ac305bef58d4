/**
 * The arguments of a custom function, declared in a table and read in one place: which cells go together, what a blank
 * means, and one message for all that is wrong.
 */

import type { Units } from '../geometry/length';
import { problems } from '../takeoff/reading/problems';
import { plural } from '../takeoff/text/plural';
import { type Fault, isBlank, isFault, type Reader, unitsOf } from './cells';

/** One argument that may be a single value or a range. */
export interface Argument<T> {
  readonly given: unknown;
  readonly read: Reader<T>;
  /** Its default; an argument without one must be given. */
  readonly whenBlank?: (units: Units) => T;
}

/** Arguments by the name a person sees. */
export type Arguments<V> = { readonly [K in keyof V]: Argument<V[K]> };

/** What a cell can be answered with. */
export type CellAnswer = number | string;

/** Our choice: what the slowest of the plain functions answers in some seconds without a compiler. */
const MOST_CELLS = 100_000;

/** An answer for each cell of the ranges, '' for a blank row; one cell when no range was given. */
export type Answers<A> = readonly (readonly (A | '')[])[];

interface Shape {
  readonly rowCount: number;
  readonly columnCount: number;
}

interface Column {
  readonly name: string;
  readonly cells: readonly (readonly unknown[])[];
  readonly isSingle: boolean;
  readonly read: Reader<unknown>;
  readonly whenBlank: ((units: Units) => unknown) | undefined;
}

/** Sentences about one call: the first is shown, the rest are counted. */
interface Noted {
  first: string;
  count: number;
}

/** One call of a function: all that reading a cell of it needs. */
interface Call {
  readonly columns: readonly Column[];
  readonly units: Column;
  readonly shape: Shape;
  readonly noted: Noted;
  /** Single values once read, by name and units. */
  readonly singles: Map<string, unknown>;
}

/**
 * Answers every cell of the ranges given together. Ranges must be of one size; single values are repeated; where every
 * range that must be filled is blank, the answer is ''; blank rows at the end are cut off.
 *
 * @throws Error with the first problem as its message, and how many more there are
 */
export function answersOf<V, A>(
  table: Arguments<V>,
  unitsGiven: unknown,
  answer: (values: V, units: Units) => A | Fault,
): Answers<A> {
  const columns = Object.entries<Argument<unknown>>(table).map(([name, argument]) => columnOf(name, argument));
  const units = columnOf('units', { given: unitsGiven, read: unitsOf, whenBlank: () => 'us' });
  const shape = commonShape([...columns, units]);
  const call: Call = { columns, units, shape, noted: { first: '', count: 0 }, singles: new Map() };
  const mustBeFilled = columns.filter((column) => !column.isSingle && column.whenBlank === undefined);
  const rowCount = rowCountOf(mustBeFilled, shape);
  if (rowCount * shape.columnCount > MOST_CELLS)
    throw new Error(problems.tooManyCells(rowCount * shape.columnCount, MOST_CELLS));
  const answers: (A | '')[][] = [];
  for (let r = 0; r < rowCount; r++) {
    const line: (A | '')[] = [];
    for (let c = 0; c < shape.columnCount; c++) {
      const isBlankCell = mustBeFilled.length > 0 && mustBeFilled.every((column) => isBlank(column.cells[r][c]));
      line.push(isBlankCell ? '' : answerCell(call, r, c, answer));
    }
    answers.push(line);
  }
  throwNoted(call.noted);
  return answers;
}

/** The answer as the spreadsheet takes it: one value, or a grid that fills the cells beside and below. */
export function oneOrGrid(answers: Answers<CellAnswer>): CellAnswer | CellAnswer[][] {
  if (answers.length === 1 && answers[0].length === 1) return answers[0][0];
  return answers.map((line) => [...line]);
}

/** Reads arguments that must be single values, for a function that answers with a table. */
export function singleValues<V>(
  table: Arguments<V>,
  unitsGiven: unknown,
): { readonly values: V; readonly units: Units } {
  for (const [name, argument] of [
    ...Object.entries<{ given: unknown }>(table),
    ['units', { given: unitsGiven }] as const,
  ]) {
    const cells = cellsOf(argument.given);
    if (cells.length * cells[0].length > 1) throw new Error(problems.oneCell(name, sizeText(cells)));
  }
  const [[first]] = answersOf(table, unitsGiven, (values, units) => ({ values, units }));
  return first as { values: V; units: Units };
}

/** The units of a function whose other arguments do not depend on each other. */
export function singleUnits(unitsGiven: unknown): Units {
  return singleValues({}, unitsGiven).units;
}

/**
 * Reads a list: a column or a row of cells, in order. A blank cell gives null; blanks at the end are cut off.
 *
 * @throws Error if there is no value, if the range has several rows and columns, or with the first problem
 */
export function listOf<T>(name: string, given: unknown, read: Reader<T>, units: Units): readonly (T | null)[] {
  const cells = cellsOf(given);
  if (cells.length > 1 && cells[0].length > 1) throw new Error(problems.oneColumn(name, sizeText(cells)));
  const list = cells.length > 1 ? cells.map((row) => row[0]) : cells[0];
  const noted: Noted = { first: '', count: 0 };
  const values = list.slice(0, filledCount(list, isBlank)).map((cell, index) => {
    if (isBlank(cell)) return null;
    const value = read(cell, units);
    if (!isFault(value)) return value;
    note(noted, value.says(list.length > 1 ? `${name}, row ${index + 1}` : name));
    return null;
  });
  throwNoted(noted);
  if (values.length === 0) throw new Error(problems.emptyList(name));
  return values;
}

/**
 * Reads a list in which every cell must be filled, up to the last that is: a blank among them may be a merged cell,
 * whose value stands in the first one only, and what it leaves out would be missing from the answer.
 *
 * @throws Error as `listOf`, and for a blank between filled cells
 */
export function filledList<T>(name: string, given: unknown, read: Reader<T>, units: Units): readonly T[] {
  return listOf(name, given, read, units).map((value, index) => {
    if (value === null) throw new Error(problems.blankBetween(`${name}, row ${index + 1}`));
    return value;
  });
}

/** An argument as rows of cells: a single value is one row of one. */
export function cellsOf(given: unknown): readonly (readonly unknown[])[] {
  if (!Array.isArray(given)) return [[given]];
  const rows = given.map((row) => (Array.isArray(row) ? row : [row]));
  return rows.length > 0 && rows[0].length > 0 ? rows : [['']];
}

/** `3 rows and 1 column`. */
export function sizeText(cells: readonly (readonly unknown[])[]): string {
  return `${plural(cells.length, 'row')} and ${plural(cells[0].length, 'column')}`;
}

/** How many there are up to the last that is not blank. */
export function filledCount<T>(list: readonly T[], isBlankItem: (item: T) => boolean): number {
  let length = list.length;
  while (length > 0 && isBlankItem(list[length - 1])) length -= 1;
  return length;
}

/** Throws what was noted, if anything was. */
function throwNoted(noted: Noted): void {
  if (noted.count > 0) throw new Error(problems.andMore(noted.first, noted.count - 1));
}

function note(noted: Noted, sentence: string): void {
  if (noted.count === 0) noted.first = sentence;
  noted.count += 1;
}

function columnOf(name: string, argument: Argument<unknown>): Column {
  const cells = cellsOf(argument.given);
  const isSingle = cells.length === 1 && cells[0].length === 1;
  return { name, cells, isSingle, read: argument.read, whenBlank: argument.whenBlank };
}

function commonShape(columns: readonly Column[]): Shape {
  const ranges = columns.filter((column) => !column.isSingle);
  if (ranges.length === 0) return { rowCount: 1, columnCount: 1 };
  const [first, ...others] = ranges;
  const odd = others.find(
    ({ cells }) => cells.length !== first.cells.length || cells[0].length !== first.cells[0].length,
  );
  if (odd) {
    throw new Error(problems.unequalRanges(odd.name, sizeText(odd.cells), first.name, sizeText(first.cells)));
  }
  return { rowCount: first.cells.length, columnCount: first.cells[0].length };
}

/** Rows up to the last that is filled, at least one. */
function rowCountOf(mustBeFilled: readonly Column[], shape: Shape): number {
  if (mustBeFilled.length === 0) return shape.rowCount;
  const isFilled = (r: number) => mustBeFilled.some(({ cells }) => cells[r].some((cell) => !isBlank(cell)));
  let rowCount = shape.rowCount;
  while (rowCount > 1 && !isFilled(rowCount - 1)) rowCount -= 1;
  return rowCount;
}

/** Reads one cell of every argument and answers it; '' when something was noted instead. */
function answerCell<V, A>(call: Call, r: number, c: number, answer: (values: V, units: Units) => A | Fault): A | '' {
  const units = readCell(call, call.units, r, c, 'us');
  if (isFault(units)) return '';
  const values: Record<string, unknown> = {};
  let isGood = true;
  for (const column of call.columns) {
    const value = readCell(call, column, r, c, units as Units);
    values[column.name] = value;
    if (isFault(value)) isGood = false;
  }
  if (!isGood) return '';
  const answered = answer(values as V, units as Units);
  if (!isFault(answered)) return answered;
  note(call.noted, answered.says(placeText(answered.argument ?? call.columns[0].name, call.shape, r, c)));
  return '';
}

/** A single value is read, and noted, once for the whole call. */
function readCell(call: Call, column: Column, r: number, c: number, units: Units): unknown {
  if (!column.isSingle) return readAndNote(call, column, column.cells[r][c], units, r, c);
  const key = `${column.name} ${units}`;
  if (!call.singles.has(key)) call.singles.set(key, readAndNote(call, column, column.cells[0][0], units, r, c));
  return call.singles.get(key);
}

function readAndNote(call: Call, column: Column, cell: unknown, units: Units, r: number, c: number): unknown {
  const blank = isBlank(cell);
  if (blank && column.whenBlank) return column.whenBlank(units);
  const value = column.read(blank ? '' : cell, units);
  if (isFault(value)) {
    note(call.noted, value.says(placeText(column.name, column.isSingle ? undefined : call.shape, r, c)));
  }
  return value;
}

/** `length`, or `length, row 3` in a range; rows and columns as counted in the range. */
function placeText(name: string, shape: Shape | undefined, r: number, c: number): string {
  if (shape === undefined) return name;
  const row = shape.rowCount > 1 ? `, row ${r + 1}` : '';
  const column = shape.columnCount > 1 ? `, column ${c + 1}` : '';
  return name + row + column;
}
