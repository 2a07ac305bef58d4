/**
 * A large floor laid in lengths of rows alike, each planned for itself, where that takes no more planks: nothing waits from
 * one to the next. Where they meet, runs alike change places until the stagger is kept.
 */
import { lastOf, madeOf, sumOf } from '../geometry/lists';
import { fewestPossible } from './bound/bound';
import { fewestWaiting, SOME_OFFCUTS, takesManyCuts, type Waiting } from './fewestWaiting';
import { type Followed, follow } from './follow/follow';
import { areAlike } from './follow/moves';
import { alignedJoints, type Goals, goalsOf } from './goals/goals';
import type { CutJob } from './job';
import { type LaidFloor, layFewest } from './layFewest';
import { isLaidItself, type PreparedRun } from './runs/prepared';
import { nearAt } from './runs/stagger';
import { emptyTrial, layAll, swapFirsts } from './search/trial';
import type { Steps } from './steps';

/** Rows that are planned at once, at most: few are soon laid, but the last of a length may cost a plank. */
const MOST_ROWS = [100, Number.POSITIVE_INFINITY];
/** Rows alike that are worth planning for themselves. */
const LEAST_ROWS = 20;
/** Rows away from the place where two lengths meet whose runs may change places with runs there. */
const ROWS_TO_MEND = 30;
/** Share of the moves that tidy up afterwards: each length has had its own. */
const TIDYING_SHARE = 0.1;

/**
 * @param most planks that may be used
 * @returns undefined where planks are saved from one length to the next, or joints come too near where they meet
 */
export function* layApart(laid: LaidFloor, most: number, how: Waiting): Steps<Followed | undefined> {
  const { job, runs } = laid.trial.prepared;
  if (job.ripPairs.length > 0 || !runs.every(isLaidItself)) return undefined;
  for (const rows of MOST_ROWS) {
    const followed = yield* layInLengths(laid, most, lengthsOf(job, rows), how);
    if (followed) return followed;
  }
  return undefined;
}

function* layInLengths(
  laid: LaidFloor,
  most: number,
  lengths: readonly CutJob['rows'][],
  { effort, means }: Waiting,
): Steps<Followed | undefined> {
  if (lengths.length < 2) return undefined;
  const { job } = laid.trial.prepared;
  const kinds = lengths.map((rows) => JSON.stringify(rows.map(({ room, ...row }) => row)));
  const jobs = [...new Map(kinds.map((kind, i) => [kind, { ...job, rows: lengths[i] }]))];
  const isWithin = (planks: ReadonlyMap<string, number>): boolean =>
    sumOf(kinds, (kind) => planks.get(kind) ?? 0) <= most;
  if (!isWithin(new Map(jobs.map(([kind, part]) => [kind, fewestPossible(part, { upTo: most })])))) return undefined;
  const floors = new Map<string, LaidFloor>();
  for (const [kind, part] of jobs) floors.set(kind, yield* layFewest(part, 'laid freely', { effort }));
  if (!isWithin(new Map([...floors].map(([kind, { planks }]) => [kind, planks])))) return undefined;
  const followed = new Map<string, Followed>();
  for (const [kind, floor] of floors)
    followed.set(kind, yield* fewestWaiting(floor, 0, { enough: SOME_OFFCUTS, isRowByRow: true, effort, means }));
  return yield* joined(
    laid,
    kinds.flatMap((kind) => followed.get(kind) ?? []),
  );
}

/** Rows that lie next to each other and are alike, in lengths that are about equal; none where some are too few. */
function lengthsOf({ rows }: CutJob, mostRows: number): CutJob['rows'][] {
  const alike: CutJob['rows'][number][][] = [];
  const shapeOf = ({ room, runs }: CutJob['rows'][number]): string => JSON.stringify([room, runs]);
  rows.forEach((row, i) => {
    if (i === 0 || shapeOf(row) !== shapeOf(rows[i - 1])) alike.push([]);
    lastOf(alike).push(row);
  });
  if (alike.some(({ length }) => length < LEAST_ROWS)) return [];
  return alike.flatMap((stretch) => {
    const parts = Math.max(1, Math.ceil(stretch.length / mostRows));
    const startOf = (part: number): number => Math.round((part * stretch.length) / parts);
    return madeOf(parts, (part) => stretch.slice(startOf(part), startOf(part + 1)));
  });
}

/** The lengths laid one after another; undefined where that keeps no law. */
function* joined(laid: LaidFloor, lengths: readonly Followed[]): Steps<Followed | undefined> {
  // The floor at hand is left as it is.
  const trial = emptyTrial(laid.trial.prepared);
  const { runs, rowRuns } = trial.prepared;
  const at = new Int32Array(runs.length);
  const plankOf = new Int32Array(2 * runs.length).fill(-1);
  const starts: number[] = [];
  let run = 0;
  for (const { at: own, shared } of lengths) {
    starts.push(run);
    at.set(own, run);
    // A length has fewer planks than ends of runs.
    shared.plankOf.forEach((plank, piece) => {
      plankOf[2 * run + piece] = plank < 0 ? plank : 2 * run + plank;
    });
    run += own.length;
  }
  layAll(trial, at);
  const goals = goalsOf(trial);
  const meeting = starts.slice(1).map((start) => runs[start].rowIndex);
  const near = meeting.flatMap((row) => rowRuns.slice(row - 2, row + 2).flat());
  if (!near.every((index) => mend(goals, plankOf, runs[index]))) return undefined;
  const moves = Math.ceil(TIDYING_SHARE * laid.limits.moves);
  const followed = yield* follow(trial, { plankOf, fixedPlanks: [], strips: [] }, { moves, spare: 0, isInOrder: true });
  const isTaken = followed.fits && !takesManyCuts({ ...laid, trial }, followed);
  laid.trial.steps += trial.steps;
  return isTaken ? followed : undefined;
}

/**
 * Lets a run whose joints come too near others, or are aligned with them, change places with one alike of the nearest
 * rows; answers whether its stagger is kept.
 */
function mend(goals: Goals, plankOf: Int32Array, run: PreparedRun): boolean {
  const { trial } = goals;
  const isStaggered = nearAt(trial, run) === 0;
  if (isStaggered && alignedJoints(goals, run) === 0) return true;
  const distanceOf = (other: PreparedRun): number => Math.abs(other.rowIndex - run.rowIndex);
  const others = trial.prepared.runs
    .filter((other) => other !== run && distanceOf(other) <= ROWS_TO_MEND && areAlike(run, other))
    .sort((a, b) => distanceOf(a) - distanceOf(b));
  const mayBe = (isAligned: boolean) => (other: PreparedRun) => {
    swapFirsts(trial, run, other);
    const isKept = nearAt(trial, run) + nearAt(trial, other) === 0;
    const aligned = isAligned ? 0 : alignedJoints(goals, run) + alignedJoints(goals, other);
    swapFirsts(trial, run, other);
    return isKept && aligned === 0;
  };
  const other = others.find(mayBe(false)) ?? (isStaggered ? undefined : others.find(mayBe(true)));
  if (!other) return isStaggered;
  swapFirsts(trial, run, other);
  for (const side of [0, 1]) swapPlanks(plankOf, 2 * run.index + side, 2 * other.index + side);
  return true;
}

function swapPlanks(plankOf: Int32Array, a: number, b: number): void {
  const plank = plankOf[a];
  plankOf[a] = plankOf[b];
  plankOf[b] = plank;
}
