/** Custom functions between text and numbers for lengths. */
import {
  type FineTicks,
  fineTicksOf,
  inchesOf,
  mmOf,
  TICKS_PER_INCH,
  TICKS_PER_MM,
  type Ticks,
  ticksUnrounded,
  type Units,
} from '../geometry/length';
import { lengthText } from '../takeoff/text/lengthText';
import type { Ratio } from '../takeoff/text/numberText';
import { answersOf, type CellAnswer, oneOrGrid } from './arguments';
import { exactLength0OrMore, fineLengthEitherWay } from './cells';

/**
 * Reads a length as the trade writes it and answers a number to calculate with: inches, or millimetres with units
 * "metric".
 * Example: PLANK_LENGTH("12' 6 1/2""") is 150.5. PLANK_LENGTH("3.81 m") is 150.
 *
 * @param {string|number|range} text Length such as 12' 6 1/2", 6-1/2", 3.81 m or 381 cm; a bare number is inches (millimetres).
 * @param {string} [units] "us" answers inches, "metric" millimetres. Blank means "us".
 * @return {number} Inches or millimetres.
 * @customfunction
 */
export function PLANK_LENGTH(text: unknown, units?: unknown): CellAnswer | CellAnswer[][] {
  const table = { text: { given: text, read: exactLength0OrMore('plank') } };
  return oneOrGrid(answersOf(table, units, (given, system) => exactNumber(given.text, system)));
}

/**
 * Writes a length as it is marked on a plank: inches to the nearest 1/16, or whole millimetres with units "metric".
 * Example: PLANK_LENGTH_TEXT(6.5) is 6 1/2". PLANK_LENGTH_TEXT(190.4, "metric") is 190 mm.
 *
 * @param {number|string|range} value Inches (millimetres with "metric"), or text with its own units.
 * @param {string} [units] "us" for inches, "metric" for millimetres. Blank means "us".
 * @return {string} The length as text.
 * @customfunction
 */
export function PLANK_LENGTH_TEXT(value: unknown, units?: unknown): CellAnswer | CellAnswer[][] {
  const table = { value: { given: value, read: fineLengthEitherWay('plank') } };
  return oneOrGrid(answersOf(table, units, (given, system) => typedLengthText(given.value, system)));
}

/** A typed length as it is marked on a plank, rounded once. Fine ticks come in. */
export function typedLengthText(length: FineTicks, units: Units): string {
  return lengthText(ticksUnrounded(length), units, 'piece');
}

/** A typed length as it is told of a room, rounded once. Fine ticks come in. */
export function typedRoomText(length: FineTicks, units: Units): string {
  return lengthText(ticksUnrounded(length), units, 'room');
}

/** A typed length, or a sum of such, as a function answers with it: the decimal itself, in inches or millimetres. */
export function typedLengthNumber(length: FineTicks, units: Units): number {
  return length / (units === 'us' ? FINE_TICKS_PER_INCH : FINE_TICKS_PER_MM);
}

/**
 * A length as a function answers with it: inches or millimetres. What is no whole 1/128 in or 0.1 mm was rounded to a
 * tick (0.00006 in), so it is given to 4 decimals in inches and 3 in millimetres, and 3.6 in does not come out as 3.60002.
 */
export function lengthNumber(ticks: Ticks, units: Units): number {
  if (units === 'us') return ticks % 127 === 0 ? inchesOf(ticks) : Math.round(inchesOf(ticks) * 1e4) / 1e4;
  return ticks % 64 === 0 ? mmOf(ticks) : Math.round(mmOf(ticks) * 1e3) / 1e3;
}

const FINE_TICKS_PER_INCH: FineTicks = fineTicksOf(TICKS_PER_INCH);
const FINE_TICKS_PER_MM: FineTicks = fineTicksOf(TICKS_PER_MM);

function exactNumber({ n, d }: Ratio, units: Units): number {
  return n / (d * (units === 'us' ? TICKS_PER_INCH : TICKS_PER_MM));
}
