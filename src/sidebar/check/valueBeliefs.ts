/** What becomes of values, formulas and formats that a script writes into cells. */
import { LIVE, RANGE, REPORTS, type SheetBelief } from './belief';
import type { Trial } from './trial';

type Range = GoogleAppsScript.Spreadsheet.Range;

/** A cell of this format in which a value has been written. */
function written({ cells, app }: Trial, format: string, value: unknown): Range {
  const cell = cells(1);
  cell.setNumberFormats([[format]]);
  cell.setValues([[value]]);
  app.flush();
  return cell;
}

/** A text as the tabs write it: as if typed, after an apostrophe, and plain text as format afterwards. */
function textBelief(text: string): SheetBelief {
  return {
    what: `'${text} is a text`,
    expected: [`string ${text}, no formula`],
    source: LIVE,
    ask({ cells, app }) {
      const cell = cells(1);
      cell.setValues([[`'${text}`]]);
      cell.setNumberFormats([['@']]);
      app.flush();
      return [cell.getValue(), cell.getFormula()];
    },
    tell: ([value, formula]) => `${typeof value} ${value}, ${formula === '' ? 'no formula' : 'a formula'}`,
  };
}

/** What a formula shows; A1 in it is a cell of 10 %. */
function formulaBelief(formula: string, expected: readonly string[], source: string, format = '0'): SheetBelief {
  return {
    what: `${formula} in a cell of ${format}${formula.includes('A1') ? ', where A1 is 10.0%' : ''}`,
    expected,
    source,
    ask(trial) {
      written(trial, '0.0%', 0.1);
      return [written(trial, format, formula).getDisplayValue()];
    },
  };
}

/** How a number is shown, whatever stands between its digits in this country. */
function shownBelief(format: string, number: number, expected: string): SheetBelief {
  return {
    what: `${number} in a cell of ${format}, signs between digits left out`,
    expected: [expected],
    source: 'reference, number formats',
    ask: (trial) => [written(trial, format, number).getDisplayValue()],
    tell: ([shown]) => String(shown).replace(/[^\d%]+/g, ' '),
  };
}

/** A cell whose format was plain text before anything was written into it. */
function plainTextBelief(value: string, expected: readonly string[]): SheetBelief {
  return {
    what: `${value} written into a cell of plain text`,
    expected,
    source: RANGE,
    ask(trial) {
      const cell = written(trial, '@', value);
      return [cell.getValue(), cell.getNumberFormat()];
    },
    tell: ([found, format]) => `${typeof found} ${found}, ${format}`,
  };
}

const DATES: readonly SheetBelief[] = [
  {
    what: 'a date is midnight in the zone of the spreadsheet',
    expected: ['2026-05-08 00'],
    source: 'reference, Spreadsheet; public reports',
    ask(trial) {
      const date = written(trial, 'yyyy-mm-dd', '=DATE(2026;5;8)').getValue();
      return [trial.utilities.formatDate(date, trial.spreadsheet.getSpreadsheetTimeZone(), 'yyyy-MM-dd HH')];
    },
  },
  {
    what: 'country, zone of the spreadsheet, zone of the script',
    expected: [],
    source: LIVE,
    ask: ({ spreadsheet, session }) => [
      spreadsheet.getSpreadsheetLocale(),
      spreadsheet.getSpreadsheetTimeZone(),
      session.getScriptTimeZone(),
    ],
  },
];

const BLANKS: readonly SheetBelief[] = [
  {
    what: 'a note, and one that a blank text takes away',
    expected: ['"kept" and ""'],
    source: RANGE,
    ask({ cells }) {
      const row = cells(2);
      row.setNotes([['kept', 'gone']]);
      row.setNotes([['kept', '']]);
      return [row.getNotes()];
    },
    tell: ([rows]) => (rows as string[][])[0].map((note) => JSON.stringify(note)).join(' and '),
  },
  {
    what: 'a blank cell and a box that is not ticked',
    expected: ['"" and false'],
    source: RANGE,
    ask({ cells, app }) {
      const row = cells(2);
      const box = app.newDataValidation().requireCheckbox().build();
      row.setDataValidations([[null, box]]);
      row.setValues([['', false]]);
      app.flush();
      return [row.getValues()];
    },
    tell: ([rows]) => (rows as unknown[][])[0].map((value) => JSON.stringify(value)).join(' and '),
  },
  {
    what: 'a blank written below does not make the used part longer, a box that is not ticked does',
    expected: ['1, then 3'],
    source: LIVE,
    ask({ cells, sheet, app }) {
      const [first, second, third] = [cells(1), cells(1), cells(1)];
      first.setValues([['x']]);
      second.setValues([['']]);
      app.flush();
      const before = sheet.getDataRange().getNumRows();
      third.setDataValidation(app.newDataValidation().requireCheckbox().build());
      third.setValues([[false]]);
      app.flush();
      return [before, sheet.getDataRange().getNumRows()];
    },
    tell: (rows) => rows.join(', then '),
  },
];

export const VALUE_BELIEFS: readonly SheetBelief[] = [
  ...DATES,
  formulaBelief('=SUM(1;2)', ['3'], REPORTS),
  formulaBelief('=IF(1=1;"a";"b")', ['a'], REPORTS),
  // Ours have semicolons, so either will do; which it is helps to read a report.
  formulaBelief('=SUM(1,2)', [], REPORTS, '0.0'),
  formulaBelief('=ROUNDUP(ROUND(62*(1+A1);6);0)', ['69'], 'reference, number formats'),
  // In a cell of automatic format it may take over the per cent of what it is made from: ours never have that format.
  formulaBelief('=ROUNDUP(ROUND(62*(1+A1);6);0)', [], LIVE, 'General'),
  ...['=1+1', '+1', '007', '5/8', 'TRUE', '1-1', '10%', "'x", '@x'].map(textBelief),
  plainTextBelief('12', ['string 12, @']),
  plainTextBelief('5/8', ['string 5/8, @']),
  // Where it stays, the tabs are written once more (`dropKeptApostrophes` of the server).
  plainTextBelief("'x", ["string 'x, @", 'string x, @']),
  {
    what: 'formats are read as they were set; General is automatic again',
    expected: ['0.0#%, #,##0.00##, 0, number 12'],
    source: RANGE,
    ask({ cells, app }) {
      const row = cells(4);
      row.setNumberFormats([['0.0#%', '#,##0.00##', '0', '@']]);
      row.setNumberFormats([['0.0#%', '#,##0.00##', '0', 'General']]);
      row.setValues([['', '', '', '12']]);
      app.flush();
      return [row.getNumberFormats(), row.getValues()];
    },
    tell([formats, values]) {
      const last = (values as unknown[][])[0][3];
      return [...(formats as string[][])[0].slice(0, 3), `${typeof last} ${last}`].join(', ');
    },
  },
  shownBelief('#,##0.00', 1234.5, '1 234 50'),
  shownBelief('0.0#%', 0.125, '12 5%'),
  shownBelief('0', 62.4, '62'),
  ...BLANKS,
];
