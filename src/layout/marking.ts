/**
 * What to mark on a piece: its length to the long and to the short point, its width at both ends, angled ends and cut
 * corners, notches. All as numbers on the rectangle that it is cut from, in the laying frame: `left` and `right` as one looks away
 * from the start wall, the `start` edge towards that wall, the `far` edge away from it.
 */
import type { Ticks } from '../geometry/length';
import { boundsOf, type Region } from '../geometry/polygon';
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
}

/** @param step cuts that change nothing by as much as this cannot be marked and are left out */
export function markingOf(shape: Region, step: Ticks): Marking {
  const { x0, y0, x1, y1 } = boundsOf(shape);
  const moved = shape.map((outline) => outline.map(({ x, y }) => ({ x: x - x0, y: y - y0 })));
  const [length, width] = [x1 - x0, y1 - y0];
  const size = { length, width };
  const all = slantsOf(moved, size, step);
  const slants = markableOf(all, size, step);
  const longEdges = longEdgesOf(slants, size);
  const taken = (end: Slant['end']) =>
    slants.reduce((sum, { kind, end: at, across }) => sum + (kind === 'taper' && at === end ? across : 0), 0);
  const { start, far } = longEdges;
  return {
    length,
    shortPoint: Math.min(start.to - start.from, far.to - far.from),
    widthLeft: Math.max(0, width - taken('left')),
    widthRight: Math.max(0, width - taken('right')),
    longEdges,
    slants,
    notches: notchesOf({ shape: moved, size, all, marked: slants, step }),
  };
}
