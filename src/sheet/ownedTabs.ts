/**
 * Which tabs are ours. A tab is ours when its developer metadata says so, never because of its name: a person may
 * rename our tab, or have one of their own with the name we would like.
 */

import { UNFINISHED_MARK } from '../tabs/triedCalls';

type Spreadsheet = GoogleAppsScript.Spreadsheet.Spreadsheet;
type Sheet = GoogleAppsScript.Spreadsheet.Sheet;

/** `UNFINISHED` marks a tab that is still being written; one that is found later was left by a run that was cut off. */
const [OWNER_KEY, UNFINISHED] = UNFINISHED_MARK;
/** What is remembered with a tab besides its mark. */
const MEMORY_KEY = 'plank-ledger-lines';
const ABOUT_KEY = 'plank-ledger-about';

/** The longest tab name the spreadsheet service takes, characters. From memory; nothing depends on more. */
const LONGEST_NAME = 100;

/**
 * Characters that a downloaded workbook file, a formula that names the tab, or another program that asks for its cells has
 * trouble with. A colon is the worst: the service's own interface for programs takes 'Den: up'!A1 for a range.
 */
const REPLACED: Readonly<Record<string, string>> = {
  "'": '’',
  '/': '-',
  '\\': '-',
  '[': '(',
  ']': ')',
  '*': 'x',
  '?': '.',
};

/**
 * Our tab with this mark, or null. A person may have copied it, and the copy carries the mark too: then the one that
 * has the wanted name is taken, else the first.
 */
export function ownedTab(spreadsheet: Spreadsheet, mark: string, title: string): Sheet | null {
  const found = tabsMarked(spreadsheet, mark);
  if (found.length < 2) return found[0] ?? null;
  const wanted = tabName(title);
  return found.find((sheet) => tabName(sheet.getName()) === wanted) ?? found[0];
}

/**
 * Gives a tab that still has the name an earlier version gave it, with a colon, the name it has now; formulas that point at it
 * follow. A name that a person gave it stays.
 */
export function renameFromColon(spreadsheet: Spreadsheet, sheet: Sheet, title: string): void {
  const name = sheet.getName();
  const given = name.replace(/ \(\d+\)$/, '');
  if (given.includes(':') && tabName(given) === tabName(title)) {
    sheet.setName(freeName(spreadsheet.getSheets(), title));
  }
}

/** Puts in a tab at the end, ours but unfinished, under a name nobody has. */
export function insertUnfinishedTab(spreadsheet: Spreadsheet, title: string): Sheet {
  const sheets = spreadsheet.getSheets();
  const sheet = spreadsheet.insertSheet(freeName(sheets, `Filling ${title}`), sheets.length);
  try {
    sheet.addDeveloperMetadata(OWNER_KEY, UNFINISHED);
  } catch (failure) {
    // Without its mark nothing would tell it from a person's own tab later.
    spreadsheet.deleteSheet(sheet);
    throw failure;
  }
  return sheet;
}

/** Gives the unfinished tab its mark and its name, or `name (2)` when a tab of that name is there already. */
export function finishTab(spreadsheet: Spreadsheet, sheet: Sheet, mark: string, title: string): void {
  sheet.setName(freeName(spreadsheet.getSheets(), title));
  for (const metadata of marksOf(spreadsheet, UNFINISHED)) metadata.setValue(mark);
}

/** What was remembered with a tab; both '' when nothing was. */
export interface Remembered {
  readonly memory: string;
  readonly about: string;
}

/** Remembers these with a tab in the place of what was remembered before. */
export function remember(sheet: Sheet, { memory, about }: Remembered): void {
  setMetadata(sheet, MEMORY_KEY, memory);
  setMetadata(sheet, ABOUT_KEY, about);
}

export function rememberedOf(sheet: Sheet): Remembered {
  const values = new Map(sheet.getDeveloperMetadata().map((entry) => [entry.getKey(), entry.getValue() ?? '']));
  return { memory: values.get(MEMORY_KEY) ?? '', about: values.get(ABOUT_KEY) ?? '' };
}

/** Every finished tab of ours. */
export function ownedTabs(spreadsheet: Spreadsheet): readonly { readonly mark: string; readonly sheet: Sheet }[] {
  const marks = spreadsheet.createDeveloperMetadataFinder().withKey(OWNER_KEY).find();
  return marks.flatMap((entry) => {
    const sheet = entry.getLocation().getSheet();
    const mark = entry.getValue() ?? '';
    return sheet && mark !== UNFINISHED ? [{ mark, sheet }] : [];
  });
}

/**
 * Gives our tab another mark and, unless a person has given it one, the name that goes with it. The name first: when the mark
 * fails, the tab is still found by the old one.
 */
export function remarkTab(spreadsheet: Spreadsheet, mark: string, newMark: string, newTitle: string): void {
  const [kind] = newTitle.split(' - ');
  for (const { sheet } of ownedTabs(spreadsheet).filter((owned) => owned.mark === mark)) {
    const others = spreadsheet.getSheets().filter((other) => other.getSheetId() !== sheet.getSheetId());
    const [name, free] = [sheet.getName(), freeName(others, newTitle)];
    if (name !== free && tabName(name).startsWith(`${kind} - `)) sheet.setName(free);
    setMetadata(sheet, OWNER_KEY, newMark);
  }
}

function setMetadata(sheet: Sheet, key: string, value: string): void {
  const [found] = sheet.getDeveloperMetadata().filter((entry) => entry.getKey() === key);
  if (found) found.setValue(value);
  else sheet.addDeveloperMetadata(key, value);
}

/** Takes away what a run that was cut off has left. Only under the lock: nobody else is writing then. */
export function removeUnfinishedTabs(spreadsheet: Spreadsheet): void {
  for (const sheet of tabsMarked(spreadsheet, UNFINISHED)) {
    try {
      spreadsheet.deleteSheet(sheet);
    } catch (failure) {
      // One tab must stay in view, and a person may have hidden all others meanwhile.
      const sheets = spreadsheet.getSheets();
      if (sheets.filter((one) => !one.isSheetHidden()).length > 1) throw failure;
      sheets[0].showSheet();
      spreadsheet.deleteSheet(sheet);
    }
  }
}

/** A title as a tab can be named: awkward characters replaced, at most 100 characters, no half emoji at the end. */
export function tabName(title: string, longest: number = LONGEST_NAME): string {
  const plain = title
    .replace(/:/g, ' - ')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .replace(/['/\\[\]*?]/g, (character) => REPLACED[character])
    .trim();
  if (plain.length <= longest) return plain;
  let kept = '';
  for (const character of plain) {
    if (kept.length + character.length >= longest) break;
    kept += character;
  }
  return `${kept.trim()}…`;
}

/** Names that differ only in capitals count as the same. */
function freeName(sheets: readonly Sheet[], title: string): string {
  const taken = sheets.map((sheet) => sheet.getName().toLowerCase());
  let name = tabName(title);
  for (let copy = 2; taken.indexOf(name.toLowerCase()) >= 0; copy++) {
    const suffix = ` (${copy})`;
    name = tabName(title, LONGEST_NAME - suffix.length) + suffix;
  }
  return name;
}

function tabsMarked(spreadsheet: Spreadsheet, mark: string): Sheet[] {
  const found: Sheet[] = [];
  for (const metadata of marksOf(spreadsheet, mark)) {
    const sheet = metadata.getLocation().getSheet();
    if (sheet) found.push(sheet);
  }
  return found;
}

function marksOf(spreadsheet: Spreadsheet, mark: string) {
  return spreadsheet.createDeveloperMetadataFinder().withKey(OWNER_KEY).withValue(mark).find();
}
