/** The straight slanted cuts of a piece: angled ends, tapers, cut corners, and what they leave of its rectangle. */

import { outlineLeftOf } from '../geometry/convex';
import { type Ticks, toTicks } from '../geometry/length';
import { entryAfter } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { distanceBetween } from '../geometry/point';
import type { Outline, Region } from '../geometry/polygon';
import { isSteep } from './narrowest';

/**
 * A straight cut that takes a corner off the rectangle that a piece is cut from: an `end` cut reaches from edge to
 * edge, a `taper` from end to end and is ripped, a `corner` is anything else. `end` and `edge` name the corner.
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

/** The rectangle that a piece is cut from. */
export interface Size {
  readonly length: Ticks;
  readonly width: Ticks;
}

/** From the left end of the rectangle that the piece is cut from. */
export interface Stretch {
  readonly from: Ticks;
  readonly to: Ticks;
}

/** A line with the piece on its left. */
export type Line = Pick<Slant, 'from' | 'to'>;

/** Corners of a slanted wall were rounded one by one, so they may lie this far off its line. Ticks. */
export const ROUNDING: Ticks = 2;

export function rectangleOf({ length, width }: Size): Outline {
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
}

/** What the slanted cuts leave of the rectangle. */
export function envelopeOf(slants: readonly Slant[], size: Size): Outline {
  return slants.reduce((outline, { from, to }) => outlineLeftOf(outline, from, to), rectangleOf(size));
}

/**
 * Slanted edges that nothing of the piece lies beyond, the longest first; a line that a notch has divided counts
 * once. `step` is the marking step, ticks.
 */
export function slantsOf(shape: Region, size: Size, step: Ticks): readonly Slant[] {
  const corners = shape.flat();
  const edges = shape
    .flatMap((outline) => outline.map((from, i): Line => ({ from, to: entryAfter(outline, i) })))
    .filter((line) => line.from.x !== line.to.x && line.from.y !== line.to.y && isOutermost(line, corners))
    .sort((a, b) => spanOf(b) - spanOf(a));
  const lines: Line[] = [];
  for (const edge of edges) {
    if (!lines.some((line) => isOnLine(line, edge.from) && isOnLine(line, edge.to))) lines.push(edge);
  }
  return lines.map((line) => slantOf(line, size, step));
}

/** Slants that take as much off what the longer ones leave as can be marked. `step` is the marking step, ticks. */
export function markableOf(slants: readonly Slant[], size: Size, step: Ticks): readonly Slant[] {
  const kept: Slant[] = [];
  for (const slant of slants) {
    const least = -(step / 2) * distanceBetween(slant.from, slant.to);
    const takes = envelopeOf(kept, size).some((p) => leftOf(slant, p) < least);
    if (takes && slant.along >= step && slant.across >= step) kept.push(slant);
  }
  return kept;
}

/** What the slanted cuts leave of the two long edges: of the rectangle's own and of a taper along it. */
export function longEdgesOf(slants: readonly Slant[], size: Size): Readonly<Record<Slant['edge'], Stretch>> {
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

/** Whether p lies on the line, to within some ticks. */
export function isOnLine(line: Line, p: Point, within: Ticks = ROUNDING): boolean {
  return Math.abs(leftOf(line, p)) <= within * spanOf(line);
}

function spanOf({ from, to }: Line): number {
  return Math.abs(to.x - from.x) + Math.abs(to.y - from.y);
}

/** How far p lies to the left of the line, as a multiple of its span. */
function leftOf({ from, to }: Line, p: Point): number {
  return (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
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
    // A steep cut over the whole of a short tip is no rip: nothing that short is ripped.
    kind: isFull && !isSteep(dx, dy) ? 'taper' : isWhole ? 'end' : 'corner',
    end: dy > 0 ? 'right' : 'left',
    edge: dx > 0 ? 'start' : 'far',
    along,
    across,
    degreesOffSquare: (Math.atan2(Math.abs(dx), Math.abs(dy)) * 180) / Math.PI,
    from,
    to,
  };
}
