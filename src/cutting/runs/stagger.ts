/**
 * Stagger: which first pieces of a run are kept away by the joints of runs in neighbouring rows.
 *
 * The joints of a run are all places x + s, x + s + L, ... strictly inside it, so a joint of another run forbids the
 * first pieces whose joints come nearer than the minimum stagger: a window on the circle of L places, cut off where
 * this run ends.
 */

import type { Trial } from '../search/trial';
import { nearPairs } from './joints';
import { followerOf, type PreparedRun } from './prepared';

/** Stretches of first pieces, both ends included: `from[i]`..`to[i]` for i below `count`. Made once, filled again and again. */
export interface Stretches {
  readonly from: number[];
  readonly to: number[];
  count: number;
}

export function noStretches(): Stretches {
  return { from: [], to: [], count: 0 };
}

/** Room for finding the openings of a run. */
export interface Openings extends Stretches {
  /** What neighbouring joints forbid, ascending, possibly overlapping. */
  readonly windows: Stretches;
}

export function noOpenings(): Openings {
  return { ...noStretches(), windows: noStretches() };
}

/** Whether one of the stretches has `place` in it. */
export function isWithin(stretches: Stretches, place: number): boolean {
  for (let i = 0; i < stretches.count; i++) {
    if (place >= stretches.from[i] && place <= stretches.to[i]) return true;
  }
  return false;
}

/** Finds the first pieces that the rules of `run` and the joints of its laid neighbours leave open. */
export function findOpenings(openings: Openings, run: PreparedRun, trial: Trial): void {
  const { windows } = openings;
  windows.count = 0;
  addNeighbourWindows(windows, run, trial);
  const follower = followerOf(trial.prepared, run);
  if (follower) addNeighbourWindows(windows, follower, trial);
  openRest(openings, run);
}

/** Opens all first pieces that the rules of `run` alone leave open. */
export function openAll(openings: Openings, run: PreparedRun): void {
  openings.windows.count = 0;
  openRest(openings, run);
}

/** Opens what the windows leave of the first pieces that the rules of `run` allow. */
function openRest(openings: Openings, run: PreparedRun): void {
  openings.count = 0;
  openBetween(openings, openings.windows, run.low.from, run.low.to);
  openBetween(openings, openings.windows, run.high.from, run.high.to);
}

function addNeighbourWindows(windows: Stretches, run: PreparedRun, { prepared, at, stagger }: Trial): void {
  for (const index of prepared.neighbours[run.index]) {
    if (at[index] === 0) continue;
    const other = prepared.runs[index];
    addWindows(windows, run, { other, at: at[index], reach: stagger[run.index] - 1, L: prepared.plankLength });
  }
}

/** What a run keeps away from: the joints of `other`, whose first piece is `at`, by more than `reach`. */
export interface KeptAway {
  readonly other: PreparedRun;
  readonly at: number;
  readonly reach: number;
  /** Length of a plank. */
  readonly L: number;
}

/**
 * Adds the first pieces of `run` that put a joint within `reach` of a joint of `other`.
 * Joints of `other` well inside `run` all forbid the same: one of them is enough.
 */
export function addWindows(windows: Stretches, run: PreparedRun, { other, at, reach, L }: KeptAway): void {
  const left = run.x + 1;
  const right = run.x + run.length - 1;
  const end = Math.min(other.x + other.length - 1, right + reach);
  const skipped = Math.max(0, Math.ceil((left - reach - other.x - at) / L));
  let isInnerAdded = false;
  for (let joint = other.x + at + skipped * L; joint <= end; joint += L) {
    const isInner = joint - reach >= left && joint + reach <= right;
    if (isInner && isInnerAdded) continue;
    isInnerAdded = isInnerAdded || isInner;
    addWindow(windows, Math.max(left, joint - reach) - run.x, Math.min(right, joint + reach) - run.x, L);
  }
}

/** Adds the first pieces that have a joint within from..to, counted from the start of the run. */
function addWindow(windows: Stretches, from: number, to: number, L: number): void {
  if (to < from) return;
  if (to - from >= L - 1) {
    addInOrder(windows, 1, L);
    return;
  }
  const first = ((from - 1) % L) + 1;
  const last = ((to - 1) % L) + 1;
  if (last >= first) {
    addInOrder(windows, first, last);
    return;
  }
  addInOrder(windows, 1, last);
  addInOrder(windows, first, L);
}

function addInOrder(stretches: Stretches, from: number, to: number): void {
  let i = stretches.count++;
  for (; i > 0 && stretches.from[i - 1] > from; i--) {
    stretches.from[i] = stretches.from[i - 1];
    stretches.to[i] = stretches.to[i - 1];
  }
  stretches.from[i] = from;
  stretches.to[i] = to;
}

/** Adds what the windows leave of from..to. */
export function openBetween(open: Stretches, windows: Stretches, from: number, to: number): void {
  let next = from;
  for (let i = 0; i < windows.count && next <= to; i++) {
    if (windows.from[i] > next) add(open, next, Math.min(to, windows.from[i] - 1));
    next = Math.max(next, windows.to[i] + 1);
  }
  if (next <= to) add(open, next, to);
}

function add(stretches: Stretches, from: number, to: number): void {
  stretches.from[stretches.count] = from;
  stretches.to[stretches.count] = to;
  stretches.count++;
}

/** Pairs of joints that are too near, of a run (and the one that follows it) with its neighbours. */
export function nearAt(trial: Trial, run: PreparedRun): number {
  const { prepared, stagger } = trial;
  const { runs, neighbours } = prepared;
  let pairs = 0;
  for (const index of neighbours[run.index]) {
    pairs += nearPairs(trial, run, runs[index], stagger[run.index]);
  }
  const follower = followerOf(prepared, run);
  return follower ? pairs + nearAt(trial, follower) : pairs;
}
