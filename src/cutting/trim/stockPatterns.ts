/**
 * Patterns of plain one-dimensional cutting: how many pieces of each size one stick gives.
 *
 * Sizes here carry their kerf (length + kerf, cut from stick + kerf), which is the same thing as one kerf between
 * neighbouring pieces. They are distinct and descend.
 */
import { sumOf } from '../../geometry/lists';

/** The pieces wanted, by size. */
export interface StockDemand {
  /** Distinct sizes with their kerf, descending, whole numbers > 0. */
  readonly sizes: readonly number[];
  /** The stick with one kerf; no size is above it. */
  readonly capacity: number;
  /** Pieces wanted of each size, >= 0. */
  readonly counts: readonly number[];
}

/** One way to cut a stick: the index of a size for each piece it gives, ascending, so longest piece first. */
export type Pattern = readonly number[];

/** A pattern and how many sticks are cut so. */
export interface PatternUse {
  readonly pattern: Pattern;
  readonly times: number;
}

/** Counts the work of a search, so that the same pieces give the same plan everywhere. */
export interface StepMeter {
  steps: number;
  readonly limit: number;
}

/** Books `steps` and says whether any are left. */
export function stepsLeft(meter: StepMeter, steps: number): boolean {
  meter.steps += steps;
  return meter.steps <= meter.limit;
}

/**
 * First fit decreasing, stick by stick: the longest piece that still fits, again and again; each pattern is repeated
 * while its pieces last. Costs a binary search a piece.
 *
 * @returns patterns that meet the demand exactly
 */
export function firstFit(demand: StockDemand): PatternUse[] {
  const counts = demand.counts.slice();
  const wantedFrom = wantedFinder(counts);
  const uses: PatternUse[] = [];
  for (let first = wantedFrom(0); first < counts.length; first = wantedFrom(first)) {
    const pattern: number[] = [];
    let room = demand.capacity;
    for (let i = first; i < counts.length; i = wantedFrom(Math.max(i + 1, firstWithin(demand.sizes, room)))) {
      const count = Math.min(counts[i], Math.floor(room / demand.sizes[i]));
      for (let n = 0; n < count; n++) pattern.push(i);
      room -= count * demand.sizes[i];
    }
    const times = timesWithin(pattern, counts);
    takeFrom(counts, { pattern, times });
    uses.push({ pattern, times });
  }
  return uses;
}

/** Takes the pieces of some sticks off the counts. */
export function takeFrom(counts: number[], { pattern, times }: PatternUse): void {
  for (const index of pattern) counts[index] -= times;
}

/** Sticks that some patterns cut. */
export function sticksOf(uses: readonly PatternUse[]): number {
  return sumOf(uses, (use) => use.times);
}

/** A pattern from the count of each size. */
export function patternOf(counts: readonly number[]): Pattern {
  const pattern: number[] = [];
  counts.forEach((count, index) => {
    for (let n = 0; n < count; n++) pattern.push(index);
  });
  return pattern;
}

/**
 * Answers the first index at or after another of which a piece is still wanted, as counts fall; their number when
 * none is. Indices once passed over are never looked at again (path compression).
 */
function wantedFinder(counts: readonly number[]): (from: number) => number {
  const onward = counts.map((_, index) => index);
  return (from) => {
    let index = from;
    while (index < counts.length && counts[index] === 0) index = Math.max(index + 1, onward[index]);
    for (let passed = from; passed < index; ) {
      const next = Math.max(passed + 1, onward[passed]);
      onward[passed] = index;
      passed = next;
    }
    return index;
  };
}

/** Index of the longest size within the room, of sizes that descend. */
function firstWithin(sizes: readonly number[], room: number): number {
  let low = 0;
  let high = sizes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sizes[middle] <= room) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** How often a pattern can be cut before one of its sizes runs out. */
function timesWithin(pattern: Pattern, counts: readonly number[]): number {
  let times = Infinity;
  for (let start = 0; start < pattern.length; ) {
    let end = start;
    while (pattern[end] === pattern[start]) end++;
    times = Math.min(times, Math.floor(counts[pattern[start]] / (end - start)));
    start = end;
  }
  return times;
}

/** The pattern worth most, and its worth. */
export interface BestPattern {
  readonly pattern: Pattern;
  readonly worth: number;
}

/**
 * The pattern worth most at given prices: a bounded knapsack by depth-first branch and bound on worth per length
 * (P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting-stock problem, part II", Operations
 * Research 11, 1963). Its work does not depend on the unit of length.
 *
 * @param prices whole numbers >= 0, one a size; worths stay far below 2^53, so the answer is exact
 * @returns undefined when the steps run out before the best is certain
 */
export function bestPattern(demand: StockDemand, prices: readonly number[], meter: StepMeter): BestPattern | undefined {
  const { sizes, counts, capacity } = demand;
  const order = sizes.map((_, i) => i).filter((i) => prices[i] > 0 && counts[i] > 0);
  order.sort((a, b) => prices[b] * sizes[a] - prices[a] * sizes[b] || a - b);
  const shortest = order.reduce((least, i) => Math.min(least, sizes[i]), Infinity);
  const taken = sizes.map(() => 0);
  let best: BestPattern = { pattern: [], worth: 0 };

  /** Adds pieces from the size at `depth` on, dearest by length first; false when the steps are used up. */
  function fill(depth: number, room: number, worth: number): boolean {
    if (worth > best.worth) best = { pattern: patternOf(taken), worth };
    if (!stepsLeft(meter, 1)) return false;
    for (let at = depth; at < order.length && room >= shortest; at++) {
      const index = order[at];
      const size = sizes[index];
      if (size > room) continue;
      // Worths are whole: a hundredth covers the rounding of the quotient, and no pattern worth more is cut off.
      if (worth + Math.floor((room * prices[index]) / size + 0.01) <= best.worth) return true;
      for (let take = Math.min(counts[index], Math.floor(room / size)); take > 0; take--) {
        taken[index] = take;
        if (!fill(at + 1, room - take * size, worth + take * prices[index])) return false;
      }
      taken[index] = 0;
    }
    return true;
  }

  return fill(0, capacity, 0) ? best : undefined;
}
