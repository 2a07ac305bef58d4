import { beforeAll, describe, expect, test } from 'vitest';
import type { Order } from '../../src/order/order';
import type { TabBlock } from '../../src/tabs/block';
import { orderBlock } from '../../src/tabs/order';
import { blockTexts, blockValues } from '../support/blockValues';
import { demoJob } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';
import { type Changes, hasLibreOffice, recomputedByEngine, recomputedByLibreOffice } from '../support/recomputed';

/** Row numbers of lines and totals, by the text in the first column, the first with that text. */
function rowsOf(block: TabBlock): ReadonlyMap<string, number> {
  const rows = blockValues(block).map((row, i) => [String(row[0]), i + 1] as const);
  return new Map([...rows].reverse());
}

function cents(value: unknown): number {
  return Math.round(Number(value) * 100);
}

/** Totals of a recomputed tab, in cents, beside those of the order. */
function compareTotals(order: Order, block: TabBlock, values: ReadonlyMap<string, unknown>): void {
  const rows = rowsOf(block);
  const total = (name: string) => cents(values.get(`E${rows.get(name)}`));
  for (const line of order.lines) expect([line.item, total(line.item)]).toEqual([line.item, line.total]);
  const { totals } = order;
  expect(total('Materials')).toBe(totals.materials);
  expect(total('Tax on materials')).toBe(totals.materialsTax);
  expect(total('Work in all')).toBe(totals.labour);
  expect(total('Cost')).toBe(totals.cost);
  expect(total('Margin')).toBe(totals.margin);
  expect(total('Price before tax')).toBe(totals.price);
  expect(total('Tax on the price')).toBe(totals.priceTax);
  expect(total('To pay')).toBe(totals.toPay);
}

const TERMS = [
  demoJob.terms,
  { tax: 20, taxOn: 'price', margin: '12.5%', marginOf: 'price' },
  { tax: '', taxOn: '', margin: '', marginOf: '' },
] as const;

describe('the order tab', () => {
  test.each(TERMS)('its sums in the embedded engine are the order’s own, tax %s', (...[terms]) => {
    const order = demoOrder({ terms });
    const block = orderBlock(order);
    compareTotals(order, block, recomputedByEngine(block));
  });

  test('a changed price changes the totals by its boxes', () => {
    const order = demoOrder();
    const block = orderBlock(order);
    const rows = rowsOf(block);
    const before = recomputedByEngine(block);
    const after = recomputedByEngine(block, { [`D${rows.get('Harbour oak')}`]: 60 });
    const boxes = order.lines[0].packs as number;
    const more = cents(after.get(`E${rows.get('Materials')}`)) - cents(before.get(`E${rows.get('Materials')}`));
    expect(more).toBe(boxes * (6000 - 5293));
    expect(cents(after.get(`E${rows.get('To pay')}`))).toBeGreaterThan(cents(before.get(`E${rows.get('To pay')}`)));
  });

  test('a missing price is shown as missing, left out of the total, and said', () => {
    const order = demoOrder({ tape: { ...demoJob.tape, price: '' } });
    const block = orderBlock(order);
    const values = recomputedByEngine(block);
    const rows = rowsOf(block);
    expect(values.get(`E${rows.get('Seam tape')}`)).toBe('missing');
    expect(order.missing).toEqual(['Seam tape: no price']);
    compareTotalsLess(order, block, values);
    const shown = [...values.values()].map(String);
    expect(shown).toContain('1 line has no price, pack, quantity or rate that can be used: the total is too low.');
    const twoMissing = demoOrder({ tape: { ...demoJob.tape, price: '' }, film: { ...demoJob.film, price: '' } });
    expect([...recomputedByEngine(orderBlock(twoMissing)).values()]).toContain(
      '2 lines have no price, pack, quantity or rate that can be used: the total is too low.',
    );
    expect([...recomputedByEngine(orderBlock(demoOrder())).values()]).toContain('Every line has a price.');
  });

  test('a price typed where it was missing completes the total', () => {
    const block = orderBlock(demoOrder({ tape: { ...demoJob.tape, price: '' } }));
    const rows = rowsOf(block);
    const values = recomputedByEngine(block, { [`D${rows.get('Seam tape')}`]: demoJob.tape.price as number });
    expect(cents(values.get(`E${rows.get('To pay')}`))).toBe(demoOrder().totals.toPay);
  });

  test('no formula calls a function of the add-on, and none holds what a person typed', () => {
    const block = orderBlock(demoOrder());
    const formulas = blockValues(block)
      .flat()
      .filter((value) => typeof value === 'string' && value.startsWith('='));
    const names = new Set(formulas.flatMap((formula) => String(formula).match(/[A-Z]+(?=\()/g) ?? []));
    expect([...names].sort()).toEqual(['COUNT', 'COUNTA', 'IF', 'ISBLANK', 'ISNUMBER', 'ROUND', 'ROUNDUP', 'SUM']);
    expect(formulas.length).toBeGreaterThan(40);
  });

  test('the percentage rule stands beside the boxes ordered, with its money', () => {
    const order = demoOrder();
    const block = orderBlock(order);
    const values = recomputedByEngine(block);
    const heading = blockValues(block).findIndex((row) => row[0] === 'Beside area + 10 %');
    order.floors.forEach(({ tenPercent }, i) => {
      const row = heading + 2 + i;
      expect(values.get(`A${row}`)).toBe(tenPercent.product);
      expect(values.get(`B${row}`)).toBe(tenPercent.boxes);
      expect(values.get(`C${row}`)).toBe(tenPercent.ruleBoxes);
      expect(cents(values.get(`E${row}`))).toBe(tenPercent.difference);
    });
  });

  test('a job without anything but a floor still adds up', () => {
    const blank = demoOrder({
      underlay: { ...demoJob.underlay, width: '', length: '', price: '' },
      film: { ...demoJob.film, width: '', length: '', price: '' },
      trims: [],
      transitions: [],
      doorways: [],
      extras: [],
      labour: [],
      spacers: { apart: '', perPack: '', price: '', supplier: '', article: '' },
    });
    const block = orderBlock(blank);
    compareTotals(blank, block, recomputedByEngine(block));
    expect(blockTexts(block).flat()).toContain('No work is entered: the price is for the materials alone.');
  });
});

describe.skipIf(!hasLibreOffice)('the order tab in LibreOffice (skipped only where soffice is not installed)', () => {
  const orders = TERMS.map((terms) => demoOrder({ terms }));
  const blocks = orders.map(orderBlock);
  const rows = rowsOf(blocks[0]);
  const changes: Changes = {
    [`D${rows.get('Ferry ash')}`]: 99.99,
    [`H${rows.get('Harbour oak')}`]: 0.1,
    [`D${rows.get('Tax on materials')}`]: 0.19,
  };
  let values: readonly ReadonlyMap<string, unknown>[] = [];

  beforeAll(async () => {
    values = await recomputedByLibreOffice([...blocks.map((block) => ({ block })), { block: blocks[0], changes }]);
  }, 300_000);

  test.each([0, 1, 2])('totals are the order’s own to the cent, terms %i', (i) => {
    compareTotals(orders[i], blocks[i], values[i]);
  });

  test('changed prices, allowance and tax change the totals as in the embedded engine', () => {
    const engine = recomputedByEngine(blocks[0], changes);
    const names = [...rows.keys()].filter((name) => typeof engine.get(`E${rows.get(name)}`) === 'number');
    expect(names.length).toBeGreaterThan(20);
    for (const name of names) {
      const address = `E${rows.get(name)}`;
      expect([name, cents(values[3].get(address))]).toEqual([name, cents(engine.get(address))]);
    }
    expect(cents(engine.get(`E${rows.get('To pay')}`))).not.toBe(orders[0].totals.toPay);
  });
});

/** Like `compareTotals`, for an order with lines that have no total. */
function compareTotalsLess(order: Order, block: TabBlock, values: ReadonlyMap<string, unknown>): void {
  compareTotals({ ...order, lines: order.lines.filter((line) => line.total !== null) }, block, values);
}

test('fits a lying page: Letter is 11 in long (ANSI/ASME Y14.1, size A), less two margins of 3/4 in, 96 pixels an inch', () => {
  const { columnWidths, landscape } = orderBlock(demoOrder());
  expect(landscape).toBe(true);
  expect(columnWidths.reduce((sum, width) => sum + width, 0)).toBe((11 - 2 * 0.75) * 96);
});

describe('a tax that is not entered', () => {
  const noteOf = (taxOn: 'materials' | 'price', tax: number | '') => {
    const texts = blockTexts(orderBlock(demoOrder({ terms: { ...demoJob.terms, tax, taxOn } })));
    return ['Tax on materials', 'Tax on the price'].map(
      (name) => texts.find(([first]) => first === name)?.filter((text) => text.includes('tax entered')).length,
    );
  };

  test('is said once, beside the tax that is asked for', () => {
    expect(noteOf('materials', '')).toEqual([1, 0]);
    expect(noteOf('price', '')).toEqual([0, 1]);
  });

  test('and not where it is', () => {
    expect(noteOf('materials', 8)).toEqual([0, 0]);
    expect(noteOf('price', 0)).toEqual([0, 0]);
  });
});

describe('how the tab is laid out', () => {
  const order = demoOrder();
  const block = orderBlock(order);
  const texts = blockValues(block);
  const rowAt = (text: string) => texts.findIndex(([first]) => first === text);
  const COLUMNS = texts[rowAt('Item')].map(String);
  const looksAt = (row: number) => block.cells[row].map(({ look }) => look);
  /** Where the cells of a row stand that a person may change. */
  const coloured = (row: number) => COLUMNS.filter((_, c) => looksAt(row)[c].background === '#fff8d8');

  test('stays in view down to its headings', () => {
    expect(block.frozenRows).toBe(rowAt('Item') + 1);
    expect(COLUMNS).toHaveLength(12);
  });

  test('prices and totals name their currency, where there is one', () => {
    const headings = (currency: string) => blockTexts(orderBlock(demoOrder({ currency }))).find(([a]) => a === 'Item');
    expect(headings('€')).toEqual(expect.arrayContaining(['Price €', 'Total €', 'To buy', 'Pack']));
    expect(headings('')).toEqual(expect.arrayContaining(['Price', 'Total']));
  });

  test('each sort of goods has its heading once, above its lines', () => {
    const groups = { floor: 'Floor', underlay: 'Underlay, vapor barrier, tape', trim: 'Trim', labour: 'Work' } as const;
    for (const [part, heading] of Object.entries(groups)) {
      expect(texts.filter(([first]) => first === heading)).toHaveLength(1);
      const own = order.lines.filter((line) => line.part === part).map(({ item }) => item);
      expect(texts.slice(rowAt(heading) + 1, rowAt(heading) + 1 + own.length).map(([item]) => item)).toEqual(own);
    }
  });

  test('what a person may change is coloured: of a line that comes in packs all it starts from, of others less', () => {
    const inPacks = ['Needed', 'Price', 'Allowance', 'Extra', 'In a pack'];
    for (const line of order.lines) {
      const wanted = line.rounding === 'none' ? inPacks.slice(0, 2) : inPacks;
      const named = coloured(rowAt(line.item)).map((heading) => heading.replace(/^(Price) .*/, '$1'));
      expect([line.item, named.sort()]).toEqual([line.item, [...wanted].sort()]);
    }
    for (const rate of ['Tax on materials', 'Margin', 'Tax on the price'])
      expect(coloured(rowAt(rate)).map((heading) => heading.slice(0, 5))).toEqual(['Price']);
    expect(coloured(rowAt('Cost'))).toEqual([]);
  });

  test('a line says what a pack is, what is counted and where that comes from', () => {
    const oak = texts[rowAt('Harbour oak')];
    expect([oak[2], oak[6]]).toEqual(['box', 'planks']);
    const felt = texts[rowAt('Felt underlay')];
    expect([felt[2], felt[6]]).toEqual(['roll', 'rolls']);
    const laying = texts[rowAt('Lay floors')];
    expect([laying[2], laying[6]]).toEqual(['hours', 'hours']);
    for (const line of order.lines) expect(texts[rowAt(line.item)][11]).toBe(line.reason);
  });

  test('figures stand at the right, what a pack holds in the middle, words at the left, headings above them alike', () => {
    const [head, line] = [looksAt(rowAt('Item')), looksAt(rowAt('Harbour oak'))].map((looks) =>
      looks.map(({ align }) => align[0]).join(''),
    );
    expect(line).toBe('lrlrrrlrrrcl');
    expect(head).toBe(line);
  });

  test('words keep to their columns: they wrap there, and headings too', () => {
    const wrapped = (row: number) => COLUMNS.filter((_, c) => looksAt(row)[c].wrap);
    expect(wrapped(rowAt('Harbour oak'))).toEqual(['Item', 'Pack', 'Unit', 'Where from']);
    expect(wrapped(rowAt('Item'))).toEqual(COLUMNS);
    expect(wrapped(rowAt('Planks and why') + 1)).toEqual(['Item', 'Where from']);
  });

  test.each([
    ['Planks and why', 'The plan', order.floors.map(({ spares }) => spares.product)],
    ['Beside area + 10 %', 'By area', order.floors.map(({ tenPercent }) => tenPercent.product)],
    ['Hours by the minutes entered', 'Besides', order.hours.map(({ room }) => room)],
  ])('the list "%s" ends with "%s" in the last column, every other line of it banded', (heading, last, own) => {
    expect(own.length).toBeGreaterThan(1);
    const row = rowAt(heading);
    expect(texts[row][COLUMNS.length - 1]).toBe(last);
    own.forEach((name, i) => {
      const shown = texts[row + 1 + i];
      expect([shown[0], shown[COLUMNS.length - 1] !== '']).toEqual([name, true]);
      const backgrounds = new Set(looksAt(row + 1 + i).map(({ background }) => background));
      expect([...backgrounds]).toEqual([i % 2 === 0 ? '#ffffff' : '#efece4']);
    });
  });

  test('of six rooms the second, fourth and sixth are banded', () => {
    const six = orderBlock({ ...order, hours: [...order.hours, ...order.hours] });
    const row = rowAt('Hours by the minutes entered') + 1;
    const backgrounds = six.cells.slice(row, row + 6).map(([first]) => first.look.background === '#efece4');
    expect(backgrounds).toEqual([false, true, false, true, false, true]);
  });

  test('planks by plan, for mis-cuts, to keep, for rooms and to fill a box are those in the boxes bought', () => {
    const spareRow = (shown: Order, i: number) => {
      const rows = blockValues(orderBlock(shown));
      return rows[rows.findIndex(([first]) => first === 'Planks and why') + 1 + i].slice(1, 7);
    };
    order.floors.forEach(({ line, spares }, i) => {
      const [bought, ...parts] = [...spareRow(order, i)].reverse().map(Number);
      expect(bought).toBe(parts.reduce((sum, part) => sum + part, 0));
      expect(bought).toBe(Number(line.packs) * Number(line.pack));
      const unboxed = {
        ...order,
        floors: [{ line, spares: { ...spares, boxRounding: null }, tenPercent: order.floors[i].tenPercent }],
      };
      expect(spareRow(unboxed, 0).slice(4)).toEqual(['', '']);
    });
  });

  test('hours are listed where minutes are entered, and not where none are', () => {
    const blank = Object.fromEntries(Object.keys(demoJob.pace).map((key) => [key, ''])) as typeof demoJob.pace;
    expect(blockTexts(orderBlock(demoOrder({ pace: blank }))).flat()).not.toContain('Hours by the minutes entered');
    const shown = texts[rowAt('Hours by the minutes entered') + 1];
    const { rows, cuts, notches, trims, doorways, doors, hours } = order.hours[0];
    expect(shown.slice(1, 8)).toEqual([rows, cuts, notches, trims, doorways, doors, hours]);
  });

  // A letter of a common font of 10 points is some 6.5 pixels wide: 912 pixels hold 140 of them.
  test('words that stand alone are broken to the width of the page, and lose none', () => {
    const note = Array.from({ length: 60 }, (_, i) => `word${i}`).join(' ');
    const rows = blockValues(orderBlock({ ...order, notes: [note] }));
    const alone = rows.filter((row) => /^[^=]/.test(String(row[0])) && row.slice(1).every((value) => value === ''));
    expect(alone.map(([words]) => String(words).length).filter((length) => length > 140)).toEqual([]);
    const broken = rows.map(([words]) => String(words)).filter((words) => /word\d/.test(words));
    expect(broken.map((words) => words.trim()).join(' ')).toBe(note);
    expect(broken).toHaveLength(Math.ceil(note.length / 135));
    const [fits, tooLong] = [69, 70].map((letters) => `${'x'.repeat(70)} ${'y'.repeat(letters)}`);
    const shown = blockTexts(orderBlock({ ...order, notes: [fits, tooLong] })).flat();
    expect([shown.includes(fits), shown.includes(tooLong)]).toEqual([true, false]);
  });
});
