/** What it costs a run to keep its joints away from those of the row beside it. */

/** A run longer than a plank, as far as its joints go. */
export interface JointedRun {
  readonly x: number;
  readonly length: number;
  /** What is left of the length after whole planks, 1 to the plank length. */
  readonly rest: number;
  /** Least length of its first and last piece, >= 1. */
  readonly minPiece: number;
}

/** How near joints may come, from 0 to half a plank, and memory to slide minima in. */
export interface StaggerTable {
  readonly plankLength: number;
  readonly stagger: number;
  readonly blockForward: Float64Array;
  readonly blockBackward: Float64Array;
  readonly aboveReach: Float64Array;
  readonly belowReach: Float64Array;
}

/** How much stagger two neighbouring rows lack, for every difference of their places; lengths in units of the job. */
export function staggerTableOf(plankLength: number, stagger: number): StaggerTable {
  const costs = (): Float64Array => new Float64Array(plankLength + 1);
  return {
    plankLength,
    stagger,
    blockForward: costs(),
    blockBackward: costs(),
    aboveReach: costs(),
    belowReach: costs(),
  };
}

/** What a run and those chosen after it cost at the least. */
export interface RunCosts<Run extends JointedRun> {
  readonly run: Run;
  /** By the first piece of the run; Infinity where not allowed. */
  readonly totals: Float64Array;
  /** The first piece that costs least; 0 where none is allowed. */
  readonly cheapest: number;
}

/** Index from 1 of the least entry; 0 when all are Infinity. */
export function cheapestOf(totals: Float64Array): number {
  let cheapest = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let first = 1; first < totals.length; first += 1) {
    if (totals[first] < least) {
      least = totals[first];
      cheapest = first;
    }
  }
  return cheapest;
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
  { run, totals, cheapest }: RunCosts<JointedRun>,
  parent: JointedRun,
  above: Float64Array,
): void {
  const { plankLength, stagger, blockForward, blockBackward, aboveReach, belowReach } = table;
  const least = totals[cheapest];
  const reach = plankLength - 2 * stagger + 1;
  const isShutAllRound = reachMinima(table, { run, parent, totals });
  slideMinima(table, totals, cheapest, reach);
  let first = wrap(run.x + cheapest - parent.x + stagger, plankLength);
  for (let offset = 1 - stagger; offset < stagger; offset += 1) {
    first = first === 1 ? plankLength : first - 1;
    const start = stagger - offset;
    let cost = Math.min(blockBackward[start], blockForward[start + reach - 1]);
    if (!isShutAllRound) {
      const [from, to] = shutOffsets(table, { run, parent, first });
      if (offset < from || offset > to) continue;
      if (to < stagger - 1) cost = Math.min(cost, aboveReach[stagger - 1 - to]);
      if (from > 1 - stagger) cost = Math.min(cost, belowReach[from + stagger - 1]);
    }
    above[first] = above[first] + cost - least;
  }
}

/**
 * The first piece, 1 to `plankLength`, whose joints lie `place` from the run's start or whole planks beside it. Units
 * of the job.
 */
export function wrap(place: number, plankLength: number): number {
  const first = place % plankLength;
  return first > 0 ? first : first + plankLength;
}

/**
 * The offsets from the parent's joints, none further than the stagger, at which a joint of the run would stand inside
 * the stagger. Fewer than all of them near the ends of the runs, where one has no joint beside the other's.
 */
export function shutOffsets(
  { plankLength, stagger }: StaggerTable,
  { run, parent, first }: { run: JointedRun; parent: JointedRun; first: number },
): readonly [number, number] {
  const firstJoint = parent.x + first;
  const lastPiece = first < parent.rest ? parent.rest - first : plankLength + parent.rest - first;
  const lastJoint = parent.x + parent.length - lastPiece;
  const from = run.x + run.minPiece - lastJoint;
  const to = run.x + run.length - run.minPiece - firstJoint;
  return [Math.max(1 - stagger, from), Math.min(stagger - 1, to)];
}

/**
 * Block minima of `totals` read round the circle from the place after `cheapest`, blocks of `reach` places: backward
 * where a window can start, forward where one can end.
 */
function slideMinima(
  { plankLength, stagger, blockForward, blockBackward }: StaggerTable,
  totals: Float64Array,
  cheapest: number,
  reach: number,
): void {
  for (let start = 1; start < plankLength; start += reach) {
    const end = Math.min(start + reach, plankLength);
    if (start < 2 * stagger) {
      let least = Number.POSITIVE_INFINITY;
      for (let place = end - 1, first = wrap(cheapest + end - 1, plankLength); place >= start; place -= 1) {
        const cost = totals[first];
        if (cost < least) least = cost;
        blockBackward[place] = least;
        first = first === 1 ? plankLength : first - 1;
      }
    }
    if (start === 1) {
      blockForward[end - 1] = blockBackward[1];
      continue;
    }
    let least = Number.POSITIVE_INFINITY;
    for (let place = start, first = wrap(cheapest + start, plankLength); place < end; place += 1) {
      const cost = totals[first];
      if (cost < least) least = cost;
      blockForward[place] = least;
      first = first === plankLength ? 1 : first + 1;
    }
  }
}

/**
 * Running minima of the run's costs outwards from its last and from its first possible joint, as far as a joint of the
 * parent's can come to them; answers whether none can.
 */
function reachMinima(
  { plankLength, stagger, aboveReach, belowReach }: StaggerTable,
  { run, parent, totals }: { run: JointedRun; parent: JointedRun; totals: Float64Array },
): boolean {
  const { minPiece } = run;
  const fillOutwards = (minima: Float64Array, from: number, step: 1 | -1): void => {
    let least = Number.POSITIVE_INFINITY;
    for (let count = 1, first = wrap(from + step, plankLength); count <= 2 * stagger - 2; count += 1) {
      const cost = totals[first];
      if (cost < least) least = cost;
      minima[count] = least;
      first = wrap(first + step, plankLength);
    }
  };
  const isOverEnd = parent.x + plankLength + stagger > run.x + run.length - minPiece + 1;
  const isOverStart = parent.x + parent.length - plankLength - stagger < run.x + minPiece - 1;
  if (isOverEnd) fillOutwards(aboveReach, run.length - minPiece, 1);
  if (isOverStart) fillOutwards(belowReach, minPiece, -1);
  return !isOverEnd && !isOverStart;
}
