import { describe, expect, test } from 'vitest';
import { PLANK_AREA, PLANK_BOXES, PLANK_ROOM_AREA } from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

describe('PLANK_AREA', () => {
  test.each([
    ['feet by feet', [12, 10], 120],
    ['with a waste cell that shows 10%', [12, 10, 0.1], 132],
    ['with ten per cent typed as 10', [12, 10, 10], 132],
    ['with ten per cent typed as text', [12, 10, '10%'], 132],
    ['with half a per cent', [10, 10, '0.5%'], 100.5],
    ['with a blank waste', [12, 10, ''], 120],
    ['metres by metres', [4, 3, 0.1, 'metric'], 13.2],
    ['feet and inches as text', ['12\' 6"', '10'], 125],
    ['metres as text in a sheet of feet', ['3.048 m', 10], 100],
    ['feet as text in a sheet of metres', ['10 ft', '10 ft', '', 'metric'], 9.290304],
    ['decimal feet lose nothing', [10.1, 10.1], 102.01],
    ['nor do they with waste', [10.3, 10, 0.1], 113.3],
    ['a third of a foot reckoned by the sheet', [1 + 2 / 3, 3], 5],
    ['units in capitals', [4, 3, '', 'METRIC'], 12],
    ['a range of one cell', [[[12]], [[10]]], 120],
  ])('%s', (_, call, answer) => {
    expect(PLANK_AREA(...(call as [unknown, unknown]))).toBe(answer);
  });

  test('ranges of one size go together, single values are repeated, blank rows answer blank', () => {
    const lengths = [[12], [''], [10], [''], ['']];
    expect(PLANK_AREA(lengths, 10)).toEqual([[120], [''], [100]]);
    expect(PLANK_AREA(lengths, [[10], [''], [3], [''], ['']], [[0.1], [0.1], [''], [''], ['']])).toEqual([
      [132],
      [''],
      [30],
    ]);
    expect(PLANK_AREA([[1, 2, '']], 10)).toEqual([[10, 20, '']]);
    expect(PLANK_AREA([[3], [3]], 3, '', [['us'], ['metric']])).toEqual([[9], [9]]);
    expect(PLANK_AREA(10, 10, [[''], [0.1]])).toEqual([[100], [110]]);
  });

  test('a row with one cell blank is a problem, with its row', () => {
    expect(refusalOf(() => PLANK_AREA([[12], [''], [10]], [[10], [10], [10]]))).toBe(
      'length, row 2 is blank. Type feet and inches such as 12\' 6", or meters such as 3.81 m.',
    );
  });

  test('several problems: the first, and how many more', () => {
    expect(refusalOf(() => PLANK_AREA([['x'], [3], [-1]], [[1], ['y'], [1]]))).toBe(
      'length, row 1: "x" is not a length. Type feet and inches such as 12\' 6", or meters such as 3.81 m. (and 2 more)',
    );
  });

  test('a single value that cannot be used is told once, however many rows it is for', () => {
    expect(refusalOf(() => PLANK_AREA([[12], [10], [8]], 'wide'))).toMatch(/^width: "wide" is not a length\. [^(]*$/);
  });

  // A narrower range would leave its missing cells at their default: an allowance would be lost without a word.
  test('ranges of as many rows and unequal columns are of unequal size', () => {
    expect(refusalOf(() => PLANK_AREA([[10, 12, 14]], [[8, 8, 8]], [[0.1, 0.1]]))).toBe(
      'waste has 1 row and 2 columns, but length has 1 row and 3 columns. Give ranges of the same size, or single cells.',
    );
    expect(
      refusalOf(() =>
        PLANK_AREA(
          [[10], [12]],
          [
            [8, 8],
            [8, 8],
          ],
        ),
      ),
    ).toContain('Give ranges of the same size');
  });

  test('ranges of unequal size are told with their sizes', () => {
    expect(refusalOf(() => PLANK_AREA([[1], [2], [3]], [[1], [2]]))).toBe(
      'width has 2 rows and 1 column, but length has 3 rows and 1 column. Give ranges of the same size, or single cells.',
    );
  });

  test('a date is told to be one', () => {
    expect(refusalOf(() => PLANK_AREA(new Date(2026, 4, 8), 10))).toBe(
      'length is a date: the spreadsheet turns 5/8 into one. Type 5/8" with the inch mark, or 0.625, and clear the date format.',
    );
  });
});

describe('PLANK_ROOM_AREA', () => {
  // L of 20 x 14 ft with 8 x 6 ft left out of a corner: 280 - 48 = 232.
  const lRoom = [
    [20, 'R'],
    [14, 'R'],
    [12, 'R'],
    [6, 'L'],
    [8, 'R'],
    [8, ''],
  ];

  test.each([
    ['an L', lRoom, [], 232],
    ['an L with ten per cent', lRoom, [0.1], 255.2],
    ['an L with blank rows after it', [...lRoom, ['', ''], ['', '']], [], 232],
    [
      'walked to the left',
      [
        [4, 'L'],
        [3, 'left'],
        [4, -90],
        [3, 'L'],
      ],
      ['', 'metric'],
      12,
    ],
    [
      'turns in degrees',
      [
        [4, 90],
        [3, '90'],
        [4, '90°'],
        [3, 90],
      ],
      ['', 'metric'],
      12,
    ],
  ])('%s', (_, walls, rest, answer) => {
    expect(PLANK_ROOM_AREA(walls, ...rest)).toBe(answer);
  });

  test('walls that do not meet are asked about, and no diagonals are advised: a range of walls has no place for them', () => {
    const walls = [
      [20, 'R'],
      [6, 'R'],
      [12, 'L'],
      [8, 'R'],
      [7, 'R'],
      [14, 'R'],
    ];
    const sentence = refusalOf(() => PLANK_ROOM_AREA(walls));
    expect(sentence).toMatch(/^The walls do not meet: .*; check their lengths and turns\.$/);
    expect(sentence).not.toContain('diagonal');
  });

  test('a triangle of 3, 4 and 5', () => {
    // The turn between 3 and 4 is a right angle; the others are 180 less the angles of the triangle.
    const angle = (Math.atan2(4, 3) * 180) / Math.PI;
    const walls = [
      [3, 90],
      [4, 180 - (90 - angle)],
      [5, ''],
    ];
    expect(PLANK_ROOM_AREA(walls)).toBeCloseTo(6, 5);
  });

  test.each([
    [
      'that miss their start',
      [
        [20, 'R'],
        [14, 'R'],
        [19, 'R'],
        [14, 'R'],
      ],
      /^The walls do not meet: the last ends 1' 0" from the start/,
    ],
    [
      'that cross',
      [
        [6, 'R'],
        [4, 'R'],
        [4, 'R'],
        [6, 'L'],
        [2, 'L'],
        [2, ''],
      ],
      /^Wall 1 and wall 4 cross or touch/,
    ],
    [
      'that turn the wrong way',
      [
        [4, 'R'],
        [4, 'R'],
        [4, 'L'],
        [4, 'R'],
      ],
      /^The turns add up to 180 degrees/,
    ],
    [
      'two in number',
      [
        [4, 'R'],
        [4, 'R'],
      ],
      /^The room has 2 walls\. Give at least three/,
    ],
    [
      'with a turn left out',
      [
        [4, 'R'],
        [4, ''],
        [4, 'R'],
        [4, 'R'],
      ],
      /^Wall 2: the turn at its end is blank/,
    ],
    [
      'with a turn that is none',
      [
        [4, 'R'],
        [4, 'up'],
        [4, 'R'],
        [4, 'R'],
      ],
      /^Turn after wall 2: "up" is not a turn/,
    ],
    [
      'with a length that is none',
      [
        [4, 'R'],
        ['12-6', 'R'],
        [4, 'R'],
        [4, 'R'],
      ],
      /^Wall 2: "12-6" is not a length/,
    ],
    [
      'with a blank between',
      [
        [4, 'R'],
        ['', 'R'],
        [4, 'R'],
        [4, 'R'],
      ],
      /^Wall 2 is blank/,
    ],
    [
      'in three columns',
      [
        [4, 'R', 1],
        [4, 'R', 1],
      ],
      /^walls: the range has 2 rows and 3 columns/,
    ],
    [
      'all blank',
      [
        ['', ''],
        ['', ''],
      ],
      /^walls is blank/,
    ],
  ])('walls %s', (_, walls, sentence) => {
    expect(refusalOf(() => PLANK_ROOM_AREA(walls))).toMatch(sentence);
  });
});

describe('PLANK_BOXES is exact', () => {
  test.each([
    ['7.2 of 2.4 is 3', [7.2, 2.4], 3],
    ['100 plus 10 % in tens is 11', [100, 10, 0.1], 11],
    ['the same in metres', [100, 10, 0.1, 'metric'], 11],
    ['0.3 of 0.1 is 3', [0.3, 0.1], 3],
    ['a sum of cells with noise in its last digit is still 3', [0.1 + 0.2, 0.1], 3],
    ['a little over is one box more', [7.2001, 2.4], 4],
    ['33 of 1.1 is 30', [33, 1.1], 30],
    ['1.1 times 1.1 in boxes of 1.21 is 1', [1.1, 1.21, 0.1], 1],
    ['an area of decimal feet in boxes of it is 1', [PLANK_AREA(10.3, 10), 103], 1],
    ['a third reckoned by the sheet, times three, is 1', [PLANK_AREA(1 + 2 / 3, 3), 5], 1],
    ['square metres in boxes of square feet', ['9.290304 m2', '10 sq ft'], 10],
    ['square yards', ['9 sq yd', 81], 1],
    ['a large hall', [99_999.9, 0.1], 999_999],
  ])('%s', (_, call, answer) => {
    expect(PLANK_BOXES(...(call as [unknown, unknown]))).toBe(answer);
  });

  test('coverage too small to be one is told', () => {
    expect(refusalOf(() => PLANK_BOXES(1000, 1e-7))).toMatch(/^box_coverage: the area takes more than 1000000 boxes/);
  });

  test('an area of 0 is told', () => {
    expect(refusalOf(() => PLANK_BOXES(0, 24))).toBe('area is 0. Type an area greater than 0.');
  });
});
