/** Pages that are handed over: set out for A4 and Letter, and free of what is private. */
import { describe, expect, test } from 'vitest';
import type { TabBlock } from '../../src/tabs/block';
import { changeOrderBlock } from '../../src/tabs/changeOrder';
import { tableRows } from '../../src/tabs/handedOver';
import { homeownerBlock } from '../../src/tabs/homeowner';
import { blanksBefore, onPages, PAGE_PIXELS } from '../../src/tabs/pages';
import { purchaseListBlock } from '../../src/tabs/purchaseList';
import { blockTexts, blockValues } from '../support/blockValues';
import { demoJob, demoRooms } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';
import { seededRandom } from '../support/seededRandom';

/** Heights between margins of 3/4 in at 96 pixels an inch. ANSI size A: 8.5 by 11 in. ISO 216, A4: 210 by 297 mm. */
const PAPERS = { letter: (11 - 1.5) * 96, A4: (297 / 25.4 - 1.5) * 96 };
const WIDTHS = { letter: (8.5 - 1.5) * 96, A4: (210 / 25.4 - 1.5) * 96 };

function rowHeights({ cells, heights = [] }: Pick<TabBlock, 'cells' | 'heights'>): number[] {
  const pixels = cells.map(() => 21);
  for (const run of heights) pixels.fill(run.pixels, run.firstRowNumber - 1, run.firstRowNumber - 1 + run.rowCount);
  return pixels;
}

/** The page each row is printed on: a row that does not fit goes to the next, as every spreadsheet does it. */
function pagesOf(pixels: readonly number[], paper: number): number[] {
  let [page, used] = [0, 0];
  return pixels.map((height) => {
    if (used + height > paper) [page, used] = [page + 1, 0];
    used += height;
    return page;
  });
}

const order = demoOrder();
const page = homeownerBlock(order, { locale: 'en_US', alternatives: [] });

describe.each(Object.entries(PAPERS))('the homeowner’s page on %s', (paper, height) => {
  test('is as wide as the paper at full size', () => {
    const width = page.columnWidths.reduce((sum, column) => sum + column, 0);
    expect(width).toBeLessThanOrEqual(WIDTHS[paper as 'A4']);
  });

  test('no plan breaks over two pages, and a caption stands on the page of its drawing', () => {
    const pages = pagesOf(rowHeights(page), height);
    const isDrawn = (row: number) => page.cells[row].some(({ look }) => look.background === '#3d4441');
    const captions = blockValues(page).flatMap((row, r) =>
      /^[\w ]+: (Harbour oak|Ferry ash)$/.test(String(row[0])) ? [r] : [],
    );
    expect(captions).toHaveLength(demoRooms.length);
    captions.forEach((from, i) => {
      const to = captions[i + 1] ?? page.cells.length;
      const drawn = Array.from({ length: to - from }, (_, k) => from + k).filter(isDrawn);
      expect(drawn.length).toBeGreaterThan(15);
      expect(new Set([from, ...drawn].map((row) => pages[row])).size).toBe(1);
    });
  });

  test('parts of any height stay whole', () => {
    const random = seededRandom(7);
    const part = (pixels: number, name: string) =>
      [{ cells: [{ value: { kind: 'text', text: name }, look: page.cells[0][0].look }], pixels }] as const;
    const parts = Array.from({ length: 60 }, (_, i) => {
      const rows = Array.from({ length: random.whole(1, 30) }, () => random.whole(9, Math.floor(PAGE_PIXELS / 30)));
      return rows.map((pixels) => part(pixels, `part ${i}`)[0]);
    });
    const set = onPages(parts, () => []);
    const pages = pagesOf(rowHeights({ cells: set.rows, heights: set.heights }), height);
    parts.forEach((_, i) => {
      const own = set.rows.flatMap(([cell], r) =>
        cell?.value.kind === 'text' && cell.value.text === `part ${i}` ? [pages[r]] : [],
      );
      expect(own.length).toBe(parts[i].length);
      expect(new Set(own).size).toBe(1);
    });
    expect(new Set(pages).size).toBeGreaterThan(20);
  });
});

// Lying pages are 8.5 in and 210 mm high, less margins of 3/4 in; the headings of the order take some 100 pixels of each.
test.each([8.5, 210 / 25.4])('blank rows keep the totals whole on a lying page %f in high', (inches) => {
  const body = (inches - 1.5) * 96 - 100;
  for (let rows = 1; rows < 60; rows++) {
    const blanks = blanksBefore(rows * 21, 214);
    const pages = pagesOf(new Array(rows + blanks + 10).fill(21), body).slice(-10);
    expect([rows, ...new Set(pages)]).toHaveLength(2);
    expect(blanks).toBeLessThan(15);
  }
});

describe('the homeowner’s page', () => {
  const texts = blockTexts(page).flat();

  test('has no text under ten points', () => {
    const sizes = page.cells
      .flat()
      .filter(({ value }) => value.kind === 'text' && value.text !== '')
      .map(({ look }) => look.size);
    expect(Math.min(...sizes)).toBe(10);
  });

  test('has a letterhead, two lines to sign, the deposit and the rest, and the walls of a room that is no rectangle', () => {
    expect(texts[0]).toBe('Sample Floors');
    expect(texts).toContain('A. Homeowner, date');
    expect(texts).toContain('Sample Floors, date');
    const { toPay } = order.totals;
    const money = (cents: number) => `$${(cents / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`;
    const first = Math.round(toPay / 4);
    expect(texts).toContain(
      `Deposit on signing: 25 %, ${money(first)}. The rest, ${money(toPay - first)}, when the floor is laid.`,
    );
    expect(texts.join(' ')).toContain(
      `Walls, clockwise from the upper left corner: 18' 0", 9' 6", 6' 0", 5' 0", 3' 0", 2' 6"`,
    );
  });

  test('by room the prices stand in the table and add up to the sum', () => {
    const homeowner = { ...demoJob.homeowner, priceAs: 'by room' as const };
    const byRoom = blockTexts(homeownerBlock(demoOrder({ homeowner }), { locale: 'en_US', alternatives: [] }));
    const prices = byRoom.flatMap((row) => (demoRooms.some(({ name }) => name === row[0]) ? [row[4]] : []));
    const cents = prices.map((price) => Math.round(Number(price.replace(/[$,]/g, '')) * 100));
    expect(cents).toHaveLength(3);
    expect(cents.reduce((sum, price) => sum + price, 0)).toBe(order.totals.toPay);
  });

  test('alternatives stand beside the price of the job, in dates of the country', () => {
    const alternatives = [
      { name: 'Quarry ash', toPay: 512_345 },
      { name: 'Pier oak', toPay: null },
    ];
    const rows = blockTexts(homeownerBlock(order, { locale: 'de_DE', alternatives }));
    const names = rows.findIndex((row) => row.includes('Quarry ash'));
    expect(rows[names]).toEqual(['Harbour oak, Ferry ash', 'Quarry ash', 'Pier oak']);
    expect(rows[names + 1].slice(1)).toEqual(['$5,123.45', 'not priced yet']);
    expect(rows.flat()).toContain('Boxes arrive by Fri 04.12.2026 and stay in the rooms.');
  });
});

describe('a change order', () => {
  const change = { number: '2', oldPrice: 4100, why: ['One more doorway.'] };

  test('says the old price, the new one, the difference and why; there is none without an old price', () => {
    expect(changeOrderBlock(order, 'en_US')).toBeNull();
    const rows = blockTexts(changeOrderBlock(demoOrder({ change }), 'en_US') as TabBlock);
    const { toPay } = order.totals;
    const money = (cents: number) => `$${(cents / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',')}`;
    expect(rows).toContainEqual(['Price agreed before', '$4,100.00']);
    expect(rows).toContainEqual(['New price', money(toPay)]);
    expect(rows).toContainEqual(['More by', money(toPay - 410_000)]);
    expect(rows.flat()).toContain('One more doorway.');
  });
});

describe('a purchase list', () => {
  const block = purchaseListBlock(order, 'en_US');
  const rows = blockValues(block);

  test('has every material once, under its supplier, with article, packs and weight', () => {
    const oak = rows.find((row) => row[0] === 'Harbour oak');
    const boxes = order.lines[0].packs as number;
    // 33 lb a box, see demoHouse.ts.
    expect(oak).toEqual(['Harbour oak', 'HO-8', boxes, 'box of 10 planks', 'lot B27', `${boxes * 33} lb`]);
    const items = order.lines.filter(({ part }) => part !== 'labour').map(({ item }) => item);
    const listed = rows.map((row) => row[0]);
    for (const item of items) expect(listed.filter((name) => name === item)).toHaveLength(1);
    expect(listed.indexOf('Example Timber Yard')).toBeLessThan(listed.indexOf('Felt underlay'));
  });

  test('has no work, no formula, no money and nothing of the rooms', () => {
    const all = rows.flat().map(String).join(' | ');
    for (const word of ['Lay floors', '$', 'Bedroom', 'Study', 'Price']) expect(all).not.toContain(word);
    const prices = order.lines
      .flatMap(({ price, total }) => [price ?? 0, (total ?? 0) / 100])
      .filter((price) => price > 0);
    expect(rows.flat().filter((value) => prices.includes(value as number))).toEqual([]);
    expect(block.cells.flat().filter(({ value }) => value.kind === 'formula')).toEqual([]);
  });
});

test('what is too long for a column of a table goes on below, and no word is lost', () => {
  const long = 'Harbour oak with a name that no label of a box has room for, engineered wood';
  // 30 cells of 8 pixels are 240: 40 letters of 6 pixels.
  const rows = tableRows(
    [0, 30],
    [
      ['Product', 'Size'],
      [long, `12' by 10'`],
    ],
  ).map(({ cells }) => cells.flatMap(({ value }) => ('text' in value ? [value.text] : [])));
  expect(rows).toHaveLength(3);
  expect(
    rows
      .slice(1)
      .map(([first]) => first.trim())
      .join(' '),
  ).toBe(long);
  for (const [first] of rows) expect(first.length).toBeLessThanOrEqual(40);
  expect(rows.flat().filter((text) => text.startsWith('12'))).toHaveLength(1);
});
