/**
 * Levelling: moves arcs until no place is covered deeper than a wanted number of planks allows.
 *
 * One move lifts a run and lays it again where its arc costs least, over every whole first piece its rules and its
 * neighbours allow: prefix sums of prices make that one pass over the places. Only places at the limit cost anything, and
 * each rises in price every time it is found too deep. Rising prices are P. Morris's breakout (AAAI 1993), and the
 * multipliers of a Lagrangian relaxation found by play. Other moves take a block of rows (see `blocks.ts`), or swap the
 * first pieces of two runs alike, which changes no load and opens other places.
 */

import {
  costsByPair,
  isLaidItself,
  lastPieceOf,
  movesFreely,
  otherRowOf,
  type PreparedJob,
  type PreparedRun,
} from '../runs/prepared';
import { findOpenings, isWithin, nearAt, noOpenings, type Openings, openAll } from '../runs/stagger';
import { type BlockMemory, chooseBlock, emptyBlockMemory, extendPath } from './blocks';
import { layStripRoomsAfresh } from './nearest';
import { drawBelow } from './seeded';
import { lay, lift, plankCountOf, swapFirsts, type Trial } from './trial';

/** What a move costs besides its places, in the same measure: it tells where planks are short. */
const STEPS_A_MOVE = 200;
/** Moves after which all prices start again: what was learnt about one arrangement misleads in another. */
const MOVES_A_ROUND = 1000;
/** Per cent of moves that aim at a place too deep; the others lift any run. */
const AIMED_SHARE = 40;
const AIMED_DRAWS = 30;
/** Per cent of moves that try a swap, and draws for a partner. */
const SWAP_SHARE = 30;
const SWAP_DRAWS = 6;
/** Per cent of the others that take a block of rows. */
const BLOCK_SHARE = 5;
const LARGEST_BLOCK = 3;

/** Memory for the arithmetic of one move, made once, and the prices that moves leave behind. */
export interface MoveMemory {
  /** Price of one more cover of each place 1..L. */
  readonly prices: Int32Array;
  /** Sums of them over 1..a. */
  readonly sums: Int32Array;
  /** First pieces that cost least, or places too deep: any of them is drawn. */
  readonly drawnFrom: Int32Array;
  readonly openings: Openings;
  /** What the run that was last laid alone pays for its arc. */
  paid: number;
  /** Made when the first block moves. */
  block?: BlockMemory;
}

export function emptyMoveMemory(plankLength: number): MoveMemory {
  return {
    prices: new Int32Array(plankLength + 2),
    sums: new Int32Array(plankLength + 2),
    drawnFrom: new Int32Array(plankLength + 2),
    openings: noOpenings(),
    paid: 0,
  };
}

/** When to stop moving. */
export interface LevelGoal {
  readonly planks: number;
  readonly stepLimit: number;
  readonly moves: number;
}

/** Moves one run, or a few, after another; answers whether the goal was reached. */
export function level(trial: Trial, memory: MoveMemory, { planks, stepLimit, moves }: LevelGoal): boolean {
  const { seeded } = trial;
  let last = -1;
  let mayBeLevel = true;
  for (let move = 0; trial.steps < stepLimit && move < moves; move++) {
    if (move % MOVES_A_ROUND === 0) memory.prices.fill(1);
    const isAimed = drawBelow(seeded, 100) < AIMED_SHARE;
    const place = isAimed || mayBeLevel ? drawDeepPlace(trial, memory, planks - trial.wholes) : 0;
    if (mayBeLevel && place === 0) return true;
    const run = drawRun(trial, isAimed ? place : 0, last);
    last = run.index;
    mayBeLevel = moveRun(trial, memory, run, planks);
  }
  return plankCountOf(trial) <= planks;
}

/** @returns whether no place may be too deep now; it is too deep wherever a run still pays for its arc */
function moveRun(trial: Trial, memory: MoveMemory, run: PreparedRun, planks: number): boolean {
  const { seeded } = trial;
  if (movesFreely(run) && drawBelow(seeded, 100) < SWAP_SHARE && swapWithAlike(trial, run)) return false;
  if (movesFreely(run) && drawBelow(seeded, 100) < BLOCK_SHARE) {
    moveBlock(trial, memory, run, planks - trial.wholes);
    return true;
  }
  relay(trial, memory, run, planks);
  if (!costsByPair(run)) return memory.paid === 0;
  if (isLocked(memory.openings) && drawBelow(seeded, 8) === 0) layStripRoomsAfresh(trial);
  return true;
}

/** Lifts a run and lays it where it costs least. */
export function relay(trial: Trial, memory: MoveMemory, run: PreparedRun, planks: number): void {
  // Before the lift, which takes the run's whole planks out of the count.
  const limit = planks - trial.wholes;
  lift(trial, run);
  sumPrices(trial, memory, limit);
  layCheapest(trial, memory, run, planks);
}

/** Lays a lifted run where the sums of prices say that it costs least. */
export function layCheapest(trial: Trial, memory: MoveMemory, run: PreparedRun, planks: number): void {
  lay(trial, run, costsByPair(run) ? bestStripPlace(trial, run, memory, planks) : cheapestPlace(trial, run, memory));
}

/** Whether neighbours leave a run no more than one first piece. */
function isLocked({ count, from, to }: Openings): boolean {
  return count === 1 && from[0] === to[0];
}

/**
 * Swaps first pieces with a run of the same rest, if a few draws find one with which both keep their stagger: no load
 * changes, and other places open.
 */
function swapWithAlike(trial: Trial, run: PreparedRun): boolean {
  const { prepared, at, seeded } = trial;
  trial.steps += STEPS_A_MOVE;
  for (let i = 0; i < SWAP_DRAWS; i++) {
    const other = prepared.runs[drawBelow(seeded, prepared.runs.length)];
    if (other.rest !== run.rest || at[other.index] === at[run.index] || !movesFreely(other)) continue;
    swapFirsts(trial, run, other);
    if (nearAt(trial, run) + nearAt(trial, other) === 0) return true;
    swapFirsts(trial, run, other);
  }
  return false;
}

/** Sums the prices of places at the limit or above it. */
function sumPrices(trial: Trial, { prices, sums }: MoveMemory, limit: number): void {
  const { depth } = trial;
  const L = trial.prepared.plankLength;
  const free = limit - 1;
  let sum = 0;
  for (let a = 1; a <= L; a++) {
    // The shift makes a mask of the comparison depth >= limit, which no processor can foretell.
    sum = (sum + (prices[a] & ((free - depth[a]) >> 31))) | 0;
    sums[a] = sum;
  }
}

function moveBlock(trial: Trial, memory: MoveMemory, start: PreparedRun, limit: number): void {
  const path = extendPath(trial, [start], {
    direction: drawBelow(trial.seeded, 2) * 2 - 1,
    size: 2 + drawBelow(trial.seeded, LARGEST_BLOCK - 1),
    free: movesFreely,
  });
  const before = path.map((run) => trial.at[run.index]);
  const price = priceOfExcess(trial, memory.prices, limit);
  for (const run of path) lift(trial, run);
  sumPrices(trial, memory, limit);
  memory.block ??= emptyBlockMemory(trial.prepared.plankLength, LARGEST_BLOCK);
  chooseBlock(trial, path, memory.sums, memory.block);
  for (const run of path) lay(trial, run, trial.at[run.index]);
  if (priceOfExcess(trial, memory.prices, limit) <= price) return;
  for (const run of path) lift(trial, run);
  for (const [i, run] of path.entries()) lay(trial, run, before[i]);
}

function priceOfExcess({ depth, prepared }: Trial, prices: Int32Array, limit: number): number {
  let price = 0;
  for (let a = 1; a <= prepared.plankLength; a++) if (depth[a] > limit) price += (depth[a] - limit) * prices[a];
  return price;
}

/** Raises the price of every place deeper than `limit` and draws one of them; 0 for none. */
function drawDeepPlace(trial: Trial, { prices, drawnFrom }: MoveMemory, limit: number): number {
  const { depth } = trial;
  const L = trial.prepared.plankLength;
  let count = 0;
  for (let a = 1; a <= L; a++) {
    if (depth[a] <= limit) continue;
    prices[a]++;
    drawnFrom[count++] = a;
  }
  return count === 0 ? 0 : drawnFrom[drawBelow(trial.seeded, count)];
}

/** A run that covers the place, if one is given and a few draws find it, else any; never the last moved, unless alone. */
function drawRun(trial: Trial, place: number, lastMoved: number): PreparedRun {
  const { prepared, seeded, at } = trial;
  const { runs } = prepared;
  let drawn = runs[drawBelow(seeded, runs.length)];
  for (let i = 0; i < AIMED_DRAWS; i++) {
    const isRight = place === 0 || covers(prepared, drawn, at[drawn.index], place);
    if (isRight && isLaidItself(drawn) && drawn.index !== lastMoved) return drawn;
    drawn = runs[drawBelow(seeded, runs.length)];
  }
  while (!isLaidItself(drawn)) drawn = runs[drawBelow(seeded, runs.length)];
  return drawn;
}

function covers(prepared: PreparedJob, run: PreparedRun, at: number, place: number): boolean {
  const start = at - run.rest - prepared.kerf;
  if (at >= run.rest) return place <= at && place > start;
  return place <= at || place > start + prepared.plankLength;
}

/** The first piece that costs least, any of them if there are several: one pass over the open places. */
function cheapestPlace(trial: Trial, run: PreparedRun, memory: MoveMemory): number {
  const { prepared, seeded } = trial;
  const { openings } = memory;
  trial.steps += prepared.plankLength + STEPS_A_MOVE;
  findOpenings(openings, run, trial);
  // Where nothing is open the run is laid in the way of others, and the stagger is kept or given up afterwards.
  if (openings.count === 0) openAll(openings, run);
  const found = { price: Number.POSITIVE_INFINITY, count: 0 };
  const reach = run.rest + prepared.kerf;
  const L = prepared.plankLength;
  for (let i = 0; i < openings.count; i++) {
    const from = openings.from[i];
    const to = openings.to[i];
    // Arcs that pass the end of the plank; arcs cut off at its start, and all others.
    if (from < run.rest) scan(memory, { from, to, shift: L - reach, added: memory.sums[L] }, found);
    else scan(memory, { from, to, shift: -reach, added: 0 }, found);
  }
  memory.paid = found.price;
  return memory.drawnFrom[drawBelow(seeded, found.count)];
}

/** First pieces from..to, whose arcs begin `shift` further on (or at the start, where that is before it). */
interface Scanned {
  readonly from: number;
  readonly to: number;
  readonly shift: number;
  /** Price of the places on the way around the plank's end. */
  readonly added: number;
}

/** Finds the least price, and all first pieces that have it. */
function scan(memory: MoveMemory, { from, to, shift, added }: Scanned, found: { price: number; count: number }): void {
  const { sums, drawnFrom } = memory;
  let { price, count } = found;
  for (let s = from; s <= to; s++) {
    const begin = s + shift;
    const own = sums[s] + added - (begin > 0 ? sums[begin] : 0);
    if (own > price) continue;
    if (own < price) {
      price = own;
      count = 0;
    }
    drawnFrom[count++] = s;
  }
  found.price = price;
  found.count = count;
}

/** First pieces of a run of strip rows that are looked at besides those which fit the other row. */
const STRIP_PLACES = 24;

/**
 * Where a lifted run of strip rows is laid: what it costs depends on the other row, so the first pieces that fit that
 * row, and some drawn ones, are all tried out. Costs a pass over the places for each.
 */
function bestStripPlace(trial: Trial, run: PreparedRun, memory: MoveMemory, planks: number): number {
  const { prepared, at, seeded } = trial;
  const { openings, prices } = memory;
  findOpenings(openings, run, trial);
  if (openings.count === 0) openAll(openings, run);
  const drawn = (): number => {
    const i = drawBelow(seeded, openings.count);
    return openings.from[i] + drawBelow(seeded, openings.to[i] - openings.from[i] + 1);
  };
  // Both rows have to change for some strips to fit: now and then one moves at a loss.
  if (drawBelow(seeded, 4) === 0) return drawn();
  const tried = fittingPlaces(prepared, run, at).filter((s) => isWithin(openings, s));
  for (let i = 0; i < STRIP_PLACES; i++) tried.push(drawn());
  const before = at[run.index];
  let best = before;
  let least = Number.POSITIVE_INFINITY;
  for (const s of tried) {
    lay(trial, run, s);
    trial.steps += prepared.plankLength + STEPS_A_MOVE;
    const price = priceOfExcess(trial, prices, planks - trial.wholes);
    lift(trial, run);
    if (price > least || (price === least && drawBelow(seeded, 2) === 0)) continue;
    least = price;
    best = s;
  }
  return best;
}

/** First pieces with which an end of `run` is as long as an end of the other rows of its pair, or a whole plank. */
function fittingPlaces(prepared: PreparedJob, run: PreparedRun, at: Int32Array): number[] {
  const L = prepared.plankLength;
  const places = [L, run.rest];
  for (const index of otherRowOf(prepared, run)) {
    const other = prepared.runs[index];
    if (at[index] === 0) continue;
    places.push(at[index], other.length);
    const end = other.isWallToWall ? other.length : lastPieceOf(other, at[index], L);
    places.push(end < run.rest ? run.rest - end : run.rest - end + L);
  }
  return places;
}
