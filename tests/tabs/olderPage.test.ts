/** A homeowner's page in the spreadsheet, and an order that has changed since. */
import { beforeEach, describe, expect, test } from 'vitest';
import type { HouseEntry } from '../../src/order/houseEntry';
import { writeTab } from '../../src/sheet/writeTab';
import type { JobAnswer } from '../../src/tabs/jobTabs';
import { roomColumn, roomsBlock } from '../../src/tabs/rooms';
import type { TabStore } from '../../src/tabs/tabStore';
import { storeOf as workbookStoreOf } from '../../src/workbook/workbookStore';
import { builtWorkbook, shownIn } from '../support/builtWorkbook';
import { demoJob, demoRooms } from '../support/demoHouse';
import { type FakeBook, type FakeSheet, fakeBook, installFakes, spreadsheetOf } from '../support/fakeSpreadsheet';
import { storeOf } from '../support/fakeStore';
import { fillHomeowner, fillOrder } from '../support/plannedOnce';

const rooms = demoRooms.slice(0, 1);
const job: HouseEntry = {
  ...demoJob,
  doorways: [],
  appliances: [],
  stairs: [],
  floors: demoJob.floors.slice(0, 1),
  site: { ...demoJob.site, tearOut: [] },
};
// The bedroom's doorway without a bar to choose would keep the price off the page.
const priced: HouseEntry = {
  ...job,
  doorways: [{ ...demoJob.doorways[0], neighbour: 'hall', neighbourHeight: '1/2"' }],
};
const dearer: HouseEntry = { ...priced, tape: { ...priced.tape, price: 99 } };

const TOP = "This page is older than the order. Fill the homeowner's page again before it is handed over.";
const NOTE =
  "The homeowner's page is older than this order, and says so on its top line. Fill it again before it is handed over.";

const notesOf = (answer: JobAnswer) => (answer.status === 'filled' ? answer.notes : ['not filled']);

let book: FakeBook;
let store: TabStore;

const sheetNamed = (name: string) => book.sheets.find((sheet) => sheet.name === name) as FakeSheet;
const page = () => sheetNamed('Homeowner').values();

beforeEach(() => {
  book = fakeBook();
  installFakes(book);
  store = storeOf(book);
  writeTab(spreadsheetOf(book), roomsBlock(rooms.map(roomColumn)));
});

describe('an order filled after the homeowner’s page', () => {
  test('leaves alone a page that says what the order says', async () => {
    await fillHomeowner(store, priced);
    const before = page();
    const answer = await fillOrder(store, priced);
    expect(notesOf(answer)).toEqual([]);
    expect(page()).toEqual(before);
  });

  test.each<readonly [string, HouseEntry]>([
    ['price', dearer],
    ['start', { ...priced, schedule: { ...priced.schedule, startDate: '2027-01-04' } }],
    ['remarks', { ...priced, homeowner: { ...priced.homeowner, remarks: [] } }],
  ])('marks a page with another %s on its top line, and keeps all of it', async (_, changed) => {
    await fillHomeowner(store, priced);
    const before = page();
    const answer = await fillOrder(store, changed);
    expect(notesOf(answer)).toEqual([NOTE]);
    expect(answer.status === 'filled' && answer.tabs).toContain('Homeowner');
    const [top, ...rest] = page();
    expect(top[0]).toBe(TOP);
    expect(rest).toEqual(before);
    const { formula, looks } = sheetNamed('Homeowner').at(1, 1);
    expect([formula, looks.weight, looks.background]).toEqual(['', 'bold', '#ffd9cc']);
  });

  test('marks it once, and says so each time until it is filled again', async () => {
    await fillHomeowner(store, priced);
    await fillOrder(store, dearer);
    const marked = page();
    expect(notesOf(await fillOrder(store, dearer))).toEqual([NOTE]);
    expect(page()).toEqual(marked);
    await fillHomeowner(store, dearer);
    expect(page().flat()).not.toContain(TOP);
    expect(notesOf(await fillOrder(store, dearer))).toEqual([]);
  });

  test('a change that the page does not show does not make it older', async () => {
    const hidden = { ...priced, homeowner: { ...priced.homeowner, showPrice: 'no' as const } };
    await fillHomeowner(store, hidden);
    const answer = await fillOrder(store, { ...hidden, tape: dearer.tape });
    expect(notesOf(answer)).toEqual([]);
  });

  test('a line of the person’s own makes no page older; neither does a number taken out', async () => {
    await fillHomeowner(store, priced);
    const sheet = sheetNamed('Homeowner');
    const numberRow = page().findIndex((row) => /^Version [A-Z]{3}-[A-Z]{3}$/.test(String(row[0]))) + 1;
    expect(numberRow).toBeGreaterThan(1);
    sheet.at(numberRow + 1, 1).value = 'We bring our own coffee.';
    expect(notesOf(await fillOrder(store, priced))).toEqual([]);
    sheet.at(numberRow, 1).value = '';
    expect(notesOf(await fillOrder(store, priced))).toEqual([]);
    expect(notesOf(await fillOrder(store, dearer))).toEqual([NOTE]);
    expect(page().flat()).toContain('We bring our own coffee.');
  });

  test('filled again keeps what a person wrote, and neither the line on top nor the number of the page', async () => {
    await fillHomeowner(store, priced);
    const sheet = sheetNamed('Homeowner');
    const numberOf = () => page().findIndex((row) => /^Version [A-Z]{3}-[A-Z]{3}$/.test(String(row[0]))) + 1;
    sheet.at(numberOf() + 1, 1).value = 'We bring our own coffee.';
    await fillOrder(store, dearer);
    sheet.at(1, 40).value = 'Told them on Monday';
    // A page of which nothing is remembered: what can be told by its words alone is.
    for (const entry of book.metadata) if (entry.key.endsWith('-lines') && entry.sheet === sheet) entry.value = '';
    const number = page()[numberOf() - 1][0];
    const answer = await fillHomeowner(store, dearer);
    expect(answer).toMatchObject({ kept: ['Homeowner'] });
    const texts = page().flat();
    for (const words of ['We bring our own coffee.', 'Told them on Monday']) {
      expect(texts.filter((text) => text === words)).toHaveLength(1);
    }
    expect(texts).not.toContain(TOP);
    expect(texts).not.toContain(number);
  });

  test('no page, no word', async () => {
    expect(notesOf(await fillOrder(store, priced))).toEqual([]);
    expect(book.sheets.map((sheet) => sheet.name)).not.toContain('Homeowner');
  });
});

describe('the homeowner’s page filled beside an order', () => {
  test('a total that is written over is told, since the page does not have it; filled as told, the two agree', async () => {
    await fillOrder(store, priced);
    const row = sheetNamed('Order')
      .values()
      .findIndex(([first]) => first === 'To pay');
    sheetNamed('Order').at(row + 1, 5).value = 1234.5;
    const answer = await fillHomeowner(store, priced);
    const paid = answer.status === 'filled' ? answer.toPay : '';
    expect(notesOf(answer)).toEqual([
      `The Order tab comes to $1,234.50 and this page to ${paid}: since the order was filled, the job or a room has changed, or somebody has changed a cell of the order that the page does not use. Fill the order, then fill the page again.`,
    ]);
    await fillOrder(store, priced);
    expect(notesOf(await fillHomeowner(store, priced))).toEqual([]);
  });

  test('a price typed into the order is on the page too, and makes a page filled before it older', async () => {
    await fillHomeowner(store, priced);
    await fillOrder(store, priced);
    const row = sheetNamed('Order')
      .values()
      .findIndex(([item]) => item === 'Harbour oak');
    sheetNamed('Order').at(row + 1, 4).value = 5000;
    const order = await fillOrder(store, priced);
    expect(notesOf(order)).toEqual([
      expect.stringMatching(/^Typed in the order and kept: Harbour oak, price 5000/),
      NOTE,
    ]);
    const answer = await fillHomeowner(store, priced);
    expect(answer).toMatchObject({ toPay: order.status === 'filled' && order.toPay });
    expect(page().flat()).not.toContain(TOP);
    expect(notesOf(await fillOrder(store, priced))).not.toContain(NOTE);
  });

  test('one that agrees is not spoken of', async () => {
    const answer = await fillOrder(store, priced);
    const row = sheetNamed('Order')
      .values()
      .findIndex(([first]) => first === 'To pay');
    const toPay = answer.status === 'filled' ? Number(answer.toPay.replace(/[$,]/g, '')) : 0;
    sheetNamed('Order').at(row + 1, 5).value = toPay;
    expect(notesOf(await fillHomeowner(store, priced))).toEqual([]);
  });
});

test('in the built add-on: the line stands above the page, the pictures keep their colours, the totals agree', async () => {
  const workbook = builtWorkbook();
  const built = workbookStoreOf(workbook);
  await built.write(roomsBlock(rooms.map(roomColumn)), '');
  await fillOrder(built, priced);
  const line = shownIn(workbook, 'Order').find(([first]) => first === 'Harbour oak') ?? [];
  expect([line[9], line[1]].every((count) => /^[1-9]\d*$/.test(count ?? ''))).toBe(true);
  // The totals of the order, worked out by the engine, are the page's to the cent.
  expect(notesOf(await fillHomeowner(built, priced))).toEqual([]);
  const sheetOf = (name: string) => workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(name);
  const priceRow = shownIn(workbook, 'Order').findIndex(([first]) => first === 'Harbour oak') + 1;
  const price = sheetOf('Order')?.getRange(priceRow, 4);
  const planned = price?.getValue();
  // So are they with a price that is typed into the order alone, before it is filled again.
  price?.setValue(1234.56);
  expect(notesOf(await fillHomeowner(built, priced))).toEqual([expect.stringMatching(/^Typed in the order and kept/)]);
  price?.setValue(planned);
  expect(notesOf(await fillHomeowner(built, priced))).toEqual([]);
  const colours = () => sheetOf('Homeowner')?.getDataRange().getBackgrounds() ?? [];
  const [before, coloursBefore] = [shownIn(workbook, 'Homeowner'), colours()];
  expect(notesOf(await fillOrder(built, dearer))).toEqual([NOTE]);
  const [top, ...rest] = shownIn(workbook, 'Homeowner');
  expect(top[0]).toBe(TOP);
  expect(rest).toEqual(before);
  expect(colours().slice(1)).toEqual(coloursBefore);
}, 120_000);
