/** The ways to lay a floor that are worth planning: by direction, start wall and width of the first row. */

import { type FineTicks, fineTicksOf, floorToStep, type Ticks, ticksOf } from '../geometry/length';
import { entryAfter } from '../geometry/lists';
import type { Region } from '../geometry/polygon';
import { rowsAcross } from './rips';
import { meetingRows, narrowRunsOf, type RowLayout, rowsOf } from './rows';
import type { LeaveOff } from './strips';

export interface LayChoice {
  readonly degrees: number;
  readonly startSide: 'near' | 'far';
  readonly firstRow: Ticks;
  /** Why this width of the first row is a candidate. */
  readonly reason:
    | 'as the rule says'
    | 'full first row'
    | 'first and last alike'
    | 'one plank for both'
    | 'joint on a corner';
  readonly layout: RowLayout;
  readonly rowCount: number;
  readonly firstWidth: Ticks;
  readonly lastWidth: Ticks;
  /** The narrowest place of any row, angled ends not counted. */
  readonly narrowest: Ticks;
  /** Runs under the minimum rip somewhere. */
  readonly narrowRunCount: number;
  /** Whether first row, last row and a saw cut fit in one plank's width, so that one plank can give both. */
  readonly sharesPlanks: boolean;
}

export interface ChoiceOptions {
  readonly plankWidth: Ticks;
  /** The width of a plank as typed; that in ticks when not given. */
  readonly typedWidth?: FineTicks;
  readonly minRip: Ticks;
  readonly kerf: Ticks;
  /** First rows are ripped to whole steps of this. */
  readonly markingStep: Ticks;
  /** As of `RowOptions`. */
  readonly squareCut?: Ticks;
  readonly leaveOff?: LeaveOff;
  /** Directions to try, degrees. */
  readonly directions: readonly number[];
  readonly startSides: readonly ('near' | 'far')[];
  /** The rows with an automatic first row, where there is one direction and side and they are laid already. */
  readonly plain?: RowLayout;
  /** Most widths of the first row to keep for each direction and side; the best by narrow runs, rows and narrowest. */
  readonly widthCount: number;
}

/**
 * Candidates for a floor that have a row, those of one direction and side together, the fewest narrow runs first, then the fewest rows,
 * then the widest narrowest place. Which takes the fewest planks is for the search to tell.
 */
export function layChoicesOf(floor: Region, body: Region, options: ChoiceOptions): readonly LayChoice[] {
  return options.directions.flatMap((degrees) =>
    options.startSides.flatMap((startSide) => {
      const choices = choicesOneWay(floor, body, degrees, startSide, options).filter(({ rowCount }) => rowCount > 0);
      return choices.sort(byMerit).slice(0, Math.max(1, options.widthCount));
    }),
  );
}

function byMerit(a: LayChoice, b: LayChoice): number {
  return a.narrowRunCount - b.narrowRunCount || a.rowCount - b.rowCount || b.narrowest - a.narrowest;
}

function choicesOneWay(
  floor: Region,
  body: Region,
  degrees: number,
  startSide: 'near' | 'far',
  options: ChoiceOptions,
): LayChoice[] {
  const lay = (firstRow: Ticks | 'auto') => rowsOf(floor, { ...options, degrees, startSide, firstRow, body });
  const plain = options.plain ?? lay('auto');
  const widths = new Map<Ticks, LayChoice['reason']>([[plain.firstWidth, 'as the rule says']]);
  for (const [width, reason] of widthsFor(plain, options)) {
    if (width > 0 && width <= options.plankWidth && width <= plain.depth && !widths.has(width))
      widths.set(width, reason);
  }
  return [...widths].map(([firstRow, reason]) => {
    const layout = firstRow === plain.firstWidth ? plain : lay(firstRow);
    return choiceOf(layout, { degrees, startSide, firstRow, reason }, options);
  });
}

function choiceOf(
  layout: RowLayout,
  chosen: Pick<LayChoice, 'degrees' | 'startSide' | 'firstRow' | 'reason'>,
  { plankWidth, minRip, kerf }: ChoiceOptions,
): LayChoice {
  const { rows, firstWidth, lastWidth } = layout;
  return {
    ...chosen,
    layout,
    rowCount: rows.length,
    firstWidth,
    lastWidth,
    narrowest: Math.min(...rows.map((row) => row.narrowest.width)),
    narrowRunCount: narrowRunsOf(layout, minRip).length,
    sharesPlanks: rows.length > 1 && firstWidth + lastWidth + kerf <= plankWidth,
  };
}

/** Widths worth trying; some may be no width at all. */
function widthsFor(plain: RowLayout, options: ChoiceOptions): readonly (readonly [Ticks, LayChoice['reason']])[] {
  const { plankWidth, typedWidth = fineTicksOf(plankWidth), minRip, kerf, markingStep } = options;
  const depth = meetingRows(fineTicksOf(plain.depth), typedWidth);
  const rest = ticksOf(depth % typedWidth);
  const alike = rowsAcross(depth, typedWidth, { minRip: typedWidth, step: fineTicksOf(markingStep) });
  const widths: [Ticks, LayChoice['reason']][] = [
    [plankWidth, 'full first row'],
    [ticksOf(alike.first), 'first and last alike'],
  ];
  if (rest >= 2 * minRip && rest + kerf <= plankWidth) {
    widths.push([floorToStep(rest / 2, markingStep), 'one plank for both']);
  }
  for (const height of levelsOf(plain)) {
    // A joint between rows right on the wall line of a step or cut-out, or just so far off that no rip gets too narrow.
    for (const line of [height, height + minRip, height - minRip]) {
      const width = floorToStep(((line % plankWidth) + plankWidth) % plankWidth || plankWidth, markingStep);
      if (width >= minRip) widths.push([width, 'joint on a corner']);
    }
  }
  return widths;
}

/** Our choice: more heights than this add rooms of many corners, not better layouts. */
const MOST_LEVELS = 12;

/** Heights at which the floor has an edge along the rows, other than its start and end; the longest edges first. */
function levelsOf({ floor, depth }: RowLayout): readonly Ticks[] {
  const lengths = new Map<Ticks, Ticks>();
  for (const outline of floor) {
    outline.forEach((from, i) => {
      const to = entryAfter(outline, i);
      if (from.y !== to.y || from.y <= 0 || from.y >= depth) return;
      lengths.set(from.y, (lengths.get(from.y) ?? 0) + Math.abs(to.x - from.x));
    });
  }
  return [...lengths]
    .sort((a, b) => b[1] - a[1])
    .slice(0, MOST_LEVELS)
    .map(([height]) => height);
}
