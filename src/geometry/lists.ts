/** What is asked of lists again and again. */

/** The last entry of a list that has one. */
export function lastOf<T>(list: readonly T[]): T {
  return list[list.length - 1];
}

/** Of corners, walls and edges, which go round: the entry after the one at `index`. */
export function entryAfter<T>(round: readonly T[], index: number): T {
  return round[(index + 1) % round.length];
}

/** The entry before the one at `index`, going round. */
export function entryBefore<T>(round: readonly T[], index: number): T {
  return round[(index + round.length - 1) % round.length];
}

/** What `amountOf` gives for each entry, added up; 0 of an empty list. */
export function sumOf<T>(list: readonly T[], amountOf: (entry: T, index: number) => number): number {
  let sum = 0;
  for (let i = 0; i < list.length; i++) sum += amountOf(list[i], i);
  return sum;
}

/** Numbers added up. */
export function addedUp(numbers: readonly number[]): number {
  return sumOf(numbers, (number) => number);
}

/** The entry, of a list that has one, for which `amountOf` gives least; the first of several. */
export function leastBy<T>(list: readonly T[], amountOf: (entry: T) => number): T {
  return list.reduce((best, entry) => (amountOf(entry) < amountOf(best) ? entry : best));
}

/** As many entries as asked for, each made from its place, from 0; none of a part of one. */
export function madeOf<T>(count: number, make: (index: number) => T): T[] {
  const made: T[] = [];
  for (let i = 0; i + 1 <= count; i++) made.push(make(i));
  return made;
}

/** Each once, in the order in which they come first. */
export function distinct<T>(list: Iterable<T>): T[] {
  return [...new Set(list)];
}

/** For texts of a list: those that are blank are left out. */
export function isFilled(text: string): boolean {
  return text !== '';
}
