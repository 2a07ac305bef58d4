/**
 * What to mark on a piece: its length to the long and to the short point, its width at both ends, angled ends and cut
 * corners, notches. All as numbers on the rectangle that it is cut from, in the laying frame: `left` and `right` as one looks away
 * from the start wall, the `start` edge towards that wall, the `far` edge away from it.
 */
import { subtract } from '../geometry/combine';
import { outlineLeftOf } from '../geometry/convex';
import { type Ticks, toTicks } from '../geometry/length';
import { isSamePoint, type Point } from '../geometry/point';
import { areaOf, boundsOf, type Outline, type Region, signedAreaOf } from '../geometry/polygon';
import { isSteep } from './narrowest';
import { type Circle, circleOf } from './round';

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

/** From the left end of the rectangle that the piece is cut from. */
export interface Stretch {
  readonly from: Ticks;
  readonly to: Ticks;
}

/**
 * A straight cut that takes a corner off the rectangle: an `end` cut reaches from edge to edge, a `taper` from end to
 * end, a `corner` neither. `end` and `edge` name the corner.
 */
export interface Slant {
  readonly kind: 'end' | 'taper' | 'corner';
  readonly end: 'left' | 'right';
  readonly edge: 'start' | 'far';
  /** From that corner of the rectangle along its edge and across its end, whatever else is cut off there. */
  readonly along: Ticks;
  readonly across: Ticks;
  /** Degrees off a square crosscut: 0 would be square, 45 half way. */
  readonly degreesOffSquare: number;
  /** From the left end and the start edge of the rectangle, the piece on the left of the way. */
  readonly from: Point;
  readonly to: Point;
}

export interface Notch {
  /** Which end and edge it is open to, or else nearer to. */
  readonly end: 'left' | 'right';
  readonly edge: 'start' | 'far';
  /**
   * Distance of its near side from that end and from that edge: 0 = open to it. In a long edge the distance is along
   * it, from the corner that the slanted cuts leave it; elsewhere from the end of the rectangle.
   */
  readonly fromEnd: Ticks;
  readonly fromEdge: Ticks;
  /** Along the piece and across it. */
  readonly length: Ticks;
  readonly depth: Ticks;
  readonly isHole: boolean;
  /** False when the outline is more than these two dimensions tell (slanted or stepped). */
  readonly isSquare: boolean;
  /** Where it is a round cut-out or part of one; its centre from the left end and the start edge of the rectangle. */
  readonly round: Circle | null;
  /** Its corners from the left end and the start edge of the rectangle, anticlockwise. */
  readonly outline: Outline;
}

/** Corners of a slanted wall were rounded one by one, so they may lie this far off its line. */
const ROUNDING: Ticks = 2;

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
    notches: notchesOf(moved, size, all, step).map((outline) =>
      notchOf(outline, moved, { length, longEdges }, width, step),
    ),
  };
}

/** A piece before its notches. */
type Cut = Pick<Marking, 'length' | 'longEdges'>;

interface Size {
  readonly length: Ticks;
  readonly width: Ticks;
}

function rectangleOf({ length, width }: Size): Outline {
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
}

/** What the slanted cuts leave of the rectangle. */
function envelopeOf(slants: readonly Slant[], size: Size): Outline {
  return slants.reduce((outline, { from, to }) => outlineLeftOf(outline, from, to), rectangleOf(size));
}

/** Slants that take as much off what the longer ones leave as can be marked. */
function markableOf(slants: readonly Slant[], size: Size, step: Ticks): readonly Slant[] {
  const kept: Slant[] = [];
  for (const slant of slants) {
    const least = -(step / 2) * Math.hypot(slant.to.x - slant.from.x, slant.to.y - slant.from.y);
    const takes = envelopeOf(kept, size).some((p) => leftOf(slant, p) < least);
    if (takes && slant.along >= step && slant.across >= step) kept.push(slant);
  }
  return kept;
}

/** A long edge is what is left of the rectangle's own and of a taper along it. */
function longEdgesOf(slants: readonly Slant[], size: Size): Marking['longEdges'] {
  const corners = envelopeOf(slants, size);
  const stretch = (edge: Slant['edge']): Stretch => {
    const tapers = slants.filter((slant) => slant.kind === 'taper' && slant.edge === edge);
    const level = edge === 'start' ? 0 : size.width;
    const on = corners.filter(
      (p) =>
        Math.abs(p.y - level) <= ROUNDING || tapers.some((taper) => Math.abs(heightAt(taper, p.x) - p.y) <= ROUNDING),
    );
    const places = on.map(({ x }) => x);
    return places.length === 0 ? { from: 0, to: 0 } : { from: Math.min(...places), to: Math.max(...places) };
  };
  return { start: stretch('start'), far: stretch('far') };
}

/** Slanted edges that nothing of the piece lies beyond, the longest first; a line that a notch has divided counts once. */
function slantsOf(shape: Region, size: Size, step: Ticks): readonly Slant[] {
  const corners = shape.flat();
  const edges = shape
    .flatMap((outline) => outline.map((from, i): Line => ({ from, to: outline[(i + 1) % outline.length] })))
    .filter((line) => line.from.x !== line.to.x && line.from.y !== line.to.y && isOutermost(line, corners))
    .sort((a, b) => spanOf(b) - spanOf(a));
  const lines: Line[] = [];
  for (const edge of edges) {
    if (!lines.some((line) => isOnLine(line, edge.from) && isOnLine(line, edge.to))) lines.push(edge);
  }
  return lines.map((line) => slantOf(line, size, step));
}

type Line = Pick<Slant, 'from' | 'to'>;

function spanOf({ from, to }: Line): number {
  return Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
}

/** How far p lies to the left of the line, as a multiple of its span. */
function leftOf({ from, to }: Line, p: Point): number {
  return (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
}

function isOnLine(line: Line, p: Point): boolean {
  return Math.abs(leftOf(line, p)) <= ROUNDING * spanOf(line);
}

/** Whether no corner lies to the right of the line by more than rounding. */
function isOutermost(line: Line, corners: Outline): boolean {
  return corners.every((p) => leftOf(line, p) >= -ROUNDING * spanOf(line));
}

function heightAt({ from, to }: Line, x: Ticks): number {
  return from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x);
}

function slantOf({ from, to }: Line, { length, width }: Size, step: Ticks): Slant {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const corner = { x: dy > 0 ? length : 0, y: dx > 0 ? 0 : width };
  // Nothing lies beyond the line, and the rectangle is as long and wide as the piece: it meets both sides of the corner.
  const across = Math.min(width, toTicks(Math.abs(heightAt({ from, to }, corner.x) - corner.y)));
  const along = Math.min(length, toTicks(Math.abs(from.x + (dx * (corner.y - from.y)) / dy - corner.x)));
  const [isWhole, isFull] = [width - across < step, length - along < step];
  return {
    kind: isFull && !(isWhole && isSteep(dx, dy)) ? 'taper' : isWhole ? 'end' : 'corner',
    end: dy > 0 ? 'right' : 'left',
    edge: dx > 0 ? 'start' : 'far',
    along,
    across,
    degreesOffSquare: (Math.atan2(Math.abs(dx), Math.abs(dy)) * 180) / Math.PI,
    from,
    to,
  };
}

/** What is missing from the rectangle less its slants, in unbroken parts that are a step thick. */
function notchesOf(shape: Region, size: Size, slants: readonly Slant[], step: Ticks): readonly Outline[] {
  if (areaOf(shape) === size.length * size.width) return [];
  return subtract([envelopeOf(slants, size)], shape).filter((outline) => {
    const { x0, y0, x1, y1 } = boundsOf([outline]);
    // A hairline beside a slanted wall is long and deep, yet has no area. Of a square notch this is at least its depth.
    const thickness = (2 * signedAreaOf(outline)) / (x1 - x0 + y1 - y0);
    return Math.min(thickness, x1 - x0, y1 - y0) >= step;
  });
}

function notchOf(outline: Outline, shape: Region, { length, longEdges }: Cut, width: Ticks, step: Ticks): Notch {
  const { x0, y0, x1, y1 } = boundsOf([outline]);
  // Open to a side counts before near to it: a slanted notch may touch the other side in a point.
  const gap = (key: 'x' | 'y', side: Ticks, distance: Ticks) =>
    outline.some((p, i) => p[key] === side && outline[(i + 1) % outline.length][key] === side) ? -1 : distance;
  const [low, high] = [gap('y', 0, y0), gap('y', width, width - y1)];
  const edge = low <= high ? 'start' : 'far';
  const { from, to } = Math.min(low, high) < 0 ? longEdges[edge] : { from: 0, to: length };
  const [left, right] = [gap('x', 0, x0 - from), gap('x', length, to - x1)];
  return {
    end: left <= right ? 'left' : 'right',
    edge,
    fromEnd: Math.max(0, Math.min(left, right)),
    fromEdge: Math.max(0, Math.min(low, high)),
    length: x1 - x0,
    depth: y1 - y0,
    isHole: shape.some((hole) => signedAreaOf(hole) < 0 && hole.some((p) => isSamePoint(p, outline[0]))),
    // Every corner at one of the four, and not only at three of them.
    isSquare:
      4 * signedAreaOf(outline) > 3 * (x1 - x0) * (y1 - y0) &&
      outline.every(({ x, y }) => Math.min(x - x0, x1 - x) < step && Math.min(y - y0, y1 - y) < step),
    round: circleOf(outline),
    outline,
  };
}
