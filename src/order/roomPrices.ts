/** The price of the job shared out over its rooms, so that the parts add up to the whole to the cent. */
import { addedUp } from '../geometry/lists';
import { nameKey } from '../takeoff/text/names';
import { type LaidRoom, productTitle } from './house';
import type { Cents } from './money';
import type { Order } from './order';
import type { OrderLine } from './orderLine';

/**
 * What the homeowner pays for each room, in the order of the rooms. Planks go by the area of the rooms they lie in, work
 * by the hour by the hours of each room, all else by area; tax and margin are spread alike.
 */
export function roomPrices({ rooms, lines, hours, totals, house }: Order): readonly Cents[] {
  const areas = rooms.map(({ takeoff }) => takeoff.summary.roomArea);
  const isHourly = ({ part, item, unit }: OrderLine) =>
    part === 'labour' && unit === 'hours' && house.labour.some(({ work, by }) => work === item && by === 'hour');
  const weightsOf = (line: OrderLine): readonly number[] => {
    if (line.part === 'floor') return areas.map((area, i) => (isOfProduct(rooms[i], line.item) ? area : 0));
    return isHourly(line) ? hours.map((room) => room.hours ?? 0) : areas;
  };
  const costs = rooms.map(() => 0);
  for (const line of lines) {
    const weights = weightsOf(line);
    const sum = addedUp(weights);
    weights.forEach((weight, i) => {
      costs[i] += sum > 0 ? ((line.total ?? 0) * weight) / sum : 0;
    });
  }
  return sharedOut(totals.toPay, costs.some((cost) => cost > 0) ? costs : areas);
}

function isOfProduct({ product }: LaidRoom, item: string): boolean {
  return nameKey(productTitle(product.name)) === nameKey(item);
}

/** Whole cents by weight; those that rounding leaves over go to the largest remainders. */
function sharedOut(total: Cents, weights: readonly number[]): readonly Cents[] {
  const sum = addedUp(weights);
  const exact = weights.map((weight) => (total * weight) / sum);
  const shares = exact.map(Math.floor);
  const left = total - addedUp(shares);
  const byRemainder = exact.map((_, i) => i).sort((a, b) => exact[b] - shares[b] - (exact[a] - shares[a]) || a - b);
  for (const i of byRemainder.slice(0, left)) shares[i]++;
  return shares;
}
