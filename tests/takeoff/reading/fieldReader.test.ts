import { describe, expect, test } from 'vitest';
import { type FieldReader, fieldReader } from '../../../src/takeoff/reading/fieldReader';

type Kind = 'count' | 'number' | 'fraction' | 'percent' | 'price';

/** What is read, or the sentence why not. */
function read(kind: Kind, typed: string | number): number | string | null {
  const reader: FieldReader = fieldReader('us');
  const value = reader[kind]('field', 'Field', typed);
  return reader.problems.length > 0 ? reader.problems.map(({ text }) => text).join(' ') : value;
}

describe('a unit beside a number that has none', () => {
  test.each([
    ['count', '5 ft'],
    ['count', '5%'],
    ['count', '$5'],
    ['number', '12 kg'],
    ['number', '12 %'],
    ['percent', '5 ft'],
    ['fraction', '$5'],
    ['fraction', '5 kg'],
  ] as const)('a %s of %j is told', (kind, typed) => {
    const said = { count: 'a count', number: 'a number', percent: 'a percentage', fraction: 'a percentage', price: '' };
    expect(read(kind, typed)).toContain(`Field: "${typed}" is not ${said[kind]}.`);
  });

  test.each(['$5', '5 kr', ' CHF 5 ', 5])('a price of %j is 5', (typed) => {
    expect(read('price', typed)).toBe(5);
  });
});

describe('more than any floor has', () => {
  // 1e300 for a box made an order of no end.
  test.each(['price', 'number', 'count'] as const)('a %s above a billion is asked about', (kind) => {
    expect(read(kind, 1e9)).toBe(1e9);
    expect(read(kind, '1000000001')).toBe('Field: "1000000001" is more than a billion. Check what was typed.');
    expect(read(kind, 1e300)).toContain('is more than a billion');
  });
});

describe('all of it', () => {
  test.each(['100%', '100', 100])('%j is 100 per cent, and not a fraction below it', (typed) => {
    expect(read('percent', typed)).toBe(100);
    expect(read('fraction', typed)).toMatch(/^Field: "?100%?"? is not below 100 %\./);
  });

  test('a hair below is a fraction, a hair above is told as such', () => {
    expect(read('fraction', '99.95%')).toBeCloseTo(0.9995, 12);
    expect(read('fraction', '100.5%')).toContain('is more than 100 %');
    expect(read('percent', '100.5%')).toContain('is more than 100 %');
  });
});

// Pasted text brings marks that nobody sees: a zero-width space, a direction mark, a byte order mark.
describe.each(['', ' ', '\u200b', ' \u200e ', '\ufeff'])('a field that looks blank (%j)', (typed) => {
  test('is told where a length must be, and never read as 0', () => {
    const reader = fieldReader('us');
    reader.neededLength('length', 'Length', typed, 'room');
    reader.plankSide('plankWidth', 'Plank width', typed, 1e6);
    expect(reader.problems.map(({ text }) => text)).toEqual([
      expect.stringMatching(/^Length is blank\./),
      expect.stringMatching(/^Plank width is blank\./),
    ]);
  });

  test('is blank where nothing need be', () => {
    const reader = fieldReader('us');
    expect(reader.length('gap', 'Gap', typed, 'plank')).toBeNull();
    for (const kind of ['count', 'number', 'fraction', 'percent', 'price'] as const)
      expect(read(kind, typed)).toBeNull();
    expect(reader.problems).toEqual([]);
  });
});
