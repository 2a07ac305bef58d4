/** The fewest sticks any cutting could use, and the fractional cutting plan that shows it. */
import { sumOf } from '../../geometry/lists';
import {
  bestPattern,
  type Pattern,
  type PatternUse,
  type StepMeter,
  type StockDemand,
  stepsLeft,
} from './stockPatterns';

/** A plan that may cut a pattern a fractional number of times. */
export interface FractionalPlan {
  readonly uses: readonly PatternUse[];
  /** Sticks no plan can go below: exact in spite of the fractions. */
  readonly bound: number;
}

/** Prices are rounded down to whole multiples of one part in this, so that the bound is a sum of whole numbers. */
const PRICE_SCALE = 1e8;

const MOST_THRESHOLDS = 1000;

/**
 * Bound L2 of S. Martello and P. Toth, "Knapsack Problems" (1990), section 8.3.2: for a threshold, pieces that leave
 * less than it need a stick each, pieces over half a stick too, and the rest fill what those leave. Every threshold
 * gives a bound; where there are very many sizes only some are tried.
 */
export function martelloTothBound(demand: StockDemand): number {
  const small = demand.sizes.filter((size) => 2 * size <= demand.capacity);
  const every = Math.ceil(small.length / MOST_THRESHOLDS);
  const thresholds = small.filter((_, i) => i % every === 0);
  return [0, ...thresholds].reduce((best, threshold) => Math.max(best, boundAt(demand, threshold)), 0);
}

function boundAt({ sizes, counts, capacity }: StockDemand, threshold: number): number {
  let alone = 0;
  let large = 0;
  let roomBesideLarge = 0;
  let small = 0;
  sizes.forEach((size, i) => {
    if (size > capacity - threshold) {
      alone += counts[i];
    } else if (2 * size > capacity) {
      large += counts[i];
      roomBesideLarge += counts[i] * (capacity - size);
    } else if (size >= threshold) {
      small += counts[i] * size;
    }
  });
  return alone + large + Math.max(0, Math.ceil((small - roomBesideLarge) / capacity));
}

/**
 * The fractional plan with fewest sticks, by column generation (P. C. Gilmore and R. E. Gomory, Operations Research 9,
 * 1961): a simplex over patterns, each step letting in the pattern worth most at the present prices.
 *
 * The bound never trusts a rounded number. Whole prices p and the worth V of the best pattern under them give
 * sticks >= ceil(p x demand / V), whatever the prices were (A. A. Farley, Operations Research 38, 1990).
 *
 * @param enough the bound beyond which the caller needs to know nothing more
 * @returns the fewest in fractions, unless `enough` or the limit of steps came first; the bound holds in any case
 */
export function fractionalPlan(demand: StockDemand, enough: number, meter: StepMeter): FractionalPlan {
  const basis = startBasis(demand);
  let bound = 0;
  for (;;) {
    const prices = pricesOf(basis, demand.sizes.length);
    const best = bestPattern(demand, prices, meter);
    if (!best || !stepsLeft(meter, Math.ceil(basis.rows.length ** 2 / 8))) break;
    const worthOfDemand = sumOf(prices, (price, i) => price * demand.counts[i]);
    bound = Math.max(bound, Math.ceil(worthOfDemand / best.worth));
    // Optimal but for the rounding of the prices, which costs a pattern at most one unit per piece.
    if (bound >= enough || best.worth <= PRICE_SCALE * (1 + 1e-7)) break;
    if (!letIn(basis, best.pattern)) break;
  }
  return { uses: basis.rows.map(({ pattern, amount }) => ({ pattern, times: amount })), bound };
}

/** A row of the simplex: its pattern, how often it is cut, and its line of the inverse of the basis matrix. */
interface BasisRow {
  pattern: Pattern;
  amount: number;
  readonly inverse: Float64Array;
}

interface Basis {
  /** Index of each wanted size, a column of `inverse` each. */
  readonly wanted: readonly number[];
  /** The column of each size; none for a size no longer wanted. */
  readonly columnOf: readonly (number | undefined)[];
  readonly rows: readonly BasisRow[];
}

/** One pattern a size, of as many of its pieces as fit. */
function startBasis({ sizes, counts, capacity }: StockDemand): Basis {
  const wanted = sizes.map((_, i) => i).filter((i) => counts[i] > 0);
  const columnOf: number[] = [];
  const rows = wanted.map((index, column) => {
    columnOf[index] = column;
    const most = Math.min(counts[index], Math.floor(capacity / sizes[index]));
    const inverse = new Float64Array(wanted.length);
    inverse[column] = 1 / most;
    return { pattern: new Array<number>(most).fill(index), amount: counts[index] / most, inverse };
  });
  return { wanted, columnOf, rows };
}

/** What one more piece of each size costs in sticks, in whole parts of `PRICE_SCALE`, never below zero. */
function pricesOf({ wanted, rows }: Basis, sizeCount: number): number[] {
  const prices = new Array<number>(sizeCount).fill(0);
  wanted.forEach((index, column) => {
    const price = sumOf(rows, (row) => row.inverse[column]);
    prices[index] = Math.max(0, Math.floor(price * PRICE_SCALE));
  });
  return prices;
}

/** One simplex step; false when no row limits it, which only rounding can bring about. */
function letIn({ wanted, columnOf, rows }: Basis, pattern: Pattern): boolean {
  const change = rows.map((row) => sumOf(pattern, (index) => row.inverse[columnOf[index] ?? 0]));
  let leaving = -1;
  rows.forEach((row, r) => {
    if (change[r] <= 1e-9) return;
    if (leaving < 0 || row.amount / change[r] < rows[leaving].amount / change[leaving]) leaving = r;
  });
  if (leaving < 0) return false;
  const pivot = rows[leaving];
  const scale = 1 / change[leaving];
  pivot.pattern = pattern;
  pivot.amount *= scale;
  for (let j = 0; j < wanted.length; j++) pivot.inverse[j] *= scale;
  rows.forEach((row, r) => {
    if (r === leaving || change[r] === 0) return;
    row.amount = Math.max(0, row.amount - change[r] * pivot.amount);
    for (let j = 0; j < wanted.length; j++) row.inverse[j] -= change[r] * pivot.inverse[j];
  });
  return true;
}
