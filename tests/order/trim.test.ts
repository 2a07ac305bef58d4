import { describe, expect, test } from 'vitest';
import { TICKS_PER_INCH, ticksOfInches } from '../../src/geometry/length';
import { cutTrim, type TrimLength, trimRunOf } from '../../src/order/trim';
import type { RoomEntry } from '../../src/takeoff/entry';
import { bareTakeoff, doorwayIn, plainEntry } from '../support/bareTakeoff';

const inches = (lengths: readonly TrimLength[]) =>
  Object.fromEntries(lengths.map(({ label, length, mitres }) => [label, (length + mitres) / TICKS_PER_INCH]));

function runOf(entry: RoomEntry, thickness = 0, aroundCutouts = false) {
  return trimRunOf({ ...bareTakeoff(entry), isClockwise: true }, ticksOfInches(thickness), aroundCutouts);
}

/** 10 x 8 ft with a 4 x 3 ft corner out of the far right: walls 1 far, then clockwise. */
const ell = plainEntry('L', 0, 0, {
  shape: {
    kind: 'walls in order',
    diagonals: [],
    walls: [
      { length: 6, turn: 'R' },
      { length: 3, turn: 'L' },
      { length: 4, turn: 'R' },
      { length: 5, turn: 'R' },
      { length: 10, turn: 'R' },
      { length: 8, turn: 'R' },
    ],
  },
});

describe('trim of a room', () => {
  test('a rectangle has a length a wall and four inside corners', () => {
    const run = runOf(plainEntry('a', 12, 10));
    expect(inches(run.lengths)).toEqual({ 'wall 1': 144, 'wall 2': 120, 'wall 3': 144, 'wall 4': 120 });
    expect([run.insideCorners, run.outsideCorners]).toEqual([4, 0]);
  });

  test('an L has five inside corners and an outside one, where two lengths are mitred and grow by the thickness', () => {
    const run = runOf(ell, 0.5);
    expect([run.insideCorners, run.outsideCorners]).toEqual([5, 1]);
    expect(inches(run.lengths)).toEqual({
      'wall 1': 72,
      'wall 2': 36.5,
      'wall 3': 48.5,
      'wall 4': 60,
      'wall 5': 120,
      'wall 6': 96,
    });
  });

  test('a doorway divides its wall, and is counted from the start of the wall', () => {
    const door = doorwayIn(1, 2, 3);
    const run = runOf(plainEntry('a', 12, 10, { doorways: [door] }));
    expect(Object.values(inches(run.lengths)).sort((a, b) => a - b)).toEqual([24, 84, 120, 120, 144]);
    expect(run.insideCorners).toBe(4);
  });

  // 2 ft, a door of 3 ft, 3 ft, a door of 2 ft and 2 ft: 12 ft; typed from the other end.
  test('two doorways leave three lengths, in whichever order they are typed', () => {
    const doorways = [doorwayIn(1, 8, 2), doorwayIn(1, 2, 3)];
    expect(inches(runOf(plainEntry('a', 12, 10, { doorways })).lengths)).toEqual({
      ...{ 'wall 1 (1)': 24, 'wall 1 (2)': 36, 'wall 1 (3)': 24 },
      ...{ 'wall 2': 120, 'wall 3': 144, 'wall 4': 120 },
    });
  });

  test('a doorway in the corner leaves no trim and no corner there', () => {
    const door = doorwayIn(1, 0, 3);
    const run = runOf(plainEntry('a', 12, 10, { doorways: [door] }));
    expect(inches(run.lengths)['wall 1']).toBe(108);
    expect(run.insideCorners).toBe(3);
  });

  const hearth = { kind: 'rectangle', wall: 1, along: 4, off: 0, length: 5, depth: 2, rise: '' } as const;

  test('nothing goes behind a hearth; around it go its three sides, with two inside and two outside corners more', () => {
    const entry = plainEntry('a', 12, 10, { cutouts: [hearth] });
    expect(inches(runOf(entry).lengths)).toEqual({
      'wall 1 (1)': 36,
      'wall 1 (2)': 48,
      'wall 2': 120,
      'wall 3': 144,
      'wall 4': 120,
    });
    const around = runOf(entry, 0, true);
    expect([around.insideCorners, around.outsideCorners]).toEqual([6, 2]);
    const sides = Object.entries(inches(around.lengths)).filter(([label]) => label.startsWith('cut-out 1'));
    expect(sides.map(([, length]) => length).sort((a, b) => a - b)).toEqual([24, 24, 60]);
  });

  test('a column has four outside corners, each side an inch longer for a 1/2 in trim', () => {
    const column = { kind: 'rectangle', wall: 1, along: 4, off: 3, length: 1, depth: 1, rise: '' } as const;
    const run = runOf(plainEntry('a', 12, 10, { cutouts: [column] }), 0.5, true);
    expect([run.insideCorners, run.outsideCorners]).toEqual([4, 4]);
    const sides = Object.entries(inches(run.lengths)).filter(([label]) => label.startsWith('cut-out 1'));
    expect(sides.map(([, length]) => length)).toEqual([13, 13, 13, 13]);
  });

  test('round a round column the length is told and not cut: its circumference, 10 in across', () => {
    const column = { kind: 'round', wall: 1, along: 4, off: 3, length: '10"', depth: '', rise: '' } as const;
    const run = runOf(plainEntry('a', 12, 10, { cutouts: [column] }), 0, true);
    expect(run.roundLength / TICKS_PER_INCH).toBeCloseTo(10 * Math.PI, 0);
    expect(run.lengths).toHaveLength(4);
    expect(run.outsideCorners).toBe(0);
  });

  test('walls walked the other way round keep their numbers', () => {
    const left = plainEntry('a', 0, 0, {
      shape: {
        kind: 'walls in order',
        diagonals: [],
        walls: [
          { length: 12, turn: 'L' },
          { length: 10, turn: 'L' },
          { length: 12, turn: 'L' },
          { length: 10, turn: 'L' },
        ],
      },
    });
    const run = trimRunOf({ ...bareTakeoff(left), isClockwise: false }, 0, false);
    expect(inches(run.lengths)).toEqual({ 'wall 1': 144, 'wall 2': 120, 'wall 3': 144, 'wall 4': 120 });
  });
});

describe('cutting trim', () => {
  const wall = (length: number, label = 'wall 1'): TrimLength => ({ label, length: ticksOfInches(length), mitres: 0 });
  const cut = (lengths: readonly TrimLength[], stock: number, kerf = 0.125, thickness = 0) =>
    cutTrim(lengths, ticksOfInches(stock), ticksOfInches(kerf), ticksOfInches(thickness));

  // By hand: 3 x 34.8 in is 104.4 in, and 2 x 104.4 is 208.8.
  test('walls typed as decimals fill a stick by their sum', () => {
    expect(cut([wall(34.8), wall(34.8), wall(34.8)], 104.4, 0).stickCount).toBe(1);
    expect(cut([wall(208.8)], 104.4, 0).pieces).toHaveLength(2);
  });

  test('only a wall longer than a stick is scarfed', () => {
    const cuts = cut([wall(120), wall(96, 'wall 2')], 96, 0);
    expect(cuts.pieces.map(({ label, length, scarfed }) => [label, length / TICKS_PER_INCH, scarfed])).toEqual([
      ['wall 1', 96, true],
      ['wall 1', 24, true],
      ['wall 2', 96, false],
    ]);
    expect(cuts.stickCount).toBe(3);
  });

  // Common practice: no scarfed piece under a foot.
  test('a short rest and the stick before it are made alike', () => {
    const cuts = cut([wall(100)], 96, 0);
    expect(cuts.pieces.map(({ length }) => length / TICKS_PER_INCH)).toEqual([50, 50]);
  });

  test('each scarf takes the thickness of the trim', () => {
    const cuts = cut([wall(200)], 96, 0, 0.5);
    expect(cuts.pieces.reduce((sum, piece) => sum + piece.length, 0)).toBe(ticksOfInches(200 + 2 * 0.5));
  });

  test('every piece is cut once, and no stick gives more than it has', () => {
    const lengths = [150, 120, 88, 47, 47, 33, 12, 96, 95.9].map((length, i) => wall(length, `wall ${i + 1}`));
    const cuts = cut(lengths, 96);
    expect(cuts.sticks.flat().sort((a, b) => a - b)).toEqual(cuts.pieces.map((_, i) => i));
    for (const stick of cuts.sticks) {
      const used = stick.reduce((sum, i) => sum + cuts.pieces[i].length, 0) + (stick.length - 1) * ticksOfInches(0.125);
      expect(used).toBeLessThanOrEqual(ticksOfInches(96));
    }
    expect(cuts.provedFewest).toBe(true);
  });
});
