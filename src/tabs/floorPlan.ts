/**
 * The `Floor plan - <room>` tab: the floor to scale in coloured cells, pieces numbered as in the cut list, and below it
 * what the colours mean and which way to lay. It fits one page.
 */

import { lastOf, leastBy, madeOf } from '../geometry/lists';
import { boundsOf } from '../geometry/polygon';
import type { FloorPiece, Takeoff } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { nameKey } from '../takeoff/text/names';
import {
  blankCell,
  type Cell,
  filledRows,
  INK,
  type Look,
  lookWith,
  PAGE,
  PAPER,
  PLAIN,
  STRONG,
  type TabBlock,
  TITLE,
  textCell,
} from './block';
import { brokenLines } from './brokenLines';
import { CUTOUT, doorwayNumberOf, type FloorGrid, floorGrid, type GridPlace, type GridStep, WALL } from './floorGrid';
import { directionText } from './layDirectionText';
import { LANDSCAPE_PIXELS, LETTER_PIXELS, PORTRAIT_PIXELS } from './paper';

/** Size of the numbers in cells, and pixels of a letter of that size, by the pixels of a cell's side. From memory of common
 * fonts; a label too wide runs over into its own piece. */
const NUMBERS: Readonly<Record<number, { readonly size: number; readonly letterPixels: number }>> = {
  13: { size: 7, letterPixels: 5.5 },
  10: { size: 6, letterPixels: 4.7 },
};
/** Columns left of the drawing, for the numbers of the rows. */
const MARGIN = 2;
/** And one of paper at its right. */
const BESIDE = MARGIN + 1;
/** Drawing and legend on one page, upright or lying, with cells of so many pixels. */
const onePage = (pixels: number, leastCells: number): GridStep => ({
  pixels,
  leastCells,
  sizes: [
    { columns: Math.floor(LANDSCAPE_PIXELS / pixels) - BESIDE, rows: Math.floor(460 / pixels) },
    { columns: Math.floor(PORTRAIT_PIXELS / pixels) - BESIDE, rows: Math.floor(680 / pixels) },
  ],
});
/** Two cells a row show where its pieces end before larger cells do; a large floor takes several pages. */
const STEPS: readonly GridStep[] = [
  onePage(13, 2),
  onePage(10, 2),
  onePage(13, 1),
  onePage(10, 1),
  { pixels: 10, sizes: [{ columns: Math.floor(LANDSCAPE_PIXELS / 10) - BESIDE, rows: 132 }] },
];
/** More pieces than this without a number are not listed one by one. */
const MOST_LISTED = 60;

/**
 * Four tints: two for the pieces of odd rows in turn, two for those of even rows. Neighbours differ in lightness by at
 * least 9 of 100, so that a black and white print tells them apart, and ink stays readable on all of them.
 */
export const PIECE_TINTS: readonly (readonly [string, string])[] = [
  ['#fdf8ec', '#d3bd86'],
  ['#d5dfd8', '#93aa9f'],
];
export const WALL_COLOR = '#3d4441';
export const CUTOUT_COLOR = '#787878';
export const DOORWAY_COLOR = '#f4cfa8';

export function floorPlanMark(roomName: string): string {
  return `floor plan/${nameKey(roomName)}`;
}

/** The name of its tab. */
export function floorPlanTitle(roomName: string): string {
  return `Floor plan - ${roomName}`;
}

/** A floor drawn in cells, without anything around it. */
export interface DrawnFloor {
  readonly cells: readonly (readonly Cell[])[];
  readonly grid: FloorGrid;
  /** Labels of the pieces too small to hold their number. */
  readonly unnumbered: readonly string[];
}

/** The whole tab. */
export function floorPlanBlock(takeoff: Takeoff): TabBlock {
  const { name } = takeoff.entry;
  const drawn = drawFloor(takeoff);
  const withMargin = drawn.cells.map((row, r) => [...rowMargin(takeoff, drawn, r), ...row]);
  const { pixels } = drawn.grid;
  const columnCount = Math.max(Math.floor(PORTRAIT_PIXELS / pixels), withMargin[0].length + 1);
  const width = columnCount * pixels;
  const rows = [
    [textCell(`Floor plan: ${name}`, TITLE)],
    ...withMargin.map(endBlank),
    [],
    ...legendRows(takeoff, drawn, width),
  ];
  return {
    title: floorPlanTitle(name),
    mark: floorPlanMark(name),
    cells: filledRows(rows, columnCount),
    columnWidths: new Array(columnCount).fill(pixels),
    heights: [{ firstRowNumber: 2, rowCount: withMargin.length, pixels }],
    ...PAGE,
    landscape: width > PORTRAIT_PIXELS,
  };
}

/** The drawing alone: pieces with their numbers, walls, doorways, cut-outs. */
export function drawFloor(takeoff: Takeoff, steps: readonly GridStep[] = STEPS): DrawnFloor {
  const grid = floorGrid(takeoff, steps);
  const number = numbersIn(grid);
  const labels = new Map<string, string>();
  const unnumbered: string[] = [];
  const spots = spotsOf(grid, takeoff.pieces);
  takeoff.pieces.forEach((piece, index) => {
    const spot = spots[index];
    if (spot) labels.set(`${spot.row}/${spot.column}`, piece.label);
    else unnumbered.push(piece.label);
  });
  for (const spot of doorwaySpots(grid)) labels.set(`${spot.row}/${spot.column}`, `D${spot.doorwayNumber}`);
  const cells = grid.places.map((row, r) =>
    row.map((place, c) => {
      const look = lookOf(place, takeoff.pieces, number.size);
      const label = labels.get(`${r}/${c}`);
      return label === undefined ? blankCell(look) : textCell(label, look);
    }),
  );
  return { cells, grid, unnumbered };
}

interface Spot {
  readonly row: number;
  readonly column: number;
}

/** For each piece the cell its number starts in: near its middle, with room to the right; null when there is none. */
function spotsOf(grid: FloorGrid, pieces: readonly FloorPiece[]): readonly (Spot | null)[] {
  const stretches = pieces.map((): Stretch[] => []);
  grid.places.forEach((places, row) => {
    for (let from = 0, to = 0; from < places.length; from = to) {
      while (to < places.length && places[to] === places[from]) to++;
      if (places[from] >= 0) stretches[places[from]].push({ row, from, to });
    }
  });
  return pieces.map(({ label }, index) => spotIn(stretches[index], cellsFor(label, grid)));
}

/** Cells of one piece side by side in one row of the grid. */
interface Stretch {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

function spotIn(stretches: readonly Stretch[], needed: number): Spot | null {
  const wide = stretches.filter(({ from, to }) => to - from >= needed);
  if (wide.length === 0) return null;
  const middle = (stretches[0].row + lastOf(stretches).row) / 2;
  const best = leastBy(wide, (b) => Math.abs(b.row - middle));
  return { row: best.row, column: best.from + Math.floor((best.to - best.from - needed) / 2) };
}

function cellsFor(label: string, grid: FloorGrid): number {
  return Math.ceil((label.length * numbersIn(grid).letterPixels) / grid.pixels);
}

function numbersIn({ pixels }: FloorGrid) {
  return NUMBERS[pixels] ?? NUMBERS[10];
}

/** The cell in the middle of each doorway. */
function doorwaySpots(grid: FloorGrid): readonly (Spot & { readonly doorwayNumber: number })[] {
  const cells = new Map<number, Spot[]>();
  grid.places.forEach((places, row) => {
    places.forEach((place, column) => {
      const doorwayNumber = doorwayNumberOf(place);
      if (doorwayNumber > 0) cells.set(doorwayNumber, [...(cells.get(doorwayNumber) ?? []), { row, column }]);
    });
  });
  return [...cells].map(([doorwayNumber, spots]) => ({ ...spots[Math.floor((spots.length - 1) / 2)], doorwayNumber }));
}

function lookOf(place: GridPlace, pieces: readonly FloorPiece[], size: number): Look {
  const small = lookWith({ size });
  if (place >= 0) return { ...small, background: tintOf(pieces[place]), bold: pieces[place].rowNumber === 1 };
  if (doorwayNumberOf(place) > 0) return { ...small, background: DOORWAY_COLOR };
  return { ...small, background: place === WALL ? WALL_COLOR : place === CUTOUT ? CUTOUT_COLOR : PAPER };
}

/** The tint of a piece: by its row, and in turn along it, from run to run. */
function tintOf({ rowNumber, pieceNumber }: FloorPiece): string {
  return PIECE_TINTS[(rowNumber + 1) % 2][(pieceNumber + 1) % 2];
}

/** Left of the drawing: the number of the row that begins there, where rows run across the page. */
function rowMargin({ rows, pieces }: Takeoff, { grid }: DrawnFloor, gridRow: number): Cell[] {
  const { size } = numbersIn(grid);
  const margin = madeOf(MARGIN, () => blankCell(lookWith({ size })));
  if (grid.rowAngle % 180 !== 0) return margin;
  const rowNumberAt = (r: number) => firstRowNumber(grid.places[r] ?? [], pieces);
  const rowNumber = rowNumberAt(gridRow);
  if (rowNumber === 0 || rowNumber === rowNumberAt(gridRow - 1)) return margin;
  const look = lookWith({ size, align: 'right', bold: rowNumber === 1 || rowNumber === rows.length });
  return [...margin.slice(1), textCell(String(rowNumber), look)];
}

function firstRowNumber(places: readonly GridPlace[], pieces: readonly FloorPiece[]): number {
  const place = places.find((candidate) => candidate >= 0);
  return place === undefined ? 0 : pieces[place].rowNumber;
}

/** A row of the drawing filled up with paper, not with the colour of its last cell. */
function endBlank(row: readonly Cell[]): readonly Cell[] {
  return [...row, blankCell(PLAIN)];
}

/** @param width pixels that the lines may take */
function legendRows(takeoff: Takeoff, drawn: DrawnFloor, width: number): (readonly Cell[])[] {
  const letters = Math.floor(width / LETTER_PIXELS);
  const text = (sentence: string, look: Look = PLAIN) =>
    brokenLines(sentence, letters).map((line) => [textCell(line, look)]);
  const tints = PIECE_TINTS.flatMap((pair) => [...pair]);
  return [
    ...text(directionText(takeoff), STRONG),
    ...text(
      `Scale: the side of a cell is about ${lengthText(drawn.grid.cellSize, takeoff.units, 'piece')}. The room is ${overAll(takeoff)} over all.`,
    ),
    [...tints.map(swatch), textCell(' pieces, numbered row-piece as in the cut list; row 1 in bold')],
    [swatch(WALL_COLOR), swatch(WALL_COLOR), textCell(' walls')],
    ...(takeoff.cutouts.length > 0 ? [[swatch(CUTOUT_COLOR), swatch(CUTOUT_COLOR), textCell(' no floor')]] : []),
    ...doorwayRows(takeoff),
    ...text(unnumberedText(drawn.unnumbered)),
    ...text(`To print: choose ${width > PORTRAIT_PIXELS ? 'landscape' : 'portrait'}.`),
  ];
}

function swatch(color: string): Cell {
  return blankCell(lookWith({ background: color, color: INK }));
}

function doorwayRows({ doorways }: Takeoff): (readonly Cell[])[] {
  const words = {
    transition: 'the floor ends under the door, at a transition',
    'goes on': 'the floor goes on into the next room',
    'stays shut': 'no floor under the door',
  };
  return doorways.map(({ doorwayNumber, floor }) => [
    swatch(DOORWAY_COLOR),
    swatch(DOORWAY_COLOR),
    textCell(` D${doorwayNumber}: ${words[floor]}`),
  ]);
}

function overAll({ outline, units }: Takeoff): string {
  const { x0, y0, x1, y1 } = boundsOf([outline]);
  return `${lengthText(x1 - x0, units, 'room')} by ${lengthText(y1 - y0, units, 'room')}`;
}

function unnumberedText(labels: readonly string[]): string {
  if (labels.length === 0) return 'Every piece is numbered.';
  if (labels.length > MOST_LISTED)
    return `${labels.length} pieces are too small here to be numbered: see the cut list.`;
  return `Too small here to be numbered: ${labels.join(', ')}.`;
}
