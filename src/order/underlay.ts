/** Goods from a roll laid in strips over the floor: underlay, vapour film. */

import { cutStock } from '../cutting/trim/stock';
import { OUTLINE_ROUNDING, type Ticks } from '../geometry/length';
import { addedUp, lastOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { boundsOf, partsOf, type Region } from '../geometry/polygon';
import { levelStripOf } from '../geometry/strip';

/** A roll, ticks. `overlap` is what a strip covers of its neighbour and, end to end, of the strip before; 0 = butted. */
export interface Roll {
  readonly width: Ticks;
  readonly length: Ticks;
  readonly overlap: Ticks;
}

/** Our choice: more strips than this is a slip of units, and would be slow to lay out. */
export const MOST_STRIPS = 5000;

/** Strips along the room's length (x) or its width (y). */
export type StripDirection = 'length' | 'width';

/** How one room is covered. */
export interface StripPlan {
  readonly direction: StripDirection;
  /** Length of each strip to cut, none longer than the roll, in laying order, ticks. */
  readonly strips: readonly Ticks[];
  /** Length of all joints between strips, side by side and end to end: what tape has to cover. */
  readonly seamLength: Ticks;
}

/** How rooms are covered from the same rolls. */
export interface Cover {
  /** A plan a room. */
  readonly plans: readonly StripPlan[];
  readonly rolls: number;
}

/**
 * Covers rooms, their cut-outs taken away: along the way asked for, or along the way of each room that takes fewer
 * rolls, then less length of them, then fewer strips; from the wall that takes less. A strip is cut from any roll. The
 * rooms are gone through once, so among several the fewest rolls are not proved.
 *
 * Each strip reaches over the room's whole extent within its width, so a recess is covered as far as it goes and the
 * part of a strip that crosses open ground outside the room is not cut.
 *
 * @throws RangeError if the overlap is not below the roll's width and length
 */
export function coverOf(floors: readonly Region[], roll: Roll, direction: StripDirection | ''): Cover {
  const ways = floors.map((floor) => waysOf(floor, roll, direction));
  // Each room the shortest way first; then every other way of a room that makes the rolls of all of them fewer.
  let best = coverWith(
    ways.map((plans) => plans.reduce((least, plan) => (isShorter([plan], [least]) ? plan : least))),
    roll,
  );
  ways.forEach((plans, i) => {
    for (const plan of plans.filter((other) => String(other.strips) !== String(best.plans[i].strips))) {
      const other = coverWith(
        best.plans.map((kept, room) => (room === i ? plan : kept)),
        roll,
      );
      if (other.rolls < best.rolls || (other.rolls === best.rolls && isShorter(other.plans, best.plans))) best = other;
    }
  });
  return best;
}

/** Strips for one room by itself: see `coverOf`. */
export function stripsOf(floor: Region, roll: Roll, direction: StripDirection | ''): StripPlan {
  return coverOf([floor], roll, direction).plans[0];
}

/** Along the length and the width, or the way asked for, each from either wall. */
function waysOf(floor: Region, roll: Roll, direction: StripDirection | ''): StripPlan[] {
  requireOverlap(roll);
  const directions: readonly StripDirection[] = direction === '' ? ['length', 'width'] : [direction];
  return directions.flatMap((way) => {
    const turned = way === 'length' ? floor : flipped(floor, ({ x, y }) => ({ x: y, y: x }));
    const fromOtherWall = flipped(turned, ({ x, y }) => ({ x, y: -y }));
    return [stripPlan(turned, roll, way), stripPlan(fromOtherWall, roll, way)];
  });
}

function requireOverlap(roll: Roll): void {
  if (!(roll.overlap < Math.min(roll.width, roll.length))) throw new RangeError('The overlap is as wide as the roll.');
}

function coverWith(plans: readonly StripPlan[], roll: Roll): Cover {
  const strips = plans.flatMap((plan) => plan.strips);
  return { plans, rolls: rollsFor(strips, roll) };
}

/**
 * Rolls that give all strips, each strip cut from any roll; the kerf of a knife is nothing. Strips are read off an outline,
 * so each may be longer than what was typed by its rounding: three of 8.3 ft come out of a roll of 24.9. Ticks.
 */
export function rollsFor(strips: readonly Ticks[], roll: Roll): number {
  const least = strips.map((strip) => Math.max(1, Math.min(strip, roll.length) - OUTLINE_ROUNDING));
  return cutStock(least, roll.length, 0).count;
}

/**
 * Rolls for a rectangle, strips along whichever way takes fewer. Lengths are whole numbers of one unit and taken as they
 * are: fine ticks, in which a typed decimal is itself.
 *
 * @throws RangeError if the overlap is not below the roll's width and length
 */
export function rollsForRectangle(length: number, width: number, roll: Roll): number {
  requireOverlap(roll);
  const rolls = [
    [length, width],
    [width, length],
  ].map(([along, across]) => {
    const stripCount = Math.max(1, Math.ceil((across - roll.overlap) / (roll.width - roll.overlap)));
    const pieces = splitStrip(along, roll, 0);
    const rest = lastOf(pieces);
    // Strips are alike: whole rolls, and as many rests out of one roll as go into it.
    return stripCount * (pieces.length - 1) + Math.ceil(stripCount / Math.floor(roll.length / rest));
  });
  return Math.min(...rolls);
}

function isShorter(a: readonly StripPlan[], b: readonly StripPlan[]): boolean {
  const [stripsA, stripsB] = [a, b].map((plans) => plans.flatMap((plan) => plan.strips));
  const [lengthA, lengthB] = [addedUp(stripsA), addedUp(stripsB)];
  return lengthA !== lengthB ? lengthA < lengthB : stripsA.length < stripsB.length;
}

/** A region seen in a mirror: its outlines run the other way round, so they are turned back. */
function flipped(region: Region, flip: (point: Point) => Point): Region {
  return region.map((outline) => outline.map(flip).reverse());
}

/** Strips along x, from the least y upwards; none for what the rounding of the strips before leaves uncovered. */
function stripPlan(floor: Region, roll: Roll, direction: StripDirection): StripPlan {
  const { y0, y1 } = boundsOf(floor);
  const strips: Ticks[] = [];
  let seamLength = 0;
  const isBare = (y: Ticks, count: number) => y + roll.overlap + OUTLINE_ROUNDING + count < y1;
  for (let y = y0, count = 0; y === y0 || isBare(y, count); y += roll.width - roll.overlap, count++) {
    // A butted seam is measured in a band of one tick.
    if (y > y0) seamLength += addedUp(reachesOf(floor, y, y + Math.max(1, roll.overlap)));
    for (const reach of reachesOf(floor, y, Math.min(y + roll.width, y1))) {
      const pieces = splitStrip(reach, roll, OUTLINE_ROUNDING);
      strips.push(...pieces);
      seamLength += (pieces.length - 1) * roll.width;
    }
  }
  return { direction, strips, seamLength };
}

/**
 * A strip longer than the roll: whole rolls and a rest, each overlapping the one before.
 *
 * @param rounding of the strip; every roll adds one for its own
 */
function splitStrip(length: number, roll: Roll, rounding: number): number[] {
  const pieces: number[] = [];
  let left = length;
  while (left > roll.length + (rounding > 0 ? rounding + pieces.length : 0)) {
    pieces.push(roll.length);
    left -= roll.length - roll.overlap;
  }
  return [...pieces, Math.min(left, roll.length)];
}

/** How far a region reaches along x between two heights: a length for each part that stands clear of the others. */
function reachesOf(floor: Region, bottom: Ticks, top: Ticks): readonly Ticks[] {
  const spans = partsOf(levelStripOf(floor, bottom, top)).map(({ outline }) => boundsOf([outline]));
  spans.sort((a, b) => a.x0 - b.x0);
  const reaches: Ticks[] = [];
  let reached = Number.NEGATIVE_INFINITY;
  for (const { x0, x1 } of spans) {
    const isApart = x0 > reached;
    if (isApart) reaches.push(x1 - x0);
    if (!isApart && x1 > reached) reaches[reaches.length - 1] += x1 - reached;
    reached = Math.max(reached, x1);
  }
  return reaches;
}
