/**
 * Notes that a person put at cells of a tab that is filled again. Each goes where its words are now: to the same piece,
 * the same line, or the only cell of the same text.
 */
import type { Cell } from './block';
import { listedPieces } from './keptMarks';
import { cellToken } from './lineMemory';
import { linesOf } from './oldTab';
import type { TabAsRead } from './tabStore';

type Note = readonly [row: number, column: number, text: string];

export interface KeptNotes {
  readonly notes: readonly Note[];
  /** What to write of those whose place is gone. */
  readonly rest: readonly string[];
}

/** A tab as its notes are placed by it. */
interface Lines {
  /** Token by token, '' where a cell is blank. */
  readonly tokens: readonly (readonly string[])[];
  /** The key of the piece that is listed in a row. */
  readonly keys: ReadonlyMap<number, string>;
}

/** @param cells of the tab as it is about to be written, with what was kept at its foot */
export function notesAndRest(cells: readonly (readonly Cell[])[], old: TabAsRead, given: readonly Note[]): KeptNotes {
  const before = linesBefore(old);
  const after = {
    tokens: cells.map((row) => row.map(cellToken)),
    keys: pieceKeys(cells.map((row) => row.map(shownValue))),
  };
  const notes = new Map<string, Note>();
  const rest: string[] = [];
  for (const [row, column, text] of given) {
    const [newRow, newColumn] = placeOf(row, column, before, after) ?? [-1, -1];
    if (newRow < 0) {
      rest.push(`Note${nameOf(before, row)}: ${text}`);
      continue;
    }
    const key = `${newRow},${newColumn}`;
    const there = notes.get(key);
    notes.set(key, [newRow, newColumn, there ? `${there[2]}\n${text}` : text]);
  }
  return { notes: [...notes.values()], rest };
}

function linesBefore(old: TabAsRead): Lines {
  const tokens = linesOf(old).map(({ cells }) => {
    const line: string[] = [];
    for (const { column, token } of cells) line[column] = token;
    return Array.from(line, (token) => token ?? '');
  });
  return { tokens, keys: pieceKeys(old.cells) };
}

function pieceKeys(values: readonly (readonly unknown[])[]): ReadonlyMap<number, string> {
  return new Map(listedPieces(values).map(({ key, places }) => [Number(places[0].split(',')[0]), key]));
}

function shownValue({ value }: Cell): unknown {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'number') return value.number;
  return value.kind === 'tick' ? value.ticked : '';
}

/** Where the note is to stand now, or null where what it stood at is gone. */
function placeOf(row: number, column: number, before: Lines, after: Lines): readonly [number, number] | null {
  const own = before.tokens[row]?.[column] ?? '';
  const newRow = rowOf(row, before, after);
  // Of another size, it is another piece.
  if (newRow === undefined && before.keys.has(row)) return null;
  if (newRow !== undefined) return [newRow, columnOf({ row, column, newRow, own }, before, after)];
  return onlyPlace(own, before) && onlyPlace(own, after);
}

function rowOf(row: number, before: Lines, after: Lines): number | undefined {
  const key = before.keys.get(row);
  if (key !== undefined) return [...after.keys].find(([, one]) => one === key)?.[0];
  const line = wordsOf(before, row);
  // A blank line is known by nothing but its place.
  if (line === '') return wordsOf(after, row) === '' ? row : undefined;
  const same = rowsWith(line, wordsOf, after);
  const nth = rowsWith(line, wordsOf, before).indexOf(row);
  if (same.length > 0) return same[Math.min(nth, same.length - 1)];
  // A line of the order with other numbers in it, as many of them as there were.
  const first = firstOf(before, row);
  const [was, is] = [before, after].map((lines) => rowsWith(first, firstOf, lines));
  return was.length === is.length ? is[was.indexOf(row)] : undefined;
}

function rowsWith(text: string, partOf: (lines: Lines, row: number) => string, lines: Lines): readonly number[] {
  return lines.tokens.flatMap((_, row) => (partOf(lines, row) === text ? [row] : []));
}

const firstOf = (lines: Lines, row: number): string => wordsOf(lines, row).split('\n')[0];

/** What stands in a line, boxes left out. */
function wordsOf({ tokens }: Lines, row: number): string {
  return (tokens[row] ?? []).filter((token) => token !== '' && token !== 'TRUE').join('\n');
}

interface OldPlace {
  readonly row: number;
  readonly column: number;
  readonly newRow: number;
  /** What stood in the cell itself. */
  readonly own: string;
}

/** In a list the column of the same heading, elsewhere that of the same text; else the same one. */
function columnOf({ row, column, newRow, own }: OldPlace, before: Lines, after: Lines): number {
  const heading = headingsOver(before, row)[column] ?? '';
  if (heading !== '') {
    const headed = headingsOver(after, newRow).indexOf(heading);
    if (headed >= 0) return headed;
  }
  const line = after.tokens[newRow] ?? [];
  const found = own === '' || line[column] === own ? -1 : line.indexOf(own);
  return found < 0 ? column : found;
}

function headingsOver({ tokens }: Lines, row: number): readonly string[] {
  const isHeading = (line: readonly string[]) => line.includes('Piece') && line.includes('Length');
  return tokens.slice(0, row).reverse().find(isHeading) ?? [];
}

/** The only cell with this text, or null where there is none or there are several. */
function onlyPlace(text: string, { tokens }: Lines): readonly [number, number] | null {
  if (text === '') return null;
  const places = tokens.flatMap((line, row) => line.flatMap((token, c) => (token === text ? [[row, c] as const] : [])));
  return places.length === 1 ? places[0] : null;
}

/** A line by its first words, such as the number of a piece. */
function nameOf(lines: Lines, row: number): string {
  const first = firstOf(lines, row);
  return first === '' ? '' : ` at ${first}`;
}
