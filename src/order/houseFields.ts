/**
 * Every field of a job, declared once, in the order of the `Job` tab: what it is called, how it is read, what a blank one
 * stands for. The types of the job, its form, the check of what comes from outside, the reader and the tab follow from
 * here, as those of a room follow from `takeoff/entryFields.ts`. Lengths are of the small kind (`plank`) or the large
 * (`room`).
 */

import type { Units } from '../geometry/length';
import { inches, usualLength } from '../layout/rules';
import type { EntryField } from '../takeoff/entryFields';
import { field } from '../takeoff/entryFields';
import { countryWords } from '../takeoff/text/countryWords';
import { LIST_HELP, oneOf, orNotSaid, rollFields, SOURCE, usually } from './fieldParts';

export interface HouseSection {
  /** Key in the entry; '' is the entry itself. */
  readonly at: string;
  readonly heading: string;
  readonly isList: boolean;
  readonly fields: readonly EntryField[];
}

const section = <const At extends string, const Fields extends readonly EntryField[]>(
  at: At,
  heading: string,
  fields: Fields,
) => ({ at, heading, isList: false, fields }) as const;
const list = <const At extends string, const Fields extends readonly EntryField[]>(
  at: At,
  heading: string,
  fields: Fields,
) => ({ at, heading, isList: true, fields }) as const;

const SECTIONS = [
  section('', 'Job', [
    field('units', 'Units', 'choice', { choices: oneOf('us', 'metric') }),
    // Stands before every amount, such as `$` or `€`; blank = nothing.
    field('currency', 'Currency sign', 'words'),
    // Names of the rooms to take, in the order wanted; empty = every saved room.
    field('rooms', 'Rooms', 'list', { help: LIST_HELP }),
    // Blank or `yes`: rooms with the same product are cut from the same planks. `no`: each room from its own.
    field('shareOffcuts', 'Share offcuts between rooms', 'choice', {
      choices: usually('yes', 'yes', 'no'),
      blank: 'yes',
    }),
  ]),
  list('floors', 'Product', [
    // The product's name as in its rooms, any case.
    field('product', 'Name', 'words'),
    // Planks that will be cut wrongly or are unfit, per cent of those the plan uses; blank = none.
    field('misCuts', 'Mis-cuts, per cent', 'fraction', { blank: 0 }),
    // Whole planks to keep for repairs; blank = none.
    field('keep', 'Planks to keep for repairs', 'count', { blank: 0 }),
    // `attached`: the planks carry their own; blank = laid under floating planks when its roll is filled in.
    field('underlay', 'Underlay', 'choice', { choices: orNotSaid('laid', 'attached', 'none') }),
    // Blank = laid under floating planks when its roll is filled in, unless the subfloor is wood.
    field('film', 'Film', 'choice', { choices: orNotSaid('yes', 'no') }),
    // Blank = laid under nailed planks, and told as missing when its roll is not filled in.
    field('felt', 'Felt or paper', 'choice', { choices: orNotSaid('yes', 'no') }),
    // Blank = floating.
    field('fastening', 'Fastening', 'choice', {
      choices: usually('floating', 'floating', 'glued', 'nailed'),
      blank: 'floating',
    }),
    // Hours the boxes lie in the room, as the product's instructions say; blank is told as missing.
    field('acclimatise', 'Hours to acclimatise', 'number'),
    // How flat the subfloor must be, as the product's instructions say; blank = published values are quoted.
    field('flatness', 'Flatness asked for', 'words'),
    // Of wood products: `white oak`, `red oak quarter-sawn`, or a coefficient per point of moisture.
    field('species', 'Species or coefficient', 'species'),
    // Moisture content of the planks, per cent, as measured.
    field('moisture', 'Moisture of the planks', 'percent'),
    // What its instructions, or its adhesive's, allow: measured as the moisture of the subfloor is.
    field('subfloorLimit', 'Most moisture it allows in the subfloor', 'percent'),
    // For every room it goes into, in the place of what the rooms say; blank = what they say.
    field('price', 'Price for all rooms', 'price'),
    // `area`: of a square foot or metre of what a box covers; blank = a box.
    field('priceFor', 'That price is for a', 'choice', { choices: usually('box', 'box', 'area'), blank: 'box' }),
    ...SOURCE,
    field('lot', 'Lot', 'words'),
    // Pounds or kilograms.
    field('boxWeight', 'Weight of a box (lb, kg)', 'number'),
  ]),
  section('underlay', 'Underlay', rollFields('Underlay', inches(0, 0))),
  // Our choice: published laps run from 150 mm (NBS K21) to 30 cm; 8 in and 20 cm are given where they are taped.
  section('film', 'Film', rollFields('Film', inches(8, 200))),
  // Source: a trade association's magazine (February 2017): seams of felt and paper lap by 4 in at least.
  section('felt', 'Felt', rollFields('Felt or paper', inches(4, 100))),
  section('adhesive', 'Adhesive', [
    field('name', 'Name', 'words', { blank: 'Adhesive' }),
    // Square feet or metres, with the trowel it asks for.
    field('coverage', 'Area a pail covers (sq ft, m2)', 'number'),
    // As its label says, such as `1/4" x 1/4" square notch`.
    field('trowel', 'Trowel it asks for', 'words'),
    // Per cent; blank = none.
    field('allowance', 'Allowance, per cent', 'fraction', { blank: 0 }),
    // Per pail.
    field('price', 'Price of a pail', 'price'),
    ...SOURCE,
  ]),
  section('fasteners', 'Nails', [
    field('name', 'Name', 'words', { blank: 'Nails or cleats' }),
    // Plank scale, along a plank.
    field('apart', 'One every', 'plank'),
    field('perBox', 'In a box', 'count'),
    // Per cent; blank = none.
    field('allowance', 'Allowance, per cent', 'fraction', { blank: 0 }),
    // Per box.
    field('price', 'Price of a box', 'price'),
    ...SOURCE,
  ]),
  section('tape', 'Tape', [
    field('name', 'Name', 'words', { blank: 'Tape' }),
    // Room scale; blank = no tape is ordered.
    field('length', 'Length of the roll', 'room'),
    // Per cent on top of the seams; blank = none.
    field('allowance', 'Allowance, per cent', 'fraction', { blank: 0 }),
    // Per roll.
    field('price', 'Price of a roll', 'price'),
    ...SOURCE,
  ]),
  list('trims', 'Trim', [
    // `Baseboard`, `Quarter round`.
    field('name', 'Name', 'words', { blank: 'Trim' }),
    // Names of the rooms it goes into; empty = every room.
    field('rooms', 'Rooms', 'list', { help: LIST_HELP }),
    // `put back`: what was taken off goes back, nothing is bought; blank = new.
    field('buy', 'Bought or put back', 'choice', { choices: usually('new', 'new', 'put back'), blank: 'new' }),
    // Room scale.
    field('stockLength', 'Length of a stick', 'room'),
    // Plank scale; blank = 1/8 in (3 mm).
    field('kerf', 'Kerf', 'plank', { blank: [usualLength('kerf', 'us'), usualLength('kerf', 'metric')] }),
    // Plank scale; what an outside mitre adds; blank = 0.
    field('thickness', 'Thickness', 'plank', { blank: 0 }),
    // Plank scale; of the old trim that comes off, for the paint that is disturbed; 0 = none comes off, blank = not known.
    field('height', 'Height of the old trim taken off', 'plank'),
    field('aroundCutouts', 'Around cut-outs', 'choice', { choices: orNotSaid('yes', 'no') }),
    // Sticks on top; blank = none.
    field('spare', 'Spare sticks', 'count', { blank: 0 }),
    // Per stick.
    field('price', 'Price of a stick', 'price'),
    ...SOURCE,
  ]),
  list('transitions', 'Bar', [
    // `T-moulding`, `reducer`, `end cap`, `threshold`, or a name of one's own that a doorway asks for.
    field('kind', 'Kind', 'words', { blank: 'Bar' }),
    // Room scale.
    field('stockLength', 'Length', 'room!'),
    // Per length.
    field('price', 'Price of a length', 'price'),
    ...SOURCE,
  ]),
  list('doorways', 'Doorway', [
    field('room', 'Room', 'words'),
    // Counted from 1 in the room's entry.
    field('doorway', 'Number', 'count', { blank: 1 }),
    // What lies behind it: `Hall tile`, or the name of another room of this job, whose new height is then taken.
    field('neighbour', 'Neighbour', 'words'),
    // Plank scale: finished neighbouring floor above this room's subfloor.
    field('neighbourHeight', 'Neighbouring floor above the subfloor', 'plank'),
    // The neighbour is carpet.
    field('soft', 'Neighbour is carpet', 'choice', { choices: orNotSaid('yes', 'no') }),
    // A `kind` of the transitions, or `none`; blank = from the heights.
    field('transition', 'Bar', 'words'),
    // Plank scale: underside of the door leaf above this room's subfloor; blank = no leaf hangs over this floor.
    field('doorBottom', 'Underside of the door above the subfloor', 'plank'),
    // Plank scale: top of an exterior threshold above this room's subfloor; blank = none.
    field('thresholdTop', 'Top of the threshold above the subfloor', 'plank'),
  ]),
  list('appliances', 'Appliance', [
    field('name', 'Name', 'words', { blank: 'Appliance' }),
    field('room', 'Room', 'words'),
    // Plank scale: underside of the counter above the subfloor.
    field('opening', 'Opening', 'plank!'),
    // Plank scale: least height of the appliance.
    field('height', 'Least height', 'plank!'),
  ]),
  list('stairs', 'Stair', [
    field('name', 'Name', 'words', { blank: 'Stair' }),
    field('room', 'Room', 'words'),
    // Whether the new floor lies at the stair's foot or its head.
    field('floorAt', 'New floor at the', 'choice', { choices: usually('foot', 'foot', 'head'), blank: 'foot' }),
    // Plank scale: the riser at this floor, measured from the subfloor.
    field('riser', 'Riser there, from the subfloor', 'plank!'),
    // Plank scale: the other risers of the flight.
    field('others', 'Other risers', 'plank!'),
  ]),
  section('spacers', 'Spacers', [
    // Plank scale: one every so much of wall; blank = none are ordered.
    field('apart', 'One every', 'plank'),
    field('perPack', 'In a pack', 'count', { blank: 1 }),
    // Per pack.
    field('price', 'Price of a pack', 'price'),
    ...SOURCE,
  ]),
  list('extras', 'Item', [
    field('name', 'Name', 'words', { blank: 'Item' }),
    field('quantity', 'Quantity', 'number', { blank: 1 }),
    field('unit', 'Unit', 'words'),
    // Each.
    field('price', 'Price of one', 'price'),
    ...SOURCE,
  ]),
  section('site', 'House', [
    field('subfloor', 'Subfloor', 'choice', { choices: orNotSaid('wood', 'concrete') }),
    // Per cent: moisture content of a wood subfloor; of a concrete one what the product's limit is given in.
    field('subfloorMoisture', 'Moisture of the subfloor', 'percent'),
    // Degrees Fahrenheit or Celsius in the rooms.
    field('temperature', 'Temperature', 'degrees'),
    // Driest and dampest air of the year in the rooms, per cent relative humidity.
    field('humidityLow', 'Driest air, per cent', 'percent'),
    field('humidityHigh', 'Dampest air, per cent', 'percent'),
    field('builtYear', 'Built in', 'count'),
    // Names of rooms.
    field('tearOut', 'Rooms where an old floor comes out', 'list', { help: LIST_HELP }),
    field('asbestosTest', 'Test for asbestos', 'choice', { choices: orNotSaid('to be tested', 'none found', 'found') }),
    field('leadTest', 'Test for lead paint', 'choice', { choices: orNotSaid('to be tested', 'none found', 'found') }),
    // Plank scale, over its profile and the jamb beside it; blank = not known.
    field('casingWidth', 'Painted width of a door casing', 'plank'),
    // Our choice: what a door needs over a hard floor and a thin rug.
    // Plank scale: air under a door leaf; blank = 3/8 in (10 mm).
    field('doorClearance', 'Air under doors', 'plank', { blank: inches(3 / 8, 10) }),
  ]),
  list('labour', 'Work', [
    field('work', 'Name', 'words', { blank: 'Work' }),
    // What the rate is for: a square foot or metre of floor, or of old floor taken out, a piece laid, an hour, a foot or metre of trim, a door, the job.
    field('by', 'Rate is for', 'choice', {
      choices: orNotSaid('area', 'old floor', 'piece', 'hour', 'trim', 'door', 'job'),
    }),
    field('rate', 'Rate', 'price'),
  ]),
  section('pace', 'Minutes', [
    // Clearing, setting out, sweeping up.
    field('perRoom', 'a room', 'number'),
    field('perRow', 'a row', 'number'),
    field('perCut', 'a cut', 'number'),
    // For every notch and angled cut on top.
    field('perNotch', 'a notch or angled cut', 'number'),
    field('perDoorway', 'a doorway', 'number'),
    // Taking off, cutting and fixing.
    field('perTrim', 'a length of trim', 'number'),
    field('perDoor', 'a door to shorten', 'number'),
    // For every 100 square feet or 10 square metres of underlay, film and felt, each.
    field('perUnderlay', 'underlay, 100 sq ft (10 m2) of a layer', 'number'),
    // For every 100 square feet or 10 square metres.
    field('perTearOut', 'old floor out, 100 sq ft (10 m2)', 'number'),
  ]),
  section('terms', 'Terms', [
    // Per cent; blank = no tax, and the totals say so.
    field('tax', 'Tax, per cent', 'fraction'),
    // Blank = materials: what the shop adds. `price`: what is charged on the whole.
    field('taxOn', 'Tax on', 'choice', { choices: usually('materials', 'materials', 'price'), blank: 'materials' }),
    // Per cent; blank = none.
    field('margin', 'Margin, per cent', 'markup', { blank: 0 }),
    // Blank = cost.
    field('marginOf', 'Margin of', 'choice', { choices: usually('cost', 'cost', 'price'), blank: 'cost' }),
  ]),
  section('schedule', 'Dates', [
    // `2026-12-05`
    field('startDate', 'Start', 'date', { hint: 'such as 2026-12-05' }),
    field('hoursPerDay', 'Hours a day', 'number'),
    field('people', 'People', 'count', { blank: 1 }),
    // Blank = Monday to Friday.
    field('workDays', 'Work days', 'choice', {
      choices: usually('Monday to Friday', 'Saturdays too', 'every day'),
      blank: 'Monday to Friday',
    }),
    // Days from order to delivery.
    field('deliveryDays', 'Days to delivery', 'count'),
  ]),
  section('homeowner', 'Homeowner', [
    field('title', 'Title', 'words', { blank: 'New floors' }),
    field('homeowner', 'Name', 'words'),
    field('place', 'Place', 'words'),
    // Who lays the floor, and how to reach them.
    field('layer', 'Floor layer', 'words'),
    // Lines at the head of the page.
    field('letterhead', 'Letterhead, line by line', 'list', { help: LIST_HELP }),
    field('quoteNumber', 'Quote number', 'words'),
    // `2026-11-30`; blank = not said.
    field('quoteDate', 'Quote of', 'date', { hint: 'such as 2026-12-05' }),
    // `no` leaves the price out.
    field('showPrice', 'Show the price', 'choice', { choices: orNotSaid('yes', 'no') }),
    // Blank = one sum.
    field('priceAs', 'Price as', 'choice', { choices: usually('one sum', 'one sum', 'by room'), blank: 'one sum' }),
    // Per cent of the price; blank = none is asked for.
    field('deposit', 'Deposit, per cent', 'fraction'),
    field('payment', 'Terms of payment', 'list', { help: LIST_HELP }),
    // `2026-12-31`; blank = not said.
    field('validUntil', 'Price valid until', 'date', { hint: 'such as 2026-12-05' }),
    // On top of what the order has lines for.
    field('included', 'Also included', 'list', { help: LIST_HELP }),
    // On top of the list that follows from the job.
    field('prepare', 'To prepare', 'list', { help: LIST_HELP }),
    field('notIncluded', 'Not included', 'list', { help: LIST_HELP }),
    field('remarks', 'Remarks', 'list', { help: LIST_HELP }),
  ]),
  // The same rooms laid with another product, everything else as in the job; the homeowner sees its price beside.
  list('alternatives', 'Alternative', [
    field('name', 'Name', 'words', { blank: 'Another product' }),
    // The product whose place it takes; blank = every product.
    field('insteadOf', 'Instead of', 'words'),
    // Plank scale.
    field('plankLength', 'Plank length', 'plank!'),
    field('plankWidth', 'Plank width', 'plank!'),
    field('planksPerBox', 'Planks in a box', 'count'),
    // Per box.
    field('price', 'Price of a box', 'price'),
  ]),
  // A change to what was agreed: filled in, the homeowner gets the old price, the new one and why.
  section('change', 'Change order', [
    field('number', 'Number', 'words'),
    // Blank where nothing changes.
    field('oldPrice', 'Price agreed before', 'price'),
    field('why', 'What changes and why', 'list', { help: LIST_HELP }),
  ]),
] as const satisfies readonly HouseSection[];

/** All of them. The types of a job, as typed and as read, follow from here. */
export const HOUSE_SECTIONS: readonly HouseSection[] = SECTIONS;

type Section = (typeof SECTIONS)[number];

/** The section that stands at a place of the job; '' is the job itself. */
export type SectionAt<At extends Section['at']> = Extract<Section, { readonly at: At }>;

/** Places of a job that hold fields: `underlay`, `trims`. */
export type GroupAt = Exclude<Section['at'], ''>;
/** Those that hold a list of items. */
export type ListAt = Extract<Section, { readonly isList: true }>['at'];

/** What a field is called, in the tab and in a sentence: `Trim 2, Kerf`; `Underlay, Thickness`. */
export function houseLabel(
  { heading, isList }: HouseSection,
  { label }: EntryField,
  itemNumber: number,
  units: Units,
): string {
  return countryWords(`${isList ? `${heading} ${itemNumber}` : heading}, ${label}`, units);
}
