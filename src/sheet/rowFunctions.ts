/** Custom functions for rows: their number, the first and last width, and how end joints are staggered. */
import { type FineTicks, fineTicksOf, type Units } from '../geometry/length';
import { type RowsNote, rowsAcross } from '../layout/rips';
import { type LengthRuleKey, usualLength } from '../layout/rules';
import { problems } from '../takeoff/reading/problems';
import { type Argument, answersOf, type CellAnswer, cellsOf, oneOrGrid, sizeText } from './arguments';
import {
  type Fault,
  faultIn,
  fineLength0OrMore,
  fineLengthAbove0,
  isFault,
  plankLength,
  plankWidth,
  smallRule,
} from './cells';
import { typedLengthNumber, typedLengthText, typedRoomText } from './lengthFunctions';
import { staggerVerdicts, startedRow } from './staggerVerdicts';

/**
 * Width of the last row when the first row is a full plank: what is left of the depth, less the gap at both walls.
 * Answers inches, or millimetres with units "metric".
 * Example: PLANK_LAST_ROW(10, 7.5, 0.25) is 7: ten feet less half an inch is 15 rows of 7 1/2 and 7 inches.
 *
 * @param {number|string|range} depth Depth of the room across the rows, wall to wall: feet (metres with "metric"), or text such as 10' 4 1/2" or 3.81 m.
 * @param {number|string|range} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string|range} [gap] Expansion gap at each of the two walls: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {number} Inches or millimetres.
 * @customfunction
 */
export function PLANK_LAST_ROW(
  depth: unknown,
  plank_width: unknown,
  gap?: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  return oneOrGrid(
    answersOf(depthTable(depth, plank_width, gap), units, (room, system) => {
      const laid = laidDepth(room.depth, room.gap, system);
      if (isFault(laid)) return laid;
      if (laid < room.plank_width) return noFullRow(room.plank_width, laid, system);
      const leastRow = defaultOf('markingStep')(system);
      return typedLengthNumber(rowsAcross(laid, room.plank_width, { minRip: 0, leastRow }).last, system);
    }),
  );
}

/**
 * How many rows a room takes and how wide the first and the last come out: one line of rows, first-row width,
 * last-row width, note. The first row is a full plank unless the last would be under min_rip; then both are ripped to
 * the same width. Widths are inches, or millimetres with units "metric".
 * Example: PLANK_ROWS(10, 7.5, 0.375) is 16, 7.5, 6.75, first row full, last row ripped.
 *
 * @param {number|string|range} depth Depth of the room across the rows, wall to wall: feet (metres with "metric"), or text such as 10' 4 1/2" or 3.81 m. A column answers a line for each cell.
 * @param {number|string|range} plank_width Width of a plank's face: inches (millimetres), or text such as 7 1/2".
 * @param {number|string|range} [gap] Expansion gap at each of the two walls: inches (millimetres). Blank means 3/8 in (10 mm).
 * @param {number|string|range} [min_rip] Narrowest row you will lay: inches (millimetres). Blank means 2 in (50 mm).
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} Rows, first-row width, last-row width, note.
 * @customfunction
 */
export function PLANK_ROWS(
  depth: unknown,
  plank_width: unknown,
  gap?: unknown,
  min_rip?: unknown,
  units?: unknown,
): CellAnswer[][] {
  const table = {
    ...depthTable(depth, plank_width, gap),
    min_rip: { given: min_rip, read: fineLength0OrMore('plank'), whenBlank: defaultOf('minRip') },
  };
  const lines = answersOf(table, units, (room, system) => {
    const laid = laidDepth(room.depth, room.gap, system);
    return isFault(laid) ? laid : rowsLine(laid, room.plank_width, room.min_rip, system);
  });
  if (lines[0].length > 1) throw new Error(problems.oneColumn('depth', sizeText(lines)));
  return lines.map(([line]) => (line === '' ? ['', '', '', ''] : [...line]));
}

/**
 * Whether the end joints of each row are far enough from those of the row before, when all rows start at the same
 * wall. One verdict per row: OK, or which joint is too near which and by how much.
 * Example: PLANK_STAGGER(A2:A10, 47.25, 8, 12.5) with the first pieces of nine rows in A2:A10, the rows 12 1/2 feet long.
 *
 * @param {range} first_pieces Length of the first piece in each row: inches (millimetres with "metric"), or text such as 23 5/8". One column or one row of cells.
 * @param {number|string|range} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {number|string|range} [min_stagger] Least distance between joints of neighbouring rows: inches (millimetres); exactly this is far enough. Blank means 8 in (200 mm).
 * @param {number|string|range} [run] Length to be covered in the rows: feet (metres), or text. It says where the last joint of a row falls; blank follows the rows until their joints repeat.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @return {range} A verdict for each row; blank for a blank row, and none on the row after it.
 * @customfunction
 */
export function PLANK_STAGGER(
  first_pieces: unknown,
  plank_length: unknown,
  min_stagger?: unknown,
  run?: unknown,
  units?: unknown,
): CellAnswer | CellAnswer[][] {
  const cells = cellsOf(first_pieces);
  if (cells.length > 1 && cells[0].length > 1) throw new Error(problems.oneColumn('first_pieces', sizeText(cells)));
  const table = {
    first_pieces: { given: first_pieces, read: fineLengthAbove0('plank') },
    plank_length: { given: plank_length, read: plankLength },
    min_stagger: { given: min_stagger, read: fineLength0OrMore('plank'), whenBlank: defaultOf('minStagger') },
    run: optionalRun(run),
  };
  return oneOrGrid(staggerVerdicts(answersOf(table, units, startedRow)));
}

function depthTable(depth: unknown, plank_width: unknown, gap: unknown) {
  return {
    depth: { given: depth, read: fineLengthAbove0('room') },
    plank_width: { given: plank_width, read: plankWidth },
    gap: { given: gap, read: smallRule('expansionGap'), whenBlank: defaultOf('expansionGap') },
  };
}

function defaultOf(key: LengthRuleKey): (units: Units) => FineTicks {
  return (units) => fineTicksOf(usualLength(key, units));
}

function optionalRun(given: unknown): Argument<FineTicks | null> {
  return { given, read: fineLengthAbove0('room'), whenBlank: () => null };
}

/** What is left of a depth to lay, the gap taken off at both walls. */
function laidDepth(depth: FineTicks, gap: FineTicks, units: Units): FineTicks | Fault {
  if (depth > 2 * gap) return depth - 2 * gap;
  return faultIn('gap', (where) =>
    problems.gapTooWide(where, typedLengthText(gap, units), typedRoomText(depth, units)),
  );
}

function noFullRow(plankWidth: FineTicks, laid: FineTicks, units: Units): Fault {
  return faultIn('plank_width', (where) =>
    problems.noFullRow(where, typedLengthText(plankWidth, units), typedLengthText(laid, units)),
  );
}

function rowsLine(laid: FineTicks, plankWidth: FineTicks, minRip: FineTicks, units: Units): CellAnswer[] {
  const leastRow = defaultOf('markingStep')(units);
  const rows = rowsAcross(laid, plankWidth, { minRip, leastRow });
  const show = (width: FineTicks) => typedLengthText(width, units);
  const alike = rows.rowCount === 1 ? 'one row, ripped' : 'first and last row ripped alike';
  // Rounded, a hair under the minimum rip would read as the minimum rip itself.
  const [last, least] = [show(rows.lastAfterFull), show(minRip)];
  const found = last === least ? `just under ${least}` : last;
  const notes: Readonly<Record<RowsNote, string>> = {
    'all rows full':
      rows.leftInGap === 0
        ? 'all rows full'
        : `all rows full, less than ${show(leastRow)} left for the gap at the wall`,
    'last row ripped': 'first row full, last row ripped',
    'first and last row alike': `${alike}: after a full first row the last would be ${found}`,
    'one row': 'one row, ripped',
    'under the minimum rip': `${alike}, under the minimum rip of ${least}`,
  };
  const width = (fine: FineTicks) => typedLengthNumber(fine, units);
  return [rows.rowCount, width(rows.first), width(rows.last), notes[rows.note]];
}
