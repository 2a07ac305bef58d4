/**
 * The built add-on in a spreadsheet of another country, and on a tab that a person has filtered, merged, hidden or frozen
 * parts of. Sources: Google Workspace, "Spreadsheet.getSpreadsheetTimeZone" (the zone of a spreadsheet and of its script are
 * two settings); github.com/ISA-tools/OntoMaton issues 15 and 36 (commas in formulas fail where they are decimal signs).
 */
import { describe, expect, test } from 'vitest';
import { saveRoom } from '../../src/tabs/roomTabs';
import type { Workbook } from '../../src/workbook/workbook';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, fill, rectangle, shownIn } from '../support/builtWorkbook';
import { demoJob } from '../support/demoHouse';
import { fillOrder } from '../support/plannedOnce';

const room = rectangle('Hall', `12'`, `9'`);
const job = { ...demoJob, rooms: [], doorways: [], appliances: [], stairs: [] };

function sheetOf(workbook: Workbook, name: string) {
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
  if (!sheet) throw new Error(`There is no tab ${name}`);
  return sheet;
}

describe.each(['Europe/Berlin', 'Australia/Sydney', 'Asia/Kolkata', 'America/Los_Angeles', 'Etc/UTC'])(
  'in a spreadsheet of the zone %s',
  (timeZone) => {
    test('a date typed into a tab of ours is read as the day it shows', async () => {
      const workbook = builtWorkbook({ timeZone });
      await fill(workbook, 'cut list', room);
      const notes = sheetOf(workbook, 'Cut list - Hall').getRange(9, 13);
      notes.setNumberFormat('yyyy-mm-dd');
      notes.setValue('=DATE(2026;5;8)');
      const { cells } = await storeOf(workbook).read('cut list/hall', 'Cut list - Hall');
      const date = cells[8][12] as Date;
      expect([date.getFullYear(), date.getMonth() + 1, date.getDate()]).toEqual([2026, 5, 8]);
    });
  },
);

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

test('where 0.5 is written 0,5 a comma between arguments is an error, as on the platform', () => {
  const sheet = builtWorkbook({ locale: 'de_DE' }).spreadsheetApp.getActiveSheet();
  sheet.getRange('A1').setValue('=SUM(1;2)');
  sheet.getRange('A2').setValue('=SUM(1,5;2)');
  sheet.getRange('A3').setValue('=IF(1=1,"a","b")');
  sheet.getRange('A4').setValue('=IF(1=1;"a,b";"c;d")');
  const [[sum], [decimal], [commas], [texts]] = sheet.getRange('A1:A4').getValues();
  expect([sum, decimal, texts]).toEqual([3, 3.5, 'a,b']);
  expect(String(commas)).toMatch(/^#/);
});

describe('a cut list that a person has changed the look of', () => {
  async function refilled(change: (workbook: Workbook) => void) {
    const workbook = builtWorkbook();
    await fill(workbook, 'cut list', room);
    const before = shownIn(workbook, 'Cut list - Hall');
    change(workbook);
    const { tab } = await fill(workbook, 'cut list', room);
    return { workbook, tab, before, after: shownIn(workbook, 'Cut list - Hall') };
  }

  test.each<readonly [string, (workbook: Workbook) => void]>([
    ['merged', (workbook) => void sheetOf(workbook, 'Cut list - Hall').getRange('C9:F9').merge()],
    ['hidden', (workbook) => sheetOf(workbook, 'Cut list - Hall').hideRows(9, 3)],
    ['frozen', (workbook) => sheetOf(workbook, 'Cut list - Hall').setFrozenColumns(9)],
    ['filtered', (workbook) => filter(workbook)],
  ])('parts of it %s: filled again, it is whole and nothing is misplaced', async (_, change) => {
    const { before, after, tab } = await refilled(change);
    expect(tab).toBe('Cut list - Hall');
    // Merging drops what stood in the cells but the first: the person's line is kept below the list.
    expect(after.slice(0, before.length)).toEqual(before);
  });

  test('what was hidden or filtered is shown, what was merged is apart', async () => {
    const { workbook } = await refilled((book) => {
      sheetOf(book, 'Cut list - Hall').hideRows(9, 3);
      sheetOf(book, 'Cut list - Hall').getRange('A13:B13').merge();
      filter(book);
    });
    const sheet = sheetOf(workbook, 'Cut list - Hall');
    expect(sheet.getFilter()).toBeNull();
    expect(sheet.getRange('A13:B13').isPartOfMerge()).toBe(false);
  });

  /** As a person sets one with the button of the grid. */
  function filter(workbook: Workbook): void {
    const { model } = workbook.engine as unknown as { model: { dispatch: (type: string, payload: object) => unknown } };
    const tabs = workbook.engine.tabs();
    const sheetId = tabs[tabs.length - 1].id;
    const ranges = [{ _sheetId: sheetId, _zone: { top: 7, left: 0, bottom: 12, right: 4 } }];
    const config = { hasFilters: true, totalRow: false, firstColumn: false, lastColumn: false, numberOfHeaders: 1 };
    model.dispatch('CREATE_TABLE', {
      sheetId,
      ranges,
      tableType: 'static',
      config: { ...config, bandedRows: false, bandedColumns: false, automaticAutofill: false, styleId: 'None' },
    });
    expect(sheetOf(workbook, 'Cut list - Hall').getFilter()).not.toBeNull();
  }
});

test('a formula that changes by itself does not keep a tab from being filled', async () => {
  const workbook = builtWorkbook();
  await fill(workbook, 'cut list', room);
  sheetOf(workbook, 'Cut list - Hall').getRange(9, 13).setValue('=RAND()');
  expect((await fill(workbook, 'cut list', room)).tab).toBe('Cut list - Hall');
});
