/**
 * Other units for a form in which something is typed already. No number changes its meaning: a bare one is given the
 * unit it was typed in, `12` becomes `12 ft`. Text that carries its unit stays as it is.
 */
import { TICKS_PER_FOOT, TICKS_PER_METRE, type Units } from '../../geometry/length';
import type { Typed } from '../../takeoff/entry';
import type { EntryField } from '../../takeoff/entryFields';
import type { FieldUse } from '../../takeoff/fieldUse';
import { readArea } from '../../takeoff/text/areaText';
import { type LengthScale, readOffset } from '../../takeoff/text/lengthText';
import { numberOf, numberText } from '../../takeoff/text/numberText';
import { type Draft, itemsAt, type ShapeKind, valueAt, withValue } from './draft';
import {
  BOWS,
  CUTOUTS,
  DIAGONALS,
  DOORWAYS,
  type FormList,
  LAYING,
  OTHER_RULES,
  PRODUCT,
  RECTANGLES,
  SHAPE_FIELDS,
  scaleOf,
  unitOf,
  WALLS,
} from './fields';

/** The form in other units, and what had to be said differently. */
export interface SwitchedUnits {
  readonly draft: Draft;
  /** What was given a unit, before and after; nothing when no bare number stood in the form. */
  readonly changes: readonly { readonly before: string; readonly after: string }[];
}

/** The form in other units; the ways to measure that are not chosen are taken along. */
export function withUnits(draft: Draft, units: Units): SwitchedUnits {
  if (draft.units === units) return { draft, changes: [] };
  const changes: { before: string; after: string }[] = [];
  const kinds = Object.keys(draft.shapes) as ShapeKind[];
  let whole = draft;
  for (const kind of kinds) whole = converted(withValue(whole, 'shape.kind', kind), shapeFields, units, changes);
  whole = converted(withValue(whole, 'shape.kind', draft.kind), otherFields, units, changes);
  return { draft: { ...whole, units }, changes };
}

/** `2 numbers keep their units: 12 is now 12 ft, 7.5 is now 7.5 in.` */
export function switchWords({ changes }: Pick<SwitchedUnits, 'changes'>): string {
  if (changes.length === 0) return '';
  const shown = changes.slice(0, 3).map(({ before, after }) => `${before} is now ${after}`);
  const more = changes.length > shown.length ? ', and so on' : '';
  return `What you typed keeps its units: ${shown.join(', ')}${more}.`;
}

type PlacedField = readonly [path: string, use: FieldUse];

function converted(
  draft: Draft,
  fieldsOf: (draft: Draft) => readonly PlacedField[],
  units: Units,
  changes: { before: string; after: string }[],
): Draft {
  return fieldsOf(draft).reduce((whole, [path, use]) => {
    const before = valueAt(whole, path);
    const after = withOwnUnit(before, use, draft.units, units);
    if (after === before) return whole;
    changes.push({ before: String(before), after: String(after) });
    return withValue(whole, path, after);
  }, draft);
}

function shapeFields(draft: Draft): readonly PlacedField[] {
  return [
    ...placed('shape', SHAPE_FIELDS[draft.kind]),
    ...(draft.kind === 'walls in order' ? [...inList(draft, WALLS), ...inList(draft, DIAGONALS)] : []),
    ...(draft.kind === 'rectangles' ? inList(draft, RECTANGLES) : []),
  ];
}

function otherFields(draft: Draft): readonly PlacedField[] {
  return [
    ...inList(draft, BOWS),
    ...inList(draft, CUTOUTS),
    ...inList(draft, DOORWAYS),
    ...placed('product', PRODUCT),
    ...placed('rules', [...LAYING, ...OTHER_RULES]),
  ];
}

function placed(under: string, fields: readonly EntryField[]): readonly PlacedField[] {
  return fields.map(({ key, use }) => [`${under}.${key}`, use] as const);
}

function inList(draft: Draft, { list, fields }: FormList): readonly PlacedField[] {
  return itemsAt(draft, list).flatMap((_, i) => placed(`${list}.${i}`, fields));
}

/** The same thing said so that other units do not change it. What cannot be read stays as it is. */
export function withOwnUnit(typed: Typed, use: FieldUse, from: Units, to: Units): Typed {
  if (use === 'gap by span') return gapFor(typed, from, to);
  if (use === 'degrees') return degreesFor(typed, from, to);
  const sizeOf = sizeReader(use);
  if (!sizeOf) return typed;
  const size = sizeOf(typed, from);
  if (size === null || sizeOf(typed, to) === size) return typed;
  const withUnit = `${String(typed).trim()} ${unitOf(use, from)}`;
  return sizeOf(withUnit, to) === size ? withUnit : typed;
}

function sizeReader(use: FieldUse): ((typed: Typed, units: Units) => number | null) | null {
  const scale = scaleOf(use);
  if (scale !== null) return (typed, units) => ticksOf(typed, scale, units);
  if (use !== 'area') return null;
  return (typed, units) => {
    const read = readArea(typed, units);
    return read.ok ? numberOf(read.area.count) * read.area.unit : null;
  };
}

function ticksOf(typed: Typed, scale: LengthScale, units: Units): number | null {
  const read = readOffset(typed, scale, units);
  return read.ok ? read.ticks : null;
}

/** A gap for every 10 ft is another for every metre: it is worked out, to a hundredth of a millimetre. */
function gapFor(typed: Typed, from: Units, to: Units): Typed {
  const ticks = ticksOf(typed, 'plank', from);
  if (ticks === null || ticks === 0) return typed;
  const span = (units: Units) => (units === 'us' ? 10 * TICKS_PER_FOOT : TICKS_PER_METRE);
  const millimetres = (ticks * 1000 * span(to)) / (span(from) * TICKS_PER_METRE);
  return `${numberText(millimetres, 2)} mm`;
}

/** Degrees Fahrenheit are Celsius x 9/5 + 32; to a tenth. */
function degreesFor(typed: Typed, from: Units, to: Units): Typed {
  const text = String(typed).trim();
  if (from === to || !/^-?\d+(?:\.\d+)?$/.test(text)) return typed;
  const degrees = Number(text);
  const other = to === 'metric' ? ((degrees - 32) * 5) / 9 : (degrees * 9) / 5 + 32;
  return numberText(other, 1);
}
