/**
 * Second goals, without a plank more: no joints aligned with the row before the last, fewer cuts, no stair-steps.
 *
 * Runs move one by one to where no place gets too deep, and runs of one length swap first pieces, which changes no
 * load and no cut at all. A cut is saved where a first piece ends exactly where a last piece begins on the plank of
 * `arcs.ts` (nothing is left to cut off), and where an end piece is a whole plank.
 */
import { nearPairs } from './joints';
import { lastPieceOf, type PreparedJob, type PreparedRun } from './prepared';
import { drawBelow } from './seeded';
import { findOpenings, noOpenings, type Openings } from './stagger';
import { lay, lift, type Trial } from './trial';

/** What one choice of first pieces is worth. */
interface Standing {
  readonly aligned: number;
  readonly cuts: number;
  readonly at: Int32Array;
}

interface Weights {
  readonly aligned: number;
  readonly cut: number;
  readonly stair: number;
}

/** Runs of the same length looked at for one swap. */
const MOST_PARTNERS = 40;
const SPARE_CUTS = 0.05;

interface Polish {
  readonly trial: Trial;
  readonly limit: number;
  /** Runs two rows away whose joints may line up. */
  readonly second: readonly (readonly number[])[];
  /** The run before and after that each run is compared with for stair-steps; -1 for none. */
  readonly before: Int32Array;
  readonly after: Int32Array;
  /** Stretches that end, and that begin, at each place. */
  readonly ends: Int32Array;
  readonly begins: Int32Array;
  readonly tooDeep: Int32Array;
  readonly price: Int32Array;
  readonly openings: Openings;
  readonly classes: readonly (readonly number[])[];
  aligned: number;
  cuts: number;
  keptAligned: number;
  keptCuts: number;
  readonly front: Standing[];
}

export function polish(trial: Trial, planks: number, moves: number): Int32Array {
  if (trial.at.length === 0) return trial.at;
  const p = preparePolish(trial, planks);
  keepStanding(p);
  const n = trial.prepared.runs.length;
  const half = Math.floor(moves / 2);
  for (let move = 0; move < moves; move++) {
    const weights = move < half ? { aligned: 24, cut: 36, stair: 1 } : { aligned: 60, cut: 24, stair: 1 };
    const run = trial.prepared.runs[drawBelow(trial.seeded, n)];
    if (run.isTied || run.strips >= 0) continue;
    if (drawBelow(trial.seeded, 4) === 0) swapBest(p, run, weights);
    else relocate(p, run, weights);
    keepStanding(p);
  }
  return chooseStanding(p);
}

function preparePolish(trial: Trial, planks: number): Polish {
  const { prepared } = trial;
  const L = prepared.plankLength;
  const classes = new Map<string, number[]>();
  for (const run of prepared.runs) {
    if (!maySwap(run)) continue;
    const key = String(run.length);
    const list = classes.get(key) ?? [];
    list.push(run.index);
    classes.set(key, list);
  }
  const classOf = prepared.runs.map((run) => (maySwap(run) ? (classes.get(String(run.length)) ?? []) : []));
  const p: Polish = {
    trial,
    limit: planks - trial.wholes,
    second: prepared.runs.map((run) => runsOfRows(prepared, run, [run.rowIndex - 2, run.rowIndex + 2])),
    before: Int32Array.from(prepared.runs, (run) => widest(prepared, run, run.rowIndex - 1)),
    after: Int32Array.from(prepared.runs, (run) => widest(prepared, run, run.rowIndex + 1)),
    ends: new Int32Array(L + 2),
    begins: new Int32Array(L + 2),
    tooDeep: new Int32Array(L + 2),
    price: new Int32Array(L + 3),
    openings: noOpenings(),
    classes: classOf,
    aligned: 0,
    cuts: 0,
    keptAligned: -1,
    keptCuts: -1,
    front: [],
  };
  for (const run of prepared.runs) countStretch(p, run, 1);
  for (const run of prepared.runs) p.aligned += alignedOf(p, run, trial.at[run.index]);
  p.aligned /= 2;
  return p;
}

/** Tied runs and runs that strips serve in part keep the first piece they have. */
function maySwap(run: PreparedRun): boolean {
  return !run.isWallToWall && !run.isTied && run.follower < 0 && run.strips < 0;
}

function runsOfRows(prepared: PreparedJob, run: PreparedRun, rows: readonly number[]): number[] {
  if (run.isWallToWall) return [];
  return rows
    .flatMap((row) => prepared.rowRuns[row] ?? [])
    .filter((index) => prepared.runs[index].room === run.room && !prepared.runs[index].isWallToWall);
}

function widest(prepared: PreparedJob, run: PreparedRun, row: number): number {
  const overlap = (index: number): number => {
    const other = prepared.runs[index];
    return Math.min(other.x + other.length, run.x + run.length) - Math.max(other.x, run.x);
  };
  return runsOfRows(prepared, run, [row]).reduce(
    (best, index) => (best < 0 || overlap(index) > overlap(best) ? index : best),
    -1,
  );
}

/** Books the ends of a run's stretches, and keeps the count of cuts. */
function countStretch(p: Polish, run: PreparedRun, by: number): void {
  const { prepared, at } = p.trial;
  if (run.isTied || run.isServed) return;
  const s = at[run.index];
  const L = prepared.plankLength;
  if (run.isWallToWall) {
    p.cuts += by;
    countEnd(p, s, by);
    countBegin(p, s - run.rest - prepared.kerf, by);
    return;
  }
  const e = lastPieceOf(run, s, L);
  if (s < L) {
    p.cuts += by;
    countEnd(p, s, by);
  }
  if (e < L) {
    p.cuts += by;
    countBegin(p, L - prepared.kerf - e, by);
  }
}

function countEnd(p: Polish, v: number, by: number): void {
  const before = Math.min(p.ends[v], p.begins[v]);
  p.ends[v] += by;
  p.cuts -= Math.min(p.ends[v], p.begins[v]) - before;
}

function countBegin(p: Polish, v: number, by: number): void {
  if (v < 0) return;
  const before = Math.min(p.ends[v], p.begins[v]);
  p.begins[v] += by;
  p.cuts -= Math.min(p.ends[v], p.begins[v]) - before;
}

function alignedOf(p: Polish, run: PreparedRun, at: number): number {
  const { prepared, at: all } = p.trial;
  const T = prepared.job.alignedDistance;
  let pairs = 0;
  for (const index of p.second[run.index])
    pairs += nearPairs(run, at, prepared.runs[index], all[index], T, prepared.plankLength);
  return pairs;
}

function relocate(p: Polish, run: PreparedRun, weights: Weights): void {
  const { trial } = p;
  const { prepared, depth, at } = trial;
  const L = prepared.plankLength;
  const old = at[run.index];
  trial.steps += L;
  p.aligned -= alignedWithTied(p, run);
  countStretch(p, run, -1);
  lift(trial, run);
  for (let a = 1, sum = 0; a <= L; a++) {
    sum += (p.limit - 1 - depth[a]) >>> 31;
    p.tooDeep[a] = sum;
  }
  fillPrice(p, run, weights);
  findOpenings(p.openings, run, trial);
  const found: Found = { price: NEVER, ties: 0, chosen: -1, at: old };
  const mayStay = drawBelow(trial.seeded, 100) < 70;
  if (!mayStay) p.price[old] = NEVER;
  scanOpenings(p, run, weights.cut, found);
  found.chosen = drawBelow(trial.seeded, Math.max(1, found.ties));
  found.ties = 0;
  scanOpenings(p, run, weights.cut, found);
  lay(trial, run, found.at);
  countStretch(p, run, 1);
  p.aligned += alignedWithTied(p, run);
}

interface Found {
  price: number;
  ties: number;
  chosen: number;
  at: number;
}

const NEVER = 2 ** 30;

function scanOpenings(p: Polish, run: PreparedRun, cut: number, found: Found): void {
  const { openings } = p;
  const { plankLength: L, kerf } = p.trial.prepared;
  const shift = -run.rest - kerf;
  for (let i = 0; i < openings.count; i++) {
    const from = openings.from[i];
    const to = openings.to[i];
    if (from < run.rest) scan(p, from, to, L + shift, p.tooDeep[L], cut, found);
    else scan(p, from, to, shift, 0, cut, found);
  }
}

/** Prices of first pieces from..to whose last pieces begin `shift` further on, where neither goes too deep. */
function scan(p: Polish, from: number, to: number, shift: number, tooDeep: number, cut: number, found: Found): void {
  const { price, begins, ends } = p;
  const deep = p.tooDeep;
  for (let s = from; s <= to; s++) {
    const begin = s + shift;
    if (deep[s] + tooDeep !== (begin > 0 ? deep[begin] : 0)) continue;
    let own = price[s];
    if (begins[s] > ends[s]) own -= cut;
    if (begin > 0 && ends[begin] > begins[begin]) own -= cut;
    if (own > found.price) continue;
    if (own < found.price) {
      found.price = own;
      found.ties = 0;
    }
    if (found.ties === found.chosen) found.at = s;
    found.ties++;
  }
}

function alignedWithTied(p: Polish, run: PreparedRun): number {
  const { prepared, at } = p.trial;
  const tied = run.follower >= 0 ? prepared.runs[run.follower] : null;
  return alignedOf(p, run, at[run.index]) + (tied ? alignedOf(p, tied, at[tied.index]) : 0);
}

/** Price of each first piece for aligned joints and stair-steps. */
function fillPrice(p: Polish, run: PreparedRun, weights: Weights): void {
  const { prepared } = p.trial;
  const L = prepared.plankLength;
  p.price.fill(0);
  addAlignedPrice(p, run, weights.aligned);
  if (run.follower >= 0) addAlignedPrice(p, prepared.runs[run.follower], weights.aligned);
  addStairPrice(p, run, weights.stair);
  for (let s = 1; s <= L; s++) p.price[s] += p.price[s - 1];
  // An end piece that is a whole plank takes no cut.
  p.price[L] -= weights.cut;
  if (!run.isWallToWall) p.price[run.rest] -= weights.cut;
}

function addAlignedPrice(p: Polish, run: PreparedRun, weight: number): void {
  const { prepared, at } = p.trial;
  const L = prepared.plankLength;
  const reach = prepared.job.alignedDistance - 1;
  const left = run.x + 1;
  const right = run.x + run.length - 1;
  for (const index of p.second[run.index]) {
    const other = prepared.runs[index];
    for (let joint = other.x + at[index]; joint < other.x + other.length; joint += L) {
      addRange(p.price, Math.max(left, joint - reach) - run.x, Math.min(right, joint + reach) - run.x, weight, L);
    }
  }
}

function addRange(price: Int32Array, from: number, to: number, weight: number, L: number): void {
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

function addStairPrice(p: Polish, run: PreparedRun, weight: number): void {
  const { prepared, at } = p.trial;
  const L = prepared.plankLength;
  const T = prepared.job.alignedDistance;
  const { runs } = prepared;
  const phase = (index: number): number => runs[index].x + at[index];
  const b = p.before[run.index];
  const a = p.after[run.index];
  const bb = b >= 0 ? p.before[b] : -1;
  const aa = a >= 0 ? p.after[a] : -1;
  const mark = (centre: number): void => addRange(p.price, centre - run.x - T + 1, centre - run.x + T - 1, weight, L);
  if (bb >= 0) mark(2 * phase(b) - phase(bb));
  if (aa >= 0) mark(2 * phase(a) - phase(aa));
  if (b >= 0 && a >= 0) {
    const middle = Math.floor((phase(a) + phase(b)) / 2);
    mark(middle);
    mark(middle + Math.floor(L / 2));
  }
}

/** Swaps first pieces with the run of the same length where that helps most. */
function swapBest(p: Polish, run: PreparedRun, weights: Weights): void {
  const { trial } = p;
  const { at } = trial;
  let best = -1;
  let least = 0;
  let ties = 0;
  const alike = p.classes[run.index];
  const first = drawBelow(trial.seeded, Math.max(1, alike.length));
  for (let i = 0; i < Math.min(alike.length, MOST_PARTNERS); i++) {
    const index = alike[(first + i) % alike.length];
    if (index === run.index || at[index] === at[run.index]) continue;
    const gain = swapGain(p, run, trial.prepared.runs[index], weights);
    if (gain > least) continue;
    ties = gain < least ? 1 : ties + 1;
    if (gain < least || drawBelow(trial.seeded, ties) === 0) best = index;
    least = gain;
  }
  if (best < 0) return;
  const other = trial.prepared.runs[best];
  const before = pairAligned(p, run, other);
  const [a, b] = [at[run.index], at[best]];
  at[run.index] = b;
  at[best] = a;
  p.aligned += pairAligned(p, run, other) - before;
}

function pairAligned(p: Polish, a: PreparedRun, b: PreparedRun): number {
  const { at, prepared } = p.trial;
  const both = p.second[a.index].includes(b.index)
    ? nearPairs(a, at[a.index], b, at[b.index], prepared.job.alignedDistance, prepared.plankLength)
    : 0;
  return alignedOf(p, a, at[a.index]) + alignedOf(p, b, at[b.index]) - both;
}

function swapGain(p: Polish, a: PreparedRun, b: PreparedRun, weights: Weights): number {
  const { at } = p.trial;
  const [atA, atB] = [at[a.index], at[b.index]];
  const before = pairAligned(p, a, b) * weights.aligned + (stairsAt(p, a) + stairsAt(p, b)) * weights.stair;
  at[a.index] = atB;
  at[b.index] = atA;
  const isLegal = keepsStagger(p, a) && keepsStagger(p, b);
  const after = isLegal
    ? pairAligned(p, a, b) * weights.aligned + (stairsAt(p, a) + stairsAt(p, b)) * weights.stair
    : 0;
  at[a.index] = atA;
  at[b.index] = atB;
  return isLegal ? after - before : Number.POSITIVE_INFINITY;
}

function keepsStagger(p: Polish, run: PreparedRun): boolean {
  const { prepared, at, stagger } = p.trial;
  return prepared.neighbours[run.index].every(
    (index) =>
      nearPairs(run, at[run.index], prepared.runs[index], at[index], stagger[run.index], prepared.plankLength) === 0,
  );
}

/** Stair-steps that the run takes part in. */
function stairsAt(p: Polish, run: PreparedRun): number {
  const b = p.before[run.index];
  const a = p.after[run.index];
  return (
    isStair(p, b >= 0 ? p.before[b] : -1, b, run.index) +
    isStair(p, b, run.index, a) +
    isStair(p, run.index, a, a >= 0 ? p.after[a] : -1)
  );
}

function isStair(p: Polish, i: number, j: number, k: number): number {
  if (i < 0 || j < 0 || k < 0) return 0;
  const { prepared, at } = p.trial;
  const { runs, plankLength: L } = prepared;
  const phase = (index: number): number => runs[index].x + at[index];
  const d = (((phase(k) - 2 * phase(j) + phase(i)) % L) + L) % L;
  return Math.min(d, L - d) < prepared.job.alignedDistance ? 1 : 0;
}

/** Remembers the choice if no remembered one has as few aligned joints and as few cuts. */
function keepStanding(p: Polish): void {
  const { aligned, cuts } = p;
  if (aligned === p.keptAligned && cuts === p.keptCuts) return;
  p.keptAligned = aligned;
  p.keptCuts = cuts;
  if (p.front.some((one) => one.aligned <= aligned && one.cuts <= cuts)) return;
  const kept = p.front.filter((one) => one.aligned < aligned || one.cuts < cuts);
  p.front.length = 0;
  p.front.push(...kept, { aligned, cuts, at: p.trial.at.slice() });
}

function chooseStanding(p: Polish): Int32Array {
  const fewest = p.front.reduce((least, one) => Math.min(least, one.cuts), Number.POSITIVE_INFINITY);
  const most = Math.floor(fewest * (1 + SPARE_CUTS));
  return p.front.filter((one) => one.cuts <= most).reduce((a, b) => (b.aligned < a.aligned ? b : a)).at;
}
