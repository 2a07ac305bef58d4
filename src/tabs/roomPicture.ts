/** A floor as the homeowner sees it: a caption, the drawing with its sizes, and what cannot be seen in it. */

import type { Ticks, Units } from '../geometry/length';
import { entryAfter } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { distanceBetween } from '../geometry/point';
import { boundsOf } from '../geometry/polygon';
import type { Takeoff } from '../takeoff/result';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import { blankCell, blankCells, type Cell, lookWith, PLAIN, textCell } from './block';
import type { GridPlace, GridStep } from './floorGrid';
import { drawFloor } from './floorPlan';
import { CELL_PIXELS, COLUMN_COUNT, pageRow, sectionRows, textRows } from './handedOver';
import { PAGE_PIXELS, type PageRow, ROW_PIXELS } from './pages';

const CAPTION = lookWith({ bold: true, size: 13 });
const CAPTION_PIXELS = 24;
/** Columns at the right of a drawing, for its depth. */
const DEPTH_COLUMNS = 11;
/** Rows round a drawing: a blank one, caption, length. */
const AROUND = CELL_PIXELS + CAPTION_PIXELS + ROW_PIXELS;
/** Rows that only some have: depth, three of walls, and before the first plan the heading with what colours mean. */
const BESIDES = 7 * ROW_PIXELS;
const sizeIn = (pixels: number) => ({
  columns: COLUMN_COUNT - DEPTH_COLUMNS,
  rows: Math.floor(pixels / CELL_PIXELS),
});
/** Two to a page where two cells a row show enough; else a page each, as large as it takes. */
const STEPS: readonly GridStep[] = [
  { pixels: CELL_PIXELS, leastCells: 2, sizes: [sizeIn(PAGE_PIXELS / 2 - AROUND)] },
  { pixels: CELL_PIXELS, sizes: [sizeIn(PAGE_PIXELS - AROUND - BESIDES)] },
];

/** The plans of all floors, each to be kept on one page, the first with the heading. */
export function planRows(floors: readonly Takeoff[], units: Units): readonly (readonly PageRow[])[] {
  const [, ...heading] = sectionRows('Floor plans', textRows(colourWords(floors, units)));
  return floors.map((floor, i) => [pageRow([], CELL_PIXELS), ...(i === 0 ? heading : []), ...pictureRows(floor)]);
}

/** How the plans are to be looked at, and what their colours mean. */
function colourWords(floors: readonly Takeoff[], units: Units): string {
  const parts = [
    'Seen from above, the far wall at the top',
    ...(floors.some(({ doorways }) => doorways.length > 0) ? ['doorways in orange'] : []),
    ...(floors.some(({ cutouts }) => cutouts.length > 0) ? [countryWords('grey: no floor', units)] : []),
  ];
  return `${parts.join('; ')}.`;
}

function pictureRows(floor: Takeoff): readonly PageRow[] {
  const { cells, grid } = drawFloor(floor, STEPS);
  const { x0, y0, x1, y1 } = boundsOf([floor.outline]);
  const show = (length: Ticks) => lengthText(length, floor.units, 'room');
  const middle = Math.floor(grid.places[0].length / 2);
  const drawing = withDepth(
    cells.map((row) => row.map(({ look }) => blankCell(look))),
    grid.places,
    show(y1 - y0),
  );
  return [
    pageRow([textCell(captionOf(floor), CAPTION)], CAPTION_PIXELS),
    pageRow([...blankCells(middle), textCell(show(x1 - x0), lookWith({ align: 'center' }))]),
    ...drawing.rows,
    ...(drawing.hasDepth ? [] : textRows(`From the near wall to the far one: ${show(y1 - y0)}.`)),
    ...wordsOf(floor, show).flatMap((line) => textRows(line)),
  ];
}

function captionOf({ entry, rooms }: Takeoff): string {
  const product = entry.product.name.trim();
  return `${rooms.length > 1 ? rooms.join(' and ') : entry.name}${product && `: ${product}`}`;
}

/**
 * Ordinary text is higher than a cell of the drawing: two rows of cells that show the same are made one of both their
 * heights, and the depth stands beside it.
 */
function withDepth(cells: readonly (readonly Cell[])[], places: readonly (readonly GridPlace[])[], depth: string) {
  const isSame = (row: number) => places[row].every((place, c) => place === places[row + 1]?.[c]);
  const middle = (places.length - 1) / 2;
  const pairs = places.flatMap((_, row) => (isSame(row) ? [row] : []));
  const at = pairs.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0] ?? -1;
  const rows = cells.flatMap((row, r) => {
    if (at >= 0 && r === at + 1) return [];
    if (r !== at) return [pageRow([...row, blankCell(PLAIN)], CELL_PIXELS)];
    return [pageRow([...row, blankCell(PLAIN), textCell(depth)], 2 * CELL_PIXELS)];
  });
  return { rows, hasDepth: at >= 0 };
}

/** Walls of a room that is no rectangle. */
function wordsOf(floor: Takeoff, show: (length: Ticks) => string): readonly string[] {
  if (floor.outline.length === 4) return [];
  return [`Walls, clockwise from the upper left corner: ${wallLengths(floor.outline).map(show).join(', ')}.`];
}

/** Clockwise, beginning at the highest corner, the leftmost of several. */
function wallLengths(outline: readonly Point[]): readonly Ticks[] {
  const corners = [...outline].reverse();
  const isBefore = (a: Point, b: Point) => a.y > b.y || (a.y === b.y && a.x < b.x);
  const first = corners.reduce((best, corner, i) => (isBefore(corner, corners[best]) ? i : best), 0);
  const turned = [...corners.slice(first), ...corners.slice(0, first)];
  return turned.map((corner, i) => {
    const next = entryAfter(turned, i);
    return Math.round(distanceBetween(corner, next));
  });
}
