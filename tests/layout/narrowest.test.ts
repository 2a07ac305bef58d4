import { describe, expect, test } from 'vitest';
import { ticksOfMm } from '../../src/geometry/length';
import type { Outline } from '../../src/geometry/polygon';
import { narrowestOf, thinStretchesOf } from '../../src/layout/narrowest';

const mm = (...places: readonly (readonly [number, number])[]): Outline =>
  places.map(([x, y]) => ({ x: ticksOfMm(x), y: ticksOfMm(y) }));

function narrowest(outline: Outline, holes: readonly Outline[] = []): number {
  return narrowestOf({ outline, holes }, ticksOfMm(192)).width / ticksOfMm(1);
}

test('the wedges beside a pipe that just reaches over the line of the row do not count', () => {
  // Sixteen sides round (1000, 28), 30 to the middle of a side. The lowest lies at -2 and is 2 * 30 * tan(11.25) =
  // 11.935 long; the next rise at 22.5 degrees and meet the line of the row 2 / tan(22.5) = 4.828 further out. Over
  // the pipe 192 - 58 = 134 stay. Either wedge is 0 at its tip and some 20 long.
  const toCorner = 30 / Math.cos(Math.PI / 16);
  const corners = Array.from({ length: 16 }, (_, i): readonly [number, number] => {
    const angle = (Math.PI * (2 * i + 1)) / 16;
    return [1000 + toCorner * Math.cos(angle), 28 + toCorner * Math.sin(angle)];
  });
  const above = corners.filter(([, y]) => y > 0);
  // From the right, over the top, to the left: as an outline anticlockwise goes round the floor, the other way.
  const right = above.filter(([x, y]) => x > 1000 && y < 28).reverse();
  const top = above.filter(([, y]) => y > 28);
  const left = above.filter(([x, y]) => x < 1000 && y < 28).reverse();
  const arc = [...right.sort((a, b) => a[1] - b[1]), ...top, ...left.sort((a, b) => b[1] - a[1])].reverse();
  const out = 30 * Math.tan(Math.PI / 16) + 2 / Math.tan(Math.PI / 8);
  const floor = mm([0, 0], [1000 - out, 0], ...arc, [1000 + out, 0], [3000, 0], [3000, 192], [0, 192]);
  expect(narrowest(floor)).toBeCloseTo(134, 2);
});

test('a taper that runs out over more than the width of a plank counts, also beside a fork', () => {
  // A wall leaves the start edge at 1000 and reaches 40 in at 2000, where the room ends square: the wood above narrows.
  expect(narrowest(mm([0, 0], [1000, 0], [2000, 40], [2000, 192], [0, 192]))).toBeCloseTo(152, 2);
  // A tongue of floor under a square column runs out from 60 to 0 between 800 and 1100.
  expect(narrowest(mm([0, 0], [1100, 0], [800, 60], [800, 100], [2000, 100], [2000, 192], [0, 192]))).toBe(0);
});

// The same tongue, as long as a plank is wide or a hair shorter: what is left then is the wood over the column, 92.
test.each([
  [992, 0],
  [991.9, 92],
])('a tongue from 800 to %d leaves %d', (tip, width) => {
  expect(narrowest(mm([0, 0], [tip, 0], [800, 60], [800, 100], [2000, 100], [2000, 192], [0, 192]))).toBe(width);
});

// 192 across: an end that runs back 384 rises 1 in 2 and is a crosscut; a hair more, and it is a taper that runs out.
test.each([
  [1616, 192],
  [1615.9, 0],
])('an end from 2000 to %d leaves %d', (back, width) => {
  expect(narrowest(mm([0, 0], [2000, 0], [back, 192], [0, 192]))).toBe(width);
});

test('a strip beside a square column counts however short it is', () => {
  const column = [...mm([500, 20], [600, 20], [600, 120], [500, 120])].reverse();
  expect(narrowest(mm([0, 0], [2000, 0], [2000, 192], [0, 192]), [column])).toBe(20);
});

test('a floor that is nothing but a short wedge answers its tip', () => {
  expect(narrowest(mm([0, 0], [150, 0], [0, 60]))).toBe(0);
});

describe('stretches narrower than 10 mm', () => {
  /** From and to, the width at the widest and the corners, mm; whether it is the tip of a taper. */
  const thin = (outline: Outline) =>
    thinStretchesOf({ outline, holes: [] }, ticksOfMm(192), ticksOfMm(10)).map(
      ({ from, to, width, isTip, outlines }) => ({
        ...{ from: from / 640, to: to / 640, width: width / 640, isTip },
        corners: outlines.flat().map(({ x, y }) => [x / 640, y / 640]),
      }),
    );

  // By hand: 4 wide at 500 and 64 at 1500 is 0.06 a mm: 10 at 600. Both edges slope, by 0.01 and 0.07.
  test('of a taper: as far as it is narrower, and it widens without a step', () => {
    const [tip, ...others] = thin(mm([500, 0], [1500, 10], [1500, 74], [500, 4]));
    expect(others).toEqual([]);
    expect(tip).toEqual({
      ...{ from: 500, to: 600, width: 10, isTip: true },
      corners: [
        [500, 0],
        [600, 1],
        [600, 11],
        [500, 4],
      ],
    });
  });

  test('of the same taper the other way round', () => {
    const [tip] = thin(mm([500, 10], [1500, 0], [1500, 4], [500, 74]));
    expect(tip).toMatchObject({ from: 1400, to: 1500, width: 10, isTip: true });
    expect(tip.corners).toEqual([
      [1400, 1],
      [1500, 0],
      [1500, 4],
      [1400, 11],
    ]);
  });

  test('of a strip that is narrow from end to end: no tip', () => {
    expect(thin(mm([100, 0], [900, 0], [900, 8], [100, 8]))).toMatchObject([
      { from: 100, to: 900, width: 8, isTip: false },
    ]);
    expect(thin(mm([100, 0], [900, 0], [900, 10], [100, 10]))).toEqual([]);
  });

  // 8 wide up to 500, then 8 to 6 up to 700, then 6: narrow all along, whatever corners lie between; and a second strip alone.
  test('of a strip with corners in it: one stretch', () => {
    const bent = mm([100, 0], [500, 0], [700, 2], [900, 2], [900, 8], [100, 8]);
    expect(thin(bent)).toMatchObject([{ from: 100, to: 900, width: 8, isTip: false }]);
    const wide = mm([100, 0], [500, 0], [500, -20], [600, -20], [600, 0], [900, 0], [900, 8], [100, 8]);
    expect(thin(wide).map(({ from, to }) => [from, to])).toEqual([
      [100, 500],
      [600, 900],
    ]);
  });

  // Places that are not whole ticks go outwards: no hair of the strip is left behind.
  test('its outline covers it, to the tick', () => {
    const p = (x: number, y: number) => ({ x, y });
    const part = { outline: [p(0, 0), p(900_001, 7000), p(900_001, 64_001), p(0, 3001)], holes: [] };
    const [{ outlines, to, width }] = thinStretchesOf(part, ticksOfMm(192), 6400);
    const [[, lowRight, highRight]] = outlines;
    // By hand: the edges are 3001 + x (54000 / 900001) apart, so 6400 at x = 56650.06.
    expect([to, width]).toEqual([56_650, 6400]);
    expect([lowRight.y, highRight.y]).toEqual([
      Math.floor((7000 * 56_650) / 900_001),
      Math.ceil(3001 + (61_000 * 56_650) / 900_001),
    ]);
  });
});
