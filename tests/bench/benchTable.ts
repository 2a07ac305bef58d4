/** Tables of the bench for the terminal: headings over numbers. */

export type Cell = string | number;

/** A column: its heading, and how its numbers are written. Text stands left, numbers right. */
export interface Column {
  readonly heading: string;
  /** Decimals of its numbers; 0 where missing. */
  readonly decimals?: number;
}

/** Lines of a table; a column is as wide as its widest cell. */
export function benchTable(columns: readonly Column[], rows: readonly (readonly Cell[])[]): string[] {
  const written = rows.map((row) => row.map((cell, i) => writeCell(cell, columns[i])));
  const widths = columns.map(({ heading }, i) => Math.max(heading.length, ...written.map((row) => row[i].length)));
  const isNumeric = columns.map((_, i) => rows.every((row) => typeof row[i] === 'number' || row[i] === '-'));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => (isNumeric[i] ? cell.padStart(widths[i]) : cell.padEnd(widths[i])))
      .join('  ')
      .trimEnd();
  return [
    line(columns.map(({ heading }) => heading)),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...written.map(line),
  ];
}

function writeCell(cell: Cell, column: Column): string {
  if (typeof cell === 'string') return cell;
  return Number.isFinite(cell) ? cell.toFixed(column.decimals ?? 0) : '-';
}
