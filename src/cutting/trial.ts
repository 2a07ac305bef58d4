/**
 * A trial: the first piece of every run with the load they make together. The search changes it piece by piece; it is
 * the one thing here that changes in place.
 */
import { addArc, addStretch } from './arcs';
import { lastPieceOf, type PreparedJob, type PreparedRun, wholesOf } from './prepared';
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
    seeded: seededFrom(prepared.runs.length * 2_654_435 + prepared.plankLength),
    steps: 0,
  };
}

/** Lays a run that is not laid, and the run tied to it. */
export function lay(trial: Trial, run: PreparedRun, at: number): void {
  const { prepared } = trial;
  trial.at[run.index] = at;
  if (run.stripFor >= 0 && prepared.runs[run.stripFor].isTied) trial.at[run.stripFor] = at;
  changeLoad(trial, run, 1);
}

/** Takes a run up again, and leaves its first piece written. */
export function lift(trial: Trial, run: PreparedRun): void {
  changeLoad(trial, run, -1);
}

function changeLoad(trial: Trial, run: PreparedRun, by: number): void {
  if (run.stripOf >= 0) {
    changeStripLoad(trial, run, by);
    return;
  }
  trial.wholes += by * run.quotient;
  addArc(trial.depth, run, trial.at[run.index], trial.prepared, by);
  // What a strip run still has to pay depends on what this one leaves.
  if (run.stripFor >= 0) changeStripLoad(trial, trial.prepared.runs[run.stripFor], by);
}

/** Puts a whole choice in place of whatever was laid. */
export function layAll(trial: Trial, at: Int32Array): void {
  trial.depth.fill(0);
  trial.wholes = 0;
  if (at !== trial.at) trial.at.set(at);
  for (const run of trial.prepared.runs) if (run.stripOf < 0) changeLoad(trial, run, 1);
}

/** Planks the trial needs. */
export function plankCountOf(trial: Trial): number {
  const { depth, prepared } = trial;
  let deepest = 0;
  for (let a = 1; a <= prepared.plankLength; a++) if (depth[a] > deepest) deepest = depth[a];
  return trial.wholes + deepest;
}

/** What strips of the first row leave to be paid of a last-row run. */
export interface StripDue {
  first: boolean;
  last: boolean;
  wholes: number;
}

/**
 * Whole strips serve whole pieces, ends serve no longer ends of the same side, and whole strips left over serve any end.
 *
 * @param at first piece of the last-row run, `sourceAt` of the first-row run its strips come from
 */
export function stripDue(prepared: PreparedJob, run: PreparedRun, at: number, sourceAt: number): StripDue {
  const L = prepared.plankLength;
  const source = prepared.runs[run.stripOf];
  const given = endsOf(source, sourceAt, L);
  if (run.isWallToWall) {
    const isServed = given.wholes > 0 || Math.max(given.first, given.last) >= run.length;
    return { first: !isServed, last: false, wholes: 0 };
  }
  const wanted = endsOf(run, at, L);
  let spare = Math.max(0, given.wholes - wanted.wholes);
  const isServed = (length: number, sibling: number): boolean => {
    if (length === 0 || (sibling >= length && !source.isWallToWall)) return true;
    if (spare === 0) return false;
    spare--;
    return true;
  };
  const first = !isServed(wanted.first, given.first);
  const last = !isServed(wanted.last, given.last);
  return { first, last, wholes: Math.max(0, wanted.wholes - given.wholes) };
}

/** Lengths of the cut ends of a run (0 for an end that is a whole plank) and its whole planks. */
function endsOf(run: PreparedRun, at: number, L: number): { first: number; last: number; wholes: number } {
  if (run.isWallToWall) return { first: run.length % L, last: 0, wholes: run.length === L ? 1 : 0 };
  const last = lastPieceOf(run, at, L);
  const wholes = wholesOf(run, at) + (at === L ? 1 : 0) + (last === L ? 1 : 0);
  return { first: at % L, last: last % L, wholes };
}

function changeStripLoad(trial: Trial, run: PreparedRun, by: number): void {
  const { prepared, at } = trial;
  if (run.isTied || at[run.index] === 0 || at[run.stripOf] === 0) return;
  const due = stripDue(prepared, run, at[run.index], at[run.stripOf]);
  const L = prepared.plankLength;
  trial.wholes += by * due.wholes;
  if (run.isWallToWall) {
    if (due.first) addArc(trial.depth, run, at[run.index], prepared, by);
    return;
  }
  if (due.first) addStretch(trial.depth, 0, at[run.index], by);
  if (due.last) addStretch(trial.depth, L - prepared.kerf - lastPieceOf(run, at[run.index], L), L, by);
}
