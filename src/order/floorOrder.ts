/** Planks -> boxes with spares by reason, and beside them what area + 10 % would have ordered. */

import type { Ticks } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { nameKey, sameName } from '../takeoff/text/names';
import { areaNumber } from './coverOrder';
import { type House, type LaidRoom, type PlannedProduct, type Price, productTitle, termsOfProduct } from './house';
import { amountOf, type Cents, wholeUp } from './money';
import { type OrderLine, orderLine } from './orderLine';

/** Why planks are bought that the plan does not use. */
export interface SparePlanks {
  readonly product: string;
  /** Planks the plan cuts. */
  readonly planned: number;
  readonly misCuts: number;
  /** Kept for repairs. */
  readonly kept: number;
  /** Asked for in the rooms' own rules. */
  readonly roomSpares: number;
  /** What whole boxes add; null when it is not known how many planks a box holds. */
  readonly boxRounding: number | null;
  readonly proof: string;
}

/** What the percentage rule would have ordered for the same rooms. */
export interface TenPercent {
  readonly product: string;
  readonly boxes: number | null;
  readonly ruleBoxes: number | null;
  readonly planks: number;
  readonly rulePlanks: number;
  /** The rule's boxes less ours, in money: positive where the rule would have cost more. */
  readonly difference: Cents | null;
}

export interface FloorOrder {
  readonly line: OrderLine;
  readonly spares: SparePlanks;
  readonly tenPercent: TenPercent;
}

/** One order a product, for all the rooms it goes into. */
export function floorOrders(
  house: House,
  rooms: readonly LaidRoom[],
  products: readonly PlannedProduct[],
  prices: ReadonlyMap<string, Price>,
): readonly FloorOrder[] {
  return products.map((product) => {
    const own = rooms.filter((room) => sameName(room.product.name, product.name));
    return floorOrder(house, own, product, boxPrice(house, own, prices.get(nameKey(product.name)) ?? null));
  });
}

/** A price list for the job comes before what the rooms say. By area, a box costs as much as it covers. */
function boxPrice(house: House, rooms: readonly LaidRoom[], roomPrice: Price): Price {
  const { product } = rooms[0];
  const { price, priceFor } = termsOfProduct(house, product.name);
  if (price === null) return roomPrice;
  if (priceFor === 'box') return price;
  if (product.planksPerBox === null) return null;
  const covered = product.planksPerBox * areaNumber(plankArea(product.plankLength, product.plankWidth), house.units);
  return Math.round(price * covered * 1e4) / 1e4;
}

function floorOrder(house: House, rooms: readonly LaidRoom[], product: PlannedProduct, price: Price): FloorOrder {
  const terms = termsOfProduct(house, product.name);
  const perBox = rooms[0].product.planksPerBox;
  const roomSpares = sumOf(rooms, (room) => room.spare);
  const line = orderLine({
    part: 'floor',
    item: productTitle(product.name),
    reason: `planks of the cut plan: ${rooms.map((room) => room.name).join(', ')}`,
    basis: product.plankCount,
    unit: 'planks',
    allowance: terms.misCuts,
    extra: terms.keep + roomSpares,
    pack: perBox,
    packName: 'box',
    price,
    supplier: terms.supplier,
    article: terms.article,
    remark: terms.lot === '' ? '' : `lot ${terms.lot}`,
    weight: terms.boxWeight,
  });
  const quantity = line.quantity as number;
  const spares: SparePlanks = {
    product: productTitle(product.name),
    planned: product.plankCount,
    misCuts: quantity - product.plankCount - terms.keep - roomSpares,
    kept: terms.keep,
    roomSpares,
    boxRounding: line.packs === null || perBox === null ? null : line.packs * perBox - quantity,
    proof: product.proof,
  };
  return { line, spares, tenPercent: tenPercentOf(rooms, line, price) };
}

/** Area of the rooms as measured x 1.1, in whole planks and whole boxes of the product. */
function tenPercentOf(rooms: readonly LaidRoom[], line: OrderLine, price: Price): TenPercent {
  const { plankLength, plankWidth, planksPerBox } = rooms[0].product;
  const area = sumOf(rooms, (room) => room.takeoff.summary.roomArea);
  const rulePlanks = wholeUp((area * 1.1) / plankArea(plankLength, plankWidth));
  const ruleBoxes = planksPerBox === null ? null : wholeUp(rulePlanks / planksPerBox);
  const known = ruleBoxes !== null && line.packs !== null && price !== null;
  return {
    product: line.item,
    boxes: line.packs,
    ruleBoxes,
    planks: line.quantity as number,
    rulePlanks,
    difference: known ? amountOf(ruleBoxes, price) - amountOf(line.packs, price) : null,
  };
}

function plankArea(length: Ticks, width: Ticks): number {
  return length * width;
}
