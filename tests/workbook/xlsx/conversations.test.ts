/**
 * Conversations on cells, as newer spreadsheets have them: put into a library's file by hand, after the published form.
 * Source: [MS-XLSX], threadedComments and persons, with the relationships and content types given there; the text in the
 * part for older programs as they are told to write it.
 */
import ExcelJs from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { beforeAll, expect, test } from 'vitest';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { writeXlsx } from '../../../src/workbook/xlsx/writeXlsx';
import { builtWorkbook } from '../../support/builtWorkbook';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;
const THREADS = 'http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments';
const OLDER =
  '[Threaded comment]\n\nYour version of this program allows you to read this threaded comment; however, any edits to it will get removed if the file is opened in a newer version.\n\nComment:\n    Is the stair nosing in?\nReply:\n    No, order it.';

beforeAll(xmlInNode);

async function withConversation(persons: string): Promise<Uint8Array> {
  const book = new ExcelJs.Workbook();
  const rooms = book.addWorksheet('Rooms');
  rooms.addRow(['Hall', 20]);
  rooms.getCell('A1').note = OLDER;
  rooms.getCell('B1').note = 'by tape';
  const parts = unzipSync(new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer));
  const rels = 'xl/worksheets/_rels/sheet1.xml.rels';
  const added =
    '<Relationship Id="rIdT" Type="http://schemas.microsoft.com/office/2017/10/relationships/threadedComment" Target="../threadedComments/threadedComment1.xml"/></Relationships>';
  const said = (id: string, person: string, text: string, more = '') =>
    `<threadedComment ref="A1" dT="2026-03-04T05:06:07.00" personId="{P${person}}" id="{C${id}}"${more}><text>${text}</text></threadedComment>`;
  const replies = [
    said('1', '1', 'Is the stair nosing in?'),
    said('2', '2', 'No, order it &amp; call <!-- not part of it -->', ' parentId="{C1}"'),
  ];
  return zipSync({
    ...parts,
    [rels]: strToU8(strFromU8(parts[rels] ?? new Uint8Array()).replace('</Relationships>', added)),
    'xl/threadedComments/threadedComment1.xml': strToU8(
      `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><ThreadedComments xmlns="${THREADS}">${replies.join('')}</ThreadedComments>`,
    ),
    'xl/persons/person.xml': strToU8(
      `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><personList xmlns="${THREADS}">${persons}</personList>`,
    ),
  });
}

const PEOPLE =
  '<person displayName="Ann Field" id="{P1}" userId="a" providerId="None"/><person displayName="Ben Moor" id="{P2}" userId="b" providerId="None"/>';

const notesOf = (data: object) =>
  builtWorkbook({ saved: { data } }).spreadsheetApp.getActiveSheet().getRange('A1:B1').getNotes();

test('a conversation becomes a note that says who wrote what, and the file says so', async () => {
  const { data, notes } = readXlsx(await withConversation(PEOPLE), nodeLibrary(), locale);
  expect(notes).toEqual(['Conversations on cells became notes that say who wrote what.']);
  const said = 'Ann Field: Is the stair nosing in?\nBen Moor: No, order it & call';
  expect(notesOf(data)).toEqual([[said, 'by tape']]);
  // Out and in again it is a note like any other.
  const out = await writeXlsx(builtWorkbook({ saved: { data } }).engine, nodeLibrary(), locale);
  const again = readXlsx(out, nodeLibrary(), locale);
  expect(again.notes).toEqual([]);
  expect(notesOf(again.data)).toEqual([[said, 'by tape']]);
});

test('without the names of those who wrote, their words are kept', async () => {
  const { data } = readXlsx(await withConversation(''), nodeLibrary(), locale);
  expect(notesOf(data)).toEqual([['Is the stair nosing in?\nNo, order it & call', 'by tape']]);
});
