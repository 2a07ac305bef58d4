/** The whole job worked out for its tabs: read, planned, and without the lists that somebody is working from. */
import { type AlternativeOrder, alternativeOrders } from '../order/alternatives';
import type { PlannedHouse } from '../order/house';
import type { HouseEntry } from '../order/houseEntry';
import { type Order, orderOf } from '../order/order';
import type { planHouse } from '../order/planHouse';
import { readHouse } from '../order/readHouse';
import type { Problem, Takeoff } from '../takeoff/result';
import { chosenRooms } from './chosenRooms';
import { cutListMark } from './cutList';
import { floorPlanMark } from './floorPlan';
import { type MayReplan, ticksAtStake } from './laidWork';
import { keepBefore } from './listBefore';
import { type FreshFloor, freshFloors, marksFrom } from './planMark';
import { leftWords, savedRooms } from './roomTabs';
import type { TabStore } from './tabStore';

/** Plans the rooms of a job, as `planHouse` does. */
export type HousePlanner = typeof planHouse;

/** A job that was read and planned, or what is wrong with it. */
export type WorkedOut =
  | {
      readonly status: 'planned';
      readonly order: Order;
      readonly planned: PlannedHouse;
      readonly alternatives: readonly AlternativeOrder[];
      /** Of the spreadsheet, for dates. */
      readonly locale: string;
    }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * The order of the saved rooms.
 *
 * @param plan `planHouse`, or one that remembers what it planned
 * @param apart names of floors that share planks with no other
 */
export async function orderFrom(
  store: TabStore,
  entry: HouseEntry,
  plan: HousePlanner,
  apart: readonly string[] = [],
): Promise<WorkedOut> {
  const read = readHouse(entry);
  const chosen = chosenRooms(await savedRooms(store), entry.rooms);
  const found = [...(read.status === 'problems' ? read.problems : []), ...chosen.problems];
  if (read.status === 'problems' || found.length > 0) return { status: 'problems', problems: found };
  const { house } = read;
  const planRooms = (rooms: Parameters<HousePlanner>[0]) => plan(rooms, house.shareOffcuts === 'yes', apart);
  const laid = planRooms(chosen.rooms);
  if (laid.status === 'problems') return laid;
  const locale = await store.locale();
  const others = alternativeOrders(entry, house, chosen.rooms, planRooms, locale);
  if (others.status === 'problems') return others;
  const order = orderOf(house, laid.planned, locale);
  return { status: 'planned', order, planned: laid.planned, alternatives: others.orders, locale };
}

export interface ChosenPlan extends Extract<WorkedOut, { status: 'planned' }> {
  /** Whose tabs are filled. */
  readonly floors: readonly FreshFloor[];
  /** Sentences about lists that stay as they are. */
  readonly left: readonly string[];
}

/** The plan, and the floors whose tabs are filled with it: with lists that have ticks in them, or without. */
export async function withoutTicked(
  store: TabStore,
  entry: HouseEntry,
  plan: HousePlanner,
  worked: Extract<WorkedOut, { status: 'planned' }>,
  mayReplan: MayReplan,
): Promise<ChosenPlan | Extract<WorkedOut, { status: 'problems' }>> {
  const floors = await floorsToFill(store, worked.planned);
  const stake = await ticksAtStake(store, floors);
  if (stake.length === 0 || (await mayReplan(stake))) {
    await keepBefore(store, stake);
    return { ...worked, floors, left: [] };
  }
  const names = worked.planned.floors.map(({ entry: room }) => room.name);
  const apart = names.filter((name) => stake.some(({ mark }) => mark === cutListMark(name)));
  const again = await orderFrom(store, entry, plan, apart);
  if (again.status === 'problems') return again;
  const rest = await untouching(store, await floorsToFill(store, again.planned));
  const stillLeft = stake.map(({ tab, tickedCount, mark }) => {
    const isCounted = rest.fits.includes(mark);
    return `${leftWords(tab, tickedCount)} ${isCounted ? 'The order counts it as it is.' : 'The order counts another plan of that floor: compare the planks to buy.'}`;
  });
  const isLeft = ({ takeoff }: FreshFloor) => stake.some(({ mark }) => mark === cutListMark(takeoff.entry.name));
  return { ...again, floors: rest.floors.filter((floor) => !isLeft(floor)), left: stillLeft };
}

/** Those of the floors that change no list with ticks, neither their own nor that of a room they share planks with. */
async function untouching(
  store: TabStore,
  floors: readonly FreshFloor[],
): Promise<{ readonly floors: readonly FreshFloor[]; readonly fits: readonly string[] }> {
  let rest = floors;
  for (;;) {
    const stake = await ticksAtStake(store, rest);
    if (stake.length === 0) break;
    const planOf = (mark: string) => floors.find(({ takeoff }) => cutListMark(takeoff.entry.name) === mark)?.mark.plan;
    const plans = stake.map(({ mark }) => planOf(mark));
    const about = new Map((await store.tabs()).map((tab) => [tab.mark, marksFrom(tab.about)]));
    const rooms = new Set(stake.flatMap(({ mark }) => (about.get(mark) ?? []).flatMap(({ planRooms }) => planRooms)));
    const kept = rest.filter(({ mark }) => !plans.includes(mark.plan) && !mark.rooms.some((room) => rooms.has(room)));
    // A list of which nothing is remembered is nobody's partner: what changes it is its own floor, gone by its plan.
    if (kept.length === rest.length) return { floors: [], fits: [] };
    rest = kept;
  }
  return { floors: rest, fits: rest.map(({ takeoff }) => cutListMark(takeoff.entry.name)) };
}

/** Floors laid with others always, and those that have a cut list or a floor plan already. */
async function floorsToFill(store: TabStore, planned: PlannedHouse): Promise<readonly FreshFloor[]> {
  const marks = (await store.tabs()).map(({ mark }) => mark);
  return freshFloors(planned.floors).filter(({ takeoff }) => {
    const { name } = takeoff.entry;
    const isThere = marks.includes(cutListMark(name)) || marks.includes(floorPlanMark(name));
    return isThere || isLaidWithOthers(takeoff, planned);
  });
}

/** Whether its lists are not those of a room planned alone: joined through doorways, or cut from shared planks. */
function isLaidWithOthers(floor: Takeoff, { rooms, sharing }: PlannedHouse): boolean {
  return !rooms.includes(floor) || sharing.some((names) => names.includes(floor.entry.name));
}
