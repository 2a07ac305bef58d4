import { expect, test } from 'vitest';
import { ticksOfMm } from '../../src/geometry/length';
import type { Outline } from '../../src/geometry/polygon';
import { narrowestOf } from '../../src/layout/narrowest';

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

test('a strip beside a square column counts however short it is', () => {
  const column = [...mm([500, 20], [600, 20], [600, 120], [500, 120])].reverse();
  expect(narrowest(mm([0, 0], [2000, 0], [2000, 192], [0, 192]), [column])).toBe(20);
});

test('a floor that is nothing but a short wedge answers its tip', () => {
  expect(narrowest(mm([0, 0], [150, 0], [0, 60]))).toBe(0);
});
