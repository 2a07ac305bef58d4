import { expect, test } from 'vitest';
import { PLANK_COMPARE } from '../../src/sheet/functions';

test.each([
  [['Oak', 48, 6, 0], 'Planks in a box is 0. Type how many planks a box holds, or leave it blank.'],
  [['Oak', 48, '5 mm'], 'Plank width: "5 mm" is under 10 mm (3/8 in).'],
  [['Oak', 48, 6, 8, 'dear'], 'Price of a box: "dear" is not an amount of money.'],
])('a product of %j stands in the table with what is wrong with it', (row, words) => {
  const [, [name, planks, , , , , note]] = PLANK_COMPARE(12, 10, [row]);
  expect([name, planks]).toEqual(['Oak', '']);
  expect(note).toContain(words);
});
