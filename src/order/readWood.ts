/** Species, coefficients and moisture, read in the same way for the job and the custom functions. */
import type { Units } from '../geometry/length';
import type { Typed } from '../takeoff/entry';
import { problems } from '../takeoff/reading/problems';
import { numberOf, plainText, takeNumber } from '../takeoff/text/numberText';
import { COLDEST_FAHRENHEIT, fahrenheitOf, HOTTEST_FAHRENHEIT } from './moisture';
import { coefficientOf, LARGEST_COEFFICIENT } from './movement';

/** Why something typed cannot be used, as a sentence about the place it stands in. */
export interface Refusal {
  says(where: string): string;
}

/** The coefficient of a species by its name, or a coefficient as typed, above 0 and at most `LARGEST_COEFFICIENT`. */
export function readCoefficient(typed: Typed): number | Refusal {
  const given = numberIn(typed);
  if (given !== null) {
    if (given > 0 && given <= LARGEST_COEFFICIENT) return given;
    return { says: (where) => problems.coefficientRange(where, typed) };
  }
  const found = coefficientOf(String(typed));
  return typeof found === 'number' ? found : { says: (where) => problems.species(where, typed, found) };
}

/** A temperature in the degrees of the units, as Fahrenheit; it may be below 0. */
export function readTemperature(typed: Typed, units: Units): number | Refusal {
  const degrees = numberIn(typed);
  if (degrees === null) return { says: (where) => problems.degrees(where, typed) };
  const fahrenheit = units === 'us' ? degrees : fahrenheitOf(degrees);
  if (fahrenheit >= COLDEST_FAHRENHEIT && fahrenheit <= HOTTEST_FAHRENHEIT) return fahrenheit;
  return { says: (where) => problems.temperature(where, typed, units) };
}

/** A number with nothing beside it but its sign; null for anything else. */
function numberIn(typed: Typed): number | null {
  if (typeof typed === 'number') return Number.isFinite(typed) ? typed : null;
  const text = plainText(typed);
  const size = text.replace(/^[-+] ?/, '');
  const taken = takeNumber(size);
  if (typeof taken === 'string' || taken.rest !== '') return null;
  return text.startsWith('-') ? -numberOf(taken.value) : numberOf(taken.value);
}
