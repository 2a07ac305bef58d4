/**
 * Edges cut where they meet, so that afterwards they share end points only: what adding and taking away build on.
 *
 * Every decision is the exact sign of a cross product. The one thing that moves is a crossing that falls between
 * ticks: it goes to a whole point inwards (`inwards.ts`), which bends both edges by less than a tick, and the bent
 * edges are looked at again until none cross. That ends: a cut edge stays inside its own box of whole coordinates.
 */
import { inwards, xAtHeight, yAtWidth } from './inwards';
import { isSamePoint, type Point, sideOf } from './point';

/** An edge as it was given, inside on its left. Parts of one edge know each other by it. */
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
  // A room needs one or two passes; the bound only turns a mistake of ours into an error instead of a hang.
  for (let pass = 0; pass < 64; pass++) {
    const { cuts, isBent } = cutsOf(current);
    current = merged(current.flatMap((segment, i) => (cuts[i].length === 0 ? [segment] : cutAt(segment, cuts[i]))));
    if (!isBent) return current;
  }
  throw new Error(`Internal: ${segments.length} edges do not settle`);
}

/** Lower first; of two on one level the left one. */
function isBefore(p: Point, q: Point): boolean {
  return p.y < q.y || (p.y === q.y && p.x < q.x);
}

/** All pairs whose boxes meet: cost n^2 comparisons, n = some tens of edges. */
function cutsOf(segments: readonly Segment[]): { cuts: Point[][]; isBent: boolean } {
  const cuts: Point[][] = segments.map(() => []);
  let isBent = false;
  for (let i = 0; i < segments.length; i++) {
    const s = segments[i];
    const left = Math.min(s.a.x, s.b.x);
    const right = Math.max(s.a.x, s.b.x);
    for (let j = i + 1; j < segments.length; j++) {
      const t = segments[j];
      if (t.a.y > s.b.y || t.b.y < s.a.y) continue;
      if ((t.a.x > right && t.b.x > right) || (t.a.x < left && t.b.x < left)) continue;
      if (cutPair(s, t, cuts[i], cuts[j])) isBent = true;
    }
  }
  return { cuts, isBent };
}

/** Notes where two segments cut each other; true when the place had to be rounded. */
function cutPair(s: Segment, t: Segment, cutsOfS: Point[], cutsOfT: Point[]): boolean {
  const ta = sideOf(s.a, s.b, t.a);
  const tb = sideOf(s.a, s.b, t.b);
  if (ta * tb > 0) return false;
  const sa = sideOf(t.a, t.b, s.a);
  const sb = sideOf(t.a, t.b, s.b);
  if (sa * sb > 0) return false;
  if (ta * tb < 0 && sa * sb < 0) {
    const place = crossingOf(s, t);
    addCut(s, place, cutsOfS);
    addCut(t, place, cutsOfT);
    return sideOf(s.a, s.b, place) !== 0 || sideOf(t.a, t.b, place) !== 0;
  }
  if (ta === 0 && isBetween(s, t.a)) cutsOfS.push(t.a);
  if (tb === 0 && isBetween(s, t.b)) cutsOfS.push(t.b);
  if (sa === 0 && isBetween(t, s.a)) cutsOfT.push(s.a);
  if (sb === 0 && isBetween(t, s.b)) cutsOfT.push(s.b);
  return false;
}

/** Whether a point on the line of a segment lies strictly between its ends. */
function isBetween(s: Segment, p: Point): boolean {
  return isBefore(s.a, p) && isBefore(p, s.b);
}

function addCut(s: Segment, place: Point, cuts: Point[]): void {
  if (!isSamePoint(place, s.a) && !isSamePoint(place, s.b)) cuts.push(place);
}

/** Where two segments cross, whole, towards the inside of both edges. Exact where one of them is level or upright. */
function crossingOf(s: Segment, t: Segment): Point {
  for (const [line, other] of [
    [s, t],
    [t, s],
  ]) {
    const [from, to] = directed(other);
    if (line.a.y === line.b.y) return { x: xAtHeight(from, to, line.a.y), y: line.a.y };
    if (line.a.x === line.b.x) return { x: line.a.x, y: yAtWidth(from, to, line.a.x) };
  }
  // Products below 2^53 are exact and their difference is rounded once, so `share` is right to 1 in 2^51.
  const dx = s.b.x - s.a.x;
  const dy = s.b.y - s.a.y;
  const ex = t.b.x - t.a.x;
  const ey = t.b.y - t.a.y;
  const share = ((t.a.x - s.a.x) * ey - (t.a.y - s.a.y) * ex) / (dx * ey - dy * ex);
  const x = s.a.x + share * dx;
  const y = s.a.y + share * dy;
  const nearest = { x: inwards(x, 0), y: inwards(y, 0) };
  if (sideOf(s.a, s.b, nearest) === 0 && sideOf(t.a, t.b, nearest) === 0) return nearest;
  const [p, q] = [s.source, t.source];
  return { x: inwards(x, p.from.y - p.to.y + q.from.y - q.to.y), y: inwards(y, p.to.x - p.from.x + q.to.x - q.from.x) };
}

/** The ends of a segment in the direction of its source edge, inside on the left. */
function directed(s: Segment): readonly [Point, Point] {
  return isBefore(s.source.from, s.source.to) ? [s.a, s.b] : [s.b, s.a];
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
    const before = result[result.length - 1];
    if (before && isSamePoint(before.a, segment.a) && isSamePoint(before.b, segment.b)) {
      const first = before.first + segment.first;
      result[result.length - 1] = { ...before, first, second: before.second + segment.second };
    } else {
      result.push(segment);
    }
  }
  return result.filter((segment) => segment.first !== 0 || segment.second !== 0);
}
