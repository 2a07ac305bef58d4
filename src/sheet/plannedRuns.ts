/** Rows of single runs, read from a range and planned, in ticks: what `PLANK_OFFCUTS` shows and `PLANK_COUNT` counts. */
import type { BrokenRule, CutJob, CutPlan } from '../cutting/job';
import { planCuts } from '../cutting/search';
import type { Ticks, Units } from '../geometry/length';
import type { Rules } from '../layout/rules';
import { cutJobOfRuns, markedLengths } from '../takeoff/planning/cutJob';
import { planInTicks } from '../takeoff/planning/planFloors';
import { MOST_PLANKS, MOST_STEPS } from '../takeoff/reading/limits';
import { problems } from '../takeoff/reading/problems';
import { lengthText } from '../takeoff/text/lengthText';
import { listOf } from './arguments';
import { lengthAbove0 } from './cells';

/** Our choice: twice the largest floor that is planned in about a second. */
const MOST_RUNS = 2000;

export interface PlannedRuns {
  /** Length to be covered in each row of the range, less the expansion gaps given; null for a blank row. */
  readonly runs: readonly (Ticks | null)[];
  /** The rows that are not blank, as they are marked: lengths in ticks. */
  readonly job: CutJob;
  readonly plan: CutPlan;
}

/**
 * Reads and plans the runs of a range.
 *
 * @throws Error with the first problem as its message
 */
export function plannedRuns(given: unknown, plankLength: Ticks, rules: Rules, units: Units): PlannedRuns {
  if (plankLength / rules.markingStep > MOST_STEPS) {
    throw new Error(problems.stepTooFine('marking step', lengthText(rules.markingStep, units, 'piece'), MOST_STEPS));
  }
  const covered = listOf('runs', given, lengthAbove0('room'), units);
  checkSize(covered, plankLength);
  const runs = covered.map((length, index) => length && lessGaps(length, index, rules.expansionGap, units));
  const filled = runs.filter((length) => length !== null);
  const { job, grid } = cutJobOfRuns(filled, plankLength, rules);
  const plan = planCuts(job);
  const stretches = filled.map((length) => ({ width: 0, runs: [{ x0: 0, x1: length }] }));
  const lengths = markedLengths(plan, stretches, 0, grid);
  const markedJob = jobInTicks(job, filled, plankLength, rules);
  return { runs, job: markedJob, plan: planInTicks(plan, markedJob, lengths) };
}

/** Numbers of the rows that are planned, as counted in the range. */
export function filledRowNumbers(runs: readonly (Ticks | null)[]): readonly number[] {
  return runs.flatMap((run, index) => (run === null ? [] : [index + 1]));
}

/** Where a plan breaks a rule, in words; rows are numbered as in the range, blank ones counted. */
export function brokenRuleText({ runs }: PlannedRuns, broken: BrokenRule, units: Units): string {
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const where = `runs, row ${filledRowNumbers(runs)[broken.rowIndex]}`;
  return problems.brokenRule(where, broken.rule, show(broken.found), show(broken.wanted));
}

function checkSize(covered: readonly (Ticks | null)[], plankLength: Ticks): void {
  const rowCount = covered.filter((length) => length !== null).length;
  if (rowCount > MOST_RUNS) throw new Error(problems.tooManyRows('runs', rowCount, MOST_RUNS));
  const plankCount = Math.ceil(covered.reduce<number>((sum, length) => sum + (length ?? 0), 0) / plankLength);
  if (plankCount > MOST_PLANKS) throw new Error(problems.tooManyPlanks('runs', plankCount, MOST_PLANKS));
}

function lessGaps(length: Ticks, index: number, gap: Ticks, units: Units): Ticks {
  if (length > 2 * gap) return length - 2 * gap;
  const show = (ticks: Ticks) => lengthText(ticks, units, 'piece');
  throw new Error(problems.gapTooWide(`runs, row ${index + 1}`, show(gap), show(length)));
}

/** The same job with the lengths as typed: where a plank is no whole number of steps, the grid's rules are stricter. */
function jobInTicks(job: CutJob, runs: readonly Ticks[], plankLength: Ticks, rules: Rules): CutJob {
  const { kerf, play, minPiece, minStagger, alignedDistance } = rules;
  const rows = runs.map((length) => ({ room: 0, width: 0, runs: [{ x: 0, length }] }));
  return { ...job, plankLength, plankWidth: 0, kerf, play, minPiece, minStagger, alignedDistance, rows };
}
