/** Rows of single runs, read from a range and planned, in ticks: what `PLANK_OFFCUTS` shows and `PLANK_COUNT` counts. */

import type { BrokenRule, CutJob, CutPlan } from '../cutting/job';
import { type PlanOptions, planCutsQuickly } from '../cutting/search';
import { type FineTicks, fineTicksOf, type Ticks, ticksOf, ticksUnrounded, type Units } from '../geometry/length';
import { addedUp } from '../geometry/lists';
import type { Rules } from '../layout/rules';
import { cutJobOfRuns, markedLengths } from '../takeoff/planning/cutJob';
import { planInTicks } from '../takeoff/planning/planFloors';
import { STEPS_OF_A_CALL } from '../takeoff/planning/stepsOfACall';
import { MOST_PLANKS, MOST_STEPS } from '../takeoff/reading/limits';
import { problems } from '../takeoff/reading/problems';
import { lengthText, pieceText } from '../takeoff/text/lengthText';
import { filledList } from './arguments';
import { fineLengthAbove0 } from './cells';
import { typedLengthText } from './lengthFunctions';

/** Our choice: more rows than any hall has, planned in some seconds with the steps of a call, without a compiler too. */
const MOST_RUNS = 500;

export interface PlannedRuns {
  /** Length to be covered in each row of the range, less the expansion gaps given. */
  readonly runs: readonly FineTicks[];
  /** The rows as they are marked: lengths in ticks. */
  readonly job: CutJob;
  readonly plan: CutPlan;
}

/** How a plan takes part in a call. */
interface SharedCall extends Pick<PlanOptions, 'secondGoals'> {
  /** 1 where it is missing. */
  readonly planCount?: number;
}

/** @throws Error where a plank has more marking steps than can be searched */
export function checkSteps(plankLength: FineTicks, { markingStep }: Rules, units: Units): void {
  if (ticksOf(plankLength) / markingStep <= MOST_STEPS) return;
  throw new Error(problems.stepTooFine('marking step', lengthText(markingStep, units, 'piece'), MOST_STEPS));
}

/**
 * Reads and plans the runs of a range.
 *
 * @param shared how many plans the call makes of them, which share its steps, and whether only their count is wanted
 * @throws Error with the first problem as its message
 */
export function plannedRuns(
  given: unknown,
  plankLength: FineTicks,
  rules: Rules,
  units: Units,
  { planCount = 1, secondGoals }: SharedCall = {},
): PlannedRuns {
  checkSteps(plankLength, rules, units);
  const covered = runsIn(given, units);
  checkSize(covered, plankLength, planCount);
  const runs = covered.map((length, index) => lessGaps(length, index, rules.expansionGap, units));
  const inTicks = runs.map(ticksUnrounded);
  const { job, grid } = cutJobOfRuns(inTicks, ticksUnrounded(plankLength), rules);
  const plan = planCutsQuickly(job, { mostSteps: STEPS_OF_A_CALL / planCount, secondGoals });
  const stretches = inTicks.map((length) => ({ width: 0, runs: [{ x0: 0, x1: length }] }));
  const lengths = markedLengths(plan, stretches, 0, grid);
  const marked = lengths.map(([pieces]) => addedUp(pieces));
  const markedJob = jobInTicks(job, marked, ticksOf(plankLength), rules);
  return { runs, job: markedJob, plan: planInTicks(plan, markedJob, lengths) };
}

/** Where a plan breaks a rule, in words. */
export function brokenRuleText(broken: BrokenRule, units: Units): string {
  const show = pieceText(units);
  const where = `runs, row ${broken.rowIndex + 1}`;
  return problems.brokenRule(where, broken.rule, show(broken.found), show(broken.wanted));
}

function runsIn(given: unknown, units: Units): readonly FineTicks[] {
  return filledList('runs', given, fineLengthAbove0('room'), units);
}

function checkSize(covered: readonly FineTicks[], plankLength: FineTicks, planCount: number): void {
  const rowCount = covered.length;
  if (rowCount > MOST_RUNS) throw new Error(problems.tooManyRows('runs', rowCount, MOST_RUNS));
  if (rowCount * planCount > MOST_RUNS) {
    throw new Error(problems.tooMuchToPlan('plank_length', rowCount * planCount, MOST_RUNS));
  }
  const plankCount = Math.ceil(addedUp(covered) / plankLength);
  if (plankCount > MOST_PLANKS) throw new Error(problems.tooManyPlanks('runs', plankCount, MOST_PLANKS));
}

function lessGaps(length: FineTicks, index: number, gap: Ticks, units: Units): FineTicks {
  const left = length - 2 * fineTicksOf(gap);
  if (left > 0) return left;
  const [gapText, lengthShown] = [lengthText(gap, units, 'piece'), typedLengthText(length, units)];
  throw new Error(problems.gapTooWide(`runs, row ${index + 1}`, gapText, lengthShown));
}

/**
 * The same job in ticks, with runs as long as their pieces are marked and the rules as typed: where a plank is no whole
 * number of steps, those of the grid are stricter.
 */
function jobInTicks(job: CutJob, runs: readonly Ticks[], plankLength: Ticks, rules: Rules): CutJob {
  const { kerf, play, minPiece, minStagger, alignedDistance } = rules;
  const rows = runs.map((length) => ({ room: 0, width: 0, runs: [{ x: 0, length }] }));
  return { ...job, plankLength, plankWidth: 0, kerf, play, minPiece, minStagger, alignedDistance, rows };
}
