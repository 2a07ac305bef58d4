/**
 * The laws of a plan for the rest of a floor. Those of any plan hold for its rows (`laws.ts`), where every piece cut from
 * what is in hand counts as a plank of its own, for a board in hand may be longer than a plank. Besides:
 *
 * 1. A piece in hand gives at most one piece for each factory end it has; one that keeps no end may come from anywhere.
 * 2. What is cut from it, the kerfs between and the play fit in its length; what serves a row is at least as wide as the row.
 *    Play as of a plank: for every piece that ends at a wall but the one that is laid first.
 * 3. Joints of the first row in each room keep the minimum stagger to those of the row that lies there.
 * 4. Planks to buy are those used beyond the whole ones in hand.
 */
import type { OnwardJob, OnwardPiece, OnwardPlan } from '../onward/onwardJob';
import { jobFileOf } from './jobFile';
import { checkCutPlan } from './laws';

/** Every law that the plan breaks, a line each; empty when it is legal. */
export function checkOnwardPlan(onward: OnwardJob, plan: OnwardPlan): readonly string[] {
  return [...planLaws(onward, plan), ...stockLaws(onward, plan), ...beforeLaws(onward, plan), ...claims(onward, plan)];
}

/** @throws Error `Internal: ...` with the first law that is broken, and the job as a file that can be planned again */
export function judgedOnward(onward: OnwardJob, plan: OnwardPlan): OnwardPlan {
  const [first] = checkOnwardPlan(onward, plan);
  if (first === undefined) return plan;
  const file = jobFileOf(onward.job, onward);
  throw new Error(`Internal: the plan of the rest breaks a law: ${first}. Please report it, with the job: ${file}`);
}

/** Each piece that is cut from what is in hand stands for one more plank. */
function planLaws(onward: OnwardJob, plan: OnwardPlan): readonly string[] {
  let plankCount = plan.plankCount;
  const plankOf = ({ stock, plank }: OnwardPiece): number => (stock === undefined ? plank : plankCount++);
  const rows = plan.rows.map(({ runs }) => ({
    runs: runs.map((run) =>
      run.map((piece) => ({
        length: piece.length,
        from: piece.from,
        plank: plankOf(piece),
        ...(piece.isStrip && { isStrip: piece.isStrip }),
      })),
    ),
  }));
  // What the row that lies takes from the stagger of the first row is looked at below.
  const broken = plan.broken.filter(
    ({ rule, rowIndex }) => rule !== 'minimum stagger' || lyingBefore(onward, rowIndex).length === 0,
  );
  return checkCutPlan(onward.job, { rows, plankCount, bound: 0, stop: 'step limit', steps: 0, broken });
}

function stockLaws({ job, stock }: OnwardJob, { rows }: OnwardPlan): readonly string[] {
  const used = stock.map((): { piece: OnwardPiece; width: number; endsAtWall: boolean }[] => []);
  const laws: string[] = [];
  rows.forEach((row, rowIndex) => {
    for (const run of row.runs) {
      for (const [index, piece] of run.entries()) {
        if (piece.stock === undefined) continue;
        const cut = { piece, width: job.rows[rowIndex].width, endsAtWall: index === run.length - 1 };
        if (used[piece.stock]) used[piece.stock].push(cut);
        else laws.push(`row ${rowIndex + 1}: there is no piece ${piece.stock} in hand`);
      }
    }
  });
  used.forEach((pieces, index) => {
    const { length, ends, width = job.plankWidth } = stock[index];
    const name = `piece ${index} in hand`;
    const kerfs = job.kerf * Math.max(0, pieces.length - 1);
    const play = (job.play ?? 0) * pieces.slice(1).filter(({ endsAtWall }) => endsAtWall).length;
    const total = pieces.reduce((sum, { piece }) => sum + piece.length, 0) + kerfs + play;
    if (total > length) laws.push(`${name}: ${total} is cut from ${length}`);
    if (pieces.some((cut) => cut.width > width)) laws.push(`${name}: a row is wider than it`);
    for (const end of ['left', 'right'] as const) {
      const count = pieces.filter(({ piece }) => piece.from === end).length;
      if (count > (ends === end || ends === 'both' ? 1 : 0)) laws.push(`${name}: ${count} pieces keep its ${end} end`);
    }
    if (pieces.some(({ piece }) => piece.from === 'whole')) laws.push(`${name}: it is no whole plank`);
  });
  return laws;
}

function beforeLaws(onward: OnwardJob, { rows, broken }: OnwardPlan): readonly string[] {
  const { job } = onward;
  return rows.flatMap(({ runs }, rowIndex) => {
    const lying = lyingBefore(onward, rowIndex);
    if (broken.some((breach) => breach.rule === 'minimum stagger' && breach.rowIndex === rowIndex)) return [];
    return runs.flatMap((pieces, runIndex) => {
      let at = job.rows[rowIndex].runs[runIndex].x;
      return pieces.slice(0, -1).flatMap(({ length }) => {
        at += length;
        const near = lying.filter((joint) => Math.abs(joint - at) < job.minStagger);
        const name = `row ${rowIndex + 1}: a joint at ${at}`;
        return near.map((joint) => `${name} is nearer than ${job.minStagger} to ${joint} of the row that lies`);
      });
    });
  });
}

/** Joints of the row that lies, where this is the first row to lay in its room. */
function lyingBefore({ job, before }: OnwardJob, rowIndex: number): readonly number[] {
  const { room } = job.rows[rowIndex];
  const isFirst = !job.rows.slice(0, rowIndex).some((row) => row.room === room);
  return isFirst ? before.filter((lying) => lying.room === room).flatMap(({ joints }) => joints) : [];
}

function claims({ whole = 0 }: OnwardJob, { plankCount, short, bound, stop }: OnwardPlan): readonly string[] {
  const laws: string[] = [];
  if (short !== Math.max(0, plankCount - whole)) laws.push(`short ${short}, planks ${plankCount}, in hand ${whole}`);
  if (bound > plankCount || (stop === 'proved fewest' && bound !== plankCount))
    laws.push(`bound ${bound}, planks ${plankCount}`);
  return laws;
}
