import { fillCutList, fillFloorPlan, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { Takeoff } from '../../src/takeoff/result';
import { DEMO_ROOM } from '../../src/workbook/demoRoom';
import { addOnOf, createNodeWorkbook, type NodeWorkbookOptions } from '../../src/workbook/nodeWorkbook';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { addOnFiles } from './addOn';
import { takeoffOnce } from './plannedOnce';

const files = await addOnFiles();

/** An embedded workbook with the add-on as it is built from the sources now. */
export function builtWorkbook(options: NodeWorkbookOptions = {}) {
  return createNodeWorkbook(addOnOf(files), options);
}

/** What became of filling a tab; no name where problems kept it from being filled. */
export interface FilledTab {
  readonly tab: string;
  readonly problems: readonly { readonly field: string; readonly text: string }[];
}

const FILLINGS = {
  'cut list': (store: TabStore, planned: Takeoff) => fillCutList(store, planned),
  'floor plan': (store: TabStore, planned: Takeoff) => fillFloorPlan(store, planned),
  rooms: (store: TabStore, planned: Takeoff) => saveRoom(store, planned.entry),
};

/** Plans a room and fills one of its tabs, as the page does. */
export async function fill(workbook: Workbook, name: keyof typeof FILLINGS, entry: RoomEntry): Promise<FilledTab> {
  const result = takeoffOnce(entry);
  if (result.status === 'problems') return { tab: '', problems: result.problems };
  const filled = await FILLINGS[name](storeOf(workbook), result.takeoff);
  if (filled && 'tab' in filled) return { tab: filled.tab, problems: [] };
  return { tab: '', problems: (filled ?? []).map((text) => ({ field: '', text })) };
}

/** The demo's product and rules in a rectangular room of another name and size. */
export function rectangle(name: string, length: string, width: string): RoomEntry {
  return { ...DEMO_ROOM, name, shape: { kind: 'rectangle', length, width } };
}

/** Everything a tab shows, rows of texts. */
export function shownIn(workbook: Workbook, tabName: string): string[][] {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tabName);
  if (!sheet) throw new Error(`There is no tab ${tabName}`);
  return sheet.getDataRange().getDisplayValues();
}

export function tabNames(workbook: Workbook): string[] {
  return workbook.engine.tabs().map((tab) => tab.name);
}
