import { describe, expect, test } from 'vitest';
import { fineTicksOf, TICKS_PER_FOOT, ticksOfInches } from '../../src/geometry/length';
import { compareRectangles } from '../../src/order/compare';
import { plankSize, readRoom } from '../../src/takeoff/reading/readRoom';
import { plainEntry } from '../support/bareTakeoff';

const rooms = [
  { name: 'Den', length: 12 * TICKS_PER_FOOT, width: 10 * TICKS_PER_FOOT },
  { name: 'Hall', length: 9 * TICKS_PER_FOOT, width: 5 * TICKS_PER_FOOT },
];
const read = readRoom(plainEntry('Den', 12, 10)).room;
if (!read) throw new Error('The plain room cannot be read.');
const { product: oak, rules } = read;
const compare = (...products: Parameters<typeof compareRectangles>[1]) =>
  compareRectangles(rooms, products, rules, 'us');

describe('products side by side', () => {
  test('each is planned for the same rooms; boxes, money and waste follow from its planks', () => {
    const wide = {
      ...oak,
      name: 'Wide oak',
      ...plankSize(fineTicksOf(ticksOfInches(72)), fineTicksOf(ticksOfInches(8))),
      planksPerBox: 6,
      pricePerBox: 70,
    };
    compare(oak, wide).forEach((compared, i) => {
      if ('problem' in compared) throw new Error(compared.problem);
      const { planks, boxes, money, waste, shortestPiece } = compared;
      const [perBox, price, squareFeet] = i === 0 ? [10, 50, 2] : [6, 70, 4];
      expect(boxes).toBe(Math.ceil(planks / perBox));
      expect(money).toBe(Math.ceil(planks / perBox) * price * 100);
      // Rooms of 120 and 45 sq ft less gaps of 3/8 in all round.
      const floor = (12 - 1 / 16) * (10 - 1 / 16) + (9 - 1 / 16) * (5 - 1 / 16);
      expect(waste).toBeCloseTo(1 - floor / (Math.ceil(planks / perBox) * perBox * squareFeet), 10);
      expect(shortestPiece).toBeGreaterThanOrEqual(ticksOfInches(8));
    });
  });

  test('a product that cannot be laid has its problem in its place, the others stay', () => {
    const [thread, unread, laid] = compare(
      { ...oak, plankWidth: ticksOfInches(0.1) },
      { name: 'Ash', problem: 'Why.' },
      oak,
    );
    expect('problem' in thread && thread.problem).toContain('this room would take 1440 rows');
    expect(unread).toEqual({ name: 'Ash', problem: 'Why.' });
    expect('planks' in laid).toBe(true);
  });

  test('without a price or boxes the money is not known', () => {
    const compared = compare({ ...oak, pricePerBox: null }, { ...oak, planksPerBox: null });
    expect(compared.map((one) => 'money' in one && one.money)).toEqual([null, null]);
  });
});
