/** How much work goes into a plan, part by part: all of it counted, none of it timed, the same everywhere. */
import { stepsOfBound } from './bound/bound';
import { MANY_RUNS, STEPS_A_MOVE } from './follow/follow';
import { STEPS_A_RUN } from './follow/sweep';
import { isLaidItself, type PreparedJob } from './runs/prepared';

export interface WorkOptions {
  /** Multiplies the limits of steps, and above 1 those of the bound too; > 0, 1 where it is missing. */
  readonly effort?: number;
  /**
   * Lowers the effort so that no more than about so many steps are taken in all, second goals, bound and a second try
   * included; but for the first start, which every plan needs.
   */
  readonly mostSteps?: number;
}

/** Places visited at effort 1: some for every job, more for each run, and no more than the most. */
const STEPS = { least: 2_800_000, forRun: 60_000, most: 60_000_000 };
/** Moves of the search for a plan that people can follow, in the same way. */
const MOVES = { least: 800, forRun: 800, most: 150_000 };
/** Ways kept when a floor is laid row by row, for effort 1 and at the most, and how many more where few do not lead far. */
const WAYS = { kept: 10, most: 40, many: 10 };
/** Times that a floor is laid row by row with few ways kept, about. */
const TIMES_LAID = 5;
/** Moves of the polish of joints and cuts: enough to take most aligned joints out. The most places they may visit. */
const POLISH = { least: 4, forRun: 2, places: 1_500_000 };
/** Steps of one such trying of every plan, as a multiple of the limit of steps: it gives up far sooner if it is hopeless. */
const TRIES = 2;
/** What a move costs where scripts are not compiled, in places visited: measured on halls of 500 rows. */
const STEPS_UNCOMPILED = 10 * STEPS_A_MOVE;
/** Larger floors have more plans than could ever be tried. */
const MOST_RUNS_TO_TRY = 60;

/** Where each part of the work stops. */
export interface Limits {
  readonly steps: number;
  /** Moves of the polish. */
  readonly polish: number;
  /** Moves of the search for a plan that people can follow. */
  readonly moves: number;
  /** Ways kept when it is laid row by row; and where those do not lead far, 0 for not at all. */
  readonly ways: number;
  readonly manyWays: number;
  readonly boundEffort: number;
  /** Every plan is tried within so many steps; 0 for floors that have more plans than could ever be tried. */
  readonly tries: number;
}

export function limitsOf(prepared: PreparedJob, { effort = 1, mostSteps }: WorkOptions): Limits {
  const { runs, plankLength } = prepared;
  const steps = Math.min(STEPS.most, STEPS.least + STEPS.forRun * runs.length) * effort;
  const polish = Math.min(POLISH.least + POLISH.forRun * runs.length, POLISH.places / plankLength) * effort;
  const moves = Math.min(MOVES.most, MOVES.least + MOVES.forRun * runs.length) * effort;
  const ways = Math.min(WAYS.most, WAYS.kept * effort);
  const boundEffort = Math.max(1, effort);
  const tries = runs.length > MOST_RUNS_TO_TRY ? 0 : steps * TRIES;
  const share = mostSteps === undefined ? 1 : Math.min(1, mostSteps / allSteps());
  return {
    steps: steps * share,
    polish: Math.ceil(polish * share),
    moves: Math.ceil(moves * share),
    ways: Math.ceil(ways * share),
    // Whoever counts the steps has no time for the last few offcuts, nor have large floors.
    manyWays: mostSteps !== undefined || runs.length > MANY_RUNS ? 0 : WAYS.many * ways,
    boundEffort: boundEffort * share,
    tries: tries * share,
  };

  /** With or without second goals: the count of a floor is the count of its plan. */
  function allSteps(): number {
    const goals = polish * plankLength + STEPS_UNCOMPILED * moves;
    // With play the floor may be levelled a second time, and made to fit.
    const natural = prepared.kerf === prepared.job.kerf ? 0 : steps + STEPS_UNCOMPILED * moves;
    const rowByRow = TIMES_LAID * ways * STEPS_A_RUN * runs.length;
    const all = steps + goals + natural + rowByRow + boundEffort * stepsOfBound(prepared.job) + 2 * tries;
    return prepared.runs.every(isLaidItself) ? all : 2 * all;
  }
}
