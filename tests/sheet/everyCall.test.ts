/**
 * Every filling, with something happening at every one of its calls of the service: a failure, a second person who types, or a tab
 * that is deleted, hidden, renamed or made under our name. Each tab is old whole or new whole, it is told which are done, what a person
 * typed is kept, and filling once more leaves all as it should be.
 */
import { describe, expect, test } from 'vitest';
import type { HouseEntry } from '../../src/order/houseEntry';
import { rememberedPlan } from '../../src/order/rememberedPlan';
import { findingOf } from '../../src/sidebar/check/belief';
import { checkBlock } from '../../src/sidebar/check/checkTab';
import { fillTabs } from '../../src/sidebar/filling/fillTabs';
import { planOf } from '../../src/sidebar/planning/plan';
import { textCell } from '../../src/tabs/block';
import { fillHomeowner, fillOrder, saveJob } from '../../src/tabs/jobTabs';
import type { MayReplan } from '../../src/tabs/laidWork';
import { bringBackTabs, finishTabs, planOnTabs } from '../../src/tabs/planOnTabs';
import { removeRoom, renameRoom, savedRooms, saveRoom } from '../../src/tabs/roomTabs';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { Takeoff } from '../../src/takeoff/result';
import { demoJob, demoRooms } from '../support/demoHouse';
import {
  cellCount,
  copyOfBook,
  type FakeBook,
  type FakeSheet,
  fakeBook,
  installFakes,
} from '../support/fakeSpreadsheet';
import { beingLaid } from '../support/laidList';
import { pageStore } from '../support/pageStore';
import { plainRoom } from '../support/roomEntries';

/**
 * Every so many calls, and from which on: with `EVERY=1` all of them, some 1,200 for each of the tests. A failure of each
 * kind of call is tried in any case, by `faults.test.ts`.
 */
const EVERY = Number(process.env.EVERY ?? 120);
/** A test may take so long, milliseconds: a hundred times as many calls take a hundred times as long. */
const PATIENCE = 120_000 * Math.ceil(120 / EVERY);
function numbers(callCount: number, first: number): readonly number[] {
  // Three places at least of a filling that makes few calls.
  const step = Math.min(EVERY, Math.ceil(callCount / 3));
  return Array.from({ length: callCount }, (_, i) => i + 1).filter((number) => (number - first) % step === 0);
}

/** What a filling told: tabs that are done, and what kept the rest from being done. */
interface Told {
  readonly done: readonly string[];
  readonly failures: readonly string[];
}

interface Case {
  /** Makes what is there before. */
  readonly before: () => Promise<unknown>;
  readonly fill: () => Promise<Told>;
  /** Tabs whose cells are compared. */
  readonly tabs: readonly string[];
  /** Those of them in which a second person types; left out, all of them. */
  readonly typedIn?: readonly string[];
  /** Works from what stands in the tabs: from another first tab it makes another. */
  readonly goesByTabs?: true;
}

const small = (product: string): RoomEntry => ({
  ...plainRoom,
  name: 'Den',
  shape: { kind: 'rectangle', length: "5'", width: '2\' 6"' },
  product: { ...plainRoom.product, name: product },
});

/** Planned once, as on the page. */
const plans = new Map<string, Takeoff>();
function planned(entry: RoomEntry): Takeoff {
  const made = plans.get(entry.product.name) ?? bareTakeoff(entry);
  plans.set(entry.product.name, made);
  return made;
}

function bareTakeoff(entry: RoomEntry): Takeoff {
  const made = planOf(entry, []);
  if (made.status === 'problems') throw new Error(made.problems[0].text);
  return made.takeoff;
}

async function fillRoom(entry: RoomEntry, mayReplan?: MayReplan): Promise<Told> {
  const talk = { now: () => 0, mayReplan };
  const { filled, failures } = await fillTabs({ entry, takeoff: planned(entry) }, pageStore, talk);
  return { done: filled.map(({ tab }) => tab), failures };
}

const plan = rememberedPlan();
const job: HouseEntry = {
  ...demoJob,
  ...{ doorways: [], appliances: [], stairs: [] },
  floors: demoJob.floors.slice(0, 1),
  site: { ...demoJob.site, tearOut: [] },
};
/** A filling that throws tells what failed, and what is done is not told. */
async function thrown(work: Promise<unknown>): Promise<Told> {
  return work.then(
    (answer) => ({ done: [], failures: Array.isArray(answer) ? answer : [] }),
    (error) => ({ done: [], failures: [(error as Error).message] }),
  );
}

const orderIn = (currency: string) => fillOrder(pageStore, { ...job, currency }, async () => true, plan);
const pageOf = (title: string) => fillHomeowner(pageStore, { ...job, homeowner: { ...job.homeowner, title } }, plan);

/** Two rows lie, so that the rest is planned on. */
const twoRowsLie = () => filledAndTicked(/^[12]-\d+$/);
const allLies = () => filledAndTicked(/^\d+-\d+/);

async function filledAndTicked(labels: RegExp): Promise<void> {
  await fillRoom(small('Oak'));
  const list = current.sheets.find(({ name }) => name === 'Cut list - Den') as FakeSheet;
  list.values().forEach((row, i) => {
    if (labels.test(String(row[1])) && row[0] === false) list.at(i + 1, 1).value = true;
  });
}

/** Nobody asks for a name once the room has it. */
async function renamed(): Promise<unknown> {
  const { rooms } = await savedRooms(pageStore);
  const isDone = rooms.length > 0 && !rooms.some(({ name }) => name === 'Den');
  return isDone ? null : renameRoom(pageStore, 'Den', 'Hall');
}

/** The line of a floor is to come into a tab that is there. */
async function allLieBesideTab(): Promise<void> {
  await allLies();
  const looks = { columnWidths: [80], frozenRows: 0, showGridlines: true, landscape: false };
  const [title, mark] = ['Floors laid', 'floors laid'];
  await pageStore.write({ title, mark, cells: [[textCell(title)]], ...looks }, '');
}

const FOUND = findingOf({ what: 'a belief', expected: ['yes'], source: 'live' }, 'no');
const BEFORE = 'Before - Den';

const LIST_TABS = ['Cut list - Den', 'Floor plan - Den'];
const CASES: Readonly<Record<string, Case>> = {
  'a room': {
    before: () => fillRoom(small('Oak')),
    fill: () => fillRoom(small('Ash')),
    tabs: ['Rooms', ...LIST_TABS],
  },
  'an order': {
    before: () => saveRoom(pageStore, { ...demoRooms[0] }).then(() => orderIn('$')),
    fill: () => thrown(orderIn('€')),
    tabs: ['Order', 'Job list', 'Purchase list'],
  },
  'the job': {
    before: () => saveJob(pageStore, job),
    fill: () => thrown(saveJob(pageStore, { ...job, currency: '€' })),
    tabs: ['Job'],
  },
  "a homeowner's page": {
    before: () => saveRoom(pageStore, { ...demoRooms[0] }).then(() => pageOf('Old')),
    fill: () => thrown(pageOf('New')),
    tabs: ['Homeowner'],
  },
  'a room that is begun': {
    before: twoRowsLie,
    fill: () => fillRoom(small('Ash'), async () => true),
    tabs: ['Rooms', ...LIST_TABS, BEFORE],
    typedIn: ['Rooms', ...LIST_TABS],
  },
  'another name': {
    before: twoRowsLie,
    fill: () => thrown(renamed()),
    tabs: ['Rooms', 'Cut list - Hall', 'Floor plan - Hall', ...LIST_TABS],
    typedIn: ['Rooms'],
    goesByTabs: true,
  },
  'a room taken out': {
    before: twoRowsLie,
    fill: () => thrown(removeRoom(pageStore, 'Den')),
    tabs: ['Rooms', ...LIST_TABS],
    typedIn: ['Rooms'],
    goesByTabs: true,
  },
  'a floor that is laid': {
    before: allLieBesideTab,
    fill: () => thrown(finishTabs(pageStore, beingLaid(small('Oak')))),
    tabs: ['Floors laid'],
    typedIn: [],
  },
  'what the check found': {
    before: () => pageStore.write(checkBlock([]), ''),
    fill: () => thrown(pageStore.write(checkBlock([FOUND]), '')),
    tabs: ['Spreadsheet check'],
    typedIn: [],
  },
  'planning on': {
    before: twoRowsLie,
    fill: () => thrown(planOnTabs(pageStore, beingLaid(small('Oak')))),
    tabs: LIST_TABS,
    goesByTabs: true,
  },
  'bringing back': {
    before: () => twoRowsLie().then(() => planOnTabs(pageStore, beingLaid(small('Oak')))),
    fill: () => thrown(bringBackTabs(pageStore, beingLaid(small('Oak')))),
    tabs: LIST_TABS,
    goesByTabs: true,
  },
};

let current: FakeBook;
function opened(book: FakeBook): FakeBook {
  current = book;
  installFakes(book);
  return book;
}

/** What a tab shows, blank rows left out; null when there is none. */
function shown(book: FakeBook, name: string): string {
  const sheet = book.sheets.find((candidate) => candidate.name === name);
  return JSON.stringify(sheet?.values().filter((row) => row.some((cell) => cell !== '')) ?? null);
}

interface Prepared {
  readonly made: FakeBook;
  readonly callCount: number;
  /** Cells that the spreadsheet has at the most while it is filled. */
  readonly most: number;
  readonly old: readonly string[];
  readonly fresh: readonly string[];
}

/** The spreadsheet before, how many calls the filling makes, and its tabs before and after. */
async function prepared({ before, fill, tabs }: Case): Promise<Prepared> {
  const made = opened(fakeBook());
  await before();
  const book = opened(copyOfBook(made));
  let [callCount, most] = [0, 0];
  book.onCall = () => {
    callCount += 1;
    most = Math.max(most, cellCount(book));
  };
  expect((await fill()).failures).toEqual([]);
  const show = (from: FakeBook) => tabs.map((name) => shown(from, name));
  return { made, callCount, most, old: show(made), fresh: show(book) };
}

/** Each tab is as it was or as it should be, and as it should be where it was told to be done. */
function oldOrNew(where: unknown, { tabs }: Case, { old, fresh }: Prepared, book: FakeBook, { done }: Told): void {
  tabs.forEach((name, i) => {
    const now = shown(book, name);
    expect([where, name, now === fresh[i] || now === old[i]]).toEqual([where, name, true]);
    if (done.includes(name)) expect([where, name, now]).toEqual([where, name, fresh[i]]);
  });
}

/** Fills with something done at the call of this number. */
async function filledWith(made: FakeBook, fill: Case['fill'], number: number, doing: (book: FakeBook) => void) {
  const book = opened(copyOfBook(made));
  let count = 0;
  const after: string[] = [];
  book.onCall = (_, method) => {
    count += 1;
    if (count > number) after.push(method);
    if (count !== number) return;
    after.push(method);
    doing(book);
  };
  const told = await fill();
  book.onCall = null;
  return { book, told, after };
}

describe.each(Object.entries(CASES))('%s', (_, one) => {
  test(
    'a failure at any call: old whole or new whole, told, and all right when filled again',
    async () => {
      const whole = await prepared(one);
      const { made, callCount, fresh } = whole;
      const tried = numbers(callCount, 3);
      let failures = 0;
      for (const number of tried) {
        const { book, told } = await filledWith(made, one.fill, number, () => {
          throw new Error('You are trying to edit a protected cell or object.');
        });
        failures += told.failures.length > 0 ? 1 : 0;
        oldOrNew(number, one, whole, book, told);
        // What cannot be let go quietly may be what the copy is refused for.
        if (told.failures.length > 0) expect(told.failures.join()).toMatch(/a protected cell|frozen part/);
        expect([number, (await one.fill()).failures]).toEqual([number, []]);
        expect([number, one.tabs.map((name) => shown(book, name))]).toEqual([number, fresh]);
        expect([number, book.sheets.filter(({ name }) => name.startsWith('Filling'))]).toEqual([number, []]);
      }
      // Looks that fail quietly are a small part of all.
      expect(failures).toBeGreaterThanOrEqual(tried.length / 2);
    },
    PATIENCE,
  );

  test(
    'a second person types at any call: it is in the tab, or was typed while it was being copied over',
    async () => {
      const { made, callCount } = await prepared(one);
      const { typedIn = one.tabs } = one;
      for (const number of numbers(callCount, 7)) {
        const { book, told, after } = await filledWith(made, one.fill, number, (now) => {
          for (const sheet of now.sheets.filter(({ name }) => typedIn.includes(name))) sheet.at(2, 22).value = 'theirs';
        });
        expect([number, told.failures]).toEqual([number, []]);
        const lost = typedIn.filter((name) => !shown(book, name).includes('theirs'));
        // Once the tab has been looked at for the last time, the copy follows at once.
        const untilCopy = after.slice(0, after.indexOf('Range.copyTo') + 1);
        if (lost.length > 0)
          expect([number, lost, untilCopy.includes('Range.getValues')]).toEqual([number, lost, false]);
      }
    },
    PATIENCE,
  );

  test.each<[string, (sheet: FakeSheet, book: FakeBook) => void]>([
    ['deleted', (sheet, book) => deleted(sheet, book)],
    ['hidden', (sheet, book) => hidden(sheet, book)],
    ['renamed', (sheet) => Object.assign(sheet, { name: `${sheet.name}, mine` })],
    ['made under our next name', (sheet, { sheets }) => sheets.push(sheetLike(sheet))],
  ])(
    'a tab is %s at any call: nothing else is harmed, and filled again all is there',
    async (what, happening) => {
      const { made, callCount, fresh } = await prepared(one);
      const [first] = one.tabs;
      for (const number of numbers(callCount, 13)) {
        const { book, told } = await filledWith(made, one.fill, number, (now) => {
          const sheet = now.sheets.find(({ name }) => name === first);
          if (sheet) happening(sheet, now);
        });
        if (what === 'hidden') expect([number, told.failures]).toEqual([number, []]);
        await one.fill();
        const named = what === 'renamed' ? `${first}, mine` : first;
        if (!one.goesByTabs) {
          expect([number, shown(book, named)]).toEqual([number, fresh[0]]);
        }
        expect([number, book.sheets.filter(({ name }) => name.startsWith('Filling'))]).toEqual([number, []]);
        if (what === 'made under our next name') expect(shown(book, `${first} (2)`)).toBe('[["a person wrote this"]]');
      }
    },
    PATIENCE,
  );

  test('tabs are protected, or the spreadsheet is full: old whole or new whole, told, and all right later', async () => {
    const whole = await prepared(one);
    const { made, most, old, fresh } = whole;
    const guarded = (book: FakeBook, isProtected: boolean) => {
      for (const sheet of book.sheets) sheet.isProtected = isProtected && one.tabs.includes(sheet.name);
    };
    const full = (mostCells: number) => (book: FakeBook) => Object.assign(book, { mostCells });
    const start = cellCount(made);
    for (const [what, reason, happening] of [
      ['protected', 'a protected cell', (book: FakeBook) => guarded(book, true)],
      ['no tab fits', 'above the limit', full(start)],
      ['its rows do not', 'above the limit', full(Math.ceil((start + most) / 2))],
      ['the last cells do not', 'above the limit', full(most - 1)],
    ] as const) {
      const book = opened(copyOfBook(made));
      happening(book);
      const told = await one.fill();
      expect([what, told.failures.join()]).toEqual([what, expect.stringContaining(reason)]);
      oldOrNew(what, one, whole, book, told);
      if (what === 'protected') expect(one.tabs.map((name) => shown(book, name))).toEqual(old);
      guarded(book, false);
      full(10_000_000)(book);
      expect([what, (await one.fill()).failures]).toEqual([what, []]);
      expect([what, one.tabs.map((name) => shown(book, name))]).toEqual([what, fresh]);
    }
  });
});

test(
  'planning on fails at any call and is done again: the list it began with can still be brought back',
  async () => {
    const made = opened(fakeBook());
    await twoRowsLie();
    // A plank that is spoilt: the list planned on is another.
    const list = made.sheets.find(({ name }) => name === LIST_TABS[0]) as FakeSheet;
    const [head, third] = ['Laid', '3-1'].map((text) => list.values().findIndex((row) => row.includes(text)));
    list.at(third + 1, list.values()[head].indexOf('Mark') + 1).value = 'spoilt';
    const planOn = () => thrown(planOnTabs(pageStore, beingLaid(small('Oak'))));
    const bringBack = () => thrown(bringBackTabs(pageStore, beingLaid(small('Oak'))));
    const sizes = (book: FakeBook) => {
      const sheet = book.sheets.find(({ name }) => name === LIST_TABS[0]) as FakeSheet;
      return JSON.stringify(sheet.values().filter((row) => /^\d+-\d+$/.test(String(row[1]))));
    };
    const before = sizes(made);
    const counting = opened(copyOfBook(made));
    let callCount = 0;
    counting.onCall = () => {
      callCount += 1;
    };
    await planOn();
    const planned = sizes(counting);
    expect(planned).not.toBe(before);
    for (const number of numbers(callCount, 3)) {
      const { book } = await filledWith(made, planOn, number, () => {
        throw new Error('You are trying to edit a protected cell or object.');
      });
      expect([number, (await planOn()).failures, sizes(book)]).toEqual([number, [], planned]);
      expect([number, (await bringBack()).failures, sizes(book)]).toEqual([number, [], before]);
      expect([number, (await bringBack()).failures, sizes(book)]).toEqual([number, [], planned]);
    }
  },
  PATIENCE,
);

/** By a person, with all other tabs but those that are being filled: one tab stays in view. */
function hidden(sheet: FakeSheet, book: FakeBook): void {
  const others = book.sheets.filter(({ name }) => !name.startsWith('Filling'));
  for (const other of others.length < book.sheets.length ? others : [sheet]) other.isHidden = true;
  if (book.active.isHidden) book.active = book.sheets.find(({ isHidden }) => !isHidden) as FakeSheet;
}

function deleted(sheet: FakeSheet, book: FakeBook): void {
  book.sheets.splice(book.sheets.indexOf(sheet), 1);
  for (const mark of book.metadata.filter((entry) => entry.sheet === sheet)) {
    book.metadata.splice(book.metadata.indexOf(mark), 1);
  }
  if (book.active === sheet) book.active = book.sheets[0];
}

/** A person's own tab, under the name that ours would have next. */
function sheetLike(sheet: FakeSheet): FakeSheet {
  const own = fakeBook([`${sheet.name} (2)`]).sheets[0];
  own.at(1, 1).value = 'a person wrote this';
  return Object.assign(own, { book: sheet.book });
}
