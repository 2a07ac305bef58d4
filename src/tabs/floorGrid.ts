/**
 * The floor as a grid of square cells: each cell is what its centre lies in. The far wall is at the top, as in the
 * sidebar's drawing.
 */

import { type Ticks, ticksOfMm } from '../geometry/length';
import { lastOf, madeOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { type Bounds, boundsOf, contains, type Region } from '../geometry/polygon';
import type { DoorwayMark, Takeoff } from '../takeoff/result';
import { type FloorShapes, withLevelRows } from './levelRows';

/** What a cell shows: the index of a piece (0 up), or one of the places below. */
export type GridPlace = number;

const OUTSIDE: GridPlace = -1;
/** In the room, but no floor: the gap at a wall, or a part left out. */
const BARE: GridPlace = -2;
export const CUTOUT: GridPlace = -3;
export const WALL: GridPlace = -4;
/** Doorway 1 is -10, doorway 2 is -11, and so on. */
const FIRST_DOORWAY: GridPlace = -10;

export interface FloorGrid {
  /** Of the rows as drawn, degrees anticlockwise from the right. */
  readonly rowAngle: number;
  /** Side of a cell in the room, and in the tab. */
  readonly cellSize: Ticks;
  readonly pixels: number;
  /** From the far wall to the near one, each from left to right. */
  readonly places: readonly (readonly GridPlace[])[];
}

/** Cells across and down. */
export interface GridSize {
  readonly columns: number;
  readonly rows: number;
}

/** How large a floor may be drawn with cells of so many pixels: within one of the sizes. */
export interface GridStep {
  readonly pixels: number;
  /** Cells that a row of planks must have; 1 when left out. */
  readonly leastCells?: number;
  readonly sizes: readonly GridSize[];
}

/** Our choice: finer than this a row looks no truer. */
const MOST_CELLS_A_ROW = 6;

/** Our choice: no wall of a house is thicker, so that floor running into a doorway ends within this. */
const THICKEST_WALL: Ticks = ticksOfMm(400);

/** The number of the doorway a cell shows; 0 when it shows none. */
export function doorwayNumberOf(place: GridPlace): number {
  return place <= FIRST_DOORWAY ? FIRST_DOORWAY - place + 1 : 0;
}

/**
 * The floor drawn with as many cells a row as fit, and never less than one cell, unless no step has room for that.
 *
 * @param steps tried in their order; none is larger than the last size of the last
 */
export function floorGrid(takeoff: Takeoff, steps: readonly GridStep[]): FloorGrid {
  const floor = withLevelRows(takeoff);
  const frame = frameOf(floor, steps);
  const places = madeOf(frame.rows, () => new Array<GridPlace>(frame.columns).fill(OUTSIDE));
  paintRoom(places, frame, floor);
  const isRoom = places.map((row) => row.map((place) => place !== OUTSIDE));
  for (const paint of [paintPiece, paintEdges(STRAIGHT), paintEdges(DIAGONAL), paintSliver(isRoom)]) {
    for (const [index, { polygon, holes }] of floor.pieces.entries())
      if (polygon.length > 0) paint(places, frame, [polygon, ...holes], index);
  }
  paintWalls(places, frame, isRoom, floor.doorways);
  const { cellSize, pixels } = frame;
  return { rowAngle: floor.rowAngle, cellSize, pixels, places: trimmed(places) };
}

interface GridFrame extends GridSize {
  readonly cellSize: Ticks;
  readonly pixels: number;
  /** Left end of the first column. */
  readonly left: Ticks;
  /** Top of the first row. */
  readonly top: Ticks;
}

/**
 * A whole number of cells to the width of a row, and their edges on the joints between rows, so that rows are drawn as
 * wide as they are. A floor too large for one cell per row is fitted to the page, and loses rows.
 */
function frameOf(takeoff: FloorShapes, steps: readonly GridStep[]): GridFrame {
  const bounds = boundsOf([takeoff.outline, ...takeoff.pieces.map((piece) => piece.polygon)]);
  const rowWidth = Math.max(0, ...takeoff.rows.map((row) => row.width));
  for (const { pixels, leastCells = 1, sizes } of steps) {
    for (let cells = MOST_CELLS_A_ROW; cells >= leastCells && rowWidth > 0; cells--) {
      const frame = frameWith(Math.max(1, Math.round(rowWidth / cells)), bounds, takeoff);
      if (sizes.some((size) => frame.columns <= size.columns && frame.rows <= size.rows)) return { ...frame, pixels };
    }
  }
  const { pixels, sizes } = lastOf(steps);
  const { columns, rows } = lastOf(sizes);
  // Three cells less: a wall on either side, and a part of a cell.
  const across = (bounds.x1 - bounds.x0) / (columns - 3);
  const cellSize = Math.ceil(Math.max(1, across, (bounds.y1 - bounds.y0) / (rows - 3)));
  return { ...frameWith(cellSize, bounds, takeoff), pixels };
}

function frameWith(cellSize: Ticks, bounds: Bounds, takeoff: FloorShapes): Omit<GridFrame, 'pixels'> {
  // The first row may be ripped on its far side from the wall; both sides of the second lie on joints or walls.
  const joints = boundsOf([(takeoff.rows[1] ?? takeoff.rows[0])?.polygon ?? takeoff.outline]);
  const left = edgeBelow(bounds.x0, joints.x0, cellSize) - cellSize;
  const bottom = edgeBelow(bounds.y0, joints.y0, cellSize) - cellSize;
  const rows = Math.ceil((bounds.y1 - bottom) / cellSize) + 1;
  return { cellSize, left, top: bottom + rows * cellSize, rows, columns: Math.ceil((bounds.x1 - left) / cellSize) + 1 };
}

/** The highest edge not above `low`, of cells that have an edge at `edge`. */
function edgeBelow(low: Ticks, edge: Ticks, cellSize: Ticks): Ticks {
  return edge - Math.ceil((edge - low) / cellSize) * cellSize;
}

function centreOf(frame: GridFrame, row: number, column: number): Point {
  const half = frame.cellSize / 2;
  return { x: frame.left + column * frame.cellSize + half, y: frame.top - row * frame.cellSize - half };
}

/** Calls `paint` for every cell whose centre may lie within the bounds. */
function eachCell(frame: GridFrame, bounds: Bounds, paint: (row: number, column: number) => void): void {
  const cell = frame.cellSize;
  const lastRow = Math.min(frame.rows - 1, Math.floor((frame.top - bounds.y0) / cell));
  const lastColumn = Math.min(frame.columns - 1, Math.floor((bounds.x1 - frame.left) / cell));
  for (let row = Math.max(0, Math.floor((frame.top - bounds.y1) / cell)); row <= lastRow; row++) {
    for (let column = Math.max(0, Math.floor((bounds.x0 - frame.left) / cell)); column <= lastColumn; column++) {
      paint(row, column);
    }
  }
}

function paintRoom(places: GridPlace[][], frame: GridFrame, { outline, cutouts }: FloorShapes): void {
  eachCell(frame, boundsOf([outline]), (row, column) => {
    const centre = centreOf(frame, row, column);
    if (!contains([outline], centre)) return;
    places[row][column] = cutouts.some((cutout) => contains([cutout], centre)) ? CUTOUT : BARE;
  });
}

function paintPiece(places: GridPlace[][], frame: GridFrame, region: Region, index: number): void {
  eachCell(frame, boundsOf(region), (row, column) => {
    if (contains(region, centreOf(frame, row, column))) places[row][column] = index;
  });
}

type Paint = (places: GridPlace[][], frame: GridFrame, region: Region, index: number) => void;

type Ways = readonly (readonly [number, number])[];

/** Square to the walls: beside an end joint the cell goes to the piece that lies straight before it, as the next do. */
const STRAIGHT: Ways = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];
/** Into a corner of the room. */
const DIAGONAL: Ways = [
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
];

/** The gap at a wall is narrower than most cells: a cell whose centre is in it goes to a piece a quarter away. */
function paintEdges(ways: Ways): Paint {
  return (places, frame, region, index) => {
    const quarter = frame.cellSize / 4;
    eachCell(frame, boundsOf(region), (row, column) => {
      if (places[row][column] !== BARE) return;
      const { x, y } = centreOf(frame, row, column);
      const isIn = ([dx, dy]: Ways[number]) => contains(region, { x: x + dx * quarter, y: y + dy * quarter });
      if (ways.some(isIn)) places[row][column] = index;
    });
  };
}

/**
 * A piece that lies between centres, such as a narrow rip, gets the cells it lies in that no other piece has. Where they
 * lie beyond the wall the room is drawn so much larger, and the wall round it.
 */
function paintSliver(isRoom: boolean[][]): Paint {
  return (places, frame, region, index) => {
    if (places.some((row) => row.indexOf(index) >= 0)) return;
    const bounds = boundsOf(region);
    const middle = { x: (bounds.x0 + bounds.x1) / 2, y: (bounds.y0 + bounds.y1) / 2 };
    eachCell(frame, bounds, (row, column) => {
      const centre = centreOf(frame, row, column);
      const isIn = contains(region, { x: centre.x, y: middle.y }) || contains(region, { x: middle.x, y: centre.y });
      if (!isIn || places[row][column] >= 0) return;
      places[row][column] = index;
      isRoom[row][column] = true;
    });
  };
}

/**
 * Every cell outside that touches the room, side or corner, is wall. Before an opening it is doorway, and so is the
 * cell beyond the floor that runs into it.
 */
function paintWalls(
  places: GridPlace[][],
  frame: GridFrame,
  isRoom: readonly (readonly boolean[])[],
  doorways: readonly DoorwayMark[],
): void {
  const isFloor = places.map((row, r) => row.map((place, c) => place >= 0 || isRoom[r][c]));
  for (let row = 0; row < frame.rows; row++) {
    for (let column = 0; column < frame.columns; column++) {
      if (places[row][column] !== OUTSIDE || !touches(isFloor, row, column)) continue;
      const centre = centreOf(frame, row, column);
      const doorway = doorways.find((mark) => liesAt(mark, centre, THICKEST_WALL + 1.5 * frame.cellSize));
      if (doorway) places[row][column] = FIRST_DOORWAY - doorway.doorwayNumber + 1;
      else if (touches(isRoom, row, column)) places[row][column] = WALL;
    }
  }
}

function touches(isPart: readonly (readonly boolean[])[], row: number, column: number): boolean {
  for (const r of [row - 1, row, row + 1]) {
    for (const c of [column - 1, column, column + 1]) if (isPart[r]?.[c]) return true;
  }
  return false;
}

/** Whether the point lies before the opening, at most `reach` from it on either side. */
function liesAt({ from, to }: DoorwayMark, point: Point, reach: Ticks): boolean {
  const along = { x: to.x - from.x, y: to.y - from.y };
  const length = Math.sqrt(along.x * along.x + along.y * along.y);
  if (length === 0) return false;
  const offset = { x: point.x - from.x, y: point.y - from.y };
  const place = (offset.x * along.x + offset.y * along.y) / length;
  const distance = Math.abs(offset.x * along.y - offset.y * along.x) / length;
  return place >= 0 && place <= length && distance <= reach;
}

/** Without the empty rows and columns around the drawing. */
function trimmed(places: readonly (readonly GridPlace[])[]): readonly (readonly GridPlace[])[] {
  const isUsed = (row: readonly GridPlace[]) => row.some((place) => place !== OUTSIDE);
  const used = places.map(isUsed);
  const rows = places.slice(used.indexOf(true), used.lastIndexOf(true) + 1);
  const columns = places[0].map((_, column) => rows.some((row) => row[column] !== OUTSIDE));
  return rows.map((row) => row.slice(columns.indexOf(true), columns.lastIndexOf(true) + 1));
}
