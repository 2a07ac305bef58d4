/** The menu, and what the sidebar asks the spreadsheet to do. Everything sent either way is plain JSON. */
import type { Units } from '../geometry/length';
import { fingerprint } from '../tabs/fingerprint';
import { NO_LONGER_HOLDS } from '../tabs/oldTab';
import { isPackedBlock, type PackedContent, unpackBlock } from '../tabs/packed';
import type { OurTab, WriteAnswer } from '../tabs/tabStore';
import { oneAtATime } from './oneAtATime';
import { ownedTab, ownedTabs, remarkTab, rememberedOf } from './ownedTabs';
import { serverProblems } from './serverProblems';
import { type CellContent, putOnTop, type ReadTab, readTab, writeTab } from './writeTab';

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

/**
 * Reads the cells of a tab of ours.
 *
 * @param mark what marks the tab as ours
 * @param title its name, if it has not been renamed
 */
export function readTabCells(
  mark: unknown,
  title: unknown,
): Omit<ReadTab, 'cells'> & { readonly cells: PackedContent[][]; readonly version: string } {
  const read = readTab(SpreadsheetApp.getActiveSpreadsheet(), String(mark), String(title));
  const cells = packedCells(read.cells);
  return { ...read, cells, version: versionOf(cells) };
}

/** Lists the tabs of ours. */
export function tabsOfOurs(): readonly OurTab[] {
  const tabs = ownedTabs(SpreadsheetApp.getActiveSpreadsheet());
  return tabs.map(({ mark, sheet }) => ({ mark, tab: sheet.getName(), about: rememberedOf(sheet).about }));
}

/**
 * Says at the top of a tab of ours that it no longer holds.
 *
 * @param mark what marks the tab as ours
 * @param words the line
 */
export function putOnTopOfTab(mark: unknown, words: unknown): void {
  oneAtATime(() => {
    for (const owned of ownedTabs(SpreadsheetApp.getActiveSpreadsheet())) {
      if (owned.mark === String(mark)) putOnTop(owned.sheet, String(words), NO_LONGER_HOLDS);
    }
  });
}

/**
 * Gives a tab of ours another mark and name, as a renamed room needs it.
 *
 * @param mark what marks the tab as ours now
 * @param newMark what is to mark it
 * @param newTitle its name, if it is free
 */
export function renameTab(mark: unknown, newMark: unknown, newTitle: unknown): void {
  oneAtATime(() => {
    remarkTab(SpreadsheetApp.getActiveSpreadsheet(), String(mark), String(newMark), String(newTitle));
  });
}

/**
 * Writes a tab, unless somebody has changed it since it was read.
 *
 * @param block the tab, packed
 * @param version of the tab as it was read; '' writes whatever stands there
 */
export function fillTab(block: unknown, version: unknown): WriteAnswer {
  const start = Date.now();
  if (!isPackedBlock(block)) throw new Error(serverProblems.noTab());
  const unpacked = unpackBlock(block);
  return oneAtATime((): WriteAnswer => {
    const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
    const { mark, title } = unpacked;
    if (version !== '' && versionOf(packedCells(readTab(spreadsheet, mark, title).cells)) !== version) {
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

function versionOf(cells: PackedContent[][]): string {
  const text = JSON.stringify(cells);
  return `${text.length}-${fingerprint(text)}`;
}

/**
 * Brings a tab to the front.
 *
 * @param name of the tab
 */
export function showTab(name: unknown): void {
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const sheet = spreadsheet.getSheetByName(String(name));
  if (!sheet) throw new Error(serverProblems.noSuchTab(String(name)));
  spreadsheet.setActiveSheet(sheet);
}
