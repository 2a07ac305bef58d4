/** The tabs of the whole job: open and save it, fill the order, fill the homeowner's page. */

import type { PlannedHouse } from '../order/house';
import { emptyHouse, type HouseEntry } from '../order/houseEntry';
import { houseProblems } from '../order/houseProblems';
import { moneyText } from '../order/money';
import { type Order, orderOf } from '../order/order';
import { planHouse } from '../order/planHouse';
import { readHouse } from '../order/readHouse';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem, Takeoff } from '../takeoff/result';
import { nameKey } from '../takeoff/text/names';
import { homeownerBlock } from './homeowner';
import { houseFromCells, JOB_MARK, JOB_TITLE, jobBlock } from './job';
import { JOB_LIST_MARK, JOB_LIST_TITLE, jobListBlock, tickedTasks } from './jobList';
import { orderBlock } from './order';
import { pdfLink } from './pdfLink';
import { fillCutList, fillFloorPlan, refillTabs, savedRooms } from './roomTabs';
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
      /** What was not entered at all, or has no place in the order: the price holds no such thing. */
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
  const rooms = (await readableRooms(store)).map((room) => room.name);
  const { cells } = await store.read(JOB_MARK, JOB_TITLE);
  if (cells.length === 0) return { entry: emptyHouse(units), rooms, problems: [] };
  const saved = houseFromCells(cells);
  if (!saved.ok) return { entry: emptyHouse(units), rooms, problems: saved.problems };
  return { entry: saved.entry, rooms, problems: [] };
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
  return filledAnswer(order, [...saved.tabs, ...written.flatMap((tab) => (tab ? [tab.tab] : []))], '');
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
  return filledAnswer(worked.order, [tab], link);
}

/** The rooms named, in that order; all that are saved when none is named. */
export function chosenRooms(
  saved: readonly RoomEntry[],
  names: readonly string[],
): { readonly rooms: readonly RoomEntry[]; readonly problems: readonly Problem[] } {
  if (saved.length === 0) return { rooms: [], problems: [{ field: 'rooms', text: houseProblems.noRooms() }] };
  if (names.length === 0) return { rooms: saved, problems: [] };
  const known = saved.map((room) => room.name);
  const unknown = names.filter((name) => !known.some((other) => nameKey(other) === nameKey(name)));
  return {
    rooms: names.flatMap((name) => saved.filter((room) => nameKey(room.name) === nameKey(name))),
    problems: unknown.map((name) => ({ field: 'rooms', text: houseProblems.noSuchRoom(name, known) })),
  };
}

type WorkedOut =
  | { readonly status: 'planned'; readonly order: Order; readonly planned: PlannedHouse }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

async function orderFrom(store: TabStore, entry: HouseEntry): Promise<WorkedOut> {
  const read = readHouse(entry);
  const chosen = chosenRooms(await readableRooms(store), entry.rooms);
  const found = [...(read.status === 'problems' ? read.problems : []), ...chosen.problems];
  if (read.status === 'problems' || found.length > 0) return { status: 'problems', problems: found };
  const plan = planHouse(chosen.rooms, read.house.shareOffcuts === 'yes');
  if (plan.status === 'problems') return plan;
  return { status: 'planned', order: orderOf(read.house, plan.planned), planned: plan.planned };
}

async function readableRooms(store: TabStore): Promise<readonly RoomEntry[]> {
  const { rooms } = await savedRooms(store);
  return rooms.flatMap((room) => (room.entry ? [room.entry] : []));
}

function filledAnswer({ totals, missing, notes, house }: Order, tabs: readonly string[], link: string): JobAnswer {
  return { status: 'filled', tabs, toPay: moneyText(totals.toPay, house.currency), missing, notes, pdfLink: link };
}
