/**
 * Equal rows: the fewest planks exactly, as one chain of offcuts, and then an order of the rows that keeps the stagger.
 *
 * On the circle of `arcs.ts` every row lays the same arc, and only its end s is chosen. A chain begins each arc
 * where the one before began, or at the next first piece the rules allow. If n arcs can lie at most d deep, then so can
 * the chain: number their ends x downwards around the circle again and again; x(j + d) can lie no higher than the arc
 * of x(j) begins, and the chain is never below x(jd), so that its n arcs take no more than d laps. (Equal arcs are
 * proper, so which goes first is never in doubt: the exchange argument of J. B. Orlin, M. A. Bonuccelli and D. P.
 * Bovet, SIAM J. Algebraic Discrete Methods 2, 1981.)
 *
 * Which row gets which of the chain's first pieces changes neither load nor cuts: stagger is a matter of order.
 */

import { sumOf } from '../../geometry/lists';
import { type Arc, arcOf } from '../runs/arcs';
import { costsByPair, isLaidItself, type PreparedJob, type PreparedRun } from '../runs/prepared';
import { nearAt } from '../runs/stagger';
import { mendStagger } from './mending';
import { layAll, setFirst, type Trial } from './trial';

export interface Chain {
  /** First pieces of the rows, in the order of the chain. */
  readonly ends: readonly number[];
  /** Planks that these rows need at the least, stagger or no stagger. */
  readonly planks: number;
}

/** The chain of a job whose runs, but for those that strips serve alone, are all equal; undefined for any other. */
export function chainOf(prepared: PreparedJob): Chain | undefined {
  const runs = prepared.runs.filter(isLaidItself);
  const first = runs[0];
  const isEqual = (run: PreparedRun): boolean => run.length === first.length && !costsByPair(run) && !run.isWallToWall;
  if (!first || !runs.every(isEqual)) return undefined;
  const rows = { arc: arcOf(prepared, first), run: first, count: runs.length };
  let start = 0;
  let planks = Number.POSITIVE_INFINITY;
  for (let s = 1; s <= prepared.plankLength; s++) {
    if (!mayBeFirst(first, s)) continue;
    const needed = planksFrom(rows, s);
    if (needed < planks) start = s;
    planks = Math.min(planks, needed);
  }
  if (start === 0) return undefined;
  const ends: number[] = [];
  return { planks: planksFrom(rows, start, ends), ends };
}

function mayBeFirst({ low, high }: PreparedRun, s: number): boolean {
  return (s >= low.from && s <= low.to) || (s >= high.from && s <= high.to);
}

/** Rows that are all alike. */
interface EqualRows {
  readonly arc: Arc;
  readonly run: PreparedRun;
  readonly count: number;
}

/** Planks of the chain of rows that begins with first piece `start`; its first pieces are added to `ends`. */
function planksFrom({ arc, run, count }: EqualRows, start: number, ends?: number[]): number {
  const { rest, reach, L } = arc;
  let laps = 0;
  let begin = L;
  for (let row = 0; row < count; row++) {
    let end = row === 0 ? start : highestFrom(run, begin);
    if (end === 0) {
      end = highestFrom(run, L);
      laps++;
    }
    ends?.push(end);
    begin = end - reach;
    if (end >= rest) continue;
    begin += L;
    laps++;
  }
  // A last lap that does not come down to where the chain began covers no place once more.
  const depth = laps + (Math.max(0, begin) < start ? 1 : 0);
  return count * run.quotient + depth;
}

/** The highest first piece that is no higher than `place`; 0 where there is none. */
function highestFrom({ low, high }: PreparedRun, place: number): number {
  if (high.from <= high.to && place >= high.from) return Math.min(place, high.to);
  if (low.from <= low.to && place >= low.from) return Math.min(place, low.to);
  return 0;
}

/** Swaps looked at before the order is given up. */
const MOST_LOOKS = 20_000;
/** Strides tried for the first order. */
const STRIDES = 60;

/**
 * Lays the rows with the first pieces of the chain, in an order that keeps the stagger.
 *
 * @returns whether there was one; the trial is laid either way
 */
export function layChain(trial: Trial, chain: Chain): boolean {
  const runs = trial.prepared.runs.filter(isLaidItself);
  const sorted = [...chain.ends].sort((a, b) => a - b);
  let best: Int32Array | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (let stride = 1; stride <= STRIDES && fewest > 0; stride++) {
    setInStrides(trial, runs, sorted, Math.ceil((stride * runs.length) / (STRIDES + 1)));
    const near = sumOf(runs, (run) => nearAt(trial, run));
    if (near >= fewest) continue;
    fewest = near;
    best = trial.at.slice();
  }
  if (best) trial.at.set(best);
  const isKept = mendStagger(trial, MOST_LOOKS);
  layAll(trial, trial.at);
  return isKept;
}

/** Row i gets the first piece `stride` further on in their order around the circle; after a lap the next free one. */
function setInStrides(trial: Trial, runs: readonly PreparedRun[], sorted: readonly number[], stride: number): void {
  const isTaken = sorted.map(() => false);
  let next = 0;
  for (const run of runs) {
    while (isTaken[next]) next = (next + 1) % sorted.length;
    isTaken[next] = true;
    setFirst(trial, run, sorted[next]);
    next = (next + stride) % sorted.length;
  }
}
