/** A workbook saved and opened again: what the engine exports, as text, is all there is of it. */
import { expect, test } from 'vitest';
import { saveRoom } from '../../src/tabs/roomTabs';
import { DEMO_ROOM } from '../../src/workbook/demoRoom';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, fill, rectangle, shownIn, tabNames } from '../support/builtWorkbook';
import { demoJob } from '../support/demoHouse';
import { fillOrder } from '../support/plannedOnce';

type BuiltWorkbook = ReturnType<typeof builtWorkbook>;

const reopened = (workbook: BuiltWorkbook): BuiltWorkbook =>
  builtWorkbook({ saved: { data: JSON.parse(JSON.stringify(workbook.engine.exported())) } });

test('tabs of ours are known again, ticks and notes stay with their pieces, and rooms can be planned on', async () => {
  const before = builtWorkbook();
  const room = rectangle('Study', '9\' 8"', '8\' 1"');
  await fill(before, 'rooms', room);
  const { tab } = await fill(before, 'cut list', room);
  const sheet = before.spreadsheetApp.getActiveSpreadsheet().getSheetByName(tab);
  const rows = shownIn(before, tab);
  const firstPiece = rows.findIndex((row) => row.includes('1-1')) + 1;
  sheet?.getRange(firstPiece, 1).setValue(true);
  sheet?.getRange(firstPiece, 12).setValue('cut by Ann');
  before.engine.flush();

  const after = reopened(before);
  expect(tabNames(after)).toEqual(tabNames(before));
  expect(shownIn(after, tab)).toEqual(shownIn(before, tab));
  expect(await storeOf(after).tabs()).toEqual(await storeOf(before).tabs());
  const again = await fill(after, 'cut list', { ...room, product: DEMO_ROOM.product });
  expect(again.tab).toBe(tab);
  const shown = shownIn(after, tab);
  const piece = shown.find((row) => row.includes('1-1'));
  expect(piece?.[0]).toBe('TRUE');
  expect(piece).toContain('cut by Ann');
  expect(tabNames(after)).toEqual(tabNames(before));
});

test('what the services keep beside the cells comes back: notes, properties, named ranges, rules, protection', () => {
  const before = builtWorkbook();
  const app = before.spreadsheetApp;
  const sheet = app.getActiveSheet();
  sheet.getRange('A1').setNote('measure again');
  sheet.setTabColor('#123456');
  sheet.getRange('B2').protect().setDescription('keep');
  sheet.getRange('C1:C3').setDataValidation(app.newDataValidation().requireCheckbox().build());
  const rule = app.newConditionalFormatRule().whenFormulaSatisfied('=A1>1').setBold(true);
  sheet.setConditionalFormatRules([rule.setRanges([sheet.getRange('A1:A9')]).build()]);
  app.getActiveSpreadsheet().setNamedRange('price', sheet.getRange('D1'));
  before.keep();

  const after = reopened(before);
  const found = after.spreadsheetApp.getActiveSheet();
  expect(found.getRange('A1').getNote()).toBe('measure again');
  expect(found.getTabColor()).toBe('#123456');
  const [kept] = found.getProtections(after.spreadsheetApp.ProtectionType.RANGE);
  expect([kept.getDescription(), kept.getRange().getA1Notation()]).toEqual(['keep', 'B2']);
  expect(found.getConditionalFormatRules()[0].getRanges()[0].getA1Notation()).toBe('A1:A9');
  expect(after.spreadsheetApp.getActiveSpreadsheet().getRangeByName('price')?.getA1Notation()).toBe('D1');
  expect(found.getSheetId()).toBe(sheet.getSheetId());
});

test('an order, with formulas of every form, is sent to the other windows', async () => {
  // As the program does: what one window sends goes to all, the sender included.
  const windows: ((message: unknown) => void)[] = [];
  let count = 0;
  const transport = {
    onNewMessage: (_: unknown, told: (message: unknown) => void) => void windows.push(told),
    leave: () => {},
    sendMessage: async (message: unknown) => {
      count += 1;
      for (const told of windows) told(message);
    },
  };
  const workbook = builtWorkbook({ saved: { transport: transport as never } });
  await saveRoom(storeOf(workbook), rectangle('Study', '9\' 8"', '8\' 1"'));
  const job = { ...demoJob, rooms: [], doorways: [], appliances: [], stairs: [] };
  expect(await fillOrder(storeOf(workbook), job, async () => true)).toMatchObject({ status: 'filled' });
  expect(count).toBeGreaterThan(10);
});
