/** Underlay, vapour film and tape for every room of the job. */

import { subtract } from '../geometry/combine';
import { TICKS_PER_FOOT, TICKS_PER_METRE, type Ticks, type Units } from '../geometry/length';
import { addedUp, sumOf } from '../geometry/lists';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { plural } from '../takeoff/text/plural';
import type { House, LaidRoom, RollGoods } from './house';
import { type OrderLine, orderLine } from './orderLine';
import { coverOf, type StripPlan } from './underlay';

/** Goods from a roll in the rooms they go into. */
export interface CoverOrder {
  readonly goods: RollGoods;
  readonly rooms: readonly { readonly room: string; readonly plan: StripPlan }[];
  readonly rolls: number;
  readonly line: OrderLine;
}

/** Underlay, film and felt, as far as they are laid; strips of all rooms are cut from the same rolls. */
export function coverOrders(house: House, rooms: readonly LaidRoom[]): readonly CoverOrder[] {
  return [
    ...coverOrder(
      house,
      house.underlay,
      rooms.filter((room) => room.underlay),
    ),
    ...coverOrder(
      house,
      house.film,
      rooms.filter((room) => room.film),
    ),
    ...coverOrder(
      house,
      house.felt,
      rooms.filter((room) => room.felt),
    ),
  ];
}

function coverOrder(house: House, goods: RollGoods | null, rooms: readonly LaidRoom[]): CoverOrder[] {
  if (!goods || rooms.length === 0) return [];
  const floors = rooms.map(({ takeoff }) => subtract([takeoff.outline], takeoff.cutouts));
  const { plans, rolls } = coverOf(floors, goods, goods.direction);
  const strips = plans.flatMap((plan) => plan.strips);
  const total = addedUp(strips);
  const line = orderLine({
    part: 'underlay',
    item: goods.name,
    reason: `${plural(strips.length, 'strip')}, ${lengthText(total, house.units, 'room')} in all, each strip cut from any roll`,
    basis: rolls,
    unit: 'rolls',
    packName: 'roll',
    price: goods.price,
    supplier: goods.supplier,
    article: goods.article,
  });
  return [{ goods, rooms: rooms.map(({ name }, i) => ({ room: name, plan: plans[i] })), rolls, line }];
}

/** Tape over every joint of underlay and film; none when no tape is entered or there is no joint. Felt is stapled. */
export function tapeLines(house: House, covers: readonly CoverOrder[]): readonly OrderLine[] {
  const taped = covers.filter(({ goods }) => goods !== house.felt);
  const seams = sumOf(
    taped.flatMap((cover) => cover.rooms),
    ({ plan }) => plan.seamLength,
  );
  if (!house.tape || seams === 0) return [];
  return [
    orderLine({
      part: 'underlay',
      item: house.tape.name,
      reason: countryWords('joints of underlay and film', house.units),
      basis: roomMeasure(seams, house.units),
      unit: roomUnit(house.units),
      allowance: house.tape.allowance,
      rounding: 'packs',
      pack: roomMeasure(house.tape.length, house.units),
      packName: 'roll',
      price: house.tape.price,
      supplier: house.tape.supplier,
      article: house.tape.article,
    }),
  ];
}

/** Feet or metres, to the hundredth: what stands in the cell is what is reckoned with. */
export function roomMeasure(ticks: Ticks, units: Units): number {
  return Math.round((100 * ticks) / (units === 'us' ? TICKS_PER_FOOT : TICKS_PER_METRE)) / 100;
}

export function roomUnit(units: Units): string {
  return units === 'us' ? 'ft' : 'm';
}

/** Square feet or square metres, to the hundredth: what stands in the cell is what is reckoned with. */
export function areaMeasure(squareTicks: number, units: Units): number {
  return Math.round(100 * areaNumber(squareTicks, units)) / 100;
}

/** Square feet or square metres of an area in square ticks. */
export function areaNumber(squareTicks: number, units: Units): number {
  const side = units === 'us' ? TICKS_PER_FOOT : TICKS_PER_METRE;
  return squareTicks / (side * side);
}

export function areaUnit(units: Units): string {
  return units === 'us' ? 'sq ft' : 'm2';
}
