/** Chance that is the same everywhere: the search never asks a clock or the engine's own generator. */
export interface Seeded {
  state: number;
}

export function seededFrom(seed: number): Seeded {
  return { state: seed | 0 || 1 };
}

/** A whole number from 0 to `below` - 1. Xorshift with shifts 13, 17, 5: G. Marsaglia, J. of Statistical Software 8 (2003). */
export function drawBelow(seeded: Seeded, below: number): number {
  let x = seeded.state;
  x ^= x << 13;
  x ^= x >>> 17;
  x ^= x << 5;
  seeded.state = x;
  return (x >>> 0) % below;
}
