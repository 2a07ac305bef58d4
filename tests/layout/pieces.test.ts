import { area, FillRule, union } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { insetOf } from '../../src/geometry/inset';
import { areaOf, boundsOf, type Region } from '../../src/geometry/polygon';
import { type LaidPiece, piecesOf } from '../../src/layout/pieces';
import { type RowLayout, rowsOf } from '../../src/layout/rows';
import { differenceArea, perimeterOf, unlikeArea } from '../support/areaOracle';
import { inches } from '../support/floors';
import { crookedRegion, squareRegion } from '../support/randomRooms';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const PLANK = { plankLength: inches(48), plankWidth: inches(7.5), markingStep: inches(1 / 16) };
const MIN_RIP = inches(2);
const GAP = inches(3 / 8);

/** A room of some 20 ft with the gap taken off. */
function randomFloor(random: SeededRandom): Region {
  const size = inches(random.whole(60, 240));
  const room = random.whole(0, 1) === 0 ? squareRegion(random, size, inches(6)) : crookedRegion(random, size);
  return insetOf(room, GAP);
}

/** Any joints will do: every piece from 5 to 48 in, the last whatever is left. */
function randomJoints(random: SeededRandom, layout: RowLayout): readonly (readonly (readonly number[])[])[] {
  return layout.rows.map((row) =>
    row.runs.map(({ x0, x1 }) => {
      const joints: number[] = [];
      for (let x = x0; x < x1; ) {
        x += random.whole(inches(5), inches(48));
        if (x < x1) joints.push(x);
      }
      return joints;
    }),
  );
}

function laidOut(
  random: SeededRandom,
  floor: Region,
  degrees: number,
): { layout: RowLayout; pieces: readonly LaidPiece[] } {
  const startSide = random.whole(0, 1) === 0 ? 'near' : 'far';
  const firstRow = random.whole(0, 1) === 0 ? 'auto' : random.whole(inches(1), PLANK.plankWidth);
  const layout = rowsOf(floor, { plankWidth: PLANK.plankWidth, minRip: MIN_RIP, degrees, startSide, firstRow });
  return { layout, pieces: piecesOf(layout, randomJoints(random, layout), PLANK) };
}

function totalOf(pieces: readonly LaidPiece[]): number {
  return pieces.reduce((sum, piece) => sum + areaOf(piece.shape), 0);
}

/** By Clipper2: what at least one piece covers. */
function coveredArea(pieces: readonly LaidPiece[]): number {
  const paths = pieces.flatMap((piece) => piece.shape.map((outline) => outline.map(({ x, y }) => ({ x, y }))));
  return union(paths, FillRule.NonZero).reduce((sum, path) => sum + area(path), 0);
}

function edgeLength(pieces: readonly LaidPiece[]): number {
  return pieces.reduce((sum, piece) => sum + perimeterOf(piece.shape), 0);
}

describe('pieces cover the floor exactly once', () => {
  test('right-angled rooms: to the square tick', () => {
    let count = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const random = seededRandom(seed);
      const floor = insetOf(squareRegion(random, inches(random.whole(60, 240)), inches(6)), GAP);
      if (floor.length === 0) continue;
      const { pieces } = laidOut(random, floor, 90 * random.whole(0, 3));
      const all = pieces.flatMap((piece) => piece.inRoom);
      count += pieces.length;
      expect(totalOf(pieces)).toBe(areaOf(floor));
      expect(coveredArea(pieces)).toBe(areaOf(floor));
      expect(differenceArea(all, floor)).toBe(0);
    }
    expect(count).toBeGreaterThan(5000);
  });

  test('crooked rooms with holes, at any angle: within a tick of every edge', () => {
    let count = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const random = seededRandom(seed);
      const floor = randomFloor(random);
      if (floor.length === 0) continue;
      const degrees = [0, 90, 45, 30, random.whole(1, 35_999) / 100][random.whole(0, 4)];
      const { layout, pieces } = laidOut(random, floor, degrees);
      const slack = 2 * (edgeLength(pieces) + perimeterOf(floor));
      count += pieces.length;
      expect(Math.abs(totalOf(pieces) - areaOf(floor))).toBeLessThanOrEqual(slack);
      expect(Math.abs(coveredArea(pieces) - totalOf(pieces))).toBeLessThanOrEqual(slack);
      const shapes = pieces.flatMap((piece) => piece.shape);
      expect(differenceArea(shapes, layout.floor)).toBeLessThanOrEqual(slack);
      const inRoom = pieces.flatMap((piece) => piece.inRoom);
      expect(unlikeArea(inRoom, floor)).toBeLessThanOrEqual(2 * slack);
    }
    expect(count).toBeGreaterThan(5000);
  });

  test('every piece lies in its row and between its joints, and none is longer or wider than told', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const random = seededRandom(seed);
      const floor = randomFloor(random);
      if (floor.length === 0) continue;
      const { layout, pieces } = laidOut(random, floor, [0, 45][random.whole(0, 1)]);
      for (const piece of pieces) {
        const row = layout.rows[piece.rowNumber - 1];
        const { x0, x1, y0, y1 } = boundsOf(piece.shape);
        expect(y0).toBeGreaterThanOrEqual(row.y0);
        expect(y1).toBeLessThanOrEqual(row.y1);
        expect(piece.length).toBe(x1 - x0);
        expect(Math.max(piece.widthLeft, piece.widthRight)).toBeLessThanOrEqual(y1 - y0);
        expect(piece.shortPoint).toBeLessThanOrEqual(piece.length);
      }
    }
  });
});

describe('turning, mirroring and moving a room', () => {
  /** Shapes of the pieces as told, whatever the place: lengths, widths, cuts. */
  function told(pieces: readonly LaidPiece[]): string[] {
    return pieces.map(({ rowNumber, runNumber, length, shortPoint, widthLeft, widthRight, cuts }) =>
      [rowNumber, runNumber, length, shortPoint, widthLeft, widthRight, ...cuts].join(' '),
    );
  }

  test('turned with its rows by right angles or moved, it takes the same pieces', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const floor = randomFloor(seededRandom(seed));
      if (floor.length === 0) continue;
      const turned = floor.map((outline) => outline.map(({ x, y }) => ({ x: 0 - y, y: x })));
      const moved = floor.map((outline) => outline.map(({ x, y }) => ({ x: x + 12_345, y: y - 777 })));
      const plain = laidOut(seededRandom(seed), floor, 0).pieces;
      expect(told(laidOut(seededRandom(seed), turned, 90).pieces)).toEqual(told(plain));
      expect(told(laidOut(seededRandom(seed), moved, 0).pieces)).toEqual(told(plain));
    }
  });

  test('mirrored along its rows, it has the same rows and runs from right to left', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const floor = randomFloor(seededRandom(seed));
      if (floor.length === 0) continue;
      const mirrored = floor.map((outline) => outline.map(({ x, y }) => ({ x: 0 - x, y })).reverse());
      const options = {
        plankWidth: PLANK.plankWidth,
        minRip: MIN_RIP,
        degrees: 0,
        startSide: 'near',
        firstRow: 'auto',
      } as const;
      const [plain, other] = [rowsOf(floor, options), rowsOf(mirrored, options)];
      const lengths = (layout: RowLayout) =>
        layout.rows.map((row) => row.runs.map((run) => run.x1 - run.x0).sort((a, b) => a - b));
      expect(lengths(other)).toEqual(lengths(plain));
      expect(other.rows.map((row) => row.narrowest.width)).toEqual(plain.rows.map((row) => row.narrowest.width));
    }
  });
});

describe('cuts', () => {
  const p = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
  /** Cuts of the pieces of one row, jointed at these places. */
  function cutsOf(
    outline: Region[number],
    joints: readonly number[],
    holes: Region = [],
  ): readonly (readonly string[])[] {
    const options = {
      plankWidth: PLANK.plankWidth,
      minRip: 0,
      degrees: 0,
      startSide: 'near',
      firstRow: 'auto',
    } as const;
    const layout = rowsOf([outline, ...holes], options);
    return piecesOf(layout, [[joints.map((x) => inches(x))]], PLANK).map((piece) => piece.cuts);
  }

  test('a square run of 100 in: cut at both walls, whole between', () => {
    expect(cutsOf([p(0, 0), p(100, 0), p(100, 7.5), p(0, 7.5)], [20, 68])).toEqual([['crosscut'], [], ['crosscut']]);
  });

  test('a run of a plank exactly needs no saw', () => {
    expect(cutsOf([p(0, 0), p(48, 0), p(48, 7.5), p(0, 7.5)], [])).toEqual([[]]);
  });

  test('a narrower row is ripped first', () => {
    expect(cutsOf([p(0, 0), p(80, 0), p(80, 6), p(0, 6)], [48])).toEqual([['rip'], ['rip', 'crosscut']]);
  });

  test('angled ends are cut once, at their angle', () => {
    expect(cutsOf([p(0, 0), p(100, 0), p(92.5, 7.5), p(7.5, 7.5)], [30, 78])).toEqual([
      ['angled crosscut'],
      [],
      ['angled crosscut'],
    ]);
    expect(cutsOf([p(0, 0), p(60, 0), p(60, 7.5), p(7.5, 7.5)], [30])).toEqual([['angled crosscut'], ['crosscut']]);
  });

  test('notches and holes come last, and only where they are', () => {
    const column = [p(20, 7.5), p(20, 5), p(24, 5), p(24, 7.5)];
    expect(cutsOf([p(0, 0), p(80, 0), p(80, 7.5), ...[...column].reverse(), p(0, 7.5)], [40])).toEqual([
      ['crosscut', 'notch'],
      ['crosscut'],
    ]);
    const pipe = [p(60, 3), p(60, 4), p(61, 4), p(61, 3)];
    expect(cutsOf([p(0, 0), p(80, 0), p(80, 7.5), p(0, 7.5)], [40], [pipe])).toEqual([
      ['crosscut'],
      ['crosscut', 'notch'],
    ]);
  });

  test('a taper is a rip', () => {
    expect(cutsOf([p(0, 0), p(80, 0), p(80, 7), p(0, 7.5)], [48])).toEqual([['rip'], ['rip', 'crosscut']]);
  });
});

test('joints that do not fit their run are refused', () => {
  const floor: Region = [
    [
      { x: 0, y: 0 },
      { x: inches(100), y: 0 },
      { x: inches(100), y: inches(7.5) },
      { x: 0, y: inches(7.5) },
    ],
  ];
  const layout = rowsOf(floor, { plankWidth: inches(7.5), minRip: 0, degrees: 0, startSide: 'near', firstRow: 'auto' });
  expect(() => piecesOf(layout, [[[inches(100)]]], PLANK)).toThrow(RangeError);
  expect(() => piecesOf(layout, [[[inches(60), inches(50)]]], PLANK)).toThrow(RangeError);
  expect(() => piecesOf(layout, [[]], PLANK)).toThrow(RangeError);
  expect(piecesOf(layout, [[[inches(48)]]], PLANK)).toHaveLength(2);
});
