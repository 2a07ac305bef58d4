/** Planning on from cells alone: a bad day, its sums by hand, and what cannot be used. */
import { describe, expect, test } from 'vitest';
import { PLANK_COUNT, PLANK_ONWARD } from '../../src/sheet/functions';

const RULES = [
  ['kerf', 0.125],
  ['play', 0],
];
const told = (answer: readonly (readonly unknown[])[]) => answer.map(([first]) => String(first));
const pieces = (answer: readonly (readonly unknown[])[]) =>
  answer.slice(answer.findIndex(([first]) => first === 'row') + 1).filter(([row]) => typeof row === 'number');

describe('a bad day', () => {
  // Planks of 48 in. By hand: 80 in is 32 + 48; the offcut of 40 in has its right end, so one whole plank does for the rest.
  test('an offcut in hand comes first, and the planks left are counted', () => {
    const answer = PLANK_ONWARD([[`6' 8"`]], 48, [[20, 40, 20]], [['8-2', 40, 'right']], 1, 9, RULES);
    expect(told(answer).slice(0, 2)).toEqual([
      'Row 9: cut the offcut marked 8-2 to 32", keep its right end. The nearest joint is 12" from row 8. Or cut it from a new plank.',
      '1 plank needed, 1 left: 0 over.',
    ]);
    expect(pieces(answer)).toEqual([
      [9, '9-1', 32, 'right', 'offcut marked 8-2'],
      [9, '9-2', 48, 'whole', 'new plank'],
    ]);
  });

  test('all joints of the row that lies count, and a row of one piece has none', () => {
    const first = (laid: readonly unknown[]) =>
      told(PLANK_ONWARD([[`6' 8"`]], 48, [laid], [['8-2', 40, 'right']], 1, 9, RULES))[0];
    // Joints at 4 and 44: that at 32 is 12 from the second one.
    expect(first([4, 40, 36])).toContain('The nearest joint is 12" from row 8.');
    expect(first([30, '', ''])).not.toContain('joint');
  });

  test('without the offcut a second plank is short, and it says so', () => {
    const answer = PLANK_ONWARD([[`6' 8"`]], 48, [[20, 40, 20]], [['8-2', 40, 'left']].slice(1), 1, 9, RULES);
    expect(told(answer)[1]).toBe('2 planks needed, 1 left: 1 plank more to buy.');
  });

  // The row that lies has a joint at 40: pieces of 40 + 40 would lie right on it; 8 in away at the nearest is wanted.
  test('joints keep away from the row that lies, and an offcut that would not is left alone', () => {
    const answer = PLANK_ONWARD([[`6' 8"`]], 48, [[40, 40]], [['8-2', 40, 'right']], 5, 9, RULES);
    const [[, , first]] = pieces(answer) as [number, string, number][];
    expect(Math.abs(first - 40)).toBeGreaterThanOrEqual(8);
  });

  test('an image, or a number of no end, for the mark of an offcut: it goes by its row', () => {
    for (const cell of [{ valueType: 'IMAGE' }, Object.create(null), Number.POSITIVE_INFINITY]) {
      const answer = PLANK_ONWARD([[`6' 8"`]], 48, [[20, 40, 20]], [[cell, 40, 'right']], 1, 9, RULES);
      expect(told(answer)[0]).toContain('the offcut marked 1 to 32"');
      expect(() => PLANK_ONWARD([[9]], 48, '', [['A', 20, cell]])).toThrow(/^in_hand, row 1/);
    }
  });

  test('a row that lies of a hundred thousand pieces is refused in a sentence', () => {
    const laid = [Array.from({ length: 100_000 }, () => 20)];
    expect(() => PLANK_ONWARD([[9]], 48, laid)).toThrow(/^laid, row 1: 100000 pieces are more than any row has/);
  });

  // A plank of 1.37 m is no whole number of 1/16 in: what is planned in a little less than a step is marked in steps.
  test('no offcut gives more than it has, whatever the plank', () => {
    const inHand = [
      ['A', '6 1/8 in', 'left'],
      ['B', '0.6 yd', 'left'],
    ];
    const answer = PLANK_ONWARD([[13], [4.5]], '1,37 m', [[8, 8.672, 13.811]], inHand, 5, 4, [['play', 0]]);
    const fromB = pieces(answer).filter((piece) => piece[4] === 'offcut marked B');
    // 0.6 yd is 21.6 in.
    for (const [, , length] of fromB) expect(length).toBeLessThanOrEqual(21.6);
  });

  test('a run found 1/4" longer makes the last piece longer, not the first', () => {
    const before = pieces(
      PLANK_ONWARD(
        [[80]].map(([inches]) => [`${inches}"`]),
        48,
        '',
        '',
        5,
        1,
        RULES,
      ),
    );
    const after = pieces(PLANK_ONWARD([['80.25"']], 48, '', '', 5, 1, RULES));
    const sum = (rows: readonly (readonly unknown[])[]) => rows.reduce((total, row) => total + Number(row[2]), 0);
    expect(sum(after) - sum(before)).toBe(0.25);
  });

  test('nothing laid and nothing in hand takes as many planks as PLANK_COUNT', () => {
    const runs = Array.from({ length: 20 }, (_, i) => [`${138 + ((i * 5) % 7)}"`]);
    expect(told(PLANK_ONWARD(runs, 48))[1]).toMatch(new RegExp(`^${PLANK_COUNT(runs, 48)} planks needed`));
  });

  test('as many rows as are allowed are planned on', () => {
    const runs = Array.from({ length: 200 }, (_, i) => [12 + ((i * 7) % 13) / 10]);
    expect(
      pieces(PLANK_ONWARD(runs, 47.25, [[20, 47.25, 30]], [['x', 20, 'left']], 0, 1, '', '', 8, 100)).length,
    ).toBeGreaterThan(600);
  });
});

describe('days, and a part that is laid first', () => {
  const rows = (count: number, inches: number) => Array.from({ length: count }, () => [`${inches}"`]);
  const plan = (runs: readonly (readonly string[])[], next: number, day: unknown, part: unknown, hand: unknown = '') =>
    PLANK_ONWARD(runs, 48, '', hand, 60, next, [...RULES, ['minimum stagger', 12]], 'us', day, part);

  test('14 rows at 6 a day, of which the first is told on top: rows 7 to 12, 13 to 18, 19 to 20', () => {
    const answer = told(plan(rows(14, 138), 7, 6, ''));
    const days = answer.filter((line) => line.startsWith('Day '));
    expect(days.map((line) => line.slice(0, line.indexOf('.')))).toEqual([
      'Day 1: rows 7 to 12',
      'Day 2: rows 13 to 18',
      'Day 3: rows 19 to 20',
    ]);
    expect(answer.indexOf(days[0])).toBeLessThan(answer.indexOf('row'));
    expect(answer.indexOf(days[1])).toBeGreaterThan(answer.indexOf('row'));
  });

  test('what is cut today for tomorrow is what tomorrow takes from a plank of today', () => {
    const answer = plan(rows(9, 130), 1, 1, '');
    const lines = pieces(answer) as [number, string, number, string, string][];
    const rowOf = (label: string) => lines.find((line) => line[1] === label)?.[0] ?? 0;
    const days = told(answer).filter((line) => line.startsWith('Day '));
    expect(days).toHaveLength(9);
    days.forEach((line, i) => {
      const wanted = lines.flatMap(([row, label, , , from]) => {
        const opened = from.match(/^offcut of (.+)$/)?.[1];
        return opened !== undefined && rowOf(opened) <= i + 1 && row === i + 2 ? [label] : [];
      });
      expect(line.match(/for tomorrow: ([^.]*)/)?.[1] ?? '').toBe(wanted.join(', '));
    });
  });

  // By hand: six runs of 90" are 11.25 planks, 12 at least. A row of 48" + 42", then one of 21" + 48" + 21", takes two planks
  // itself, with joints 21" apart: so no offcut need go over.
  // A joint lies at 48". A row of 120" has joints 48" apart on both sides of it, the nearer 24" away at most. A row of 70" has one
  // joint, at 22" to 48": at 23" it is 25" away.
  test('a stagger of more than half a plank is told to be none that can be kept, and kept where it can', () => {
    const texts = (run: string, stagger: number) =>
      told(PLANK_ONWARD([[run]], 48, [[48, 72]], '', 9, 2, [...RULES, ['minimum stagger', stagger]])).join();
    expect(texts('120"', 25)).toContain('less than the minimum stagger of 25".,Rows side by side of two planks');
    expect(texts('120"', 24)).not.toMatch(/less than|side by side/);
    expect(texts('70"', 25)).not.toMatch(/less than|side by side/);
  });

  test('half a room first: no plank more, and it says what goes over', () => {
    const answer = told(plan(rows(6, 90), 1, '', 3));
    expect(answer[1]).toMatch(/^12 planks needed/);
    expect(answer).toContain('First up to row 3, then the other side: no offcut goes over to the rest.');
    // A part that lies already, or that is all there is, is no part any more.
    for (const part of [6, 0, '']) expect(told(plan(rows(6, 90), 1, '', part)).join()).not.toContain('the other side');
    const lies = told(plan(rows(3, 90), 4, '', 3));
    expect(lies.join()).not.toContain('the other side');
    expect(lies).toContain('Lay first up to row 3: that row lies already, so this changes nothing.');
    expect(told(plan(rows(3, 90), 3, '', 3)).join()).not.toContain('lies already');
  });

  test('the parts keep the count of one go, with an offcut in hand too', () => {
    const runs = Array.from({ length: 12 }, (_, i) => [`${121 + 7 * (i % 4)}"`]);
    const hand = [['A', 30, 'right']];
    const needed = (answer: ReturnType<typeof plan>) => Number.parseInt(told(answer)[1], 10);
    expect(needed(plan(runs, 1, '', 6, hand))).toBeLessThanOrEqual(needed(plan(runs, 1, '', '', hand)));
  });
});

describe('what cannot be used', () => {
  const runs = [[12]];
  test.each<readonly [string, () => unknown, RegExp]>([
    ['no such end', () => PLANK_ONWARD(runs, 48, '', [['a', 20, 'up']]), /^in_hand, row 1: the factory end is "up"/],
    [
      'a mark that became a date',
      () => PLANK_ONWARD(runs, 48, '', [[new Date(2026, 7, 2), 20, 'left']]),
      /^in_hand, row 1.*is a date/,
    ],
    [
      'an offcut longer than a plank',
      () =>
        PLANK_ONWARD(runs, 48, '', [
          ['a', 48, 'left'],
          ['b', '48 1/16"', 'left'],
        ]),
      /^in_hand, row 2: an offcut of 48 1\/16" is longer than a plank of 48"\. Type the length it has/,
    ],
    ['no length', () => PLANK_ONWARD(runs, 48, '', [['a', '', 'left']]), /^in_hand, row 1 is blank/],
    ['text for a length', () => PLANK_ONWARD(runs, 48, '', [['a', 'long', 'left']]), /^in_hand, row 1/],
    ['two columns', () => PLANK_ONWARD(runs, 48, '', [['a', 20]]), /^in_hand has 2 columns/],
    ['three rows that lie', () => PLANK_ONWARD(runs, 48, [[20], [30], [40]]), /^laid has 3 rows of cells/],
    ['a gap between pieces', () => PLANK_ONWARD(runs, 48, [[20, '', 40]]), /^laid, row 1, column 2 is blank/],
    [
      'too many rows',
      () =>
        PLANK_ONWARD(
          Array.from({ length: 201 }, () => [12]),
          48,
        ),
      /^runs has 201 rows/,
    ],
    ['half a plank left', () => PLANK_ONWARD(runs, 48, '', '', 2.5), /^whole_planks/],
    ['a row before the first', () => PLANK_ONWARD(runs, 48, '', '', '', 0), /^next_row is 0. Rows count from 1\./],
    ['a row of no floor', () => PLANK_ONWARD(runs, 48, '', '', 8, 1e118, '', '', 1), /^next_row is more than 10,000/],
    ['half a row a day', () => PLANK_ONWARD(runs, 48, '', '', '', '', '', '', 0.5), /^rows_a_day/],
    ['no row for a part', () => PLANK_ONWARD(runs, 48, '', '', '', '', '', '', '', 'half'), /^lay_first/],
  ])('%s', (_, call, sentence) => {
    expect(call).toThrow(sentence);
  });
});

test.each([Number.POSITIVE_INFINITY, Number.NaN])('an end of %s in hand is no end, and is not quoted', (end) => {
  const call = () => PLANK_ONWARD([[12]], 48, '', [['a', 20, end]]);
  expect(call).toThrow('in_hand, row 1: the factory end is "". Type left, right, both or none.');
});
