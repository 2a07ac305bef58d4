/** What the sidebar may call for the whole job: open and save it, fill the order, fill the homeowner's page. */
import type { RoomEntry } from '../takeoff/entry';
import { nameKey, type PlannedHouse } from '../takeoff/house';
import { emptyHouse, type HouseEntry } from '../takeoff/houseEntry';
import { moneyText } from '../takeoff/money';
import { type Order, orderOf } from '../takeoff/order';
import { planHouse } from '../takeoff/planHouse';
import { problems } from '../takeoff/problems';
import { readHouse } from '../takeoff/readHouse';
import type { Problem, Takeoff } from '../takeoff/result';
import { checkedHouse } from './checkedHouse';
import { oneAtATime } from './oneAtATime';
import { ownedTab } from './ownedTabs';
import { pdfLink } from './pdfLink';
import type { TabBlock } from './tabs/block';
import { cutListBlock, cutListMark, cutListTitle } from './tabs/cutList';
import { floorPlanBlock } from './tabs/floorPlan';
import { HOMEOWNER_MARK, HOMEOWNER_TITLE, homeownerBlock } from './tabs/homeowner';
import { houseFromCells, JOB_MARK, JOB_TITLE, jobBlock } from './tabs/job';
import { JOB_LIST_MARK, JOB_LIST_TITLE, jobListBlock, tickedTasks } from './tabs/jobList';
import { keptMarks } from './tabs/keptMarks';
import { orderBlock } from './tabs/order';
import { entriesFromCells, ROOMS_MARK, ROOMS_TITLE } from './tabs/rooms';
import { readTab, writeTab } from './writeTab';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;

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
      /** Opens a PDF of the homeowner's page; '' from `fillOrder`. */
      readonly pdfLink: string;
    }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/**
 * The job as saved in the `Job` tab, a blank one where there is none, and the rooms that may be taken into it.
 *
 * @param {string} units Units of a job that is not saved yet, "us" or "metric".
 * @return {object} An `OpenedJob`.
 */
export function openJob(units: unknown): OpenedJob {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const rooms = savedRooms(spreadsheet).map((room) => room.name);
  const blank = emptyHouse(units === 'metric' ? 'metric' : 'us');
  const cells = readTab(spreadsheet, JOB_MARK, JOB_TITLE);
  if (cells.length === 0) return { entry: blank, rooms, problems: [] };
  const saved = houseFromCells(cells);
  return saved.ok ? { entry: saved.entry, rooms, problems: [] } : { entry: blank, rooms, problems: saved.problems };
}

/**
 * Saves the job in the `Job` tab, as typed.
 *
 * @param {object} job A `HouseEntry`.
 * @return {object} A `JobAnswer`: the tab's name, or what is wrong with the job.
 */
export function saveJob(job: unknown): JobAnswer {
  const checked = checkedHouse(job);
  if (!checked.ok) return { status: 'problems', problems: checked.problems };
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const tabs = [oneAtATime(() => writeTab(spreadsheet, jobBlock(checked.entry)))];
  return { status: 'filled', tabs, toPay: '', missing: [], pdfLink: '' };
}

/**
 * Plans every room of the job, saves the job, and fills `Order` and `Job list`. Rooms that share planks get their cut
 * lists and floor plans filled again: what is ordered and what is cut must be one plan.
 *
 * @param {object} job A `HouseEntry`.
 * @return {object} A `JobAnswer`: names of the tabs, what the homeowner pays, what is missing; or what is wrong.
 */
export function fillOrder(job: unknown): JobAnswer {
  return fillFrom(job, (spreadsheet, entry, order, planned) => {
    const done = tickedTasks(readTab(spreadsheet, JOB_LIST_MARK, JOB_LIST_TITLE));
    const blocks = [jobBlock(entry), orderBlock(order), jobListBlock(order, done)];
    const lists = sharedRooms(planned).flatMap((room) => cutBlocks(spreadsheet, room));
    return { tabs: [...blocks, ...lists].map((block) => writeTab(spreadsheet, block)), pdfLink: '' };
  });
}

/**
 * Plans every room of the job and fills `Homeowner`: a page of values only, to share or print.
 *
 * @param {object} job A `HouseEntry`.
 * @return {object} A `JobAnswer` with the link that makes a PDF of that page alone; or what is wrong.
 */
export function fillHomeowner(job: unknown): JobAnswer {
  return fillFrom(job, (spreadsheet, entry, order) => {
    const block = homeownerBlock(order);
    const tabs = [writeTab(spreadsheet, block)];
    const sheet = ownedTab(spreadsheet, HOMEOWNER_MARK, HOMEOWNER_TITLE);
    if (!sheet) return { tabs, pdfLink: '' };
    const paper = entry.units === 'us' ? 'letter' : 'A4';
    const page = {
      spreadsheetId: spreadsheet.getId(),
      sheetId: sheet.getSheetId(),
      paper,
      landscape: block.landscape,
    } as const;
    return { tabs, pdfLink: pdfLink(page) };
  });
}

/** From what the sidebar sent to an order; `fill` is called under the lock, with everything worked out. */
function fillFrom(
  job: unknown,
  fill: (
    spreadsheet: Spreadsheet,
    entry: HouseEntry,
    order: Order,
    planned: PlannedHouse,
  ) => { readonly tabs: readonly string[]; readonly pdfLink: string },
): JobAnswer {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const checked = checkedHouse(job);
  if (!checked.ok) return { status: 'problems', problems: checked.problems };
  const read = readHouse(checked.entry);
  const chosen = chosenRooms(spreadsheet, checked.entry.rooms);
  const found = [...(read.status === 'problems' ? read.problems : []), ...chosen.problems];
  if (read.status === 'problems' || found.length > 0) return { status: 'problems', problems: found };
  const plan = planHouse(chosen.rooms, read.house.shareOffcuts === 'yes');
  if (plan.status === 'problems') return plan;
  const order = orderOf(read.house, plan.planned);
  const filled = oneAtATime(() => fill(spreadsheet, checked.entry, order, plan.planned));
  const toPay = moneyText(order.totals.toPay, read.house.currency);
  return { status: 'filled', ...filled, toPay, missing: order.missing };
}

function sharedRooms({ rooms, sharing }: PlannedHouse): readonly Takeoff[] {
  return rooms.filter((room) => sharing.some((names) => names.includes(room.entry.name)));
}

/** A room's own two tabs, ticks and notes of its cut list kept where the pieces stay the same. */
function cutBlocks(spreadsheet: Spreadsheet, room: Takeoff): readonly TabBlock[] {
  const { name } = room.entry;
  const kept = keptMarks(readTab(spreadsheet, cutListMark(name), cutListTitle(name)));
  return [cutListBlock(room, kept), floorPlanBlock(room)];
}

function savedRooms(spreadsheet: Spreadsheet): readonly RoomEntry[] {
  const { rooms } = entriesFromCells(readTab(spreadsheet, ROOMS_MARK, ROOMS_TITLE));
  return rooms.map((room) => room.entry).filter((entry): entry is RoomEntry => entry !== null);
}

/** The rooms named, in that order; all that are saved when none is named. */
function chosenRooms(
  spreadsheet: Spreadsheet,
  names: readonly string[],
): { readonly rooms: readonly RoomEntry[]; readonly problems: readonly Problem[] } {
  const saved = savedRooms(spreadsheet);
  if (saved.length === 0) return { rooms: [], problems: [{ field: 'rooms', text: problems.noRooms() }] };
  if (names.length === 0) return { rooms: saved, problems: [] };
  const known = saved.map((room) => room.name);
  const unknown = names.filter((name) => !known.some((other) => nameKey(other) === nameKey(name)));
  return {
    rooms: names.flatMap((name) => saved.filter((room) => nameKey(room.name) === nameKey(name))),
    problems: unknown.map((name) => ({ field: 'rooms', text: problems.noSuchRoom(name, known) })),
  };
}
