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

/** The arc of a run, wherever it lies. */
export interface Arc {
  readonly rest: number;
  /** rest + kerf: the places it covers. */
  readonly reach: number;
  /** Places of the circle. */
  readonly L: number;
}

export function arcOf({ plankLength, kerf }: PreparedJob, { rest }: PreparedRun): Arc {
  return { rest, reach: rest + kerf, L: plankLength };
}

/** Adds (`by` = 1) or takes away (-1) an arc that ends at `at`. Costs the length of the arc. */
export function addArc(depth: Int32Array, { rest, reach, L }: Arc, at: number, by: number): void {
  if (at >= rest) {
    addStretch(depth, at - reach, at, by);
    return;
  }
  addStretch(depth, 0, at, by);
  addStretch(depth, at + L - reach, L, by);
}

/** Adds `by` to the places after `from` up to `to`. */
export function addStretch(depth: Int32Array, from: number, to: number, by: number): void {
  for (let a = Math.max(0, from) + 1; a <= to; a++) depth[a] += by;
}

/**
 * The price of laying an arc that ends at `at`, from prices of single places.
 *
 * @param sums prices of the places 1..a together, at every a
 */
export function priceOfArc(sums: Int32Array, { rest, reach, L }: Arc, at: number): number {
  if (at >= rest) return sums[at] - sums[Math.max(0, at - reach)];
  return sums[at] + sums[L] - sums[Math.max(0, at + L - reach)];
}
