import fc from 'fast-check';
import * as mathjs from 'mathjs';
import { describe, expect, test } from 'vitest';
import { ceilToStep, floorToStep, inchesOf, mmOf, type Units } from '../../../src/geometry/length';
import {
  bareUnitName,
  type LengthScale,
  lengthText,
  readExactly,
  readLength,
  readOffset,
} from '../../../src/takeoff/text/lengthText';

// 1 in = 25.4 mm exactly (International Yard and Pound Agreement, 1 July 1959), 1 tick = 1/640 mm.
const INCH = 16_256;
const FOOT = 12 * INCH;
const MM = 640;
const METRE = 1000 * MM;

function ticksOf(typed: string | number, scale: LengthScale = 'plank', units: Units = 'us'): number | string {
  const read = readLength(typed, scale, units);
  return read.ok ? read.ticks : read.why;
}

describe('text with its own units means the same wherever it stands', () => {
  const rows: readonly (readonly [string, number])[] = [
    ['12\' 6 1/2"', 150.5 * INCH],
    ['12\'6 1/2"', 150.5 * INCH],
    ['12\'-6 1/2"', 150.5 * INCH],
    ['12\' - 6 1/2"', 150.5 * INCH],
    ['12\'-6-1/2"', 150.5 * INCH],
    ['12ft 6.5in', 150.5 * INCH],
    ['12 FT. 6.5 IN.', 150.5 * INCH],
    ['12 feet 6 1/2 inches', 150.5 * INCH],
    ["12' 6 1/2", 150.5 * INCH],
    ['150 1/2"', 150.5 * INCH],
    ['150-1/2"', 150.5 * INCH],
    ['6-1/2"', 6.5 * INCH],
    ['6–1/2"', 6.5 * INCH],
    ['6 1 / 2"', 6.5 * INCH],
    ['6½"', 6.5 * INCH],
    ['6 ½ in', 6.5 * INCH],
    ['6-½"', 6.5 * INCH],
    ['6 1⁄2"', 6.5 * INCH],
    ['1/2"', INCH / 2],
    ['1 / 2 in', INCH / 2],
    ['½"', INCH / 2],
    ['⅝"', (5 * INCH) / 8],
    ['3/2"', 1.5 * INCH],
    ['127/128"', 127 * 127],
    ['12’ 6”', 150 * INCH],
    ['12′ 6″', 150 * INCH],
    ["12' 6''", 150 * INCH],
    ['12´ 6´´', 150 * INCH],
    ['12\u00a0ft\u202f6\u00a0in', 150 * INCH],
    ['  12 \'   6  "  ', 150 * INCH],
    ["12'", 12 * FOOT],
    ['1 foot', FOOT],
    ['3 FT', 3 * FOOT],
    ['12.5 ft', 12.5 * FOOT],
    ['7 1/4 feet', 7.25 * FOOT],
    ['+6"', 6 * INCH],
    ['4 yd', 12 * FOOT],
    ['1 yard', 3 * FOOT],
    ['3 yd 2 ft 6 in', 11.5 * FOOT],
    ['3.81 m', 3810 * MM],
    ['3,81 m', 3810 * MM],
    ['3.81m', 3810 * MM],
    ['3 M', 3 * METRE],
    ['3 metres', 3 * METRE],
    ['3 Meters', 3 * METRE],
    ['381 cm', 3810 * MM],
    ['381 centimetres', 3810 * MM],
    ['3810mm', 3810 * MM],
    ['3810 Mm', 3810 * MM],
    ['3 810 mm', 3810 * MM],
    ['1.234,5 mm', 1234.5 * MM],
    ['1,234.5 mm', 1234.5 * MM],
    ['0,125 m', 125 * MM],
    ['12,5 mm', 12.5 * MM],
    [',5 m', 500 * MM],
    ['.5 m', 500 * MM],
    ['3 m 81 cm', 3810 * MM],
    ['3m 81cm', 3810 * MM],
    ['3 m 810 mm', 3810 * MM],
    ['3 m 81 cm 5 mm', 3815 * MM],
    ['2,5 cm', 25 * MM],
    ['0 m', 0],
    ['0"', 0],
  ];

  test.each(rows)('%s', (typed, ticks) => {
    for (const scale of ['room', 'plank'] as const) {
      for (const units of ['us', 'metric'] as const) expect(ticksOf(typed, scale, units)).toBe(ticks);
    }
  });
});

test.each([
  ['room', 'us', FOOT],
  ['room', 'metric', METRE],
  ['plank', 'us', INCH],
  ['plank', 'metric', MM],
] as const)('a bare number at %s scale in %s units', (scale, units, unit) => {
  expect(ticksOf(12.5, scale, units)).toBe(12.5 * unit);
  expect(ticksOf('12.5', scale, units)).toBe(12.5 * unit);
  expect(ticksOf('12,5', scale, units)).toBe(12.5 * unit);
  expect(ticksOf('12 1/2', scale, units)).toBe(12.5 * unit);
  expect(ticksOf('1/2', scale, units)).toBe(unit / 2);
});

// 12 + 1/3 has no 15 digits: a sum of the sheet's own stays the number it is, to the last bit; 40.1 is that decimal.
test('a number that a sheet worked out is that number, and one that was typed is that decimal', () => {
  expect(readExactly(12 + 1 / 3, 'plank', 'us')).toEqual({ ok: true, exact: { n: (12 + 1 / 3) * INCH, d: 1 } });
  expect(readExactly(40.1, 'plank', 'us')).toEqual({ ok: true, exact: { n: 401 * INCH, d: 10 } });
});

describe('what is not one length says why', () => {
  test.each([
    ['', 'blank'],
    ['   ', 'blank'],
    ['\u00a0', 'blank'],
    ['5/8/2026', 'date'],
    ['2026-05-08', 'date'],
    ['8-May', 'date'],
    ['May 8', 'date'],
    ['8.5.2026', 'date'],
    ['#REF!', 'error value'],
    ['#N/A', 'error value'],
    ['twelve feet', 'not a length'],
    ['12-6', 'not a length'],
    // Thousands set off twice are 1,234,567 mm; a group of two is none.
    ['1.234.567 mm', 'too long'],
    ['1,234,567 mm', 'too long'],
    ['1.234.56 mm', 'not a length'],
    ['1,234,56 mm', 'not a length'],
    ['12 - 6', 'not a length'],
    ['12 6"', 'not a length'],
    ['12 6 1/2"', 'not a length'],
    ['12-6-1/2"', 'not a length'],
    ['6 - 1/2"', 'not a length'],
    ["12' x 14'", 'not a length'],
    ["12'-", 'not a length'],
    ['12\'--6"', 'not a length'],
    ['12" 6"', 'not a length'],
    ['6" 12\'', 'not a length'],
    ["12' 6'", 'not a length'],
    ['3 m 81', 'not a length'],
    ['3 m - 81 cm', 'not a length'],
    ['3 m 5"', 'not a length'],
    ['12.5\' 3"', 'not a length'],
    ['6 3/2"', 'not a length'],
    ['6.5 1/2"', 'not a length'],
    ['1/0"', 'not a length'],
    ['1/2/4"', 'not a length'],
    ['=1+1', 'not a length'],
    ['10%', 'not a length'],
    ['"', 'not a length'],
    ['ft', 'not a length'],
    ['1.2.3,4 m', 'not a length'],
    ['12,34,567 mm', 'not a length'],
    ['12 ft + 6 in', 'not a length'],
    ['2*3 m', 'not a length'],
    ['12 m2', 'not a length'],
    ['1,234 mm', 'two readings'],
    ['1,234"', 'two readings'],
    ['12\' 14"', 'part too big'],
    ['12\' 12"', 'part too big'],
    ['3 m 110 cm', 'part too big'],
    ['3 yd 4 ft', 'part too big'],
    ['12 apples', 'unknown unit'],
    ['12 kg', 'unknown unit'],
    ['5 sqft', 'unknown unit'],
    ['-6"', 'negative'],
    ['−6"', 'negative'],
    ['–6"', 'negative'],
    ['-0.001 mm', 'negative'],
    ['101 m', 'too long'],
    ['1e9 mm', 'too long'],
    ['999999999999999999999999 m', 'too long'],
    ["100000'", 'too long'],
    ['3 miles', 'too long'],
  ])('%j: %s', (typed, why) => {
    expect(ticksOf(typed)).toBe(why);
  });

  test.each([
    [Number.NaN, 'not finite'],
    [Number.POSITIVE_INFINITY, 'not finite'],
    [Number.NEGATIVE_INFINITY, 'not finite'],
    [-1, 'negative'],
    [1e308, 'too long'],
    [3938, 'too long'],
  ])('the number %s: %s', (typed, why) => {
    expect(ticksOf(typed)).toBe(why);
  });

  test('100 m is the longest length', () => {
    expect(ticksOf('100 m')).toBe(100 * METRE);
    expect(ticksOf('100.01 m')).toBe('too long');
  });

  test('an offset may lie to either side', () => {
    expect(readOffset('-6 1/2"', 'room', 'us')).toEqual({ ok: true, ticks: -6.5 * INCH });
    expect(readOffset(-2, 'room', 'us')).toEqual({ ok: true, ticks: -2 * FOOT });
    expect(readOffset('-0', 'room', 'us')).toEqual({ ok: true, ticks: 0 });
    expect(readOffset('-0.0001 mm', 'room', 'us')).toEqual({ ok: true, ticks: 0 });
  });
});

describe('other units come from the unit library', () => {
  // 1 rod = 5.0292 m, 1 chain = 20.1168 m, 1 link = 0.201168 m: NIST SP 811 App. B.8 with the international foot.
  test.each([
    ['2 rods', 10_058.4 * MM],
    ['1 chain', 20_116.8 * MM],
    ['3 dm', 300 * MM],
    ['1.5e3 mm', 1500 * MM],
    ['0.05 km', 50 * METRE],
  ])('%s', (typed, ticks) => {
    expect(ticksOf(typed)).toBe(ticks);
  });
});

test.each([
  ['room', 'us', 'feet'],
  ['room', 'metric', 'metres'],
  ['plank', 'us', 'inches'],
  ['plank', 'metric', 'millimetres'],
] as const)('a bare number at %s scale in %s units is told in %s', (scale, units, name) => {
  expect(bareUnitName(scale, units)).toBe(name);
});

test('25.4 mm are an inch', () => {
  expect([inchesOf(INCH), mmOf(INCH), mmOf(MM), inchesOf(FOOT)]).toEqual([1, 25.4, 1, 12]);
});

test.each([
  [10, 4, 8, 12],
  [12, 4, 12, 12],
  [13, 4, 12, 16],
  [0, 4, 0, 0],
])('%d lies between multiples of %d: %d and %d', (length, step, below, above) => {
  expect([floorToStep(length, step), ceilToStep(length, step)]).toEqual([below, above]);
});

describe('against mathjs as an oracle', () => {
  const options = { seed: 20_260_508, numRuns: 400 };
  const fractionOf = fc
    .constantFrom(2, 4, 8, 16, 32, 64, 128)
    .chain((d) => fc.integer({ min: 1, max: d - 1 }).map((n) => [n, d] as const));

  test('feet, inches and fractions are exact to 1/128 in', () => {
    const feetInches = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 11 }), fractionOf);
    fc.assert(
      fc.property(
        feetInches,
        fc.constantFrom("' ", "'-", ' ft ', "'"),
        fc.constantFrom(' ', '-'),
        (sum, mark, dash) => {
          const [feet, inches, [n, d]] = sum;
          const exact = mathjs.add(mathjs.fraction(12 * feet + inches), mathjs.fraction(n, d)) as mathjs.Fraction;
          const ticks = Number(mathjs.number(mathjs.multiply(exact, INCH) as mathjs.Fraction));
          expect(ticksOf(`${feet}${mark}${inches}${dash}${n}/${d}"`)).toBe(ticks);
        },
      ),
      options,
    );
  });

  test('decimals in every unit agree with exact fractions, rounded once', () => {
    const units = fc.constantFrom(['mm', 1], ['cm', 10], ['m', 1000], ['in', 25.4], ['ft', 304.8], ['yd', 914.4]);
    const decimals = fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 9999 }));
    fc.assert(
      fc.property(units, decimals, fc.constantFrom('.', ','), ([word, mm], [whole, part], mark) => {
        const places = String(part).padStart(4, '0');
        const value = mathjs.fraction(`${whole}.${places}`);
        const exact = mathjs.multiply(mathjs.multiply(value, mathjs.fraction(mm)), MM) as mathjs.Fraction;
        const nearest = Math.floor(mathjs.number(mathjs.add(exact, mathjs.fraction(1, 2)) as mathjs.Fraction));
        expect(ticksOf(`${whole}${mark}${places} ${word}`)).toBe(nearest);
      }),
      options,
    );
  });

  test('number and unit agree with its unit reader to half a tick', () => {
    const units = fc.constantFrom('mm', 'cm', 'm', 'in', 'ft', 'yd', 'feet', 'inches', 'rod', 'link', 'dm');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 19_000 }), units, (thousandths, unit) => {
        const text = `${thousandths / 1000} ${unit}`;
        const expected = mathjs.unit(text).toNumber('mm') * MM;
        expect(Math.abs((ticksOf(text) as number) - expected)).toBeLessThan(0.500_001);
      }),
      options,
    );
  });

  test('any text is read or refused, never thrown at', () => {
    const words = fc.constantFrom('12', "'", '"', ' ', '-', '1/2', 'ft', 'm', 'in', '.', ',', '½', 'e', '/', '0', 'x');
    const texts = fc.oneof(
      fc.string(),
      fc.array(words, { maxLength: 8 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const read = readLength(text, 'room', 'us');
        expect(read.ok ? Number.isSafeInteger(read.ticks) && read.ticks >= 0 : read.why !== undefined).toBe(true);
      }),
      { ...options, numRuns: 3000 },
    );
  });
});

describe('lengths as they are shown', () => {
  test.each([
    [150.5 * INCH, 'us', 'room', '12\' 6 1/2"'],
    [12 * FOOT, 'us', 'room', '12\' 0"'],
    [6.5 * INCH, 'us', 'room', '6 1/2"'],
    [150.5 * INCH, 'us', 'piece', '150 1/2"'],
    [INCH / 2, 'us', 'piece', '1/2"'],
    [6 * INCH, 'us', 'piece', '6"'],
    [0, 'us', 'piece', '0"'],
    [(6 + 5 / 16) * INCH, 'us', 'piece', '6 5/16"'],
    [(6 + 1 / 32) * INCH, 'us', 'piece', '6 1/16"'],
    [(6 + 1 / 32) * INCH - 1, 'us', 'piece', '6"'],
    [(11 + 31 / 32) * INCH, 'us', 'room', '1\' 0"'],
    [-6.5 * INCH, 'us', 'piece', '-6 1/2"'],
    [3810 * MM, 'metric', 'room', '3.81 m'],
    [4 * METRE, 'metric', 'room', '4 m'],
    [5 * MM, 'metric', 'room', '0.005 m'],
    [3810 * MM, 'metric', 'piece', '3810 mm'],
    [3810.5 * MM, 'metric', 'piece', '3811 mm'],
    [3810.5 * MM - 1, 'metric', 'piece', '3810 mm'],
    [-100, 'metric', 'piece', '0 mm'],
    [100 * METRE, 'metric', 'room', '100 m'],
  ] as const)('%d ticks, %s, %s: %s', (ticks, units, style, text) => {
    expect(lengthText(ticks, units, style)).toBe(text);
  });

  test('what is shown reads back as the nearest 1/16 in or millimetre', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 64_000_000 }),
        fc.constantFrom('us' as const, 'metric' as const),
        fc.constantFrom('room' as const, 'piece' as const),
        (ticks, units, style) => {
          const step = units === 'us' ? INCH / 16 : MM;
          const read = readLength(lengthText(ticks, units, style), 'plank', units === 'us' ? 'metric' : 'us');
          // The longest length may be shown rounded up past the limit, by less than half a step.
          if (!read.ok) return ticks > 64_000_000 - step;
          return read.ticks % step === 0 && Math.abs(read.ticks - ticks) <= step / 2;
        },
      ),
      { seed: 7, numRuns: 500 },
    );
  });
});
