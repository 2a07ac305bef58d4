/** A workbook that goes out as an .xlsx file: read by a library from the registry, and found again when it comes back. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJs from 'exceljs';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkCutPlan } from '../../../src/cutting/judge/laws';
import { planOnTabs } from '../../../src/tabs/planOnTabs';
import { DEMO_ROOM } from '../../../src/workbook/demoRoom';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { storeOf } from '../../../src/workbook/workbookStore';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { builtWorkbook, fill, rectangle, shownIn, tabNames } from '../../support/builtWorkbook';
import { listedPieces, planOf } from '../../support/cutListTab';
import { demoJob } from '../../support/demoJob';
import { beingLaid } from '../../support/laidList';
import { convertedBy, findOffice } from '../../support/office';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;

beforeAll(xmlInNode);

/** A small room: every cell of its plan is written, packed, unpacked and read several times. */
const SMALL = rectangle('Study', '8', '6');

test('a filled house goes out and comes back: formulas of ours, names of tabs, notes', async () => {
  const workbook = builtWorkbook();
  const sheet = workbook.spreadsheetApp.getActiveSheet();
  // By hand: 120 x 1.1 is 132 sq ft, and 132 / 24 is 5.5: six boxes. 12' 6" is 12.5 ft, by 10 ft.
  sheet.getRange('A1').setValue('=PLANK_BOXES(120, 24, 10%)');
  sheet.getRange('A2').setValue('=A1*2');
  sheet.getRange('A3').setValue(`=PLANK_AREA("12' 6""", 10)`);
  sheet.getRange('A4').setNote('ask about the stairs');
  const { tab } = await fill(workbook, 'cut list', SMALL);
  await fill(workbook, 'rooms', SMALL);
  const bytes = await writeXlsx(workbook.engine, nodeLibrary(), locale);
  const book = new ExcelJs.Workbook();
  await book.xlsx.load(bytes.buffer as never);
  const first = book.worksheets[0];
  expect(first?.getCell('A1').value).toEqual({ formula: 'PLANK_BOXES(120,24,10%)', result: 6 });
  expect(first?.getCell('A2').result).toBe(12);
  expect(first?.getCell('A3').value).toEqual({ formula: `PLANK_AREA("12' 6""",10)`, result: 125 });
  const cutList = book.getWorksheet('Cut list - Study');
  expect(cutList?.pageSetup).toMatchObject({
    orientation: 'landscape',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
  });
  expect(cutList?.pageSetup.printTitlesRow).toBe('1:2');
  const back = readXlsx(bytes, nodeLibrary(), locale);
  expect(back.notes).toEqual([]);
  const again = builtWorkbook({ saved: { data: back.data } });
  expect(tabNames(again)).toEqual(['Sheet1', tab, 'Rooms']);
  const sheets = again.spreadsheetApp.getActiveSpreadsheet().getSheets();
  expect(sheets[0]?.getRange('A1:A3').getValues()).toEqual([[6], [12], [125]]);
  expect(sheets[0]?.getRange('A4').getNote()).toBe('ask about the stairs');
  expect(shownIn(again, tab)).toEqual(shownIn(workbook, tab));
  // The tabs are still known as ours: filled again, none is made anew.
  await fill(again, 'cut list', SMALL);
  await fill(again, 'rooms', SMALL);
  expect(tabNames(again)).toEqual(['Sheet1', tab, 'Rooms']);
});

/** The room filled, with a tick, a note and its floor plan: filled once, and opened anew for each test. */
let filled: ReturnType<typeof fillRoom> | undefined;
async function filledRoom() {
  filled ??= fillRoom();
  const { data, ...found } = await filled;
  return { ...found, workbook: builtWorkbook({ saved: { data } }) };
}

async function fillRoom() {
  const workbook = builtWorkbook();
  const { tab } = await fill(workbook, 'cut list', SMALL);
  const plan = (await fill(workbook, 'floor plan', SMALL)).tab;
  await fill(workbook, 'rooms', SMALL);
  const tick = firstTick(workbook, tab);
  tick.check().setNote('cut this one twice');
  workbook.keep();
  const data = JSON.parse(JSON.stringify(workbook.engine.exported()));
  return { data, tab, plan, at: tick.getA1Notation() };
}

function firstTick(workbook: ReturnType<typeof builtWorkbook>, tab: string) {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab);
  const values = sheet?.getDataRange().getValues() ?? [];
  const row = values.findIndex(([first]) => typeof first === 'boolean');
  const range = sheet?.getRange(row + 1, 1);
  if (!range) throw new Error(`${tab} has no tick box`);
  return range;
}

const noteText = (note: string | ExcelJs.Comment | undefined) =>
  typeof note === 'string' ? note : note?.texts?.map(({ text }) => text).join('');

const inFile = (tab: string) => tab.replace(': ', ' - ');
const office = findOffice();
const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.skipIf(!office)('saved anew by LibreOffice: rooms, ticks, notes and names of tabs are found again', async () => {
  const { workbook, tab, plan, at } = await filledRoom();
  const file = join(folder, 'room.xlsx');
  writeFileSync(file, await writeXlsx(workbook.engine, nodeLibrary(), locale));
  // What LibreOffice shows in each cell stands as text in a file of its own kind.
  const shown = strFromU8(unzipSync(convertedBy(office ?? '', file, 'ods'))['content.xml'] ?? new Uint8Array());
  expect(shown.split('<text:p>☑</text:p>').length - 1).toBe(1);
  expect(shown).toContain('<text:p>☐</text:p>');
  const { data, notes } = readXlsx(convertedBy(office ?? '', file, 'xlsx'), nodeLibrary(), locale);
  expect(notes).toEqual([]);
  const again = builtWorkbook({ saved: { data } });
  expect(tabNames(again)).toEqual(['Sheet1', tab, plan, 'Rooms']);
  const tick = again.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab)?.getRange(at);
  expect([tick?.getValue(), tick?.getNote()]).toEqual([true, 'cut this one twice']);
  expect(shownIn(again, 'Rooms')).toEqual(shownIn(workbook, 'Rooms'));
  await fill(again, 'cut list', SMALL);
  expect(tabNames(again)).toEqual(['Sheet1', tab, plan, 'Rooms']);
  expect(tick?.getValue()).toBe(true);
});

test('six rows are ticked in the file that came back, and the rest is planned on from them', async () => {
  const workbook = builtWorkbook();
  const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
  firstTick(workbook, tab).check().setNote('cut this one twice');
  workbook.keep();
  const { data } = readXlsx(await writeXlsx(workbook.engine, nodeLibrary(), locale), nodeLibrary(), locale);
  const again = builtWorkbook({ saved: { data } });
  const list = () => listedPieces(shownIn(again, tab));
  const before = list();
  const lie = before.filter(({ rowNumber }) => rowNumber <= 6);
  const sheet = again.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab);
  const first = firstTick(again, tab).getRow();
  sheet?.getRange(first, 1, lie.length, 1).setValues(lie.map(() => [true]));
  const planned = await planOnTabs(storeOf(again), beingLaid(DEMO_ROOM));
  expect(planned.status === 'written' ? planned.words.join(' ') : planned).toContain('Rows up to 6 stay as they lie');
  const after = list();
  expect(after.filter(({ rowNumber }) => rowNumber <= 6)).toEqual(lie);
  expect(checkCutPlan(demoJob(), planOf(after, demoJob()))).toEqual([]);
  expect(firstTick(again, tab).getNote()).toBe('cut this one twice');
});

test('read by a library: the plan in its colors, ticks as true and false, names that a file takes', async () => {
  const { workbook, tab, plan, at } = await filledRoom();
  workbook.spreadsheetApp.getActiveSpreadsheet().insertSheet('Prices of everything in the yard: March');
  const book = new ExcelJs.Workbook();
  await book.xlsx.load((await writeXlsx(workbook.engine, nodeLibrary(), locale)).buffer as never);
  expect(book.worksheets.filter(({ name }) => name.length > 31 || /[:\\/?*[\]]/.test(name))).toEqual([]);
  const tick = book.getWorksheet(inFile(tab))?.getCell(at);
  expect([tick?.value, tick?.dataValidation?.formulae]).toEqual([true, ['"TRUE,FALSE"']]);
  expect(tick?.numFmt).toBe('[=1]"☑";[=0]"☐";General');
  expect(noteText(tick?.note)).toBe('cut this one twice');
  const drawn = book.getWorksheet(inFile(plan));
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(plan);
  const cells = (sheet?.getDataRange().getBackgrounds() ?? []).flatMap((row, r) =>
    row.map((color, c) => ({ color, fill: drawn?.getCell(r + 1, c + 1).fill as ExcelJs.FillPattern | undefined })),
  );
  const colored = cells.filter(({ color }) => color !== '#ffffff');
  expect(colored.length).toBeGreaterThan(50);
  expect(colored.map(({ fill }) => fill?.fgColor?.argb)).toEqual(
    colored.map(({ color }) => `FF${color.slice(1).toUpperCase()}`),
  );
});

test('a tab renamed in another program is still known as ours, under its new name', async () => {
  const { workbook, tab, plan } = await filledRoom();
  const book = new ExcelJs.Workbook();
  await book.xlsx.load((await writeXlsx(workbook.engine, nodeLibrary(), locale)).buffer as never);
  const [cutList, kept] = [book.getWorksheet(inFile(tab)), book.getWorksheet('Plank Ledger keeps')];
  if (!cutList || !kept) throw new Error('The file has not the tabs that went out');
  cutList.name = 'Saw';
  // A spreadsheet changes what points at a tab with its name; this library does not, so it is done here.
  kept.eachRow((row) => {
    const cell = row.getCell(2);
    if (String(cell.formula).includes('Cut list')) cell.value = { formula: 'Saw!A1', result: 0 };
  });
  const bytes = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  const again = builtWorkbook({ saved: { data: readXlsx(bytes, nodeLibrary(), locale).data } });
  expect(tabNames(again)).toEqual(['Sheet1', 'Saw', plan, 'Rooms']);
  await fill(again, 'cut list', SMALL);
  expect(tabNames(again)).toEqual(['Sheet1', 'Saw', plan, 'Rooms']);
});

test('a note changed, taken away or written in another program is so here too', async () => {
  const { workbook, tab, at } = await filledRoom();
  const first = workbook.spreadsheetApp.getActiveSpreadsheet().getSheets()[0];
  first?.getRange('B2').setNote('taken away there');
  workbook.keep();
  const book = new ExcelJs.Workbook();
  await book.xlsx.load((await writeXlsx(workbook.engine, nodeLibrary(), locale)).buffer as never);
  const [there, cutList] = [book.worksheets[0], book.getWorksheet(inFile(tab))];
  if (!there || !cutList) throw new Error('The file has not the tabs that went out');
  Object.assign((there.getCell('B2') as unknown as { _value: { model: object } })._value.model, { comment: undefined });
  (there.getCell('B2') as unknown as { _comment?: object })._comment = undefined;
  there.getCell('C3').note = 'written there';
  cutList.getCell(at).note = 'cut <once> & check';
  const bytes = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  const again = builtWorkbook({ saved: { data: readXlsx(bytes, nodeLibrary(), locale).data } });
  const sheets = again.spreadsheetApp.getActiveSpreadsheet();
  expect(sheets.getSheets()[0]?.getRange('B2:C3').getNotes()).toEqual([
    ['', ''],
    ['', 'written there'],
  ]);
  expect(sheets.getSheetByName(tab)?.getRange(at).getNote()).toBe('cut <once> & check');
});
