import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subtract } from '../../src/geometry/combine';
import { TICKS_PER_FOOT, type Ticks } from '../../src/geometry/length';
import { areaOf, type Region } from '../../src/geometry/polygon';
import { coverOf, type Roll, rollsFor, type StripDirection, stripsOf } from '../../src/order/underlay';
import { PLANK_UNDERLAY } from '../../src/sheet/orderFunctions';

const FT = TICKS_PER_FOOT;
const rectangle = (x: number, y: number, length: number, width: number): Region => [
  [
    { x: x * FT, y: y * FT },
    { x: (x + length) * FT, y: y * FT },
    { x: (x + length) * FT, y: (y + width) * FT },
    { x: x * FT, y: (y + width) * FT },
  ],
];
const roll = (width: number, length: number, overlap = 0): Roll => ({
  width: width * FT,
  length: length * FT,
  overlap: overlap * FT,
});
const feet = (strips: readonly Ticks[]) => strips.map((strip) => strip / FT);

// A strip of 3 ft over two arms that lie over each other between 3 and 5 ft, in the room and to the right in it: 8 ft.
test.each([
  [rectangle(0, 0, 5, 1), rectangle(3, 2, 5, 1)],
  [rectangle(3, 0, 5, 1), rectangle(0, 2, 5, 1)],
])('a strip over two arms of a room reaches over both', (one, other) => {
  expect(feet(stripsOf([...one, ...other], roll(3, 50), 'length').strips)).toEqual([8]);
});

// Strips of 3 ft over a room of 4 x 9 ft with a bay of 3 x 3 ft on either side: only the middle one is 10 ft long.
test('a strip is as long as the room within its own width', () => {
  const corners = [
    [3, 0],
    [7, 0],
    [7, 3],
    [10, 3],
    [10, 6],
    [7, 6],
    [7, 9],
    [3, 9],
    [3, 6],
    [0, 6],
    [0, 3],
    [3, 3],
  ];
  const plus = [corners.map(([x, y]) => ({ x: x * FT, y: y * FT }))];
  expect(feet(stripsOf(plus, roll(3, 50), 'length').strips)).toEqual([4, 10, 4]);
});

describe('lengths typed as decimals', () => {
  // By hand: 3 x 3.2 ft is 9.6 ft, and 3 x 8.3 ft is 24.9 ft.
  const [wide, long] = [9.6, 8.3].map((length) => Math.round(length * FT));
  const room = [[...rectangle(0, 0, 1, 1)[0].map(({ x, y }) => ({ x: (x / FT) * long, y: (y / FT) * wide }))]];
  const goods = { width: Math.round(3.2 * FT), length: Math.round(24.9 * FT), overlap: 0 };

  test('three strips of 3.2 ft cover 9.6 ft', () => {
    expect(stripsOf(room, goods, 'length').strips).toHaveLength(3);
  });

  test('and three of 8.3 ft come out of a roll of 24.9', () => {
    expect(coverOf([room], goods, 'length').rolls).toBe(1);
  });

  test('strips of many widths that fill their room by the sum: none over', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 999 }), fc.integer({ min: 1, max: 40 }), (hundredths, count) => {
        const depth = Math.round((hundredths * count * FT) / 100);
        const floor = [rectangle(0, 0, 10, 1)[0].map(({ x, y }) => ({ x, y: (y / FT) * depth }))];
        const strip = { width: Math.round((hundredths * FT) / 100), length: 50 * FT, overlap: 0 };
        expect(stripsOf(floor, strip, 'length').strips).toHaveLength(count);
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});

describe('strips over a room', () => {
  test('an L takes short strips where it is short: 10 x 8 ft less 6 x 4, strips of 4 ft', () => {
    const ell = subtract(rectangle(0, 0, 10, 8), rectangle(4, 4, 6, 4));
    expect(feet(stripsOf(ell, roll(4, 50), 'length').strips).sort((a, b) => a - b)).toEqual([4, 10]);
  });

  test('strips begin at the wall that takes less: 10 ft deep, recess of 4 ft at the far side, strips of 6 ft', () => {
    // From the near wall the second strip covers only the recess; from the far wall it covers both parts.
    const room = subtract(rectangle(0, 0, 12, 10), rectangle(5, 6, 7, 4));
    expect(feet(stripsOf(room, roll(6, 50), 'length').strips)).toEqual([12, 5]);
    const upsideDown = subtract(rectangle(0, 0, 12, 10), rectangle(5, 0, 7, 4));
    expect(feet(stripsOf(upsideDown, roll(6, 50), 'length').strips)).toEqual([12, 5]);
  });

  test('a U has two strips where its arms are', () => {
    const u = subtract(rectangle(0, 0, 12, 8), rectangle(4, 4, 5, 4));
    expect(feet(stripsOf(u, roll(4, 50), 'length').strips).sort((a, b) => a - b)).toEqual([3, 4, 12]);
  });

  test('an island narrower than a strip saves nothing', () => {
    const room = subtract(rectangle(0, 0, 12, 8), rectangle(4, 1, 5, 2));
    expect(feet(stripsOf(room, roll(4, 50), 'length').strips)).toEqual([12, 12]);
  });

  test('a strip longer than the roll is joined, each piece lapping the one before', () => {
    expect(feet(stripsOf(rectangle(0, 0, 50, 3), roll(4, 20), 'length').strips)).toEqual([20, 20, 10]);
    expect(feet(stripsOf(rectangle(0, 0, 50, 3), roll(4, 20, 1), 'length').strips)).toEqual([20, 20, 12]);
  });

  test('seams run between strips and across joined ones', () => {
    expect(stripsOf(rectangle(0, 0, 10, 8), roll(4, 50), 'length').seamLength).toBe(10 * FT);
    expect(stripsOf(rectangle(0, 0, 50, 8), roll(4, 30), 'length').seamLength).toBe((50 + 2 * 4) * FT);
    expect(stripsOf(rectangle(0, 0, 10, 4), roll(4, 50), 'length').seamLength).toBe(0);
  });

  test('a strip exactly as wide as what is left needs no other, nor does what rounding may add; 1/100 mm more does', () => {
    expect(stripsOf(rectangle(0, 0, 10, 7), roll(4, 50, 1), 'length').strips).toHaveLength(2);
    const wider = rectangle(0, 0, 10, 7).map((ring) => ring.map(({ x, y }) => ({ x, y: y > 0 ? y + 6 : y })));
    expect(stripsOf(wider, roll(4, 50, 1), 'length').strips).toHaveLength(3);
  });

  test('an overlap as wide as the roll is a caller’s mistake', () => {
    expect(() => stripsOf(rectangle(0, 0, 10, 7), roll(4, 50, 4), 'length')).toThrow(RangeError);
  });

  test('strips always cover the room, and turning it turns them', () => {
    const size = fc.integer({ min: 2, max: 30 });
    fc.assert(
      fc.property(size, size, fc.integer({ min: 1, max: 6 }), (length, width, rollWidth) => {
        const room = subtract(rectangle(0, 0, length, width), rectangle(length / 2, width / 2, length, width));
        const turned = room.map((ring) => ring.map(({ x, y }) => ({ x: -y, y: x })));
        for (const way of ['length', 'width'] as const) {
          const plan = stripsOf(room, roll(rollWidth, 40), way);
          const covered = plan.strips.reduce((sum, strip) => sum + strip * rollWidth * FT, 0);
          expect(covered).toBeGreaterThanOrEqual(areaOf(room));
          const other: StripDirection = way === 'length' ? 'width' : 'length';
          const sorted = (strips: readonly Ticks[]) => [...strips].sort((a, b) => a - b);
          expect(sorted(stripsOf(turned, roll(rollWidth, 40), other).strips)).toEqual(sorted(plan.strips));
        }
      }),
      { seed: 8, numRuns: 100 },
    );
  });
});

describe('rolls', () => {
  test('a strip is cut from any roll: 6 and 4 ft from one of 10, whatever the order', () => {
    expect(rollsFor([6 * FT, 6 * FT, 4 * FT, 4 * FT], roll(4, 10))).toBe(2);
  });

  test('the function takes whichever way needs fewer rolls', () => {
    // Along 21 ft no roll of 20 ft is long enough, and each strip is joined; across, two strips of 10 fit a roll.
    expect(PLANK_UNDERLAY(21, 10, 5, 20)).toBe(3);
    expect(PLANK_UNDERLAY(20, 12, 4, 25)).toBe(3);
  });

  test.each([
    ['an overlap as wide as the roll', [20, 12, 1, 25, 12], 'overlap: 12" is more than half of the roll'],
    ['a roll in the wrong unit', [90, 90, 0.001, 25], 'At most 5000 are laid out'],
    ['no length', ['', 12, 4, 25], 'length is blank.'],
  ])('%s gets a sentence', (_, given, words) => {
    expect(() => PLANK_UNDERLAY(...(given as [unknown, unknown, unknown, unknown]))).toThrow(words);
  });
});

test('rooms that share rolls take the ways that need the fewest for all of them', () => {
  // Held against every choice of ways.
  const rooms = [rectangle(0, 0, 13, 4), rectangle(0, 0, 10, 7), rectangle(0, 0, 9, 6)];
  const ours = coverOf(rooms, roll(4, 20), '');
  const ways: readonly StripDirection[] = ['length', 'width'];
  const plans = (room: Region) => ways.map((way) => stripsOf(room, roll(4, 20), way).strips);
  const [first, second, third] = rooms.map(plans);
  const every = first.flatMap((a) =>
    second.flatMap((b) => third.map((c) => rollsFor([...a, ...b, ...c], roll(4, 20)))),
  );
  expect(ours.rolls).toBe(Math.min(...every));
});
