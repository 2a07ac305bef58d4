import { area, PointInPolygonResult, pointInPolygon } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaOf,
  boundsOf,
  contains,
  firstMeeting,
  isSimple,
  type Outline,
  partsOf,
  signedAreaOf,
} from '../../src/geometry/polygon';
import { rectangle } from '../support/randomRooms';

/** Survey coordinates (north, east) in thousandths, as whole numbers. */
function surveyed(...corners: readonly (readonly [number, number])[]): Outline {
  return corners.map(([north, east]) => ({ x: Math.round(east * 1000), y: Math.round(north * 1000) }));
}

describe('areas printed in surveying texts', () => {
  // Source: J. Mahun, Open Access Surveying Library, Coordinate Geometry, chapter H: columns of products 2,190,612 and
  // 1,909,624, area 140,494 square feet. The products are rounded to feet there, which moves the area by up to a foot.
  const five = surveyed([406.31, 1259.97], [235.12, 1489.47], [65.81, 1126.4], [317.89, 942.04], [675.32, 1282.54]);
  // Source: the same library, Traverse Computations, chapter G, example 1, products printed to a tenth: 647,228.0 +
  // 822,865.2 + 1,070,602.9 + 843,478.0 and 780,713.0 + 481,641.5 + 889,019.1 + 1,438,672.0; half the difference:
  const four = surveyed([500, 2000], [323.614, 1561.426], [526.996, 1488.321], [719.336, 1686.956]);
  // Source: the same library, self-study problem on traverse areas: sums 877,890 and 1,378,989, 250,550 +/- 20.
  const parcel = surveyed([600, 1000], [254.542, 1209.288], [97.543, 566.876], [470.303, 397.969]);

  test.each([
    ['five corners, 140,494 from rounded products', five, 140_494, 1],
    ['four corners', four, 102_935.75, 0.2],
    ['a parcel, 250,550 +/- 20', parcel, 250_550, 20],
    // Source: an examination study guide, section 8.4: (0,0) (0,300) (200,300) (200,0).
    ['a rectangle of 200 by 300', surveyed([0, 0], [0, 300], [200, 300], [200, 0]), 60_000, 0],
  ])('%s', (_, outline, printed, tolerance) => {
    expect(Math.abs(Math.abs(signedAreaOf(outline)) / 1e6 - printed)).toBeLessThanOrEqual(tolerance);
  });

  // Trap: 235.12 x 1126.40 is 264,839 on the page and 264,489 in a copy; the printed sum needs the first.
  test('the printed column of products needs 264,839, not the 264,489 of a copy', () => {
    const products = five.map((p, i) => Math.round((p.y * five[(i + 1) % 5].x) / 1e6));
    const others = five.map((p, i) => Math.round((p.x * five[(i + 1) % 5].y) / 1e6));
    const sums = [products, others].map((column) => column.reduce((a, b) => a + b, 0));
    expect(Math.max(...sums) - Math.min(...sums)).toBe(2_190_612 - 1_909_624);
    expect([...products, ...others]).toContain(264_839);
  });

  test('start point and direction do not matter', () => {
    const turned = [...five.slice(2), ...five.slice(0, 2)];
    expect(signedAreaOf(turned)).toBe(signedAreaOf(five));
    expect(signedAreaOf([...five].reverse())).toBe(-signedAreaOf(five));
  });
});

const places = fc.record({ x: fc.integer({ min: 0, max: 6e6 }), y: fc.integer({ min: 0, max: 6e6 }) });

describe('against a polygon library', () => {
  test('areas of any corners agree', () => {
    fc.assert(
      fc.property(fc.array(places, { minLength: 3, maxLength: 12 }), (outline) => {
        // The library adds rounded terms; ours are exact until the sum passes 2^53.
        expect(signedAreaOf(outline)).toBeCloseTo(area(outline), -1);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test('what lies inside a simple outline agrees, edges included', () => {
    const near = fc.record({ x: fc.integer({ min: 0, max: 9 }), y: fc.integer({ min: 0, max: 9 }) });
    let compared = 0;
    fc.assert(
      fc.property(fc.array(near, { minLength: 3, maxLength: 6 }), near, (outline, place) => {
        if (!isSimple(outline)) return;
        compared += 1;
        const answer = pointInPolygon(place, outline as { x: number; y: number }[]);
        expect(contains([outline], place)).toBe(answer !== PointInPolygonResult.IsOutside);
      }),
      { seed: 7, numRuns: 3000 },
    );
    expect(compared).toBeGreaterThan(300);
  });
});

describe('simple or not', () => {
  const p = (x: number, y: number) => ({ x, y });
  test.each([
    ['a square', rectangle(0, 0, 4, 4), null],
    ['a corner on a straight wall', [p(0, 0), p(2, 0), p(4, 0), p(4, 4), p(0, 4)], null],
    ['a bow tie', [p(0, 0), p(4, 4), p(4, 0), p(0, 4)], [0, 2]],
    ['a corner that touches a wall', [p(0, 0), p(8, 0), p(8, 4), p(4, 0), p(0, 4)], [0, 2]],
    ['two walls along each other', [p(0, 0), p(8, 0), p(8, 4), p(6, 0), p(2, 0), p(0, 4)], [0, 2]],
    ['a wall that folds back', [p(0, 0), p(8, 0), p(4, 0), p(4, 4)], [0, 1]],
    ['a wall without length', [p(0, 0), p(8, 0), p(8, 0), p(4, 4)], [1, 1]],
    ['a triangle', [p(0, 0), p(8, 0), p(4, 4)], null],
    ['the last wall across the first', [p(0, 0), p(8, 0), p(8, 8), p(2, 8), p(6, -2)], [0, 3]],
  ])('%s', (_, outline, answer) => {
    expect(firstMeeting(outline)).toEqual(answer);
    expect(isSimple(outline)).toBe(answer === null);
  });
});

describe('regions', () => {
  const [wall, hole, island] = [rectangle(0, 0, 10, 10), [...rectangle(2, 2, 6, 6)].reverse(), rectangle(4, 4, 2, 2)];

  test('holes are taken off the area and are outside', () => {
    expect(areaOf([wall, hole, island])).toBe(100 - 36 + 4);
    expect(contains([wall, hole, island], { x: 3, y: 3 })).toBe(false);
    expect(contains([wall, hole, island], { x: 5, y: 5 })).toBe(true);
    expect(contains([wall, hole], { x: 2, y: 5 })).toBe(true);
  });

  test('an island in a hole is a part of its own', () => {
    expect(partsOf([wall, hole, island])).toEqual([
      { outline: wall, holes: [hole] },
      { outline: island, holes: [] },
    ]);
  });

  test('bounds take in every outline', () => {
    expect(boundsOf([rectangle(3, 4, 2, 2), rectangle(-5, 6, 1, 9)])).toEqual({ x0: -5, y0: 4, x1: 5, y1: 15 });
    expect(boundsOf([])).toEqual({ x0: 0, y0: 0, x1: 0, y1: 0 });
  });
});
