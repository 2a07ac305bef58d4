/**
 * A trial: the first piece of every run with the load they make together. The search changes it piece by piece; it is
 * the one thing here that changes in place.
 */
import { addArc, addStretch, arcOf } from '../runs/arcs';
import { type PreparedJob, type PreparedRun, paysForItself } from '../runs/prepared';
import { matchStrips, NO_STRIP } from '../runs/strips';
import { type Seeded, seededFrom } from './seeded';

export interface Trial {
  readonly prepared: PreparedJob;
  /** First piece of every run, the place of a run that is one piece; 0 while it is not laid. */
  readonly at: Int32Array;
  /** Stagger each run keeps from its neighbours: the job's, or less where a room cannot keep that. */
  readonly stagger: Int32Array;
  /** How many stretches of cut pieces cover each place 1..L. */
  readonly depth: Int32Array;
  /** Whole planks that no stretch accounts for. */
  wholes: number;
  /** Whether what strips leave of a last row is in the load now, by its index in `stripRows`. */
  readonly isDueCounted: boolean[];
  readonly seeded: Seeded;
  /** Places visited so far: the search's measure of work. */
  steps: number;
}

export function emptyTrial(prepared: PreparedJob): Trial {
  return {
    prepared,
    at: new Int32Array(prepared.runs.length),
    stagger: new Int32Array(prepared.runs.length).fill(prepared.job.minStagger),
    depth: new Int32Array(prepared.plankLength + 2),
    wholes: 0,
    isDueCounted: prepared.stripRows.map(() => false),
    seeded: seededFrom(prepared.runs.length * 2_654_435 + prepared.plankLength),
    steps: 0,
  };
}

/** Lays a run that is not laid, and the run that follows it. */
export function lay(trial: Trial, run: PreparedRun, at: number): void {
  const { strips } = run;
  if ('pair' in strips) countDue(trial, strips.pair, false);
  setFirst(trial, run, at);
  if (strips.role !== 'takes') changeLoad(trial, run, 1);
  if ('pair' in strips) countDue(trial, strips.pair, true);
}

/** Takes a run up again, and leaves its first piece written. */
export function lift(trial: Trial, run: PreparedRun): void {
  const { strips } = run;
  if ('pair' in strips) countDue(trial, strips.pair, false);
  if (strips.role !== 'takes') changeLoad(trial, run, -1);
}

function changeLoad(trial: Trial, run: PreparedRun, by: number): void {
  trial.wholes += by * run.quotient;
  addArc(trial.depth, arcOf(trial.prepared, run), trial.at[run.index], by);
}

/** Adds or takes away what strips leave of a last row; while a run of its pair is lifted nothing of it is counted. */
function countDue(trial: Trial, pair: number, isCounted: boolean): void {
  if (trial.isDueCounted[pair] === isCounted) return;
  trial.isDueCounted[pair] = isCounted;
  const by = isCounted ? 1 : -1;
  const { prepared, at, depth } = trial;
  const L = prepared.plankLength;
  const { wanted, sources, wholesDue } = matchStrips(prepared, prepared.stripRows[pair], at);
  trial.wholes += by * wholesDue;
  wanted.ends.forEach(({ run, side, length }, i) => {
    if (sources[i] !== NO_STRIP) return;
    if (prepared.runs[run].isWallToWall) addArc(depth, arcOf(prepared, prepared.runs[run]), at[run], by);
    else if (side === 'right') addStretch(depth, 0, length, by);
    else addStretch(depth, L - prepared.kerf - length, L, by);
  });
}

/** Takes up everything. */
export function clear(trial: Trial): void {
  trial.at.fill(0);
  trial.depth.fill(0);
  trial.wholes = 0;
  trial.isDueCounted.fill(false);
}

/** Puts a whole choice in place of whatever was laid. */
export function layAll(trial: Trial, at: Int32Array): void {
  trial.depth.fill(0);
  trial.wholes = 0;
  if (at !== trial.at) trial.at.set(at);
  const { runs, stripRows } = trial.prepared;
  for (const run of runs) if (paysForItself(run)) changeLoad(trial, run, 1);
  trial.isDueCounted.fill(false);
  stripRows.forEach(({ areLaidAlike }, i) => {
    if (!areLaidAlike) countDue(trial, i, true);
  });
}

/** Writes the first piece of a run, and of the run that follows it; the caller sees to the load. */
export function setFirst(trial: Trial, run: PreparedRun, at: number): void {
  trial.at[run.index] = at;
  if (run.strips.role === 'leads') trial.at[run.strips.follower] = at;
}

/** Gives each of two runs the first piece of the other; the caller sees to the load. */
export function swapFirsts(trial: Trial, a: PreparedRun, b: PreparedRun): void {
  const at = trial.at[a.index];
  setFirst(trial, a, trial.at[b.index]);
  setFirst(trial, b, at);
}

/** Planks the trial needs. */
export function plankCountOf(trial: Trial): number {
  const { depth, prepared } = trial;
  let deepest = 0;
  for (let a = 1; a <= prepared.plankLength; a++) if (depth[a] > deepest) deepest = depth[a];
  return trial.wholes + deepest;
}
