import { EndType, inflatePaths, JoinType } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { subtract, unite } from '../../src/geometry/combine';
import { areaOf, boundsOf, type Outline, partsOf, type Region } from '../../src/geometry/polygon';
import { bodyOf, floorOf } from '../../src/room/floor';
import type { MeasuredCutout, MeasuredDoorway, MeasuredRectangle, MeasuredWall } from '../../src/room/measured';
import { type Room, roomOf } from '../../src/room/outline';
import { differenceArea, perimeterOf, unlikeArea } from '../support/areaOracle';
import { inches } from '../support/floors';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const GAP = inches(3 / 8);

/** One to four rectangles on a grid of 6 in, added and taken away, some 8 to 20 ft. */
function randomRectangles(random: SeededRandom): MeasuredRectangle[] {
  const first = { fromLeft: 0, fromNear: 0, length: random.whole(16, 40), width: random.whole(16, 40) };
  const others = Array.from({ length: random.whole(0, 3) }, () => {
    const [length, width] = [random.whole(3, 14), random.whole(3, 14)];
    return { fromLeft: random.whole(-2, first.length), fromNear: random.whole(-2, first.width), length, width };
  });
  return [first, ...others].map(({ fromLeft, fromNear, length, width }, i) => ({
    change: i === 0 || random.whole(0, 1) === 0 ? 'add' : 'take away',
    fromLeft: fromLeft * inches(6),
    fromNear: fromNear * inches(6),
    length: length * inches(6),
    width: width * inches(6),
  }));
}

function randomCutouts(random: SeededRandom, wallCount: number): MeasuredCutout[] {
  return Array.from({ length: random.whole(0, 3) }, () => ({
    kind: 'rectangle',
    wallNumber: random.whole(1, wallCount),
    along: inches(random.whole(0, 60)),
    off: random.whole(0, 1) * inches(random.whole(1, 40)),
    length: inches(random.whole(1, 30)),
    depth: inches(random.whole(1, 30)),
  }));
}

function randomDoorways(random: SeededRandom, walls: Room['walls']): MeasuredDoorway[] {
  return walls.flatMap((wall): MeasuredDoorway[] => {
    const width = inches(random.whole(2, 48));
    if (random.whole(0, 2) > 0 || wall.length < width) return [];
    const floor = (['transition', 'goes on', 'stays shut'] as const)[random.whole(0, 2)];
    const along = random.whole(0, wall.length - width);
    return [{ wallNumber: wall.wallNumber, along, width, floor, depth: inches(random.whole(0, 6)) }];
  });
}

function shapeOf(rectangles: readonly MeasuredRectangle[]) {
  return { kind: 'rectangles', rectangles } as const;
}

/** A furnished room of right angles, or null where the random entry makes none. */
function randomRoom(random: SeededRandom): Room | null {
  const shape = shapeOf(randomRectangles(random));
  const bare = roomOf({ shape, cutouts: [], doorways: [] });
  if (bare.kind === 'faults') return null;
  const cutouts = randomCutouts(random, bare.room.walls.length);
  const doorways = randomDoorways(random, bare.room.walls);
  const furnished = roomOf({ shape, cutouts, doorways });
  return furnished.kind === 'room' ? furnished.room : null;
}

/** A rectangle between two corners, anticlockwise. */
function box(a: { x: number; y: number }, b: { x: number; y: number }): Outline {
  const [x0, x1] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [y0, y1] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

/**
 * The floor by Clipper2, another way: doorways are drawn a gap deeper than the floor runs, so that moving the whole
 * outline in by the gap leaves the floor where it ends.
 */
function libraryFloor(room: Room): Region {
  const tongues = room.doorways.flatMap(({ from, to, tongue, depth }) => {
    if (!tongue) return [];
    const longer = (depth + GAP) / depth;
    const end = { x: to.x + (tongue.endTo.x - to.x) * longer, y: to.y + (tongue.endTo.y - to.y) * longer };
    return [box(from, end)];
  });
  const open = subtract(unite([room.outline], tongues), room.taken);
  const paths = open.map((outline) => outline.map(({ x, y }) => ({ x, y })));
  return inflatePaths(paths, -GAP, JoinType.Miter, EndType.Polygon, 2);
}

function touchesItself(region: Region): boolean {
  const corners = region.flat().map(({ x, y }) => `${x} ${y}`);
  return new Set(corners).size < corners.length;
}

describe('random rooms with cut-outs and doorways', () => {
  test('their floor is that of Clipper2 to the square tick', () => {
    let [compared, withDoorways] = [0, 0];
    for (let seed = 1; seed <= 500; seed++) {
      const room = randomRoom(seededRandom(seed));
      // Where two outlines touch in a point the library rounds the gap another way.
      if (!room || touchesItself(room.open) || partsOf(room.open).length > 1) continue;
      compared += 1;
      if (room.openEnds.length > 0) withDoorways += 1;
      // A cut-out in front of a doorway's end takes gap from it that the deeper drawing cannot show.
      const blocked = areaOf(subtract(libraryFloor(room), room.open)) !== 0;
      if (!blocked) expect(unlikeArea(floorOf(room, GAP), libraryFloor(room))).toBe(0);
    }
    expect(Math.min(compared, withDoorways)).toBeGreaterThan(100);
  });

  test('a wider gap never adds floor, and the floor lies in the room and its doorways', () => {
    let compared = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const room = randomRoom(seededRandom(seed));
      if (!room) continue;
      compared += 1;
      const floor = floorOf(room, GAP);
      expect(differenceArea(floorOf(room, 2 * GAP), floor)).toBe(0);
      expect(differenceArea(floor, room.open)).toBe(0);
      expect(differenceArea(bodyOf(room, GAP), [room.outline])).toBe(0);
    }
    expect(compared).toBeGreaterThan(100);
  });
});

describe('the same walls walked from another corner', () => {
  /** Walls of a room of any angles: lengths as drawn, turns between them, in the order of the walk. */
  function walkOf(room: Room): MeasuredWall[] {
    return room.walls.map(({ length, along }, i) => {
      const next = room.walls[(i + 1) % room.walls.length].along;
      const turn =
        (-Math.atan2(along.x * next.y - along.y * next.x, along.x * next.x + along.y * next.y) * 180) / Math.PI;
      return { length, turn: Math.abs(turn - Math.round(turn)) < 1e-9 ? Math.round(turn) : turn };
    });
  }

  test('gives the same floor, turned', () => {
    let compared = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const room = randomRoom(random);
      if (!room || room.cutouts.length > 0) continue;
      const walls = walkOf(room);
      const start = random.whole(0, walls.length - 1);
      const again = roomOf({
        shape: { kind: 'walls in order', walls: [...walls.slice(start), ...walls.slice(0, start)] },
        cutouts: [],
        doorways: [],
      });
      if (again.kind === 'faults') throw new Error(JSON.stringify(again.faults));
      const { along } = room.walls[start];
      const turned = again.room.outline.map(({ x, y }) => ({
        x: x * along.x - y * along.y,
        y: x * along.y + y * along.x,
      }));
      const { x0, y0 } = boundsOf([turned]);
      const back = turned.map(({ x, y }) => ({ x: x - x0, y: y - y0 }));
      expect(unlikeArea([back], [room.outline])).toBe(0);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(40);
  });
});

describe('crooked rooms', () => {
  test('a hall out of square loses its gap along every wall', () => {
    // Walls of 12, 10, 12 and 10 ft, the diagonal an inch over a square one's: area less the perimeter's strips, corners
    // counted once: A - g P + g^2 (sum of cotangents of half the corner angles), here 4 corners near 90 degrees.
    const shape = {
      kind: 'four walls',
      walls: [inches(144), inches(120), inches(144), inches(120)],
      diagonal: inches(Math.sqrt(144 ** 2 + 120 ** 2) + 1),
      otherDiagonal: null,
    } as const;
    const result = roomOf({ shape, cutouts: [], doorways: [] });
    if (result.kind === 'faults') throw new Error(JSON.stringify(result.faults));
    const { outline } = result.room;
    const cosine = (144 ** 2 + 120 ** 2 - (Math.sqrt(144 ** 2 + 120 ** 2) + 1) ** 2) / (2 * 144 * 120);
    const angle = Math.acos(cosine);
    const corners = 2 / Math.tan(angle / 2) + 2 / Math.tan((Math.PI - angle) / 2);
    const wanted = 144 * 120 * Math.sin(angle) - (3 / 8) * 528 + (3 / 8) ** 2 * corners;
    const found = areaOf(floorOf(result.room, GAP)) / inches(1) ** 2;
    expect(Math.abs(found - wanted) * inches(1) ** 2).toBeLessThan(2 * perimeterOf([outline]));
  });
});
