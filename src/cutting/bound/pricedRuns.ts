/**
 * The cheapest way to lay all runs when every unit of a plank has its price.
 *
 * Prices on the units of [0, span] that sum to 1 turn the deepest overlap (see `boundRuns.ts`) into a weighted mean of
 * overlaps, which no plan can exceed: the least total price of all runs is a lower bound on planks. (Lagrangian
 * relaxation; equally the dual of Koenig's cover of the threshold graph of first and last pieces, wall-to-wall pieces
 * included.) The least total is found exactly, by dynamic programming along the forest of runs on every whole unit.
 */

import { sumOf } from '../../geometry/lists';
import { type RunCosts, type StaggerTable, shutOffsets, staggerTableOf, tellParent, wrap } from '../runs/staggerCost';
import type { BoundRun, BoundRuns } from './boundRuns';
import { beginKinds, kindOfRun, type RunKinds, runKindsOf } from './runKinds';

/** Prices are whole numbers: every cost is an exact integer in a double. */
const PRICE_OF_A_PLANK = 2 ** 20;

export interface PricedRuns {
  /** Units of the line that carries a price: plank length + kerf + play. */
  readonly span: number;
  /** Planks that every plan needs beside the overlap: whole planks of the long runs. */
  readonly wholePlanks: number;
  /**
   * Prices all runs. `prices[1..span]` >= 0 in any scale.
   *
   * @returns whole planks that every legal plan must use (the rounding of the prices only lowers it); Infinity when some
   *   run cannot be laid at all
   */
  readonly price: (prices: Float64Array) => number;
  /** What the last pricing said of single runs. */
  readonly last: () => LastPricing;
  /** Overlap at every unit of [1..span] under the choice of the last pricing, without `wholePlanks`. */
  readonly overlap: (out: Int32Array) => void;
}

/** The last pricing run by run; prices are whole numbers. */
export interface LastPricing {
  /** What a whole plank costs. */
  readonly plank: number;
  /** The least price of all runs, their whole planks left out. */
  readonly least: number;
  /** Price of the first so many units of the line. */
  readonly priceTo: Float64Array;
  /** What run `index` of the job and those chosen after it cost at the least, by its first piece. */
  readonly totalsOf: (index: number) => Float64Array;
}

/** Working memory of one job. */
interface Table extends StaggerTable {
  readonly job: BoundRuns;
  readonly span: number;
  /** Sum of the prices of the first so many units. */
  readonly priceTo: Float64Array;
  readonly kinds: RunKinds;
  /** The first pieces of the last pricing, and where its wall-to-wall pieces lie. */
  readonly chosen: Int32Array;
  readonly shortStart: Int32Array;
}

/** Prepares the pricing of one job; its memory is used again by every pricing. */
export function pricedRunsOf(job: BoundRuns): PricedRuns {
  const table = tableOf(job);
  const wholePlanks = sumOf(job.runs, (run) => run.quotient);
  const { priceTo, kinds } = table;
  const totalsOf = (index: number) => kinds.costs[kinds.kindOf[index]].totals;
  let last: LastPricing = { plank: 0, least: 0, priceTo, totalsOf };
  return {
    span: table.span,
    wholePlanks,
    price: (prices) => {
      const plank = setPrices(table, prices);
      const cost = leastCost(table, plank);
      last = { plank, least: cost, priceTo, totalsOf };
      // Rounded up in whole numbers.
      const part = cost % plank;
      return cost === Number.POSITIVE_INFINITY ? cost : wholePlanks + (cost - part) / plank + (part > 0 ? 1 : 0);
    },
    last: () => last,
    overlap: (out) => overlapOf(table, out),
  };
}

function tableOf(job: BoundRuns): Table {
  const span = job.plankLength + job.kerf + job.play;
  return {
    // More than half a plank cannot be kept on both sides of a joint; asking for less only lowers the bound.
    ...staggerTableOf(job.plankLength, Math.min(job.minStagger, Math.floor(job.plankLength / 2))),
    job,
    span,
    priceTo: new Float64Array(span + 1),
    kinds: runKindsOf(job),
    chosen: new Int32Array(job.runs.length),
    shortStart: new Int32Array(job.shortLengths.length),
  };
}

/** Rounds the prices down to whole numbers; answers what a whole plank costs then. */
function setPrices({ priceTo, span }: Table, prices: Float64Array): number {
  let sum = 0;
  for (let unit = 1; unit <= span; unit += 1) sum += prices[unit];
  const scale = PRICE_OF_A_PLANK / sum;
  let plank = 0;
  for (let unit = 1; unit <= span; unit += 1) {
    plank += Math.floor(prices[unit] * scale);
    priceTo[unit] = plank;
  }
  return plank;
}

/** The least price of all runs, whole planks of the long ones left out; Infinity when some run cannot be laid. */
function leastCost(table: Table, plank: number): number {
  const { job, kinds } = table;
  beginKinds(kinds);
  let cost = 0;
  for (let index = job.runs.length - 1; index >= 0; index -= 1) {
    const { totals, cheapest } = kindOfRun(kinds, index, (run, children, own) => {
      setCosts(table, run, plank, own);
      for (const child of children) tellParent(table, child, run, own);
    });
    if (cheapest === 0) return Number.POSITIVE_INFINITY;
    // What a run costs at the least is taken out at once; its parent is told only what it costs more.
    cost += totals[cheapest];
  }
  chooseAll(table);
  return cost + shortCost(table);
}

/** A run's cost without its whole planks: the prices its first and last piece cover, less the plank between. */
function setCosts({ priceTo, job }: Table, { rest, minPiece }: BoundRun, plank: number, costs: Float64Array): void {
  const { plankLength, kerf } = job;
  costs.fill(Number.POSITIVE_INFINITY);
  // First and last piece share one plank's length ...
  for (let first = minPiece; first <= rest - minPiece; first += 1) {
    costs[first] = plank + priceTo[first + kerf] - priceTo[plankLength - rest + first];
  }
  // ... or take one plank more than the whole ones, whose cost is taken off.
  const longest = Math.min(plankLength, plankLength + rest - minPiece);
  for (let first = Math.max(minPiece, rest); first <= longest; first += 1) {
    costs[first] = priceTo[first + kerf] - priceTo[first - rest];
  }
}

/** From the roots down: the cheapest first piece that the parent's choice allows. */
function chooseAll(table: Table): void {
  const { job, kinds, chosen } = table;
  const known = new Map<number, number>();
  job.runs.forEach((run, index) => {
    const kind = kinds.kindOf[index];
    const { cheapest } = kinds.costs[kind];
    if (run.parent < 0) {
      chosen[index] = cheapest;
      return;
    }
    const first = chosen[run.parent];
    const key = (kind * kinds.shapeCount + kinds.shapeOf[run.parent]) * (job.plankLength + 1) + first;
    const choice = known.get(key) ?? cheapestBeside(table, kinds.costs[kind], job.runs[run.parent], first);
    known.set(key, choice);
    chosen[index] = choice;
  });
}

/** The first piece that costs a run least beside its parent with the first piece `first`. */
function cheapestBeside(
  table: Table,
  { run, totals, cheapest }: RunCosts<BoundRun>,
  parent: BoundRun,
  first: number,
): number {
  const { plankLength } = table;
  const [from, to] = shutOffsets(table, { run, parent, first });
  const joint = parent.x + first;
  const ahead = wrap(run.x + cheapest - joint, plankLength) % plankLength;
  const isShut = (ahead >= from && ahead <= to) || (ahead - plankLength >= from && ahead - plankLength <= to);
  if (!isShut) return cheapest;
  let choice = cheapest;
  let least = Number.POSITIVE_INFINITY;
  let own = wrap(joint + to - run.x, plankLength);
  for (let count = plankLength - 1 - to + from; count > 0; count -= 1) {
    own = own === plankLength ? 1 : own + 1;
    if (totals[own] >= least) continue;
    least = totals[own];
    choice = own;
  }
  return choice;
}

/** Wall-to-wall pieces: each lies where its stretch is cheapest. */
function shortCost({ job, span, priceTo, shortStart }: Table): number {
  let sum = 0;
  job.shortLengths.forEach(({ length, count }, index) => {
    let least = Number.POSITIVE_INFINITY;
    for (let start = 0, end = length + job.kerf + job.play; end <= span; start += 1, end += 1) {
      const cost = priceTo[end] - priceTo[start];
      if (cost >= least) continue;
      least = cost;
      shortStart[index] = start;
    }
    sum += count * least;
  });
  return sum;
}

function overlapOf({ job, span, chosen, shortStart }: Table, out: Int32Array): void {
  const { kerf, play, plankLength } = job;
  out.fill(0);
  const lay = (from: number, to: number, count: number): void => {
    out[from] = out[from] + count;
    if (to < span) out[to + 1] = out[to + 1] - count;
  };
  job.runs.forEach(({ rest }, index) => {
    const first = chosen[index];
    if (first >= rest) {
      lay(first - rest + 1, first + kerf, 1);
    } else {
      lay(1, first + kerf, 1);
      lay(plankLength - rest + first + 1, span, 1);
    }
  });
  job.shortLengths.forEach(({ length, count }, index) => {
    const start = shortStart[index];
    lay(start + 1, start + length + kerf + play, count);
  });
  for (let unit = 2; unit <= span; unit += 1) out[unit] = out[unit] + out[unit - 1];
}
