/**
 * Writes a tab. The number of service calls does not depend on the number of rows: every look and every value goes
 * out as one rectangle.
 *
 * A tab is always written aside first, whole. Only then does it take its place: a new one by its name and mark, an old
 * one by a single copy over it. So a failure on the way leaves the old tab as it was, and what other tabs say about
 * ours (`='Cut list - Den'!D2`) stays true, which it would not if the old tab were deleted.
 */

import { madeOf } from '../geometry/lists';
import type { Cell, Look, TabBlock } from '../tabs/block';
import { inputEntry, lineEntry, memoryOf, tokenOf } from '../tabs/lineMemory';
import {
  finishTab,
  insertUnfinishedTab,
  ownedTab,
  remember,
  rememberedOf,
  removeUnfinishedTabs,
  renameFromColon,
} from './ownedTabs';
import { quietly } from './quietly';

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
  readonly notes: ReadTab['formulas'];
  readonly memory: string;
}

/** Our tab with this mark; no rows when there is none. */
export function readTab(spreadsheet: Spreadsheet, mark: string, title: string): ReadTab {
  const sheet = ownedTab(spreadsheet, mark, title);
  if (!sheet) return { cells: [], formulas: [], notes: [], memory: '' };
  const range = sheet.getDataRange();
  // A note may stand where nothing else does.
  const notes = sheet.getRange(1, 1, sheet.getMaxRows(), sheet.getMaxColumns()).getNotes();
  return {
    cells: range.getValues(),
    formulas: placed(range.getFormulas()),
    notes: placed(notes),
    memory: rememberedOf(sheet).memory,
  };
}

/** The texts that are there, each with its row and column from 0. */
function placed(texts: readonly (readonly string[])[]): ReadTab['formulas'] {
  const found: (readonly [number, number, string])[] = [];
  texts.forEach((line, row) => {
    line.forEach((text, column) => {
      if (text) found.push([row, column, text]);
    });
  });
  return found;
}

/**
 * Writes the block into our tab of that mark, or into a new one. To be called under the lock of `oneAtATime`.
 *
 * @param isUnchanged asked before an old tab is written over: what a person typed while the new one was made is not lost then
 * @returns the name of the tab; null where the old one has changed, and was left as it is
 * @throws whatever the service throws; the old tab is whole then
 */
export function writeTab(spreadsheet: Spreadsheet, block: TabBlock, isUnchanged = (): boolean => true): string | null {
  removeUnfinishedTabs(spreadsheet);
  if (block.place === 'above') return writeAbove(spreadsheet, block);
  const shown = spreadsheet.getActiveSheet();
  const old = ownedTab(spreadsheet, block.mark, block.title);
  try {
    const fresh = insertUnfinishedTab(spreadsheet, block.title);
    // A new tab comes to the front by itself. Back at once: by the end the person may have gone elsewhere.
    quietly(() => spreadsheet.setActiveSheet(shown));
    const size = sizeFor(block, old);
    extendNew(fresh, size);
    if (!old) setLayout(fresh, block);
    writeCells(fresh, block);
    // The service sends writes in bundles: what is to fail shall fail before the old tab is touched.
    SpreadsheetApp.flush();
    const values = withoutKeptApostrophes(fresh, block);
    const remembered = { memory: memoryAsRead(fresh, block, values), about: block.about ?? '' };
    if (old) {
      if (!isUnchanged()) {
        removeUnfinishedTabs(spreadsheet);
        return null;
      }
      copyOver(fresh, old, block, size);
      remember(old, remembered);
      removeUnfinishedTabs(spreadsheet);
      quietly(() => renameFromColon(spreadsheet, old, block.title));
      return old.getName();
    }
    remember(fresh, remembered);
    SpreadsheetApp.flush();
    finishTab(spreadsheet, fresh, block.mark, block.title);
    SpreadsheetApp.flush();
    return fresh.getName();
  } catch (failure) {
    removeAfterFailure(spreadsheet);
    throw failure;
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
  quietly(() => removeUnfinishedTabs(spreadsheet));
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

/** A new tab has room for a thousand rows: only the longest lists need more. */
function extendNew(sheet: Sheet, size: TabSize): void {
  const rows = sheet.getMaxRows();
  const columns = sheet.getMaxColumns();
  if (rows < size.rows) sheet.insertRowsAfter(rows, size.rows - rows);
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
  // In a row that is as high as its longest text, what belongs together stands on one line.
  range.setVerticalAlignment('middle');
  range.setWraps(looks((look) => look.wrap));
  setTickBoxes(sheet, block);
  setNotes(sheet, block, { rows: cells.length, columns: columnCount });
}

/** The notes of a person, and no others; where the tab had none, nothing is asked of the service. */
function setNotes(sheet: Sheet, { notes }: TabBlock, { rows, columns }: TabSize): void {
  if (!notes) return;
  const texts = madeOf(rows, () => new Array<string>(columns).fill(''));
  for (const [row, column, text] of notes) if (row < rows && column < columns) texts[row][column] = text;
  sheet.getRange(1, 1, rows, columns).setNotes(texts);
}

/**
 * Should the service keep the apostrophe that marks text, as some do, the texts are written once more: their cells are
 * plain text by now. One that would start a formula keeps its apostrophe.
 *
 * @returns the values as the service gives them back in the end
 */
function withoutKeptApostrophes(sheet: Sheet, { cells }: TabBlock): unknown[][] {
  const range = sheet.getRange(1, 1, cells.length, cells[0].length);
  const read = range.getValues();
  const isKept = ({ value }: Cell, content: unknown) => value.kind === 'text' && content === `'${value.text}`;
  if (!cells.some((row, r) => row.some((cell, c) => isKept(cell, read[r][c])))) return read;
  const bare = (cell: Cell) => (cell.value.kind === 'text' && !/^[=+]/.test(cell.value.text) ? cell.value.text : null);
  range.setValues(cells.map((row) => row.map((cell) => bare(cell) ?? writtenValue(cell))));
  SpreadsheetApp.flush();
  return range.getValues();
}

/**
 * Remembers the lines as the service gives them back, not as they went out: whatever it makes of a value, the same cell
 * is read the same way at the next filling.
 */
function memoryAsRead(sheet: Sheet, { cells }: TabBlock, values: unknown[][]): string {
  const formulas = sheet.getRange(1, 1, cells.length, cells[0].length).getFormulas();
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
      return withSemicolons(value.formula);
    case 'tick':
      return value.ticked;
  }
}

/**
 * The service reads a formula in the syntax of the spreadsheet's country. Where 0.5 is written 0,5 a comma between
 * arguments is an error; a semicolon is taken everywhere. Ours hold no numbers with decimals.
 */
function withSemicolons(formula: string): string {
  return formula.replace(/"[^"]*"|'[^']*'|,/g, (part) => (part === ',' ? ';' : part));
}

function formatOf({ value }: Cell): string {
  if (value.kind === 'text') return PLAIN_TEXT;
  return value.kind === 'number' || value.kind === 'formula' ? value.format : AUTOMATIC;
}

function setTickBoxes(sheet: Sheet, { cells }: TabBlock): void {
  const isChosen = ({ value }: Cell) => value.kind === 'tick' || (value.kind === 'text' && value.choices !== undefined);
  if (!cells.some((row) => row.some(isChosen))) return;
  const box = SpreadsheetApp.newDataValidation().requireCheckbox().build();
  const lists = new Map<string, GoogleAppsScript.Spreadsheet.DataValidation>();
  const listOf = (choices: readonly string[]) => {
    const key = choices.join('\n');
    const made = () =>
      SpreadsheetApp.newDataValidation()
        .requireValueInList([...choices])
        .setAllowInvalid(true)
        .build();
    const list = lists.get(key) ?? made();
    lists.set(key, list);
    return list;
  };
  const boxes = cells.map((row) =>
    row.map(({ value }) =>
      value.kind === 'tick' ? box : value.kind === 'text' && value.choices ? listOf(value.choices) : null,
    ),
  );
  sheet.getRange(1, 1, cells.length, cells[0].length).setDataValidations(boxes);
}

/** Widths, heights and what stays in view. One call for each run of columns of one width. */
function setLayout(sheet: Sheet, block: TabBlock): void {
  const widths = block.columnWidths;
  for (let from = 0, to = 0; from < widths.length; from = to) {
    while (to < widths.length && widths[to] === widths[from]) to++;
    sheet.setColumnWidths(from + 1, to - from, widths[from]);
  }
  if (block.heights) {
    // Rows of an earlier drawing.
    sheet.setRowHeightsForced(1, sheet.getMaxRows(), ORDINARY_ROW_HEIGHT);
    for (const { firstRowNumber, rowCount, pixels } of block.heights) {
      sheet.setRowHeightsForced(firstRowNumber, rowCount, pixels);
    }
  }
  // The service refuses to freeze all that a person can see.
  quietly(() => sheet.setFrozenRows(block.frozenRows));
  quietly(() => sheet.setFrozenColumns(block.frozenColumns ?? 0));
  quietly(() => sheet.setHiddenGridlines(!block.showGridlines));
}

/**
 * Undoes what a person may have done to the look of a tab and what a copy would stumble over: rows that a filter hides may
 * be left out of it, and what is merged or frozen may refuse new lines.
 */
function makePlain(sheet: Sheet, rows: number, columns: number): void {
  sheet.getFilter()?.remove();
  quietly(() => sheet.setFrozenRows(0));
  quietly(() => sheet.setFrozenColumns(0));
  sheet.showRows(1, rows);
  sheet.showColumns(1, columns);
  sheet.getRange(1, 1, rows, columns).breakApart();
}

/** One copy of the whole size replaces everything the old tab held. */
function copyOver(fresh: Sheet, old: Sheet, block: TabBlock, size: TabSize): void {
  const rows = old.getMaxRows();
  const columns = old.getMaxColumns();
  makePlain(old, rows, columns);
  if (rows < size.rows) old.insertRowsAfter(rows, size.rows - rows);
  if (columns < size.columns) old.insertColumnsAfter(columns, size.columns - columns);
  const target = old.getRange(1, 1, size.rows, size.columns);
  fresh.getRange(1, 1, size.rows, size.columns).copyTo(target);
  // Whether a copy carries tick boxes and notes along, and takes away those of the old tab, is not documented.
  target.clearDataValidations();
  setTickBoxes(old, block);
  setNotes(old, block, size);
  quietly(() => setLayout(old, block));
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
  // Text that begins in a frozen column may be cut off where that one ends.
  quietly(() => sheet.setFrozenColumns(0));
  SpreadsheetApp.flush();
}
