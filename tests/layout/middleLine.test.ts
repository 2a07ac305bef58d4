import { describe, expect, test } from 'vitest';
import { firstRowFor, middleLineOf } from '../../src/layout/middleLine';
import { rowsOf } from '../../src/layout/rows';
import { feet, floorAndBody, goodRoom, inches, rectangular, walked } from '../support/floors';

function laid(shape: Parameters<typeof goodRoom>[0], firstRow: number | 'auto' = 'auto') {
  const { floor, body } = floorAndBody(goodRoom(shape), inches(3 / 8));
  return rowsOf(floor, { plankWidth: inches(7.5), minRip: inches(2), degrees: 0, startSide: 'near', firstRow, body });
}

describe('a start from the middle', () => {
  test('rows behind the line are reversed, nearest first', () => {
    // 16 rows of 7 1/2 in; the joint nearest to 60 in is the one at 60, between rows 8 and 9.
    const line = middleLineOf(laid(rectangular(12, 10)), inches(60));
    expect(line?.y).toBe(inches(60));
    expect(line?.slipTongueBetween).toEqual([8, 9]);
    expect(line?.reversedRows).toEqual([8, 7, 6, 5, 4, 3, 2, 1]);
    expect(line?.laidOrder).toEqual([9, 10, 11, 12, 13, 14, 15, 16, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect(line?.slipTongue).toEqual([{ x0: 0, x1: inches(143.25) }]);
  });

  test('the slip tongue runs only where planks lie on both sides', () => {
    // A U: below 47.25 in the foot is whole, above it two legs. First row 2.25 in puts a joint on the inside edge.
    const u = walked([4, 90], [6, -90], [4, -90], [6, 90], [4, 90], [10, 90], [12, 90], [10]);
    const line = middleLineOf(laid(u, firstRowFor(inches(47.25), inches(7.5))), inches(47.25));
    expect(line?.y).toBe(inches(47.25));
    expect(line?.slipTongue).toEqual([
      { x0: 0, x1: inches(47.25) },
      { x0: inches(96), x1: inches(143.25) },
    ]);
  });

  test('a single row has no middle', () => {
    expect(middleLineOf(laid(rectangular(12, 0.5)), 0)).toBeNull();
  });
});

test('the first row that puts a joint on a line', () => {
  expect(firstRowFor(feet(5), inches(7.5))).toBe(inches(7.5));
  expect(firstRowFor(inches(47.25), inches(7.5))).toBe(inches(2.25));
  expect(firstRowFor(-inches(1), inches(7.5))).toBe(inches(6.5));
});
