import { expect, test } from 'vitest';
import { cutStock } from '../../src/cutting/trim/stock';
import { fractionalPlan } from '../../src/cutting/trim/stockBound';
import { lengthsOf, PUBLISHED_LISTS } from '../support/publishedLists';

test.each(PUBLISHED_LISTS)('$name takes $fewest sticks, and no fewer is proved', (list) => {
  const { stockLength, fewest } = list;
  const lengths = lengthsOf(list);
  const plan = cutStock(lengths, stockLength, 0);
  expect([plan.count, plan.bound, plan.stop]).toEqual([fewest, fewest, 'proved fewest']);
  for (const stick of plan.sticks) {
    expect(stick.reduce((sum, index) => sum + lengths[index], 0)).toBeLessThanOrEqual(stockLength);
  }
  expect(plan.sticks.flat()).toHaveLength(lengths.length);
});

test('the fractional plan of Chvatal takes 452.25 raws, as the book prints', () => {
  const demand = { sizes: [45, 36, 31, 14], capacity: 100, counts: [97, 610, 395, 211] };
  const plan = fractionalPlan(demand, Infinity, { steps: 0, limit: 1e6 });
  const raws = plan.uses.reduce((sum, use) => sum + use.times, 0);
  expect(raws).toBeCloseTo(452.25, 9);
});

// From memory, not confirmed in print: the bin-packing sample of a well-known solver's guide, bins of 100. It needs
// ceil(370/100) bins by its sum alone; the count itself is not held against us.
test('the solver guide sample meets its own length bound', () => {
  const lengths = [48, 30, 19, 36, 36, 27, 42, 42, 36, 24, 30];
  const plan = cutStock(lengths, 100, 0);
  expect(plan.count).toBeGreaterThanOrEqual(Math.ceil(370 / 100));
});
