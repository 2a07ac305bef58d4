/**
 * One cell's value -> one domain value, or why not. A cell comes as a number, text, a boolean, a date or blank; a
 * blank is '' in a range and missing in an omitted argument. Nothing here asks for a class by name: the spreadsheet
 * makes dates in a world of its own.
 */

import { type Ticks, toTicks, type Units } from '../geometry/length';
import { isDate } from '../tabs/dates';
import type { Typed } from '../takeoff/entry';
import { SMALLEST_PLANK_SIDE } from '../takeoff/reading/limits';
import { type Found, type PercentageFault, problems } from '../takeoff/reading/problems';
import { type Area, readArea } from '../takeoff/text/areaText';
import { type LengthScale, readExactly } from '../takeoff/text/lengthText';
import { numberOf, plainText, type Ratio, ratioOf, takeNumber } from '../takeoff/text/numberText';

/** Why a cell cannot be used, as a sentence about the place it stands in. */
export interface Fault {
  /** The argument it is about, where the cell's own place does not tell. */
  readonly argument?: string;
  sentenceAt(where: string): string;
}

/** Reads one cell that is not blank. */
export type Reader<T> = (cell: unknown, units: Units) => T | Fault;

/** A fault about another argument than the first. */
export function faultIn(argument: string, sentenceAt: (where: string) => string): Fault {
  return { argument, sentenceAt };
}

/** Whether a value read is a fault. */
export function isFault(value: unknown): value is Fault {
  return typeof value === 'object' && value !== null && 'sentenceAt' in value;
}

/** A cell without content, an omitted argument, or text of spaces only. */
export function isBlank(cell: unknown): boolean {
  return cell === '' || cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}

/** What a cell holds, for quoting in a sentence. */
export function foundIn(cell: unknown): Found {
  if (typeof cell === 'number' || typeof cell === 'string') return cell;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return isDate(cell) ? 'a date' : '';
}

/** Reads lengths greater than 0, ticks; a bare number is in the unit of `scale`. */
export function lengthAbove0(scale: LengthScale): Reader<Ticks> {
  return rounded(exactLengthAbove0(scale));
}

/** Reads the length or width of a plank: no smaller than any floor is laid from. */
export function plankSide(cell: unknown, units: Units): Ticks | Fault {
  const ticks = lengthAbove0('plank')(cell, units);
  if (isFault(ticks) || ticks >= SMALLEST_PLANK_SIDE) return ticks;
  return { sentenceAt: (where) => problems.plankTooSmall(where, foundIn(cell), units) };
}

/** Reads lengths of 0 or more, such as a gap, ticks. */
export function length0OrMore(scale: LengthScale): Reader<Ticks> {
  return rounded(exactLength0OrMore(scale));
}

/** Reads lengths that may be negative, such as a change of width, ticks. */
export function lengthEitherWay(scale: LengthScale): Reader<Ticks> {
  return rounded((cell, units) => exactLength(cell, scale, units));
}

/** Reads lengths greater than 0 in ticks before they are rounded; less than half a tick is 0. */
export function exactLengthAbove0(scale: LengthScale): Reader<Ratio> {
  const read = exactLength0OrMore(scale);
  return (cell, units) => {
    const exact = read(cell, units);
    return !isFault(exact) && toTicks(numberOf(exact)) === 0 ? { sentenceAt: problems.lengthZero } : exact;
  };
}

/** Reads lengths of 0 or more in ticks before they are rounded. */
export function exactLength0OrMore(scale: LengthScale): Reader<Ratio> {
  return (cell, units) => {
    const exact = exactLength(cell, scale, units);
    if (isFault(exact) || exact.n >= 0) return exact;
    return { sentenceAt: (where) => problems.length(where, foundIn(cell), 'negative', scale, units) };
  };
}

/** Reads an area greater than 0. */
export function areaAbove0(cell: unknown, units: Units): Area | Fault {
  if (isDate(cell)) return { sentenceAt: (where) => problems.area(where, '', 'date', units) };
  const read = readArea(typedOf(cell), units);
  if (read.ok) return read.area.count.n > 0 ? read.area : { sentenceAt: problems.areaZero };
  return { sentenceAt: (where) => problems.area(where, foundIn(cell), read.why, units) };
}

/**
 * Reads a percentage as a ratio, exactly: a number is a fraction below 1 (a cell that shows 10% holds 0.1) and per cent
 * from 1 up; text may carry a `%`. At most 100 per cent.
 */
export function percentage(cell: unknown): Ratio | Fault {
  const read = isDate(cell) ? 'date' : typeof cell === 'number' ? ratioOfNumber(cell) : ratioOfText(typedOf(cell));
  if (typeof read === 'string') return { sentenceAt: (where) => problems.percentage(where, foundIn(cell), read) };
  if (read.n > read.d) return { sentenceAt: (where) => problems.percentage(where, foundIn(cell), 'too large') };
  return read;
}

/** Reads a whole number, 0 or more. */
export function count(cell: unknown): number | Fault {
  const number = typeof cell === 'string' && !isBlank(cell) ? Number(cell.trim()) : cell;
  const isCount = typeof number === 'number' && Number.isInteger(number) && number >= 0 && number <= 1e6;
  return isCount ? number : { sentenceAt: (where) => problems.count(where, foundIn(cell)) };
}

/** Reads `us` or `metric`, any case. */
export function unitsOf(cell: unknown): Units | Fault {
  const text = typeof cell === 'string' ? cell.trim().toLowerCase() : '';
  return text === 'us' || text === 'metric' ? text : { sentenceAt: () => problems.units(foundIn(cell)) };
}

/** Reads `yes` or `no`, any case. */
export function yesOrNo(cell: unknown): boolean | Fault {
  const text = String(foundIn(cell)).trim().toLowerCase();
  return text === 'yes' || text === 'no'
    ? text === 'yes'
    : { sentenceAt: (where) => problems.yesOrNo(where, foundIn(cell)) };
}

/** A cell as typed; what is neither a number nor text is put as text that no reader takes for a number. */
export function typedOf(cell: unknown): Typed {
  return typeof cell === 'number' ? cell : String(foundIn(cell));
}

function exactLength(cell: unknown, scale: LengthScale, units: Units): Ratio | Fault {
  if (isDate(cell)) return { sentenceAt: (where) => problems.length(where, '', 'date', scale, units) };
  const read = readExactly(typedOf(cell), scale, units);
  if (read.ok) return read.exact;
  return { sentenceAt: (where) => problems.length(where, foundIn(cell), read.why, scale, units) };
}

function rounded(read: Reader<Ratio>): Reader<Ticks> {
  return (cell, units) => {
    const exact = read(cell, units);
    return isFault(exact) ? exact : toTicks(numberOf(exact));
  };
}

function ratioOfNumber(value: number): Ratio | PercentageFault {
  if (!Number.isFinite(value)) return 'not finite';
  if (value < 0) return 'negative';
  if (value > 100) return 'too large';
  return fractionOrPerCent(ratioOf(value));
}

function ratioOfText(typed: Typed): Ratio | PercentageFault {
  const text = plainText(String(typed));
  if (text === '') return 'blank';
  if (text.startsWith('#')) return 'error value';
  if (text.startsWith('-')) return 'negative';
  const number = takeNumber(text);
  if (typeof number === 'string') return 'not a percentage';
  const rest = number.rest.trim();
  if (rest === '%') return perCent(number.value);
  return rest === '' ? fractionOrPerCent(number.value) : 'not a percentage';
}

function fractionOrPerCent(value: Ratio): Ratio {
  return value.n < value.d ? value : perCent(value);
}

function perCent({ n, d }: Ratio): Ratio {
  return { n, d: 100 * d };
}
