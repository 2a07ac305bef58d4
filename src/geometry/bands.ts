/** Things sorted by where they lie along an axis, so that finding those over a place looks at few of them. */
import { madeOf } from './lists';

/** Fewer things than this are looked at faster than sorted. */
const FEWEST_TO_SORT = 64;
/** Bands for a thousand edges; a tall edge stands in every band it reaches over. */
const MOST_BANDS = 256;

/**
 * @param spanOf from where to where a thing reaches, both ends included
 * @returns for a place, all things that reach over it, in their order, and perhaps some that do not
 */
export function bandsOf<T>(
  things: readonly T[],
  spanOf: (thing: T) => readonly [low: number, high: number],
): (place: number) => readonly T[] {
  if (things.length < FEWEST_TO_SORT) return () => things;
  const spans = things.map(spanOf);
  const low = spans.reduce((least, span) => Math.min(least, span[0]), Number.POSITIVE_INFINITY);
  const high = spans.reduce((most, span) => Math.max(most, span[1]), Number.NEGATIVE_INFINITY);
  const count = Math.min(things.length, MOST_BANDS);
  const height = Math.max(1, (high - low) / count);
  // Never falls as the place rises: what reaches over a place therefore stands in the band of that place.
  const bandAt = (place: number) => Math.min(count - 1, Math.max(0, Math.floor((place - low) / height)));
  const bands: T[][] = madeOf(count, () => []);
  things.forEach((thing, i) => {
    const last = bandAt(spans[i][1]);
    for (let band = bandAt(spans[i][0]); band <= last; band++) bands[band].push(thing);
  });
  return (place) => bands[bandAt(place)];
}
