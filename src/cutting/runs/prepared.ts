/**
 * A job made ready for counting: each run as whole planks and a rest, with the first pieces it may have.
 *
 * A run longer than a plank is a first piece s, whole planks, and a last piece e. With length = quotient x L + rest
 * (rest 1..L), s < rest leaves e = rest - s, s >= rest leaves e = L + rest - s and takes one whole plank less.
 * A run not longer than a plank is one piece that may come from anywhere in a plank; it is given a place instead of a
 * first piece (see `arcs.ts`), and the same formulas hold with quotient 0.
 */
import type { CutJob } from '../job';
import { type StripRows, stripRowsOf } from './stripRows';

/** First pieces `from` to `to`, both of them included; none where `to` is below `from`. */
export interface FirstPieces {
  readonly from: number;
  readonly to: number;
}

/** What a run has to do with strips, and so which runs its cost depends on. */
export type StripPart =
  | { readonly role: 'none' }
  /** The last-row run `follower` is always laid like this one, and strips of this one serve it alone. */
  | { readonly role: 'leads'; readonly follower: number }
  /** Such a last-row run: it takes no planks, and is laid with the run it follows. */
  | { readonly role: 'follows' }
  /** Of a first row whose strips serve the last row (`takes`) piece by piece: `pair` is the index of their strip rows. */
  | { readonly role: 'gives' | 'takes'; readonly pair: number };

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
  /** First pieces that leave a last piece of rest - s; none for a wall-to-wall run. */
  readonly low: FirstPieces;
  /** First pieces that leave one of L + rest - s; for a wall-to-wall run its places. */
  readonly high: FirstPieces;
  readonly strips: StripPart;
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
 * @param lastRows whether a last row that strips can serve whole is always laid like the first
 * @param room whether every second piece of a plank is given its play, in whatever order they are laid: such a choice
 *   keeps the law of play, though not every choice that keeps it is of this kind
 * @throws RangeError if a number is not whole or a length is not above 0: a caller's mistake, not a user's
 */
export function prepareJob(
  job: CutJob,
  lastRows: 'laid alike' | 'laid freely',
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
  const stripRows = stripRowsOf(job, rowRuns, lastRows === 'laid alike');
  const runs = job.rows.flatMap((row, rowIndex) =>
    row.runs.map((_, runIndex) =>
      prepareRun(job, { rowIndex, runIndex, index: rowRuns[rowIndex][runIndex] }, stripRows),
    ),
  );
  const neighbours = runs.map((run) => neighboursOf(job, run, runs, rowRuns));
  const kerf = job.kerf + (room === 'play everywhere' ? (job.play ?? 0) : 0);
  return { job, plankLength: job.plankLength, kerf, runs, rowRuns, stripRows, neighbours };
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
    low: isWallToWall ? NO_FIRST_PIECES : { from: minPiece, to: rest - minPiece },
    high: { from: Math.max(rest, minPiece), to: isWallToWall ? L : Math.min(L, L + rest - minPiece) },
    strips: stripPartOf(index, stripRows),
  };
}

const NO_FIRST_PIECES: FirstPieces = { from: 0, to: -1 };

function stripPartOf(index: number, stripRows: readonly StripRows[]): StripPart {
  const pair = stripRows.findIndex(({ first, last }) => first.includes(index) || last.includes(index));
  if (pair < 0) return { role: 'none' };
  const { first, last, areLaidAlike } = stripRows[pair];
  const isFirst = first.includes(index);
  if (areLaidAlike) return isFirst ? { role: 'leads', follower: last[first.indexOf(index)] } : { role: 'follows' };
  return { role: isFirst ? 'gives' : 'takes', pair };
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

/** The run that is always laid like this one, if there is one. */
export function followerOf({ runs }: PreparedJob, { strips }: PreparedRun): PreparedRun | undefined {
  return strips.role === 'leads' ? runs[strips.follower] : undefined;
}

/** Whether a run moves without another: strips join some, a piece from wall to wall has no joints to keep away. */
export function movesFreely({ isWallToWall, strips }: PreparedRun): boolean {
  return !isWallToWall && strips.role === 'none';
}

/** Whether what a run costs depends on the other row of its strips; a run that leads costs what it would alone. */
export function costsByPair({ strips }: PreparedRun): boolean {
  return strips.role === 'gives' || strips.role === 'takes';
}

/** Runs of the other row whose strips serve this one's, or are served by them. */
export function otherRowOf({ stripRows }: PreparedJob, { strips }: PreparedRun): readonly number[] {
  if (strips.role !== 'gives' && strips.role !== 'takes') return [];
  return strips.role === 'gives' ? stripRows[strips.pair].last : stripRows[strips.pair].first;
}

/** Whether a run is laid by itself, and not with the one it follows. */
export function isLaidItself({ strips }: PreparedRun): boolean {
  return strips.role !== 'follows';
}

/** Whether all planks of a run are its own: strips serve those that follow and those that take. */
export function paysForItself({ strips }: PreparedRun): boolean {
  return strips.role !== 'follows' && strips.role !== 'takes';
}

/** Length of the last piece of a run longer than a plank. Units of the job, as all lengths here. */
export function lastPieceOf(run: PreparedRun, firstPiece: number, plankLength: number): number {
  return firstPiece < run.rest ? run.rest - firstPiece : plankLength + run.rest - firstPiece;
}

/** Whole planks between first and last piece of a run longer than a plank. */
export function wholesOf(run: PreparedRun, firstPiece: number): number {
  return firstPiece < run.rest ? run.quotient : run.quotient - 1;
}

/** @throws RangeError if a number that a caller gives is not whole, or under `least` */
export function requireWhole(name: string, value: number, least: number): void {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new RangeError(`The ${name} must be a whole number of at least ${least}, found ${value}.`);
  }
}
