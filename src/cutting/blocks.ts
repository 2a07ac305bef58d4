/**
 * Block moves: re-choose runs of consecutive rows together, so that a floor whose joints lock each other can move.
 *
 * The runs are lifted together and chosen by dynamic programming along the path: for every first piece of a run, the
 * cheapest of the run before among those its joints leave open. Minima over stretches come from a sparse table (M. A.
 * Bender and M. Farach-Colton, LATIN 2000): log L steps a place to build it, one or two to ask it. Prices of places
 * are added up; since two arcs of a block may meet at one place, a block that turns out dearer is put back.
 */
import { priceOfArc } from './arcs';
import type { PreparedRun } from './prepared';
import { drawBelow } from './seeded';
import {
  addWindows,
  findOpenings,
  noOpenings,
  noStretches,
  type Openings,
  openBetween,
  type Stretches,
} from './stagger';
import type { Trial } from './trial';

/** No choice: above any price; the sum of two still fits in 32 bits. */
const NEVER = 2 ** 30 - 1;

/** Room for one block's arithmetic, made once. */
export interface BlockRoom {
  /** For each run of the block, the price of having it and all before it, by its first piece. */
  readonly least: readonly Int32Array[];
  /** Minima of the prices of the run before over 1, 2, 4, ... first pieces from each on. */
  readonly minima: readonly Int32Array[];
  readonly openings: Openings;
  readonly windows: Stretches;
  readonly open: Stretches;
  readonly shut: Stretches;
}

export function emptyBlockRoom(plankLength: number, size: number): BlockRoom {
  const arrays = (count: number): Int32Array[] => Array.from({ length: count }, () => new Int32Array(plankLength + 2));
  return {
    least: arrays(size),
    minima: arrays(32 - Math.clz32(plankLength)),
    openings: noOpenings(),
    windows: noStretches(),
    open: noStretches(),
    shut: noStretches(),
  };
}

/** Adds to a path runs that are `free`, each a neighbour of the one before, in later rows (1) or earlier ones (-1). */
export function extendPath(
  trial: Trial,
  path: PreparedRun[],
  { direction, size, free }: { direction: number; size: number; free: (run: PreparedRun) => boolean },
): PreparedRun[] {
  const { prepared, seeded } = trial;
  while (path.length < size) {
    const run = path[path.length - 1];
    const next = prepared.neighbours[run.index].filter(
      (index) => prepared.runs[index].rowIndex === run.rowIndex + direction && free(prepared.runs[index]),
    );
    if (next.length === 0) break;
    path.push(prepared.runs[next[drawBelow(seeded, next.length)]]);
  }
  return path;
}

/**
 * Chooses the first pieces of lifted runs anew, or leaves them as they were where no choice keeps the stagger.
 *
 * @param sums prices of the places 1..a without the runs of the path
 * @returns whether there was a choice
 */
export function chooseBlock(trial: Trial, path: readonly PreparedRun[], sums: Int32Array, room: BlockRoom): boolean {
  const { prepared, at } = trial;
  const L = prepared.plankLength;
  const before = path.map((run) => at[run.index]);
  for (const run of path) at[run.index] = 0;
  path.forEach((run, i) => {
    trial.steps += L * (i === 0 ? 1 : 8);
    fillPrices(trial, run, sums, room.openings, room.least[i]);
    if (i > 0) addLeastBefore(trial, path[i - 1], run, room, i);
  });
  const last = path.length - 1;
  let chosen = drawLeast(trial, room.least[last], { from: [1], to: [L], count: 1 });
  if (chosen === 0) {
    path.forEach((run, i) => {
      at[run.index] = before[i];
    });
    return false;
  }
  for (let i = last; i >= 0; i--) {
    at[path[i].index] = chosen;
    if (i > 0) chosen = drawLeast(trial, room.least[i - 1], openTo(trial, path[i - 1], path[i], chosen, room));
  }
  return true;
}

function fillPrices(trial: Trial, run: PreparedRun, sums: Int32Array, openings: Openings, least: Int32Array): void {
  const { prepared } = trial;
  const reach = run.rest + prepared.kerf;
  least.fill(NEVER);
  findOpenings(openings, run, trial);
  for (let i = 0; i < openings.count; i++) {
    for (let s = openings.from[i]; s <= openings.to[i]; s++) {
      least[s] = priceOfArc(sums, s, run.rest, reach, prepared.plankLength);
    }
  }
}

/**
 * Adds to every price of run `i` the least of the run before that keeps its stagger from it: the least of all, but for
 * the few first pieces whose joints shut that one out.
 */
function addLeastBefore(trial: Trial, before: PreparedRun, run: PreparedRun, room: BlockRoom, i: number): void {
  const L = trial.prepared.plankLength;
  const { shut } = room;
  const least = room.least[i];
  const cheapest = cheapestOf(room.least[i - 1], L);
  shut.count = 0;
  addWindows(shut, run, before, cheapest, trial.stagger[run.index] - 1, L);
  fillMinima(room, room.least[i - 1], L);
  let next = 1;
  for (let w = 0; w <= shut.count; w++) {
    const from = w < shut.count ? shut.from[w] : L + 1;
    for (; next < from; next++) least[next] = Math.min(NEVER, least[next] + room.least[i - 1][cheapest]);
    for (; w < shut.count && next <= shut.to[w]; next++) {
      if (least[next] === NEVER) continue;
      const open = openTo(trial, before, run, next, room);
      least[next] = Math.min(NEVER, least[next] + leastWithin(room.minima, open));
    }
  }
}

/** Index from 1 of the least price. */
function cheapestOf(prices: Int32Array, L: number): number {
  let cheapest = 1;
  for (let s = 2; s <= L; s++) if (prices[s] < prices[cheapest]) cheapest = s;
  return cheapest;
}

function leastWithin(minima: readonly Int32Array[], { count, from, to }: Stretches): number {
  let least = NEVER;
  for (let i = 0; i < count; i++) {
    const level = 31 - Math.clz32(to[i] - from[i] + 1);
    least = Math.min(least, minima[level][from[i]], minima[level][to[i] + 1 - 2 ** level]);
  }
  return least;
}

function fillMinima({ minima }: BlockRoom, prices: Int32Array, L: number): void {
  minima[0].set(prices);
  for (let level = 1, half = 1; 2 * half <= L; level++, half *= 2) {
    const narrow = minima[level - 1];
    const wide = minima[level];
    for (let s = 1; s + 2 * half <= L + 1; s++) wide[s] = Math.min(narrow[s], narrow[s + half]);
  }
}

/** First pieces of `run` whose joints keep the stagger from those of `other`. */
function openTo(trial: Trial, run: PreparedRun, other: PreparedRun, at: number, room: BlockRoom): Stretches {
  const L = trial.prepared.plankLength;
  room.windows.count = 0;
  room.open.count = 0;
  addWindows(room.windows, run, other, at, trial.stagger[run.index] - 1, L);
  openBetween(room.open, room.windows, 1, L);
  return room.open;
}

/** Any of the first pieces within the stretches that cost least; 0 where none may be had. */
function drawLeast(trial: Trial, least: Int32Array, within: Stretches): number {
  let price = NEVER;
  let ties = 0;
  let drawn = 0;
  for (let i = 0; i < within.count; i++) {
    for (let s = within.from[i]; s <= within.to[i]; s++) {
      if (least[s] > price || least[s] === NEVER) continue;
      ties = least[s] < price ? 1 : ties + 1;
      if (least[s] < price || drawBelow(trial.seeded, ties) === 0) drawn = s;
      price = least[s];
    }
  }
  return drawn;
}
