/** Reads the fields of a job one by one; what cannot be read becomes a problem at its field. */
import { type FineTicks, type Ticks, ticksOf, type Units } from '../../geometry/length';
import type { Typed } from '../entry';
import type { Problem } from '../result';
import { type DayNumber, dayOf } from '../text/calendar';
import { type LengthScale, readAsTyped } from '../text/lengthText';
import { plainText, takeNumber } from '../text/numberText';
import { MOST_OF_ANYTHING, SMALLEST_PLANK_SIDE } from './limits';
import { problems } from './problems';

/** Every reader answers null for a blank field; after a problem the answer is not used. */
export interface FieldReader {
  readonly units: Units;
  readonly problems: readonly Problem[];
  length(field: string, where: string, typed: Typed, scale: LengthScale): Ticks | null;
  /** A length greater than 0, which must be there. */
  neededLength(field: string, where: string, typed: Typed, scale: LengthScale): Ticks;
  /** The length or width of a plank as typed, which must be there and of a size that is sold: up to `most`. */
  plankSide(field: string, where: string, typed: Typed, most: Ticks): FineTicks;
  /** A number from 0 up. */
  number(field: string, where: string, typed: Typed): number | null;
  /** A whole number from 0 up. */
  count(field: string, where: string, typed: Typed): number | null;
  /** A percentage from 0 to below 100 as a fraction. */
  fraction(field: string, where: string, typed: Typed): number | null;
  /** A percentage from 0 to 100 in per cent. */
  percent(field: string, where: string, typed: Typed): number | null;
  /** An amount of money, with or without its sign. */
  price(field: string, where: string, typed: Typed): number | null;
  date(field: string, where: string, typed: string): DayNumber | null;
  fail(field: string, text: string): void;
}

export function fieldReader(units: Units): FieldReader {
  const found: Problem[] = [];
  const fail: Fail = (field, text) => {
    found.push({ field, text });
  };
  return { units, problems: found, fail, ...lengthReaders(units, fail), ...numberReaders(fail) };
}

type Fail = FieldReader['fail'];

function lengthReaders(units: Units, fail: Fail): Pick<FieldReader, 'length' | 'neededLength' | 'plankSide'> {
  const fineLength = (field: string, where: string, typed: Typed, scale: LengthScale): FineTicks | null => {
    const read = readAsTyped(typed, scale, units);
    if (read.ok) return read.fine;
    if (read.why !== 'blank') fail(field, problems.length(where, typed, read.why, scale, units));
    return null;
  };
  const neededFine = (field: string, where: string, typed: Typed, scale: LengthScale): FineTicks => {
    const read = readAsTyped(typed, scale, units);
    if (!read.ok) fail(field, problems.length(where, typed, read.why, scale, units));
    else if (ticksOf(read.fine) === 0) fail(field, problems.lengthZero(where));
    return read.ok ? read.fine : 0;
  };
  return {
    length(field, where, typed, scale) {
      const fine = fineLength(field, where, typed, scale);
      return fine === null ? null : ticksOf(fine);
    },
    neededLength: (field, where, typed, scale) => ticksOf(neededFine(field, where, typed, scale)),
    plankSide(field, where, typed, most) {
      const fine = neededFine(field, where, typed, 'plank');
      const ticks = ticksOf(fine);
      if (ticks > 0 && ticks < SMALLEST_PLANK_SIDE) fail(field, problems.plankTooSmall(where, typed, units));
      if (ticks > most) fail(field, problems.plankTooLarge(where, typed, units));
      return fine;
    },
  };
}

function numberReaders(fail: Fail): Pick<FieldReader, 'number' | 'count' | 'fraction' | 'percent' | 'price' | 'date'> {
  const number = (field: string, where: string, typed: Typed, wanted = problems.number, read = numberOf) => {
    if (isBlank(typed)) return null;
    const value = read(typed);
    if (value === null) fail(field, wanted(where, typed));
    else if (value > MOST_OF_ANYTHING) fail(field, problems.tooMuch(where, typed));
    return value;
  };
  const upTo100 = (field: string, where: string, typed: Typed): number | null => {
    if (isBlank(typed)) return null;
    const value = fractionOf(typed);
    if (value !== null && value <= 1) return value;
    fail(field, problems.percentage(where, typed, value === null ? 'not a percentage' : 'too large'));
    return null;
  };
  return {
    number: (field, where, typed) => number(field, where, typed),
    count(field, where, typed) {
      const value = number(field, where, typed, problems.count);
      if (value !== null && value <= MOST_OF_ANYTHING && !Number.isInteger(value))
        fail(field, problems.count(where, typed));
      return value;
    },
    fraction(field, where, typed) {
      const value = upTo100(field, where, typed);
      if (value === 1) fail(field, problems.percentage(where, typed, 'all of it'));
      return value;
    },
    percent(field, where, typed) {
      const value = upTo100(field, where, typed);
      return value === null ? null : Math.round(value * 1e8) / 1e6;
    },
    price: (field, where, typed) => number(field, where, typed, problems.price, moneyOf),
    date: (field, where, typed) => number(field, where, typed, problems.date, (text) => dayOf(String(text))),
  };
}

/** Nothing typed; marks that nobody sees, as pasted text brings them, are nothing too. */
export function isBlank(typed: Typed): boolean {
  return typeof typed === 'string' && plainText(typed) === '';
}

/** An amount of money, a sign such as `$` or `kr` before or after it forgiven; null for anything else. */
function moneyOf(typed: Typed): number | null {
  if (typeof typed === 'number') return numberOf(typed);
  return numberOf(typed.trim().replace(/^[^\d\s.,-]{1,3}\s*|\s*[^\d\s.,]{1,3}$/g, ''));
}

/** A number from 0 up and nothing beside it; null for anything else. */
function numberOf(typed: Typed): number | null {
  if (typeof typed === 'number') return Number.isFinite(typed) && typed >= 0 ? typed : null;
  const taken = takeNumber(plainText(typed));
  return typeof taken !== 'string' && taken.rest === '' ? taken.value.n / taken.value.d : null;
}

/** The sheet's rule: below 1 a fraction, from 1 up per cent; with a `%` always per cent. */
function fractionOf(typed: Typed): number | null {
  const plain = typeof typed === 'string' ? typed.replace(/\s*%\s*$/, '') : typed;
  const marked = plain !== typed;
  const value = numberOf(plain);
  if (value === null) return null;
  return marked || value >= 1 ? value / 100 : value;
}
