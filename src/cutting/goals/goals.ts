/**
 * What makes one of two plans with equally many planks the better: aligned joints, cuts, stair-steps. Kept up to date
 * run by run while the polish moves them.
 */
import { nearPairs } from '../runs/joints';
import { followerOf, lastPieceOf, type PreparedJob, type PreparedRun, paysForItself } from '../runs/prepared';
import type { Trial } from '../search/trial';

export interface Goals {
  readonly trial: Trial;
  /** For each run, the runs two rows away in its room. */
  readonly twoAway: readonly (readonly number[])[];
  /** The run of the row before that each run mostly lies along; -1 for none. */
  readonly before: Int32Array;
  /** For each run, the runs that end a flight of three rows with it: itself, the next and the next but one. */
  readonly flights: readonly (readonly number[])[];
  /** How many stretches of cut pieces end at each place of a plank, and begin behind it (see `arcs.ts`). */
  readonly ends: Int32Array;
  readonly begins: Int32Array;
  /** Pairs of joints two rows apart that are nearer than the aligned distance. */
  aligned: number;
  /** Cut pieces less those that fill up a plank exactly. */
  cuts: number;
  /** Flights of three rows whose joints step on by the same amount. */
  stairs: number;
}

export function goalsOf(trial: Trial): Goals {
  const { prepared } = trial;
  const { runs, plankLength } = prepared;
  const before = Int32Array.from(runs, (run) => widestBeside(prepared, run, runsOf(prepared, run, run.rowIndex - 1)));
  const flights: number[][] = runs.map(() => []);
  for (const { index } of runs) {
    const second = before[index];
    const first = second < 0 ? -1 : before[second];
    if (first >= 0) for (const run of [first, second, index]) flights[run].push(index);
  }
  const goals: Goals = {
    trial,
    twoAway: runs.map((run) => [-2, 2].flatMap((away) => runsOf(prepared, run, run.rowIndex + away))),
    before,
    flights,
    ends: new Int32Array(plankLength + 2),
    begins: new Int32Array(plankLength + 2),
    aligned: 0,
    cuts: 0,
    stairs: 0,
  };
  for (const run of runs) {
    countCuts(goals, run, 1);
    goals.aligned += alignedJoints(goals, run) / 2;
    goals.stairs += Number(isStair(goals, run.index));
  }
  return goals;
}

/** Runs with joints in a row of the same room. */
function runsOf(prepared: PreparedJob, run: PreparedRun, rowIndex: number): number[] {
  if (run.isWallToWall) return [];
  return (prepared.rowRuns[rowIndex] ?? []).filter(
    (index) => prepared.runs[index].room === run.room && !prepared.runs[index].isWallToWall,
  );
}

function widestBeside(prepared: PreparedJob, run: PreparedRun, others: readonly number[]): number {
  const overlap = (index: number): number => {
    const other = prepared.runs[index];
    return Math.min(other.x + other.length, run.x + run.length) - Math.max(other.x, run.x);
  };
  return others.reduce((best, index) => (best < 0 || overlap(index) > overlap(best) ? index : best), -1);
}

/** Adds (1) or takes away (-1) what a laid run and its follower contribute to all goals. */
export function countRun(goals: Goals, run: PreparedRun, by: number): void {
  countCuts(goals, run, by);
  goals.aligned += by * alignedJoints(goals, run);
  goals.stairs += by * stairsWith(goals, run);
  const follower = followerOf(goals.trial.prepared, run);
  if (!follower) return;
  goals.aligned += by * alignedJoints(goals, follower);
  goals.stairs += by * stairsWith(goals, follower);
}

/**
 * A cut piece takes one cut, and none if it fills up its plank exactly: where a first piece ends, a last one begins.
 * The sweep of `pairing.ts` brings together as many of those as there are.
 */
function countCuts(goals: Goals, run: PreparedRun, by: number): void {
  const { prepared, at } = goals.trial;
  const { plankLength: L, kerf } = prepared;
  if (!paysForItself(run)) return;
  const end = at[run.index];
  const last = run.isWallToWall ? run.length + L - end : lastPieceOf(run, end, L);
  if (run.isWallToWall || end < L) countMeeting(goals, goals.ends, end, by);
  if (last < L && L - kerf - last >= 0) countMeeting(goals, goals.begins, L - kerf - last, by);
  const pieces = run.isWallToWall ? 1 : Number(end < L) + Number(last < L);
  goals.cuts += by * pieces;
}

function countMeeting(goals: Goals, counts: Int32Array, place: number, by: number): void {
  const before = Math.min(goals.ends[place], goals.begins[place]);
  counts[place] += by;
  goals.cuts -= Math.min(goals.ends[place], goals.begins[place]) - before;
}

/** Aligned joints of a run. */
export function alignedJoints(goals: Goals, run: PreparedRun): number {
  const { job, runs } = goals.trial.prepared;
  let pairs = 0;
  for (const index of goals.twoAway[run.index]) {
    pairs += nearPairs(goals.trial, run, runs[index], job.alignedDistance);
  }
  return pairs;
}

/** Aligned joints of either of two runs, those between them once. */
export function alignedOfBoth(goals: Goals, a: PreparedRun, b: PreparedRun): number {
  const both = goals.twoAway[a.index].includes(b.index)
    ? nearPairs(goals.trial, a, b, goals.trial.prepared.job.alignedDistance)
    : 0;
  return alignedJoints(goals, a) + alignedJoints(goals, b) - both;
}

/** Stair-steps that a run takes part in. */
export function stairsWith(goals: Goals, run: PreparedRun): number {
  let stairs = 0;
  for (const third of goals.flights[run.index]) if (isStair(goals, third)) stairs++;
  return stairs;
}

/** Stair-steps that either of two runs takes part in. */
export function stairsOfBoth(goals: Goals, a: PreparedRun, b: PreparedRun): number {
  const ofA = goals.flights[a.index];
  let stairs = stairsWith(goals, a);
  for (const third of goals.flights[b.index]) if (!ofA.includes(third) && isStair(goals, third)) stairs++;
  return stairs;
}

/** Whether the joints of a flight of three rows, `third` the last of them, step on by the same amount. */
function isStair({ before, trial }: Goals, third: number): boolean {
  const second = before[third];
  const first = second < 0 ? -1 : before[second];
  if (first < 0) return false;
  const { plankLength: L, job } = trial.prepared;
  const change = phaseOf(trial, third) - 2 * phaseOf(trial, second) + phaseOf(trial, first);
  const around = ((change % L) + L) % L;
  return Math.min(around, L - around) < job.alignedDistance;
}

/** Place of the first joint of a run. */
export function phaseOf({ prepared, at }: Trial, index: number): number {
  return prepared.runs[index].x + at[index];
}
