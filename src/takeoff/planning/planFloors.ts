/** Floors laid from the same planks -> one cut plan, and that plan as it is marked. */

import type { CutJob, CutPlan } from '../../cutting/job';
import { judged } from '../../cutting/judge/judged';
import { type Ledger, ledgerOf } from '../../cutting/plan/ledger';
import { brokenRules } from '../../cutting/plan/pairing';
import { type PlanOptions, planCutsQuicklyInSteps } from '../../cutting/search';
import { finished, type Steps } from '../../cutting/steps';
import { type Ticks, ticksUnrounded } from '../../geometry/length';
import { addedUp, lastOf } from '../../geometry/lists';
import type { RowLayout } from '../../layout/rows';
import type { LongEdge, Rules } from '../../layout/rules';
import type { Product, ReadRoom, StartChoice } from '../reading/readRoom';
import { cutJobOf, type Grid, markedLengths } from './cutJob';

/** What of a floor the plan needs to know. */
export interface FloorInRows {
  readonly read: Pick<ReadRoom, 'name' | 'units' | 'product' | 'rules'> & {
    readonly start: Pick<StartChoice, 'startEdge' | 'reuseStrips' | 'aim'>;
  };
  readonly layout: RowLayout;
  /** Which side of a middle line it is; not given = there is none. */
  readonly part?: 'whole' | 'ahead' | 'behind';
}

/**
 * The edge of its planks that lies towards where a floor starts. With the other edge planks are turned round, and so are
 * their ends: such floors cannot share planks. From a middle line the grooves of both sides meet.
 */
export function startEdgeOf({ read, part = 'whole' }: FloorInRows): LongEdge {
  return part === 'whole' ? read.start.startEdge : 'groove';
}

export interface PlannedFloors<F extends FloorInRows = FloorInRows> {
  readonly floors: readonly F[];
  /** In units of the grid, as the search sees it. */
  readonly job: CutJob;
  readonly plan: CutPlan;
  readonly grid: Grid;
  /** The same in ticks, with pieces as long as they are marked; runs are as long as their pieces. */
  readonly markedJob: CutJob;
  readonly markedPlan: CutPlan;
  readonly ledger: Ledger;
  /** Index in the job's rows of each floor's first row, and after the last floor the number of rows. */
  readonly firstRows: readonly number[];
  /** Indices of the rows as they are laid, where that is not as they stand: what lies, in whichever floor, comes first. */
  readonly order?: readonly number[];
}

/** The floor of a row of the plan. */
export function floorIndexAt({ firstRows }: Pick<PlannedFloors, 'firstRows'>, rowIndex: number): number {
  return firstRows.findIndex((_, i) => rowIndex < firstRows[i + 1]);
}

/**
 * Plans floors that share their planks; the product and rules of the first count for all.
 *
 * @param floors at least one; all of one plank size
 * @param options how much work the search may do
 * @param planned how the job is planned: quickly, as in cells, where nothing is said
 */
export function planFloors<F extends FloorInRows>(
  floors: readonly F[],
  options: PlanOptions = {},
  planned: PlanInSteps = planCutsQuicklyInSteps,
): PlannedFloors<F> {
  return finished(planFloorsInSteps(floors, options, planned));
}

type PlanInSteps = (job: CutJob, options: PlanOptions, grid: Grid) => Steps<CutPlan>;

/** The same in steps. */
export function* planFloorsInSteps<F extends FloorInRows>(
  floors: readonly F[],
  options: PlanOptions,
  planned: PlanInSteps,
): Steps<PlannedFloors<F>> {
  const { product, rules, start } = floors[0].read;
  const rooms = floors.map((floor) => floor.layout.rows);
  const plankLength = ticksUnrounded(product.asTyped.length);
  const { job, grid } = cutJobOf(rooms, plankLength, product.plankWidth, rules, start.reuseStrips);
  const easyWithin = start.aim === 'easy' ? (fewest: number) => planksBought(fewest, product, rules) : undefined;
  const plan = yield* planned(job, { easyWithin, ...options }, grid);
  yield;
  const lengths = withinSources(markedLengths(plan, rooms.flat(), 0, grid), ledgerOf(job, plan));
  const markedJob = jobInTicks(job, floors, lengths);
  yield;
  const markedPlan = planInTicks(plan, markedJob, lengths);
  yield;
  const firstRows = [0];
  for (const rows of rooms) firstRows.push(lastOf(firstRows) + rows.length);
  return { floors, job, plan, grid, markedJob, markedPlan, ledger: ledgerOf(markedJob, markedPlan), firstRows };
}

/** Planks that lie in the boxes bought for so many, less the spares: all of them may be used. */
function planksBought(fewest: number, { planksPerBox }: Product, { spare }: Rules): number {
  if (planksPerBox === null) return fewest;
  return Math.ceil((fewest + spare) / planksPerBox) * planksPerBox - spare;
}

/**
 * No strip marked longer than the piece that it is ripped from, which marking in whole steps may have shortened: the
 * step or two go to the gap at its end.
 */
function withinSources(lengths: MarkedLengths, { planks }: Ledger): MarkedLengths {
  const marked = lengths.map((row) => row.map((run) => [...run]));
  for (const { source, rowIndex, runIndex, pieceIndex } of planks.flatMap(({ strips }) => strips)) {
    if (source === null) continue;
    const run = marked[rowIndex][runIndex];
    run[pieceIndex] = Math.min(run[pieceIndex], marked[source.rowIndex][source.runIndex][source.pieceIndex]);
  }
  return marked;
}

/** Row -> run -> lengths of its pieces. */
type MarkedLengths = ReturnType<typeof markedLengths>;

function jobInTicks(
  job: CutJob,
  floors: readonly FloorInRows[],
  lengths: readonly (readonly (readonly Ticks[])[])[],
): CutJob {
  const { product, rules } = floors[0].read;
  const rows = floors.flatMap((floor, room) => floor.layout.rows.map(({ width, runs }) => ({ room, width, runs })));
  return {
    plankLength: product.plankLength,
    plankWidth: product.plankWidth,
    kerf: rules.kerf,
    play: rules.play,
    minPiece: rules.minPiece,
    minStagger: rules.minStagger,
    alignedDistance: rules.alignedDistance,
    rows: rows.map((row, i) => ({
      room: row.room,
      width: row.width,
      runs: row.runs.map((run, j) => ({ x: run.x0, length: addedUp(lengths[i][j]) })),
    })),
    ripPairs: job.ripPairs,
  };
}

/**
 * What it breaks is told of the lengths as marked and the rules as typed: those of the grid may be stricter.
 *
 * @throws Error `Internal: ...` if the plan as marked breaks a law
 */
export function planInTicks(
  plan: CutPlan,
  markedJob: CutJob,
  lengths: readonly (readonly (readonly Ticks[])[])[],
): CutPlan {
  const rows = plan.rows.map((row, i) => ({
    runs: row.runs.map((run, j) => run.map((piece, k) => ({ ...piece, length: lengths[i][j][k] }))),
  }));
  return judged(markedJob, { ...plan, rows, broken: brokenRules(markedJob, rows) });
}
