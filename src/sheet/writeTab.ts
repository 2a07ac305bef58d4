/**
 * Writes a tab. The number of service calls does not depend on the number of rows: every look and every value goes
 * out as one rectangle.
 *
 * A tab is always written aside first, whole. Only then does it take its place: a new one by its name and mark, an old
 * one by a single copy over it. So a failure on the way leaves the old tab as it was, and what other tabs say about
 * ours (`='Cut list: Den'!D2`) stays true, which it would not if the old tab were deleted.
 */

import type { Cell, Look, TabBlock } from '../tabs/block';
import { inputEntry, lineEntry, memoryOf, tokenOf } from '../tabs/lineMemory';
import { finishTab, insertUnfinishedTab, ownedTab, remember, rememberedOf, removeUnfinishedTabs } from './ownedTabs';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;
type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

/** What a cell gives when it is read; a date comes as an object. */
export type CellContent = string | number | boolean | object | null;

const ORDINARY_ROW_HEIGHT = 21;
const AUTOMATIC = 'General';
const PLAIN_TEXT = '@';
/** Dark enough to be read on paper, printed black and white too. */
const ALARM = '#a3180e';

/** A tab of ours as it is now. */
export interface ReadTab {
  readonly cells: readonly (readonly CellContent[])[];
  /** Row and column from 0, and text. */
  readonly formulas: readonly (readonly [number, number, string])[];
  readonly memory: string;
}

/** Our tab with this mark; no rows when there is none. */
export function readTab(spreadsheet: Spreadsheet, mark: string, title: string): ReadTab {
  const sheet = ownedTab(spreadsheet, mark, title);
  if (!sheet) return { cells: [], formulas: [], memory: '' };
  const range = sheet.getDataRange();
  const formulas = range
    .getFormulas()
    .flatMap((line, row) => line.flatMap((text, column) => (text === '' ? [] : [[row, column, text] as const])));
  return { cells: range.getValues(), formulas, memory: rememberedOf(sheet).memory };
}

/**
 * Writes the block into our tab of that mark, or into a new one. To be called under the lock of `oneAtATime`.
 *
 * @returns the name of the tab
 * @throws whatever the service throws; the old tab is whole then
 */
export function writeTab(spreadsheet: Spreadsheet, block: TabBlock): string {
  removeUnfinishedTabs(spreadsheet);
  if (block.place === 'above') return writeAbove(spreadsheet, block);
  const shown = spreadsheet.getActiveSheet();
  const old = ownedTab(spreadsheet, block.mark, block.title);
  try {
    const fresh = insertUnfinishedTab(spreadsheet, block.title);
    const size = sizeFor(block, old);
    extendNew(fresh, size);
    writeCells(fresh, block);
    // The service sends writes in bundles: what is to fail shall fail before the old tab is touched.
    SpreadsheetApp.flush();
    const remembered = { memory: memoryAsRead(fresh, block), about: block.about ?? '' };
    if (old) {
      copyOver(fresh, old, block, size);
      remember(old, remembered);
      removeUnfinishedTabs(spreadsheet);
      return old.getName();
    }
    setLayout(fresh, block);
    remember(fresh, remembered);
    SpreadsheetApp.flush();
    finishTab(spreadsheet, fresh, block.mark, block.title);
    SpreadsheetApp.flush();
    return fresh.getName();
  } catch (failure) {
    removeAfterFailure(spreadsheet);
    throw failure;
  } finally {
    // A new tab comes to the front by itself; the person stays where they were.
    spreadsheet.setActiveSheet(shown);
  }
}

/** Rows above what our tab holds; a failure on the way leaves it with rows that are blank, and all else as it was. */
function writeAbove(spreadsheet: Spreadsheet, block: TabBlock): string {
  const sheet = ownedTab(spreadsheet, block.mark, block.title);
  if (!sheet) throw new Error(`Internal: there is no tab ${block.title} to write above.`);
  const rowCount = block.cells.length;
  sheet.insertRowsBefore(1, rowCount);
  // New rows take over the format of the row beside them, and values are to be written into automatic cells.
  const automatic = block.cells.map((row) => row.map(() => AUTOMATIC));
  sheet.getRange(1, 1, rowCount, block.cells[0].length).setNumberFormats(automatic);
  writeCells(sheet, block);
  SpreadsheetApp.flush();
  return sheet.getName();
}

/** The first failure is the one to tell: a second one here would hide it. What is left goes at the next filling. */
function removeAfterFailure(spreadsheet: Spreadsheet): void {
  try {
    removeUnfinishedTabs(spreadsheet);
  } catch (_) {}
}

interface TabSize {
  readonly rows: number;
  readonly columns: number;
}

/** Large enough for the block and for all that the old tab holds. */
function sizeFor({ cells }: TabBlock, old: Sheet | null): TabSize {
  const rows = old ? old.getMaxRows() : 0;
  const columns = old ? old.getMaxColumns() : 0;
  return { rows: Math.max(rows, cells.length), columns: Math.max(columns, cells[0].length) };
}

/** Always adds a row or more, so that a list longer than a new tab takes no call that a short one does not. */
function extendNew(sheet: Sheet, size: TabSize): void {
  const rows = sheet.getMaxRows();
  const columns = sheet.getMaxColumns();
  sheet.insertRowsAfter(rows, Math.max(1, size.rows - rows));
  if (columns < size.columns) sheet.insertColumnsAfter(columns, size.columns - columns);
}

/**
 * Values before formats: in a cell of automatic format a leading apostrophe is taken as the mark of text and does not
 * become part of it, whatever follows. In a cell that is plain text already the service may keep it as a character.
 * Plain text as format comes after, so that what a person types there later is not turned into a date either.
 */
function writeCells(sheet: Sheet, block: TabBlock): void {
  const { cells } = block;
  const columnCount = cells[0].length;
  if (cells.some((row) => row.length !== columnCount)) throw new Error('Internal: the rows of a tab differ in length.');
  const looks = <T>(feature: (look: Look) => T): T[][] => cells.map((row) => row.map((cell) => feature(cell.look)));
  const range = sheet.getRange(1, 1, cells.length, columnCount);
  range.setValues(cells.map((row) => row.map(writtenValue)));
  range.setNumberFormats(cells.map((row) => row.map(formatOf)));
  range.setBackgrounds(looks((look) => look.background));
  range.setFontColors(looks((look) => look.color));
  range.setFontWeights(looks((look) => (look.bold ? 'bold' : 'normal')));
  range.setFontSizes(looks((look) => look.size));
  range.setHorizontalAlignments(looks((look) => look.align));
  range.setWraps(looks((look) => look.wrap));
  setTickBoxes(sheet, block);
}

/**
 * Remembers the lines as the service gives them back, not as they went out: whatever it makes of a value, the same cell
 * is read the same way at the next filling.
 */
function memoryAsRead(sheet: Sheet, { cells }: TabBlock): string {
  const range = sheet.getRange(1, 1, cells.length, cells[0].length);
  const values = range.getValues();
  const formulas = range.getFormulas();
  const entries = cells.flatMap((line, row) => {
    const read = line.map((cell, column) => ({ cell, token: tokenOf(values[row][column], formulas[row][column]) }));
    const ours = read.filter(({ cell, token }) => token !== '' && cell.owner !== 'person');
    const base = ours.filter(({ cell }) => cell.owner === undefined).map(({ token }) => token);
    const inputs = ours.flatMap(({ cell: { owner }, token }) =>
      typeof owner === 'object' ? [inputEntry(base, owner.input, token), inputEntry(base, '', token)] : [],
    );
    return ours.length === 0 ? [] : [lineEntry(ours.map(({ token }) => token)), lineEntry(base), ...inputs];
  });
  return memoryOf(entries);
}

function writtenValue({ value }: Cell): string | number | boolean {
  switch (value.kind) {
    case 'blank':
      return '';
    case 'text':
      return value.text === '' ? '' : `'${value.text}`;
    case 'number':
      if (!Number.isFinite(value.number)) throw new Error('Internal: a number of a tab is not finite.');
      return value.number;
    case 'formula':
      return value.formula;
    case 'tick':
      return value.ticked;
  }
}

function formatOf({ value }: Cell): string {
  if (value.kind === 'text') return PLAIN_TEXT;
  return value.kind === 'number' || value.kind === 'formula' ? value.format : AUTOMATIC;
}

function setTickBoxes(sheet: Sheet, { cells }: TabBlock): void {
  const box = SpreadsheetApp.newDataValidation().requireCheckbox().build();
  const boxes = cells.map((row) => row.map((cell) => (cell.value.kind === 'tick' ? box : null)));
  sheet.getRange(1, 1, cells.length, cells[0].length).setDataValidations(boxes);
}

/** Widths, heights and what stays in view. One call for each run of columns of one width. */
function setLayout(sheet: Sheet, block: TabBlock): void {
  const widths = block.columnWidths;
  for (let from = 0, to = 0; from < widths.length; from = to) {
    while (to < widths.length && widths[to] === widths[from]) to++;
    sheet.setColumnWidths(from + 1, to - from, widths[from]);
  }
  if (block.rowHeight > 0) {
    const rows = block.heightRows ?? { firstRowNumber: 1, rowCount: block.cells.length };
    // Rows of an earlier, taller drawing.
    sheet.setRowHeightsForced(1, sheet.getMaxRows(), ORDINARY_ROW_HEIGHT);
    sheet.setRowHeightsForced(rows.firstRowNumber, rows.rowCount, block.rowHeight);
  }
  sheet.setFrozenRows(block.frozenRows);
  sheet.setFrozenColumns(block.frozenColumns ?? 0);
  sheet.setHiddenGridlines(!block.showGridlines);
}

/** One copy of the whole size replaces everything the old tab held. */
function copyOver(fresh: Sheet, old: Sheet, block: TabBlock, size: TabSize): void {
  const rows = old.getMaxRows();
  const columns = old.getMaxColumns();
  if (rows < size.rows) old.insertRowsAfter(rows, size.rows - rows);
  if (columns < size.columns) old.insertColumnsAfter(columns, size.columns - columns);
  const target = old.getRange(1, 1, size.rows, size.columns);
  fresh.getRange(1, 1, size.rows, size.columns).copyTo(target);
  // Whether a copy carries the tick boxes along, and takes away those of the old tab, is not documented.
  target.clearDataValidations();
  setTickBoxes(old, block);
  setLayout(old, block);
  SpreadsheetApp.flush();
}

/**
 * Puts a line above everything else, so that nothing that stands in the tab is lost.
 *
 * @param words ours: they begin with a letter and are no number and no date
 * @param before how the line begins that an earlier call has put there: it is replaced
 */
export function putOnTop(sheet: Sheet, words: string, before: RegExp): void {
  const isThere = before.test(String(sheet.getRange(1, 1, 1, 1).getValues()[0][0]));
  if (!isThere) sheet.insertRowsBefore(1, 1);
  const cell = sheet.getRange(1, 1, 1, 1);
  cell.setValues([[words]]);
  cell.setFontWeights([['bold']]);
  cell.setFontSizes([[11]]);
  cell.setFontColors([[ALARM]]);
  cell.setWraps([[false]]);
  SpreadsheetApp.flush();
}
