/** What one cell is read as, up to the very limits that the sentences name. */
import { describe, expect, test } from 'vitest';
import { mostOf } from '../../src/layout/rules';
import {
  areaAbove0,
  count,
  fineLength0OrMore,
  fineLengthEitherWay,
  foundIn,
  isBlank,
  isFault,
  lengthAbove0,
  percentage,
  plankLength,
  plankWidth,
  smallRule,
  unitsOf,
  wastePercentage,
  wordsIn,
  yesOrNo,
} from '../../src/sheet/cells';

/** The value, or the sentence about it. */
function told(read: unknown): unknown {
  return isFault(read) ? read.says('x') : read;
}

// 1 in = 25.4 mm exactly; 1 mm = 640 ticks of 46,875 fine ticks.
const FINE_MM = 640 * 46_875;

describe('a count', () => {
  test.each([
    [0, 0],
    [3, 3],
    ['3', 3],
    [' 12 ', 12],
  ])('%j', (cell, value) => {
    expect(count(cell)).toBe(value);
  });

  test.each([-1, 2.5, '2.5', '1/2', 'x', Number.POSITIVE_INFINITY, Number.NaN, true, ''])('%j is none', (cell) => {
    expect(told(count(cell))).toMatch(/^x: .* is not a count/);
  });
});

describe('a percentage', () => {
  const ratio = (read: ReturnType<typeof percentage>) => (isFault(read) ? read.says('x') : read.n / read.d);

  test.each([
    [0, 0],
    [0.1, 0.1],
    [0.999, 0.999],
    [10, 0.1],
    [100, 1],
    ['100%', 1],
    ['0.5%', 0.005],
    ['12,5 %', 0.125],
    ['.5', 0.5],
  ])('%j is %d', (cell, value) => {
    expect([ratio(percentage(cell)), ratio(wastePercentage(cell))]).toEqual([value, value]);
  });

  test.each([
    [100.01, /100/],
    ['101%', /100/],
    ['150', /100/],
    [-1, /negative/],
    ['-5%', /negative/],
    [1, /1/],
    ['1', /1/],
    [Number.NaN, /x/],
    ['ten', /"ten" is not/],
    ['10 m', /"10 m" is not/],
    [true, /"TRUE" is not/],
  ])('%j is none', (cell, words) => {
    expect(told(percentage(cell))).toMatch(words);
    expect(told(wastePercentage(cell))).toMatch(words);
  });

  test('1.1 may be a factor where waste is asked for, and 2 is 2 %', () => {
    expect(ratio(percentage(1.1))).toBe(0.011);
    for (const cell of [1.1, '1.1', 1.99]) expect(told(wastePercentage(cell))).toMatch(/1\.[19]/);
    expect([ratio(wastePercentage(2)), ratio(wastePercentage('1.1%'))]).toEqual([0.02, 0.011]);
  });
});

describe('a plank', () => {
  test.each([
    [plankLength, '10 mm', 10],
    [plankLength, '8 m', 8000],
    [plankWidth, '1 cm', 10],
    [plankWidth, '1 m', 1000],
    [plankWidth, 5, 127],
  ])('of the sizes that are sold, their limits too', (read, cell, mm) => {
    expect(told(read(cell, 'us'))).toBe(mm * FINE_MM);
  });

  test.each([
    [plankLength, '9.99 mm', /under 10 mm/],
    [plankLength, '8.001 m', /at most 8 m/],
    [plankWidth, '1001 mm', /1 m \(39 in\) wide/],
    [plankWidth, 0, /^x is 0/],
    [plankLength, -5, /^x.*negative|less than 0|below 0/],
  ])('of no others', (read, cell, words) => {
    expect(told(read(cell, 'us'))).toMatch(words);
  });
});

test.each(['expansionGap', 'kerf'] as const)('a rule may be as wide as any is, and no wider: %s', (key) => {
  const most = mostOf(key) / 640;
  expect(told(smallRule(key)(`${most} mm`, 'us'))).toBe(Math.round(most * FINE_MM));
  expect(told(smallRule(key)(0, 'us'))).toBe(0);
  expect(told(smallRule(key)(`${most + 0.01} mm`, 'us'))).toMatch(/more than any floor has/);
});

describe('a length', () => {
  // Half a tick is 1/1280 mm = 0.00078125 mm.
  test('above 0 is one of half a tick and more', () => {
    expect(told(lengthAbove0('plank')('0.0008 mm', 'us'))).toBe(1);
    expect(told(lengthAbove0('plank')('0.0007 mm', 'us'))).toBe('x is 0. Type a length greater than 0.');
  });

  test('may be 0, or lie to either side, where that is asked for', () => {
    expect(told(fineLength0OrMore('plank')(0, 'us'))).toBe(0);
    expect(told(fineLength0OrMore('plank')('-1 mm', 'us'))).toMatch(/^x: /);
    expect(told(fineLengthEitherWay('plank')('-1 mm', 'us'))).toBe(-FINE_MM);
    expect(Object.is(fineLengthEitherWay('plank')(-0, 'us'), 0)).toBe(true);
  });
});

test('an area is above 0, and no date', () => {
  expect(told(areaAbove0(0, 'us'))).toBe('x is 0. Type an area greater than 0.');
  expect(isFault(areaAbove0(0.01, 'us'))).toBe(false);
  expect(told(areaAbove0(new Date(2026, 4, 8), 'us'))).toMatch(/^x is a date/);
  expect(told(areaAbove0('wide', 'us'))).toMatch(/"wide"/);
  expect(told(percentage(new Date(2026, 4, 8)))).toMatch(/^x is a date/);
});

test('words that are chosen may be written in any capitals, with blanks about them', () => {
  expect([' US ', 'Metric'].map((cell) => told(unitsOf(cell)))).toEqual(['us', 'metric']);
  expect(told(unitsOf('imperial'))).toMatch(/"imperial" is not a system of units/);
  expect(['YES', ' no '].map((cell) => told(yesOrNo(cell)))).toEqual([true, false]);
  expect([true, 1, 'y'].map((cell) => /neither yes nor no/.test(String(told(yesOrNo(cell)))))).toEqual([
    true,
    true,
    true,
  ]);
});

test('blank is what holds nothing but blanks', () => {
  expect(['', ' ', '\u00a0', null, undefined].map(isBlank)).toEqual([true, true, true, true, true]);
  expect([0, false, 'x', new Date(0)].map(isBlank)).toEqual([false, false, false, false]);
});

test('what a cell holds is quoted as it shows it', () => {
  expect([5, 'oak', true, false, new Date(2026, 4, 8), {}].map(foundIn)).toEqual([
    5,
    'oak',
    'TRUE',
    'FALSE',
    'a date',
    '',
  ]);
  expect([' oak ', 2.5, Number.NaN, {}, true].map(wordsIn)).toEqual(['oak', '2.5', '', '', 'TRUE']);
});
