/** Values that a script writes become what a person would have typed, as on the platform. */
import { isDate, serialOf } from '../customFunctions';
import type { CellEdit, Zone } from '../engine';
import { LOCALES } from '../locales';
import { type Book, cellKey, extrasOf } from './book';

const MOST_CHARACTERS = 50_000;
const DATE_FORMAT = 'm/d/yyyy';

/** The edit that writes one value into a cell: text is read as if typed, unless the cell's format is plain text. */
export function valueEdit(book: Book, tabId: string, row: number, column: number, value: unknown): CellEdit {
  const place = { kind: 'cell', tabId, row, column } as const;
  const { plainText } = extrasOf(book, tabId);
  const isPlain = plainText.has(cellKey(row, column)) || book.engine.format(tabId, row, column) === '@';
  if (isDate(value)) {
    const format = book.engine.format(tabId, row, column) || DATE_FORMAT;
    return { ...place, content: String(serialOf(value, book.settings.timeZone)), format };
  }
  if (typeof value !== 'string') return { ...place, content: plainContent(value) };
  if (value.length > MOST_CHARACTERS) {
    throw new Error(`Your input contains more than the maximum of ${MOST_CHARACTERS} characters in a single cell.`);
  }
  if (!isPlain) return { ...place, content: engineFormula(typedText(value, decimalSeparator(book)), book) };
  return plainTextEdit(place, value.startsWith("'") ? value.slice(1) : value, plainText);
}

/** The engine takes `=` for a formula even in a plain-text cell, so such a text is kept by an apostrophe instead. */
function plainTextEdit(place: Omit<CellEdit, 'content'>, text: string, plainText: Set<string>): CellEdit {
  const key = cellKey(place.row, place.column);
  if (!text.startsWith('=')) {
    plainText.delete(key);
    return { ...place, content: text, format: '@' };
  }
  plainText.add(key);
  return { ...place, content: `'${text}`, format: '' };
}

function plainContent(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '#NUM!';
  return String(value);
}

/**
 * A leading plus starts a formula too, unless a plain number follows; a number is typed with the separator of the
 * spreadsheet's locale, while the engine is told numbers with a point.
 */
function typedText(text: string, separator: string): string {
  if (separator === ',' && /^[+-]?[\d.]*\d,\d+%?$/.test(text)) return text.replaceAll('.', '').replace(',', '.');
  return text.startsWith('+') && Number.isNaN(Number(text)) ? `=${text.slice(1)}` : text;
}

/**
 * A formula written by a script is read in the spreadsheet's own syntax: `;` between arguments is taken everywhere, a comma
 * is the decimal sign where numbers are written with one, and a point in a number is an error there (reports:
 * github.com/ISA-tools/OntoMaton issues 15 and 36, mricon/ingress-fieldplan issue 5). The engine is told formulas with commas
 * and points.
 */
function engineFormula(content: string, book: Book): string {
  if (!content.startsWith('=')) return content;
  const separator = decimalSeparator(book);
  const inEngine = (code: string) => (separator === ',' ? withPoints(code) : code).replaceAll(';', ',');
  // Quoted texts and quoted tab names stay as they are.
  return content.replace(/"[^"]*"|'[^']*'|[^"']+/g, (part) => (/^["']/.test(part) ? part : inEngine(part)));
}

/** Decimal commas as points; two points in a row, which no engine reads, where a number has a point. */
function withPoints(code: string): string {
  return code.replace(/(?<![A-Z])\.(?=\d)|(?<=\d)\./gi, '..').replaceAll(',', '.');
}

function decimalSeparator(book: Book): string {
  return LOCALES[book.settings.locale]?.decimalSeparator ?? '.';
}

/**
 * Checks that rows fit a range. @throws Error in the platform's words
 * @param what the platform calls them `data`
 */
export function checkShape(rows: readonly (readonly unknown[])[], zone: Zone): void {
  const rowCount = zone.bottom - zone.top + 1;
  const columnCount = zone.right - zone.left + 1;
  if (!Array.isArray(rows) || !rows.every((row) => Array.isArray(row))) {
    throw new Error("The parameters (number[]) don't match the method signature for SpreadsheetApp.Range.setValues.");
  }
  if (rows.length !== rowCount) throw new Error(mismatch('rows', rows.length, rowCount));
  const wrong = rows.find((row) => row.length !== columnCount);
  if (wrong) throw new Error(mismatch('columns', wrong.length, columnCount));
}

function mismatch(what: 'rows' | 'columns', found: number, wanted: number): string {
  return `The number of ${what} in the data does not match the number of ${what} in the range. The data has ${found} but the range has ${wanted}.`;
}
