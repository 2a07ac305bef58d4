import { EndType, inflatePaths, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { insetOf } from '../../src/geometry/inset';
import type { Point } from '../../src/geometry/point';
import { areaOf, boundsOf, contains, type Outline, partsOf, type Region } from '../../src/geometry/polygon';
import { differenceArea, perimeterOf, unlikeArea } from '../support/areaOracle';
import { crookedRegion, rectangle, squareRegion } from '../support/randomRooms';
import { seededRandom } from '../support/seededRandom';

function libraryInset(region: Region, gap: number): Region {
  const paths = region.map((outline) => outline.map(({ x, y }) => ({ x, y })));
  return inflatePaths(paths, -gap, JoinType.Miter, EndType.Polygon, 2);
}

const ROOM = 4_000_000;
const GAP = 6400;

describe('against Clipper2', () => {
  test('right-angled rooms lose the same strips to the square tick', () => {
    let compared = 0;
    for (let seed = 1; seed <= 600; seed++) {
      const region = squareRegion(seededRandom(seed), ROOM, 64_000);
      // Where parts touch in a corner the library rounds off differently; rooms do not fall apart like that.
      if (partsOf(region).length !== 1 || touchesItself(region)) continue;
      compared += 1;
      expect(unlikeArea(insetOf(region, GAP), libraryInset(region, GAP))).toBe(0);
    }
    expect(compared).toBeGreaterThan(150);
  });

  test('crooked rooms lose the same strips but for tips cut off past the mitre limit', () => {
    for (let seed = 1; seed <= 250; seed++) {
      const region = crookedRegion(seededRandom(seed), ROOM);
      const slack = 4 * perimeterOf(region) + region.flat().length * GAP * GAP * 2;
      expect(unlikeArea(insetOf(region, GAP), libraryInset(region, GAP))).toBeLessThanOrEqual(slack);
    }
  });
});

function touchesItself(region: Region): boolean {
  const corners = region.flat().map(({ x, y }) => `${x} ${y}`);
  return new Set(corners).size < corners.length;
}

function distanceTo(region: Region, p: Point): number {
  const distances = region.flatMap((outline) =>
    outline.map((a, i) => {
      const b = outline[(i + 1) % outline.length];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
      const at = Math.min(1, Math.max(0, share));
      return Math.sqrt((p.x - a.x - at * dx) ** 2 + (p.y - a.y - at * dy) ** 2);
    }),
  );
  return Math.min(...distances);
}

describe('distance from the walls', () => {
  test('no corner of what is left is nearer than the gap, and what is twice as far is left', () => {
    let [corners, places] = [0, 0];
    for (let seed = 1; seed <= 250; seed++) {
      const random = seededRandom(seed);
      const region = crookedRegion(random, ROOM);
      const rest = insetOf(region, GAP);
      for (const corner of rest.flat()) {
        corners += 1;
        expect(distanceTo(region, corner)).toBeGreaterThan(GAP - 2);
      }
      for (let i = 0; i < 30; i++) {
        const place = { x: random.whole(0, ROOM), y: random.whole(0, ROOM) };
        if (!contains(region, place) || distanceTo(region, place) < 2 * GAP) continue;
        places += 1;
        expect(contains(rest, place)).toBe(true);
      }
    }
    expect(Math.min(corners, places)).toBeGreaterThan(1000);
  });

  test('a wider gap never adds floor', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const region = crookedRegion(seededRandom(seed), ROOM);
      const [narrow, wide] = [insetOf(region, GAP), insetOf(region, 3 * GAP)];
      expect(differenceArea(wide, narrow)).toBeLessThanOrEqual(2 * perimeterOf(region));
    }
  });
});

describe('by hand', () => {
  const p = (x: number, y: number) => ({ x, y });
  const sorted = (outline: Outline) => outline.map(({ x, y }) => `${x} ${y}`).sort();

  test('a rectangle, a column and a step keep their right angles', () => {
    expect(insetOf([rectangle(0, 0, 100, 60)], 10)).toEqual([rectangle(10, 10, 80, 40)]);
    const column: Region = [rectangle(0, 0, 100, 60), [...rectangle(40, 20, 20, 20)].reverse()];
    expect(insetOf(column, 5).map(sorted)).toEqual([
      sorted(rectangle(5, 5, 90, 50)),
      sorted([...rectangle(35, 15, 30, 30)]),
    ]);
    const step: Region = [[p(0, 0), p(100, 0), p(100, 60), p(50, 60), p(50, 30), p(0, 30)]];
    // Floor: the outline moved 5 in on every side; the inside corner of the step keeps its right angle.
    expect(insetOf(step, 5).map(sorted)).toEqual([
      sorted([p(5, 5), p(95, 5), p(95, 55), p(55, 55), p(55, 25), p(5, 25)]),
    ]);
  });

  test('a 3-4-5 slope moves by the gap square to itself', () => {
    // The slope from (400, 0) to (0, 300) moved in by 60: 3x + 4y = 1200 - 5 x 60 = 900; the other two walls by 60.
    // It meets x = 60 at y = (900 - 180) / 4 = 180 and y = 60 at x = (900 - 240) / 3 = 220.
    expect(insetOf([[p(0, 0), p(400, 0), p(0, 300)]], 60).map(sorted)).toEqual([
      sorted([p(60, 60), p(220, 60), p(60, 180)]),
    ]);
  });

  test('beside a slope round an obstacle a level wall stays level to the tick', () => {
    // A near wall at y = 0 that turns down into a bay, at many slopes: its far line lies on y = gap, both corners of it.
    for (let rise = 17; rise < 3_000_000; rise = Math.round(rise * 1.7)) {
      const bay: Region = [
        [
          p(0, 0),
          p(2_000_000, 0),
          p(3_000_000, -rise),
          p(4_000_000, 0),
          p(6_000_000, 0),
          p(6_000_000, 5_000_000),
          p(0, 5_000_000),
        ],
      ];
      const corners = insetOf(bay, GAP).flat();
      expect(corners.filter((corner) => corner.y === GAP)).toHaveLength(4);
      expect(corners).toHaveLength(7);
    }
  });

  test('what is narrower than two gaps vanishes, a neck parts the room', () => {
    expect(insetOf([rectangle(0, 0, 100, 20)], 10)).toEqual([]);
    expect(insetOf([rectangle(0, 0, 100, 21)], 10)).toEqual([rectangle(10, 10, 80, 1)]);
    const neck: Region = [
      [
        p(0, 0),
        p(40, 0),
        p(40, 10),
        p(60, 10),
        p(60, 0),
        p(100, 0),
        p(100, 40),
        p(60, 40),
        p(60, 28),
        p(40, 28),
        p(40, 40),
        p(0, 40),
      ],
    ];
    expect(partsOf(insetOf(neck, 9))).toHaveLength(2);
    expect(partsOf(insetOf(neck, 8))).toHaveLength(1);
  });

  test('an open edge keeps its floor, the jambs beside it lose theirs', () => {
    // A room of 100 by 50 with a doorway 20 wide and 8 deep below it; the floor ends at y = -8 without a gap.
    const room: Region = [[p(0, 0), p(40, 0), p(40, -8), p(60, -8), p(60, 0), p(100, 0), p(100, 50), p(0, 50)]];
    const rest = insetOf(room, 5, (from, to) => from.y === -8 && to.y === -8);
    expect(rest.map(sorted)).toEqual([
      sorted([p(5, 5), p(45, 5), p(45, -8), p(55, -8), p(55, 5), p(95, 5), p(95, 45), p(5, 45)]),
    ]);
  });

  test('round a sharp tip the gap is cut off square to it, never nearer than the gap', () => {
    // A spike 2 wide and 40 long standing into the room.
    const spike: Region = [[p(0, 0), p(490, 0), p(500, 400), p(510, 0), p(1000, 0), p(1000, 1000), p(0, 1000)]];
    const rest = insetOf(spike, 50);
    expect(Math.min(...rest.flat().map((corner) => distanceTo(spike, corner)))).toBeGreaterThan(48);
    expect(contains(rest, p(500, 400 + 48))).toBe(false);
    expect(contains(rest, p(500, 400 + 52))).toBe(true);
  });

  // By hand: a tip of half its angle t, gap g. A mitre reaches g / sin t from the tip; cut off square it reaches g, and its
  // corners stand g (1 - sin t) / cos t from the middle. Cut off where the whole angle is under 60 degrees.
  test.each([20, 40, 58, 62, 80])('round a tip of %d degrees', (angle) => {
    const [g, reach, half] = [10_000, 400_000, (angle * Math.PI) / 360];
    const wide = Math.round(reach * Math.tan(half));
    const room: Region = [
      [
        p(0, 0),
        p(1_000_000 - wide, 0),
        p(1_000_000, reach),
        p(1_000_000 + wide, 0),
        ...[p(2_000_000, 0), p(2_000_000, 1_000_000), p(0, 1_000_000)],
      ],
    ];
    const rest = insetOf(room, g);
    const isCut = angle < 60;
    const far = isCut ? g : g / Math.sin(half);
    expect(contains(rest, p(1_000_000, Math.floor(reach + far - 20)))).toBe(false);
    expect(contains(rest, p(1_000_000, Math.ceil(reach + far + 20)))).toBe(true);
    const tips = rest.flat().filter(({ y }) => Math.abs(y - reach - far) <= 20);
    expect(tips).toHaveLength(isCut ? 2 : 1);
    const aside = isCut ? (g * (1 - Math.sin(half))) / Math.cos(half) : 0;
    for (const { x } of tips) expect(Math.abs(Math.abs(x - 1_000_000) - aside)).toBeLessThanOrEqual(20);
  });

  test('no gap changes nothing', () => {
    const region = crookedRegion(seededRandom(3), ROOM);
    expect(insetOf(region, 0)).toBe(region);
    expect(boundsOf(insetOf(region, 1)).x0).toBeGreaterThan(boundsOf(region).x0);
    expect(areaOf(insetOf(region, ROOM))).toBe(0);
  });
});

test('a spike without width, walked out and back, keeps its gap all round', () => {
  // A thin rail drawn as a line from the wall to (50, 60).
  const p = (x: number, y: number): Point => ({ x, y });
  const rail: Region = [[p(0, 0), p(50, 0), p(50, 60), p(50, 0), p(100, 0), p(100, 100), p(0, 100)]];
  const rest = insetOf(rail, 10);
  // 80 x 80 less the rail's strip: 20 wide from y = 10 to y = 70, cut off square to the tip.
  expect(areaOf(rest)).toBe(80 * 80 - 20 * 60);
});

test('beside a hairline no corner is lost', () => {
  // A part left beside a slanted wall, with a hairline along the wall where corners were rounded one by one.
  const part: Region = [
    [
      { x: 580_762, y: 124_608 },
      { x: 783_808, y: 82_227 },
      { x: 493_375, y: 142_848 },
      { x: 478_003, y: 142_848 },
      { x: 470_931, y: 108_960 },
      { x: 573_050, y: 87_648 },
    ],
  ];
  // Two ticks off its edges takes at most that width of its perimeter.
  expect(unlikeArea(insetOf(part, 2), part)).toBeLessThanOrEqual(3 * perimeterOf(part));
});
