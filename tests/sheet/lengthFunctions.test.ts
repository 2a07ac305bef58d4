import { expect, test } from 'vitest';
import { PLANK_LENGTH, PLANK_LENGTH_TEXT } from '../../src/sheet/functions';
import { lengthNumber } from '../../src/sheet/lengthFunctions';
import { refusalOf } from '../support/refusal';

test.each([
  [['12\' 6 1/2"'], 150.5],
  [['3.81 m'], 150],
  [['3.81 m', 'metric'], 3810],
  [['12\' 6 1/2"', 'metric'], 3822.7],
  [[6.5], 6.5],
  [['190', 'metric'], 190],
  [['0"'], 0],
])('PLANK_LENGTH of %j is %s', (call, answer) => {
  expect(PLANK_LENGTH(...(call as [unknown]))).toBe(answer);
});

test.each([
  [[150.5], '150 1/2"'],
  [[6.03], '6"'],
  [[6.04], '6 1/16"'],
  [[190.4, 'metric'], '190 mm'],
  [[-0.0625], '-1/16"'],
  [['3.81 m'], '150"'],
  [[0], '0"'],
])('PLANK_LENGTH_TEXT of %j is %s', (call, answer) => {
  expect(PLANK_LENGTH_TEXT(...(call as [unknown]))).toBe(answer);
});

test('a range answers a range', () => {
  expect(PLANK_LENGTH([["1'"], [''], ['1/2"']])).toEqual([[12], [''], [0.5]]);
  expect(PLANK_LENGTH_TEXT([[1.5, 2.25]])).toEqual([['1 1/2"', '2 1/4"']]);
});

// A tick is 1/640 mm: 64 are 0.1 mm, 127 are 1/128 in or 0.1984375 mm.
test('a length in ticks comes out exactly where it is whole in its units, and else to 3 or 4 decimals', () => {
  expect([64, 127].map((ticks) => lengthNumber(ticks, 'metric'))).toEqual([0.1, 0.198]);
  expect([127, 64].map((ticks) => lengthNumber(ticks, 'us'))).toEqual([1 / 128, 0.0039]);
});

test('what is not a length is told, with what is wanted', () => {
  expect(refusalOf(() => PLANK_LENGTH('12-6'))).toBe(
    'text: "12-6" is not a length. Type inches such as 7 1/2", or millimeters such as 190 mm.',
  );
  expect(refusalOf(() => PLANK_LENGTH('-6"'))).toBe('text: "-6"" is negative. Type a length of 0 or more.');
});
