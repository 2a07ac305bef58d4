import { describe, expect, test } from 'vitest';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_METRE } from '../../src/geometry/length';
import { trimRunOf } from '../../src/order/trim';
import { PLANK_TRIM } from '../../src/sheet/orderFunctions';
import { bareTakeoff, doorwayIn, plainEntry } from '../support/bareTakeoff';

function lengthAround(room: ReturnType<typeof bareTakeoff>): number {
  const run = trimRunOf({ ...room, isClockwise: true }, 0, false);
  return run.lengths.reduce((sum, wall) => sum + wall.length, 0);
}

describe('trim along the walls less the doorways', () => {
  test('20 x 14 ft, one door of 2 ft 8 in: perimeter 68 ft, base 65 ft 4 in (Algebra.com question 1186815)', () => {
    expect(lengthAround(bareTakeoff(plainEntry('a', 20, 14)))).toBe(68 * TICKS_PER_FOOT);
    const room = bareTakeoff(plainEntry('a', 20, 14, { doorways: [doorwayIn(3, 5, `2' 8"`)] }));
    expect(lengthAround(room)).toBe(65 * TICKS_PER_FOOT + 4 * TICKS_PER_INCH);
  });

  test('15 x 8 ft room, 3 ft door, 2 in added a wall: 43 ft 8 in (98905.com/127902)', () => {
    const room = bareTakeoff(plainEntry('a', 15, 8, { doorways: [doorwayIn(1, 1, 3)] }));
    // The article cuts each of the four lengths 2 in long: 15' 2", 12' 2" and twice 8' 2".
    expect(lengthAround(room) + 4 * 2 * TICKS_PER_INCH).toBe(43 * TICKS_PER_FOOT + 8 * TICKS_PER_INCH);
  });

  test('8 x 4 m, doors of 1.2 and 1.3 m: 24 - 2.5 = 21.5 m (Serlo 254275)', () => {
    const entry = plainEntry('a', '8 m', '4 m', {
      doorways: [doorwayIn(2, '1 m', '1.2 m'), doorwayIn(4, '1 m', '1.3 m')],
    });
    expect(lengthAround(bareTakeoff(entry))).toBe(21.5 * TICKS_PER_METRE);
  });

  test('22 x 17 m less an opening of 3.60 m: 74.40 m (mathelounge.de 714339)', () => {
    const room = bareTakeoff(plainEntry('a', '22 m', '17 m', { doorways: [doorwayIn(1, '2 m', '3.6 m')] }));
    expect(lengthAround(room)).toBe(74.4 * TICKS_PER_METRE);
  });

  test('18 x 14 ft: 64 ft around (sciencing.com, "Room’s perimeter")', () => {
    expect(lengthAround(bareTakeoff(plainEntry('a', 18, 14)))).toBe(64 * TICKS_PER_FOOT);
  });
});

/** Pieces of each length as a column of cells, as a person would list them. */
const column = (pieces: readonly (readonly [number, number])[]) =>
  pieces.flatMap(([length, count]) => Array.from({ length: count }, () => [length]));

describe('fewest sticks', () => {
  test('the encyclopaedia’s cutting stock problem, 219 pieces from 5600 mm: 73 (article "Cutting stock problem")', () => {
    const pieces = [
      [1.38, 22],
      [1.52, 25],
      [1.56, 12],
      [1.71, 14],
      [1.82, 18],
      [1.88, 18],
      [1.93, 20],
      [2, 10],
      [2.05, 12],
      [2.1, 14],
      [2.14, 16],
      [2.15, 18],
      [2.2, 20],
    ] as const;
    expect(PLANK_TRIM(column(pieces), 5.6, 0, 'metric')).toBe(73);
  });

  test('raws of 100 for widths of 45, 36, 31 and 14: 453 (V. Chvatal, Linear Programming, 1983, ch. 13)', () => {
    const pieces = [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ] as const;
    expect(PLANK_TRIM(column(pieces), 100, 0)).toBe(453);
  });

  // Sums of the lengths bound the sticks; with a kerf a stick of 16 ft gives one piece of 8 ft and one a kerf shorter.
  test('two pieces of 8 ft fit a stick of 16 ft only without a kerf', () => {
    expect(PLANK_TRIM([[8], [8]], 16, 0)).toBe(1);
    expect(PLANK_TRIM([[8], [8]], 16)).toBe(2);
    expect(PLANK_TRIM([[8], [`7' 11 7/8"`]], 16)).toBe(1);
  });

  test('a wall longer than a stick takes a whole one and what is left', () => {
    expect(PLANK_TRIM([[20], [11]], 16, 0)).toBe(2);
  });

  test.each([
    ['text', [['long']], 16, 'lengths: "long" is not a length.'],
    ['a negative', [[10], [-3]], 16, 'lengths, row 2: -3 is negative.'],
    ['no lengths', [['']], 16, 'lengths is blank. Give at least one row.'],
    ['inches for feet', [[100]], 0.001, "At most 5000 are planned at once; check the unit of the stick's length."],
  ])('%s gets a sentence', (_, lengths, stock, sentence) => {
    expect(() => PLANK_TRIM(lengths, stock)).toThrow(sentence);
  });
});
