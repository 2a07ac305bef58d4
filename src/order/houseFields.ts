/**
 * Every field of a job, declared once, in the order of the `Job` tab: what it is called, how it is read, what a blank one
 * stands for. The types of the job, its form, the check of what comes from outside, the reader and the tab follow from
 * here, as those of a room follow from `takeoff/entryFields.ts`. Lengths are of the small kind (`plank`) or the large
 * (`room`).
 */

import type { Units } from '../geometry/length';
import { inches, usualLength } from '../layout/rules';
import type { EntryField } from '../takeoff/entryFields';
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
    { key: 'units', label: 'Units', use: 'choice', choices: oneOf('us', 'metric') },
    // Stands before every amount, such as `$` or `€`; blank = nothing.
    { key: 'currency', label: 'Currency sign', use: 'words' },
    // Names of the rooms to take, in the order wanted; empty = every saved room.
    { key: 'rooms', label: 'Rooms', use: 'list', help: LIST_HELP },
    // Blank or `yes`: rooms with the same product are cut from the same planks. `no`: each room from its own.
    {
      key: 'shareOffcuts',
      label: 'Share offcuts between rooms',
      use: 'choice',
      choices: usually('yes', 'yes', 'no'),
      blank: 'yes',
    },
  ]),
  list('floors', 'Product', [
    // The product's name as in its rooms, any case.
    { key: 'product', label: 'Name', use: 'words' },
    // Planks that will be cut wrongly or are unfit, per cent of those the plan uses; blank = none.
    { key: 'misCuts', label: 'Mis-cuts, per cent', use: 'fraction', blank: 0 },
    // Whole planks to keep for repairs; blank = none.
    { key: 'keep', label: 'Planks to keep for repairs', use: 'count', blank: 0 },
    // `attached`: the planks carry their own; blank = laid under floating planks when its roll is filled in.
    { key: 'underlay', label: 'Underlay', use: 'choice', choices: orNotSaid('laid', 'attached', 'none') },
    // Blank = laid under floating planks when its roll is filled in, unless the subfloor is wood.
    { key: 'film', label: 'Film', use: 'choice', choices: orNotSaid('yes', 'no') },
    // Blank = laid under nailed planks, and told as missing when its roll is not filled in.
    { key: 'felt', label: 'Felt or paper', use: 'choice', choices: orNotSaid('yes', 'no') },
    // Blank = floating.
    {
      key: 'fastening',
      label: 'Fastening',
      use: 'choice',
      choices: usually('floating', 'floating', 'glued', 'nailed'),
      blank: 'floating',
    },
    // Hours the boxes lie in the room, as the product's instructions say; blank is told as missing.
    { key: 'acclimatise', label: 'Hours to acclimatise', use: 'number' },
    // How flat the subfloor must be, as the product's instructions say; blank = published values are quoted.
    { key: 'flatness', label: 'Flatness asked for', use: 'words' },
    // Of wood products: `white oak`, `red oak quarter-sawn`, or a coefficient per point of moisture.
    { key: 'species', label: 'Species or coefficient', use: 'species' },
    // Moisture content of the planks, per cent, as measured.
    { key: 'moisture', label: 'Moisture of the planks', use: 'percent' },
    // What its instructions, or its adhesive's, allow: measured as the moisture of the subfloor is.
    { key: 'subfloorLimit', label: 'Most moisture it allows in the subfloor', use: 'percent' },
    // For every room it goes into, in the place of what the rooms say; blank = what they say.
    { key: 'price', label: 'Price for all rooms', use: 'price' },
    // `area`: of a square foot or metre of what a box covers; blank = a box.
    {
      key: 'priceFor',
      label: 'That price is for a',
      use: 'choice',
      choices: usually('box', 'box', 'area'),
      blank: 'box',
    },
    ...SOURCE,
    { key: 'lot', label: 'Lot', use: 'words' },
    // Pounds or kilograms.
    { key: 'boxWeight', label: 'Weight of a box (lb, kg)', use: 'number' },
  ]),
  section('underlay', 'Underlay', rollFields('Underlay', inches(0, 0))),
  // Our choice: published laps run from 150 mm (NBS K21) to 30 cm; 8 in and 20 cm are given where they are taped.
  section('film', 'Film', rollFields('Film', inches(8, 200))),
  // Source: a trade association's magazine (February 2017): seams of felt and paper lap by 4 in at least.
  section('felt', 'Felt', rollFields('Felt or paper', inches(4, 100))),
  section('adhesive', 'Adhesive', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Adhesive' },
    // Square feet or metres, with the trowel it asks for.
    { key: 'coverage', label: 'Area a pail covers (sq ft, m2)', use: 'number' },
    // As its label says, such as `1/4" x 1/4" square notch`.
    { key: 'trowel', label: 'Trowel it asks for', use: 'words' },
    // Per cent; blank = none.
    { key: 'allowance', label: 'Allowance, per cent', use: 'fraction', blank: 0 },
    // Per pail.
    { key: 'price', label: 'Price of a pail', use: 'price' },
    ...SOURCE,
  ]),
  section('fasteners', 'Nails', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Nails or cleats' },
    // Plank scale, along a plank.
    { key: 'apart', label: 'One every', use: 'plank' },
    { key: 'perBox', label: 'In a box', use: 'count' },
    // Per cent; blank = none.
    { key: 'allowance', label: 'Allowance, per cent', use: 'fraction', blank: 0 },
    // Per box.
    { key: 'price', label: 'Price of a box', use: 'price' },
    ...SOURCE,
  ]),
  section('tape', 'Tape', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Tape' },
    // Room scale; blank = no tape is ordered.
    { key: 'length', label: 'Length of the roll', use: 'room' },
    // Per cent on top of the seams; blank = none.
    { key: 'allowance', label: 'Allowance, per cent', use: 'fraction', blank: 0 },
    // Per roll.
    { key: 'price', label: 'Price of a roll', use: 'price' },
    ...SOURCE,
  ]),
  list('trims', 'Trim', [
    // `Baseboard`, `Quarter round`.
    { key: 'name', label: 'Name', use: 'words', blank: 'Trim' },
    // Names of the rooms it goes into; empty = every room.
    { key: 'rooms', label: 'Rooms', use: 'list', help: LIST_HELP },
    // `put back`: what was taken off goes back, nothing is bought; blank = new.
    {
      key: 'buy',
      label: 'Bought or put back',
      use: 'choice',
      choices: usually('new', 'new', 'put back'),
      blank: 'new',
    },
    // Room scale.
    { key: 'stockLength', label: 'Length of a stick', use: 'room' },
    // Plank scale; blank = 1/8 in (3 mm).
    { key: 'kerf', label: 'Kerf', use: 'plank', blank: [usualLength('kerf', 'us'), usualLength('kerf', 'metric')] },
    // Plank scale; what an outside mitre adds; blank = 0.
    { key: 'thickness', label: 'Thickness', use: 'plank', blank: 0 },
    // Plank scale; of the old trim that comes off, for the paint that is disturbed; 0 = none comes off, blank = not known.
    { key: 'height', label: 'Height of the old trim taken off', use: 'plank' },
    { key: 'aroundCutouts', label: 'Around cut-outs', use: 'choice', choices: orNotSaid('yes', 'no') },
    // Sticks on top; blank = none.
    { key: 'spare', label: 'Spare sticks', use: 'count', blank: 0 },
    // Per stick.
    { key: 'price', label: 'Price of a stick', use: 'price' },
    ...SOURCE,
  ]),
  list('transitions', 'Bar', [
    // `T-moulding`, `reducer`, `end cap`, `threshold`, or a name of one's own that a doorway asks for.
    { key: 'kind', label: 'Kind', use: 'words', blank: 'Bar' },
    // Room scale.
    { key: 'stockLength', label: 'Length', use: 'room!' },
    // Per length.
    { key: 'price', label: 'Price of a length', use: 'price' },
    ...SOURCE,
  ]),
  list('doorways', 'Doorway', [
    { key: 'room', label: 'Room', use: 'words' },
    // Counted from 1 in the room's entry.
    { key: 'doorway', label: 'Number', use: 'count', blank: 1 },
    // What lies behind it: `Hall tile`, or the name of another room of this job, whose new height is then taken.
    { key: 'neighbour', label: 'Neighbour', use: 'words' },
    // Plank scale: finished neighbouring floor above this room's subfloor.
    { key: 'neighbourHeight', label: 'Neighbouring floor above the subfloor', use: 'plank' },
    // The neighbour is carpet.
    { key: 'soft', label: 'Neighbour is carpet', use: 'choice', choices: orNotSaid('yes', 'no') },
    // A `kind` of the transitions, or `none`; blank = from the heights.
    { key: 'transition', label: 'Bar', use: 'words' },
    // Plank scale: underside of the door leaf above this room's subfloor; blank = no leaf hangs over this floor.
    { key: 'doorBottom', label: 'Underside of the door above the subfloor', use: 'plank' },
    // Plank scale: top of an exterior threshold above this room's subfloor; blank = none.
    { key: 'thresholdTop', label: 'Top of the threshold above the subfloor', use: 'plank' },
  ]),
  list('appliances', 'Appliance', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Appliance' },
    { key: 'room', label: 'Room', use: 'words' },
    // Plank scale: underside of the counter above the subfloor.
    { key: 'opening', label: 'Opening', use: 'plank!' },
    // Plank scale: least height of the appliance.
    { key: 'height', label: 'Least height', use: 'plank!' },
  ]),
  list('stairs', 'Stair', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Stair' },
    { key: 'room', label: 'Room', use: 'words' },
    // Whether the new floor lies at the stair's foot or its head.
    {
      key: 'floorAt',
      label: 'New floor at the',
      use: 'choice',
      choices: usually('foot', 'foot', 'head'),
      blank: 'foot',
    },
    // Plank scale: the riser at this floor, measured from the subfloor.
    { key: 'riser', label: 'Riser there, from the subfloor', use: 'plank!' },
    // Plank scale: the other risers of the flight.
    { key: 'others', label: 'Other risers', use: 'plank!' },
  ]),
  section('spacers', 'Spacers', [
    // Plank scale: one every so much of wall; blank = none are ordered.
    { key: 'apart', label: 'One every', use: 'plank' },
    { key: 'perPack', label: 'In a pack', use: 'count', blank: 1 },
    // Per pack.
    { key: 'price', label: 'Price of a pack', use: 'price' },
    ...SOURCE,
  ]),
  list('extras', 'Item', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Item' },
    { key: 'quantity', label: 'Quantity', use: 'number', blank: 1 },
    { key: 'unit', label: 'Unit', use: 'words' },
    // Each.
    { key: 'price', label: 'Price of one', use: 'price' },
    ...SOURCE,
  ]),
  section('site', 'House', [
    { key: 'subfloor', label: 'Subfloor', use: 'choice', choices: orNotSaid('wood', 'concrete') },
    // Per cent: moisture content of a wood subfloor; of a concrete one what the product's limit is given in.
    { key: 'subfloorMoisture', label: 'Moisture of the subfloor', use: 'percent' },
    // Degrees Fahrenheit or Celsius in the rooms.
    { key: 'temperature', label: 'Temperature', use: 'degrees' },
    // Driest and dampest air of the year in the rooms, per cent relative humidity.
    { key: 'humidityLow', label: 'Driest air, per cent', use: 'percent' },
    { key: 'humidityHigh', label: 'Dampest air, per cent', use: 'percent' },
    { key: 'builtYear', label: 'Built in', use: 'count' },
    // Names of rooms.
    { key: 'tearOut', label: 'Rooms where an old floor comes out', use: 'list', help: LIST_HELP },
    {
      key: 'asbestosTest',
      label: 'Test for asbestos',
      use: 'choice',
      choices: orNotSaid('to be tested', 'none found', 'found'),
    },
    {
      key: 'leadTest',
      label: 'Test for lead paint',
      use: 'choice',
      choices: orNotSaid('to be tested', 'none found', 'found'),
    },
    // Plank scale, over its profile and the jamb beside it; blank = not known.
    { key: 'casingWidth', label: 'Painted width of a door casing', use: 'plank' },
    // Our choice: what a door needs over a hard floor and a thin rug.
    // Plank scale: air under a door leaf; blank = 3/8 in (10 mm).
    { key: 'doorClearance', label: 'Air under doors', use: 'plank', blank: inches(3 / 8, 10) },
  ]),
  list('labour', 'Work', [
    { key: 'work', label: 'Name', use: 'words', blank: 'Work' },
    // What the rate is for: a square foot or metre of floor, or of old floor taken out, a piece laid, an hour, a foot or metre of trim, a door, the job.
    {
      key: 'by',
      label: 'Rate is for',
      use: 'choice',
      choices: orNotSaid('area', 'old floor', 'piece', 'hour', 'trim', 'door', 'job'),
    },
    { key: 'rate', label: 'Rate', use: 'price' },
  ]),
  section('pace', 'Minutes', [
    // Clearing, setting out, sweeping up.
    { key: 'perRoom', label: 'a room', use: 'number' },
    { key: 'perRow', label: 'a row', use: 'number' },
    { key: 'perCut', label: 'a cut', use: 'number' },
    // For every notch and angled cut on top.
    { key: 'perNotch', label: 'a notch or angled cut', use: 'number' },
    { key: 'perDoorway', label: 'a doorway', use: 'number' },
    // Taking off, cutting and fixing.
    { key: 'perTrim', label: 'a length of trim', use: 'number' },
    { key: 'perDoor', label: 'a door to shorten', use: 'number' },
    // For every 100 square feet or 10 square metres of underlay, film and felt, each.
    { key: 'perUnderlay', label: 'underlay, 100 sq ft (10 m2) of a layer', use: 'number' },
    // For every 100 square feet or 10 square metres.
    { key: 'perTearOut', label: 'old floor out, 100 sq ft (10 m2)', use: 'number' },
  ]),
  section('terms', 'Terms', [
    // Per cent; blank = no tax, and the totals say so.
    { key: 'tax', label: 'Tax, per cent', use: 'fraction' },
    // Blank = materials: what the shop adds. `price`: what is charged on the whole.
    {
      key: 'taxOn',
      label: 'Tax on',
      use: 'choice',
      choices: usually('materials', 'materials', 'price'),
      blank: 'materials',
    },
    // Per cent; blank = none.
    { key: 'margin', label: 'Margin, per cent', use: 'markup', blank: 0 },
    // Blank = cost.
    { key: 'marginOf', label: 'Margin of', use: 'choice', choices: usually('cost', 'cost', 'price'), blank: 'cost' },
  ]),
  section('schedule', 'Dates', [
    // `2026-12-05`
    { key: 'startDate', label: 'Start', use: 'date', hint: 'such as 2026-12-05' },
    { key: 'hoursPerDay', label: 'Hours a day', use: 'number' },
    { key: 'people', label: 'People', use: 'count', blank: 1 },
    {
      key: 'workDays',
      label: 'Work days',
      use: 'choice',
      choices: usually('Monday to Friday', 'Saturdays too', 'every day'),
      blank: 'Monday to Friday',
    },
    // Days from order to delivery.
    { key: 'deliveryDays', label: 'Days to delivery', use: 'count' },
  ]),
  section('homeowner', 'Homeowner', [
    { key: 'title', label: 'Title', use: 'words', blank: 'New floors' },
    { key: 'homeowner', label: 'Name', use: 'words' },
    { key: 'place', label: 'Place', use: 'words' },
    // Who lays the floor, and how to reach them.
    { key: 'layer', label: 'Floor layer', use: 'words' },
    // Lines at the head of the page.
    { key: 'letterhead', label: 'Letterhead, line by line', use: 'list', help: LIST_HELP },
    { key: 'quoteNumber', label: 'Quote number', use: 'words' },
    // `2026-11-30`; blank = not said.
    { key: 'quoteDate', label: 'Quote of', use: 'date', hint: 'such as 2026-12-05' },
    // `no` leaves the price out.
    { key: 'showPrice', label: 'Show the price', use: 'choice', choices: orNotSaid('yes', 'no') },
    // Blank = one sum.
    {
      key: 'priceAs',
      label: 'Price as',
      use: 'choice',
      choices: usually('one sum', 'one sum', 'by room'),
      blank: 'one sum',
    },
    // Per cent of the price; blank = none is asked for.
    { key: 'deposit', label: 'Deposit, per cent', use: 'fraction' },
    { key: 'payment', label: 'Terms of payment', use: 'list', help: LIST_HELP },
    // `2026-12-31`; blank = not said.
    { key: 'validUntil', label: 'Price valid until', use: 'date', hint: 'such as 2026-12-05' },
    // On top of what the order has lines for.
    { key: 'included', label: 'Also included', use: 'list', help: LIST_HELP },
    // On top of the list that follows from the job.
    { key: 'prepare', label: 'To prepare', use: 'list', help: LIST_HELP },
    { key: 'notIncluded', label: 'Not included', use: 'list', help: LIST_HELP },
    { key: 'remarks', label: 'Remarks', use: 'list', help: LIST_HELP },
  ]),
  // The same rooms laid with another product, everything else as in the job; the homeowner sees its price beside.
  list('alternatives', 'Alternative', [
    { key: 'name', label: 'Name', use: 'words', blank: 'Another product' },
    // The product whose place it takes; blank = every product.
    { key: 'insteadOf', label: 'Instead of', use: 'words' },
    // Plank scale.
    { key: 'plankLength', label: 'Plank length', use: 'plank!' },
    { key: 'plankWidth', label: 'Plank width', use: 'plank!' },
    { key: 'planksPerBox', label: 'Planks in a box', use: 'count' },
    // Per box.
    { key: 'price', label: 'Price of a box', use: 'price' },
  ]),
  // A change to what was agreed: filled in, the homeowner gets the old price, the new one and why.
  section('change', 'Change order', [
    { key: 'number', label: 'Number', use: 'words' },
    // Blank where nothing changes.
    { key: 'oldPrice', label: 'Price agreed before', use: 'price' },
    { key: 'why', label: 'What changes and why', use: 'list', help: LIST_HELP },
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
