import { describe, expect, test } from 'vitest';
import { roomPrices } from '../../src/order/roomPrices';
import { demoJob } from '../support/demoHouse';
import { demoOrder } from '../support/plannedDemo';

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe('a price for each room', () => {
  test.each([demoJob.terms, { tax: 20, taxOn: 'price', margin: '12.5%', marginOf: 'price' }] as const)(
    'the rooms add up to the whole, to the cent: %j',
    (terms) => {
      const order = demoOrder({ terms });
      const prices = roomPrices(order);
      expect(prices).toHaveLength(3);
      expect(sum(prices)).toBe(order.totals.toPay);
      expect(prices.every((price) => price > 0)).toBe(true);
    },
  );

  test('work paid by the hour goes by the hours of each room, a sum for the job by area', () => {
    const bare = {
      ...demoOrder(),
      lines: [],
      totals: { ...demoOrder().totals, toPay: 100_00 },
    };
    // Nothing has a line: all of it by area. Of the demo 141.1, 78.1 and 242.9 sq ft, which make 462.2 (see demoRoom.ts).
    const byArea = roomPrices(bare).map((price) => price / 100);
    for (const [i, area] of [141.1, 78.1, 242.9].entries()) expect(byArea[i]).toBeCloseTo((100 * area) / 462.2, 1);
    const labour = demoOrder().lines.filter(({ item }) => item === 'Lay floors');
    const byHour = roomPrices({ ...bare, lines: labour, hours: bare.hours.map((room, i) => ({ ...room, hours: i })) });
    expect(byHour).toEqual([0, 3333, 6667]);
    const short = bare.hours.map((room, i) => ({ ...room, hours: [0.25, 0, 0.5][i] }));
    expect(roomPrices({ ...bare, lines: labour, hours: short })).toEqual([3333, 0, 6667]);
  });
});

// Ferry ash lies in the study alone; harbour oak in the two others, 141.1 and 242.9 sq ft of 384.
test.each([
  ['Ferry ash', [0, 100, 0]],
  ['Harbour oak', [36.745, 0, 63.255]],
])('%s is paid for by the rooms it lies in', (product, shares) => {
  const order = demoOrder();
  const lines = order.lines.filter(({ item }) => item === product);
  const prices = roomPrices({ ...order, lines, totals: { ...order.totals, toPay: 100_00 } });
  for (const [i, share] of shares.entries()) expect(prices[i] / 100).toBeCloseTo(share, 1);
});

describe('a price list for all rooms', () => {
  const priceWith = (price: number, priceFor: 'box' | 'area') =>
    demoOrder({ floors: demoJob.floors.map((floor) => ({ ...floor, price, priceFor })) }).lines[0].price;

  test('comes before what the rooms say', () => {
    expect(demoOrder().lines[0].price).toBe(52.93);
    expect(priceWith(60, 'box')).toBe(60);
  });

  test('by area a box costs what it covers: ten planks of 47 1/4 in by 7 1/2 in are 24.609375 sq ft', () => {
    expect((10 * 47.25 * 7.5) / 144).toBe(24.609375);
    expect(priceWith(2, 'area')).toBe(49.2188);
  });
});
