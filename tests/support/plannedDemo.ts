import type { HouseEntry } from '../../src/order/houseEntry';
import { type Order, orderOf } from '../../src/order/order';
import { planHouse } from '../../src/order/planHouse';
import { readHouse } from '../../src/order/readHouse';
import { demoJob, demoRooms } from './demoHouse';

const plans = { shared: planHouse(demoRooms, true), apart: planHouse(demoRooms, false) };

/** The demo house's order, with the job changed if a test asks for it. */
export function demoOrder(changes: Partial<HouseEntry> = {}, locale = 'en_US'): Order {
  const read = readHouse({ ...demoJob, ...changes });
  if (read.status === 'problems') throw new Error(read.problems.map((problem) => problem.text).join(' '));
  const plan = read.house.shareOffcuts === 'yes' ? plans.shared : plans.apart;
  if (plan.status === 'problems') throw new Error(plan.problems.map((problem) => problem.text).join(' '));
  return orderOf(read.house, plan.planned, locale);
}
