/** Calls of spreadsheet services that the page asks the server to make, for the check of this spreadsheet. */

/**
 * On what, which method, with what. Whatever is known has a number: first what a trial begins with (`KNOWN_AT_FIRST`), then what
 * each call gave, in order. An argument `{ known: 9 }` stands for what has the number 9.
 */
export type TriedCall = readonly [on: number, method: string, given: readonly unknown[]];

/** Calls on a tab of their own, and the numbers of what is to be told of it. */
export type TriedGroup = readonly [calls: readonly TriedCall[], wanted: readonly number[]];

/** What was wanted, as JSON has it (a date is a text), or what the service said when a call failed. */
export type TriedAnswers = { readonly answers: readonly unknown[] } | { readonly failed: string };

/** What every trial begins with, by its number. `given` is an empty list, `front` the tab that was in front. */
export const KNOWN_AT_FIRST = [
  ...['app', 'spreadsheet', 'sheet', 'front', 'utilities', 'locks', 'session', 'html', 'clock', 'given'],
] as const;

/** Key and value of the mark of a tab that is still being written, or tried on: whoever fills next removes it. */
export const UNFINISHED_MARK = ['plank-ledger', 'unfinished'] as const;
