/** Filling tabs from the page of a room, and the rooms that are saved. */
import { afterAll, describe, expect, test } from 'vitest';
import { unpackBlock } from '../../../src/tabs/packed';
import { roomsBlock, withRoom } from '../../../src/tabs/rooms';
import { blockValues } from '../../support/blockValues';
import { plainRoom } from '../../support/roomEntries';
import { openSidebar } from '../../support/sidebarPage';

const sidebar = await openSidebar();
const { page, open, field, fold, planned, fillPlain } = sidebar;
afterAll(() => sidebar.close());

const roomArea = () => page.locator('#numbers dl div', { hasText: /^Room/ }).locator('dd').textContent();

test('with several accounts signed in: the cure is told at once, and units are those of the browser', async () => {
  await open({ 'several accounts': [] });
  const told = page.getByRole('alert').filter({ hasText: 'signed in with its own account only' });
  await told.waitFor();
  expect(await told.isVisible()).toBe(true);
  // Chromium as the tests start it speaks American English.
  expect(await page.getByText('Length (ft)').isVisible()).toBe(true);
});

describe('filling', () => {
  test('is not begun twice at once', async () => {
    await open();
    await fillPlain();
    await page.locator('#fill-button').dblclick();
    await page.waitForSelector('text=/3 tabs filled/');
    expect(await page.evaluate(() => window.sheet.written.length)).toBe(3);
  });

  test('that fails is told, keeps what is typed, and can be tried again', async () => {
    await open();
    await fillPlain();
    await page.evaluate(() => {
      window.sheet.failing = 'Cut list - Room 1';
    });
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/did not answer.*Filled: Rooms.*try again/');
    expect(await field('shape.length').inputValue()).toBe('12');
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('that takes long tells each tab, and stops between two of them', async () => {
    await open();
    await fillPlain();
    await page.evaluate(() => {
      window.sheet.delay = 400;
    });
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/Writing "Rooms", tab 1 of 3/');
    await page.locator('#fill').getByRole('button', { name: 'Stop' }).click();
    await page.waitForSelector('text=/Stopped before "Cut list - Room 1".*Filled: Rooms/');
    expect(await page.evaluate(() => window.sheet.written.map(({ title }) => title))).toEqual(['Rooms']);
    await page.evaluate(() => {
      window.sheet.delay = 5;
    });
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('of a page opened alone says that there is no spreadsheet, and everything else works', async () => {
    await open(null);
    await fold('Name, units');
    await page.locator('input[name="units"][value="us"]').check();
    await fillPlain();
    // By hand: 12 ft x 10 ft.
    expect(await roomArea()).toBe('120 sq ft');
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/not connected to a spreadsheet/');
  });
});

test('a saved room opens again, after asking when something typed would be lost', async () => {
  await open({ rooms: blockValues(roomsBlock(withRoom([], { ...plainRoom, name: 'Old room' }))) as unknown[][] });
  await page.waitForSelector('#saved-room option', { state: 'attached' });
  await fillPlain();
  await page.locator('#fill-button').click();
  await page.waitForSelector('text=/3 tabs filled/');
  const ways = page.getByRole('button', { name: /^Show (Rooms|Cut list|Floor plan)/ });
  expect(await ways.count()).toBe(3);
  await fold('Rooms');
  await field('shape.length').fill('11');
  await page.locator('#saved-room').selectOption('Old room');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForSelector('text=/not saved/');
  await page.getByRole('button', { name: 'Open Old room all the same' }).click();
  await expect.poll(() => field('name').inputValue()).toBe('Old room');
  // What became of the room before is said no longer.
  expect([await page.locator('#fill .told').textContent(), await ways.count()]).toEqual(['', 0]);
  // The plan of what was typed before may be shown until the room's own is there.
  await expect.poll(roomArea).toBe('120 sq ft');
  expect(await field('product.name').inputValue()).toBe('Harbour oak');
});

describe('the saved rooms', () => {
  const saved = (length: string | number) => {
    const shape = { kind: 'rectangle', length, width: 10 } as const;
    return blockValues(roomsBlock(withRoom([], { ...plainRoom, name: 'Den', shape }))) as unknown[][];
  };
  const changeTab = (cells: unknown[][]) =>
    page.evaluate((rooms) => {
      window.sheet.cells.rooms = rooms;
    }, cells);
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();

  async function openDen(): Promise<void> {
    await open({ rooms: saved(12) });
    await page.waitForSelector('#saved-room option', { state: 'attached' });
    await fold('Rooms');
    await press('Open');
    await planned();
  }

  test('open as they stand in their tab now', async () => {
    await open({ rooms: saved(12) });
    await page.waitForSelector('#saved-room option', { state: 'attached' });
    await fold('Rooms');
    await changeTab(saved(`13'`));
    await press('Open');
    await planned();
    expect(await field('shape.length').inputValue()).toBe(`13'`);
  });

  // The other aim is looked at when a person has paused. Here that pause ends just as the plan of another room is begun.
  test('are planned when they are opened, also when the other aim of the last room was about to be', async () => {
    await open({ rooms: saved(12) });
    await page.evaluate(() => {
      const held: (() => void)[] = [];
      const { setTimeout } = window;
      const isPause = (ms = 0) => ms > 600 && ms < 1000;
      const hold = (then: () => void, ms?: number) => (isPause(ms) ? held.push(then) : setTimeout(then, ms));
      window.setTimeout = hold as typeof window.setTimeout;
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (question: unknown) {
        postMessage.call(this, question);
        for (const then of held.splice(0)) then();
      };
    });
    await fillPlain();
    await planned();
    await fold('Rooms');
    await changeTab(saved(13));
    await press('Open');
    const lost = page.getByRole('button', { name: 'Open Den all the same' });
    await lost.click();
    await expect.poll(() => field('shape.length').inputValue()).toBe('13');
    await planned();
    // By hand: 13 ft x 10 ft.
    expect(await roomArea()).toBe('130 sq ft');
  });

  test('are not written over where their tab was changed, unless that is wanted', async () => {
    await openDen();
    await changeTab(saved(`13'`));
    await press('Fill the tabs');
    await page.waitForSelector(`text=/Den was changed in the tab of rooms since it was opened here: Length: 13'/`);
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
    await press('Open it as it is there');
    await expect.poll(() => field('shape.length').inputValue()).toBe(`13'`);
    await planned();
    await press('Fill the tabs');
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('of a name that is typed for another room are not written over unasked', async () => {
    await open({ rooms: saved(14) });
    await page.waitForSelector('#saved-room option', { state: 'attached' });
    await fold('Rooms');
    await fillPlain();
    await fold('Name, units');
    await field('name').fill('den');
    await press('Fill the tabs');
    await page.waitForSelector('text=/A room named den is saved already, with other entries: Length: 14/');
    await press('Write over it');
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('are renamed and removed', async () => {
    await openDen();
    await fold('Rooms');
    await press('Rename');
    await page.getByLabel(/New name of Den/).fill('Study');
    await press('Rename it');
    await page.waitForSelector('text=/Den is Study now/');
    expect(await field('name').inputValue()).toBe('Study');
    const { written, renamed } = await page.evaluate(() => window.sheet);
    expect(blockValues(unpackBlock(written[0]))).toContainEqual(['Room', 'Study']);
    expect(renamed).toEqual([
      ['cut list/den', 'cut list/study'],
      ['floor plan/den', 'floor plan/study'],
      ['list before/den', 'list before/study'],
    ]);
    await press('Remove');
    await press('Remove Den');
    await page.waitForSelector('text=/Den is no longer saved/');
    const after = await page.evaluate(() => window.sheet);
    expect(blockValues(unpackBlock(after.written[1])).flat()).not.toContain('Den');
    expect(after.onTop.map(([mark]) => mark)).toEqual(['cut list/den', 'floor plan/den']);
  });
});

describe('a cut list with ticks', () => {
  const list = [
    ['Row', 'Piece', 'Length', 'Width', 'Laid', 'Your notes'],
    [1, '1-1', `2' 7"`, '6"', true, ''],
    [1, '1-2', `4'`, '6"', false, ''],
  ];
  const about = JSON.stringify({ plans: [{ rooms: ['room 1'], planRooms: ['room 1'], plan: 'old', pieces: 'old' }] });

  async function fillTicked(): Promise<void> {
    await open({ 'cut list/room 1': list });
    await page.evaluate((text) => {
      window.sheet.tabs = [{ mark: 'cut list/room 1', tab: 'Cut list - Room 1', about: text }];
    }, about);
    await fillPlain();
    await page.locator('#fill-button').click();
    await page.waitForSelector(
      'text=/Cut list - Room 1: 1 piece is ticked. Of those, 1 would disappear or change size/',
    );
  }
  const titles = () => page.evaluate(() => window.sheet.written.map(({ title }) => title));

  test('is left as it is, unless the person says so', async () => {
    await fillTicked();
    await page.getByRole('button', { name: 'Leave them as they are' }).click();
    await page.waitForSelector('text=/"Cut list - Room 1" is left as it is: 1 piece is ticked in it/');
    expect(await titles()).toEqual(['Rooms']);
  });

  test('is filled with the new plan when the person says so, and keeps the tick at its foot', async () => {
    await fillTicked();
    await page.getByRole('button', { name: 'Fill all the same' }).click();
    await page.waitForSelector('text=/3 tabs filled.*at the bottom of "Cut list - Room 1"/');
    expect(await titles()).toEqual(['Rooms', 'Before - Room 1', 'Cut list - Room 1', 'Floor plan - Room 1']);
  });
});

test('a doorway into a saved room offers to lay both as one floor', async () => {
  const hall = { ...plainRoom, name: 'Hall' };
  const back = {
    wall: 1,
    along: 6,
    width: 3,
    floor: 'goes on',
    depth: '2"',
    leadsTo: '',
    itsDoorway: '',
    wallThickness: '',
  } as const;
  const saved = roomsBlock(withRoom([], { ...hall, doorways: [back] }));
  await open({ rooms: blockValues(saved) as unknown[][] });
  await page.waitForSelector('#saved-room option', { state: 'attached' });
  await fillPlain();
  await fold('Doorways');
  await page.locator('[id="add-doorways"]').click();
  await field('doorways.0.floor').selectOption('goes on');
  // Both rooms are 12 ft long: 3 ft from the near right corner is 6 ft from the far left one, across 3 ft.
  for (const [key, text] of [
    ['wall', '3'],
    ['along', '3'],
    ['width', '3'],
    ['depth', '2"'],
    ['leadsTo', 'Hall'],
    ['wallThickness', '4"'],
  ]) {
    await field(`doorways.0.${key}`).fill(text);
  }
  await page.getByLabel('Lay as one floor with Hall').check();
  // By hand: two rooms of 120 sq ft, and 3 ft by 4 in between them.
  await expect.poll(roomArea).toBe('241 sq ft');
  await page.locator('#fill-button').click();
  await page.waitForSelector('text=/3 tabs filled/');
  const titles = await page.evaluate(() => window.sheet.written.map(({ title }) => title));
  expect(titles).toEqual(['Rooms', 'Cut list - Hall + Room 1', 'Floor plan - Hall + Room 1']);
});
