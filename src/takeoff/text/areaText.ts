/** Areas as the trade writes them: `132 sq ft`, `12.3 m²` -> an exact area. */
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_METRE, TICKS_PER_MM, type Units } from '../../geometry/length';
import type { Typed } from '../entry';
import { looksLikeDate, numberOf, plainText, type Ratio, ratioOf, takeNumber } from './numberText';
import { squareMillimetresPer } from './unitLibrary';

/**
 * An area as a count of a unit: exact, because the count is a ratio of whole numbers and the unit a whole number of
 * square ticks (1 sq ft = 144 x 16,256^2, 1 m² = 640,000^2).
 */
export interface Area {
  readonly count: Ratio;
  /** Square ticks of one unit. */
  readonly unit: number;
}

/** Why something typed is not an area; `problems.ts` has the sentence for each. */
export type AreaFault =
  | 'blank'
  | 'date'
  | 'error value'
  | 'not finite'
  | 'not an area'
  | 'two readings'
  | 'negative'
  /** Above 10,000 m² (100 m x 100 m). */
  | 'too large';

export type ReadArea = { readonly ok: true; readonly area: Area } | { readonly ok: false; readonly why: AreaFault };

/** Square ticks of the largest area: a room of 100 m by 100 m. */
export const LARGEST_AREA = (100 * TICKS_PER_METRE) ** 2;

const SQUARE_FOOT = TICKS_PER_FOOT ** 2;
const SQUARE_METRE = TICKS_PER_METRE ** 2;

/** Longer words first: the first that fits is taken. */
const AREA_UNITS: readonly { readonly pattern: RegExp; readonly unit: number }[] = [
  { pattern: /^(?:(?:sq|square) ?(?:ft|foot|feet)|(?:ft|foot|feet) ?2|sf)$/, unit: SQUARE_FOOT },
  { pattern: /^(?:(?:sq|square) ?(?:m|met(?:re|er)s?)|(?:m|met(?:re|er)s?) ?2)$/, unit: SQUARE_METRE },
  { pattern: /^(?:(?:sq|square) ?(?:yds?|yards?)|(?:yds?|yards?) ?2|sy)$/, unit: 9 * SQUARE_FOOT },
  { pattern: /^(?:(?:sq|square) ?(?:in|inch|inches)|(?:in|inch|inches) ?2)$/, unit: TICKS_PER_INCH ** 2 },
  { pattern: /^(?:(?:sq|square) ?cm|cm ?2)$/, unit: (10 * TICKS_PER_MM) ** 2 },
  { pattern: /^(?:(?:sq|square) ?mm|mm ?2)$/, unit: TICKS_PER_MM ** 2 },
  // By definition 43,560 square feet; the unit library rounds it.
  { pattern: /^acres?$/, unit: 43_560 * SQUARE_FOOT },
];

/**
 * Reads an area of zero or more.
 *
 * @param typed a number in square feet or square metres, or text that may carry its own unit
 */
export function readArea(typed: Typed, units: Units): ReadArea {
  const bare = units === 'us' ? SQUARE_FOOT : SQUARE_METRE;
  if (typeof typed === 'number') return numberArea(typed, bare);
  const text = plainText(typed);
  if (text === '') return fault('blank');
  if (text.startsWith('#')) return fault('error value');
  if (looksLikeDate(text)) return fault('date');
  const number = takeNumber(text.replace(/^[-+] ?/, ''));
  if (number === 'two readings') return fault('two readings');
  if (typeof number === 'string') return fault('not an area');
  const unit = unitNamed(number.rest.replace(/[.^]/g, '').trim(), bare);
  if (unit === undefined) return fault('not an area');
  if (text.startsWith('-') && number.value.n > 0) return fault('negative');
  return inRange({ count: number.value, unit });
}

/** The area of a rectangle, sides in ticks before rounding, so that 10.3 ft by 10 ft is 103. */
export function rectangleArea(length: Ratio, width: Ratio): Area {
  return { count: { n: length.n * width.n, d: length.d * width.d }, unit: 1 };
}

/** An area of a whole number of square ticks. */
export function areaOfSquareTicks(squareTicks: number): Area {
  return { count: { n: squareTicks, d: 1 }, unit: 1 };
}

/** Square feet or square metres of an area times a ratio (1 + waste), rounded once. */
export function areaNumber(area: Area, times: Ratio, units: Units): number {
  const answerUnit = units === 'us' ? SQUARE_FOOT : SQUARE_METRE;
  const { n, d } = area.count;
  // Same unit in and out: leave the large unit out of the sum, so that 100 sq ft plus 10 % is 110.
  if (area.unit === answerUnit) return (n * times.n) / (d * times.d);
  return (n * area.unit * times.n) / (answerUnit * d * times.d);
}

function numberArea(typed: number, bare: number): ReadArea {
  if (!Number.isFinite(typed)) return fault('not finite');
  if (typed < 0) return fault('negative');
  return inRange({ count: ratioOf(typed), unit: bare });
}

function unitNamed(word: string, bare: number): number | undefined {
  if (word === '') return bare;
  const ours = AREA_UNITS.find((candidate) => candidate.pattern.test(word));
  if (ours) return ours.unit;
  const squareMillimetres = squareMillimetresPer(word);
  return squareMillimetres === undefined ? undefined : Math.round(squareMillimetres * TICKS_PER_MM ** 2);
}

function inRange(area: Area): ReadArea {
  return numberOf(area.count) * area.unit <= LARGEST_AREA ? { ok: true, area } : fault('too large');
}

function fault(why: AreaFault): ReadArea {
  return { ok: false, why };
}
