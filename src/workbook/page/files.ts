/** Files that come in and go out: the buttons, and a file dropped on the page. */

import { button, element } from '../../sidebar/parts/dom';
import { LOCALES, localeNamed } from '../locales';
import type { SpreadsheetLibrary } from '../oSpreadsheetCopy';
import type { LibraryLocale } from '../oSpreadsheetEngine';
import { csvOf } from '../xlsx/csv';
import { readXlsx } from '../xlsx/readXlsx';
import { writeXlsx } from '../xlsx/writeXlsx';
import { openDialog } from './focus';
import { ask, request } from './link';
import type { PageWorkbook } from './openedWorkbook';
import { printTab } from './printTab';
import { goTo } from './workbooksDialog';

export interface FileOptions {
  readonly library: SpreadsheetLibrary;
  readonly workbook: PageWorkbook;
  /** Of the workbook that is open. */
  readonly name: () => string;
}

/** What could not be taken over is told once the new workbook is open, which is another page. */
const TOLD = 'plank-ledger left out';

export function fileButtons(options: FileOptions): HTMLElement[] {
  const { library, workbook, name } = options;
  const { engine } = workbook;
  const pick = element('input', { type: 'file', accept: '.xlsx', hidden: true, 'aria-label': 'File to bring in' });
  pick.addEventListener('change', () => {
    const file = pick.files?.[0];
    if (file) void bringInFile(options, file);
    pick.value = '';
  });
  const tabName = () => workbook.spreadsheetApp.getActiveSheet().getName();
  const saveXlsx = async () => {
    workbook.keep();
    save(`${name()}.xlsx`, XLSX_TYPE, await writeXlsx(engine, library, localeOf(workbook)));
  };
  const saveCsv = () =>
    save(`${name()}, ${tabName()}.csv`, 'text/csv;charset=utf-8', csvOf(engine, engine.activeTab()));
  return [
    button('Bring in .xlsx', () => pick.click()),
    pick,
    button('Save as .xlsx', () => void orTold('The file could not be made', saveXlsx)),
    button('Tab as CSV', () => void orTold('The file could not be made', async () => saveCsv())),
    button('Print tab or PDF', () => printTab(engine, engine.activeTab(), `${name()}, ${tabName()}`)),
  ];
}

const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

function save(fileName: string, type: string, content: string | Uint8Array): void {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  // No system takes all of these in a file's name.
  const download = fileName.replace(/[\\/:*?"<>|]/g, '-');
  element('a', { href: address, download }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

const localeOf = ({ engine }: PageWorkbook): LibraryLocale =>
  LOCALES[localeNamed(engine.model.getters.getLocale().code)] as LibraryLocale;

/** @returns whether the work is done; why not is told */
async function orTold(title: string, work: () => Promise<void>): Promise<boolean> {
  try {
    await work();
    return true;
  } catch (failure) {
    tell(title, [(failure as Error).message]);
    return false;
  }
}

/** A file dropped anywhere on the page is brought in. */
export function takeDroppedFiles(options: FileOptions): void {
  const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
  // Before the grid hears of it; a page that does nothing leaves for the file.
  document.addEventListener('dragover', (event) => hasFile(event) && event.preventDefault(), true);
  document.addEventListener(
    'drop',
    (event) => {
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      event.preventDefault();
      event.stopPropagation();
      void bringInFile(options, file);
    },
    true,
  );
}

async function bringInFile(options: FileOptions, file: File): Promise<void> {
  await orTold(`"${file.name}" was not brought in`, async () => {
    const bytes = new Uint8Array(await file.arrayBuffer());
    await bringIn(options, file.name.replace(/\.xlsx$/i, ''), bytes, await fingerprint(bytes));
  });
}

/** The file that was named on the command line: a second time, the workbook that was made of it is opened. @returns whether that is under way */
export async function bringInGiven(options: FileOptions, name: string): Promise<boolean> {
  return orTold(`"${name}.xlsx" was not brought in`, async () => {
    const bytes = new Uint8Array(await (await request('given')).arrayBuffer());
    const from = await fingerprint(bytes);
    const made = await ask<{ readonly name: string }>('madeFrom', { from });
    if (made.name !== '') goTo(made.name);
    else await bringIn(options, name, bytes, from);
  });
}

async function bringIn({ library, workbook }: FileOptions, name: string, bytes: Uint8Array, from: string) {
  const { data, notes } = readXlsx(bytes, library, localeOf(workbook));
  const made = await ask<{ readonly name: string }>('bringIn', { name, from, data });
  sessionStorage.setItem(TOLD, JSON.stringify({ name: made.name, notes }));
  goTo(made.name);
}

async function fingerprint(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes as BufferSource);
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What could not be taken over from the file that this workbook was just made of. */
export function tellLeftOut(name: string): void {
  const told = JSON.parse(sessionStorage.getItem(TOLD) ?? 'null') as { name: string; notes: string[] } | null;
  if (told?.name !== name) return;
  sessionStorage.removeItem(TOLD);
  if (told.notes.length > 0) tell('Not everything of the file is as it was', told.notes);
}

function tell(title: string, lines: readonly string[]): void {
  const dialog = element('dialog', { 'aria-label': title });
  const list = element('ul', {}, ...lines.map((line) => element('li', {}, line)));
  dialog.append(
    element('h2', {}, title),
    list,
    button('Close', () => dialog.close()),
  );
  openDialog(dialog);
}
