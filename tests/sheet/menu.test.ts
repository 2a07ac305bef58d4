import { beforeEach, describe, expect, test } from 'vitest';
import * as menu from '../../src/sheet/menu';
import { packBlock, unpackContent } from '../../src/tabs/packed';
import { fillCutList, fillFloorPlan, savedRooms, saveRoom } from '../../src/tabs/roomTabs';
import type { TabStore } from '../../src/tabs/tabStore';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { Takeoff } from '../../src/takeoff/result';
import { type FakeBook, fakeBook, installFakes, spreadsheetOf } from '../support/fakeSpreadsheet';
import { smallEntry, smallTakeoff } from '../support/smallTakeoff';

let book: FakeBook;
let lock: ReturnType<typeof installFakes>;
const planned = (entry: RoomEntry): Takeoff => ({ ...smallTakeoff, entry });
/** The page's way: everything passes as plain JSON. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));
const store: TabStore = {
  read: async (mark, title) => {
    const { cells, ...read } = sent(menu.readTabCells(mark, title));
    return { ...read, cells: cells.map((row) => row.map(unpackContent)) };
  },
  write: async (block, version) => sent(menu.fillTab(sent(packBlock(block)), version)),
  tabs: async () => sent(menu.tabsOfOurs()),
  locale: async () => sent(menu.spreadsheetLocale()),
  putOnTop: async (mark, words) => menu.putOnTopOfTab(mark, words),
  rename: async (mark, newMark, newTitle) => menu.renameTab(mark, newMark, newTitle),
};
const cutList = (entry: RoomEntry) => fillCutList(store, planned(entry));
const floorPlan = (entry: RoomEntry) => fillFloorPlan(store, planned(entry));
const save = (entry: RoomEntry) => saveRoom(store, entry);
const names = () => book.sheets.map((sheet) => sheet.name);
const valuesOf = (name: string) => book.sheets.find((sheet) => sheet.name === name)?.values() ?? [];
const den: RoomEntry = { ...smallEntry, name: 'Den' };

beforeEach(() => {
  book = fakeBook();
  lock = installFakes(book);
});

describe('the menu', () => {
  /** Everything but the menu throws, as it does before the add-on may see the spreadsheet. */
  function onlyMenu(): string[] {
    const steps: string[] = [];
    const builder: object = {
      addItem: (caption: string, functionName: string) => steps.push(`${caption} -> ${functionName}`) && builder,
      addToUi: () => steps.push('shown'),
    };
    const forbidden = new Proxy({}, { get: (_, name) => () => expect.fail(`${String(name)} is not allowed yet`) });
    const app = new Proxy(
      { getUi: () => ({ createAddonMenu: () => builder }) },
      {
        get: (target, name) => (name === 'getUi' ? target.getUi : expect.fail(`${String(name)} is not allowed yet`)),
      },
    );
    Object.assign(globalThis, { SpreadsheetApp: app, LockService: forbidden, HtmlService: forbidden });
    return steps;
  }

  test.each([
    ['onOpen', menu.onOpen],
    ['onInstall', menu.onInstall],
  ])('%s asks for the menu and for nothing else', (_, opened) => {
    const steps = onlyMenu();
    opened();
    expect(steps).toEqual(['Plan a floor -> openLedger', 'Check this spreadsheet -> checkSpreadsheet', 'shown']);
  });

  test('its item opens the page beside the sheet', () => {
    const shown: string[] = [];
    const page = (file: string) => ({ setTitle: (title: string) => `${file}: ${title}` });
    Object.assign(globalThis, {
      SpreadsheetApp: { getUi: () => ({ showSidebar: (html: string) => shown.push(html) }) },
      HtmlService: { createHtmlOutputFromFile: page },
    });
    menu.openLedger();
    expect(shown).toEqual(['Sidebar: Plank Ledger']);
  });
});

test('a floor opens large in a dialog over the sheet, and no name of a room breaks the page', () => {
  const shown: unknown[] = [];
  const dialog = (html: string, width = 0, height = 0): object => ({
    setWidth: (pixels: number) => dialog(html, pixels, height),
    setHeight: (pixels: number) => dialog(html, width, pixels),
    html,
    width,
    height,
  });
  Object.assign(globalThis, {
    SpreadsheetApp: { getUi: () => ({ showModalDialog: (html: object, title: string) => shown.push([html, title]) }) },
    HtmlService: {
      createHtmlOutputFromFile: () => ({ getContent: () => '<div id="large-view" hidden></div>' }),
      createHtmlOutput: (html: string) => dialog(html),
    },
  });
  const data = { piece: '', question: { name: '</div><script>&amp; $& $1' } };
  menu.showLargeView(data, 1200.4, 90);
  const [[{ html, width, height }, title]] = shown as [[{ html: string; width: number; height: number }, string]];
  const [, text] = /^<div id="large-view" hidden>(.*)<\/div>$/.exec(html) ?? [];
  expect(text).not.toMatch(/[<&]/);
  expect(JSON.parse(text)).toEqual(data);
  // A dialog of 90 pixels would be of no use.
  expect([width, height, title]).toEqual([1200, 300, 'The floor']);
});

test.each([
  ['en_US', 'us'],
  ['es_US', 'us'],
  ['en_GB', 'metric'],
  ['de_DE', 'metric'],
  ['en_AU', 'metric'],
  ['', 'metric'],
])('a spreadsheet of locale %s starts in %s units', (locale, units) => {
  book = fakeBook(['Estimate'], locale);
  installFakes(book);
  expect(menu.startUnits()).toBe(units);
});

describe('filling tabs', () => {
  test('the cut list and the floor plan of a room, each told by name with the time it took', async () => {
    expect(await cutList(den)).toMatchObject({ status: 'written', tab: 'Cut list - Den', ms: expect.any(Number) });
    expect(await floorPlan(den)).toMatchObject({ status: 'written', tab: 'Floor plan - Den', ms: expect.any(Number) });
    expect(names()).toEqual(['Estimate', 'Cut list - Den', 'Floor plan - Den']);
    expect(valuesOf('Cut list - Den').flat()).toContain('2-1');
    expect(valuesOf('Floor plan - Den').flat()).toContain('2-1');
  });

  test('ticks and notes of the cut list are there after it was filled again', async () => {
    await cutList(den);
    const sheet = book.sheets[1];
    const row = valuesOf('Cut list - Den').findIndex((cells) => cells[1] === '2-1') + 1;
    sheet.at(row, 13).value = true;
    sheet.at(row, 14).value = '=knot';
    await cutList(den);
    expect(sheet.at(row, 13)).toMatchObject({ value: true, box: 'box to tick' });
    expect(sheet.at(row, 14)).toMatchObject({ value: '=knot', formula: '' });
  });

  test('what somebody ticks while the new list is worked out is not lost', async () => {
    await cutList(den);
    const sheet = book.sheets[1];
    const row = valuesOf('Cut list - Den').findIndex((cells) => cells[1] === '2-1') + 1;
    let readCount = 0;
    const slow: TabStore = {
      ...store,
      read: async (mark, title) => {
        const read = await store.read(mark, title);
        readCount += 1;
        if (readCount === 1) sheet.at(row, 13).value = true;
        return read;
      },
    };
    await fillCutList(slow, planned(den));
    expect(readCount).toBe(2);
    expect(sheet.at(row, 13)).toMatchObject({ value: true, box: 'box to tick' });
  });

  test('a tab that others keep changing is told', async () => {
    await cutList(den);
    const changing: TabStore = {
      ...store,
      read: async () => ({ cells: [], version: 'older', formulas: [], memory: '' }),
    };
    await expect(fillCutList(changing, planned(den))).rejects.toThrow(
      'Somebody else keeps changing the tab "Cut list - Den"',
    );
  });

  test.each(["Kid's room", '🙂', '=1+1', 'a/b', '+x', '@y', '5/8'])('a room may be called %s', async (name) => {
    for (const fill of [cutList, floorPlan, save]) {
      expect(await fill({ ...den, name })).toMatchObject({ status: 'written' });
      expect(await fill({ ...den, name })).toMatchObject({ status: 'written' });
    }
    expect(names()).toHaveLength(4);
    expect((await savedRooms(store)).rooms.map((room) => room.name)).toEqual([name]);
    expect(book.sheets.flatMap((sheet) => [...sheet.cells.values()]).filter((cell) => cell.formula !== '')).toEqual([]);
  });

  test('rooms whose names differ only in a mark that tabs cannot have get a tab each', async () => {
    expect(await cutList({ ...den, name: 'a/b' })).toMatchObject({ tab: 'Cut list - a-b' });
    expect(await cutList({ ...den, name: 'a-b' })).toMatchObject({ tab: 'Cut list - a-b (2)' });
  });

  test.each([
    ['nothing', undefined],
    ['text', 'Den'],
    ['a list', [1]],
    ['a block without a mark', { title: 'Den', mark: '', looks: [], cells: [[0]] }],
    ['a block without cells', { title: 'Den', mark: 'x', looks: [], cells: [] }],
  ])('%s is told, and no tab is touched', (_, block) => {
    expect(() => menu.fillTab(block, '')).toThrow('The sidebar sent something that is not a tab.');
    expect(names()).toEqual(['Estimate']);
    expect(lock.waits).toBe(0);
  });

  test('while somebody else is filling, nothing is touched and a sentence says so', async () => {
    lock.isHeld = true;
    await expect(cutList(den)).rejects.toThrow('Somebody else is filling tabs');
    await expect(save(den)).rejects.toThrow('Somebody else is filling tabs');
    expect(names()).toEqual(['Estimate']);
    expect(lock.isHeld).toBe(true);
  });

  test('a failure half way gives the lock back and leaves the old tab', async () => {
    await cutList(den);
    const before = JSON.stringify(valuesOf('Cut list - Den'));
    book.failing = { method: 'Range.setBackgrounds', countdown: 1 };
    await expect(cutList(den)).rejects.toThrow('setBackgrounds failed');
    expect(lock.isHeld).toBe(false);
    expect(JSON.stringify(valuesOf('Cut list - Den'))).toBe(before);
    expect(await cutList(den)).toMatchObject({ tab: 'Cut list - Den' });
  });

  test.each(['setFrozenRows', 'setFrozenColumns', 'setHiddenGridlines'])(
    'nor does %s make a tab that is new one',
    async (name) => {
      book.failing = { method: `Sheet.${name}`, countdown: 1 };
      expect(await floorPlan(den)).toMatchObject({ status: 'written', tab: 'Floor plan - Den' });
      expect(book.failing.countdown).toBeLessThanOrEqual(0);
    },
  );

  test.each<readonly [string, string]>([
    ['all goes well', ''],
    ['it fails half way', 'Range.setBackgrounds'],
  ])('the lock is given back only when everything has been sent, whether %s', async (_, failing) => {
    await cutList(den);
    const underLock: string[] = [];
    book.onCall = (_count, method) => {
      if (lock.isHeld) underLock.push(method);
    };
    if (failing) book.failing = { method: failing, countdown: 1 };
    const works = [
      () => cutList(den),
      () => store.putOnTop('cut list/den', 'This list no longer holds.'),
      () => store.rename('cut list/den', 'cut list/hall', 'Cut list - Hall'),
    ];
    for (const work of failing ? works.slice(0, 1) : works) {
      underLock.length = 0;
      await work().catch((error) => expect(error.message).toBe(`${failing} failed`));
      expect(underLock.length).toBeGreaterThan(1);
      expect(underLock[underLock.length - 1]).toBe('flush');
    }
  });

  test('a service that refuses what was sent refuses it before the old tab is touched', async () => {
    await cutList(den);
    const before = JSON.stringify(valuesOf('Cut list - Den'));
    book.onCall = (_, method) => {
      if (method === 'flush') throw new Error('Service Spreadsheets timed out');
    };
    await expect(cutList({ ...den, product: { ...den.product, name: 'Other oak' } })).rejects.toThrow('timed out');
    expect(JSON.stringify(valuesOf('Cut list - Den'))).toBe(before);
  });

  test('whoever goes to another tab while one is filled stays there', async () => {
    book = fakeBook(['Estimate', 'Prices']);
    installFakes(book);
    for (let times = 1; times <= 2; times++) {
      book.active = book.sheets[0];
      book.onCall = (_, method) => {
        if (method === 'Range.setValues') book.active = book.sheets[1];
      };
      await cutList(den);
      expect([times, book.active.name]).toEqual([times, 'Prices']);
    }
  });

  test('a date in a cell comes back as a date', async () => {
    await save(den);
    book.sheets[1].at(2, 1).value = new Date(2026, 4, 8);
    const { cells } = await store.read('rooms', 'Rooms');
    expect(cells[1][0]).toEqual(new Date(2026, 4, 8));
  });

  test('a picture in a cell is told, and nothing is filled over it', async () => {
    await cutList(den);
    book.sheets[1].at(9, 3).value = { toString: () => 'CellImage' };
    await expect(cutList(den)).rejects.toThrow(/picture in row 9, column 3/);
    expect(String(book.sheets[1].at(9, 3).value)).toBe('CellImage');
  });

  test('a service that keeps the apostrophe before a text makes no difference', async () => {
    await cutList(den);
    const usual = valuesOf('Cut list - Den');
    book = fakeBook();
    book.keepsApostrophes = true;
    installFakes(book);
    await cutList(den);
    expect(valuesOf('Cut list - Den')).toEqual(usual);
  });

  test.each(['setFrozenRows', 'setFrozenColumns', 'setColumnWidths', 'setRowHeightsForced', 'setHiddenGridlines'])(
    'a layout that is refused at %s does not make a filled tab a failure',
    async (name) => {
      await floorPlan(den);
      book.calls.clear();
      await floorPlan(den);
      const method = `Sheet.${name}`;
      const count = book.calls.get(method) ?? 0;
      expect(count).toBeGreaterThan(0);
      for (let countdown = 1; countdown <= count; countdown++) {
        book.failing = { method, countdown };
        expect(await floorPlan(den)).toMatchObject({ status: 'written', tab: 'Floor plan - Den' });
        expect(book.failing.countdown).toBeLessThanOrEqual(0);
      }
    },
  );
});

describe('service calls', () => {
  /** The small floor with its pieces and planks so many times over, each set one row set further from the wall. */
  function largeFloor(times: number): Takeoff {
    const sets = Array.from({ length: times }, (_, set) => set);
    const rowShift = (set: number) => set * smallTakeoff.rows.length;
    const label = (text: string, set: number) => text.replace(/^\d+/, (row) => String(Number(row) + rowShift(set)));
    const pieces = sets.flatMap((set) =>
      smallTakeoff.pieces.map((piece) => ({
        ...piece,
        label: label(piece.label, set),
        rowNumber: piece.rowNumber + rowShift(set),
        plankNumber: piece.plankNumber + set * smallTakeoff.planks.length,
      })),
    );
    const planks = sets.flatMap((set) =>
      smallTakeoff.planks.map((plank) => ({
        ...plank,
        plankNumber: plank.plankNumber + set * smallTakeoff.planks.length,
        pieces: plank.pieces.map((piece) => ({ ...piece, label: label(piece.label, set) })),
      })),
    );
    return { ...smallTakeoff, entry: den, pieces, planks };
  }

  async function callsOf(fill: (store: TabStore, planned: Takeoff) => Promise<unknown>, times: number) {
    book = fakeBook();
    installFakes(book);
    const counts: object[] = [];
    for (let i = 0; i < 2; i++) {
      book.calls.clear();
      await fill(store, largeFloor(times));
      // A new tab has a thousand rows: only a list that is longer asks for more, once.
      const { 'Sheet.insertRowsAfter': more = 0, ...calls } = Object.fromEntries(book.calls);
      expect(more).toBeLessThanOrEqual(1);
      counts.push(calls);
    }
    return counts;
  }

  test.each([
    ['the cut list', fillCutList],
    ['the floor plan', fillFloorPlan],
  ])('of %s are the same for 8 pieces and for 504', async (_, fill) => {
    expect(largeFloor(63).pieces).toHaveLength(504);
    expect(await callsOf(fill, 63)).toEqual(await callsOf(fill, 1));
  });
});

describe('saved rooms', () => {
  const entries = async () => (await savedRooms(store)).rooms.map((room) => room.entry);

  test('are given back as they were typed, the last saved of a name', async () => {
    expect(await entries()).toEqual([]);
    await save(den);
    await save({ ...smallEntry, name: 'Hall' });
    await save({ ...den, units: 'metric' });
    expect(await entries()).toEqual([
      { ...den, units: 'metric' },
      { ...smallEntry, name: 'Hall' },
    ]);
    expect(names()).toEqual(['Estimate', 'Rooms']);
  });

  test('a tab Rooms that is not ours is left alone', async () => {
    book = fakeBook(['Rooms']);
    installFakes(book);
    book.sheets[0].at(1, 1).value = 'Room';
    book.sheets[0].at(1, 2).value = 'mine';
    expect(await entries()).toEqual([]);
    expect(await save(den)).toMatchObject({ tab: 'Rooms (2)' });
    expect(book.sheets[0].values()).toEqual([['Room', 'mine']]);
  });

  test('a tab whose line of names is gone is not written over', async () => {
    await save(den);
    const sheet = book.sheets[1];
    const row = sheet.values().findIndex((cells) => cells[0] === 'Room') + 1;
    sheet.at(row, 1).value = 'Who';
    const before = JSON.stringify(sheet.values());
    expect(await save({ ...den, name: 'Hall' })).toEqual([expect.stringMatching(/no line "Room" in its first column/)]);
    expect(JSON.stringify(sheet.values())).toBe(before);
  });
});

test('a tab is brought to the front, or its loss is told', () => {
  book = fakeBook(['Estimate', 'Cut list - Den']);
  installFakes(book);
  menu.showTab('Cut list - Den');
  expect(spreadsheetOf(book).getActiveSheet().getName()).toBe('Cut list - Den');
  expect(() => menu.showTab('Cut list - Hall')).toThrow('There is no tab "Cut list - Hall" any more. Fill it again.');
});
