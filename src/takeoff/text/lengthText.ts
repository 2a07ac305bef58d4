/**
 * Lengths as the trade writes them: `12' 6 1/2"`, `3.81 m` <-> ticks. Reading is exact: a length is a whole number of
 * ticks over a denominator until the one rounding to whole ticks at the end.
 */
import {
  type FineTicks,
  fineTicksOf,
  LONGEST_SIDE,
  TICKS_PER_FOOT,
  TICKS_PER_INCH,
  TICKS_PER_METRE,
  TICKS_PER_MM,
  type Ticks,
  toTicks,
  type Units,
} from '../../geometry/length';
import type { Typed } from '../entry';
import { looksLikeDate, numberOf, numberText, plainText, type Ratio, ratioOf, takeNumber } from './numberText';
import { millimetresPer } from './unitLibrary';

/** What a bare number means: feet or metres where a room is measured, inches or millimetres where a plank is. */
export type LengthScale = 'room' | 'plank';

/** Why something typed is not a length; `problems.ts` has the sentence for each. */
export type LengthFault =
  | 'blank'
  /** A date, or text that looks like one: the spreadsheet turns `5/8` into a date. */
  | 'date'
  /** A cell that holds an error such as `#REF!`. */
  | 'error value'
  | 'not finite'
  | 'not a length'
  /** `1,234` may be 1234 or 1.234. */
  | 'two readings'
  /** `71/2"`: 7 1/2 without its space, or 35 1/2. */
  | 'space missing'
  /** `12' 14"`: inches after feet are below 12; centimetres after metres below 100. */
  | 'part too big'
  | 'unknown unit'
  | 'negative'
  /** Above `LONGEST_SIDE`. */
  | 'too long';

export type ReadLength =
  | { readonly ok: true; readonly ticks: Ticks }
  | { readonly ok: false; readonly why: LengthFault };

/** A length of zero or more as typed. */
export type ReadAsTyped =
  | { readonly ok: true; readonly fine: FineTicks }
  | { readonly ok: false; readonly why: LengthFault };

/** A length in ticks as one number over another; `n` is negative for a length to the other side. */
export type ReadExactly =
  | { readonly ok: true; readonly exact: Ratio }
  | { readonly ok: false; readonly why: LengthFault };

/** `room`: feet and inches, or metres. `piece`: inches, or millimetres. */
export type LengthStyle = 'room' | 'piece';

interface LengthUnit {
  readonly words: string;
  readonly ticks: Ticks;
  readonly system: Units;
}

interface Part {
  readonly value: Ratio;
  /** '' when the number stands alone. */
  readonly word: string;
}

const FOOT: LengthUnit = { words: " ' ft foot feet ", ticks: TICKS_PER_FOOT, system: 'us' };
const INCH: LengthUnit = { words: ' " in inch inches ', ticks: TICKS_PER_INCH, system: 'us' };
const METRE: LengthUnit = { words: ' m metre metres meter meters ', ticks: TICKS_PER_METRE, system: 'metric' };
const MILLIMETRE: LengthUnit = {
  words: ' mm millimetre millimetres millimeter millimeters ',
  ticks: TICKS_PER_MM,
  system: 'metric',
};
const LENGTH_UNITS: readonly LengthUnit[] = [
  FOOT,
  INCH,
  METRE,
  MILLIMETRE,
  { words: ' cm centimetre centimetres centimeter centimeters ', ticks: 10 * TICKS_PER_MM, system: 'metric' },
  { words: ' yd yds yard yards ', ticks: 3 * TICKS_PER_FOOT, system: 'us' },
];

/**
 * Reads a length of zero or more, ticks to the nearest tick (halves up).
 *
 * @param typed a number in the unit that `scale` and `units` give it, or text that may carry its own units
 */
export function readLength(typed: Typed, scale: LengthScale, units: Units): ReadLength {
  const read = readOffset(typed, scale, units);
  return read.ok && read.ticks < 0 ? fault('negative') : read;
}

/** Reads a length of zero or more as typed: for what sums and multiples of it are compared with. */
export function readAsTyped(typed: Typed, scale: LengthScale, units: Units): ReadAsTyped {
  const read = readExactly(typed, scale, units);
  if (!read.ok) return read;
  return read.exact.n < 0 ? fault('negative') : { ok: true, fine: fineTicksOf(numberOf(read.exact)) };
}

/** Reads a length that may lie to either side, such as an offset from a corner: like `readLength`, negatives allowed. */
export function readOffset(typed: Typed, scale: LengthScale, units: Units): ReadLength {
  const read = readExactly(typed, scale, units);
  // `|| 0`: what rounds to nothing from below is 0, not -0.
  return read.ok ? { ok: true, ticks: toTicks(numberOf(read.exact)) || 0 } : read;
}

/** Reads a length, negatives allowed, before it is rounded: 40.1 in is no whole number of ticks. */
export function readExactly(typed: Typed, scale: LengthScale, units: Units): ReadExactly {
  const bare = bareUnit(scale, units);
  if (typeof typed === 'number') {
    return Number.isFinite(typed) ? inRange(typed < 0, exactTicks(Math.abs(typed), bare)) : fault('not finite');
  }
  const text = plainText(typed);
  if (text === '') return fault('blank');
  if (text.startsWith('#')) return fault('error value');
  if (looksLikeDate(text)) return fault('date');
  const unsigned = text.replace(/^[-+] ?/, '');
  const parts = partsOf(joined(unsigned));
  const read = typeof parts === 'string' ? parts : lengthOfParts(parts, bare);
  const settled = read === 'not a length' ? (byLibrary(unsigned) ?? read) : read;
  return typeof settled === 'string' ? fault(settled) : inRange(text.startsWith('-'), settled);
}

/** What a bare number is measured in. */
export function bareUnitName(scale: LengthScale, units: Units): 'feet' | 'metres' | 'inches' | 'millimetres' {
  if (units === 'us') return scale === 'room' ? 'feet' : 'inches';
  return scale === 'room' ? 'metres' : 'millimetres';
}

/**
 * A length as it is shown: to the nearest 1/16 in (`12' 6 1/2"` in a room, `150 1/2"` for a piece) or the nearest
 * millimetre (`3.81 m`, `3810 mm`), halves away from zero.
 *
 * @param ticks whole, or a typed length that was not rounded before (`ticksUnrounded`)
 */
export function lengthText(ticks: number, units: Units, style: LengthStyle): string {
  const size = Math.abs(ticks);
  const step = units === 'us' ? TICKS_PER_INCH / 16 : TICKS_PER_MM;
  const steps = Math.round(size / step);
  const sign = ticks < 0 && steps > 0 ? '-' : '';
  if (units === 'us') return sign + (style === 'room' ? feetText(steps) : inchText(steps));
  return sign + (style === 'room' ? `${numberText(steps / 1000, 3)} m` : `${steps} mm`);
}

/** Tells lengths of pieces. */
export function pieceText(units: Units): (ticks: number) => string {
  return (ticks) => lengthText(ticks, units, 'piece');
}

/** Tells lengths of a room. */
export function roomText(units: Units): (ticks: number) => string {
  return (ticks) => lengthText(ticks, units, 'room');
}

function fault(why: LengthFault): { readonly ok: false; readonly why: LengthFault } {
  return { ok: false, why };
}

function inRange(isNegative: boolean, size: Ratio): ReadExactly {
  if (!(numberOf(size) <= LONGEST_SIDE)) return fault('too long');
  return { ok: true, exact: isNegative && size.n > 0 ? { n: -size.n, d: size.d } : size };
}

/**
 * A cell's number in ticks. One that shows in 15 digits is that decimal; any other is a sum of the sheet's own, such as
 * 12 + 1/3, and stays the double it is.
 */
function exactTicks(value: number, unit: LengthUnit): Ratio {
  const decimal = ratioOf(value);
  if (numberOf(decimal) !== value) return { n: value * unit.ticks, d: 1 };
  return { n: decimal.n * unit.ticks, d: decimal.d };
}

function bareUnit(scale: LengthScale, units: Units): LengthUnit {
  if (units === 'us') return scale === 'room' ? FOOT : INCH;
  return scale === 'room' ? METRE : MILLIMETRE;
}

/** Puts feet and inches that are written in another order into the usual one: `9-8 1/4` and `9' 8" 1/4` are 9' 8 1/4". */
function joined(text: string): string {
  return text
    .replace(/^(\d+) ?- ?(\d+ \d+ ?\/ ?\d+) ?(?:"|in\.?)?$/, '$1\' $2"')
    .replace(/(\d) ?(?:"|in(?:ch(?:es)?)?\.?) ?-? ?(\d+ ?\/ ?\d+) ?(?:"|in\.?)?$/, '$1 $2"');
}

/** Splits `12'-6 1/2"` into numbers and the words after them. */
function partsOf(text: string): readonly Part[] | LengthFault {
  const parts: Part[] = [];
  let rest = text;
  while (rest !== '') {
    const number = takeNumber(rest);
    if (number === 'two readings') return 'two readings';
    if (number === 'space missing') return 'space missing';
    if (number === 'not a number') return 'not a length';
    const word = /^ ?('|"|[a-z]+)?\.?/.exec(number.rest) as RegExpExecArray;
    parts.push({ value: number.value, word: word[1] ?? '' });
    rest = number.rest.slice(word[0].length).trim();
    // A dash may stand between feet and inches, nowhere else.
    if (unitNamed(word[1]) === FOOT) rest = rest.replace(/^- ?(?=.)/, '');
  }
  return parts;
}

function lengthOfParts(parts: readonly Part[], bare: LengthUnit): Ratio | LengthFault {
  let whole: Ticks = 0;
  let before: LengthUnit | undefined;
  for (const [index, part] of parts.entries()) {
    const isLast = index === parts.length - 1;
    const unit = part.word === '' ? unitOfBare(before, isLast, bare) : unitNamed(part.word);
    if (unit === undefined) return 'not a length';
    if (before && (unit.system !== before.system || unit.ticks >= before.ticks)) return 'not a length';
    const ticks = part.value.n * unit.ticks;
    if (before && ticks >= before.ticks * part.value.d) return 'part too big';
    if (isLast) return { n: whole * part.value.d + ticks, d: part.value.d };
    if (part.value.d !== 1) return 'not a length';
    whole += ticks;
    before = unit;
  }
  return 'not a length';
}

/**
 * What a number without a unit is measured in: alone, in the field's own unit; last after feet, in inches. Anywhere
 * else (`12 6"`, `3 m 81`) it could be several things.
 */
function unitOfBare(before: LengthUnit | undefined, isLast: boolean, bare: LengthUnit): LengthUnit | undefined {
  if (!isLast) return undefined;
  if (before === undefined) return bare;
  return before === FOOT ? INCH : undefined;
}

function unitNamed(word: string | undefined): LengthUnit | undefined {
  return word ? LENGTH_UNITS.find((unit) => unit.words.includes(` ${word} `)) : undefined;
}

/** One number and one word that is not ours: `2 rods`, `1.5e3 mm`. Undefined if the text has another form. */
function byLibrary(text: string): Ratio | LengthFault | undefined {
  const match = /^((?:\d+\.?\d*|\.\d+)(?:e[-+]?\d{1,3})?) ?([a-z]+)\.?$/.exec(text);
  if (!match) return undefined;
  const millimetres = millimetresPer(match[2]);
  if (millimetres === undefined) return 'unknown unit';
  return { n: toTicks(Number(match[1]) * millimetres * TICKS_PER_MM), d: 1 };
}

/** Sixteenths of an inch as feet and inches. */
function feetText(sixteenths: number): string {
  const feet = Math.floor(sixteenths / 192);
  const inches = inchText(sixteenths - 192 * feet);
  return feet > 0 ? `${feet}' ${inches}` : inches;
}

/** Sixteenths of an inch as inches and the shortest fraction. */
function inchText(sixteenths: number): string {
  const inches = Math.floor(sixteenths / 16);
  let n = sixteenths - 16 * inches;
  let d = 16;
  if (n === 0) return `${inches}"`;
  while (n % 2 === 0) {
    n /= 2;
    d /= 2;
  }
  return inches > 0 ? `${inches} ${n}/${d}"` : `${n}/${d}"`;
}
