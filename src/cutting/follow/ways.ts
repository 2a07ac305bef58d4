/**
 * Ways to lay one run with the offcuts against the wall: which first piece, and what its ends are cut from.
 *
 * A first piece is tried where it uses an offcut up, where the last piece does, at the ends of what stagger leaves open,
 * where it costs least by the prices of the bound, and where the plan at hand has it.
 */
import { type Goals, goalsOf } from '../goals/goals';
import { nearPairs } from '../runs/joints';
import { isLaidItself, lastPieceOf, type PreparedRun } from '../runs/prepared';
import { findOpenings, isWithin, noOpenings, type Openings } from '../runs/stagger';
import { drawBelow } from '../search/seeded';
import type { Trial } from '../search/trial';
import { type BestWays, bestWaysFor, isAmongBest, placeFor } from './bestWays';
import { type Cutting, cutRun, FIRST, type Keeping, LAST, type Leaving, NEW, noLeaving, SAME, STRIP } from './offcuts';
import type { Pinned } from './pinned';
import type { Standings } from './standings';
import type { Worth } from './worth';

export interface Sweeping extends Keeping {
  readonly trial: Trial;
  readonly goals: Goals;
  readonly isFromBehind: boolean;
  readonly pinned: Pinned;
  /** Offcuts that may lie against the wall after a row. */
  readonly most: number;
  /** What each of them costs. */
  readonly offcut: number;
  /** Worth that may be lost in all. */
  readonly budget: number;
  /** What a unit of lost worth costs. */
  readonly wasted: number;
  /** First pieces of the plan at hand, by the rest of their runs. */
  readonly known: ReadonlyMap<number, readonly number[]>;
  readonly endsRow: readonly boolean[];
  readonly best: BestWays;
  /** The standings, the one of them and the run at work. */
  standings: Standings;
  from: number;
  run: PreparedRun;
  /** What the cheapest open first piece costs the run at work. */
  least: number;
  /** What aligned joints of the first piece at work cost. */
  aligned: number;
  readonly openings: Openings;
  readonly firsts: number[];
  readonly leaving: Leaving;
  /** Offcuts of a standing that a row's end throws away. */
  readonly thrown: Uint8Array;
  /** Ways looked at. */
  looks: number;
}

/** First pieces of the plan at hand that are tried for a run. */
const KNOWN_TRIED = 2;
/** What a wasted plank costs, at least and for each run: many runs have few planks to waste. */
const PLANK_WASTED = 30_000;
const PLANK_WASTED_FOR_RUN = 1000;
/** Units that are. */
const NEXT_TO_NOTHING = 8;
/** A row that an offcut waited, a cut, an aligned joint. */
const ROW_WAITED = 10;
const CUT = 100;
/** A plank whose first piece is laid before its last one: the last has no room to grow but its play. */
const TURNED = 40;
export const ALIGNED = 1000;

/** The side that a floor is laid from: rows and runs from the first on, or from the last back. */
export type Side = 'front' | 'back';

export interface SweepGoal {
  /** Planks that may be used. */
  readonly planks: number;
  /** Offcuts that may wait at once. */
  readonly most: number;
  /** Ways that are kept. */
  readonly width: number;
  /** What an offcut against the wall costs after a row, where an aligned joint costs 1000. */
  readonly offcut: number;
}

/** @param at first pieces of the plan at hand */
export function sweepingOf(
  trial: Trial,
  at: Int32Array,
  worth: Worth,
  pinned: Pinned,
  standings: Standings,
  { planks, most, width, offcut }: SweepGoal,
  side: Side,
): Sweeping {
  const { runs, job, plankLength } = trial.prepared;
  const own = runs.filter(isLaidItself);
  const longs = own.filter((run) => !run.isWallToWall);
  const hasWalls = longs.length < own.length;
  const { play = 0 } = job;
  const known = new Map<number, number[]>();
  for (const { rest, index } of longs) known.set(rest, [...(known.get(rest) ?? []), at[index]]);
  const shortestPiece = own.reduce((a, run) => Math.min(a, run.isWallToWall ? run.length : run.minPiece), plankLength);
  return {
    trial,
    plankLength,
    kerf: job.kerf,
    play,
    firstPlay: side === 'back' ? play : 0,
    lastPlay: side === 'back' && !hasWalls ? 0 : play,
    shortest: job.kerf + shortestPiece,
    isFromBehind: side === 'back',
    hasWalls,
    worth,
    goals: goalsOf(trial),
    pinned,
    most,
    offcut,
    budget: worth.spareOf(planks) + pinned.saved,
    wasted: Math.max(PLANK_WASTED, PLANK_WASTED_FOR_RUN * runs.length) / worth.plank,
    known,
    endsRow: runs.map(({ index, rowIndex }) => runs[index + 1]?.rowIndex !== rowIndex),
    best: bestWaysFor(width),
    standings,
    from: 0,
    run: runs[0],
    least: 0,
    aligned: 0,
    openings: noOpenings(),
    firsts: [],
    leaving: noLeaving(),
    thrown: new Uint8Array(standings.room),
    looks: 0,
  };
}

/** Adds the ways to lay the run at work on the standing at work. */
export function findWays(sweeping: Sweeping): void {
  const { run, play, firstPlay, plankLength, pinned } = sweeping;
  sweeping.aligned = 0;
  if (run.isWallToWall) {
    sweeping.least = 0;
    const first = run.high.from;
    addWay(sweeping, { first, firstOf: NEW, lastOf: SAME });
    const firstOf = tightest(sweeping, run.length + play, 0, NEW);
    if (firstOf >= 0) addWay(sweeping, { first, firstOf, lastOf: SAME });
    return;
  }
  findFirsts(sweeping);
  const at = sweeping.standings.at[sweeping.from];
  for (const first of sweeping.firsts) {
    sweeping.aligned = ALIGNED * alignedBefore(sweeping, at, first);
    if (pinned.isStrip[2 * run.index] === 1) {
      findLasts(sweeping, first, STRIP);
      continue;
    }
    const firstOf = first === plankLength ? NEW : tightest(sweeping, first + firstPlay, FIRST, NEW);
    if (firstOf >= 0) findLasts(sweeping, first, firstOf);
    if (!isUsedUp(sweeping, firstOf, first + firstPlay)) findLasts(sweeping, first, NEW);
  }
}

function findLasts(sweeping: Sweeping, first: number, firstOf: number): void {
  const { standings, from, run, kerf, play, firstPlay, lastPlay, plankLength: L } = sweeping;
  if (sweeping.pinned.isStrip[2 * run.index + 1] === 1) {
    addWay(sweeping, { first, firstOf, lastOf: STRIP });
    return;
  }
  const last = lastPieceOf(run, first, L);
  const lastOf = last === L ? NEW : tightest(sweeping, last + lastPlay, LAST, firstOf);
  if (lastOf >= 0) addWay(sweeping, { first, firstOf, lastOf });
  const source = from * standings.room + firstOf;
  const rest = firstOf < 0 ? L - first : standings.lengths[source] - kerf - first - firstPlay;
  const givesLast = firstOf === NEW || (standings.gives[source] & LAST) > 0;
  if (givesLast && rest - kerf >= last + play) addWay(sweeping, { first, firstOf, lastOf: SAME });
  if (!isUsedUp(sweeping, lastOf, last + lastPlay)) addWay(sweeping, { first, firstOf, lastOf: NEW });
}

/** Whether a piece leaves next to nothing of an offcut: a new plank is no better then. */
function isUsedUp({ standings, from, kerf, shortest }: Sweeping, offcut: number, length: number): boolean {
  return (
    offcut >= 0 &&
    standings.lengths[from * standings.room + offcut] - kerf - length < Math.min(shortest, NEXT_TO_NOTHING)
  );
}

/** The shortest offcut, but one, that gives a piece of such a kind and length; -1 for none. */
function tightest({ standings, from, kerf }: Sweeping, length: number, kind: number, but: number): number {
  const { lengths, gives, counts, room } = standings;
  const start = from * room;
  let best = -1;
  for (let i = 0; i < counts[from]; i++) {
    if (i === but || (gives[start + i] & kind) !== kind || lengths[start + i] - kerf < length) continue;
    if (best < 0 || lengths[start + i] < lengths[start + best]) best = i;
  }
  return best;
}

function findFirsts(sweeping: Sweeping): void {
  const { openings, firsts, trial, standings, from, run, kerf, firstPlay, lastPlay, plankLength: L } = sweeping;
  findOpenings(openings, run, { prepared: trial.prepared, at: standings.at[from], stagger: trial.stagger });
  firsts.length = 0;
  const pinned = sweeping.pinned.firsts[run.index];
  if (pinned > 0) {
    sweeping.least = sweeping.worth.totals[run.index]?.[pinned] ?? 0;
    if (isWithin(openings, pinned)) firsts.push(pinned);
    return;
  }
  addCheapest(sweeping);
  for (let i = 0; i < openings.count; i++) {
    addFirst(firsts, openings.from[i]);
    addFirst(firsts, openings.to[i]);
  }
  if (openings.count > 0) addFirst(firsts, drawOpen(sweeping));
  const known = sweeping.known.get(run.rest) ?? [];
  for (let i = 0; i < Math.min(KNOWN_TRIED, known.length); i++) {
    const first = known[known.length <= KNOWN_TRIED ? i : drawBelow(trial.seeded, known.length)];
    if (isWithin(openings, first)) addFirst(firsts, first);
  }
  const start = from * standings.room;
  for (let i = start; i < start + standings.counts[from]; i++) {
    const length = standings.lengths[i];
    if ((standings.gives[i] & FIRST) > 0) addFirst(firsts, openUpTo(openings, length - kerf - firstPlay));
    if ((standings.gives[i] & LAST) === 0) continue;
    const last = length - kerf - lastPlay;
    addFirst(firsts, openFrom(openings, run.rest - last, run.rest - 1));
    addFirst(firsts, openFrom(openings, L + run.rest - last, L));
  }
}

/** Any open first piece: ways that only differ by what the rules leave least of are soon all alike. */
function drawOpen({ openings, trial }: Sweeping): number {
  const i = drawBelow(trial.seeded, openings.count);
  return openings.from[i] + drawBelow(trial.seeded, openings.to[i] - openings.from[i] + 1);
}

/** Notes what the cheapest open first piece costs, and tries it. */
function addCheapest(sweeping: Sweeping): void {
  const { openings, worth, run, firsts } = sweeping;
  const totals = worth.totals[run.index];
  let cheapest = 0;
  sweeping.least = Number.POSITIVE_INFINITY;
  if (!totals) return;
  for (let i = 0; i < openings.count; i++)
    for (let first = openings.from[i]; first <= openings.to[i]; first++) {
      if (totals[first] >= sweeping.least) continue;
      sweeping.least = totals[first];
      cheapest = first;
    }
  addFirst(firsts, cheapest);
}

function addFirst(firsts: number[], first: number): void {
  if (first > 0 && !firsts.includes(first)) firsts.push(first);
}

/** The longest open first piece up to so much; 0 for none. */
function openUpTo({ count, from, to }: Openings, most: number): number {
  let longest = 0;
  for (let i = 0; i < count; i++) if (from[i] <= most) longest = Math.max(longest, Math.min(most, to[i]));
  return longest;
}

/** The shortest open first piece from `least` on; 0 where none begins up to `most`. */
function openFrom({ count, from, to }: Openings, least: number, most: number): number {
  for (let i = 0; i < count; i++) if (to[i] >= least && from[i] <= most) return Math.max(least, from[i]);
  return 0;
}

/** Joints that are aligned with those two rows before. */
function alignedBefore({ goals, trial, run }: Sweeping, at: Int32Array, first: number): number {
  const { prepared } = trial;
  let pairs = 0;
  at[run.index] = first;
  for (const index of goals.twoAway[run.index])
    if (at[index] > 0) pairs += nearPairs({ prepared, at }, run, prepared.runs[index], prepared.job.alignedDistance);
  at[run.index] = 0;
  return pairs;
}

function addWay(sweeping: Sweeping, cutting: Cutting): void {
  const { standings, from, run, leaving, worth, best } = sweeping;
  const { first, firstOf, lastOf } = cutting;
  sweeping.looks++;
  cutRun(leaving, sweeping, standings, from * standings.room, run, cutting);
  const totals = worth.totals[run.index];
  const dearer = totals ? totals[first] - sweeping.least : 0;
  const thrown = throwAway(sweeping, cutting);
  const waste = standings.waste[from] + leaving.lost + dearer + thrown;
  if (waste > sweeping.budget) return;
  const waited = waitedFor(sweeping, firstOf) + waitedFor(sweeping, lastOf);
  const isTurned = (sweeping.isFromBehind ? firstOf : lastOf) >= 0;
  const price =
    standings.price[from] + sweeping.aligned + ROW_WAITED * waited + CUT * leaving.cuts + (isTurned ? TURNED : 0);
  const wasted = sweeping.wasted * waste;
  const rank = price + wasted + sweeping.offcut * keptAfter(sweeping, cutting);
  if (!isAmongBest(best, rank)) return;
  const at = placeFor(best, rank, keyOf(sweeping, cutting));
  if (at < 0) return;
  best.from[at] = from;
  best.firsts[at] = first;
  best.firstOf[at] = firstOf;
  best.lastOf[at] = lastOf;
  best.waste[at] = waste;
  best.price[at] = price;
}

function waitedFor({ standings, from, run }: Sweeping, offcut: number): number {
  return offcut < 0 ? 0 : Math.abs(run.rowIndex - standings.rows[from * standings.room + offcut]);
}

/**
 * At the end of a row the least worth above the most are thrown away: marks them, and answers what they were worth. Those
 * that the run has left count behind those that lay there before.
 */
export function throwAway(sweeping: Sweeping, { firstOf, lastOf }: Cutting): number {
  const { standings, from, run, leaving, thrown, endsRow, most } = sweeping;
  const { counts, values, room } = standings;
  const before = counts[from];
  const count = before + leaving.count;
  thrown.fill(0, 0, count);
  if (!endsRow[run.index]) return 0;
  let left = count - (firstOf >= 0 ? 1 : 0) - (lastOf >= 0 ? 1 : 0);
  let lost = 0;
  for (; left > most; left--) {
    let least = Number.POSITIVE_INFINITY;
    let which = -1;
    for (let i = 0; i < count; i++) {
      if (i === firstOf || i === lastOf || thrown[i] === 1) continue;
      const value = i < before ? values[from * room + i] : leaving.values[i - before];
      if (value >= least) continue;
      least = value;
      which = i;
    }
    thrown[which] = 1;
    lost += least;
  }
  return lost;
}

/** Offcuts that are kept. */
function keptAfter({ standings, from, leaving, thrown }: Sweeping, { firstOf, lastOf }: Cutting): number {
  const count = standings.counts[from] + leaving.count;
  let kept = count - (firstOf >= 0 ? 1 : 0) - (lastOf >= 0 ? 1 : 0);
  for (let i = 0; i < count; i++) kept -= thrown[i];
  return kept;
}

/** Tells apart what matters to the runs that follow: the joints of the row, and the offcuts in any order. */
function keyOf({ standings, from, leaving, thrown }: Sweeping, { first, firstOf, lastOf }: Cutting): number {
  const { counts, lengths, gives, rowKeys, room } = standings;
  const before = counts[from];
  let key = Math.imul(first, 0x2c1b3c6d) ^ rowKeys[from];
  for (let i = 0; i < before; i++)
    if (i !== firstOf && i !== lastOf && thrown[i] === 0)
      key = (key + mixed(lengths[from * room + i], gives[from * room + i])) | 0;
  for (let i = 0; i < leaving.count; i++)
    if (thrown[before + i] === 0) key = (key + mixed(leaving.lengths[i], leaving.gives[i])) | 0;
  return key;
}

function mixed(length: number, gives: number): number {
  const hash = Math.imul(4 * length + gives + 1, 0x9e3779b1);
  return Math.imul(hash ^ (hash >>> 15), 0x85ebca6b);
}
