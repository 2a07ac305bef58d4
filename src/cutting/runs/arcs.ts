/**
 * The load picture: how many planks a choice of first pieces needs.
 *
 * Lay a plank along the places 1..L. A first piece s covers 1..s. A last piece e covers c+1..L with c = L - kerf - e,
 * the places where a first piece on the same plank must not reach. A piece that touches walls at both ends covers
 * kerf + length places anywhere between. Pieces share a plank when they cover no place twice, so the planks needed are
 * the deepest cover: intervals are a perfect graph (for two pieces a plank this is Koenig's theorem on the threshold
 * graph of last and first pieces; T. Gallai's for intervals in general).
 *
 * First and last piece of one run together cover an arc of rest + kerf places that ends at s on the circle of L
 * places, on top of the run's whole planks. Cutting well is levelling arcs.
 *
 * A run that is one piece has a place instead of a first piece: its stretch ends there (rest..L; clipped at 1).
 */
import type { PreparedJob, PreparedRun } from './prepared';

/** Adds (`by` = 1) or takes away (-1) the arc of `run` that ends at `at`. Costs the length of the arc. */
export function addArc(depth: Int32Array, run: PreparedRun, at: number, prepared: PreparedJob, by: number): void {
  const L = prepared.plankLength;
  const start = at - run.rest - prepared.kerf;
  if (at >= run.rest) {
    addStretch(depth, start, at, by);
    return;
  }
  addStretch(depth, 0, at, by);
  addStretch(depth, start + L, L, by);
}

/** Adds `by` to the places after `from` up to `to`. */
export function addStretch(depth: Int32Array, from: number, to: number, by: number): void {
  for (let a = Math.max(0, from) + 1; a <= to; a++) depth[a] += by;
}

/**
 * The price of laying an arc, from prices of single places.
 *
 * @param sums prices of the places 1..a together, at every a
 * @param reach rest + kerf of the run
 */
export function priceOfArc(sums: Int32Array, at: number, rest: number, reach: number, L: number): number {
  if (at >= rest) return sums[at] - sums[Math.max(0, at - reach)];
  return sums[at] + sums[L] - sums[Math.max(0, at + L - reach)];
}
