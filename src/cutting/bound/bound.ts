/**
 * The fewest planks that any legal plan of a job could use: three bounds from cheap to dear.
 */

import { sumOf } from '../../geometry/lists';
import type { CutJob } from '../job';
import { type BoundRuns, boundRunsOf } from './boundRuns';
import { type LastPricing, pricedRunsOf } from './pricedRuns';
import { type PriceSearch, priceSearchOf } from './prices';

export interface BoundOptions {
  /** Planks of a plan at hand: nothing above it is looked for. */
  readonly upTo?: number;
  /** 1 is what an ordinary room gets; more of it may raise the bound. */
  readonly effort?: number;
}

/** A lower bound that can be raised bit by bit: what was learnt for one goal serves the next. */
export interface Bound {
  /** @returns the bound known by now */
  readonly raise: (options: BoundOptions) => number;
  /** What the best prices say of every run; undefined where none were needed. It holds until the bound is raised again. */
  readonly guide: () => Guide | undefined;
}

/** Prices as a guide: no plan of so many planks has runs that together cost more than `spareOf` above their least. */
export interface Guide {
  readonly runs: BoundRuns;
  readonly pricing: LastPricing;
  /** What a plan of no more than `planks` may cost above the least of all, in the prices' own unit. */
  readonly spareOf: (planks: number) => number;
}

/**
 * Pricings without a higher bound, for effort 1: most floors need fewer than 15 in all. Some for every job, and more for
 * each run of a large floor, whose equal rows are priced together.
 */
const PATIENCE = { least: 30, forRun: 0.04 };
/** Cells (different runs x units of a plank) of a job up to which it gets them all. */
const CELLS_WITH_PATIENCE = 2 ** 18;
/** What a cell costs beside a place that the search visits. */
const STEPS_A_CELL = 2;
/** Cells (all runs) beyond which a job is not priced: they may fill the memory. */
const MOST_CELLS = 2 ** 22;

/**
 * A number of planks that no legal plan of `job` can do with fewer than: never above the truth, since every step of
 * the proof is made in whole numbers. The same job and options give the same answer everywhere.
 *
 * It speaks of legal plans only. For a job that has none, ask with the rules that cannot be met set to 0; where a run
 * cannot be laid at all under them it answers what is needed by length and kerf alone.
 */
export function fewestPossible(job: CutJob, options: BoundOptions = {}): number {
  return boundOf(job).raise(options);
}

/** The bound of a job, as yet by length and kerf alone; see `fewestPossible`. */
export function boundOf(job: CutJob): Bound {
  const runs = boundRunsOf(job);
  const byLength = planksByLength(runs);
  const patienceAtOne = patienceFor(runs);
  let known = byLength;
  let prices: PriceSearch | undefined;
  const raise = ({ upTo = Number.POSITIVE_INFINITY, effort = 1 }: BoundOptions): number => {
    if (known >= upTo) return known;
    known = Math.max(known, planksByChains(runs));
    const patience = Math.ceil(patienceAtOne * effort);
    if (known >= upTo || patience === 0) return known;
    prices ??= priceSearchOf(pricedRunsOf(runs), known);
    const shown = prices.raise({ upTo, patience });
    known = shown === Number.POSITIVE_INFINITY ? byLength : shown;
    return known;
  };
  const guide = (): Guide | undefined => {
    const pricing = prices?.atBest();
    if (!pricing) return undefined;
    const wholePlanks = sumOf(runs.runs, (run) => run.quotient);
    return { runs, pricing, spareOf: (planks) => (planks - wholePlanks) * pricing.plank - pricing.least };
  };
  return { raise, guide };
}

/** Cells that the bound of a job visits at effort 1, about: a measure of its work beside the steps of the search. */
export function stepsOfBound(job: CutJob): number {
  const runs = boundRunsOf(job);
  return patienceFor(runs) * kindsOf(runs) * job.plankLength * STEPS_A_CELL;
}

function kindsOf({ runs }: BoundRuns): number {
  return new Set(runs.map(({ x, length }) => `${x} ${length}`)).size;
}

function patienceFor(job: BoundRuns): number {
  const { plankLength, runs, shortLengths } = job;
  if ((runs.length + shortLengths.length + 1) * plankLength > MOST_CELLS) return 0;
  const cells = kindsOf(job) * plankLength;
  return (PATIENCE.least + PATIENCE.forRun * runs.length) * Math.min(1, CELLS_WITH_PATIENCE / cells);
}

/**
 * Length, kerf and play: give every piece its kerf and every plank one more, and play alike (see `boundRuns.ts`), and count each run as few pieces as it can be.
 * Heeds no rule of the floor.
 */
function planksByLength(job: BoundRuns): number {
  const { plankLength, kerf, play, runs, shortLengths } = job;
  const longs = sumOf(runs, ({ length }) => length + kerf * Math.ceil(length / plankLength));
  const shorts = sumOf(shortLengths, ({ length, count }) => count * (length + kerf));
  const byLength = Math.ceil((longs + shorts) / (plankLength + kerf));
  // Every run has one piece that ends at a wall.
  const ends = runs.length + sumOf(shortLengths, ({ count }) => count);
  return Math.max(byLength, Math.ceil((longs + shorts + play * ends) / (plankLength + kerf + play)));
}

/**
 * Runs of one remainder r, without stagger: each saves a plank by beginning where another ended, and a chain of runs
 * that do so moves the first joint by r + kerf a run until the minimum piece stops it. (Exact for equal rows without
 * stagger when r < 2 x minimum piece; when r takes all but less than a minimum piece of a plank, nothing is saved.)
 *
 * @returns 0 where neither case applies
 */
function planksByChains({ plankLength, kerf, runs, shortLengths }: BoundRuns): number {
  const { rest, minPiece } = runs[0] ?? { rest: 0, minPiece: 1 };
  if (rest === 0 || shortLengths.length > 0 || runs.some((run) => run.rest !== rest)) return 0;
  const wholePlanks = sumOf(runs, (run) => run.quotient);
  if (rest >= 2 * minPiece) return rest > plankLength - minPiece - kerf ? wholePlanks + runs.length : 0;
  const lowest = Math.max(minPiece, rest);
  const highest = Math.min(plankLength, plankLength + rest - minPiece);
  if (lowest > highest) return 0;
  const chainLength = 1 + Math.floor((highest - lowest) / (rest + kerf));
  return wholePlanks + Math.ceil(runs.length / chainLength);
}
