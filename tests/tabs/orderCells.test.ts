/** What the cells of the order show, and what becomes of the totals when a person types into the coloured ones. */
import { beforeAll, describe, expect, test } from 'vitest';
import { amountOf } from '../../src/order/money';
import type { Order } from '../../src/order/order';
import { orderLine } from '../../src/order/orderLine';
import { formulaCell, type TabBlock } from '../../src/tabs/block';
import { orderBlock } from '../../src/tabs/order';
import { toPayIn } from '../../src/tabs/orderRead';
import type { TabAsRead } from '../../src/tabs/tabStore';
import { blockValues } from '../support/blockValues';
import { demoJob } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';
import {
  addressOf,
  type Changes,
  hasLibreOffice,
  recomputedByEngine,
  recomputedByLibreOffice,
  shownByEngine,
  shownByLibreOffice,
} from '../support/recomputed';
import { seededRandom } from '../support/seededRandom';

const order = demoOrder();
const block = orderBlock(order);

function rowOf(item: string, inBlock: TabBlock = block): number {
  return blockValues(inBlock).findIndex((row) => row[0] === item) + 1;
}

/** The sentence under the totals: the row after them. */
const verdictAt = (inBlock: TabBlock) => `A${rowOf('To pay', inBlock) + 1}`;

function formulaAddresses(inBlock: TabBlock): string[] {
  return inBlock.cells.flatMap((row, r) =>
    row.flatMap((cell, c) => (cell.value.kind === 'formula' ? [addressOf(r, c)] : [])),
  );
}

/** A number as it may be shown: whole, or with a point and two decimals or more; thousands apart by commas. */
const SHOWN_NUMBER = /^-?\d[\d,]*(\.\d{2,6})?$/;

function checkShown(shown: ReadonlyMap<string, string>): void {
  for (const line of order.lines) {
    const row = rowOf(line.item);
    // Measures are shown to two decimals, whatever the cell holds.
    const rounded = (number: number | null) => Math.round(100 * (number ?? 0)) / 100;
    const number = (address: string) => Number(shown.get(address)?.replace(/,/g, ''));
    expect([line.item, number(`J${row}`)]).toEqual([line.item, rounded(line.quantity)]);
    expect([line.item, number(`B${row}`)]).toEqual([line.item, rounded(line.packs)]);
    if (line.rounding === 'whole') expect(shown.get(`J${row}`)).toBe(String(line.quantity));
    if (line.rounding !== 'none') expect(shown.get(`B${row}`)).toBe(String(line.packs));
  }
  const boxesRow = rowOf('Beside area + 10 %') + 1;
  expect(shown.get(`B${boxesRow}`)).toBe(String(order.floors[0].tenPercent.boxes));
  for (const address of formulaAddresses(block)) {
    if (address !== verdictAt(block))
      expect([address, shown.get(address)]).toEqual([address, expect.stringMatching(SHOWN_NUMBER)]);
  }
}

describe('what the order shows', () => {
  test('counts as whole numbers and measures with their decimals, though an allowance in per cent goes into them', () => {
    checkShown(shownByEngine(block));
  });

  test('a formula without a format of its own is refused', () => {
    expect(() => formulaCell('=A1', 'General')).toThrow('Internal: =A1 has no format of its own.');
  });
});

/** Typed over cells of the demo order: where, what, and what the line then says in place of its total. */
const SPOILED: readonly (readonly [item: string, column: string, typed: number | string, said: string])[] = [
  ['Harbour oak', 'K', 0, 'check pack'],
  ['Harbour oak', 'K', -10, 'check pack'],
  ['Harbour oak', 'K', 'ten', 'check pack'],
  ['Harbour oak', 'K', '', 'missing'],
  ['Harbour oak', 'F', 'about 60', 'check needed'],
  ['Harbour oak', 'F', -60, 'check needed'],
  ['Harbour oak', 'F', '', 'missing'],
  ['Harbour oak', 'H', 'some', 'check extra'],
  ['Harbour oak', 'I', 'two', 'check extra'],
  ['Harbour oak', 'D', 'dear', 'check price'],
  ['Seam tape', 'K', 0, 'check pack'],
  ['Waste container', 'F', 'one', 'check needed'],
  ['Waste container', 'D', '', 'missing'],
  ['Tax on materials', 'D', 'none', 'check rate'],
  ['Margin', 'D', 'a fifth', 'check rate'],
];
const changesOf = ([item, column, typed]: (typeof SPOILED)[number]): Changes => ({
  [`${column}${rowOf(item)}`]: typed,
});
const ofPrice = orderBlock(demoOrder({ terms: { ...demoJob.terms, marginOf: 'price' } }));

function checkSpoiled(inBlock: TabBlock, row: number, said: string, shown: ReadonlyMap<string, string>): void {
  expect(shown.get(`E${row}`)).toBe(said);
  expect(shown.get(verdictAt(inBlock))).toBe(
    '1 line has no price, pack, quantity or rate that can be used: the total is too low.',
  );
  expect([...shown].filter(([, text]) => /^#|^Err:/.test(text))).toEqual([]);
  expect(shown.get(`E${rowOf('To pay', inBlock)}`)).toMatch(SHOWN_NUMBER);
}

describe('a coloured cell that cannot be reckoned with', () => {
  test.each(SPOILED)('%s, column %s, %j: the line says %s, the total that it is too low', (...spoiled) => {
    checkSpoiled(block, rowOf(spoiled[0]), spoiled[3], shownByEngine(block, changesOf(spoiled)));
  });

  test('a margin of the whole price is no margin', () => {
    const row = rowOf('Margin', ofPrice);
    checkSpoiled(ofPrice, row, 'check rate', shownByEngine(ofPrice, { [`D${row}`]: 1 }));
  });

  test('a blank allowance, extra or rate is none', () => {
    const row = rowOf('Harbour oak');
    const shown = shownByEngine(block, { [`H${row}`]: '', [`I${row}`]: '', [`D${rowOf('Margin')}`]: '' });
    expect(shown.get(`J${row}`)).toBe(String(order.floors[0].spares.planned));
    expect(shown.get(`E${rowOf('Margin')}`)).toBe('0.00');
    expect(shown.get(verdictAt(block))).toBe('Every line has a price.');
  });
});

test('what has no line at all keeps the order from saying that every line has a price', () => {
  // The study's doorway without its neighbour: no bar can be chosen for it.
  const undecided = orderBlock(demoOrder({ doorways: demoJob.doorways.slice(0, 3) }));
  const shown = shownByEngine(undecided);
  expect(shown.get(verdictAt(undecided))).toBe('The total is too low: see what is missing below.');
});

/** The exact product of two decimals, in hundredths, halves up; by whole numbers of any size. */
function exactCents(quantity: string, price: string): number {
  const [a, b] = [quantity, price].map((text) => {
    const [whole, decimals = ''] = text.split('.');
    return { n: BigInt(whole + decimals), places: decimals.length };
  });
  const scale = 10n ** BigInt(a.places + b.places);
  return Number((2n * 100n * a.n * b.n + scale) / (2n * scale));
}

/** Quantities and prices as typed; every other product is an exact half of a cent. */
function typedProducts(count: number): readonly (readonly [string, string])[] {
  const random = seededRandom(20261126);
  const below = (limit: number) => random.whole(0, limit - 1);
  const decimal = (digits: number, places: number) => (digits / 10 ** places).toFixed(places);
  const any = Array.from({ length: count }, (): readonly [string, string] => [
    decimal(below(10 ** (2 + below(4))), below(3)),
    decimal(below(10 ** (3 + below(4))), 2 + below(3)),
  ]);
  const halves = Array.from({ length: count }, (): readonly [string, string] => [
    String(2 * below(500) + 1),
    decimal(10 * below(10 ** (2 + below(4))) + 5, 3),
  ]);
  return [['3', '101.115'], ['1', '1.005'], ...any, ...halves];
}

describe('counts that come out whole', () => {
  // In doubles 100 x 1.1 is 110.00000000000001, 6.9 / 2.3 is 3.0000000000000004 and 0.1 + 0.2 is 0.30000000000000004.
  const whole = { part: 'other', reason: '', unit: '' } as const;
  const lines = [
    orderLine({ ...whole, item: 'Planks', basis: 100, allowance: 0.1, pack: 10, price: 0.1, rounding: 'whole' }),
    orderLine({ ...whole, item: 'Tape', basis: 6.9, pack: 2.3, price: 0.1, rounding: 'packs' }),
    orderLine({ ...whole, item: 'Hours', basis: 0.1 + 0.2, price: 1, rounding: 'none' }),
  ];
  const inTab = orderBlock({ ...order, lines, floors: [] });
  const values = recomputedByEngine(inTab);
  const at = (column: string, item: string) => values.get(`${column}${rowOf(item, inTab)}`);

  test('100 and ten per cent are 110 and 11 tens, 6.9 is three times 2.3, 0.1 and 0.2 are 0.3', () => {
    expect([at('J', 'Planks'), at('B', 'Planks')]).toEqual([110, 11]);
    expect(at('B', 'Tape')).toBe(3);
    expect(at('J', 'Hours')).toBe(0.3);
    expect(lines.map(({ quantity, packs }) => [quantity, packs])).toEqual([
      [110, 11],
      [6.9, 3],
      [0.3, 0.3],
    ]);
  });

  test('totals are whole cents: 1.10, 0.30 and 0.30 are 1.70', () => {
    expect(['Planks', 'Tape', 'Hours'].map((item) => at('E', item))).toEqual([1.1, 0.3, 0.3]);
    expect(at('E', 'Materials')).toBe(1.7);
  });
});

test('more boxes than the line buys, and the money for them, are counted from the line', () => {
  // Half as many planks again for mis-cuts: the rule then orders fewer boxes, and a turned sign shows.
  const careless = demoOrder({ floors: demoJob.floors.map((floor) => ({ ...floor, misCuts: '50%' })) });
  const { ruleBoxes, boxes } = careless.floors[0].tenPercent;
  if (ruleBoxes === null || boxes === null) throw new Error('the demo has both');
  expect(ruleBoxes).toBeLessThan(boxes);
  const inTab = orderBlock(careless);
  const [row, line] = [rowOf('Beside area + 10 %', inTab) + 1, rowOf('Harbour oak', inTab)];
  const values = recomputedByEngine(inTab);
  expect(values.get(`D${row}`)).toBe(ruleBoxes - boxes);
  const price = Number(values.get(`D${line}`));
  expect(values.get(`E${row}`)).toBeCloseTo((ruleBoxes - boxes) * price, 9);
});

describe('what an order comes to, read from its cells as they stand', () => {
  const cells = (total: unknown, headings = ['Item', 'To buy', 'Pack', 'Price €', 'Total €', 'Needed', 'Unit']) => [
    ['Order'],
    headings,
    headings.map((heading) => (heading.startsWith('Total') ? 20 : 1)),
    headings.map((heading, i) => (i === 0 ? 'To pay' : heading.startsWith('Total') ? total : 7)),
    headings.map((heading, i) => (i === 0 ? 'To pay' : heading.startsWith('Total') ? 1 : 7)),
  ];

  // 19.99 x 100 is 1998.9999999999998 in doubles.
  test.each([
    [3941.05, 394_105],
    [19.99, 1999],
    [1.234, 123],
    [0, 0],
    ['check rate', null],
    ['', null],
  ])('%j is %j cents', (total, cents) => {
    expect(toPayIn(cells(total) as TabAsRead['cells'])).toBe(cents);
  });

  test('in whichever column the totals stand, with a currency or without; in the fifth where no heading tells', () => {
    const older = ['Item', 'Needed', 'Unit', 'Totally', 'Price', 'To buy', 'Total'];
    expect(toPayIn(cells(12.5, older) as TabAsRead['cells'])).toBe(1250);
    expect(toPayIn([['To pay', 1, 2, 3, 4.5, 6]])).toBe(450);
    expect(
      toPayIn([
        ['Item', 'Total'],
        ['To pay', 1, 2, 3, 4.5, 6],
      ]),
    ).toBe(450);
  });

  test('nothing where there is no such total', () => {
    expect(toPayIn([])).toBeNull();
    expect(
      toPayIn([
        ['Item', 'Unit', 'Total'],
        ['Cost', '', 3],
      ]),
    ).toBeNull();
  });

  test('as the tab shows it', () => {
    const values = recomputedByEngine(block);
    const filled = block.cells.map((row, r) =>
      row.map((cell, c) => (cell.value.kind === 'formula' ? values.get(addressOf(r, c)) : blockValues(block)[r][c])),
    );
    expect(toPayIn(filled as TabAsRead['cells'])).toBe(order.totals.toPay);
  });
});

describe('money to the cent', () => {
  const products = typedProducts(600);
  const lines = products.map(([quantity, price], i) =>
    orderLine({
      part: 'other',
      item: `Item ${i}`,
      reason: '',
      basis: Number(quantity),
      unit: '',
      price: Number(price),
      rounding: 'none',
    }),
  );
  const many: Order = { ...order, lines, floors: [] };
  const manyBlock = orderBlock(many);
  const totalsAt = lines.map((line) => `E${rowOf(line.item, manyBlock)}`);
  const exact = products.map(([quantity, price]) => exactCents(quantity, price));

  test('the sum by hand: 3 x 101.115 is 303.345, 303.35', () => {
    expect(exactCents('3', '101.115')).toBe(30_335);
    expect(amountOf(3, 101.115)).toBe(30_335);
  });

  test('amounts are those of the exact decimals, in the page and in the tab', () => {
    const values = recomputedByEngine(manyBlock);
    expect(lines.map((line) => line.total)).toEqual(exact);
    expect(totalsAt.map((address) => Number(values.get(address)).toFixed(2))).toEqual(
      exact.map((cents) => (cents / 100).toFixed(2)),
    );
  });

  test.skipIf(!hasLibreOffice)(
    'and in LibreOffice (skipped only where soffice is not installed)',
    async () => {
      const [values] = await recomputedByLibreOffice([{ block: manyBlock }]);
      expect(totalsAt.map((address) => Number(values.get(address)).toFixed(2))).toEqual(
        exact.map((cents) => (cents / 100).toFixed(2)),
      );
    },
    300_000,
  );
});

describe.skipIf(!hasLibreOffice)('the same in LibreOffice (skipped only where soffice is not installed)', () => {
  let shown: readonly ReadonlyMap<string, string>[] = [];

  beforeAll(async () => {
    const spoiled = SPOILED.map((one) => ({ block, changes: changesOf(one) }));
    const margin = { block: ofPrice, changes: { [`D${rowOf('Margin', ofPrice)}`]: 1 } };
    shown = await shownByLibreOffice([{ block }, margin, ...spoiled]);
  }, 300_000);

  test('counts are shown as whole numbers, measures with their decimals', () => checkShown(shown[0]));

  test('a margin of the whole price is no margin', () => {
    checkSpoiled(ofPrice, rowOf('Margin', ofPrice), 'check rate', shown[1]);
  });

  test.each(SPOILED.map((spoiled, i) => [...spoiled, i] as const))(
    '%s, column %s, %j: the line says %s',
    (item, _column, _typed, said, i) => checkSpoiled(block, rowOf(item), said, shown[i + 2]),
  );
});
