/** Files on the page: brought in by the command line, the button and by dropping, taken out, printed. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJs from 'exceljs';
import { strToU8, unzipSync, zipSync } from 'fflate';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEMO_ROOM } from '../../../src/workbook/demoRoom';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { closePages, openPage, sharedBrowser, type WorkbookPage } from '../../support/browser';
import { builtWorkbook, fill } from '../../support/builtWorkbook';
import { convertedBy, findOffice, shownBy } from '../../support/office';
import { type Program, startProgram } from '../../support/program';
import { xmlInNode } from '../../support/xmlInNode';

const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
const files = mkdtempSync(join(tmpdir(), 'plank-ledger-files-'));
const sheet = join(files, 'Mill Lane.xlsx');
const office = findOffice();
let browser: Browser;
let program: Program;

beforeAll(async () => {
  await estimate(sheet);
  [browser, program] = await Promise.all([sharedBrowser(), startProgram(folder, 0, sheet)]);
});

afterAll(async () => {
  await closePages();
  await program.kill();
  for (const made of [folder, files]) rmSync(made, { recursive: true, force: true });
});

/** An invented estimating sheet as a library from the registry writes it. */
async function estimate(file: string): Promise<void> {
  const book = new ExcelJs.Workbook();
  const rooms = book.addWorksheet('Rooms measured');
  rooms.addRow(['Mill Lane']);
  rooms.mergeCells('A1:C1');
  rooms.addRow(['Room', 'Length', 'Width', 'Area', 'Boxes']);
  rooms.addRow(['Hall', 20, 6, { formula: 'B3*C3', result: 120 }, { formula: 'PLANK_BOXES(D3,24,10%)', result: 6 }]);
  rooms.getColumn(1).width = 30;
  rooms.getCell('A2').font = { bold: true };
  rooms.getCell('D3').numFmt = '0.00';
  rooms.getCell('D3').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFFFEE99' } };
  const prices = book.addWorksheet('Prices');
  prices.addRow(['A box', 61.5]);
  prices.addRow(['In all', { formula: "B1*'Rooms measured'!E3", result: 369 }]);
  book.definedNames.add('Prices!$B$1', 'BoxPrice');
  prices.addRow(['Twice', { formula: 'BoxPrice*2', result: 123 }]);
  prices.getCell('A1').note = 'from the yard';
  await book.xlsx.writeFile(file);
}

/** The demo's living room filled in and taken out. */
async function filledHouse(): Promise<Buffer> {
  xmlInNode();
  const workbook = builtWorkbook();
  await fill(workbook, 'cut list', DEMO_ROOM);
  await fill(workbook, 'rooms', DEMO_ROOM);
  return Buffer.from(await writeXlsx(workbook.engine, nodeLibrary(), LOCALES.en_US as LibraryLocale));
}

const pageOf = async (address: string) => openPage(browser, address);
const saved = ({ page }: WorkbookPage) =>
  page.waitForFunction(() => window.plankLedger.saving().kind === 'saved').then(() => undefined);

async function opened(window: WorkbookPage, name: string): Promise<void> {
  await window.page.waitForURL((address) => address.searchParams.get('workbook') === name);
  await window.page.waitForSelector('body[data-ready="yes"]');
}

/** By hand: 120 x 1.1 is 132 sq ft, 132 / 24 is 5.5: six boxes; six at 61.50 are 369. */
async function expectEstimate(window: WorkbookPage): Promise<void> {
  expect(await window.shownIn('D3', 'Rooms measured')).toBe('120.00');
  expect(await window.shownIn('E3', 'Rooms measured')).toBe('6');
  expect(await window.shownIn('B2', 'Prices')).toBe('369');
  expect(await window.shownIn('B3', 'Prices')).toBe('123');
}

test('a file on the command line is opened with values, formulas and looks, and the second time again', async () => {
  const mill = await pageOf(program.address);
  await opened(mill, 'Mill Lane');
  await expectEstimate(mill);
  expect(await mill.tabNames()).toEqual(['Rooms measured', 'Prices']);
  const look = await mill.page.evaluate(() => {
    const { engine } = window.plankLedger.workbook;
    const [rooms] = engine.tabs();
    const id = rooms?.id ?? '';
    return [engine.look(id, 1, 0).bold, engine.look(id, 2, 3).fillColor, engine.columnWidth(id, 0), engine.merges(id)];
  });
  expect(look[0]).toBe(true);
  expect(look[1]).toMatch(/^#ffee99$/i);
  // 30 letters wide, about 7 pixels each.
  expect(look[2]).toBeGreaterThan(190);
  expect(look[3]).toMatchObject([{ top: 0, bottom: 0, left: 0, right: 2 }]);
  expect(mill.errors).toEqual([]);
  await mill.close();
});

test('the same file on the command line a second time: the workbook that was made of it, as it stands now', async () => {
  const mill = await pageOf(`${program.address}?workbook=Mill%20Lane`);
  await mill.typeInto('B7', 'typed later');
  await saved(mill);
  await mill.close();
  await program.kill();
  program = await startProgram(folder, 0, sheet);
  const again = await pageOf(program.address);
  await opened(again, 'Mill Lane');
  expect(await again.shownIn('B7', 'Rooms measured')).toBe('typed later');
  await again.close();
});

/** As a person drops a file on the page. */
async function drop({ page }: WorkbookPage, name: string, bytes: Buffer): Promise<void> {
  await page.evaluate(
    ([fileName, content]) => {
      const data = Uint8Array.from(atob(content), (letter) => letter.charCodeAt(0));
      const transfer = new DataTransfer();
      transfer.items.add(new File([data], fileName));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    },
    [name, bytes.toString('base64')] as const,
  );
}

/** Presses a button that makes a file, and takes the file. */
async function downloaded({ page }: WorkbookPage, words: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: words }).click(),
  ]);
  const file = join(files, download.suggestedFilename());
  await download.saveAs(file);
  return file;
}

test.skipIf(!office)(
  'a file of LibreOffice dropped on the page, typed in, taken out: the same values there',
  async () => {
    const mill = await pageOf(`${program.address}?workbook=Mill%20Lane`);
    const asked: string[] = [];
    mill.page.on('request', (request) => asked.push(request.url()));
    await drop(mill, 'From the office.xlsx', convertedBy(office ?? '', sheet, 'xlsx'));
    await opened(mill, 'From the office');
    expect(await mill.page.getByRole('dialog').count()).toBe(0);
    const note = () => {
      const prices = window.plankLedger.workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName('Prices');
      return prices?.getRange('A1').getNote();
    };
    expect(await mill.page.evaluate(note)).toBe('from the yard');
    await expectEstimate(mill);
    await mill.page.evaluate(() => {
      const sheet = window.plankLedger.workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName('Rooms measured');
      sheet?.getRange('B9').setValue('=PLANK_AREA(12.5, 10)');
      sheet?.getRange('B10').setValue('=B9*2');
    });
    const file = await downloaded(mill, 'Save as .xlsx');
    const shown = shownBy(office ?? '', file);
    const tab = await mill.tab('Rooms measured');
    const lines = (shown.get('Rooms measured') ?? '').trimEnd().split('\n');
    // By hand: 12.5 ft by 10 ft is 125 sq ft, twice that 250.
    expect([lines[8], lines[9]]).toEqual([',125,,,', ',250,,,']);
    // LibreOffice writes numbers as they are, not as they are shown.
    const plain = (text: string) => (text !== '' && Number.isFinite(Number(text)) ? String(Number(text)) : text);
    expect(lines.map((line) => line.split(','))).toEqual(tab.map((row) => row.slice(0, 5).map(plain)));
    expect((shown.get('Prices') ?? '').split('\n').slice(0, 3)).toEqual(['A box,61.5', 'In all,369', 'Twice,123']);
    // Nothing was asked of anybody else, all the way.
    const { origin } = new URL(program.address);
    expect(asked.length).toBeGreaterThan(10);
    expect(asked.filter((url) => !url.startsWith(`${origin}/`) && !/^(?:data|blob):/.test(url))).toEqual([]);
    expect(mill.errors).toEqual([]);
    await mill.close();
  },
);

test('after the dialog of what was left out is closed by a key, keys go to the grid', async () => {
  const mill = await pageOf(`${program.address}?workbook=Mill%20Lane`);
  const parts = unzipSync(readFileSync(sheet));
  await drop(mill, 'With macros.xlsx', Buffer.from(zipSync({ ...parts, 'xl/vbaProject.bin': strToU8('x') })));
  await opened(mill, 'With macros');
  const left = mill.page.getByRole('dialog', { name: 'Not everything of the file is as it was' });
  expect(await left.getByRole('listitem').allTextContents()).toEqual(['Macros were left out.']);
  await mill.page.keyboard.press('Escape');
  await expect.poll(() => left.count()).toBe(0);
  await mill.page.keyboard.type('Mill Road');
  await mill.page.keyboard.press('Enter');
  await expect.poll(() => mill.shownIn('A1', 'Rooms measured')).toBe('Mill Road');
  await mill.close();
});

test('what is no .xlsx file is told and leaves the page and the program as they are', async () => {
  const mill = await pageOf(`${program.address}?workbook=Mill%20Lane`);
  await drop(mill, 'letter.xlsx', Buffer.from('Dear all'));
  const dialog = mill.page.getByRole('dialog', { name: '"letter.xlsx" was not brought in' });
  expect(await dialog.textContent()).toContain('It is not an .xlsx file.');
  await dialog.getByRole('button', { name: 'Close' }).click();
  expect(await mill.shownIn('A3', 'Rooms measured')).toBe('Hall');
  expect(mill.errors).toEqual([]);
  await mill.close();
});

test('a house that went out is found again; a tab as CSV, and on paper as wide as the page with its headings', async () => {
  const mill = await pageOf(`${program.address}?workbook=Mill%20Lane`);
  await drop(mill, 'House.xlsx', await filledHouse());
  await opened(mill, 'House');
  const cutList = 'Cut list - Living room';
  expect(await mill.tabNames()).toEqual(['Sheet1', cutList, 'Rooms']);
  await mill.page.evaluate((name) => {
    window.plankLedger.workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name)?.activate();
  }, cutList);
  const csv = readFileSync(await downloaded(mill, 'Tab as CSV'), 'utf8');
  const tab = await mill.tab(cutList);
  const quoted = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  expect(csv).toBe(`\uFEFF${tab.map((row) => `${row.map(quoted).join(',')}\r\n`).join('')}`);
  // A drawing goes on below the last text, and what is longer than its cell runs over those to its left.
  const lowest = tab.length + 3;
  await mill.page.evaluate(
    ([name, row]) => {
      const sheet = window.plankLedger.workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(String(name));
      sheet?.getRange(1, 15).setValue('follows: not every item is priced yet').setHorizontalAlignment('right');
      sheet?.getRange(Number(row), 1).setBackground('#3d4441');
      window.print = () => {};
    },
    [cutList, lowest],
  );
  await mill.page.getByRole('button', { name: 'Print tab or PDF' }).click();
  expect(await mill.page.locator('#paper tr').count()).toBe(lowest);
  const rightOf = (inPaper: string) =>
    mill.page
      .locator(`#paper ${inPaper}`)
      .first()
      .evaluate((one) => Math.round(one.getBoundingClientRect().right));
  await mill.page.emulateMedia({ media: 'print' });
  expect(await rightOf('thead span')).toBeLessThanOrEqual(await rightOf('table'));
  const pdf = (await mill.page.pdf({ preferCSSPageSize: true })).toString('latin1');
  // Letter lying: 11 by 8.5 inches, 72 points each.
  const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, width, height]) => [width, height]);
  expect(boxes.length).toBeGreaterThan(0);
  expect(new Set(boxes.map(([width, height]) => `${Number(width)} x ${Number(height)}`))).toEqual(
    new Set(['792 x 612']),
  );
  expect(mill.errors).toEqual([]);
  await mill.close();
});
