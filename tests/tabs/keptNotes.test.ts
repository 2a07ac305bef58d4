/** A note that a person put at a cell of a tab of ours is still there after the tab was filled again, beside its words. */
import fc from 'fast-check';
import { beforeEach, expect, test } from 'vitest';
import { emptyHouse } from '../../src/order/houseEntry';
import { fillOrder } from '../../src/tabs/jobTabs';
import { KEPT_HEADING } from '../../src/tabs/oldTab';
import { fillCutList, fillFloorPlan, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import { takeoff } from '../../src/takeoff/takeoff';
import { type FakeBook, type FakeSheet, fakeBook, installFakes } from '../support/fakeSpreadsheet';
import { storeOf } from '../support/fakeStore';
import { plainRoom } from '../support/roomEntries';

let book: FakeBook;
let store: TabStore;

beforeEach(() => {
  book = fakeBook();
  installFakes(book);
  store = storeOf(book);
});

const closet: RoomEntry = {
  ...plainRoom,
  name: 'Closet',
  shape: { kind: 'rectangle', length: `5' 3"`, width: `1' 9"` },
};
const shorter: RoomEntry = { ...closet, shape: { kind: 'rectangle', length: `4' 6"`, width: `1' 9"` } };
const CUT_LIST = 'Cut list - Closet';
const TABS = ['Rooms', 'Job', 'Order', CUT_LIST, 'Floor plan - Closet'];

async function fillAll(room: RoomEntry): Promise<void> {
  const result = takeoff(room);
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  await saveRoom(store, room);
  await fillCutList(store, result.takeoff);
  await fillFloorPlan(store, result.takeoff);
  await fillOrder(store, emptyHouse('us'), async () => true);
}

function sheetNamed(name: string): FakeSheet {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  if (!sheet) throw new Error(`There is no tab ${name}`);
  return sheet;
}

/** Every note of a tab: the text of its cell, and the note. */
const notesOf = (name: string) =>
  [...sheetNamed(name).cells.values()].flatMap(({ value, note }) => (note ? [`${value}: ${note}`] : []));
const textsOf = (name: string) => sheetNamed(name).values().flat().map(String);

/** The cell of a piece in the list for laying, under a heading. */
function pieceCell(label: string, heading: string) {
  const sheet = sheetNamed(CUT_LIST);
  const values = sheet.values();
  const head = values.findIndex((row) => row.includes('Laid'));
  const row = values.findIndex((line, r) => r > head && line[1] === label);
  return sheet.at(row + 1, (values[head] ?? []).indexOf(heading) + 1);
}

test('a note in a cut list goes with its piece like its tick, whatever comes before it and wherever its column is', async () => {
  await fillAll(closet);
  pieceCell('1-1', 'Laid').note = 'the pipe is here';
  pieceCell('1-2', 'Your notes').note = 'check the lock';
  sheetNamed(CUT_LIST).insertRows(3, 2);
  await fillAll(closet);
  expect(pieceCell('1-1', 'Laid').note).toBe('the pipe is here');
  expect(pieceCell('1-2', 'Your notes').note).toBe('check the lock');
  expect(notesOf(CUT_LIST)).toHaveLength(2);
  expect(textsOf(CUT_LIST)).not.toContain(KEPT_HEADING);
});

test('a note of a piece that is none any more is a line at the foot, and stays one', async () => {
  await fillAll(closet);
  const before = pieceCell('1-2', 'Length').value;
  pieceCell('1-2', 'Length').note = 'cut on the porch';
  for (const room of [shorter, closet, closet]) {
    await fillAll(room);
    // By hand: a row of the shorter closet is 53 1/4", of the other 62 1/4", so its second piece is another.
    if (room === shorter) expect(pieceCell('1-2', 'Length').value).not.toBe(before);
    expect(textsOf(CUT_LIST).filter((text) => text.includes('porch'))).toEqual(['Note at 1-2: cut on the porch']);
    expect(notesOf(CUT_LIST)).toEqual([]);
  }
});

test('beside a line of the order whose numbers change, and at its place where nothing stands', async () => {
  await fillAll(closet);
  const order = sheetNamed('Order');
  const lineOf = (first: string) => order.values().findIndex(([text]) => text === first) + 1;
  const before = order.values()[lineOf('Harbour oak') - 1];
  order.at(lineOf('Harbour oak'), 1).note = 'ask for a better price';
  order.at(300, 3).note = 'far below';
  await fillAll(shorter);
  expect(order.values()[lineOf('Harbour oak') - 1]).not.toEqual(before);
  expect(order.at(lineOf('Harbour oak'), 1).note).toBe('ask for a better price');
  expect(order.at(300, 3).note).toBe('far below');
});

test('any notes anywhere: each is still a note or a line, whatever is filled', async () => {
  const edit = fc.record({
    tab: fc.constantFrom(...TABS),
    row: fc.integer({ min: 1, max: 60 }),
    column: fc.integer({ min: 1, max: 18 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 12, maxLength: 20 }), fc.boolean(), async (edits, isOther) => {
      book = fakeBook();
      installFakes(book);
      store = storeOf(book);
      await fillAll(closet);
      for (const [i, { tab, row, column }] of edits.entries()) {
        const cell = sheetNamed(tab).at(row, column);
        cell.note = cell.note ? `${cell.note} mine ${i}.` : `mine ${i}.`;
      }
      for (const room of [isOther ? shorter : closet, closet]) {
        await fillAll(room);
        const lost = edits.filter(
          ({ tab }, i) => ![...notesOf(tab), ...textsOf(tab)].some((text) => text.includes(`mine ${i}.`)),
        );
        expect(lost).toEqual([]);
      }
    }),
    { seed: 5, numRuns: 3 },
  );
}, 120_000);
