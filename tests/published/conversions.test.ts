/**
 * Units against their published definitions. "exact" below is as printed: boldface in NIST SP 811 Appendix B, underlined
 * in NIST Handbook 44 Appendix C.
 */
import { describe, expect, test } from 'vitest';
import { PLANK_AREA, PLANK_BOXES, PLANK_LENGTH, PLANK_LENGTH_TEXT } from '../../src/sheet/functions';

describe('lengths', () => {
  test.each([
    // International Yard and Pound Agreement, 1 July 1959: 1 yd = 0.9144 m exactly; 1 in = 25.4 mm exactly.
    ['1 in', 25.4],
    ['1 yd', 914.4],
    // NIST SP 811 App. B: 1 ft = 3.048 E-01 m, exact.
    ['1 ft', 304.8],
    // NIST Handbook 44 App. C: 1 rod = 5.0292 m, 1 chain = 20.1168 m, 1 link = 0.201168 m, of the international foot.
    ['1 rod', 5029.2],
    ['1 chain', 20_116.8],
    ['10 links', 2011.68],
    ['1 m', 1000],
    ['1 cm', 10],
  ])('%s is %s mm', (text, millimetres) => {
    expect(PLANK_LENGTH(text, 'metric')).toBeCloseTo(millimetres, 2);
  });

  test('inch, foot, yard and metre are exact', () => {
    expect(PLANK_LENGTH('1 in', 'metric')).toBe(25.4);
    expect(PLANK_LENGTH('1 ft', 'metric')).toBe(304.8);
    expect(PLANK_LENGTH('1 yd', 'metric')).toBe(914.4);
    expect(PLANK_LENGTH('25.4 mm')).toBe(1);
    expect(PLANK_LENGTH('0.9144 m')).toBe(36);
  });

  test('sixty-fourths of an inch lose nothing, either way', () => {
    // From an inch up as a mixed number: 65/64 may be 6 5/64 without its space.
    for (let n = 0; n <= 640; n++) {
      const text = n < 65 ? `${n}/64"` : `${Math.floor(n / 64)} ${n % 64}/64"`;
      expect(PLANK_LENGTH(text)).toBe(n / 64);
    }
    for (let mm = 0; mm <= 640; mm++) expect(PLANK_LENGTH(`${mm} mm`, 'metric')).toBe(mm);
  });

  // NIST Metric Style Guide LC 1137 (10 Oct 2000), as quoted: convert exactly, then round once to what is meant.
  test('36 in is 91 cm and 40.1 in is 101.9 cm, rounded once at the end', () => {
    const centimetres = (text: string) => (PLANK_LENGTH(text, 'metric') as number) / 10;
    expect(centimetres('36 in')).toBe(91.44);
    expect(Math.round(centimetres('36 in'))).toBe(91);
    expect(centimetres('40.1 in')).toBe(101.854);
    expect(Math.round(centimetres('40.1 in') * 10) / 10).toBe(101.9);
  });

  test('shown once rounded: 40.1 in is 1019 mm', () => {
    expect(PLANK_LENGTH_TEXT('40.1 in', 'metric')).toBe('1019 mm');
  });
});

describe('areas', () => {
  test.each([
    // NIST SP 811 App. B.8: 1 ft2 = 9.290 304 E-02 m2, exact.
    ['1 ft', '1 ft', 0.09290304],
    // 25.4 mm squared.
    ['1 in', '1 in', 0.00064516],
    // NIST Handbook 44 App. C: 1 sq yd = 0.836 127 36 m2 = 9 sq ft.
    ['1 yd', '1 yd', 0.83612736],
  ])('%s by %s is %s m2', (length, width, area) => {
    expect(PLANK_AREA(length, width, '', 'metric')).toBeCloseTo(area, 15);
  });

  test.each([
    ['1 sq yd', '9 sq ft', 1],
    ['1 sq ft', '144 sq in', 1],
    ['1 m2', '10000 cm2', 1],
    // 0.092 903 04 m2, exact: a hundred of them are a box, and the least bit more is two.
    ['9.290304 m²', '100 sq ft', 1],
    ['9.290305 m²', '100 sq ft', 2],
    // NIST Handbook 44 App. C: 1 acre = 43,560 sq ft exactly.
    ['1 acre', '43560 ft2', 1],
    ['43560.001 sq. ft.', '1 acre', 2],
    // 1 hectare = 10,000 m2.
    ['0.5 hectare', '5000 square metres', 1],
  ])('%s fills boxes of %s: %s', (area, coverage, boxes) => {
    expect(PLANK_BOXES(area, coverage)).toBe(boxes);
  });

  // The trade's "square" is 100 sq ft (This Old House, photo article on estimating, item 19).
  test('a square of 10 ft by 10 ft is 100', () => {
    expect(PLANK_AREA(10, 10)).toBe(100);
  });
});
