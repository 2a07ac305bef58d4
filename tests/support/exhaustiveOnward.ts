/** Every plan of a tiny rest of a floor, tried one after another; shares nothing with the planner but the job. */
import type { OnwardJob } from '../../src/cutting/onward/onwardJob';

interface Piece {
  readonly length: number;
  readonly end: 'left' | 'right' | 'none' | 'both';
}

/** The fewest whole planks, or null where no choice of first pieces keeps the rules. Without play. */
export function fewestOnwardByTrial(onward: OnwardJob): number | null {
  const { job } = onward;
  const L = job.plankLength;
  const runs = job.rows.flatMap((row, rowIndex) => row.runs.map((run) => ({ ...run, rowIndex, room: row.room })));
  let best: number | null = null;
  const choose = (index: number, chosen: readonly (readonly number[])[], pieces: readonly Piece[]): void => {
    if (index === runs.length) {
      best = Math.min(best ?? Infinity, fewestSources(onward, pieces));
      return;
    }
    const run = runs[index];
    if (run.length <= L) {
      const end = run.length === L ? ('both' as const) : ('none' as const);
      choose(index + 1, [...chosen, []], [...pieces, { length: run.length, end }]);
      return;
    }
    for (let first = Math.max(1, job.minPiece); first <= L && first < run.length; first++) {
      const lengths = [first];
      let rest = run.length - first;
      for (; rest > L; rest -= L) lengths.push(L);
      lengths.push(rest);
      if (rest < job.minPiece) continue;
      const joints: number[] = [];
      lengths.slice(0, -1).reduce((at, length) => {
        joints.push(at + length);
        return at + length;
      }, run.x);
      const beside = runs.flatMap((other, i) =>
        i < index && other.room === run.room && other.rowIndex === run.rowIndex - 1 ? chosen[i] : [],
      );
      const isFirst = job.rows.findIndex(({ room }) => room === run.room) === run.rowIndex;
      const lying = onward.before.flatMap(({ room, joints: ofRoom }) => (isFirst && room === run.room ? ofRoom : []));
      const others = [...lying, ...beside];
      if (joints.some((a) => others.some((b) => Math.abs(a - b) < job.minStagger))) continue;
      const own = lengths.map((length, i): Piece => {
        return { length, end: length === L ? 'both' : i === 0 ? 'right' : i === lengths.length - 1 ? 'left' : 'both' };
      });
      choose(index + 1, [...chosen, joints], [...pieces, ...own]);
    }
  };
  choose(0, [], []);
  return best;
}

/** The fewest planks for these pieces beside what is in hand: every way to put them is tried. */
function fewestSources({ job, stock }: OnwardJob, pieces: readonly Piece[]): number {
  const L = job.plankLength;
  const wholes = pieces.filter(({ length }) => length === L).length;
  const others = pieces.filter(({ length }) => length < L).sort((a, b) => b.length - a.length);
  interface Source {
    left: number;
    has: { left: boolean; right: boolean };
    isPlank: boolean;
    isUsed: boolean;
  }
  const sources: Source[] = stock.map(({ length, ends }) => ({
    left: length + job.kerf,
    has: { left: ends === 'left' || ends === 'both', right: ends === 'right' || ends === 'both' },
    isPlank: false,
    isUsed: false,
  }));
  let best = others.length;
  const put = (index: number, planks: number): void => {
    if (planks >= best) return;
    if (index === others.length) {
      best = planks;
      return;
    }
    const { length, end } = others[index];
    const takes = (source: Source): boolean =>
      source.left >= length + job.kerf && (end === 'none' || source.has[end as 'left' | 'right']);
    for (const source of [...sources]) {
      if (!takes(source)) continue;
      source.left -= length + job.kerf;
      if (end !== 'none') source.has[end as 'left' | 'right'] = false;
      put(index + 1, planks);
      source.left += length + job.kerf;
      if (end !== 'none') source.has[end as 'left' | 'right'] = true;
    }
    const plank: Source = {
      left: L - length,
      has: { left: end !== 'left', right: end !== 'right' },
      isPlank: true,
      isUsed: true,
    };
    sources.push(plank);
    put(index + 1, planks + 1);
    sources.pop();
  };
  put(0, 0);
  return best + wholes;
}
