/** The middle value, or the mean of the two middle ones; of nothing, none (NaN, written as a dash). */
export function medianOf(values: readonly number[]): number {
  const sorted = values.slice().sort((a, b) => a - b);
  const upper = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[upper] : (sorted[upper - 1] + sorted[upper]) / 2;
}

/** Sum of values. */
export function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
