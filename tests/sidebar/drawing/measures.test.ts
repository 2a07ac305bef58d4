/** Numbers of corners, and measures with what each is off by: what they say, and that they can be read. */
import { describe, expect, test } from 'vitest';
import { contains } from '../../../src/geometry/polygon';
import { advisedDiagonals } from '../../../src/room/tapeAdvice';
import { type Drawing, drawingOf } from '../../../src/sidebar/drawing/drawing';
import { fieldOfMark, marksOfField } from '../../../src/sidebar/drawing/drawnFields';
import { RING } from '../../../src/sidebar/drawing/measureMarks';
import { echoWords } from '../../../src/sidebar/form/echo';
import { firstLookAt } from '../../../src/sidebar/form/firstLook';
import { byWords } from '../../../src/sidebar/form/measures';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { inches } from '../../support/floors';
import { plainRoom } from '../../support/roomEntries';
import { seededRandom } from '../../support/seededRandom';
import { tapedDistances, tapedRoom, tapedWalls } from '../../support/tapedRooms';

type Diagonal = readonly [from: number, to: number, length: string];
const walls = (...lengths: readonly string[]) => lengths.map((length) => ({ length, turn: 'R' }));
const inOrder = (lengths: readonly string[], ...diagonals: readonly Diagonal[]): RoomEntry => ({
  ...plainRoom,
  shape: {
    kind: 'walls in order',
    walls: walls(...lengths),
    diagonals: diagonals.map(([from, to, length]) => ({ from, to, length })),
  },
});
const SIDES = ["12'", "9'", "12'", "9'"];

describe('what a measure is off by', () => {
  // 12, 9 and 15 make a right angle (Euclid I.48): with four right angles both diagonals are 15 ft.
  test('nothing where all measures agree', () => {
    const { sketch } = firstLookAt(inOrder(SIDES, [1, 3, "15'"], [2, 4, "15'"]));
    expect(sketch?.measures.map(({ by }) => byWords(by, 'us'))).toEqual(['±0', '±0', '±0', '±0', '±0', '±0']);
  });

  test('not known where nothing else tells the same: four walls and one diagonal', () => {
    const { sketch } = firstLookAt(inOrder(SIDES, [1, 3, "15'"]));
    expect(sketch?.measures.map(({ by }) => by)).toEqual([null, null, null, null, null]);
    if (!sketch) throw new Error('The room can be drawn.');
    expect(drawingOf(sketch, { width: 280, height: 250 }, true).diagonals[0].words).toBe(`15' 0"`);
  });

  // By hand: both diagonals read 1/2 in long. What is left of it, r, pulls at the walls: with weights 1 / length, walls of
  // 144 and 108 in and diagonals of 180 in at slopes 4/5 and 3/5, a wall grows by 144 x 4/5 x r / 180 = 0.64 r or
  // 108 x 3/5 x r / 180 = 0.36 r, and r = 1/2 - 4/5 x 0.64 r - 3/5 x 0.36 r, so that r = 0.28935 in.
  test('shared between walls and diagonals as least squares have it', () => {
    const { sketch } = firstLookAt(inOrder(SIDES, [1, 3, `15' 1/2"`], [2, 4, `15' 1/2"`]));
    const off = sketch?.measures.map(({ by }) => (by ?? 0) / inches(1)) ?? [];
    const wanted = [0.64, 0.36, 0.64, 0.36, -1, -1].map((share) => share * 0.28935);
    off.forEach((by, i) => {
      expect(by).toBeCloseTo(wanted[i], 3);
    });
    expect(byWords(sketch?.measures[1].by ?? null, 'us')).toBe('+1/8"');
    expect(byWords(-inches(1 / 4), 'us')).toBe('−1/4"');
  });

  test.each([
    ['walls in order', inOrder(SIDES, [1, 3, "15'"], [2, 4, "16'"])],
    [
      'four walls',
      {
        ...plainRoom,
        shape: { kind: 'four walls', walls: ["12'", "9'", "12'", "9'"], diagonal: "15'", otherDiagonal: "16'" },
      },
    ],
  ] as const)('one that the others contradict is marked, and nothing else: %s', (_, entry) => {
    const look = firstLookAt(entry);
    expect(look.problems).toHaveLength(1);
    if (!look.nearly) throw new Error('The others make a room.');
    const drawing = drawingOf(look.nearly, { width: 280, height: 250 }, true);
    expect(drawing.diagonals.map(({ words, isWorst }) => [words, isWorst])).toEqual([
      [`! 16' 0" −12"`, true],
      [`15' 0" ±0`, false],
    ]);
    expect(drawing.wallNumbers.map(({ words, isWorst }) => [words, isWorst])).toEqual([
      [`W1 12' 0" ±0`, false],
      [`W2 9' 0" ±0`, false],
      [`W3 12' 0" ±0`, false],
      [`W4 9' 0" ±0`, false],
    ]);
    expect(echoWords(entry, look)).toBe('The measure marked ! does not fit the others.');
  });

  // Corners (0, 9), (12, 9), (12, 4), (9, 0), (0, 0) ft: wall 3 and two of the diagonals by 3-4-5, 5-12-13 and 9-12-15, the
  // others by Pythagoras. Wall 2 is 5 ft and was written down as 6.
  test('a wall that the others contradict is marked at its number', () => {
    const lengths = ["12'", "6'", "5'", "9'", "9'"];
    const across = (feet: number) => `${(12 * Math.sqrt(feet)).toFixed(3)}"`;
    const diagonals = [
      [1, 3, "13'"],
      [1, 4, across(162)],
      [2, 4, across(90)],
      [2, 5, "15'"],
      [3, 5, across(160)],
    ] as const;
    const entry = inOrder(lengths, ...diagonals);
    const turns = ['R', 'R', '36.87', '53.13', 'R'];
    if (entry.shape.kind !== 'walls in order') throw new Error('Walls in order.');
    const look = firstLookAt({
      ...entry,
      shape: { ...entry.shape, walls: lengths.map((length, i) => ({ length, turn: turns[i] })) },
    });
    if (!look.nearly) throw new Error('The others make a room.');
    const { wallNumbers } = drawingOf(look.nearly, { width: 280, height: 250 }, true);
    expect(wallNumbers.filter(({ isWorst }) => isWorst).map(({ words }) => words)).toEqual([`!W2 6' 0" −12"`]);
  });
});

test.each([
  ['diagonal 2', 'walls in order', 'shape.diagonals.1.length'],
  ['diagonal 1', 'four walls', 'shape.diagonal'],
  ['diagonal 2', 'four walls', 'shape.otherDiagonal'],
] as const)('%s of %s leads to its field, and back', (mark, kind, path) => {
  expect(fieldOfMark(mark, kind)).toBe(path);
  expect(marksOfField(path)).toEqual([mark]);
});

test('a room measured by length and width has no numbers at its corners', () => {
  const { sketch } = firstLookAt(plainRoom);
  if (!sketch) throw new Error('A plain room.');
  expect(drawingOf(sketch, { width: 280, height: 250 }, true).cornerNumbers).toEqual([]);
});

/** Middles of all letters of words on a line, a letter taken for 6 pixels. */
function letters({ x, y }: Place, turn: number, words: string): readonly Place[] {
  const [ux, uy] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return [...words].map((_, i) => {
    const by = (i - (words.length - 1) / 2) * 6;
    return { x: x + ux * by, y: y + uy * by };
  });
}

interface Place {
  readonly x: number;
  readonly y: number;
}

const apart = (a: Place, b: Place) => Math.hypot(a.x - b.x, a.y - b.y);

/** The least from any of these to any of those. */
function nearest(these: readonly Place[], those: readonly Place[]): number {
  return Math.min(...these.map((one) => Math.min(...those.map((other) => apart(one, other)))));
}

describe('in 120 crooked rooms, as small as in the sidebar and as large as in the large view', () => {
  const random = seededRandom(41);
  const rooms = Array.from({ length: 120 }, () => {
    const room = tapedRoom(random, 0.5);
    const mm = (length: number) => Math.round(length / 640) * 640;
    const pairs = [...advisedDiagonals(room.drawn), [1, 3] as const];
    const entry: RoomEntry = {
      ...plainRoom,
      units: 'metric',
      shape: {
        kind: 'walls in order',
        walls: tapedWalls(room, mm).map(({ length, turn }) => ({
          length: `${(length ?? 0) / 640} mm`,
          turn: turn ?? '',
        })),
        diagonals: tapedDistances(room, pairs, mm).map(({ fromCorner, toCorner, length }) => ({
          from: fromCorner,
          to: toCorner,
          length: `${length / 640} mm`,
        })),
      },
      product: { ...plainRoom.product, plankLength: 1200, plankWidth: 150 },
    };
    const { sketch } = firstLookAt(entry);
    if (!sketch) throw new Error('The room can be drawn.');
    return sketch;
  });

  test.each([
    [280, 84],
    [280, 330],
    [1000, 600],
  ])('%d by %d pixels: nothing stands in the way of anything else', (width, height) => {
    for (const sketch of rooms) {
      const drawing = drawingOf(sketch, { width, height }, true);
      const rings = drawing.cornerNumbers;
      for (const [i, ring] of rings.entries()) {
        expect(contains([sketch.outline], inRoom(drawing, ring))).toBe(false);
        for (const other of rings.slice(0, i)) expect(apart(ring, other)).toBeGreaterThanOrEqual(2 * RING);
      }
      const told = [
        ...drawing.wallNumbers.map((one) => letters(one, one.turn, one.words)),
        ...drawing.diagonals.map((one) => letters(one.middle, one.turn, one.words)),
      ];
      for (const [i, words] of told.entries()) {
        const before = told.slice(0, i).flat();
        expect(nearest(words, rings)).toBeGreaterThanOrEqual(RING + 3);
        expect(nearest(words, before)).toBeGreaterThanOrEqual(7);
      }
    }
  });

  test('where there is room, every corner, every longer wall and every longer diagonal is told', () => {
    for (const sketch of rooms) {
      const drawing = drawingOf(sketch, { width: 1400, height: 1200 }, true);
      expect(drawing.cornerNumbers).toHaveLength(sketch.walls.length);
      const silent = drawing.diagonals.filter(({ from, to, words }) => words === '' && apart(from, to) > 200);
      expect(silent).toEqual([]);
      // In a narrow bay the numbers of its corners may leave none to its sides.
      const long = sketch.walls.filter(({ from, to }) => apart(from, to) * drawing.scale.perTick > 90);
      const numbered = drawing.wallNumbers.map(({ wallNumber }) => wallNumber);
      expect(numbered).toEqual(expect.arrayContaining(long.map(({ wallNumber }) => wallNumber)));
    }
  });
});

function inRoom({ scale }: Drawing, { x, y }: Place): Place {
  const origin = scale.place({ x: 0, y: 0 });
  return { x: Math.round((x - origin.x) / scale.perTick), y: Math.round((origin.y - y) / scale.perTick) };
}
