/**
 * A job made ready for counting: each run as whole planks and a rest, with the first pieces it may have.
 *
 * A run longer than a plank is a first piece s, whole planks, and a last piece e. With length = quotient x L + rest
 * (rest 1..L), s < rest leaves e = rest - s, s >= rest leaves e = L + rest - s and takes one whole plank less.
 * A run not longer than a plank is one piece that may come from anywhere in a plank; it is given a place instead of a
 * first piece (see `arcs.ts`), and the same formulas hold with quotient 0.
 */
import type { CutJob } from '../job';
import { type StripRows, stripRowsOf } from './strips';

export interface PreparedRun {
  /** Place in `PreparedJob.runs`. */
  readonly index: number;
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly room: number;
  readonly x: number;
  readonly length: number;
  readonly quotient: number;
  /** 1..plankLength. */
  readonly rest: number;
  /** One piece that touches walls at both ends. */
  readonly isWallToWall: boolean;
  /** Least end piece this run can keep to: the job's, or the most the run allows where that is less. */
  readonly minPiece: number;
  /** First pieces that may be: [lowFrom, lowTo] leave a last piece of rest - s, [highFrom, highTo] one of L + rest - s. */
  readonly lowFrom: number;
  readonly lowTo: number;
  readonly highFrom: number;
  readonly highTo: number;
  /** The last-row run that strips serve alone, because it is always laid like this one; -1 where there is none. */
  readonly follower: number;
  /** Is such a follower itself. */
  readonly isTied: boolean;
  /** Index of the strip rows it belongs to, if they are not tied: what it costs depends on the other row; else -1. */
  readonly strips: number;
  /** In the last row of those: only what strips leave of it has to be cut. */
  readonly isServed: boolean;
}

export interface PreparedJob {
  readonly job: CutJob;
  readonly plankLength: number;
  /** What lies between two pieces of a plank: the saw's kerf, and the play where all pieces are given it. */
  readonly kerf: number;
  readonly runs: readonly PreparedRun[];
  /** Indices into `runs`, row by row. */
  readonly rowRuns: readonly (readonly number[])[];
  readonly stripRows: readonly StripRows[];
  /** For each run, the runs of the rows before and after that must keep their joints away from its own. */
  readonly neighbours: readonly (readonly number[])[];
}

/**
 * Makes a job ready.
 *
 * @param ties whether a last row that strips can serve whole is always laid like the first
 * @param room whether every second piece of a plank is given its play, in whatever order they are laid: such a choice
 *   keeps the law of play, though not every choice that keeps it is of this kind
 * @throws RangeError if a number is not whole or a length is not above 0: a caller's mistake, not a user's
 */
export function prepareJob(
  job: CutJob,
  ties: 'ties' | 'no ties',
  room: 'no play' | 'play everywhere' = 'no play',
): PreparedJob {
  requireWhole('plank length', job.plankLength, 1);
  requireWhole('kerf', job.kerf, 0);
  requireWhole('play', job.play ?? 0, 0);
  requireWhole('minimum piece', job.minPiece, 0);
  requireWhole('minimum stagger', job.minStagger, 0);
  requireWhole('aligned-joint distance', job.alignedDistance, 0);
  let count = 0;
  const rowRuns = job.rows.map((row) => row.runs.map(() => count++));
  const stripRows = stripRowsOf(job, rowRuns, ties === 'ties');
  const runs = job.rows.flatMap((row, rowIndex) =>
    row.runs.map((_, runIndex) =>
      prepareRun(job, { rowIndex, runIndex, index: rowRuns[rowIndex][runIndex] }, stripRows),
    ),
  );
  const neighbours = runs.map((run) => neighboursOf(job, run, runs, rowRuns));
  const kerf = job.kerf + (room === 'play everywhere' ? (job.play ?? 0) : 0);
  return { job, plankLength: job.plankLength, kerf, runs, rowRuns, stripRows, neighbours };
}

function requireWhole(name: string, value: number, least: number): void {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new RangeError(`The ${name} must be a whole number of at least ${least}, found ${value}.`);
  }
}

interface RunPlace {
  readonly index: number;
  readonly rowIndex: number;
  readonly runIndex: number;
}

function prepareRun(job: CutJob, place: RunPlace, stripRows: readonly StripRows[]): PreparedRun {
  const { index, rowIndex, runIndex } = place;
  const { x, length } = job.rows[rowIndex].runs[runIndex];
  requireWhole('run length', length, 1);
  requireWhole('place of a run', x, Number.MIN_SAFE_INTEGER);
  const L = job.plankLength;
  const isWallToWall = length <= L;
  const rest = ((length - 1) % L) + 1;
  // The end pieces of a run are most equal at (L + rest) / 2, so no run can keep to more than that.
  const minPiece = isWallToWall ? 0 : Math.max(1, Math.min(job.minPiece, Math.floor((L + rest) / 2)));
  const strips = stripRows.findIndex(({ first, last }) => first.includes(index) || last.includes(index));
  const { first, last, isTied } = stripRows[strips] ?? { first: [], last: [], isTied: false };
  return {
    index,
    rowIndex,
    runIndex,
    room: job.rows[rowIndex].room,
    x,
    length,
    quotient: (length - rest) / L,
    rest,
    isWallToWall,
    minPiece,
    lowFrom: minPiece,
    lowTo: isWallToWall ? -1 : rest - minPiece,
    highFrom: Math.max(rest, minPiece),
    highTo: isWallToWall ? L : Math.min(L, L + rest - minPiece),
    follower: isTied && first.includes(index) ? last[first.indexOf(index)] : -1,
    isTied: isTied && last.includes(index),
    strips: isTied ? -1 : strips,
    isServed: !isTied && last.includes(index),
  };
}

function neighboursOf(
  job: CutJob,
  run: PreparedRun,
  runs: readonly PreparedRun[],
  rowRuns: readonly (readonly number[])[],
): number[] {
  if (run.isWallToWall || job.minStagger === 0) return [];
  const near = [run.rowIndex - 1, run.rowIndex + 1].flatMap((row) => rowRuns[row] ?? []);
  return near.filter((index) => {
    const other = runs[index];
    if (other.room !== run.room || other.isWallToWall) return false;
    // Joints lie between the two end pieces; runs whose joints can never come near each other are no neighbours.
    const gap = Math.max(
      other.x + other.minPiece - (run.x + run.length - run.minPiece),
      run.x + run.minPiece - (other.x + other.length - other.minPiece),
    );
    return gap < job.minStagger;
  });
}

/** Length of the last piece of a run longer than a plank. */
export function lastPieceOf(run: PreparedRun, firstPiece: number, plankLength: number): number {
  return firstPiece < run.rest ? run.rest - firstPiece : plankLength + run.rest - firstPiece;
}

/** Whole planks between first and last piece of a run longer than a plank. */
export function wholesOf(run: PreparedRun, firstPiece: number): number {
  return firstPiece < run.rest ? run.quotient : run.quotient - 1;
}
