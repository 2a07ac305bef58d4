/** Custom functions between text and numbers for lengths. */
import { inchesOf, mmOf, type Ticks, type Units } from '../geometry/length';
import { lengthText } from '../takeoff/lengthText';
import { answersOf, type CellAnswer, oneOrGrid } from './arguments';
import { length0OrMore, lengthEitherWay } from './cells';

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
  const table = { text: { given: text, read: length0OrMore('plank') } };
  return oneOrGrid(answersOf(table, units, (given, system) => lengthNumber(given.text, system)));
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
  const table = { value: { given: value, read: lengthEitherWay('plank') } };
  return oneOrGrid(answersOf(table, units, (given, system) => lengthText(given.value, system, 'piece')));
}

/** A length as a function answers with it: inches or millimetres. */
export function lengthNumber(ticks: Ticks, units: Units): number {
  return units === 'us' ? inchesOf(ticks) : mmOf(ticks);
}
