/**
 * What the bound looks at: the runs longer than a plank with the joints each may have, as a forest of runs that keep
 * stagger from each other, and the wall-to-wall pieces.
 *
 * The picture is that of `runs/arcs.ts`, on a line of `span = plankLength + kerf (+ play)` units so that the kerf in front
 * of a first piece has its place too. A first piece with its kerf lies at the start, a last piece at the end, a
 * wall-to-wall piece anywhere. Planks needed = the deepest overlap of those stretches.
 *
 * With play, the line is longer by it, and so is every last and wall-to-wall piece: that gives the one piece of a plank
 * that needs no play its room, whichever it is, and asks of two wall-to-wall pieces what they need. A first and a last
 * piece are asked for nothing, as the last may be laid first.
 */
import { sumOf } from '../../geometry/lists';
import type { CutJob } from '../job';
import type { JointedRun } from '../runs/staggerCost';

/** A run longer than a plank: its first piece s, then whole planks, then a last piece. */
export interface BoundRun extends JointedRun {
  /** Where the job has it. */
  readonly rowIndex: number;
  readonly runIndex: number;
  /** Whole planks in `length`. */
  readonly quotient: number;
  /** The run of a neighbouring row it keeps stagger from when its first piece is chosen; -1 for none. */
  readonly parent: number;
}

export interface BoundRuns {
  readonly plankLength: number;
  readonly kerf: number;
  readonly play: number;
  readonly minStagger: number;
  /** Parents stand before their children. */
  readonly runs: readonly BoundRun[];
  /** Lengths of wall-to-wall pieces, ascending, and how many there are of each. */
  readonly shortLengths: readonly { readonly length: number; readonly count: number }[];
  /** Rows that are left out, because strips of another row may serve them or they may serve it. */
  readonly rowsLeftOut: ReadonlySet<number>;
}

/**
 * The runs of `job` that any plan must pay for. Of a rip pair whose strips fit on one plank only one row is counted:
 * each strip weighs no more than the piece it is ripped from, so the other row pays for itself.
 *
 * Where the runs that must keep stagger form a ring (around a column), the loosest link is left out: that can only
 * lower the bound.
 */
export function boundRunsOf(job: CutJob): BoundRuns {
  const { plankLength, kerf, minStagger, play = 0 } = job;
  const free = rowsOfStrips(job);
  const rows = job.rows.map((row, rowIndex) => ({ ...row, runs: free.has(rowIndex) ? [] : row.runs }));
  const shorts = new Map<number, number>();
  for (const { length } of rows.flatMap((row) => row.runs)) {
    if (length <= plankLength) shorts.set(length, (shorts.get(length) ?? 0) + 1);
  }
  return {
    plankLength,
    kerf,
    play,
    minStagger,
    runs: forestOf(rows, job),
    shortLengths: [...shorts].map(([length, count]) => ({ length, count })).sort((a, b) => a.length - b.length),
    rowsLeftOut: free,
  };
}

/** Rows left out because their pieces may all be strips of another row. */
function rowsOfStrips(job: CutJob): Set<number> {
  const widthOf = (rowIndex: number): number => job.rows[rowIndex]?.width ?? Number.POSITIVE_INFINITY;
  const fitting = job.ripPairs.filter(([first, last]) => widthOf(first) + widthOf(last) + job.kerf <= job.plankWidth);
  const lengthOf = (rowIndex: number): number => sumOf(job.rows[rowIndex]?.runs ?? [], (run) => run.length);
  const timesPaired = (rowIndex: number): number => fitting.flat().filter((index) => index === rowIndex).length;
  return new Set(
    fitting.map(([first, last]) => {
      const isAlone = timesPaired(first) === 1 && timesPaired(last) === 1;
      return isAlone && lengthOf(first) < lengthOf(last) ? first : last;
    }),
  );
}

interface LongRun {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly x: number;
  readonly length: number;
  /** Runs of neighbouring rows that it keeps stagger from. */
  readonly links: number[];
}

/** Two runs that must keep stagger, and how far they lie beside each other. */
interface Link {
  readonly a: LongRun;
  readonly b: LongRun;
  readonly overlap: number;
}

function forestOf(rows: CutJob['rows'], job: CutJob): BoundRun[] {
  const rowRuns = rows.map((row, rowIndex) =>
    row.runs
      .map(({ x, length }, runIndex): LongRun => ({ rowIndex, runIndex, x, length, links: [] }))
      .filter(({ length }) => length > job.plankLength),
  );
  const runs = rowRuns.flat();
  const links: Link[] = [];
  rowRuns.forEach((later, rowIndex) => {
    if (rowIndex === 0 || rows[rowIndex - 1].room !== rows[rowIndex].room) return;
    for (const a of rowRuns[rowIndex - 1]) {
      for (const b of later) {
        const overlap = Math.min(a.x + a.length, b.x + b.length) - Math.max(a.x, b.x) - 2 * job.minPiece;
        if (overlap > -job.minStagger) links.push({ a, b, overlap });
      }
    }
  });
  keepForest(runs, links);
  return inParentOrder(runs, job);
}

/** Kruskal's spanning forest, widest overlap first. */
function keepForest(runs: readonly LongRun[], links: readonly Link[]): void {
  const indexOf = new Map(runs.map((run, index) => [run, index]));
  const root = runs.map((_, index) => index);
  const rootOf = (index: number): number => {
    let above = index;
    while (root[above] !== above) above = root[above];
    root[index] = above;
    return above;
  };
  for (const { a, b } of [...links].sort((p, q) => q.overlap - p.overlap)) {
    const [indexA, indexB] = [indexOf.get(a) ?? 0, indexOf.get(b) ?? 0];
    const [one, other] = [rootOf(indexA), rootOf(indexB)];
    if (one === other) continue;
    root[other] = one;
    a.links.push(indexB);
    b.links.push(indexA);
  }
}

function inParentOrder(runs: readonly LongRun[], { plankLength, minPiece }: CutJob): BoundRun[] {
  const placeOf = new Map<number, number>();
  const ordered: BoundRun[] = [];
  const visit = (index: number, parent: number): void => {
    const run = runs[index];
    placeOf.set(index, ordered.length);
    const rest = ((run.length - 1) % plankLength) + 1;
    ordered.push({
      rowIndex: run.rowIndex,
      runIndex: run.runIndex,
      x: run.x,
      length: run.length,
      minPiece: Math.max(1, minPiece),
      quotient: (run.length - rest) / plankLength,
      rest,
      parent,
    });
  };
  runs.forEach((_, root) => {
    if (placeOf.has(root)) return;
    const waiting: [number, number][] = [[root, -1]];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const [index, parent] = next;
      if (placeOf.has(index)) continue;
      visit(index, parent);
      const place = ordered.length - 1;
      for (const link of runs[index].links) if (!placeOf.has(link)) waiting.push([link, place]);
    }
  });
  return ordered;
}
