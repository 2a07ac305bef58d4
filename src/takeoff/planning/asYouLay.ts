/** What a person finds and wants while a floor is laid, besides what becomes of each piece. */

import type { Ticks } from '../../geometry/length';
import { madeOf } from '../../geometry/lists';
import type { MeasuredWall } from '../../layout/wallRips';

export interface AsYouLay {
  /** The last row of what is laid first, the furniture over on the other side; null where all is laid in one go. */
  readonly partEnd: number | null;
  /** Null: as many as were planned. */
  readonly boxesBought: number | null;
  /** Planks that were spoilt and are out of the list. */
  readonly spoiltBefore: number;
  /** Distances to the far wall from the edge of a row; null where none are typed. */
  readonly wall: (MeasuredWall & { readonly afterRow: number | null }) | null;
}

export const AS_PLANNED: AsYouLay = { partEnd: null, boxesBought: null, spoiltBefore: 0, wall: null };

/** Places at the far wall, from the left end of the last row: 0, whole steps, and the right end. */
export function wallPlaces(runLength: Ticks, step: Ticks): readonly Ticks[] {
  const inner = madeOf(Math.max(0, Math.round(runLength / step) - 1), (i) => (i + 1) * step);
  return [0, ...inner, runLength];
}
