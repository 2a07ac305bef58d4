/** Good rows put together as calls: one cell each, columns and rows of cells, blank rows between. */
import type { Draw } from './draw';
import { type GoodRow, ROW_MAKERS } from './plainCalls';
import type { System } from './typedLengths';
import type { Call } from './verdict';

export const BY_CELL = Object.keys(ROW_MAKERS);

/** A call of a function that answers cell by cell: single values, or ranges of up to five. */
export function goodRowsCall(draw: Draw, name: string): Call {
  const system = draw.pick<System>(['us', 'metric']);
  const make = ROW_MAKERS[name];
  const rows = Array.from({ length: draw.oneIn(2) ? 1 : draw.whole(2, 5) }, () => make(draw, system));
  const units = unitsCell(draw, system);
  const [first] = rows;
  if (rows.length === 1 && draw.oneIn(2)) {
    return { name, cells: [...first.cells, units], reckoned: (answer) => first.reckoned(lineOf(answer)) };
  }
  const isAcross = name !== 'PLANK_ROWS' && draw.oneIn(3);
  const lines: readonly (GoodRow | null)[] = rows.flatMap((row) => (draw.oneIn(5) ? [null, row] : [row]));
  const trailing = draw.oneIn(4) ? 3 : 0;
  const all = [...lines, ...Array.from({ length: trailing }, () => null)];
  const ranges = first.cells.map((_, column) => {
    const cells = all.map((line) => (line === null ? '' : line.cells[column]));
    return isAcross ? [cells] : cells.map((cell) => [cell]);
  });
  return { name, cells: [...ranges, units], reckoned: (answer) => gridFault(answer, isAcross ? all : lines, isAcross) };
}

export function unitsCell(draw: Draw, system: System): unknown {
  return system === 'us' ? draw.pick<unknown>(['us', 'US', '', undefined]) : draw.pick(['metric', ' Metric ']);
}

function lineOf(answer: unknown): readonly unknown[] {
  return Array.isArray(answer) ? answer[0] : [answer];
}

function gridFault(answer: unknown, lines: readonly (GoodRow | null)[], isAcross: boolean): string | null {
  const grid: readonly (readonly unknown[])[] = Array.isArray(answer) ? answer : [[answer]];
  const cellsOf = (index: number) => (isAcross ? [grid[0][index]] : grid[index]);
  const count = isAcross ? grid[0].length : grid.length;
  if (count !== lines.length) return `answered ${count} rows where ${lines.length} were asked`;
  for (const [index, line] of lines.entries()) {
    const found = cellsOf(index);
    const isBlank = found.every((cell) => cell === '');
    const fault = line === null ? (isBlank ? null : 'answered a blank row') : line.reckoned(found);
    if (fault !== null) return `row ${index + 1}: ${fault}`;
  }
  return null;
}
