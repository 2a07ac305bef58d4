/** The tabs of the whole job: open and save it, fill the order, fill the homeowner's page. */

import type { AlternativeOrder } from '../order/alternatives';
import { productsOf } from '../order/homeowner';
import { emptyHouse, type HouseEntry } from '../order/houseEntry';
import { moneyText } from '../order/money';
import type { Order } from '../order/order';
import { planHouse } from '../order/planHouse';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem } from '../takeoff/result';
import { changeOrderBlock } from './changeOrder';
import { cutListMark } from './cutList';
import { floorPlanMark } from './floorPlan';
import { type HandedOver, HOMEOWNER_MARK, HOMEOWNER_TITLE, homeownerBlock } from './homeowner';
import { houseFromCells, JOB_MARK, JOB_TITLE, jobBlock, jobLines } from './job';
import { carriedTicks, JOB_LIST_MARK, JOB_LIST_TITLE, jobListBlock, tickedTasks } from './jobList';
import { leaveTicked, type MayReplan } from './laidWork';
import { isMarkedOlder, isOlderPage, olderLines } from './olderPage';
import { ORDER_MARK, ORDER_TITLE, orderBlock } from './order';
import { carriedInputs, type TypedInputs, typedInputs, withInputs, withTyped } from './orderInputs';
import { toPayIn } from './orderRead';
import { pdfLink } from './pdfLink';
import { aboutText, type FreshFloor, freshFloors, tellReplaced } from './planMark';
import { purchaseListBlock } from './purchaseList';
import { NOTHING_CARRIED, refillTab, rewriteTab } from './rewriteTab';
import { fillCutList, fillFloorPlan, savedRooms } from './roomTabs';
import { tabProblems } from './tabProblems';
import type { TabAsRead, TabStore, WrittenTab } from './tabStore';
import { type HousePlanner, orderFrom, withoutTicked } from './workedOut';

/** A job as it is opened: with problems the entry is blank, and the tab stays as it is. */
export interface OpenedJob {
  readonly entry: HouseEntry;
  /** The rooms that are saved and can be read. */
  readonly rooms: readonly RoomEntry[];
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
      /** Opens a PDF of the tab to be handed over or sent, in the person's own session; null where none was filled. */
      readonly pdf: { readonly link: string; readonly tab: string } | null;
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
  const rooms = savedOnes.flatMap(({ entry }) => (entry ? [entry] : []));
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
  plan: HousePlanner = planHouse,
): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry, plan);
  if (worked.status === 'problems') return worked;
  const chosen = await withoutTicked(store, entry, plan, worked, mayReplan);
  if (chosen.status === 'problems') return chosen;
  const { floors, left, locale } = chosen;
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
      block: jobListBlock(order, tickedTasks(cells), locale),
      carried: carriedTicks(order, cells),
    })),
  ];
  const purchase = await refillTab(store, purchaseListBlock(order, locale));
  written.push(purchase);
  written.push(...(await fillFloors(store, floors)));
  const filled = floors.flatMap(({ takeoff: { entry: room } }) => [cutListMark(room.name), floorPlanMark(room.name)]);
  const replaced = await tellReplaced(store, floors, [...filled, ORDER_MARK]);
  const page = await markOlderPage(store, order, handedOver(locale, chosen.alternatives, typed));
  const done = [...written, page.marked].flatMap((tab) => tab ?? []);
  return {
    ...filledAnswer(order, page.isOlder ? [tabProblems.olderPage()] : []),
    tabs: [...saved.tabs, ...done.map(({ tab }) => tab)],
    pdf: pdfOf(purchase, entry),
    kept: [...saved.kept, ...keptTabs(done)],
    replaced,
    left,
  };
}

async function fillFloors(store: TabStore, floors: readonly FreshFloor[]): Promise<readonly (WrittenTab | null)[]> {
  const written: (WrittenTab | null)[] = [];
  for (const floor of floors) {
    written.push(await fillCutList(store, floor.takeoff, floor), await fillFloorPlan(store, floor.takeoff, floor));
  }
  return written;
}

/** A homeowner's page that says something else than the order is told on its top line; all else in it stays. */
async function markOlderPage(
  store: TabStore,
  order: Order,
  handed: HandedOver,
): Promise<{ readonly isOlder: boolean; readonly marked: WrittenTab | null }> {
  const fresh = homeownerBlock(order, handed);
  let isOlder = false;
  const marked = await rewriteTab(store, { mark: HOMEOWNER_MARK, title: HOMEOWNER_TITLE }, ({ cells }) => {
    const isMarked = isMarkedOlder(cells);
    isOlder = cells.length > 0 && (isMarked || isOlderPage(cells, fresh));
    return isOlder && !isMarked ? { block: olderLines(fresh, cells), carried: NOTHING_CARRIED } : null;
  });
  return { isOlder, marked };
}

/**
 * Plans every room of the job and fills `Homeowner`: a page of values only, to share or print. It is of the plan that the
 * order is of: lists with ticks stay as they are for both, and what is typed into the order counts for both.
 */
export async function fillHomeowner(
  store: TabStore,
  entry: HouseEntry,
  plan: HousePlanner = planHouse,
): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry, plan);
  if (worked.status === 'problems') return worked;
  const chosen = await withoutTicked(store, entry, plan, worked, leaveTicked);
  if (chosen.status === 'problems') return chosen;
  const inTab = await store.read(ORDER_MARK, ORDER_TITLE);
  const typed = typedInputs(inTab);
  const { locale } = chosen;
  const { order } = withTyped(chosen.order, typed);
  const block = homeownerBlock(order, handedOver(locale, chosen.alternatives, typed));
  const page = await refillTab(store, block);
  const change = changeOrderBlock(order, locale);
  const written = [page, ...(change ? [await refillTab(store, change)] : [])];
  return {
    ...filledAnswer(order, disagreement(inTab, order)),
    tabs: written.map(({ tab }) => tab),
    kept: keptTabs(written),
    pdf: pdfOf(page, entry),
  };
}

/** Both tabs that leave the spreadsheet stand upright. */
function pdfOf({ spreadsheetId, sheetId, tab }: WrittenTab, { units }: HouseEntry) {
  const paper = units === 'us' ? 'letter' : 'A4';
  return { link: pdfLink({ spreadsheetId, sheetId, paper, landscape: false }), tab };
}

/** What is typed into the order counts for the alternatives too. */
function handedOver(locale: string, alternatives: readonly AlternativeOrder[], typed: TypedInputs): HandedOver {
  const prices = alternatives.map(({ order: other }) => {
    const { totals, missing } = withTyped(other, typed).order;
    return { name: productsOf(other).join(', '), toPay: missing.length > 0 ? null : totals.toPay };
  });
  return { locale, alternatives: prices };
}

/** What is typed into the coloured cells of the `Order` tab is in the page; whatever else changes its total is not. */
function disagreement({ cells }: TabAsRead, { totals, house }: Order): readonly string[] {
  const inOrder = toPayIn(cells);
  if (inOrder === null || inOrder === totals.toPay) return [];
  const [there, here] = [inOrder, totals.toPay].map((cents) => moneyText(cents, house.currency));
  return [tabProblems.orderDiffers(there, here)];
}

const NOTHING_FILLED = {
  status: 'filled',
  tabs: [],
  toPay: '',
  missing: [],
  notes: [],
  pdf: null,
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
