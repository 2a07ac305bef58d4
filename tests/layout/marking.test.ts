import { describe, expect, test } from 'vitest';
import type { Region } from '../../src/geometry/polygon';
import { BENDING } from '../../src/layout/bends';
import { type Marking, markingOf } from '../../src/layout/marking';
import { inches } from '../support/floors';

const STEP = inches(1 / 16);
const p = (x: number, y: number) => ({ x: inches(x), y: inches(y) });

function marked(shape: Region): Marking {
  return markingOf(shape, STEP);
}

function sizes({ length, shortPoint, widthLeft, widthRight }: Marking): readonly number[] {
  return [length, shortPoint, widthLeft, widthRight].map((ticks) => ticks / inches(1));
}

describe('length and width', () => {
  test.each<readonly [string, Region, readonly number[]]>([
    ['a square piece', [[p(3, 7.5), p(43, 7.5), p(43, 15), p(3, 15)]], [40, 40, 7.5, 7.5]],
    ['one end at 45 degrees', [[p(0, 0), p(40, 0), p(32.5, 7.5), p(0, 7.5)]], [40, 32.5, 7.5, 7.5]],
    [
      'both ends the same way: both edges are equal',
      [[p(0, 0), p(40, 0), p(47.5, 7.5), p(7.5, 7.5)]],
      [47.5, 40, 7.5, 7.5],
    ],
    ['both ends against each other', [[p(0, 0), p(40, 0), p(32.5, 7.5), p(7.5, 7.5)]], [40, 25, 7.5, 7.5]],
    ['a tip', [[p(0, 0), p(15, 0), p(7.5, 7.5)]], [15, 0, 7.5, 7.5]],
    ['a taper', [[p(0, 0), p(48, 0), p(48, 6), p(0, 7)]], [48, 48, 7, 6]],
    ['a taper at the start edge', [[p(0, 0), p(48, 1), p(48, 7), p(0, 7)]], [48, 48, 7, 6]],
    ['tapered on both edges', [[p(0, 1), p(48, 0), p(48, 7), p(0, 6.5)]], [48, 48, 5.5, 7]],
    ['a taper that runs out', [[p(0, 0), p(48, 0), p(0, 4)]], [48, 48, 4, 0]],
  ])('%s', (_, shape, wanted) => {
    expect(sizes(marked(shape))).toEqual(wanted);
  });

  test('a taper and an angled end', () => {
    const [length, shortPoint, left, right] = sizes(marked([[p(0, 0), p(48, 0), p(42, 6), p(0, 7)]]));
    // The far edge falls from 7 at 0 to 6 at 42, where the end cut meets it; drawn on to 48 it is 7 - 48/42 = 5.857.
    expect([length, left]).toEqual([48, 7]);
    expect(shortPoint).toBeCloseTo(42, 3);
    expect(right).toBeCloseTo(7 - 48 / 42, 3);
  });
});

describe('slanted cuts', () => {
  test('an end at 45 degrees: what it takes off and where', () => {
    const { slants } = marked([[p(0, 0), p(40, 0), p(32.5, 7.5), p(0, 7.5)]]);
    expect(slants).toHaveLength(1);
    expect(slants[0]).toMatchObject({
      kind: 'end',
      end: 'right',
      edge: 'far',
      along: inches(7.5),
      across: inches(7.5),
    });
    expect(slants[0].degreesOffSquare).toBeCloseTo(45, 6);
  });

  test('a 3-4-5 end is 36.87 degrees off square', () => {
    // 6 in along over 8 in across: atan(6 / 8) = 36.8699 degrees.
    const { slants } = marked([[p(6, 0), p(40, 0), p(40, 8), p(0, 8)]]);
    expect(slants[0]).toMatchObject({ kind: 'end', end: 'left', edge: 'start', along: inches(6), across: inches(8) });
    expect(slants[0].degreesOffSquare).toBeCloseTo(36.8699, 4);
  });

  test('a corner cut off', () => {
    const { slants, shortPoint } = marked([[p(0, 0), p(40, 0), p(40, 5), p(37, 7.5), p(0, 7.5)]]);
    expect(slants).toEqual([
      expect.objectContaining({ kind: 'corner', end: 'right', edge: 'far', along: inches(3), across: inches(2.5) }),
    ]);
    // 40 - 3 are left of the far edge.
    expect(shortPoint).toBe(inches(37));
  });

  test('two at one end: each from the corner of the rectangle, and the edge that stays', () => {
    // Along 30 : 5 = 6 : 1 and 1 : 2. The first, drawn on from (9, 7) through (39, 2), meets x = 40 at 2 - 1/6; the
    // second, from (40, 0), meets the far edge at 40 - 7 / 2.
    const { slants, shortPoint } = marked([[p(0, 0), p(40, 0), p(39, 2), p(9, 7), p(0, 7)]]);
    const told = slants.map(({ kind, end, edge, along, across }) => [
      kind,
      end,
      edge,
      ...[along, across].map((ticks) => Math.round((1e3 * ticks) / inches(1)) / 1e3),
    ]);
    expect(told).toEqual([
      ['corner', 'right', 'far', 31, 5.167],
      ['end', 'right', 'far', 3.5, 7],
    ]);
    expect(shortPoint).toBe(inches(9));
  });

  test('a slant that cannot be marked is a square end', () => {
    const shape: Region = [[p(0, 0), p(40, 0), { x: inches(40) - 900, y: inches(7.5) }, p(0, 7.5)]];
    expect(marked(shape)).toMatchObject({ slants: [], notches: [], shortPoint: inches(40) });
    // Exactly a step can be marked.
    const corner = marked([[p(0, 0), p(40, 0), p(40, 7.4375), p(39.9375, 7.5), p(0, 7.5)]]);
    expect(corner.slants).toMatchObject([{ kind: 'corner', along: STEP, across: STEP }]);
  });

  test('a tapered edge with a notch in it is one taper', () => {
    // The far edge falls from 7 to 6 in over 48 in; a column 4 in wide stands 2 in into it from 20 to 24.
    const far = (x: number) => p(x, 7 - x / 48);
    const shape: Region = [[p(0, 0), p(48, 0), far(48), far(24), p(24, 4), p(20, 4), far(20), far(0)]];
    const { slants, notches, widthLeft, widthRight } = marked(shape);
    expect(slants.map((slant) => slant.kind)).toEqual(['taper']);
    expect([widthLeft, widthRight]).toEqual([inches(7), inches(6)]);
    expect(notches).toHaveLength(1);
    expect(notches[0]).toMatchObject({ end: 'left', fromEnd: inches(20), edge: 'far', length: inches(4) });
  });
});

// 48 x 6 in beside something curved along 18 in at one end: it stands 1 to 2 in into the start edge, of which 30 in stay.
test('a bend along a part of an edge leaves the rest of it, at either end', () => {
  const right = [p(0, 0), p(30, 0), p(30, 1), p(36, 1.1), p(42, 1.4), p(48, 2), p(48, 6), p(0, 6)];
  const left = right.map(({ x, y }) => ({ x: inches(48) - x, y })).reverse();
  const edges = [right, left].map((outline) => markingOf([outline], STEP, BENDING.unbend));
  expect(edges.map(({ bends }) => bends.map(({ side, isWhole }) => [side, isWhole]))).toEqual(
    Array(2).fill([['start', false]]),
  );
  expect(edges.map(({ longEdges }) => longEdges.start)).toEqual([
    { from: 0, to: inches(30) },
    { from: inches(18), to: inches(48) },
  ]);
  expect(edges.map(({ shortPoint }) => shortPoint)).toEqual([inches(30), inches(30)]);
});

describe('notches', () => {
  const notched = (shape: Region) => {
    const { notches } = marked(shape);
    expect(notches).toHaveLength(1);
    const { end, edge, fromEnd, fromEdge, length, depth, isSquare } = notches[0];
    return [end, edge, ...[fromEnd, fromEdge, length, depth].map((ticks) => ticks / inches(1)), isSquare];
  };

  test('in the far edge, nearer to the right end', () => {
    expect(notched([[p(0, 0), p(40, 0), p(40, 7.5), p(35, 7.5), p(35, 5), p(30, 5), p(30, 7.5), p(0, 7.5)]])).toEqual([
      'right',
      'far',
      5,
      0,
      5,
      2.5,
      true,
    ]);
  });

  test('out of a corner', () => {
    expect(notched([[p(4, 0), p(40, 0), p(40, 7.5), p(0, 7.5), p(0, 3), p(4, 3)]])).toEqual([
      'left',
      'start',
      0,
      0,
      4,
      3,
      true,
    ]);
  });

  test('in the middle of an end', () => {
    expect(notched([[p(0, 0), p(40, 0), p(40, 2), p(38, 2), p(38, 4), p(40, 4), p(40, 7.5), p(0, 7.5)]])).toEqual([
      'right',
      'start',
      0,
      2,
      2,
      2,
      true,
    ]);
  });

  test('a hole', () => {
    const hole = [p(10, 3), p(10, 4), p(11, 4), p(11, 3)];
    expect(notched([[p(0, 0), p(40, 0), p(40, 7.5), p(0, 7.5)], hole])).toEqual(['left', 'start', 10, 3, 1, 1, true]);
  });

  test('a slanted one is told as not square', () => {
    expect(notched([[p(0, 0), p(40, 0), p(40, 7.5), p(30, 7.5), p(25, 5), p(20, 7.5), p(0, 7.5)]])).toEqual([
      'right',
      'far',
      10,
      0,
      10,
      2.5,
      false,
    ]);
  });

  test('beside an angled end: only what the end does not already take off', () => {
    // 45 degrees at the right from (40, 0) to (32.5, 7.5); a notch of 3 by 2 at the left of the start edge.
    const shape: Region = [[p(3, 0), p(40, 0), p(32.5, 7.5), p(0, 7.5), p(0, 2), p(3, 2)]];
    expect(notched(shape)).toEqual(['left', 'start', 0, 0, 3, 2, true]);
    expect(marked(shape).slants.map((slant) => slant.kind)).toEqual(['end']);
  });

  test('in the short edge: from the corner that this edge has', () => {
    // 45 degrees at the right: the start edge ends at 32.5, the notch at 30.
    expect(notched([[p(0, 0), p(26, 0), p(26, 1), p(30, 1), p(30, 0), p(32.5, 0), p(40, 7.5), p(0, 7.5)]])).toEqual([
      'right',
      'start',
      2.5,
      0,
      4,
      1,
      true,
    ]);
  });

  test('an end cut at 45 degrees to a square step is open to the far edge, and only touches the start edge', () => {
    expect(notched([[p(0, 0), p(48, 0), p(41, 7), p(41, 7.5), p(0, 7.5)]])).toEqual([
      'right',
      'far',
      0,
      0,
      7,
      7.5,
      false,
    ]);
  });

  test('a piece in two strips, beside a column longer than it', () => {
    const shape: Region = [
      [p(0, 0), p(20, 0), p(20, 2), p(0, 2)],
      [p(0, 5), p(20, 5), p(20, 7.5), p(0, 7.5)],
    ];
    expect(notched(shape)).toEqual(['left', 'start', 0, 2, 20, 3, true]);
  });

  test('one too small to mark is left out', () => {
    const small = inches(1 / 32) / inches(1);
    expect(marked([[p(small, 0), p(40, 0), p(40, 7.5), p(0, 7.5), p(0, 3), p(small, 3)]]).notches).toEqual([]);
  });
});
