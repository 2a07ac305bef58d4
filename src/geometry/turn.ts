/** A turned and moved set of axes: rows may run at any angle to the room, but are always laid out along x. */

import { type Ticks, toTicks } from './length';
import { entryAfter } from './lists';
import type { Point } from './point';
import { boundsOf, type Region, signedAreaOf } from './polygon';

/** x of the frame runs `degrees` anticlockwise from x of the room; `left` and `low` are the frame's origin, turned. */
export interface Frame {
  readonly degrees: number;
  readonly cosine: number;
  readonly sine: number;
  readonly left: Ticks;
  readonly low: Ticks;
}

/** Corners turned by an angle are rounded once, so a level edge may come out this much off level. */
const TURN_ROUNDING: Ticks = 2;

/**
 * The frame at an angle whose origin is the lowest x and y of a region: in it the region starts at 0 on both axes.
 * Degrees anticlockwise from x.
 */
export function frameOf(region: Region, degrees: number): Frame {
  const turned = { ...unitOf(degrees), left: 0, low: 0 };
  const { x0, y0 } = boundsOf(region.map((outline) => outline.map((p) => toFrame(turned, p))));
  return { ...turned, left: x0, low: y0 };
}

/** Whether the angle is a whole number of right angles: then turning loses nothing. */
function isSquare({ degrees }: Frame): boolean {
  return degrees % 90 === 0;
}

/** A point of the room in the frame: exact at right angles, else to the nearest tick. */
export function toFrame({ cosine, sine, left, low }: Frame, { x, y }: Point): Point {
  return { x: toTicks(x * cosine + y * sine) - left, y: toTicks(y * cosine - x * sine) - low };
}

/** A point of the frame in the room: exact at right angles, else to the nearest tick. */
export function toRoom({ cosine, sine, left, low }: Frame, { x, y }: Point): Point {
  const right = x + left;
  const up = y + low;
  return { x: toTicks(right * cosine - up * sine), y: toTicks(right * sine + up * cosine) };
}

/** A region in the frame. Unless the angle is right, edges along and across the rows are made level and upright again. */
export function regionToFrame(frame: Frame, region: Region): Region {
  const turned = region.map((outline) => outline.map((p) => toFrame(frame, p)));
  return isSquare(frame) ? turned : levelled(turned);
}

/** A region of the frame in the room. */
export function regionToRoom(frame: Frame, region: Region): Region {
  return region.map((outline) => outline.map((p) => toRoom(frame, p)));
}

/** Sine and cosine of an angle, exact for whole right angles; the angle itself comes back in 0 up to 360. Degrees. */
export function unitOf(degrees: number): { readonly degrees: number; readonly cosine: number; readonly sine: number } {
  const turn = ((degrees % 360) + 360) % 360;
  if (turn % 90 === 0) return { degrees: turn, cosine: [1, 0, -1, 0][turn / 90], sine: [0, 1, 0, -1][turn / 90] };
  const radians = (turn * Math.PI) / 180;
  return { degrees: turn, cosine: Math.cos(radians), sine: Math.sin(radians) };
}

/** Undoes what rounding did to edges along or across the rows: heights (and widths) at its ends become one. */
function levelled(region: Region): Region {
  const heights = commonPlaces(region, (p) => p.y);
  const widths = commonPlaces(region, (p) => p.x);
  const moved = region.map((outline) => outline.map(({ x, y }) => ({ x: widths.get(x) ?? x, y: heights.get(y) ?? y })));
  return moved.filter((outline) => signedAreaOf(outline) !== 0);
}

/** For one axis: from each coordinate at an end of an edge that is level but for rounding, to the one it shall have. */
function commonPlaces(region: Region, place: (p: Point) => Ticks): ReadonlyMap<Ticks, Ticks> {
  const ends = new Set<Ticks>();
  for (const outline of region) {
    outline.forEach((from, i) => {
      const to = entryAfter(outline, i);
      if (Math.abs(place(from) - place(to)) > TURN_ROUNDING) return;
      ends.add(place(from));
      ends.add(place(to));
    });
  }
  const common = new Map<Ticks, Ticks>();
  let shared = Number.NEGATIVE_INFINITY;
  let before = Number.NEGATIVE_INFINITY;
  for (const end of [...ends].sort((p, q) => p - q)) {
    if (end - before > TURN_ROUNDING) shared = end;
    common.set(end, shared);
    before = end;
  }
  return common;
}

/** Degrees by which the way turns at a corner, to either side. */
export function turnAt(before: Point, at: Point, after: Point): number {
  const [ax, ay, bx, by] = [at.x - before.x, at.y - before.y, after.x - at.x, after.y - at.y];
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}

/** Mirrored in the diagonal, so that ends become edges; outlines keep their turn. */
export function mirrored(region: Region): Region {
  return region.map((outline) => outline.map(({ x, y }) => ({ x: y, y: x })).reverse());
}
