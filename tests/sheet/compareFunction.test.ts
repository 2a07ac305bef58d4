import { expect, test } from 'vitest';
import { PLANK_COMPARE } from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

test.each([
  [['Oak', 48, 6, 0], 'Planks in a box is 0. Type how many planks a box holds, or leave it blank.'],
  [['Oak', 48, '5 mm'], 'Plank width: "5 mm" is under 10 mm (3/8 in).'],
  [['Oak', 48, 6, 8, 'dear'], 'Price of a box: "dear" is not an amount of money.'],
])('a product of %j stands in the table with what is wrong with it', (row, words) => {
  const [, [name, planks, , , , , note]] = PLANK_COMPARE(12, 10, [row]);
  expect([name, planks]).toEqual(['Oak', '']);
  expect(note).toContain(words);
});

const oak = ['Oak', 48, 6, 10, 58];

test('rooms that are all blank are told', () => {
  expect(refusalOf(() => PLANK_COMPARE([[''], ['']], [[''], ['']], [oak]))).toBe(
    'length is blank. Give at least one row.',
  );
});

test('a list without its column of names is told, and is not read as products', () => {
  expect(
    refusalOf(() =>
      PLANK_COMPARE(12, 10, [
        [48, 7.5, 10],
        ['1285 mm', 5, 16],
      ]),
    ),
  ).toMatch(/^products: the first column holds lengths\. Give the name first/);
  // A number may be a name where another is none.
  expect(PLANK_COMPARE(1, 1, [oak, [1200, 48, 6]])[2][0]).toBe('1200');
});

test('a date among the products says that 5/8 becomes one', () => {
  const [, [, , , , , , note]] = PLANK_COMPARE(12, 10, [['Oak', 48, new Date(2026, 4, 8)]]);
  expect(note).toContain('is a date: the spreadsheet turns 5/8 into one.');
});

test('more rows than are planned in time are told, and a few products for a few rooms are not', () => {
  const halls = Array.from({ length: 10 }, () => [80]);
  expect(
    refusalOf(() =>
      PLANK_COMPARE(
        halls,
        halls,
        Array.from({ length: 20 }, () => oak),
      ),
    ),
  ).toMatch(/^products: this makes about 32000 rows\. At most 1500 are planned in one call/);
});

test('a price of no end is told beside its product, and the others are compared', () => {
  const products = [
    ['Harbour oak', 48, 7.5, 10, 1e300],
    ['Ferry ash', 36, 5, 16, 49.5],
  ];
  const [, first, second] = PLANK_COMPARE(12, 10, products);
  expect(first.slice(1)).toEqual(['', '', '', '', '', expect.stringContaining('is more than a billion')]);
  expect(second[5]).toBeGreaterThan(0);
});

// A cell whose formula has no end shows no words: its product goes by its number.
test.each([Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN])(
  'a product of the name %s is Product 1',
  (name) => {
    expect(
      PLANK_COMPARE(1, 1, [[name, 48, 6], oak])
        .map(([first]) => first)
        .slice(1),
    ).toEqual(['Product 1', oak[0]]);
  },
);

// By hand: 12 by 10 ft takes 60 planks of 48 by 6 (20 rows of 143 1/4 are 2865, 59 planks only 2832): six boxes of ten.
// With one spare it is 61, and a seventh box.
test('spare planks are among the planks, as they are among the boxes', () => {
  expect(PLANK_COMPARE(12, 10, [oak])[1].slice(0, 3)).toEqual(['Oak', 60, 6]);
  expect(PLANK_COMPARE(12, 10, [oak], [['spare', 1]])[1].slice(0, 3)).toEqual(['Oak', 61, 7]);
});
