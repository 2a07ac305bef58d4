/** A floor as the homeowner sees it: a caption, the drawing with its sizes, and what cannot be seen in it. */
import type { Ticks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { boundsOf } from '../geometry/polygon';
import type { Takeoff } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import { blankCell, type Cell, lookWith, PLAIN, textCell } from './block';
import type { GridPlace, GridStep } from './floorGrid';
import { drawFloor } from './floorPlan';
import { CELL_PIXELS, COLUMN_COUNT, pageRow, textRows } from './handedOver';
import { PAGE_PIXELS, type PageRow, ROW_PIXELS } from './pages';

const CAPTION = lookWith({ bold: true, size: 13 });
const CAPTION_PIXELS = 30;
/** Columns at the right of a drawing, for its depth. */
const DEPTH_COLUMNS = 10;
/** Rows round a drawing, at most: blank, caption, length, depth, three of words. */
const AROUND = CAPTION_PIXELS + 6 * ROW_PIXELS;
/** A page each, as large as it takes. */
const STEPS: readonly GridStep[] = [
  {
    pixels: CELL_PIXELS,
    sizes: [{ columns: COLUMN_COUNT - DEPTH_COLUMNS, rows: Math.floor((PAGE_PIXELS - AROUND) / CELL_PIXELS) }],
  },
];

/** The rows of one floor, to be kept on one page. */
export function pictureRows(floor: Takeoff): readonly PageRow[] {
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
    pageRow([]),
    pageRow([textCell(captionOf(floor), CAPTION)], CAPTION_PIXELS),
    pageRow([...blanks(middle), textCell(show(x1 - x0), lookWith({ align: 'center' }))]),
    ...drawing.rows,
    ...(drawing.hasDepth ? [] : textRows(`From the near wall to the far one: ${show(y1 - y0)}.`)),
    ...wordsOf(floor, show).flatMap((line) => textRows(line)),
  ];
}

function captionOf({ entry, rooms }: Takeoff): string {
  const product = entry.product.name.trim();
  return `${rooms.length > 1 ? rooms.join(' and ') : entry.name}${product && `: ${product}`}`;
}

function blanks(count: number): Cell[] {
  return Array.from({ length: count }, () => blankCell());
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

/** Walls of a room that is no rectangle, and what the colours mean. */
function wordsOf(floor: Takeoff, show: (length: Ticks) => string): readonly string[] {
  const walls = wallLengths(floor.outline).map(show).join(', ');
  const parts = [
    'Seen from above, the far wall at the top',
    ...(floor.doorways.length > 0 ? ['doorways in orange'] : []),
    ...(floor.cutouts.length > 0 ? ['grey: no floor'] : []),
  ];
  const around = floor.outline.length > 4 ? [`Walls, clockwise from the upper left corner: ${walls}.`] : [];
  return [...around, `${parts.join('; ')}.`];
}

/** Clockwise, beginning at the highest corner, the leftmost of several. */
function wallLengths(outline: readonly Point[]): readonly Ticks[] {
  const corners = [...outline].reverse();
  const isBefore = (a: Point, b: Point) => a.y > b.y || (a.y === b.y && a.x < b.x);
  const first = corners.reduce((best, corner, i) => (isBefore(corner, corners[best]) ? i : best), 0);
  const turned = [...corners.slice(first), ...corners.slice(0, first)];
  return turned.map((corner, i) => {
    const next = turned[(i + 1) % turned.length];
    return Math.round(Math.hypot(next.x - corner.x, next.y - corner.y));
  });
}
