/** A job as typed, read once: every field into ticks, rates and choices, or into a problem at that field. */
import { type Ticks, ticksOfInches, ticksOfMm, type Units } from '../geometry/length';
import type { Typed } from '../takeoff/entry';
import { type FieldReader, fieldReader } from '../takeoff/reading/fieldReader';
import { problems } from '../takeoff/reading/problems';
import type { Problem } from '../takeoff/result';
import { lengthText } from '../takeoff/text/lengthText';
import type { House } from './house';
import { enteredTwice } from './houseDoubles';
import type { HouseEntry } from './houseEntry';
import { type Blank, type FieldKind, HOUSE_SECTIONS, type HouseSection, houseLabel } from './houseFields';
import { houseProblems } from './houseProblems';
import { type Refusal, readCoefficient, readTemperature } from './readWood';

export type ReadHouse =
  | { readonly status: 'read'; readonly house: House }
  | { readonly status: 'problems'; readonly problems: readonly Problem[] };

/** Our choice: smaller ones are a slip of units, and would make thousands of strips or pieces. */
const NARROWEST_ROLL: Ticks = ticksOfMm(100);
const SMALLEST_ROLL = ticksOfMm(1000) ** 2;
const SHORTEST_STICK: Ticks = ticksOfMm(300);

/** Groups that are ordered once the size of theirs is typed. */
const PRICED_GROUPS = [
  ['underlay', 'width', 'Underlay, Width of the roll'],
  ['film', 'width', 'Film, Width of the roll'],
  ['tape', 'length', 'Tape, Length of the roll'],
  ['spacers', 'apart', 'Spacers, One every'],
] as const;

type Fields = Readonly<Record<string, unknown>>;

/** The job in ticks, fractions and choices, or every problem in it. Field names are paths such as `trims.0.price`. */
export function readHouse(entry: HouseEntry): ReadHouse {
  const reader = fieldReader(entry.units);
  const read: Record<string, unknown> = {};
  const whole = entry as unknown as Fields;
  for (const section of HOUSE_SECTIONS) {
    const { at, isList } = section;
    if (at === '') Object.assign(read, readFields(section, whole, '', 1, entry.units, reader));
    else if (!isList) read[at] = readFields(section, whole[at] as Fields, `${at}.`, 1, entry.units, reader);
    else {
      const items = whole[at] as readonly Fields[];
      read[at] = items.map((item, i) => readFields(section, item, `${at}.${i}.`, i + 1, entry.units, reader));
    }
  }
  // The table of fields is the type of the job as read, field by field: a test holds the two together.
  const house = withoutBlankGroups(read as unknown as House);
  checkTogether(entry, house, reader);
  return reader.problems.length > 0 ? { status: 'problems', problems: reader.problems } : { status: 'read', house };
}

function readFields(
  section: HouseSection,
  item: Fields,
  path: string,
  itemNumber: number,
  units: Units,
  reader: FieldReader,
): Fields {
  const read = section.fields.map(([key, kind, label, blank]) => {
    const typed = item[key] as Typed;
    const value = readValue(kind, path + key, houseLabel(section, label, itemNumber), typed, units, reader);
    return [key, value === null || value === '' ? blankValue(blank, value, units) : value];
  });
  return Object.fromEntries(read);
}

function readValue(
  kind: FieldKind,
  field: string,
  where: string,
  typed: Typed,
  units: Units,
  reader: FieldReader,
): unknown {
  switch (kind) {
    case 'room':
    case 'plank':
      return reader.length(field, where, typed, kind);
    case 'room!':
      return reader.neededLength(field, where, typed, 'room');
    case 'plank!':
      return reader.neededLength(field, where, typed, 'plank');
    case 'count':
    case 'number':
    case 'fraction':
    case 'percent':
    case 'price':
      return reader[kind](field, where, typed);
    case 'markup': {
      const percent = reader.percent(field, where, typed);
      return percent === null ? null : Math.round(percent * 1e6) / 1e8;
    }
    case 'date':
      return reader.date(field, where, String(typed));
    case 'species':
      return isBlank(typed) ? null : orFail(readCoefficient(typed), field, where, reader);
    case 'degrees':
      return isBlank(typed) ? null : orFail(readTemperature(typed, units), field, where, reader);
    default:
      // Texts, lists of texts and choices stand as they are; choices are checked where they come from outside.
      return typeof typed === 'string' ? typed.trim() : typed;
  }
}

function blankValue(blank: Blank | undefined, value: unknown, units: Units): unknown {
  if (blank === undefined) return value;
  if (typeof blank !== 'object') return blank;
  return units === 'us' ? ticksOfInches(blank[0]) : ticksOfMm(blank[1]);
}

function isBlank(typed: Typed): boolean {
  return String(typed).trim() === '';
}

function orFail(value: number | Refusal, field: string, where: string, reader: FieldReader): number | null {
  if (typeof value === 'number') return value;
  reader.fail(field, value.sentenceAt(where));
  return null;
}

/** A roll without sizes is not laid, tape and spacers without theirs are not ordered, a blank pace estimates nothing. */
function withoutBlankGroups(house: House): House {
  const roll = (goods: House['underlay']) => (goods?.width == null && goods?.length == null ? null : goods);
  return {
    ...house,
    underlay: roll(house.underlay),
    film: roll(house.film),
    felt: roll(house.felt),
    tape: house.tape?.length ? house.tape : null,
    spacers: house.spacers?.apart ? house.spacers : null,
    pace: Object.values(house.pace ?? {}).every((minutes) => minutes === null) ? null : house.pace,
  };
}

/** What one field asks of another. */
function checkTogether(entry: HouseEntry, house: House, reader: FieldReader): void {
  const show = (length: Ticks, style: 'room' | 'piece') => lengthText(length, entry.units, style);
  const checkStick = (field: string, where: string, length: Ticks, thickness: Ticks) => {
    const isUsable = length >= SHORTEST_STICK && 2 * thickness <= length;
    if (!isUsable) reader.fail(field, houseProblems.stickSize(where, show(length, 'room')));
  };
  // What cannot be read has been told when it was read.
  const needed = (field: string, where: string, typed: Typed, read: Ticks | null): Ticks => {
    if (isBlank(typed)) reader.fail(field, problems.length(where, typed, 'blank', 'room', entry.units));
    if (read === 0) reader.fail(field, problems.lengthZero(where));
    return read ?? 0;
  };
  for (const at of ['underlay', 'film', 'felt'] as const) {
    const goods = house[at];
    if (!goods) continue;
    const heading = { underlay: 'Underlay', film: 'Film', felt: 'Felt' }[at];
    const width = needed(`${at}.width`, `${heading}, Width of the roll`, entry[at].width, goods.width);
    const length = needed(`${at}.length`, `${heading}, Length of the roll`, entry[at].length, goods.length);
    if (width === 0 || length === 0) continue;
    const isSmall = width < NARROWEST_ROLL || width * length < SMALLEST_ROLL;
    if (isSmall) {
      const text = houseProblems.rollTooSmall(
        `${heading}, Width of the roll`,
        show(width, 'room'),
        show(length, 'room'),
      );
      reader.fail(`${at}.width`, text);
    }
    const isTooWide = 2 * goods.overlap > Math.min(width, length);
    if (isTooWide) {
      reader.fail(`${at}.overlap`, problems.overlapTooWide(`${heading}, Overlap`, show(goods.overlap, 'piece')));
    }
  }
  for (const [at, key, where] of PRICED_GROUPS) {
    const isLeftOut = house[at] === null && !isBlank(entry[at].price);
    const typed = (entry[at] as unknown as Fields)[key] as Typed;
    if (isLeftOut && isBlank(typed)) reader.fail(`${at}.${key}`, houseProblems.priceWithoutSize(where));
  }
  house.trims.forEach(({ buy, thickness, stockLength }, i) => {
    if (buy !== 'new') return;
    const [field, where] = [`trims.${i}.stockLength`, `Trim ${i + 1}, Length of a stick`];
    const stick = needed(field, where, entry.trims[i].stockLength, stockLength);
    if (stick > 0) checkStick(field, where, stick, thickness);
  });
  house.transitions.forEach(({ stockLength }, i) => {
    if (stockLength > 0) checkStick(`transitions.${i}.stockLength`, `Bar ${i + 1}, Length`, stockLength, 0);
  });
  checkMargin(entry, house, reader);
  for (const { field, text } of enteredTwice(house)) reader.fail(field, text);
  house.labour.forEach(({ by, work }, i) => {
    if ((by as string) === '') reader.fail(`labour.${i}.by`, houseProblems.labourBy(work));
  });
}

/** Of what the job costs a margin may be all of it; of the price it must leave something for the cost. */
function checkMargin({ terms }: HouseEntry, house: House, reader: FieldReader): void {
  if (house.terms.marginOf !== 'price' || house.terms.margin !== 1) return;
  reader.fail('terms.margin', problems.percentage('Terms, Margin, per cent', terms.margin, 'all of it'));
}
