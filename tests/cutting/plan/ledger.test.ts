import { describe, expect, test } from 'vitest';
import type { BrokenRule, CutJob, CutPlan, KeptEnd, PlannedPiece } from '../../../src/cutting/job';
import { judged } from '../../../src/cutting/judge/judged';
import { checkCutPlan, ledgerOf } from '../../../src/cutting/plan/ledger';

/** Three rows of 230 from planks of 100, the last row ripped from the first; a second room of two short runs. */
const JOB: CutJob = {
  plankLength: 100,
  plankWidth: 20,
  kerf: 2,
  minPiece: 20,
  minStagger: 15,
  alignedDistance: 5,
  rows: [
    { room: 0, width: 8, runs: [{ x: 0, length: 230 }] },
    { room: 0, width: 20, runs: [{ x: 0, length: 230 }] },
    { room: 0, width: 10, runs: [{ x: 0, length: 230 }] },
    {
      room: 1,
      width: 20,
      runs: [
        { x: 0, length: 50 },
        { x: 60, length: 40 },
      ],
    },
  ],
  ripPairs: [[0, 2]],
};

type Runs = readonly (readonly PlannedPiece[])[];

const FIRST_ROW: Runs = [[cut(70, 0, 'right'), cut(100, 1, 'whole'), cut(60, 2, 'left')]];
const MIDDLE_ROW: Runs = [[cut(38, 2, 'right'), cut(100, 3, 'whole'), cut(92, 4, 'left')]];
const LAST_ROW: Runs = [[strip(70, 0, 'right'), strip(100, 1, 'whole'), strip(60, 2, 'left')]];
const SECOND_ROOM: Runs = [[cut(50, 5, 'middle')], [cut(40, 5, 'middle')]];
const PLAN = planOf(FIRST_ROW, MIDDLE_ROW, LAST_ROW, SECOND_ROOM);

function cut(length: number, plank: number, from: KeptEnd): PlannedPiece {
  return { length, plank, from };
}

function strip(length: number, plank: number, from: KeptEnd): PlannedPiece {
  return { length, plank, from, isStrip: true };
}

/** A plan of these rows, with its planks counted and no more claimed than that it needs one. */
function planOf(...rows: Runs[]): CutPlan {
  const planks = new Set(rows.flat(2).map((piece) => piece.plank));
  return {
    rows: rows.map((runs) => ({ runs })),
    plankCount: planks.size,
    bound: 1,
    stop: 'step limit',
    steps: 0,
    broken: [],
  };
}

/** The legal plan with one row laid otherwise. */
function withRow(rowNumber: number, ...runs: Runs): CutPlan {
  return planOf(...[FIRST_ROW, MIDDLE_ROW, LAST_ROW, SECOND_ROOM].map((row, i) => (i + 1 === rowNumber ? runs : row)));
}

describe('a legal plan breaks no law', () => {
  test('three rows, a ripped last row and a second room', () => {
    expect(checkCutPlan(JOB, PLAN)).toEqual([]);
  });

  test('a plan that is proved fewest, its bound equal to its planks', () => {
    expect(checkCutPlan(JOB, { ...PLAN, bound: 6, stop: 'proved fewest' })).toEqual([]);
  });

  test('a strip of a whole plank cut down to a shorter last piece, and a whole plank as an end piece', () => {
    const job: CutJob = { ...JOB, rows: JOB.rows.slice(0, 3).map((row, i) => (i === 1 ? { ...row, runs: [] } : row)) };
    const first: Runs = [[cut(100, 0, 'whole'), cut(100, 1, 'whole'), cut(30, 2, 'left')]];
    const last: Runs = [[strip(30, 0, 'right'), strip(100, 1, 'whole'), cut(100, 3, 'whole')]];
    expect(checkCutPlan(job, planOf(first, [], last))).toEqual([]);
  });

  test('joints exactly the minimum stagger apart and end pieces of exactly the minimum', () => {
    const job: CutJob = { ...JOB, minPiece: 38, minStagger: 32 };
    expect(checkCutPlan(job, PLAN)).toEqual([]);
  });

  test('a plank used up to its last unit, kerf included', () => {
    expect(60 + 38 + JOB.kerf).toBe(JOB.plankLength);
    expect(checkCutPlan({ ...JOB, kerf: 3, plankWidth: 21 }, PLAN)).toEqual([
      'plank 3: pieces 98 + kerfs 3 = 101, plank 100',
    ]);
  });
});

const DAMAGED: readonly (readonly [title: string, plan: CutPlan, line: RegExp])[] = [
  ['a row is missing', planOf(FIRST_ROW, MIDDLE_ROW, LAST_ROW), /rows and runs of the plan are not those/],
  ['a run is missing', withRow(4, [cut(50, 5, 'middle')]), /rows and runs of the plan are not those/],
  [
    'law 1: a run is not filled',
    withRow(2, [cut(38, 2, 'right'), cut(100, 3, 'whole'), cut(91, 4, 'left')]),
    /^row 2, run 1: pieces fill 229 of 230$/,
  ],
  [
    'law 1: a piece of half a unit',
    withRow(4, [cut(49.5, 5, 'middle')], [cut(40, 5, 'middle')]),
    /^row 4, run 1, piece 1: length 49.5, wanted 1 to 100$/,
  ],
  [
    'law 1: a piece longer than a plank',
    withRow(2, [cut(25, 2, 'right'), cut(105, 3, 'left'), cut(100, 4, 'whole')]),
    /^row 2, run 1, piece 2: length 105, wanted 1 to 100$/,
  ],
  [
    'law 1: an uncut plank that is not as long as one',
    withRow(2, [cut(38, 2, 'right'), cut(100, 3, 'whole'), cut(92, 4, 'whole')]),
    /^row 2, run 1, piece 3: whole of length 92, plank 100$/,
  ],
  [
    'law 1: a piece as long as a plank that is not called whole',
    withRow(2, [cut(38, 2, 'right'), cut(100, 3, 'left'), cut(92, 4, 'left')]),
    /^row 2, run 1, piece 2: left of length 100, plank 100$/,
  ],
  [
    'law 1: a kept end nobody knows',
    withRow(4, [cut(50, 5, 'top' as KeptEnd)], [cut(40, 5, 'middle')]),
    /^row 4, run 1, piece 1: kept end top$/,
  ],
  [
    'law 2: the first piece lost its right end',
    withRow(2, [cut(38, 5, 'left'), cut(100, 3, 'whole'), cut(92, 4, 'left')]),
    /^row 2, run 1: the first piece is cut from left, not right or whole$/,
  ],
  [
    'law 2: the last piece lost its left end',
    withRow(2, [cut(38, 2, 'right'), cut(100, 3, 'whole'), cut(92, 4, 'middle')]),
    /^row 2, run 1: the last piece is cut from middle, not left or whole$/,
  ],
  [
    'law 2: a cut piece between the ends',
    withRow(2, [cut(38, 2, 'right'), cut(95, 3, 'left'), cut(97, 4, 'left')]),
    /^row 2, run 1, piece 2: left between the ends, not whole$/,
  ],
  [
    'law 2: a long run of one piece',
    withRow(2, [cut(230, 3, 'whole')]),
    /^row 2, run 1: 1 pieces, longer than a plank$/,
  ],
  ['law 2: a long run of no piece', withRow(2, []), /^row 2, run 1: 0 pieces, longer than a plank$/],
  [
    'law 2: end pieces under the minimum',
    withRow(2, [cut(15, 2, 'right'), cut(100, 3, 'whole'), cut(100, 6, 'whole'), cut(15, 4, 'left')]),
    /^row 2, run 1: minimum piece 15, wanted 20, and the plan does not say so$/,
  ],
  [
    'law 3: a short run of two pieces',
    withRow(4, [cut(20, 5, 'right'), cut(30, 5, 'left')], [cut(40, 5, 'middle')]),
    /^row 4, run 1: 2 pieces where one plank reaches$/,
  ],
  ['law 3: a short run of no piece', withRow(4, [], [cut(40, 5, 'middle')]), /^row 4, run 1: 0 pieces where one/],
  [
    'law 4: two pieces keep the one right end',
    withRow(2, [cut(30, 0, 'right'), cut(100, 3, 'whole'), cut(100, 4, 'whole')]),
    /^plank 1: 2 pieces keep its right end$/,
  ],
  [
    'law 4: two pieces keep the one left end',
    withRow(2, [cut(98, 0, 'right'), cut(100, 3, 'whole'), cut(32, 2, 'left')]),
    /^plank 3: 2 pieces keep its left end$/,
  ],
  [
    'law 4: a whole plank is used twice',
    withRow(4, [cut(50, 3, 'middle')], [cut(40, 5, 'middle')]),
    /^plank 4: whole, and 1 other pieces from it$/,
  ],
  [
    'law 4: pieces and kerfs are longer than the plank',
    withRow(4, [cut(50, 2, 'middle')], [cut(40, 5, 'middle')]),
    /^plank 3: pieces 148 \+ kerfs 4 = 152, plank 100$/,
  ],
  [
    'law 5: joints of neighbouring rows too near',
    withRow(2, [cut(60, 6, 'right'), cut(100, 3, 'whole'), cut(70, 4, 'left')]),
    /^row 2, run 1: minimum stagger 10, wanted 15, and the plan does not say so$/,
  ],
  [
    'law 6: a strip in a row that is no last row',
    withRow(2, [strip(38, 0, 'right'), cut(100, 3, 'whole'), cut(92, 4, 'left')]),
    /^row 2, run 1, piece 1: a strip in a row of no rip pair that fits the width$/,
  ],
  [
    'law 6: a strip of a plank that gave the first row nothing',
    withRow(3, [strip(70, 0, 'right'), strip(100, 3, 'whole'), strip(60, 2, 'left')]),
    /^row 3, run 1, piece 2: no piece of plank 4 gives a whole of 100$/,
  ],
  [
    'law 6: a strip with another end than its piece',
    withRow(3, [strip(60, 2, 'right'), cut(100, 6, 'whole'), cut(70, 7, 'left')]),
    /^row 3, run 1, piece 1: no piece of plank 3 gives a right of 60$/,
  ],
  [
    'law 6: a strip longer than its piece',
    withRow(3, [strip(80, 0, 'right'), strip(100, 1, 'whole'), cut(50, 6, 'left')]),
    /^row 3, run 1, piece 1: no piece of plank 1 gives a right of 80$/,
  ],
  [
    'law 6: two strips of one piece',
    withRow(3, [strip(30, 1, 'right'), strip(100, 1, 'whole'), cut(100, 6, 'whole')]),
    /^row 3, run 1, piece 1: no piece of plank 2 gives a right of 30$/,
  ],
  ['law 7: a plank too many is counted', { ...PLAN, plankCount: 7 }, /^plank count 7, planks used 6$/],
  [
    'law 7: plank numbers with a gap',
    withRow(2, [cut(38, 2, 'right'), cut(100, 9, 'whole'), cut(92, 4, 'left')]),
    /^plank 10 is used, and only 6 planks are$/,
  ],
  [
    'law 7: a plank number that is one too high',
    withRow(2, [cut(38, 2, 'right'), cut(100, 6, 'whole'), cut(92, 4, 'left')]),
    /^plank 7 is used, and only 6 planks are$/,
  ],
  [
    'law 7: a plank without a number',
    withRow(2, [cut(38, 2, 'right'), cut(100, Number.NaN, 'whole'), cut(92, 4, 'left')]),
    /^row 2, run 1, piece 2: plank index NaN$/,
  ],
  ['law 7: a bound above the planks', { ...PLAN, bound: 7 }, /^bound 7, plank count 6$/],
  ['law 7: a bound that is no number', { ...PLAN, bound: Number.NaN }, /^bound NaN, plank count 6$/],
  [
    'law 7: proved fewest above the bound',
    { ...PLAN, bound: 5, stop: 'proved fewest' },
    /^proved fewest, with bound 5/,
  ],
  ['law 7: steps that cannot be counted', { ...PLAN, steps: -1 }, /^steps -1$/],
  ['law 7: a stop nobody knows', { ...PLAN, stop: 'tired' as CutPlan['stop'] }, /^stop: tired$/],
];

describe('a damaged plan is told where it breaks the law', () => {
  test.each(DAMAGED)('%s', (_, plan, line) => {
    expect(checkCutPlan(JOB, plan)).toContainEqual(expect.stringMatching(line));
  });

  test('where it is refused, the first law and how many more are told', () => {
    expect(() => judged(JOB, { ...PLAN, steps: -1 })).toThrow(/a law: steps -1\. Please/);
    // A bound that is no number is the second law that this one breaks.
    expect(() => judged(JOB, { ...PLAN, steps: -1, bound: Number.NaN })).toThrow(/ and 1 more law\. Please/);
    expect(() => judged(JOB, { ...PLAN, plankCount: 7, steps: -1, bound: 8 })).toThrow(
      /a law: plank count 7, planks used 6 and 2 more laws\. Please/,
    );
  });

  test('law 6: widths and a kerf that do not fit in the plank', () => {
    const lines = checkCutPlan({ ...JOB, plankWidth: 19 }, PLAN);
    expect(lines).toHaveLength(3);
    expect(lines[0]).toBe('row 3, run 1, piece 1: a strip in a row of no rip pair that fits the width');
  });

  test('law 5: the next room does not count', () => {
    const apart = { ...JOB, rows: JOB.rows.map((row, i) => ({ ...row, room: i })) };
    const near = withRow(2, [cut(60, 6, 'right'), cut(100, 3, 'whole'), cut(70, 4, 'left')]);
    expect(checkCutPlan(apart, near).filter((line) => line.includes('stagger'))).toEqual([]);
  });
});

describe('a plan that declares broken rules is measured against them', () => {
  const near = withRow(2, [cut(60, 5, 'right'), cut(100, 3, 'whole'), cut(70, 4, 'left')]);
  const nearPlan = {
    ...near,
    rows: near.rows.map((row, i) => (i === 3 ? { runs: secondRoomOn(6) } : row)),
    plankCount: 7,
  };
  const tooNear: BrokenRule = { rule: 'minimum stagger', rowIndex: 1, runIndex: 0, found: 10, wanted: 15 };
  // The joints of the third row stand where those of the first do.
  const declared = [tooNear, { ...tooNear, rowIndex: 2 }];

  function secondRoomOn(plank: number): Runs {
    return [[cut(50, plank, 'middle')], [cut(40, plank, 'middle')]];
  }

  test('what it breaks is what it declares', () => {
    expect(checkCutPlan(JOB, { ...nearPlan, broken: declared })).toEqual([]);
  });

  test('one breach of two is declared', () => {
    const lines = checkCutPlan(JOB, { ...nearPlan, broken: [tooNear] });
    expect(lines).toEqual(['row 3, run 1: minimum stagger 10, wanted 15, and the plan does not say so']);
  });

  test('it declares another distance than it keeps', () => {
    const lines = checkCutPlan(JOB, {
      ...nearPlan,
      broken: [
        { ...tooNear, found: 12 },
        { ...tooNear, rowIndex: 2 },
      ],
    });
    expect(lines).toContain('row 2, run 1: minimum stagger 12, wanted 15 is declared, and is not what the plan does');
  });

  test('it declares a breach where it keeps the rule', () => {
    const piece: BrokenRule = { rule: 'minimum piece', rowIndex: 0, runIndex: 0, found: 10, wanted: 20 };
    const lines = checkCutPlan(JOB, { ...PLAN, broken: [piece] });
    expect(lines).toEqual(['row 1, run 1: minimum piece 10, wanted 20 is declared, and is not what the plan does']);
  });
});

describe('the law of play', () => {
  const oneRun = (length: number) => ({ room: 0, width: 20, runs: [{ x: 0, length }] });
  const job: CutJob = { ...JOB, play: 5, minStagger: 0, ripPairs: [] };
  const oversized = (lengths: readonly number[], ...rows: (readonly PlannedPiece[])[]) =>
    checkCutPlan({ ...job, rows: lengths.map(oneRun) }, planOf(...rows.map((row) => [row])));

  test('a last piece laid first needs none, and its rest starts a later row as it is: 70 + 28 + kerf is all of 100', () => {
    const rows = [
      [cut(100, 0, 'whole'), cut(70, 1, 'left')],
      [cut(28, 1, 'right'), cut(100, 2, 'whole'), cut(40, 3, 'left')],
    ];
    expect(oversized([170, 168], ...rows)).toEqual([]);
  });

  test('a last piece cut from what an earlier first piece left needs it', () => {
    const rows = (last: number) => [
      [cut(30, 0, 'right'), cut(100, 1, 'whole'), cut(40, 2, 'left')],
      [cut(100, 3, 'whole'), cut(last, 0, 'left')],
    ];
    expect(oversized([170, 163], ...rows(63))).toEqual([]);
    expect(oversized([170, 164], ...rows(64))).toEqual(['plank 1: pieces 94 + kerfs 2 + play 5 = 101, plank 100']);
  });

  test('so does a last piece of the very row whose first piece it shares a plank with', () => {
    const row = [cut(40, 0, 'right'), cut(100, 1, 'whole'), cut(55, 0, 'left')];
    expect(oversized([195], row)).toEqual(['plank 1: pieces 95 + kerfs 2 + play 5 = 102, plank 100']);
  });

  test('of three wall-to-wall pieces the second and the third do', () => {
    const rows = (third: number) => [[cut(30, 0, 'middle')], [cut(30, 0, 'middle')], [cut(third, 0, 'middle')]];
    expect(oversized([30, 30, 26], ...rows(26))).toEqual([]);
    expect(oversized([30, 30, 27], ...rows(27))).toEqual(['plank 1: pieces 87 + kerfs 4 + play 10 = 101, plank 100']);
  });
});

describe('waiting', () => {
  const row = { room: 0, width: 8, runs: [{ x: 0, length: 30 }] };
  const short = (plank: number, from: KeptEnd): Runs => [[cut(30, plank, from)]];

  test('after each row, what is cut already and serves a later row', () => {
    // Plank 1 serves rows 1 and 3, plank 2 rows 2 and 4, row 5 is a strip of row 1.
    const job: CutJob = { ...JOB, rows: [row, row, row, row, row], ripPairs: [[0, 4]] };
    const rows = [short(0, 'left'), short(1, 'left'), short(0, 'right'), short(1, 'right'), [[strip(30, 0, 'left')]]];
    const { waiting } = ledgerOf(job, planOf(...rows));
    expect(waiting).toEqual({ afterRow: [2, 3, 2, 1, 0], most: 3, reuseCount: 3, rowsWaited: 8 });
  });

  test('what is used in the row it was cut in never waits', () => {
    const { waiting } = ledgerOf({ ...JOB, rows: JOB.rows.slice(3), ripPairs: [] }, planOf(SECOND_ROOM));
    expect(waiting).toEqual({ afterRow: [0], most: 0, reuseCount: 1, rowsWaited: 0 });
  });
});

describe('the books of a plan', () => {
  const ledger = ledgerOf(JOB, PLAN);

  test('every plank is booked to pieces, kerfs and what is left, to the unit', () => {
    const booked = ledger.planks.map((plank) => [plank.pieceLength, plank.kerfLength, plank.leftOver]);
    expect(booked).toEqual([
      [70, 2, 28],
      [100, 0, 0],
      [98, 2, 0],
      [100, 0, 0],
      [92, 2, 6],
      [90, 4, 6],
    ]);
    for (const sums of booked) expect(sums.reduce((a, b) => a + b)).toBe(JOB.plankLength);
  });

  test('a left-over thinner than the blade is all kerf', () => {
    const job: CutJob = { ...JOB, rows: [{ room: 0, width: 20, runs: [{ x: 0, length: 99 }] }], ripPairs: [] };
    const [plank] = ledgerOf(job, planOf([[cut(99, 0, 'middle')]])).planks;
    expect(plank).toMatchObject({ pieceLength: 99, kerfLength: 1, leftOver: 0, cutCount: 1 });
  });

  test('pieces stand with their place in the floor, strips apart', () => {
    expect(ledger.planks[2]?.pieces).toEqual([
      { rowIndex: 0, runIndex: 0, pieceIndex: 2, length: 60, from: 'left' },
      { rowIndex: 1, runIndex: 0, pieceIndex: 0, length: 38, from: 'right' },
    ]);
    const [strip] = ledger.planks[2]?.strips ?? [];
    expect(strip).toMatchObject({ rowIndex: 2, runIndex: 0, pieceIndex: 2, length: 60, from: 'left' });
  });

  test('a strip has the piece of the first row that it is ripped from, and none where nothing is paired', () => {
    const places = (job: CutJob) =>
      ledgerOf(job, PLAN).planks.flatMap(({ strips }) =>
        strips.map(({ source }) => source && [source.rowIndex, source.pieceIndex]),
      );
    expect(places(JOB)).toEqual([
      [0, 0],
      [0, 1],
      [0, 2],
    ]);
    expect(places({ ...JOB, ripPairs: [] })).toEqual([null, null, null]);
  });

  test('cuts: one between pieces, one against a left-over, none for a strip as long as its piece', () => {
    expect(ledger.planks.map((plank) => plank.cutCount)).toEqual([1, 0, 1, 0, 1, 2]);
    expect(ledger.cutCount).toBe(5);
  });

  test('a shortened strip is one cut more', () => {
    const shorter = withRow(3, [strip(50, 0, 'right'), strip(100, 1, 'whole'), cut(80, 6, 'left')]);
    expect(ledgerOf(JOB, shorter).planks[0]?.cutCount).toBe(2);
  });

  test('waste is what is bought and not laid: 6 planks of 100 less 550', () => {
    expect(ledger.waste).toBe(50);
  });

  test('the nearest joints of neighbouring rows, the shortest end piece, the joints aligned two rows apart', () => {
    expect(ledger.tightestStagger).toBe(32);
    expect(ledger.shortestEndPiece).toBe(38);
    expect(ledger.alignedJointCount).toBe(2);
  });

  test('a floor of short runs has no stagger and no end pieces', () => {
    const job: CutJob = { ...JOB, rows: JOB.rows.slice(3), ripPairs: [] };
    const plan = planOf([[cut(50, 0, 'middle')], [cut(40, 0, 'middle')]]);
    expect(ledgerOf(job, plan)).toMatchObject({ tightestStagger: null, shortestEndPiece: null, alignedJointCount: 0 });
  });
});
