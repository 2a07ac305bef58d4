/**
 * Adding, taking away and common part of regions.
 *
 * The edges of both are cut where they meet (`arrange`); a segment stays when what lies on its left is wanted and what
 * lies on its right is not, or the other way round; what stays is joined to outlines with the inside on the left.
 * Cost: each of n segments is held against those beside, above or below it, at most n^2. Any outlines will do: crossing themselves, overlapping, touching, running back on
 * themselves. A place is inside an operand when its outlines turn round it (winding number not 0).
 */

import { arrange, type Segment, type SourceEdge, segmentOf } from './arrangement';
import { bandsOf } from './bands';
import { entryAfter, entryBefore } from './lists';
import { isSamePoint, type Point, sideOf } from './point';
import { type Outline, type Region, signedAreaOf } from './polygon';

/** Everything that is in one of the two. */
export function unite(a: Region, b: Region): Region {
  return combine(a, b, (inA, inB) => inA || inB);
}

/** What is in `a` and not in `b`. */
export function subtract(a: Region, b: Region): Region {
  return combine(a, b, (inA, inB) => inA && !inB);
}

/** What is in both. */
export function intersect(a: Region, b: Region): Region {
  return combine(a, b, (inA, inB) => inA && inB);
}

/** The same part of the plane with edges that neither cross nor overlap. */
export function tidy(region: Region): Region {
  return combine(region, [], (inA) => inA);
}

type Wanted = (inFirst: boolean, inSecond: boolean) => boolean;

interface DirectedEdge {
  readonly from: Point;
  readonly to: Point;
  readonly source: SourceEdge;
}

function combine(a: Region, b: Region, wanted: Wanted): Region {
  const segments = arrange([...segmentsOf(a, 1, 0), ...segmentsOf(b, 0, 1)]);
  const edges: DirectedEdge[] = [];
  const beside = bandsOf(segments, ({ a, b }) => [a.y, b.y]);
  const above = bandsOf(segments, ({ a, b }) => [Math.min(a.x, b.x), Math.max(a.x, b.x)]);
  for (const segment of segments) {
    const { a, b } = segment;
    const met = a.y === b.y ? above((a.x + b.x) / 2) : beside((a.y + b.y) / 2);
    const [first, second] = turnsRightOf(segment, met);
    const right = wanted(first !== 0, second !== 0);
    const left = wanted(first + segment.first !== 0, second + segment.second !== 0);
    if (left === right) continue;
    const [from, to] = left ? [segment.a, segment.b] : [segment.b, segment.a];
    edges.push({ from, to, source: segment.source });
  }
  return outlinesOf(edges);
}

function segmentsOf(region: Region, first: number, second: number): Segment[] {
  const segments: Segment[] = [];
  for (const outline of region) {
    outline.forEach((from, i) => {
      const to = entryAfter(outline, i);
      if (!isSamePoint(from, to)) segments.push(segmentOf(from, to, first, second, { from, to }));
    });
  }
  return segments;
}

/**
 * How often each operand turns round the places just right of a segment: what a ray from its middle meets on the way
 * out, to the right (level segments: downwards, which is their right). The middle is taken doubled, so it is whole.
 *
 * @param segments all that the ray may meet
 */
function turnsRightOf(segment: Segment, segments: readonly Segment[]): readonly [number, number] {
  const isLevel = segment.a.y === segment.b.y;
  const middle = { x: segment.a.x + segment.b.x, y: segment.a.y + segment.b.y };
  let first = 0;
  let second = 0;
  for (const other of segments) {
    if (other === segment) continue;
    const crossed = isLevel ? crossedBelow(other, middle) : crossedRight(other, middle);
    first += crossed * other.first;
    second += crossed * other.second;
  }
  return [first, second];
}

/** 1 when a ray to the right from the doubled point crosses the segment, else 0; its lower end counts, its upper not. */
function crossedRight({ a, b }: Segment, doubled: Point): number {
  if (2 * a.y > doubled.y || 2 * b.y <= doubled.y) return 0;
  return (b.x - a.x) * (doubled.y - 2 * a.y) < (b.y - a.y) * (doubled.x - 2 * a.x) ? 0 : 1;
}

/** The same for a ray downwards: 1 or -1 as the segment runs to the right or to the left, 0 when it is not met. */
function crossedBelow({ a, b }: Segment, doubled: Point): number {
  const [p, q] = a.x < b.x ? [a, b] : [b, a];
  if (2 * p.x > doubled.x || 2 * q.x <= doubled.x) return 0;
  const isBelow = (q.x - p.x) * (doubled.y - 2 * p.y) > (q.y - p.y) * (doubled.x - 2 * p.x);
  if (!isBelow) return 0;
  return p === a ? 1 : -1;
}

/** Joins edges to outlines. Every corner has as many edges in as out, so each walk comes back to where it began. */
function outlinesOf(edges: readonly DirectedEdge[]): Region {
  const leaving = new Map<string, DirectedEdge[]>();
  for (const edge of edges) {
    const place = keyOf(edge.from);
    const list = leaving.get(place);
    if (list) list.push(edge);
    else leaving.set(place, [edge]);
  }
  const used = new Set<DirectedEdge>();
  const outlines: Outline[] = [];
  for (const start of edges) {
    if (used.has(start)) continue;
    const walk: DirectedEdge[] = [];
    for (let edge = start; !used.has(edge); edge = nextEdge(edge, leaving)) {
      used.add(edge);
      walk.push(edge);
    }
    const outline = cornersOf(walk);
    if (outline.length >= 3 && signedAreaOf(outline) !== 0) outlines.push(outline);
  }
  return outlines;
}

function keyOf(p: Point): string {
  return `${p.x} ${p.y}`;
}

/**
 * The edge that goes on round the same inside: the first one clockwise from the way back. So parts that touch in a
 * corner come apart, and a hole that touches the outline becomes part of it.
 */
function nextEdge(edge: DirectedEdge, leaving: ReadonlyMap<string, DirectedEdge[]>): DirectedEdge {
  const choices = leaving.get(keyOf(edge.to)) as DirectedEdge[];
  if (choices.length === 1) return choices[0];
  const half = (to: Point) => 1 + sideOf(edge.to, edge.from, to);
  return choices.reduce((best, choice) => {
    const difference = half(choice.to) - half(best.to);
    const isSooner = difference < 0 || (difference === 0 && sideOf(edge.to, choice.to, best.to) < 0);
    return isSooner ? choice : best;
  });
}

/**
 * Corners of a walk, without those inside one source edge and then those on a straight line. In this order: the parts of
 * a snapped edge bend a little, and a part of a tick or two may point the way of the next edge.
 */
function cornersOf(walk: readonly DirectedEdge[]): Outline {
  const ends = walk.filter((edge, i) => entryBefore(walk, i).source !== edge.source);
  const corners = ends.map((edge) => edge.from);
  const at = (i: number) => corners[(i + corners.length) % corners.length];
  return corners.filter((corner, i) => sideOf(at(i - 1), corner, at(i + 1)) !== 0);
}
