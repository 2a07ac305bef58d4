/** Entries of tables that the build leaves out of a bundle: which they may be. */
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import { withoutUnread } from '../src/unreadEntries.mjs';
import { addOnFiles } from './support/addOn';

const TABLE = { names: ['sentences', 'LINES'], forReaders: ['source'] };
const SOURCE = `
  const used = 1;
  const sentences = { blank: () => 'is blank', 'too long': () => 'is too long', method(a) { return a }, other: used };
  const LINES = [{ key: 'kerf', help: 'the cut', source: 'a book' }, { key: 'play', help: 'room', deep: { help: 1 } }];
  const untouched = { other: 1 };
`;

function keptOf(read: readonly string[]): unknown {
  const code = withoutUnread(SOURCE, TABLE, new Set(read));
  const kept = '[Object.keys(sentences), LINES.map((line) => Object.keys(line)), Object.keys(untouched)]';
  return JSON.parse(JSON.stringify(runInNewContext(`${code};${kept}`)));
}

describe('a table', () => {
  test('keeps what is read, and loses what is not', () => {
    expect(keptOf(['too long', 'key', 'other'])).toEqual([['too long', 'other'], [['key'], ['key']], ['other']]);
  });

  test('keeps all of an entry that is read', () => {
    expect(withoutUnread(SOURCE, TABLE, new Set(['deep']))).toContain('deep: { help: 1 }');
  });

  test('loses what is for readers of the sources, even where another thing has a field of that name', () => {
    expect(keptOf(['key', 'help', 'source'])).toEqual([
      [],
      [
        ['key', 'help'],
        ['key', 'help'],
      ],
      ['other'],
    ]);
  });

  test('that is no longer one stops the build', () => {
    expect(() => withoutUnread('const sentences = make()', TABLE, new Set())).toThrow('is no longer a table');
  });
});

describe('the built add-on', async () => {
  const files = await addOnFiles();

  // By hand: functions know rectangles only, and the form has its own words for a range.
  test.each([
    ['Code.js', 'Least distance between end joints', false],
    ['Sidebar.html', 'Least distance between end joints', true],
    ['Code.js', 'takes up the whole room', false],
    ['Sidebar.html', 'takes up the whole room', true],
    ['Code.js', 'is neither yes nor no', true],
    ['Sidebar.html', 'is neither yes nor no', false],
  ] as const)('%s: "%s" is there: %s', (name, words, isThere) => {
    // A long text goes on in the next line.
    expect(files[name].replaceAll('\\\n', '').includes(words)).toBe(isThere);
  });
});
