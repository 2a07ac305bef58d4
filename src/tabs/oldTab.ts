/** The lines of a tab as it was read before it is filled again: what of each is ours and what a person has put in. */
import { madeOf } from '../geometry/lists';
import { dateText, isDate } from './dates';
import { inputEntry, isRemembered, lineEntry, tokenOf } from './lineMemory';
import type { CellContent, TabAsRead } from './tabStore';

/** Stands above what a person wrote whose place is gone. */
export const KEPT_HEADING = 'Kept from before';
/** How the line at the top of a tab that no longer holds goes on after its first words. */
export const NO_LONGER_HOLDS = /^This (list|floor plan|order) no longer holds: /;

/** A cell by its row and column from 0. */
export function placeKey(row: number, column: number): string {
  return `${row},${column}`;
}

/** A cell that a person put in or changed. */
export interface OwnCell {
  readonly column: number;
  readonly content: CellContent;
  readonly token: string;
}

export interface OldLine {
  /** Index in the tab as it was read. */
  readonly row: number;
  /** What of it we wrote, from left to right; nothing where the line is the person's, or can no longer be told. */
  readonly ours: readonly string[];
  readonly own: readonly OwnCell[];
}

/** Our choice: more ways than this to part a line into ours and theirs are not tried; it is kept whole then. */
const MOST_TRIES = 4000;

/**
 * The lines in which a person has put something.
 *
 * @param isFresh whether a line, by its texts, is one of the tab as it is about to be written
 */
export function touchedLines(old: TabAsRead, isFresh: (tokens: readonly string[]) => boolean): readonly OldLine[] {
  const isOurs = (tokens: readonly string[]) =>
    isRemembered(old.memory, lineEntry(tokens)) || isFresh(tokens) || isPutThere(tokens);
  return linesOf(old).flatMap(({ row, cells }): OldLine[] => {
    const tokens = cells.map((cell) => cell.token);
    if (cells.length === 0) return [];
    const apart = ownAmong(tokens, isOurs);
    const ours = tokens.filter((_, i) => !apart.includes(i));
    const isInput = ({ token }: OwnCell) => isRemembered(old.memory, inputEntry(ours, '', token));
    const own = apart.map((i) => cells[i]).filter((cell) => ours.length === 0 || !isInput(cell));
    return own.length === 0 ? [] : [{ row, ours, own }];
  });
}

/** Whether a line of ours is one that comes and goes, in a tab that is about something else. */
export function isPutThere(tokens: readonly string[]): boolean {
  return tokens.length === 1 && (tokens[0] === KEPT_HEADING || NO_LONGER_HOLDS.test(tokens[0]));
}

/** The lines of a tab without what was kept at its foot, so that it is not read as ours. */
export function aboveKept<Row extends readonly unknown[]>(cells: readonly Row[]): readonly Row[] {
  const at = cells.findIndex((row) => row[0] === KEPT_HEADING);
  return at < 0 ? cells : cells.slice(0, at);
}

/** Every cell that is not blank, line by line. A formula of a person's is kept as text: moved, it would read others. */
export function linesOf(old: TabAsRead): readonly { readonly row: number; readonly cells: readonly OwnCell[] }[] {
  const formulas = new Map(old.formulas.map(([row, column, text]) => [`${row},${column}`, text]));
  return old.cells.map((contents, row) => ({
    row,
    cells: contents.flatMap((content, column): OwnCell[] => {
      const formula = formulas.get(`${row},${column}`) ?? '';
      const shown = isDate(content) ? dateText(content as Date) : content;
      const token = tokenOf(shown, formula);
      return token === '' ? [] : [{ column, content: formula === '' ? shown : formula, token }];
    }),
  }));
}

/** What we wrote of one line of the tab; nothing where the line is not ours. */
export function ourTokens(old: TabAsRead, row: number): readonly string[] {
  const tokens = linesOf(old)[row].cells.map((cell) => cell.token);
  const own = ownAmong(tokens, (line) => isRemembered(old.memory, lineEntry(line)));
  return tokens.filter((_, i) => !own.includes(i));
}

/** Indices of the fewest tokens without which the line is ours; all of them when it is not. */
function ownAmong(tokens: readonly string[], isOurs: (tokens: readonly string[]) => boolean): readonly number[] {
  const all = tokens.map((_, i) => i);
  if (isOurs(tokens)) return [];
  // Most often something was written to the right of a line.
  for (let kept = tokens.length - 1; kept > 0; kept--) if (isOurs(tokens.slice(0, kept))) return all.slice(kept);
  let triesLeft = MOST_TRIES;
  for (let size = 1; size < tokens.length; size++) {
    for (const removed of choicesOf(tokens.length, size)) {
      if (triesLeft-- === 0) return all;
      if (isOurs(tokens.filter((_, i) => !removed.includes(i)))) return removed;
    }
  }
  return all;
}

/** Every choice of `size` among so many, in order. */
function* choicesOf(count: number, size: number): Generator<readonly number[]> {
  const chosen = madeOf(size, (i) => i);
  for (;;) {
    yield [...chosen];
    let last = size - 1;
    while (last >= 0 && chosen[last] === count - size + last) last--;
    if (last < 0) return;
    chosen[last]++;
    for (let i = last + 1; i < size; i++) chosen[i] = chosen[i - 1] + 1;
  }
}
