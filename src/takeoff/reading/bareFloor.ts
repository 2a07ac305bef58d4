/** Rectangles typed without units: whether feet can be meant. */
import { TICKS_PER_FOOT, type Units } from '../../geometry/length';
import type { Typed } from '../entry';
import { bareNumberOf } from '../text/numberText';
import { LARGEST_BARE_FLOOR } from './limits';
import { problems } from './problems';

/**
 * A sentence when both sides are bare numbers of feet and make a floor that no house has: inches are likely. Null when
 * all is well; a side with a unit of its own is what it says.
 */
export function bareFloorProblem(where: string, length: Typed, width: Typed, units: Units): string | null {
  const [long, wide] = [bareNumberOf(length), bareNumberOf(width)];
  if (units !== 'us' || long === null || wide === null) return null;
  const isFloor = long * wide * TICKS_PER_FOOT ** 2 <= LARGEST_BARE_FLOOR;
  return isFloor ? null : problems.feetOrInches(where, long, wide);
}
