/**
 * The `Cut list: <room>` tab: what to order, then a line a piece in laying order, then the same cuts by plank for the
 * person at the saw, then cautions.
 */
import type { Ticks } from '../geometry/length';
import type { Summary, Takeoff } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import {
  blankCell,
  type Cell,
  filledRows,
  HEADING,
  lookWith,
  numberCell,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
import { CAUTIONS } from './cautions';
import { type KeptMarks, NOTHING_KEPT } from './keptMarks';
import { layingRows, sawRows } from './pieceRows';

type Row = readonly Cell[];

/** A phone shows 360 pixels: the tick, the piece, its length, the end to keep, the cut and the rest. */
const IN_VIEW = [30, 38, 56, 52, 84, 100];
/** Where the figures at the top stand: beside their labels, and what is behind the first view. */
const FIGURE_COLUMN = 4;
const OTHER_FIGURE_COLUMN = 9;
/** Letters of an ordinary line that a phone shows, and of a bold one: columns in view would hide the rest of it. */
const LINE_LETTERS = 54;
const STRONG_LETTERS = 48;
/** More rows than this kept in view would leave none to scroll. */
const MOST_FROZEN = 12;

/** How the marks of all cut lists begin. */
export const CUT_LIST_MARK = 'cut list/';

/** The mark of a room's cut list: the same in any case of its name. */
export function cutListMark(roomName: string): string {
  return `${CUT_LIST_MARK}${nameKey(roomName)}`;
}

export function cutListTitle(roomName: string): string {
  return `Cut list: ${roomName}`;
}

/**
 * The whole tab.
 *
 * @param kept ticks and notes of the tab as it was, found by `keptMarks`
 */
export function cutListBlock(takeoff: Takeoff, kept: KeptMarks = NOTHING_KEPT): TabBlock {
  const { name } = takeoff.entry;
  const columnWidths = [...IN_VIEW, ...behindWidths(takeoff)];
  const top = [
    [textCell(cutListTitle(name), TITLE)],
    ...orderRows(takeoff),
    ...noteRows([MEASURE_FIRST, ...takeoff.notes]),
  ];
  const headingRow = top.length + 1;
  const rows = [
    ...top,
    ...layingRows(takeoff, kept),
    [],
    ...sketchRows(takeoff),
    [],
    ...sawRows(takeoff, kept),
    [],
    ...footRows(),
  ];
  return {
    title: cutListTitle(name),
    mark: cutListMark(name),
    cells: filledRows(rows, columnWidths.length),
    columnWidths,
    rowHeight: 0,
    frozenRows: headingRow <= MOST_FROZEN ? headingRow : 0,
    frozenColumns: IN_VIEW.length,
    showGridlines: true,
    landscape: true,
    hasExactTickLines: true,
  };
}

/** Common practice: the wall is never where it is drawn. */
const MEASURE_FIRST = 'Measure the last piece of every row in place, less the spacer, before you cut it.';

/** Width, plank, growth, marks, what waits, the room where there are several, notes: pixels. */
function behindWidths({ rooms }: Takeoff): readonly number[] {
  return rooms.length > 1 ? [58, 118, 80, 248, 110, 90, 88] : [58, 118, 80, 322, 110, 104];
}

/** What to order at the left, how good the plan is at the right. */
function orderRows(takeoff: Takeoff): Row[] {
  const { entry, units, summary } = takeoff;
  const piece = (ticks: Ticks) => lengthText(ticks, units, 'piece');
  const stagger = summary.tightestStagger === null ? 'no joints side by side' : piece(summary.tightestStagger);
  const widths = `${summary.rowCount}: first ${piece(summary.firstRowWidth)}, last ${piece(summary.lastRowWidth)}`;
  return [
    pair(
      summary.boughtWith.length > 0 ? 'Planks counted here' : 'Planks to buy',
      count(summary.planksToBuy),
      'Usual rule (area + 10 %)',
      textCell(tenPercent(summary)),
    ),
    pair('Spares included', spareCell(summary), 'The plan', textCell(proofText(takeoff))),
    pair('Boxes to buy', boxCell(summary), 'Rows', textCell(widths)),
    pair('Product', textCell(entry.product.name, STRONG), 'Shortest piece', textCell(piece(summary.shortestPiece))),
    pair(
      summary.sharedWith.length > 0 ? 'Waste together' : 'Waste',
      numberCell(summary.waste, '0.0%', lookWith({ align: 'left' }, STRONG)),
      'Closest end joints',
      textCell(stagger),
    ),
  ];
}

function pair(label: string, value: Cell, otherLabel: string, other: Cell): Row {
  const blanks = (count: number) => Array.from({ length: count }, () => blankCell());
  const left = [textCell(label), ...blanks(FIGURE_COLUMN - 1), value];
  const space = OTHER_FIGURE_COLUMN - IN_VIEW.length - 1;
  return [...left, ...blanks(IN_VIEW.length - left.length), textCell(otherLabel), ...blanks(space), other];
}

function spareCell({ planksToBuy, plankCount }: Summary): Cell {
  return planksToBuy > plankCount ? count(planksToBuy - plankCount) : textCell('none', STRONG);
}

function count(number: number): Cell {
  return numberCell(number, '0', lookWith({ align: 'left' }, STRONG));
}

/** Boxes of several rooms are bought together: rounded up room by room they would come to more. */
function boxCell({ boughtWith, boxCount }: Summary): Cell {
  if (boughtWith.length > 0) return textCell('with other rooms: see Order', STRONG);
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

function plural(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

function noteRows(notes: readonly string[]): Row[] {
  return notes.flatMap((note) => brokenLines(note, STRONG_LETTERS).map((line) => [textCell(line, STRONG)]));
}

/** A plank as it lies, of cells: which end is its left one, and which edge has the tongue. */
function sketchRows({ rows }: Takeoff): Row[] {
  // From a middle line the grooves of both sides meet, and the rows of one side are turned round.
  const isFromMiddle = rows.some((row) => row.isReversed);
  const [start, far] = isFromMiddle ? ['groove', 'tongue'] : ['tongue', 'groove'];
  const begin = isFromMiddle ? 'middle line' : 'start wall';
  const wood = lookWith({ background: HEADING });
  const plank = [
    textCell('left end', wood),
    blankCell(wood),
    blankCell(wood),
    textCell('plank, face up', wood),
    textCell('right end', lookWith({ align: 'right' }, wood)),
  ];
  return [
    [textCell(`A plank as it lies, the ${begin} behind you`, STRONG)],
    [blankCell(), blankCell(), textCell(`far edge: ${far}`)],
    [blankCell(), ...plank, blankCell()],
    [blankCell(), blankCell(), textCell(`start edge: ${start}, towards the ${begin}`)],
  ];
}

const READING_THE_LIST = [
  'Keep factory end: this end of the plank stays on the piece, cut from the other side. Whole: the plank as it comes.',
  'Rest of plank: write the number on it; that is the piece it will be. Waiting after the row: the rests that must still lie ready.',
  'May grow: how much longer than drawn a piece may be cut, where it comes from an offcut. None: check the offcut before you cut.',
  'Widths are measured on the face, the tongue not counted. Longer edge: to the long point of an angled end.',
  'Ticks and notes stay at pieces that stay the same when this tab is filled again. What you write elsewhere is kept too, beside its line or at the foot.',
];

function footRows(): Row[] {
  return [...linesOf(READING_THE_LIST), [], [textCell('Before you cut', TITLE)], ...linesOf(CAUTIONS)];
}

function linesOf(texts: readonly string[]): Row[] {
  return texts.flatMap((text) => brokenLines(text, LINE_LETTERS).map((line) => [textCell(line)]));
}
