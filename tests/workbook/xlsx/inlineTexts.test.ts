/** Texts that a library writes into their cells: put into a file by hand. Source: ECMA-376 part 1, 18.3.1.53 (is), from memory. */
import ExcelJs from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { builtWorkbook } from '../../support/builtWorkbook';
import { xmlInNode } from '../../support/xmlInNode';

beforeAll(xmlInNode);

test('come in as they are, rich ones whole, and none as a formula', async () => {
  const book = new ExcelJs.Workbook();
  book.addWorksheet('Rooms').addRow(['hall', 'den', 'stair', 20]);
  const parts = unzipSync(new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer));
  const tab = 'xl/worksheets/sheet1.xml';
  const inline = [
    '<t xml:space="preserve">12\' 6&quot;</t>',
    '<r><t>den </t></r><r><t>&amp; hall</t></r>',
    '<t>=1+1</t>',
  ];
  const xml = strFromU8(parts[tab] ?? new Uint8Array());
  const changed = inline.reduce(
    (text, part, i) => text.replace(`t="s"><v>${i}</v>`, `t="inlineStr"><is>${part}</is>`),
    xml,
  );
  expect(changed.split('inlineStr')).toHaveLength(4);
  const file = zipSync({ ...parts, [tab]: strToU8(changed) });
  const { data, notes } = readXlsx(file, nodeLibrary(), LOCALES.en_US as LibraryLocale);
  const range = builtWorkbook({ saved: { data } }).spreadsheetApp.getActiveSheet().getRange('A1:D1');
  expect(range.getFormulas()).toEqual([['', '', '', '']]);
  expect(range.getValues()).toEqual([['12\' 6"', 'den & hall', '=1+1', 20]]);
  expect(notes).toEqual([]);
});
