/** Words that stand in no sentence, and in no cell. */
export const WORDS_OF_NO_SENTENCE = /undefined|NaN|\[object|vertex|index|\bnull\b|Infinity|Internal/;

/** What a sentence is not that every sentence must be, or null. */
export function sentenceFault(sentence: string): string | null {
  const word = WORDS_OF_NO_SENTENCE.exec(sentence);
  if (word) return `has "${word[0]}"`;
  // A cell that is quoted may have lines of its own.
  if (!/^[\p{L}_].*\.( \(and \d+ more\))?$/su.test(sentence))
    return 'does not begin with a word and end with a full stop';
  if (sentence.length <= 20) return 'is too short to say anything';
  return sentence.length >= 330 ? 'is too long to be read' : null;
}
