import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wordsIn, wordsText } from '../../src/order/words';

describe('a list of words in one cell', () => {
  test.each([
    [['Hall', 'Den'], 'Hall; Den'],
    [['Hall; upstairs', 'Den'], '"Hall; upstairs"; Den'],
    [['"Blue" room', 'Den'], '"""Blue"" room"; Den'],
    [['Room of 12"', 'Den'], 'Room of 12"; Den'],
  ])('%j is written %s, and read again', (words, text) => {
    expect(wordsText(words)).toBe(text);
    expect(wordsIn(text)).toEqual(words);
  });

  test.each([
    ['clear the hall ;; keys;', ['clear the hall', 'keys']],
    ['"not closed; Den', ['"not closed', 'Den']],
    ['"Hall" upstairs; Den', ['"Hall" upstairs', 'Den']],
    ['', []],
  ])('%j as typed is %j', (typed, words) => {
    expect(wordsIn(typed)).toEqual(words);
  });

  test('any words come back as they were', () => {
    const word = fc
      .array(fc.constantFrom('a', 'B', ';', '"', ' ', ',', '=', '12'), { minLength: 1, maxLength: 8 })
      .map((parts) => parts.join('').trim())
      .filter((text) => text !== '');
    fc.assert(
      fc.property(fc.array(word, { maxLength: 5 }), (words) => {
        expect(wordsIn(wordsText(words))).toEqual(words);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
