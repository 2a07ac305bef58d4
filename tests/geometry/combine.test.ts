import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';
import { intersect, subtract, tidy, unite } from '../../src/geometry/combine';
import { areaOf, isSimple, partsOf, type Region } from '../../src/geometry/polygon';
import { differenceArea, intersectionArea, perimeterOf, unionArea, unlikeArea } from '../support/areaOracle';
import { crookedRegion, rectangle, squareRegion, tangledOutline } from '../support/randomRooms';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

/**
 * What whole coordinates may move: a crossing goes to the next tick, so each edge by less than a tick or two along its
 * length (the library rounds too), and small pieces of a tangle may come and go.
 */
function roundingOf(...regions: readonly Region[]): number {
  return 3 * regions.reduce((sum, region) => sum + perimeterOf(region), 0);
}

function expectAgreement(a: Region, b: Region): void {
  const slack = roundingOf(a, b);
  expect(Math.abs(areaOf(unite(a, b)) - unionArea(a, b))).toBeLessThanOrEqual(slack);
  expect(Math.abs(areaOf(subtract(a, b)) - differenceArea(a, b))).toBeLessThanOrEqual(slack);
  expect(Math.abs(areaOf(intersect(a, b)) - intersectionArea(a, b))).toBeLessThanOrEqual(slack);
}

const ROOM = 4_000_000;

describe('areas agree with Clipper2', () => {
  const kinds: readonly (readonly [string, (random: SeededRandom) => Region, number])[] = [
    ['crooked rooms with holes', (random) => crookedRegion(random, ROOM), 500],
    ['corners in any order, crossing themselves', (random) => [tangledOutline(random, ROOM)], 500],
    ['a coarse grid full of shared places', (random) => [tangledOutline(random, 12)], 500],
    ['right-angled rooms', (random) => squareRegion(random, ROOM, 64_000), 300],
  ];
  test.each(kinds)('%s', (_, make, count) => {
    for (let seed = 1; seed <= count; seed++) {
      const random = seededRandom(seed);
      expectAgreement(make(random), make(random));
    }
  });
});

test('regions of hundreds of edges agree with Clipper2', () => {
  // Thirty tangles, strewn over a room and lying over one another: 300 edges and a few thousand meetings.
  const strewn = (random: SeededRandom): Region =>
    Array.from({ length: 30 }, () => {
      const [dx, dy] = [random.whole(0, ROOM), random.whole(0, ROOM)];
      return tangledOutline(random, ROOM / 4).map(({ x, y }) => ({ x: x + dx, y: y + dy }));
    });
  for (let seed = 1; seed <= 20; seed++) {
    const random = seededRandom(seed);
    expectAgreement(strewn(random), strewn(random));
  }
});

test('right-angled rooms agree with polygon-clipping to the square tick', () => {
  for (let seed = 1; seed <= 400; seed++) {
    const random = seededRandom(seed);
    const [a, b] = [squareRegion(random, 640_000, 64_000), squareRegion(random, 640_000, 64_000)];
    expect(areaOf(unite(a, b))).toBe(otherArea('union', a, b));
    expect(areaOf(subtract(a, b))).toBe(otherArea('difference', a, b));
    expect(areaOf(intersect(a, b))).toBe(otherArea('intersection', a, b));
  }
});

function otherArea(operation: 'union' | 'difference' | 'intersection', a: Region, b: Region): number {
  const polygons = (region: Region) =>
    partsOf(region).map(({ outline, holes }) =>
      [outline, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y])),
    );
  const result = polygonClipping[operation](polygons(a), polygons(b));
  return result.flat().reduce((sum, ring) => sum + areaOf([ring.slice(0, -1).map(([x, y]) => ({ x, y }))]), 0);
}

describe('what comes out', () => {
  test('every hole of a right-angled room lies in an outline, and tidying it again changes nothing', () => {
    for (let seed = 1; seed <= 400; seed++) {
      const random = seededRandom(seed);
      const region = squareRegion(random, 1000, 100);
      const placed = partsOf(region).reduce((sum, part) => sum + 1 + part.holes.length, 0);
      expect(placed).toBe(region.length);
      expect(unlikeArea(tidy(region), region)).toBe(0);
      expect(tidy(region).flat().length).toBe(region.flat().length);
    }
  });

  test('the parts are disjoint: their areas add up to what the library makes of all of them', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const region = unite([tangledOutline(random, ROOM)], [tangledOutline(random, ROOM)]);
      const apart = partsOf(region).map(({ outline, holes }) => areaOf([outline, ...holes]));
      expect(Math.min(...apart)).toBeGreaterThan(0);
      const sum = apart.reduce((a, b) => a + b, 0);
      expect(Math.abs(sum - unionArea(region, []))).toBeLessThanOrEqual(roundingOf(region));
    }
  });

  test('taking away and adding again gives the whole', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const [a, b] = [crookedRegion(random, ROOM), crookedRegion(random, ROOM)];
      const whole = unite(subtract(a, b), intersect(a, b));
      expect(unlikeArea(whole, a)).toBeLessThanOrEqual(roundingOf(a, b));
    }
  });
});

describe('places where outlines meet', () => {
  const square = rectangle(0, 0, 10, 10);
  test.each([
    ['side by side along a whole wall', [square], [rectangle(10, 0, 10, 10)], 1, 4, 200],
    ['side by side along part of a wall', [square], [rectangle(10, 2, 5, 5)], 1, 8, 125],
    ['corner to corner', [square], [rectangle(10, 10, 5, 5)], 2, 8, 125],
    ['the same twice', [square], [square], 1, 4, 100],
    ['one inside the other against a wall', [square], [rectangle(0, 2, 3, 3)], 1, 4, 100],
    ['with nothing', [square], [], 1, 4, 100],
    ['round a corner, touching itself', [square, rectangle(20, 0, 5, 10)], [rectangle(10, 0, 10, 2)], 1, 8, 170],
  ])('adding %s', (_, a, b, partCount, cornerCount, area) => {
    const whole = unite(a, b);
    expect(partsOf(whole)).toHaveLength(partCount);
    expect(whole.flat()).toHaveLength(cornerCount);
    expect(areaOf(whole)).toBe(area);
  });

  test.each([
    ['a hole in the middle', rectangle(4, 4, 2, 2), 1, 8, 96],
    ['a piece out of a wall', rectangle(4, 8, 2, 2), 1, 8, 96],
    ['a corner', rectangle(8, 8, 2, 2), 1, 6, 96],
    ['a strip right through', rectangle(4, -1, 2, 12), 2, 8, 80],
    ['everything', rectangle(-1, -1, 12, 12), 0, 0, 0],
    ['exactly everything', square, 0, 0, 0],
    ['what only touches', rectangle(10, 0, 5, 5), 1, 4, 100],
    // A diamond that touches all four walls leaves four corners that meet in points only.
    [
      'a diamond from wall to wall',
      [
        { x: 5, y: 0 },
        { x: 10, y: 5 },
        { x: 5, y: 10 },
        { x: 0, y: 5 },
      ],
      4,
      12,
      50,
    ],
    // A hole that touches one wall in a point: the floor stays one part, and its outline passes that point twice.
    [
      'a triangle that touches a wall',
      [
        { x: 5, y: 0 },
        { x: 7, y: 4 },
        { x: 3, y: 4 },
      ],
      1,
      8,
      92,
    ],
  ])('taking away %s', (_, taken, partCount, cornerCount, area) => {
    const rest = subtract([square], [taken]);
    expect(partsOf(rest)).toHaveLength(partCount);
    expect(rest.flat()).toHaveLength(cornerCount);
    expect(areaOf(rest)).toBe(area);
  });

  test('a slanted wall cut in many places stays one edge', () => {
    // Nine strips laid along a slope of 100 in 997 and added one by one: no corner of any of them may stay.
    const slope = (x: number) => ({ x, y: 1000 + Math.round((x * 100_000) / 997_000) });
    const room: Region = [[{ x: 0, y: 0 }, { x: 997_000, y: 0 }, slope(997_000), slope(0)]];
    const strips = Array.from({ length: 9 }, (_, i) => rectangle(i * 111_111, -5, 111_111, 2_000_000));
    const back = strips.reduce<Region>((sum, strip) => unite(sum, intersect(room, [strip])), []);
    expect(unlikeArea(back, room)).toBeLessThanOrEqual(perimeterOf(room));
    expect(isSimple(intersect(room, [rectangle(-5, -5, 2_000_000, 2_000_000)])[0])).toBe(true);
    expect(subtract(room, [rectangle(400_000, 0, 100_000, 500)]).flat()).toHaveLength(8);
    expect(subtract(room, [rectangle(400_000, 30_000, 1000, 50_000)]).flat()).toHaveLength(8);
  });
});

describe('nothing upsets it', () => {
  // Edges a few ticks apart over a long way: cutting them where they cross, again and again, would not come to an end.
  const p = (x: number, y: number) => ({ x, y });
  test.each<readonly [string, Region, Region]>([
    ['1000 ticks long', [[p(20, 8), p(996, 5), p(2, 8)]], [[p(7, 4), p(1000, 4), p(17, 9)]]],
    [
      '150 mm long',
      [[p(1822, 5), p(98_233, 8), p(1433, 5)]],
      [[p(1297, 4), p(99_830, 9), p(1853, 9), p(99_357, 9), p(565, 2)]],
    ],
    [
      '100 m long',
      [[p(1_151_162, 0), p(63_464_532, 2), p(363_488, 2)]],
      [[p(739_906, 0), p(63_087_298, 0), p(348_518, 0), p(63_027_114, 1)]],
    ],
  ])('slivers across each other, %s', (_, a, b) => {
    expectAgreement(a, b);
  });

  test('needles, spikes and slopes of near-parallel edges, up to 100 m', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const [dx, dy] = [random.whole(1, 7), random.whole(1, 7)];
      const slope: Region = [
        Array.from({ length: random.whole(4, 12) }, () => {
          const far = random.whole(0, 20);
          return { x: far * dx + random.whole(-1, 1), y: far * dy + random.whole(-1, 1) };
        }),
      ];
      const end = 64_000_000;
      const needle: Region = [
        [
          { x: random.whole(0, 100), y: random.whole(0, 100) },
          { x: end - random.whole(0, 100), y: random.whole(0, 5) },
          { x: end - random.whole(0, 100), y: random.whole(3, 12) },
          { x: random.whole(0, 50), y: random.whole(0, 9) },
        ],
      ];
      for (const [a, b] of [
        [slope, needle],
        [needle, [...needle, ...slope]],
        [slope, slope.map((outline) => outline.map(({ x, y }) => ({ x: x + 1, y })))],
      ]) {
        // Rounding at these sizes is as large as the shapes; what must hold is that the parts fit together.
        const [whole, rest, common] = [unite(a, b), subtract(a, b), intersect(a, b)];
        const slack = roundingOf(a, b);
        expect(Math.abs(areaOf(rest) + areaOf(common) - areaOf(tidy(a)))).toBeLessThanOrEqual(slack);
        expect(Math.abs(areaOf(whole) - areaOf(rest) - areaOf(tidy(b)))).toBeLessThanOrEqual(slack);
      }
    }
  });
});
