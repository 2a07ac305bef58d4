/** Rows of cells as lines for a terminal, columns aligned; numbers stand at the right. */
export function textTable(rows: readonly (readonly string[])[]): string {
  const columnCount = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const widths = Array.from({ length: columnCount }, (_, i) =>
    rows.reduce((most, row) => Math.max(most, displayWidth(row[i] ?? '')), 0),
  );
  return rows
    .map((row) =>
      row
        .map((cell, i) => padded(cell, widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function padded(cell: string, width: number): string {
  const space = ' '.repeat(width - displayWidth(cell));
  return /^-?[\d,.]+%?$/.test(cell) ? space + cell : cell + space;
}

/** Characters, not UTF-16 units. */
function displayWidth(text: string): number {
  return [...text].length;
}
