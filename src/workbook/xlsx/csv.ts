/** A tab as CSV. Source of the form: RFC 4180; the mark in front and the semicolon are what spreadsheets look for. */
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';

/** Tells a spreadsheet that the text is UTF-8, so that a half stays a half. */
const MARK = '\uFEFF';

/** What the tab shows, row by row; cells are parted by semicolons where numbers have a decimal comma. */
export function csvOf(engine: OSpreadsheetEngine, tabId: string): string {
  const separator = engine.model.getters.getLocale().decimalSeparator === ',' ? ';' : ',';
  const { row, column } = engine.used(tabId);
  const line = (at: number) =>
    Array.from({ length: column + 1 }, (_, i) => field(engine, tabId, at, i, separator)).join(separator);
  return MARK + Array.from({ length: row + 1 }, (_, i) => `${line(i)}\r\n`).join('');
}

function field(engine: OSpreadsheetEngine, tabId: string, row: number, column: number, separator: string): string {
  const { kind, shown } = engine.cell(tabId, row, column);
  // A text that another program would take for a formula, and run.
  const text = kind === 'text' && /^(?:[=@]|[+-].*[(|!])/.test(shown) ? `'${shown}` : shown;
  return /["\r\n]/.test(text) || text.includes(separator) ? `"${text.replaceAll('"', '""')}"` : text;
}
