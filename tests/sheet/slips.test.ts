/** Numbers that are most likely a slip: asked about, with the likely reading named; and their neighbours that are none. */
import { describe, expect, test } from 'vitest';
import {
  PLANK_AREA,
  PLANK_BOXES,
  PLANK_COUNT,
  PLANK_CUTS,
  PLANK_EMC,
  PLANK_LAST_ROW,
  PLANK_LENGTH,
  PLANK_ROWS,
  PLANK_TRIM,
} from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

describe('per cent', () => {
  test.each([1.1, '1.1', 1.25, '1,1'])('waste of %s may be a factor', (waste) => {
    expect(refusalOf(() => PLANK_BOXES(120, 24, waste))).toMatch(
      /^waste: .* can be read in two ways\. Type 10% if a factor of 1\.1 is meant, or "1\.1%" if 1\.1 per cent is\.$/,
    );
  });

  // 1.1 % of 100 is 1.1; 2 and more are per cent, below 1 a fraction.
  test.each([
    ['1.1%', 101.1],
    [2, 102],
    [0.011, 101.1],
    [10, 110],
  ])('waste of %s is not', (waste, area) => {
    expect(PLANK_AREA(10, 10, waste)).toBeCloseTo(area, 9);
  });

  test('a cell that shows 100% holds 1, and so does one of 1 per cent as typed', () => {
    expect(refusalOf(() => PLANK_EMC(70, 1))).toBe(
      'humidity: 1 can be read in two ways, and a cell that shows 100% holds 1. Type 100 for 100 per cent, or 0.01 for 1 per cent.',
    );
    expect(PLANK_EMC(70, '100%')).toBe(PLANK_EMC(70, 100));
    expect(PLANK_EMC(70, 0.01)).toBe(PLANK_EMC(70, '1%'));
  });
});

describe('lengths', () => {
  test.each(['71/2"', '12\' 61/2"', '115/8'])('%s may lack a space', (text) => {
    expect(refusalOf(() => PLANK_LENGTH(text))).toMatch(/can be read in two ways\. Type 7 1\/2 with a space/);
  });

  test.each([
    ['9/8"', 1.125],
    ['3/2', 1.5],
    ['12/1', 12],
    ['10/16"', 0.625],
    // 9 x 12 + 8.25
    ['9-8 1/4', 116.25],
    ['9-8 1/4"', 116.25],
    ['9\' 8" 1/4', 116.25],
    ['9\' 8" 1/4"', 116.25],
    ['9 ft 8 in 1/4', 116.25],
    ['8" 1/4', 8.25],
    // Marks that nobody sees, as pasted text brings them.
    ['\u200e12', 12],
    ['\ufeff12"', 12],
    ['12\u200f 1/2', 12.5],
    ['\u202a7.5\u202c', 7.5],
    ['7\u00ad1/2"'.replace('\u00ad', ' \u00ad'), 7.5],
  ])('%j is %d in', (text, inches) => {
    expect(PLANK_LENGTH(text)).toBe(inches);
  });

  test.each(['9-14 1/4', '9\' 8" 5/4', '9\' 13" 1/4'])('%s is none', (text) => {
    expect(refusalOf(() => PLANK_LENGTH(text))).toMatch(/is not a length|has too many of the smaller unit/);
  });
});

describe('units', () => {
  test('a room typed in inches is asked about, and what is typed with its unit is not', () => {
    expect(refusalOf(() => PLANK_AREA(116.25, 97))).toBe(
      'length: 116.25 by 97 feet is larger than a sports hall. If inches are meant, type 116.25" by 97"; if feet, type them with the foot mark, 116.25\' by 97\'.',
    );
    expect(refusalOf(() => PLANK_CUTS(116.25, '97', 48, 7.5))).toMatch(/^length: 116\.25 by 97 feet is larger/);
    expect(PLANK_AREA("116.25'", 97)).toBe(116.25 * 97);
    expect(PLANK_AREA('116 1/4"', '97"')).toBeCloseTo((116.25 * 97) / 144, 9);
  });

  // A basketball court is 28 by 15 m with 2 m clear all round (FIBA rules, from memory): 105 by 62.3 ft.
  test('a basketball hall is a floor, and so is a hall in metres', () => {
    expect(PLANK_AREA(105, 62.3)).toBeCloseTo(6541.5, 9);
    expect(PLANK_AREA(60, 40, '', 'metric')).toBe(2400);
  });

  test.each([
    [
      'a plank of 1285 by 192 with "metric" forgotten',
      () => PLANK_COUNT(12, 1285),
      /^plank_length: 1285 is more than any plank has: .* set the units to metric/,
    ],
    ['its width', () => PLANK_ROWS(12, 192), /^plank_width: 192 is more than any plank has/],
    [
      'a gap of 10',
      () => PLANK_LAST_ROW(10, 7.5, 10),
      /^gap: 10 is more than any floor has, at most 3"\. A bare number here is in inches\. Type it with its unit, such as 10 mm\./,
    ],
    [
      'a gap of 10 among the rules',
      () => PLANK_COUNT(12, 48, [['expansion gap', 10]]),
      /^rules, row 1, expansion gap: 10 is more than any floor has/,
    ],
    ['a saw cut of 3', () => PLANK_TRIM([[12]], 16, 3), /^kerf: 3 is more than any floor has, at most 1\/2"/],
    [
      'a saw cut of 5 m',
      () => PLANK_COUNT(12, 48, [['kerf', '5 m']]),
      /^rules, row 1, kerf: "5 m" is more than any floor has/,
    ],
    [
      'a billion spare planks',
      () => PLANK_COUNT(12, 48, [['spare', 1e9]]),
      /^rules, row 1, spare: 1000000000 is more than 10000 spare planks/,
    ],
  ])('%s is asked about', (_, call, sentence) => {
    expect(refusalOf(call)).toMatch(sentence);
  });

  test('what comes near is taken', () => {
    expect(PLANK_LAST_ROW(10, 7.5, '10 mm')).toBeCloseTo(120 - 20 / 25.4 - 15 * 7.5, 9);
    expect(PLANK_COUNT(12, "20'")).toBe(1);
    expect(PLANK_COUNT(12, 48, [['kerf', '10 mm']])).toBe(3);
  });
});
