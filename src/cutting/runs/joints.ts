/** Pairs of joints of two runs that lie near each other, counted without listing the joints. */
import type { PreparedJob, PreparedRun } from './prepared';

/** Runs with the first piece of each, by its index. */
export interface LaidRuns {
  readonly prepared: PreparedJob;
  readonly at: Int32Array;
}

/**
 * How many pairs of a joint of `a` and one of `b` lie nearer than `distance` (at most half a plank counts each once).
 * The joints of a run are the places x + s + iL strictly inside it, so all pairs share two differences.
 */
export function nearPairs({ prepared, at }: LaidRuns, a: PreparedRun, b: PreparedRun, distance: number): number {
  const L = prepared.plankLength;
  const joint = a.x + at[a.index];
  const difference = (b.x + at[b.index] - joint) % L;
  let pairs = 0;
  for (let d = difference - L * Math.ceil((difference + distance) / L); d < distance; d += L) {
    if (d <= -distance) continue;
    // Joints p of `a` with p + d inside `b`, counted from the first joint of `a`.
    const from = Math.max(a.x + 1, b.x + 1 - d) - joint;
    const to = Math.min(a.x + a.length - 1, b.x + b.length - 1 - d) - joint;
    pairs += Math.max(0, Math.floor(to / L) - Math.ceil(from / L) + 1);
  }
  return pairs;
}

/** The least distance between joints of two rows; infinite where a row has none. */
export function leastDistance(some: readonly number[], others: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of some) for (const b of others) least = Math.min(least, Math.abs(a - b));
  return least;
}
