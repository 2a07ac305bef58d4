/**
 * The rounding rule of everything that is not whole: a slanted wall meeting a row, a gap taken off a slanted wall, the
 * corner of two slanted edges. Such a coordinate goes to the next tick towards the inside of the room, so that a piece
 * cut to it is never too long for its place.
 */
import { type Ticks, toTicks } from './length';
import type { Point } from './point';

/**
 * A coordinate as whole ticks: up when `towards` (the inward direction on this axis) is positive, down when it is
 * negative, to the nearest tick when it is 0. A whole value stays as it is.
 */
export function inwards(value: number, towards: number): Ticks {
  if (towards > 0) return Math.ceil(value);
  return towards < 0 ? Math.floor(value) : toTicks(value);
}

/**
 * `inwards` of dividend / divisor without a rounding error: both are whole, the divisor > 0, the dividend under 2^53,
 * `towards` not 0.
 */
function inwardsQuotient(dividend: number, divisor: number, towards: number): Ticks {
  // A quotient in doubles is rounded onto or across a whole number only where whole number x divisor is 2^53 or more.
  const quotient = Math.floor(dividend / divisor);
  return towards > 0 && dividend > quotient * divisor ? quotient + 1 : quotient;
}

/** x of the edge a -> b (inside on its left, not level) at height y, exact and rounded inwards. Ticks. */
export function xAtHeight(a: Point, b: Point, y: Ticks): Ticks {
  const towards = a.y - b.y;
  const rise = Math.abs(towards);
  const dividend = (b.x - a.x) * (b.y > a.y ? y - a.y : a.y - y);
  return a.x + inwardsQuotient(dividend, rise, towards);
}

/** y of the edge a -> b (inside on its left, not upright) at x, exact and rounded inwards. Ticks. */
export function yAtWidth(a: Point, b: Point, x: Ticks): Ticks {
  const towards = b.x - a.x;
  const dividend = (b.y - a.y) * (b.x > a.x ? x - a.x : a.x - x);
  return a.y + inwardsQuotient(dividend, Math.abs(towards), towards);
}
