/**
 * Strips too narrow to be made: left off where trim covers the place, else told, so that the first row can be moved.
 */
import { intersect, subtract } from '../geometry/combine';
import { OUTLINE_ROUNDING, type Ticks, ticksOfInches } from '../geometry/length';
import { boundsOf, type Part, partsOf, type Region } from '../geometry/polygon';
import { type ThinStretch, thinStretchesOf } from './narrowest';

/** What of a floor may be left off. */
export interface LeaveOff {
  /** Strips narrower than this: the trim covers them together with the gap. */
  readonly under: Ticks;
  /** Places that no trim covers, such as hearths, and how near to them a strip is one of theirs. */
  readonly bare: Region;
  readonly reach: Ticks;
}

/** A strip of the floor that gets no wood, or that cannot be made. */
export interface Strip {
  /** The row it is of; where all of a row is left off, the one before it. */
  readonly rowNumber: number;
  readonly from: Ticks;
  readonly to: Ticks;
  readonly width: Ticks;
}

/** What is looked at of a floor in rows. */
interface LaidRows {
  readonly plankWidth: Ticks;
  readonly rows: readonly {
    readonly rowNumber: number;
    readonly runs: readonly { readonly part: Part; readonly beside: readonly Part[] }[];
  }[];
}

/** A part without the strips that may be left off: several parts where a strip alone held it together. */
export function withoutStrips(
  part: Part,
  plankWidth: Ticks,
  { under, bare, reach }: LeaveOff,
): { readonly parts: readonly Part[]; readonly leftOff: readonly ThinStretch[] } {
  const isCovered = (strip: ThinStretch) => !isBeside(strip.outlines, bare, 0, reach);
  const { x0, x1 } = boundsOf([part.outline]);
  // Shorter than can be made, between a wall and another, it is left off as a whole.
  const short = { from: x0, to: x1, width: x1 - x0, isTip: false, outlines: [part.outline] };
  if (short.width < under && !isBeside(short.outlines, bare, reach, 0)) return { parts: [], leftOff: [short] };
  const leftOff = thinStretchesOf(part, plankWidth, under).filter(isCovered);
  if (leftOff.length === 0) return { parts: [part], leftOff };
  const rest = subtract(
    [part.outline, ...part.holes],
    leftOff.flatMap(({ outlines }) => outlines),
  );
  return { parts: partsOf(rest), leftOff };
}

/** Whether a place that no trim covers lies so near to a strip, along the rows or across them. */
export function isBeside(strip: Region, bare: Region, along: Ticks, across: Ticks): boolean {
  const { x0, y0, x1, y1 } = boundsOf(strip);
  const [left, low, right, high] = [x0 - along, y0 - across, x1 + along, y1 + across];
  const box = [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
  return bare.length > 0 && intersect([box], bare).length > 0;
}

/** Common practice: what is shorter is not ripped; as the tip of a taper it hangs on the wood that it runs out of. */
const LONGEST_TIP: Ticks = ticksOfInches(12);

/** Strips of a layout that are narrower than can be made. */
export function unmakeableStrips({ rows, plankWidth }: LaidRows, leastStrip: Ticks): readonly Strip[] {
  if (leastStrip === 0) return [];
  return rows.flatMap(({ rowNumber, runs }) =>
    runs
      .flatMap(({ part, beside }) => [part, ...beside])
      .flatMap((part) =>
        thinStretchesOf(part, plankWidth, leastStrip - OUTLINE_ROUNDING)
          .filter(({ from, to, isTip }) => to - from > (isTip ? LONGEST_TIP : leastStrip))
          .map(({ from, to, width }) => ({ rowNumber, from, to, width })),
      ),
  );
}
