/** The built page in a real browser, 300 px wide, worked by keyboard, with a spreadsheet that only remembers. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { addOnFiles } from '../../src/build.mjs';
import { emptyHouse } from '../../src/order/houseEntry';
import { jobBlock } from '../../src/tabs/job';
import { type PackedBlock, unpackBlock } from '../../src/tabs/packed';
import { roomsBlock, withRoom } from '../../src/tabs/rooms';
import { blockValues } from '../support/blockValues';
import { launch } from '../support/browser';
import { plainRoom } from '../support/roomEntries';

interface Sheet {
  /** Blocks written, tabs shown, in order. */
  readonly written: PackedBlock[];
  readonly shown: string[];
  readonly cells: Record<string, unknown[][]>;
  /** Tabs that stand in the spreadsheet already, lines put on top of them, and new marks they got. */
  tabs: { mark: string; tab: string; about: string }[];
  readonly onTop: [mark: string, words: string][];
  readonly renamed: [mark: string, newMark: string][];
  /** Title of a tab whose next writing fails. */
  failing: string;
  /** How often reading fails from now on. */
  failingReads: number;
  /** Milliseconds until a call is answered. */
  delay: number;
}

declare global {
  interface Window {
    sheet: Sheet;
  }
}

/** Runs in the page: google.script.run, answering later and with copies. */
function standIn(cells: Record<string, unknown[][]>): void {
  const sheet: Sheet = {
    written: [],
    shown: [],
    cells,
    tabs: [],
    onTop: [],
    renamed: [],
    failing: '',
    failingReads: 0,
    delay: 5,
  };
  const answers: Record<string, (...values: never[]) => unknown> = {
    startUnits: () => 'us',
    readTabCells(mark: string) {
      if (sheet.failingReads-- > 0) throw new Error('The spreadsheet did not answer.');
      return { cells: sheet.cells[mark] ?? [], version: 'as read', formulas: [], memory: '' };
    },
    tabsOfOurs: () => sheet.tabs,
    putOnTopOfTab: (mark: string, words: string) => void sheet.onTop.push([mark, words]),
    renameTab: (mark: string, newMark: string) => void sheet.renamed.push([mark, newMark]),
    showTab: (name: string) => void sheet.shown.push(name),
    fillTab(block: PackedBlock) {
      if (block.title === sheet.failing) {
        sheet.failing = '';
        throw new Error('The spreadsheet did not answer.');
      }
      sheet.written.push(block);
      return { status: 'written', tab: block.title, spreadsheetId: 'book', sheetId: 1, ms: 1 };
    },
  };
  const runner = (success: (answer: unknown) => void, failure: (error: Error) => void): unknown =>
    new Proxy(
      {},
      {
        get: (_, name: string) => {
          if (name === 'withSuccessHandler') return (next: typeof success) => runner(next, failure);
          if (name === 'withFailureHandler') return (next: typeof failure) => runner(success, next);
          return (...values: unknown[]) => {
            const sent = JSON.parse(JSON.stringify(values)) as never[];
            setTimeout(() => {
              try {
                success(JSON.parse(JSON.stringify(answers[name](...sent) ?? null)));
              } catch (error) {
                failure(error as Error);
              }
            }, sheet.delay);
          };
        },
      },
    );
  Object.assign(window, {
    sheet,
    google: {
      script: {
        run: runner(
          () => {},
          () => {},
        ),
      },
    },
  });
}

let browser: Browser;
let html: string;
let page: Page;
let errors: string[];

beforeAll(async () => {
  html = (await addOnFiles())['Sidebar.html'];
  browser = await launch();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  await page?.close();
  page = await browser.newPage({ viewport: { width: 300, height: 800 } });
  errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.setDefaultTimeout(25_000);
});

async function open(cells: Record<string, unknown[][]> | null = {}): Promise<void> {
  await page.goto('about:blank');
  if (cells) await page.evaluate(standIn, cells);
  await page.setContent(html);
  await page.waitForSelector('#form h2');
}

const field = (path: string) => page.locator(`[id="field-${path}"]`);
const problemAt = (path: string) => page.locator(`[id="problem-${path}"]`);
const focusedId = () => page.evaluate(() => document.activeElement?.id ?? '');

/** Presses Tab until the element has the keyboard. */
async function tabTo(id: string): Promise<void> {
  for (let i = 0; i < 90; i++) {
    if ((await focusedId()) === id) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`The tab key does not lead to ${id}`);
}

async function type(path: string, text: string): Promise<void> {
  await tabTo(`field-${path}`);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
}

async function typeProduct(): Promise<void> {
  await type('product.plankLength', '48');
  await type('product.plankWidth', '6');
  await type('product.planksPerBox', '8');
}

const planned = () => page.waitForFunction(() => /waste/.test(document.getElementById('headline')?.textContent ?? ''));
const roomArea = () => page.locator('#numbers dl div', { hasText: /^Room/ }).locator('dd').textContent();

test('an L-shaped room is typed, seen and filled by keyboard alone', { timeout: 90_000 }, async () => {
  await open();
  await type('name', 'Den');
  await tabTo('field-shape.kind');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  expect(await page.locator('input[name="shape.kind"]:checked').inputValue()).toBe('walls in order');
  for (let i = 0; i < 2; i++) {
    await tabTo('add-shape.walls');
    await page.keyboard.press('Enter');
  }
  expect(await focusedId()).toBe('field-shape.walls.5.length');
  await field('name').focus();
  const walls = [
    ["16'", 'R'],
    ["12'", 'R'],
    ["9'", 'R'],
    ["5'", 'L'],
    ["7'", 'R'],
    ["7'", 'R'],
  ];
  for (const [i, [length, turn]] of walls.entries()) {
    await type(`shape.walls.${i}.length`, length);
    await type(`shape.walls.${i}.turn`, turn);
  }
  // The walls stand there before a product is chosen.
  await page.waitForSelector('#drawing path.bare');
  await typeProduct();
  await planned();
  // By hand: 16 ft x 7 ft + 9 ft x 5 ft = 157 sq ft.
  expect(await roomArea()).toBe('157 sq ft');
  const drawnPieces = await page
    .locator('#drawing [data-piece]')
    .evaluateAll((all) => all.map((one) => (one as SVGElement).dataset.piece));
  await tabTo('fill-button');
  await page.keyboard.press('Enter');
  await page.waitForSelector('text=/3 tabs filled in [0-9.]+ s/');
  const written = await page.evaluate(() => window.sheet.written);
  expect(written.map(({ title }) => title)).toEqual(['Rooms', 'Cut list: Den', 'Floor plan: Den']);
  const list = unpackBlock(written[1]).cells.map((row) => row.map(({ value }) => ('text' in value ? value.text : '')));
  const from = list.findIndex((row) => row.includes('1-1'));
  expect(list.slice(from, from + drawnPieces.length).map((row) => row[1])).toEqual(drawnPieces);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => window.sheet.shown)).toEqual(['Cut list: Den']);
  expect(errors).toEqual([]);
});

describe('problems', () => {
  test('are not told of a form in which nothing is typed, and of a blank field once it was left after that', async () => {
    await open();
    await page.waitForTimeout(300);
    // Whoever opened the sidebar begins to type at once; looking round in it is no mistake.
    expect(await focusedId()).toBe('field-name');
    await page.locator('input[name="shape.kind"][value="rectangles"]').click();
    await page.locator('input[name="shape.kind"][value="rectangle"]').click();
    for (let i = 0; i < 6; i++) await page.keyboard.press('Tab');
    await page.waitForTimeout(300);
    expect(await page.locator('.problems:visible').count()).toBe(0);
    await field('name').fill('Den');
    await field('shape.length').focus();
    await page.keyboard.press('Tab');
    await problemAt('shape.length').waitFor();
    expect(await problemAt('shape.length').textContent()).toContain('Length is blank');
    expect(await page.locator('.problems:visible').count()).toBe(1);
  });

  test('stand at their field, are pointed to by it, and go when it is put right', async () => {
    await open();
    await type('shape.width', '12-6');
    await problemAt('shape.width').waitFor();
    expect(await problemAt('shape.width').textContent()).toContain('"12-6" is not a length');
    expect(await field('shape.width').getAttribute('aria-invalid')).toBe('true');
    expect(await field('shape.width').getAttribute('aria-describedby')).toBe('problem-shape.width');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(`12' 6`);
    await problemAt('shape.width').waitFor({ state: 'hidden' });
    expect(await field('shape.width').getAttribute('aria-invalid')).toBeNull();
  });

  test('are all told when the button is pressed, and the first has the keyboard', async () => {
    await open();
    await tabTo('fill-button');
    await page.keyboard.press('Enter');
    await page.waitForSelector('text=/Not filled yet/');
    expect(await page.locator('.problems:visible').count()).toBe(5);
    expect(await focusedId()).toBe('field-name');
    expect(await page.evaluate(() => window.sheet.written.length)).toBe(0);
  });

  test('that are put right take "not filled" with them', async () => {
    await open();
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/Not filled yet/');
    await fillPlain();
    expect(await page.locator('.told').first().textContent()).toBe('');
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.locator('summary', { hasText: 'Tax' }).click();
    await field('job.terms.tax').fill('a lot');
    await page.getByRole('button', { name: 'Fill the order' }).click();
    await page.locator('#job-fill .told', { hasText: 'Not filled yet' }).waitFor();
    await field('job.terms.tax').fill('8');
    await page.locator('#job-fill .told', { hasText: /^$/ }).waitFor({ state: 'attached' });
  });

  test('are heard, and not before the field is left', async () => {
    await open();
    const heard = () => page.locator('#announced').textContent();
    await type('shape.width', '12-6');
    await problemAt('shape.width').waitFor();
    expect(await heard()).toBe('');
    await page.keyboard.press('Tab');
    await expect.poll(heard).toContain('Width: "12-6" is not a length.');
    // All at once they are counted, not read out one by one.
    await page.locator('#fill-button').click();
    await expect.poll(heard).toMatch(/Room name is blank\..* more to fix\.$/);
  });

  test('at the last field in view come out from under the pane', async () => {
    await open();
    await page.setViewportSize({ width: 285, height: 640 });
    await field('name').fill('Den');
    await field('product.plankLength').focus();
    const hidden = () =>
      page.evaluate(() => {
        const box = document.getElementById('problem-product.plankLength')?.getBoundingClientRect();
        return (box?.bottom ?? 0) - (document.querySelector('main')?.getBoundingClientRect().bottom ?? 0);
      });
    // The field stands at the very edge of the pane, and so does its neighbour, which is next.
    await page.evaluate(() => {
      const box = document.getElementById('field-product.plankLength')?.getBoundingClientRect();
      const main = document.querySelector('main');
      if (box && main) main.scrollTop += box.bottom - main.getBoundingClientRect().bottom;
    });
    await page.keyboard.press('Tab');
    await problemAt('product.plankLength').waitFor();
    await expect.poll(hidden).toBeLessThanOrEqual(0);
  });

  test('of a section that is shut open it', async () => {
    await open();
    await page.locator('summary', { hasText: 'Rules' }).click();
    await field('rules.kerf').fill('a bit');
    await page.locator('summary', { hasText: 'Rules' }).click();
    await field('rules.kerf').waitFor();
    expect(await problemAt('rules.kerf').textContent()).toContain('Kerf');
  });
});

async function fillPlain(): Promise<void> {
  await field('name').fill('Plain');
  await field('shape.length').fill('12');
  await field('shape.width').fill('10');
  await field('product.plankLength').fill('48');
  await field('product.plankWidth').fill('6');
  await planned();
}

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
      window.sheet.failing = 'Cut list: Plain';
    });
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/did not answer.*Filled: Rooms.*try again/');
    expect(await field('shape.length').inputValue()).toBe('12');
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('of a page opened alone says that there is no spreadsheet, and everything else works', async () => {
    await open(null);
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
  await field('name').fill('New');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForSelector('text=/not saved/');
  await page.getByRole('button', { name: 'Open Old room all the same' }).click();
  await planned();
  expect(await field('name').inputValue()).toBe('Old room');
  expect(await field('product.name').inputValue()).toBe('Harbour oak');
  expect(await roomArea()).toBe('120 sq ft');
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
    await press('Open');
    await planned();
  }

  test('open as they stand in their tab now', async () => {
    await open({ rooms: saved(12) });
    await page.waitForSelector('#saved-room option', { state: 'attached' });
    await changeTab(saved(`13'`));
    await press('Open');
    await planned();
    expect(await field('shape.length').inputValue()).toBe(`13'`);
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
    await fillPlain();
    await field('name').fill('den');
    await press('Fill the tabs');
    await page.waitForSelector('text=/A room named den is saved already, with other entries: Length: 14/');
    await press('Write over it');
    await page.waitForSelector('text=/3 tabs filled/');
  });

  test('are renamed and removed', async () => {
    await openDen();
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
  const about = JSON.stringify({ plans: [{ rooms: ['plain'], planRooms: ['plain'], plan: 'old', pieces: 'old' }] });

  async function fillTicked(): Promise<void> {
    await open({ 'cut list/plain': list });
    await page.evaluate((text) => {
      window.sheet.tabs = [{ mark: 'cut list/plain', tab: 'Cut list: Plain', about: text }];
    }, about);
    await fillPlain();
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/Cut list: Plain: 1 piece is ticked. Of those, 1 would disappear or change size/');
  }
  const titles = () => page.evaluate(() => window.sheet.written.map(({ title }) => title));

  test('is left as it is, unless the person says so', async () => {
    await fillTicked();
    await page.getByRole('button', { name: 'Leave them as they are' }).click();
    await page.waitForSelector('text=/"Cut list: Plain" is left as it is: 1 piece is ticked in it/');
    expect(await titles()).toEqual(['Rooms']);
  });

  test('is filled with the new plan when the person says so, and keeps the tick at its foot', async () => {
    await fillTicked();
    await page.getByRole('button', { name: 'Fill all the same' }).click();
    await page.waitForSelector('text=/3 tabs filled.*at the bottom of "Cut list: Plain"/');
    expect(await titles()).toEqual(['Rooms', 'Cut list: Plain', 'Floor plan: Plain']);
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
  expect(titles).toEqual(['Rooms', 'Cut list: Hall + Plain', 'Floor plan: Hall + Plain']);
});

test('a piece opens its marking drawing, and Escape leads back to it', async () => {
  await open();
  await fillPlain();
  await page.locator('[data-piece="1-1"]').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Piece 2-1' }).waitFor();
  expect(await page.locator('dialog dt').allTextContents()).toContain('Length');
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
  expect(await page.evaluate(() => (document.activeElement as SVGElement).dataset.piece)).toBe('2-1');
});

test('other units change no number that is typed', async () => {
  await open();
  await fillPlain();
  await page.locator('input[name="units"][value="metric"]').check();
  expect(await field('shape.length').inputValue()).toBe('12 ft');
  await planned();
  // 120 sq ft are 11.148 m2 (NIST SP 811: 1 sq ft = 0.09290304 m2).
  await expect.poll(roomArea).toBe('11.15 m²');
});

test('the printed floor takes one page', async () => {
  await open();
  await fillPlain();
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.getByRole('button', { name: 'Enlarge or print' }).click();
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
});

/** In the page: what somebody who does not see it, or sees it badly, would miss. */
function shortcomings(): string[] {
  const found: string[] = [];
  const isSeen = (one: Element) => one.getClientRects().length > 0;
  for (const box of document.querySelectorAll<HTMLInputElement>('input, select')) {
    if (isSeen(box) && !box.labels?.length && !box.getAttribute('aria-label')) found.push(`no label: ${box.id}`);
  }
  for (const made of document.querySelectorAll('button')) {
    if (!(made.getAttribute('aria-label') ?? made.textContent ?? '').trim()) found.push('button without words');
  }
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  found.push(...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `id twice: ${id}`));
  for (const one of document.querySelectorAll('[aria-describedby], [aria-labelledby]')) {
    const named = `${one.getAttribute('aria-describedby') ?? ''} ${one.getAttribute('aria-labelledby') ?? ''}`;
    for (const id of named.split(' ')) if (id && !document.getElementById(id)) found.push(`points to nothing: ${id}`);
  }
  // Contrast as WCAG 2.1 defines it, 1.4.3: at least 4.5 to 1.
  const light = (color: string) => {
    const parts = (color.match(/[\d.]+/g) ?? []).slice(0, 3).map((part) => Number(part) / 255);
    const [r, g, b] = parts.map((part) => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (one: Element | null): string => {
    if (!one) return 'rgb(255, 255, 255)';
    const { backgroundColor } = getComputedStyle(one);
    return backgroundColor === 'rgba(0, 0, 0, 0)' ? ground(one.parentElement) : backgroundColor;
  };
  for (const one of document.querySelectorAll<HTMLElement>('body *:not(svg *)')) {
    const hasText = [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
    if (!hasText || !isSeen(one)) continue;
    const [a, b] = [light(getComputedStyle(one).color), light(ground(one))];
    if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5) found.push(`faint: ${one.textContent}`);
  }
  if (document.documentElement.scrollWidth > window.innerWidth) found.push('wider than the sidebar');
  const isHigh = window.innerHeight > 560;
  if (isHigh && document.documentElement.scrollHeight > window.innerHeight) found.push('a second scroll bar');
  for (const area of document.querySelectorAll<HTMLElement>('body *')) {
    const { overflowX, overflowY } = getComputedStyle(area);
    if (!isSeen(area) || !/auto|scroll/.test(overflowX + overflowY)) continue;
    const isWide = area.scrollWidth > area.clientWidth + 1;
    if (isWide && !area.matches('.enlarged-paper')) found.push(`cut off at the right: ${area.className}`);
    const isReached = area.tabIndex >= 0 || area.querySelector('button, input, select, [tabindex="0"]') !== null;
    const scrolls = isWide || area.scrollHeight > area.clientHeight + 1;
    if (scrolls && !isReached) found.push(`no key scrolls ${area.className || area.tagName}`);
  }
  const headings = [...document.querySelectorAll('h1')].filter((one) => isSeen(one) && !one.closest('[aria-hidden]'));
  if (headings.length !== 1) found.push(`${headings.length} headings of the page`);
  return found;
}

describe('everything has a name and can be read', () => {
  // A scroll bar that takes 15 of the 300 pixels; as high as a small laptop leaves it.
  beforeEach(() => page.setViewportSize({ width: 285, height: 640 }));

  test('on the page of a room, with problems told', async () => {
    await open();
    await page.locator('input[name="shape.kind"][value="rectangles"]').click();
    await page.locator('[id="add-cutouts"]').click();
    await page.locator('[id="add-doorways"]').click();
    await field('doorways.0.floor').selectOption('goes on');
    await field('rules.layDirection').selectOption('own');
    await page.locator('summary', { hasText: 'Rules' }).click();
    await page.locator('#fill-button').click();
    expect(await page.evaluate(shortcomings)).toEqual([]);
  });

  test('with a floor planned and the ways compared', async () => {
    await open();
    await fillPlain();
    await field('rules.layDirection').selectOption('best');
    await page.waitForSelector('.ways');
    expect(await page.evaluate(shortcomings)).toEqual([]);
    await page.locator('[data-piece="1-1"]').click();
    await page.getByRole('heading', { name: 'Piece 1-1' }).waitFor();
    expect(await page.evaluate(shortcomings)).toEqual([]);
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Enlarge or print' }).click();
    await page.getByRole('button', { name: 'Larger' }).click();
    await page.locator('dialog [data-piece="1-1"]').hover();
    expect(await page.evaluate(shortcomings)).toEqual([]);
  });

  test('with the tabs filled: the way to each of them is in view', async () => {
    await open();
    await fillPlain();
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/3 tabs filled/');
    expect(await page.evaluate(shortcomings)).toEqual([]);
    for (const way of await page.locator('.to-tab').all()) {
      const box = await way.boundingBox();
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(640);
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(285);
    }
    expect(await page.locator('.to-tab').count()).toBe(3);
  });

  test('on a page too low for two panes: what became of pressing a button comes into view', async () => {
    await open();
    await page.setViewportSize({ width: 285, height: 480 });
    await fillPlain();
    await page.locator('#fill-button').click();
    const told = page.locator('.told', { hasText: '3 tabs filled' });
    await told.waitFor();
    await expect.poll(async () => ((await told.boundingBox())?.y ?? 0) < 480 - 15).toBe(true);
    expect(await page.evaluate(shortcomings)).toEqual([]);
  });

  test('on the page of the whole job, all sections open', async () => {
    await open();
    await page.getByRole('button', { name: 'The whole job' }).click();
    for (const shut of await page.locator('#job-form summary').all()) await shut.click();
    // The form of a room, out of view, has a doorway as well.
    await page.evaluate(() => document.getElementById('add-doorways')?.click());
    for (const id of ['floors', 'trims', 'doorways', 'labour']) await page.locator(`[id="add-job.${id}"]`).click();
    expect(await page.evaluate(shortcomings)).toEqual([]);
    expect(await page.locator('#job-form fieldset.item').count()).toBe(4);
  });
});

describe('the saved job', () => {
  const savedJob = { ...emptyHouse('us'), currency: 'kr' };
  const cells = { job: blockValues(jobBlock(savedJob)) as unknown[][] };
  const currency = () => field('job.currency');

  // A click as a person makes it: on a button that is off as well.
  const pressSave = () => page.getByRole('button', { name: 'Save' }).click({ force: true });

  async function openSlowly(): Promise<void> {
    await open(cells);
    await page.evaluate(() => {
      window.sheet.delay = 700;
    });
    await page.getByRole('button', { name: 'The whole job' }).click();
  }

  test('is not written over with a blank one before it is open', async () => {
    await openSlowly();
    await pressSave();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
    await page.waitForTimeout(1000);
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
  });

  test('does not take the place of what is typed meanwhile, unless that is wanted', async () => {
    await openSlowly();
    await currency().fill('$');
    await page.waitForSelector('text=/saved in this spreadsheet already/');
    expect(await currency().inputValue()).toBe('$');
    await pressSave();
    await page.waitForTimeout(1000);
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
    await page.getByRole('button', { name: 'Open it' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
  });

  test('is saved over by what is typed when that is wanted', async () => {
    await openSlowly();
    await currency().fill('$');
    await page.getByRole('button', { name: 'Keep typing' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('text=/1 tab filled/');
    const [block] = await page.evaluate(() => window.sheet.written);
    expect(blockValues(unpackBlock(block))).toContainEqual(expect.arrayContaining(['Job, Currency sign', '$']));
  });

  test('is not written over where its tab was changed, unless that is wanted', async () => {
    await open(cells);
    await page.getByRole('button', { name: 'The whole job' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
    await page.evaluate(
      (job) => {
        window.sheet.cells.job = job;
      },
      blockValues(jobBlock({ ...savedJob, currency: 'sk' })) as unknown[][],
    );
    await pressSave();
    await page.waitForSelector('text=/changed in its tab since it was opened here: Job, Currency sign: sk/');
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
    await page.getByRole('button', { name: 'Open it as it is there' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('sk');
  });

  test('that cannot be read is asked for again', async () => {
    await open(cells);
    await page.waitForTimeout(50);
    await page.evaluate(() => {
      window.sheet.failingReads = 1;
    });
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.waitForSelector('text=/did not answer/');
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
  });
});

describe('long text', () => {
  const words = 'Moving the piano. ';

  test('is told at a field of a room, and not cut short', async () => {
    await open();
    await field('product.name').fill(words.repeat(12));
    // By hand: 12 times 18 letters.
    await page.waitForSelector('text=/Product has 216 characters/');
    expect(await field('product.name').inputValue()).toHaveLength(216);
  });

  test('of a list of the job is taken as far as the job takes it', async () => {
    await open();
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.locator('summary', { hasText: 'Homeowner' }).click();
    await field('job.homeowner.notIncluded').fill('painting; '.repeat(60));
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('text=/1 tab filled/');
    const [block] = await page.evaluate(() => window.sheet.written);
    const line = blockValues(unpackBlock(block)).find(([label]) => label === 'Homeowner, Not included');
    expect(String(line?.[1]).split('painting')).toHaveLength(61);
  });
});

test('a job that could not be opened again is not saved', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  const title = 'The job of all jobs. '.repeat(100);
  await page.locator('summary', { hasText: 'Homeowner' }).click();
  await field('job.homeowner.title').fill(title);
  await page.getByRole('button', { name: 'Save' }).click();
  // By hand: 100 times 21 letters.
  await page.waitForSelector('text=/Homeowner, Title has 2100 characters/');
  expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
});

test('items of the job change places by keyboard', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Other items' }).click();
  for (const name of ['Skip', 'Van']) {
    await page.locator('[id="add-job.extras"]').click();
    await page.keyboard.type(name);
  }
  await page.getByRole('button', { name: 'Move Item 2 up' }).press('Enter');
  expect(await field('job.extras.0.name').inputValue()).toBe('Van');
  expect(await focusedId()).toBe('up-job.extras-0');
  await page.keyboard.press('Enter');
  expect(await field('job.extras.0.name').inputValue()).toBe('Van');
});

test('boxes side by side stand level under labels of one line and of two', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Products' }).click();
  await page.locator('[id="add-job.floors"]').click();
  const [left, right] = await Promise.all(['misCuts', 'keep'].map((key) => field(`job.floors.0.${key}`).boundingBox()));
  expect(left?.x).toBeLessThan(right?.x ?? 0);
  expect(left?.y).toBe(right?.y);
});

test('the whole job is saved as typed', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Underlay' }).click();
  await page.locator('[id="field-job.underlay.width"]').fill('3.3');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.waitForSelector('text=/1 tab filled/');
  const [block] = await page.evaluate(() => window.sheet.written);
  const rows = blockValues(unpackBlock(block)).map((row) => row.slice(0, 2).map(String));
  expect(block.title).toBe('Job');
  expect(rows).toContainEqual(['Underlay, Width of the roll', '3.3']);
});
