/**
 * The pricing of runs, held against every way to lay them: the cheapest is found, what it is said to cover costs what it
 * is said to cost, and runs of one kind are priced as if each stood alone.
 */
import { describe, expect, test } from 'vitest';
import { type BoundRun, type BoundRuns, boundRunsOf } from '../../../src/cutting/bound/boundRuns';
import { pricedRunsOf } from '../../../src/cutting/bound/pricedRuns';
import type { CutJob } from '../../../src/cutting/job';
import { type SeededRandom, seededRandom } from '../../support/seededRandom';
import { tinyJob } from '../../support/tinyJobs';

interface Laid {
  readonly joints: readonly number[];
  /** Price of all it covers. */
  readonly cost: number;
}

/** Price of the units after `from` up to `to`. */
type PriceOf = (from: number, to: number) => number;

/** Every way to lay a run, each piece on the units of a plank that `runs/arcs.ts` draws it on. */
function waysOf(run: BoundRun, { plankLength, kerf }: BoundRuns, price: PriceOf, span: number): readonly Laid[] {
  const ways: Laid[] = [];
  for (let first = run.minPiece; first <= Math.min(plankLength, run.length - run.minPiece); first += 1) {
    const joints: number[] = [];
    for (let joint = first; joint < run.length; joint += plankLength) joints.push(run.x + joint);
    const last = run.x + run.length - joints[joints.length - 1];
    if (last < run.minPiece) continue;
    const cost = price(0, first + kerf) + (joints.length - 1) * price(0, span) + price(plankLength - last, span);
    ways.push({ joints, cost });
  }
  return ways;
}

/** The least price of all runs, every way of every run tried beside every way of its parent. */
function leastByTrial(runs: BoundRuns, price: PriceOf, span: number): number {
  const apart = Math.min(runs.minStagger, Math.floor(runs.plankLength / 2));
  const ways = runs.runs.map((run) => waysOf(run, runs, price, span));
  const isApart = (a: Laid, b: Laid) =>
    a.joints.every((one) => b.joints.every((other) => Math.abs(one - other) >= apart));
  // Parents stand before their children: from the last to the first each way knows what its children cost beside it.
  const costs = ways.map((own) => own.map(({ cost }) => cost));
  let sum = 0;
  for (let index = ways.length - 1; index >= 0; index -= 1) {
    const { parent } = runs.runs[index];
    if (parent < 0) {
      sum += Math.min(...costs[index]);
      continue;
    }
    ways[parent].forEach((above, i) => {
      const beside = costs[index].filter((_, k) => isApart(ways[index][k], above));
      costs[parent][i] += Math.min(...beside);
    });
  }
  for (const { length, count } of runs.shortLengths) {
    const end = length + runs.kerf + runs.play;
    const starts = Array.from({ length: span - end + 1 }, (_, start) => price(start, start + end));
    sum += count * Math.min(...starts);
  }
  return sum;
}

/** Prices in whole numbers that sum to a power of two, so that nothing is rounded; many units cost nothing. */
function randomPrices(random: SeededRandom, span: number): Float64Array {
  const prices = new Float64Array(span + 1);
  for (let left = 64; left > 0; left -= 1) prices[random.whole(1, span)] += 1;
  return prices;
}

/** The tiny jobs as they are, with play, and with a stagger that few rows can keep. */
const JOBS: readonly CutJob[] = Array.from({ length: 120 }, (_, i) => tinyJob(i + 1)).flatMap((job) => [
  job,
  { ...job, play: 2 },
  { ...job, minStagger: Math.ceil(0.4 * job.plankLength) },
]);

describe('prices of every unit of a plank', () => {
  test('the least price of all runs is the least of all ways to lay them, to the last bit', () => {
    let dear = 0;
    JOBS.forEach((job, seed) => {
      const runs = boundRunsOf(job);
      const priced = pricedRunsOf(runs);
      const prices = randomPrices(seededRandom(seed + 1), priced.span);
      const planks = priced.price(prices);
      const { plank, least, priceTo } = priced.last();
      const price: PriceOf = (from, to) => priceTo[to] - priceTo[from];
      const byTrial = leastByTrial(runs, price, priced.span);
      expect([seed, least + priced.wholePlanks * plank]).toEqual([seed, byTrial]);
      if (byTrial === Number.POSITIVE_INFINITY) return;
      expect([seed, planks]).toEqual([seed, Math.ceil(byTrial / plank)]);
      dear += planks > priced.wholePlanks ? 1 : 0;
    });
    expect(dear).toBeGreaterThan(100);
  });

  test('the overlap of the ways chosen costs that least price', () => {
    JOBS.forEach((job, seed) => {
      const priced = pricedRunsOf(boundRunsOf(job));
      if (priced.price(randomPrices(seededRandom(seed + 1), priced.span)) === Number.POSITIVE_INFINITY) return;
      const { least, priceTo } = priced.last();
      const overlap = new Int32Array(priced.span + 1);
      priced.overlap(overlap);
      let cost = 0;
      for (let unit = 1; unit <= priced.span; unit += 1) cost += overlap[unit] * (priceTo[unit] - priceTo[unit - 1]);
      expect([seed, cost]).toEqual([seed, least]);
    });
  });

  test('a second pricing forgets the first', () => {
    JOBS.slice(0, 60).forEach((job, seed) => {
      const runs = boundRunsOf(job);
      const [used, fresh] = [pricedRunsOf(runs), pricedRunsOf(runs)];
      const random = seededRandom(seed + 1);
      used.price(randomPrices(random, used.span));
      const prices = randomPrices(random, used.span);
      expect([seed, used.price(prices)]).toEqual([seed, fresh.price(prices)]);
      const [a, b] = [used, fresh].map((one) => [...one.last().priceTo, one.last().least]);
      expect([seed, a]).toEqual([seed, b]);
    });
  });
});
