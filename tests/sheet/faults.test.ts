/**
 * A service that fails at every call of a filling, one after another: what stood there stays whole or the new tab is whole,
 * what a person typed is kept, and the next filling leaves nothing of ours behind.
 */
import { describe, expect, test } from 'vitest';
import type { HouseEntry } from '../../src/order/houseEntry';
import { rememberedPlan } from '../../src/order/rememberedPlan';
import { fillHomeowner, fillOrder } from '../../src/tabs/jobTabs';
import { fillCutList, fillFloorPlan, saveRoom } from '../../src/tabs/roomTabs';
import { demoJob, demoRooms } from '../support/demoHouse';
import { copyOfBook, type FakeBook, fakeBook, installFakes } from '../support/fakeSpreadsheet';
import { pageStore } from '../support/pageStore';
import { smallEntry, smallTakeoff } from '../support/smallTakeoff';

/** The same rooms are planned once, as on the page. */
const plan = rememberedPlan();
const NOTE = 'kept: a note of mine';
const den = (name: string) => ({
  ...smallTakeoff,
  entry: { ...smallEntry, name: 'Den', product: { ...smallEntry.product, name } },
});
const job: HouseEntry = {
  ...demoJob,
  doorways: [],
  appliances: [],
  stairs: [],
  floors: demoJob.floors.slice(0, 1),
  site: { ...demoJob.site, tearOut: [] },
};

/** A filling, and how it differs the second time. */
const FILLINGS: readonly (readonly [string, (isSecond: boolean) => Promise<unknown>, readonly string[]])[] = [
  ['the cut list', (isSecond) => fillCutList(pageStore, den(isSecond ? 'Ash' : 'Oak')), ['Cut list - Den']],
  ['the floor plan', (isSecond) => fillFloorPlan(pageStore, den(isSecond ? 'Ash' : 'Oak')), ['Floor plan - Den']],
  ['the rooms', (isSecond) => saveRoom(pageStore, { ...smallEntry, name: isSecond ? 'Study' : 'Den' }), ['Rooms']],
  [
    'the order',
    (isSecond) => fillOrder(pageStore, { ...job, currency: isSecond ? '€' : '$' }, async () => true, plan),
    ['Order', 'Job list'],
  ],
  [
    "the homeowner's page",
    (isSecond) =>
      fillHomeowner(pageStore, { ...job, homeowner: { ...job.homeowner, title: isSecond ? 'New' : 'Old' } }, plan),
    ['Homeowner'],
  ],
];

const shown = (book: FakeBook, name: string) => {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  return JSON.stringify(sheet?.values().filter((row) => row.some((cell) => cell !== '')) ?? null);
};

async function filledOnce(fill: (isSecond: boolean) => Promise<unknown>, tabs: readonly string[]): Promise<FakeBook> {
  const book = fakeBook();
  installFakes(book);
  await saveRoom(pageStore, { ...demoRooms[0] });
  await fill(false);
  // Beside the first of our lines.
  for (const sheet of book.sheets.filter(({ name }) => tabs.includes(name))) sheet.at(1, 20).value = NOTE;
  return book;
}

function installedCopy(book: FakeBook): FakeBook {
  const copy = copyOfBook(book);
  installFakes(copy);
  return copy;
}

describe.each(FILLINGS)('%s', (_, fill, tabs) => {
  test('whichever call of the service fails', async () => {
    const before = await filledOnce(fill, tabs);
    const whole = installedCopy(before);
    const old = tabs.map((name) => shown(whole, name));
    await fill(true);
    const fresh = tabs.map((name) => shown(whole, name));
    const calls = [...whole.calls].filter(([method]) => method.includes('.'));
    let failures = 0;
    for (const [method, count] of calls) {
      // The first and the last: fillings of several tabs repeat themselves, and `everyCall.test.ts` tries those between.
      const places = new Set([1, count]);
      for (const countdown of places) {
        const book = installedCopy(before);
        book.failing = { method, countdown };
        const failed = await fill(true).then(
          () => false,
          () => true,
        );
        failures += failed ? 1 : 0;
        book.failing = null;
        const where = `${method}, call ${countdown} of ${count}`;
        tabs.forEach((name, i) => {
          expect([where, name, [old[i], fresh[i]].includes(shown(book, name))]).toEqual([where, name, true]);
        });
        await fill(true);
        expect([where, tabs.map((name) => shown(book, name))]).toEqual([where, fresh]);
        expect([where, book.sheets.filter(({ name }) => name.startsWith('Filling'))]).toEqual([where, []]);
        expect([where, tabs.every((name) => shown(book, name).includes(NOTE))]).toEqual([where, true]);
      }
    }
    expect(failures).toBeGreaterThan(10);
  }, 120_000);
});
