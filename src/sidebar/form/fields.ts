/** The declared fields of a room as they are shown in the form. */

import type { Units } from '../../geometry/length';
import { RULES } from '../../layout/rules';
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  type EntryField,
  type EntrySection,
  NAME_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  SHAPE_KIND_FIELDS,
  WALL_FIELDS,
} from '../../takeoff/entryFields';
import type { FieldUse } from '../../takeoff/fieldUse';
import { countryWords } from '../../takeoff/text/countryWords';
import { bareUnitName, type LengthScale, lengthText } from '../../takeoff/text/lengthText';
import type { ListPath, ShapeKind } from './draft';

/** A value that can be chosen, and the words it goes by. */
export interface Choice {
  readonly value: string;
  readonly words: string;
}

/** A field as it is shown. */
export interface FormField {
  /** Last part of its path. */
  readonly key: string;
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
  /** Of a choice that may also be typed: the words for that, and what the field for it is called. */
  readonly own?: { readonly words: string; readonly label: string };
}

/** A declared field as the form shows it in a person's units. */
export function formField(field: EntryField, units: Units): FormField {
  const { key, use, choices, help, offers, isWide, own, hint, blank } = field;
  const usual = typeof blank === 'object' ? lengthText(blank[units === 'us' ? 0 : 1], units, 'piece') : blank;
  return {
    key,
    label: countryWords(field.formLabel ?? shortLabel(field.label), units),
    use,
    choices: choices?.filter(([, words]) => words !== '').map(([value, words]) => ({ value, words })),
    help: help && countryWords(help, units),
    blank: usual === undefined ? hint : countryWords(String(usual), units),
    offers,
    isWide,
    own,
  };
}

/** The tabs of a room are named after it. */
export const [NAME_FIELD, UNITS_FIELD] = NAME_FIELDS.fields;
export const [SHAPE_KIND_FIELD] = SHAPE_KIND_FIELDS.fields;

/** What can be chosen in a field. */
export function choicesOf(field: EntryField): readonly Choice[] {
  return formField(field, 'us').choices ?? [];
}

const SIDES = ['far', 'right', 'near', 'left'];

/** Fields of each way to measure that are no list. */
export const SHAPE_FIELDS: Readonly<Record<ShapeKind, readonly EntryField[]>> = {
  rectangle: RECTANGLE_FIELDS.fields,
  'four walls': [
    ...SIDES.map((side, i) => ({ key: `walls.${i}`, label: `Wall ${i + 1} (${side})`, use: 'room!' as const })),
    ...DIAGONAL_FIELDS.fields,
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
  readonly fields: readonly EntryField[];
}

const listOf = (heading: string, { at, fields }: EntrySection & { readonly at: ListPath }): FormList => ({
  list: at,
  heading: `${heading} #`,
  item: heading.toLowerCase(),
  fields,
});

export const WALLS = listOf('Wall', WALL_FIELDS);
/** Between corners, for a room out of square. */
export const DIAGONALS = listOf('Diagonal', CORNER_DIAGONAL_FIELDS);
export const RECTANGLES = listOf('Rectangle', RECTANGLES_FIELDS);
/** Walls that are not straight. */
export const BOWS = listOf('Bow', BOW_FIELDS);
/** What gets no floor. */
export const CUTOUTS = listOf('Cut-out', CUTOUT_FIELDS);
/** Doorways, and rooms behind them. */
export const DOORWAYS = listOf('Doorway', DOORWAY_FIELDS);

/** The planks and their box. */
export const PRODUCT: readonly EntryField[] = PRODUCT_FIELDS.fields;
const PLANKS_KEYS = ['plankLength', 'plankWidth', 'planksPerBox', 'boxCoverage'];
/** Of the product, what the plan cannot do without. */
export const PRODUCT_PLANKS = PRODUCT.filter(({ key }) => PLANKS_KEYS.includes(key));
/** Of the product, all the rest. */
export const PRODUCT_MORE = PRODUCT.filter(({ key }) => !PLANKS_KEYS.includes(key));
/** Which way to lay and where to begin. */
export const LAYING: readonly EntryField[] = RULES.filter((rule) => 'isLaying' in rule);
/** The rules that have defaults. */
export const OTHER_RULES: readonly EntryField[] = RULES.filter((rule) => !('isLaying' in rule));

/** The scale of a field that holds a length: what a bare number in it is; null for other fields. */
export function scaleOf(use: FieldUse): LengthScale | null {
  switch (use) {
    case 'room':
    case 'room!':
    case 'offset':
      return 'room';
    case 'plank':
    case 'plank!':
    case 'plank side':
    case 'step':
    case 'first row':
    case 'gap by span':
      return 'plank';
    default:
      return null;
  }
}

/** `ft`, `m`, `in`, `mm`, `sq ft`, `m²`: what a bare number in the field is measured in; '' for other fields. */
export function unitOf(use: FieldUse, units: Units): string {
  if (use === 'area') return units === 'us' ? 'sq ft' : 'm²';
  if (use === 'degrees') return units === 'us' ? '°F' : '°C';
  const scale = scaleOf(use);
  if (scale === null) return '';
  return { feet: 'ft', metres: 'm', inches: 'in', millimetres: 'mm' }[bareUnitName(scale, units)];
}

/** The name it has in tabs, without the number, which stands over the item. */
function shortLabel(label: string): string {
  const own = label.replace(/^.*#, /, '');
  return own.charAt(0).toUpperCase() + own.slice(1);
}
