import { describe, expect, test } from 'vitest';
import { firstLookAt } from '../../../src/sidebar/form/firstLook';
import { sectionOf, shownProblems } from '../../../src/sidebar/form/problems';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { plainRoom } from '../../support/roomEntries';

const fields = {
  paths: new Set(['shape.length', 'rules.kerf', 'name']),
  leftPaths: new Set<string>(),
  isPressed: false,
};
const blankAll = () => true;
const blankNone = () => false;
const blankLength = [{ field: 'shape.length', text: 'Length is blank.' }];

describe('a blank field', () => {
  test('that nobody came to is not told', () => {
    expect(shownProblems(blankLength, { ...fields, isBlank: blankAll })).toEqual(new Map());
  });

  test.each([
    ['was left', { ...fields, leftPaths: new Set(['shape.length']) }],
    ['stands there when the button is pressed', { ...fields, isPressed: true }],
  ])('that %s is told at its place', (_, state) => {
    expect(shownProblems(blankLength, { ...state, isBlank: blankAll })).toEqual(
      new Map([['shape.length', ['Length is blank.']]]),
    );
  });
});

test('what is typed wrongly is told at once', () => {
  const problems = [{ field: 'rules.kerf', text: 'kerf: no.' }];
  expect(shownProblems(problems, { ...fields, isBlank: blankNone })).toEqual(new Map([['rules.kerf', ['kerf: no.']]]));
});

test.each([
  ['shape', 'shape'],
  ['shape.walls.7.length', 'shape'],
  ['doorways.3.along', 'doorways'],
  ['cutouts', 'cutouts'],
  ['product.plankWidth', 'product'],
  ['rules.startSide', 'laying'],
  ['rules.minRip', 'rules'],
  ['', ''],
])('a problem at "%s", which is not on the page, is told in the section "%s"', (field, section) => {
  expect(sectionOf(field)).toBe(section);
  const shown = shownProblems([{ field, text: 'So it is.' }], { ...fields, isBlank: blankAll });
  expect(shown).toEqual(new Map([[section, ['So it is.']]]));
});

describe('the first look', () => {
  const withoutProduct: RoomEntry = {
    ...plainRoom,
    product: { ...plainRoom.product, plankLength: '', plankWidth: '' },
  };

  test('draws the walls before the product is typed', () => {
    const look = firstLookAt(withoutProduct);
    // 12 ft by 10 ft, in ticks of 1/640 mm: 304.8 mm x 640 a foot.
    const foot = 304.8 * 640;
    const corners = look.sketch?.outline.map(({ x, y }) => [Math.round(x / foot), Math.round(y / foot)]);
    expect(corners).toHaveLength(4);
    expect(corners).toEqual(
      expect.arrayContaining([
        [0, 0],
        [12, 0],
        [12, 10],
        [0, 10],
      ]),
    );
    expect(look.problems.map(({ field }) => field)).toEqual(['product.plankLength', 'product.plankWidth']);
  });

  test('tells walls that do not close although the product is not typed', () => {
    const walls = [4, 3, 4, 2.5].map((length) => ({ length, turn: 'R' }));
    const look = firstLookAt({ ...withoutProduct, shape: { kind: 'walls in order', diagonals: [], walls } });
    expect(look.sketch).toBeNull();
    expect(look.problems.map(({ field }) => field)).toContain('shape');
  });

  test('draws the walls although a doorway cannot be there', () => {
    const doorway = {
      wall: 1,
      along: 11,
      width: 3,
      floor: 'transition',
      depth: '',
      leadsTo: '',
      itsDoorway: '',
      wallThickness: '',
    } as const;
    const look = firstLookAt({ ...plainRoom, doorways: [doorway] });
    expect(look.sketch).not.toBeNull();
    expect(look.sketch?.doorways).toEqual([]);
    expect(look.problems.map(({ field }) => field)).toEqual(['doorways.0.along']);
  });

  test('asks for a name that can stand in the name of a tab', () => {
    expect(firstLookAt({ ...plainRoom, name: '  ' }).problems).toMatchObject([{ field: 'name' }]);
    expect(firstLookAt({ ...plainRoom, name: 'x'.repeat(81) }).problems).toMatchObject([{ field: 'name' }]);
    expect(firstLookAt(plainRoom).problems).toEqual([]);
  });
});
