/**
 * Every field of a job, in the order of the `Job` tab, with the plain words it goes by: the one table from which a job
 * that came from outside is checked, and from which the tab is written and read.
 */
import {
  BLANK_APPLIANCE,
  BLANK_DOORWAY_WORK,
  BLANK_EXTRA,
  BLANK_FLOOR_TERMS,
  BLANK_LABOUR,
  BLANK_STAIR,
  BLANK_TRANSITION,
  BLANK_TRIM,
} from '../takeoff/houseEntry';

/** A field: its key in the entry, its label, and what may be chosen. */
export interface HouseField {
  readonly key: string;
  readonly label: string;
  readonly choices?: readonly string[];
  /** Words only: a number that stands there is meant as text. */
  readonly isText?: true;
  /** A list of words, one cell, divided by semicolons. */
  readonly isWords?: true;
}

export interface HouseSection {
  /** Key in the entry; '' is the entry itself. */
  readonly at: string;
  readonly heading: string;
  readonly fields: readonly HouseField[];
  /** What a new item of the list holds; undefined where the section is no list. */
  readonly blank?: object;
}

const YES_NO = ['', 'yes', 'no'];
const text = (key: string, label: string): HouseField => ({ key, label, isText: true });
const words = (key: string, label: string): HouseField => ({ key, label, isWords: true });
const typed = (key: string, label: string): HouseField => ({ key, label });
const choice = (key: string, label: string, choices: readonly string[]): HouseField => ({ key, label, choices });

const ROLL: readonly HouseField[] = [
  text('name', 'Name'),
  typed('width', 'Width of the roll'),
  typed('length', 'Length of the roll'),
  typed('overlap', 'Overlap'),
  choice('direction', 'Strips along the', ['', 'length', 'width']),
  typed('thickness', 'Thickness'),
  typed('price', 'Price of a roll'),
];

export const HOUSE_SECTIONS: readonly HouseSection[] = [
  {
    at: '',
    heading: 'Job',
    fields: [
      choice('units', 'Units', ['us', 'metric']),
      text('currency', 'Currency sign'),
      words('rooms', 'Rooms'),
      choice('shareOffcuts', 'Share offcuts between rooms', YES_NO),
    ],
  },
  {
    at: 'floors',
    heading: 'Product',
    blank: BLANK_FLOOR_TERMS,
    fields: [
      text('product', 'Product'),
      typed('misCuts', 'Mis-cuts, per cent'),
      typed('keep', 'Planks to keep for repairs'),
      choice('underlay', 'Underlay', ['', 'laid', 'attached', 'none']),
      choice('film', 'Film', YES_NO),
      choice('fastening', 'Fastening', ['', 'floating', 'glued', 'nailed']),
      typed('acclimatise', 'Hours to acclimatise'),
      text('flatness', 'Flatness asked for'),
      typed('species', 'Species or coefficient'),
      typed('moisture', 'Moisture of the planks'),
    ],
  },
  { at: 'underlay', heading: 'Underlay', fields: ROLL },
  { at: 'film', heading: 'Film', fields: ROLL },
  {
    at: 'tape',
    heading: 'Tape',
    fields: [
      text('name', 'Name'),
      typed('length', 'Length of the roll'),
      typed('allowance', 'Allowance, per cent'),
      typed('price', 'Price of a roll'),
    ],
  },
  {
    at: 'trims',
    heading: 'Trim',
    blank: BLANK_TRIM,
    fields: [
      text('name', 'Name'),
      words('rooms', 'Rooms'),
      choice('buy', 'Bought or put back', ['', 'new', 'put back']),
      typed('stockLength', 'Length of a stick'),
      typed('kerf', 'Kerf'),
      typed('thickness', 'Thickness'),
      typed('height', 'Height'),
      choice('aroundCutouts', 'Around cut-outs', YES_NO),
      typed('spare', 'Spare sticks'),
      typed('price', 'Price of a stick'),
    ],
  },
  {
    at: 'transitions',
    heading: 'Bar',
    blank: BLANK_TRANSITION,
    fields: [text('kind', 'Kind'), typed('stockLength', 'Length'), typed('price', 'Price of a length')],
  },
  {
    at: 'doorways',
    heading: 'Doorway',
    blank: BLANK_DOORWAY_WORK,
    fields: [
      text('room', 'Room'),
      typed('doorway', 'Doorway number'),
      text('neighbour', 'Neighbour'),
      typed('neighbourHeight', 'Neighbouring floor above the subfloor'),
      choice('soft', 'Neighbour is carpet', YES_NO),
      text('transition', 'Bar'),
      typed('doorBottom', 'Underside of the door above the subfloor'),
      typed('thresholdTop', 'Top of the threshold above the subfloor'),
    ],
  },
  {
    at: 'appliances',
    heading: 'Appliance',
    blank: BLANK_APPLIANCE,
    fields: [text('name', 'Name'), text('room', 'Room'), typed('opening', 'Opening'), typed('height', 'Least height')],
  },
  {
    at: 'stairs',
    heading: 'Stair',
    blank: BLANK_STAIR,
    fields: [
      text('name', 'Name'),
      text('room', 'Room'),
      choice('floorAt', 'New floor at the', ['', 'foot', 'head']),
      typed('riser', 'Riser there, from the subfloor'),
      typed('others', 'Other risers'),
    ],
  },
  {
    at: 'spacers',
    heading: 'Spacers',
    fields: [typed('apart', 'One every'), typed('perPack', 'In a pack'), typed('price', 'Price of a pack')],
  },
  {
    at: 'extras',
    heading: 'Item',
    blank: BLANK_EXTRA,
    fields: [text('name', 'Name'), typed('quantity', 'Quantity'), text('unit', 'Unit'), typed('price', 'Price of one')],
  },
  {
    at: 'site',
    heading: 'House',
    fields: [
      choice('subfloor', 'Subfloor', ['', 'wood', 'concrete']),
      typed('subfloorMoisture', 'Moisture of the subfloor'),
      typed('temperature', 'Temperature'),
      typed('humidityLow', 'Driest air, per cent'),
      typed('humidityHigh', 'Dampest air, per cent'),
      typed('builtYear', 'Built in'),
      typed('doorClearance', 'Air under doors'),
    ],
  },
  {
    at: 'labour',
    heading: 'Work',
    blank: BLANK_LABOUR,
    fields: [
      text('work', 'Work'),
      choice('by', 'Rate is for', ['', 'area', 'piece', 'hour', 'trim', 'door', 'job']),
      typed('rate', 'Rate'),
    ],
  },
  {
    at: 'pace',
    heading: 'Minutes',
    fields: [
      typed('perRoom', 'a room'),
      typed('perRow', 'a row'),
      typed('perCut', 'a cut'),
      typed('perNotch', 'a notch or angled cut'),
      typed('perDoorway', 'a doorway'),
    ],
  },
  {
    at: 'terms',
    heading: 'Terms',
    fields: [
      typed('tax', 'Tax, per cent'),
      choice('taxOn', 'Tax on', ['', 'materials', 'price']),
      typed('margin', 'Margin, per cent'),
      choice('marginOf', 'Margin of', ['', 'cost', 'price']),
    ],
  },
  {
    at: 'schedule',
    heading: 'Dates',
    fields: [
      text('startDate', 'Start'),
      typed('hoursPerDay', 'Hours a day'),
      typed('people', 'People'),
      typed('deliveryDays', 'Days to delivery'),
    ],
  },
  {
    at: 'homeowner',
    heading: 'Homeowner',
    fields: [
      text('title', 'Title'),
      text('homeowner', 'Name'),
      text('place', 'Place'),
      text('layer', 'Floor layer'),
      choice('showPrice', 'Show the price', YES_NO),
      text('validUntil', 'Price valid until'),
      words('prepare', 'To prepare'),
      words('notIncluded', 'Not included'),
      words('remarks', 'Remarks'),
    ],
  },
];

/** Label of a field in the tab: `Trim 2, Kerf`; `Underlay, Thickness`. */
export function houseLabel(section: HouseSection, field: HouseField, itemNumber: number): string {
  const item = section.blank ? `${section.heading} ${itemNumber}` : section.heading;
  return `${item}, ${field.label}`;
}
