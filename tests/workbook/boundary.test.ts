/**
 * What passes between the sidebar and the script. Source: Apps Script reference, "google.script.run", parameters and
 * return values: numbers, booleans, strings, null, and objects and arrays of these.
 */
import { describe, expect, test } from 'vitest';
import { legalArguments, legalResult } from '../../src/workbook/boundary';
import { probeWorkbook } from '../support/probeWorkbook';

describe('an argument of a call', () => {
  test('is copied', () => {
    const entry = { name: 'Den', walls: [{ length: "12'" }] };
    const [copy] = legalArguments('fill', [entry]);
    expect(copy).toEqual(entry);
    expect(copy).not.toBe(entry);
  });

  test.each([
    ['a Date', new Date(0)],
    ['a function', () => 1],
    ['a Map', new Map()],
    ['a regular expression', /x/],
    ['a symbol', Symbol('x')],
    ['a Date inside an object', { when: [new Date(0)] }],
  ])('that is %s is refused', (_, value) => {
    expect(() => legalArguments('fill', [value])).toThrow(
      /google\.script\.run\.fill, argument 1: a \w+ cannot be passed/,
    );
  });

  test('that contains itself is refused', () => {
    const ring: Record<string, unknown> = {};
    ring.self = ring;
    expect(() => legalArguments('fill', [1, ring])).toThrow(/argument 2: an object that contains itself/);
  });

  test('may hold one object twice', () => {
    const twice = { a: 1 };
    expect(legalArguments('fill', [[twice, twice]])).toEqual([[{ a: 1 }, { a: 1 }]]);
  });

  test('has null for what is undefined in an array', () => {
    expect(legalArguments('fill', [[undefined, 1]])).toEqual([[null, 1]]);
  });
});

describe('a call', () => {
  test('answers a copy', () => {
    expect(probeWorkbook().workbook.runFromPage('echo', [{ a: ['b', 1, null, true] }])).toEqual({
      a: ['b', 1, null, true],
    });
  });

  test('that answers a Date fails', () => {
    expect(() => probeWorkbook().workbook.runFromPage('today', [])).toThrow(/return value: a Date cannot be passed/);
  });

  test('that answers nothing answers nothing', () => {
    expect(legalResult('fill', undefined)).toBeUndefined();
  });

  test('of a private function fails', () => {
    expect(() => probeWorkbook().workbook.runFromPage('private_', [])).toThrow('Script function not found: private_');
  });

  test('of a function that is not there fails', () => {
    expect(() => probeWorkbook().workbook.runFromPage('nowhere', [])).toThrow('Script function not found: nowhere');
  });

  test('passes on the message of a failure', () => {
    expect(() => probeWorkbook().workbook.runFromPage('fails', [])).toThrow('No room is entered.');
  });
});
