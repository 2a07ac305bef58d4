import { describe, expect, test } from 'vitest';
import { ticksOfMm } from '../../src/geometry/length';
import { gapForSpan, overlongFloorsOf } from '../../src/layout/expansion';
import { RUN_LIMITS } from '../../src/layout/rules';
import { rectangle } from '../support/randomRooms';

// Source: a laminate maker's installation text (translated): 1.5 mm for every metre, at least 8 mm; 5 m wide -> 8 mm.
test.each([
  [5000, 8],
  [4000, 8],
  [6000, 9],
  [8000, 12],
])('a span of %d mm asks for %d mm', (span, gap) => {
  expect(gapForSpan(ticksOfMm(span), ticksOfMm(1.5), ticksOfMm(8))).toBe(ticksOfMm(gap));
});

// Source: a UK floor supplier's terms: 2 mm for every metre across the boards, at least 15 mm.
test.each([
  [6000, 15],
  [9000, 18],
])('solid boards over %d mm ask for %d mm', (span, gap) => {
  expect(gapForSpan(ticksOfMm(span), ticksOfMm(2), ticksOfMm(15))).toBe(ticksOfMm(gap));
});

describe('maximum run', () => {
  const floor = (length: number, width: number) => ({ floor: [rectangle(0, 0, ticksOfMm(length), ticksOfMm(width))] });

  // Source: two laminate makers: 12 m along, 8 m across.
  test('laminate of 12 by 8 m is allowed, a millimetre more is not', () => {
    expect(overlongFloorsOf(floor(12_000, 8_000), RUN_LIMITS.laminate)).toEqual([]);
    expect(overlongFloorsOf(floor(12_001, 8_000), RUN_LIMITS.laminate)).toEqual([
      { partNumber: 1, way: 'along', found: ticksOfMm(12_001), allowed: ticksOfMm(12_000) },
    ]);
    expect(overlongFloorsOf(floor(9_000, 9_000), RUN_LIMITS.laminate).map(({ way }) => way)).toEqual(['across']);
  });

  test('parts are judged one by one, and no limit is none', () => {
    const parts = [...floor(30_000, 3_000).floor, rectangle(0, ticksOfMm(4000), ticksOfMm(3000), ticksOfMm(9000))];
    expect(overlongFloorsOf({ floor: parts }, RUN_LIMITS['solid wood'])).toEqual([
      { partNumber: 2, way: 'across', found: ticksOfMm(9_000), allowed: ticksOfMm(7_620) },
    ]);
  });
});
