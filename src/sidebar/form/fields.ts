/** How the fields of a room entry are shown in the form: their short labels, what may stand there, words of help. */

import type { Units } from '../../geometry/length';
import { LENGTH_RULES } from '../../layout/rules';
import {
  CUTOUT_FIELDS,
  DOORWAY_FIELDS,
  type EntrySection,
  PRODUCT_FIELDS,
  RECTANGLES_FIELDS,
  RULE_FIELDS,
} from '../../tabs/entryFields';
import { bareUnitName, lengthText } from '../../takeoff/text/lengthText';
import type { ListPath, ShapeKind } from './draft';

/** What a field holds; lengths and areas have a unit of their own when a bare number stands there. */
export type FieldUse =
  | 'words'
  | 'room'
  | 'plank'
  | 'area'
  | 'gap by span'
  | 'count'
  | 'money'
  | 'turn'
  | 'degrees'
  | 'choice'
  | 'choice or own';

/** A value that can be chosen, and the words it goes by. */
export interface Choice {
  readonly value: string;
  readonly words: string;
}

/** A field as it is shown. */
export interface FormField {
  /** Last part of its path. */
  readonly key: string;
  /** `#` stands for the number of the wall. */
  readonly label: string;
  readonly use: FieldUse;
  readonly choices?: readonly Choice[];
  /** Said below the field. */
  readonly help?: string;
  /** What a blank means, said in the field. */
  readonly blank?: string;
  /** Id of the list of words that it offers. */
  readonly offers?: string;
  /** Whether the field takes the whole width of the form. */
  readonly isWide?: true;
  /** Of a choice that may also be typed: what the field for that is called, and what it holds. */
  readonly own?: { readonly words: string; readonly label: string; readonly use: FieldUse };
}

const field =
  (use: FieldUse) =>
  (key: string, label: string, more: Partial<FormField> = {}): FormField => ({ key, label, use, ...more });
const words = field('words');
const room = field('room');

/** A field by the name it has in tabs and sentences; in a list without the number, which stands over the item. */
const fieldIn =
  (section: EntrySection) =>
  (key: string, use: FieldUse, more: Partial<FormField> = {}): FormField => ({
    key,
    label: labelIn(section, key),
    use,
    ...more,
  });
const ofRectangle = fieldIn(RECTANGLES_FIELDS);
const ofCutout = fieldIn(CUTOUT_FIELDS);
const ofDoorway = fieldIn(DOORWAY_FIELDS);
const ofProduct = fieldIn(PRODUCT_FIELDS);
const ofRules = fieldIn(RULE_FIELDS);
const pairs = (list: readonly (readonly [string, string])[]) => list.map(([value, said]) => ({ value, words: said }));

/** The tabs of a room are named after it. */
export const NAME_FIELD = words('name', 'Room name', { isWide: true });

/** Both systems. */
export const UNITS_CHOICES: readonly Choice[] = pairs([
  ['us', 'Feet and inches'],
  ['metric', 'Metres and millimetres'],
]);

/** The ways to measure, the simplest first. */
export const SHAPE_CHOICES: readonly Choice[] = pairs([
  ['rectangle', 'Length and width'],
  ['four walls', 'Four walls and a diagonal'],
  ['walls in order', 'Walls in order, with turns'],
  ['rectangles', 'Rectangles added and taken away'],
]);

/** Fields of each way to measure that are no list. */
export const SHAPE_FIELDS: Readonly<Record<ShapeKind, readonly FormField[]>> = {
  rectangle: [room('length', 'Length'), room('width', 'Width')],
  'four walls': [
    room('walls.0', 'Wall 1 (far)'),
    room('walls.1', 'Wall 2 (right)'),
    room('walls.2', 'Wall 3 (near)'),
    room('walls.3', 'Wall 4 (left)'),
    room('diagonal', 'Diagonal', { isWide: true, help: 'From the start of wall 1 to the end of wall 2.' }),
    room('otherDiagonal', 'Other diagonal', { blank: 'if measured', isWide: true }),
  ],
  'walls in order': [],
  rectangles: [],
};

/** A list of the form, each item with the same fields. */
export interface FormList {
  readonly list: ListPath;
  /** `#` stands for the number. */
  readonly heading: string;
  /** What one of them is called in the words of buttons. */
  readonly item: string;
  readonly fields: readonly FormField[];
}

/** Walls in order. */
export const WALLS: FormList = {
  list: 'shape.walls',
  heading: 'Wall #',
  item: 'wall',
  fields: [room('length', 'Length'), field('turn')('turn', 'Turn at its end', { blank: 'R, L or degrees' })],
};

/** Rectangles added and taken away. */
export const RECTANGLES: FormList = {
  list: 'shape.rectangles',
  heading: 'Rectangle #',
  item: 'rectangle',
  fields: [
    field('choice')('change', 'This one is', {
      choices: pairs([
        ['add', 'added'],
        ['take away', 'taken away'],
      ]),
      isWide: true,
    }),
    ofRectangle('length', 'room'),
    ofRectangle('width', 'room'),
    ofRectangle('fromLeft', 'room', { blank: '0' }),
    ofRectangle('fromNear', 'room', { blank: '0' }),
  ],
};

/** What gets no floor. */
export const CUTOUTS: FormList = {
  list: 'cutouts',
  heading: 'Cut-out #',
  item: 'cut-out',
  fields: [
    field('choice')('kind', 'Shape', {
      choices: pairs([
        ['rectangle', 'rectangle'],
        ['round', 'round'],
      ]),
    }),
    ofCutout('wall', 'count'),
    ofCutout('along', 'room', { blank: '0' }),
    ofCutout('off', 'room', { blank: '0' }),
    ofCutout('length', 'room'),
    ofCutout('depth', 'room'),
  ],
};

/** Doorways, and rooms behind them. */
export const DOORWAYS: FormList = {
  list: 'doorways',
  heading: 'Doorway #',
  item: 'doorway',
  fields: [
    ofDoorway('wall', 'count'),
    ofDoorway('along', 'room', { blank: '0' }),
    ofDoorway('width', 'room'),
    ofDoorway('depth', 'room', { blank: '0' }),
    ofDoorway('floor', 'choice', {
      choices: pairs([
        ['transition', 'ends under the door'],
        ['goes on', 'goes on into the next room'],
        ['stays shut', 'stays out: door shut for good'],
      ]),
      isWide: true,
    }),
    ofDoorway('leadsTo', 'words', { isWide: true, blank: 'if laid as one floor', offers: 'room-names' }),
    ofDoorway('itsDoorway', 'count', { blank: '1' }),
    ofDoorway('wallThickness', 'room', { blank: 'both depths' }),
  ],
};

/** The planks and their box. */
export const PRODUCT: readonly FormField[] = [
  ofProduct('name', 'words', { isWide: true, blank: 'as on the box' }),
  ofProduct('kind', 'choice', {
    choices: pairs([
      ['laminate', 'laminate'],
      ['engineered wood', 'engineered wood'],
      ['solid wood', 'solid wood'],
      ['rigid vinyl', 'rigid vinyl'],
    ]),
    isWide: true,
  }),
  ofProduct('plankLength', 'plank'),
  ofProduct('plankWidth', 'plank'),
  ofProduct('thickness', 'plank', { blank: 'if known' }),
  ofProduct('planksPerBox', 'count', { blank: 'or the next' }),
  ofProduct('boxCoverage', 'area', { blank: 'either will do' }),
  ofProduct('pricePerBox', 'money', { blank: 'if known' }),
];

/** Which way to lay and where to begin. */
export const LAYING: readonly FormField[] = [
  ofRules('layDirection', 'choice or own', {
    choices: pairs([
      ['', 'along the length'],
      ['width', 'along the width'],
      ['best', 'whichever way is best'],
    ]),
    own: { words: 'along a wall, or at an angle', label: 'Wall or degrees', use: 'words' },
    help: 'Such as wall 3, or 45: degrees anticlockwise from the length.',
    isWide: true,
  }),
  ofRules('startSide', 'choice', {
    choices: pairs([
      ['', 'at the near side'],
      ['far', 'at the far side'],
      ['middle', 'in the middle, rows both ways'],
      ['best', 'wherever is best'],
    ]),
    isWide: true,
  }),
  ofRules('firstRow', 'choice or own', {
    choices: pairs([
      ['', 'a full plank, unless the last is a sliver'],
      ['best', 'whichever width is best'],
    ]),
    own: { words: 'ripped to a width of my own', label: 'My own width', use: 'plank' },
    isWide: true,
  }),
  ofRules('reuseStrips', 'choice', {
    choices: pairs([
      ['', 'where they serve'],
      ['no', 'no: they are waste'],
    ]),
    isWide: true,
  }),
];

/** The rules that have defaults, those shown in the units of the form. */
export function ruleFields(units: Units): readonly FormField[] {
  const lengths = LENGTH_RULES.map((rule) =>
    ofRules(rule.key, 'plank', { blank: lengthText(units === 'us' ? rule.us : rule.metric, units, 'piece') }),
  );
  const span = units === 'us' ? '10 ft' : 'metre';
  return [
    ...lengths,
    ofRules('spare', 'count', { blank: '0' }),
    ofRules('longestAlong', 'room', { blank: 'by kind', isWide: true }),
    ofRules('longestAcross', 'room', { blank: 'by kind', isWide: true }),
    ofRules('gapBySpan', 'gap by span', {
      blank: 'none',
      isWide: true,
      help: `For each ${span} of floor across the rows, where that is more than the expansion gap.`,
    }),
  ];
}

/** `ft`, `m`, `in`, `mm`, `sq ft`, `m²`: what a bare number in the field is measured in; '' for other fields. */
export function unitOf(use: FieldUse, units: Units): string {
  if (use === 'area') return units === 'us' ? 'sq ft' : 'm²';
  if (use === 'degrees') return units === 'us' ? '°F' : '°C';
  if (use === 'gap by span') return units === 'us' ? 'in' : 'mm';
  if (use !== 'room' && use !== 'plank') return '';
  return { feet: 'ft', metres: 'm', inches: 'in', millimetres: 'mm' }[bareUnitName(use, units)];
}

function labelIn({ fields }: EntrySection, key: string): string {
  const { label } = fields.filter((known) => known.key === key)[0];
  const own = label.replace(/^.*#, /, '');
  return own.charAt(0).toUpperCase() + own.slice(1);
}
