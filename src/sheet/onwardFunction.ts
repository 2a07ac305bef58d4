/** The custom function for the floor as laid: the rest of the rows with what lies and what is in hand. */
import { bestInParts, type FewerOver, rowsInParts } from '../cutting/onward/inParts';
import { legalPlans, planOnward } from '../cutting/onward/onward';
import type { OnwardJob, OnwardPlan, StockPiece } from '../cutting/onward/onwardJob';
import { type FineTicks, ticksUnrounded, type Units } from '../geometry/length';
import { isDate } from '../tabs/dates';
import { cutJobOfRuns, type Grid } from '../takeoff/planning/cutJob';
import { STEPS_OF_A_CALL } from '../takeoff/planning/stepsOfACall';
import { onwardProblems } from '../takeoff/reading/onwardProblems';
import { problems } from '../takeoff/reading/problems';
import { type CellAnswer, cellsOf, filledList, singleValues } from './arguments';
import { count, type Fault, fineLengthAbove0, isBlank, isFault, plankLength, wordsIn } from './cells';
import { typedLengthText } from './lengthFunctions';
import { onwardTable, type PieceInHand } from './onwardTable';
import { checkSteps } from './plannedRuns';
import { runRules } from './rulesRange';

/** Our choice: what is planned in some seconds in a cell; more offcuts than anybody keeps, more pieces than any row has. */
const MOST = { runs: 200, inHand: 100, laid: 500 };
const ENDS = ['left', 'right', 'both', 'none'] as const;

/**
 * Plans the rest of a floor from what lies and what is in hand: what to do next, how many planks are needed, then a line per
 * piece: row, piece, length, end to keep, cut from. Lengths are inches, or millimetres with units "metric". Offcuts in hand
 * come first; joints keep away from the row that lies. It answers anew as soon as a cell changes.
 * Example: PLANK_ONWARD(A2:A12, 47.25, C2:F2, H2:J9, 20, 9) with the lengths of the rows to lay in A2:A12, the pieces of row 8 in C2:F2, the offcuts in H2:J9 and 20 whole planks left.
 *
 * @param {range} runs Length to be covered in each row still to be laid: feet (metres with "metric"), or text such as 12' 6 1/2". One column or one row of cells, none blank between them, at most 200.
 * @param {number|string} plank_length Length of a plank: inches (millimetres), or text such as 47 1/4" or 1.2 m.
 * @param {range} [laid] Pieces of the last row that lies, from the left: inches (millimetres) or text, one row of cells. A second row of cells is the row before it. Blank when nothing lies.
 * @param {range} [in_hand] Three columns: what is written on an offcut, its length in inches (millimetres) or as text, the factory end it has: left, right, both or none. Blank rows are left out.
 * @param {number} [whole_planks] Whole planks left. Blank means 0.
 * @param {number} [next_row] Number of the next row. Blank means 1.
 * @param {range} [rules] Two columns, name and value, as for PLANK_OFFCUTS.
 * @param {string} [units] "us" for feet and inches, "metric" for metres and millimetres. Blank means "us".
 * @param {number} [rows_a_day] Rows you lay in a day. Blank for none: then nothing is said of days.
 * @param {number} [lay_first] Number of the last row that is laid before the furniture goes over to that side. Blank when all is laid in one go.
 * @return {range} What to do next, what is needed, and the rest of the cut list.
 * @customfunction
 */
export function PLANK_ONWARD(
  runs: unknown,
  plank_length: unknown,
  laid?: unknown,
  in_hand?: unknown,
  whole_planks?: unknown,
  next_row?: unknown,
  rules?: unknown,
  units?: unknown,
  rows_a_day?: unknown,
  lay_first?: unknown,
): CellAnswer[][] {
  const table = {
    plank_length: { given: plank_length, read: plankLength },
    whole_planks: { given: whole_planks, read: count, whenBlank: () => 0 },
    next_row: { given: next_row, read: rowNumber, whenBlank: () => 1 },
    rows_a_day: { given: rows_a_day, read: count, whenBlank: () => 0 },
    lay_first: { given: lay_first, read: count, whenBlank: () => 0 },
  };
  const { values, units: system } = singleValues(table, units);
  const read = runRules(rules, system);
  const plank = values.plank_length;
  checkSteps(plank, read, system);
  const lengths = filledList('runs', runs, fineLengthAbove0('room'), system);
  if (lengths.length > MOST.runs) throw new Error(problems.tooManyRows('runs', lengths.length, MOST.runs));
  const gaps = 2 * read.expansionGap;
  const covered = lengths.map((length) => Math.max(read.markingStep, ticksUnrounded(length) - gaps));
  const { job, grid } = cutJobOfRuns(covered, ticksUnrounded(plank), read);
  const pieces = inHandIn(in_hand, plank, system);
  const onward: OnwardJob = {
    job,
    before: [{ room: 0, ...beforeIn('laid', laid, grid, system) }],
    stock: pieces.map((piece) => stockOf(piece, grid)),
    whole: values.whole_planks,
  };
  const { next_row: nextRow, rows_a_day: rowsADay, lay_first: layFirst } = values;
  const part = partPlan(onward, layFirst - nextRow + 1);
  return onwardTable({ ...part, onward, grid, covered, pieces, nextRow, units: system, rowsADay, layFirst });
}

const MOST_ROWS = 10_000;

function rowNumber(cell: unknown): number | Fault {
  const read = count(cell);
  if (read === 0) return { says: onwardProblems.rowZero };
  // Our choice: ten times the rows of the largest floor. Beyond whole numbers one row more would be the same number.
  return typeof read === 'number' && read > MOST_ROWS ? { says: onwardProblems.rowTooFar } : read;
}

/** The rest in one go, or in two parts with few offcuts going over. @param firstPart rows of the first part */
function partPlan(
  onward: OnwardJob,
  firstPart: number,
): { readonly plan: OnwardPlan; readonly isInParts: boolean; readonly fewerOver: FewerOver | null } {
  const isInParts = firstPart > 0 && firstPart < onward.job.rows.length;
  // The plan in one go, and three more for the parts of it.
  const options = { mostSteps: STEPS_OF_A_CALL / (isInParts ? 4 : 1) };
  const plan = planOnward(onward, undefined, options);
  if (!isInParts || plan.broken.length > 0) return { plan, isInParts, fewerOver: null };
  const parts = legalPlans(onward, rowsInParts(onward, firstPart, options), plan.bound);
  const { best, fewerOver } = bestInParts([plan, ...parts], firstPart);
  return { plan: best, isInParts, fewerOver };
}

/** Joints of the rows that lie, in units of the grid from where the rows begin. */
export function beforeIn(
  name: string,
  given: unknown,
  grid: Grid,
  units: Units,
): { readonly joints: readonly number[]; readonly joints2: readonly number[] } {
  const rows = isBlank(given) ? [] : cellsOf(given).filter((row) => row.some((cell) => !isBlank(cell)));
  if (rows.length > 2) throw new Error(onwardProblems.twoRows(name, rows.length));
  const [joints = [], joints2 = []] = rows.map((row, i) => {
    const where = `${name}, row ${i + 1}`;
    const last = row.reduce<number>((at, cell, c) => (isBlank(cell) ? at : c), 0);
    if (last >= MOST.laid) throw new Error(onwardProblems.tooManyLaid(where, last + 1, MOST.laid));
    const pieces = row.slice(0, last + 1).map((cell, c) => {
      return ticksUnrounded(readIn(`${where}, column ${c + 1}`, cell, units));
    });
    let at = 0;
    return pieces.slice(0, -1).map((length) => {
      at += length;
      return at / grid.unit;
    });
  });
  return { joints, joints2 };
}

/** @param plank length of a plank: no offcut is longer */
export function inHandIn(given: unknown, plank: FineTicks, units: Units): readonly PieceInHand[] {
  if (isBlank(given)) return [];
  const show = (length: FineTicks) => typedLengthText(length, units);
  const pieces = cellsOf(given).flatMap((row, i): PieceInHand[] => {
    if (row.every(isBlank)) return [];
    const where = `in_hand, row ${i + 1}`;
    if (row.length < 3) throw new Error(onwardProblems.inHandColumns(row.length));
    if (isDate(row[0])) throw new Error(onwardProblems.markIsDate(where));
    const typed = wordsIn(row[2])
      .toLowerCase()
      .replace(/ (end|ends)$/, '');
    const ends = ENDS.find((end) => end === typed);
    if (!ends) throw new Error(onwardProblems.inHandEnd(where, wordsIn(row[2])));
    const length = readIn(where, row[1], units);
    if (length > plank) throw new Error(onwardProblems.longerThanPlank(where, show(length), show(plank)));
    return [{ mark: wordsIn(row[0]) || `${i + 1}`, length, ends }];
  });
  if (pieces.length > MOST.inHand) throw new Error(problems.tooManyRows('in_hand', pieces.length, MOST.inHand));
  return pieces;
}

function readIn(where: string, cell: unknown, units: Units): FineTicks {
  if (isBlank(cell)) throw new Error(problems.blankBetween(where));
  const read = fineLengthAbove0('plank')(cell, units);
  if (isFault(read)) throw new Error(read.says(where));
  return read;
}

/**
 * Rounded down: what is a little under a unit too short does not fit. Where a plank is no whole number of marking steps, a
 * piece may be marked up to two steps longer than it is planned.
 */
export function stockOf({ length, ends }: PieceInHand, grid: Grid): StockPiece {
  const moved = grid.unit === grid.markingStep ? 0 : 2 * grid.markingStep;
  return { length: Math.max(0, Math.floor((ticksUnrounded(length) - moved) / grid.unit + 1e-9)), ends };
}
