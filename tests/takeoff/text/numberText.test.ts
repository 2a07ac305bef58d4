import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numberOf, numberText, plainText, ratioOf, takeNumber } from '../../../src/takeoff/text/numberText';

test.each([
  [0, 2, '0'],
  [1, 2, '1'],
  [1.5, 2, '1.5'],
  [1.005, 2, '1.01'],
  [2.675, 2, '2.68'],
  [-2.675, 2, '-2.68'],
  [-0.001, 2, '0'],
  [-0.01, 2, '-0.01'],
  [-1, 0, '-1'],
  [1234567.891, 2, '1234567.89'],
  [12, 0, '12'],
  [12.5, 0, '13'],
  [0.05, 1, '0.1'],
  [0.1 + 0.2, 6, '0.3'],
  [1e-7, 6, '0'],
  [999.9999999, 3, '1000'],
])('%s to %s places is %s', (value, decimals, text) => {
  expect(numberText(value, decimals)).toBe(text);
});

test('a decimal of up to 15 digits is its own ratio', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 999_999_999 }), fc.integer({ min: 0, max: 6 }), (n, places) => {
      const value = n / 10 ** places;
      const ratio = ratioOf(value);
      expect(BigInt(ratio.n) * BigInt(10 ** places)).toBe(BigInt(n) * BigInt(ratio.d));
    }),
    { seed: 11, numRuns: 1000 },
  );
});

test('the noise of a sheet in the last digit is no part of a number', () => {
  expect(ratioOf(0.1 + 0.2)).toEqual({ n: 3, d: 10 });
  expect(ratioOf(2.4 * 3)).toEqual({ n: 72, d: 10 });
  expect(ratioOf(1e-30).n).toBe(0);
  // 10^22 is the largest power of ten that is a double: 5^22 is below 2^53, 5^23 is not.
  expect(ratioOf(1e-22)).toEqual({ n: 1, d: 1e22 });
  expect(ratioOf(1e-23).n).toBe(0);
  expect(numberOf(ratioOf(1e15))).toBe(1e15);
});

test.each([
  ['12 ft', 12, ' ft'],
  ['6 1/2"', 6.5, '"'],
  ['6-1/2"', 6.5, '"'],
  ['1 / 2 in', 0.5, ' in'],
  ['3,81 m', 3.81, ' m'],
  ['1.234,5', 1234.5, ''],
  ['1,234,567', 1_234_567, ''],
  ['.5', 0.5, ''],
  ['10%', 10, '%'],
  ['9/2', 4.5, ''],
  ['16/16', 1, ''],
  ['10/1', 10, ''],
])('%s starts with a number', (text, value, rest) => {
  const taken = takeNumber(plainText(text));
  expect(typeof taken !== 'string' && { value: numberOf(taken.value), rest: taken.rest }).toEqual({ value, rest });
});

test.each([
  ['ft', 'not a number'],
  ['', 'not a number'],
  ['-3', 'not a number'],
  ['1/0', 'not a number'],
  ['1,23,456', 'not a number'],
  ['1,234', 'two readings'],
  ['10/3', 'space missing'],
  ['71/2', 'space missing'],
])('%j does not: %s', (text, why) => {
  expect(takeNumber(plainText(text))).toBe(why);
});
