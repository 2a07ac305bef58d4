import { describe, expect, test } from 'vitest';
import { homeownerPage } from '../../src/order/homeowner';
import type { HouseEntry } from '../../src/order/houseEntry';
import type { Order } from '../../src/order/order';
import { homeownerBlock } from '../../src/tabs/homeowner';
import { blockTexts } from '../support/blockValues';
import { demoJob, demoRooms } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';

const order = demoOrder();
const block = homeownerBlock(order);
const texts = blockTexts(block).flat();

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
    expect(figures.filter((figure) => shown.has(figure))).toEqual([]);
  });

  test('the search would find a figure that leaked', () => {
    const leaked = homeownerBlock({ ...order, totals: { ...order.totals, toPay: order.totals.cost } });
    const shown = new Set(blockTexts(leaked).flat().flatMap(numbersIn));
    expect(privateFigures(order).some((figure) => shown.has(figure))).toBe(true);
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
      'Bedroom: Harbour oak, laminate, 141.1 sq ft',
      'Valid until Thu 2026-12-31.',
      'Boxes arrive by Fri 2026-12-04 and stay in the rooms.',
      'Painting.',
      '=Moving pianos',
      'Empty the closet.',
    ]) {
      expect(texts).toContain(line);
    }
    const price = (order.totals.toPay / 100).toFixed(2).replace(/\B(?=(\d{3})+\.)/g, ',');
    expect(texts).toContain(`$${price}, for everything on this page.`);
  });

  test('draws every room in colours, without the numbers of the saw', () => {
    const drawn = block.cells.slice((block.heightRows?.firstRowNumber ?? 0) - 1);
    const colours = new Set(drawn.flat().map((cell) => cell.look.background));
    expect(colours.size).toBeGreaterThanOrEqual(5);
    const names = drawn.flat().filter((cell) => cell.value.kind === 'text');
    expect(names.map((cell) => (cell.value as { text: string }).text)).toEqual(demoRooms.map((room) => room.name));
  });

  test('no line runs off the page: text is broken before the last column', () => {
    const width = block.columnWidths.reduce((sum, pixels) => sum + pixels, 0);
    for (const line of texts) expect(line.length * 6).toBeLessThan(width);
  });

  test('a price that is not complete is not shown', () => {
    const incomplete = homeownerBlock(demoOrder({ tape: { ...demoJob.tape, price: '' } }));
    const shown = blockTexts(incomplete).flat();
    expect(shown).toContain('The price follows: not every item is priced yet.');
    expect(shown.some((line) => line.includes('$'))).toBe(false);
  });

  test('a price without work says so, whatever dates are entered', () => {
    const shown = blockTexts(homeownerBlock(demoOrder({ labour: [] }))).flat();
    expect(
      shown.some((line) => /^\$[\d,.]+, for the materials alone: the work is not in this price\.$/.test(line)),
    ).toBe(true);
    expect(shown.some((line) => line.includes('everything on this page'))).toBe(false);
  });

  test.each([
    ['', 'none found', /^There may be asbestos .*not part of this job\.$/, /^A test found no lead/],
    ['to be tested', 'found', /^There may be asbestos .*is tested before/, /^A test found lead .*not part of this job/],
  ] as const)(
    'tests are said to be done only when entered: asbestos %j, lead %j',
    (asbestosTest, leadTest, asbestos, lead) => {
      const site = { ...demoJob.site, asbestosTest, leadTest };
      const { lines } = homeownerPage(demoOrder({ site })).find(({ heading }) => heading === 'Good to know') ?? {
        lines: [],
      };
      for (const said of [asbestos, lead]) expect(lines.filter((line) => said.test(line))).toHaveLength(1);
      expect(lines.join(' ')).not.toContain('they are tested first');
    },
  );

  test('the price can be left out', () => {
    const shown = blockTexts(
      homeownerBlock(demoOrder({ homeowner: { ...demoJob.homeowner, showPrice: 'no' } })),
    ).flat();
    expect(shown).not.toContain('Price');
    expect(shown.some((line) => line.includes('$'))).toBe(false);
  });

  test('tax on the price has its line; tax on materials, which would tell their cost, has none', () => {
    expect(texts.some((line) => line.includes('tax'))).toBe(false);
    const taxed = demoOrder({ terms: { ...demoJob.terms, taxOn: 'price' } });
    const shown = blockTexts(homeownerBlock(taxed)).flat();
    expect(shown.some((line) => /^Before tax \$[\d,.]+, tax \$[\d,.]+\.$/.test(line))).toBe(true);
  });
});
