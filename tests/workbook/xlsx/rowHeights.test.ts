/** Rows of a file are as high as their texts, as LibreOffice breaks them into lines; and stay the person's where set. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJs from 'exceljs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEMO_ROOM } from '../../../src/workbook/demoRoom';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { lineCount, textWidth } from '../../../src/workbook/xlsx/rowHeights';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { builtWorkbook, fill, shownIn } from '../../support/builtWorkbook';
import { convertedBy, findOffice } from '../../support/office';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;
const office = findOffice();
const canReadPdf = spawnSync('pdftotext', ['-v']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));

beforeAll(xmlInNode);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Word {
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly text: string;
}

/** Where every word of a PDF stands, in points. */
function wordsOf(pdf: Buffer): Word[] {
  const html = spawnSync('pdftotext', ['-bbox', '-', '-'], { input: pdf, encoding: 'utf8', maxBuffer: 1e8 }).stdout;
  const word = /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g;
  return html.split('<page ').flatMap((page, number) =>
    [...page.matchAll(word)].map(([, left, top, right, bottom, text = '']) => ({
      page: number,
      left: Number(left),
      top: Number(top),
      right: Number(right),
      bottom: Number(bottom),
      text: text.replaceAll('&quot;', '"').replaceAll('&apos;', "'").replaceAll('&amp;', '&'),
    })),
  );
}

/** Written over each other: lines of one text come up to a seventh of their height near each other. */
function collide(a: Word, b: Word): boolean {
  const beside = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const above = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return a.page === b.page && beside > 1 && above > 0.3 * Math.min(a.bottom - a.top, b.bottom - b.top);
}

test.skipIf(!office || !canReadPdf)(
  'a cut list on paper by LibreOffice: at full size, every word is there, none over another',
  async () => {
    const workbook = builtWorkbook();
    const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
    const file = join(folder, 'room.xlsx');
    writeFileSync(file, await writeXlsx(workbook.engine, nodeLibrary(), locale));
    const words = wordsOf(convertedBy(office ?? '', file, 'pdf'));
    // Letter lying is 11 in wide: less margins of 3/4 in 912 pixels, of which the notes have the last 38. A pixel is 0.75 points.
    const leftOf = (text: string) => words.find((word) => word.page === 1 && word.text === text)?.left ?? 0;
    expect(Math.abs((leftOf('Your') - leftOf('Laid')) / (0.75 * (912 - 38)) - 1)).toBeLessThan(0.015);
    const over = words.filter((word, i) => words.slice(i + 1).some((other) => collide(word, other)));
    expect(over.map(({ page, text }) => `${page}: ${text}`)).toEqual([]);
    const printed = words.map(({ text }) => text).join('');
    const lost = shownIn(workbook, tab)
      .flat()
      .flatMap((text) => text.split(/\s+/))
      .filter((text) => !/^(?:TRUE|FALSE)$/.test(text) && !printed.includes(text));
    expect(lost).toEqual([]);
  },
);

test('a text that reads as a number stands at the right in the file too', async () => {
  const workbook = builtWorkbook();
  const cells = workbook.spreadsheetApp.getActiveSheet().getRange('A1:A2');
  cells
    .setValues([["'$5.00"], ["'five"]])
    .setNumberFormat('@')
    .setHorizontalAlignment('right');
  workbook.engine.flush();
  const book = new ExcelJs.Workbook();
  await book.xlsx.load((await writeXlsx(workbook.engine, nodeLibrary(), locale)).buffer as never);
  const read = ['A1', 'A2'].map((address) => book.worksheets[0]?.getCell(address));
  expect(read.map((cell) => [cell?.value, cell?.alignment?.horizontal])).toEqual([
    ['$5.00', 'right'],
    ['five', 'right'],
  ]);
});

test('heights that somebody set are theirs when the file comes back, those of the texts are worked out anew', async () => {
  const workbook = builtWorkbook();
  const sheet = workbook.spreadsheetApp.getActiveSheet();
  sheet.setColumnWidth(1, 100);
  sheet.getRange('A1').setValue('clamp it and cut along the line with a hand saw').setWrap(true);
  sheet.getRange('A2').setValue('as it is');
  sheet.setRowHeight(3, 60);
  sheet.getRange('A4').setValue('kept low, whatever stands in it and however long that is').setWrap(true);
  sheet.setRowHeight(4, 23);
  workbook.engine.flush();
  const bytes = await writeXlsx(workbook.engine, nodeLibrary(), locale);
  const book = new ExcelJs.Workbook();
  await book.xlsx.load(bytes.buffer as never);
  const rows = [1, 2, 3, 4].map((row) => book.worksheets[0]?.getRow(row));
  // 23 letters fit into 100 pixels at most, so three lines; 60 pixels are 45 points, and the ordinary row is 17.25.
  expect(rows[0]?.height).toBeGreaterThan(3 * 11);
  expect(rows.slice(1).map((row) => row?.height)).toEqual([undefined, 45, 17.25]);
  const { data } = readXlsx(bytes, nodeLibrary(), locale);
  const [back] = (data as { sheets: { rows: Record<string, { size?: number }> }[] }).sheets;
  expect([0, 1, 2, 3].map((row) => back?.rows[row]?.size)).toEqual([undefined, undefined, 60, 23]);
});

test('lines are counted as they are broken: at spaces, at line ends, within words too long', () => {
  // By hand, Helvetica at 10 points: n is 556 thousandths, a space 278; "nnnn" is 22.24 points, with a space 25.02.
  expect(textWidth('nnnn', {})).toBeCloseTo(22.24, 6);
  // A digit is 556, an m 833: 22.24 + 2.78 + 16.66.
  expect(textWidth('1285 mm', {})).toBeCloseTo(41.68, 6);
  expect(lineCount('nnnn nnnn', 47.3, {})).toBe(1);
  expect(lineCount('nnnn nnnn', 47.2, {})).toBe(2);
  expect(lineCount('n\n\nn', 47, {})).toBe(3);
  expect(lineCount('n'.repeat(20), 50, {})).toBe(3);
  expect(lineCount('nnnn nnnn', 47.3, { fontSize: 12 })).toBe(2);
});
