import { describe, expect, test } from 'vitest';
import { areaOf, boundsOf, contains, partsOf, type Region } from '../../src/geometry/polygon';
import { levelStripOf, sideOfLine, uprightStripOf } from '../../src/geometry/strip';
import { differenceArea, intersectionArea, perimeterOf, unlikeArea } from '../support/areaOracle';
import { crookedRegion, rectangle, squareRegion } from '../support/randomRooms';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const ROOM = 4_000_000;

function anyRegion(random: SeededRandom): Region {
  const kind = random.whole(0, 2);
  if (kind === 0) return squareRegion(random, ROOM, 64_000);
  return kind === 1 ? crookedRegion(random, ROOM) : crookedRegion(random, 40);
}

describe('strips against Clipper2', () => {
  test('a strip is what lies between two heights, and never more', () => {
    for (let seed = 1; seed <= 1500; seed++) {
      const random = seededRandom(seed);
      const region = anyRegion(random);
      const { x0, x1, y0, y1 } = boundsOf(region);
      const low = random.whole(y0 - 5, y1);
      const band = rectangle(x0 - 9, low, x1 - x0 + 18, random.whole(1, y1 - y0 + 5));
      const strip = levelStripOf(region, low, band[2].y);
      const slack = 2 * perimeterOf(region);
      expect(Math.abs(areaOf(strip) - intersectionArea(region, [band]))).toBeLessThanOrEqual(slack);
      expect(differenceArea(strip, region)).toBeLessThanOrEqual(slack);
    }
  });

  test('strips one above the other make the whole again', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const random = seededRandom(seed);
      const region = anyRegion(random);
      const { y0, y1 } = boundsOf(region);
      const heights = [y0, ...Array.from({ length: 6 }, () => random.whole(y0, y1)).sort((a, b) => a - b), y1];
      const strips = heights.slice(1).flatMap((high, i) => levelStripOf(region, heights[i], high));
      const lost = areaOf(region) - areaOf(strips);
      // Neighbouring strips share the corners on their line, so right-angled rooms come back to the square tick.
      expect(Math.abs(lost)).toBeLessThanOrEqual(2 * perimeterOf(region));
      if (region.every((o) => o.every((p, i) => p.x === o[(i + 1) % o.length].x || p.y === o[(i + 1) % o.length].y))) {
        expect(lost).toBe(0);
      }
    }
  });

  test('upright strips are level strips of the room turned by a right angle', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const random = seededRandom(seed);
      const region = anyRegion(random);
      const { x0, x1 } = boundsOf(region);
      const low = random.whole(x0, x1);
      const high = low + random.whole(1, x1 - x0 + 1);
      const turned = region.map((outline) => outline.map(({ x, y }) => ({ x: 0 - y, y: x })));
      const back = levelStripOf(turned, low, high).map((outline) => outline.map(({ x, y }) => ({ x: y, y: 0 - x })));
      expect(unlikeArea(uprightStripOf(region, low, high), back)).toBe(0);
    }
  });
});

describe('corners on the line', () => {
  const p = (x: number, y: number) => ({ x, y });
  const triangle: Region = [[p(0, 0), p(10, 0), p(5, 9)]];

  test('are rounded towards the inside on both slopes', () => {
    // At height 4 the left slope is at 4 x 5/9 = 2.22 and the right one at 10 - 2.22 = 7.78.
    expect(levelStripOf(triangle, 0, 4)[0]).toEqual(expect.arrayContaining([p(3, 4), p(7, 4)]));
    expect(levelStripOf(triangle, 4, 9)[0]).toEqual(expect.arrayContaining([p(3, 4), p(7, 4)]));
  });

  test('a line through a corner, along a wall and past the room', () => {
    expect(sideOfLine(triangle, { y: 9 }, 1)).toEqual([]);
    expect(areaOf(sideOfLine(triangle, { x: 5 }, 1))).toBe(22.5);
    expect(sideOfLine(triangle, { y: 0 }, 1)).toEqual(triangle);
    expect(sideOfLine(triangle, { y: 0 }, -1)).toEqual([]);
    expect(sideOfLine(triangle, { x: 11 }, 1)).toEqual([]);
  });

  // Two legs on a foot: x 0..4 and 6..10 up to 10, joined below 3.
  const legs: Region = [[p(0, 0), p(10, 0), p(10, 10), p(6, 10), p(6, 3), p(4, 3), p(4, 10), p(0, 10)]];

  test('a U falls into two above its foot and stays one below', () => {
    expect(partsOf(levelStripOf(legs, 3, 10))).toHaveLength(2);
    expect(partsOf(levelStripOf(legs, 5, 8))).toHaveLength(2);
    expect(partsOf(levelStripOf(legs, 0, 3))).toHaveLength(1);
    expect(partsOf(levelStripOf(legs, 2, 8))).toHaveLength(1);
    expect(areaOf(levelStripOf(legs, 2, 8))).toBe(6 * 10 - 2 * 5);
  });

  test('a hole inside stays a hole, cut it becomes a notch or divides the strip', () => {
    const ring: Region = [rectangle(0, 0, 10, 10), [...rectangle(4, 4, 2, 2)].reverse()];
    expect(partsOf(levelStripOf(ring, 3, 7))[0].holes).toHaveLength(1);
    expect(levelStripOf(ring, 5, 9)).toHaveLength(1);
    expect(levelStripOf(ring, 5, 9)[0]).toHaveLength(8);
    expect(partsOf(levelStripOf(ring, 4, 6))).toHaveLength(2);
    expect(partsOf(levelStripOf(ring, 4, 5))).toHaveLength(2);
    expect(contains(levelStripOf(ring, 5, 9), p(5, 5))).toBe(false);
    expect(contains(levelStripOf(ring, 5, 9), p(5, 6))).toBe(true);
    expect(areaOf(levelStripOf(ring, 5, 9))).toBe(38);
  });

  test('a strip that touches a corner of a hole is divided there', () => {
    const diamond: Region = [rectangle(0, 0, 10, 10), [p(5, 2), p(3, 5), p(5, 8), p(7, 5)]];
    expect(partsOf(levelStripOf(diamond, 2, 8))).toHaveLength(2);
    expect(areaOf(levelStripOf(diamond, 2, 8))).toBe(48);
    expect(partsOf(levelStripOf(diamond, 1, 8))).toHaveLength(1);
  });
});
