/**
 * Second goals, without a plank more: no joints aligned with the row before the last, then few cuts, then no stair-steps.
 *
 * Runs move one by one to the best place where no place of a plank gets covered too deep, and runs of one length swap
 * first pieces, which changes no load and no cut at all. The best choice met on the way is kept for each number of
 * aligned joints; in the end the fewest aligned joints win that cost no more than a few cuts.
 */

import { leastBy } from '../../geometry/lists';
import { countFull } from '../runs/arcs';
import { costsByPair, followerOf, isLaidItself, movesFreely, type PreparedRun } from '../runs/prepared';
import { findOpenings, nearAt, noOpenings, type Openings } from '../runs/stagger';
import { drawBelow } from '../search/seeded';
import { lay, layAll, lift, swapFirsts, type Trial } from '../search/trial';
import {
  alignedJoints,
  alignedOfBoth,
  countRun,
  type Goals,
  goalsOf,
  phaseOf,
  stairsOfBoth,
  stairsWith,
} from './goals';

/** What one aligned joint, one cut and one stair-step weigh against each other. */
interface Weights {
  readonly aligned: number;
  readonly cut: number;
  readonly stair: number;
}

/** First half of the moves: how few cuts can it be? Second half: no aligned joints, for a few cuts more. */
const CUTS_FIRST: Weights = { aligned: 24, cut: 36, stair: 1 };
const ALIGNED_FIRST: Weights = { aligned: 60, cut: 24, stair: 1 };

/** Cuts that may be spent on the other goals, as a share of the fewest found. */
const SPARE_CUTS = 0.05;
/** Per cent of the moves that are swaps, and partners looked at for one. */
const SWAP_SHARE = 25;
const MOST_PARTNERS = 40;
/** Per cent of the moves that may leave a run where it was. */
const STAY_SHARE = 80;
/** Per cent of the moves of the second half that look for a run with aligned joints, and draws for one. */
const AIMED_SHARE = 30;
const AIMED_DRAWS = 6;
/** Share of the moves after which the best choice so far is gone back to. */
const GO_BACK = 0.75;
/** Above any price. */
const NEVER = 2 ** 30;

interface Standing {
  readonly aligned: number;
  readonly cuts: number;
  readonly stairs: number;
  readonly at: Int32Array;
}

interface Polish {
  goals: Goals;
  /** The deepest that any place may be covered. */
  readonly limit: number;
  /** Places of 1..a that cannot be covered once more, at every a. */
  readonly full: Int32Array;
  /** Price of each first piece of the run that is moving. */
  readonly price: Int32Array;
  /** First pieces that cost least. */
  readonly tied: Int32Array;
  readonly openings: Openings;
  /** For each run, the runs it may swap with. */
  readonly alike: readonly (readonly number[])[];
  /** The best choices met: no other of them has as few aligned joints and as few cuts. */
  front: Standing[];
}

/**
 * Makes `moves` moves from the choice that is laid.
 *
 * @param planks what no choice may exceed
 * @returns the best choice of first pieces met
 */
export function polish(trial: Trial, planks: number, moves: number): Int32Array {
  const { prepared, seeded } = trial;
  const polishing = preparePolish(trial, planks);
  keepStanding(polishing);
  for (let move = 0; move < moves && prepared.runs.length > 0; move++) {
    if (move === Math.floor(GO_BACK * moves)) goBack(polishing);
    const isSecondHalf = move >= moves / 2;
    const run = drawRun(polishing.goals, isSecondHalf);
    // What a run of strip rows costs depends on the other row: it stays where it is.
    if (!isLaidItself(run) || costsByPair(run)) continue;
    const weights = isSecondHalf ? ALIGNED_FIRST : CUTS_FIRST;
    if (drawBelow(seeded, 100) < SWAP_SHARE && hasFault(polishing.goals, run)) swap(polishing, run, weights);
    else relocate(polishing, run, weights);
    keepStanding(polishing);
  }
  return bestOf(polishing.front).at;
}

/** Any run, or now and then one with aligned joints if a few draws find it. */
function drawRun(goals: Goals, isAimed: boolean): PreparedRun {
  const { prepared, seeded } = goals.trial;
  const draw = (): PreparedRun => prepared.runs[drawBelow(seeded, prepared.runs.length)];
  let run = draw();
  if (!isAimed || drawBelow(seeded, 100) >= AIMED_SHARE) return run;
  for (let i = 0; i < AIMED_DRAWS && alignedJoints(goals, run) === 0; i++) run = draw();
  return run;
}

function hasFault(goals: Goals, run: PreparedRun): boolean {
  return alignedJoints(goals, run) > 0 || stairsWith(goals, run) > 0;
}

/** Goes on from the best choice so far. */
function goBack(polishing: Polish): void {
  const { trial } = polishing.goals;
  layAll(trial, bestOf(polishing.front).at);
  polishing.goals = goalsOf(trial);
}

function preparePolish(trial: Trial, planks: number): Polish {
  const { runs, plankLength } = trial.prepared;
  const ofLength = new Map<number, number[]>();
  for (const run of runs)
    if (movesFreely(run)) ofLength.set(run.length, [...(ofLength.get(run.length) ?? []), run.index]);
  return {
    goals: goalsOf(trial),
    limit: planks - trial.wholes,
    full: new Int32Array(plankLength + 2),
    price: new Int32Array(plankLength + 3),
    tied: new Int32Array(plankLength + 2),
    openings: noOpenings(),
    alike: runs.map((run) => (movesFreely(run) ? (ofLength.get(run.length) ?? []) : [])),
    front: [],
  };
}

/** Moves a run to the open place that costs least. */
function relocate(polishing: Polish, run: PreparedRun, weights: Weights): void {
  const { goals, openings, price } = polishing;
  const { trial } = goals;
  const old = trial.at[run.index];
  trial.steps += trial.prepared.plankLength;
  countRun(goals, run, -1);
  lift(trial, run);
  countFull(polishing.full, trial.depth, polishing.limit, trial.prepared.plankLength);
  fillPrices(polishing, run, weights);
  findOpenings(openings, run, trial);
  if (drawBelow(trial.seeded, 100) >= STAY_SHARE) price[old] = NEVER;
  const found = { price: NEVER, ties: 0 };
  scanOpenings(polishing, run, weights.cut, found);
  lay(trial, run, found.ties === 0 ? old : polishing.tied[drawBelow(trial.seeded, found.ties)]);
  countRun(goals, run, 1);
}

/** The least price found, and how many first pieces have it. */
interface Found {
  price: number;
  ties: number;
}

function scanOpenings(polishing: Polish, run: PreparedRun, cut: number, found: Found): void {
  const { openings, full, goals } = polishing;
  const { plankLength: L, kerf } = goals.trial.prepared;
  const shift = -run.rest - kerf;
  for (let i = 0; i < openings.count; i++) {
    const from = openings.from[i];
    const to = openings.to[i];
    if (from < run.rest) scan(polishing, { from, to, shift: L + shift, full: full[L] }, cut, found);
    else scan(polishing, { from, to, shift, full: 0 }, cut, found);
  }
}

/** First pieces from..to, whose arcs begin `shift` further on; `full` places are full on the way around the plank's end. */
interface Scanned {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
  readonly full: number;
}

function scan({ price, full, tied, goals }: Polish, scanned: Scanned, cut: number, found: Found): void {
  const { begins, ends } = goals;
  const { from, to, shift } = scanned;
  for (let s = from; s <= to; s++) {
    const begin = s + shift;
    if (full[s] + scanned.full !== (begin > 0 ? full[begin] : 0)) continue;
    let own = price[s];
    if (begins[s] > ends[s]) own -= cut;
    if (begin >= 0 && ends[begin] > begins[begin]) own -= cut;
    if (own > found.price) continue;
    if (own < found.price) {
      found.price = own;
      found.ties = 0;
    }
    tied[found.ties++] = s;
  }
}

/** What each first piece of a lifted run costs in aligned joints, stair-steps and whole end pieces. */
function fillPrices(polishing: Polish, run: PreparedRun, weights: Weights): void {
  const { goals, price } = polishing;
  const L = goals.trial.prepared.plankLength;
  price.fill(0);
  const follower = followerOf(goals.trial.prepared, run);
  for (const moved of follower ? [run, follower] : [run]) {
    addAlignedPrice(polishing, moved, weights.aligned);
    addStairPrice(polishing, moved, weights.stair);
  }
  let sum = 0;
  for (let s = 1; s <= L; s++) {
    sum = (sum + price[s]) | 0;
    price[s] = sum;
  }
  // An end piece that is a whole plank takes no cut.
  price[L] -= weights.cut;
  if (!run.isWallToWall) price[run.rest] -= weights.cut;
}

function addAlignedPrice({ goals, price }: Polish, run: PreparedRun, weight: number): void {
  const { prepared, at } = goals.trial;
  const L = prepared.plankLength;
  const reach = prepared.job.alignedDistance - 1;
  for (const index of goals.twoAway[run.index]) {
    const other = prepared.runs[index];
    for (let joint = other.x + at[index]; joint < other.x + other.length; joint += L) {
      const from = Math.max(run.x + 1, joint - reach) - run.x;
      const to = Math.min(run.x + run.length - 1, joint + reach) - run.x;
      addPrice(price, from, to, weight, L);
    }
  }
}

/** Adds a weight to the first pieces whose joints lie within from..to; `price` is summed up afterwards. */
function addPrice(price: Int32Array, from: number, to: number, weight: number, L: number): void {
  if (to < from) return;
  const first = ((((from - 1) % L) + L) % L) + 1;
  const last = first + (to - from);
  price[first] += weight;
  if (last < L) {
    price[last + 1] -= weight;
    return;
  }
  price[1] += weight;
  price[last - L + 1] -= weight;
}

/** The places that would step on from two other rows by the same amount, whichever of the three the run is. */
function addStairPrice({ goals, price }: Polish, run: PreparedRun, weight: number): void {
  const { trial, before, flights } = goals;
  const { plankLength: L, job } = trial.prepared;
  const reach = job.alignedDistance - 1;
  const add = (centre: number): void => addPrice(price, centre - run.x - reach, centre - run.x + reach, weight, L);
  for (const third of flights[run.index]) {
    const second = before[third];
    const a = phaseOf(trial, before[second]);
    const b = phaseOf(trial, second);
    const c = phaseOf(trial, third);
    if (run.index === third) add(2 * b - a);
    else if (run.index !== second) add(2 * b - c);
    else {
      add(Math.floor((a + c) / 2));
      add(Math.floor((a + c + L) / 2));
    }
  }
}

/** Swaps first pieces with the run of the same length for which that does most good, or no harm. */
function swap(polishing: Polish, run: PreparedRun, weights: Weights): void {
  const { goals, alike } = polishing;
  const { prepared, at, seeded } = goals.trial;
  const partners = alike[run.index];
  const first = drawBelow(seeded, Math.max(1, partners.length));
  let best = -1;
  let least = 0;
  let ties = 0;
  for (let i = 0; i < Math.min(partners.length, MOST_PARTNERS); i++) {
    const index = partners[(first + i) % partners.length];
    if (at[index] === at[run.index]) continue;
    const change = changeOfSwap(goals, run, prepared.runs[index], weights);
    if (change > least) continue;
    ties = change < least ? 1 : ties + 1;
    if (change < least || drawBelow(seeded, ties) === 0) best = index;
    least = change;
  }
  if (best < 0) return;
  const other = prepared.runs[best];
  countBoth(goals, run, other, -1);
  swapFirsts(goals.trial, run, other);
  countBoth(goals, run, other, 1);
}

function countBoth(goals: Goals, a: PreparedRun, b: PreparedRun, by: number): void {
  goals.aligned += by * alignedOfBoth(goals, a, b);
  goals.stairs += by * stairsOfBoth(goals, a, b);
}

function changeOfSwap(goals: Goals, a: PreparedRun, b: PreparedRun, weights: Weights): number {
  const priceNow = (): number =>
    alignedOfBoth(goals, a, b) * weights.aligned + stairsOfBoth(goals, a, b) * weights.stair;
  const before = priceNow();
  swapFirsts(goals.trial, a, b);
  const change = nearAt(goals.trial, a) + nearAt(goals.trial, b) === 0 ? priceNow() - before : NEVER;
  swapFirsts(goals.trial, a, b);
  return change;
}

/** Keeps the choice that is laid, unless one is kept that is as good in all. */
function keepStanding(polishing: Polish): void {
  const { aligned, cuts, stairs, trial } = polishing.goals;
  for (const kept of polishing.front) {
    const isAsGood = kept.aligned <= aligned && kept.cuts <= cuts;
    if (isAsGood && (kept.aligned < aligned || kept.cuts < cuts || kept.stairs <= stairs)) return;
  }
  const others = polishing.front.filter((kept) => kept.aligned < aligned || kept.cuts < cuts);
  polishing.front = [...others, { aligned, cuts, stairs, at: trial.at.slice() }];
}

function bestOf(front: readonly Standing[]): Standing {
  const fewest = front.reduce((least, { cuts }) => Math.min(least, cuts), Number.POSITIVE_INFINITY);
  const affordable = front.filter(({ cuts }) => cuts <= Math.floor(fewest * (1 + SPARE_CUTS)));
  return leastBy(affordable, (one) => one.aligned);
}
