/** Filling again in the embedded workbook, through the built add-on: its own cells are read back and known as ours. */
import { expect, test } from 'vitest';
import { KEPT_HEADING } from '../../src/tabs/oldTab';
import { saveRoom } from '../../src/tabs/roomTabs';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, fill, rectangle, shownIn, tabNames } from '../support/builtWorkbook';
import { demoJob } from '../support/demoHouse';
import { fillOrder } from '../support/plannedOnce';

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
  expect(ours.toSorted()).toEqual([
    'Cut list - Hall',
    'Floor plan - Hall',
    'Job',
    'Job list',
    'Order',
    'Purchase list',
    'Rooms',
  ]);
  for (const name of ours) expect([name, shownIn(workbook, name).flat().includes(KEPT_HEADING)]).toEqual([name, false]);

  sheet('Order').getRange(rowOf('Order', 'Waste container'), 4).setValue(99);
  sheet('Cut list - Hall').getRange(rowOf('Cut list - Hall', '2-1'), 16).setValue('batch 7');
  sheet('Job list')
    .getRange(rowOf('Job list', 'Days') + 2, 5)
    .setValue('call first');
  await fillAll(longer);
  expect(shownIn(workbook, 'Order')[rowOf('Order', 'Waste container') - 1][3]).toMatch(/^99/);
  expect(shownIn(workbook, 'Cut list - Hall')[rowOf('Cut list - Hall', '2-1') - 1][15]).toBe('batch 7');
  expect(shownIn(workbook, 'Job list').flat()).toContain('call first');
  for (const name of ours) expect([name, shownIn(workbook, name).flat().includes(KEPT_HEADING)]).toEqual([name, false]);

  // A note of a person's goes with its piece, and one written since the tab was read keeps it from being written over.
  const piece = () => sheet('Cut list - Hall').getRange(rowOf('Cut list - Hall', '2-1'), 2);
  piece().setNote('the door is here');
  sheet('Cut list - Hall').insertRowsBefore(4, 1);
  await fill(workbook, 'cut list', longer);
  expect(piece().getNote()).toBe('the door is here');
  const { mark = '' } = (await store.tabs()).find(({ tab }) => tab === 'Cut list - Hall') ?? {};
  const { version } = await store.read(mark, 'Cut list - Hall');
  expect((await store.read(mark, 'Cut list - Hall')).version).toBe(version);
  piece().setNote('the door was here');
  expect((await store.read(mark, 'Cut list - Hall')).version).not.toBe(version);

  await store.putOnTop('order', 'This order no longer holds: tried.');
  await store.putOnTop('order', 'This order no longer holds: tried again.');
  const order = shownIn(workbook, 'Order').map(([first]) => first);
  expect(order.slice(0, 2)).toEqual(['This order no longer holds: tried again.', 'Order']);
  expect(order.filter((text) => text.startsWith('This order'))).toHaveLength(1);
}, 120_000);
