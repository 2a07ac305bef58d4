/** What it costs a run to keep its joints away from those of the row beside it. */
import type { BoundRun, BoundRuns } from './boundRuns';

/** One job, and memory to slide minima in. */
export interface StaggerTable {
  readonly job: BoundRuns;
  readonly blockForward: Float64Array;
  readonly blockBackward: Float64Array;
  readonly aboveReach: Float64Array;
  readonly belowReach: Float64Array;
}

export function staggerTableOf(job: BoundRuns): StaggerTable {
  const costs = (): Float64Array => new Float64Array(job.plankLength + 1);
  return { job, blockForward: costs(), blockBackward: costs(), aboveReach: costs(), belowReach: costs() };
}

/** What a run and the children it keeps stagger from cost at the least. */
export interface RunCosts {
  readonly run: BoundRun;
  /** By the first piece of the run; Infinity where not allowed. */
  readonly totals: Float64Array;
  /** The first piece that costs least; 0 where none is allowed. */
  readonly cheapest: number;
}

/**
 * Adds to a parent's totals what a run costs above its least where the parent's joints shut out its cheapest first
 * piece: for the 2 x stagger - 1 first pieces of the parent whose joints come too near.
 *
 * Least cost outside a window that slides round a circle: prefix and suffix minima of blocks of one window's length
 * (van Herk, 1992; Gil and Werman, 1993), O(plank length) a run whatever the stagger.
 */
export function tellParent(
  table: StaggerTable,
  { run, totals, cheapest }: RunCosts,
  parent: BoundRun,
  above: Float64Array,
): void {
  const { job, blockForward, blockBackward, aboveReach, belowReach } = table;
  const { plankLength } = job;
  const stagger = staggerOf(job);
  const least = totals[cheapest] as number;
  const reach = plankLength - 2 * stagger + 1;
  const isShutAllRound = reachMinima(table, { run, parent, totals });
  slideMinima(table, { totals, cheapest, reach, stagger });
  let first = wrap(run.x + cheapest - parent.x + stagger, plankLength);
  for (let offset = 1 - stagger; offset < stagger; offset += 1) {
    first = first === 1 ? plankLength : first - 1;
    const start = stagger - offset;
    let cost = Math.min(blockBackward[start] as number, blockForward[start + reach - 1] as number);
    if (!isShutAllRound) {
      const [from, to] = shutOffsets(job, { run, parent, first });
      if (offset < from || offset > to) continue;
      if (to < stagger - 1) cost = Math.min(cost, aboveReach[stagger - 1 - to] as number);
      if (from > 1 - stagger) cost = Math.min(cost, belowReach[from + stagger - 1] as number);
    }
    above[first] = (above[first] as number) + cost - least;
  }
}

/** More than half a plank cannot be kept on both sides of a joint; asking for less only lowers the bound. */
function staggerOf({ minStagger, plankLength }: BoundRuns): number {
  return Math.min(minStagger, Math.floor(plankLength / 2));
}

/** The first piece, 1 to `plankLength`, whose joints lie at `at` from the run's start or whole planks beside it. */
export function wrap(at: number, plankLength: number): number {
  const first = at % plankLength;
  return first > 0 ? first : first + plankLength;
}

/**
 * The offsets from the parent's joints, none further than the stagger, at which a joint of the run would stand inside
 * the stagger. Fewer than all of them near the ends of the runs, where one has no joint beside the other's.
 */
export function shutOffsets(
  job: BoundRuns,
  { run, parent, first }: { run: BoundRun; parent: BoundRun; first: number },
): readonly [number, number] {
  const { plankLength, minPiece } = job;
  const stagger = staggerOf(job);
  const firstJoint = parent.x + first;
  const lastJoint = parent.x + parent.length - wrap(parent.length - first, plankLength);
  const from = run.x + minPiece - lastJoint;
  const to = run.x + run.length - minPiece - firstJoint;
  return [Math.max(1 - stagger, from), Math.min(stagger - 1, to)];
}

/**
 * Block minima of `totals` read round the circle from the place after `cheapest`, blocks of `reach` places: backward where a
 * window can start, forward where one can end.
 */
function slideMinima(
  { blockForward, blockBackward }: StaggerTable,
  { totals, cheapest, reach, stagger }: { totals: Float64Array; cheapest: number; reach: number; stagger: number },
): void {
  const plankLength = totals.length - 1;
  for (let start = 1; start < plankLength; start += reach) {
    const end = Math.min(start + reach, plankLength);
    if (start < 2 * stagger) {
      let least = Number.POSITIVE_INFINITY;
      for (let place = end - 1, at = wrap(cheapest + end - 1, plankLength); place >= start; place -= 1) {
        const cost = totals[at] as number;
        if (cost < least) least = cost;
        blockBackward[place] = least;
        at = at === 1 ? plankLength : at - 1;
      }
    }
    if (start === 1) {
      blockForward[end - 1] = blockBackward[1] as number;
      continue;
    }
    let least = Number.POSITIVE_INFINITY;
    for (let place = start, at = wrap(cheapest + start, plankLength); place < end; place += 1) {
      const cost = totals[at] as number;
      if (cost < least) least = cost;
      blockForward[place] = least;
      at = at === plankLength ? 1 : at + 1;
    }
  }
}

/**
 * Running minima of the run's costs outwards from its last and from its first possible joint, as far as a joint of the
 * parent's can come to them; answers whether none can.
 */
function reachMinima(
  { job, aboveReach, belowReach }: StaggerTable,
  { run, parent, totals }: { run: BoundRun; parent: BoundRun; totals: Float64Array },
): boolean {
  const { plankLength, minPiece } = job;
  const stagger = staggerOf(job);
  const fillOutwards = (minima: Float64Array, from: number, step: number): void => {
    let least = Number.POSITIVE_INFINITY;
    for (let count = 1; count <= 2 * stagger - 2; count += 1) {
      least = Math.min(least, totals[wrap(from + step * count, plankLength)] as number);
      minima[count] = least;
    }
  };
  const isOverEnd = parent.x + plankLength + stagger > run.x + run.length - minPiece + 1;
  const isOverStart = parent.x + parent.length - plankLength - stagger < run.x + minPiece - 1;
  if (isOverEnd) fillOutwards(aboveReach, run.length - minPiece, 1);
  if (isOverStart) fillOutwards(belowReach, minPiece, -1);
  return !isOverEnd && !isOverStart;
}
