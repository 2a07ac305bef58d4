import { describe, expect, test } from 'vitest';
import { homeownerPage } from '../../src/order/homeowner';
import type { HouseEntry } from '../../src/order/houseEntry';
import type { Order } from '../../src/order/order';
import { PIECE_TINTS } from '../../src/tabs/floorPlan';
import { homeownerBlock } from '../../src/tabs/homeowner';
import { countryDay } from '../../src/takeoff/text/countryDate';
import { blockTexts } from '../support/blockValues';
import { demoJob, demoRooms } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';

const IN_US = { locale: 'en_US', alternatives: [] };
const pageOf = (shown: Order) => homeownerBlock(shown, IN_US);
const order = demoOrder();
const block = pageOf(order);
const texts = blockTexts(block).flat();

test.each(['', 0] as const)('a deposit of %j is none', (deposit) => {
  const without = pageOf(demoOrder({ homeowner: { ...demoJob.homeowner, deposit } }));
  expect(texts.some((text) => text.startsWith('Deposit'))).toBe(true);
  expect(
    blockTexts(without)
      .flat()
      .filter((text) => text.startsWith('Deposit')),
  ).toEqual([]);
});

/** Every number a person typed as a price or rate, wherever it stands in the job. */
function typedPrices(entry: HouseEntry): number[] {
  const found: number[] = [];
  const visit = (value: unknown, key: string): void => {
    if (['price', 'rate', 'margin'].includes(key)) found.push(Number(value));
    if (typeof value === 'object' && value !== null) {
      for (const [name, inner] of Object.entries(value)) visit(inner, /^\d+$/.test(name) ? key : name);
    }
  };
  visit(entry, '');
  return [...found, ...demoRooms.map((room) => Number(room.product.pricePerBox))];
}

/** Every figure of the job that is not the homeowner's business, as it might be written. */
function privateFigures({ lines, totals, hours }: Order): readonly number[] {
  const { materials, labour, materialsTax, cost, margin } = totals;
  const cents = [...lines.map((line) => line.total ?? 0), materials, labour, materialsTax, cost, margin];
  const perHour = hours.map((room) => room.hours ?? 0);
  const allHours = perHour.reduce((sum, one) => sum + one, 0);
  return [...typedPrices(demoJob), ...cents.map((amount) => amount / 100), ...perHour, allHours];
}

/** All numbers that stand in a text, `1,234.5` as 1234.5. */
function numbersIn(text: string): number[] {
  return (text.match(/\d[\d,]*(?:\.\d+)?/g) ?? []).map((number) => Number(number.replace(/,/g, '')));
}

describe('the homeowner tab', () => {
  test('holds text and colours only: no formula, no number, no box to tick', () => {
    const kinds = new Set(block.cells.flat().map((cell) => cell.value.kind));
    expect([...kinds].sort()).toEqual(['blank', 'text']);
  });

  test('shows no private figure of the job, in any cell', () => {
    const shown = new Set(texts.flatMap(numbersIn));
    const figures = privateFigures(order);
    expect(figures.length).toBeGreaterThan(30);
    // A 0 tells nothing: 18' 0" has one too.
    expect(figures.filter((figure) => figure !== 0 && shown.has(figure))).toEqual([]);
  });

  test('the search would find a figure that leaked', () => {
    const leaked = pageOf({ ...order, totals: { ...order.totals, toPay: order.totals.cost } });
    const shown = new Set(blockTexts(leaked).flat().flatMap(numbersIn));
    expect(privateFigures(order).some((figure) => figure !== 0 && shown.has(figure))).toBe(true);
  });

  test('says nothing of cost, margin, rates or hours, and names no trim or underlay prices', () => {
    const all = texts.join(' ').toLowerCase();
    for (const word of ['margin', 'cost', 'labour', 'rate', 'mis-cut', 'spare', 'per hour'])
      expect(all).not.toContain(word);
  });

  test('shows title, addresses, rooms with their products, price, dates and what is not included', () => {
    for (const line of [
      'New floors for the Example house',
      'For A. Homeowner',
      'By Sample Floors, call 555-0100',
      'Bedroom',
      `12' 6" by 11' 3 1/2"`,
      '141.1 sq ft',
      'Harbour oak, laminate',
      'Quote Q-2026-14 of Mon, Nov 30, 2026, valid until Thu, Dec 31, 2026.',
      'Boxes arrive by Fri, Dec 4, 2026 and stay in the rooms.',
      'Sweeping up.',
      'Work: Lay floors, Fit trim, Shorten doors.',
      'Painting.',
      '=Moving pianos',
      'Empty the closet.',
    ]) {
      expect(texts).toContain(line);
    }
    const price = (order.totals.toPay / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',');
    expect(texts).toContain(`$${price}`);
    expect(texts).toContain('For everything on this page.');
  });

  test('draws every room in colours with its sizes, without the numbers of the saw', () => {
    const colours = new Set(block.cells.flat().map((cell) => cell.look.background));
    expect(PIECE_TINTS.flat().every((tint) => colours.has(tint))).toBe(true);
    for (const words of [
      'Bedroom: Harbour oak',
      'Study: Ferry ash',
      'Living room with closet: Harbour oak',
      `9' 8"`,
      `8' 1"`,
    ])
      expect(texts).toContain(words);
    // By hand from the walls of the demo: 16 ft and 2 ft more with the closet beside it; see demoRoom.ts.
    expect(texts.filter((line) => /^\d+-\d+$/.test(line))).toEqual([]);
  });

  test('no line runs off the page: text is broken before the last column', () => {
    const right = block.columnWidths.reduce((sum, pixels) => sum + pixels, 0);
    for (const row of block.cells) {
      row.forEach(({ value, look }, column) => {
        if (value.kind !== 'text' || value.text === '' || look.align !== 'left') return;
        const room = right - column * block.columnWidths[0];
        expect([value.text, value.text.length * 0.6 * look.size <= room]).toEqual([value.text, true]);
      });
    }
  });

  test('a price that is not complete is not shown', () => {
    const incomplete = pageOf(demoOrder({ tape: { ...demoJob.tape, price: '' } }));
    const shown = blockTexts(incomplete).flat();
    expect(shown).toContain('The price follows: not every item is priced yet.');
    expect(shown.some((line) => line.includes('$'))).toBe(false);
  });

  test('a price without work says so, whatever dates are entered', () => {
    const shown = blockTexts(pageOf(demoOrder({ labour: [] }))).flat();
    expect(shown.some((line) => /^For the materials alone: the work is not in this price\.$/.test(line))).toBe(true);
    expect(shown.some((line) => line.includes('everything on this page'))).toBe(false);
  });

  test.each([
    ['', 'none found', /^There may be asbestos .*not part of this job\.$/, /^A test found no lead/],
    ['to be tested', 'found', /^There may be asbestos .*is tested before/, /^A test found lead .*not part of this job/],
  ] as const)(
    'tests are said to be done only when entered: asbestos %j, lead %j',
    (asbestosTest, leadTest, asbestos, lead) => {
      const site = { ...demoJob.site, asbestosTest, leadTest };
      const { lines } = homeownerPage(demoOrder({ site }), (day) => countryDay(day, 'en_US')).find(
        ({ heading }) => heading === 'Good to know',
      ) ?? {
        lines: [],
      };
      for (const said of [asbestos, lead]) expect(lines.filter((line) => said.test(line))).toHaveLength(1);
      expect(lines.join(' ')).not.toContain('they are tested first');
    },
  );

  // Common practice: a screw pins a floating floor; one that is nailed or glued is held by what lies under it.
  test.each([
    ['floating', /: do not fix cabinets or door stops through the floor\.$/, 0],
    ['nailed', /^The floor needs its gap at every wall to move\.$/, 0],
    ['glued', /^The floor needs its gap at every wall to move\.$/, 1],
  ] as const)('a %s floor has the cautions of its kind', (fastening, gap, glue) => {
    const floors = demoJob.floors.map((floor) => ({ ...floor, fastening }));
    const shown = blockTexts(pageOf(demoOrder({ floors }))).flat();
    expect(shown.filter((line) => line.includes('needs its gap') && gap.test(line))).toHaveLength(1);
    expect(shown.filter((line) => line.startsWith('Adhesive smells: air the rooms'))).toHaveLength(glue);
  });

  test('the price can be left out', () => {
    const shown = blockTexts(pageOf(demoOrder({ homeowner: { ...demoJob.homeowner, showPrice: 'no' } }))).flat();
    expect(shown).not.toContain('Price');
    expect(shown.some((line) => line.includes('$'))).toBe(false);
  });

  test('tax on the price has its line; tax on materials, which would tell their cost, has none', () => {
    expect(texts.some((line) => line.includes('tax'))).toBe(false);
    const taxed = demoOrder({ terms: { ...demoJob.terms, taxOn: 'price' } });
    const shown = blockTexts(pageOf(taxed)).flat();
    expect(shown.some((line) => /^Before tax \$[\d,.]+, tax \$[\d,.]+\.$/.test(line))).toBe(true);
  });
});

test('planks without a name leave no comma or colon behind', () => {
  const laid = order.laid.map((takeoff) => ({
    ...takeoff,
    entry: { ...takeoff.entry, product: { ...takeoff.entry.product, name: '' } },
  }));
  const rooms = order.rooms.map((room) => ({ ...room, product: { ...room.product, name: '' } }));
  const shown = blockTexts(pageOf({ ...order, laid, rooms })).flat();
  // The planks of demoHouse.ts.
  expect(shown).toContain('laminate, 47 1/4" by 7 1/2"');
  expect(shown).toContain('Planks: laminate, 47 1/4" by 7 1/2"; engineered wood, 48" by 5".');
  expect(shown.filter((text) => /^,|:\s*$/.test(text) && / room|^Bedroom|^Study|^,/.test(text))).toEqual([]);
});
