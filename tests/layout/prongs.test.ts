/** Prongs that stand across the grain beside a notch. */
import { expect, test } from 'vitest';
import { ticksOfInches } from '../../src/geometry/length';
import type { Region } from '../../src/geometry/polygon';
import { prongsOf, withoutProngs } from '../../src/layout/prongs';
import { takeoff } from '../../src/takeoff/takeoff';
import { differenceArea, unionArea } from '../support/areaOracle';
import { plainEntry } from '../support/bareTakeoff';

const inches = (...places: readonly (readonly [number, number])[]): Region => [
  places.map(([x, y]) => ({ x: ticksOfInches(x), y: ticksOfInches(y) })),
];
const LEAST = ticksOfInches(3 / 4);

test.each([
  // A piece of 48 by 6 with a notch 30 by 4 in its start edge, from 1/2" on: the prong is 1/2" along and 4" across.
  [
    'a joint half an inch before a hearth',
    [
      [0, 0],
      [0.5, 0],
      [0.5, 4],
      [30.5, 4],
      [30.5, 0],
      [48, 0],
      [48, 6],
      [0, 6],
    ],
    [[0.5, 4]],
  ],
  // Five corners are the fewest that a prong has: 1/2" along, and 5" across from where the long slant meets it.
  [
    'beside a slant',
    [
      [0, 0],
      [48, 0],
      [0.5, 1],
      [0.5, 6],
      [0, 6],
    ],
    [[0.5, 5]],
  ],
  [
    'one inch before it',
    [
      [0, 0],
      [1, 0],
      [1, 4],
      [30.5, 4],
      [30.5, 0],
      [48, 0],
      [48, 6],
      [0, 6],
    ],
    [],
  ],
  [
    'half an inch past its corner: nothing stands alone',
    [
      [0, 4],
      [0.5, 4],
      [0.5, 0],
      [48, 0],
      [48, 6],
      [0, 6],
    ],
    [],
  ],
  [
    'a notch no deeper than the prong is wide',
    [
      [0, 0],
      [0.5, 0],
      [0.5, 0.4],
      [30.5, 0.4],
      [30.5, 0],
      [48, 0],
      [48, 6],
      [0, 6],
    ],
    [],
  ],
  [
    'an angled end',
    [
      [0, 0],
      [48, 0],
      [45, 6],
      [0, 6],
    ],
    [],
  ],
] as const)('%s', (_, places, wanted) => {
  const found = prongsOf(inches(...places), LEAST).map(({ width, length }) => [width, length]);
  expect(found).toEqual(wanted.map((sizes) => sizes.map(ticksOfInches)));
  expect(prongsOf(inches(...places), 0)).toEqual([]);
});

// By hand: a hearth 1 1/4" from the end wall leaves, after a gap of 3/8" at both, 1/2" of floor beside it.
test('a prong between a wall and a hearth is told', () => {
  const hearth = {
    kind: 'rectangle',
    wall: 1,
    along: '1 1/4"',
    off: 0,
    length: '40"',
    depth: '15"',
    rise: '',
  } as const;
  const result = takeoff(plainEntry('Den', 12, 10, { cutouts: [hearth] }));
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  expect(result.takeoff.notes.filter((note) => note.includes('keeps a prong of 1/2"')).length).toBeGreaterThan(0);
  // Rows that lie wholly beside the hearth have a piece of 1/2" there.
  expect(result.takeoff.notes.join(' ')).toMatch(/are shorter than can be made \(3\/4"\)/);
});

// By hand: 1/4" along by 4" across, beside a notch of 30" by 4": 1 sq in of 48 x 6 - 120 = 168.
test('a prong that trim covers is left off, but not beside a hearth', () => {
  const piece = inches([0, 0], [0.25, 0], [0.25, 4], [30.25, 4], [30.25, 0], [48, 0], [48, 6], [0, 6]);
  const under = ticksOfInches(3 / 8);
  const reach = ticksOfInches(3 / 8);
  const found = withoutProngs(piece, { under, bare: [], reach });
  expect(found?.widest).toBe(ticksOfInches(1 / 4));
  expect(differenceArea(piece, found?.region ?? [])).toBe(ticksOfInches(1 / 4) * ticksOfInches(4));
  expect(unionArea(found?.region ?? [], piece)).toBe(unionArea(piece, []));
  const hearth = inches([0.5, -20], [30, -20], [30, 3.5], [0.5, 3.5]);
  expect(withoutProngs(piece, { under, bare: hearth, reach })).toBeNull();
  expect(withoutProngs(piece, { under: ticksOfInches(1 / 4), bare: [], reach })).toBeNull();
});
