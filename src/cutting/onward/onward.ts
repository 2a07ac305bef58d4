/**
 * FRONT DOOR of planning on: the rest of a floor with what is in hand, and the fewest whole planks beside it.
 *
 * The rest is planned as a floor of its own first; its first row is kept apart from the row that lies; then first pieces are
 * chosen anew, one run at a time, where offcuts in hand or shared planks save more. The plan of the whole floor, handed in as
 * a start, is never done worse than.
 */

import { sumOf } from '../../geometry/lists';
import type { BrokenRule, CutJob, CutPlan } from '../job';
import { checkOnwardPlan, judgedOnward } from '../judge/onwardLaws';
import { cutPiecesLast } from '../plan/cutLast';
import { leastDistance } from '../runs/joints';
import { type PlanOptions, planCutsQuickly } from '../search';
import { bookPieces } from './booking';
import { withFewerWaiting } from './fewerWaiting';
import { jointsOf, lastAfter, mayBegin, type OpenRun, openRuns, wholesAfter } from './firstPieces';
import { jointsThatLie, type OnwardJob, type OnwardPlan } from './onwardJob';
import { quickSaved } from './quickSaved';

/** Our choice: so many places are tried for first pieces, fewer on larger floors: each takes work for every run. */
const TRIES = 600_000;
const MOST_PASSES = 12;
/** Our choice: where else the search begins, as shares of a plank's length; only on small floors. */
const OTHER_STARTS = [0.25, 0.5, 0.75, 1];
const SMALL = 12;

/**
 * Plans the rest of a floor.
 *
 * @param followed the rest as it was planned before, its offcuts counted as pieces in hand: taken as it stands where it is
 *   still legal and nothing better is found
 * @param planned how a job of whole planks alone is planned: quickly, as in cells, where nothing is said
 * @returns a legal plan; where a rule cannot be kept, the nearest one found, with what it breaks
 * @throws Error `Internal: ...` if the plan breaks a law of `judge/onwardLaws.ts`
 */
export function planOnward(
  onward: OnwardJob,
  followed?: OnwardPlan['rows'],
  options: PlanOptions = {},
  planned: (job: CutJob, options: PlanOptions) => CutPlan = planCutsQuickly,
): OnwardPlan {
  const { job } = onward;
  if (job.rows.length === 0) return { rows: [], plankCount: 0, short: 0, bound: 0, stop: 'proved fewest', broken: [] };
  const asFound = { ...options, isTurned: false };
  const plain = planned(job, asFound);
  const isBegun = onward.before.some(({ joints }) => joints.length > 0);
  if (onward.stock.length === 0 && !isBegun && !followed) {
    return judgedOnward(onward, { ...cutPiecesLast(job, plain), short: shortOf(plain.plankCount, onward) });
  }
  const alone = job.ripPairs.length > 0 ? planned({ ...job, ripPairs: [] }, asFound) : plain;
  const runs = openRuns(job);
  const bound = boundOf(onward, plain.bound, runs);
  const known = followed ? [followed] : [];
  const starts = [alone.rows, ...known].map((rows) =>
    runs.map(({ rowIndex, runIndex }) => rows[rowIndex].runs[runIndex][0].length),
  );
  const shares = runs.length <= SMALL ? OTHER_STARTS : [];
  const others = shares.map((share) => runs.map((_, i) => Math.ceil(job.plankLength * ((share * (i + 1)) % 1 || 1))));
  const plans = [...starts, ...others].flatMap((start) => {
    const kept = apartFromBefore(onward, runs, start);
    return [kept, savingMore(onward, runs, [...kept])].map((firsts) => planWith(onward, runs, firsts, bound));
  });
  const legal = legalPlans(onward, known, bound);
  const best = [...legal, ...plans].reduce((one, plan) => (isBetter(plan, one) ? plan : one));
  const isOrdered = best.broken.length > 0 || legal.includes(best);
  return judgedOnward(onward, isOrdered ? best : { ...best, rows: withFewerWaiting(onward, runs, best.rows) });
}

/** Those rows of a rest that break no law, as plans. @param bound no plan of the rest uses fewer planks */
export function legalPlans(
  onward: OnwardJob,
  known: readonly OnwardPlan['rows'][],
  bound: number,
): readonly OnwardPlan[] {
  const plans = known.map((rows) => asItStands(onward, rows, bound));
  return plans.filter((plan) => checkOnwardPlan(onward, plan).length === 0);
}

/** Rows that were planned before, their planks counted anew. */
function asItStands(onward: OnwardJob, rows: OnwardPlan['rows'], bound: number): OnwardPlan {
  const planks = rows.flatMap(({ runs }) => runs.flat()).filter(({ stock }) => stock === undefined);
  const plankCount = new Set(planks.map(({ plank }) => plank)).size;
  const stop = plankCount === bound ? 'proved fewest' : 'step limit';
  return { rows, plankCount, short: shortOf(plankCount, onward), bound: Math.min(bound, plankCount), stop, broken: [] };
}

function isBetter(a: OnwardPlan, b: OnwardPlan): boolean {
  return a.broken.length < b.broken.length || (a.broken.length === b.broken.length && a.plankCount < b.plankCount);
}

function shortOf(plankCount: number, { whole = 0 }: OnwardJob): number {
  return Math.max(0, plankCount - whole);
}

/**
 * Putting a new plank in the place of every piece in hand gives a plan without any: so that many planks less than the fewest
 * without them are the least. What lies only adds to what must be kept.
 */
function boundOf({ job, stock }: OnwardJob, withoutStock: number, runs: readonly OpenRun[]): number {
  const cover = sumOf(runs, (run) => run.length) - sumOf(stock, (piece) => piece.length);
  return Math.max(0, withoutStock - stock.length, Math.ceil(cover / job.plankLength));
}

function planWith(onward: OnwardJob, runs: readonly OpenRun[], firsts: readonly number[], bound: number): OnwardPlan {
  const { rows, plankCount } = bookPieces(onward, runs, firsts);
  const broken = brokenRules(onward, runs, firsts);
  const stop = broken.length === 0 && plankCount === bound ? 'proved fewest' : 'step limit';
  return { rows, plankCount, short: shortOf(plankCount, onward), bound: Math.min(bound, plankCount), stop, broken };
}

/** Joints of the rows on both sides of a run's row. */
function besideOf(onward: OnwardJob, runs: readonly OpenRun[], firsts: readonly number[], rowIndex: number) {
  const { rows, plankLength } = onward.job;
  const isNear = (other: OpenRun, by: number) =>
    other.rowIndex === rowIndex + by && rows[other.rowIndex].room === rows[rowIndex].room;
  const joints = (by: number) =>
    runs.flatMap((other, i) => (isNear(other, by) ? jointsOf(other, firsts[i], plankLength) : []));
  return { before: [...jointsThatLie(onward, rowIndex), ...joints(-1)], after: joints(1) };
}

/** Goes through the rows from the first, and gives way as long as a joint lies too near to one of the row before. */
function apartFromBefore(onward: OnwardJob, runs: readonly OpenRun[], firsts: number[]): number[] {
  const { job } = onward;
  const { minStagger, plankLength } = job;
  runs.forEach((run, i) => {
    if (run.isWallToWall) return;
    const { before, after } = besideOf(onward, runs, firsts, run.rowIndex);
    const distance = (first: number, others: readonly number[]) =>
      leastDistance(jointsOf(run, first, plankLength), others);
    if (mayBegin(run, firsts[i], job) && distance(firsts[i], before) >= minStagger) return;
    // Apart from both sides if that can be; else from the row before, and the next row gives way in turn.
    let best = firsts[i];
    let merit = -1;
    for (let first = 1; first <= plankLength; first++) {
      if (!mayBegin(run, first, job)) continue;
      const near = Math.min(minStagger, distance(first, before));
      const far = Math.min(minStagger, distance(first, after));
      if (near * (minStagger + 1) + far > merit) {
        merit = near * (minStagger + 1) + far;
        best = first;
      }
    }
    firsts[i] = best;
  });
  return firsts;
}

/** One run at a time takes the first piece that saves most, as long as any does. */
function savingMore(onward: OnwardJob, runs: readonly OpenRun[], firsts: number[]): number[] {
  const { job, stock } = onward;
  let triesLeft = TRIES / Math.max(1, runs.length);
  let value = plankValue(onward, runs, firsts);
  for (let pass = 0; pass < MOST_PASSES && triesLeft > 0; pass++) {
    let isChanged = false;
    runs.forEach((run, i) => {
      if (run.isWallToWall || triesLeft <= 0) return;
      const { before, after } = besideOf(onward, runs, firsts, run.rowIndex);
      const others = [...before, ...after];
      const kept = firsts[i];
      for (const first of placesWorthTrying(
        job,
        run,
        runs,
        firsts,
        stock.map(({ length }) => length),
      )) {
        if (first === firsts[i] || !mayBegin(run, first, job)) continue;
        if (leastDistance(jointsOf(run, first, job.plankLength), others) < job.minStagger) continue;
        triesLeft -= 1;
        const before1 = firsts[i];
        firsts[i] = first;
        const found = plankValue(onward, runs, firsts);
        // As good as before, now and then: so that the next run finds other partners.
        if (found < value || (found === value && (first + i + pass) % 7 === 0)) value = found;
        else firsts[i] = before1;
      }
      isChanged ||= firsts[i] !== kept;
    });
    if (!isChanged) break;
  }
  return firsts;
}

/** First pieces that fit something exactly: an offcut in hand, or a plank with the end of another run. */
function placesWorthTrying(
  { plankLength: L, kerf, minPiece, play = 0 }: CutJob,
  run: OpenRun,
  runs: readonly OpenRun[],
  firsts: readonly number[],
  lengths: readonly number[],
): readonly number[] {
  const lasts: number[] = [];
  const places = new Set([minPiece, L, ...lengths]);
  runs.forEach((other, i) => {
    if (other.isWallToWall) return;
    places.add(L - kerf - lastAfter(other, firsts[i], L));
    places.add(L - kerf - play - lastAfter(other, firsts[i], L));
    lasts.push(L - kerf - firsts[i], L - kerf - play - firsts[i]);
  });
  // So that the last piece has a wanted length, the first takes what is left of whole planks.
  for (const last of [...lasts, ...lengths, ...lengths.map((length) => length - play), minPiece, L])
    if (last > 0) places.add(((run.length - last - 1) % L) + 1);
  return [...places];
}

/** Planks for end pieces and whole planks between, as far as they can be told quickly. */
function plankValue({ job, stock }: OnwardJob, runs: readonly OpenRun[], firsts: readonly number[]): number {
  const { plankLength } = job;
  const ends: number[] = [];
  const lasts: number[] = [];
  let wholes = 0;
  runs.forEach((run, i) => {
    if (run.isWallToWall) return;
    ends.push(firsts[i]);
    lasts.push(lastAfter(run, firsts[i], plankLength));
    wholes += wholesAfter(run, firsts[i], plankLength);
  });
  return wholes + ends.length + lasts.length - quickSaved(job, ends, lasts, stock);
}

function brokenRules(onward: OnwardJob, runs: readonly OpenRun[], firsts: readonly number[]): readonly BrokenRule[] {
  const { minPiece, minStagger, plankLength } = onward.job;
  return runs.flatMap((run, i): BrokenRule[] => {
    if (run.isWallToWall) return [];
    const { rowIndex, runIndex } = run;
    const shorter = Math.min(firsts[i], lastAfter(run, firsts[i], plankLength));
    const { before } = besideOf(onward, runs, firsts, rowIndex);
    const distance = leastDistance(jointsOf(run, firsts[i], plankLength), before);
    const place = { rowIndex, runIndex };
    return [
      ...(shorter < minPiece ? [{ ...place, rule: 'minimum piece' as const, found: shorter, wanted: minPiece }] : []),
      ...(distance < minStagger
        ? [{ ...place, rule: 'minimum stagger' as const, found: distance, wanted: minStagger }]
        : []),
    ];
  });
}
