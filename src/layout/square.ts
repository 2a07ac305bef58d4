/**
 * Ends and edges at walls that are out of square by less than a layer would cut: squared off at their shorter side. What
 * comes off lies along a wall, in a strip narrower than the tolerance; seams between pieces are never moved.
 */

import { subtract } from '../geometry/combine';
import type { Ticks } from '../geometry/length';
import { addedUp, lastOf, madeOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { anticlockwise, type Outline, type Region } from '../geometry/polygon';
import { mirrored, turnAt } from '../geometry/turn';

/** Lines along which wood meets wood: no edge on one of them is an edge at a wall. */
export interface Seams {
  readonly levels: readonly Ticks[];
  readonly uprights: readonly Ticks[];
}

export interface SquaredOff {
  readonly region: Region;
  /** The widest gap that squaring adds at a wall; 0 where everything was square. */
  readonly most: Ticks;
}

/** What rounding leaves of a straight wall is no slant. */
const ROUNDING: Ticks = 4;

/** Our choice: walls that turn by less go on as one side; round cut-outs turn by 22.5 degrees at each corner. */
const SMOOTH_DEGREES = 30;

/** Our choice: a side that bends by more altogether is a curve, which is sawn as it is. */
const CURVED_DEGREES = 10;

/** @param tolerance what is out of square by less is squared; 0 leaves everything as it is */
export function squaredOff(region: Region, seams: Seams, tolerance: Ticks): SquaredOff {
  if (tolerance <= 0) return { region, most: 0 };
  // Ends first: a small cut corner is taken off by a crosscut, not by a rip as long as the piece.
  const ends = uprightSquared(region, seams, tolerance);
  const turned = { levels: seams.uprights, uprights: seams.levels };
  const edges = uprightSquared(mirrored(ends.region), turned, tolerance);
  return { region: edges.most > 0 ? mirrored(edges.region) : ends.region, most: Math.max(ends.most, edges.most) };
}

function uprightSquared(region: Region, seams: Seams, tolerance: Ticks): SquaredOff {
  const sides = region
    .flatMap((outline) => sidesOf(outline, seams, tolerance))
    .filter((side) => isOffSquare(side, tolerance));
  if (sides.length === 0) return { region, most: 0 };
  return { region: subtract(region, sides.map(shavingOf)), most: Math.max(...sides.map(leanOf)) };
}

/** A side of a piece at walls, in the order of its outline: all upwards or all downwards. */
interface Side {
  readonly corners: readonly Point[];
  /** Corners of the outline before and after it; null beyond a seam. */
  readonly before: Point | null;
  readonly after: Point | null;
}

/** How far a side leans out of square: its extent along the rows. */
function leanOf({ corners }: Side): Ticks {
  const places = corners.map(({ x }) => x);
  return Math.max(...places) - Math.min(...places);
}

function riseOf({ corners }: Side): Ticks {
  return lastOf(corners).y - corners[0].y;
}

function isOffSquare(side: Side, tolerance: Ticks): boolean {
  const lean = leanOf(side);
  return lean > ROUNDING && lean < tolerance && Math.abs(riseOf(side)) > lean && !isCurved(side);
}

/** A part of a round cut-out may be one edge long: the bends at its ends count. */
function isCurved({ corners, before, after }: Side): boolean {
  const way = [...(before ? [before] : []), ...corners, ...(after ? [after] : [])];
  const turns = way.slice(1, -1).map((corner, i) => turnAt(way[i], corner, way[i + 2]));
  return addedUp(turns.filter((turn) => turn < SMOOTH_DEGREES)) > CURVED_DEGREES;
}

/** What lies between a side and the upright line through its innermost corner; wood lies to the left of the way. */
function shavingOf(side: Side): Outline {
  const { corners, before, after } = side;
  const places = corners.map(({ x }) => x);
  const isUp = riseOf(side) > 0;
  const inner = isUp ? Math.min(...places) : Math.max(...places);
  const [first, last] = [corners[0], lastOf(corners)];
  const to = { x: inner, y: heightBeyond(last, after, inner, isUp) };
  const from = { x: inner, y: heightBeyond(first, before, inner, !isUp) };
  return anticlockwise([...corners, to, from]);
}

/** Where the line at `inner` leaves the wood beyond a side's end: the next edge may run on under it, as at an acute corner. */
function heightBeyond(end: Point, next: Point | null, inner: Ticks, isUp: boolean): Ticks {
  if (next === null) return end.y;
  const rise = next.y - end.y;
  const share = (inner - end.x) / (next.x - end.x);
  if (!(share > 0 && share <= 1) || rise === 0 || rise > 0 !== isUp) return end.y;
  const height = end.y + share * rise;
  return isUp ? Math.ceil(height) : Math.floor(height);
}

/** The sides of an outline at walls: smooth stretches, joined across corners as long as all of it is within tolerance. */
function sidesOf(outline: Outline, seams: Seams, tolerance: Ticks): readonly Side[] {
  const joined: Side[] = [];
  for (const stretch of stretchesOf(outline, seams)) {
    const last = lastOf(joined);
    const both = last && lastOf(last.corners) === stretch.corners[0] ? joinedSide(last, stretch) : null;
    if (both && isOneWay(both.corners) && leanOf(both) < tolerance) joined[joined.length - 1] = both;
    else joined.push(stretch);
  }
  return joined;
}

function joinedSide(one: Side, next: Side): Side {
  return { corners: [...one.corners, ...next.corners.slice(1)], before: one.before, after: next.after };
}

function isOneWay(corners: readonly Point[]): boolean {
  const rises = corners.slice(1).map(({ y }, i) => y - corners[i].y);
  return rises.every((rise) => rise >= 0) || rises.every((rise) => rise <= 0);
}

/** Edges at walls in the order of the outline, those that go on smoothly together as one; it begins at a break. */
function stretchesOf(outline: Outline, seams: Seams): readonly Side[] {
  const count = outline.length;
  const at = (i: number) => outline[i % count];
  const isWall = (i: number) => !isSeam(at(i), at(i + 1), seams);
  const goesOn = (i: number) => isWall(i + count - 1) && isWall(i) && isSmooth(at(i + count - 1), at(i), at(i + 1));
  const edges = madeOf(count, (i) => i);
  const start = edges.find((i) => !isWall(i + count - 1)) ?? edges.find((i) => !goesOn(i)) ?? 0;
  const stretches: Side[] = [];
  for (const i of edges.map((step) => start + step)) {
    if (!isWall(i)) continue;
    const before = isWall(i + count - 1) ? at(i + count - 1) : null;
    const edge = { corners: [at(i), at(i + 1)], before, after: isWall(i + 1) ? at(i + 2) : null };
    const last = lastOf(stretches);
    if (i > start && last && goesOn(i)) stretches[stretches.length - 1] = joinedSide(last, edge);
    else stretches.push(edge);
  }
  return stretches;
}

function isSmooth(before: Point, at: Point, after: Point): boolean {
  return isOneWay([before, at, after]) && turnAt(before, at, after) < SMOOTH_DEGREES;
}

function isSeam(from: Point, to: Point, { levels, uprights }: Seams): boolean {
  return (from.y === to.y && levels.includes(from.y)) || (from.x === to.x && uprights.includes(from.x));
}
