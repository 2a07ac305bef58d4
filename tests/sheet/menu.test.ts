import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { RoomEntry } from '../../src/takeoff/entry';
import type { TakeoffResult } from '../../src/takeoff/result';
import { type FakeBook, fakeBook, installFakes, spreadsheetOf } from '../support/fakeSpreadsheet';
import { smallEntry, smallTakeoff } from '../support/smallTakeoff';

/** What the plan answers: what is tested here is what is done with it. */
const plan = vi.hoisted(() => ({ answer: (_: unknown): unknown => null }));
vi.mock('../../src/takeoff/takeoff', () => ({ takeoff: (entry: unknown) => plan.answer(entry) }));

const menu = await import('../../src/sheet/menu');

let book: FakeBook;
let lock: ReturnType<typeof installFakes>;
const planned = (entry: RoomEntry): TakeoffResult => ({ status: 'planned', takeoff: { ...smallTakeoff, entry } });
const names = () => book.sheets.map((sheet) => sheet.name);
const valuesOf = (name: string) => book.sheets.find((sheet) => sheet.name === name)?.values() ?? [];
const den: RoomEntry = { ...smallEntry, name: 'Den' };

beforeEach(() => {
  book = fakeBook();
  lock = installFakes(book);
  plan.answer = (entry) => planned(entry as RoomEntry);
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

  test.each(['onOpen', 'onInstall'] as const)('%s asks for the menu and for nothing else', (name) => {
    const steps = onlyMenu();
    menu[name]();
    expect(steps).toEqual(['Plan a floor -> openLedger', 'shown']);
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
  test('the cut list and the floor plan of a room, each told by name with the time it took', () => {
    const cutList = menu.fillCutList(JSON.parse(JSON.stringify(den)));
    const floorPlan = menu.fillFloorPlan(JSON.parse(JSON.stringify(den)));
    expect(cutList).toEqual({ tab: 'Cut list: Den', ms: expect.any(Number), problems: [] });
    expect(floorPlan).toEqual({ tab: 'Floor plan: Den', ms: expect.any(Number), problems: [] });
    expect(names()).toEqual(['Estimate', 'Cut list: Den', 'Floor plan: Den']);
    expect(valuesOf('Cut list: Den').flat()).toContain('2-1');
    expect(valuesOf('Floor plan: Den').flat()).toContain('2-1');
  });

  test('ticks and notes of the cut list are there after it was filled again', () => {
    menu.fillCutList(den);
    const sheet = book.sheets[1];
    const row = valuesOf('Cut list: Den').findIndex((cells) => cells[1] === '2-1') + 1;
    sheet.at(row, 10).value = true;
    sheet.at(row, 11).value = '=knot';
    menu.fillCutList(den);
    expect(sheet.at(row, 10)).toMatchObject({ value: true, box: 'box to tick' });
    expect(sheet.at(row, 11)).toMatchObject({ value: '=knot', formula: '' });
  });

  test.each(["Kid's room", '🙂', '=1+1', 'a/b', '+x', '@y', '5/8'])('a room may be called %s', (name) => {
    for (const fill of [menu.fillCutList, menu.fillFloorPlan, menu.saveRoom]) {
      expect(fill({ ...den, name }).tab).not.toBe('');
      expect(fill({ ...den, name }).tab).not.toBe('');
    }
    expect(names()).toHaveLength(4);
    expect(menu.listRooms().rooms.map((room) => room.name)).toEqual([name]);
    expect(book.sheets.flatMap((sheet) => [...sheet.cells.values()]).filter((cell) => cell.formula !== '')).toEqual([]);
  });

  test('rooms whose names differ only in a mark that tabs cannot have get a tab each', () => {
    expect([menu.fillCutList({ ...den, name: 'a/b' }).tab, menu.fillCutList({ ...den, name: 'a-b' }).tab]).toEqual([
      'Cut list: a-b',
      'Cut list: a-b (2)',
    ]);
  });

  test('problems of the plan are handed back, and no tab is touched', () => {
    const problems = [{ field: 'shape.length', text: 'Length is blank. Type feet and inches.' }];
    plan.answer = () => ({ status: 'problems', problems });
    expect(menu.fillCutList(den)).toEqual({ tab: '', ms: expect.any(Number), problems });
    expect(menu.fillFloorPlan(den).problems).toEqual(problems);
    expect(names()).toEqual(['Estimate']);
    expect(lock.waits).toBe(0);
  });

  test.each([
    ['nothing', undefined, '', /not a room entry/],
    ['text', 'Den', '', /not a room entry/],
    ['a list', [den], '', /not a room entry/],
    ['no units', { ...den, units: '' }, 'units', /Units is blank/],
    ['no name', { ...den, name: '  ' }, 'name', /Room name is blank/],
    ['a name of 81 letters', { ...den, name: 'x'.repeat(81) }, 'name', /81 characters. Keep it to 80/],
  ])('%s is told, and not planned', (_, entry, field, sentence) => {
    plan.answer = () => expect.fail('must not be planned');
    for (const fill of [menu.fillCutList, menu.fillFloorPlan, menu.saveRoom]) {
      const { tab, problems } = fill(entry);
      expect(tab).toBe('');
      expect(problems).toEqual([{ field, text: expect.stringMatching(sentence) }]);
    }
    expect(names()).toEqual(['Estimate']);
  });

  test('while somebody else is filling, nothing is touched and a sentence says so', () => {
    lock.isHeld = true;
    expect(() => menu.fillCutList(den)).toThrow('Somebody else is filling tabs');
    expect(() => menu.saveRoom(den)).toThrow('Somebody else is filling tabs');
    expect(names()).toEqual(['Estimate']);
    expect(lock.isHeld).toBe(true);
  });

  test('a failure half way gives the lock back and leaves the old tab', () => {
    menu.fillCutList(den);
    const before = JSON.stringify(valuesOf('Cut list: Den'));
    book.failing = { method: 'Range.setBackgrounds', countdown: 1 };
    expect(() => menu.fillCutList(den)).toThrow('setBackgrounds failed');
    expect(lock.isHeld).toBe(false);
    expect(JSON.stringify(valuesOf('Cut list: Den'))).toBe(before);
    expect(menu.fillCutList(den).tab).toBe('Cut list: Den');
  });

  test('what is answered may pass to the page: plain values only', () => {
    for (const answer of [menu.fillCutList(den), menu.saveRoom(den), menu.listRooms()]) {
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    }
  });
});

describe('service calls', () => {
  /** The small floor with its pieces and planks so many times over, each set one row set further from the wall. */
  function largeFloor(times: number): TakeoffResult {
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
    return { status: 'planned', takeoff: { ...smallTakeoff, entry: den, pieces, planks } };
  }

  function callsOf(fill: (entry: unknown) => unknown, times: number) {
    book = fakeBook();
    installFakes(book);
    plan.answer = () => largeFloor(times);
    const counts = [1, 2].map(() => {
      book.calls.clear();
      fill(den);
      return Object.fromEntries(book.calls);
    });
    return counts;
  }

  test.each(['fillCutList', 'fillFloorPlan'] as const)('of %s are the same for 8 pieces and for 504', (name) => {
    expect(largeFloor(63)).toMatchObject({ takeoff: { pieces: { length: 504 } } });
    expect(callsOf(menu[name], 63)).toEqual(callsOf(menu[name], 1));
  });
});

describe('saved rooms', () => {
  test('are given back as they were typed, the last saved of a name', () => {
    expect(menu.listRooms()).toEqual({ rooms: [], problems: [] });
    menu.saveRoom(den);
    menu.saveRoom({ ...smallEntry, name: 'Hall' });
    menu.saveRoom({ ...den, units: 'metric' });
    expect(menu.listRooms()).toEqual({
      rooms: [
        { ...den, units: 'metric' },
        { ...smallEntry, name: 'Hall' },
      ],
      problems: [],
    });
    expect(names()).toEqual(['Estimate', 'Rooms']);
  });

  test('a tab Rooms that is not ours is left alone', () => {
    book = fakeBook(['Rooms']);
    installFakes(book);
    book.sheets[0].at(1, 1).value = 'Room';
    book.sheets[0].at(1, 2).value = 'mine';
    expect(menu.listRooms().rooms).toEqual([]);
    expect(menu.saveRoom(den).tab).toBe('Rooms (2)');
    expect(book.sheets[0].values()).toEqual([['Room', 'mine']]);
  });

  test('a tab whose line of names is gone is not written over', () => {
    menu.saveRoom(den);
    const sheet = book.sheets[1];
    const row = sheet.values().findIndex((cells) => cells[0] === 'Room') + 1;
    sheet.at(row, 1).value = 'Who';
    const before = JSON.stringify(sheet.values());
    expect(menu.saveRoom({ ...den, name: 'Hall' })).toEqual({
      tab: '',
      ms: expect.any(Number),
      problems: [{ field: '', text: expect.stringMatching(/no line "Room" in its first column/) }],
    });
    expect(JSON.stringify(sheet.values())).toBe(before);
  });
});

test('a tab is brought to the front, or its loss is told', () => {
  book = fakeBook(['Estimate', 'Cut list: Den']);
  installFakes(book);
  menu.showTab('Cut list: Den');
  expect(spreadsheetOf(book).getActiveSheet().getName()).toBe('Cut list: Den');
  expect(() => menu.showTab('Cut list: Hall')).toThrow('There is no tab "Cut list: Hall" any more. Fill it again.');
});
