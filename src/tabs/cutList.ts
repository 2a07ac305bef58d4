/**
 * The `Cut list: <room>` tab: what to order, then a line a piece in laying order, then the same cuts by plank for the
 * person at the saw, then cautions.
 */
import type { Ticks } from '../geometry/length';
import type { FloorPiece, SawPlank, Summary, Takeoff } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import {
  BAND,
  blankCell,
  type Cell,
  filledRows,
  HEADED,
  lookWith,
  numberCell,
  ownedCell,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
  tickCell,
} from './block';
import { brokenLines } from './brokenLines';
import { CAUTIONS } from './cautions';
import { CUT_HEADINGS, type KeptMarks, LAY_HEADINGS, markKey, NOTHING_KEPT } from './keptMarks';

type Row = readonly Cell[];

const COLUMN_WIDTHS = [46, 58, 120, 110, 62, 78, 95, 304, 112, 45, 120];
/** Letters that fit across the page at the size of ordinary cells. */
const LINE_LETTERS = 150;
/** More rows than this kept in view would leave none to scroll. */
const MOST_FROZEN = 9;

const CENTRED = lookWith({ align: 'center' });
const WRAPPED = lookWith({ wrap: true });

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
  const top = [[textCell(cutListTitle(name), TITLE)], ...orderRows(takeoff), ...noteRows(takeoff.notes)];
  const headingRow = top.length + 1;
  const rows = [...top, ...layingRows(takeoff, kept), [], ...sawRows(takeoff, kept), [], ...footRows()];
  return {
    title: cutListTitle(name),
    mark: cutListMark(name),
    cells: filledRows(rows, COLUMN_WIDTHS.length),
    columnWidths: COLUMN_WIDTHS,
    rowHeight: 0,
    frozenRows: headingRow <= MOST_FROZEN ? headingRow : 0,
    showGridlines: true,
    landscape: true,
  };
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
      'Area + 10 % would have been',
      textCell(tenPercent(summary)),
    ),
    pair('of them spare', count(summary.planksToBuy - summary.plankCount), 'The plan', textCell(proofText(takeoff))),
    pair('Boxes to buy', boxCell(summary), 'Rows', textCell(widths)),
    pair('Product', textCell(entry.product.name, STRONG), 'Shortest piece', textCell(piece(summary.shortestPiece))),
    pair(
      summary.sharedWith.length > 0 ? 'Waste together' : 'Waste',
      numberCell(summary.waste, '0.0%', lookWith({ align: 'left' }, STRONG)),
      'Tightest stagger',
      textCell(stagger),
    ),
  ];
}

function pair(label: string, value: Cell, otherLabel: string, other: Cell): Row {
  const blank = blankCell();
  return [textCell(label), blank, value, blank, textCell(otherLabel), blank, blank, other];
}

function count(number: number): Cell {
  return numberCell(number, '0', lookWith({ align: 'left' }, STRONG));
}

/** Boxes of several rooms are bought together: rounded up room by room they would come to more. */
function boxCell({ boughtWith, boxCount }: Summary): Cell {
  if (boughtWith.length > 0) return textCell('with other rooms: see Order', STRONG);
  return boxCount === null ? textCell('planks in a box not given', STRONG) : count(boxCount);
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
  return notes.flatMap((note) => brokenLines(note, LINE_LETTERS).map((line) => [textCell(line, STRONG)]));
}

function headingRow(headings: readonly string[]): Row {
  return headings.map((heading) => textCell(heading, lookWith({ wrap: true }, HEADED)));
}

function layingRows(takeoff: Takeoff, kept: KeptMarks): Row[] {
  return [headingRow(LAY_HEADINGS), ...takeoff.pieces.map((piece) => layingRow(piece, takeoff, kept))];
}

function layingRow(piece: FloorPiece, { units }: Takeoff, kept: KeptMarks): Row {
  const size = sizeOf(piece, units);
  const mark = kept.get(markKey('lay', piece.label, size.length, size.width));
  const plank = piece.stripOf === '' ? `${piece.plankNumber}` : `${piece.plankNumber}, strip of ${piece.stripOf}`;
  const cells = [
    numberCell(piece.rowNumber, '0', CENTRED),
    textCell(piece.label, lookWith({ bold: true, align: 'center' })),
    textCell(size.length, WRAPPED),
    textCell(size.width, WRAPPED),
    textCell(plank, lookWith({ align: 'center', wrap: true })),
    textCell(keptEnd(piece.keeps), CENTRED),
    textCell(sawCuts(piece), WRAPPED),
    textCell(piece.marks.join(' '), WRAPPED),
    textCell(piece.rest, WRAPPED),
    tickCell(mark?.ticked ?? false, CENTRED),
    ownedCell(textCell(mark?.notes ?? '', WRAPPED), 'person'),
  ];
  return banded(cells, piece.rowNumber % 2 === 0);
}

function sizeOf(piece: FloorPiece, units: Takeoff['units']): { readonly length: string; readonly width: string } {
  const shown = (ticks: Ticks) => lengthText(ticks, units, 'piece');
  const { length, shortPoint, widthLeft, widthRight } = piece;
  const short = shortPoint === 0 ? 'the other edge runs out' : `${shown(shortPoint)} short point`;
  return {
    length: length === shortPoint ? shown(length) : `${shown(length)} long point, ${short}`,
    width: widthLeft === widthRight ? shown(widthLeft) : `${shown(widthLeft)} left, ${shown(widthRight)} right`,
  };
}

function keptEnd(keeps: FloorPiece['keeps']): string {
  return keeps === 'no end' ? 'none' : keeps;
}

function sawCuts(piece: FloorPiece): string {
  return piece.cuts.length > 0 ? piece.cuts.join(', ') : 'none';
}

/** The planks that meet the saw, a line a cut; those laid as they come are counted. */
function sawRows(takeoff: Takeoff, kept: KeptMarks): Row[] {
  const pieces = new Map(takeoff.pieces.map((piece) => [piece.label, piece]));
  const list: SawList = { takeoff, pieces, kept };
  const cut = takeoff.planks.filter((plank) => plank.pieces.length > 1 || sawCuts(ownPiece(plank, 0, list)) !== 'none');
  const rows = cut.flatMap((plank, i) =>
    plank.pieces.map(({ room }, order) => {
      const row = room === '' ? sawRow(plank, order, list) : otherRoomRow(plank, order, list);
      return banded(row, i % 2 === 1);
    }),
  );
  const whole = takeoff.planks.length - cut.length;
  const wholeRow = whole > 0 ? [[textCell(`${plural(whole, 'plank')} laid whole, without a cut.`)]] : [];
  return [[textCell('The same cuts by plank, for the saw', TITLE)], headingRow(CUT_HEADINGS), ...rows, ...wholeRow];
}

interface SawList {
  readonly takeoff: Takeoff;
  readonly pieces: ReadonlyMap<string, FloorPiece>;
  readonly kept: KeptMarks;
}

function ownPiece(plank: SawPlank, order: number, { pieces }: SawList): FloorPiece {
  const { label } = plank.pieces[order];
  const piece = pieces.get(label);
  if (piece) return piece;
  throw new Error(`Internal: plank ${plank.plankNumber} gives a piece ${label} that the floor does not have.`);
}

function sawRow(plank: SawPlank, order: number, list: SawList): Row {
  const piece = ownPiece(plank, order, list);
  const size = sizeOf(piece, list.takeoff.units);
  const mark = list.kept.get(markKey('saw', piece.label, size.length, size.width));
  return [
    numberCell(plank.plankNumber, '0', CENTRED),
    textCell(piece.label, lookWith({ bold: true, align: 'center' })),
    textCell(size.length, WRAPPED),
    textCell(size.width, WRAPPED),
    ...cutCells(plank, order),
    textCell(sawCuts(piece), WRAPPED),
    textCell(piece.marks.join(' '), WRAPPED),
    textCell(leftOver(plank, order, list), WRAPPED),
    tickCell(mark?.ticked ?? false, CENTRED),
    ownedCell(textCell(mark?.notes ?? '', WRAPPED), 'person'),
  ];
}

/** What a shared plank gives another room: marked and ticked in that room's list alone, so that it is cut once. */
function otherRoomRow(plank: SawPlank, order: number, list: SawList): Row {
  const { room, label, length } = plank.pieces[order];
  const name = `for ${room} ${label}`;
  const size = lengthText(length, list.takeoff.units, 'piece');
  return [
    numberCell(plank.plankNumber, '0', CENTRED),
    textCell(name, lookWith({ align: 'center', wrap: true })),
    textCell(size, WRAPPED),
    blankCell(),
    ...cutCells(plank, order),
    blankCell(),
    textCell(`See the cut list of ${room}.`, WRAPPED),
    textCell(leftOver(plank, order, list), WRAPPED),
    blankCell(),
    ownedCell(textCell(list.kept.get(markKey('saw', name, size, ''))?.notes ?? '', WRAPPED), 'person'),
  ];
}

function cutCells({ pieces }: SawPlank, order: number): Row {
  return [textCell(`${order + 1} of ${pieces.length}`, CENTRED), textCell(keptEnd(pieces[order].keeps), CENTRED)];
}

/** Told at the last cut of a plank. */
function leftOver(plank: SawPlank, order: number, { takeoff: { units } }: SawList): string {
  if (order < plank.pieces.length - 1) return '';
  return plank.leftOver > 0 ? lengthText(plank.leftOver, units, 'piece') : 'nothing';
}

function footRows(): Row[] {
  const notes = [
    'An end that stays is a factory end: the tongue or groove there is needed, cut from the other side.',
    'Ticks and notes stay at pieces that stay the same when this tab is filled again. What you write elsewhere is kept too, beside its line or at the foot.',
  ];
  return [
    ...notes.map((line) => [textCell(line)]),
    [],
    [textCell('Before you cut', TITLE)],
    ...CAUTIONS.flatMap((caution) => brokenLines(caution, LINE_LETTERS).map((line) => [textCell(line)])),
  ];
}

function banded(cells: Row, isBand: boolean): Row {
  if (!isBand) return cells;
  return cells.map((cell) => ({ ...cell, look: { ...cell.look, background: BAND } }));
}
