/** Floors that are cut from the same planks, found by the plan that is remembered with their tabs. */
import type { Ticks, Units } from '../geometry/length';
import type { RoomEntry } from '../takeoff/entry';
import { planOnProblems } from '../takeoff/reading/planOnProblems';
import { problems } from '../takeoff/reading/problems';
import { drawFloor } from '../takeoff/telling/onwardAnswer';
import { nameKey } from '../takeoff/text/names';
import { CUT_LIST_MARK, cutListMark, cutListTitle } from './cutList';
import { aboutBefore, BEFORE_MARK, beforeMark, beforeTitle } from './listBefore';
import { marksFrom, type PlanMark } from './planMark';
import { savedRooms } from './roomTabs';
import type { OurTab, TabStore } from './tabStore';

/** A room, or rooms laid as one floor, and the list that it is planned on from. */
export interface FloorOnTab {
  readonly entry: RoomEntry;
  readonly others: readonly RoomEntry[];
  readonly name: string;
  readonly units: Units;
  readonly plankLength: Ticks;
  readonly list: { readonly mark: string; readonly title: string };
}

/** Floors in the order of their plan, the rooms as they are saved. */
export interface SharingFloors {
  readonly problems?: undefined;
  readonly floors: readonly FloorOnTab[];
  /** The one that is asked for. */
  readonly asked: number;
}

type Found = SharingFloors | { readonly problems: readonly string[] };

/** A floor by its entries, with its own cut list. */
export function floorOnTab(entry: RoomEntry, others: readonly RoomEntry[]): FloorOnTab | readonly string[] {
  const { room, problems: found } = drawFloor(entry, others);
  if (room === null) return found.map(({ text }) => text);
  const { name, units, product } = room.read;
  const list = { mark: cutListMark(name), title: cutListTitle(name) };
  return { entry, others, name, units, plankLength: product.plankLength, list };
}

/** The floors whose lists are of one plan with the list of this one: itself alone where it shares no planks. */
export async function floorsSharing(store: TabStore, floor: FloorOnTab): Promise<Found> {
  const tabs = await store.tabs();
  const [own] = marksFrom(tabs.find(({ mark }) => mark === floor.list.mark)?.about ?? '');
  const partners = own ? partnersOf(own, listsIn(tabs)) : [];
  return partners
    ? floorsOf(store, floor, partners)
    : { problems: [planOnProblems.sharedApart(floor.name, otherRooms(own).join(', '))] };
}

/**
 * The same for the list as it was before. What another floor had before may be its list of now; where the others cannot be found
 * any more, the list comes back alone.
 */
export async function floorsBefore(store: TabStore, floor: FloorOnTab): Promise<Found> {
  const tabs = await store.tabs();
  const before = tabs.flatMap((tab): ListOfPlan[] => {
    if (!tab.mark.startsWith(BEFORE_MARK)) return [];
    return marksFrom(aboutBefore(tab.about)).map((plan) => ({ plan, place: { mark: tab.mark, title: tab.tab } }));
  });
  const list = { mark: beforeMark(floor.name), title: beforeTitle(floor.name) };
  const own = before.find(({ place }) => place.mark === list.mark);
  const partners = own ? partnersOf(own.plan, [...before, ...listsIn(tabs)]) : [];
  return floorsOf(store, { ...floor, list }, partners ?? []);
}

/** A list, or what is kept of one, and the floor of the plan that it is of. */
interface ListOfPlan {
  readonly plan: PlanMark;
  readonly place: FloorOnTab['list'];
}

function listsIn(tabs: readonly OurTab[]): readonly ListOfPlan[] {
  return tabs
    .filter(({ mark }) => mark.startsWith(CUT_LIST_MARK))
    .flatMap(({ mark, tab, about }) => marksFrom(about).map((plan) => ({ plan, place: { mark, title: tab } })));
}

function otherRooms({ rooms, planRooms }: PlanMark): readonly string[] {
  return planRooms.filter((room) => !rooms.includes(room));
}

/** One list for every other floor of a plan; null where one is missing. */
function partnersOf(own: PlanMark, lists: readonly ListOfPlan[]): readonly ListOfPlan[] | null {
  const found: ListOfPlan[] = [];
  for (const room of otherRooms(own)) {
    if (found.some(({ plan }) => plan.rooms.includes(room))) continue;
    const list = lists.find(({ plan }) => plan.plan === own.plan && plan.rooms.includes(room));
    if (!list) return null;
    found.push(list);
  }
  return found;
}

/** Keys of the rooms of a floor; a room that was given another name goes by the mark of its tab. */
function roomsOf({ rooms }: PlanMark, mark: string): readonly string[] {
  return rooms.length > 1 ? rooms : [mark.replace(/^.*?\//, '')];
}

async function floorsOf(store: TabStore, floor: FloorOnTab, partners: readonly ListOfPlan[]): Promise<Found> {
  if (partners.length === 0) return { floors: [floor], asked: 0 };
  const { rooms: saved } = await savedRooms(store);
  const keys = saved.map(({ name }) => nameKey(name));
  const faults: string[] = [];
  const others = partners.flatMap(({ plan, place }): FloorOnTab[] => {
    const wanted = roomsOf(plan, place.mark);
    const entries = saved.flatMap(({ name, entry }) => (entry && wanted.includes(nameKey(name)) ? [entry] : []));
    if (entries.length < wanted.length) {
      faults.push(planOnProblems.sharedNotSaved(floor.name, wanted.join(' + ')));
      return [];
    }
    const drawn = floorOnTab(entries[0], entries.slice(1));
    if ('name' in drawn) return [{ ...drawn, list: place }];
    faults.push(...drawn.map((text) => problems.inRoom(entries[0].name, text)));
    return [];
  });
  if (faults.length > 0) return { problems: faults };
  const placeOf = ({ entry }: FloorOnTab) => keys.indexOf(nameKey(entry.name));
  const floors = [floor, ...others].sort((a, b) => placeOf(a) - placeOf(b));
  return { floors, asked: floors.indexOf(floor) };
}
