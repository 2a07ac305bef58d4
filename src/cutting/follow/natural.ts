/**
 * Fewer planks with play, by the natural way to share one: the last piece of a row is cut first, and its rest starts a
 * later row as it is. That needs no play, so a floor levelled without any may keep the law, if its rows are laid in an
 * order that does. Levelling knows no order: it is tried, and the pieces are made to fit afterwards.
 */
import { sharedOf } from '../plan/pairing';
import type { PreparedJob } from '../runs/prepared';
import { emptyMoveMemory, type MoveMemory } from '../search/levelling';
import { layFromNothing, levelTo } from '../search/starts';
import { emptyTrial, layAll, type Trial } from '../search/trial';
import type { Steps } from '../steps';
import { type Followed, makeFit } from './follow';

export interface NaturalGoal {
  /** Planks of the plan at hand, and the fewest that any plan might do with. */
  readonly planks: number;
  readonly bound: number;
  /** Places that may be visited. */
  readonly steps: number;
  /** Moves to make a levelled floor fit. */
  readonly moves: number;
}

/** Floors levelled for one count before it is given up. */
const MOST_ATTEMPTS = 12;

/**
 * @param prepared without play
 * @param at first pieces of the plan at hand
 * @returns a plan that keeps the law of play with fewer planks than the one at hand; undefined where none was found
 */
export function* layNaturally(
  prepared: PreparedJob,
  at: Int32Array,
  goal: NaturalGoal,
): Steps<{ readonly trial: Trial; readonly followed: Followed; readonly planks: number } | undefined> {
  const trial = emptyTrial(prepared);
  const memory = emptyMoveMemory(prepared.plankLength);
  layAll(trial, at);
  let found: { trial: Trial; followed: Followed; planks: number } | undefined;
  for (let planks = goal.planks - 1; planks >= goal.bound && trial.steps < goal.steps; planks--) {
    const followed = yield* fitTo(trial, memory, planks, goal);
    if (!followed) return found;
    found = { trial, followed, planks };
    layAll(trial, followed.at);
  }
  return found;
}

function* fitTo(
  trial: Trial,
  memory: MoveMemory,
  planks: number,
  { steps, moves }: NaturalGoal,
): Steps<Followed | undefined> {
  for (let attempt = 0; attempt < MOST_ATTEMPTS && trial.steps < steps; attempt++) {
    if (!(yield* levelTo(trial, memory, planks, steps))) return undefined;
    const followed = yield* makeFit(trial, sharedOf(trial.prepared, trial.at), moves);
    if (followed.fits) return followed;
    layFromNothing(trial, memory);
  }
  return undefined;
}
