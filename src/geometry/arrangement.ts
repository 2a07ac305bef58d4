/**
 * Edges cut where they meet, so that afterwards they share end points only: what adding and taking away build on.
 *
 * Every decision is the exact sign of a cross product. The one thing that moves is a crossing that falls between
 * ticks. It goes to the nearest whole point, and then every edge that passes through the tick-sized square round such
 * a point or round a corner is led through its middle: snap rounding, after which no two edges cross (Hobby, Practical
 * segment intersection with finite precision output, Computational Geometry 13, 1999; from memory). An edge bends by
 * half a tick at most.
 */

import { bandsOf } from './bands';
import { toTicks } from './length';
import { lastOf } from './lists';
import { isSamePoint, type Point, sideOf } from './point';

/** An edge as it was given: parts of one edge know each other by it. */
export interface SourceEdge {
  readonly from: Point;
  readonly to: Point;
}

/** Part of an edge, from its lower end up (level: from the left end), with what crossing it does to the two counts. */
export interface Segment {
  readonly a: Point;
  readonly b: Point;
  /** Turns of the first and of the second operand gained when the segment is crossed from its right to its left. */
  readonly first: number;
  readonly second: number;
  readonly source: SourceEdge;
}

/** The segment of an edge, turned so that `a` comes first. */
export function segmentOf(from: Point, to: Point, first: number, second: number, source: SourceEdge): Segment {
  if (isBefore(from, to)) return { a: from, b: to, first, second, source };
  return { a: to, b: from, first: -first, second: -second, source };
}

/** Segments that meet at end points only; equal ones are merged and those that change nothing are gone. */
export function arrange(segments: readonly Segment[]): readonly Segment[] {
  let current = segments;
  // One pass rounds and a second finds nothing left; the bound turns a mistake of ours into an error, not a hang.
  for (let pass = 0; pass < 16; pass++) {
    const { cuts, rounded } = meetingsOf(current);
    if (rounded.length > 0) snapAll(current, rounded, cuts);
    current = merged(current.flatMap((segment, i) => (cuts[i].length === 0 ? [segment] : cutAt(segment, cuts[i]))));
    if (rounded.length === 0) return current;
  }
  throw new Error(`Internal: ${segments.length} edges do not settle`);
}

/** Lower first; of two on one level the left one. */
function isBefore(p: Point, q: Point): boolean {
  return p.y < q.y || (p.y === q.y && p.x < q.x);
}

/**
 * Places where segments cut each other, and those of them that had to be rounded. From below upwards, each segment is
 * held against those that begin before it ends: cost n x those side by side, n^2 when all are.
 */
function meetingsOf(segments: readonly Segment[]): { cuts: Point[][]; rounded: Point[] } {
  const cuts: Point[][] = segments.map(() => []);
  const rounded: Point[] = [];
  const upwards = segments.map((_, i) => i).sort((i, j) => segments[i].a.y - segments[j].a.y);
  for (let k = 0; k < upwards.length; k++) {
    const i = upwards[k];
    const s = segments[i];
    const left = Math.min(s.a.x, s.b.x);
    const right = Math.max(s.a.x, s.b.x);
    for (let l = k + 1; l < upwards.length; l++) {
      const j = upwards[l];
      const t = segments[j];
      if (t.a.y > s.b.y) break;
      if ((t.a.x > right && t.b.x > right) || (t.a.x < left && t.b.x < left)) continue;
      const place = cutPair(s, t, cuts[i], cuts[j]);
      if (place) rounded.push(place);
    }
  }
  return { cuts, rounded };
}

/** Notes where two segments cut each other; answers the place when it had to be rounded. */
function cutPair(s: Segment, t: Segment, cutsOfS: Point[], cutsOfT: Point[]): Point | null {
  const ta = sideOf(s.a, s.b, t.a);
  const tb = sideOf(s.a, s.b, t.b);
  if (ta * tb > 0) return null;
  const sa = sideOf(t.a, t.b, s.a);
  const sb = sideOf(t.a, t.b, s.b);
  if (sa * sb > 0) return null;
  if (ta * tb < 0 && sa * sb < 0) {
    const place = crossingOf(s, t);
    addCut(s, place, cutsOfS);
    addCut(t, place, cutsOfT);
    return sideOf(s.a, s.b, place) === 0 && sideOf(t.a, t.b, place) === 0 ? null : place;
  }
  if (ta === 0 && isBetween(s, t.a)) cutsOfS.push(t.a);
  if (tb === 0 && isBetween(s, t.b)) cutsOfS.push(t.b);
  if (sa === 0 && isBetween(t, s.a)) cutsOfT.push(s.a);
  if (sb === 0 && isBetween(t, s.b)) cutsOfT.push(s.b);
  return null;
}

/** Whether a point on the line of a segment lies strictly between its ends. */
function isBetween(s: Segment, p: Point): boolean {
  return isBefore(s.a, p) && isBefore(p, s.b);
}

function addCut(s: Segment, place: Point, cuts: Point[]): void {
  if (!isSamePoint(place, s.a) && !isSamePoint(place, s.b)) cuts.push(place);
}

/** Where two segments cross, to the nearest tick; a level or upright segment keeps its height or place. */
function crossingOf(s: Segment, t: Segment): Point {
  // Products below 2^53 are exact and their difference is rounded once, so `share` is right to 1 in 2^51.
  const dx = s.b.x - s.a.x;
  const dy = s.b.y - s.a.y;
  const ex = t.b.x - t.a.x;
  const ey = t.b.y - t.a.y;
  const share = ((t.a.x - s.a.x) * ey - (t.a.y - s.a.y) * ex) / (dx * ey - dy * ex);
  return { x: toTicks(s.a.x + share * dx), y: toTicks(s.a.y + share * dy) };
}

/** Cuts every segment at the rounded places and corners whose square it passes through. */
function snapAll(segments: readonly Segment[], rounded: readonly Point[], cuts: Point[][]): void {
  const places = new Map([...rounded, ...segments.flatMap(({ a, b }) => [a, b])].map((p) => [`${p.x} ${p.y}`, p]));
  const indices = segments.map((_, i) => i);
  const reachingOver = bandsOf(indices, (i) => [segments[i].a.y, segments[i].b.y]);
  for (const place of places.values()) {
    for (const i of reachingOver(place.y)) {
      if (passesThrough(segments[i], place)) addCut(segments[i], place, cuts[i]);
    }
  }
}

/** Whether a segment passes through the square of one tick round a place; exact, a touched corner does not count. */
function passesThrough({ a, b }: Segment, { x, y }: Point): boolean {
  if (y < a.y || y > b.y || (x < a.x && x < b.x) || (x > a.x && x > b.x)) return false;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return 2 * Math.abs(dx * (y - a.y) - dy * (x - a.x)) < Math.abs(dx) + Math.abs(dy);
}

function cutAt(segment: Segment, cuts: Point[]): Segment[] {
  const { a, b, first, second, source } = segment;
  const far = (p: Point) => (p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y);
  const stops = [a, ...cuts.sort((p, q) => far(p) - far(q)), b];
  const parts: Segment[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    if (!isSamePoint(stops[i], stops[i + 1])) parts.push(segmentOf(stops[i], stops[i + 1], first, second, source));
  }
  return parts;
}

function merged(segments: Segment[]): Segment[] {
  segments.sort((s, t) => s.a.y - t.a.y || s.a.x - t.a.x || s.b.y - t.b.y || s.b.x - t.b.x);
  const result: Segment[] = [];
  for (const segment of segments) {
    const before = lastOf(result);
    if (before && isSamePoint(before.a, segment.a) && isSamePoint(before.b, segment.b)) {
      const first = before.first + segment.first;
      result[result.length - 1] = { ...before, first, second: before.second + segment.second };
    } else {
      result.push(segment);
    }
  }
  return result.filter((segment) => segment.first !== 0 || segment.second !== 0);
}
