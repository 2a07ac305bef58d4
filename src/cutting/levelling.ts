/**
 * Levelling: moves arcs until no place is covered deeper than a wanted number of planks allows.
 *
 * One move lifts a run and lays it again where its arc costs least, over every whole first piece its rules and its
 * neighbours allow: prefix sums of prices make that one pass over the places. First the price of a place is its depth
 * (that descends on the sum of squares); then only places at the limit cost anything, and each rises in price
 * every time it is found too deep. Rising prices are P. Morris's breakout (AAAI 1993), and the multipliers of a
 * Lagrangian relaxation found by play.
 */
import { priceOfArc } from './arcs';
import { lastPieceOf, type PreparedJob, type PreparedRun } from './prepared';
import { drawBelow } from './seeded';
import { markForbidden } from './stagger';
import { lay, lift, plankCountOf, stripDue, type Trial } from './trial';

/** Price of a first piece that a neighbouring joint forbids: above any sum of prices of places. */
export const FORBIDDEN_PRICE = 2 ** 42;

/** Room for one move's arithmetic, made once. */
export interface Prices {
  /** Price of one more cover of each place 1..L. */
  readonly ofPlace: Float64Array;
  /** Sums of them over 1..a. */
  readonly sums: Float64Array;
  /** How many neighbouring joints forbid each first piece. */
  readonly forbidden: Int32Array;
}

export function emptyPrices(plankLength: number): Prices {
  return {
    ofPlace: new Float64Array(plankLength + 2),
    sums: new Float64Array(plankLength + 2),
    forbidden: new Int32Array(plankLength + 2),
  };
}

/** Lays every run in turn where the load is least, again and again: a start, and already near the fewest planks. */
export function levelByDepth(trial: Trial, prices: Prices, sweeps: number): void {
  const { prepared, depth } = trial;
  const { sums } = prices;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (const run of prepared.runs) {
      if (run.isTied) continue;
      if (trial.at[run.index] > 0) lift(trial, run);
      for (let a = 1; a <= prepared.plankLength; a++) sums[a] = sums[a - 1] + depth[a];
      lay(trial, run, cheapestPlace(trial, run, prices));
    }
  }
}

/**
 * Searches for a choice that needs no more than `planks`.
 *
 * @returns whether it was found; the trial is then laid so, else it is wherever the search was when the steps ran out
 */
export function levelTo(trial: Trial, prices: Prices, planks: number, stepLimit: number): boolean {
  const { prepared, depth } = trial;
  const { ofPlace, sums } = prices;
  const L = prepared.plankLength;
  ofPlace.fill(1);
  let lastMoved = -1;
  while (trial.steps < stepLimit) {
    const limit = planks - trial.wholes;
    const place = drawDeepPlace(trial, limit, ofPlace);
    if (place === 0) return true;
    const run = drawRun(trial, place, lastMoved);
    lastMoved = run.index;
    lift(trial, run);
    for (let a = 1; a <= L; a++) sums[a] = sums[a - 1] + (depth[a] >= limit ? ofPlace[a] : 0);
    lay(trial, run, cheapestPlace(trial, run, prices));
  }
  return plankCountOf(trial) <= planks;
}

/** Raises the price of every place deeper than `limit` and draws one of them, the deeper the likelier; 0 for none. */
function drawDeepPlace(trial: Trial, limit: number, ofPlace: Float64Array): number {
  const { depth, prepared, seeded } = trial;
  let excess = 0;
  let drawn = 0;
  for (let a = 1; a <= prepared.plankLength; a++) {
    const over = depth[a] - limit;
    if (over <= 0) continue;
    ofPlace[a]++;
    excess += over;
    if (drawBelow(seeded, excess) < over) drawn = a;
  }
  return drawn;
}

/** A run that covers the place, now and then any: never the same one twice running if there is another. */
function drawRun(trial: Trial, place: number, lastMoved: number): PreparedRun {
  const { prepared, seeded } = trial;
  const { runs } = prepared;
  let drawn = -1;
  let count = 0;
  if (drawBelow(seeded, 10) < 7) {
    for (const run of runs) {
      if (run.isTied || run.index === lastMoved || !covers(prepared, run, trial.at[run.index], place)) continue;
      count++;
      if (drawBelow(seeded, count) === 0) drawn = run.index;
    }
  }
  while (drawn < 0 || runs[drawn].isTied) drawn = drawBelow(seeded, runs.length);
  return runs[drawn];
}

function covers(prepared: PreparedJob, run: PreparedRun, at: number, place: number): boolean {
  const start = at - run.rest - prepared.kerf;
  if (at >= run.rest) return place <= at && place > start;
  return place <= at || place > start + prepared.plankLength;
}

/** The first piece that costs least, any of them if there are several. Two or three passes over the places. */
export function cheapestPlace(trial: Trial, run: PreparedRun, prices: Prices): number {
  const { prepared } = trial;
  trial.steps += prepared.plankLength;
  sumForbidden(trial, run, prices.forbidden);
  if (run.stripOf >= 0) return cheapestStripPlace(trial, run, prices);
  const found = { at: 0, price: Number.POSITIVE_INFINITY, ties: 0 };
  scan(trial, run, prices, run.lowFrom, run.lowTo, found);
  scan(trial, run, prices, run.highFrom, run.highTo, found);
  return found.at;
}

interface Found {
  at: number;
  price: number;
  ties: number;
}

function scan(trial: Trial, run: PreparedRun, prices: Prices, from: number, to: number, found: Found): void {
  const { prepared, seeded } = trial;
  const L = prepared.plankLength;
  const reach = run.rest + prepared.kerf;
  const { sums, forbidden } = prices;
  let { at, price, ties } = found;
  for (let s = from; s <= to; s++) {
    const own = priceOfArc(sums, s, run.rest, reach, L) + FORBIDDEN_PRICE * forbidden[s];
    if (own > price) continue;
    ties = own < price ? 1 : ties + 1;
    if (own < price || drawBelow(seeded, ties) === 0) at = s;
    price = own;
  }
  found.at = at;
  found.price = price;
  found.ties = ties;
}

/** How many joints of neighbours forbid each first piece of `run`, those of a run tied to it included. */
export function sumForbidden(trial: Trial, run: PreparedRun, forbidden: Int32Array): void {
  const { prepared } = trial;
  forbidden.fill(0);
  markNeighbours(trial, run, forbidden);
  if (run.stripFor >= 0 && prepared.runs[run.stripFor].isTied)
    markNeighbours(trial, prepared.runs[run.stripFor], forbidden);
  for (let s = 1; s <= prepared.plankLength; s++) forbidden[s] += forbidden[s - 1];
}

function markNeighbours(trial: Trial, run: PreparedRun, marks: Int32Array): void {
  const { prepared, at } = trial;
  for (const index of prepared.neighbours[run.index]) {
    if (at[index] > 0) markForbidden(marks, run, prepared.runs[index], at[index], prepared);
  }
}

/** The same for a last-row run that strips may serve in part: only what they leave costs anything. */
function cheapestStripPlace(trial: Trial, run: PreparedRun, prices: Prices): number {
  const { prepared, at } = trial;
  const { sums, forbidden } = prices;
  const L = prepared.plankLength;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let s = 1; s <= run.highTo; s++) {
    if (s < run.lowFrom || (s > run.lowTo && s < run.highFrom)) continue;
    const due = stripDue(prepared, run, s, at[run.stripOf]);
    const arc = priceOfArc(sums, s, run.rest, run.rest + prepared.kerf, L);
    const begin = Math.max(0, L - prepared.kerf - (run.isWallToWall ? 0 : lastPieceOf(run, s, L)));
    const ends = run.isWallToWall
      ? arc * Number(due.first)
      : sums[s] * Number(due.first) + (sums[L] - sums[begin]) * Number(due.last);
    const price = ends + sums[L] * due.wholes + FORBIDDEN_PRICE * forbidden[s];
    if (price >= least) continue;
    least = price;
    best = s;
  }
  return best;
}
