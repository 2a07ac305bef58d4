/**
 * The `Cut list - <room>` tab: what to order, then one line per piece in laying order, then the same cuts by plank for the
 * person at the saw, then cautions.
 */

import type { Units } from '../geometry/length';
import { madeOf } from '../geometry/lists';
import type { Summary, Takeoff } from '../takeoff/result';
import { countryWords } from '../takeoff/text/countryWords';
import { pieceText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import { plural } from '../takeoff/text/plural';
import { asYouLayRows, paceIn } from './asYouLay';
import {
  blankCell,
  blankCells,
  type Cell,
  filledRows,
  HEADING,
  LIST,
  lookWith,
  numberCell,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
import { CAUTIONS } from './cautions';
import { type KeptMarks, LAY_HEADINGS, NOTHING_KEPT } from './keptMarks';
import { dayWords, type LayingDay, layingDays } from './layingDays';
import { layingRows, sawRows } from './pieceRows';

type Row = readonly Cell[];

/** A phone shows 360 pixels: the tick, the piece, its length (`1285 mm` in one line), the end to keep, the cut and the rest. */
const IN_VIEW = [29, 36, 66, 53, 91, 85];
/** Tick and piece stay when the list is pushed aside, and leave room for what is typed beside them. */
const FROZEN_COLUMNS = 2;
/** What is told stands behind them: text that begins in a frozen column may end where that one does. */
const BEFORE_TEXT: Row = [blankCell(), blankCell()];
/** Where the figures at the top stand: beside their labels, and what is behind the first view. */
const FIGURE_COLUMN = 4;
const OTHER_FIGURE_COLUMN = 10;
/** Letters of an ordinary line that a phone shows behind the frozen columns, and of a bold one. */
const LINE_LETTERS = 48;
const STRONG_LETTERS = 43;
/** Letters of an ordinary line from there to the right edge, and from the end of the first view. */
const PROOF_LETTERS = 52;
const BESIDE_LETTERS = 82;
/** Title and headings stay in view, and begin every printed page: so what is told once stands under them. */
const FROZEN_ROWS = 2;

/** How the marks of all cut lists begin. */
export const CUT_LIST_MARK = 'cut list/';

/** The mark of a room's cut list: the same in any case of its name. */
export function cutListMark(roomName: string): string {
  return `${CUT_LIST_MARK}${nameKey(roomName)}`;
}

/** The name of its tab. */
export function cutListTitle(roomName: string): string {
  return `Cut list - ${roomName}`;
}

/**
 * The whole tab. A phone shows the first piece with what must be known before it is cut; everything else stands below.
 *
 * @param kept ticks and notes of the tab as it was, found by `keptMarks`
 * @param next where the floor was planned on: what lies, what comes next, what is needed
 */
export function cutListBlock(takeoff: Takeoff, kept: KeptMarks = NOTHING_KEPT, next: readonly string[] = []): TabBlock {
  const { name } = takeoff.entry;
  const columnWidths = [...IN_VIEW, ...behindWidths(takeoff)];
  const [heading, ...pieces] = layingRows(takeoff, kept);
  const days = daysOf(takeoff, pieces, kept);
  const rows = [
    told(textCell(`Cut list: ${name}`, TITLE)),
    heading,
    ...topRows(takeoff, [...days.slice(0, 1).map(dayWords), ...next, MEASURE_FIRST, readFirst(takeoff.notes.length)]),
    ...withDayEnds(takeoff, pieces, days),
    [],
    ...noteRows(takeoff.notes),
    ...asYouLayRows(takeoff, kept),
    [],
    ...linesOf(days.map(dayWords)),
    ...(days.length > 0 ? [[]] : []),
    ...sketchRows(takeoff),
    [],
    ...sawRows(takeoff, kept),
    [],
    ...footRows(takeoff.units),
  ];
  return {
    title: cutListTitle(name),
    mark: cutListMark(name),
    cells: filledRows(rows, columnWidths.length),
    columnWidths,
    ...LIST,
    frozenRows: FROZEN_ROWS,
    frozenColumns: FROZEN_COLUMNS,
    hasExactTickLines: true,
  };
}

/** At the pace that is typed, from the first row that does not lie to its end; none without a pace. */
function daysOf(takeoff: Takeoff, pieces: readonly Row[], kept: KeptMarks): readonly LayingDay[] {
  const pace = paceIn(kept);
  const open = pieces.findIndex(([{ value }]) => value.kind === 'tick' && !value.ticked);
  return pace === null || open < 0 ? [] : layingDays(takeoff, takeoff.pieces[open].rowNumber, pace);
}

/** The last piece of a day says so, beside what waits. */
function withDayEnds({ pieces }: Takeoff, rows: readonly Row[], days: readonly LayingDay[]): readonly Row[] {
  const column = LAY_HEADINGS.indexOf('Waiting after the row');
  return rows.map((row, i) => {
    const { rowNumber } = pieces[i];
    const day = days.find(({ lastRow }) => lastRow === rowNumber);
    if (!day || pieces[i + 1]?.rowNumber === rowNumber) return row;
    return row.map((cell, c) => {
      if (c !== column || cell.value.kind !== 'text') return cell;
      return textCell(`${cell.value.text}. Day ${day.dayNumber} ends`, cell.look);
    });
  });
}

/** Common practice: the wall is never where it is drawn. */
const MEASURE_FIRST = "Measure each row's last piece in place, less the spacer, before you cut it.";

/** What stands below is to be read before the first cut. */
function readFirst(noteCount: number): string {
  if (noteCount === 0) return 'Read first: the cautions at the end.';
  return `Read first: ${plural(noteCount, 'note')} below the pieces, and the cautions at the end.`;
}

/** One line holds `(5060 mm)`, `192 mm` and `31: offcut of 12-4`. What is typed as laid, width, plank, growth, marks, what waits, the room where there are several, notes: pixels, with those in view a lying page. */
function behindWidths({ rooms }: Takeoff): readonly number[] {
  return rooms.length > 1 ? [46, 40, 70, 56, 92, 50, 74, 58, 38, 28] : [46, 40, 70, 56, 98, 50, 88, 66, 38];
}

/** At the left what a phone shows above the pieces: what to order, what to do. How good the plan is stands at the right. */
function topRows(takeoff: Takeoff, words: readonly string[]): Row[] {
  const { summary } = takeoff;
  const isTogether = summary.boughtWith.length > 0;
  const left = [
    figure(isTogether ? 'Planks here' : 'Planks to buy', count(summary.planksToBuy)),
    figure('Boxes to buy', boxCell(summary)),
    ...words.flatMap((text) => brokenLines(text, STRONG_LETTERS).map((line) => told(textCell(line, STRONG)))),
  ];
  const right = planRows(takeoff);
  return madeOf(Math.max(left.length, right.length), (i) => {
    return [...padded(left[i] ?? [], IN_VIEW.length), ...(right[i] ?? [])];
  });
}

/** Labels and figures from the end of the first view on. */
function planRows(takeoff: Takeoff): Row[] {
  const { entry, units, summary } = takeoff;
  const piece = pieceText(units);
  const stagger = summary.tightestStagger === null ? 'no joints side by side' : piece(summary.tightestStagger);
  const widths = `${summary.rowCount}: first ${piece(summary.firstRowWidth)}, last ${piece(summary.lastRowWidth)}`;
  const spares = summary.planksToBuy - summary.plankCount;
  return [
    ...besideRows('The plan', proofText(takeoff)),
    ...besideRows('Usual rule (area + 10 %)', tenPercent(summary)),
    ...besideRows('Rows', widths),
    ...besideRows('Shortest piece', piece(summary.shortestPiece)),
    ...besideRows('Closest end joints', stagger),
    beside(
      summary.sharedWith.length > 0 ? 'Waste together' : 'Waste',
      numberCell(summary.waste, '0.0%', lookWith({ align: 'left' })),
    ),
    ...(spares > 0 ? [beside('Spares included', numberCell(spares, '0', lookWith({ align: 'left' })))] : []),
    ...(entry.product.name === '' ? [] : besideRows('Product', entry.product.name)),
  ];
}

function figure(label: string, value: Cell): Row {
  return [...padded(told(textCell(label)), FIGURE_COLUMN), value];
}

function beside(label: string, value: Cell): Row {
  return [...padded([textCell(label)], OTHER_FIGURE_COLUMN - IN_VIEW.length), value];
}

function besideRows(label: string, text: string): Row[] {
  return brokenLines(text, PROOF_LETTERS).map((line, i) => beside(i === 0 ? label : '', textCell(line)));
}

function padded(row: Row, length: number): Row {
  return [...row, ...blankCells(length - row.length)];
}

function count(number: number): Cell {
  return numberCell(number, '0', lookWith({ align: 'left' }, STRONG));
}

/** Boxes of several rooms are bought together: rounded up room by room they would come to more. */
function boxCell({ boughtWith, boxCount }: Summary): Cell {
  if (boughtWith.length > 0) return textCell('see Order', STRONG);
  return boxCount === null ? textCell('box size not given', STRONG) : count(boxCount);
}

function tenPercent({ tenPercentPlanks, tenPercentBoxes, boughtWith }: Summary): string {
  return tenPercentBoxes === null || boughtWith.length > 0
    ? plural(tenPercentPlanks, 'plank')
    : boxText(tenPercentBoxes, tenPercentPlanks);
}

function boxText(boxes: number, planks: number): string {
  return `${plural(boxes, 'box', 'boxes')} for ${plural(planks, 'plank')}`;
}

/** The proof is one of all the rooms cut from the same planks, so its planks are those of all. */
function proofText({ entry, plan, summary: { sharedWith, proof } }: Takeoff): string {
  const rooms = sharedWith.length > 0 ? `${[entry.name, ...sharedWith].join(' + ')} together: ` : '';
  return `${rooms}${plural(plan.plankCount, 'plank')}, ${proof}`;
}

/** Rules that could not be met first. */
function noteRows(notes: readonly string[]): Row[] {
  if (notes.length === 0) return [];
  return [told(textCell('Notes on this floor', TITLE)), ...linesOf(notes), []];
}

/** A plank as it lies, of cells: which end is its left one, and which edge has the tongue. */
function sketchRows({ rows, startEdge }: Takeoff): Row[] {
  const far = startEdge === 'tongue' ? 'groove' : 'tongue';
  const begin = rows.some((row) => row.isReversed) ? 'middle line' : 'start wall';
  const wood = lookWith({ background: HEADING });
  const plank = [
    textCell('left end', wood),
    blankCell(wood),
    textCell('plank, face up', wood),
    textCell('right end', lookWith({ align: 'right' }, wood)),
  ];
  return [
    told(textCell(`A plank as it lies, the ${begin} behind you`, STRONG)),
    told(textCell(`far edge: ${far}`)),
    told(...plank, blankCell()),
    told(textCell(`start edge: ${startEdge}, towards the ${begin}`)),
  ];
}

const READING_THE_LIST = [
  'Keep factory end: this end of the plank stays on the piece, cut from the other side. Whole: the plank as it comes.',
  'Rest of plank: write on it which piece it will be. Waiting after the row: the rests that must still lie ready; those for other rooms are counted.',
  'May grow: how much longer than drawn a piece may be cut, where it comes from an offcut. None: check the offcut before you cut.',
  'Widths are measured on the face, the tongue not counted. Longer edge: to the long point of an angled end.',
  'Cut at: the length as you cut it, where it is another. Mark: spoilt or lost, where the plank or the offcut for this piece is gone; at a piece that lies, the rest of its plank. Run: in brackets as drawn; type over it what you find between the spacers.',
  'As you lay it: what is typed there counts when the floor is planned on, the pace whenever the tab is filled.',
  'When this tab is filled again, a piece that is still the same keeps its tick and note. What you write elsewhere is kept too, beside its line or at the bottom.',
];

/** Cautions where a phone shows them; beside them, under the columns they are about, how the list is read: half the paper. */
function footRows(units: Units): Row[] {
  const left = [textCell('Before you cut', TITLE), ...toldLines(CAUTIONS, LINE_LETTERS)];
  const right = [
    textCell('How to read this list', TITLE),
    ...toldLines(
      READING_THE_LIST.map((text) => countryWords(text, units)),
      BESIDE_LETTERS,
    ),
  ];
  return madeOf(Math.max(left.length, right.length), (i) => [
    ...padded(told(...left.slice(i, i + 1)), IN_VIEW.length),
    ...right.slice(i, i + 1),
  ]);
}

function toldLines(texts: readonly string[], letters: number): readonly Cell[] {
  return texts.flatMap((text) => brokenLines(text, letters).map((line) => textCell(line)));
}

function linesOf(texts: readonly string[]): Row[] {
  return toldLines(texts, LINE_LETTERS).map((line) => told(line));
}

function told(...cells: Row): Row {
  return [...BEFORE_TEXT, ...cells];
}
