/** Which cells go together, what a blank means, and what is said of which cell: by hand, with readers of their own. */
import { describe, expect, test } from 'vitest';
import {
  answersOf,
  cellsOf,
  filledCount,
  filledList,
  listOf,
  oneOrGrid,
  singleValues,
  sizeText,
} from '../../src/sheet/arguments';
import type { Reader } from '../../src/sheet/cells';
import { refusalOf } from '../support/refusal';

/** Reads numbers as they are; says of all else where it stands. */
const number: Reader<number> = (cell) => (typeof cell === 'number' ? cell : { says: (where) => `${where} is wrong.` });

/** a x b + c, c 0 where it is blank. */
function sums(a: unknown, b: unknown, c?: unknown, units?: unknown) {
  const table = {
    a: { given: a, read: number },
    b: { given: b, read: number },
    c: { given: c, read: number, whenBlank: () => 0 },
  };
  return answersOf(table, units, (values) => values.a * values.b + values.c);
}

describe('cells that go together', () => {
  test.each<[string, Parameters<typeof sums>, unknown]>([
    ['single values', [2, 3], [[6]]],
    ['a column and a single value', [[[2], [3]], 10], [[20], [30]]],
    ['a row and a single value', [[[2, 3]], 10, 1], [[21, 31]]],
    [
      'two columns, row by row',
      [
        [[2], [3]],
        [[10], [100]],
      ],
      [[20], [300]],
    ],
    [
      'ranges of several rows and columns',
      [
        [
          [1, 2],
          [3, 4],
        ],
        10,
        [
          [5, 6],
          [7, 8],
        ],
      ],
      [
        [15, 26],
        [37, 48],
      ],
    ],
    ['a range of one cell is a single value', [[[2]], [[3], [4]]], [[6], [8]]],
  ])('%s', (_, given, answers) => {
    expect(sums(...given)).toEqual(answers);
  });

  test.each<[string, Parameters<typeof sums>]>([
    [
      'as many cells in another shape',
      [
        [
          [1, 2, 3],
          [4, 5, 6],
        ],
        [
          [1, 2],
          [3, 4],
          [5, 6],
        ],
      ],
    ],
    [
      'as many rows, fewer columns',
      [
        [
          [1, 2],
          [3, 4],
        ],
        [[1], [2]],
      ],
    ],
    [
      'as many columns, fewer rows',
      [
        [
          [1, 2],
          [3, 4],
        ],
        [[1, 2]],
      ],
    ],
    ['the third beside the first', [[[1], [2]], 5, [[1], [2], [3]]]],
    [
      'the last of three',
      [
        [[1], [2]],
        [[1], [2]],
        [[1], [2], [3]],
      ],
    ],
    [
      'units beside three',
      [
        [[1], [2]],
        [[1], [2]],
        [[1], [2]],
        [['us'], ['us'], ['us']],
      ],
    ],
    ['units beside the first', [[[1], [2]], 5, '', [['us'], ['us'], ['us']]]],
  ])('refused: %s', (_, given) => {
    expect(refusalOf(() => sums(...given))).toMatch(/^(?:b|c|units) .*Give ranges of the same size/);
  });
});

describe('blank rows', () => {
  test('at the end are cut off, between others answer blank', () => {
    expect(sums([[2], [''], [3], [''], ['']], 10)).toEqual([[20], [''], [30]]);
    expect(sums([[''], ['']], 10)).toEqual([['']]);
  });

  test('a row is blank where all that must be filled is, and reaches as far as any of it', () => {
    expect(refusalOf(() => sums([[2], ['']], [[3], [4]]))).toBe('a, row 2 is wrong.');
    expect(refusalOf(() => sums([[2], [3]], [[3], ['']]))).toBe('b, row 2 is wrong.');
    expect(sums([[2], ['']], [[3], ['']], [[1], [5]])).toEqual([[7]]);
  });

  test('what has a default takes it in every blank cell', () => {
    expect(sums([[2], [3]], 10, [[''], [7]])).toEqual([[20], [37]]);
  });

  test('a single value that must be filled is never blank', () => {
    expect(refusalOf(() => sums([[2], [3]], ''))).toBe('b is wrong.');
  });
});

describe('what is said', () => {
  test.each<[string, Parameters<typeof sums>, string]>([
    ['a single value has no place', ['x', 3], 'a is wrong.'],
    ['a cell of a column', [[[2], [3], ['x']], 3], 'a, row 3 is wrong.'],
    ['a cell of a row', [[[2, 3, 'x']], 3], 'a, column 3 is wrong.'],
    [
      'a cell of several rows and columns',
      [
        [
          [2, 3],
          ['x', 3],
        ],
        3,
      ],
      'a, row 2, column 1 is wrong.',
    ],
    ['a single value beside a range', [[[2], [3]], 'x'], 'b is wrong.'],
    ['two', [[[2], ['x'], ['y']], 3], 'a, row 2 is wrong. (and 1 more)'],
    [
      'a single value is told once, however often it is used',
      [[['x'], [3], ['y']], 'z'],
      'a, row 1 is wrong. (and 2 more)',
    ],
  ])('%s', (_, given, told) => {
    expect(refusalOf(() => sums(...given))).toBe(told);
  });

  test('a fault of the answer itself is told at the argument it is about, or else the first', () => {
    const table = { a: { given: [[1], [2]], read: number }, b: { given: 3, read: number } };
    const fault = (argument?: string) =>
      refusalOf(() =>
        answersOf(table, '', ({ a }) => (a === 1 ? a : { argument, says: (where) => `${where} is odd.` })),
      );
    expect([fault(), fault('b')]).toEqual(['a, row 2 is odd.', 'b, row 2 is odd.']);
  });
});

test('a single value is read once for each units, a cell of a range each time', () => {
  const read: unknown[] = [];
  const noting: Reader<number> = (cell, units) => {
    read.push(`${cell} ${units}`);
    return 1;
  };
  const table = { a: { given: [[1], [2], [3]], read: noting }, b: { given: 9, read: noting } };
  answersOf(table, [['us'], ['metric'], ['']], () => 0);
  expect(read.sort()).toEqual(['1 us', '2 metric', '3 us', '9 metric', '9 us']);
});

test('where the units cannot be read, nothing is read in them', () => {
  const read: unknown[] = [];
  const noting: Reader<number> = (cell, units) => {
    read.push(units);
    return Number(cell);
  };
  const table = { a: { given: [[1], [2]], read: noting } };
  expect(refusalOf(() => answersOf(table, [['us'], ['ell']], () => 0))).toMatch(
    /^units: "ell"[^(]*\(feet and inches\) or metric\.$/,
  );
  expect(read).toEqual(['us']);
});

test('100,000 cells are answered, one more is refused before any is read', () => {
  const cells = (rows: number, columns: number) => Array.from({ length: rows }, () => Array(columns).fill(1));
  expect(sums(cells(10_000, 10), 2)).toHaveLength(10_000);
  expect(refusalOf(() => sums(cells(100_001, 1), 'x'))).toContain('100001');
  // Blank rows at the end do not count.
  expect(sums([...cells(10_000, 10), ...Array.from({ length: 5 }, () => Array(10).fill(''))], 2)).toHaveLength(10_000);
});

test('one answer is a value, more are a grid of their own', () => {
  const answers = [[1], [2]];
  expect(oneOrGrid([[7]])).toBe(7);
  expect(oneOrGrid([[7, 8]])).toEqual([[7, 8]]);
  expect(oneOrGrid(answers)).toEqual(answers);
  expect(oneOrGrid(answers)).not.toBe(answers);
});

describe('single values alone', () => {
  const values = (given: unknown, units: unknown = '') => singleValues({ a: { given, read: number } }, units);

  test('are taken from cells, ranges of one cell too', () => {
    expect(values(4)).toEqual({ values: { a: 4 }, units: 'us' });
    expect(values([[4]], 'metric')).toEqual({ values: { a: 4 }, units: 'metric' });
  });

  test.each([[[[1], [2]]], [[[1, 2]]], [[[1], ['']]]])('a range is refused: %j', (range) => {
    expect(refusalOf(() => values(range))).toMatch(/^a: .*Give a single cell/);
    expect(refusalOf(() => values(1, range))).toMatch(/^units: .*Give a single cell/);
  });
});

describe('a list', () => {
  const list = (given: unknown) => listOf('a', given, number, 'us');

  test.each<[string, unknown, unknown]>([
    ['a column', [[1], [2]], [1, 2]],
    ['a row', [[1, 2]], [1, 2]],
    ['a cell', 3, [3]],
    ['with a blank in it', [[1], [''], [2]], [1, null, 2]],
    ['with blanks at its end', [[1], [2], [''], [' ']], [1, 2]],
  ])('%s', (_, given, values) => {
    expect(list(given)).toEqual(values);
  });

  test.each<[string, unknown, RegExp]>([
    [
      'several rows and columns',
      [
        [1, 2],
        [3, 4],
      ],
      /^a: .*2 rows and 2 columns/,
    ],
    ['nothing in it', [[''], ['']], /^a /],
    ['a cell that is wrong', [[1], ['x']], /^a, row 2 is wrong\.$/],
    ['the only cell', 'x', /^a is wrong\.$/],
    ['two that are wrong', [['x'], [1], ['y']], /^a, row 1 is wrong\. \(and 1 more\)$/],
  ])('refused: %s', (_, given, told) => {
    expect(refusalOf(() => list(given))).toMatch(told);
  });

  test('that must be full has no blank between', () => {
    expect(filledList('a', [[1], [2], ['']], number, 'us')).toEqual([1, 2]);
    expect(refusalOf(() => filledList('a', [[1], [''], [2]], number, 'us'))).toMatch(/^a, row 2/);
    expect(refusalOf(() => filledList('a', [[''], [2]], number, 'us'))).toMatch(/^a, row 1/);
  });
});

test('cells come as a grid, whatever is given', () => {
  expect(cellsOf(5)).toEqual([[5]]);
  expect(cellsOf([1, 2])).toEqual([[1], [2]]);
  expect(cellsOf([[1, 2]])).toEqual([[1, 2]]);
  for (const empty of [[], [[]]]) expect(cellsOf(empty)).toEqual([['']]);
  expect(sizeText([[1]])).toBe('1 row and 1 column');
  expect(
    sizeText([
      [1, 2],
      [3, 4],
      [5, 6],
    ]),
  ).toBe('3 rows and 2 columns');
  const isOdd = (one: number) => one % 2 === 1;
  expect([[], [1], [2], [2, 1], [1, 2, 3, 1]].map((numbers) => filledCount(numbers, isOdd))).toEqual([0, 0, 1, 1, 2]);
});
