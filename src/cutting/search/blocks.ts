/**
 * Block moves: re-choose runs of consecutive rows together, so that a floor whose joints lock each other can move.
 *
 * The runs are lifted together and chosen by dynamic programming along the path: every first piece of a run costs what
 * it costs alone and, where its joints shut out the cheapest of the run before, what the next best costs more. Prices of
 * places are added up; since two arcs of a block may meet at one place, a block that turns out dearer is put back.
 */
import { lastOf, madeOf } from '../../geometry/lists';
import { type Arc, arcOf, priceOfArc } from '../runs/arcs';
import type { PreparedRun } from '../runs/prepared';
import {
  addWindows,
  findOpenings,
  type KeptAway,
  noOpenings,
  noStretches,
  type Openings,
  openBetween,
  type Stretches,
} from '../runs/stagger';
import { cheapestOf, type StaggerTable, staggerTableOf, tellParent } from '../runs/staggerCost';
import { drawBelow } from './seeded';
import type { Trial } from './trial';

/** Memory for the arithmetic of one block, made once. */
export interface BlockMemory {
  /** For each run of the block, by its first piece, what it costs to have it and all before it; Infinity for never. */
  readonly costs: readonly Float64Array[];
  /** For the stagger of the last block. */
  stagger: StaggerTable;
  readonly openings: Openings;
  readonly windows: Stretches;
  readonly open: Stretches;
}

/** A memory in which nothing was tried; `plankLength` in units of the job. */
export function emptyBlockMemory(plankLength: number, size: number): BlockMemory {
  return {
    costs: madeOf(size, () => new Float64Array(plankLength + 1)),
    stagger: staggerTableOf(plankLength, 0),
    openings: noOpenings(),
    windows: noStretches(),
    open: noStretches(),
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
    const run = lastOf(path);
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
export function chooseBlock(
  trial: Trial,
  path: readonly PreparedRun[],
  sums: Int32Array,
  memory: BlockMemory,
): boolean {
  const { prepared, at } = trial;
  const L = prepared.plankLength;
  const before = path.map((run) => at[run.index]);
  for (const run of path) at[run.index] = 0;
  path.forEach((run, i) => {
    trial.steps += L * (i === 0 ? 1 : 3);
    findOpenings(memory.openings, run, trial);
    fillCosts(memory.costs[i], memory.openings, sums, arcOf(prepared, run));
    if (i > 0) addCostsBefore(trial, path, memory, i);
  });
  const last = path.length - 1;
  let chosen = drawCheapest(trial, memory.costs[last], { from: [1], to: [L], count: 1 });
  if (chosen === 0) {
    path.forEach((run, i) => {
      at[run.index] = before[i];
    });
    return false;
  }
  for (let i = last; i >= 0; i--) {
    at[path[i].index] = chosen;
    if (i > 0)
      chosen = drawCheapest(
        trial,
        memory.costs[i - 1],
        openTo(trial, path[i - 1], { other: path[i], at: chosen }, memory),
      );
  }
  return true;
}

function fillCosts(costs: Float64Array, openings: Stretches, sums: Int32Array, arc: Arc): void {
  costs.fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < openings.count; i++) {
    for (let s = openings.from[i]; s <= openings.to[i]; s++) costs[s] = priceOfArc(sums, arc, s);
  }
}

/** Adds to the costs of run `i` of a path what the run before costs above its least where it has to keep its stagger. */
function addCostsBefore(trial: Trial, path: readonly PreparedRun[], memory: BlockMemory, i: number): void {
  const [before, run] = [path[i - 1], path[i]];
  const L = trial.prepared.plankLength;
  const stagger = trial.stagger[run.index];
  const own = memory.costs[i];
  const totals = memory.costs[i - 1];
  const cheapest = cheapestOf(totals);
  if (cheapest === 0) own.fill(Number.POSITIVE_INFINITY);
  else if (2 * stagger <= L) {
    if (memory.stagger.stagger !== stagger) memory.stagger = staggerTableOf(L, stagger);
    tellParent(memory.stagger, { run: before, totals, cheapest }, run, own);
  } else {
    // Only runs of little more than a plank can keep more than half of one.
    for (let s = 1; s <= L; s++) {
      const open = openTo(trial, before, { other: run, at: s }, memory);
      own[s] += leastWithin(totals, open) - totals[cheapest];
    }
  }
}

function leastWithin(costs: Float64Array, { from, to, count }: Stretches): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) for (let s = from[i]; s <= to[i]; s++) least = Math.min(least, costs[s]);
  return least;
}

/** First pieces of `run` whose joints keep the stagger from those of `other`. */
function openTo(
  trial: Trial,
  run: PreparedRun,
  beside: Pick<KeptAway, 'other' | 'at'>,
  memory: BlockMemory,
): Stretches {
  const L = trial.prepared.plankLength;
  memory.windows.count = 0;
  memory.open.count = 0;
  addWindows(memory.windows, run, { ...beside, reach: trial.stagger[run.index] - 1, L });
  openBetween(memory.open, memory.windows, 1, L);
  return memory.open;
}

/** Any of the first pieces within the stretches that cost least; 0 where none may be had. */
function drawCheapest(trial: Trial, costs: Float64Array, within: Stretches): number {
  let least = Number.POSITIVE_INFINITY;
  let count = 0;
  let drawn = 0;
  for (let i = 0; i < within.count; i++) {
    for (let s = within.from[i]; s <= within.to[i]; s++) {
      const cost = costs[s];
      if (cost > least || cost === Number.POSITIVE_INFINITY) continue;
      count = cost < least ? 1 : count + 1;
      if (cost < least || drawBelow(trial.seeded, count) === 0) drawn = s;
      least = cost;
    }
  }
  return drawn;
}
