/**
 * Plain one-dimensional cutting: the fewest sticks of one length that give a list of pieces, as for trim. Planks are
 * another matter, because their ends are handed: see `search.ts`.
 */

import { lastOf } from '../../geometry/lists';
import { requireWhole } from '../runs/prepared';
import { fractionalPlan, martelloTothBound } from './stockBound';
import { firstFit, type PatternUse, type StepMeter, type StockDemand, sticksOf } from './stockPatterns';
import { completeSearch, dive, type StockState } from './stockSearch';

/** Which pieces are cut from which stick. */
export interface StockPlan {
  /** A stick a line: indices into the list of pieces, longest piece first. */
  readonly sticks: readonly (readonly number[])[];
  readonly count: number;
  /** No plan uses fewer sticks than this. */
  readonly bound: number;
  readonly stop: 'proved fewest' | 'step limit';
  /** Work done: the same for the same pieces everywhere. */
  readonly steps: number;
}

/** Steps at effort 1: some tenths of a second where they are all needed, which is rare. */
const STEPS_AT_EFFORT_ONE = 5_000_000;

/** With more different lengths the fractional plan would cost more than it saves; first fit and L2 still stand. */
const MOST_SIZES_SEARCHED = 500;

/**
 * Cuts pieces from sticks of one length, fewest sticks first.
 *
 * A stick may give any pieces whose lengths, with one kerf between neighbours, come to no more than its length: a
 * piece as long as the stick fits, and the cut against what is thrown away takes its kerf from that.
 *
 * @param lengths pieces wanted, whole numbers > 0 of any one unit; an empty list takes no stick
 * @param stockLength length of a stick in the same unit, whole, > 0
 * @param kerf width of the cut in the same unit, whole, >= 0
 * @param options `effort` multiplies the limit of steps; 1 where it is missing
 * @throws RangeError if a number is not whole or out of range, or if a piece is longer than a stick: such a piece has
 *   to be split first
 */
export function cutStock(
  lengths: readonly number[],
  stockLength: number,
  kerf: number,
  options: { readonly effort?: number } = {},
): StockPlan {
  requireWhole('stock length', stockLength, 1);
  requireWhole('kerf', kerf, 0);
  for (const length of lengths) requireWhole('piece length', length, 1);
  if (lengths.some((length) => length > stockLength)) throw new RangeError('A piece is longer than the stick.');
  const order = lengths.map((_, index) => index).sort((a, b) => lengths[b] - lengths[a] || a - b);
  const demand = demandOf(
    order.map((index) => lengths[index] + kerf),
    stockLength + kerf,
  );
  const state = fewestSticks(demand, STEPS_AT_EFFORT_ONE * (options.effort ?? 1));
  return {
    sticks: namePieces(state.best, demand, order),
    count: state.bestCount,
    bound: state.bound,
    stop: state.bestCount === state.bound ? 'proved fewest' : 'step limit',
    steps: state.steps,
  };
}

/** Sizes and counts from sizes in descending order. */
function demandOf(descending: readonly number[], capacity: number): StockDemand {
  const sizes: number[] = [];
  const counts: number[] = [];
  for (const size of descending) {
    if (size !== lastOf(sizes)) {
      sizes.push(size);
      counts.push(0);
    }
    counts[counts.length - 1]++;
  }
  return { sizes, capacity, counts };
}

/** Stages, each with the share of the steps still left that it may use; none runs once the best plan meets the bound. */
const STAGES: readonly (readonly [number, (demand: StockDemand, state: StockState, meter: StepMeter) => void])[] = [
  [0.5, raiseBound],
  [0.6, (demand, state, meter) => dive(demand, 0, state, meter)],
  [0.3, completeSearch],
  [0.6, (demand, state, meter) => dive(demand, 2, state, meter)],
  [1, completeSearch],
];

function fewestSticks(demand: StockDemand, stepLimit: number): StockState & { readonly steps: number } {
  const best = firstFit(demand);
  const state: StockState = { best, bestCount: sticksOf(best), bound: martelloTothBound(demand) };
  let steps = 0;
  for (const [share, stage] of STAGES) {
    if (state.bestCount === state.bound || demand.sizes.length > MOST_SIZES_SEARCHED) break;
    const meter: StepMeter = { steps, limit: steps + share * (stepLimit - steps) };
    stage(demand, state, meter);
    steps = meter.steps;
  }
  return { ...state, steps };
}

function raiseBound(demand: StockDemand, state: StockState, meter: StepMeter): void {
  state.bound = Math.max(state.bound, fractionalPlan(demand, state.bestCount, meter).bound);
}

/** Makes pieces of sizes again: each stick takes the next pieces of the size it needs, in the order given. */
function namePieces(uses: readonly PatternUse[], demand: StockDemand, order: readonly number[]): number[][] {
  const next: number[] = [];
  demand.counts.reduce((start, count, i) => {
    next[i] = start;
    return start + count;
  }, 0);
  const sticks: number[][] = [];
  for (const { pattern, times } of uses) {
    for (let n = 0; n < times; n++) sticks.push(pattern.map((size) => order[next[size]++]));
  }
  return sticks;
}
