/** Squaring off at walls: what it leaves uncovered lies along walls, held against Clipper2's own insets. */
import { describe, expect, test } from 'vitest';
import { insetOf } from '../../src/geometry/inset';
import { areaOf, type Region } from '../../src/geometry/polygon';
import { BENDING } from '../../src/layout/bends';
import { type LaidPiece, piecesOf } from '../../src/layout/pieces';
import { rowsOf } from '../../src/layout/rows';
import { squaredOff } from '../../src/layout/square';
import { differenceArea, perimeterOf, uncoveredBeyond } from '../support/areaOracle';
import { inches } from '../support/floors';
import { crookedRegion } from '../support/randomRooms';
import { type SeededRandom, seededRandom } from '../support/seededRandom';

const TOLERANCE = inches(3 / 16);
const PLANK = { plankLength: inches(48), plankWidth: inches(5), markingStep: inches(1 / 16) };

/** A room with a bay or a nook, each corner up to 1 in off its square place. */
function oldRoom(random: SeededRandom): Region {
  const off = () => random.whole(-inches(1), inches(1));
  const [length, width] = [random.whole(100, 240), random.whole(90, 200)];
  const bay = random.whole(30, 60);
  const corners = [
    [0, 0],
    [length, 0],
    [length, width],
    [bay + 30, width],
    [bay, width + random.whole(10, 30)],
    [20, width],
    [0, width],
  ];
  const hearth = [20, 20 + random.whole(30, 60), 14 + random.whole(0, 20)];
  const outline = corners.map(([x, y]) => ({ x: inches(x) + off(), y: inches(y) + off() }));
  const hole = [
    [hearth[0], 10],
    [hearth[0], hearth[2]],
    [hearth[1], hearth[2]],
    [hearth[1], 10],
  ].map(([x, y]) => ({ x: inches(x) + off(), y: inches(y) + off() }));
  return insetOf([outline, hole], inches(3 / 8));
}

function laid(floor: Region, random: SeededRandom, squareCut: number, degrees: number) {
  const options = { plankWidth: PLANK.plankWidth, minRip: inches(2), degrees, startSide: 'near' as const };
  const layout = rowsOf(floor, { ...options, firstRow: 'auto', squareCut });
  const joints = layout.rows.map((row) =>
    row.runs.map(({ x0, x1 }) => {
      const places: number[] = [];
      for (let x = x0 + random.whole(inches(8), inches(48)); x < x1 - inches(1); x += inches(48)) places.push(x);
      return places;
    }),
  );
  return { layout, pieces: piecesOf(layout, joints, { ...PLANK, squareCut }, BENDING) };
}

/** A room whose four walls bow by up to 1/4 in at each of three places. */
function bowedOldRoom(random: SeededRandom): Region {
  const [length, width] = [random.whole(100, 240), random.whole(90, 200)];
  const corners = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
  const outline = corners.flatMap(([x, y], i) => {
    const [toX, toY] = corners[(i + 1) % 4];
    return [0, 1, 2, 3].map((quarter) => ({
      x: inches(x + ((toX - x) * quarter) / 4) + random.whole(-inches(1 / 4), inches(1 / 4)),
      y: inches(y + ((toY - y) * quarter) / 4) + random.whole(-inches(1 / 4), inches(1 / 4)),
    }));
  });
  return insetOf([outline], inches(3 / 8));
}

/** A wedge that is thinner than that all along is no cut out of square: it is not laid at all. */
const isUnder = ({ slants, widthLeft, widthRight }: LaidPiece) =>
  Math.max(widthLeft, widthRight) >= TOLERANCE &&
  slants.some(({ along, across }) => Math.min(along, across) < TOLERANCE);

describe.each([
  ['old rooms with a bay and a hearth', oldRoom],
  ['rooms whose walls bow', bowedOldRoom],
  ['rooms of any shape', (random: SeededRandom) => insetOf(crookedRegion(random, inches(200)), inches(3 / 8))],
])('%s', (_, roomOf) => {
  test('what squaring leaves uncovered lies within the tolerance of a wall, and nothing lies outside', () => {
    let squared = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const random = seededRandom(seed);
      const floor = roomOf(random);
      if (floor.length === 0) continue;
      const { layout, pieces } = laid(floor, random, TOLERANCE, [0, 90, 3][seed % 3]);
      const shapes = pieces.flatMap(({ shape }) => shape);
      const slack = 4 * pieces.reduce((sum, { shape }) => sum + perimeterOf(shape), perimeterOf(floor));
      expect(differenceArea(shapes, layout.floor)).toBeLessThanOrEqual(slack);
      expect(uncoveredBeyond(layout.floor, shapes, TOLERANCE + 16)).toBeLessThanOrEqual(slack);
      expect(pieces.every(({ squaredBy }) => squaredBy < TOLERANCE)).toBe(true);
      squared += pieces.filter(({ squaredBy }) => squaredBy > 0).length;
    }
    expect(squared).toBeGreaterThan(250);
  });

  test('hardly a cut is left that is out of square by less', () => {
    let [before, after] = [0, 0];
    for (let seed = 1; seed <= 120; seed++) {
      const floor = roomOf(seededRandom(seed));
      if (floor.length === 0) continue;
      before += laid(floor, seededRandom(seed), 0, 0).pieces.filter(isUnder).length;
      after += laid(floor, seededRandom(seed), TOLERANCE, 0).pieces.filter(isUnder).length;
    }
    expect(before).toBeGreaterThan(100);
    expect(after).toBeLessThanOrEqual(before / 40);
  });
});

// The near wall rises by 1/8 in along its second half, less than the tolerance: row 1 is ripped along all of it, so that it
// is 5 - 1/8 in wide everywhere. The same at the far wall, where 30 in less 1/8 in end within the sixth row.
test('the first and the last row are straight along a wall that bends by less than the tolerance half way', () => {
  const corners = [
    [0, 0],
    [50, 0],
    [100, 1 / 8],
    [100, 30 - 1 / 8],
    [50, 30],
    [0, 30],
  ];
  const floor = [corners.map(([x, y]) => ({ x: inches(x), y: inches(y) }))];
  const options = { plankWidth: PLANK.plankWidth, minRip: inches(2), degrees: 0, startSide: 'near' as const };
  const { rows } = rowsOf(floor, { ...options, firstRow: 'auto', squareCut: TOLERANCE });
  expect(rows.map(({ width, narrowest }) => [width, narrowest.width].map((one) => one / inches(1)))).toEqual([
    [5 - 1 / 8, 5 - 1 / 8],
    ...Array(4).fill([5, 5]),
    [5 - 1 / 8, 5 - 1 / 8],
  ]);
});

// A second row lies over the first half of the first one; over its other half the wall falls by 1/8 in. Only there is the first
// row ripped: 50 x 5 and 50 x 4 7/8 sq in.
test('where another row lies beside it nothing is taken off a row, though the wall goes on from there', () => {
  const corners = [
    [0, 0],
    [100, 0],
    [100, 5 - 1 / 8],
    [50, 5],
    [50, 10],
    [0, 10],
  ];
  const floor = [corners.map(([x, y]) => ({ x: inches(x), y: inches(y) }))];
  const options = { plankWidth: PLANK.plankWidth, minRip: inches(2), degrees: 0, startSide: 'near' as const };
  const { rows } = rowsOf(floor, { ...options, firstRow: 'auto', squareCut: TOLERANCE });
  const areas = rows.map(({ runs: [{ part }] }) => areaOf([part.outline, ...part.holes]) / inches(1) ** 2);
  expect(areas).toEqual([50 * 5 + 50 * (5 - 1 / 8), 50 * 5]);
});

// 48 x 5 in between two rows and a piece on its left; its right end leans out by 1/20 in twice: off it comes, in one cut.
test('an end that bends is squared off in one cut, wherever its outline begins', () => {
  const corners = [
    [0, 0],
    [48, 0],
    [48.05, 2.5],
    [48.1, 5],
    [0, 5],
  ].map(([x, y]) => ({ x: inches(x), y: inches(y) }));
  for (const first of corners.keys()) {
    const outline = [...corners.slice(first), ...corners.slice(0, first)];
    const { region } = squaredOff([outline], { levels: [0, inches(5)], uprights: [0] }, TOLERANCE);
    expect(areaOf(region) / inches(1) ** 2).toBe(48 * 5);
  }
});

test('an edge that bends by less than the tolerance is straight, one that bends by more is scribed', () => {
  const [bent, scribed] = [0, TOLERANCE].map((squareCut) => {
    const pieces = Array.from({ length: 60 }, (_, i) => {
      const random = seededRandom(i + 1);
      return laid(bowedOldRoom(random), random, squareCut, 0).pieces;
    }).flat();
    return pieces.filter(({ bends }) => bends.some(({ isWhole }) => isWhole));
  });
  expect(bent.length).toBeGreaterThan(100);
  expect(scribed.length).toBeLessThan(bent.length / 2);
  // How far the places of each lie from the straight line between its ends: by the equation of a line.
  for (const { bends } of scribed) {
    for (const { places } of bends.filter(({ isWhole }) => isWhole)) {
      const [first, last] = [places[0], places[places.length - 1]];
      const offs = places.map(({ at, size }) => {
        return size - first.size - ((last.size - first.size) * (at - first.at)) / (last.at - first.at);
      });
      // A straight cut that would be a taper of less than a layer cuts is none: there it stays scribed.
      const lean = Math.abs(last.size - first.size);
      const isSmallTaper = lean > 0 && lean < TOLERANCE;
      expect(isSmallTaper || Math.max(...offs) - Math.min(...offs) > TOLERANCE - 16).toBe(true);
    }
  }
});
