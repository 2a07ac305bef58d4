/**
 * What to mark on a piece: its length to the long and to the short point, its width at both ends, angled ends and cut
 * corners, notches. All as numbers on the rectangle that it is cut from, in the laying frame: `left` and `right` as one looks away
 * from the start wall, the `start` edge towards that wall, the `far` edge away from it.
 */
import type { Ticks } from '../geometry/length';
import { boundsOf, type Region } from '../geometry/polygon';
import type { Bend, Unbend, Unbent } from './bends';
import { type Notch, notchesOf } from './notches';
import { longEdgesOf, markableOf, type Slant, type Stretch, slantsOf } from './slants';

export interface Marking {
  /** To the long point where an end is angled. */
  readonly length: Ticks;
  /** The shorter of the two long edges; equal to `length` when all corners are square, 0 for a point. */
  readonly shortPoint: Ticks;
  /** Width at the left and at the right end, cut corners and notches not counted: unequal on a taper. */
  readonly widthLeft: Ticks;
  readonly widthRight: Ticks;
  /** What the slanted cuts leave of the two long edges; notches not counted. */
  readonly longEdges: Readonly<Record<Slant['edge'], Stretch>>;
  readonly slants: readonly Slant[];
  readonly notches: readonly Notch[];
  /** Edges and ends that are scribed, besides slants and notches. */
  readonly bends: readonly Bend[];
  /** How much of each end they cut off. */
  readonly offEnd: Unbent['offEnd'];
}

/**
 * @param step cuts that change nothing by as much as this cannot be marked and are left out
 * @param unbend how bends are found; a plain rectangle has none
 */
export function markingOf(shape: Region, step: Ticks, unbend?: Unbend): Marking {
  const { x0, y0, x1, y1 } = boundsOf(shape);
  const moved = shape.map((outline) => outline.map(({ x, y }) => ({ x: x - x0, y: y - y0 })));
  const size = { length: x1 - x0, width: y1 - y0 };
  const unbent = unbend?.(moved, size, step);
  const rest = unbent?.rest ?? moved;
  const all = slantsOf(rest, size, step);
  const slants = markableOf(all, size, step);
  const { start, far } = longEdgesOf(slants, size);
  const longEdges = {
    start: asFarAs(start, unbent?.longEdges.start),
    far: asFarAs(far, unbent?.longEdges.far),
  };
  const widthAt = (end: Slant['end']) =>
    slants.reduce(
      (left, { kind, end: at, across }) => left - (kind === 'taper' && at === end ? across : 0),
      size.width - (unbent?.narrower[end] ?? 0),
    );
  return {
    length: size.length,
    shortPoint: Math.min(longEdges.start.to - longEdges.start.from, longEdges.far.to - longEdges.far.from),
    widthLeft: Math.max(0, widthAt('left')),
    widthRight: Math.max(0, widthAt('right')),
    longEdges,
    slants,
    notches: notchesOf({ shape: rest, size, all, marked: slants, step }),
    bends: unbent?.bends ?? [],
    offEnd: unbent?.offEnd ?? { left: 0, right: 0 },
  };
}

/** What of a long edge both leave. */
function asFarAs({ from, to }: Stretch, other: Stretch = { from, to }): Stretch {
  const start = Math.max(from, other.from);
  return { from: start, to: Math.max(start, Math.min(to, other.to)) };
}
