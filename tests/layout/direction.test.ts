/** Which way rows run: lengthwise, the directions that are compared, and a taper shared by both walls. */
import { describe, expect, test } from 'vitest';
import { degreesOf, directionsIn } from '../../src/layout/direction';
import { rowsOf } from '../../src/layout/rows';
import type { Room } from '../../src/room/outline';
import { feet, floorAndBody, goodRoom, inches, rectangular, walked } from '../support/floors';

const R = 90;
const GAP = inches(3 / 8);

describe('lengthwise', () => {
  test('of a room measured as length and width it is the length, however short', () => {
    expect(goodRoom(rectangular(9, 13)).lengthwise).toBe(0);
  });

  test('of a walk round a room it is the longest straight wall', () => {
    expect(goodRoom(walked([9, R], [13, R], [9, R], [13, R])).lengthwise).toBe(90);
    // Both long walls bow: the longest straight ones are the short ones.
    const bow = (wallNumber: number) => ({ kind: 'curve', wallNumber, rise: inches(2) }) as const;
    const bowed = goodRoom(walked([9, R], [13, R], [9, R], [13, R]), { bows: [bow(2), bow(4)] });
    expect(bowed.lengthwise).toBe(0);
  });

  test('far and near stay what they are, whichever way the longest wall was walked', () => {
    // By hand: 3 ft, 1 degree to the left, 5 ft; the near wall is the longest and 0.6 degrees off level.
    const room = goodRoom({
      kind: 'taped',
      walls: [
        { length: feet(3), turn: -1 },
        { length: feet(5), turn: 91 },
        { length: feet(6), turn: R },
        { length: feet(8.2), turn: R },
        { length: feet(6), turn: R },
      ],
      distances: [{ fromCorner: 1, toCorner: 3, length: feet(7.999) }],
    });
    expect(Math.abs(room.lengthwise)).toBeLessThan(5);
  });
});

/** Near wall level, left wall 15 ft, right wall `more` inches longer, 20 ft along. */
function tapering(more: number): Room {
  const far = Math.hypot(240, more);
  return goodRoom({
    kind: 'four walls',
    walls: [inches(far), inches(180 + more), feet(20), feet(15)],
    // From the far left corner to the near right one: 15 by 20 by 25 ft.
    diagonal: feet(25),
    otherDiagonal: null,
  });
}

/** How much the first row and the last differ in width from end to end, inches. */
function tapersOf(room: Room, along: 'length' | 'shared taper'): readonly number[] {
  const { floor, body } = floorAndBody(room, GAP);
  const degrees = degreesOf({ along }, room) ?? 0;
  const plank = { plankWidth: inches(5), minRip: inches(2), markingStep: inches(1 / 16) };
  const { rows } = rowsOf(floor, { ...plank, degrees, startSide: 'near', firstRow: 'auto', body });
  return [rows[0], rows[rows.length - 1]].map(({ width, narrowest }) => (width - narrowest.width) / inches(1));
}

describe('a taper shared by both walls', () => {
  test('end walls of 15\' and 15\' 2" are laid with 1" at each side', () => {
    // Source: a wood floor installer's published example. Over 20 ft less the gaps it is 239.25 / 240 of an inch.
    const room = tapering(2);
    const [first, last] = tapersOf(room, 'shared taper');
    expect(first).toBeCloseTo(1, 1);
    expect(last).toBeCloseTo(1, 1);
    const plain = tapersOf(room, 'length');
    expect(Math.min(...plain)).toBeCloseTo(0, 1);
    expect(Math.max(...plain)).toBeCloseTo(2, 1);
  });

  test('under 1/4 in over 6 ft it is left', () => {
    // Source: a how-to page on laying wood floors. 3/4 in over 20 ft is 0.225 in over 6 ft, 7/8 in is 0.2625.
    const [left, shared] = [tapering(3 / 4), tapering(7 / 8)];
    expect(degreesOf({ along: 'shared taper' }, left)).toBe(left.lengthwise);
    expect(directionsIn(left).map(({ typed }) => typed)).toEqual(['', 'width']);
    expect(degreesOf({ along: 'shared taper' }, shared)).not.toBe(shared.lengthwise);
    expect(directionsIn(shared).map(({ typed }) => typed)).toEqual(['', 'width', 'shared']);
  });

  test('it lies half way between the walls, whichever of them the room is drawn along', () => {
    // atan(2 / 240) is 0.4775 degrees.
    const room = tapering(2);
    expect(Math.abs((degreesOf({ along: 'shared taper' }, room) ?? 0) - room.lengthwise)).toBeCloseTo(0.23873, 3);
  });
});
