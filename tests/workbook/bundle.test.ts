/** The add-on as it is built, in an embedded workbook: what a person does with it, from the cells to the filled tabs. */
import { describe, expect, test } from 'vitest';
import { fillDemo } from '../../src/workbook/demo';
import { DEMO_ROOM } from '../../src/workbook/demoRoom';
import { builtWorkbook, fill, rectangle, shownIn, tabNames } from '../support/builtWorkbook';

function estimate() {
  const workbook = builtWorkbook();
  fillDemo(workbook);
  const sheet = workbook.spreadsheetApp.getActiveSheet();
  const at = (a1: string) => sheet.getRange(a1).getValue();
  return { workbook, sheet, at };
}

describe('the estimating sheet', () => {
  // By hand: 12.5 ft x (11 + 3.5/12) ft = 141.1458; x 1.1 = 155.2604; / 24.6 = 6.3 boxes; 7 x 52.90.
  test('answers for the bedroom', () => {
    const { at } = estimate();
    expect(at('D9')).toBeCloseTo(141.145_833, 5);
    expect(at('E9')).toBeCloseTo(155.260_417, 5);
    expect(at('F9')).toBe(7);
    expect(at('H9')).toBeCloseTo(370.3, 9);
  });

  // By hand: 135.5 in less two gaps of 3/8 in is 134.75 in; 17 planks of 7.5 in are 127.5 in; 7.25 in are left.
  test('answers for the last row of the bedroom', () => {
    const { sheet, at } = estimate();
    expect(at('G9')).toBe(7.25);
    expect(sheet.getRange('B15:D15').getValues()).toEqual([[18, 7.5, 7.25]]);
  });

  // By hand: 18 x 14.5 less the corner of 6 x 5, and the closet of 4.75 x 2.5: 261 - 30 + 11.875.
  test('answers for the L with the closet', () => {
    expect(estimate().at('D11')).toBe(242.875);
  });

  test('follows when a cell is changed', () => {
    const { sheet, at } = estimate();
    sheet.getRange('B9').setValue("20'");
    // By hand: 20 ft x 11.291667 ft.
    expect(at('D9')).toBeCloseTo(225.833_333, 5);
    expect(at('F9')).toBe(11);
  });

  test('shows the sentence of a function in the cell where the entry is wrong', () => {
    const { workbook, sheet, at } = estimate();
    sheet.getRange('B9').setValue('wide');
    expect(at('D9')).toBe('#ERROR!');
    const { message } = workbook.engine.cell(workbook.engine.activeTab(), 8, 3);
    expect(message).toContain('"wide"');
  });

  test('lists the cuts of the study below one formula', () => {
    const { workbook, sheet } = estimate();
    const list = shownIn(workbook, sheet.getName())
      .slice(18)
      .map((row) => row.slice(3));
    const pieces = list.slice(1).filter((row) => /^\d+$/.test(row[0] ?? ''));
    // By hand: 97 in less 0.75 in is 96.25 in: 12 planks of 7.5 in and a rest, so 13 rows.
    expect(Math.max(...pieces.map((row) => Number(row[0])))).toBe(13);
    // By hand: each run is 9' 8" less two gaps of 3/8 in = 115.25 in.
    const runs = new Map<string, number>();
    for (const [row = '', , length] of pieces) runs.set(row, (runs.get(row) ?? 0) + Number(length));
    expect([...new Set(runs.values())]).toEqual([115.25]);
  });

  test('has no name in it that the spreadsheet does not know', () => {
    const { workbook, sheet } = estimate();
    expect(
      shownIn(workbook, sheet.getName())
        .flat()
        .filter((cell) => cell.startsWith('#')),
    ).toEqual([]);
  });
});

describe('filling a tab', () => {
  test.each(['cut list', 'floor plan', 'rooms'] as const)(
    'the %s makes as many service calls for 500 rows as for 10',
    async (name) => {
      // By hand: 10 rows of 7.5 in and two gaps are 75.75 in; 500 rows are 3750.75 in = 312' 6 3/4". Two pieces a row.
      const counts: unknown[] = [];
      for (const width of [`75 3/4"`, `312' 6 3/4"`]) {
        const workbook = builtWorkbook();
        workbook.resetCalls();
        expect((await fill(workbook, name, rectangle('Hall', "5'", width))).problems).toEqual([]);
        // A new tab has a thousand rows: only a list that is longer asks for more, once.
        const { 'Sheet.insertRowsAfter': more = 0, ...calls } = workbook.calls();
        expect(more).toBeLessThanOrEqual(1);
        counts.push(calls);
      }
      expect(counts[1]).toEqual(counts[0]);
    },
  );

  test('again keeps the tab, and what other tabs say about it', async () => {
    const workbook = builtWorkbook();
    const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
    const sheet = workbook.spreadsheetApp.getActiveSheet();
    sheet.getRange('A1').setFormula(`='${tab}'!C1`);
    expect(sheet.getRange('A1').getValue()).toContain('Living room');
    await fill(workbook, 'cut list', DEMO_ROOM);
    expect(tabNames(workbook)).toEqual(['Sheet1', tab]);
    expect(sheet.getRange('A1').getValue()).toContain('Living room');
  });

  test('a tab of an earlier version, with a colon in its name, gets the new one, and what points at it follows', async () => {
    const workbook = builtWorkbook();
    const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
    const sheets = workbook.spreadsheetApp.getActiveSpreadsheet();
    sheets.getSheetByName(tab)?.setName('Cut list: Living room');
    const elsewhere = sheets.getSheetByName('Sheet1')?.getRange('A1');
    elsewhere?.setFormula("='Cut list: Living room'!C1");
    expect((await fill(workbook, 'cut list', DEMO_ROOM)).tab).toBe('Cut list - Living room');
    expect(tabNames(workbook)).toEqual(['Sheet1', 'Cut list - Living room']);
    expect(elsewhere?.getFormula()).toBe("='Cut list - Living room'!C1");
    expect(elsewhere?.getValue()).toBe('Cut list: Living room');
  });

  test('leaves a tab alone that only has the same name', async () => {
    const workbook = builtWorkbook();
    const theirs = workbook.spreadsheetApp.getActiveSpreadsheet().insertSheet('Cut list - Living room');
    theirs.getRange('A1').setValue('mine');
    const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
    expect(tab).not.toBe('Cut list - Living room');
    expect(theirs.getDataRange().getValues()).toEqual([['mine']]);
  });

  test.each(['=1+1', "Kid's room", '5/8', '🪵', '+A1', "'quoted"])(
    'takes a room named %s for what it is',
    async (name) => {
      const workbook = builtWorkbook();
      const filled = await fill(workbook, 'cut list', rectangle(name, "12'", "10'"));
      expect(filled.problems).toEqual([]);
      const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(filled.tab);
      expect(sheet?.getRange('C1').getFormula()).toBe('');
      expect(sheet?.getRange('C1').getDisplayValue()).toContain(name);
    },
  );

  test('waits for somebody else, and says so when it has to give up', async () => {
    const workbook = builtWorkbook();
    workbook.setLock('document', 'someone else');
    await expect(fill(workbook, 'cut list', DEMO_ROOM)).rejects.toThrow(/[A-Z].+\./);
    expect(tabNames(workbook)).toEqual(['Sheet1']);
  });

  test('tells what is wrong at its field, and fills nothing', async () => {
    const workbook = builtWorkbook();
    const { tab, problems } = await fill(workbook, 'cut list', rectangle('Hall', 'wide', "10'"));
    expect(tab).toBe('');
    expect(problems.map((problem) => problem.field)).toContain('shape.length');
    expect(tabNames(workbook)).toEqual(['Sheet1']);
  });

  test('keeps the ticks of pieces that stay the same', async () => {
    const workbook = builtWorkbook();
    const { tab } = await fill(workbook, 'cut list', DEMO_ROOM);
    const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab);
    const cells = sheet?.getDataRange().getValues() ?? [];
    const row = cells.findIndex((line) => line.includes(false));
    const column = cells[row]?.indexOf(false) ?? -1;
    sheet?.getRange(row + 1, column + 1).setValue(true);
    await fill(workbook, 'cut list', DEMO_ROOM);
    const after = sheet?.getDataRange().getValues() ?? [];
    expect(after.flat().filter((cell) => cell === true)).toHaveLength(1);
    expect(after[row]?.[column]).toBe(true);
  });
});

describe('the add-on', () => {
  test('builds its menu before it is enabled, and its page opens from there', () => {
    const workbook = builtWorkbook();
    workbook.open(false);
    const item = workbook.screen.menu?.items[0];
    if (!item || item === 'separator') throw new Error('The menu has no item');
    workbook.choose(item.functionName);
    expect(workbook.screen.sidebar?.html).toMatch(/^<!doctype html>/i);
  });

  test('starts in the units of the spreadsheet', () => {
    expect(builtWorkbook({ locale: 'en_US' }).runFromPage('startUnits', [])).toBe('us');
    expect(builtWorkbook({ locale: 'de_DE' }).runFromPage('startUnits', [])).toBe('metric');
  });

  test('gives the same list of cuts every time', async () => {
    const lists: string[][][] = [];
    for (const workbook of [builtWorkbook(), builtWorkbook()]) {
      lists.push(shownIn(workbook, (await fill(workbook, 'cut list', DEMO_ROOM)).tab));
    }
    expect(lists[1]).toEqual(lists[0]);
  });
});
