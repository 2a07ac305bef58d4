/** The lines of a cut list in which a person types what they find and want while the floor is laid. */

import { TICKS_PER_FOOT, TICKS_PER_MM, type Ticks, type Units } from '../geometry/length';
import { lastOf, sumOf } from '../geometry/lists';
import { AS_PLANNED, type AsYouLay, wallPlaces } from '../takeoff/planning/asYouLay';
import { asYouLayProblems as text } from '../takeoff/reading/asYouLayProblems';
import type { Takeoff } from '../takeoff/result';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText, readLength } from '../takeoff/text/lengthText';
import { blankCell, blankCells, type Cell, HEADED, lookWith, ownedCell, PLAIN, textCell } from './block';
import { dateText, isDate } from './dates';
import type { KeptMark, KeptMarks } from './keptMarks';
import { aboveKept, placeKey } from './oldTab';

type Row = readonly Cell[];

const HEADING = 'As you lay it';
const TYPED = 'Typed';
/** Behind the columns that stay; then the last column that a phone shows at first. */
const LABEL_COLUMN = 2;
const TYPED_COLUMN = 5;
/** As of the coloured cells of an order. */
const TO_TYPE = lookWith({ background: '#fff8d8', wrap: true });

const LINES = {
  boxes: 'Boxes bought',
  spoilt: 'Planks spoilt so far',
  part: 'Lay first: rows up to',
  rows: 'Rows a day',
  minutes: 'or minutes a row',
  hours: 'in hours a day',
  after: 'Far wall, from the edge of row',
} as const;
const WALL = 'Far wall at ';
/** Our choice: the most of any of them; a day of more rows is a typing mistake. */
const MOST = 1000;
const MOST_BOXES = 10_000;
const USUAL_HOURS = 8;

/** A line of a person's, as typed. */
interface TypedLine {
  readonly label: string;
  readonly typed: string;
  readonly place: string;
}

/** Under which the marks of a list keep what is typed in a line. */
function typedKey(label: string): string {
  return `typed\n${label}`;
}

/** The lines, with what is kept of what was typed in them. */
export function asYouLayRows(takeoff: Takeoff, kept: KeptMarks): Row[] {
  const labels = [...Object.values(LINES), ...placesOf(takeoff).map((at) => wallLabel(at, takeoff.units))];
  const blanks = (count: number, look = PLAIN) => blankCells(count, look);
  const line = (label: Cell, typed: Cell) => [
    ...blanks(LABEL_COLUMN, label.look),
    label,
    ...blanks(TYPED_COLUMN - LABEL_COLUMN - 1, label.look),
    typed,
  ];
  return [
    line(textCell(HEADING, HEADED), textCell(TYPED, HEADED)),
    ...labels.map((label) => [
      ...line(
        textCell(countryWords(label, takeoff.units)),
        ownedCell(textCell(kept.get(typedKey(label))?.run ?? '', TO_TYPE), 'person'),
      ),
      blankCell(),
    ]),
  ];
}

function wallLabel(at: Ticks, units: Units): string {
  return `${WALL}${lengthText(at, units, 'room')}`;
}

/** Every 4 ft or 1.2 m along the last row, where it is one run. */
function placesOf({ pieces, rows, units }: Takeoff): readonly Ticks[] {
  const last = pieces.filter(({ rowNumber }) => rowNumber === lastOf(rows).rowNumber);
  if (last.some(({ runNumber }) => runNumber !== last[0].runNumber)) return [];
  const length = sumOf(last, (piece) => piece.length);
  return wallPlaces(length, units === 'us' ? 4 * TICKS_PER_FOOT : 1200 * TICKS_PER_MM);
}

/** What is typed in those lines, wherever they stand now. */
export function typedLines(values: readonly (readonly unknown[])[]): readonly TypedLine[] {
  const cells = aboveKept(values);
  const head = cells.findIndex((row) => row.includes(HEADING) && row.includes(TYPED));
  if (head < 0) return [];
  const [labels, typed] = [cells[head].indexOf(HEADING), cells[head].indexOf(TYPED)];
  const end = cells.findIndex((row, r) => r > head && shown(row[labels]) === '');
  return cells.slice(head + 1, end < 0 ? undefined : end).map((row, i) => {
    return { label: ownLabel(shown(row[labels])), typed: shown(row[typed]), place: placeKey(head + 1 + i, typed) };
  });
}

/** A label as we say it, in whichever country's words it stands there. */
function ownLabel(found: string): string {
  return Object.values(LINES).find((label) => countryWords(label, 'us') === found) ?? found;
}

function shown(cell: unknown): string {
  return isDate(cell) ? dateText(cell as Date) : String(cell ?? '').trim();
}

/** What is typed in them, as marks of the list. */
export function typedMarks(values: readonly (readonly unknown[])[]): KeptMarks {
  const typed = typedLines(values).filter((line) => line.typed !== '');
  return new Map(typed.map((line) => [typedKey(line.label), markOf(line.typed)]));
}

/** The row from which the far wall was measured: it stays so when more rows lie. */
export function wallAfterMark(afterRow: number | null): KeptMarks {
  return new Map(afterRow === null ? [] : [[typedKey(LINES.after), markOf(`${afterRow}`)]]);
}

/** Planks that are out of the list because they were spoilt. */
export function spoiltMark(count: number): KeptMarks {
  return new Map([[typedKey(LINES.spoilt), markOf(count === 0 ? '' : `${count}`)]]);
}

function markOf(typed: string): KeptMark {
  return { ticked: false, notes: '', cutAt: '', lost: '', run: typed };
}

/** Rows a day by what is kept of the lines; null where there is no pace, or none that can be read. */
export function paceIn(kept: KeptMarks): number | null {
  const lines = Object.values(LINES).map((label) => ({
    label,
    typed: kept.get(typedKey(label))?.run ?? '',
    place: '',
  }));
  return paceOf(lines, []);
}

type AsYouLayAnswer =
  | { readonly found: AsYouLay; readonly problems?: undefined }
  | { readonly problems: readonly string[] };

/** @param rowCount of the floor */
export function readAsYouLay(values: readonly (readonly unknown[])[], units: Units, rowCount: number): AsYouLayAnswer {
  const lines = typedLines(values);
  if (lines.length === 0) return { found: AS_PLANNED };
  const problems: string[] = [];
  const found: AsYouLay = {
    boxesBought: countIn(lines, LINES.boxes, MOST_BOXES, problems),
    spoiltBefore: countIn(lines, LINES.spoilt, MOST, problems) ?? 0,
    partEnd: countIn(lines, LINES.part, rowCount, problems),
    wall: wallOf(lines, countIn(lines, LINES.after, rowCount, problems), units, problems),
  };
  // The pace counts whenever the tab is filled; what is wrong with it is told here.
  paceOf(lines, problems);
  return problems.length > 0 ? { problems } : { found };
}

function paceOf(lines: readonly TypedLine[], problems: string[]): number | null {
  const rows = countIn(lines, LINES.rows, MOST, problems);
  const minutes = numberIn(lines, LINES.minutes, MOST, problems);
  const hours = numberIn(lines, LINES.hours, 24, problems) ?? USUAL_HOURS;
  return rows ?? (minutes === null ? null : Math.max(1, Math.floor((hours * 60) / minutes)));
}

function countIn(lines: readonly TypedLine[], label: string, most: number, problems: string[]): number | null {
  const value = numberIn(lines, label, most, problems);
  if (value === null || Number.isInteger(value)) return value;
  problems.push(text.number(label, String(value), most));
  return null;
}

/** Above 0; null where nothing is typed, or after the problem was told. */
function numberIn(lines: readonly TypedLine[], label: string, most: number, problems: string[]): number | null {
  const typed = lines.find((line) => line.label === label)?.typed ?? '';
  const value = Number(typed.replace(',', '.'));
  if (typed !== '' && value > 0 && value <= most) return value;
  if (typed !== '') problems.push(text.number(label, typed, most));
  return null;
}

function wallOf(
  lines: readonly TypedLine[],
  afterRow: number | null,
  units: Units,
  problems: string[],
): AsYouLay['wall'] {
  const places = lines.filter(({ label }) => label.startsWith(WALL));
  const typed = places.filter((line) => line.typed !== '');
  if (typed.length === 0) return null;
  const open = [places[0], lastOf(places)].filter((line) => line.typed === '');
  if (open.length > 0) problems.push(text.bothEnds(open.map(({ label }) => label)));
  const read = typed.flatMap((line) => {
    const at = readLength(line.label.slice(WALL.length), 'room', units);
    const distance = readLength(line.typed, 'plank', units);
    if (at.ok && distance.ok && distance.ticks > 0) return [{ at: at.ticks, distance: distance.ticks }];
    problems.push(text.distance(line.label, line.typed));
    return [];
  });
  return { afterRow, places: read.map(({ at }) => at), distances: read.map(({ distance }) => distance) };
}
