import { describe, expect, test } from 'vitest';
import type { Units } from '../../../src/geometry/length';
import { areaNumber, LARGEST_AREA, readArea, rectangleArea } from '../../../src/takeoff/text/areaText';

const NONE = { n: 1, d: 1 };

/** Square feet or metres of what was typed, or why it is no area. */
function read(typed: string | number, units: Units = 'us'): number | string {
  const area = readArea(typed, units);
  return area.ok ? areaNumber(area.area, NONE, units) : area.why;
}

describe('an area with its own unit', () => {
  test.each([
    '132 sq ft',
    '132 SQ FT',
    '132 sq. ft.',
    '132sqft',
    '132 sf',
    '132 ft2',
    '132 ft²',
    '132 ft^2',
    '132 square feet',
    '132.0 square foot',
    '132\u00a0ft²',
    '19008 sq in',
    '14 2/3 sq yd',
    '14 2/3 square yards',
  ])('%s is 132 sq ft', (typed) => {
    expect(read(typed)).toBe(132);
  });

  test.each([
    '12.3 m2',
    '12,3 m²',
    '12.3 sq m',
    '12.3sqm',
    '12.3 square metres',
    '12.3 Square Meters',
    '123000 cm2',
    '12300000 mm²',
  ])('%s is 12.3 m2', (typed) => {
    expect(read(typed, 'metric')).toBe(12.3);
  });

  test('a bare number is in the units of the sheet', () => {
    expect(read(132)).toBe(132);
    expect(read('132')).toBe(132);
    expect(read('12,3', 'metric')).toBe(12.3);
  });

  test('a unit that only the library knows', () => {
    // 1 hectare = 10,000 m2.
    expect(read('0.25 hectare', 'metric')).toBe(2500);
  });
});

test.each([
  ['', 'blank'],
  ['#VALUE!', 'error value'],
  ['5/8/2026', 'date'],
  ['wide', 'not an area'],
  ["12'", 'not an area'],
  ['12 x 10', 'not an area'],
  // A mixed number with a whole in its fraction is a slip.
  ['131 2/2 m2', 'not an area'],
  ['12 kg', 'not an area'],
  ['12 m', 'not an area'],
  ['1,234 m2', 'two readings'],
  ['-1 m2', 'negative'],
  [-1, 'negative'],
  [Number.NaN, 'not finite'],
  ['10001 m2', 'too large'],
  [1e9, 'too large'],
])('%j: %s', (typed, why) => {
  expect(read(typed, 'metric')).toBe(why);
});

test('a square of 100 m is the largest area, exactly', () => {
  const side = { n: 64_000_000, d: 1 };
  expect(areaNumber(rectangleArea(side, side), NONE, 'metric')).toBe(10_000);
  expect(LARGEST_AREA).toBe(64_000_000 ** 2);
  expect(Number.isSafeInteger(LARGEST_AREA)).toBe(true);
  expect(read(10_000, 'metric')).toBe(10_000);
});
