/**
 * Rows of cells as lines for a terminal, columns aligned, numbers at the right. As in a sheet, a text that has only
 * blank cells to its right runs on over them and does not widen its column.
 */
export function textTable(rows: readonly (readonly string[])[]): string {
  const columnCount = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const widths = Array.from({ length: columnCount }, (_, column) =>
    rows.reduce((most, row) => Math.max(most, runsOn(row, column) ? 0 : characters(row[column] ?? '')), 0),
  );
  return rows.map((row) => lineOf(row, widths)).join('\n');
}

const GAP = 2;

function runsOn(row: readonly string[], column: number): boolean {
  return row.slice(column + 1).every((cell) => cell === '');
}

function lineOf(row: readonly string[], widths: readonly number[]): string {
  let line = '';
  let start = 0;
  widths.forEach((width, column) => {
    line += ' '.repeat(Math.max(0, start - characters(line))) + padded(row[column] ?? '', width);
    start += width + GAP;
  });
  return line.trimEnd();
}

function padded(cell: string, width: number): string {
  const space = ' '.repeat(Math.max(0, width - characters(cell)));
  return /^-?[\d,.]+%?$/.test(cell) ? space + cell : cell + space;
}

/** Not UTF-16 units. */
function characters(text: string): number {
  return [...text].length;
}
