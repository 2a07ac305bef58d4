/** Lengths of a cut list in whole units of the job it was made from. */
import type { Ticks } from '../../geometry/length';
import type { LaidFloor } from '../reading/drawnRoom';
import type { PlannedFloors } from './planFloors';

/** Indices of a row, of a run in it, of a piece in that. */
export type PieceAt = readonly [row: number, run: number, piece: number];

/**
 * Where a plank is no whole number of steps, marking has rounded: a piece that is as planned is as long as it was planned. Null for
 * any other.
 */
export function asPlanned(
  { markedPlan, plan }: PlannedFloors<LaidFloor>,
  [rowIndex, runIndex, pieceIndex]: PieceAt,
  length: Ticks,
): number | null {
  const marked = markedPlan.rows[rowIndex].runs[runIndex][pieceIndex];
  return marked?.length === length ? plan.rows[rowIndex].runs[runIndex][pieceIndex].length : null;
}

/** Rounded up: what is cut is never shorter. */
export function unitsUp({ grid }: PlannedFloors<LaidFloor>, ticks: number): number {
  return Math.ceil(ticks / grid.unit - 1e-9);
}

/** Of a run that was found longer or shorter than drawn: rounded down, at least one. */
export function unitsFound({ grid }: PlannedFloors<LaidFloor>, found: Ticks): number {
  return Math.max(1, Math.floor(found / grid.unit + 1e-9));
}
