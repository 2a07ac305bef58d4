/** The two lists of a cut list: one line per piece in laying order, and the same cuts by plank for the person at the saw. */

import type { Ticks } from '../geometry/length';
import { isFilled } from '../geometry/lists';
import type { CutKind, FloorPiece, SawPiece, SawPlank, Takeoff } from '../takeoff/result';
import { KEPT_WORDS } from '../takeoff/telling/keptWords';
import { lengthText, pieceText } from '../takeoff/text/lengthText';
import { plural } from '../takeoff/text/plural';
import {
  BAND,
  blankCell,
  type Cell,
  choiceCell,
  HEADED,
  lookWith,
  numberCell,
  ownedCell,
  TITLE,
  textCell,
  tickCell,
} from './block';
import {
  CUT_HEADINGS,
  drawnText,
  type KeptMark,
  type KeptMarks,
  LAY_HEADINGS,
  lostWords,
  markKey,
  runKey,
} from './keptMarks';

type Row = readonly Cell[];

const CENTRED = lookWith({ align: 'center' });
const LABEL = lookWith({ bold: true, align: 'center' });
const WRAPPED = lookWith({ wrap: true });
/** Cuts and rests in one line of a narrow column. */
const SMALL = lookWith({ wrap: true, size: 9 });

/** At the saw: what is typed of a piece stands in the list for laying. */
const NOTHING_TYPED: Row = [blankCell(), blankCell(), blankCell()];

const ORDINALS = ['1st', '2nd', '3rd'];

/** The line of headings, then one line per piece. */
export function layingRows(takeoff: Takeoff, kept: KeptMarks): Row[] {
  const { pieces, rows } = takeoff;
  const runs = runsOf(pieces);
  const waiting = new Map(rows.map((row) => [row.rowNumber, row.waiting]));
  const lines = pieces.map((piece, i) => {
    const isRowLaid = pieces[i + 1]?.rowNumber !== piece.rowNumber;
    const told = isRowLaid ? waitingText(waiting.get(piece.rowNumber) ?? []) : '';
    return layingRow(piece, { told, run: runs.get(piece) ?? null }, takeoff, kept);
  });
  return [headingRow(LAY_HEADINGS, takeoff), ...lines];
}

/** `9-4, 6-1; 2 others`: those for other rooms stand at their own pieces; named here, every row would be as high as five. */
function waitingText(labels: readonly string[]): string {
  const own = labels.filter((label) => !label.includes(' '));
  const others = labels.length - own.length;
  const parts = [own.join(', '), others > 0 ? plural(others, 'other') : ''].filter(isFilled);
  return parts.join('; ') || 'none';
}

/** A run, by its place in its row, counted from 1. */
interface ListedRun {
  readonly place: number;
  readonly length: Ticks;
}

/** The runs by their first pieces; each is as long as its pieces. */
function runsOf(pieces: readonly FloorPiece[]): ReadonlyMap<FloorPiece, ListedRun> {
  const runs = new Map<FloorPiece, ListedRun>();
  let first = pieces[0];
  for (const piece of pieces) {
    const isSameRow = piece.rowNumber === first.rowNumber;
    const known = isSameRow && piece.runNumber === first.runNumber ? runs.get(first) : undefined;
    const place = known?.place ?? (isSameRow ? (runs.get(first)?.place ?? 0) + 1 : 1);
    if (!known) first = piece;
    runs.set(first, { place, length: (known?.length ?? 0) + piece.length });
  }
  return runs;
}

interface LineFacts {
  /** What waits once the row is laid. */
  readonly told: string;
  /** The run that begins with the piece. */
  readonly run: ListedRun | null;
}

/** What a person types of a piece as it was cut, and of the run that begins with it. */
function asLaidCells(
  piece: FloorPiece,
  run: ListedRun | null,
  mark: KeptMark | undefined,
  takeoff: Takeoff,
  kept: KeptMarks,
): Row {
  const typed = run && kept.get(runKey(piece.label, run.place))?.run;
  const drawn = run ? drawnText(lengthText(run.length, takeoff.units, 'piece')) : '';
  return [
    ownedCell(textCell(mark?.cutAt ?? '', WRAPPED), 'person'),
    ownedCell(choiceCell(mark?.lost ?? '', lostWords(takeoff.units), SMALL), 'person'),
    typed ? ownedCell(textCell(typed, WRAPPED), 'person') : ownedCell(textCell(drawn, SMALL), { input: 'run' }),
  ];
}

function layingRow(piece: FloorPiece, { told, run }: LineFacts, takeoff: Takeoff, kept: KeptMarks): Row {
  const size = sizeOf(piece, takeoff.units);
  const mark = kept.get(markKey('lay', piece.label, size.length, size.width));
  const cells = [
    tickCell(mark?.ticked ?? false, CENTRED),
    textCell(piece.label, LABEL),
    textCell(size.length, WRAPPED),
    textCell(KEPT_WORDS[piece.keeps], CENTRED),
    textCell(sawCuts(piece.cuts), SMALL),
    textCell(piece.rest, SMALL),
    ...asLaidCells(piece, run, mark, takeoff, kept),
    textCell(size.width, WRAPPED),
    textCell(sourceText(piece), SMALL),
    textCell(growthText(piece, takeoff), WRAPPED),
    textCell(marksText(piece, takeoff.units), SMALL),
    textCell(told, SMALL),
    textCell(piece.room, WRAPPED),
    ownedCell(textCell(mark?.notes ?? '', WRAPPED), 'person'),
  ];
  return banded(ofRooms(cells, takeoff), piece.rowNumber % 2 === 0);
}

function headingRow(headings: readonly string[], takeoff: Takeoff): Row {
  return ofRooms(
    headings.map((heading) => textCell(heading, lookWith({ wrap: true, size: 7 }, HEADED))),
    takeoff,
  );
}

/** Without the column of rooms where there is one room. */
function ofRooms(cells: Row, { rooms }: Takeoff): Row {
  const roomColumn = LAY_HEADINGS.indexOf('Room');
  return rooms.length > 1 ? cells : cells.filter((_, column) => column !== roomColumn);
}

/** `7`, `7: offcut of 3-4`, `1: strip of 1-1`. */
function sourceText({ plankNumber, offcutOf, stripOf }: FloorPiece): string {
  if (stripOf !== '') return `${plankNumber}: strip of ${stripOf}`;
  return offcutOf === '' ? `${plankNumber}` : `${plankNumber}: offcut of ${offcutOf}`;
}

/** Widths have a column of their own: a rip tells no width again that is the piece's, a taper neither of the two. */
function marksText({ marks, widthLeft, widthRight }: FloorPiece, units: Takeoff['units']): string {
  const [left, right] = [widthLeft, widthRight].map(pieceText(units));
  const [told, rest] =
    left === right ? [`Rip to ${left} wide: `, ''] : [`: ${left} wide at the left end, ${right} at the right.`, '.'];
  return marks.map((mark) => mark.replace(told, rest)).join(' ');
}

function growthText({ mayGrow }: FloorPiece, { units }: Takeoff): string {
  if (mayGrow === null) return '';
  return mayGrow > 0 ? lengthText(mayGrow, units, 'piece') : 'none';
}

function sizeOf(piece: FloorPiece, units: Takeoff['units']): { readonly length: string; readonly width: string } {
  const shown = pieceText(units);
  const { length, shortPoint, widthLeft, widthRight } = piece;
  const short = shortPoint === 0 ? 'the other edge runs out' : `${shown(shortPoint)} shorter edge`;
  return {
    length: length === shortPoint ? shown(length) : `${shown(length)} longer edge, ${short}`,
    width: widthLeft === widthRight ? shown(widthLeft) : `${shown(widthLeft)} left, ${shown(widthRight)} right`,
  };
}

/** `crosscut, then rip`: cuts in their order. */
function sawCuts(cuts: readonly CutKind[]): string {
  return cuts.length > 0 ? cuts.join(', then ') : 'none';
}

/** The planks that meet the saw, one line per cut; those laid as they come are counted. */
export function sawRows(takeoff: Takeoff, kept: KeptMarks): Row[] {
  const pieces = new Map(takeoff.pieces.map((piece) => [piece.label, piece]));
  const list: SawList = { takeoff, pieces, kept };
  const cut = takeoff.planks.filter(
    (plank) => plank.pieces.length > 1 || ownPiece(plank, plank.pieces[0], list).cuts.length > 0,
  );
  const rows = cut.flatMap((plank, i) =>
    plank.pieces.map((piece) => {
      const row = piece.room === '' ? sawRow(plank, piece, list) : otherRoomRow(plank, piece, list);
      return banded(ofRooms(row, takeoff), i % 2 === 1);
    }),
  );
  const whole = takeoff.planks.length - cut.length;
  const wholeRow =
    whole > 0 ? [[blankCell(), blankCell(), textCell(`${plural(whole, 'plank')} laid whole, without a cut.`)]] : [];
  return [
    [blankCell(), blankCell(), textCell('The same cuts by plank, for the saw', TITLE)],
    headingRow(CUT_HEADINGS, takeoff),
    ...rows,
    ...wholeRow,
  ];
}

interface SawList {
  readonly takeoff: Takeoff;
  readonly pieces: ReadonlyMap<string, FloorPiece>;
  readonly kept: KeptMarks;
}

function ownPiece({ plankNumber }: SawPlank, { label }: SawPiece, { pieces }: SawList): FloorPiece {
  const piece = pieces.get(label);
  if (piece) return piece;
  throw new Error(`Internal: plank ${plankNumber} gives a piece ${label} that the floor does not have.`);
}

function sawRow(plank: SawPlank, cut: SawPiece, list: SawList): Row {
  const piece = ownPiece(plank, cut, list);
  const size = sizeOf(piece, list.takeoff.units);
  const mark = list.kept.get(markKey('saw', piece.label, size.length, size.width));
  return [
    tickCell(mark?.ticked ?? false, CENTRED),
    textCell(piece.label, LABEL),
    textCell(size.length, WRAPPED),
    textCell(KEPT_WORDS[cut.keeps], CENTRED),
    textCell(sawCuts(piece.cuts), SMALL),
    textCell(restText(plank, cut), SMALL),
    ...NOTHING_TYPED,
    textCell(size.width, WRAPPED),
    numberCell(plank.plankNumber, '0', lookWith({ align: 'left' })),
    textCell(cutText(plank, cut), SMALL),
    textCell(marksText(piece, list.takeoff.units), SMALL),
    blankCell(),
    blankCell(),
    ownedCell(textCell(mark?.notes ?? '', WRAPPED), 'person'),
  ];
}

/** What a shared plank gives another room: marked and ticked in that room's list alone, so that it is cut once. */
function otherRoomRow(plank: SawPlank, cut: SawPiece, list: SawList): Row {
  const { room, label, length } = cut;
  const name = `for ${label}`;
  const size = lengthText(length, list.takeoff.units, 'piece');
  return [
    blankCell(),
    textCell(name, lookWith({ align: 'center', wrap: true, size: 7 })),
    textCell(size, WRAPPED),
    textCell(KEPT_WORDS[cut.keeps], CENTRED),
    textCell(room, SMALL),
    textCell(restText(plank, cut), SMALL),
    ...NOTHING_TYPED,
    blankCell(),
    numberCell(plank.plankNumber, '0', lookWith({ align: 'left' })),
    textCell(cutText(plank, cut), SMALL),
    textCell('See its cut list.', SMALL),
    blankCell(),
    blankCell(),
    ownedCell(textCell(list.kept.get(markKey('saw', name, size, ''))?.notes ?? '', WRAPPED), 'person'),
  ];
}

/** `2nd cut` of its plank, or `strip of 1-1`. */
function cutText({ pieces }: SawPlank, cut: SawPiece): string {
  if (cut.stripOf !== '') return `strip of ${cut.stripOf}`;
  const order = pieces.filter(({ stripOf }) => stripOf === '').indexOf(cut);
  return `${ORDINALS[order] ?? `${order + 1}th`} cut`;
}

/** As in the list for laying; after the last cut it also says when nothing is left. */
function restText({ pieces }: SawPlank, cut: SawPiece): string {
  if (cut.rest !== '' || cut.stripOf !== '') return cut.rest;
  return pieces.length > 1 ? 'nothing left' : '';
}

function banded(cells: Row, isBand: boolean): Row {
  if (!isBand) return cells;
  return cells.map((cell) => ({ ...cell, look: { ...cell.look, background: BAND } }));
}
