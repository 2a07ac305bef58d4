/** Rows of single runs, planned: what `PLANK_OFFCUTS` shows and `PLANK_COUNT` counts. */
import type { BrokenRule, CutJob, CutPlan, PlannedPiece } from '../cutting/job';
import { ledgerOf } from '../cutting/ledger';
import { planCuts } from '../cutting/search';
import type { Ticks, Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import { cutJobOfRuns, type Grid, markedLengths } from '../takeoff/cutJob';
import { MOST_STEPS } from '../takeoff/drawRoom';
import { lengthText } from '../takeoff/lengthText';
import { problems } from '../takeoff/problems';
import { type CellAnswer, listOf } from './arguments';
import { lengthAbove0 } from './cells';
import { lengthNumber } from './lengthFunctions';

/** Our choice: twice the largest floor that is planned in about a second. */
const MOST_RUNS = 2000;

/** Our choice: many times what `MOST_RUNS` rows of planks take; more is a slip of units. */
const MOST_PLANKS = 50_000;

export interface PlannedRuns {
  /** Length to be covered in each row of the range, less the expansion gaps given; null for a blank row. */
  readonly runs: readonly (Ticks | null)[];
  readonly job: CutJob;
  readonly grid: Grid;
  readonly plan: CutPlan;
  readonly rules: Rules;
}

/**
 * Reads and plans the runs of a range.
 *
 * @throws Error with the first problem as its message
 */
export function plannedRuns(given: unknown, plankLength: Ticks, rules: Rules, units: Units): PlannedRuns {
  if (plankLength / rules.markingStep > MOST_STEPS) {
    throw new Error(problems.stepTooFine('marking step', lengthText(rules.markingStep, units, 'piece')));
  }
  const covered = listOf('runs', given, lengthAbove0('room'), units);
  const rowCount = covered.filter((length) => length !== null).length;
  if (rowCount > MOST_RUNS) throw new Error(problems.tooManyRows('runs', rowCount, MOST_RUNS));
  const plankCount = Math.ceil(covered.reduce<number>((sum, length) => sum + (length ?? 0), 0) / plankLength);
  if (plankCount > MOST_PLANKS) throw new Error(problems.tooManyPlanks('runs', plankCount, MOST_PLANKS));
  const runs = covered.map((length, index) => length && lessGaps(length, index, rules.expansionGap, units));
  const filled = runs.filter((length) => length !== null);
  const { job, grid } = cutJobOfRuns(filled, plankLength, rules);
  return { runs, job, grid, plan: planCuts(job), rules };
}

/** Where a plan breaks a rule, in words; rows are numbered as in the range, blank ones counted. */
export function brokenRuleText({ runs, grid }: PlannedRuns, broken: BrokenRule, units: Units): string {
  const rowNumber = filledRowNumbers(runs)[broken.rowIndex];
  const show = (length: number) => lengthText(length * grid.unit, units, 'piece');
  return problems.brokenRule(`runs, row ${rowNumber}`, broken.rule, show(broken.found), show(broken.wanted));
}

/** A heading, a line for every row of the range (blank for a blank one), and what is to be said when rules are broken. */
export function offcutTable(planned: PlannedRuns, units: Units): CellAnswer[][] {
  const lines = plannedLines(planned, units);
  const rows = planned.runs.map((run) => (run === null ? BLANK_LINE : (lines.shift() as CellAnswer[])));
  const notes = brokenNotes(planned, units).map((sentence) => [sentence, ...BLANK_LINE.slice(1)]);
  return [HEADING, ...rows, ...notes].map((line) => [...line]);
}

const HEADING: readonly CellAnswer[] = [
  'row',
  'first piece',
  'cut from',
  'whole planks',
  'last piece',
  'cut from',
  'left over',
];
const BLANK_LINE: readonly CellAnswer[] = ['', '', '', '', '', '', ''];

function brokenNotes(planned: PlannedRuns, units: Units): readonly string[] {
  const { broken } = planned.plan;
  const shown = broken.slice(0, 3).map((rule) => brokenRuleText(planned, rule, units));
  return broken.length > 3 ? [...shown, problems.morePlaces(broken.length - 3)] : shown;
}

function lessGaps(length: Ticks, index: number, gap: Ticks, units: Units): Ticks {
  if (length > 2 * gap) return length - 2 * gap;
  const show = (ticks: Ticks) => lengthText(ticks, units, 'piece');
  throw new Error(problems.gapTooWide(`runs, row ${index + 1}`, show(gap), show(length)));
}

function filledRowNumbers(runs: readonly (Ticks | null)[]): readonly number[] {
  return runs.flatMap((run, index) => (run === null ? [] : [index + 1]));
}

function plannedLines({ runs, job, grid, plan }: PlannedRuns, units: Units): CellAnswer[][] {
  const rowNumbers = filledRowNumbers(runs);
  const stretches = runs.flatMap((run) => (run === null ? [] : [{ width: 0, runs: [{ x0: 0, x1: run }] }]));
  const marked = markedLengths(plan, stretches, 0, grid);
  const leftOver = leftOverByRow(job, plan);
  const source = sourceWriter(rowNumbers);
  return plan.rows.map((row, rowIndex) => {
    const pieces = row.runs[0];
    const lengths = marked[rowIndex][0].map((length) => lengthNumber(length, units));
    const last = pieces.length - 1;
    const origins = pieces.map((piece) => source(piece, rowIndex));
    return [
      rowNumbers[rowIndex],
      lengths[0],
      origins[0],
      Math.max(0, last - 1),
      last > 0 ? lengths[last] : '',
      last > 0 ? origins[last] : '',
      lengthNumber(leftOver[rowIndex] * grid.unit, units),
    ];
  });
}

/** What is left of planks after their last piece, by the row of that piece, in the job's unit. */
function leftOverByRow(job: CutJob, plan: CutPlan): readonly number[] {
  const leftOver = plan.rows.map(() => 0);
  for (const plank of ledgerOf(job, plan).planks) {
    leftOver[plank.pieces[plank.pieces.length - 1].rowIndex] += plank.leftOver;
  }
  return leftOver;
}

/** Says where each piece comes from when asked in laying order: planks count from 1 as they are first needed. */
function sourceWriter(rowNumbers: readonly number[]): (piece: PlannedPiece, rowIndex: number) => string {
  const opened = new Map<number, { readonly plankNumber: number; readonly rowIndex: number }>();
  return (piece, rowIndex) => {
    const before = opened.get(piece.plank);
    const plankNumber = before?.plankNumber ?? opened.size + 1;
    opened.set(piece.plank, { plankNumber, rowIndex });
    if (before === undefined) return `plank ${plankNumber}`;
    const from = before.rowIndex === rowIndex ? 'this row' : `row ${rowNumbers[before.rowIndex]}`;
    return `offcut of ${from} (plank ${plankNumber})`;
  };
}
