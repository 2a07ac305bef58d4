/**
 * The rest of a floor of which rows lie already: what is left to cover, what lies, and what is in hand. Lengths are whole
 * numbers of the job's unit.
 */
import type { BrokenRule, CutJob, CutPlan, PlannedPiece } from '../job';

/** A piece in hand: an offcut with the factory ends it still has, or a board of another length. */
export interface StockPiece {
  readonly length: number;
  readonly ends: 'left' | 'right' | 'both' | 'none';
  /** Missing: full width. A piece serves only rows that are no wider than it. */
  readonly width?: number;
}

/** Joints of the last row that lies in a room and of the one before it, room coordinates. */
export interface RowsBefore {
  readonly room: number;
  readonly joints: readonly number[];
  readonly joints2: readonly number[];
}

export interface OnwardJob {
  /** The rows still to be laid. Strips are not looked for: `ripPairs` is left alone. */
  readonly job: CutJob;
  /** What lies in the rooms of those rows; a room that is not begun is left out. */
  readonly before: readonly RowsBefore[];
  readonly stock: readonly StockPiece[];
  /** Whole planks in hand; what is needed beyond them has to be bought. Missing: none, or counted elsewhere. */
  readonly whole?: number;
}

/** A piece cut from a plank, or from a piece in hand: then `stock` is its place in the list and `plank` is -1. */
export interface OnwardPiece extends PlannedPiece {
  readonly stock?: number;
}

/** Joints of the row that lies before a row to lay: of any but the first to lay in its room there are none. */
export function jointsThatLie({ job, before }: OnwardJob, rowIndex: number): readonly number[] {
  const { room } = job.rows[rowIndex];
  if (job.rows[rowIndex - 1]?.room === room) return [];
  return before.find((rows) => rows.room === room)?.joints ?? [];
}

export interface OnwardPlan {
  readonly rows: readonly { readonly runs: readonly (readonly OnwardPiece[])[] }[];
  /** Whole planks used, those in hand included. */
  readonly plankCount: number;
  /** Planks to buy: 0 where those in hand are enough. */
  readonly short: number;
  /** No plan uses fewer whole planks than this. */
  readonly bound: number;
  readonly stop: CutPlan['stop'];
  /** Rules of the rows to lay that could not be kept, the stagger to the row that lies included. */
  readonly broken: readonly BrokenRule[];
}
