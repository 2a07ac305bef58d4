/**
 * One cell's value -> one domain value, or why not. A cell comes as a number, text, a boolean, a date or blank; a
 * blank is '' in a range and missing in an omitted argument. Nothing here asks for a class by name: the spreadsheet
 * makes dates in a world of its own.
 */

import { type FineTicks, fineTicksOf, type Ticks, ticksOf, toTicks, type Units } from '../geometry/length';
import { mostOf } from '../layout/rules';
import { isDate } from '../tabs/dates';
import type { Typed } from '../takeoff/entry';
import { bareFloorProblem } from '../takeoff/reading/bareFloor';
import { LONGEST_PLANK, SMALLEST_PLANK_SIDE, WIDEST_PLANK } from '../takeoff/reading/limits';
import { type Found, type PercentageFault, problems } from '../takeoff/reading/problems';
import { type Area, readArea } from '../takeoff/text/areaText';
import { type LengthScale, lengthText, readExactly } from '../takeoff/text/lengthText';
import { bareNumberOf, numberOf, plainText, type Ratio, ratioOf, takeNumber } from '../takeoff/text/numberText';

/** Why a cell cannot be used, as a sentence about the place it stands in. */
export interface Fault {
  /** The argument it is about, where the cell's own place does not tell. */
  readonly argument?: string;
  says(where: string): string;
}

/** Reads one cell that is not blank. */
export type Reader<T> = (cell: unknown, units: Units) => T | Fault;

/** A fault about another argument than the first. */
export function faultIn(argument: string, says: (where: string) => string): Fault {
  return { argument, says };
}

/** Whether a value read is a fault. */
export function isFault(value: unknown): value is Fault {
  return typeof value === 'object' && value !== null && 'says' in value;
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

/** What is written in a cell, as it shows it; '' for a cell without words, such as one with an image. */
export function wordsIn(cell: unknown): string {
  const isShown = typeof cell !== 'number' || Number.isFinite(cell);
  return isShown ? String(typedOf(cell)).trim() : '';
}

/** Reads lengths greater than 0, ticks; a bare number is in the unit of `scale`. */
export function lengthAbove0(scale: LengthScale): Reader<Ticks> {
  return rounded(exactLengthAbove0(scale));
}

/** Reads lengths greater than 0 as typed: for sums and multiples. */
export function fineLengthAbove0(scale: LengthScale): Reader<FineTicks> {
  return fine(exactLengthAbove0(scale));
}

/** Reads lengths of 0 or more as typed. Fine ticks. */
export function fineLength0OrMore(scale: LengthScale): Reader<FineTicks> {
  return fine(exactLength0OrMore(scale));
}

/** Reads the length of a plank, as typed: of a size that is sold. Fine ticks. */
export const plankLength: Reader<FineTicks> = plankSide(LONGEST_PLANK);

/** Reads the width of a plank, as typed: of a size that is sold. Fine ticks. */
export const plankWidth: Reader<FineTicks> = plankSide(WIDEST_PLANK);

function plankSide(most: Ticks): Reader<FineTicks> {
  const read = fineLengthAbove0('plank');
  return (cell, units) => {
    const side = read(cell, units);
    if (isFault(side)) return side;
    if (ticksOf(side) < SMALLEST_PLANK_SIDE)
      return { says: (where) => problems.plankTooSmall(where, foundIn(cell), units) };
    return ticksOf(side) <= most ? side : { says: (where) => problems.plankTooLarge(where, foundIn(cell), units) };
  };
}

/** Reads an expansion gap or a saw cut, as typed: no wider than any is. Fine ticks. */
export function smallRule(key: 'expansionGap' | 'kerf'): Reader<FineTicks> {
  const read = fineLength0OrMore('plank');
  const most = mostOf(key);
  return (cell, units) => {
    const length = read(cell, units);
    if (isFault(length) || ticksOf(length) <= most) return length;
    return {
      says: (where) => problems.ruleTooLarge(where, foundIn(cell), lengthText(most, units, 'piece'), units),
    };
  };
}

/** Reads lengths that may be negative, such as a change of width, as typed. Fine ticks. */
export function fineLengthEitherWay(scale: LengthScale): Reader<FineTicks> {
  return fine((cell, units) => exactLength(cell, scale, units));
}

/** Reads lengths greater than 0 in ticks before they are rounded; less than half a tick is 0. */
export function exactLengthAbove0(scale: LengthScale): Reader<Ratio> {
  const read = exactLength0OrMore(scale);
  return (cell, units) => {
    const exact = read(cell, units);
    return !isFault(exact) && toTicks(numberOf(exact)) === 0 ? { says: problems.lengthZero } : exact;
  };
}

/** A length, and how it was typed. */
export interface WithTyped<T> {
  readonly read: T;
  readonly typed: Typed;
}

/** Reads the side of a floor, and keeps how it was typed: see `bareFloorFault`. */
export function withTyped<T>(read: Reader<T>): Reader<WithTyped<T>> {
  return (cell, units) => {
    const value = read(cell, units);
    return isFault(value) ? value : { read: value, typed: typedOf(cell) };
  };
}

/** A fault when two sides typed as bare feet make no floor of a house. */
export function bareFloorFault(length: WithTyped<unknown>, width: WithTyped<unknown>, units: Units): Fault | null {
  const problem = bareFloorProblem('', length.typed, width.typed, units);
  if (problem === null) return null;
  return faultIn('length', (where) => bareFloorProblem(where, length.typed, width.typed, units) ?? problem);
}

/** Reads lengths of 0 or more in ticks before they are rounded. */
export function exactLength0OrMore(scale: LengthScale): Reader<Ratio> {
  return (cell, units) => {
    const exact = exactLength(cell, scale, units);
    if (isFault(exact) || exact.n >= 0) return exact;
    return { says: (where) => problems.length(where, foundIn(cell), 'negative', scale, units) };
  };
}

/** Reads an area greater than 0. */
export function areaAbove0(cell: unknown, units: Units): Area | Fault {
  if (isDate(cell)) return { says: (where) => problems.area(where, '', 'date', units) };
  const read = readArea(typedOf(cell), units);
  if (read.ok) return read.area.count.n > 0 ? read.area : { says: problems.areaZero };
  return { says: (where) => problems.area(where, foundIn(cell), read.why, units) };
}

/**
 * Reads a percentage as a ratio, exactly: a number is a fraction below 1 (a cell that shows 10% holds 0.1) and per cent
 * from 1 up; text may carry a `%`. At most 100 per cent.
 */
export function percentage(cell: unknown): Ratio | Fault {
  return checkedPercentage(cell, false);
}

/** Reads an allowance for waste: as `percentage`, but what looks like a factor, such as 1.1, is asked about. */
export function wastePercentage(cell: unknown): Ratio | Fault {
  return checkedPercentage(cell, true);
}

function checkedPercentage(cell: unknown, isWaste: boolean): Ratio | Fault {
  const read = isDate(cell) ? 'date' : (bareFault(cell, isWaste) ?? ratioOfCell(cell));
  if (typeof read === 'string') return { says: (where) => problems.percentage(where, foundIn(cell), read) };
  if (read.n > read.d) return { says: (where) => problems.percentage(where, foundIn(cell), 'too large') };
  return read;
}

function ratioOfCell(cell: unknown): Ratio | PercentageFault {
  return typeof cell === 'number' ? ratioOfNumber(cell) : ratioOfText(typedOf(cell));
}

/** Why a number without a per cent sign is no percentage, though it could be read as one. */
function bareFault(cell: unknown, isWaste: boolean): PercentageFault | undefined {
  const bare = typeof cell === 'number' || typeof cell === 'string' ? bareNumberOf(cell) : null;
  if (bare === 1) return 'one or all';
  return isWaste && bare !== null && bare > 1 && bare < 2 ? 'factor' : undefined;
}

/** Reads a whole number, 0 or more. */
export function count(cell: unknown): number | Fault {
  const number = typeof cell === 'string' && !isBlank(cell) ? Number(plainText(cell)) : cell;
  const isCount = typeof number === 'number' && Number.isInteger(number) && number >= 0;
  return isCount ? number : { says: (where) => problems.count(where, foundIn(cell)) };
}

/** Reads `us` or `metric`, any case. */
export function unitsOf(cell: unknown): Units | Fault {
  const text = typeof cell === 'string' ? cell.trim().toLowerCase() : '';
  return text === 'us' || text === 'metric' ? text : { says: () => problems.units(foundIn(cell)) };
}

/** Reads `yes` or `no`, any case. */
export function yesOrNo(cell: unknown): boolean | Fault {
  const text = String(foundIn(cell)).trim().toLowerCase();
  return text === 'yes' || text === 'no' ? text === 'yes' : { says: (where) => problems.yesOrNo(where, foundIn(cell)) };
}

/** A cell as typed; what is neither a number nor text is put as text that no reader takes for a number. */
export function typedOf(cell: unknown): Typed {
  return typeof cell === 'number' ? cell : String(foundIn(cell));
}

function exactLength(cell: unknown, scale: LengthScale, units: Units): Ratio | Fault {
  if (isDate(cell)) return { says: (where) => problems.length(where, '', 'date', scale, units) };
  const read = readExactly(typedOf(cell), scale, units);
  if (read.ok) return read.exact;
  return { says: (where) => problems.length(where, foundIn(cell), read.why, scale, units) };
}

function rounded(read: Reader<Ratio>): Reader<Ticks> {
  return (cell, units) => {
    const exact = read(cell, units);
    return isFault(exact) ? exact : toTicks(numberOf(exact));
  };
}

function fine(read: Reader<Ratio>): Reader<FineTicks> {
  return (cell, units) => {
    const exact = read(cell, units);
    return isFault(exact) ? exact : fineTicksOf(numberOf(exact)) || 0;
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
