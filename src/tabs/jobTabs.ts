/** The tabs of the whole job: open and save it, fill the order, fill the homeowner's page. */

import type { PlannedHouse } from '../order/house';
import { emptyHouse, type HouseEntry } from '../order/houseEntry';
import { moneyText } from '../order/money';
import { type Order, orderOf } from '../order/order';
import { planHouse } from '../order/planHouse';
import { readHouse } from '../order/readHouse';
import type { Problem, Takeoff } from '../takeoff/result';
import { chosenRooms } from './chosenRooms';
import { HOMEOWNER_MARK, HOMEOWNER_TITLE, homeownerBlock } from './homeowner';
import { houseFromCells, JOB_MARK, JOB_TITLE, jobBlock } from './job';
import { JOB_LIST_MARK, JOB_LIST_TITLE, jobListBlock, tickedTasks } from './jobList';
import { isMarkedOlder, isOlderPage, olderLines } from './olderPage';
import { ORDER_MARK, ORDER_TITLE, orderBlock } from './order';
import { toPayIn } from './orderRead';
import { pdfLink } from './pdfLink';
import { fillCutList, fillFloorPlan, refillTabs, savedRooms } from './roomTabs';
import { tabProblems } from './tabProblems';
import { replaceTab, rewriteTab, type TabStore, type WrittenTab } from './tabStore';

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
    }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * The job as saved in the `Job` tab, a blank one where there is none, and the rooms that may be taken into it.
 *
 * @param units of a job that is not saved yet
 */
export async function openJob(store: TabStore, units: HouseEntry['units']): Promise<OpenedJob> {
  const saved = await savedRooms(store);
  const rooms = saved.rooms.flatMap(({ name, entry }) => (entry ? [name] : []));
  const { cells } = await store.read(JOB_MARK, JOB_TITLE);
  if (cells.length === 0) return { entry: emptyHouse(units), rooms, problems: [] };
  const job = houseFromCells(cells);
  if (!job.ok) return { entry: emptyHouse(units), rooms, problems: job.problems };
  return { entry: job.entry, rooms, problems: [] };
}

/** Saves the job in the `Job` tab, as typed. A tab that cannot be read is not written over: what is wrong is told. */
export async function saveJob(store: TabStore, entry: HouseEntry): Promise<JobAnswer> {
  let found: readonly Problem[] = [];
  const written = await rewriteTab(store, { mark: JOB_MARK, title: JOB_TITLE }, (cells) => {
    const before = cells.length === 0 ? null : houseFromCells(cells);
    found = before && !before.ok ? before.problems : [];
    return found.length > 0 ? null : jobBlock(entry);
  });
  if (!written) return { status: 'problems', problems: found };
  return { status: 'filled', tabs: [written.tab], toPay: '', missing: [], notes: [], pdfLink: '' };
}

/**
 * Plans every room of the job, saves the job, and fills `Order` and `Job list`. Floors that share planks, or go on
 * through doorways, get their cut lists and floor plans filled, other floors those they have: what is ordered and what is
 * cut must be one plan.
 */
export async function fillOrder(store: TabStore, entry: HouseEntry): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry);
  if (worked.status === 'problems') return worked;
  const { order, planned } = worked;
  const saved = await saveJob(store, entry);
  if (saved.status === 'problems') return saved;
  const list = { mark: JOB_LIST_MARK, title: JOB_LIST_TITLE };
  const written: (WrittenTab | null)[] = [await replaceTab(store, orderBlock(order))];
  written.push(await rewriteTab(store, list, (cells) => jobListBlock(order, tickedTasks(cells))));
  for (const floor of planned.floors) {
    if (!isLaidWithOthers(floor, planned)) written.push(...(await refillTabs(store, floor)));
    else written.push(await fillCutList(store, floor), await fillFloorPlan(store, floor));
  }
  const page = await markOlderPage(store, order);
  const tabs = [...written, page.marked].flatMap((tab) => (tab ? [tab.tab] : []));
  return filledAnswer(order, [...saved.tabs, ...tabs], page.isOlder ? [tabProblems.olderPage()] : [], '');
}

/** A homeowner's page that says something else than the order is told on its top line; all else in it stays. */
async function markOlderPage(
  store: TabStore,
  order: Order,
): Promise<{ readonly isOlder: boolean; readonly marked: WrittenTab | null }> {
  const fresh = homeownerBlock(order);
  let isOlder = false;
  const marked = await rewriteTab(store, { mark: HOMEOWNER_MARK, title: HOMEOWNER_TITLE }, (cells) => {
    const isMarked = isMarkedOlder(cells);
    isOlder = cells.length > 0 && (isMarked || isOlderPage(cells, fresh));
    return isOlder && !isMarked ? olderLines(fresh, cells) : null;
  });
  return { isOlder, marked };
}

/** Whether its lists are not those of a room planned alone: joined through doorways, or cut from shared planks. */
function isLaidWithOthers(floor: Takeoff, { rooms, sharing }: PlannedHouse): boolean {
  return !rooms.includes(floor) || sharing.some((names) => names.includes(floor.entry.name));
}

/** Plans every room of the job and fills `Homeowner`: a page of values only, to share or print. */
export async function fillHomeowner(store: TabStore, entry: HouseEntry): Promise<JobAnswer> {
  const worked = await orderFrom(store, entry);
  if (worked.status === 'problems') return worked;
  const block = homeownerBlock(worked.order);
  const { tab, spreadsheetId, sheetId } = await replaceTab(store, block);
  const paper = entry.units === 'us' ? 'letter' : 'A4';
  const link = pdfLink({ spreadsheetId, sheetId, paper, landscape: block.landscape });
  return filledAnswer(worked.order, [tab], await disagreement(store, worked.order), link);
}

/** The page takes its price from the job: one typed into the `Order` tab is not in it. */
async function disagreement(store: TabStore, { totals, house }: Order): Promise<readonly string[]> {
  const { cells } = await store.read(ORDER_MARK, ORDER_TITLE);
  const inOrder = toPayIn(cells);
  if (inOrder === null || inOrder === totals.toPay) return [];
  const [there, here] = [inOrder, totals.toPay].map((cents) => moneyText(cents, house.currency));
  return [tabProblems.orderDiffers(there, here)];
}

type WorkedOut =
  | { readonly status: 'planned'; readonly order: Order; readonly planned: PlannedHouse }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

async function orderFrom(store: TabStore, entry: HouseEntry): Promise<WorkedOut> {
  const read = readHouse(entry);
  const chosen = chosenRooms(await savedRooms(store), entry.rooms);
  const found = [...(read.status === 'problems' ? read.problems : []), ...chosen.problems];
  if (read.status === 'problems' || found.length > 0) return { status: 'problems', problems: found };
  const plan = planHouse(chosen.rooms, read.house.shareOffcuts === 'yes');
  if (plan.status === 'problems') return plan;
  return { status: 'planned', order: orderOf(read.house, plan.planned), planned: plan.planned };
}

function filledAnswer(
  { totals, missing, notes: ofOrder, house }: Order,
  tabs: readonly string[],
  ofTabs: readonly string[],
  link: string,
): JobAnswer {
  const notes = [...ofOrder, ...ofTabs];
  return { status: 'filled', tabs, toPay: moneyText(totals.toPay, house.currency), missing, notes, pdfLink: link };
}
