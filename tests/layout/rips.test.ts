import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowsAcross, rowsAfterFirst } from '../../src/layout/rips';

describe('first and last row', () => {
  // Source: half-unit rule, NAVEDTRA 14044, Builder 3 & 2, Vol. 2 (1994), p. 7-23. A wall of 176 in and units of 12 in:
  // 14 full ones and 8 in; (8 + 12) / 2 = 10 in at each end. (A parquet article that quotes it prints 9: a misprint.)
  test('176 in of 12 in units, half-unit rule: 10 in at both ends', () => {
    expect(rowsAcross(176, 12, { minRip: 9 })).toEqual({
      rowCount: 15,
      first: 10,
      last: 10,
      lastAfterFull: 8,
      leftInGap: 0,
      note: 'first and last row alike',
    });
  });

  test.each([
    // [depth, plank, minimum rip], [rows, first, last, note]
    ['a last row of exactly the minimum is wide enough', [110, 20, 10], [6, 20, 10, 'last row ripped']],
    ['one less is shared: (9 + 20) / 2', [109, 20, 10], [6, 15, 14, 'first and last row alike']],
    ['an exact multiple has full rows', [100, 20, 10], [5, 20, 20, 'all rows full']],
    ['one plank deep', [20, 20, 10], [1, 20, 20, 'all rows full']],
    ['shallower than a plank', [15, 20, 10], [1, 15, 15, 'one row']],
    ['shallower than a plank, of exactly the minimum', [10, 20, 10], [1, 10, 10, 'one row']],
    ['shallower than the minimum', [9, 20, 10], [1, 9, 9, 'under the minimum rip']],
    ['two rows share a plank and a little', [21, 20, 10], [2, 11, 10, 'first and last row alike']],
    ['a minimum over half a plank cannot be met', [21, 20, 12], [2, 11, 10, 'under the minimum rip']],
    ['no minimum keeps a sliver', [101, 20, 0], [6, 20, 1, 'last row ripped']],
  ])('%s', (_, [depth, plank, minRip], [rowCount, first, last, note]) => {
    expect(rowsAcross(depth, plank, { minRip })).toMatchObject({ rowCount, first, last, note });
  });

  test('a shared first row is a whole number of marking steps', () => {
    // 109 = 5 x 20 + 9; half of 29 is 14.5: the first takes 16 (steps of 4), the last what is left.
    expect(rowsAcross(109, 20, { minRip: 10, step: 4 })).toMatchObject({ first: 16, last: 13 });
  });

  test('what is narrower than the least row is not laid, and not asked for the minimum', () => {
    expect(rowsAcross(102, 20, { minRip: 10, leastRow: 3 })).toEqual({
      ...{ rowCount: 5, first: 20, last: 20, lastAfterFull: 20 },
      ...{ leftInGap: 2, note: 'all rows full' },
    });
    expect(rowsAcross(103, 20, { minRip: 10, leastRow: 3 })).toMatchObject({ rowCount: 6, first: 12, last: 11 });
  });

  test('nothing is left in the gap of a single row', () => {
    for (const depth of [1, 9, 15, 20]) expect(rowsAcross(depth, 20, { minRip: 10, leastRow: 3 }).leftInGap).toBe(0);
  });

  test('rows fill the depth, none over a plank', () => {
    const sizes = [
      fc.integer({ min: 1, max: 9999 }),
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 0, max: 250 }),
    ] as const;
    fc.assert(
      fc.property(...sizes, (depth, plank, minRip) => {
        const { rowCount, first, last } = rowsAcross(depth, plank, { minRip });
        const between = Math.max(0, rowCount - 2) * plank;
        expect(rowCount === 1 ? first : first + between + last).toBe(depth);
        expect(Math.max(first, last)).toBeLessThanOrEqual(plank);
        expect(Math.min(first, last)).toBeGreaterThan(0);
        expect(rowsAfterFirst(depth, plank, first)).toEqual({ rowCount, last });
      }),
      { seed: 11, numRuns: 1000 },
    );
  });

  test('no depth and no plank are refused', () => {
    expect(() => rowsAcross(0, 20, { minRip: 5 })).toThrow(RangeError);
    expect(() => rowsAcross(20, 0, { minRip: 5 })).toThrow(RangeError);
    expect(() => rowsAcross(Number.NaN, 20, { minRip: 5 })).toThrow(RangeError);
  });
});
