/**
 * Starts: where levelling begins, and begins again when it has come to nothing.
 *
 * The first start lays each run where the load is least (which descends on the sum of squares). Later ones leave the
 * stagger aside: a floor without it is far easier to level, and then it is a matter of which run has which of the first
 * pieces (see `mending.ts`).
 */

import { isLaidItself, type PreparedRun } from '../runs/prepared';
import { nearAt } from '../runs/stagger';
import type { Steps } from '../steps';
import { type LevelGoal, layCheapest, level, type MoveMemory, relay } from './levelling';
import { mendStagger } from './mending';
import { keepStagger } from './nearest';
import { clear, layAll, lift, type Trial } from './trial';

/** Sweeps over all runs that make a start. */
const SWEEPS = 3;
/** Places of all runs beyond which one has to do. */
const MOST_PLACES_TO_SWEEP_AGAIN = 2 ** 22;
/** Moves for each run after which the search starts again, and how much more each later start is given. */
const MOVES_A_START = 25;
const LATER_STARTS = 1.5;
/** Moves for each run, without stagger, that lead up to such a start, and swaps looked at to mend it. */
const MOVES_WITHOUT_STAGGER = 40;
const LOOKS_A_START = 3000;
/** Starts of this kind that may fail before the others, from nothing, take over. */
const STARTS_WITHOUT_STAGGER = 2;
/** A large floor has come too far to start again. */
const MOST_RUNS_TO_START_AGAIN = 100;

/** Lays all runs anew, near the fewest planks and with all the stagger a room can keep. */
export function layFromNothing(trial: Trial, memory: MoveMemory): void {
  clear(trial);
  levelByDepth(trial, memory);
  keepStagger(trial);
}

/** Lays every run in turn where the load is least, again and again: a start, and already near the fewest planks. */
function levelByDepth(trial: Trial, memory: MoveMemory): void {
  const { prepared, depth } = trial;
  const { sums } = memory;
  memory.prices.fill(1);
  const isVast = prepared.runs.length * prepared.plankLength > MOST_PLACES_TO_SWEEP_AGAIN;
  for (let sweep = 0; sweep < (isVast ? 1 : SWEEPS); sweep++) {
    for (const run of prepared.runs) {
      if (!isLaidItself(run)) continue;
      if (trial.at[run.index] > 0) lift(trial, run);
      for (let a = 1, sum = 0; a <= prepared.plankLength; a++) sums[a] = sum += depth[a];
      layCheapest(trial, memory, run, 0);
    }
  }
}

/**
 * Searches for a choice that needs no more than `planks`.
 *
 * @returns whether it was found; the trial is then laid so, else it is wherever the search was when the steps ran out
 */
export function* levelTo(trial: Trial, memory: MoveMemory, planks: number, stepLimit: number): Steps<boolean> {
  const { runs } = trial.prepared;
  const mayStartAgain = runs.length <= MOST_RUNS_TO_START_AGAIN;
  let moves = mayStartAgain ? MOVES_A_START * runs.length : Number.POSITIVE_INFINITY;
  let starts = mayStartAgain && mayMend(runs) ? STARTS_WITHOUT_STAGGER : 0;
  while (!level(trial, memory, { planks, stepLimit, moves })) {
    if (trial.steps >= stepLimit) return false;
    const goal = { planks, stepLimit, moves: MOVES_WITHOUT_STAGGER * runs.length };
    if (!startAgain(trial, memory, goal, starts > 0)) starts--;
    moves *= LATER_STARTS;
    yield;
  }
  return true;
}

/**
 * Starts again. Without stagger at first, the floor is levelled, mended by swaps, and what still stands too near is laid
 * anew. Where a start would cost stagger, the search goes on from where it was.
 *
 * @returns whether swaps were enough; false for a start with stagger
 */
function startAgain(trial: Trial, memory: MoveMemory, goal: LevelGoal, isWithoutStagger: boolean): boolean {
  const { prepared, stagger } = trial;
  const at = trial.at.slice();
  const wanted = stagger.slice();
  if (isWithoutStagger) stagger.fill(0);
  clear(trial);
  levelByDepth(trial, memory);
  if (isWithoutStagger) {
    level(trial, memory, goal);
    stagger.set(wanted);
    if (mendStagger(trial, LOOKS_A_START)) return true;
    memory.prices.fill(1);
    for (const run of prepared.runs)
      if (isLaidItself(run) && nearAt(trial, run) > 0) relay(trial, memory, run, goal.planks);
  }
  keepStagger(trial);
  if (stagger.some((kept, i) => kept < wanted[i])) {
    stagger.set(wanted);
    layAll(trial, at);
  }
  return false;
}

/** Whether most runs have another of the same rest to swap with. */
function mayMend(runs: readonly PreparedRun[]): boolean {
  const alike = new Map<number, number>();
  for (const { rest } of runs) alike.set(rest, (alike.get(rest) ?? 0) + 1);
  return 2 * runs.filter(({ rest }) => (alike.get(rest) ?? 0) > 1).length > runs.length;
}
