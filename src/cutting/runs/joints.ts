/** Pairs of joints of two runs that lie near each other, counted without listing the joints. */
import type { PreparedRun } from './prepared';

/**
 * How many pairs of a joint of `a` and one of `b` lie nearer than `distance` (at most half a plank counts each once).
 * The joints of a run are the places x + s + iL strictly inside it, so all pairs share two differences.
 *
 * @param atA first piece of `a`, `atB` of `b`
 */
export function nearPairs(
  a: PreparedRun,
  atA: number,
  b: PreparedRun,
  atB: number,
  distance: number,
  L: number,
): number {
  const difference = (b.x + atB - a.x - atA) % L;
  let pairs = 0;
  for (let d = difference - L * Math.ceil((difference + distance) / L); d < distance; d += L) {
    if (d > -distance) pairs += pairsApart(a, atA, b, d, L);
  }
  return pairs;
}

/** Joints p of `a` with p + d inside `b`. */
function pairsApart(a: PreparedRun, atA: number, b: PreparedRun, d: number, L: number): number {
  const from = Math.max(a.x + 1, b.x + 1 - d) - a.x - atA;
  const to = Math.min(a.x + a.length - 1, b.x + b.length - 1 - d) - a.x - atA;
  return Math.max(0, Math.floor(to / L) - Math.ceil(from / L) + 1);
}
