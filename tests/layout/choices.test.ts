import { describe, expect, test } from 'vitest';
import { type ChoiceOptions, layChoicesOf } from '../../src/layout/choices';
import { degreesOf, directionsIn } from '../../src/layout/direction';
import { feet, floorAndBody, goodRoom, inches, rectangular, walked } from '../support/floors';

const [R, L] = [90, -90];
const OPTIONS: ChoiceOptions = {
  plankWidth: inches(7.5),
  minRip: inches(2),
  kerf: inches(1 / 8),
  markingStep: inches(1 / 16),
  directions: [0],
  startSides: ['near'],
  widthCount: 20,
};

function choicesIn(room: Parameters<typeof floorAndBody>[0], options: Partial<ChoiceOptions> = {}) {
  const { floor, body } = floorAndBody(room, inches(3 / 8));
  return layChoicesOf(floor, body, { ...OPTIONS, ...options });
}

describe('candidates', () => {
  test('a plain room: full, alike, and two strips of one plank', () => {
    // 119.25 = 15 x 7.5 + 6.75; alike (6.75 + 7.5) / 2 = 7.125; one plank for both: 6.75 + 1/8 < 7.5, half 3.375.
    const choices = choicesIn(goodRoom(rectangular(12, 10)));
    const told = choices.map(({ reason, firstWidth, lastWidth, rowCount, sharesPlanks }) => [
      reason,
      firstWidth / inches(1),
      lastWidth / inches(1),
      rowCount,
      sharesPlanks,
    ]);
    expect(told).toEqual(
      expect.arrayContaining([
        ['as the rule says', 7.5, 6.75, 16, false],
        ['first and last alike', 7.125, 7.125, 16, false],
        ['one plank for both', 3.375, 3.375, 17, true],
      ]),
    );
    expect(choices).toHaveLength(3);
  });

  test('both directions and both sides, the best of each first', () => {
    const choices = choicesIn(goodRoom(rectangular(12, 10)), {
      directions: [0, 90],
      startSides: ['near', 'far'],
      widthCount: 1,
    });
    expect(choices.map(({ degrees, startSide }) => [degrees, startSide])).toEqual([
      [0, 'near'],
      [0, 'far'],
      [90, 'near'],
      [90, 'far'],
    ]);
  });

  test('a hearth that would leave a sliver moves the first row', () => {
    // Hearth 21 in deep on the near wall: its far side with the gap is at 21 in of the body, and a full first row leaves
    // 22.5 - 21 = 1 1/2 in of row 3 beside it.
    const hearth = {
      kind: 'rectangle',
      wallNumber: 3,
      along: feet(3),
      off: 0,
      length: feet(5),
      depth: inches(21),
    } as const;
    const choices = choicesIn(goodRoom(rectangular(12, 10), { cutouts: [hearth] }));
    const full = choices.find(({ firstWidth }) => firstWidth === inches(7.5));
    expect([full?.narrowest, full?.narrowRunCount]).toEqual([inches(1.5), 1]);
    expect(choices[0].narrowRunCount).toBe(0);
    expect(choices[0].narrowest).toBeGreaterThanOrEqual(inches(2));
    // A joint between rows right on the hearth's line: 21 = 2 x 7.5 + 6, so the first row is 6 in.
    expect(choices.some(({ firstWidth, reason }) => firstWidth === inches(6) && reason === 'joint on a corner')).toBe(
      true,
    );
  });

  test('every candidate is laid as it says', () => {
    const room = goodRoom(walked([12, R], [6, R], [5, L], [4, R], [7, R], [10]));
    for (const choice of choicesIn(room, { directions: [0, 90, 45], startSides: ['near', 'far'] })) {
      expect(choice.layout.firstWidth).toBe(choice.firstRow);
      expect(choice.layout.rows).toHaveLength(choice.rowCount);
      expect(Math.min(...choice.layout.rows.map((row) => row.narrowest.width))).toBe(choice.narrowest);
      expect(choice.firstRow).toBeLessThanOrEqual(OPTIONS.plankWidth);
    }
  });
});

describe('directions', () => {
  const s = Math.sqrt(2) * 2;
  const bay = goodRoom(walked([12, R], [10, R], [3, -45], [s, 45], [2, 45], [s, -45], [3, R], [10]));

  test('a rule as typed becomes degrees', () => {
    expect(degreesOf({ along: 'length' }, bay)).toBe(0);
    expect(degreesOf({ along: 'width' }, bay)).toBe(90);
    expect(degreesOf({ along: 'angle', degrees: -45 }, bay)).toBe(315);
    expect(degreesOf({ along: 'wall', wallNumber: 3 }, bay)).toBe(0);
    expect(degreesOf({ along: 'wall', wallNumber: 8 }, bay)).toBe(90);
    // Wall 4 runs left and down at 45 degrees, wall 6 left and up.
    expect(degreesOf({ along: 'wall', wallNumber: 4 }, bay)).toBeCloseTo(45, 3);
    expect(degreesOf({ along: 'wall', wallNumber: 6 }, bay)).toBeCloseTo(135, 3);
    expect(degreesOf({ along: 'wall', wallNumber: 9 }, bay)).toBeNull();
  });

  test('a room offers its own directions, walls out of square do not count as others', () => {
    // The longest wall is 12 ft: 10 ft across it is compared, the slants of the bay of 2.8 ft are not.
    expect(directionsIn(bay)).toEqual([
      { degrees: 0, typed: '' },
      { degrees: 90, typed: 'width' },
    ]);
    // A corner cut off by 7 ft: more than half of 12 ft, so it is compared.
    const cut = goodRoom(walked([7, R], [12, R], [12, R], [7, 45], [5 * Math.sqrt(2), 45]));
    const [, , slant] = directionsIn(cut);
    expect([slant.typed, Math.round(slant.degrees)]).toEqual(['wall 5', 45]);
    const crooked = goodRoom({
      kind: 'four walls',
      walls: [feet(12), feet(10), feet(12), feet(10)],
      diagonal: feet(15.7),
      otherDiagonal: null,
    });
    expect(directionsIn(crooked).map(({ degrees }) => degrees)).toEqual([0, 90]);
  });
});
