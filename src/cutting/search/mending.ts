/**
 * Mending: which run has which first piece, until the stagger is kept. A swap between runs of one rest changes no load.
 *
 * Min-conflicts: S. Minton and others, Artificial Intelligence 58, 1992.
 */
import { costsByPair, isLaidItself, type PreparedRun } from '../runs/prepared';
import { nearAt } from '../runs/stagger';
import { drawBelow } from './seeded';
import { swapFirsts, type Trial } from './trial';

/** What looking at a swap costs, in places visited. */
const STEPS_A_LOOK = 50;

/**
 * @param looks swaps to look at before it is given up
 * @returns whether all joints keep their stagger now
 */
export function mendStagger(trial: Trial, looks: number): boolean {
  const { prepared, seeded } = trial;
  const free = prepared.runs.filter((run) => !run.isWallToWall && isLaidItself(run) && !costsByPair(run));
  for (let looked = 0; looked < looks; ) {
    const bad = free.filter((run) => nearAt(trial, run) > 0);
    if (bad.length === 0) return prepared.runs.every((run) => nearAt(trial, run) === 0);
    const run = bad[drawBelow(seeded, bad.length)];
    let best = run;
    let least = Number.POSITIVE_INFINITY;
    let count = 0;
    for (const other of free) {
      if (other.rest !== run.rest || trial.at[other.index] === trial.at[run.index]) continue;
      const change = changeOfSwap(trial, run, other);
      if (change > least) continue;
      count = change < least ? 1 : count + 1;
      if (change < least || drawBelow(seeded, count) === 0) best = other;
      least = change;
    }
    swapFirsts(trial, run, best);
    looked += free.length;
    trial.steps += STEPS_A_LOOK * free.length;
  }
  return false;
}

function changeOfSwap(trial: Trial, a: PreparedRun, b: PreparedRun): number {
  const before = nearAt(trial, a) + nearAt(trial, b);
  swapFirsts(trial, a, b);
  const after = nearAt(trial, a) + nearAt(trial, b);
  swapFirsts(trial, a, b);
  return after - before;
}
