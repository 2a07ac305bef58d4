/**
 * The expansion gap: a region less everything nearer to its edges than a distance.
 *
 * A strip of that width is taken off along every edge of the region, mitred where the edges turn round an obstacle, so
 * that the gap round a square column is square. What is left may fall apart or vanish. Where an edge is open (the end
 * of the floor in a doorway) nothing is taken.
 */

import { subtract } from './combine';
import { inwards } from './inwards';
import type { Ticks } from './length';
import { entryAfter, entryBefore } from './lists';
import type { Point } from './point';
import { boundsOf, type Outline, type Region } from './polygon';

/** Longest mitre in gaps. Round an obstacle sharper than 60 degrees the gap is cut off square to its tip instead. */
const MITRE_LIMIT = 2;

/** An edge with its unit direction; its inward normal is (-uy, ux). Level and upright edges are exact. */
interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly ux: number;
  readonly uy: number;
  readonly isOpen: boolean;
}

/**
 * @param region its edges must not cross
 * @param gap ticks, >= 0
 * @param isOpen tells the edges from which nothing is taken; none by default
 * @returns the rest; on slanted edges the gap is up to a tick wider, never narrower along the edge
 */
export function insetOf(region: Region, gap: Ticks, isOpen: (from: Point, to: Point) => boolean = () => false): Region {
  if (gap === 0) return region;
  // From nowhere in a room is it further to a wall than half the room's length or width.
  const { x0, y0, x1, y1 } = boundsOf(region);
  if (2 * gap >= Math.max(x1 - x0, y1 - y0)) return [];
  return subtract(
    region,
    region.flatMap((outline) => stripsOf(outline, gap, isOpen)),
  );
}

function stripsOf(outline: Outline, gap: Ticks, isOpen: (from: Point, to: Point) => boolean): Outline[] {
  const edges = outline.map((from, i) => edgeOf(from, entryAfter(outline, i), isOpen));
  return edges.flatMap((edge, i) => {
    if (edge.isOpen) return [];
    const before = entryBefore(edges, i);
    const after = entryAfter(edges, i);
    const start = farPointsOf(before, edge, gap).second;
    const { first: end, second: afterStart, hasTip } = farPointsOf(edge, after, gap);
    const strip = [edge.from, edge.to, end, start];
    return hasTip ? [strip, [edge.to, afterStart, end]] : [strip];
  });
}

function edgeOf(from: Point, to: Point, isOpen: (from: Point, to: Point) => boolean): Edge {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  return { from, to, ux: dx / length, uy: dy / length, isOpen: isOpen(from, to) };
}

/** The far corners of two strips where their edges meet; with a tip, the triangle between them is taken away too. */
interface FarPoints {
  readonly first: Point;
  readonly second: Point;
  readonly hasTip: boolean;
}

/** One mitre for both edges round an obstacle, else the strip end of each edge, square to it. */
function farPointsOf(edge: Edge, after: Edge, gap: Ticks): FarPoints {
  const bend = edge.ux * after.uy - edge.uy * after.ux;
  const straightness = edge.ux * after.ux + edge.uy * after.uy;
  const isObstacle = bend < 0 || (bend === 0 && straightness < 0);
  if (edge.isOpen || after.isOpen || !isObstacle) {
    // Into a corner with an open edge the strip runs on: that corner is square only to the tick, and no hairline of
    // floor may stay in it.
    const onwards = bend > 0 ? gap : 0;
    const first = farPoint(edge.to, edge, gap, after.isOpen ? onwards : 0);
    return { first, second: farPoint(edge.to, after, gap, edge.isOpen ? -onwards : 0), hasTip: false };
  }
  // Half the turn: its cosine gives the length of the mitre, its tangent that of a square tip.
  const cosine = Math.sqrt(Math.max(0, 1 + straightness) / 2);
  if (cosine * MITRE_LIMIT >= 1) {
    const mitre = mitreOf(edge, after, gap);
    return { first: mitre, second: mitre, hasTip: false };
  }
  const past = gap * Math.sqrt((1 - cosine) / (1 + cosine));
  return { first: farPoint(edge.to, edge, gap, past), second: farPoint(edge.to, after, gap, -past), hasTip: true };
}

/** `corner` moved `gap` to the inside of an edge and `along` it, whole, towards the inside. */
function farPoint(corner: Point, edge: Edge, gap: Ticks, along: number): Point {
  return {
    x: inwards(corner.x - gap * edge.uy + along * edge.ux, -edge.uy),
    y: inwards(corner.y + gap * edge.ux + along * edge.uy, edge.ux),
  };
}

/** Where the far lines of two edges meet; a far line that is level or upright keeps its exact coordinate. */
function mitreOf(edge: Edge, after: Edge, gap: Ticks): Point {
  const { x, y } = edge.to;
  const stretch = gap / (1 + edge.ux * after.ux + edge.uy * after.uy);
  const towardsX = -edge.uy - after.uy;
  const towardsY = edge.ux + after.ux;
  const upright = [edge, after].find(({ ux }) => ux === 0);
  const level = [edge, after].find(({ uy }) => uy === 0);
  return {
    x: upright ? x - gap * upright.uy : inwards(x + stretch * towardsX, towardsX),
    y: level ? y + gap * level.ux : inwards(y + stretch * towardsY, towardsY),
  };
}
