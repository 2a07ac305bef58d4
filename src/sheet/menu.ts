/** The menu, and what the sidebar asks the spreadsheet to do. Everything sent either way is plain JSON. */
import type { Units } from '../geometry/length';
import { isDate } from '../tabs/dates';
import { fingerprint } from '../tabs/fingerprint';
import { NO_LONGER_HOLDS } from '../tabs/oldTab';
import { isPackedBlock, type PackedContent, unpackBlock } from '../tabs/packed';
import type { OurTab, WriteAnswer } from '../tabs/tabStore';
import { unitsOfLocale } from '../takeoff/text/countryUnits';
import { oneAtATime } from './oneAtATime';
import { ownedTab, ownedTabs, remarkTab, rememberedOf } from './ownedTabs';
import { serverProblems } from './serverProblems';
import { putOnTop, type ReadTab, readTab, writeTab } from './writeTab';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;

/** Adds the Plank Ledger menu. Asks for nothing else: it runs before the add-on may see the spreadsheet. */
export function onOpen(): void {
  const menu = SpreadsheetApp.getUi().createAddonMenu().addItem('Plan a floor', 'openLedger');
  menu.addItem('Check this spreadsheet', 'checkSpreadsheet').addToUi();
}

/** Adds the menu at once when the add-on is installed into a spreadsheet that is open. */
export function onInstall(): void {
  onOpen();
}

/** Opens the room entry at the side of the spreadsheet. */
export function openLedger(): void {
  SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile('Sidebar').setTitle('Plank Ledger'));
}

/** Checks this spreadsheet: opens the page that tries what Plank Ledger believes of spreadsheets and lists what it found. */
export function checkSpreadsheet(): void {
  SpreadsheetApp.getUi().showSidebar(HtmlService.createHtmlOutputFromFile('Check').setTitle('Spreadsheet check'));
}

/** Says which units the sidebar starts in: feet and inches where the spreadsheet's country uses them. */
export function startUnits(): Units {
  return unitsOfLocale(SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetLocale());
}

/** Says which country's spreadsheet this is: dates to be handed over are written as it writes them. */
export function spreadsheetLocale(): string {
  return SpreadsheetApp.getActiveSpreadsheet().getSpreadsheetLocale();
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
  const spreadsheet = SpreadsheetApp.getActiveSpreadsheet();
  const read = readTab(spreadsheet, String(mark), String(title));
  const cells = packedCells(spreadsheet, read);
  return { ...read, cells, version: versionOf(cells, read) };
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
    const isUnchanged = () => version === '' || currentVersion(spreadsheet, mark, title) === version;
    const tab = isUnchanged() ? writeTab(spreadsheet, unpacked, isUnchanged) : null;
    if (tab === null) return { status: 'changed' };
    const sheetId = ownedTab(spreadsheet, mark, title)?.getSheetId() ?? 0;
    return { status: 'written', tab, spreadsheetId: spreadsheet.getId(), sheetId, ms: Date.now() - start };
  });
}

/**
 * Dates may not pass to the page as they are. A cell with a date holds midnight in the spreadsheet's own time zone, which
 * need not be the script's.
 */
function packedCells(spreadsheet: Spreadsheet, { cells }: ReadTab): PackedContent[][] {
  return cells.map((row, rowIndex) =>
    row.map((cell, columnIndex): PackedContent => {
      if (typeof cell !== 'object' || cell === null) return cell;
      // A picture in the cell: it could not be put back.
      if (!isDate(cell)) throw new Error(serverProblems.picture(rowIndex + 1, columnIndex + 1));
      const shown = Utilities.formatDate(cell as Date, spreadsheet.getSpreadsheetTimeZone(), 'yyyy-M-d');
      const [year, month, day] = shown.split('-').map(Number);
      return [year, month, day];
    }),
  );
}

function currentVersion(spreadsheet: Spreadsheet, mark: string, title: string): string {
  const read = readTab(spreadsheet, mark, title);
  return versionOf(packedCells(spreadsheet, read), read);
}

/** A formula counts by its text: what it shows may change by itself, and then a tab could never be filled. */
function versionOf(cells: readonly (readonly PackedContent[])[], { formulas, notes }: ReadTab): string {
  const compared = cells.map((row) => [...row]);
  for (const [row, column, formula] of formulas) compared[row][column] = formula;
  const text = JSON.stringify([compared, notes]);
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

/** Where the page finds what it is to show in a dialog. */
const LARGE_VIEW = 'id="large-view" hidden>';
/** Pixels: our choice of what no dialog needs to be smaller or larger than. */
const DIALOG = { least: 300, most: 2400 };

/**
 * Opens a dialog over the spreadsheet with the page in it, showing one floor.
 *
 * @param data what the page is to show
 * @param width of the dialog, pixels
 * @param height of the dialog, pixels
 */
export function showLargeView(data: unknown, width: unknown, height: unknown): void {
  const page = HtmlService.createHtmlOutputFromFile('Sidebar').getContent();
  // Whatever a room is named must be no tag and no sign of its own in the page.
  const json = JSON.stringify(data).replace(/</g, '\\u003c').replace(/&/g, '\\u0026');
  const html = HtmlService.createHtmlOutput(page.replace(LARGE_VIEW, () => LARGE_VIEW + json));
  const size = (pixels: unknown) => Math.min(DIALOG.most, Math.max(DIALOG.least, Math.round(Number(pixels)) || 0));
  SpreadsheetApp.getUi().showModalDialog(html.setWidth(size(width)).setHeight(size(height)), 'The floor');
}
