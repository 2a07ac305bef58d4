import { expect, test } from 'vitest';
import { textTable } from '../../src/workbook/textTable';

test('columns are aligned, numbers at the right', () => {
  expect(
    textTable([
      ['Row', 'Length'],
      ['1', '47 1/4"'],
      ['12', '8"'],
    ]),
  ).toBe(['Row  Length', '  1  47 1/4"', ' 12  8"'].join('\n'));
});

test('a text with only blanks after it runs on and widens nothing', () => {
  expect(
    textTable([
      ['Cut list of the whole house', '', ''],
      ['1', '2', '3'],
    ]),
  ).toBe(['Cut list of the whole house', '1  2  3'].join('\n'));
});

test('characters are counted, not their parts', () => {
  expect(
    textTable([
      ['🪵', 'a', 'x'],
      ['oak', 'b', 'y'],
    ]),
  ).toBe(['🪵    a  x', 'oak  b  y'].join('\n'));
});
