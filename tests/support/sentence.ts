import { expect } from 'vitest';
import { sentenceFault } from './sentenceFault';

/** What every sentence a person is shown must be, whatever it is about. */
export function expectSentence(sentence: string): void {
  expect(sentenceFault(sentence), sentence).toBeNull();
}
