/**
 * Every plan of so many planks, one run after another: for tight floors, where few first pieces go together and moving
 * one run at a time leads nowhere.
 *
 * Depth first, the cheapest first piece first. The best prices of the bound say what each first piece costs above the
 * least, all runs after it included; what a plan of so many planks may cost more than the least of all is mostly little
 * (reduced-cost fixing: G. Dantzig, R. Fulkerson and S. Johnson, 1954). A first piece goes when its runs would cost
 * more than that, when its arc covers a place that is full, or when a neighbour's joints are too near. What was found
 * to lead nowhere is not followed up again in another order of the same arcs.
 */
import { sumOf } from '../../geometry/lists';
import type { Guide } from '../bound/bound';
import { countFull } from '../runs/arcs';
import { costsByPair, isLaidItself, type PreparedJob, type PreparedRun, paysForItself } from '../runs/prepared';
import { findOpenings, noOpenings, type Openings } from '../runs/stagger';
import { clear, lay, lift, plankCountOf, setFirst, type Trial } from '../search/trial';

export interface ExactGoal {
  readonly planks: number;
  /** Places it may visit. */
  readonly stepLimit: number;
}

/** Places visited before it is asked whether all plans can be tried within the limit. */
const STEPS_TO_TASTE = 100_000;

/** What has led nowhere is remembered up to so many times. */
const MOST_REMEMBERED = 50_000;

/** `none`: there is no such plan, if no strips serve any run (which strip serves which piece is not tried in every way). */
export type ExactAnswer = 'found' | 'none' | 'step limit';

/** A run with what its first pieces cost it and those chosen after it; no prices for what the bound leaves out. */
interface Step {
  readonly run: PreparedRun;
  readonly totals?: Float64Array;
  /** Laid runs whose first pieces still matter to runs after this one, by their index. */
  readonly open: readonly number[];
  /** The step before is a piece from wall to wall of the same length: the two are laid in the order of their places. */
  readonly isLikeLast: boolean;
}

interface ExactSearch {
  readonly trial: Trial;
  readonly steps: readonly Step[];
  readonly planks: number;
  /** The deepest that any place may be covered. */
  readonly limit: number;
  readonly stepLimit: number;
  /** Steps of the trial when it began. */
  readonly begunAt: number;
  readonly openings: Openings;
  /** Places of 1..a that cannot be covered once more, at every a. */
  readonly full: Int32Array;
  /** What has led nowhere: the arcs that lie, and the first pieces that still matter. */
  readonly failed: Set<string>;
  /** Part of all plans that are known to lead nowhere: each first piece of a run counts as much as every other. */
  triedShare: number;
  isCutShort: boolean;
}

/** Tries every plan; on `found` the trial is laid so, else it is empty. */
export function tryEveryPlan(trial: Trial, guide: Guide, { planks, stepLimit }: ExactGoal): ExactAnswer {
  const { prepared } = trial;
  const wholes = sumOf(prepared.runs, (run) => (paysForItself(run) ? run.quotient : 0));
  clear(trial);
  trial.stagger.fill(prepared.job.minStagger);
  const search: ExactSearch = {
    trial,
    steps: stepsOf(prepared, guide),
    planks,
    limit: planks - wholes,
    stepLimit,
    begunAt: trial.steps,
    openings: noOpenings(),
    full: new Int32Array(prepared.plankLength + 2),
    failed: new Set(),
    triedShare: 0,
    isCutShort: false,
  };
  if (search.limit >= 0 && layFrom(search, 0, guide.spareOf(planks), 1)) return 'found';
  clear(trial);
  return search.isCutShort ? 'step limit' : 'none';
}

/** Runs in the order of the prices, then long runs without, then pieces from wall to wall, longest first. */
function stepsOf(prepared: PreparedJob, { runs, pricing }: Guide): Step[] {
  const totals = new Map<number, Float64Array>();
  runs.runs.forEach((run, index) => {
    totals.set(prepared.rowRuns[run.rowIndex][run.runIndex], pricing.totalsOf(index));
  });
  const shorts = new Map<number, Float64Array>();
  const order = [...totals.keys()].map((index) => prepared.runs[index]);
  const rest = prepared.runs.filter((run) => !totals.has(run.index));
  const walls = rest.filter((run) => run.isWallToWall).sort((a, b) => b.length - a.length || a.index - b.index);
  const all = [...order, ...rest.filter((run) => !run.isWallToWall), ...walls].filter(isLaidItself);
  const place = new Map(all.map((run, i) => [run.index, i]));
  all.forEach(({ strips }, i) => {
    if (strips.role === 'leads') place.set(strips.follower, i);
  });
  const lastUse = prepared.runs.map((run) =>
    prepared.neighbours[run.index].reduce((last, other) => Math.max(last, place.get(other) ?? 0), 0),
  );
  return all.map((run, i) => {
    const isPriced = run.isWallToWall && !runs.rowsLeftOut.has(run.rowIndex);
    if (isPriced && !shorts.has(run.length)) shorts.set(run.length, priceOfShort(prepared, run, pricing.priceTo));
    const open = prepared.runs.filter((other) => (place.get(other.index) ?? 0) < i && lastUse[other.index] >= i);
    const before = all[i - 1];
    return {
      run,
      totals: totals.get(run.index) ?? (isPriced ? shorts.get(run.length) : undefined),
      open: open.map((other) => other.index),
      isLikeLast: before?.length === run.length && [before, run].every((one) => one.isWallToWall && !costsByPair(one)),
    };
  });
}

/** What a piece from wall to wall costs at every place. */
function priceOfShort({ plankLength, kerf }: PreparedJob, run: PreparedRun, priceTo: Float64Array): Float64Array {
  const prices = new Float64Array(plankLength + 1).fill(Number.POSITIVE_INFINITY);
  // The prices end a kerf behind the plank: play beyond that costs nothing.
  const last = priceTo.length - 1;
  for (let at = run.rest; at <= plankLength; at++)
    prices[at] = priceTo[Math.min(at + kerf, last)] - priceTo[at - run.rest];
  return prices;
}

const NOWHERE = { places: [], costs: new Float64Array(0) };

/** Lays step `i` and all after it; `spare` is what they may cost above their least, `share` their part of all plans. */
function layFrom(search: ExactSearch, i: number, spare: number, share: number): boolean {
  const { trial, steps, failed } = search;
  if (i === steps.length) return plankCountOf(trial) <= search.planks;
  const key = keyOf(search, i);
  const { places, costs } = failed.has(key) ? NOWHERE : candidatesOf(search, i, spare);
  if (places.length === 0) search.triedShare += share;
  for (const place of places) {
    search.isCutShort ||= isHopeless(search);
    if (search.isCutShort) return false;
    const { run } = steps[i];
    trial.steps += run.rest;
    lay(trial, run, place);
    const isWithin = !costsByPair(run) || plankCountOf(trial) <= search.planks;
    if (!isWithin) search.triedShare += share / places.length;
    else if (layFrom(search, i + 1, spare - costs[place], share / places.length)) return true;
    lift(trial, run);
    setFirst(trial, run, 0);
  }
  if (failed.size < MOST_REMEMBERED) failed.add(key);
  return false;
}

/** Whether the steps have run out, or will long before all plans are tried. */
function isHopeless({ trial, begunAt, stepLimit, triedShare }: ExactSearch): boolean {
  const steps = trial.steps - begunAt;
  return steps >= stepLimit || (steps >= STEPS_TO_TASTE && steps > triedShare * stepLimit);
}

function keyOf({ trial, steps }: ExactSearch, i: number): string {
  const { at } = trial;
  const { runs } = trial.prepared;
  const arcs: string[] = [];
  for (let j = 0; j < i; j++) {
    const { run } = steps[j];
    if (!costsByPair(run)) arcs.push(`${run.rest}:${at[run.index]}`);
  }
  const open = steps[i].open.map((index) => at[index]);
  const strips = runs.filter(costsByPair).map((run) => at[run.index]);
  const last = steps[i].isLikeLast ? at[steps[i - 1].run.index] : 0;
  return `${i}|${open}|${strips}|${last}|${arcs.sort()}`;
}

/** First pieces that keep the rules and fit the load, cheapest first, with what each costs above the least of them. */
function candidatesOf(search: ExactSearch, i: number, spare: number): { places: number[]; costs: Float64Array } {
  const { trial, openings } = search;
  const { run, totals } = search.steps[i];
  const { plankLength: L } = trial.prepared;
  countFull(search.full, trial.depth, search.limit, L);
  trial.steps += L;
  const open = run.isWallToWall ? endsToFollow(search, i) : placesIn(openings, run, trial);
  const costs = new Float64Array(L + 1);
  if (totals) {
    let least = Number.POSITIVE_INFINITY;
    if (run.isWallToWall) for (const cost of totals) least = Math.min(least, cost);
    else for (const place of open) least = Math.min(least, totals[place]);
    for (const place of open) costs[place] = totals[place] - least;
  }
  const places = open.filter((place) => costs[place] <= spare && (costsByPair(run) || fits(search, run, place)));
  return { places: places.sort((a, b) => costs[a] - costs[b] || a - b), costs };
}

function placesIn(openings: Openings, run: PreparedRun, trial: Trial): number[] {
  const places: number[] = [];
  findOpenings(openings, run, trial);
  for (let j = 0; j < openings.count; j++) for (let s = openings.from[j]; s <= openings.to[j]; s++) places.push(s);
  return places;
}

/**
 * Pieces from wall to wall can be pushed to the left on their planks, the longest leftmost: each begins a plank, or
 * behind an end that lies already.
 */
function endsToFollow({ trial, steps }: ExactSearch, i: number): number[] {
  const { plankLength: L, kerf } = trial.prepared;
  const { run, isLikeLast } = steps[i];
  const least = isLikeLast ? trial.at[steps[i - 1].run.index] : 0;
  const places = new Set<number>([run.rest]);
  for (let j = 0; j < i; j++) places.add(trial.at[steps[j].run.index] + kerf + run.rest);
  if (costsByPair(run)) places.add(L);
  return [...places].filter((place) => place <= L && place >= least);
}

function fits({ trial, full }: ExactSearch, run: PreparedRun, place: number): boolean {
  const { plankLength: L, kerf } = trial.prepared;
  const begin = place - run.rest - kerf;
  if (place >= run.rest) return full[place] === full[Math.max(0, begin)];
  return full[place] === 0 && full[L] === full[Math.max(0, begin + L)];
}
