/** The tabs of the whole job: open and save it, fill the order, fill the homeowner's page. */

import type { PlannedHouse } from '../order/house';
import { emptyHouse, type HouseEntry } from '../order/houseEntry';
import { moneyText } from '../order/money';
import { type Order, orderOf } from '../order/order';
import { planHouse } from '../order/planHouse';
import { readHouse } from '../order/readHouse';
import type { Problem, Takeoff } from '../takeoff/result';
import { chosenRooms } from './chosenRooms';
import { cutListMark } from './cutList';
import { floorPlanMark } from './floorPlan';
import { HOMEOWNER_MARK, HOMEOWNER_TITLE, homeownerBlock } from './homeowner';
import { houseFromCells, JOB_MARK, JOB_TITLE, jobBlock, jobLines } from './job';
import { carriedTicks, JOB_LIST_MARK, JOB_LIST_TITLE, jobListBlock, tickedTasks } from './jobList';
import { leaveTicked, type MayReplan, ticksAtStake } from './laidWork';
import { isMarkedOlder, isOlderPage, olderLines } from './olderPage';
import { ORDER_MARK, ORDER_TITLE, orderBlock } from './order';
import { carriedInputs, typedInputs, withInputs, withTyped } from './orderInputs';
import { toPayIn } from './orderRead';
import { pdfLink } from './pdfLink';
import { aboutText, type FreshFloor, freshFloors, marksFrom, tellReplaced } from './planMark';
import { fillCutList, fillFloorPlan, leftWords, savedRooms } from './roomTabs';
import { tabProblems } from './tabProblems';
import { NOTHING_CARRIED, refillTab, rewriteTab, type TabAsRead, type TabStore, type WrittenTab } from './tabStore';

/** A job as it is opened: with problems the entry is blank, and the tab stays as it is. */
export interface OpenedJob {
  readonly entry: HouseEntry;
  /** Names of the rooms that are saved and can be read. */
  readonly rooms: readonly string[];
  readonly problems: readonly Problem[];
}

export type JobAnswer =
  | {
      readonly status: 'filled';
      /** Names of the tabs, in the order in which they were filled. */
      readonly tabs: readonly string[];
      /** What the homeowner pays, as text; too low while anything is missing. */
      readonly toPay: string;
      readonly missing: readonly string[];
      /** What was not entered at all, has no place in the order, or does not agree with other tabs; sentences. */
      readonly notes: readonly string[];
      /** Opens a PDF of the homeowner's page in the person's own session; '' where none was filled. */
      readonly pdfLink: string;
      /** Names of tabs with something at their foot that a person wrote and whose place is gone. */
      readonly kept: readonly string[];
      /** Names of tabs that say now that they no longer hold. */
      readonly replaced: readonly string[];
      /** Sentences about lists left as they are because of ticks. */
      readonly left: readonly string[];
    }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * The job as saved in the `Job` tab, a blank one where there is none, and the rooms that may be taken into it.
 *
 * @param units of a job that is not saved yet
 */
export async function openJob(store: TabStore, units: HouseEntry['units']): Promise<OpenedJob> {
  const { rooms: savedOnes } = await savedRooms(store);
  const rooms = savedOnes.flatMap((room) => (room.entry ? [room.name] : []));
  const { cells } = await store.read(JOB_MARK, JOB_TITLE);
  if (cells.length === 0) return { entry: emptyHouse(units), rooms, problems: [] };
  const saved = houseFromCells(cells);
  if (!saved.ok) return { entry: emptyHouse(units), rooms, problems: saved.problems };
  return { entry: saved.entry, rooms, problems: [] };
}

/** Saves the job in the `Job` tab, as typed. A tab that cannot be read is not written over: what is wrong is told. */
export async function saveJob(store: TabStore, entry: HouseEntry): Promise<JobAnswer> {
  let found: readonly Problem[] = [];
  const written = await rewriteTab(store, { mark: JOB_MARK, title: JOB_TITLE }, ({ cells }) => {
    const before = cells.length === 0 ? null : houseFromCells(cells);
    found = before && !before.ok ? before.problems : [];
    return found.length > 0 ? null : { block: jobBlock(entry), carried: NOTHING_CARRIED };
  });
  if (!written) return { status: 'problems', problems: found };
  return { ...NOTHING_FILLED, tabs: [written.tab], kept: keptTabs([written]) };
}

/**
 * Whether saving the job would write over what somebody has typed in its tab.
 *
 * @param opened the job as the page last read or saved it
 * @returns the lines as they stand in the tab now: `Terms, Tax, per cent: 9`
 */
export async function changedJob(store: TabStore, entry: HouseEntry, opened: HouseEntry): Promise<readonly string[]> {
  const { cells } = await store.read(JOB_MARK, JOB_TITLE);
  const saved = cells.length === 0 ? null : houseFromCells(cells);
  if (!saved?.ok) return [];
  const lines = (job: HouseEntry) => jobLines(job).map(([label, value]) => `${label}: ${value}`);
  const known = new Set([...lines(opened), ...lines(entry)]);
  return lines(saved.entry).filter((line) => !known.has(line));
}

/**
 * Plans every room of the job, saves the job, and fills `Order` and `Job list`. Floors that share planks, or go on
 * through doorways, get their cut lists and floor plans filled, other floors those they have: what is ordered and what is
 * cut must be one plan.
 *
 * A list with ticks is another matter: unless `mayReplan` says so it stays as it is, its floor is planned apart from the
 * others, and where even that would be another plan the order says so.
 */
export async function fillOrder(
  store: TabStore,
  entry: HouseEntry,
  mayReplan: MayReplan = leaveTicked,
): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry);
  if (worked.status === 'problems') return worked;
  const chosen = await withoutTicked(store, entry, worked, mayReplan);
  if (chosen.status === 'problems') return chosen;
  const { floors, left } = chosen;
  const typed = typedInputs(await store.read(ORDER_MARK, ORDER_TITLE));
  const { order, found } = withTyped(chosen.order, typed);
  const saved = await saveJob(store, entry);
  if (saved.status === 'problems') return saved;
  const about = aboutText(freshFloors(chosen.planned.floors).map(({ mark }) => mark));
  const place = { mark: ORDER_MARK, title: ORDER_TITLE };
  const block = { ...withInputs(orderBlock({ ...order, notes: [...left, ...order.notes] }), found), about };
  const written: (WrittenTab | null)[] = [
    await rewriteTab(store, place, () => ({ block, carried: carriedInputs(found) })),
    await rewriteTab(store, { mark: JOB_LIST_MARK, title: JOB_LIST_TITLE }, ({ cells }) => ({
      block: jobListBlock(order, tickedTasks(cells)),
      carried: carriedTicks(order, cells),
    })),
  ];
  for (const floor of floors) {
    written.push(await fillCutList(store, floor.takeoff, floor), await fillFloorPlan(store, floor.takeoff, floor));
  }
  const filled = floors.flatMap(({ takeoff: { entry: room } }) => [cutListMark(room.name), floorPlanMark(room.name)]);
  const replaced = await tellReplaced(store, floors, [...filled, ORDER_MARK]);
  const page = await markOlderPage(store, order);
  const done = [...written, page.marked].flatMap((tab) => tab ?? []);
  return {
    ...filledAnswer(order, page.isOlder ? [tabProblems.olderPage()] : []),
    tabs: [...saved.tabs, ...done.map(({ tab }) => tab)],
    kept: [...saved.kept, ...keptTabs(done)],
    replaced,
    left,
  };
}

/** A homeowner's page that says something else than the order is told on its top line; all else in it stays. */
async function markOlderPage(
  store: TabStore,
  order: Order,
): Promise<{ readonly isOlder: boolean; readonly marked: WrittenTab | null }> {
  const fresh = homeownerBlock(order);
  let isOlder = false;
  const marked = await rewriteTab(store, { mark: HOMEOWNER_MARK, title: HOMEOWNER_TITLE }, ({ cells }) => {
    const isMarked = isMarkedOlder(cells);
    isOlder = cells.length > 0 && (isMarked || isOlderPage(cells, fresh));
    return isOlder && !isMarked ? { block: olderLines(fresh, cells), carried: NOTHING_CARRIED } : null;
  });
  return { isOlder, marked };
}

interface ChosenPlan extends Extract<WorkedOut, { status: 'planned' }> {
  /** Whose tabs are filled. */
  readonly floors: readonly FreshFloor[];
  /** Sentences about lists that stay as they are. */
  readonly left: readonly string[];
}

/** The plan, and the floors whose tabs are filled with it: with lists that have ticks in them, or without. */
async function withoutTicked(
  store: TabStore,
  entry: HouseEntry,
  worked: Extract<WorkedOut, { status: 'planned' }>,
  mayReplan: MayReplan,
): Promise<ChosenPlan | Extract<WorkedOut, { status: 'problems' }>> {
  const floors = await floorsToFill(store, worked.planned);
  const stake = await ticksAtStake(store, floors);
  if (stake.length === 0 || (await mayReplan(stake))) return { ...worked, floors, left: [] };
  const names = worked.planned.floors.map(({ entry: room }) => room.name);
  const apart = names.filter((name) => stake.some(({ mark }) => mark === cutListMark(name)));
  const again = await orderFrom(store, entry, apart);
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

/**
 * Plans every room of the job and fills `Homeowner`: a page of values only, to share or print. It is of the plan that the
 * order is of: lists with ticks stay as they are for both, and what is typed into the order counts for both.
 */
export async function fillHomeowner(store: TabStore, entry: HouseEntry): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry);
  if (worked.status === 'problems') return worked;
  const chosen = await withoutTicked(store, entry, worked, leaveTicked);
  if (chosen.status === 'problems') return chosen;
  const inTab = await store.read(ORDER_MARK, ORDER_TITLE);
  const { order } = withTyped(chosen.order, typedInputs(inTab));
  const block = homeownerBlock(order);
  const written = await refillTab(store, block);
  const paper = entry.units === 'us' ? 'letter' : 'A4';
  const { spreadsheetId, sheetId } = written;
  const link = pdfLink({ spreadsheetId, sheetId, paper, landscape: block.landscape });
  return {
    ...filledAnswer(order, disagreement(inTab, order)),
    tabs: [written.tab],
    kept: keptTabs([written]),
    pdfLink: link,
  };
}

/** What is typed into the coloured cells of the `Order` tab is in the page; whatever else changes its total is not. */
function disagreement({ cells }: TabAsRead, { totals, house }: Order): readonly string[] {
  const inOrder = toPayIn(cells);
  if (inOrder === null || inOrder === totals.toPay) return [];
  const [there, here] = [inOrder, totals.toPay].map((cents) => moneyText(cents, house.currency));
  return [tabProblems.orderDiffers(there, here)];
}

type WorkedOut =
  | { readonly status: 'planned'; readonly order: Order; readonly planned: PlannedHouse }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

async function orderFrom(store: TabStore, entry: HouseEntry, apart: readonly string[] = []): Promise<WorkedOut> {
  const read = readHouse(entry);
  const chosen = chosenRooms(await savedRooms(store), entry.rooms);
  const found = [...(read.status === 'problems' ? read.problems : []), ...chosen.problems];
  if (read.status === 'problems' || found.length > 0) return { status: 'problems', problems: found };
  const plan = planHouse(chosen.rooms, read.house.shareOffcuts === 'yes', apart);
  if (plan.status === 'problems') return plan;
  return { status: 'planned', order: orderOf(read.house, plan.planned), planned: plan.planned };
}

const NOTHING_FILLED = {
  status: 'filled',
  tabs: [],
  toPay: '',
  missing: [],
  notes: [],
  pdfLink: '',
  kept: [],
  replaced: [],
  left: [],
} as const;

function filledAnswer({ totals, missing, notes, house }: Order, ofTabs: readonly string[]) {
  return {
    ...NOTHING_FILLED,
    toPay: moneyText(totals.toPay, house.currency),
    missing,
    notes: [...notes, ...ofTabs],
  };
}

/** Tabs at whose foot something stands that a person wrote and whose place is gone. */
export function keptTabs(written: readonly WrittenTab[]): readonly string[] {
  return written.filter(({ asideCount }) => asideCount > 0).map(({ tab }) => tab);
}
