/**
 * A floor divided into rows, and rows into runs.
 *
 * The laying frame: rows run along x, row 1 lies at the bottom against the start wall, and pieces are laid from left to
 * right as one looks away from that wall. Common practice: planks lie with the tongue side to the start wall, unless the
 * lock wants the groove there.
 */

import { type FineTicks, fineTicksOf, OUTLINE_ROUNDING, type Ticks, ticksOf } from '../geometry/length';
import { lastOf, leastBy, madeOf } from '../geometry/lists';
import { boundsOf, type Outline, type Part, partsOf, type Region } from '../geometry/polygon';
import { levelStripOf } from '../geometry/strip';
import { type Frame, frameOf, regionToFrame, regionToRoom } from '../geometry/turn';
import { besideOneAnother, type RowPart } from './beside';
import { narrowestOf, type Place, type ThinStretch } from './narrowest';
import { rowsAcross, rowsAfterFirst } from './rips';
import { squaredOff } from './square';
import { type LeaveOff, type Strip, withoutStrips } from './strips';

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
  /** Ends out of square by less are squared off at their shorter side; 0 = none by default. */
  readonly squareCut?: Ticks;
  /**
   * The saw cut. Parts of a row on either side of a wall that begin and end together and lie at least so far apart are one
   * run: the same planks give both. Each is a run of its own when not given.
   */
  readonly kerf?: Ticks;
  /** Strips that are not laid, with the room as it is; none by default. */
  readonly leaveOff?: LeaveOff;
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
  /** Strips that are not laid, since trim covers their place. */
  readonly leftOff: readonly Strip[];
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
  /** What lies behind a wall beside it and is cut from the same planks, from the start side on. */
  readonly beside: readonly Part[];
  readonly narrowest: Place;
  /** The most that squaring its ends adds to the gap at a wall. */
  readonly squaredBy: Ticks;
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
  const { plankWidth, typedWidth = fineTicksOf(plankWidth) } = options;
  const body = options.body && options.body.length > 0 ? options.body : floor;
  const frame = frameOf(body, options.degrees + (options.startSide === 'far' ? 180 : 0));
  const turned = regionToFrame(frame, floor);
  const { x1: length, y1: depth } = boundsOf(regionToFrame(frame, body));
  if (depth <= 0)
    return { frame, floor: [], depth, length, plankWidth, firstWidth: 0, lastWidth: 0, rows: [], leftOff: [] };
  const widths = wallRowsOf(depth, typedWidth, options);
  const { leaveOff } = options;
  const own = { ...options, leaveOff: leaveOff && { ...leaveOff, bare: regionToFrame(frame, leaveOff.bare) } };
  const { rows, leftOff } = rowsIn(turned, bandsOf(turned, widths.first, typedWidth), own);
  const [firstWidth, lastWidth] = [ticksOf(widths.first), ticksOf(widths.last)];
  return { frame, floor: turned, depth, length, plankWidth, firstWidth, lastWidth, rows, leftOff };
}

/** The band of a row in the room, from its first run to its last. */
export function bandOf({ y0, y1, runs }: Row, frame: Frame): Outline {
  const x0 = Math.min(...runs.map((run) => run.x0));
  const x1 = Math.max(...runs.map((run) => run.x1));
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return regionToRoom(frame, [corners])[0];
}

/**
 * Widths of the rows at the two walls, fine ticks; a last row narrower than a step, or left off under trim, is not laid,
 * the one before it is.
 */
function wallRowsOf(
  depth: Ticks,
  plankWidth: FineTicks,
  { minRip, firstRow, markingStep: step = 1, leaveOff }: RowOptions,
): { readonly first: FineTicks; readonly last: FineTicks } {
  const first =
    firstRow === 'auto'
      ? rowsAcross(meetingRows(fineTicksOf(depth), plankWidth), plankWidth, {
          minRip: fineTicksOf(Math.max(0, minRip - OUTLINE_ROUNDING)),
          step: fineTicksOf(step),
        }).first
      : Math.min(firstRow >= ticksOf(plankWidth) ? plankWidth : fineTicksOf(firstRow), fineTicksOf(depth));
  const { last } = rowsAfterFirst(first + meetingRows(fineTicksOf(depth) - first, plankWidth), plankWidth, first);
  return { first, last: last < fineTicksOf(Math.max(step, leaveOff?.under ?? 0)) ? plankWidth : last };
}

/** A depth that is short of whole rows by no more than its own rounding is that many rows. Fine ticks. */
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
  return madeOf(before + after, (i) => {
    return [Math.max(heightOf(i), y0), Math.min(heightOf(i + 1), y1)] as const;
  });
}

function rowsIn(
  floor: Region,
  bands: readonly (readonly [Ticks, Ticks])[],
  options: RowOptions,
): Pick<RowLayout, 'rows' | 'leftOff'> {
  const rows: Row[] = [];
  const leftOff: Strip[] = [];
  for (const [y0, y1] of bands) {
    // At the ends of the floor no wood lies beyond.
    const levels = [y0, y1].filter((y) => y > bands[0][0] && y < lastOf(bands)[1]);
    const strip = runsOf(levelStripOf(floor, y0, y1), levels, options);
    const { runs } = strip;
    const rowNumber = Math.max(1, rows.length + (runs.length > 0 ? 1 : 0));
    leftOff.push(...strip.leftOff.map(({ from, to, width }) => ({ rowNumber, from, to, width })));
    if (runs.length === 0) continue;
    const width = fullWidthOr(Math.max(...runs.map(heightOf)), options.plankWidth);
    const narrowest = leastBy(
      runs.map((run) => run.narrowest),
      (b) => b.width,
    );
    rows.push({ rowNumber, y0, y1, width, narrowest, runs });
  }
  return { rows, leftOff };
}

function runsOf(
  strip: Region,
  levels: readonly Ticks[],
  { plankWidth, markingStep: step = 1, squareCut = 0, leaveOff, kerf = Infinity }: RowOptions,
): { readonly runs: readonly Run[]; readonly leftOff: readonly ThinStretch[] } {
  const leftOff: ThinStretch[] = [];
  const parts = partsOf(strip)
    .flatMap(({ outline, holes }) => {
      const { region, most } = squaredOff([outline, ...holes], { levels, uprights: [] }, squareCut);
      const squared = partsOf(region).flatMap((part) => {
        if (!leaveOff) return [part];
        const kept = withoutStrips(part, plankWidth, leaveOff);
        leftOff.push(...kept.leftOff);
        return kept.parts;
      });
      return squared.map((part) => ({ part, squaredBy: most, ...boundsOf([part.outline]) }));
    })
    .filter(({ x0, x1, y0, y1 }) => x1 - x0 >= step && y1 - y0 >= step);
  const groups = besideOneAnother(parts, Math.max(kerf, step), Math.max(squareCut, step));
  return { runs: groups.map((group, i) => runOf(group, i + 1, plankWidth)), leftOff };
}

function runOf(group: readonly RowPart[], runNumber: number, plankWidth: Ticks): Run {
  const [part, ...beside] = group.map((one) => one.part);
  const narrowest = leastBy(
    group.map((one) => narrowestOf(one.part, plankWidth)),
    (b) => b.width,
  );
  return {
    runNumber,
    x0: Math.min(...group.map(({ x0 }) => x0)),
    x1: Math.max(...group.map(({ x1 }) => x1)),
    ...{ part, beside, narrowest },
    squaredBy: Math.max(...group.map(({ squaredBy }) => squaredBy)),
  };
}

/** The width of a plank where a row or piece lies within rounding of it. Ticks. */
export function fullWidthOr(width: Ticks, plankWidth: Ticks): Ticks {
  return Math.abs(width - plankWidth) <= OUTLINE_ROUNDING ? plankWidth : width;
}

function heightOf(run: Run): Ticks {
  const { y0, y1 } = boundsOf(partsOfRun(run).map(({ outline }) => outline));
  return y1 - y0;
}

/** All that is cut from the planks of a run. */
export function partsOfRun({ part, beside }: Pick<Run, 'part' | 'beside'>): readonly Part[] {
  return [part, ...beside];
}

/**
 * Runs whose narrowest place is under the minimum rip by more than rounding: the person has to know before the planks
 * are cut. Ticks.
 */
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
