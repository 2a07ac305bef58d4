/** Rounding towards the inside of the room, against whole-number arithmetic of any size. */
import { describe, expect, test } from 'vitest';
import { inwards, xAtHeight, yAtWidth } from '../../src/geometry/inwards';
import { seededRandom } from '../support/seededRandom';

test.each([
  [2.4, 1, 3],
  [2.6, -1, 2],
  [2.4, 0.25, 3],
  [2.6, -0.25, 2],
  [2.4, 0, 2],
  [2.6, 0, 3],
  [-2.4, 1, -2],
  [-2.4, -1, -3],
  [-2.6, 0, -3],
  [7, 1, 7],
  [7, -1, 7],
  [7, 0, 7],
])('%d towards %d is %d', (value, towards, ticks) => {
  expect(inwards(value, towards)).toBe(ticks);
});

/** a + n / d, d not 0, rounded up or down. */
function exactly(a: number, n: bigint, d: bigint, isUp: boolean): number {
  const [top, bottom] = d < 0n ? [-n, -d] : [n, d];
  const down = top / bottom - (top % bottom < 0n ? 1n : 0n);
  return a + Number(down + (isUp && top % bottom !== 0n ? 1n : 0n));
}

/** What times `value` is 1 modulo `modulus`: Euclid's algorithm, extended. */
function inverseOf(value: number, modulus: number): number {
  let [a, b, u, v] = [BigInt(modulus), BigInt(value), 0n, 1n];
  while (b !== 0n) [a, b, u, v] = [b, a % b, v, u - (a / b) * v];
  if (a !== 1n) throw new Error(`${value} and ${modulus} have a common factor`);
  return Number(((u % BigInt(modulus)) + BigInt(modulus)) % BigInt(modulus));
}

describe('where an edge is at a height or a width, up to 100 m and its whole ticks next to it', () => {
  const MOST = 64_000_000;
  const random = seededRandom(5);
  const edges = Array.from({ length: 4000 }, (_, i) => {
    // Half of them short or nearly level, where quotients are large or nearly whole.
    const reach = i % 2 === 0 ? MOST : 40;
    const a = { x: random.whole(-MOST, MOST), y: random.whole(-MOST, MOST) };
    const b = { x: a.x + random.whole(-MOST, MOST), y: a.y + random.whole(-reach, reach) };
    return { a, b, share: random.whole(0, 1000) / 1000 };
  });

  // The inside is on the left of a -> b: of an edge that goes up it lies at smaller x, of one that goes down at larger.
  test('x at a height', () => {
    let slanted = 0;
    for (const { a, b, share } of edges) {
      if (a.y === b.y) continue;
      const y = a.y + Math.round(share * (b.y - a.y));
      const n = BigInt(b.x - a.x) * BigInt(y - a.y);
      expect(xAtHeight(a, b, y)).toBe(exactly(a.x, n, BigInt(b.y - a.y), b.y < a.y));
      slanted += 1;
    }
    expect(slanted).toBeGreaterThan(3900);
  });

  // Of an edge that goes right the inside lies above, of one that goes left below.
  test('y at a width', () => {
    for (const { a, b, share } of edges) {
      if (a.x === b.x) continue;
      const x = a.x + Math.round(share * (b.x - a.x));
      const n = BigInt(b.y - a.y) * BigInt(x - a.x);
      expect(yAtWidth(a, b, x)).toBe(exactly(a.y, n, BigInt(b.x - a.x), b.x > a.x));
    }
  });

  // The reach of the edge is the inverse of the height modulo its rise, so that reach x height is one more than a multiple of it;
  // with the inverse taken off the rise, one less.
  test('x one part beside a whole tick, in dividends of nearly 100 m x 100 m', () => {
    for (const rise of [63_999_979, 63_999_997, 50_331_653]) {
      for (const height of [rise - 2, Math.floor(rise / 1.01), Math.floor(rise / 1.5)]) {
        const inverse = inverseOf(height, rise);
        for (const reach of [inverse, rise - inverse]) {
          const [low, high] = [
            { x: 0, y: 0 },
            { x: reach, y: rise },
          ];
          const n = BigInt(reach) * BigInt(height);
          expect([1n, BigInt(rise) - 1n]).toContain(n % BigInt(rise));
          expect(xAtHeight(low, high, height)).toBe(exactly(0, n, BigInt(rise), false));
          expect(xAtHeight(high, low, height)).toBe(exactly(0, n, BigInt(rise), true));
        }
      }
    }
  });

  test('a whole value stays as it is', () => {
    const [a, b] = [
      { x: 0, y: 0 },
      { x: 30, y: 40 },
    ];
    expect([xAtHeight(a, b, 20), xAtHeight(b, a, 20), yAtWidth(a, b, 15), yAtWidth(b, a, 15)]).toEqual([
      15, 15, 20, 20,
    ]);
    expect([xAtHeight(a, b, 21), xAtHeight(b, a, 21), yAtWidth(a, b, 16), yAtWidth(b, a, 16)]).toEqual([
      15, 16, 22, 21,
    ]);
  });
});
