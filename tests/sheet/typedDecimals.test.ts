/**
 * A length typed as a decimal is that decimal: what the functions count is held against whole-number arithmetic of any
 * size (BigInt, in millionths of a millimetre) on random typed decimals, most of them exact multiples of each other.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  PLANK_BOXES,
  PLANK_COMPARE,
  PLANK_COUNT,
  PLANK_CUTS,
  PLANK_LAST_ROW,
  PLANK_LENGTH_TEXT,
  PLANK_OFFCUTS,
  PLANK_ROWS,
  PLANK_STAGGER,
  PLANK_TRIM,
  PLANK_UNDERLAY,
} from '../../src/sheet/functions';
import {
  ceilDiv,
  decimalOf,
  exactOf,
  fewestBins,
  METRIC,
  type TypedUnits,
  textOf,
  thousandths,
  US,
} from '../support/exactLengths';
import { fewestRolls } from '../support/exactRolls';

const column = (...cells: unknown[]) => cells.map((cell) => [cell]);
const loose = [
  ['minimum stagger', 0],
  ['minimum piece', 0],
];

describe('by hand', () => {
  test('25 x 7.09 in is 178 in less two gaps of 3/8 in: 25 full rows', () => {
    // 177.25 / 25 = 7.09
    expect(PLANK_ROWS('14\' 10"', 7.09)).toEqual([[25, 7.09, 7.09, 'all rows full']]);
    expect(PLANK_LAST_ROW('14\' 10"', 7.09)).toBe(7.09);
  });

  test('the same depth as the sheet reckons it: 25 rows of 7.09 and two gaps, in feet', () => {
    expect(PLANK_ROWS((25 * 7.09 + 0.75) / 12, 7.09)).toEqual([[25, 7.09, 7.09, 'all rows full']]);
  });

  test('10 rows of 7.5 in and their gaps are 75.75 in: 3 planks a row of 143 1/4 in', () => {
    const lines = PLANK_CUTS(12, '75.75"', 48, 7.5).slice(1);
    expect(new Set(lines.map((line) => line[0])).size).toBe(10);
    // 75.77 in leaves 1/50 in: less than a pencil marks, so it stays in the gap.
    const hair = PLANK_CUTS(12, '75.77"', 48, 7.5).slice(1);
    expect(hair).toEqual(lines);
    expect(PLANK_ROWS('75.77"', 7.5)).toEqual([
      [10, 7.5, 7.5, 'all rows full, less than 1/16" left for the gap at the wall'],
    ]);
  });

  test('the minimum rip is asked only of a row that is laid: 1/16 in is, and is shared', () => {
    // 75 + 1/16 = 10 x 7.5 + 1/16; (1/16 + 7.5) / 2 = 3.78125
    expect(PLANK_ROWS('75 1/16"', 7.5, 0)[0].slice(0, 3)).toEqual([11, 3.78125, 3.78125]);
    expect(PLANK_ROWS('75 1/17"', 7.5, 0)[0].slice(0, 3)).toEqual([10, 7.5, 7.5]);
  });

  test('a last row of exactly the minimum rip is wide enough: 20 x 7.09 + 2', () => {
    expect(PLANK_ROWS('143.8"', 7.09, 0)[0].slice(0, 3)).toEqual([21, 7.09, 2]);
    const widths = PLANK_CUTS('10"', '143.8"', 48, 7.09, [['expansion gap', 0]]).slice(1);
    expect(widths).toHaveLength(21);
    expect(widths[0][3]).toBeCloseTo(7.09, 4);
    expect(widths[20][3]).toBeCloseTo(2, 4);
  });

  test('three strips of 3.2 ft cover 9.6 ft, and three of 8.3 ft come out of a roll of 24.9', () => {
    expect(PLANK_UNDERLAY(20, 9.6, 3.2, 25)).toBe(3);
    expect(PLANK_UNDERLAY(8.3, 9.6, 3.2, 24.9)).toBe(1);
  });

  test('three walls of 2.9 ft come out of a stick of 8.7', () => {
    expect(PLANK_TRIM(column(2.9, 2.9, 2.9), 8.7, 0)).toBe(1);
  });

  test('45.8 and 10.4 of 47.4 in are 12 in apart: 10.4 + 47.4 - 45.8', () => {
    expect(PLANK_STAGGER(column(45.8, 10.4), 47.4, 12)).toEqual([['OK'], ['OK']]);
  });

  test('2967.4993 mm is 2967 mm: rounded once', () => {
    expect(PLANK_LENGTH_TEXT(2967.4993, 'metric')).toBe('2967 mm');
    expect(PLANK_LENGTH_TEXT(2967.5, 'metric')).toBe('2968 mm');
    // 1/32 in is half a sixteenth.
    expect(PLANK_LENGTH_TEXT(0.03125)).toBe('1/16"');
    expect(PLANK_LENGTH_TEXT(0.03124999)).toBe('0"');
  });

  test('four planks of 23.8 in are a run of 95.2 in: four whole ones', () => {
    const [, line] = PLANK_OFFCUTS(column('95.2"'), 23.8, loose);
    expect(line.slice(1, 5)).toEqual([23.8, 'plank 1', 2, 23.8]);
  });
});

describe.each([US, METRIC])('$units, against exact arithmetic', (system: TypedUnits) => {
  const { units } = system;
  const scale = units === 'us' ? 1 : 25;
  const between = (least: number, most: number) => thousandths(least * scale, most * scale);
  const typed = (value: number) => textOf(value, system);
  const exact = (value: number) => exactOf(value, system);
  const number = (value: number) => Number(decimalOf(value));

  /** A depth that is so many widths and a rest, most often none, a hair, or about the minimum rip. */
  const depths = fc.record({
    width: between(2.5, 10),
    rowCount: fc.integer({ min: 1, max: 120 }),
    rest: fc.oneof(fc.constant(0), fc.constant(1), fc.constant(-1), fc.constant(2000 * scale), between(0, 2.5)),
    gap: fc.oneof(fc.constant(0), between(0, 0.9)),
  });

  test('PLANK_ROWS and PLANK_LAST_ROW', () => {
    fc.assert(
      fc.property(depths, ({ width, rowCount, rest, gap }) => {
        const depth = rowCount * width + rest + 2 * gap;
        const [laid, plank] = [exact(depth - 2 * gap), exact(width)];
        fc.pre(laid >= plank);
        const [[rows, first, last]] = PLANK_ROWS(typed(depth), typed(width), typed(gap), '', units);
        const left = laid % plank;
        const isLaid = left >= system.step;
        expect(rows).toBe(Number(laid / plank) + (isLaid ? 1 : 0));
        const lastAfterFull = isLaid ? left : plank;
        const isShared = laid > plank && isLaid && left < system.minRip;
        const thousandth = Number(system.plankThousandth) * 1000;
        const [wantedFirst, wantedLast] = isShared
          ? [Number(left + plank) / 2, Number(left + plank) / 2]
          : [Number(plank), Number(lastAfterFull)];
        expect(first).toBeCloseTo(wantedFirst / thousandth, 9);
        expect(last).toBeCloseTo(wantedLast / thousandth, 9);
        expect(PLANK_LAST_ROW(typed(depth), typed(width), typed(gap), units)).toBe(Number(lastAfterFull) / thousandth);
      }),
      { seed: 101, numRuns: 1500 },
    );
  });

  test('PLANK_CUTS and PLANK_COMPARE: rows, and planks where rows are whole planks', () => {
    fc.assert(
      fc.property(depths, fc.integer({ min: 1, max: 2 }), between(14, 20), (given, planksInRow, plankLength) => {
        const { width, rest, gap } = given;
        const rowCount = Math.min(given.rowCount, 30);
        const depth = rowCount * width + rest + 2 * gap;
        const length = planksInRow * plankLength + 2 * gap;
        const laid = exact(depth - 2 * gap);
        fc.pre(laid >= exact(width));
        const rules = [...loose, ['expansion gap', typed(gap)], ['lay direction', 'length']];
        const room = [typed(length), typed(depth)] as const;
        const pieces = PLANK_CUTS(...room, typed(plankLength), typed(width), rules, units).slice(1);
        const left = laid % exact(width);
        const isLaid = left >= system.step;
        const wanted = Number(laid / exact(width)) + (isLaid ? 1 : 0);
        const rows = pieces.filter((line) => typeof line[0] === 'number');
        expect(rows[rows.length - 1][0]).toBe(wanted);
        expect(rows).toHaveLength(wanted * planksInRow);
        for (const line of rows) expect(line[2]).toBeCloseTo(number(plankLength), units === 'us' ? 3 : 2);
        if (isLaid) return;
        expect(rows.every((line) => String(line[7]) === '')).toBe(true);
        const products = [['A', typed(plankLength), typed(width)]];
        expect(PLANK_COMPARE(...room, products, rules, units)[1][1]).toBe(wanted * planksInRow);
      }),
      { seed: 102, numRuns: 60 },
    );
  });

  test('PLANK_COUNT and PLANK_OFFCUTS: runs of whole planks take those planks, and no piece is cut', () => {
    const runs = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(between(12, 60), runs, between(0, 0.4), (plank, counts, gap) => {
        const cells = column(...counts.map((count) => typed(count * plank + 2 * gap)));
        const rules = [...loose, ['expansion gap', typed(gap)]];
        const total = counts.reduce((sum, count) => sum + count, 0);
        expect(PLANK_COUNT(cells, typed(plank), rules, units)).toBe(total);
        const lines = PLANK_OFFCUTS(cells, typed(plank), rules, units).slice(1);
        expect(lines.map((line) => line[3])).toEqual(counts.map((count) => Math.max(0, count - 2)));
        expect(lines.every((line) => line[6] === 0)).toBe(true);
      }),
      { seed: 103, numRuns: 120 },
    );
  });

  test('PLANK_STAGGER: every pair of joints', () => {
    const rows = fc.record({
      plank: between(20, 50),
      firsts: fc.array(fc.integer({ min: 1, max: 999 }), { minLength: 2, maxLength: 4 }),
      stagger: between(1, 12),
      planksInRun: fc.integer({ min: 1, max: 6 }),
      exactly: fc.boolean(),
    });
    fc.assert(
      fc.property(rows, ({ plank, firsts, stagger, planksInRun, exactly }) => {
        // Half of them: each first piece exactly the stagger further than the one before, past the plank's end and round.
        const places = firsts.map((share) => Math.max(1, Math.floor((plank * share) / 1000)));
        const pieces = exactly ? places.map((_, i) => (places[0] + i * stagger) % plank || plank) : places;
        const run = planksInRun * plank;
        fc.pre(pieces.every((piece) => piece <= run));
        const verdicts = PLANK_STAGGER(column(...pieces.map(typed)), typed(plank), typed(stagger), typed(run), units);
        const joints = pieces.map((piece) =>
          Array.from({ length: planksInRun + 1 }, (_, k) => exact(piece) + BigInt(k) * exact(plank)).filter(
            (joint) => joint < exact(run),
          ),
        );
        const isFar = joints.map((own, i) =>
          i === 0 ? true : own.every((a) => joints[i - 1].every((b) => (a > b ? a - b : b - a) >= exact(stagger))),
        );
        expect((verdicts as string[][]).map(([verdict]) => verdict === 'OK')).toEqual(isFar);
      }),
      { seed: 104, numRuns: 1500 },
    );
  });

  test('PLANK_UNDERLAY: strips, and strips out of a roll', () => {
    const rooms = fc.record({
      roll: between(30, 60),
      overlap: fc.oneof(fc.constant(0), between(0, 4)),
      strips: fc.integer({ min: 1, max: 9 }),
      along: between(40, 200),
      rollsAlong: fc.integer({ min: 1, max: 4 }),
      hair: fc.constantFrom(0, 0, 1, -1),
    });
    fc.assert(
      fc.property(rooms, ({ roll, overlap, strips, along, rollsAlong, hair }) => {
        const across = strips * (roll - overlap) + overlap + hair;
        const rollLength = along * rollsAlong;
        const wanted = fewestRolls(exact(along), exact(across), {
          ...{ width: exact(roll), length: exact(rollLength), overlap: exact(overlap) },
        });
        const answer = PLANK_UNDERLAY(
          ...([along, across, roll, rollLength, overlap].map(typed) as [string, string, string, string]),
          units,
        );
        expect(answer).toBe(wanted);
      }),
      { seed: 105, numRuns: 1500 },
    );
  });

  test('PLANK_TRIM: every way to share out the pieces', () => {
    const cuts = fc.record({
      pieces: fc.array(between(10, 60), { minLength: 1, maxLength: 3 }),
      each: fc.integer({ min: 1, max: 3 }),
      kerf: fc.oneof(fc.constant(0), between(0, 0.2)),
      hair: fc.constantFrom(0, 0, 1, -1),
    });
    fc.assert(
      fc.property(cuts, ({ pieces, each, kerf, hair }) => {
        // A stick that the pieces fill to the last bit, or miss by a hair.
        const wanted = pieces.flatMap((piece) => Array.from({ length: each }, () => piece));
        const stock = pieces.reduce((sum, piece) => sum + piece + kerf, 0) - kerf + hair;
        fc.pre(wanted.every((piece) => piece <= stock));
        expect(PLANK_TRIM(column(...wanted.map(typed)), typed(stock), typed(kerf), units)).toBe(
          fewestBins(wanted.map(exact), exact(stock), exact(kerf)),
        );
      }),
      { seed: 106, numRuns: 800 },
    );
  });

  test('PLANK_BOXES: areas that fill their boxes', () => {
    const boxes = fc.record({
      coverage: fc.integer({ min: 100, max: 4000 }),
      count: fc.integer({ min: 1, max: 240 }),
      hair: fc.constantFrom(0, 0, 1, -1),
      waste: fc.integer({ min: 0, max: 2000 }),
    });
    fc.assert(
      fc.property(boxes, ({ coverage, count, hair, waste }) => {
        // Hundredths of a square foot or metre; waste in hundredths of a per cent.
        const area = coverage * count + hair;
        const answer = PLANK_BOXES(area / 100, coverage / 100, `${waste / 100}%`, units);
        expect(answer).toBe(Number(ceilDiv(BigInt(area) * BigInt(10_000 + waste), BigInt(coverage) * 10_000n)));
      }),
      { seed: 107, numRuns: 1000 },
    );
  });

  test('PLANK_LENGTH_TEXT: rounded once, halves away from zero', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_900_000 }), fc.integer({ min: 0, max: 9 }), (thousand, digit) => {
        // Near halves of a step, where rounding twice goes wrong: four decimals.
        const tenThousandths = 10 * thousand + digit;
        const size = (BigInt(tenThousandths) * system.plankThousandth) / 10n;
        const steps = (2n * size + system.step) / (2n * system.step);
        const text = PLANK_LENGTH_TEXT(Number(`${tenThousandths}e-4`), units) as string;
        expect(text).toBe(units === 'metric' ? `${steps} mm` : sixteenths(steps));
      }),
      { seed: 108, numRuns: 3000 },
    );
  });
});

/** Sixteenths of an inch with the fraction in lowest terms. */
function sixteenths(steps: bigint): string {
  const [whole, rest] = [steps / 16n, steps % 16n];
  const shared = [16n, 8n, 4n, 2n, 1n].find((by) => rest % by === 0n) as bigint;
  if (rest === 0n) return `${whole}"`;
  return `${whole > 0n ? `${whole} ` : ''}${rest / shared}/${16n / shared}"`;
}
