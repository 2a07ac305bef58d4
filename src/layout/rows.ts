/**
 * A floor divided into rows, and rows into runs.
 *
 * The laying frame: rows run along x, row 1 lies at the bottom against the start wall, and pieces are laid from left to
 * right as one looks away from that wall. Common practice: planks lie with the tongue side to the start wall.
 */
import { type FineTicks, fineTicksOf, OUTLINE_ROUNDING, type Ticks, ticksOf } from '../geometry/length';
import { boundsOf, type Part, partsOf, type Region } from '../geometry/polygon';
import { levelStripOf } from '../geometry/strip';
import { type Frame, frameOf, regionToFrame } from '../geometry/turn';
import { narrowestOf, type Place } from './narrowest';
import { rowsAcross, rowsAfterFirst } from './rips';

export interface RowOptions {
  readonly plankWidth: Ticks;
  /** The width of a plank as typed, by which rows are counted; that in ticks when not given. */
  readonly typedWidth?: FineTicks;
  readonly minRip: Ticks;
  /** Direction of the rows, degrees anticlockwise from x of the room. */
  readonly degrees: number;
  /** The side of the floor the first row lies on, seen along the rows: `near` is below them, `far` above. */
  readonly startSide: 'near' | 'far';
  /** Width of the first row, > 0 and at most a plank; `auto` = by `rowsAcross`. */
  readonly firstRow: Ticks | 'auto';
  /**
   * An automatic rip of the first row is a whole number of these, and what is narrower or shorter than one is not laid
   * (the gap takes it); 1 by default.
   */
  readonly markingStep?: Ticks;
  /**
   * The floor without what runs into doorways: from its lowest to its highest place the rows are counted out, so that
   * the first row starts at the wall and not in a doorway. The whole floor when not given.
   */
  readonly body?: Region;
}

export interface RowLayout {
  /** From the room to the laying frame and back. */
  readonly frame: Frame;
  /** The floor in the laying frame; its body begins at x = 0 and y = 0. */
  readonly floor: Region;
  /** Of the body: across the rows and along them. */
  readonly depth: Ticks;
  readonly length: Ticks;
  readonly plankWidth: Ticks;
  /** Width given to the first row against the start wall, and what that leaves for the row at the opposite wall. */
  readonly firstWidth: Ticks;
  readonly lastWidth: Ticks;
  /** In laying order. A doorway deeper than the planks reach gets rows of its own. */
  readonly rows: readonly Row[];
}

export interface Row {
  /** Counted from 1. */
  readonly rowNumber: number;
  /** The planks' place: from y0 (start side) to y1, less than a plank apart where the floor ends first. */
  readonly y0: Ticks;
  readonly y1: Ticks;
  /** Width the row is laid at: that of its widest place. */
  readonly width: Ticks;
  /** Its narrowest place, angled ends not counted. */
  readonly narrowest: Place;
  /** From left to right; at least one. */
  readonly runs: readonly Run[];
}

/** One unbroken wall-to-wall stretch of a row. */
export interface Run {
  /** Counted from 1 in its row. */
  readonly runNumber: number;
  /** To its outermost places, long points included. */
  readonly x0: Ticks;
  readonly x1: Ticks;
  readonly part: Part;
  readonly narrowest: Place;
}

/** More rows than this are a plank width misread. */
const MOST_ROWS = 20_000;

/**
 * The rows of a floor.
 *
 * @param floor in the room; a floor without depth has no rows
 * @throws RangeError for a plank without width, or more than 20,000 rows: a caller's mistake, not a user's
 */
export function rowsOf(floor: Region, options: RowOptions): RowLayout {
  const { plankWidth, markingStep: step = 1, typedWidth = fineTicksOf(plankWidth) } = options;
  const body = options.body && options.body.length > 0 ? options.body : floor;
  const frame = frameOf(body, options.degrees + (options.startSide === 'far' ? 180 : 0));
  const turned = regionToFrame(frame, floor);
  const { x1: length, y1: depth } = boundsOf(regionToFrame(frame, body));
  if (depth <= 0) return { frame, floor: [], depth, length, plankWidth, firstWidth: 0, lastWidth: 0, rows: [] };
  const widths = wallRowsOf(depth, typedWidth, options);
  const rows = rowsIn(turned, bandsOf(turned, widths.first, typedWidth), plankWidth, step);
  const [firstWidth, lastWidth] = [ticksOf(widths.first), ticksOf(widths.last)];
  return { frame, floor: turned, depth, length, plankWidth, firstWidth, lastWidth, rows };
}

/** Widths of the rows at the two walls, fine ticks; a last row narrower than a step is not laid, the one before it is. */
function wallRowsOf(
  depth: Ticks,
  plankWidth: FineTicks,
  { minRip, firstRow, markingStep: step = 1 }: RowOptions,
): { readonly first: FineTicks; readonly last: FineTicks } {
  const first =
    firstRow === 'auto'
      ? rowsAcross(meetingRows(fineTicksOf(depth), plankWidth), plankWidth, {
          minRip: fineTicksOf(Math.max(0, minRip - OUTLINE_ROUNDING)),
          step: fineTicksOf(step),
        }).first
      : Math.min(firstRow >= ticksOf(plankWidth) ? plankWidth : fineTicksOf(firstRow), fineTicksOf(depth));
  const { last } = rowsAfterFirst(first + meetingRows(fineTicksOf(depth) - first, plankWidth), plankWidth, first);
  return { first, last: last < fineTicksOf(step) ? plankWidth : last };
}

/** A depth that is short of whole rows by no more than its own rounding is that many rows. */
export function meetingRows(depth: FineTicks, plankWidth: FineTicks): FineTicks {
  const missing = (plankWidth - (depth % plankWidth)) % plankWidth;
  return depth > 0 && missing <= fineTicksOf(OUTLINE_ROUNDING) ? depth + missing : depth;
}

/**
 * Heights between which planks lie, from the lowest place of the floor to its highest; one band starts at `first`. Each
 * is rounded by itself, so that a hundred rows of 7.09 in lie no further off than one.
 */
function bandsOf(floor: Region, first: FineTicks, plankWidth: FineTicks): readonly (readonly [Ticks, Ticks])[] {
  const { y0, y1 } = boundsOf(floor);
  const before = Math.ceil((first - fineTicksOf(y0)) / plankWidth);
  const after = Math.ceil((fineTicksOf(y1) - first) / plankWidth);
  if (!(before + after <= MOST_ROWS)) throw new RangeError(`${before + after} rows`);
  const heightOf = (row: number) => ticksOf(first + (row - before) * plankWidth);
  return Array.from({ length: before + after }, (_, i) => {
    return [Math.max(heightOf(i), y0), Math.min(heightOf(i + 1), y1)] as const;
  });
}

function rowsIn(
  floor: Region,
  bands: readonly (readonly [Ticks, Ticks])[],
  plankWidth: Ticks,
  step: Ticks,
): readonly Row[] {
  const rows: Row[] = [];
  for (const [y0, y1] of bands) {
    const runs = runsOf(levelStripOf(floor, y0, y1), plankWidth, step);
    if (runs.length === 0) continue;
    const width = fullWidthOr(Math.max(...runs.map((run) => heightOf(run.part))), plankWidth);
    const narrowest = runs.map((run) => run.narrowest).reduce((a, b) => (b.width < a.width ? b : a));
    rows.push({ rowNumber: rows.length + 1, y0, y1, width, narrowest, runs });
  }
  return rows;
}

function runsOf(strip: Region, plankWidth: Ticks, step: Ticks): readonly Run[] {
  return partsOf(strip)
    .map((part) => ({ part, ...boundsOf([part.outline]) }))
    .filter(({ x0, x1, y0, y1 }) => x1 - x0 >= step && y1 - y0 >= step)
    .sort((a, b) => a.x0 - b.x0 || a.y0 - b.y0)
    .map(({ part, x0, x1 }, i) => ({ runNumber: i + 1, x0, x1, part, narrowest: narrowestOf(part, plankWidth) }));
}

/** The width of a plank where a row or piece lies within rounding of it. */
export function fullWidthOr(width: Ticks, plankWidth: Ticks): Ticks {
  return Math.abs(width - plankWidth) <= OUTLINE_ROUNDING ? plankWidth : width;
}

function heightOf({ outline }: Part): Ticks {
  const { y0, y1 } = boundsOf([outline]);
  return y1 - y0;
}

/** Runs whose narrowest place is under the minimum rip by more than rounding: the person has to know before the planks are cut. */
export function narrowRunsOf(
  layout: RowLayout,
  minRip: Ticks,
): readonly { readonly rowNumber: number; readonly runNumber: number; readonly place: Place }[] {
  return layout.rows.flatMap(({ rowNumber, runs }) =>
    runs
      .filter((run) => run.narrowest.width < minRip - OUTLINE_ROUNDING)
      .map(({ runNumber, narrowest }) => ({ rowNumber, runNumber, place: narrowest })),
  );
}
