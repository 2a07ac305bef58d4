/**
 * How often filling asks the platform's services: each call takes its time there, whatever it asks for. The count is the
 * same in every run. The limits are what it took when they were last counted (938, 478, 1869 and 573) and a little more, so
 * that a column of another width may come in; one more reading of every tab does not.
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
  const limits = [970, 500, 1930, 600];
  expect(counts.map((count, i) => Math.max(count, limits[i]))).toEqual(limits);
});
