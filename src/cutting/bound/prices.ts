/**
 * Better and better prices for the units of a plank, until no more planks can be shown to be needed.
 *
 * Every pricing answers with a way to lay the runs, and its overlap is a cut: good prices must make it, and every
 * other way seen, cost more than the bound that is to be shown. Prices are moved onto those cuts one after another by
 * multiplying (entropic projection: Bregman 1967; in the manner of multiplicative weights), which needs some twenty
 * pricings where plain subgradient steps need hundreds.
 *
 * Only additions, multiplications and divisions: the same everywhere, to the last bit.
 */
import type { LastPricing, PricedRuns } from './pricedRuns';

export interface PriceGoal {
  /** Nothing above this is of use: a plan with so many planks is at hand. */
  readonly upTo: number;
  /** Pricings in a row without a higher bound after which it gives up, >= 1; those of earlier goals count. */
  readonly patience: number;
}

/** Prices that are bettered bit by bit, for one goal after another. */
export interface PriceSearch {
  /** @returns the most planks shown to be needed so far; Infinity when some run cannot be laid under the rules */
  readonly raise: (goal: PriceGoal) => number;
  /** The runs priced once more at the best prices met; undefined before the first pricing. */
  readonly atBest: () => LastPricing | undefined;
}

/*
 * The numbers below decide how many pricings a bound takes and how far it comes, never whether it holds. Tried on 179
 * floors (the open cases under 150 rows and nine random floors of each kind), which take 1,249 pricings for bounds that
 * come to 13,875 planks together.
 */

/**
 * How far past a whole number of planks prices aim, in planks: past it, since a bound is rounded up only from there. Wide
 * for the first pricings without a higher bound, which is quicker, then narrow. From
 * 0.03 to 0.2 either hardly matters.
 */
const MARGIN = 0.08;
const NARROW_MARGIN = 0.03;
const PRICINGS_WIDE = 12;
/** After so many pricings without a higher bound it also stops where the best prices would pass the bound by so little. */
const PRICINGS_HOPEFUL = 24;
const SMALL_HOPE = 0.2;
/** Without a plan at hand prices aim no farther than this factor above what is shown. */
const FARTHEST = 1.1;
/** Pricings without a higher bound after which the aim is halved for the first time, and from one halving to the next. */
const PRICINGS_TO_HALVE = 8;
const PRICINGS_BETWEEN_HALVES = 4;
/** Ways to lay the runs that are remembered: with 8 the bounds come to 4 planks less, with 100 to no more. */
const CUTS_KEPT = 32;
/** Sweeps over the cuts before the next pricing: with 2 the bounds come to 8 planks less, with 15 to 4 more, for thrice the work. */
const SWEEPS = 5;
/** The largest factor between two prices in one move is about e to this; from 1.5 to 10 it hardly matters. */
const LONGEST_MOVE = 4;
/** Multiplying never brings a price of 0 back, so none falls below this part of about 1. */
const LEAST_PRICE = 1e-9;
/** A cut that falls short by less is met; rounding alone comes to more than nothing. */
const LEAST_SHORTFALL = 1e-6;
/** Where all units of a cut are about as deep its variance is 0, and the step would be endless. */
const LEAST_VARIANCE = 1e-9;

/** The overlap of one way to lay the runs, unit by unit, less its least. */
interface Cut {
  readonly overlap: Int32Array;
  readonly least: number;
  readonly most: number;
}

/** @param known planks already known to be needed, >= 0 */
export function priceSearchOf(priced: PricedRuns, known: number): PriceSearch {
  const prices = new Float64Array(priced.span + 1).fill(1 / priced.span);
  const cuts: Cut[] = [];
  let shown = known;
  let stride = Number.POSITIVE_INFINITY;
  let waited = 0;
  let isExhausted = false;
  const best = { share: -1, prices };
  const keepBest = (): void => {
    const { least, plank } = priced.last();
    if (least / plank > best.share) Object.assign(best, { share: least / plank, prices: prices.slice() });
  };
  const raise = ({ upTo, patience }: PriceGoal): number => {
    while (shown < upTo && waited < patience && !isExhausted) {
      const planks = priced.price(prices);
      if (planks === Number.POSITIVE_INFINITY) return planks;
      keepBest();
      waited = planks > shown ? 0 : waited + 1;
      shown = Math.max(shown, planks);
      cuts.push(cutOf(priced));
      if (cuts.length > CUTS_KEPT) cuts.shift();
      // Aim at once for all that is of use; where that stays out of reach, take it back by halves.
      const margin = waited < PRICINGS_WIDE ? MARGIN : NARROW_MARGIN;
      const room = Math.min(upTo - 1, shown * FARTHEST) + margin - shown;
      if (waited >= PRICINGS_TO_HALVE && waited % PRICINGS_BETWEEN_HALVES === 0)
        stride = Math.max(Math.min(stride, room) / 2, margin);
      const weights = moveOntoCuts(prices, cuts, shown + Math.min(stride, room) - priced.wholePlanks);
      const hope = waited < PRICINGS_HOPEFUL ? 0 : SMALL_HOPE;
      isExhausted = weights !== null && deepestOverlap(cuts, weights) <= shown + hope - priced.wholePlanks;
    }
    return shown;
  };
  const atBest = (): LastPricing | undefined => {
    if (best.share < 0) return undefined;
    priced.price(best.prices);
    return priced.last();
  };
  return { raise, atBest };
}

function cutOf(priced: PricedRuns): Cut {
  const overlap = new Int32Array(priced.span + 1);
  priced.overlap(overlap);
  let least = overlap[1];
  let most = least;
  for (let unit = 2; unit <= priced.span; unit += 1) {
    least = Math.min(least, overlap[unit]);
    most = Math.max(most, overlap[unit]);
  }
  for (let unit = 1; unit <= priced.span; unit += 1) overlap[unit] = overlap[unit] - least;
  return { overlap, least, most: most - least };
}

/**
 * Some sweeps over the cuts, latest first, until none costs less than `aim`; answers null then, or else how much each
 * cut pulled.
 */
function moveOntoCuts(prices: Float64Array, cuts: readonly Cut[], aim: number): Float64Array | null {
  const weights = new Float64Array(cuts.length);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let moved = false;
    for (let index = cuts.length - 1; index >= 0; index -= 1) {
      const rate = moveOntoCut(prices, cuts[index], aim);
      if (rate > 0) moved = true;
      weights[index] = weights[index] + rate;
    }
    if (!moved) return null;
    for (let unit = 1; unit < prices.length; unit += 1) prices[unit] = Math.max(prices[unit], LEAST_PRICE);
  }
  return weights;
}

/**
 * The deepest overlap of a mixture of ways to lay the runs. No prices make them all cost more than that (Farkas), so
 * where it is not above what is shown already, no prices show more.
 */
function deepestOverlap(cuts: readonly Cut[], weights: Float64Array): number {
  const mixture = new Float64Array(cuts[0].overlap.length);
  let sum = 0;
  let base = 0;
  cuts.forEach(({ overlap, least }, index) => {
    const weight = weights[index];
    sum += weight;
    base += weight * least;
    if (weight === 0) return;
    for (let unit = 1; unit < mixture.length; unit += 1) {
      mixture[unit] = mixture[unit] + weight * overlap[unit];
    }
  });
  let deepest = 0;
  for (const depth of mixture) if (depth > deepest) deepest = depth;
  return (base + deepest) / sum;
}

/** A Newton step of the projection, the shortfall over the variance of the overlap; answers its rate, 0 for none. */
function moveOntoCut(prices: Float64Array, { overlap, least, most }: Cut, aim: number): number {
  let sum = 0;
  let mean = 0;
  let square = 0;
  for (let unit = 1; unit < prices.length; unit += 1) {
    const price = prices[unit];
    const depth = overlap[unit];
    const part = price * depth;
    sum += price;
    mean += part;
    square += part * depth;
  }
  mean /= sum;
  const shortfall = aim - least - mean;
  if (shortfall <= LEAST_SHORTFALL || most === 0) return 0;
  const variance = Math.max(square / sum - mean * mean, LEAST_VARIANCE);
  const rate = Math.min(shortfall / variance, LONGEST_MOVE / most, 1);
  const factors = powers(rate, most, 1 / sum);
  for (let unit = 1; unit < prices.length; unit += 1) {
    prices[unit] = prices[unit] * factors[overlap[unit]];
  }
  return rate;
}

/** `start` x e to the 0, rate, 2 x rate ... about: (1 + rate/2) / (1 - rate/2), multiplied up. */
function powers(rate: number, most: number, start: number): number[] {
  const base = (1 + rate / 2) / (1 - rate / 2);
  const factors = [start];
  for (let power = start; factors.length <= most; ) {
    power *= base;
    factors.push(power);
  }
  return factors;
}
