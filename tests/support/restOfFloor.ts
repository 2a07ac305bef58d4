/** A floor of which the first rows lie as they were planned: what is left to cover, and what waits for it. */
import type { CutJob, CutPlan } from '../../src/cutting/job';
import type { OnwardJob, OnwardPiece, OnwardPlan, StockPiece } from '../../src/cutting/onward/onwardJob';

export interface Rest {
  readonly onward: OnwardJob;
  /** The rest of the plan, its offcuts as pieces in hand. */
  readonly followed: OnwardPlan['rows'];
  /** Planks of the plan that nothing is cut from yet. */
  readonly plankCount: number;
}

/** @param laid so many rows lie */
export function restOf(job: CutJob, plan: CutPlan, laid: number): Rest {
  const cut = new Map<number, OnwardPiece[]>();
  for (const piece of plan.rows.slice(0, laid).flatMap((row) => row.runs.flat()))
    cut.set(piece.plank, [...(cut.get(piece.plank) ?? []), piece]);
  const later = plan.rows.slice(laid);
  const wanted = new Set(later.flatMap((row) => row.runs.flat()).map(({ plank }) => plank));
  const stock: StockPiece[] = [];
  const heldAs = new Map<number, number>();
  for (const [plank, pieces] of cut) {
    if (!wanted.has(plank)) continue;
    const length = job.plankLength - pieces.reduce((sum, piece) => sum + piece.length + job.kerf, 0);
    const has = (end: string) => !pieces.some(({ from }) => from === end || from === 'whole');
    heldAs.set(plank, stock.length);
    stock.push({ length, ends: has('left') ? (has('right') ? 'both' : 'left') : has('right') ? 'right' : 'none' });
  }
  const planks = new Map<number, number>();
  const numberOf = (plank: number) => {
    if (!planks.has(plank)) planks.set(plank, planks.size);
    return planks.get(plank) as number;
  };
  const onwardPiece = ({ length, from, plank }: OnwardPiece): OnwardPiece => {
    const stockIndex = heldAs.get(plank);
    return stockIndex === undefined
      ? { length, from, plank: numberOf(plank) }
      : { length, from, plank: -1, stock: stockIndex };
  };
  const followed = later.map((row) => ({ runs: row.runs.map((run) => run.map(onwardPiece)) }));
  const isSameRoom = (row: number) => row >= 0 && job.rows[row].room === job.rows[laid]?.room;
  const joints = (row: number) => (isSameRoom(row) ? jointsOf(job, plan, row) : []);
  return {
    onward: {
      job: { ...job, rows: job.rows.slice(laid), ripPairs: [] },
      before: job.rows[laid]
        ? [{ room: job.rows[laid].room, joints: joints(laid - 1), joints2: joints(laid - 2) }]
        : [],
      stock,
      whole: 0,
    },
    followed,
    plankCount: planks.size,
  };
}

function jointsOf(job: CutJob, plan: CutPlan, row: number): number[] {
  return plan.rows[row].runs.flatMap((pieces, run) => {
    let at = job.rows[row].runs[run].x;
    return pieces.slice(0, -1).map(({ length }) => {
      at += length;
      return at;
    });
  });
}
