/** .xlsx files with bytes, pieces of text, numbers or whole parts broken: read, or refused with a sentence. */
import ExcelJs from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { LOCALES } from '../../../src/workbook/locales';
import { nodeLibrary } from '../../../src/workbook/nodeLibrary';
import type { LibraryLocale } from '../../../src/workbook/oSpreadsheetEngine';
import { readXlsx } from '../../../src/workbook/xlsx/readXlsx';
import type { SeededRandom } from '../seededRandom';
import { sentenceFault } from '../sentenceFault';

const locale = LOCALES.en_US as LibraryLocale;

/** Two tabs with all that is read of a file: formulas, formats, dates, merged cells, a note, a list, a name, widths. */
export async function richXlsx(): Promise<Uint8Array> {
  const book = new ExcelJs.Workbook();
  const sheet = book.addWorksheet('Rooms', { views: [{ state: 'frozen', xSplit: 1, ySplit: 1 }] });
  sheet.addRow(['Hall', 20, { formula: 'B1*2', result: 40 }, new Date(Date.UTC(2027, 1, 3)), true]);
  sheet.addRow(['Den', { formula: 'SUM(B1:B1)', result: 20 }, '12\' 6"', 0.1]);
  sheet.getCell('D2').numFmt = '0.0%';
  sheet.getCell('B2').numFmt = '#,##0.00 "sq ft"';
  sheet.getCell('A2').font = { bold: true, color: { argb: 'FF112233' } };
  sheet.getCell('A1').note = 'measured twice';
  sheet.mergeCells('A4:C5');
  sheet.getColumn(2).width = 22;
  sheet.getCell('E4').dataValidation = { type: 'list', allowBlank: true, formulae: ['"yes,no"'] };
  const hidden = book.addWorksheet('Prices', { state: 'hidden' });
  hidden.addRow([{ formula: 'Rooms!B1', result: 20 }]);
  book.definedNames.add('Rooms!$B$1', 'hall');
  return new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
}

const NUMBERS = ['-1', '0', '1e9', '99999999999', 'NaN', '', 'x', '1048577', '0.5', '&#0;', 'A0', 'XFE1'];

/** The file with something broken, by bytes or inside one of its texts. */
export function brokenXlsx(file: Uint8Array, random: SeededRandom): Uint8Array {
  if (random.whole(1, 3) === 1) {
    const broken = file.slice();
    for (let k = 0; k < 4; k++) broken[random.whole(0, broken.length - 1)] = random.whole(0, 255);
    return broken;
  }
  const parts = unzipSync(file);
  const names = Object.keys(parts);
  const name = names[random.whole(0, names.length - 1)];
  if (random.whole(1, 12) === 1) delete parts[name];
  else parts[name] = strToU8(torn(strFromU8(parts[name]), random));
  return zipSync(parts);
}

/** Pieces taken out or put elsewhere, or numbers and words in quotes changed. */
function torn(text: string, random: SeededRandom): string {
  const way = random.whole(1, 3);
  const pieces = text.split(way === 1 ? /(?=[ <"])/ : /(?<=")(?=[^"]*")/);
  const at = random.whole(0, pieces.length - 1);
  if (way === 1) pieces.splice(at, random.whole(1, 3));
  else if (way === 2) pieces[at] = pieces[at].replace(/^[^"]*/, NUMBERS[random.whole(0, NUMBERS.length - 1)]);
  else pieces.splice(at, 0, pieces[random.whole(0, pieces.length - 1)]);
  return pieces.join('');
}

/** What is wrong with how a file is read, or null. */
export function xlsxFault(bytes: Uint8Array): string | null {
  try {
    for (const note of readXlsx(bytes, nodeLibrary(), locale).notes) {
      const fault = sentenceFault(note);
      if (fault !== null) return `the note ${fault}: ${note}`;
    }
    return null;
  } catch (failure) {
    if (!(failure instanceof Error) || failure.name !== 'FileProblem') return `threw ${(failure as Error)?.stack}`;
    const fault = sentenceFault(failure.message);
    return fault === null ? null : `the sentence ${fault}: ${failure.message}`;
  }
}
