/**
 * A first order of the rows: a run that takes up what an earlier row left comes next, the offcut that has waited longest
 * first. Large floors begin within reach of a good plan this way; on small ones annealing finds it by itself.
 */
import type { PreparedRun } from '../runs/prepared';
import { areAlike, type Moving, tryChangePlaces } from './moves';

/** Rows back whose offcuts are asked for. */
const ROWS_BACK = 30;
/** No price of waiting is too high for this move, and no aligned joint cheap enough. */
const ANY_PRICE = 2 ** 40;
const ALIGNED = 2 ** 41;

/** Lets runs change places, row by row, so that partners lie near each other; stagger is kept all the while. */
export function orderByPaths(moving: Moving): void {
  const { weights } = moving;
  moving.weights = { ...weights, aligned: ALIGNED };
  for (const run of moving.sharing.trial.prepared.runs) if (!run.isWallToWall) bringPartner(moving, run);
  moving.weights = weights;
}

/** Brings a partner of the nearest rows before to the place of a run, unless it is one itself. */
function bringPartner(moving: Moving, run: PreparedRun): void {
  const { runs } = moving.sharing.trial.prepared;
  const from = Math.max(0, run.index - ROWS_BACK);
  for (let before = from; before < run.index; before++) {
    if (runs[before].isWallToWall) continue;
    for (const side of [1, 0]) {
      const partner = partnerOf(moving, 2 * before + side);
      if (partner === run.index) return;
      if (partner < run.index || !areAlike(run, runs[partner])) continue;
      if (tryChangePlaces(moving, run, runs[partner], ANY_PRICE)) return;
    }
  }
}

/** The run that shares the plank of an end piece; -1 for none. */
function partnerOf({ sharing }: Moving, piece: number): number {
  const plank = sharing.plankOf[piece];
  if (plank < 0) return -1;
  const other = (piece & 1) === 1 ? sharing.firstOn[plank] : sharing.lastOn[plank];
  return other < 0 ? -1 : other >> 1;
}
