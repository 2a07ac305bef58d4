import { describe, expect, test } from 'vitest';
import { PLANK_LAST_ROW, PLANK_ROWS, PLANK_STAGGER } from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

describe('PLANK_LAST_ROW', () => {
  test.each([
    // 120 - 2 x 0.25 = 119.5 = 15 x 7.5 + 7
    ['what is left after full rows', [10, 7.5, 0.25], 7],
    // 120 - 2 x 0.375 = 119.25 = 15 x 7.5 + 6.75
    ['a blank gap is 3/8 in', [10, 7.5], 6.75],
    // 3000 - 20 = 2980 = 15 x 192 + 100
    ['a blank gap is 10 mm', [3, 192, '', 'metric'], 100],
    ['depths that rows fill have a full last row', [10, 7.5, 0], 7.5],
    // 10.3 ft = 123.6 in
    ['decimal feet', [10.3, 7.5, 0], 3.6],
    // 12 2/3 ft = 152 in = 19 x 8
    ['two thirds of a foot reckoned by the sheet', [12 + 2 / 3, 8, 0], 8],
    ['a gap as text', [10, 7.5, '1/4"'], 7],
    ['a depth as text', ['9\' 11 1/2"', 7.5, 0], 7],
  ])('%s', (_, call, answer) => {
    expect(PLANK_LAST_ROW(...(call as [unknown, unknown]))).toBe(answer);
  });

  test('a gap that eats the room is told', () => {
    expect(refusalOf(() => PLANK_LAST_ROW('1"', 7.5, 0.5))).toBe(
      'gap: with a gap of 1/2" at both walls nothing of 1" is left to lay. Type a smaller gap, or check the depth.',
    );
  });

  test('a plank wider than the room is told', () => {
    expect(refusalOf(() => PLANK_LAST_ROW('6"', 7.5, 0))).toBe(
      'plank_width: a plank of 7 1/2" is wider than the 6" to be laid, so there is no full row, only one row ripped to fit.',
    );
  });
});

describe('PLANK_ROWS', () => {
  test.each([
    ['a full first row', [10, 7.5, 0.375], [16, 7.5, 6.75, 'first row full, last row ripped']],
    // 144 - 0.75 = 143.25 = 19 x 7.5 + 0.75; (0.75 + 7.5) / 2 = 4.125
    [
      'rips the first when the last would be a sliver',
      [12, 7.5],
      [20, 4.125, 4.125, 'first and last row ripped alike: after a full first row the last would be 3/4"'],
    ],
    // 120 = 16 x 7.5
    ['rows that fit exactly', [10, 7.5, 0], [16, 7.5, 7.5, 'all rows full']],
    // 116 - 15 x 7.5 = 3.5
    [
      'a last row of exactly the minimum stays',
      ['116"', 7.5, 0, 3.5],
      [16, 7.5, 3.5, 'first row full, last row ripped'],
    ],
    // 9.49 - 7.5 = 1.99, which is 2" as a tape shows it; (1.99 + 7.5) / 2 = 4.745
    [
      'a last row a hair under the minimum is not said to be the minimum',
      ['9.49"', 7.5, 0],
      [2, 4.745, 4.745, 'first and last row ripped alike: after a full first row the last would be just under 2"'],
    ],
    ['a closet shallower than a row', ['6"', 7.5, 0], [1, 6, 6, 'one row, ripped']],
    ['a closet shallower than the minimum', ['1"', 7.5, 0], [1, 1, 1, 'one row, ripped, under the minimum rip of 2"']],
    [
      'metric',
      [3, 192, 10, 120, 'metric'],
      [16, 146, 146, 'first and last row ripped alike: after a full first row the last would be 100 mm'],
    ],
    // (0.25 + 3) / 2 = 1.625 < 2
    [
      'planks too slim for the minimum',
      ['30 1/4"', 3, 0],
      [11, 1.625, 1.625, 'first and last row ripped alike, under the minimum rip of 2"'],
    ],
  ])('%s', (_, call, line) => {
    expect(PLANK_ROWS(...(call as [unknown, unknown]))).toEqual([line]);
  });

  test('a column of depths answers a line each', () => {
    expect(PLANK_ROWS([[10], [''], ['6"']], 7.5, 0)).toEqual([
      [16, 7.5, 7.5, 'all rows full'],
      ['', '', '', ''],
      [1, 6, 6, 'one row, ripped'],
    ]);
    expect(refusalOf(() => PLANK_ROWS([[10, 11]], 7.5))).toMatch(/^depth: the range has 1 row and 2 columns/);
  });
});

describe('PLANK_STAGGER', () => {
  const column = (...cells: unknown[]) => cells.map((cell) => [cell]);

  test.each([
    ['far enough', column(40, 30), [47.25], ['OK', 'OK']],
    ['exactly 8 in is far enough', column(40, 32), [48], ['OK', 'OK']],
    ['4 in is 4 in too near', column(40, 36), [48], ['OK', 'Joint 1 is 4" from joint 1 of row 1: 4" too near']],
    // Joints of row 1: 2, 50, ...; of row 2: 46, 94: 46 and 50 are 4 in apart.
    [
      'a short first piece against the next joint',
      column(2, 46),
      [48],
      ['OK', 'Joint 1 is 4" from joint 2 of row 1: 4" too near'],
    ],
    ['joints in one line', column(20, 20), [48], ['OK', 'Joint 1 lines up with joint 1 of row 1: 8" is wanted']],
    ['a stagger of ones own', column(40, 36), [48, 4], ['OK', 'OK']],
    // With a run of 45 in row 1 has its only joint at 2, row 2 at none: 46 lies beyond the wall.
    ['rows that end before their joints meet', column(2, 44), [48, 8, '45"'], ['OK', 'OK']],
    [
      'last joints count where the run tells them',
      column(2, 44),
      [48, 8, '60"'],
      ['OK', 'Joint 1 is 6" from joint 2 of row 1: 2" too near'],
    ],
    ['a piece from wall to wall has no joint', column(45, 20), [48, 8, '45"'], ['OK', 'OK']],
    [
      'a row after a blank one lies beside that one, not beside the row before it',
      column(40, '', 36, 20),
      [48],
      ['OK', '', 'Row 2 is blank, so this row cannot be judged.', 'OK'],
    ],
    // By hand: joints 10, 58, 106 and 30, 66, 102: 4 in apart in the third pair.
    [
      'planks of two lengths meet further on',
      column(10, 30),
      [column(48, 36)],
      ['OK', 'Joint 3 is 4" from joint 3 of row 1: 4" too near'],
    ],
    ['blank rows at the end are cut off', column(40, 30, '', ''), [48], ['OK', 'OK']],
    [
      'metric',
      column(400, 300),
      [1200, '', '', 'metric'],
      ['OK', 'Joint 1 is 100 mm from joint 1 of row 1: 100 mm too near'],
    ],
    [
      'a hair too near is still told',
      column(40, '32 1/64"'),
      [48],
      ['OK', 'Joint 1 is 8" from joint 1 of row 1: less than 1/16" too near'],
    ],
  ])('%s', (_, firstPieces, rest, verdicts) => {
    expect(PLANK_STAGGER(firstPieces, ...(rest as [unknown]))).toEqual(verdicts.map((verdict) => [verdict]));
  });

  test('a row of cells answers a row, a run for each', () => {
    expect(PLANK_STAGGER([[40, 36]], 48, 8, [['5 ft', '5 ft']])).toEqual([
      ['OK', 'Joint 1 is 4" from joint 1 of row 1: 4" too near'],
    ]);
  });

  test.each([
    [
      'longer than a plank',
      [column(40, 50), 48],
      'first_pieces, row 2: a first piece of 50" is longer than a plank of 48". Type the length it is cut to.',
    ],
    [
      'longer than the run',
      [column(40, 30), 48, 8, '36"'],
      'first_pieces, row 1: a first piece of 40" is longer than the run of 36". Type the length it is cut to.',
    ],
    [
      'in several columns',
      [
        [
          [1, 2],
          [3, 4],
        ],
        48,
      ],
      'first_pieces: the range has 2 rows and 2 columns. Give a single column, or a single row, of cells.',
    ],
    [
      'of a tiny plank',
      [column(0.1), 0.2],
      'plank_length: 0.2 is under 10 mm (3/8 in). Check the unit: a bare number here is in inches.',
    ],
  ])('first pieces %s', (_, call, sentence) => {
    expect(refusalOf(() => PLANK_STAGGER(...(call as [unknown, unknown])))).toBe(sentence);
  });
});
