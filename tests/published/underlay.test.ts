import { describe, expect, test } from 'vitest';
import { TICKS_PER_FOOT, TICKS_PER_METRE } from '../../src/geometry/length';
import { amountOf, wholeUp } from '../../src/order/money';
import { rollsFor, stripsOf } from '../../src/order/underlay';
import { PLANK_UNDERLAY } from '../../src/sheet/orderFunctions';

const room = (length: number, width: number) => [
  [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ],
];

describe('strips from a roll', () => {
  test('24 ft 9 in by 18 ft, strips of 2 1/4 ft lengthwise: 8 strips, 66 yards (19th-century arithmetic, Google Books 15sXAAAAIAAJ p. 225)', () => {
    const roll = { width: 2.25 * TICKS_PER_FOOT, length: 300 * TICKS_PER_FOOT, overlap: 0 };
    const plan = stripsOf(room(24.75 * TICKS_PER_FOOT, 18 * TICKS_PER_FOOT), roll, 'length');
    expect(plan.strips).toHaveLength(8);
    const yards = plan.strips.reduce((sum, strip) => sum + strip, 0) / TICKS_PER_FOOT / 3;
    expect(yards).toBe(66);
  });

  test("walls 62 ft less 16 ft, strips 1 1/2 ft by 9 ft: 31 strips, 5 from a roll of 48 ft, 13 single rolls, $5.85 (New Student's Reference Work, 1914, vol. 5 p. 2186)", () => {
    const roll = { width: 1.5 * TICKS_PER_FOOT, length: 48 * TICKS_PER_FOOT, overlap: 0 };
    const plan = stripsOf(room((62 - 16) * TICKS_PER_FOOT, 9 * TICKS_PER_FOOT), roll, 'width');
    expect(plan.strips).toHaveLength(31);
    expect(rollsFor(plan.strips.slice(0, 5), roll)).toBe(1);
    expect(rollsFor(plan.strips.slice(0, 6), roll)).toBe(2);
    // The book halves the double roll: 31 strips at 5 a double roll are 12.4 single rolls.
    const singleRolls = wholeUp((2 * plan.strips.length) / 5);
    expect(singleRolls).toBe(13);
    expect(amountOf(singleRolls, 0.45)).toBe(585);
  });

  test('a carpet of 3 m for 13 by 8 m: 3 rows of 13 m one way, 5 of 8 m the other (Scribd 468695352 prints the 3 rows)', () => {
    const roll = { width: 3 * TICKS_PER_METRE, length: 100 * TICKS_PER_METRE, overlap: 0 };
    const floor = room(13 * TICKS_PER_METRE, 8 * TICKS_PER_METRE);
    expect(stripsOf(floor, roll, 'length').strips).toEqual(Array(3).fill(13 * TICKS_PER_METRE));
    expect(stripsOf(floor, roll, 'width').strips).toEqual(Array(5).fill(8 * TICKS_PER_METRE));
    // 39 m against 40 m: the shorter is taken.
    expect(stripsOf(floor, roll, '').direction).toBe('length');
  });

  test('500 sq ft at 200 a roll is 2.5 rolls (a retailer’s measuring guide, on the net area): by strips 20 x 25 ft takes 3 of 4 x 50 ft', () => {
    expect(PLANK_UNDERLAY(25, 20, 4, 50)).toBe(3);
  });

  // Published laps of vapour film: 30 cm (a laminate's text), 20 cm taped (another), 150 mm (NBS K21): 4 m by 3 m under
  // a film of 2 m: two strips until the lap takes more than the 1 m to spare.
  test.each([
    [150, 2],
    [200, 2],
    [300, 2],
    [1001, 3],
  ])('a lap of %i mm leaves %i strips over 3 m of a 2 m film', (lap, strips) => {
    const roll = { width: 2 * TICKS_PER_METRE, length: 50 * TICKS_PER_METRE, overlap: lap * 640 };
    expect(stripsOf(room(4 * TICKS_PER_METRE, 3 * TICKS_PER_METRE), roll, 'length').strips).toHaveLength(strips);
  });
});
