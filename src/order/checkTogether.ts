/** What one field of a job asks of another: sizes that must go together, and what would otherwise be left out silently. */

import { type Ticks, ticksOfMm } from '../geometry/length';
import type { Typed } from '../takeoff/entry';
import { type FieldReader, isBlank } from '../takeoff/reading/fieldReader';
import { problems } from '../takeoff/reading/problems';
import { countryWords } from '../takeoff/text/countryWords';
import { lengthText } from '../takeoff/text/lengthText';
import type { HouseFields } from './house';
import { enteredTwice } from './houseDoubles';
import type { HouseEntry } from './houseEntry';
import { houseProblems } from './houseProblems';

/** Our choice: smaller ones are a slip of units, and would make thousands of strips or pieces. */
const NARROWEST_ROLL: Ticks = ticksOfMm(100);
const SMALLEST_ROLL = ticksOfMm(1000) ** 2;
const SHORTEST_STICK: Ticks = ticksOfMm(300);

/** Rolls that cover a floor, and what they are called. */
const ROLLS = [
  ['underlay', 'Underlay'],
  ['film', 'Film'],
  ['felt', 'Felt'],
] as const;

/** Tells every field that does not go with the others. What cannot be read has been told when it was read. */
export function checkTogether(entry: HouseEntry, fields: HouseFields, reader: FieldReader): void {
  for (const [at, heading] of ROLLS) checkRoll(at, countryWords(heading, reader.units), entry, fields, reader);
  checkPrices(entry, fields, reader);
  checkTrims(entry, fields, reader);
  fields.transitions.forEach(({ stockLength }, i) => {
    if (stockLength > 0)
      checkStick(
        `transitions.${i}.stockLength`,
        countryWords(`Bar ${i + 1}, Length`, reader.units),
        stockLength,
        0,
        reader,
      );
  });
  checkMargin(entry, fields, reader);
  for (const { field, text } of enteredTwice(fields, reader.units)) reader.fail(field, text);
  fields.labour.forEach(({ by, work }, i) => {
    if (by === '') reader.fail(`labour.${i}.by`, houseProblems.labourBy(work));
  });
}

/** Of a roll both sizes are typed or neither; it is of a size that is sold, and laps by less than half of it. */
function checkRoll(
  at: (typeof ROLLS)[number][0],
  heading: string,
  entry: HouseEntry,
  fields: HouseFields,
  reader: FieldReader,
): void {
  const goods = fields[at];
  if (goods.width === null && goods.length === null) return;
  const widthName = `${heading}, Width of the roll`;
  const width = neededLength(`${at}.width`, widthName, entry[at].width, goods.width, reader);
  const length = neededLength(`${at}.length`, `${heading}, Length of the roll`, entry[at].length, goods.length, reader);
  if (width === 0 || length === 0) return;
  const show = (ticks: Ticks) => lengthText(ticks, reader.units, 'room');
  if (width < NARROWEST_ROLL || width * length < SMALLEST_ROLL) {
    reader.fail(`${at}.width`, houseProblems.rollTooSmall(widthName, show(width), show(length), reader.units));
  }
  if (2 * goods.overlap > Math.min(width, length)) {
    const overlap = lengthText(goods.overlap, reader.units, 'piece');
    reader.fail(`${at}.overlap`, problems.overlapTooWide(`${heading}, Overlap`, overlap));
  }
}

/** Groups that are ordered once their size is typed: one with a price alone would be left out of the order. */
function checkPrices({ underlay, film, tape, spacers }: HouseEntry, fields: HouseFields, reader: FieldReader): void {
  const check = (field: string, where: string, price: Typed, size: Typed, isOrdered: boolean) => {
    const isLeftOut = !isOrdered && !isBlank(price) && isBlank(size);
    if (isLeftOut) reader.fail(field, houseProblems.priceWithoutSize(where));
  };
  const isRoll = ({ width, length }: HouseFields['film']) => width !== null || length !== null;
  const roll = 'Width of the roll';
  check('underlay.width', `Underlay, ${roll}`, underlay.price, underlay.width, isRoll(fields.underlay));
  check('film.width', countryWords(`Film, ${roll}`, reader.units), film.price, film.width, isRoll(fields.film));
  check('tape.length', 'Tape, Length of the roll', tape.price, tape.length, Boolean(fields.tape.length));
  check('spacers.apart', 'Spacers, One every', spacers.price, spacers.apart, Boolean(fields.spacers.apart));
}

/** Trim that is bought comes in sticks. */
function checkTrims(entry: HouseEntry, { trims }: HouseFields, reader: FieldReader): void {
  trims.forEach(({ buy, thickness, stockLength }, i) => {
    if (buy !== 'new') return;
    const [field, where] = [`trims.${i}.stockLength`, `Trim ${i + 1}, Length of a stick`];
    const stick = neededLength(field, where, entry.trims[i].stockLength, stockLength, reader);
    if (stick > 0) checkStick(field, where, stick, thickness, reader);
  });
}

function checkStick(field: string, where: string, length: Ticks, thickness: Ticks, reader: FieldReader): void {
  const isUsable = length >= SHORTEST_STICK && 2 * thickness <= length;
  if (!isUsable)
    reader.fail(field, houseProblems.stickSize(where, lengthText(length, reader.units, 'room'), reader.units));
}

/** Of what the job costs a margin may be all of it; of the price it must leave something for the cost. */
function checkMargin({ terms }: HouseEntry, fields: HouseFields, reader: FieldReader): void {
  if (fields.terms.marginOf !== 'price' || fields.terms.margin !== 1) return;
  reader.fail(
    'terms.margin',
    problems.percentage(countryWords('Terms, Margin, per cent', reader.units), terms.margin, 'all of it'),
  );
}

/** A length that other fields make needed; 0 where it is not there or cannot be read. */
function neededLength(field: string, where: string, typed: Typed, read: Ticks | null, reader: FieldReader): Ticks {
  if (isBlank(typed)) reader.fail(field, problems.length(where, typed, 'blank', 'room', reader.units));
  if (read === 0) reader.fail(field, problems.lengthZero(where));
  return read ?? 0;
}
