import { expect } from 'vitest';

/** What every sentence a person is shown must be, whatever it is about. */
export function expectSentence(sentence: string): void {
  expect(sentence).not.toMatch(/undefined|NaN|\[object|vertex|index|\bnull\b|Infinity|Internal/);
  expect(sentence).toMatch(/^[\p{L}_].*\.( \(and \d+ more\))?$/u);
  expect(sentence.length).toBeGreaterThan(20);
  expect(sentence.length).toBeLessThan(330);
}
