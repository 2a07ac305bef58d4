import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { type Order, orderOf } from '../../src/order/order';
import type { OrderLine } from '../../src/order/orderLine';
import { readHouse } from '../../src/order/readHouse';
import type { ProductKind } from '../../src/takeoff/entry';
import type { Takeoff } from '../../src/takeoff/result';
import { type BareCounts, bareTakeoff, plainEntry, readsOf } from './bareTakeoff';

/** What the plan of the rooms' one product is called. */
export const PLAIN_PRODUCT = { name: 'Plain oak', proof: 'cannot be done with fewer' };

/** What the job adds to that product, all blank. */
export const PLAIN_TERMS = { ...blankItem('floors'), product: 'plain OAK' };

/** The order of rooms laid from planks of 48 x 6 in, 10 a box at 50. */
export function orderFor(
  rooms: readonly Takeoff[],
  changes: Partial<HouseEntry> = {},
  floors: readonly Takeoff[] = rooms,
): Order {
  const read = readHouse({ ...emptyHouse(changes.units ?? 'us'), ...changes });
  if (read.status === 'problems') throw new Error(read.problems.map((problem) => problem.text).join(' '));
  const plankCount = rooms.reduce((sum, room) => sum + room.summary.plankCount, 0);
  const products = [{ ...PLAIN_PRODUCT, plankCount }];
  return orderOf(read.house, { rooms, reads: readsOf(rooms), floors, products, sharing: [] }, 'en_US');
}

export function lineNamed(order: Order, item: string): OrderLine | undefined {
  return order.lines.find((line) => line.item === item);
}

/** A room of 12 by 10 ft. */
export function plainRoom(planks: number): Takeoff {
  return bareTakeoff(plainEntry('Den', 12, 10), { planks });
}

/** The same, of a kind of plank. */
export function roomOfKind(kind: ProductKind, counts: BareCounts = { planks: 60 }): Takeoff {
  const entry = plainEntry('Den', 12, 10);
  return bareTakeoff({ ...entry, product: { ...entry.product, kind } }, counts);
}

/** What stands before you begin under a subject, as `state: text`. */
export function beforeOf(order: Order, subject: string): readonly string[] {
  return order.before.filter((line) => line.subject === subject).map(({ state, text }) => `${state}: ${text}`);
}
