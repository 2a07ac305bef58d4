/**
 * Every field of a room entry, declared once, in the order in which it is shown: what it is called, how it is read, what
 * may stand there. The types of the entry, the form, the check of what comes from outside, the reader, the `Rooms` tab and
 * room files follow from here.
 */
import { RULES, type Rule } from '../layout/rules';
import type { FieldUse } from './fieldUse';
import { DEEPEST_DOORWAY, LONGEST_PLANK, WIDEST_PLANK } from './reading/limits';

export interface EntryField extends Omit<Rule, 'use' | 'blank' | 'inRange' | 'isLaying' | 'source'> {
  /** What a person reads; `#` stands for the number of the wall, cut-out or whatever it belongs to. */
  readonly label: string;
  readonly use: FieldUse;
  /** As of a rule, or the words that a blank stands for. */
  readonly blank?: Rule['blank'] | string;
  /** What a new item holds; without it the first choice, or nothing. */
  readonly usual?: string;
  /** Id of the list of words that the form offers. */
  readonly offers?: string;
  /** Only asked while another field of the same item holds one of these. */
  readonly askedWhen?: readonly [key: string, ...values: string[]];
}

/** Fields that stand together in an entry. */
export interface EntrySection {
  /** Where in the entry: '' is the entry itself. */
  readonly at:
    | ''
    | 'shape'
    | 'shape.walls'
    | 'shape.diagonals'
    | 'shape.rectangles'
    | 'bows'
    | 'cutouts'
    | 'doorways'
    | 'product'
    | 'rules';
  /** Whether a list of such fields stands there, numbered from 1. */
  readonly isList: boolean;
  readonly fields: readonly EntryField[];
}

export const ROOM_LABEL = 'Room';

export const NAME_FIELDS = {
  at: '',
  isList: false,
  fields: [
    { key: 'name', label: ROOM_LABEL, formLabel: 'Room name', use: 'words', isWide: true },
    {
      key: 'units',
      label: 'Units',
      use: 'choice',
      choices: [
        ['us', 'Feet and inches'],
        ['metric', 'Metres and millimetres'],
      ],
    },
  ],
} as const satisfies EntrySection;

export const SHAPE_KIND_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [
    {
      key: 'kind',
      label: 'Measured as',
      formLabel: 'How was it measured?',
      use: 'choice',
      choices: [
        ['rectangle', 'Length and width'],
        ['four walls', 'Four walls and a diagonal'],
        ['walls in order', 'Walls in order, with turns'],
        ['rectangles', 'Rectangles added and taken away'],
      ],
    },
  ],
} as const satisfies EntrySection;

/** The ways to measure, the simplest first. */
export const SHAPE_KINDS = SHAPE_KIND_FIELDS.fields[0].choices.map(([kind]) => kind);

export const RECTANGLE_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [
    { key: 'length', label: 'Length', use: 'room!' },
    { key: 'width', label: 'Width', use: 'room!' },
  ],
} as const satisfies EntrySection;

export const WALL_FIELDS = {
  at: 'shape.walls',
  isList: true,
  fields: [
    // May be blank only where diagonals hold both its corners.
    { key: 'length', label: 'Wall #', formLabel: 'Length', use: 'room' },
    {
      key: 'turn',
      label: 'Turn after wall #',
      formLabel: 'Turn at its end',
      use: 'turn',
      usual: 'R',
      hint: 'R, L or degrees',
    },
  ],
} as const satisfies EntrySection;

/** Distances between corners, for a room out of square. Corner 1 is where wall 1 starts. */
export const CORNER_DIAGONAL_FIELDS = {
  at: 'shape.diagonals',
  isList: true,
  fields: [
    { key: 'from', label: 'Diagonal #, from corner', use: 'corner' },
    { key: 'to', label: 'Diagonal #, to corner', use: 'corner' },
    { key: 'length', label: 'Diagonal #, length', use: 'room!', isWide: true },
  ],
} as const satisfies EntrySection;

export const DIAGONAL_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [
    {
      key: 'diagonal',
      label: 'Diagonal from wall 1 start to wall 2 end',
      formLabel: 'Diagonal',
      use: 'room!',
      help: 'From corner 1, where wall 1 starts, to corner 3.',
      isWide: true,
    },
    {
      key: 'otherDiagonal',
      label: 'Other diagonal',
      use: 'room',
      hint: 'if measured',
      help: 'From corner 2 to corner 4.',
      isWide: true,
    },
  ],
} as const satisfies EntrySection;

export const RECTANGLES_FIELDS = {
  at: 'shape.rectangles',
  isList: true,
  fields: [
    {
      key: 'change',
      label: 'Rectangle #',
      formLabel: 'This one is',
      use: 'choice',
      choices: [
        ['add', 'added'],
        ['take away', 'taken away'],
      ],
      isWide: true,
    },
    { key: 'fromLeft', label: 'Rectangle #, from left', use: 'offset', blank: 0 },
    { key: 'fromNear', label: 'Rectangle #, from near', use: 'offset', blank: 0 },
    { key: 'length', label: 'Rectangle #, length', use: 'room!' },
    { key: 'width', label: 'Rectangle #, width', use: 'room!' },
  ],
} as const satisfies EntrySection;

/** Where a wall leaves the straight line between its corners; several places of one wall are several items. */
export const BOW_FIELDS = {
  at: 'bows',
  isList: true,
  fields: [
    {
      key: 'kind',
      label: 'Bow #',
      formLabel: 'Measured as',
      use: 'choice',
      choices: [
        ['place', 'off a straight line, at one place'],
        ['curve', 'a curve, by its rise in the middle'],
      ],
      isWide: true,
    },
    { key: 'wall', label: 'Bow #, of wall number', use: 'wall' },
    {
      key: 'way',
      label: 'Bow #, the wall lies',
      use: 'choice',
      choices: [
        ['out', 'outwards'],
        ['in', 'into the room'],
      ],
    },
    { key: 'along', label: 'Bow #, along the wall', use: 'room!', askedWhen: ['kind', 'place'] },
    { key: 'off', label: 'Bow #, off the line', use: 'plank!', formLabel: 'Off the line, or rise' },
  ],
} as const satisfies EntrySection;

export const CUTOUT_FIELDS = {
  at: 'cutouts',
  isList: true,
  fields: [
    {
      key: 'kind',
      label: 'Cut-out #',
      formLabel: 'Shape',
      use: 'choice',
      choices: [
        ['rectangle', 'rectangle'],
        ['round', 'round'],
        ['curved', 'curved front'],
        ['covered', 'floor under it: radiator, toe-kick'],
      ],
    },
    { key: 'wall', label: 'Cut-out #, from wall number', use: 'wall' },
    // From the start of the wall, along it, to the near side of the cut-out.
    {
      key: 'along',
      label: 'Cut-out #, along the wall',
      use: 'room',
      blank: 0,
      help: 'From the start of the wall to its near side.',
    },
    // From the wall to the near side of the cut-out; 0 stands against the wall.
    {
      key: 'off',
      label: 'Cut-out #, off the wall',
      use: 'room',
      blank: 0,
      help: 'From the wall to its near side; 0 stands against it.',
    },
    { key: 'length', label: 'Cut-out #, length or diameter', use: 'room!' },
    // Of one with a curved front: at its deepest, in the middle.
    { key: 'depth', label: 'Cut-out #, depth', use: 'room!', askedWhen: ['kind', 'rectangle', 'curved', 'covered'] },
    {
      key: 'rise',
      label: 'Cut-out #, rise of its front',
      use: 'plank!',
      help: 'How much deeper it is in the middle than at its sides.',
      askedWhen: ['kind', 'curved'],
    },
  ],
} as const satisfies EntrySection;

export const DOORWAY_FIELDS = {
  at: 'doorways',
  isList: true,
  fields: [
    {
      // `stays shut`: no floor under the door; `transition`: the floor ends under it; `goes on`: into the next room.
      key: 'floor',
      label: 'Doorway #, floor',
      use: 'choice',
      choices: [
        ['transition', 'ends under the door'],
        ['goes on', 'goes on into the next room'],
        ['stays shut', 'no floor here'],
      ],
      isWide: true,
    },
    { key: 'wall', label: 'Doorway #, in wall number', use: 'wall' },
    // From the start of the wall, along it, to the first jamb.
    {
      key: 'along',
      label: 'Doorway #, along the wall',
      use: 'room',
      blank: 0,
      help: 'From the start of the wall to the first jamb.',
    },
    { key: 'width', label: 'Doorway #, width', use: 'room!', help: 'From jamb to jamb.' },
    {
      key: 'depth',
      label: 'Doorway #, depth',
      use: 'room',
      blank: 0,
      most: DEEPEST_DOORWAY,
      help: 'How far the floor runs in from the face of the wall.',
      askedWhen: ['floor', 'transition', 'goes on'],
    },
    {
      key: 'leadsTo',
      label: 'Doorway #, goes on into room',
      use: 'words',
      hint: 'if laid as one floor',
      offers: 'room-names',
      isWide: true,
      askedWhen: ['floor', 'goes on'],
    },
    {
      key: 'itsDoorway',
      label: 'Doorway #, its number there',
      formLabel: 'Number of this doorway in that room',
      use: 'count',
      blank: 1,
      help: 'The same opening, as it is listed there.',
      askedWhen: ['floor', 'goes on'],
    },
    {
      key: 'wallThickness',
      label: 'Doorway #, wall thickness',
      use: 'room',
      hint: 'depth here + there',
      help: 'From the face in this room to the face in the other.',
      askedWhen: ['floor', 'goes on'],
    },
  ],
} as const satisfies EntrySection;

export const PRODUCT_FIELDS = {
  at: 'product',
  isList: false,
  fields: [
    { key: 'name', label: 'Product', use: 'words', hint: 'as on the box', isWide: true },
    {
      key: 'kind',
      label: 'Kind of floor',
      use: 'choice',
      choices: [
        ['laminate', 'laminate'],
        ['engineered wood', 'engineered wood'],
        ['solid wood', 'solid wood'],
        ['rigid vinyl', 'rigid vinyl'],
      ],
      isWide: true,
    },
    { key: 'plankLength', label: 'Plank length', use: 'plank side', most: LONGEST_PLANK },
    { key: 'plankWidth', label: 'Plank width', use: 'plank side', most: WIDEST_PLANK },
    { key: 'thickness', label: 'Plank thickness', use: 'plank', hint: 'if known' },
    // Either of the two tells how many planks are in a box.
    { key: 'planksPerBox', label: 'Planks in a box', use: 'count', hint: 'or the next' },
    { key: 'boxCoverage', label: 'A box covers', use: 'area', hint: 'either will do' },
    { key: 'pricePerBox', label: 'Price of a box', use: 'price', hint: 'if known' },
  ],
} as const satisfies EntrySection;

/** The rules stand in `layout/rules.ts`. */
export const RULE_FIELDS = { at: 'rules', isList: false, fields: RULES } as const satisfies EntrySection;

/** All of them, in the order of the `Rooms` tab. */
export const ENTRY_SECTIONS: readonly EntrySection[] = [
  NAME_FIELDS,
  SHAPE_KIND_FIELDS,
  RECTANGLE_FIELDS,
  WALL_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  DIAGONAL_FIELDS,
  RECTANGLES_FIELDS,
  BOW_FIELDS,
  CUTOUT_FIELDS,
  DOORWAY_FIELDS,
  PRODUCT_FIELDS,
  RULE_FIELDS,
];

/** What a field is called, with the number of the item it belongs to. */
export function fieldLabel({ label }: EntryField, itemNumber: number): string {
  return label.replace('#', String(itemNumber));
}

/** Whether the other fields of its item leave a field anything to say. */
export function isAsked({ askedWhen }: EntryField, item: Readonly<Record<string, unknown>>): boolean {
  if (askedWhen === undefined) return true;
  const [key, ...values] = askedWhen;
  return values.includes(String(item[key]));
}
