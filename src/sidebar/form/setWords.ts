/** What a section that is shut shows on its line: what is set in it. */
import type { Units } from '../../geometry/length';
import type { Typed } from '../../takeoff/entry';
import type { EntryField } from '../../takeoff/entryFields';
import type { Draft } from './draft';
import { choicesOf, formField, LAYING, OTHER_RULES, PRODUCT_MORE, SHAPE_KIND_FIELD, UNITS_FIELD } from './fields';

/** The sections that can be shut, in the order in which they stand. */
export const FOLDS = ['shape', 'cutouts', 'doorways', 'laying', 'rules', 'bows', 'product', 'room'] as const;
export type Fold = (typeof FOLDS)[number];

/** @param name of the room, typed or suggested */
export function setWords(draft: Draft, name: string): Readonly<Record<Fold, string>> {
  const { units, rules, product, bows, cutouts, doorways } = draft;
  return {
    shape: chosen(SHAPE_KIND_FIELD, draft.kind).toLowerCase(),
    cutouts: cutouts.map(({ kind }) => (kind === 'covered' ? 'floor under it' : kind)).join(', ') || 'none',
    doorways: doorways.map(({ floor, leadsTo }) => doorwayWords(floor, leadsTo)).join(', ') || 'none',
    laying: valuesOf(LAYING, rules, units).join(', ') || 'along the length, from the near side',
    rules: valuesOf(OTHER_RULES, rules, units).join(', ') || 'the usual ones',
    bows: bows.map(({ wall }) => `wall ${wall || '?'}`).join(', ') || 'none',
    product: valuesOf(PRODUCT_MORE, product, units).join(', '),
    room: `${name}, ${chosen(UNITS_FIELD, units).toLowerCase()}`,
  };
}

function doorwayWords(floor: Draft['doorways'][number]['floor'], leadsTo: string): string {
  if (floor === 'goes on') return leadsTo.trim() === '' ? 'goes on' : `goes on into ${leadsTo.trim()}`;
  return floor === 'transition' ? 'ends under the door' : 'no floor';
}

/** Fields with something in them: choices in their words, the rest with its label. */
function valuesOf(
  fields: readonly EntryField[],
  values: Readonly<Record<string, Typed>>,
  units: Units,
): readonly string[] {
  return fields.flatMap((field) => {
    const value = String(values[field.key] ?? '').trim();
    if (value === '') return [];
    const words = field.choices ? chosen(field, value) : '';
    if (words !== '') return [words];
    const { label, use } = formField(field, units);
    return [use === 'words' ? value : `${label.toLowerCase()} ${value}`];
  });
}

/** The words of a choice; the value itself where it has none of its own. */
function chosen(field: EntryField, value: string): string {
  return choicesOf(field).find((choice) => choice.value === value)?.words ?? '';
}
