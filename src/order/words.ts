/**
 * A list of words in one cell or field: `Hall; Den`. A word that has a semicolon of its own, or begins with a double
 * mark, stands between double marks, and a double mark inside is written twice: `"Hall; upstairs"; Den`.
 */
import { isFilled } from '../geometry/lists';

/** The list as it stands in a cell; `wordsIn` gives it back, blank words left out. */
export function wordsText(words: readonly string[]): string {
  return words.map((word) => (/;|^\s*"/.test(word) ? `"${word.replace(/"/g, '""')}"` : word)).join('; ');
}

/** The words of a cell, spaces around them taken off. Marks that are not closed are part of the word: `12" board`. */
export function wordsIn(text: string): readonly string[] {
  const words: string[] = [];
  let rest = text;
  while (rest !== '') {
    const marked = MARKED.exec(rest);
    const taken = marked ?? (PLAIN.exec(rest) as RegExpExecArray);
    words.push(marked ? taken[1].replace(/""/g, '"') : taken[1]);
    rest = rest.slice(taken[0].length);
  }
  return words.map((word) => word.trim()).filter(isFilled);
}

const MARKED = /^\s*"((?:[^"]|"")*)"\s*(?:;|$)/;
const PLAIN = /^([^;]*)(?:;|$)/;
