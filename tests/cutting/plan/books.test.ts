/** The books of small plans, counted by hand. */
import { describe, expect, test } from 'vitest';
import type { CutJob, CutPlan, PlannedPiece } from '../../../src/cutting/job';
import { ledgerOf } from '../../../src/cutting/plan/ledger';

/** Rows from wall to wall in planks of 100 without a kerf, each given by the lengths of its pieces, a plank each. */
function booksOf(rows: readonly (readonly number[])[], rules: Partial<CutJob> = {}, plan: Partial<CutPlan> = {}) {
  const sum = (lengths: readonly number[]) => lengths.reduce((a, b) => a + b);
  const job: CutJob = {
    ...{ plankLength: 100, plankWidth: 20, kerf: 0, minPiece: 10, minStagger: 0, alignedDistance: 6, ripPairs: [] },
    rows: rows.map((lengths) => ({ room: 0, width: 8, runs: [{ x: 0, length: sum(lengths) }] })),
    ...rules,
  };
  let plank = 0;
  const pieceOf = (length: number, i: number): PlannedPiece => ({
    length,
    from: length === 100 ? 'whole' : i === 0 ? 'right' : 'left',
    plank: plank++,
  });
  const own: CutPlan = {
    rows: rows.map((lengths) => ({ runs: [lengths.map(pieceOf)] })),
    plankCount: rows.flat().length,
    ...{ bound: 1, stop: 'step limit', steps: 0, broken: [] },
  };
  return ledgerOf(job, { ...own, ...plan });
}

describe('joints two rows apart that are nearer than 6', () => {
  // Joints at 50 and 150, at 30 and 130, and so on: each compares with the row after the next.
  test.each([
    [
      'both joints 5 off',
      [
        [50, 100, 20],
        [30, 100, 40],
        [55, 100, 15],
      ],
      2,
    ],
    [
      'both just 6 off',
      [
        [50, 100, 20],
        [30, 100, 40],
        [56, 100, 14],
      ],
      0,
    ],
    [
      'one of two',
      [
        [50, 100, 20],
        [30, 100, 40],
        [50, 80, 40],
      ],
      1,
    ],
    [
      'the rows between are not asked',
      [
        [50, 100, 20],
        [50, 100, 20],
        [80, 90],
      ],
      0,
    ],
    [
      'of four rows the first with the third, the second with the fourth',
      [
        [50, 60],
        [30, 80],
        [50, 60],
        [30, 80],
      ],
      2,
    ],
  ])('%s', (_, rows, count) => {
    expect(booksOf(rows).alignedJointCount).toBe(count);
  });

  test('in one room only', () => {
    const rows = [0, 1, 2].map((room) => ({ room: Math.floor(room / 2), width: 8, runs: [{ x: 0, length: 110 }] }));
    expect(
      booksOf(
        [
          [50, 60],
          [30, 80],
          [50, 60],
        ],
        { rows },
      ).alignedJointCount,
    ).toBe(0);
  });
});

describe('the shortest end piece', () => {
  test.each([
    [
      'a first piece',
      [
        [20, 100, 70],
        [40, 100, 50],
      ],
      20,
    ],
    [
      'a last piece',
      [
        [70, 100, 20],
        [40, 100, 50],
      ],
      20,
    ],
    ['not a short one within a run', [[70, 15, 65]], 65],
    ['not the only piece of a short run', [[15], [70, 100, 30]], 30],
  ])('%s', (_, rows, length) => {
    expect(booksOf(rows).shortestEndPiece).toBe(length);
  });
});

describe('strips of one plank', () => {
  const piece = (length: number, from: 'left' | 'right', isStrip?: true): PlannedPiece => ({
    ...{ length, from, plank: 0 },
    ...(isStrip && { isStrip }),
  });
  const ripPairs = [[0, 1]] as const;
  const sourcesOf = (first: readonly PlannedPiece[], last: readonly PlannedPiece[]) => {
    const rows = [first, last].map((pieces) => ({ runs: pieces.map((one) => [one]) }));
    const jobRows = rows.map(({ runs }) => ({
      ...{ room: 0, width: 8 },
      runs: runs.map(([{ length }], i) => ({ x: 200 * i, length })),
    }));
    const [{ strips }] = booksOf([[50], [50]], { rows: jobRows, ripPairs }, { rows }).planks;
    return strips.map(({ length, source }) => [length, source?.length ?? null]);
  };

  // By hand: the longer strip comes from the longer piece, the other from the other, each piece once.
  test('each comes from a piece of its own, the longest from the longest', () => {
    const first = [piece(30, 'right'), piece(40, 'right')];
    expect(sourcesOf(first, [piece(25, 'right', true), piece(35, 'right', true)])).toEqual([
      [25, 30],
      [35, 40],
    ]);
  });

  test('none from a piece that keeps the other end, is too short or gave its strip already', () => {
    expect(sourcesOf([piece(40, 'left')], [piece(30, 'right', true)])).toEqual([[30, null]]);
    expect(sourcesOf([piece(40, 'right')], [piece(41, 'right', true)])).toEqual([[41, null]]);
    expect(sourcesOf([piece(40, 'right')], [piece(30, 'right', true), piece(20, 'right', true)])).toEqual([
      [30, 40],
      [20, null],
    ]);
    expect(sourcesOf([piece(40, 'right')], [piece(40, 'right', true)])).toEqual([[40, 40]]);
  });
});
