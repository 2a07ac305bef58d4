/**
 * A floor laid row by row with few offcuts against the wall, as a person lays it, but in many ways at once: of all ways
 * to lay one run more the best are kept (a beam search: P. S. Ow and T. E. Morton, Int. J. of Production Research 26,
 * 1988). What a floor may waste in so many planks is known beforehand, and a way that wastes more is given up.
 */
import { lastOf } from '../../geometry/lists';
import { isLaidItself, type PreparedRun, wholesOf } from '../runs/prepared';
import type { Trial } from '../search/trial';
import type { Steps } from '../steps';
import { cutRun, NEW, SAME, STRIP } from './offcuts';
import type { Pinned } from './pinned';
import { type Standings, standingsFor } from './standings';
import { findWays, type Side, type SweepGoal, type Sweeping, sweepingOf, throwAway } from './ways';
import type { Worth } from './worth';

/** What looking at one way costs, in places visited. */
const STEPS_A_WAY = 30;
/** The same for one more run laid on one standing, which mostly has fewer than 20 ways. */
export const STEPS_A_RUN = 20 * STEPS_A_WAY;

/** How the standings came about at one run: the standing before, the first piece, and planks of first and last piece. */
interface Step {
  readonly run: PreparedRun;
  readonly before: Int32Array;
  readonly firsts: Int32Array;
  readonly ofFirst: Int32Array;
  readonly ofLast: Int32Array;
}

/** Floors laid up to the end of some row: `count` standings, and how they came about. */
export interface Laid {
  readonly standings: Standings;
  readonly count: number;
  readonly steps: readonly Step[];
}

/**
 * Lays a floor from one side.
 *
 * @param at first pieces of a plan at hand, which are tried too
 * @param stops numbers of rows
 * @returns what is laid after each of so many rows, as far as it comes
 */
export function* sweep(
  trial: Trial,
  at: Int32Array,
  worth: Worth,
  pinned: Pinned,
  goal: SweepGoal,
  side: Side,
  stops: readonly number[],
): Steps<ReadonlyMap<number, Laid>> {
  const { runs, rowRuns } = trial.prepared;
  const room = goal.most + 2 * rowRuns.reduce((most, inRow) => Math.max(most, inRow.length), 0) + 2;
  const fresh = (): Standings => standingsFor(runs.length, goal.width, room);
  let next = fresh();
  const sweeping = sweepingOf(trial, at, worth, pinned, fresh(), goal, side);
  const { best, endsRow } = sweeping;
  const live = liveAfter(trial);
  const steps: Step[] = [];
  const laid = new Map<number, Laid>();
  let count = 1;
  let isKept = false;
  for (const run of runs.filter(isLaidItself)) {
    sweeping.run = run;
    best.count = 0;
    for (sweeping.from = 0; sweeping.from < count; sweeping.from++) findWays(sweeping);
    count = best.count;
    if (count === 0) break;
    steps.push(stepOf(run, count));
    for (let i = 0; i < count; i++) layWay(sweeping, next, i, live[run.index], lastOf(steps));
    const before = sweeping.standings;
    sweeping.standings = next;
    next = isKept ? fresh() : before;
    isKept = endsRow[run.index] && stops.includes(run.rowIndex + 1);
    if (isKept) laid.set(run.rowIndex + 1, { standings: sweeping.standings, count, steps: steps.slice() });
    yield;
  }
  trial.steps += STEPS_A_WAY * sweeping.looks;
  return laid;
}

function stepOf(run: PreparedRun, count: number): Step {
  const whole = (): Int32Array => new Int32Array(count);
  return { run, before: whole(), firsts: whole(), ofFirst: whole(), ofLast: whole() };
}

/** For each run, the runs up to it whose first pieces still matter to later ones. */
function liveAfter({ prepared }: Trial): readonly (readonly number[])[] {
  const { runs, rowRuns } = prepared;
  const followers = runs.flatMap(({ strips }) => (strips.role === 'leads' ? [strips.follower] : []));
  return runs.map(({ rowIndex, index }) => [
    ...[rowIndex - 2, rowIndex - 1, rowIndex].flatMap((row) => rowRuns[row] ?? []).filter((other) => other <= index),
    ...followers,
  ]);
}

/** Writes what the way `i` of the best leads to into the standing `i` of `next`. */
function layWay(sweeping: Sweeping, next: Standings, i: number, live: readonly number[], step: Step): void {
  const { best, standings, run, endsRow, pinned } = sweeping;
  const from = best.from[i];
  const cutting = { first: best.firsts[i], firstOf: best.firstOf[i], lastOf: best.lastOf[i] };
  const { first, firstOf, lastOf } = cutting;
  sweeping.from = from;
  const [before, at] = [standings.at[from], next.at[i]];
  for (const index of live) at[index] = before[index];
  at[run.index] = first;
  if (run.strips.role === 'leads') at[run.strips.follower] = first;
  let cutPlanks = standings.cutPlanks[from];
  const plankFrom = (offcut: number): number => {
    if (offcut === STRIP) return -1;
    return offcut === NEW ? cutPlanks++ : standings.planksOf[from * standings.room + offcut];
  };
  const ofFirst = plankFrom(firstOf);
  const ofLast = lastOf === SAME ? ofFirst : plankFrom(lastOf);
  step.before[i] = from;
  step.firsts[i] = first;
  step.ofFirst[i] = ofFirst;
  step.ofLast[i] = ofLast;
  const wholes = run.isWallToWall ? 0 : wholesOf(run, first) - pinned.wholes[run.index];
  next.planks[i] = standings.planks[from] + cutPlanks - standings.cutPlanks[from] + wholes;
  next.cutPlanks[i] = cutPlanks;
  next.waste[i] = best.waste[i];
  next.price[i] = best.price[i];
  next.rowKeys[i] = endsRow[run.index] ? 0 : Math.imul(standings.rowKeys[from] ^ first, 0x45d9f3b);
  cutRun(sweeping.leaving, sweeping, standings, from * standings.room, run, cutting);
  throwAway(sweeping, cutting);
  keepOffcuts(sweeping, next, i, firstOf, lastOf, ofFirst, ofLast);
}

/** The offcuts that lie after a run, in the order in which they are looked at for the next. */
function keepOffcuts(
  { standings, from, leaving, thrown, run }: Sweeping,
  next: Standings,
  i: number,
  firstOf: number,
  lastOf: number,
  ofFirst: number,
  ofLast: number,
): void {
  const before = standings.counts[from];
  let to = i * next.room;
  for (let j = 0; j < before; j++) {
    if (j === firstOf || j === lastOf || thrown[j] === 1) continue;
    const at = from * standings.room + j;
    next.lengths[to] = standings.lengths[at];
    next.gives[to] = standings.gives[at];
    next.values[to] = standings.values[at];
    next.rows[to] = standings.rows[at];
    next.planksOf[to++] = standings.planksOf[at];
  }
  for (let j = 0; j < leaving.count; j++) {
    if (thrown[before + j] === 1) continue;
    next.lengths[to] = leaving.lengths[j];
    next.gives[to] = leaving.gives[j];
    next.values[to] = leaving.values[j];
    next.rows[to] = run.rowIndex;
    next.planksOf[to++] = leaving.isOfLast[j] ? ofLast : ofFirst;
  }
  next.counts[i] = to - i * next.room;
}

/** Tells of every run that standing `which` has laid: its first piece, and the planks of first and last piece. */
export function traceBack(
  { steps }: Laid,
  which: number,
  tell: (run: PreparedRun, first: number, ofFirst: number, ofLast: number) => void,
): void {
  let standing = which;
  for (let i = steps.length - 1; i >= 0; i--) {
    const { run, before, firsts, ofFirst, ofLast } = steps[i];
    tell(run, firsts[standing], ofFirst[standing], ofLast[standing]);
    standing = before[standing];
  }
}
