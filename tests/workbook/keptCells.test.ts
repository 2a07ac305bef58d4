/** Filling again in the embedded workbook, through the built add-on: its own cells are read back and known as ours. */
import { expect, test } from 'vitest';
import { fillOrder } from '../../src/tabs/jobTabs';
import { KEPT_HEADING } from '../../src/tabs/oldTab';
import { saveRoom } from '../../src/tabs/roomTabs';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, fill, rectangle, shownIn, tabNames } from '../support/builtWorkbook';
import { demoJob } from '../support/demoHouse';

const room = rectangle('Hall', `6'`, `2' 1"`);
const longer = rectangle('Hall', `7'`, `2' 1"`);
const job = { ...demoJob, rooms: [], doorways: [], appliances: [], stairs: [] };

test('what a person typed is kept, nothing of ours is taken for it, and a list that no longer holds says so', async () => {
  const workbook = builtWorkbook();
  const store = storeOf(workbook);
  const sheet = (name: string) => {
    const found = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
    if (!found) throw new Error(`There is no tab ${name}`);
    return found;
  };
  const rowOf = (name: string, text: string) => shownIn(workbook, name).findIndex((row) => row.includes(text)) + 1;
  const fillAll = async (entry: typeof room) => {
    await saveRoom(store, entry);
    await fillOrder(store, job, async () => true);
  };
  await fill(workbook, 'cut list', room);
  await fillAll(room);
  await fillAll(longer);
  const ours = tabNames(workbook).slice(1);
  expect(ours.toSorted()).toEqual(['Cut list: Hall', 'Floor plan: Hall', 'Job', 'Job list', 'Order', 'Rooms']);
  for (const name of ours) expect([name, shownIn(workbook, name).flat().includes(KEPT_HEADING)]).toEqual([name, false]);

  sheet('Order').getRange(rowOf('Order', 'Waste container'), 11).setValue(99);
  sheet('Cut list: Hall').getRange(rowOf('Cut list: Hall', '2-1'), 13).setValue('batch 7');
  sheet('Job list')
    .getRange(rowOf('Job list', 'Days') + 2, 5)
    .setValue('call first');
  await fillAll(longer);
  expect(shownIn(workbook, 'Order')[rowOf('Order', 'Waste container') - 1][10]).toMatch(/^99/);
  expect(shownIn(workbook, 'Cut list: Hall')[rowOf('Cut list: Hall', '2-1') - 1][12]).toBe('batch 7');
  expect(shownIn(workbook, 'Job list').flat()).toContain('call first');
  for (const name of ours) expect([name, shownIn(workbook, name).flat().includes(KEPT_HEADING)]).toEqual([name, false]);

  await store.putOnTop('order', 'This order no longer holds: tried.');
  await store.putOnTop('order', 'This order no longer holds: tried again.');
  const order = shownIn(workbook, 'Order').map(([first]) => first);
  expect(order.slice(0, 2)).toEqual(['This order no longer holds: tried again.', 'Order']);
  expect(order.filter((text) => text.startsWith('This order'))).toHaveLength(1);
}, 120_000);
