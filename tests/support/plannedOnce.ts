/**
 * Plans that many tests ask for are made once, as the page remembers them too. That the same entry gives the same plan is
 * shown elsewhere.
 */
import type { HouseEntry } from '../../src/order/houseEntry';
import { planHouse } from '../../src/order/planHouse';
import * as jobTabs from '../../src/tabs/jobTabs';
import type { MayReplan } from '../../src/tabs/laidWork';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { takeoff } from '../../src/takeoff/takeoff';

const rooms = new Map<string, ReturnType<typeof takeoff>>();
const planned = new Map<string, ReturnType<typeof planHouse>>();

/** As `takeoff`, for all tests of a run. */
export function takeoffOnce(entry: RoomEntry): ReturnType<typeof takeoff> {
  const key = JSON.stringify(entry);
  const result = rooms.get(key) ?? takeoff(entry);
  rooms.set(key, result);
  return result;
}

/** As `planHouse`, for all tests of a run. */
export function planOnce(...given: Parameters<typeof planHouse>): ReturnType<typeof planHouse> {
  const key = JSON.stringify(given);
  const plan = planned.get(key) ?? planHouse(...given);
  planned.set(key, plan);
  return plan;
}

export function fillOrder(store: TabStore, entry: HouseEntry, mayReplan?: MayReplan): Promise<jobTabs.JobAnswer> {
  return jobTabs.fillOrder(store, entry, mayReplan, planOnce);
}

export function fillHomeowner(store: TabStore, entry: HouseEntry): Promise<jobTabs.JobAnswer> {
  return jobTabs.fillHomeowner(store, entry, planOnce);
}
