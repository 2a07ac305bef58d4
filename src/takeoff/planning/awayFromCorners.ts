/**
 * End joints flush with or just past a corner of a hearth, wall or jamb leave a prong that breaks off: they are moved away
 * from it where that costs no plank, no rule, no joint in line and no offcut more that waits, and at most a crosscut.
 */

import type { CutJob, CutPlan } from '../../cutting/job';
import { judged } from '../../cutting/judge/judged';
import { checkCutPlan } from '../../cutting/judge/laws';
import { ledgerOf } from '../../cutting/plan/ledger';
import { type PlanOptions, planCutsInSteps } from '../../cutting/search';
import { finished, type Steps } from '../../cutting/steps';
import { sumOf } from '../../geometry/lists';
import { cornersInRuns } from '../../layout/corners';
import {
  exchanges,
  jointsOf,
  jointsOfRow,
  type Move,
  type Planks,
  planksOf,
  type RunPlace,
  shifts,
} from './movedJoints';
import { type FloorInRows, type PlannedFloors, planFloorsInSteps } from './planFloors';

/** Row -> run -> places that joints keep away from, in the unit of a job. */
type Corners = readonly (readonly (readonly number[])[])[];

/** What of a floor a move is judged by. */
interface Floor {
  readonly job: CutJob;
  readonly corners: Corners;
  /** Least distance of a joint from a corner, in the unit of the job. */
  readonly reach: number;
}

/** Floors as `planFloors` plans them, with their joints away from corners. */
export function planAwayFromCorners<F extends FloorInRows>(
  floors: readonly F[],
  options: PlanOptions,
): PlannedFloors<F> {
  return finished(planAwayInSteps(floors, options));
}

/** The same in steps. */
export function planAwayInSteps<F extends FloorInRows>(
  floors: readonly F[],
  options: PlanOptions,
): Steps<PlannedFloors<F>> {
  const { minRip } = floors[0].read.rules;
  return planFloorsInSteps(floors, options, function* (job, asked, { unit }) {
    const corners = floors.flatMap(({ layout }) =>
      cornersInRuns(layout).map((row) => row.map((places) => places.map((x) => x / unit))),
    );
    // Our choice: a prong narrower along its row than the narrowest rip is as hard to make and to lay.
    const plan = yield* planCutsInSteps(job, asked);
    yield;
    return awayFromCorners(job, plan, corners, Math.ceil(minRip / unit) + 1);
  });
}

/** Our choice: exchanges are looked at until so many planks have been booked: each takes the books of the whole floor. */
const MOST_BOOKED = 50_000;
/** ... and no more than this for one run. */
const MOST_EXCHANGED = 12;

/**
 * @param plan one that breaks no rule; any other stays as it is
 * @param reach least distance of a joint from a corner, in the unit of the job
 */
export function awayFromCorners(job: CutJob, plan: CutPlan, corners: Corners, reach: number): CutPlan {
  const floor = { job, corners, reach };
  const places = corners.flatMap((row, rowIndex) =>
    row.flatMap((own, runIndex) => (own.length > 0 ? [{ rowIndex, runIndex }] : [])),
  );
  const near = places.filter((place) => nearCorners(floor, plan, [place]) > 0);
  if (plan.broken.length > 0 || near.length === 0) return plan;
  let planks = planksOf(plan);
  let moved = plan;
  let left = Math.ceil(MOST_BOOKED / planks.size);
  for (const place of near) {
    const shift = bestShift(floor, moved, planks, place);
    // A change of places that costs nothing rather than another crosscut.
    const isFree = shift !== null && shift.cuts <= 0;
    const other = isFree ? null : bestExchange(floor, moved, place, Math.min(left, MOST_EXCHANGED));
    left -= other?.tried ?? 0;
    moved = other?.found?.plan ?? shift?.plan ?? moved;
    if (other?.found) planks = planksOf(moved);
  }
  return moved === plan ? plan : judged(job, moved);
}

/** The nearest shift that costs nothing, else the nearest that costs a crosscut. */
function bestShift(floor: Floor, plan: CutPlan, planks: Planks, place: RunPlace): Move | null {
  let oneCut: Move | null = null;
  for (const move of shifts(floor.job, plan, planks, place, 2 * floor.reach)) {
    if (move.cuts > 1 || (move.cuts === 1 && oneCut) || !helps(floor, plan, move)) continue;
    if (move.cuts <= 0) return move;
    oneCut = move;
  }
  return oneCut;
}

/** The nearest change of places that costs nothing. @param most how many are worked out to the end */
function bestExchange(
  floor: Floor,
  plan: CutPlan,
  place: RunPlace,
  most: number,
): { readonly found: Move | null; readonly tried: number } {
  const { job } = floor;
  let before: ReturnType<typeof ledgerOf> | null = null;
  let tried = 0;
  for (const move of exchanges(job, plan, place)) {
    if (!helps(floor, plan, move)) continue;
    if (tried === most) break;
    tried += 1;
    before ??= ledgerOf(job, plan);
    const after = ledgerOf(job, move.plan);
    const isFree = after.cutCount <= before.cutCount && after.waiting.most <= before.waiting.most;
    if (isFree && checkCutPlan(job, move.plan).length === 0) return { found: move, tried };
  }
  return { found: null, tried };
}

/** Whether a move takes joints from corners, keeps the stagger, and brings no joint more in line with one two rows on. */
function helps(floor: Floor, plan: CutPlan, move: Move): boolean {
  const { job } = floor;
  if (nearCorners(floor, move.plan, move.runs) >= nearCorners(floor, plan, move.runs)) return false;
  const nearRows = (of: CutPlan, rows: number, distance: number) =>
    move.runs.reduce((sum, place) => {
      const around = [-rows, rows].flatMap((step) => jointsOfRow(job, of, place.rowIndex, step));
      return sum + nearCount(jointsOf(job, of, place), around, distance);
    }, 0);
  if (nearRows(move.plan, 1, job.minStagger) > 0) return false;
  return nearRows(move.plan, 2, job.alignedDistance) <= nearRows(plan, 2, job.alignedDistance);
}

/** Pairs of a joint and a corner that are too near to each other. */
function nearCorners({ job, corners, reach }: Floor, plan: CutPlan, places: readonly RunPlace[]): number {
  return places.reduce((sum, place) => {
    return sum + nearCount(jointsOf(job, plan, place), corners[place.rowIndex][place.runIndex], reach);
  }, 0);
}

function nearCount(places: readonly number[], others: readonly number[], distance: number): number {
  return sumOf(places, (x) => others.filter((other) => Math.abs(x - other) < distance).length);
}
