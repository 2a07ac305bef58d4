/**
 * A floor laid with the fewest planks found: search and bound take turns until they meet or their steps run out. No
 * second goals yet.
 */
import { type Bound, boundOf } from './bound/bound';
import { tryEveryPlan } from './exact/everyPlan';
import type { Followed } from './follow/follow';
import { layNaturally } from './follow/natural';
import { layRowByRow } from './follow/rowByRow';
import { type Worth, worthOf } from './follow/worth';
import type { CutJob } from './job';
import { type Limits, limitsOf, type WorkOptions } from './limits';
import { sharedOf } from './plan/pairing';
import { prepareJob } from './runs/prepared';
import { chainOf, layChain } from './search/chains';
import { emptyMoveMemory } from './search/levelling';
import { layFromNothing, levelTo } from './search/starts';
import { emptyTrial, layAll, plankCountOf, type Trial } from './search/trial';
import type { Steps } from './steps';

/** Offcuts that may wait where planks are saved by laying row by row, one try after another. */
const TRIES_TO_SAVE = [4, 6].map((most) => ({ most, offcut: 5000 }));
/**
 * Search and bound take turns, each with a larger share of its limit: most floors reach the cheap bound at once, and
 * neither is let run on for what the other would have shown sooner.
 */
const TURNS = [
  { bound: 0, steps: 0.04, triesEveryPlan: false },
  { bound: 0.1, steps: 0.12, triesEveryPlan: true },
  { bound: 0.4, steps: 0.3, triesEveryPlan: false },
  { bound: 1, steps: 1, triesEveryPlan: true },
];
/** A floor laid with the fewest planks found. */
export interface LaidFloor {
  readonly trial: Trial;
  readonly limits: Limits;
  readonly followed: Followed;
  readonly planks: number;
  readonly bound: number;
  readonly atLeast: Bound;
  /** Whether laying row by row saved a plank: few offcuts wait already. */
  readonly isSavedByRows?: true;
}

/** With play, every second piece of a plank is given it at first; where that costs planks, the natural way may save them. */
export function* layFewest(
  job: CutJob,
  lastRows: 'laid alike' | 'laid freely',
  options: WorkOptions,
): Steps<LaidFloor> {
  const laid = yield* layByLoad(job, lastRows, options);
  return isStaggered(laid) ? yield* fewerRowByRow(laid) : laid;
}

/** Levelling knows no order of the rows; laid row by row a floor may do with fewer planks still. */
function* fewerRowByRow(laid: LaidFloor): Steps<LaidFloor> {
  const { trial, limits, followed, planks, bound } = laid;
  if (planks === bound) return laid;
  const goal = { planks: planks - 1, width: limits.ways, tries: TRIES_TO_SAVE };
  const found = yield* layRowByRow(trial, followed.at, worthIn(laid), goal);
  if (!found) return laid;
  const { at, shared } = found;
  return yield* fewerRowByRow({
    ...laid,
    followed: { ...followed, at, shared },
    planks: found.planks,
    isSavedByRows: true,
  });
}

/** What planks and offcuts are worth there. */
export function worthIn({ trial, atLeast }: LaidFloor): Worth {
  return worthOf(trial.prepared, atLeast.guide());
}

export function isStaggered({ trial }: Pick<LaidFloor, 'trial'>): boolean {
  return trial.stagger.every((kept) => kept >= trial.prepared.job.minStagger);
}

function* layByLoad(job: CutJob, lastRows: 'laid alike' | 'laid freely', options: WorkOptions): Steps<LaidFloor> {
  const prepared = prepareJob(job, lastRows, 'play everywhere');
  const limits = limitsOf(prepared, options);
  const trial = emptyTrial(prepared);
  const atLeast = boundOf(job);
  const { at, count: planks, bound } = yield* fewestPlanks(trial, limits, atLeast);
  const followed = { at, shared: sharedOf(prepared, at), most: 0, rowsWaited: 0, cuts: 0, fits: true };
  const laid = { trial, limits, followed, planks, bound, atLeast };
  // Where the stagger cannot be kept, the nearest plan is wanted, not one of fewer planks.
  if (prepared.kerf === job.kerf || planks === bound || !isStaggered(laid)) return laid;
  const goal = { planks, bound, steps: limits.steps, moves: limits.moves };
  const natural = yield* layNaturally(prepareJob(job, lastRows), at, goal);
  return natural ? { ...natural, limits, bound, atLeast } : laid;
}

/** The best choice of first pieces found: one plank fewer, until the bound or the limit of steps is reached. */
function* fewestPlanks(trial: Trial, limits: Limits, atLeast: Bound): Steps<Fewest> {
  const { job, plankLength } = trial.prepared;
  const chain = chainOf(trial.prepared);
  const memory = emptyMoveMemory(plankLength);
  layFromNothing(trial, memory);
  // A chain with play everywhere is not the fewest: the natural way needs none.
  const chained = chain && trial.prepared.kerf === job.kerf ? chain.planks : 0;
  const best: Fewest = { at: trial.at.slice(), count: plankCountOf(trial), bound: chained };
  const keepBest = (): void => {
    if (plankCountOf(trial) >= best.count) return;
    best.at = trial.at.slice();
    best.count = plankCountOf(trial);
  };
  yield;
  for (const [i, turn] of TURNS.entries()) {
    if (i === 1 && chain && best.count > chain.planks && layChain(trial, chain)) keepBest();
    const boundEffort = turn.bound * limits.boundEffort;
    if (best.count > best.bound)
      best.bound = Math.max(best.bound, atLeast.raise({ upTo: best.count, effort: boundEffort }));
    yield;
    layAll(trial, best.at);
    const limit = limits.steps * turn.steps;
    while (best.count > best.bound && (yield* levelTo(trial, memory, best.count - 1, limit))) keepBest();
    if (turn.triesEveryPlan) tryToBeat(trial, best, atLeast, limits.tries);
    yield;
  }
  return best;
}

/** The best choice so far and what is known of the fewest planks. */
interface Fewest {
  at: Int32Array;
  count: number;
  bound: number;
}

/** Tries every plan of fewer planks; where all are tried and none is found, the best is the fewest. */
function tryToBeat(trial: Trial, best: Fewest, atLeast: Bound, stepLimit: number): void {
  const { prepared } = trial;
  if (best.count === best.bound || stepLimit === 0) return;
  const guide = atLeast.guide();
  if (!guide) return;
  const tried = emptyTrial(prepared);
  while (best.count > best.bound) {
    const answer = tryEveryPlan(tried, guide, { planks: best.count - 1, stepLimit });
    if (answer === 'found') {
      best.at = tried.at.slice();
      best.count = plankCountOf(tried);
    }
    // Which strip serves which piece is not tried in every way, nor the natural way to keep the play.
    else if (answer === 'none' && guide.runs.rowsLeftOut.size === 0 && prepared.kerf === prepared.job.kerf)
      best.bound = best.count;
    if (answer !== 'found') break;
  }
  trial.steps += tried.steps;
}
