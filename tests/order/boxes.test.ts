import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxesFor } from '../../src/order/boxes';
import type { Area } from '../../src/takeoff/text/areaText';

const areas: fc.Arbitrary<Area> = fc.record({
  count: fc.record({
    n: fc.integer({ min: 1, max: 999_999_999_999 }),
    d: fc.constantFrom(1, 10, 100, 1000, 1_000_000, 3, 8, 64),
  }),
  unit: fc.constantFrom(1, 640_000 ** 2, 195_072 ** 2, 9 * 195_072 ** 2),
});
const wastes = fc.record({ n: fc.integer({ min: 0, max: 9999 }), d: fc.constantFrom(10_000, 100_000) });

/** The same quotient in whole numbers of any size, rounded up. */
function oracle(area: Area, coverage: Area, waste: { readonly n: number; readonly d: number }): bigint {
  const [needed, perBox] = [
    [area.count.n, area.unit, waste.n + waste.d, coverage.count.d],
    [coverage.count.n, coverage.unit, waste.d, area.count.d],
  ].map((factors) => factors.reduce((product, factor) => product * BigInt(factor), 1n));
  return (needed + perBox - 1n) / perBox;
}

test('boxes agree with exact whole-number arithmetic', () => {
  let counted = 0;
  fc.assert(
    fc.property(areas, areas, wastes, (area, coverage, waste) => {
      const boxes = oracle(area, coverage, waste);
      if (boxes > 1_000_000n) expect(boxesFor(area, coverage, waste)).toBe(Number.POSITIVE_INFINITY);
      else {
        counted += 1;
        expect(boxesFor(area, coverage, waste)).toBe(Number(boxes));
      }
    }),
    { seed: 5, numRuns: 3000 },
  );
  expect(counted).toBeGreaterThan(500);
});

test('so do areas that fill their boxes to the last bit, and one part more', () => {
  const unit = 195_072 ** 2;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 1, max: 99_999 }), (boxes, coverage) => {
      const perBox = { count: { n: coverage, d: 100 }, unit };
      const full = { count: { n: boxes * coverage, d: 100 }, unit };
      const over = { count: { n: boxes * coverage * 1000 + 1, d: 100_000 }, unit };
      expect(boxesFor(full, perBox, { n: 0, d: 1 })).toBe(boxes);
      expect(boxesFor(over, perBox, { n: 0, d: 1 })).toBe(boxes + 1);
    }),
    { seed: 6, numRuns: 1000 },
  );
});
