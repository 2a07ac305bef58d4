import { describe, expect, test } from 'vitest';
import { distinct, entryAfter, entryBefore, leastBy, madeOf, sumOf } from '../../src/geometry/lists';
import { listed, rowsOf } from '../../src/takeoff/text/plural';

describe('lists', () => {
  test('the corners of a room go round', () => {
    const corners = ['far left', 'far right', 'near right', 'near left'];
    expect(entryAfter(corners, 3)).toBe('far left');
    expect(entryBefore(corners, 0)).toBe('near left');
    expect([entryBefore(corners, 2), entryAfter(corners, 1)]).toEqual(['far right', 'near right']);
  });

  test('of two that are least alike the first is taken', () => {
    expect(leastBy([{ at: 3 }, { at: 1, name: 'first' }, { at: 1 }], ({ at }) => at).name).toBe('first');
  });

  // As the language makes a list of a length: ECMA-262, ToLength, cuts a part of one off, and less than none is none.
  test.each([0, 1, 3, 2.5, 0.9, -1, Number.NaN])('as many are made as a list of length %s has', (count) => {
    expect(madeOf(count, (i) => i)).toEqual(Array.from({ length: count }, (_, i) => i));
  });

  test('nothing adds up to 0, places count from 0, and each is kept once in its order', () => {
    expect(sumOf([], () => 1)).toBe(0);
    expect(sumOf([5, 7, 9], (entry, i) => entry * i)).toBe(7 + 18);
    expect(distinct(['oak', 'ash', 'oak'])).toEqual(['oak', 'ash']);
  });

  test('words are listed as they are said', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    expect(rowsOf([{ rowNumber: 4 }, { rowNumber: 4 }])).toBe('row 4');
    expect(rowsOf([{ rowNumber: 2 }, { rowNumber: 3 }, { rowNumber: 2 }, { rowNumber: 5 }])).toBe('rows 2, 3 and 5');
  });
});
