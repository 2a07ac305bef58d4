/** Strips ripped off the first row, put in their places in the last row once the rest is planned. */
import type { KeptEnd } from '../../cutting/job';
import type { OnwardPiece, OnwardPlan } from '../../cutting/onward/onwardJob';

/** Length in units; `index` is the number of its plank, `row` the place of the row it waits for among those left. */
export interface WaitingStrip {
  readonly length: number;
  readonly from: KeptEnd;
  readonly index: number;
  readonly row: number;
}

/** A piece of the row they wait for that takes a plank for itself is a strip instead, where one is long enough. Its plank is then
 * minus the number of the strip's. */
export function withStrips(plan: OnwardPlan, strips: readonly WaitingStrip[]): OnwardPlan {
  const free = [...strips].sort((a, b) => a.length - b.length);
  const counts = new Map<number, number>();
  for (const { plank } of plan.rows.flatMap(({ runs }) => runs.flat())) counts.set(plank, (counts.get(plank) ?? 0) + 1);
  const saved = new Set<number>();
  const asStrip = (piece: OnwardPiece, row: number): OnwardPiece => {
    if (piece.stock !== undefined || piece.isStrip || counts.get(piece.plank) !== 1) return piece;
    const fits = (strip: WaitingStrip) => strip.from === piece.from || strip.from === 'whole';
    const index = free.findIndex((strip) => strip.row === row && strip.length >= piece.length && fits(strip));
    if (index < 0) return piece;
    saved.add(piece.plank);
    const [strip] = free.splice(index, 1);
    return { length: piece.length, from: piece.from, plank: -strip.index, isStrip: true };
  };
  const rows = plan.rows.map(({ runs }, i) => ({ runs: runs.map((run) => run.map((piece) => asStrip(piece, i))) }));
  return {
    ...plan,
    rows: numbered(rows),
    plankCount: plan.plankCount - saved.size,
    bound: Math.max(0, plan.bound - strips.length),
  };
}

/** Planks counted anew, without those that strips have saved. */
function numbered(rows: OnwardPlan['rows']): OnwardPlan['rows'] {
  const numbers = new Map<number, number>();
  const numberOf = (plank: number) => {
    if (!numbers.has(plank)) numbers.set(plank, numbers.size);
    return numbers.get(plank) as number;
  };
  return rows.map(({ runs }) => ({
    runs: runs.map((run) => run.map((piece) => (piece.plank < 0 ? piece : { ...piece, plank: numberOf(piece.plank) }))),
  }));
}
