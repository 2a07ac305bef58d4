/** The rest of a floor laid in two parts, the furniture over on the other side in between: few offcuts go over with it. */
import { madeOf } from '../../geometry/lists';
import type { CutJob } from '../job';
import type { PlanOptions } from '../search';
import { planOnward } from './onward';
import type { OnwardJob, OnwardPiece, OnwardPlan, StockPiece } from './onwardJob';

type Rows = OnwardPlan['rows'];

/**
 * Each part planned by itself, the second one with what the first leaves and with nothing of it.
 *
 * @param rowCount rows of the first part, fewer than there are
 * @returns rows of the whole rest; they need not be legal, nor as few planks as in one go
 */
export function rowsInParts(onward: OnwardJob, rowCount: number, options: PlanOptions = {}): readonly Rows[] {
  const { job, stock } = onward;
  const part = (from: number, to?: number) => ({ ...job, rows: job.rows.slice(from, to), ripPairs: [] });
  const first = planOnward({ ...onward, job: part(0, rowCount) }, undefined, options);
  const before = beforeAfter(onward, first.rows);
  const left = leftOvers(onward, first.rows, first.plankCount);
  const ofStock = left.filter(({ source }) => source < stock.length);
  return [left, ofStock].map((kept) => {
    const rest = { job: part(rowCount), before, stock: kept.map(({ piece }) => piece) };
    const second = planOnward(rest, undefined, options);
    return [...first.rows, ...renamed(second.rows, kept, stock.length, first.plankCount)];
  });
}

/**
 * Of several plans for a floor that is laid in two parts: the fewest planks, then the fewest offcuts that go over; and the one with
 * fewest that go over at all, null where that is none other.
 */
export function bestInParts(
  plans: readonly OnwardPlan[],
  rowCount: number,
): { readonly best: OnwardPlan; readonly fewerOver: FewerOver | null } {
  const carried = plans.map(({ rows }) => carriedCount(rows, rowCount));
  const places = plans.map((_, i) => i);
  const [best] = [...places].sort((a, b) => plans[a].plankCount - plans[b].plankCount || carried[a] - carried[b]);
  const [fewest] = [...places].sort((a, b) => carried[a] - carried[b] || plans[a].plankCount - plans[b].plankCount);
  const planks = plans[fewest].plankCount - plans[best].plankCount;
  const fewerOver = carried[fewest] < carried[best] ? { carriedCount: carried[fewest], planks } : null;
  return { best: plans[best], fewerOver };
}

/** With how many offcuts going over it takes how many planks more. */
export interface FewerOver {
  readonly carriedCount: number;
  readonly planks: number;
}

/** Planks and pieces in hand of which some is laid in either part. */
export function carriedCount(rows: Rows, rowCount: number): number {
  const sources = (some: Rows) => new Set(some.flatMap(({ runs }) => runs.flat()).map(sourceKey));
  const [before, after] = [sources(rows.slice(0, rowCount)), sources(rows.slice(rowCount))];
  return [...after].filter((source) => before.has(source)).length;
}

function sourceKey({ plank, stock, isStrip }: OnwardPiece): string {
  return `${stock ?? -1},${plank},${isStrip ?? false}`;
}

/** What lies before the second part: the last rows of the first, in their room, and in other rooms what lay before. */
function beforeAfter({ job, before }: OnwardJob, rows: Rows): OnwardJob['before'] {
  const { room } = job.rows[rows.length - 1];
  const known = before.find((lying) => lying.room === room)?.joints ?? [];
  const joints = (rowIndex: number) => (job.rows[rowIndex]?.room === room ? jointsIn(job, rows, rowIndex) : known);
  const last = { room, joints: joints(rows.length - 1), joints2: joints(rows.length - 2) };
  return [last, ...before.filter((lying) => lying.room !== room)];
}

function jointsIn(job: CutJob, rows: Rows, rowIndex: number): readonly number[] {
  return rows[rowIndex].runs.flatMap((run, j) => {
    let at = job.rows[rowIndex].runs[j].x;
    return run.slice(0, -1).map(({ length }) => {
      at += length;
      return at;
    });
  });
}

/** What is left of a source: the place of a piece in hand in its list, then planks after those. */
interface LeftOver {
  readonly source: number;
  readonly piece: StockPiece;
}

/** Less the play: what comes from an offcut is measured in place. */
function leftOvers({ job, stock }: OnwardJob, rows: Rows, plankCount: number): readonly LeftOver[] {
  const { plankLength: length, kerf, play = 0 } = job;
  const planks = madeOf(plankCount, (): StockPiece => ({ length, ends: 'both' }));
  const pieces = rows.flatMap(({ runs }) => runs.flat());
  return [...stock, ...planks].flatMap((whole, source): LeftOver[] => {
    const cut = pieces.filter((piece) => (piece.stock ?? piece.plank + stock.length) === source && !piece.isStrip);
    const left = cut.reduce((sum, piece) => sum - piece.length - kerf, whole.length - (cut.length > 0 ? play : 0));
    const has = (end: 'left' | 'right') =>
      (whole.ends === 'both' || whole.ends === end) && !cut.some(({ from }) => from === end || from === 'whole');
    const ends = has('left') ? (has('right') ? 'both' : 'left') : has('right') ? 'right' : 'none';
    return left > 0 ? [{ source, piece: { ...whole, length: left, ends } }] : [];
  });
}

/** The rows of the second part with planks and pieces in hand named as those of the first. */
function renamed(rows: Rows, kept: readonly LeftOver[], stockCount: number, plankCount: number): Rows {
  const named = (piece: OnwardPiece): OnwardPiece => {
    if (piece.stock === undefined) return { ...piece, plank: piece.plank + plankCount };
    const { source } = kept[piece.stock];
    const { stock: _, ...rest } = piece;
    return source < stockCount ? { ...piece, stock: source } : { ...rest, plank: source - stockCount };
  };
  return rows.map(({ runs }) => ({ runs: runs.map((run) => run.map(named)) }));
}
