/** What a person writes in a tab of ours is still somewhere in it after it was filled again. */
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { blankItem, emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { orderOf } from '../../src/order/order';
import { planHouse } from '../../src/order/planHouse';
import { readHouse } from '../../src/order/readHouse';
import { openJob, saveJob } from '../../src/tabs/jobTabs';
import { KEPT_HEADING } from '../../src/tabs/oldTab';
import { orderBlock } from '../../src/tabs/order';
import { withInputs } from '../../src/tabs/orderInputs';
import { fillCutList, fillFloorPlan, savedRooms, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { Takeoff } from '../../src/takeoff/result';
import { takeoff } from '../../src/takeoff/takeoff';
import { type FakeBook, type FakeSheet, fakeBook, installFakes } from '../support/fakeSpreadsheet';
import { storeOf } from '../support/fakeStore';
import { fillHomeowner, fillOrder } from '../support/plannedOnce';
import { plainRoom } from '../support/roomEntries';

let book: FakeBook;
let store: TabStore;

const closet: RoomEntry = {
  ...plainRoom,
  name: 'Closet',
  shape: { kind: 'rectangle', length: `5' 3"`, width: `1' 9"` },
  product: { ...plainRoom.product, pricePerBox: 60 },
};
/** The same closet shorter, 53 1/4" a row: a whole plank would leave less than the minimum piece, so none is laid whole. */
const shorter: RoomEntry = { ...closet, shape: { kind: 'rectangle', length: `4' 6"`, width: `1' 9"` } };
const job: HouseEntry = {
  ...emptyHouse('us'),
  extras: ['Glue', 'Skip', 'Screws'].map((name, i) => ({
    ...blankItem('extras'),
    name,
    quantity: i + 1,
    price: 10 + i,
  })),
  labour: [{ work: 'Laying', by: 'job', rate: 100 }],
  terms: { tax: 10, taxOn: 'materials', margin: 20, marginOf: 'cost' },
  schedule: { startDate: '2026-12-07', hoursPerDay: 7, people: 1, deliveryDays: 10, workDays: '' },
};
const cheaper: HouseEntry = {
  ...job,
  extras: job.extras.slice(0, 2),
  schedule: { ...job.schedule, startDate: '2027-02-01' },
};

const planned = (room: RoomEntry): Takeoff => {
  const result = takeoff(room);
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  return result.takeoff;
};
const plans = { before: planned(closet), after: planned(shorter) };

function sheetNamed(name: string): FakeSheet {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new Error(`There is no tab ${name}`);
  return sheet;
}
const rowOf = (name: string, first: string) =>
  sheetNamed(name)
    .values()
    .findIndex((row) => row[0] === first) + 1;
const textsOf = (name: string) => sheetNamed(name).values().flat().map(String);

async function fillAll(isAfter: boolean): Promise<void> {
  const plan = isAfter ? plans.after : plans.before;
  await saveRoom(store, isAfter ? shorter : closet);
  await fillCutList(store, plan);
  await fillFloorPlan(store, plan);
  await fillOrder(store, isAfter ? cheaper : job, async () => true);
  await fillHomeowner(store, isAfter ? cheaper : job);
}

beforeEach(async () => {
  book = fakeBook();
  installFakes(book);
  store = storeOf(book);
});

const TABS = ['Rooms', 'Job', 'Order', 'Job list', 'Homeowner', 'Cut list - Closet', 'Floor plan - Closet'];

describe('filled again, with the same plan or another', () => {
  test('every tab holds what was typed anywhere in it', async () => {
    const edit = fc.record({
      tab: fc.constantFrom(...TABS),
      row: fc.integer({ min: 1, max: 70 }),
      column: fc.integer({ min: 1, max: 14 }),
      isNumber: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 12 }), fc.boolean(), async (edits, isAfter) => {
        book = fakeBook();
        installFakes(book);
        store = storeOf(book);
        await fillAll(false);
        const typed = edits.map(({ tab, row, column, isNumber }, i) => {
          // Cells that decide how a tab is read: without them it is not written over at all, which other tests hold.
          const sheet = sheetNamed(tab);
          const place = keepsReadable(tab, sheet, row, column) ? [row, column] : [row, 15 + i];
          const value = isNumber ? 9_000_001 + i : `mine ${i}`;
          sheet.at(place[0], place[1]).value = value;
          sheet.at(place[0], place[1]).formula = '';
          return { tab, value: String(value), place: `${place}` };
        });
        // Of two edits of one cell the later one stands.
        const standing = typed.filter(
          (one, i) => !typed.slice(i + 1).some(({ tab, place }) => tab === one.tab && place === one.place),
        );
        for (const again of [isAfter, false]) {
          await fillAll(again);
          const lost = standing.filter(({ tab, value }) => !textsOf(tab).some((text) => text.includes(value)));
          expect(lost).toEqual([]);
        }
      }),
      { seed: 11, numRuns: 12 },
    );
  }, 300_000);

  /** `Rooms` and `Job` are read back: an entry that cannot be is told and the tab left alone. */
  function keepsReadable(tab: string, sheet: FakeSheet, row: number, column: number): boolean {
    if (tab === 'Rooms') return column > 2 || row < rowOf('Rooms', 'Room');
    if (tab === 'Job') return column > 2 || sheet.at(row, 1).value === '';
    return true;
  }

  test('a tab nobody wrote in has nothing put aside, whatever the new plan', async () => {
    await fillAll(false);
    await fillAll(true);
    await fillAll(false);
    for (const tab of TABS) expect(textsOf(tab)).not.toContain(KEPT_HEADING);
  });

  test('what is kept is kept once, however often the tab is filled', async () => {
    await fillAll(false);
    sheetNamed('Homeowner').at(60, 1).value = 'Mind the dog.';
    sheetNamed('Job list').at(2, 5).value = 'call first';
    for (const isAfter of [true, false, true]) await fillAll(isAfter);
    for (const [tab, words] of [
      ['Homeowner', 'Mind the dog.'],
      ['Job list', 'call first'],
    ]) {
      expect(textsOf(tab).filter((text) => text === words)).toHaveLength(1);
    }
  });

  test('a formula of a person’s is kept as text: moved, it would reckon with other cells', async () => {
    await fillAll(false);
    const cell = sheetNamed('Order').at(6, 14);
    Object.assign(cell, { value: 12, formula: '=L6*2' });
    await fillAll(true);
    const kept = [...sheetNamed('Order').cells.values()].filter(({ value }) => value === '=L6*2');
    expect(kept).toHaveLength(1);
    expect(kept[0].formula).toBe('');
  });
});

describe('the cut list', () => {
  beforeEach(() => fillCutList(store, plans.before));
  const line = (label: string) =>
    sheetNamed('Cut list - Closet')
      .values()
      .findIndex((row) => row[1] === label) + 1;

  test('keeps a column of the person’s beside each piece', async () => {
    const sheet = sheetNamed('Cut list - Closet');
    for (const label of ['1-1', '2-1']) sheet.at(line(label), 13).value = `batch of ${label}`;
    await fillCutList(store, plans.before);
    for (const label of ['1-1', '2-1']) expect(sheet.at(line(label), 13).value).toBe(`batch of ${label}`);
    expect(textsOf('Cut list - Closet')).not.toContain(KEPT_HEADING);
  });

  test('puts a tick and a note of a piece that is gone at the foot, with the line they belong to', async () => {
    const sheet = sheetNamed('Cut list - Closet');
    sheet.at(line('1-1'), 1).value = true;
    sheet.at(line('1-1'), 12).value = 'knot';
    await fillCutList(store, plans.after);
    // A piece of another size is not done.
    expect(sheet.at(line('1-1'), 1).value).toBe(false);
    const rows = sheet.values();
    const foot = rows.slice(rows.findIndex((row) => row[0] === KEPT_HEADING) + 1);
    expect(foot.map((row) => [row[1], row[0], row[11]])).toEqual([['1-1', true, 'knot']]);
    // And back beside its piece when that is planned again.
    await fillCutList(store, plans.before);
    expect([sheet.at(line('1-1'), 1).value, sheet.at(line('1-1'), 12).value]).toEqual([true, 'knot']);
    expect(textsOf('Cut list - Closet')).not.toContain(KEPT_HEADING);
  });
});

describe('the job', () => {
  const opened = async () => (await openJob(store, 'us')).entry;
  beforeEach(() => saveJob(store, job));

  test('without the lines of one item still has those after it', async () => {
    const sheet = sheetNamed('Job');
    const lines = sheet.values().flatMap((row, r) => (String(row[0]).startsWith('Item 2,') ? [r + 1] : []));
    expect(lines.length).toBeGreaterThan(2);
    for (const row of lines) for (const column of [1, 2]) sheet.at(row, column).value = '';
    expect((await opened()).extras.map(({ name }) => name)).toEqual(['Glue', 'Screws']);
    await saveJob(store, await opened());
    expect((await opened()).extras.map(({ name }) => name)).toEqual(['Glue', 'Screws']);
  });

  test('keeps a column and a line of the person’s, and the value beside a label that was changed', async () => {
    const sheet = sheetNamed('Job');
    sheet.at(rowOf('Job', 'Terms, Margin, percent'), 3).value = 'ask the boss';
    sheet.at(rowOf('Job', 'Item 3, Price of one'), 1).value = 'Item 3, My price';
    sheet.insertRows(5, 1);
    sheet.at(5, 1).value = 'Key is under the mat';
    await saveJob(store, await opened());
    expect(sheet.at(rowOf('Job', 'Terms, Margin, percent'), 3).value).toBe('ask the boss');
    const rows = sheet.values();
    const foot = rows.slice(rows.findIndex((row) => row[0] === KEPT_HEADING) + 1).map((row) => row.slice(0, 2));
    expect(foot).toEqual([
      ['Key is under the mat', ''],
      ['Item 3, My price', 12],
    ]);
  });

  test('reads a label that stands twice from its upper line, and nothing from what was put aside', async () => {
    const sheet = sheetNamed('Job');
    const last = sheet.values().length;
    sheet.at(last + 1, 1).value = 'Item 1, Name';
    sheet.at(last + 1, 2).value = 'Putty';
    sheet.at(last + 2, 1).value = KEPT_HEADING;
    sheet.at(last + 3, 1).value = 'Item 9, Name';
    sheet.at(last + 3, 2).value = 'Old glue';
    expect((await opened()).extras.map(({ name }) => name)).toEqual(['Glue', 'Skip', 'Screws']);
  });
});

describe('the job list', () => {
  test('keeps own tasks, and notes beside ours', async () => {
    await saveRoom(store, closet);
    await fillOrder(store, job);
    const sheet = sheetNamed('Job list');
    const row = sheet.values().findIndex((cells) => String(cells[1]).startsWith('Clear and sweep')) + 1;
    sheet.at(row, 4).value = 'ask the neighbour';
    const last = sheet.values().length;
    sheet.at(last + 2, 2).value = 'Return the ladder';
    sheet.at(last + 2, 3).value = true;
    await fillOrder(store, cheaper);
    const again = sheet.values();
    expect(again.find((cells) => String(cells[1]).startsWith('Clear and sweep'))?.[3]).toBe('ask the neighbour');
    expect(again.find((cells) => cells[1] === 'Return the ladder')?.[2]).toBe(true);
  });
});

describe('the order', () => {
  const priceOf = (item: string) => sheetNamed('Order').at(rowOf('Order', item), 4);
  beforeEach(async () => {
    await saveRoom(store, closet);
    await fillOrder(store, job);
  });

  // By hand: 60 + 10 + 2 x 11 + 3 x 12 = 128, tax 12.80, labour 100: cost 240.80; a fifth of it is 48.16.
  test('keeps a price typed into a coloured cell, and the page and the homeowner reckon with it', async () => {
    const before = await fillOrder(store, job);
    expect(before).toMatchObject({ status: 'filled', toPay: '288.96' });
    priceOf('Glue').value = 20;
    // 10 more, 1 more tax: 11, and a fifth of that 2.20.
    expect(await fillOrder(store, job)).toMatchObject({ status: 'filled', toPay: '302.16' });
    expect(priceOf('Glue').value).toBe(20);
    expect(textsOf('Order').join()).toContain('Typed in the order and kept: Glue, price 20, not 10.');
    expect(await fillHomeowner(store, job)).toMatchObject({ toPay: '302.16' });
    // Also after it was filled twice: it is still the person's.
    expect(await fillOrder(store, job)).toMatchObject({ toPay: '302.16' });
    priceOf('Glue').value = '';
    expect(await fillOrder(store, job)).toMatchObject({ toPay: '288.96' });
  });

  test('finds a price, and a note at the right, in an order whose columns stood in another order', async () => {
    // As an earlier version filled it: what is needed first, price and total last.
    const earlier = [0, 11, 5, 6, 7, 8, 9, 10, 2, 1, 3, 4];
    const read = await store.read('order', 'Order');
    const house = readHouse(job);
    const plan = planHouse([closet], true);
    if (house.status !== 'read' || plan.status !== 'planned') throw new Error('The job cannot be ordered.');
    const block = withInputs(orderBlock(orderOf(house.house, plan.planned, 'en_US')), []);
    const cells = block.cells.map((row) => earlier.map((column) => row[column]));
    await store.write({ ...block, cells }, read.version);
    const row = rowOf('Order', 'Glue');
    sheetNamed('Order').at(row, 11).value = 20;
    sheetNamed('Order').at(row, 14).value = 'ask Jo';
    expect(await fillOrder(store, job)).toMatchObject({ toPay: '302.16', kept: [] });
    expect(priceOf('Glue').value).toBe(20);
    expect(sheetNamed('Order').values()[rowOf('Order', 'Glue') - 1].slice(12)).toContain('ask Jo');
  });

  test('does not reckon with what was typed under Needed, and keeps it to the right', async () => {
    const needed = rowOf('Order', 'Glue');
    sheetNamed('Order').at(needed, 6).value = 41;
    expect(await fillOrder(store, job)).toMatchObject({ toPay: '288.96', kept: [] });
    const row = sheetNamed('Order').values()[rowOf('Order', 'Glue') - 1];
    expect([row[5], row.slice(12).filter((cell) => cell !== '')]).toEqual([1, [41]]);
  });

  test('takes a price that nobody typed from the job, where it changed', async () => {
    const dearer = { ...job, extras: job.extras.map((item) => ({ ...item, price: 30 })) };
    await fillOrder(store, dearer);
    expect(priceOf('Glue').value).toBe(30);
    expect(textsOf('Order').join()).not.toContain('Typed in the order');
  });

  test('keeps a rate of the margin, and a price where none was entered is no longer missing', async () => {
    const blank = { ...job, extras: job.extras.map((item) => ({ ...item, price: '' })) };
    await fillOrder(store, blank);
    for (const item of ['Glue', 'Skip', 'Screws']) priceOf(item).value = 10;
    priceOf('Margin').value = 0.5;
    // 60 + 10 + 20 + 30 = 120, tax 12, labour 100: cost 232; half of it is 116.
    expect(await fillOrder(store, blank)).toMatchObject({ toPay: '348.00', missing: [] });
  });

  test('keeps what was typed for a line that is gone', async () => {
    priceOf('Screws').value = 77;
    await fillOrder(store, cheaper);
    const rows = sheetNamed('Order').values();
    const foot = rows.slice(rows.findIndex((row) => row[0] === KEPT_HEADING) + 1);
    expect(foot.map((row) => [row[0], row[3]])).toEqual([['Screws', 77]]);
  });
});

describe('the tab of rooms', () => {
  test('keeps own lines, also without a value, and what stands above the names', async () => {
    await saveRoom(store, closet);
    const sheet = sheetNamed('Rooms');
    sheet.at(1, 3).value = 'second floor';
    const last = sheet.values().length;
    sheet.at(last + 1, 1).value = 'Colour';
    sheet.at(last + 1, 2).value = 'light';
    sheet.at(last + 2, 1).value = 'To ask';
    await saveRoom(store, shorter);
    const texts = textsOf('Rooms');
    for (const words of ['second floor', 'Colour', 'light', 'To ask']) {
      expect(texts.filter((text) => text === words)).toHaveLength(1);
    }
    expect((await savedRooms(store)).rooms[0].entry).toEqual(shorter);
  });
});
