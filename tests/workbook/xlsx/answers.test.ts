/** Answers over several cells, and texts that look like formulas, in a file that goes out: read by other programs. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJs from 'exceljs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillDemo } from '../../../src/workbook/demo';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { filledFormula } from '../../../src/workbook/xlsx/formulas';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { builtWorkbook, shownIn } from '../../support/builtWorkbook';
import { convertedBy, findOffice, shownBy } from '../../support/office';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;
const office = findOffice();
const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeAll(xmlInNode);

const TAB = 'Estimate';
type Workbook = ReturnType<typeof builtWorkbook>;

/** The demo's estimate, more answers over several cells beside it, texts with marks, and a row as high as somebody wants. */
function estimate(): Workbook {
  const workbook = builtWorkbook();
  fillDemo(workbook);
  const sheet = tabOf(workbook);
  sheet.getRange('M4').setValue('=PLANK_OFFCUTS(A19:A20,B5,J5:K8)');
  sheet.getRange('V4').setValue('=PLANK_LENGTH_TEXT(D9)');
  sheet.getRange('V5:V8').setValues([["'=T-molding"], ["'12"], ["''tis"], ['=V6&" pieces"']]);
  sheet.getRange('V9').setNumberFormat('@').setValue("''round");
  sheet.setRowHeight(30, 41);
  workbook.keep();
  return workbook;
}

function tabOf(workbook: Workbook) {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(TAB);
  if (!sheet) throw new Error(`There is no tab ${TAB}`);
  return sheet;
}

const reopened = (bytes: Uint8Array) => {
  const { data, notes } = readXlsx(bytes, nodeLibrary(), locale);
  return { notes, workbook: builtWorkbook({ saved: { data } }) };
};
const formulasOf = (workbook: Workbook) => tabOf(workbook).getDataRange().getFormulas();

test('a library reads formulas as they are and every last value; back here all is as it was', async () => {
  const workbook = estimate();
  const bytes = await writeXlsx(workbook.engine, nodeLibrary(), locale);
  const book = new ExcelJs.Workbook();
  await book.xlsx.load(bytes.buffer as never);
  const sheet = book.getWorksheet(TAB);
  const result = (address: string) => sheet?.getCell(address).result;
  expect(sheet?.getCell('B16').value).toEqual({ formula: 'PLANK_ROWS(C10,$C$5,$K$5)', result: 13 });
  // By hand: 8' 1" is 97 in, less two gaps of 3/8 in 96.25: twelve planks of 7.5 in are 90, and 6.25 in are left.
  expect([result('C16'), result('D16')]).toEqual([7.5, 6.25]);
  expect([result('D19'), result('E19'), result('D20')]).toEqual(['row', 'piece', 1]);
  const texts = [5, 6, 7, 9].map((row) => sheet?.getCell(`V${row}`).value);
  expect(texts).toEqual(['=T-molding', '12', "'tis", "'round"]);
  const values = tabOf(workbook).getDataRange().getValues();
  expect(values.flatMap((line, r) => line.filter((value, c) => value !== plainIn(sheet, r, c)))).toEqual([]);
  const back = reopened(bytes);
  expect(back.notes).toEqual([]);
  expect(formulasOf(back.workbook)).toEqual(formulasOf(workbook));
  expect(shownIn(back.workbook, TAB)).toEqual(shownIn(workbook, TAB));
});

function plainIn(sheet: ExcelJs.Worksheet | undefined, row: number, column: number): unknown {
  const cell = sheet?.getCell(row + 1, column + 1);
  return cell?.result ?? cell?.value ?? '';
}

test.skipIf(!office)('LibreOffice shows what the page shows, and what it saves has the same formulas', async () => {
  const workbook = estimate();
  const file = join(folder, 'estimate.xlsx');
  writeFileSync(file, await writeXlsx(workbook.engine, nodeLibrary(), locale));
  const there = linesOf(shownBy(office ?? '', file).get(TAB) ?? '');
  const here = tabOf(workbook).getDataRange().getValues();
  // It writes numbers as they are, to fifteen places, and a percentage as one.
  const asWritten = (value: unknown) => (typeof value === 'number' ? String(Number(value.toPrecision(15))) : value);
  const differing = here.flatMap((line, r) =>
    line.flatMap((value, c) => (same(asWritten(value), there[r]?.[c] ?? '') ? [] : [[r, c, value, there[r]?.[c]]])),
  );
  expect(differing).toEqual([]);
  const back = reopened(convertedBy(office ?? '', file, 'xlsx'));
  expect(back.notes).toEqual([]);
  // It writes the names of functions that it does not know in small letters.
  const inCapitals = (from: Workbook) => formulasOf(from).map((line) => line.map((one) => one.toUpperCase()));
  expect(inCapitals(back.workbook)).toEqual(inCapitals(workbook));
  expect(shownIn(back.workbook, TAB)).toEqual(shownIn(workbook, TAB));
});

const same = (here: unknown, there: string) => here === there || (there === '10%' && here === '0.1');

/** Source of the form: RFC 4180. */
function linesOf(csv: string): string[][] {
  const lines: string[][] = [[]];
  for (const [, quoted, plain = '', end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^,\n"]*))(,|\n)/g)) {
    lines.at(-1)?.push(quoted?.replaceAll('""', '"') ?? plain);
    if (end === '\n') lines.push([]);
  }
  return lines;
}

test('a long text fits into a formula: 255 letters in a text of it, 8,192 in all', () => {
  for (const value of ['"'.repeat(3000), 'ab"'.repeat(5000)]) {
    const formula = filledFormula({ type: 'str', value });
    expect(formula.length).toBeLessThanOrEqual(8192);
    const texts = [...formula.matchAll(/"((?:[^"]|"")*)"/g)].map(([, text = '']) => text.replaceAll('""', '"'));
    expect(Math.max(...texts.map((text) => text.length))).toBeLessThanOrEqual(255);
    expect(value.startsWith(texts.slice(1).join(''))).toBe(true);
  }
});

test('texts in a file of a library come in as texts, whatever they begin with', async () => {
  const book = new ExcelJs.Workbook();
  const texts = ['=1+1', "'tis", '=HYPERLINK("http://127.0.0.1/","press")', 'oak'];
  book.addWorksheet('Texts').addRows(texts.map((text) => [text]));
  const { notes, workbook } = reopened(new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer));
  expect(notes).toEqual([]);
  expect(shownIn(workbook, 'Texts')).toEqual(texts.map((text) => [text]));
  const formulas = workbook.spreadsheetApp.getActiveSheet().getDataRange().getFormulas();
  expect(formulas).toEqual(texts.map(() => ['']));
});
