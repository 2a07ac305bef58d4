/** What holds the planks: adhesive by the area a pail covers, nails by the pieces they go into. */

import { type Ticks, ticksOfInches } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import type { Takeoff } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { areaMeasure, areaUnit } from './coverOrder';
import { type House, type LaidRoom, termsOfProduct } from './house';
import { type OrderLine, orderLine } from './orderLine';
import { wantsFelt } from './underFloor';

/** Source: a trade journal's field guide: nails 1 to 3 in from the ends of a piece; here the middle of that. */
const FROM_END: Ticks = ticksOfInches(2);
/** Common practice: a piece that one nail holds can turn. */
const FEWEST_NAILS = 2;

/**
 * Adhesive of glued rooms and nails of nailed ones, bought or not yet known; felt that is wanted and has no roll.
 *
 * @param floors as they are laid: nails are counted in their pieces
 */
export function fasteningLines(
  house: House,
  rooms: readonly LaidRoom[],
  floors: readonly Takeoff[],
): readonly OrderLine[] {
  const fastened = (way: string) => rooms.filter(({ terms }) => terms.fastening === way);
  return [
    ...feltMissing(house, rooms),
    ...adhesiveLine(house, fastened('glued')),
    ...nailLine(house, fastened('nailed'), floors),
  ];
}

function feltMissing({ felt }: House, rooms: readonly LaidRoom[]): OrderLine[] {
  const wanting = rooms.filter(({ terms }) => wantsFelt(terms));
  if (felt !== null || wanting.length === 0) return [];
  const reason = `width and length of its roll are not entered, for ${namesOf(wanting)}`;
  return [orderLine({ part: 'other', item: 'Felt or paper', reason, basis: null, unit: 'rolls', price: null })];
}

function adhesiveLine({ units, adhesive }: House, rooms: readonly LaidRoom[]): OrderLine[] {
  if (rooms.length === 0) return [];
  const area = sumOf(rooms, (room) => areaMeasure(room.takeoff.summary.roomArea, units));
  return [
    orderLine({
      part: 'other',
      item: adhesive.name,
      reason: `under glued planks: ${namesOf(rooms)}`,
      basis: Math.round(100 * area) / 100,
      unit: areaUnit(units),
      allowance: adhesive.allowance,
      rounding: 'packs',
      pack: adhesive.coverage,
      packName: 'pail',
      price: adhesive.price,
      supplier: adhesive.supplier,
      article: adhesive.article,
    }),
  ];
}

function nailLine(house: House, rooms: readonly LaidRoom[], floors: readonly Takeoff[]): OrderLine[] {
  if (rooms.length === 0) return [];
  const { name, apart, perBox, allowance, price, supplier, article } = house.fasteners;
  const packing = { pack: perBox, packName: 'box', allowance, price, supplier, article };
  const common = { part: 'other', item: name, unit: 'nails', ...packing } as const;
  if (!apart) return [orderLine({ ...common, basis: null, reason: 'how far apart they go is not entered' })];
  const nailed = floors.filter(({ entry }) => termsOfProduct(house, entry.product.name).fastening === 'nailed');
  const pieces = nailed.flatMap((floor) => floor.pieces);
  const basis = sumOf(pieces, (piece) => nailsIn(piece.length, apart));
  const reason = `one every ${lengthText(apart, house.units, 'piece')} of ${pieces.length} pieces, and near both ends`;
  return [orderLine({ ...common, basis, reason })];
}

/** Nails in one piece: one near either end, and none further from the next than `apart`. Both in ticks. */
export function nailsIn(length: Ticks, apart: Ticks): number {
  return Math.max(FEWEST_NAILS, Math.ceil((length - 2 * FROM_END) / apart) + 1);
}

function namesOf(rooms: readonly LaidRoom[]): string {
  return rooms.map((room) => room.name).join(', ');
}
