/** A job as typed, read once: every field into ticks, rates and choices, or into a problem at that field. */
import type { Units } from '../geometry/length';
import { type FieldReader, fieldReader, isBlank } from '../takeoff/reading/fieldReader';
import { type OwnReaders, readFields } from '../takeoff/reading/readFields';
import type { Problem } from '../takeoff/result';
import { checkTogether } from './checkTogether';
import type { House, HouseFields, RollGoods } from './house';
import type { HouseEntry } from './houseEntry';
import { HOUSE_SECTIONS, type HouseSection, houseLabel } from './houseFields';
import { type Refusal, readCoefficient, readTemperature } from './readWood';

export type ReadHouse =
  | { readonly status: 'read'; readonly house: House }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

type Item = Readonly<Record<string, never>>;

/** The job in ticks, fractions and choices, or every problem in it. Field names are paths such as `trims.0.price`. */
export function readHouse(entry: HouseEntry): ReadHouse {
  const reader = fieldReader(entry.units);
  const fields = fieldsOf(entry, reader);
  checkTogether(entry, fields, reader);
  if (reader.problems.length > 0) return { status: 'problems', problems: reader.problems };
  return { status: 'read', house: withoutBlankGroups(fields) };
}

function fieldsOf(entry: HouseEntry, reader: FieldReader): HouseFields {
  const own = ownReaders(entry.units);
  const whole: Readonly<Record<string, unknown>> = entry;
  const readItem = (section: HouseSection, item: unknown, path: string, itemNumber: number) => {
    const place = {
      path,
      where: (field: HouseSection['fields'][number]) => houseLabel(section, field, itemNumber, entry.units),
    };
    return readFields(section.fields, item as Item, place, reader, own);
  };
  const read: Record<string, unknown> = {};
  for (const section of HOUSE_SECTIONS) {
    const { at, isList } = section;
    if (at === '') Object.assign(read, readItem(section, whole, '', 1));
    else if (!isList) read[at] = readItem(section, whole[at], at, 1);
    else read[at] = (whole[at] as readonly unknown[]).map((item, i) => readItem(section, item, `${at}.${i}`, i + 1));
  }
  return read as HouseFields;
}

/** What only a job has. */
function ownReaders(units: Units): OwnReaders {
  const orFail = (value: number | Refusal, at: string, where: string, reader: FieldReader): number | null => {
    if (typeof value === 'number') return value;
    reader.fail(at, value.says(where));
    return null;
  };
  return {
    markup: (at, where, typed, reader) => {
      const percent = reader.percent(at, where, typed);
      return percent === null ? null : Math.round(percent * 1e6) / 1e8;
    },
    species: (at, where, typed, reader) => (isBlank(typed) ? null : orFail(readCoefficient(typed), at, where, reader)),
    degrees: (at, where, typed, reader) =>
      isBlank(typed) ? null : orFail(readTemperature(typed, units), at, where, reader),
  };
}

/** A roll without sizes is not laid, tape and spacers without theirs are not ordered, a blank pace estimates nothing. */
function withoutBlankGroups(fields: HouseFields): House {
  const { tape, spacers, pace, labour } = fields;
  return {
    ...fields,
    underlay: rollOf(fields.underlay),
    film: rollOf(fields.film),
    felt: rollOf(fields.felt),
    tape: tape.length ? { ...tape, length: tape.length } : null,
    spacers: spacers.apart ? { ...spacers, apart: spacers.apart } : null,
    pace: Object.values(pace).every((minutes) => minutes === null) ? null : pace,
    labour: labour.flatMap(({ by, ...work }) => (by === '' ? [] : [{ ...work, by }])),
  };
}

function rollOf(goods: HouseFields['underlay']): RollGoods | null {
  const { width, length } = goods;
  return width === null || length === null ? null : { ...goods, width, length };
}
