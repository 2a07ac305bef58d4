import { addOnFiles } from '../../src/build.mjs';
import type { RoomEntry } from '../../src/takeoff/entry';
import { DEMO_ROOM } from '../../src/workbook/demoRoom';
import { addOnOf, createNodeWorkbook, type NodeWorkbookOptions } from '../../src/workbook/nodeWorkbook';
import type { Workbook } from '../../src/workbook/workbook';

const files = await addOnFiles();

/** An embedded workbook with the add-on as it is built from the sources now. */
export function builtWorkbook(options: NodeWorkbookOptions = {}) {
  return createNodeWorkbook(addOnOf(files), options);
}

/** What the add-on answers when it is to fill a tab. */
export interface FilledTab {
  readonly tab: string;
  readonly ms: number;
  readonly problems: readonly { readonly field: string; readonly text: string }[];
}

/** Calls one of the functions that fill a tab, as the sidebar does. */
export function fill(workbook: Workbook, functionName: string, entry: unknown): FilledTab {
  return workbook.runFromPage(functionName, [entry]) as FilledTab;
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
