import { describe, expect, test } from 'vitest';
import { areaOf, type Region } from '../../src/geometry/polygon';
import { floorOf } from '../../src/room/floor';
import type { MeasuredDoorway, MeasuredShape } from '../../src/room/measured';
import { roomAreaOf, roomOf } from '../../src/room/outline';
import { perimeterOf, unlikeArea } from '../support/areaOracle';
import { cornersInInches, feet, goodRoom, inches, rectangular, walked } from '../support/floors';

const [R, L] = [90, -90];

function faultsOf(shape: MeasuredShape, furniture: Partial<Parameters<typeof roomOf>[0]> = {}) {
  const result = roomOf({ shape, cutouts: [], doorways: [], ...furniture });
  return result.kind === 'faults' ? result.faults : [];
}

describe('one room entered in every way that can express it', () => {
  // 12 ft by 10 ft; the diagonal is the square root of 244 ft, 187.446 in.
  const diagonal = Math.round(feet(Math.sqrt(244)));
  const part = (change: 'add' | 'take away', x: number, y: number, length: number, width: number) =>
    ({ change, fromLeft: feet(x), fromNear: feet(y), length: feet(length), width: feet(width) }) as const;
  const rectangles: readonly (readonly [string, MeasuredShape])[] = [
    ['walls to the right', walked([12, R], [10, R], [12, R], [10])],
    ['walls to the left', walked([12, L], [10, L], [12, L], [10, L])],
    ['a wall in two lengths', walked([5, 0], [7, R], [10, R], [12, R], [10])],
    [
      'four walls and a diagonal to 1/16 in',
      {
        kind: 'four walls',
        walls: [feet(12), feet(10), feet(12), feet(10)],
        diagonal: inches(187 + 7 / 16),
        otherDiagonal: null,
      },
    ],
    [
      'four walls and both diagonals',
      { kind: 'four walls', walls: [feet(12), feet(10), feet(12), feet(10)], diagonal, otherDiagonal: diagonal },
    ],
    [
      'two rectangles side by side',
      { kind: 'rectangles', rectangles: [part('add', 0, 0, 5, 10), part('add', 5, 0, 7, 10)] },
    ],
    [
      'a larger rectangle less a strip, off the corner',
      { kind: 'rectangles', rectangles: [part('add', -3, 2, 15, 10), part('take away', -3, 2, 3, 10)] },
    ],
  ];
  test.each(rectangles)('rectangle: %s', (_, shape) => {
    const [plain, room] = [goodRoom(rectangular(12, 10)), goodRoom(shape)];
    expect(unlikeArea(floorOf(room, inches(3 / 8)), floorOf(plain, inches(3 / 8)))).toBe(0);
    expect(room.notes.filter((note) => note.code !== 'taken as square')).toEqual([]);
  });

  // An L: 12 ft along the far wall, 6 ft down, 5 ft back, 4 ft down, 7 ft back, 10 ft up. 72 + 28 = 100 sq ft.
  const lRooms: readonly (readonly [string, MeasuredShape])[] = [
    ['walls to the right', walked([12, R], [6, R], [5, L], [4, R], [7, R], [10])],
    ['walls to the left', walked([12, L], [10, L], [7, L], [4, R], [5, L], [6])],
    ['two rectangles', { kind: 'rectangles', rectangles: [part('add', 0, 4, 12, 6), part('add', 0, 0, 7, 4)] }],
    [
      'one less a corner',
      { kind: 'rectangles', rectangles: [part('add', 0, 0, 12, 10), part('take away', 7, 0, 5, 4)] },
    ],
  ];
  test.each(lRooms)('L-shaped: %s', (_, shape) => {
    const [first, room] = [goodRoom(lRooms[0][1]), goodRoom(shape)];
    expect(roomAreaOf(room)).toBe(100 * feet(1) ** 2);
    expect(unlikeArea(floorOf(room, inches(3 / 8)), floorOf(first, inches(3 / 8)))).toBe(0);
    expect(cornersInInches(room.outline)).toEqual(cornersInInches(first.outline));
  });

  test('a corner cut off is the same as a cut-out that fills it', () => {
    const less = goodRoom(rectangular(12, 10), {
      cutouts: [{ kind: 'rectangle', wallNumber: 2, along: feet(6), off: 0, length: feet(4), depth: feet(5) }],
    });
    const lShaped = goodRoom(lRooms[0][1]);
    expect(unlikeArea(floorOf(less, inches(3 / 8)), floorOf(lShaped, inches(3 / 8)))).toBe(0);
  });
});

describe('walls are numbered as a person walks', () => {
  test('a rectangle: far, right, near, left', () => {
    const { walls, outline } = goodRoom(rectangular(12, 10));
    const ends = walls.map(({ from, to }) => [...cornersInInches([from]), ...cornersInInches([to])]);
    expect(ends).toEqual([
      ['0,120', '144,120'],
      ['144,120', '144,0'],
      ['144,0', '0,0'],
      ['0,0', '0,120'],
    ]);
    expect(outline[0]).toEqual(walls[0].from);
    expect(areaOf([outline])).toBeGreaterThan(0);
  });

  test('rectangles: five hundred strips side by side, every other one shorter, make a comb', () => {
    const rectangles = Array.from({ length: 500 }, (_, i) => ({
      change: 'add' as const,
      fromLeft: inches(2 * i),
      fromNear: 0,
      length: inches(3),
      width: inches(i % 2 === 0 ? 60 : 48),
    }));
    const room = goodRoom({ kind: 'rectangles', rectangles });
    // By hand: from 0 to 1001 in 48 in deep, and on 250 strips 3 in wide a foot more.
    expect(roomAreaOf(room) / inches(1) ** 2).toBe(1001 * 48 + 250 * 3 * 12);
    expect(room.walls[0].wallNumber === 1 && room.outline[0]).toEqual({ x: 0, y: inches(60) });
  });

  test('rectangles: what is added after taking away is there again', () => {
    const part = (change: 'add' | 'take away', x: number) =>
      ({ change, fromLeft: feet(x), fromNear: 0, length: feet(4), width: feet(10) }) as const;
    const rectangles = [part('add', 0), part('add', 4), part('take away', 4), part('take away', 8), part('add', 3)];
    // By hand: 8 ft, less the second 4, and from 3 ft to 7 ft again: 7 ft by 10.
    expect(roomAreaOf(goodRoom({ kind: 'rectangles', rectangles })) / feet(1) ** 2).toBe(70);
  });

  test('rectangles: wall 1 is the farthest, from its left end', () => {
    const { walls } = goodRoom({
      kind: 'rectangles',
      rectangles: [
        { change: 'add', fromLeft: 0, fromNear: 0, length: feet(12), width: feet(8) },
        { change: 'add', fromLeft: feet(6), fromNear: feet(8), length: feet(4), width: feet(2) },
      ],
    });
    expect([walls[0].from, walls[0].to].flatMap((p) => cornersInInches([p]))).toEqual(['72,120', '120,120']);
    expect(walls.map((wall) => wall.measured / feet(1))).toEqual([4, 2, 2, 8, 12, 8, 6, 2]);
  });

  test('a walk to the left runs its far wall from right to left', () => {
    const { walls } = goodRoom(walked([12, L], [10, L], [12, L], [10, L]));
    expect([walls[0].from, walls[0].to].flatMap((p) => cornersInInches([p]))).toEqual(['144,120', '0,120']);
    expect(walls.map((wall) => wall.inward)).toEqual([
      { x: 0, y: -1 },
      { x: 1, y: 0 },
      { x: 0, y: 1 },
      { x: -1, y: 0 },
    ]);
  });
});

describe('bays and slanted walls by hand', () => {
  test('a bay 2 ft deep at 45 degrees', () => {
    // Near wall 12 ft, from the right: 3 ft, 2 ft out over 2 ft, 2 ft along, 2 ft back over 2 ft, 3 ft.
    // The slanted walls are 24 x the square root of 2 = 33.941 in, read as 33 15/16 in; area 12 x 10 + (2 + 6) / 2 x 2 = 128.
    const s = (33 + 15 / 16) / 12;
    const room = goodRoom(walked([12, R], [10, R], [3, -45], [s, 45], [2, 45], [s, -45], [3, R], [10]));
    expect(cornersInInches(room.outline)).toEqual(
      ['0,144', '144,144', '144,24', '108,24', '84,0', '60,0', '36,24', '0,24'].sort(),
    );
    expect(roomAreaOf(room)).toBe(128 * feet(1) ** 2);
    expect(room.notes).toEqual([]);
  });

  test('a corner cut off by a 3-4-5 wall', () => {
    // 12 ft, 6 ft down, then 3 ft in and 4 ft down along 5 ft, 9 ft, 10 ft: area 120 - 3 x 4 / 2 = 114.
    const turn = (Math.atan2(3, 4) * 180) / Math.PI;
    const room = goodRoom(walked([12, R], [6, turn], [5, 90 - turn], [9, R], [10]));
    expect(cornersInInches(room.outline)).toEqual(['0,120', '144,120', '144,48', '108,0', '0,0'].sort());
    expect(roomAreaOf(room)).toBe(114 * feet(1) ** 2);
  });

  test('four walls and a diagonal: two 3-4-5 triangles', () => {
    // 12 ft far, 9 ft right: the diagonal is 15 ft. Near 20 ft and left 25 ft stand square on the diagonal (15-20-25).
    const room = goodRoom({
      kind: 'four walls',
      walls: [feet(12), feet(9), feet(20), feet(25)],
      diagonal: feet(15),
      otherDiagonal: null,
    });
    // 12 x 9 / 2 + 15 x 20 / 2 = 54 + 150 = 204 sq ft.
    expect(Math.abs(roomAreaOf(room) / feet(1) ** 2 - 204)).toBeLessThan(0.0001);
    // From (0, 0): (12, 0), (12, -9); the fourth is 20 ft from there, square to (12, -9) / 15: (12 - 12, -9 - 16).
    expect(cornersInInches(room.outline)).toEqual(['0,300', '144,300', '144,192', '0,0'].sort());
  });

  test('1 in out of square over 12 ft', () => {
    // Far wall 12 ft, side walls 10 ft and upright, near wall 12 ft 1 in: (0, 120) (144, 120) (145, 0) (0, 0) but for
    // the right wall, which is the square root of 120^2 + 1 = 120.00417 in; the diagonal from (0, 120) to (145, 0).
    const room = goodRoom({
      kind: 'four walls',
      walls: [feet(12), inches(Math.sqrt(14_401)), inches(145), feet(10)],
      diagonal: inches(Math.sqrt(145 ** 2 + 120 ** 2)),
      otherDiagonal: inches(Math.sqrt(144 ** 2 + 120 ** 2)),
    });
    expect(cornersInInches(room.outline)).toEqual(['0,120', '144,120', '145,0', '0,0'].sort());
    expect(room.notes).toEqual([]);
  });
});

describe('misfits', () => {
  test('a small one is spread over the walls that run that way, and told', () => {
    // 12 ft 1/4 in against 12 ft: each of the two takes 1/8 in; the side walls keep their 10 ft and stay upright.
    const room = goodRoom(walked([12, R], [10, R], [12 + 0.25 / 12, R], [10]));
    expect(cornersInInches(room.outline)).toEqual(['0,120', '144.125,120', '144.125,0', '0,0'].sort());
    expect(room.notes).toEqual([{ code: 'misfit spread', right: -inches(0.25), far: 0, by: inches(0.25) }]);
  });

  test('the same walk to the left misses the other way', () => {
    const room = goodRoom(walked([12, L], [10, L], [12 + 0.25 / 12, L], [10]));
    expect(room.notes).toEqual([{ code: 'misfit spread', right: inches(0.25), far: 0, by: inches(0.25) }]);
  });

  test('in proportion to length', () => {
    // U: the far wall of 12 ft against 3 + 6 + 3 ft less 1/4 in: together 24 ft, so the far wall gives half.
    const room = goodRoom(walked([12, R], [10, R], [3, R], [4, L], [6 - 0.25 / 12, L], [4, R], [3, R], [10]));
    const far = room.walls.map((wall) => wall.length / inches(1));
    expect(far[0]).toBeCloseTo(144 - (0.25 * 144) / 287.75, 3);
    expect(far[2]).toBeCloseTo(36 + (0.25 * 36) / 287.75, 3);
    expect(far[1]).toBe(120);
  });

  test('two diagonals: all six lengths take their share', () => {
    // Squares of the diagonals of a parallelogram add up to those of its sides: 2 (12^2 + 10^2) = 488 sq ft. Taking a
    // first diagonal of 16 ft, the other is the square root of 488 - 256 = 15.2315 ft; 1/2 in less was read.
    const other = Math.sqrt(488 - 256);
    const shape: MeasuredShape = {
      kind: 'four walls',
      walls: [feet(12), feet(10), feet(12), feet(10)],
      diagonal: feet(16),
      otherDiagonal: feet(other) - inches(0.5),
    };
    const { walls, notes, outline } = goodRoom(shape);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatchObject({ code: 'diagonals spread' });
    expect(Math.abs((notes[0] as { by: number }).by - inches(0.5))).toBeLessThan(2);
    // Every wall, and each diagonal, is now within the 1/2 in of what was measured, and none took all of it.
    const [a, d, c, b] = outline;
    const gone = [
      ...walls.map((wall) => wall.length - wall.measured),
      Math.sqrt((c.x - a.x) ** 2 + (c.y - a.y) ** 2) - feet(16),
      Math.sqrt((d.x - b.x) ** 2 + (d.y - b.y) ** 2) - (feet(other) - inches(0.5)),
    ];
    for (const change of gone) expect(Math.abs(change)).toBeLessThan(inches(0.25));
    expect(Math.max(...gone.map(Math.abs))).toBeGreaterThan(inches(0.05));
  });
});

describe('rooms that cannot be', () => {
  test.each<readonly [string, MeasuredShape, unknown]>([
    ['a length of nothing', { kind: 'rectangle', length: 0, width: feet(10) }, { code: 'not above 0', what: 'length' }],
    [
      'a wall below nothing',
      walked([12, R], [-10, R], [12, R], [10]),
      { code: 'not above 0', what: 'wall', number: 2 },
    ],
    ['two walls', walked([12, R], [12]), { code: 'too few walls', found: 2 }],
    ['a turn left out', walked([12, R], [10], [12, R], [10, R]), { code: 'turn missing', wallNumber: 2 }],
    ['turns the wrong way', walked([12, R], [10, R], [12, R], [10, L]), { code: 'turns do not add up', found: 180 }],
    // 1 ft too long: 12 in over, where half a per cent of 45 ft (2.7 in), at most 1 in, is let pass.
    [
      'walls that do not close',
      walked([12, R], [10, R], [13, R], [10]),
      { code: 'does not close', right: -feet(1), far: 0, by: feet(1), allowed: inches(1) },
    ],
    [
      'walls that cross',
      walked([12, R], [10, R], [6, R], [12, L], [6, L], [2]),
      { code: 'walls meet', wallNumbers: [1, 4] },
    ],
    [
      'a diagonal too long for its walls',
      { kind: 'four walls', walls: [feet(12), feet(10), feet(12), feet(10)], diagonal: feet(22), otherDiagonal: null },
      { code: 'diagonal', found: feet(22), moreThan: feet(2), lessThan: feet(22) },
    ],
    [
      'a diagonal too short',
      { kind: 'four walls', walls: [feet(12), feet(10), feet(12), feet(5)], diagonal: feet(7), otherDiagonal: null },
      { code: 'diagonal', moreThan: feet(7), lessThan: feet(17) },
    ],
    [
      'diagonals that disagree',
      {
        kind: 'four walls',
        walls: [feet(12), feet(10), feet(12), feet(10)],
        diagonal: feet(16),
        otherDiagonal: feet(16),
      },
      { code: 'diagonals disagree', found: feet(16) },
    ],
    [
      'rectangles miles apart',
      {
        kind: 'rectangles',
        rectangles: [
          { change: 'add', fromLeft: 0, fromNear: 0, length: feet(4), width: feet(4) },
          { change: 'take away', fromLeft: 1e15, fromNear: 0, length: feet(4), width: feet(4) },
        ],
      },
      { code: 'side too long' },
    ],
    ['a room of 101 m', { kind: 'rectangle', length: 101 * 640_000, width: feet(10) }, { code: 'side too long' }],
    [
      'everything taken away',
      {
        kind: 'rectangles',
        rectangles: [
          { change: 'add', fromLeft: 0, fromNear: 0, length: feet(4), width: feet(4) },
          { change: 'take away', fromLeft: -1, fromNear: 0, length: feet(5), width: feet(4) },
        ],
      },
      { code: 'nothing left' },
    ],
    [
      'rectangles that only touch in a corner',
      {
        kind: 'rectangles',
        rectangles: [
          { change: 'add', fromLeft: 0, fromNear: 0, length: feet(4), width: feet(4) },
          { change: 'add', fromLeft: feet(4), fromNear: feet(4), length: feet(5), width: feet(4) },
        ],
      },
      { code: 'parts not connected', partCount: 2 },
    ],
  ])('%s', (_, shape, fault) => {
    expect(faultsOf(shape)).toEqual([expect.objectContaining(fault)]);
  });

  const doorway = (wallNumber: number, along: number, width = 3, depth = 0): MeasuredDoorway => ({
    wallNumber,
    along: feet(along),
    width: feet(width),
    floor: 'transition',
    depth: inches(depth),
  });
  test.each<readonly [string, readonly MeasuredDoorway[], unknown]>([
    ['a doorway past its wall', [doorway(2, 8)], { code: 'doorway off its wall', wallNumber: 2, end: feet(11) }],
    ['a doorway before its wall', [doorway(2, -1)], { code: 'doorway off its wall', start: -feet(1) }],
    ['a doorway in no wall', [doorway(5, 0)], { code: 'no such wall', what: 'doorway', found: 5, wallCount: 4 }],
    ['doorways that overlap', [doorway(1, 1), doorway(2, 1), doorway(1, 3)], { doorwayNumbers: [1, 3] }],
    ['a doorway miles deep', [{ ...doorway(1, 1), depth: 1e12 }], { code: 'side too long', found: 1e12 }],
    ['a doorway without width', [doorway(1, 1, 0)], { code: 'not above 0', what: 'doorway', number: 1 }],
  ])('%s', (_, doorways, fault) => {
    expect(faultsOf(rectangular(12, 10), { doorways })).toEqual([expect.objectContaining(fault)]);
  });

  test('a doorway whose floor runs back into an L-shaped room', () => {
    // Wall 3 of the L runs back 5 ft, 4 ft of wall 4 stand below it on its left: a doorway of 5 ft depth in wall 4
    // leaves to the right, under wall 3, where no room is; one in wall 3 leaves downwards. Neither meets the room.
    const shape = walked([12, R], [6, R], [5, L], [4, R], [7, R], [10]);
    expect(faultsOf(shape, { doorways: [doorway(3, 1, 3, 40)] })).toEqual([]);
    // In a U the doorway of one leg leads straight into the other.
    const u = walked([12, R], [10, R], [4, R], [6, L], [4, L], [6, R], [4, R], [10]);
    expect(faultsOf(u, { doorways: [doorway(4, 1, 3, 60)] })).toEqual([
      { code: 'doorway meets room', doorwayNumber: 1 },
    ]);
  });
});

describe('doorways', () => {
  const room = (...doorways: MeasuredDoorway[]) => goodRoom(rectangular(12, 10), { doorways });
  const through: MeasuredDoorway = {
    wallNumber: 3,
    along: feet(2),
    width: feet(3),
    floor: 'transition',
    depth: inches(3),
  };

  test('floor runs between the jambs, less the gap at each, to where it ends', () => {
    // Wall 3 runs from the right: 144 - 24 = 120 down to 84; the tongue is 36 - 2 x 1 wide and reaches 3 in out.
    const [floor] = floorOf(room(through), inches(1));
    expect(cornersInInches(floor)).toEqual(
      ['1,1', '85,1', '85,-3', '119,-3', '119,1', '143,1', '143,119', '1,119'].sort(),
    );
  });

  test('a door that stays shut and one the floor does not reach are walls', () => {
    const plain = floorOf(goodRoom(rectangular(12, 10)), inches(1));
    expect(floorOf(room({ ...through, floor: 'stays shut' }), inches(1))).toEqual(plain);
    expect(floorOf(room({ ...through, depth: 0 }), inches(1))).toEqual(plain);
    expect(room({ ...through, floor: 'stays shut' }).doorways[0].tongue).toBeNull();
  });

  test('a doorway in the corner of the room', () => {
    const [floor] = floorOf(room({ ...through, along: 0 }), inches(1));
    expect(cornersInInches(floor)).toEqual(['1,1', '109,1', '109,-3', '143,-3', '143,119', '1,119'].sort());
  });

  test('in a slanted wall: no hairline, four corners more than the room', () => {
    for (const tilt of [1, 7.7, 23]) {
      const shape: MeasuredShape = {
        kind: 'four walls',
        walls: [feet(12), feet(10), feet(12), feet(10)],
        diagonal: Math.round(feet(Math.sqrt(244)) - inches(tilt)),
        otherDiagonal: null,
      };
      const doorways = [
        { ...through, wallNumber: 2 },
        { ...through, wallNumber: 4, floor: 'goes on' as const },
      ];
      const slanted = goodRoom(shape, { doorways });
      expect(slanted.openEnds).toHaveLength(2);
      for (const gap of [0, inches(3 / 8), inches(1)]) {
        const floor = floorOf(slanted, gap);
        expect(floor).toHaveLength(1);
        expect(floor[0]).toHaveLength(12);
        const plain = areaOf(floorOf(goodRoom(shape), gap));
        // Each tongue is 36 in less two gaps wide and reaches 3 in past the wall's face.
        const tongues = 2 * (inches(36) - 2 * gap) * (inches(3) + gap);
        expect(Math.abs(areaOf(floor) - plain - tongues)).toBeLessThan(2 * perimeterOf(floor));
      }
    }
  });

  test('a doorway narrower than its gaps gets no floor', () => {
    const plain = floorOf(goodRoom(rectangular(12, 10)), inches(1));
    expect(unlikeArea(floorOf(room({ ...through, width: inches(2) }), inches(1)), plain)).toBe(0);
  });
});

describe('cut-outs', () => {
  const cut = (...cutouts: Parameters<typeof roomOf>[0]['cutouts']) => goodRoom(rectangular(12, 10), { cutouts });

  test('stand where the tape says, from any wall', () => {
    const column = { kind: 'rectangle', off: feet(2), length: feet(1), depth: feet(3) } as const;
    // From wall 1, 3 ft from the left; from wall 2, 3 ft from the far end; from wall 3, 3 ft from the right; from wall 4.
    expect(cut({ ...column, wallNumber: 1, along: feet(3) }).cutouts.map(cornersInInches)).toEqual([
      ['36,96', '36,60', '48,96', '48,60'].sort(),
    ]);
    expect(cut({ ...column, wallNumber: 2, along: feet(3) }).cutouts.map(cornersInInches)).toEqual([
      ['120,84', '120,72', '84,84', '84,72'].sort(),
    ]);
    expect(cut({ ...column, wallNumber: 3, along: feet(3) }).cutouts.map(cornersInInches)).toEqual([
      ['108,24', '96,24', '108,60', '96,60'].sort(),
    ]);
    expect(cut({ ...column, wallNumber: 4, along: feet(3) }).cutouts.map(cornersInInches)).toEqual([
      ['24,36', '24,48', '60,36', '60,48'].sort(),
    ]);
  });

  test('a round one is a polygon of 16 sides drawn round the circle, its width and depth exact', () => {
    const [round] = cut({
      kind: 'round',
      wallNumber: 1,
      along: feet(3),
      off: feet(2),
      length: feet(1),
      depth: 0,
    }).cutouts;
    expect(round).toHaveLength(16);
    const xs = round.map((p) => p.x / inches(1));
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([36, 48]);
    // Area of such a polygon: 16 r^2 tan(180/16 degrees) = 3.1826 r^2, 1.3 % over the circle's.
    expect(areaOf([round]) / inches(6) ** 2).toBeCloseTo(16 * Math.tan(Math.PI / 16), 4);
    for (const p of round)
      expect(Math.sqrt((p.x - inches(42)) ** 2 + (p.y - inches(90)) ** 2)).toBeGreaterThan(inches(6));
  });

  test('what reaches outside is cut off and told; what lies outside is a fault', () => {
    const wide = {
      kind: 'rectangle',
      wallNumber: 1,
      along: feet(11),
      off: 0,
      length: feet(2),
      depth: feet(1),
    } as const;
    const room = cut(wide);
    expect(room.cutouts.map(cornersInInches)).toEqual([['132,108', '132,120', '144,108', '144,120'].sort()]);
    expect(room.notes).toEqual([{ code: 'cut-out reaches outside', cutoutNumber: 1 }]);
    expect(faultsOf(rectangular(12, 10), { cutouts: [{ ...wide, along: feet(13) }] })).toEqual([
      { code: 'cut-out outside', cutoutNumber: 1 },
    ]);
    expect(
      faultsOf(rectangular(12, 10), { cutouts: [{ ...wide, along: -1, length: feet(13), depth: feet(11) }] }),
    ).toEqual([{ code: 'cut-out fills room', cutoutNumber: 1 }]);
    expect(faultsOf(rectangular(12, 10), { cutouts: [{ ...wide, wallNumber: 9 }] })).toEqual([
      { code: 'no such wall', what: 'cut-out', number: 1, found: 9, wallCount: 4 },
    ]);
  });

  test('the one with which the last of the room goes is told, and no other', () => {
    // 12 ft by 10 ft: the left half, the left half once more, the right half, and one in nothing.
    const half = (along: number) =>
      ({ kind: 'rectangle', wallNumber: 1, along: feet(along), off: 0, length: feet(6), depth: feet(10) }) as const;
    const cutouts = [half(0), half(0), half(6), half(0)];
    expect(faultsOf(rectangular(12, 10), { cutouts })).toEqual([{ code: 'cut-out fills room', cutoutNumber: 3 }]);
  });

  test('three hundred pipes are taken, each of its own size', () => {
    const cutouts = Array.from({ length: 300 }, (_, i) => {
      const [column, row] = [i % 20, Math.floor(i / 20)];
      const place = { along: feet(2 + 2 * column), off: feet(2 + 2 * row) };
      return { kind: 'round', wallNumber: 1, ...place, length: inches(2), depth: 0 } as const;
    });
    const room = goodRoom(rectangular(60, 40), { cutouts });
    // Each takes 16 r^2 tan(180/16 degrees); its corners lie on whole ticks, which moves a millionth of that.
    const taken = 2400 * feet(1) ** 2 - roomAreaOf(room);
    expect(taken / (300 * 16 * Math.tan(Math.PI / 16) * inches(1) ** 2)).toBeCloseTo(1, 4);
    // By a gap of 1 in each loses the polygon round twice the radius, the room 1 in at every wall.
    const floor = (12 * 60 - 2) * (12 * 40 - 2) * inches(1) ** 2 - 4 * taken;
    expect(areaOf(floorOf(room, inches(1))) / floor).toBeCloseTo(1, 5);
  });

  test('two that overlap take their place once, whichever way the walls were walked', () => {
    const column = (along: number) =>
      ({
        kind: 'rectangle',
        wallNumber: 1,
        along: feet(along),
        off: feet(2),
        length: feet(2),
        depth: feet(2),
      }) as const;
    const walks = [walked([12, R], [10, R], [12, R], [10]), walked([12, L], [10, L], [12, L], [10])];
    for (const shape of walks) {
      const room = goodRoom(shape, { cutouts: [column(3), column(4)] });
      expect(roomAreaOf(room)).toBe((120 - 6) * feet(1) ** 2);
    }
    // A column over the edge of a part taken away in the middle: 2 x 2 and 2 x 2 ft that share 1 ft x 2 ft.
    const courtyard: MeasuredShape = {
      kind: 'rectangles',
      rectangles: [
        { change: 'add', fromLeft: 0, fromNear: 0, length: feet(12), width: feet(10) },
        { change: 'take away', fromLeft: feet(4), fromNear: feet(6), length: feet(2), width: feet(2) },
      ],
    };
    expect(roomAreaOf(goodRoom(courtyard, { cutouts: [column(5)] }))).toBe((120 - 6) * feet(1) ** 2);
  });

  test('however large they are typed, they end with the room', () => {
    const shape: MeasuredShape = {
      kind: 'four walls',
      walls: [feet(12), feet(10), feet(12), feet(10)],
      diagonal: feet(15.3),
      otherDiagonal: null,
    };
    const miles = { kind: 'rectangle', wallNumber: 2, along: feet(4), off: 0, length: 1e15, depth: feet(1) } as const;
    const near = { ...miles, length: feet(20) };
    const [huge, large] = [miles, near].map((cutout) => floorOf(goodRoom(shape, { cutouts: [cutout] }), inches(1)));
    expect(unlikeArea(huge, large)).toBeLessThan(2 * perimeterOf(large));
    expect(areaOf(large)).toBeGreaterThan(0);
    expect(faultsOf(shape, { cutouts: [{ ...miles, off: 1e15 }] })).toEqual([
      { code: 'cut-out outside', cutoutNumber: 1 },
    ]);
  });

  test('an island from wall to wall leaves two floors and says so', () => {
    const room = cut({ kind: 'rectangle', wallNumber: 1, along: feet(5), off: 0, length: feet(1), depth: feet(10) });
    expect(room.notes).toEqual([{ code: 'floor in parts', partCount: 2 }]);
    expect(floorOf(room, inches(1))).toHaveLength(2);
  });

  test('against a slanted wall no hairline is left, with or without a gap', () => {
    for (let tilt = -30; tilt < 30; tilt += 1.13) {
      const shape: MeasuredShape = {
        kind: 'four walls',
        walls: [feet(12), feet(10), feet(12), feet(10)],
        diagonal: Math.round(feet(Math.sqrt(244)) + inches(tilt)),
        otherDiagonal: null,
      };
      const hearth = {
        kind: 'rectangle',
        wallNumber: 2,
        along: feet(3),
        off: 0,
        length: feet(4),
        depth: feet(1),
      } as const;
      const room = goodRoom(shape, { cutouts: [hearth] });
      const floor: Region = floorOf(room, 0);
      expect(floor).toHaveLength(1);
      expect(floor[0]).toHaveLength(8);
      const lost = roomAreaOf(goodRoom(shape)) - areaOf(floor);
      expect(Math.abs(lost - 4 * feet(1) ** 2)).toBeLessThan(2 * perimeterOf(floor));
      expect(floorOf(room, inches(1))[0]).toHaveLength(8);
    }
  });
});
