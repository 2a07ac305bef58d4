/** Floors that are being laid, and lists that no longer hold. */
import { beforeEach, describe, expect, test } from 'vitest';
import { emptyHouse, type HouseEntry } from '../../src/order/houseEntry';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { planOf } from '../../src/sidebar/planning/plan';
import { stakeWords, type TickedList } from '../../src/tabs/laidWork';
import { changedRoom, removeRoom, renameRoom, savedRooms, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { doorwayIn } from '../support/bareTakeoff';
import { type FakeBook, type FakeSheet, fakeBook, installFakes } from '../support/fakeSpreadsheet';
import { storeOf } from '../support/fakeStore';
import { fillHomeowner, fillOrder } from '../support/plannedOnce';
import { plainRoom } from '../support/roomEntries';

let book: FakeBook;
let store: TabStore;

/**
 * By hand, for the rooms below: 5' 8" less two gaps of 3/8" is 67 1/4", a whole plank and 19 1/4"; a plank gives two such
 * ends. 18 3/4" less the gaps is three rows of 6": 3 whole planks and 2 for the ends. Two such rooms together take 6 and
 * 3, a plank fewer than apart.
 */
const room = (name: string, length: string, width: string): RoomEntry => ({
  ...plainRoom,
  name,
  shape: { kind: 'rectangle', length, width },
  product: { ...plainRoom.product, pricePerBox: 60 },
});
const parlor = room('Parlor', `5' 8"`, `1' 6 3/4"`);
const den = room('Den', `5' 8"`, `1' 6 3/4"`);
const job: HouseEntry = emptyHouse('us');

function sheetNamed(name: string): FakeSheet {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new Error(`There is no tab ${name}: ${book.sheets.map((candidate) => candidate.name)}`);
  return sheet;
}
const first = (name: string) => String(sheetNamed(name).at(1, 1).value);
/** Behind the columns that stay in view. */
const title = (name: string) => String(sheetNamed(name).at(1, 3).value);
const shown = (name: string) => JSON.stringify(sheetNamed(name).values());
const HOLDS_NO_MORE = /^This (list|floor plan|order) no longer holds: /;

/** Fills a room as the page does; whoever is asked says so, and what was asked is given back. */
async function fill(entry: RoomEntry, others: readonly RoomEntry[] = [], says = false) {
  const plan = planOf(entry, others);
  if (plan.status === 'problems') throw new Error(plan.problems[0].text);
  const asked: TickedList[] = [];
  const mayReplan = async (lists: readonly TickedList[]) => {
    asked.push(...lists);
    return says;
  };
  const talk = { now: () => 0, told: () => {}, mayReplan };
  return { ...(await fillTabs({ entry, takeoff: plan.takeoff }, store, talk)), asked };
}

function tick(name: string, label: string): void {
  const sheet = sheetNamed(name);
  const row = sheet.values().findIndex((cells) => cells[1] === label) + 1;
  sheet.at(row, 1).value = true;
}

beforeEach(() => {
  book = fakeBook();
  installFakes(book);
  store = storeOf(book);
});

describe('a room with ticks', () => {
  beforeEach(async () => {
    await fill(parlor);
    tick('Cut list - Parlor', '1-1');
    tick('Cut list - Parlor', '2-1');
  });

  test('is filled again with the same plan without a question', async () => {
    const again = await fill(parlor);
    expect([again.asked, again.left]).toEqual([[], []]);
    expect(
      sheetNamed('Cut list - Parlor')
        .values()
        .filter((row) => row.includes(true)),
    ).toHaveLength(2);
  });

  test('is not planned again unless the person says so', async () => {
    const before = [shown('Cut list - Parlor'), shown('Floor plan - Parlor')];
    // 53 1/4" a row: beside a whole plank there is no room for the minimum piece, so that none is laid whole any more.
    const shorter = room('Parlor', `4' 6"`, `1' 6 3/4"`);
    const refused = await fill(shorter);
    expect(refused.asked).toMatchObject([
      { tab: 'Cut list - Parlor', tickedCount: 2, changedCount: 2, isGivenUp: false },
    ]);
    expect(stakeWords(refused.asked)).toBe(
      'Cut list - Parlor: 2 pieces are ticked. Of those, 2 would disappear or change size. A list that is planned again is kept as it was, and can be brought back.',
    );
    expect(refused.left).toEqual(['"Cut list - Parlor" is left as it is: 2 pieces are ticked in it.']);
    expect([shown('Cut list - Parlor'), shown('Floor plan - Parlor')]).toEqual(before);
    expect(refused.isSaved).toBe(true);
    await fill(shorter, [], true);
    expect(shown('Cut list - Parlor')).not.toBe(before[0]);
  });

  test('is asked for before it is laid as one floor with another, from whichever room', async () => {
    const [through, behind] = joined();
    await saveRoom(store, behind);
    const before = shown('Cut list - Parlor');
    const refused = await fill(behind, [through]);
    expect(refused.asked).toMatchObject([{ tab: 'Cut list - Parlor', isGivenUp: true }]);
    expect(shown('Cut list - Parlor')).toBe(before);
    expect(book.sheets.map((sheet) => sheet.name)).not.toContain('Cut list - Den + Parlor');
  });

  test('is left alone by the order, which plans the others apart from it and says what it counts', async () => {
    await saveRoom(store, den);
    const before = shown('Cut list - Parlor');
    const asked: TickedList[] = [];
    const answer = await fillOrder(store, job, async (lists) => {
      asked.push(...lists);
      return false;
    });
    expect(asked.map(({ tab }) => tab)).toEqual(['Cut list - Parlor']);
    expect(shown('Cut list - Parlor')).toBe(before);
    expect(answer).toMatchObject({
      left: ['"Cut list - Parlor" is left as it is: 2 pieces are ticked in it. The order counts it as it is.'],
    });
    const filled = answer.status === 'filled' ? answer.tabs : [];
    expect(filled).not.toContain('Cut list - Parlor');
    const notes = sheetNamed('Order').values().flat().map(String);
    expect(notes.filter((text) => text.startsWith('"Cut list - Parlor" is left as it is'))).toHaveLength(1);
  });

  test('is of the same plan on the homeowner’s page as in the order, which does not call that page older', async () => {
    await saveRoom(store, den);
    // A box of one plank: apart the two rooms take ten of them, from shared planks nine.
    const single = (entry: RoomEntry) => ({
      ...entry,
      product: { ...entry.product, planksPerBox: 1, boxCoverage: '' },
    });
    await saveRoom(store, single(parlor));
    await saveRoom(store, single(den));
    const order = await fillOrder(store, job);
    expect(order).toMatchObject({ left: [expect.stringContaining('The order counts it as it is.')], toPay: '600.00' });
    const page = await fillHomeowner(store, job);
    expect(page).toMatchObject({ toPay: '600.00', left: [] });
    const again = await fillOrder(store, job);
    expect(again.status === 'filled' && again.notes.join()).not.toContain('older than this order');
    expect(await fillOrder(store, job, async () => true)).toMatchObject({
      toPay: '540.00',
      notes: expect.arrayContaining([expect.stringContaining('older than this order')]),
    });
  });

  test('keeps an order from being filled no less when another room cannot be read', async () => {
    await saveRoom(store, den);
    const rooms = sheetNamed('Rooms');
    const values = rooms.values();
    const column = values.find((row) => row[0] === 'Room')?.indexOf('Den') ?? -1;
    rooms.at(values.findIndex((row) => row[0] === 'Measured as') + 1, column + 1).value = 'rectangel';
    const asked: TickedList[] = [];
    const answer = await fillOrder(store, job, async (lists) => {
      asked.push(...lists);
      return true;
    });
    expect(answer).toMatchObject({ status: 'problems', problems: [{ field: 'rooms' }] });
    expect(asked).toEqual([]);
  });

  test('shares its planks when the person says so', async () => {
    await saveRoom(store, den);
    const answer = await fillOrder(store, job, async () => true);
    expect(answer).toMatchObject({ left: [] });
    expect(shown('Cut list - Parlor')).toContain('Cut from the same planks as Den');
    const bought = ['Parlor', 'Den'].map((name) => {
      const row = sheetNamed(`Cut list - ${name}`)
        .values()
        .find((cells) => cells[2] === 'Planks here');
      return Number(row?.[4]);
    });
    expect(bought[0] + bought[1]).toBe(9);
  });
});

/** Parlor and Den with a doorway between them in the near wall of one and the far wall of the other. */
function joined(): readonly [RoomEntry, RoomEntry] {
  const way = (wall: number, leadsTo: string) => ({
    ...doorwayIn(wall, `1'`, `2' 6"`),
    floor: 'goes on' as const,
    leadsTo,
    itsDoorway: 1,
    wallThickness: '4"',
  });
  return [
    { ...parlor, doorways: [way(3, 'Den')] },
    { ...den, doorways: [{ ...way(1, 'Parlor'), along: `2' 2"` }] },
  ];
}

describe('one plan', () => {
  test('of rooms that share planks: one of them filled alone, the other’s list and the order say so', async () => {
    await saveRoom(store, parlor);
    await saveRoom(store, den);
    await fillOrder(store, job);
    for (const name of ['Cut list - Parlor', 'Cut list - Den', 'Order']) expect(first(name)).not.toMatch(HOLDS_NO_MORE);
    const { replaced } = await fill(den);
    expect([...replaced].sort()).toEqual(['Cut list - Parlor', 'Floor plan - Parlor', 'Order']);
    expect(first('Cut list - Parlor')).toBe(
      'This list no longer holds: it cuts planks for Den, which was planned again, see "Cut list - Den". Fill this room or the order again.',
    );
    expect(first('Order')).toMatch(/^This order no longer holds: Den was planned again/);
    expect(title('Cut list - Den')).toBe('Cut list: Den');
    sheetNamed('Cut list - Parlor').at(1, 5).value = 'ask Den first';
    // Filled again, all of them hold, and nothing of those lines is kept but what a person wrote beside one.
    expect(await fillOrder(store, job)).toMatchObject({ kept: ['Cut list - Parlor'] });
    const kept = sheetNamed('Cut list - Parlor').values().slice(-2);
    expect(kept.flat().filter((cell) => cell !== '')).toEqual(['Kept from before', 'ask Den first']);
    sheetNamed('Cut list - Parlor').at(sheetNamed('Cut list - Parlor').values().length, 5).value = '';
    await fillOrder(store, job);
    for (const { name, cells } of book.sheets) {
      const texts = [...cells.values()].map(({ value }) => String(value));
      expect([name, texts.filter((text) => HOLDS_NO_MORE.test(text) || text === 'Kept from before')]).toEqual([
        name,
        [],
      ]);
    }
  });

  test('of rooms laid as one floor: one tab, whichever room it is filled from, and theirs say so', async () => {
    const [through, behind] = joined();
    await fill(through);
    await fill(behind);
    await fill(through, [behind]);
    await fill(behind, [through]);
    const lists = book.sheets.map((sheet) => sheet.name).filter((name) => name.startsWith('Cut list'));
    expect(lists).toEqual(['Cut list - Parlor', 'Cut list - Den', 'Cut list - Den + Parlor']);
    for (const name of ['Parlor', 'Den']) {
      expect(first(`Cut list - ${name}`)).toBe(
        'This list no longer holds: the floor was planned again, see "Cut list - Den + Parlor".',
      );
      expect(first(`Floor plan - ${name}`)).toMatch(/^This floor plan no longer holds/);
    }
    expect(first('Cut list - Den + Parlor')).not.toMatch(HOLDS_NO_MORE);
    // Said once, however often.
    expect(
      sheetNamed('Cut list - Parlor')
        .values()
        .filter((row) => HOLDS_NO_MORE.test(String(row[0]))),
    ).toHaveLength(1);
    // Laid apart again.
    await fill(through);
    expect(title('Cut list - Parlor')).toBe('Cut list: Parlor');
    expect(first('Cut list - Den + Parlor')).toMatch(HOLDS_NO_MORE);
  });

  test('of a room whose name is typed in other capitals: one tab', async () => {
    await fill(parlor);
    await fill({ ...parlor, name: 'PARLOR' });
    expect(book.sheets.map((sheet) => sheet.name).filter((name) => name.startsWith('Cut list'))).toHaveLength(1);
  });
});

describe('a saved room', () => {
  test('that was changed in its tab since it was opened is not written over unseen', async () => {
    await saveRoom(store, parlor);
    expect(await changedRoom(store, parlor, parlor)).toBeNull();
    const sheet = sheetNamed('Rooms');
    const row = sheet.values().findIndex((cells) => cells[0] === 'Length') + 1;
    sheet.at(row, 2).value = `7'`;
    expect(await changedRoom(store, parlor, parlor)).toEqual({ lines: [`Length: 7'`], isOther: false });
    // The person has typed the same here: nothing is lost.
    expect(await changedRoom(store, room('Parlor', `7'`, `1' 6 3/4"`), parlor)).toBeNull();
    expect(await changedRoom(store, den, null)).toBeNull();
    expect(await changedRoom(store, parlor, den)).toMatchObject({ isOther: true });
  });

  test('gets another name, its tabs and the doorways to it with it, ticks and all', async () => {
    const [through, behind] = joined();
    await saveRoom(store, behind);
    await fill(through);
    tick('Cut list - Parlor', '1-1');
    expect(await renameRoom(store, 'parlor', ' Salon ')).toMatchObject({ tab: 'Rooms' });
    const { rooms } = await savedRooms(store);
    expect(rooms.map(({ name }) => name)).toEqual(['Den', 'Salon']);
    expect(rooms[0].entry?.doorways[0].leadsTo).toBe('Salon');
    expect(rooms[1].entry).toEqual({ ...through, name: 'Salon' });
    const names = book.sheets.map((sheet) => sheet.name);
    expect(names).toEqual(['Estimate', 'Rooms', 'Cut list - Salon', 'Floor plan - Salon']);
    const again = await fill({ ...through, name: 'Salon' });
    expect(again.asked).toEqual([]);
    expect(title('Cut list - Salon')).toBe('Cut list: Salon');
    expect(
      sheetNamed('Cut list - Salon')
        .values()
        .filter((row) => row.includes(true)),
    ).toHaveLength(1);
  });

  test('gets another name, and a tab that a person has named keeps its own', async () => {
    await fill(parlor);
    sheetNamed('Cut list - Parlor').name = 'Parlor, for Saturday';
    sheetNamed('Floor plan - Parlor').name = 'Floor plan: Parlor';
    expect(await renameRoom(store, 'Parlor', 'Salon')).toMatchObject({ tab: 'Rooms' });
    await fill({ ...parlor, name: 'Salon' });
    const names = book.sheets.map((sheet) => sheet.name);
    expect(names).toEqual(['Estimate', 'Rooms', 'Parlor, for Saturday', 'Floor plan - Salon']);
  });

  test.each(['Sheet.setName', 'Spreadsheet.getSheets', 'Range.setValues'])(
    'that could not be given another name, since %s failed, is when it is asked for again',
    async (method) => {
      for (const countdown of [1, 2]) {
        book = fakeBook();
        installFakes(book);
        store = storeOf(book);
        await fill(parlor);
        book.failing = { method, countdown };
        const failed = await renameRoom(store, 'Parlor', 'Salon').catch(() => null);
        book.failing = null;
        if (failed === null) expect(await renameRoom(store, 'Parlor', 'Salon')).toMatchObject({ tab: 'Rooms' });
        expect((await savedRooms(store)).rooms.map(({ name }) => name)).toEqual(['Salon']);
        const names = book.sheets.map((sheet) => sheet.name);
        expect([countdown, names]).toEqual([
          countdown,
          ['Estimate', 'Rooms', 'Cut list - Salon', 'Floor plan - Salon'],
        ]);
      }
    },
  );

  test.each([
    ['', 'Room name is blank'],
    ['DEN', '"DEN" is saved already'],
    ['x'.repeat(81), 'Room name has 81 characters'],
  ])('keeps its name when the new one is %j', async (newName, words) => {
    await saveRoom(store, parlor);
    await saveRoom(store, den);
    const answer = await renameRoom(store, 'Parlor', newName);
    expect('tab' in answer ? '' : answer.join()).toContain(words);
    expect((await savedRooms(store)).rooms.map(({ name }) => name)).toEqual(['Parlor', 'Den']);
  });

  test('is removed; its lists stay and say so', async () => {
    await saveRoom(store, den);
    await fill(parlor);
    expect(await removeRoom(store, 'Parlor')).toMatchObject({ tab: 'Rooms' });
    expect((await savedRooms(store)).rooms.map(({ name }) => name)).toEqual(['Den']);
    expect(first('Cut list - Parlor')).toMatch(/^This list no longer holds: Parlor was removed/);
    expect(first('Floor plan - Parlor')).toMatch(/^This floor plan no longer holds/);
  });
});
