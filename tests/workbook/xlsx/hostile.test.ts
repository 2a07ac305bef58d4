/** Files that are broken, huge or made to do harm: each is refused, or loses what is harmful, with a sentence. */

import { crc32 } from 'node:zlib';
import ExcelJs from 'exceljs';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { checksum } from '../../../src/workbook/xlsx/checksums';
import { type ReadFile, readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import { brokenXlsx, richXlsx, xlsxFault } from '../../support/fuzz/brokenXlsx';
import { seededRandom } from '../../support/seededRandom';
import { xmlInNode } from '../../support/xmlInNode';

const locale = LOCALES.en_US as LibraryLocale;
const read = (bytes: Uint8Array): ReadFile => readXlsx(bytes, nodeLibrary(), locale);
let plain: Uint8Array;
const SHEET = 'xl/worksheets/sheet1.xml';

beforeAll(async () => {
  xmlInNode();
  const book = new ExcelJs.Workbook();
  const sheet = book.addWorksheet('Rooms');
  sheet.addRow(['Hall', 20, { formula: 'B1*2', result: 40 }]);
  plain = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
});

/** The plain file with some parts put in or changed. */
function changed(change: (parts: Record<string, string>) => Zippable): Uint8Array {
  const parts = Object.fromEntries(Object.entries(unzipSync(plain)).map(([name, part]) => [name, strFromU8(part)]));
  const more = change(parts);
  const texts = Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)]));
  return zipSync({ ...texts, ...more });
}

/** A part that is blank for more than a workbook may hold; packing it takes a second. */
let packed: Uint8Array | undefined;
function bomb(): Uint8Array {
  packed ??= changed(() => ({ 'xl/a.xml': [new Uint8Array(129 * 1024 * 1024), { level: 1 }] }));
  return packed.slice();
}

const replaced = (part: string, from: string | RegExp, to: string) =>
  changed((parts) => {
    const before = parts[part] ?? '';
    parts[part] = before.replace(from, to);
    if (parts[part] === before) throw new Error(`Nothing to change in ${part}: ${before}`);
    return {};
  });

test('the plain file itself is read', () => {
  expect(read(plain).notes).toEqual([]);
});

describe('refused', () => {
  test.each<[string, () => Uint8Array, RegExp]>([
    ['nothing at all', () => new Uint8Array(), /not an \.xlsx file/],
    ['a text', () => strToU8('Room;Length\nHall;20\n'), /not an \.xlsx file/],
    ['an older file', () => Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1), /older \.xls file, or locked/],
    ['a file cut off', () => plain.slice(0, plain.length >> 1), /broken/],
    ['another kind of zip', () => zipSync({ 'letter.txt': strToU8('x') }), /no workbook in it/],
    ['more than 20 MB', () => new Uint8Array(20 * 1024 * 1024 + 1), /larger than 20 MB/],
    ['a way out of the folder', () => changed(() => ({ '../../home/x.xml': strToU8('<a/>') })), /lie outside/],
    ['a place on the disk', () => changed(() => ({ '/etc/x.xml': strToU8('<a/>') })), /lie outside/],
    ['a bomb', bomb, /larger than 128 MB/],
    [
      'too many parts',
      () =>
        changed(() => Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`xl/p${i}.xml`, strToU8('<a/>')]))),
      /more than 2000 parts/,
    ],
    [
      'entities that grow',
      () => replaced(SHEET, '<worksheet', '<!DOCTYPE w [<!ENTITY a "aaaaaaaa">]><worksheet'),
      /declares things of its own/,
    ],
    ['a row far down', () => replaced(SHEET, /r="1"/, 'r="1048576"'), /reaches to row 1048576/],
    ['a column far right', () => replaced(SHEET, 'r="A1"', 'r="XFD1"'), /column 16384/],
    [
      'a formula that fills everything',
      () => replaced(SHEET, '<f>', '<f t="array" ref="A1:XFD1048576">'),
      /reaches to/,
    ],
    ['a part that is not XML', () => replaced(SHEET, '</sheetData>', '</sheet>'), /broken inside/],
    ['no list of tabs', () => replaced('xl/_rels/workbook.xml.rels', /<Relationship [^>]*>/g, ''), /broken inside/],
  ])('%s', (_, made, sentence) => {
    expect(() => read(made())).toThrow(sentence);
  });

  test('one letter changed on the way, in a part that still unpacks and reads well', () => {
    const parts = Object.entries(unzipSync(plain)).map(([name, part]) => [name, [part, { level: 0 }]]);
    const stored = zipSync(Object.fromEntries(parts) as Zippable);
    expect(read(stored).notes).toEqual([]);
    const length = Buffer.from(stored).indexOf('<v>20</v>');
    stored[length + '<v>'.length] = '3'.charCodeAt(0);
    expect(() => read(stored)).toThrow(/damaged: "xl\/worksheets\/sheet1.xml" in it is not as it was packed/);
  });

  test('a part that the list at the end does not have, as a second reader would not see it', () => {
    const listed = plain.slice();
    const entry = Buffer.from(listed).lastIndexOf('xl/styles.xml');
    listed.set(strToU8('xl/stylez.xml'), entry);
    expect(() => read(listed)).toThrow(/damaged: "xl\/styles.xml"/);
  });

  test('the checksum is the one of zips: the check value of its catalogues, and what Node makes of random bytes', () => {
    expect(checksum(strToU8('123456789'), 0)).toBe(0xcbf43926);
    const random = seededRandom(3);
    const bytes = Uint8Array.from({ length: 999 }, () => random.whole(0, 255));
    expect(checksum(bytes.subarray(400), checksum(bytes.subarray(0, 400), 0))).toBe(crc32(bytes));
  });

  test('a bomb that says it is small is stopped while it is unpacked', () => {
    const lying = bomb();
    // The size that the list at the end gives for each part: 24 bytes after its mark. Source: the .ZIP application note.
    const view = new DataView(lying.buffer, lying.byteOffset);
    for (let at = 0; at + 46 < lying.length; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 10, true);
    }
    expect(() => read(lying)).toThrow(/larger than 128 MB/);
  });
});

describe('taken without what is harmful', () => {
  const withNames = (...names: readonly string[]) =>
    read(replaced('xl/workbook.xml', '</sheets>', `</sheets><definedNames>${names.join('')}</definedNames>`));

  test('names that stand for formulas or other files are left out, plain ones kept', () => {
    const { data, notes } = withNames(
      '<definedName name="Length">Rooms!$B$1</definedName>',
      `<definedName name="Run">cmd|' /C calc'!A0</definedName>`,
      '<definedName name="Far">[1]Other!$A$1</definedName>',
      '<definedName name="Sum">SUM(Rooms!$A$1:$B$9)</definedName>',
    );
    expect((data as { namedRanges: unknown }).namedRanges).toEqual({ Length: 'Rooms!$B$1' });
    expect(notes.map((note) => /"(\w+)" was left out/.exec(note)?.[1])).toEqual(['Run', 'Far', 'Sum']);
  });

  test('macros, pictures and links to other files are left out and said', () => {
    const notes = read(
      changed(() => ({
        'xl/vbaProject.bin': strToU8('x'),
        'xl/media/image1.png': strToU8('x'),
        'xl/externalLinks/externalLink1.xml': strToU8('<externalLink/>'),
      })),
    ).notes.join(' ');
    expect(notes).toContain('Macros were left out.');
    expect(notes).toContain('A picture was left out.');
    expect(notes).toContain('Links to other files were cut');
  });

  test('a very last row that only has a height is no reason to refuse', () => {
    const { notes } = read(replaced(SHEET, '</sheetData>', '<row r="1048576" ht="12.8"/></sheetData>'));
    expect(notes).toEqual([]);
  });

  test('a formula that answers something else here is said, with both answers', () => {
    expect(read(replaced(SHEET, '<v>40</v>', '<v>41</v>')).notes).toEqual([
      'Rooms, C1: =B1*2 shows 40 here; the file had 41.',
    ]);
  });
});

test('whatever bytes or pieces of text are broken: read, or refused with a sentence', async () => {
  const random = seededRandom(7);
  const rich = await richXlsx();
  expect(xlsxFault(rich)).toBeNull();
  const faults = Array.from({ length: 90 }, () => xlsxFault(brokenXlsx(rich, random)));
  expect(faults.filter((fault) => fault !== null)).toEqual([]);
});
