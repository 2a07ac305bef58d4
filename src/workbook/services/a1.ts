/** Cell addresses such as `B2:D9`. Rows and columns count from 0 in a zone and from 1 in an address. */
import type { Zone } from '../engine';

/** @param tab what an open end such as `B2:D` runs to. @returns undefined when it is no address */
export function zoneOfA1(
  text: string,
  tab: { readonly rowCount: number; readonly columnCount: number },
): Zone | undefined {
  const match = /^\$?([A-Z]*)\$?(\d*)(?::\$?([A-Z]*)\$?(\d*))?$/i.exec(text.trim());
  if (!match || text.trim() === '') return undefined;
  const [, firstColumn = '', firstRow = '', lastColumn, lastRow] = match;
  const isSingle = lastColumn === undefined;
  if (isSingle && (firstColumn === '' || firstRow === '')) return undefined;
  const columns = [columnIndex(firstColumn, 0), columnIndex(isSingle ? firstColumn : lastColumn, tab.columnCount - 1)];
  const rows = [rowIndex(firstRow, 0), rowIndex(isSingle ? firstRow : (lastRow ?? ''), tab.rowCount - 1)];
  return { top: Math.min(...rows), bottom: Math.max(...rows), left: Math.min(...columns), right: Math.max(...columns) };
}

/** `A1` for one cell, `A1:B2` for more. */
export function a1OfZone(zone: Zone): string {
  const first = `${columnLetters(zone.left)}${zone.top + 1}`;
  const last = `${columnLetters(zone.right)}${zone.bottom + 1}`;
  return first === last ? first : `${first}:${last}`;
}

function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : '') + String.fromCharCode(65 + (column % 26));
}

function columnIndex(letters: string, open: number): number {
  if (letters === '') return open;
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function rowIndex(digits: string, open: number): number {
  return digits === '' ? open : Number(digits) - 1;
}
