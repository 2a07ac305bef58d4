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

/** A field, with what not every field has in `more`; a bundle leaves out those that nothing asks for. */
// @__NO_SIDE_EFFECTS__
export const field = <
  const Key extends string,
  const Use extends FieldUse,
  const More extends Omit<Partial<EntryField>, 'key' | 'label' | 'use'> = Record<never, never>,
>(
  key: Key,
  label: string,
  use: Use,
  more?: More,
) => ({ key, label, use, ...more }) as { readonly key: Key; readonly label: string; readonly use: Use } & More;

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
    field('name', ROOM_LABEL, 'words', { formLabel: 'Room name', isWide: true }),
    field('units', 'Units', 'choice', {
      choices: [
        ['us', 'Feet and inches'],
        ['metric', 'Metres and millimetres'],
      ],
    }),
  ],
} as const satisfies EntrySection;

export const SHAPE_KIND_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [
    field('kind', 'Measured as', 'choice', {
      formLabel: 'How was it measured?',
      choices: [
        ['rectangle', 'Length and width'],
        ['four walls', 'Four walls and a diagonal'],
        ['walls in order', 'Walls in order, with turns'],
        ['rectangles', 'Rectangles added and taken away'],
      ],
    }),
  ],
} as const satisfies EntrySection;

/** The ways to measure, the simplest first. */
export const SHAPE_KINDS = SHAPE_KIND_FIELDS.fields[0].choices.map(([kind]) => kind);

export const RECTANGLE_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [field('length', 'Length', 'room!'), field('width', 'Width', 'room!')],
} as const satisfies EntrySection;

export const WALL_FIELDS = {
  at: 'shape.walls',
  isList: true,
  fields: [
    // May be blank only where diagonals hold both its corners.
    field('length', 'Wall #', 'room', { formLabel: 'Length' }),
    field('turn', 'Turn after wall #', 'turn', { formLabel: 'Turn at its end', usual: 'R', hint: 'R, L or degrees' }),
  ],
} as const satisfies EntrySection;

/** Distances between corners, for a room out of square. Corner 1 is where wall 1 starts. */
export const CORNER_DIAGONAL_FIELDS = {
  at: 'shape.diagonals',
  isList: true,
  fields: [
    field('from', 'Diagonal #, from corner', 'corner'),
    field('to', 'Diagonal #, to corner', 'corner'),
    field('length', 'Diagonal #, length', 'room!', { isWide: true }),
  ],
} as const satisfies EntrySection;

export const DIAGONAL_FIELDS = {
  at: 'shape',
  isList: false,
  fields: [
    field('diagonal', 'Diagonal from wall 1 start to wall 2 end', 'room!', {
      formLabel: 'Diagonal',
      help: 'From corner 1, where wall 1 starts, to corner 3.',
      isWide: true,
    }),
    field('otherDiagonal', 'Other diagonal', 'room', {
      hint: 'if measured',
      help: 'From corner 2 to corner 4.',
      isWide: true,
    }),
  ],
} as const satisfies EntrySection;

export const RECTANGLES_FIELDS = {
  at: 'shape.rectangles',
  isList: true,
  fields: [
    field('change', 'Rectangle #', 'choice', {
      formLabel: 'This one is',
      choices: [
        ['add', 'added'],
        ['take away', 'taken away'],
      ],
      isWide: true,
    }),
    field('fromLeft', 'Rectangle #, from left', 'offset', { blank: 0 }),
    field('fromNear', 'Rectangle #, from near', 'offset', { blank: 0 }),
    field('length', 'Rectangle #, length', 'room!'),
    field('width', 'Rectangle #, width', 'room!'),
  ],
} as const satisfies EntrySection;

/** Where a wall leaves the straight line between its corners; several places of one wall are several items. */
export const BOW_FIELDS = {
  at: 'bows',
  isList: true,
  fields: [
    field('kind', 'Bow #', 'choice', {
      formLabel: 'Measured as',
      choices: [
        ['place', 'off a straight line, at one place'],
        ['curve', 'a curve, by its rise in the middle'],
      ],
      isWide: true,
    }),
    field('wall', 'Bow #, of wall number', 'wall'),
    field('way', 'Bow #, the wall lies', 'choice', {
      choices: [
        ['out', 'outwards'],
        ['in', 'into the room'],
      ],
    }),
    field('along', 'Bow #, along the wall', 'room!', { askedWhen: ['kind', 'place'] }),
    field('off', 'Bow #, off the line', 'plank!', { formLabel: 'Off the line, or rise' }),
  ],
} as const satisfies EntrySection;

export const CUTOUT_FIELDS = {
  at: 'cutouts',
  isList: true,
  fields: [
    field('kind', 'Cut-out #', 'choice', {
      formLabel: 'Shape',
      choices: [
        ['rectangle', 'rectangle'],
        ['round', 'round'],
        ['curved', 'curved front'],
        ['covered', 'floor under it: radiator, toe-kick'],
      ],
    }),
    field('wall', 'Cut-out #, from wall number', 'wall'),
    // From the start of the wall, along it, to the near side of the cut-out.
    field('along', 'Cut-out #, along the wall', 'room', {
      blank: 0,
      help: 'From the start of the wall to its near side.',
    }),
    // From the wall to the near side of the cut-out; 0 stands against the wall.
    field('off', 'Cut-out #, off the wall', 'room', {
      blank: 0,
      help: 'From the wall to its near side; 0 stands against it.',
    }),
    field('length', 'Cut-out #, length or diameter', 'room!'),
    // Of one with a curved front: at its deepest, in the middle.
    field('depth', 'Cut-out #, depth', 'room!', { askedWhen: ['kind', 'rectangle', 'curved', 'covered'] }),
    field('rise', 'Cut-out #, rise of its front', 'plank!', {
      help: 'How much deeper it is in the middle than at its sides.',
      askedWhen: ['kind', 'curved'],
    }),
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
    field('wall', 'Doorway #, in wall number', 'wall'),
    // From the start of the wall, along it, to the first jamb.
    field('along', 'Doorway #, along the wall', 'room', {
      blank: 0,
      help: 'From the start of the wall to the first jamb.',
    }),
    field('width', 'Doorway #, width', 'room!', { help: 'From jamb to jamb.' }),
    field('depth', 'Doorway #, depth', 'room', {
      blank: 0,
      most: DEEPEST_DOORWAY,
      help: 'How far the floor runs in from the face of the wall.',
      askedWhen: ['floor', 'transition', 'goes on'],
    }),
    field('leadsTo', 'Doorway #, goes on into room', 'words', {
      hint: 'if laid as one floor',
      offers: 'room-names',
      isWide: true,
      askedWhen: ['floor', 'goes on'],
    }),
    field('itsDoorway', 'Doorway #, its number there', 'count', {
      formLabel: 'Number of this doorway in that room',
      blank: 1,
      help: 'The same opening, as it is listed there.',
      askedWhen: ['floor', 'goes on'],
    }),
    field('wallThickness', 'Doorway #, wall thickness', 'room', {
      hint: 'depth here + there',
      help: 'From the face in this room to the face in the other.',
      askedWhen: ['floor', 'goes on'],
    }),
  ],
} as const satisfies EntrySection;

export const PRODUCT_FIELDS = {
  at: 'product',
  isList: false,
  fields: [
    field('name', 'Product', 'words', { hint: 'as on the box', isWide: true }),
    field('kind', 'Kind of floor', 'choice', {
      choices: [
        ['laminate', 'laminate'],
        ['engineered wood', 'engineered wood'],
        ['solid wood', 'solid wood'],
        ['rigid vinyl', 'rigid vinyl'],
      ],
      isWide: true,
    }),
    field('plankLength', 'Plank length', 'plank side', { most: LONGEST_PLANK }),
    field('plankWidth', 'Plank width', 'plank side', { most: WIDEST_PLANK }),
    field('thickness', 'Plank thickness', 'plank', { hint: 'if known' }),
    // Either of the two tells how many planks are in a box.
    field('planksPerBox', 'Planks in a box', 'count', { hint: 'or the next' }),
    field('boxCoverage', 'A box covers', 'area', { hint: 'either will do' }),
    field('pricePerBox', 'Price of a box', 'price', { hint: 'if known' }),
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
