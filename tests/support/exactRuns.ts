/** The runs of a job as the exact model sees them. */
import type { CutJob } from '../../src/cutting/job';

/** A run longer than a plank. */
export interface LongRun {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly x: number;
  /** Most planks that can lie in it uncut between its first and last piece. */
  readonly wholes: number;
  /** What the whole planks leave of it, > 0 and at most a plank. */
  readonly rest: number;
}

/** A run not longer than a plank: one piece from wall to wall. */
export interface ShortRun {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly length: number;
}

export interface ModelRuns {
  readonly long: readonly LongRun[];
  /** Longest first, so that each wall-to-wall plank is opened by its longest piece. */
  readonly short: readonly ShortRun[];
}

/** The runs of a job, in the order the model numbers them. */
export function modelRuns(job: CutJob): ModelRuns {
  const long: LongRun[] = [];
  const short: ShortRun[] = [];
  job.rows.forEach((row, rowIndex) => {
    row.runs.forEach(({ x, length }, runIndex) => {
      if (length <= job.plankLength) {
        short.push({ rowIndex, runIndex, length });
        return;
      }
      const wholes = Math.ceil(length / job.plankLength) - 1;
      long.push({ rowIndex, runIndex, x, wholes, rest: length - wholes * job.plankLength });
    });
  });
  short.sort((a, b) => b.length - a.length);
  return { long, short };
}

/** Least end piece: a piece has some length even where the rules ask for none. */
export function leastPiece(job: CutJob): number {
  return Math.max(1, job.minPiece);
}

/** Whether a first and a last piece can share a plank at all. */
export function canPair(job: CutJob): boolean {
  return 2 * leastPiece(job) + job.kerf <= job.plankLength;
}

/** The choice that the last piece of one long run comes from the plank of the first piece of another. */
export function pairName(last: number, first: number): string {
  return `pair${last}_${first}`;
}

/** Whether a wall-to-wall piece of this length fits on a plank beside the shortest end piece. */
export function fitsBeside(job: CutJob, length: number): boolean {
  return length + job.kerf + leastPiece(job) <= job.plankLength;
}
