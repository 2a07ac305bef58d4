/** How the fields of a room entry are shown in the form: their short labels, what may stand there, words of help. */

import type { Units } from '../geometry/length';
import { LENGTH_RULES, SPARE_RULE } from '../layout/rules';
import { bareUnitName, lengthText } from '../takeoff/lengthText';
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
const plank = field('plank');
const count = field('count');
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
    room('length', 'Length'),
    room('width', 'Width'),
    room('fromLeft', 'From the left', { blank: '0' }),
    room('fromNear', 'From the near side', { blank: '0' }),
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
    count('wall', 'From wall number'),
    room('along', 'Along the wall', { blank: '0' }),
    room('off', 'Off the wall', { blank: '0' }),
    room('length', 'Length or diameter'),
    room('depth', 'Depth'),
  ],
};

/** Doorways, and rooms behind them. */
export const DOORWAYS: FormList = {
  list: 'doorways',
  heading: 'Doorway #',
  item: 'doorway',
  fields: [
    count('wall', 'In wall number'),
    room('along', 'Along the wall', { blank: '0' }),
    room('width', 'Width'),
    room('depth', 'Floor runs in by', { blank: '0' }),
    field('choice')('floor', 'The floor', {
      choices: pairs([
        ['transition', 'ends under the door'],
        ['goes on', 'goes on into the next room'],
        ['stays shut', 'stays out: door shut for good'],
      ]),
      isWide: true,
    }),
    words('leadsTo', 'Goes on into room', { isWide: true, blank: 'if laid as one floor', offers: 'room-names' }),
    count('itsDoorway', 'Its doorway there', { blank: '1' }),
    room('wallThickness', 'Wall thickness', { blank: 'both depths' }),
  ],
};

/** The planks and their box. */
export const PRODUCT: readonly FormField[] = [
  words('name', 'Product', { isWide: true, blank: 'as on the box' }),
  field('choice')('kind', 'Kind of floor', {
    choices: pairs([
      ['laminate', 'laminate'],
      ['engineered wood', 'engineered wood'],
      ['solid wood', 'solid wood'],
      ['rigid vinyl', 'rigid vinyl'],
    ]),
    isWide: true,
  }),
  plank('plankLength', 'Plank length'),
  plank('plankWidth', 'Plank width'),
  plank('thickness', 'Thickness', { blank: 'if known' }),
  count('planksPerBox', 'Planks in a box', { blank: 'or the next' }),
  field('area')('boxCoverage', 'Box covers', { blank: 'either will do' }),
  field('money')('pricePerBox', 'Price of a box', { blank: 'if known' }),
];

/** Which way to lay and where to begin. */
export const LAYING: readonly FormField[] = [
  field('choice or own')('layDirection', 'Rows run', {
    choices: pairs([
      ['', 'along the length'],
      ['width', 'along the width'],
      ['best', 'whichever way is best'],
    ]),
    own: { words: 'along a wall, or at an angle', label: 'Wall or degrees', use: 'words' },
    help: 'Such as wall 3, or 45: degrees anticlockwise from the length.',
    isWide: true,
  }),
  field('choice')('startSide', 'First row lies at', {
    choices: pairs([
      ['', 'the near side'],
      ['far', 'the far side'],
      ['middle', 'the middle, rows both ways'],
      ['best', 'whichever is best'],
    ]),
    isWide: true,
  }),
  field('choice or own')('firstRow', 'First row is', {
    choices: pairs([
      ['', 'a full plank, unless the last is a sliver'],
      ['best', 'whichever width is best'],
    ]),
    own: { words: 'ripped to a width of my own', label: 'Width of the first row', use: 'plank' },
    isWide: true,
  }),
  field('choice')('reuseStrips', 'Strips ripped off the first row', {
    choices: pairs([
      ['', 'may serve in the last'],
      ['no', 'are waste'],
    ]),
    isWide: true,
  }),
];

const RULE_LABELS: Readonly<Record<(typeof LENGTH_RULES)[number]['key'], string>> = {
  expansionGap: 'Expansion gap',
  minStagger: 'Least stagger',
  minPiece: 'Shortest piece',
  minRip: 'Narrowest rip',
  kerf: 'Kerf of the saw',
  alignedDistance: 'Aligned joints under',
  markingStep: 'Marking step',
};

/** The rules that have defaults, those shown in the units of the form. */
export function ruleFields(units: Units): readonly FormField[] {
  const lengths = LENGTH_RULES.map((rule) =>
    plank(rule.key, RULE_LABELS[rule.key], {
      blank: lengthText(units === 'us' ? rule.us : rule.metric, units, 'piece'),
    }),
  );
  const span = units === 'us' ? '10 ft' : 'metre';
  return [
    ...lengths,
    count('spare', capital(`${SPARE_RULE} planks`), { blank: '0' }),
    room('longestAlong', 'Longest along rows', { blank: 'by kind' }),
    room('longestAcross', 'Longest across', { blank: 'by kind' }),
    field('gap by span')('gapBySpan', `Gap for each ${span} across`, { blank: 'none' }),
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

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
