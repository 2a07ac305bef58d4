/** How far the tabs of a file reach, looked at before anything is made of them. */
import { columnOf } from './addresses';
import { MOST_CELLS, MOST_COLUMNS, MOST_ROWS } from './limits';
import { FileProblem } from './problem';

const ROW = /<((?:\w+:)?)row\b([^>]*?)(?:\/>|>([\s\S]*?)<\/\1row>)/g;

/** Rows below all others that only have a height or a look: some programs write the very last of a million. */
export function withoutFarRows(sheetXml: string): string {
  return sheetXml.replace(ROW, (whole, _, attributes: string, inside: string | undefined) => {
    const row = Number(/\br="(\d+)"/.exec(attributes)?.[1] ?? 0);
    return row > MOST_ROWS && !/<(?:\w+:)?(?:v|f|is)\b/.test(inside ?? '') ? '' : whole;
  });
}

/** @throws FileProblem when the tabs reach further than the limits */
export function checkExtent(sheets: ReadonlyMap<string, string>): void {
  let cells = 0;
  for (const [name, xml] of sheets) {
    const { rows, columns } = reach(xml);
    if (rows > MOST_ROWS || columns > MOST_COLUMNS) {
      throw new FileProblem(
        `A tab of it (${name}) reaches to row ${rows} and column ${columns}. ${MOST_ROWS} rows and ${MOST_COLUMNS} columns are the most.`,
      );
    }
    cells += rows * columns;
    if (cells > MOST_CELLS)
      throw new FileProblem(`Its tabs have more than ${MOST_CELLS} cells. Divide it into several.`);
  }
}

function reach(xml: string): { readonly rows: number; readonly columns: number } {
  let [rows, columns] = [0, 0];
  const take = (column: number, row: number) => {
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
  };
  for (const [, row] of xml.matchAll(/<(?:\w+:)?row\b[^>]*?\br="(\d+)"/g)) take(0, Number(row));
  // Cells, and what covers several of them: merges and formulas that fill a range.
  for (const [, letters = '', row] of xml.matchAll(
    /<(?:\w+:)?(?:c|f|mergeCell)\b[^>]*?\br(?:ef)?="(?:\$?[A-Z]+\$?\d+:)?\$?([A-Z]+)\$?(\d+)"/gi,
  )) {
    take(columnOf(letters) + 1, Number(row));
  }
  return { rows, columns };
}
