/** Offcuts tried at the ends of a row, against hand sums. */
import { describe, expect, test } from 'vitest';
import { PLANK_FIT } from '../../src/sheet/functions';

/** A row of 12' (144") of planks 48" that begins with 30": 30 + 48 + 48 + 18. No gap is taken off a run, kerf 1/8". */
const lineOf = (offcut: readonly unknown[], beside: unknown = '', rules: unknown = '') =>
  PLANK_FIT([offcut], 12, 30, 48, beside, rules)[1];

describe('an offcut at the ends of a row', () => {
  test.each([
    ['as long as the first piece', 30, 'right', 'fits, 0" over', 'it has no left end'],
    ['longer, with both ends', 31, 'both', 'fits, 1" over', 'fits, 13" over'],
    // 10" less at the left is 10" more at the right: 20 + 48 + 48 + 28.
    [
      'too short for a first piece',
      20,
      'right',
      '10" too short: begin the row with 20", end it with 28"',
      'it has no left end',
    ],
    // 3" less at the right: 33 + 48 + 48 + 15.
    [
      'too short for a last piece',
      15,
      'left',
      'it has no right end',
      '3" too short: begin the row with 33", end it with 15"',
    ],
    // The minimum piece is 8".
    ['under the minimum piece', 7, 'both', '23" too short', '11" too short'],
    ['without an end', 40, 'none', 'it has no right end', 'it has no left end'],
  ])('%s', (_, length, ends, first, last) => {
    expect(lineOf(['A', length, ends])).toEqual(['A', first, last]);
  });

  test('keeps the stagger to the rows beside: the next place that does', () => {
    // Joints of the row before at 18", 66", 114": a first piece from 10 1/16" to 25 15/16" is nearer than 8" to one of them.
    const before = [18, 48, 48, 30];
    expect(lineOf(['A', 25, 'right'], [before])[1]).toBe('5" too short: begin the row with 10", end it with 38"');
    // ... and with the row after at 12", 60", 108" nothing from 8" to 25" is left.
    expect(lineOf(['A', 25, 'right'], [before, [12, 48, 48, 36]])[1]).toBe('5" too short');
  });

  test('a run no longer than a plank is one piece, from anywhere in an offcut', () => {
    expect(PLANK_FIT([['A', 40, 'none']], 3, 36, 48)).toEqual([
      ['offcut', 'as first piece', 'as last piece'],
      ['A', 'fits, 4" over', ''],
    ]);
  });

  test('millimetres', () => {
    // 4 m of planks 1200 mm that begin with 700: 700 + 1200 + 1200 + 900.
    expect(PLANK_FIT([['B', 850, 'left']], 4, 700, 1200, '', '', 'metric')[1]).toEqual([
      'B',
      'it has no right end',
      '50 mm too short: begin the row with 750 mm, end it with 850 mm',
    ]);
  });

  test.each([
    [() => PLANK_FIT([['A', 20]], 12, 30, 48), /in_hand has 2 columns/],
    [() => PLANK_FIT([['A', 20, 'top']], 12, 30, 48), /in_hand, row 1/],
    [() => PLANK_FIT([['A', 20, 'left']], 12, '', 48), /first_piece is blank/],
    [() => PLANK_FIT([['A', 20, 'left']], 12, 30, 48, [[20, '', 30]]), /is blank between filled rows/],
  ])('refuses what cannot be %#', (call, sentence) => {
    expect(call).toThrow(sentence);
  });
});
