/** Ticks and notes of a cut list that is about to be written again. */
import { dateText, isDate } from './dates';
import { placeKey } from './keptCells';
import { aboveKept } from './oldTab';

/** The first six hold all that a plain cut needs, and stay in view on a phone. */
export const LAY_HEADINGS = [
  'Laid',
  'Piece',
  'Length',
  'Keep factory end',
  'Saw cut',
  'Rest of plank',
  'Width',
  'From plank',
  'May grow',
  'What to mark',
  'Waiting after the row',
  'Room',
  'Your notes',
] as const;

export const CUT_HEADINGS = [
  'Done',
  'Piece',
  'Length',
  'Keep factory end',
  'Saw cut',
  'Rest of plank',
  'Width',
  'From plank',
  'Cut',
  'What to mark',
  '',
  '',
  'Your notes',
] as const;

/** What a person has put at one piece. */
export interface KeptMark {
  readonly ticked: boolean;
  readonly notes: string;
}

/** By `markKey`. */
export type KeptMarks = ReadonlyMap<string, KeptMark>;

export const NOTHING_KEPT: KeptMarks = new Map();

/**
 * A piece stays the same when its label, its length and its width do, as they are shown. Lists of earlier versions told
 * the edges of an angled piece by their points.
 */
export function markKey(list: 'lay' | 'saw', label: string, length: string, width: string): string {
  const edges = length.replace(' long point', ' longer edge').replace(' short point', ' shorter edge');
  return [list, label, edges, width].join('\n');
}

/** A piece as it is listed in a tab that was read. */
export interface ListedPiece extends KeptMark {
  readonly list: 'lay' | 'saw';
  readonly label: string;
  readonly key: string;
  /** Where its tick and its notes stand, see `placeKey`. */
  readonly places: readonly string[];
}

/**
 * Finds the two lists in the cells of the old tab by their headings, wherever lines or columns were put in since, and
 * takes what stands in the columns to tick and to write in.
 */
export function listedPieces(values: readonly (readonly unknown[])[]): readonly ListedPiece[] {
  const found: ListedPiece[] = [];
  let headed: HeadedList | null = null;
  for (const [r, row] of aboveKept(values).entries()) {
    const heading = headedList(row);
    headed = heading ?? headed;
    if (heading || !headed) continue;
    const { name, piece, length, width, tick, notes } = headed;
    const at = (index: number) => (index < 0 ? '' : (row[index] ?? ''));
    const label = String(at(piece));
    if (label === '') continue;
    found.push({
      list: name,
      label,
      key: markKey(name, label, String(at(length)), String(at(width))),
      ticked: at(tick) === true,
      notes: noteText(at(notes)),
      places: [placeKey(r, tick), placeKey(r, notes)],
    });
  }
  return found;
}

/** What a person has put at the pieces of the old tab. */
export function keptMarks(values: readonly (readonly unknown[])[]): KeptMarks {
  const marked = listedPieces(values).filter(({ ticked, notes }) => ticked || notes !== '');
  return new Map(marked.map(({ key, ticked, notes }) => [key, { ticked, notes }]));
}

interface HeadedList {
  readonly name: 'lay' | 'saw';
  readonly piece: number;
  readonly length: number;
  readonly width: number;
  readonly tick: number;
  readonly notes: number;
}

/** The columns of the list that starts below this row, or null when it is no row of headings. */
function headedList(row: readonly unknown[]): HeadedList | null {
  const columns = {
    piece: row.indexOf('Piece'),
    length: row.indexOf('Length'),
    width: row.indexOf('Width'),
    notes: row.indexOf('Your notes'),
  };
  if (columns.piece < 0 || columns.length < 0 || columns.width < 0) return null;
  const laid = row.indexOf('Laid');
  return { ...columns, name: laid < 0 ? 'saw' : 'lay', tick: laid < 0 ? row.indexOf('Done') : laid };
}

function noteText(cell: unknown): string {
  if (cell === '' || cell === null) return '';
  return isDate(cell) ? dateText(cell as Date) : String(cell);
}
