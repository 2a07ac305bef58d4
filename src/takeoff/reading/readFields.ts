/** Fields as declared -> their values: ticks, counts, choices, or a problem at the field. */

import type { Ticks, Units } from '../../geometry/length';
import type { EntryOf, Typed, ValueOf } from '../entry';
import { type EntryField, fieldLabel, isAsked } from '../entryFields';
import type { FieldUse } from '../fieldUse';
import { countryWords } from '../text/countryWords';
import { lengthText, readOffset } from '../text/lengthText';
import { plainText } from '../text/numberText';
import { type FieldReader, isBlank } from './fieldReader';
import { COARSEST_STEP, FINEST_STEP } from './limits';
import { problems } from './problems';

/** What a field is read as. Lengths are ticks; areas, lay directions and first rows are left as typed. */
export type ReadOf<F> = F extends { readonly use: 'choice'; readonly blank: infer Blank extends string }
  ? Exclude<ValueOf<F>, ''> | Blank
  : F extends { readonly use: 'choice' | 'words' | 'list' }
    ? ValueOf<F>
    : F extends { readonly use: 'area' | 'direction' | 'first row' }
      ? Typed
      : F extends
            | { readonly blank: unknown }
            | { readonly use: 'room!' | 'plank!' | 'plank side' | 'wall' | 'corner' | 'step' }
        ? number
        : number | null;

/** Fields of a section by their keys, with what each is read as. */
export type ReadFields<Fields extends readonly EntryField[]> = {
  readonly [F in Fields[number] as F['key']]: ReadOf<F>;
};

/** Where fields stand: their path, and what they are called in a sentence. */
export interface FieldsPlace {
  /** `cutouts.0`; '' for the entry itself. */
  readonly path: string;
  readonly where: (field: EntryField) => string;
}

/** The place of a section, or of an item of its list, counted from 1. */
export function placeOf(at: string, itemNumber?: number): FieldsPlace {
  const path = itemNumber === undefined ? at : `${at}.${itemNumber - 1}`;
  return { path, where: (field) => fieldLabel(field, itemNumber ?? 0) };
}

type Value = Typed | readonly string[];

/** Readers of uses that only some entries have: a problem, or the value; null for a blank. */
export type OwnReaders = {
  readonly [Use in FieldUse]?: (at: string, where: string, typed: Typed, reader: FieldReader) => number | null;
};

/** Reads all fields; those that the others leave nothing to say are read as blank. */
export function readFields<const Fields extends readonly EntryField[]>(
  fields: Fields,
  typed: EntryOf<{ fields: Fields }>,
  { path, where }: FieldsPlace,
  reader: FieldReader,
  own: OwnReaders = {},
): ReadFields<Fields> {
  const values: Readonly<Record<string, Value>> = typed;
  const read = fields.map((field) => {
    const at = path === '' ? field.key : `${path}.${field.key}`;
    const there = values[field.key];
    // A list of words stands as it is.
    if (typeof there === 'object') return [field.key, there];
    const readOwn = own[field.use];
    const readIt = () =>
      readOwn ? readOwn(at, where(field), there, reader) : readField(field, at, where(field), there, reader);
    const value = isAsked(field, values) ? readIt() : null;
    if (isTooMuch(field, value)) reader.fail(at, tooMuchText(field, where(field), there, reader.units));
    return [field.key, value === null || value === '' ? blankValue(field, reader.units) : value];
  });
  return Object.fromEntries(read) as ReadFields<Fields>;
}

const WORDED: readonly FieldUse[] = ['words', 'choice', 'area', 'direction', 'first row'];

/** What a blank stands for: a value, '' for words, 0 for a number that must be there (which has been told), or null. */
function blankValue({ use, blank }: EntryField, units: Units): Typed | null {
  if (typeof blank === 'object') return blank[units === 'us' ? 0 : 1];
  if (typeof blank === 'string') return countryWords(blank, units);
  if (blank !== undefined) return blank;
  if (WORDED.includes(use)) return '';
  return use === 'room!' || use === 'plank!' || use === 'plank side' || use === 'wall' || use === 'corner' ? 0 : null;
}

function isTooMuch({ use, most }: EntryField, value: Typed | null): boolean {
  return most !== undefined && use !== 'plank side' && typeof value === 'number' && value > most;
}

function tooMuchText({ use, most = 0 }: EntryField, where: string, typed: Typed, units: Units): string {
  if (use === 'count') return problems.tooManySpares(where, typed, most);
  if (use === 'room') return problems.doorwayTooDeep(where, typed, units);
  return problems.ruleTooLarge(where, typed, lengthText(most, units, 'piece'), units);
}

function readField(field: EntryField, at: string, where: string, typed: Typed, reader: FieldReader): Typed | null {
  switch (field.use) {
    case 'room':
    case 'plank':
      return reader.length(at, where, typed, field.use);
    case 'gap by span':
      return reader.length(at, where, typed, 'plank');
    case 'room!':
      return reader.neededLength(at, where, typed, 'room');
    case 'plank!':
      return reader.neededLength(at, where, typed, 'plank');
    case 'plank side':
      return reader.plankSide(at, where, typed, field.most ?? Number.POSITIVE_INFINITY);
    case 'offset':
      return readOffsetField(at, where, typed, reader);
    case 'step':
      return readStep(at, where, typed, reader);
    case 'count':
    case 'price':
    case 'number':
    case 'fraction':
    case 'percent':
      return reader[field.use](at, where, typed);
    case 'date':
      return reader.date(at, where, String(typed));
    case 'wall':
    case 'corner':
      return readPartNumber(at, where, typed, field.use, reader);
    case 'turn':
      return readTurn(at, where, typed, reader);
    case 'words':
      return String(typed).trim();
    default:
      return typed;
  }
}

/** A distance to either side of a common corner. */
function readOffsetField(at: string, where: string, typed: Typed, reader: FieldReader): Ticks | null {
  if (isBlank(typed)) return null;
  const read = readOffset(typed, 'room', reader.units);
  if (read.ok) return read.ticks;
  reader.fail(at, problems.length(where, typed, read.why, 'room', reader.units));
  return null;
}

function readStep(at: string, where: string, typed: Typed, reader: FieldReader): Ticks | null {
  if (isBlank(typed)) return null;
  const step = reader.neededLength(at, where, typed, 'plank');
  const isUsable = step >= FINEST_STEP && step <= COARSEST_STEP;
  if (step > 0 && !isUsable) reader.fail(at, problems.markingStep(where, typed, reader.units));
  return step;
}

/** The number of a wall or corner, from 1; whether the room has that one is known only when its outline is. */
function readPartNumber(
  at: string,
  where: string,
  typed: Typed,
  part: 'wall' | 'corner',
  reader: FieldReader,
): number | null {
  const number = reader.count(at, where, typed);
  if (number !== null && number >= 1) return number;
  if (number !== null || isBlank(typed)) reader.fail(at, problems.partNumber(where, typed, part));
  return 1;
}

function readTurn(at: string, where: string, typed: Typed, reader: FieldReader): number | null {
  if (isBlank(typed)) return null;
  const degrees = degreesOfTurn(typed);
  if (degrees === null) reader.fail(at, problems.turn(where, typed));
  return degrees;
}

/** Degrees of a turn, right positive: `R`, `L`, or a number of degrees above -180 and below 180; null for anything else. */
export function degreesOfTurn(typed: Typed): number | null {
  const text = plainText(String(typed))
    .replace(/\s*(?:°|deg|degrees)$/, '')
    .trim();
  if (text === 'r' || text === 'right') return 90;
  if (text === 'l' || text === 'left') return -90;
  const degrees = /^[+-]?\d+(?:[.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : Number.NaN;
  return Math.abs(degrees) < 180 ? degrees : null;
}
