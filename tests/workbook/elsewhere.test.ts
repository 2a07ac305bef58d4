/**
 * The built add-on in a spreadsheet of another country, and on a tab that a person has filtered, merged, hidden or frozen
 * parts of. Sources: Google Workspace, "Spreadsheet.getSpreadsheetTimeZone" (the zone of a spreadsheet and of its script are
 * two settings); github.com/ISA-tools/OntoMaton issues 15 and 36 (commas in formulas fail where they are decimal signs).
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build.mjs';
import { textCell } from '../../src/tabs/block';
import { saveRoom } from '../../src/tabs/roomTabs';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, fill, rectangle, shownIn } from '../support/builtWorkbook';
import { demoJob } from '../support/demoHouse';
import { fillOrder } from '../support/plannedOnce';

const README = readFileSync(join(projectFolder, 'README.md'), 'utf8');
const room = rectangle('Hall', `12'`, `9'`);
const job = { ...demoJob, rooms: [], doorways: [], appliances: [], stairs: [] };

function sheetOf(workbook: Workbook, name: string) {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
  if (!sheet) throw new Error(`There is no tab ${name}`);
  return sheet;
}

/**
 * Days on which clocks go forward or back somewhere, by the IANA time zone database: in Cairo (26 April 2024), on the Azores (29
 * March 2026) and in Havana (8 March 2026) at midnight, so that those days begin at one o'clock.
 */
const DAYS = ['2026;5;8', '2024;4;26', '2026;3;29', '2026;3;8', '2026;10;25', '2026;11;1', '2026;1;1'];
const TIMES = ['', '+TIME(23;59;59)'];

describe.each([
  ...['Europe/Berlin', 'Australia/Sydney', 'Asia/Kolkata', 'America/Los_Angeles', 'Etc/UTC', 'Africa/Cairo'],
  ...['Atlantic/Azores', 'America/Havana', 'Pacific/Kiritimati', 'Pacific/Pago_Pago'],
])('in a spreadsheet of the zone %s', (timeZone) => {
  test('a date typed into a tab of ours is read as the day it shows', async () => {
    const workbook = builtWorkbook({ timeZone });
    await writeTab(workbook);
    const typed = DAYS.flatMap((day) => TIMES.map((time) => [day, `=DATE(${day})${time}`]));
    const notes = sheetOf(workbook, 'Dates').getRange(2, 1, typed.length, 1);
    notes.setNumberFormat('yyyy-mm-dd hh:mm');
    notes.setValues(typed.map(([, formula]) => [formula]));
    const { cells } = await storeOf(workbook).read('dates', 'Dates');
    const read = cells.slice(1).map(([cell]) => {
      const date = cell as Date;
      return [date.getFullYear(), date.getMonth() + 1, date.getDate()].join(';');
    });
    expect(read).toEqual(typed.map(([day]) => day));
  });
});

/** A tab of ours with one cell. */
async function writeTab(workbook: Workbook): Promise<void> {
  const looks = { columnWidths: [80], frozenRows: 0, showGridlines: true, landscape: false };
  await storeOf(workbook).write({ title: 'Dates', mark: 'dates', cells: [[textCell('Dates')]], ...looks }, '');
}

test.each(['en_US', 'en_GB', 'de_DE'])('the formulas of an order work in a spreadsheet of %s', async (locale) => {
  const workbook = builtWorkbook({ locale });
  await saveRoom(storeOf(workbook), room);
  await fillOrder(storeOf(workbook), job, async () => true);
  const sheet = sheetOf(workbook, 'Order');
  const formulas = sheet.getDataRange().getFormulas().flat().filter(Boolean);
  expect(formulas.length).toBeGreaterThan(20);
  expect(
    sheet
      .getDataRange()
      .getValues()
      .flat()
      .filter((value) => /^#(ERROR|NAME|BAD)/.test(String(value))),
  ).toEqual([]);
});

test('where 0.5 is written 0,5 a comma between arguments is an error, as on the platform, and so is a point', () => {
  const sheet = builtWorkbook({ locale: 'de_DE' }).spreadsheetApp.getActiveSheet();
  sheet.getRange('A1').setValue('=SUM(1;2)');
  sheet.getRange('A2').setValue('=SUM(1,5;2)');
  sheet.getRange('A3').setValue('=IF(1=1,"a","b")');
  sheet.getRange('A4').setValue('=IF(1=1;"a,b";"c;d")');
  sheet.getRange('A5').setValue('=SUM(1.5;2)');
  sheet.getRange('A6').setValue('=IF(STDEV.S(1;1)=0;"1.5";"")');
  // As the README has it for such countries.
  const [, told = ''] = /writes 0,5 with a comma, put `;`[^`]*`(=[^`]*)`/.exec(README) ?? [];
  sheet.getRange('A7').setValue(told);
  expect(sheet.getRange('A7').getValue()).toBe(132);
  const [[sum], [decimal], [commas], [texts], [point], [points]] = sheet.getRange('A1:A6').getValues();
  expect([sum, decimal, texts, points]).toEqual([3, 3.5, 'a,b', '1.5']);
  expect([commas, point]).toEqual([expect.stringMatching(/^#/), expect.stringMatching(/^#/)]);
});

describe('a cut list that a person has changed the look of', () => {
  const TAB = 'Cut list - Hall';
  const [small, longer] = [rectangle('Hall', `6'`, `4'`), rectangle('Hall', `7'`, `4'`)];

  /** Filled, changed by a person, and filled with a longer room. */
  async function refilled(change: (workbook: Workbook) => void): Promise<Workbook> {
    const workbook = builtWorkbook();
    await fill(workbook, 'cut list', small);
    change(workbook);
    expect((await fill(workbook, 'cut list', longer)).tab).toBe(TAB);
    return workbook;
  }

  /** What the tab shows to whoever looks: hidden rows and columns, and what a merge covers, are not there. */
  function seen(workbook: Workbook): readonly string[] {
    const { id } = workbook.engine.tabs().find(({ name }) => name === TAB) as { readonly id: string };
    return shownIn(workbook, TAB)
      .filter((_, row) => !workbook.engine.isHidden(id, 'rows', row))
      .map((cells) => cells.filter((_, column) => !workbook.engine.isHidden(id, 'columns', column)).join('|'));
  }

  test.each<readonly [string, (workbook: Workbook) => void]>([
    ['merged and frozen', (workbook) => mergedAndFrozen(workbook)],
    ['hidden', (workbook) => hidden(workbook)],
    ['filtered', (workbook) => filtered(workbook)],
    ['ruled, coloured and guarded', (workbook) => ruled(workbook)],
  ])('parts of it %s: filled again, it is as a tab that is new, and nothing is misplaced', async (_, change) => {
    const untouched = builtWorkbook();
    await fill(untouched, 'cut list', longer);
    const wanted = seen(untouched);
    const workbook = await refilled(change);
    // Merging drops what stood in the cells but the first: the person's line is kept below the list.
    expect(seen(workbook).slice(0, wanted.length)).toEqual(wanted);
    const sheet = sheetOf(workbook, TAB);
    expect([sheet.getFilter(), sheet.getDataRange().isPartOfMerge()]).toEqual([null, false]);
    expect([sheet.getFrozenRows(), sheet.getFrozenColumns()]).toEqual([2, 2]);
  });

  /** The row of the second piece. */
  function rowOf(workbook: Workbook): number {
    const row = shownIn(workbook, TAB).findIndex((cells) => cells[1] === '1-2') + 1;
    expect(row).toBeGreaterThan(1);
    return row;
  }

  function mergedAndFrozen(workbook: Workbook): void {
    sheetOf(workbook, TAB).getRange(rowOf(workbook), 3, 1, 4).merge();
    sheetOf(workbook, TAB).setFrozenColumns(9);
  }

  function hidden(workbook: Workbook): void {
    sheetOf(workbook, TAB).hideRows(rowOf(workbook), 3);
    sheetOf(workbook, TAB).hideColumns(3, 2);
  }

  /** Rows of the list that show "1-2" and "2-1" are hidden by a filter. */
  function filtered(workbook: Workbook): void {
    const app = workbook.spreadsheetApp;
    const above = shownIn(workbook, TAB).findIndex((row) => row[1] === '1-1');
    const filter = sheetOf(workbook, TAB).getRange(above, 1, 10, 5).createFilter();
    filter.setColumnFilterCriteria(2, app.newFilterCriteria().setHiddenValues(['1-2', '2-1']).build());
    expect(seen(workbook).length).toBe(shownIn(workbook, TAB).length - 2);
  }

  /** A rule that takes one word only, a colour by condition, a range that warns. */
  function ruled(workbook: Workbook): void {
    const { spreadsheetApp: app } = workbook;
    const sheet = sheetOf(workbook, TAB);
    const only = app.newDataValidation().requireValueInList(['mine']).setAllowInvalid(false).build();
    const cells = sheet.getRange(rowOf(workbook), 3, 3, 4);
    cells.setDataValidation(only);
    const coloured = app.newConditionalFormatRule().whenFormulaSatisfied('=$A1=FALSE').setBackground('#ffff00');
    sheet.setConditionalFormatRules([coloured.setRanges([sheet.getRange('A1:F30')]).build()]);
    cells.protect().setWarningOnly(true);
  }
});

test('a formula that changes by itself does not keep a tab from being filled', async () => {
  const workbook = builtWorkbook();
  await fill(workbook, 'cut list', room);
  sheetOf(workbook, 'Cut list - Hall').getRange(9, 13).setValue('=RAND()');
  expect((await fill(workbook, 'cut list', room)).tab).toBe('Cut list - Hall');
});
