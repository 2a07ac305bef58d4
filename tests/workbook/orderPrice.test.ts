/** A price changed in the filled order, in a real browser: the totals follow, without the add-on. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { type PackedContent, packBlock, unpackContent } from '../../src/tabs/packed';
import { saveRoom } from '../../src/tabs/roomTabs';
import type { OurTab, TabAsRead, TabStore, WriteAnswer } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { openWorkbookPage, type WorkbookPage } from '../support/browser';
import { fillOrder } from '../support/plannedOnce';
import { plainRoom } from '../support/roomEntries';

let workbook: WorkbookPage;

beforeAll(async () => {
  workbook = await openWorkbookPage();
});

afterAll(async () => {
  expect(workbook.errors).toEqual([]);
  await workbook.close();
});

/**
 * One row by hand: 8 ft and two gaps of 3/8 in long, 6 in and two gaps deep, so two whole planks of 48 in by 6 in. A
 * box of 2 is bought, and two other things.
 */
const room: RoomEntry = {
  ...plainRoom,
  name: 'Niche',
  shape: { kind: 'rectangle', length: `8' 3/4"`, width: `6 3/4"` },
  product: { ...plainRoom.product, planksPerBox: 2, pricePerBox: 60 },
};
const job: HouseEntry = {
  ...emptyHouse('us'),
  extras: [
    { ...blankItem('extras'), name: 'Glue', quantity: 3, price: 12.5 },
    { ...blankItem('extras'), name: 'Skip', price: 80 },
  ],
  labour: [{ work: 'Laying', by: 'job', rate: 100 }],
  terms: { tax: 10, taxOn: 'materials', margin: 20, marginOf: 'cost' },
};

/** The way to the tabs from the page's own sidebar. */
const store: TabStore = {
  async read(mark, title) {
    const answer = await workbook.runScript('readTabCells', mark, title);
    const { cells, ...read } = answer as Omit<TabAsRead, 'cells'> & { readonly cells: PackedContent[][] };
    return { ...read, cells: cells.map((row) => row.map(unpackContent)) };
  },
  write: async (block, version) => (await workbook.runScript('fillTab', packBlock(block), version)) as WriteAnswer,
  tabs: async () => (await workbook.runScript('tabsOfOurs')) as readonly OurTab[],
  locale: async () => String(await workbook.runScript('spreadsheetLocale')),
  putOnTop: async (mark, words) => void (await workbook.runScript('putOnTopOfTab', mark, words)),
  rename: async (mark, newMark, newTitle) => void (await workbook.runScript('renameTab', mark, newMark, newTitle)),
};

async function cellBeside(item: string, column: 'J' | 'B' | 'D' | 'E'): Promise<string> {
  const row = (await workbook.tab('Order')).findIndex(([name]) => name === item);
  if (row < 0) throw new Error(`The order has no line ${item}`);
  return `${column}${row + 1}`;
}

async function shownBeside(item: string): Promise<string> {
  return workbook.shownIn(await cellBeside(item, 'E'), 'Order');
}

test('totals follow a price typed into the order', { timeout: 120_000 }, async () => {
  await saveRoom(store, room);
  const filled = await fillOrder(store, job);
  expect(filled).toMatchObject({ status: 'filled', missing: [], toPay: '354.30' });
  await workbook.runScript('showTab', 'Order');
  // 60 + 3 x 12.50 + 80 = 177.50, tax 17.75, labour 100: cost 295.25; margin 59.05.
  expect(await shownBeside('Materials')).toBe('177.50');
  expect(await shownBeside('To pay')).toBe('354.30');
  expect(await workbook.shownIn(await cellBeside('Harbour oak', 'J'), 'Order')).toBe('2');
  expect(await workbook.shownIn(await cellBeside('Harbour oak', 'B'), 'Order')).toBe('1');

  await workbook.typeInto(await cellBeside('Harbour oak', 'D'), '75.5');
  // 75.50 + 37.50 + 80 = 193.00, tax 19.30, labour 100: cost 312.30; margin 62.46.
  await expect.poll(() => shownBeside('Materials')).toBe('193.00');
  expect(await shownBeside('Margin')).toBe('62.46');
  expect(await shownBeside('To pay')).toBe('374.76');

  await workbook.typeInto(await cellBeside('Glue', 'D'), '10');
  // 75.50 + 30 + 80 = 185.50, tax 18.55, labour 100: cost 304.05; margin 60.81.
  await expect.poll(() => shownBeside('To pay')).toBe('364.86');

  await workbook.typeInto(await cellBeside('Tax on materials', 'D'), '0');
  // 185.50, labour 100: cost 285.50; margin 57.10.
  await expect.poll(() => shownBeside('To pay')).toBe('342.60');
});
