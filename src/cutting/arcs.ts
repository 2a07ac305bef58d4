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

/** Cover of every place 1..L; place 0 and L + 1 are not used. Whole planks of the quotients are counted apart. */
export interface Loads {
  readonly depth: Int32Array;
  readonly plankLength: number;
}

export function emptyLoads(prepared: PreparedJob): Loads {
  return { depth: new Int32Array(prepared.plankLength + 2), plankLength: prepared.plankLength };
}

/** Adds (`by` = 1) or takes away (-1) the arc of `run` that ends at `at`. Costs the length of the arc. */
export function addArc(loads: Loads, run: PreparedRun, at: number, kerf: number, by: number): void {
  const start = at - run.rest - kerf;
  if (at >= run.rest) {
    addStretch(loads, start, at, by);
    return;
  }
  addStretch(loads, 0, at, by);
  addStretch(loads, start + loads.plankLength, loads.plankLength, by);
}

/** Adds `by` to the places after `from` up to `to`. */
export function addStretch(loads: Loads, from: number, to: number, by: number): void {
  const { depth } = loads;
  for (let a = Math.max(0, from) + 1; a <= to; a++) depth[a] += by;
}

/** The deepest cover: planks beyond the whole planks of the quotients. */
export function deepestOf(loads: Loads): number {
  const { depth, plankLength } = loads;
  let deepest = 0;
  for (let a = 1; a <= plankLength; a++) if (depth[a] > deepest) deepest = depth[a];
  return deepest;
}
