import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { RULES } from '../../src/layout/rules';
import { PLANK_COUNT, PLANK_CUTS, PLANK_OFFCUTS } from '../../src/sheet/functions';
import { refusalOf } from '../support/refusal';

const column = (...cells: unknown[]) => cells.map((cell) => [cell]);
const rows = (call: () => unknown) => call() as (number | string)[][];

describe('PLANK_COUNT', () => {
  const loose = [
    ['minimum stagger', 0],
    ['minimum piece', 0],
    ['kerf', 0],
  ];

  test.each([
    ['a run of one plank', [column('48"'), 48], 1],
    ['a run of two planks and a half', [column('120"'), 48], 3],
    // First pieces keep the right end, last pieces the left: one plank gives one of each, 20 + 28 = 48.
    ['two runs that share a plank', [column('68"', '76"'), 48, loose], 3],
    ['a kerf leaves no room for both', [column('68"', '76"'), 48, [...loose.slice(0, 2), ['kerf', '1/8"']]], 4],
    ['runs shorter than a plank, cut from one', [column('20"', '28"'), 48, [...loose, ['play', 0]]], 1],
    ['not when the second has to have room to grow', [column('20"', '28"'), 48, [...loose, ['play', '1/4"']]], 2],
    ['a gap taken off both ends where it is given', [column('97"'), 48, [['expansion gap', 0.5]]], 2],
    ['and not where it is not', [column('96"'), 48], 2],
    ['spare planks on top', [column('96"'), 48, [['spare', 3]]], 5],
    ['a row of cells', [[['96"', '48"', '']], 48], 3],
    ['metric', [column(2.4), 1200, '', 'metric'], 2],
    [
      'rule names in any case, rows in any order, blanks ignored',
      [
        column('97"'),
        48,
        [
          ['', ''],
          ['KERF', ''],
          ['Expansion-Gap', '1/2"'],
        ],
      ],
      2,
    ],
  ])('%s', (_, call, planks) => {
    expect(PLANK_COUNT(...(call as [unknown, unknown]))).toBe(planks);
  });

  test('a range of plank lengths answers a count each', () => {
    expect(PLANK_COUNT(column('96"'), [[48, 32, 24]])).toEqual([[2, 3, 4]]);
  });

  test.each([
    [
      'an unknown rule',
      [column(12), 48, [['stager', 8]]],
      /^rules, row 1: "stager" is not a rule\. The rules are expansion gap, minimum stagger, .*, kerf, .*, spare\b.*\.$/,
    ],
    [
      'a rule given twice',
      [
        column(12),
        48,
        [
          ['kerf', 0],
          ['Kerf', 0.1],
        ],
      ],
      /^rules, row 2: kerf is given a second time/,
    ],
    ['a value without a name', [column(12), 48, [['', 8]]], /^rules, row 1: there is a value beside a blank name/],
    ['a value that is none', [column(12), 48, [['kerf', 'thin']]], /^rules, row 1, kerf: "thin" is not a length/],
    ['half a spare plank', [column(12), 48, [['spare', 0.5]]], /^rules, row 1, spare: 0\.5 is not a count/],
    ['rules in one column', [column(12), 48, [['kerf'], [0]]], /^rules: the range has 2 rows and 1 column\./],
    ['a single cell for rules', [column(12), 48, 'kerf'], /^rules: the range has 1 row and 1 column\./],
    [
      'a step nobody can mark',
      [column(12), 48, [['marking step', '0.01 mm']]],
      /^rules, row 1, marking step: "0\.01 mm" cannot be used as a marking step/,
    ],
    [
      'a gap that eats a run',
      [column(12, '1"'), 48, [['expansion gap', 0.5]]],
      /^runs, row 2: with a gap of 1\/2" at both walls nothing of .* is left/,
    ],
    ['a run that cannot be read', [column(12, 'x'), 48], /^runs, row 2: "x" is not a length/],
    ['no runs', [column('', ''), 48], /^runs is blank/],
    [
      'a merged cell among the runs',
      [column(12, '', 12), 48],
      /^runs, row 2 is blank between filled rows\. .* merged cell/,
    ],
    [
      'runs in two columns',
      [
        [
          [1, 2],
          [3, 4],
        ],
        48,
      ],
      /^runs: the range has 2 rows and 2 columns\./,
    ],
    // 49.2 in is a plank of 47 1/4 and less than 2 in; two pieces of 8 in and more fit: 24.6 + 24.6. With a minimum of
    // 30 in no two pieces do.
    [
      'rules no plan can meet',
      [column('49"'), 48, [['minimum piece', 30]]],
      /^No plan meets all the rules\. The nearest takes \d planks\. runs, row 1: .*" is less than the minimum piece of 30"\. Change/,
    ],
    // Rows of 120" have joints a plank apart, so one of the next row lies between two: 24" from the nearer at most.
    [
      'a stagger of more than half a plank',
      [column('120"', '120"'), 48, [['minimum stagger', '24 1/16"']]],
      /^No plan meets all the rules\..* is less than the minimum stagger of 24 1\/16"\. Rows side by side of two planks or more can keep half a plank at most: the joints of a row are a plank apart\. Change/,
    ],
    [
      'more planks than are planned',
      [column(...Array.from({ length: 10 }, () => 300)), '1/2"'],
      /^runs would take about 72000 planks\. At most 50000/,
    ],
    ['hundreds of rows', [Array.from({ length: 501 }, () => [12]), 48], /^runs has 501 rows\. At most 500/],
  ])('%s is told', (_, call, sentence) => {
    expect(refusalOf(() => PLANK_COUNT(...(call as [unknown, unknown])))).toMatch(sentence);
  });
});

describe('a count that is not proved to be the fewest', () => {
  // Twenty-five rows of unlike lengths: the search and its bound end one plank apart.
  const unlike = column(...Array.from({ length: 25 }, (_, i) => 10 + ((i * i * 37 + i * 11) % 97) / 12));
  // Two halves of a plank and no saw cut: nobody can do with fewer.
  const noKerf = [
    ['kerf', 0],
    ['play', 0],
  ];
  const halves = column('24"', '24"');

  test('PLANK_COUNT answers a bare number, and says beside it what is proved only where that is asked', () => {
    const planks = PLANK_COUNT(unlike, 48);
    expect(planks).toEqual(expect.any(Number));
    expect(PLANK_COUNT(unlike, 48, '', '', 'yes')).toEqual([[planks, 'at most 1 more than the fewest']]);
    expect(PLANK_COUNT(halves, 48, noKerf, '', 'Yes')).toEqual([[1, 'cannot be done with fewer']]);
    expect(PLANK_COUNT(halves, [[48, '', 24]], noKerf, '', 'yes')).toEqual([
      [1, 'cannot be done with fewer', '', '', 2, 'cannot be done with fewer'],
    ]);
  });

  test('PLANK_OFFCUTS says so in a line under its table, and only then', () => {
    const planks = PLANK_COUNT(unlike, 48);
    expect(rows(() => PLANK_OFFCUTS(unlike, 48)).at(-1)?.[0]).toBe(
      `${planks} planks are not proved to be the fewest: at most 1 fewer may be possible.`,
    );
    expect(rows(() => PLANK_OFFCUTS(halves, 48, noKerf))).toHaveLength(3);
  });

  test('neither yes nor no is told', () => {
    const sentence = 'proof: "maybe" is neither yes nor no. Type yes or no.';
    expect(refusalOf(() => PLANK_COUNT(halves, 48, '', '', 'maybe'))).toBe(sentence);
  });
});

describe('PLANK_OFFCUTS', () => {
  const runs = ['12\' 6"', '12\' 4"', '12\' 1/2"', 11, 12];
  const table = rows(() => PLANK_OFFCUTS(column(...runs), 47.25));
  const lines = table.slice(1);

  test('has a heading, and a line in the place of every row', () => {
    expect(table[0]).toEqual(['row', 'first piece', 'cut from', 'whole planks', 'last piece', 'cut from', 'left over']);
    expect(table.slice(1).map((line) => line[0])).toEqual([1, 2, 3, 4, 5]);
  });

  test('the pieces of every row add up to its run', () => {
    const sums = lines.map((line) => Number(line[1]) + 47.25 * Number(line[3]) + Number(line[4]));
    expect(sums).toEqual([150, 148, 144.5, 132, 144]);
  });

  test('end pieces are 8 in or more, and joints of neighbouring rows 8 in apart', () => {
    const joints = lines.map((line) => {
      expect(Math.min(Number(line[1]), Number(line[4]))).toBeGreaterThanOrEqual(8);
      return Array.from({ length: Number(line[3]) + 1 }, (_, k) => Number(line[1]) + 47.25 * k);
    });
    for (let i = 1; i < joints.length; i++) {
      for (const a of joints[i]) for (const b of joints[i - 1]) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(8);
    }
  });

  test('a piece from an offcut names the row and plank it comes from, and both fit with a kerf', () => {
    const cutFrom = lines.flatMap((line) => [
      { row: line[0], length: Number(line[1]), text: String(line[2]) },
      { row: line[0], length: Number(line[4]), text: String(line[5]) },
    ]);
    const offcuts = cutFrom.filter(({ text }) => text.startsWith('offcut'));
    expect(offcuts.length).toBeGreaterThan(0);
    for (const { length, text } of offcuts) {
      const [, row, plank] = /^offcut of (?:row (\d+)|this row) \(plank (\d+)\)$/.exec(text) as RegExpExecArray;
      const parent = cutFrom.find((piece) => piece.text === `plank ${plank}`);
      expect(parent && length + parent.length + 1 / 8).toBeLessThanOrEqual(47.25);
      if (row) expect(parent?.row).toBe(Number(row));
    }
  });

  test('what is bought is what is laid, cut away and left over', () => {
    const count = PLANK_COUNT(column(...runs), 47.25) as number;
    const laid = 150 + 148 + 144.5 + 132 + 144;
    const leftOver = lines.reduce((sum, line) => sum + Number(line[6]), 0);
    const kerfs = count * 47.25 - laid - leftOver;
    // One kerf of 1/8 in at most for each end piece.
    expect(kerfs).toBeGreaterThanOrEqual(0);
    expect(kerfs).toBeLessThanOrEqual((2 * lines.length) / 8);
  });

  test('planks that are no whole number of marking steps: sums, joints and pieces still hold', () => {
    // 1210 mm in a sheet of inches and sixteenths: 47.637795... in.
    const plank = 1210 / 25.4;
    const odd = rows(() => PLANK_OFFCUTS(column(12.51, 11.77, 12.03, 10.9), '1210 mm')).slice(1);
    const starts = odd.map((line) => Number(line[1]));
    [12.51, 11.77, 12.03, 10.9].forEach((feet, i) => {
      const [, first, , whole, last] = odd[i].map(Number);
      const left = 12 * feet - (first + whole * plank + last);
      // Cut lengths are whole sixteenths, so at most two of them are left at the wall.
      expect(left).toBeGreaterThanOrEqual(-1e-4);
      expect(left).toBeLessThanOrEqual(2 / 16 + 1e-4);
      expect(Math.min(first, last)).toBeGreaterThanOrEqual(8);
      for (const end of [first, last]) if (end < plank - 1e-3) expect(end * 16).toBe(Math.round(end * 16));
      if (i === 0) return;
      const apart = Math.abs(starts[i] - starts[i - 1]) % plank;
      expect(Math.min(apart, plank - apart)).toBeGreaterThanOrEqual(8 - 1e-3);
    });
  });

  test('a single piece has no other end', () => {
    expect(rows(() => PLANK_OFFCUTS(column('30"'), 48))[1].slice(0, 6)).toEqual([1, 30, 'plank 1', 0, '', '']);
  });

  test('a broken rule is quoted as typed where a plank is no whole number of marking steps', () => {
    const table = rows(() => PLANK_OFFCUTS(column('49"'), '1210 mm', [['minimum piece', 30]]));
    expect(table[2][0]).toMatch(/^runs, row 1: .* is less than the minimum piece of 30"\.$/);
  });

  test('every rule that is broken is named', () => {
    // By hand: a run of 49 in from planks of 48 in has one joint, 24 1/2 in from an end at most, so one piece is under
    // 30 in; and the joints of two such runs are at most 47 in apart.
    const both = [
      ['minimum piece', 30],
      ['minimum stagger', 60],
    ];
    const table = rows(() => PLANK_OFFCUTS(column(...new Array(9).fill('49"')), 48, both));
    const told = table.map(([cell]) => String(cell)).join(' ');
    expect(told).toContain('is less than the minimum piece of 30".');
    expect(told).toContain('is less than the minimum stagger of 60".');
    const refused = refusalOf(() => PLANK_COUNT(column('49"', '49"'), 48, both));
    expect(refused).toContain('is less than the minimum piece of 30".');
    expect(refused).toContain('is less than the minimum stagger of 60".');
  });

  test('a row that no plan can lay is told below the table', () => {
    const odd = rows(() => PLANK_OFFCUTS(column('49"'), 48, [['minimum piece', 30]]));
    expect(odd[odd.length - 1][0]).toMatch(/^runs, row 1: .*" is less than the minimum piece of 30"\.$/);
    const many = rows(() => PLANK_OFFCUTS(column('49"', '49"', '49"', '49"', '49"'), 48, [['minimum piece', 30]]));
    expect(many[many.length - 1][0]).toMatch(/^The minimum \w+ is not kept in \d+ more places?\.$/);
  });

  test('a plank length in several cells is told', () => {
    expect(refusalOf(() => PLANK_OFFCUTS(column(12), [[48], [36]]))).toBe(
      'plank_length: the range has 2 rows and 1 column, but one value is wanted. Give a single cell.',
    );
  });
});

describe('PLANK_CUTS', () => {
  test('covers the room less its gaps, row by row', () => {
    const table = rows(() => PLANK_CUTS(12, 10, 47.25, 7.5));
    expect(table[0]).toEqual([
      'row',
      'piece',
      'length',
      'width',
      'plank',
      'keep factory end',
      'rest of plank',
      'notes',
    ]);
    const pieces = table.slice(1).filter((line) => typeof line[0] === 'number');
    // 144 - 0.75 along the rows; 120 - 0.75 = 15 x 7.5 + 6.75 across them.
    for (let row = 1; row <= 16; row++) {
      const own = pieces.filter((line) => line[0] === row);
      expect(own.reduce((sum, line) => sum + Number(line[2]), 0)).toBeCloseTo(143.25, 9);
      expect(own.every((line) => line[3] === (row === 16 ? 6.75 : 7.5))).toBe(true);
    }
    expect(pieces.every((line) => Number(line[0]) <= 16)).toBe(true);
  });

  test('problems of the entry are told', () => {
    expect(refusalOf(() => PLANK_CUTS(12, 10, 47.25, 7.5, [['lay direction', 'sideways']]))).toMatch(
      /lay direction: "sideways" is not a lay direction/,
    );
  });
});

describe('a rule that may stand in a range', () => {
  const source = readFileSync(join(import.meta.dirname, '../../src/sheet/cutFunctions.ts'), 'utf8');
  const helps = [...source.matchAll(/@param \{range\} \[rules\] .*/g)].map(([line]) => line).join('\n');
  const names = RULES.flatMap((rule) => ('inRange' in rule ? [rule.inRange] : []));

  test.each(names)('%s is named in the help of the functions that take rules', (name) => {
    expect(helps).toContain(name);
  });
});

test('the table takes no more planks than the count: 0.8 yd planks, found by chance', () => {
  const runs = [["14' 6"], ['11 13/16"'], ['12\' 2 3/8"'], ['19.17 ft'], ['0.3']];
  const rules = [
    ['minimum stagger', 0],
    ['minimum piece', 0],
  ];
  // By hand: the rows are 14.58 m, 19.93 planks of 731.52 mm: 20 at least.
  const lines = PLANK_OFFCUTS(runs, '0.8 yd', rules, 'metric').slice(1, 6);
  const ends = lines.flatMap(([, , first, , , last]) => [first, last]).filter((from) => from !== '');
  const planks = new Set(ends.map((from) => /plank (\d+)/.exec(String(from))?.[1])).size;
  const booked = lines.reduce((sum, line) => sum + Number(line[3]), planks);
  expect([booked, PLANK_COUNT(runs, '0.8 yd', rules, 'metric')]).toEqual([20, 20]);
});

// A hundred thousand units are a hundred thousand plans of one floor: refused at once, as so many plank lengths are.
test('a range of units is planned as often as it has cells', () => {
  const units = (count: number) => Array.from({ length: count }, (_, i) => [i % 2 === 0 ? 'us' : '']);
  const [count] = [PLANK_COUNT(column(12, 11), 48)];
  expect(PLANK_COUNT(column(12, 11), 48, '', units(3))).toEqual([[count], [count], [count]]);
  expect(() => PLANK_COUNT(column(12, 11), 48, '', units(100_000))).toThrow(/200000 rows\. At most 500/);
});
