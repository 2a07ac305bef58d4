/** Where the first row starts so that no strip is left anywhere rows stop: every start tried at every stop line. */
import { ceilToStep, OUTLINE_ROUNDING, type Ticks } from '../geometry/length';
import { narrowRunsOf, type RowLayout } from './rows';
import { isInDoorway, type StopLine, stripAt } from './stopLines';

/** A first row of some width, and the strip that it leaves at each of the stop lines. */
export interface StartTry {
  readonly firstRow: Ticks;
  readonly strips: readonly Ticks[];
  readonly narrowest: Ticks;
}

export interface FoundStart {
  readonly lines: readonly StopLine[];
  /** The starts worth looking at: the plain one first, then the best ones. */
  readonly tries: readonly StartTry[];
  readonly chosen: StartTry;
  readonly layout: RowLayout;
}

export interface StartOptions {
  readonly plankWidth: Ticks;
  readonly minRip: Ticks;
  /** First rows are ripped to whole steps of this. */
  readonly markingStep: Ticks;
  /** Strips narrower than this are squared off: the gap there is wider by as much; 0 by default. */
  readonly squareCut?: Ticks;
}

/** Our choice: so many starts are laid out to the last corner; the others are judged by their stop lines alone. */
const MOST_LAID = 4;
/** Our choice: starts nearer to each other than this share of a plank are one for the table. */
const APART = 1 / 12;

/**
 * The start that leaves the widest narrowest strip. Before that it leaves none under the minimum rip where that can be, and
 * in a doorway at the start of its row a whole plank notched into it rather than a strip. Only where no start does that are
 * seams tried that miss a line by less than is squared off.
 *
 * @param plain the rows as the usual rule starts them
 * @param lay the rows after a first row of some width
 */
export function findStart(
  plain: RowLayout,
  lines: readonly StopLine[],
  lay: (firstRow: Ticks) => RowLayout,
  options: StartOptions,
): FoundStart {
  const { plankWidth, minRip } = options;
  // No start keeps a seam off a line that rises by nearly a plank.
  const open = lines.filter(({ low, high }) => high - low <= plankWidth - minRip);
  const plainTry = tryOf(plain.firstWidth, open, plankWidth);
  const ranked = widthsOf(plain, options)
    .map((firstRow) => tryOf(firstRow, open, plankWidth))
    .map((start) => ({ start, merit: meritOf(start, open, options) }))
    .sort((a, b) => inOrder(a.merit, b.merit))
    .map(({ start }) => start);
  const isTooNarrow = ranked[0].narrowest < minRip - OUTLINE_ROUNDING;
  const kept: StartTry[] = [];
  for (const start of isTooNarrow ? [...squaredTry(plain, open, options), ...ranked] : ranked) {
    if (kept.length === MOST_LAID) break;
    const isNear = ({ firstRow }: StartTry) => Math.abs(firstRow - start.firstRow) < plankWidth * APART;
    if (start.firstRow !== plainTry.firstRow && !kept.some(isNear)) kept.push(start);
  }
  const laid = [plainTry, ...kept].map((start, i) => {
    const layout = i === 0 ? plain : lay(start.firstRow);
    const narrowCount = narrowRunsOf(layout, minRip).length;
    return { start, layout, merit: [Math.min(1, narrowCount), ...meritOf(start, open, options), narrowCount] };
  });
  const best = laid.reduce((a, b) => (inOrder(b.merit, a.merit) < 0 ? b : a));
  return { lines: open, tries: [plainTry, ...kept], chosen: best.start, layout: best.layout };
}

/** The best start where seams may miss lines by less than is squared off; none where that too leaves a narrow strip. */
function squaredTry(plain: RowLayout, lines: readonly StopLine[], options: StartOptions): readonly StartTry[] {
  const { plankWidth, minRip, squareCut = 0 } = options;
  const tries = widthsOf(plain, options).map((firstRow) => tryOf(firstRow, lines, plankWidth, squareCut - 1));
  const best = tries.reduce((a, b) => (inOrder(meritOf(b, lines, options), meritOf(a, lines, options)) < 0 ? b : a));
  return squareCut > 0 && best.narrowest >= minRip - OUTLINE_ROUNDING ? [best] : [];
}

function widthsOf({ depth }: RowLayout, { plankWidth, markingStep }: StartOptions): readonly Ticks[] {
  const widest = Math.min(plankWidth, depth);
  const widths = [widest];
  for (let width = ceilToStep(widest, markingStep) - markingStep; width > 0; width -= markingStep) widths.push(width);
  return widths;
}

function tryOf(firstRow: Ticks, lines: readonly StopLine[], plankWidth: Ticks, near?: Ticks): StartTry {
  const strips = lines.map((line) => stripAt(line, firstRow, plankWidth, near));
  return { firstRow, strips, narrowest: Math.min(plankWidth, ...strips) };
}

/** The less the better, number by number. */
function meritOf(
  { strips, narrowest }: StartTry,
  lines: readonly StopLine[],
  { plankWidth, minRip }: StartOptions,
): readonly number[] {
  const isTooNarrow = Number(narrowest < minRip - OUTLINE_ROUNDING);
  const inDoorways = strips.filter((strip, i) => isInDoorway(lines[i], strip, plankWidth)).length;
  return [isTooNarrow, inDoorways, -narrowest];
}

function inOrder(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((value, at) => value !== b[at]);
  return i < 0 ? 0 : a[i] - b[i];
}

/** Whether the usual start leaves a strip under the minimum rip anywhere, or one in a doorway at the start of its row. */
export function leavesStrips(
  plain: RowLayout,
  lines: readonly StopLine[],
  { plankWidth, minRip }: StartOptions,
): boolean {
  if (narrowRunsOf(plain, minRip).length > 0) return true;
  return lines.some((line) => isInDoorway(line, stripAt(line, plain.firstWidth, plankWidth), plankWidth));
}
