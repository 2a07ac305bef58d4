/** What a floor has taken, once it lies, and what is left of what was bought. */
import type { Ticks } from '../../geometry/length';
import { areaOf } from '../../geometry/polygon';
import type { LaidFloor } from '../reading/drawnRoom';
import { type ListedCut, listedRows } from './asLaid';
import { planksInHand } from './inHand';
import { unitsCutOf } from './listedUnits';
import type { PlannedFloors } from './planFloors';

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
 * @param bought planks that were bought
 * @param spoiltBefore planks that were spoilt and are out of the list
 */
export function floorLaidOf(
  planned: PlannedFloors<LaidFloor>,
  listed: readonly ListedCut[],
  bought: number,
  spoiltBefore: number,
): FloorLaid {
  const [{ floor, read }] = planned.floors;
  const { product } = read;
  const { begun, spoilt } = planksInHand(listed, planned.job, unitsCutOf(planned, listedRows(listed)));
  const spoiltCount = spoilt.size + spoiltBefore;
  const usedCount = begun.size + spoiltCount;
  const leftCount = bought - usedCount;
  return {
    floorArea: areaOf(floor),
    plankArea: product.plankLength * product.plankWidth,
    plannedCount: planned.plan.plankCount,
    usedCount,
    spoiltCount,
    leftCount,
    unopenedCount: product.planksPerBox === null ? null : Math.floor(Math.max(0, leftCount) / product.planksPerBox),
    kept: keptOf(planned, listed),
  };
}

function keptOf({ floors }: PlannedFloors<LaidFloor>, listed: readonly ListedCut[]): FloorLaid['kept'] {
  const { product, rules } = floors[0].read;
  const planks = new Map<number, ListedCut[]>();
  for (const piece of listed) {
    if (!piece.isStrip) planks.set(piece.plankNumber, [...(planks.get(piece.plankNumber) ?? []), piece]);
  }
  const left = [...planks.values()].flatMap((pieces) => {
    const cut = pieces.filter(({ isCut }) => isCut);
    const length = cut.reduce((sum, { cutLength }) => sum - cutLength - rules.kerf, product.plankLength);
    const has = (end: 'left' | 'right') => !cut.some(({ from }) => from === end);
    const ends = [...(has('left') ? ['left'] : []), ...(has('right') ? ['right'] : [])];
    const isWorth = cut.length > 0 && !pieces.some(({ isGone }) => isGone) && length >= WORTH * rules.minPiece;
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
