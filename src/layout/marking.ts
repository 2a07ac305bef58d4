/**
 * What to mark on a piece: its length to the long and to the short point, its width at both ends, angled ends and cut
 * corners, notches. All as numbers in the laying frame: `left` and `right` as one looks away from the start wall, the
 * `start` edge towards that wall, the `far` edge away from it.
 */
import { subtract } from '../geometry/combine';
import { outlineLeftOf } from '../geometry/convex';
import { type Ticks, toTicks } from '../geometry/length';
import type { Point } from '../geometry/point';
import { type Bounds, boundsOf, type Outline, type Region, signedAreaOf } from '../geometry/polygon';
import { isSteep } from './narrowest';

export interface Marking {
  /** To the long point where an end is angled. */
  readonly length: Ticks;
  /** To the short point; equal to `length` when both ends are square, 0 for a point. */
  readonly shortPoint: Ticks;
  /** Width at the left and at the right end, cut corners and notches not counted: unequal on a taper. */
  readonly widthLeft: Ticks;
  readonly widthRight: Ticks;
  readonly slants: readonly Slant[];
  readonly notches: readonly Notch[];
}

/**
 * A slanted cut. `end` crosses the piece from edge to edge, `taper` runs from end to end, `corner` takes off a corner;
 * `end` and `edge` name the corner it takes off or, for the other two, the side it is on.
 */
export interface Slant {
  readonly kind: 'end' | 'taper' | 'corner';
  readonly end: 'left' | 'right';
  readonly edge: 'start' | 'far';
  /** What it takes off along the piece and across it. */
  readonly along: Ticks;
  readonly across: Ticks;
  /** Degrees off a square crosscut: 0 would be square, 45 half way. */
  readonly degreesOffSquare: number;
  readonly from: Point;
  readonly to: Point;
}

export interface Notch {
  /** Which end and edge it is nearer to. */
  readonly end: 'left' | 'right';
  readonly edge: 'start' | 'far';
  /** Distance of its near side from that end and from that edge: 0 = open to it; both above 0 = a hole. */
  readonly fromEnd: Ticks;
  readonly fromEdge: Ticks;
  /** Along the piece and across it. */
  readonly length: Ticks;
  readonly depth: Ticks;
  /** False when the outline is more than these two dimensions tell (slanted or stepped). */
  readonly isSquare: boolean;
  readonly outline: Outline;
}

/** Corners of a slanted wall were rounded one by one, so they may lie this far off its line. */
const ROUNDING: Ticks = 2;

/** @param step cuts that change nothing by as much as this cannot be marked and are left out */
export function markingOf(shape: Region, step: Ticks): Marking {
  const box = boundsOf(shape);
  const length = box.x1 - box.x0;
  const width = box.y1 - box.y0;
  if (shape.length === 1 && isRectangle(shape[0])) {
    return { length, shortPoint: length, widthLeft: width, widthRight: width, slants: [], notches: [] };
  }
  const all = slantsOf(shape, box);
  const slants = all.filter((slant) => isMarkable(slant, step));
  const notches = notchesOf(shape, box, all, step);
  const tapers = slants.filter((slant) => slant.kind === 'taper');
  const takenLeft = tapers.reduce((sum, taper) => sum + (taper.end === 'left' ? taper.across : 0), 0);
  const takenRight = tapers.reduce((sum, taper) => sum + (taper.end === 'right' ? taper.across : 0), 0);
  return {
    length,
    shortPoint: shortPointOf(slants, length),
    widthLeft: Math.max(0, width - takenLeft),
    widthRight: Math.max(0, width - takenRight),
    slants,
    notches,
  };
}

function isRectangle(outline: Outline): boolean {
  return (
    outline.length === 4 && outline.every((p, i) => p.x === outline[(i + 1) % 4].x || p.y === outline[(i + 1) % 4].y)
  );
}

function isMarkable(slant: Slant, step: Ticks): boolean {
  if (slant.kind === 'taper') return slant.across >= step;
  if (slant.kind === 'end') return slant.along >= step;
  return slant.along >= step && slant.across >= step;
}

/** The shorter of the two long edges, as the angled ends leave them. */
function shortPointOf(slants: readonly Slant[], length: Ticks): Ticks {
  const ends = slants.filter((slant) => slant.kind === 'end');
  const left = (edge: 'start' | 'far') => ends.reduce((sum, end) => sum + (end.edge === edge ? end.along : 0), 0);
  return Math.max(0, length - Math.max(left('start'), left('far')));
}

/** Slanted edges that nothing of the piece lies beyond; a line that a notch has divided counts once. */
function slantsOf(shape: Region, box: Bounds): readonly Slant[] {
  const corners = shape.flat();
  const slants: Slant[] = [];
  for (const outline of shape) {
    outline.forEach((from, i) => {
      const to = outline[(i + 1) % outline.length];
      if (from.x === to.x || from.y === to.y || !isOutermost(from, to, corners)) return;
      const slant = slantOf(from, to, box);
      const same = slants.findIndex((s) => s.kind === slant.kind && s.end === slant.end && s.edge === slant.edge);
      if (same < 0 || slant.kind === 'corner') slants.push(slant);
      else if (spanOf(slant) > spanOf(slants[same])) slants[same] = slant;
    });
  }
  return slants;
}

function spanOf({ from, to }: Slant): number {
  return Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
}

/** Whether no corner lies to the right of from -> to by more than rounding. */
function isOutermost(from: Point, to: Point, corners: Outline): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const slack = ROUNDING * (Math.abs(dx) + Math.abs(dy));
  return corners.every((p) => dx * (p.y - from.y) - dy * (p.x - from.x) >= -slack);
}

function slantOf(from: Point, to: Point, box: Bounds): Slant {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const isSteepSlant = isSteep(dx, dy);
  // The whole line counts, also where a notch has cut its ends off: does it run from end to end, from edge to edge?
  const heightAt = (x: Ticks) => from.y + (dy * (x - from.x)) / dx;
  const widthAt = (y: Ticks) => from.x + (dx * (y - from.y)) / dy;
  const isBetween = (value: number, low: Ticks, high: Ticks) => value >= low - ROUNDING && value <= high + ROUNDING;
  const spansLength = [box.x0, box.x1].every((x) => isBetween(heightAt(x), box.y0, box.y1));
  const spansWidth = [box.y0, box.y1].every((y) => isBetween(widthAt(y), box.x0, box.x1));
  const kind = spansLength && !isSteepSlant ? 'taper' : spansWidth ? 'end' : 'corner';
  const along = kind === 'taper' ? box.x1 - box.x0 : kind === 'end' ? widthAt(box.y1) - widthAt(box.y0) : dx;
  const across = kind === 'end' ? box.y1 - box.y0 : kind === 'taper' ? heightAt(box.x1) - heightAt(box.x0) : dy;
  return {
    kind,
    end: dy > 0 ? 'right' : 'left',
    edge: dx > 0 ? 'start' : 'far',
    along: toTicks(Math.abs(along)),
    across: toTicks(Math.abs(across)),
    degreesOffSquare: (Math.atan2(Math.abs(dx), Math.abs(dy)) * 180) / Math.PI,
    from,
    to,
  };
}

/** What is missing from the box less its slants: each unbroken piece of it is a notch. */
function notchesOf(shape: Region, box: Bounds, slants: readonly Slant[], step: Ticks): readonly Notch[] {
  const { x0, y0, x1, y1 } = box;
  const whole: Outline = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  const envelope = slants.reduce((outline, { from, to }) => outlineLeftOf(outline, from, to), whole);
  return subtract([envelope], shape)
    .filter((outline) => signedAreaOf(outline) > 0)
    .map((outline) => notchOf(outline, box))
    .filter((notch) => notch.length >= step && notch.depth >= step);
}

function notchOf(outline: Outline, box: Bounds): Notch {
  const { x0, y0, x1, y1 } = boundsOf([outline]);
  const fromLeft = x0 - box.x0;
  const fromRight = box.x1 - x1;
  const fromStart = y0 - box.y0;
  const fromFar = box.y1 - y1;
  return {
    end: fromLeft <= fromRight ? 'left' : 'right',
    edge: fromStart <= fromFar ? 'start' : 'far',
    fromEnd: Math.min(fromLeft, fromRight),
    fromEdge: Math.min(fromStart, fromFar),
    length: x1 - x0,
    depth: y1 - y0,
    isSquare: isRectangle(outline),
    outline,
  };
}
