/**
 * Every field of a job, in the order of the `Job` tab, with the words it goes by, how it is read, and what a blank one
 * stands for: this one table is what checks a job, reads it, writes it into cells and names its fields.
 */
import { inchesOf, mmOf } from '../geometry/length';
import { usualLength } from '../layout/rules';
import type { HouseEntry } from './houseEntry';

/**
 * `text` and `words` (a list of texts, divided by semicolons in a cell) are taken as they are; a list is a choice, the
 * first of which is what a blank means where it is ''. `room` and `plank` are lengths, `room!` and `plank!` lengths
 * that must be there; `fraction` and `percent` are percentages, `markup` one that may be
 * 100 % too; `species` is a name or a coefficient; `degrees` is a
 * temperature in the job's units.
 */
export type FieldKind =
  | 'text'
  | 'words'
  | 'room'
  | 'room!'
  | 'plank'
  | 'plank!'
  | 'count'
  | 'number'
  | 'fraction'
  | 'percent'
  | 'markup'
  | 'price'
  | 'date'
  | 'species'
  | 'degrees'
  | readonly string[];

/** What a blank field is read as: a value, or a length in inches and, in a metric job, in millimetres. */
export type Blank = string | number | readonly [inches: number, millimetres: number];

/** Key in the entry, how it is read, its label; without a fourth a blank field is read as null, a blank text as ''. */
export type HouseField = readonly [key: string, kind: FieldKind, label: string, blank?: Blank];

export interface HouseSection {
  /** Key in the entry; '' is the entry itself. */
  readonly at: '' | keyof HouseEntry;
  readonly heading: string;
  readonly isList: boolean;
  readonly fields: readonly HouseField[];
}

const section = (at: HouseSection['at'], heading: string, fields: readonly HouseField[]): HouseSection => ({
  at,
  heading,
  isList: false,
  fields,
});
const list = (at: keyof HouseEntry, heading: string, fields: readonly HouseField[]): HouseSection => ({
  ...section(at, heading, fields),
  isList: true,
});

const YES_NO = ['', 'yes', 'no'];
const TEST_RESULTS = ['', 'to be tested', 'none found', 'found'];

const rollFields = (name: string, lap: readonly [number, number]): readonly HouseField[] => [
  ['name', 'text', 'Name', name],
  ['width', 'room', 'Width of the roll'],
  ['length', 'room', 'Length of the roll'],
  ['overlap', 'plank', 'Overlap', lap],
  ['direction', ['', 'length', 'width'], 'Strips along the'],
  ['thickness', 'plank', 'Thickness', 0],
  ['price', 'price', 'Price of a roll'],
];

export const HOUSE_SECTIONS: readonly HouseSection[] = [
  section('', 'Job', [
    ['units', ['us', 'metric'], 'Units'],
    ['currency', 'text', 'Currency sign'],
    ['rooms', 'words', 'Rooms'],
    ['shareOffcuts', YES_NO, 'Share offcuts between rooms', 'yes'],
  ]),
  list('floors', 'Product', [
    ['product', 'text', 'Name'],
    ['misCuts', 'fraction', 'Mis-cuts, per cent', 0],
    ['keep', 'count', 'Planks to keep for repairs', 0],
    ['underlay', ['', 'laid', 'attached', 'none'], 'Underlay'],
    ['film', YES_NO, 'Film'],
    ['felt', YES_NO, 'Felt or paper'],
    ['fastening', ['', 'floating', 'glued', 'nailed'], 'Fastening', 'floating'],
    ['acclimatise', 'number', 'Hours to acclimatise'],
    ['flatness', 'text', 'Flatness asked for'],
    ['species', 'species', 'Species or coefficient'],
    ['moisture', 'percent', 'Moisture of the planks'],
    ['subfloorLimit', 'percent', 'Most moisture it allows in the subfloor'],
  ]),
  section('underlay', 'Underlay', rollFields('Underlay', [0, 0])),
  // Our choice: published laps run from 150 mm (NBS K21) to 30 cm; 8 in and 20 cm are given where they are taped.
  section('film', 'Film', rollFields('Film', [8, 200])),
  // Source: a trade association's magazine (February 2017): seams of felt and paper lap by 4 in at least.
  section('felt', 'Felt', rollFields('Felt or paper', [4, 100])),
  section('adhesive', 'Adhesive', [
    ['name', 'text', 'Name', 'Adhesive'],
    ['coverage', 'number', 'Area a pail covers (sq ft, m2)'],
    ['trowel', 'text', 'Trowel it asks for'],
    ['allowance', 'fraction', 'Allowance, per cent', 0],
    ['price', 'price', 'Price of a pail'],
  ]),
  section('fasteners', 'Nails', [
    ['name', 'text', 'Name', 'Nails or cleats'],
    ['apart', 'plank', 'One every'],
    ['perBox', 'count', 'In a box'],
    ['allowance', 'fraction', 'Allowance, per cent', 0],
    ['price', 'price', 'Price of a box'],
  ]),
  section('tape', 'Tape', [
    ['name', 'text', 'Name', 'Tape'],
    ['length', 'room', 'Length of the roll'],
    ['allowance', 'fraction', 'Allowance, per cent', 0],
    ['price', 'price', 'Price of a roll'],
  ]),
  list('trims', 'Trim', [
    ['name', 'text', 'Name', 'Trim'],
    ['rooms', 'words', 'Rooms'],
    ['buy', ['', 'new', 'put back'], 'Bought or put back', 'new'],
    ['stockLength', 'room', 'Length of a stick'],
    ['kerf', 'plank', 'Kerf', [inchesOf(usualLength('kerf', 'us')), mmOf(usualLength('kerf', 'metric'))]],
    ['thickness', 'plank', 'Thickness', 0],
    ['height', 'plank', 'Height of the old trim taken off'],
    ['aroundCutouts', YES_NO, 'Around cut-outs'],
    ['spare', 'count', 'Spare sticks', 0],
    ['price', 'price', 'Price of a stick'],
  ]),
  list('transitions', 'Bar', [
    ['kind', 'text', 'Kind', 'Bar'],
    ['stockLength', 'room!', 'Length'],
    ['price', 'price', 'Price of a length'],
  ]),
  list('doorways', 'Doorway', [
    ['room', 'text', 'Room'],
    ['doorway', 'count', 'Number', 1],
    ['neighbour', 'text', 'Neighbour'],
    ['neighbourHeight', 'plank', 'Neighbouring floor above the subfloor'],
    ['soft', YES_NO, 'Neighbour is carpet'],
    ['transition', 'text', 'Bar'],
    ['doorBottom', 'plank', 'Underside of the door above the subfloor'],
    ['thresholdTop', 'plank', 'Top of the threshold above the subfloor'],
  ]),
  list('appliances', 'Appliance', [
    ['name', 'text', 'Name', 'Appliance'],
    ['room', 'text', 'Room'],
    ['opening', 'plank!', 'Opening'],
    ['height', 'plank!', 'Least height'],
  ]),
  list('stairs', 'Stair', [
    ['name', 'text', 'Name', 'Stair'],
    ['room', 'text', 'Room'],
    ['floorAt', ['', 'foot', 'head'], 'New floor at the', 'foot'],
    ['riser', 'plank!', 'Riser there, from the subfloor'],
    ['others', 'plank!', 'Other risers'],
  ]),
  section('spacers', 'Spacers', [
    ['apart', 'plank', 'One every'],
    ['perPack', 'count', 'In a pack', 1],
    ['price', 'price', 'Price of a pack'],
  ]),
  list('extras', 'Item', [
    ['name', 'text', 'Name', 'Item'],
    ['quantity', 'number', 'Quantity', 1],
    ['unit', 'text', 'Unit'],
    ['price', 'price', 'Price of one'],
  ]),
  section('site', 'House', [
    ['subfloor', ['', 'wood', 'concrete'], 'Subfloor'],
    ['subfloorMoisture', 'percent', 'Moisture of the subfloor'],
    ['temperature', 'degrees', 'Temperature'],
    ['humidityLow', 'percent', 'Driest air, per cent'],
    ['humidityHigh', 'percent', 'Dampest air, per cent'],
    ['builtYear', 'count', 'Built in'],
    ['tearOut', 'words', 'Rooms where an old floor comes out'],
    ['asbestosTest', TEST_RESULTS, 'Test for asbestos'],
    ['leadTest', TEST_RESULTS, 'Test for lead paint'],
    ['casingWidth', 'plank', 'Painted width of a door casing'],
    // Our choice: what a door needs over a hard floor and a thin rug.
    ['doorClearance', 'plank', 'Air under doors', [3 / 8, 10]],
  ]),
  list('labour', 'Work', [
    ['work', 'text', 'Name', 'Work'],
    ['by', ['', 'area', 'piece', 'hour', 'trim', 'door', 'job'], 'Rate is for'],
    ['rate', 'price', 'Rate'],
  ]),
  section('pace', 'Minutes', [
    ['perRoom', 'number', 'a room'],
    ['perRow', 'number', 'a row'],
    ['perCut', 'number', 'a cut'],
    ['perNotch', 'number', 'a notch or angled cut'],
    ['perDoorway', 'number', 'a doorway'],
    ['perTrim', 'number', 'a length of trim'],
    ['perDoor', 'number', 'a door to shorten'],
    ['perUnderlay', 'number', 'underlay, 100 sq ft (10 m2) of a layer'],
    ['perTearOut', 'number', 'old floor out, 100 sq ft (10 m2)'],
  ]),
  section('terms', 'Terms', [
    ['tax', 'fraction', 'Tax, per cent'],
    ['taxOn', ['', 'materials', 'price'], 'Tax on', 'materials'],
    ['margin', 'markup', 'Margin, per cent', 0],
    ['marginOf', ['', 'cost', 'price'], 'Margin of', 'cost'],
  ]),
  section('schedule', 'Dates', [
    ['startDate', 'date', 'Start'],
    ['hoursPerDay', 'number', 'Hours a day'],
    ['people', 'count', 'People', 1],
    ['workDays', ['', 'saturdays too', 'every day'], 'Work days', 'monday to friday'],
    ['deliveryDays', 'count', 'Days to delivery'],
  ]),
  section('homeowner', 'Homeowner', [
    ['title', 'text', 'Title', 'New floors'],
    ['homeowner', 'text', 'Name'],
    ['place', 'text', 'Place'],
    ['layer', 'text', 'Floor layer'],
    ['showPrice', YES_NO, 'Show the price'],
    ['validUntil', 'date', 'Price valid until'],
    ['prepare', 'words', 'To prepare'],
    ['notIncluded', 'words', 'Not included'],
    ['remarks', 'words', 'Remarks'],
  ]),
];

/** What a field is called, in the tab and in a sentence: `Trim 2, Kerf`; `Underlay, Thickness`. */
export function houseLabel({ heading, isList }: HouseSection, label: string, itemNumber: number): string {
  return `${isList ? `${heading} ${itemNumber}` : heading}, ${label}`;
}
