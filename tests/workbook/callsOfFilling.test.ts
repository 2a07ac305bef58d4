/**
 * How often filling asks the platform's services: each call takes its time there, whatever it asks for. The count is the
 * same in every run. The limits are what it took when the calls were last gone through one by one: fewer are welcome, more
 * want a reason.
 */
import { expect, test } from 'vitest';
import { saveRoom } from '../../src/tabs/roomTabs';
import { storeOf } from '../../src/workbook/workbookStore';
import { builtWorkbook } from '../support/builtWorkbook';
import { demoJob, demoRooms } from '../support/demoHouse';
import { fillHomeowner, fillOrder } from '../support/plannedOnce';

const workbook = builtWorkbook();
const store = storeOf(workbook);

async function callsOf(work: () => Promise<unknown>): Promise<number> {
  workbook.resetCalls();
  await work();
  return Object.values(workbook.calls()).reduce((sum, count) => sum + count, 0);
}

test('filling a house asks the services no more often than it has to', async () => {
  for (const room of demoRooms) await saveRoom(store, room);
  const counts = [
    await callsOf(() => fillOrder(store, demoJob)),
    await callsOf(() => fillHomeowner(store, demoJob)),
    await callsOf(() => fillOrder(store, demoJob)),
    await callsOf(() => fillHomeowner(store, demoJob)),
  ];
  const limits = [930, 477, 1861, 572];
  expect(counts.map((count, i) => Math.max(count, limits[i]))).toEqual(limits);
});
