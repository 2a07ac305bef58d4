/** The menu, and what the sidebar asks the spreadsheet to do. Everything sent either way is plain JSON. */
import type { Units } from '../geometry/length';
import type { RoomEntry } from '../takeoff/entry';
import type { Problem, Takeoff } from '../takeoff/result';
import { takeoff } from '../takeoff/takeoff';
import { checkedEntry, LONGEST_ROOM_NAME } from './checkedEntry';
import { oneAtATime } from './oneAtATime';
import { ownedTab } from './ownedTabs';
import { tabProblems } from './tabProblems';
import type { TabBlock } from './tabs/block';
import { cutListBlock, cutListMark, cutListTitle } from './tabs/cutList';
import { floorPlanBlock } from './tabs/floorPlan';
import { keptMarks } from './tabs/keptMarks';
import { type PackedBlock, type PackedContent, unpackBlock } from './tabs/packed';
import { entriesFromCells, ROOMS_MARK, ROOMS_TITLE, roomsBlock, withRoom } from './tabs/rooms';
import type { WriteAnswer } from './tabs/tabStore';
import { type CellContent, readTab, writeTab } from './writeTab';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;

/** What became of filling one tab. */
export interface FilledTab {
  /** Name of the tab; '' when problems kept it from being filled. */
  readonly tab: string;
  /** How long it took on the server, milliseconds. */
  readonly ms: number;
  readonly problems: readonly Problem[];
}

/** Rooms saved in the spreadsheet, and what is wrong with those that cannot be read. */
export interface RoomsFound {
  readonly rooms: readonly RoomEntry[];
  readonly problems: readonly string[];
}

/**
 * How the locale of a spreadsheet ends where feet and inches are used: the United States, Liberia, Myanmar. From memory
 * of the Unicode locale data; elsewhere a person chooses.
 */
const FEET_AND_INCHES = /[_-](US|LR|MM)$/;

/** Adds the Plank Ledger menu. Asks for nothing else: it runs before the add-on may see the spreadsheet. */
export function onOpen(): void {
  SpreadsheetApp.getUi().createAddonMenu().addItem('Plan a floor', 'openLedger').addToUi();
}

/** Adds the menu at once when the add-on is installed into a spreadsheet that is open. */
export function onInstall(): void {
  onOpen();
}

/** Opens the room entry at the side of the spreadsheet. */
export function openLedger(): void {
  SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile('Sidebar').setTitle('Plank Ledger'));
}

/** Says which units the sidebar starts in: feet and inches where the spreadsheet's country uses them. */
export function startUnits(): Units {
  return FEET_AND_INCHES.test(SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetLocale()) ? 'us' : 'metric';
}

/** Reads the rooms saved in this spreadsheet. */
export function listRooms(): RoomsFound {
  const { rooms, problems } = readRooms(SpreadsheetApp.getActiveSpreadsheet());
  return { rooms: rooms.flatMap(({ entry }) => (entry ? [entry] : [])), problems };
}

/**
 * Saves a room among the others, in the place of one that has its name.
 *
 * @param entry the room as typed
 */
export function saveRoom(entry: unknown): FilledTab {
  return timed(() => {
    const checked = namedEntry(entry);
    if (!checked.ok) return checked.problems;
    return oneAtATime(() => {
      const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
      const saved = readRooms(spreadsheet);
      // Written over, a tab that cannot be read would be lost.
      if (!saved.isReadable) return saved.problems.map((text) => ({ field: '', text }));
      return writeTab(spreadsheet, roomsBlock(withRoom(saved.rooms, checked.entry)));
    });
  });
}

/**
 * Plans a room and fills its cut list. Ticks and notes of pieces that stay the same are kept.
 *
 * @param entry the room as typed
 */
export function fillCutList(entry: unknown): FilledTab {
  return fillFromPlan(entry, (planned, spreadsheet) => {
    const { name } = planned.entry;
    return cutListBlock(planned, keptMarks(readTab(spreadsheet, cutListMark(name), cutListTitle(name))));
  });
}

/**
 * Plans a room and fills its floor plan.
 *
 * @param entry the room as typed
 */
export function fillFloorPlan(entry: unknown): FilledTab {
  return fillFromPlan(entry, floorPlanBlock);
}

/**
 * Reads the cells of a tab of ours.
 *
 * @param mark what marks the tab as ours
 * @param title its name, if it has not been renamed
 */
export function readTabCells(mark: unknown, title: unknown): { cells: PackedContent[][]; version: string } {
  const cells = packedCells(readTab(SpreadsheetApp.getActiveSpreadsheet(), String(mark), String(title)));
  return { cells, version: versionOf(cells) };
}

/**
 * Writes a tab, unless somebody has changed it since it was read.
 *
 * @param block the tab, packed
 * @param version of the tab as it was read; '' writes whatever stands there
 */
export function fillTab(block: unknown, version: unknown): WriteAnswer {
  const start = Date.now();
  const unpacked = unpackBlock(block as PackedBlock);
  return oneAtATime((): WriteAnswer => {
    const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
    const { mark, title } = unpacked;
    if (version !== '' && versionOf(packedCells(readTab(spreadsheet, mark, title))) !== version) {
      return { status: 'changed' };
    }
    const tab = writeTab(spreadsheet, unpacked);
    const sheetId = ownedTab(spreadsheet, mark, title)?.getSheetId() ?? 0;
    return { status: 'written', tab, spreadsheetId: spreadsheet.getId(), sheetId, ms: Date.now() - start };
  });
}

/** Dates may not pass to the page. */
function packedCells(cells: readonly (readonly CellContent[])[]): PackedContent[][] {
  return cells.map((row) =>
    row.map((cell): PackedContent => {
      if (typeof cell !== 'object' || cell === null) return cell;
      const date = cell as Date;
      return [date.getFullYear(), date.getMonth() + 1, date.getDate()];
    }),
  );
}

/** Source: FNV-1a, 32 bits (Fowler, Noll, Vo), over the cells as text. */
function versionOf(cells: PackedContent[][]): string {
  const text = JSON.stringify(cells);
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return `${text.length}-${hash >>> 0}`;
}

/**
 * Brings a tab to the front.
 *
 * @param name of the tab
 */
export function showTab(name: unknown): void {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const sheet = spreadsheet.getSheetByName(String(name));
  if (!sheet) throw new Error(tabProblems.noSuchTab(String(name)));
  spreadsheet.setActiveSheet(sheet);
}

/** The plan is made before the lock is asked for: others wait only while cells are written. */
function fillFromPlan(entry: unknown, blockOf: (planned: Takeoff, spreadsheet: Spreadsheet) => TabBlock): FilledTab {
  return timed(() => {
    const checked = namedEntry(entry);
    if (!checked.ok) return checked.problems;
    const result = takeoff(checked.entry);
    if (result.status === 'problems') return result.problems;
    return oneAtATime(() => {
      const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
      return writeTab(spreadsheet, blockOf(result.takeoff, spreadsheet));
    });
  });
}

function readRooms(spreadsheet: Spreadsheet) {
  return entriesFromCells(readTab(spreadsheet, ROOMS_MARK, ROOMS_TITLE));
}

/** An entry whose name can stand in the name of a tab. */
function namedEntry(entry: unknown): ReturnType<typeof checkedEntry> {
  const checked = checkedEntry(entry);
  if (!checked.ok) return checked;
  const name = checked.entry.name.trim();
  if (name === '') return { ok: false, problems: [{ field: 'name', text: tabProblems.noRoomName() }] };
  if (name.length > LONGEST_ROOM_NAME) {
    return { ok: false, problems: [{ field: 'name', text: tabProblems.longName(name.length, LONGEST_ROOM_NAME) }] };
  }
  return { ok: true, entry: { ...checked.entry, name } };
}

/** @param fill answers with the name of the tab, or with the problems that kept it from being filled */
function timed(fill: () => string | readonly Problem[]): FilledTab {
  const start = Date.now();
  const filled = fill();
  const isTab = typeof filled === 'string';
  return { tab: isTab ? filled : '', ms: Date.now() - start, problems: isTab ? [] : filled };
}
