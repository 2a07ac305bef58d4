/** The best ways to lay a run on any standing, the best first, and one of those that leave the same. */
export interface BestWays {
  readonly width: number;
  count: number;
  /** The less the better. */
  readonly ranks: Float64Array;
  /** The same for ways that leave the same. */
  readonly keys: Int32Array;
  /** Standing each goes on from, and how. */
  readonly from: Int32Array;
  readonly firsts: Int32Array;
  readonly firstOf: Int32Array;
  readonly lastOf: Int32Array;
  readonly waste: Float64Array;
  readonly price: Float64Array;
}

export function bestWaysFor(width: number): BestWays {
  const whole = (): Int32Array => new Int32Array(width + 1);
  const real = (): Float64Array => new Float64Array(width + 1);
  return {
    width,
    count: 0,
    ranks: real(),
    keys: whole(),
    from: whole(),
    firsts: whole(),
    firstOf: whole(),
    lastOf: whole(),
    waste: real(),
    price: real(),
  };
}

/** Whether a way of such a rank is among the best so far. */
export function isAmongBest({ ranks, count, width }: BestWays, rank: number): boolean {
  return count < width || rank < ranks[width - 1];
}

/** Makes a place for a way among the best so far; -1 where one that leaves the same is as good. */
export function placeFor(best: BestWays, rank: number, key: number): number {
  const { ranks, keys, width } = best;
  let like = 0;
  while (like < best.count && keys[like] !== key) like++;
  if (like < best.count && ranks[like] <= rank) return -1;
  let at = like;
  if (like === best.count) {
    best.count = Math.min(best.count + 1, width);
    at = best.count - 1;
  }
  for (; at > 0 && ranks[at - 1] > rank; at--) moveUp(best, at);
  ranks[at] = rank;
  keys[at] = key;
  return at;
}

function moveUp(best: BestWays, at: number): void {
  best.ranks[at] = best.ranks[at - 1];
  best.keys[at] = best.keys[at - 1];
  best.from[at] = best.from[at - 1];
  best.firsts[at] = best.firsts[at - 1];
  best.firstOf[at] = best.firstOf[at - 1];
  best.lastOf[at] = best.lastOf[at - 1];
  best.waste[at] = best.waste[at - 1];
  best.price[at] = best.price[at - 1];
}
