/**
 * A length as a whole number of ticks.
 *
 * 1 tick = 1/640 mm, so that 1 mm = 640 ticks and 1/128 in = 127 ticks are both exact (1 in = 25.4 mm exactly:
 * International Yard and Pound Agreement, 1 July 1959; NIST SP 811 App. B).
 */
export type Ticks = number;

/**
 * A length as it was typed, in whole fine ticks: 46,875 to a tick, 1/30,000,000 mm each.
 *
 * So 1 in is 762,000,000 of them, and every inch or millimetre of up to six decimals (7.09"), every foot of up to six,
 * every 1/128 in and every third of those are whole. Sums and multiples of typed lengths are then whole numbers too and
 * compare as typed: 25 x 7.09" is 178" - 3/4", where ticks of 1/640 mm would drift by half a tick per row. Whole up to
 * 3,000 lengths of 100 m (9 x 10^15); only for sums along a line, never for products.
 */
export type FineTicks = number;

/** The two systems a person can work in. */
export type Units = 'us' | 'metric';

export const TICKS_PER_MM = 640;
export const TICKS_PER_INCH = 16_256;
export const TICKS_PER_FOOT = 12 * TICKS_PER_INCH;
export const TICKS_PER_METRE = 1000 * TICKS_PER_MM;

/**
 * The longest side of a room, ticks: 100 m. Below it the cross product of any two edges is an exact integer in a
 * double (2 x (6.4e7)^2 < 2^53).
 */
export const LONGEST_SIDE: Ticks = 100 * TICKS_PER_METRE;

/**
 * The one rounding rule: to the nearest tick, halves away from zero. Everything that turns a real number into ticks
 * goes through here; what must lie inside the room uses `floorToStep` afterwards.
 */
export function toTicks(value: number): Ticks {
  return value < 0 ? -Math.round(-value) : Math.round(value);
}

const FINE_TICKS_PER_TICK = 46_875;

/** Fine ticks of a length in ticks, whole or not, to the nearest: what a cell has reckoned is off by less than one. */
export function fineTicksOf(ticks: number): FineTicks {
  return toTicks(ticks * FINE_TICKS_PER_TICK);
}

/** A typed length in ticks, not rounded: for showing it, and for what is rounded to a step later. */
export function ticksUnrounded(fine: FineTicks): number {
  return fine / FINE_TICKS_PER_TICK;
}

/** A typed length in ticks, to the nearest. */
export function ticksOf(fine: FineTicks): Ticks {
  return toTicks(fine / FINE_TICKS_PER_TICK);
}

/**
 * How far a length that is read off an outline may lie from what was typed: its walls, and the gaps at both, were each
 * rounded to a tick. A run that misses whole planks, or a floor that misses whole rows, by no more meets them.
 */
export const OUTLINE_ROUNDING: Ticks = 2;

/** Ticks of a length in inches, to the nearest tick (any multiple of 1/128 in is exact). */
export function ticksOfInches(inches: number): Ticks {
  return toTicks(inches * TICKS_PER_INCH);
}

/** Ticks of a length in millimetres, to the nearest tick (any multiple of 1/640 mm is exact). */
export function ticksOfMm(mm: number): Ticks {
  return toTicks(mm * TICKS_PER_MM);
}

/** Inches of a length in ticks: exact whenever the length is a multiple of 1/128 in. */
export function inchesOf(ticks: Ticks): number {
  return ticks / TICKS_PER_INCH;
}

/** Millimetres of a length in ticks. */
export function mmOf(ticks: Ticks): number {
  return ticks / TICKS_PER_MM;
}

/** The greatest multiple of `step` (ticks, > 0) that is not above `length`. */
export function floorToStep(length: Ticks, step: Ticks): Ticks {
  return Math.floor(length / step) * step;
}

/** The least multiple of `step` (ticks, > 0) that is not below `length`. */
export function ceilToStep(length: Ticks, step: Ticks): Ticks {
  return Math.ceil(length / step) * step;
}
