/**
 * What a file has no place for (the marks of tabs, the rooms, notes, full names) goes out in a hidden tab, as texts cut
 * into pieces that a cell can hold. Beside them stands, for each tab, a formula that points at it: every program keeps
 * that right when a person renames the tab. The reasons stand in DEVELOPERS.md.
 */
import { FileProblem } from './problem';

/** Of the hidden tab. */
export const KEPT_TAB = 'Plank Ledger keeps';
const FORMAT = 'plank-ledger kept';
const VERSION = 1;
/** A cell holds 32,767 letters. Source: ECMA-376, and the major spreadsheets' stated limits. */
const PIECE = 30_000;

export interface KeptTabEntry {
  readonly id: string;
  readonly name: string;
  /** As it stands in the file: a file takes shorter names, with fewer characters. */
  readonly fileName: string;
}

export interface Kept {
  readonly tabs: readonly KeptTabEntry[];
  readonly texts: Readonly<Record<string, string>>;
  /** Whether notes went out as comments too: what the file has of them then counts, also that one is gone. */
  readonly notesAreComments: boolean;
}

/** The hidden tab's cells, by their addresses. */
export function keptCells(kept: Kept): Readonly<Record<string, string>> {
  const text = JSON.stringify({ format: FORMAT, version: VERSION, ...kept });
  const cells: Record<string, string> = {};
  for (let i = 0; i * PIECE < text.length; i++) {
    // Bars at both ends: no piece is taken for a formula or a number, and no space at an end is lost.
    cells[`A${i + 1}`] = `|${text.slice(i * PIECE, (i + 1) * PIECE)}|`;
  }
  for (const [i, { fileName }] of kept.tabs.entries()) cells[`B${i + 1}`] = `='${fileName.replaceAll("'", "''")}'!A1`;
  return cells;
}

/**
 * Reads the hidden tab's cells, with every tab under the name that it has in the file now.
 *
 * @throws FileProblem when it was written by a newer program
 */
export function keptIn(cells: Readonly<Record<string, string>>): Kept | undefined {
  const pieces: string[] = [];
  for (let row = 1; cells[`A${row}`]?.startsWith('|'); row++) pieces.push((cells[`A${row}`] ?? '').slice(1, -1));
  const kept = parsedOrNull(pieces.join(''));
  if (kept?.format !== FORMAT || !Array.isArray(kept.tabs)) return undefined;
  if (kept.version > VERSION) throw new FileProblem('It was written by a newer Plank Ledger. Open it with that one.');
  const tabs = kept.tabs.map(({ id, name, fileName }, i) => {
    const now = pointedAt(cells[`B${i + 1}`]) ?? fileName;
    // Renamed by a person meanwhile: that name counts.
    return { id, fileName: now, name: now === fileName ? name : now };
  });
  return { tabs, texts: kept.texts ?? {}, notesAreComments: kept.notesAreComments === true };
}

function pointedAt(formula: string | undefined): string | undefined {
  const [, quoted, plain] = /^=\$?(?:'((?:[^']|'')+)'|([^'!]+))!/.exec(formula ?? '') ?? [];
  return quoted?.replaceAll("''", "'") ?? plain;
}

function parsedOrNull(text: string): (Kept & { readonly format?: string; readonly version: number }) | null {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
