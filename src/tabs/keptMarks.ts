/** Ticks and notes of a cut list that is about to be written again. */
import type { Units } from '../geometry/length';
import { countryWords } from '../takeoff/text/countryWords';
import { dateText, isDate } from './dates';
import { aboveKept, placeKey } from './oldTab';

/** The first six hold all that a plain cut needs, and stay in view on a phone. */
export const LAY_HEADINGS = [
  'Laid',
  'Piece',
  'Length',
  'Keep factory end',
  'Saw cut',
  'Rest of plank',
  'Cut at',
  'Mark',
  'Run',
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
  '',
  '',
  '',
  'Width',
  'From plank',
  'Cut',
  'What to mark',
  '',
  '',
  'Your notes',
] as const;

/** What may have happened to the plank or offcut that a piece is cut from. */
const LOST_WORDS = ['spoilt', 'lost'] as const;

export function lostWords(units: Units): readonly string[] {
  return LOST_WORDS.map((word) => countryWords(word, units));
}

/** What a person has put at one piece. */
export interface KeptMark {
  readonly ticked: boolean;
  readonly notes: string;
  /** Its length as it was cut, where that is another than the listed one; as typed. */
  readonly cutAt: string;
  /** `spoilt` or `lost`, as typed, in either country's words. */
  readonly lost: string;
  /** Of the first piece of a run: the length of the run as found, as typed. Of a line in `asYouLay.ts`: what is typed there. */
  readonly run: string;
}

/** By `markKey`, and runs by `runKey`. */
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

/** A run stays the same when its row and its place in the row do, whatever is found between the walls. */
export function runKey(label: string, place: number): string {
  return ['run', label.split('-')[0], place].join('\n');
}

/** How a run is shown that is as drawn: a person types over it what they find. */
export function drawnText(length: string): string {
  return `(${length})`;
}

/** A piece as it is listed in a tab that was read. */
export interface ListedPiece extends KeptMark {
  readonly list: 'lay' | 'saw';
  readonly label: string;
  readonly key: string;
  /** Where its tick, its notes and what was typed of its cutting stand, see `placeKey`. */
  readonly places: readonly string[];
  /** As shown. */
  readonly length: string;
  readonly keeps: string;
  readonly plank: string;
  /** The key of the run that begins with it, the place of what is typed of it; null for any other piece. */
  readonly begins: { readonly key: string; readonly place: string } | null;
}

/**
 * Finds the two lists in the cells of the old tab by their headings, wherever lines or columns were put in since, and
 * takes what stands in the columns to tick and to write in.
 */
export function listedPieces(values: readonly (readonly unknown[])[]): readonly ListedPiece[] {
  const found: ListedPiece[] = [];
  let headed: HeadedList | null = null;
  const runs = new Map<string, number>();
  for (const [r, row] of aboveKept(values).entries()) {
    const heading = headedList(row);
    headed = heading ?? headed;
    if (heading || !headed) continue;
    const { name, piece, length, width, tick, notes, cutAt, lost, run, keeps, plank } = headed;
    const at = (index: number) => (index < 0 ? '' : (row[index] ?? ''));
    const label = String(at(piece));
    if (label === '') continue;
    const inRow = label.split('-')[0];
    const typedRun = noteText(at(run));
    const isFirst = name === 'lay' && typedRun !== '';
    if (isFirst) runs.set(inRow, (runs.get(inRow) ?? 0) + 1);

    found.push({
      list: name,
      label,
      key: markKey(name, label, String(at(length)), String(at(width))),
      ticked: at(tick) === true,
      notes: noteText(at(notes)),
      cutAt: noteText(at(cutAt)),
      lost: noteText(at(lost)),
      run: typedRun.startsWith('(') ? '' : typedRun,
      places: [tick, notes, cutAt, lost].map((column) => placeKey(r, column)),
      length: String(at(length)),
      keeps: String(at(keeps)),
      plank: String(at(plank)),
      begins: isFirst ? { key: runKey(label, runs.get(inRow) ?? 1), place: placeKey(r, run) } : null,
    });
  }
  return found;
}

/**
 * What a person has put at the pieces of the old tab.
 *
 * @param gone labels of pieces whose mark, and length as cut, hold no more
 */
export function keptMarks(values: readonly (readonly unknown[])[], gone: ReadonlySet<string> = new Set()): KeptMarks {
  const listed = listedPieces(values).map((piece) => {
    const ticked = piece.ticked && piece.list === 'lay';
    return gone.has(piece.label) ? { ...piece, ticked, cutAt: '', lost: '' } : piece;
  });
  const marked = listed.filter(
    ({ label, ticked, notes, cutAt, lost }) => gone.has(label) || ticked || notes !== '' || cutAt !== '' || lost !== '',
  );
  const runs = listed.flatMap(({ begins, run }) => (begins && run !== '' ? [{ key: begins.key, run }] : []));
  const none = { ticked: false, notes: '', cutAt: '', lost: '', run: '' };
  return new Map<string, KeptMark>([
    ...marked.map(({ key, ticked, notes, cutAt, lost }) => [key, { ticked, notes, cutAt, lost, run: '' }] as const),
    ...runs.map(({ key, run }) => [key, { ...none, run }] as const),
  ]);
}

interface HeadedList {
  readonly name: 'lay' | 'saw';
  readonly piece: number;
  readonly length: number;
  readonly width: number;
  readonly tick: number;
  readonly notes: number;
  /** Columns that lists of earlier versions do not have: -1 there. */
  readonly cutAt: number;
  readonly lost: number;
  readonly run: number;
  readonly keeps: number;
  readonly plank: number;
}

/** The columns of the list that starts below this row, or null when it is no row of headings. */
function headedList(row: readonly unknown[]): HeadedList | null {
  const columns = {
    piece: row.indexOf('Piece'),
    length: row.indexOf('Length'),
    width: row.indexOf('Width'),
    notes: row.indexOf('Your notes'),
    cutAt: row.indexOf('Cut at'),
    lost: row.indexOf('Mark'),
    run: row.indexOf('Run'),
    keeps: row.indexOf('Keep factory end'),
    plank: row.indexOf('From plank'),
  };
  if (columns.piece < 0 || columns.length < 0 || columns.width < 0) return null;
  const laid = row.indexOf('Laid');
  return { ...columns, name: laid < 0 ? 'saw' : 'lay', tick: laid < 0 ? row.indexOf('Done') : laid };
}

function noteText(cell: unknown): string {
  return isDate(cell) ? dateText(cell as Date) : String(cell);
}
