/** Outlines and regions of whole-tick corners: area, bounds, contains, simple or not. All answers are exact. */

import type { Ticks } from './length';
import { entryAfter, sumOf } from './lists';
import { isSamePoint, type Point, sideOf } from './point';

/** Corners in order; the last is joined to the first. */
export type Outline = readonly Point[];

/** A part of the plane: outlines anticlockwise, holes clockwise, no two edges crossing. Empty = nothing. */
export type Region = readonly Outline[];

/** Least and greatest coordinates. */
export interface Bounds {
  readonly x0: Ticks;
  readonly y0: Ticks;
  readonly x1: Ticks;
  readonly y1: Ticks;
}

/** One connected part of a region: its outline and the holes in it. */
export interface Part {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

/**
 * Area in square ticks: positive when the outline runs anticlockwise, negative when clockwise. Exact up to 2^53 half
 * square ticks (over 10,000 square metres), rounded above.
 */
export function signedAreaOf(outline: Outline): number {
  const first = outline[0];
  let doubled = 0;
  for (let i = 1; i + 1 < outline.length; i++) {
    const a = outline[i];
    const b = outline[i + 1];
    doubled += (a.x - first.x) * (b.y - first.y) - (b.x - first.x) * (a.y - first.y);
  }
  return doubled / 2;
}

/** The same outline turned so that it runs anticlockwise. */
export function anticlockwise(outline: Outline): Outline {
  return signedAreaOf(outline) < 0 ? [...outline].reverse() : outline;
}

/** Area of a region in square ticks, holes taken off. */
export function areaOf(region: Region): number {
  return sumOf(region, (outline) => signedAreaOf(outline));
}

/** Bounds of a region; all 0 for an empty one. */
export function boundsOf(region: Region): Bounds {
  const points = region.flat();
  if (points.length === 0) return { x0: 0, y0: 0, x1: 0, y1: 0 };
  let { x: x0, y: y0 } = points[0];
  let x1 = x0;
  let y1 = y0;
  for (const { x, y } of points) {
    x0 = Math.min(x0, x);
    y0 = Math.min(y0, y);
    x1 = Math.max(x1, x);
    y1 = Math.max(y1, y);
  }
  return { x0, y0, x1, y1 };
}

/** Whether p lies on the straight edge a - b, its ends included. */
export function isOnEdge(a: Point, b: Point, p: Point): boolean {
  const inBox =
    p.x >= Math.min(a.x, b.x) && p.x <= Math.max(a.x, b.x) && p.y >= Math.min(a.y, b.y) && p.y <= Math.max(a.y, b.y);
  return inBox && sideOf(a, b, p) === 0;
}

/** Whether the region contains p; a point on an edge or a corner is inside. Counts turns (winding number), exact. */
export function contains(region: Region, p: Point): boolean {
  let turns = 0;
  for (const outline of region) {
    for (let i = 0; i < outline.length; i++) {
      const a = outline[i];
      const b = entryAfter(outline, i);
      if (isOnEdge(a, b, p)) return true;
      if (a.y <= p.y && b.y > p.y && sideOf(a, b, p) > 0) turns += 1;
      if (b.y <= p.y && a.y > p.y && sideOf(a, b, p) < 0) turns -= 1;
    }
  }
  return turns !== 0;
}

/** Whether two edges have any point in common, ends included. */
function edgesMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  const crossing = sideOf(a, b, c) * sideOf(a, b, d) < 0 && sideOf(c, d, a) * sideOf(c, d, b) < 0;
  return crossing || isOnEdge(a, b, c) || isOnEdge(a, b, d) || isOnEdge(c, d, a) || isOnEdge(c, d, b);
}

/**
 * The first two edges of an outline that meet although they should not, as indices of their first corners; null when
 * the outline is simple. Neighbours may share their corner and nothing else; an edge without length meets itself.
 */
export function firstMeeting(outline: Outline): readonly [number, number] | null {
  const count = outline.length;
  const lengthless = outline.findIndex((a, i) => isSamePoint(a, outline[(i + 1) % count]));
  if (lengthless >= 0) return [lengthless, lengthless];
  for (let i = 0; i < count; i++) {
    const a = outline[i];
    const b = outline[(i + 1) % count];
    const c = outline[(i + 2) % count];
    if (isOnEdge(a, b, c) || isOnEdge(b, c, a)) return [i, (i + 1) % count];
    for (let j = i + 2; j < count - (i === 0 ? 1 : 0); j++) {
      if (edgesMeet(a, b, outline[j], outline[(j + 1) % count])) return [i, j];
    }
  }
  return null;
}

/** Whether an outline of at least three corners neither crosses nor touches itself. */
export function isSimple(outline: Outline): boolean {
  return outline.length >= 3 && firstMeeting(outline) === null;
}

/** The connected parts of a region. Parts that touch in a corner only are separate. */
export function partsOf(region: Region): readonly Part[] {
  const outlines = region.filter((outline) => signedAreaOf(outline) > 0);
  const holes = region.filter((outline) => signedAreaOf(outline) < 0);
  if (holes.length === 0) return outlines.map((outline) => ({ outline, holes: [] }));
  const homes = holes.map((hole) => smallestAround(outlines, hole));
  return outlines.map((outline) => ({ outline, holes: holes.filter((_, i) => homes[i] === outline) }));
}

function smallestAround(outlines: readonly Outline[], hole: Outline): Outline | undefined {
  const around = outlines.filter((outline) => hole.every((corner) => contains([outline], corner)));
  return around.reduce<Outline | undefined>(
    (best, outline) => (best && signedAreaOf(best) <= signedAreaOf(outline) ? best : outline),
    undefined,
  );
}
