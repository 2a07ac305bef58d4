/** What a floor has taken, once it lies, and what is left of what was bought. */

import type { Ticks } from '../../geometry/length';
import { sumOf } from '../../geometry/lists';
import { areaOf } from '../../geometry/polygon';
import type { ListedCut } from './asLaid';
import { planksInHand } from './inHand';
import { floorsOnLists, type ListedPlan } from './listedPlan';
import { floorIndexAt } from './planFloors';

export interface FloorLaid {
  /** Square ticks: the floor inside the gap, and a plank. */
  readonly floorArea: number;
  readonly plankArea: number;
  /** Planks of the plan, spares not counted. */
  readonly plannedCount: number;
  /** Planks that were opened: cut, laid, or spoilt. */
  readonly usedCount: number;
  readonly spoiltCount: number;
  /** Whole planks left of those that were bought; fewer than none where more were used than are known to be bought. */
  readonly leftCount: number;
  /** Boxes that nothing was taken from, to be returned; null where a box is not known. */
  readonly unopenedCount: number | null;
  /** Offcuts worth keeping for repairs, the longest first. */
  readonly kept: readonly { readonly length: Ticks; readonly ends: string }[];
}

/** Our choice: an offcut of twice the minimum piece serves at either end of a row that is mended; of more than three one is enough. */
const WORTH = 2;
const MOST_KEPT = 3;

/**
 * A plank that several floors share counts where its first piece lies, so that floors add up.
 *
 * @param listIndex of the floor among the lists
 * @param bought planks that were bought for all of them
 * @param spoiltBefore planks that were spoilt and are out of the lists: of this floor, and of all
 */
export function floorLaidOf(
  listed: ListedPlan,
  listIndex: number,
  bought: number,
  spoiltBefore: { readonly here: number; readonly all: number },
): FloorLaid {
  const { planned, pieces } = listed;
  const own = floorsOnLists(planned)[listIndex];
  const { product } = planned.floors[own[0]].read;
  const isOwn = (rowIndex: number) => own.includes(floorIndexAt(planned, rowIndex));
  const { begun, spoilt } = planksInHand(listed);
  const beginsHere = (number: number, of: readonly ListedCut[]) => {
    const first = of.find(({ plankNumber, isStrip }) => plankNumber === number && !isStrip);
    return first !== undefined && isOwn(listed.placeOf(first)[0]);
  };
  const [cut, gone] = [pieces.filter(({ isCut }) => isCut), pieces.filter(({ isGone }) => isGone)];
  const spoiltCount = [...spoilt].filter((number) => beginsHere(number, gone)).length + spoiltBefore.here;
  const leftCount = bought - begun.size - spoilt.size - spoiltBefore.all;
  return {
    floorArea: sumOf(own, (i) => areaOf(planned.floors[i].floor)),
    plankArea: product.plankLength * product.plankWidth,
    plannedCount: planned.ledger.planks.filter((plank) => isOwn(plank.pieces[0].rowIndex)).length,
    usedCount: [...begun].filter((number) => beginsHere(number, cut)).length + spoiltCount,
    spoiltCount,
    leftCount,
    unopenedCount: product.planksPerBox === null ? null : Math.floor(Math.max(0, leftCount) / product.planksPerBox),
    kept: keptOf(listed),
  };
}

function keptOf({ planned, pieces: listed }: ListedPlan): FloorLaid['kept'] {
  const { product, rules } = planned.floors[0].read;
  const planks = new Map<number, ListedCut[]>();
  for (const piece of listed) {
    if (!piece.isStrip) planks.set(piece.plankNumber, [...(planks.get(piece.plankNumber) ?? []), piece]);
  }
  const left = [...planks.values()].flatMap((pieces) => {
    const cut = pieces.filter(({ isCut }) => isCut);
    const length = cut.reduce((sum, { cutLength }) => sum - cutLength - rules.kerf, product.plankLength);
    const has = (end: 'left' | 'right') => !cut.some(({ from }) => from === end);
    const ends = [...(has('left') ? ['left'] : []), ...(has('right') ? ['right'] : [])];
    // What another floor still wants is not left.
    const isWanted = cut.length < pieces.length;
    const isWorth =
      cut.length > 0 && !isWanted && !pieces.some(({ isGone }) => isGone) && length >= WORTH * rules.minPiece;
    return isWorth && ends.length > 0 ? [{ length, ends: ends.join(' and ') }] : [];
  });
  return left.sort((a, b) => b.length - a.length).slice(0, MOST_KEPT);
}

/** What was used beyond the floor, as a share of the floor: the waste that is put on top of an area. */
export function wasteOnTop(
  count: number,
  { plankArea, floorArea }: Pick<FloorLaid, 'plankArea' | 'floorArea'>,
): number {
  return Math.max(0, (count * plankArea) / floorArea - 1);
}
