/** Random whole numbers that are the same in every run. */
export interface SeededRandom {
  /** A whole number from `low` to `high`, both included. */
  readonly whole: (low: number, high: number) => number;
}

/** Park and Miller's minimal standard generator (Communications of the ACM 31, 1988); `seed` is 1 or more. */
export function seededRandom(seed: number): SeededRandom {
  let state = (seed * 48_271) % 2_147_483_647;
  return {
    whole: (low, high) => {
      state = (state * 16_807) % 2_147_483_647;
      return low + (state % (high - low + 1));
    },
  };
}
