/** The form of the whole job in a real browser: made from the rooms, with the way from what is missing to its field. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { packBlock } from '../../src/tabs/packed';
import { roomColumn, roomsBlock } from '../../src/tabs/rooms';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';
import { demoRooms } from '../support/demoHouse';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
  await workbook.runScript('fillTab', packBlock(roomsBlock(demoRooms.map(roomColumn))), '');
  await workbook.sidebar().getByRole('button', { name: 'The whole job' }).click();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

const field = (path: string) => workbook.sidebar().locator(`[id="field-job.${path}"]`);
const part = (name: RegExp) => workbook.sidebar().locator('#job-form summary', { hasText: name });
const focused = () => workbook.inSidebar(() => document.activeElement?.id);

test('rooms, products and doorways are there to be chosen, days are picked', async () => {
  const rooms = workbook.sidebar().getByRole('group', { name: 'Rooms' }).getByRole('checkbox');
  await expect.poll(() => rooms.count(), { timeout: 20_000 }).toBe(3);
  await part(/^Products/).click();
  expect(await field('floors.0.product').inputValue()).toBe('Harbour oak');
  expect(await field('floors.1.product').inputValue()).toBe('Ferry ash');
  await part(/^Doorways/).click();
  expect(await field('doorways.3.room').inputValue()).toBe('Living room with closet');
  expect(await field('doorways.3.doorway').inputValue()).toBe('2');
  const offered = `datalist[id="${await field('doorways.3.neighbour').getAttribute('list')}"] option`;
  expect(await workbook.sidebar().locator(offered).count()).toBe(3);
  await part(/^Dates/).click();
  expect(await field('schedule.startDate').getAttribute('type')).toBe('date');
}, 60_000);

test('each part says how far it is, as it is typed', async () => {
  const state = (at: string) => workbook.sidebar().locator(`[id="state-job.${at}"]`).textContent();
  expect(await state('labour')).toBe('none');
  await part(/^Work/).click();
  await workbook.sidebar().getByRole('button', { name: 'Usual work' }).click();
  expect(await state('labour')).toBe('0 of 7 priced');
  await field('labour.0.rate').fill('3.50');
  expect(await state('labour')).toBe('1 of 7 priced');
  expect(await state('floors')).toBe('2 of 2 priced');
  expect(await state('fasteners')).toBe('not needed: nothing is nailed');
  await field('floors.1.fastening').selectOption('nailed');
  expect(await state('fasteners')).toBe('0 of 1 priced');
  await field('floors.1.fastening').selectOption('');
}, 60_000);

test('what is missing leads to its field', async () => {
  await workbook.sidebar().getByRole('button', { name: 'Fill the order' }).click();
  const missing = workbook.sidebar().getByRole('button', { name: 'Delivery: no price' });
  await missing.waitFor({ timeout: 60_000 });
  await part(/^Work/).click();
  await missing.click();
  expect(await focused()).toBe('field-job.labour.6.rate');
  const bar = /^Study, doorway 1: no transition is ordered/;
  await workbook.sidebar().getByRole('button', { name: bar }).click();
  expect(await focused()).toBe('field-job.doorways.1.neighbourHeight');
  expect(await workbook.tabNames()).toContain('Purchase list');
}, 120_000);

test('rooms that are ticked are the job', async () => {
  await workbook.sidebar().getByRole('group', { name: 'Rooms' }).getByRole('checkbox', { name: 'Study' }).check();
  await workbook.sidebar().getByRole('button', { name: 'Save' }).click();
  await expect
    .poll(async () => (await workbook.tab('Job')).find(([label]) => label === 'Job, Rooms')?.[1], { timeout: 20_000 })
    .toBe('Study');
}, 60_000);
