/** The form of a room: its sections in the order in which a person works, its lists, and where problems are told. */

import { type EntryField, isAsked } from '../../takeoff/entryFields';
import { button, element } from '../parts/dom';
import { type Draft, itemsAt, type ListPath, valueAt } from './draft';
import {
  BOWS,
  CUTOUTS,
  choicesOf,
  DIAGONALS,
  DOORWAYS,
  type FormList,
  formField,
  LAYING,
  NAME_FIELD,
  OTHER_RULES,
  PRODUCT,
  RECTANGLES,
  SHAPE_FIELDS,
  SHAPE_KIND_FIELD,
  UNITS_FIELD,
  WALLS,
} from './fields';
import { type FieldEvents, fieldBlock, problemBox, radioGroup } from './fieldView';
import type { FormState } from './formState';
import { type ItemEvents, itemButtons } from './itemButtons';

/** What a person does in the form. */
export interface FormEvents extends FieldEvents {
  added(list: ListPath): void;
  removed(list: ListPath, index: number): void;
  moved(list: ListPath, index: number, by: -1 | 1): void;
  /** A section that can be shut was opened or shut. */
  opened(section: string, isOpen: boolean): void;
}

const LENGTHS_HELP = {
  us: `Lengths as you write them: 12' 6 1/2", 150 1/2", 3.81 m. A plain number is feet for the room, inches for planks and rules.`,
  metric: `Lengths as you write them: 3.81 m, 381 cm, 12' 6". A plain number is metres for the room, millimetres for planks and rules.`,
};
const WALLS_HELP =
  'Walls are numbered W1, W2 in the drawing. Along is measured from where a wall starts, going round to the right.';
const DIAGONALS_HELP =
  'Out of square? Add diagonals from corner to corner: a room of 6 walls needs 3 of them. Corner 1 is where wall 1 starts.';
const BOWS_HELP =
  'Stretch a string from corner to corner and measure how far the wall lies off it, at a few places along it. For a bay or a round wall, how far the curve rises in the middle.';
const SHAPE_HELP: Readonly<Record<Draft['kind'], string>> = {
  rectangle: 'Stand so that you face the far wall. Length is along the far and near walls, width along the sides.',
  'four walls': 'For a room out of square. Wall 1 is the far one; the others follow round to the right.',
  'walls in order':
    'Wall 1 is the far one, from left to right; the others follow round to the right. The last turn may be blank.',
  rectangles:
    'Each is placed by its near left corner, measured from any one corner you choose. Minus is to the left, or nearer.',
};

/** The sections, ready to be put into the page. */
export function formSections(state: FormState, events: FormEvents): readonly HTMLElement[] {
  const { draft } = state;
  const fields = (under: string, list: readonly EntryField[]) => fieldGrid(under, list, state, events);
  return [
    section('Room', '', [
      fields('', [NAME_FIELD]),
      radioGroup('units', UNITS_FIELD.label, choicesOf(UNITS_FIELD), draft.units, events),
      ...(state.unitsNote === '' ? [] : [element('p', { class: 'units-note' }, state.unitsNote)]),
      note(LENGTHS_HELP[draft.units]),
    ]),
    section('Shape', 'shape', shapeParts(state, events)),
    shut('Walls that bow or curve', 'bows', state, events, [note(BOWS_HELP), ...listParts(BOWS, state, events)]),
    section('Cut-outs', 'cutouts', [
      note(`Columns, hearths, islands: anything that gets no floor. ${WALLS_HELP}`),
      ...listParts(CUTOUTS, state, events),
    ]),
    section('Doorways', 'doorways', [
      note(WALLS_HELP),
      ...listParts(DOORWAYS, state, events),
      element('div', { id: 'as-one' }),
    ]),
    section('Product', 'product', [fields('product', PRODUCT)]),
    section('Laying', 'laying', [fields('rules', LAYING)]),
    shut('Rules', 'rules', state, events, [
      note("Blank means the value shown in grey: common practice. The product's own instructions come first."),
      fields('rules', OTHER_RULES),
    ]),
  ];
}

function shapeParts(state: FormState, events: FormEvents): HTMLElement[] {
  const { kind } = state.draft;
  const lists =
    kind === 'walls in order'
      ? [...listParts(WALLS, state, events), note(DIAGONALS_HELP), ...listParts(DIAGONALS, state, events)]
      : kind === 'rectangles'
        ? listParts(RECTANGLES, state, events)
        : [];
  return [
    radioGroup('shape.kind', SHAPE_KIND_FIELD.formLabel, choicesOf(SHAPE_KIND_FIELD), kind, events),
    note(SHAPE_HELP[kind]),
    fieldGrid('shape', SHAPE_FIELDS[kind], state, events),
    ...lists,
  ];
}

function section(heading: string, path: string, parts: readonly HTMLElement[]): HTMLElement {
  const id = `section-${path || 'room'}`;
  const title = element('h2', { id }, heading);
  return element('section', { 'aria-labelledby': id }, title, problemBox(path), ...parts);
}

function shut(
  heading: string,
  path: string,
  state: FormState,
  events: FormEvents,
  parts: readonly HTMLElement[],
): HTMLElement {
  const isOpen = state.openSections.has(path);
  const summary = element('summary', {}, element('h2', {}, heading));
  const details = element('details', { open: isOpen, 'data-section': path }, summary, problemBox(path), ...parts);
  details.addEventListener('toggle', () => events.opened(path, details.open));
  return details;
}

function note(words: string): HTMLElement {
  return element('p', { class: 'help' }, words);
}

function fieldGrid(under: string, fields: readonly EntryField[], state: FormState, events: FieldEvents): HTMLElement {
  const { draft, ownPaths } = state;
  const blocks = fields
    .map((field) => ({ field, path: under === '' ? field.key : `${under}.${field.key}` }))
    .filter(({ field, path }) => isAsked(field, itemAt(draft, path)))
    .map(({ field, path }) => {
      const place = { path, value: valueAt(draft, path), units: draft.units, isOwn: ownPaths.has(path) };
      return fieldBlock(formField(field, draft.units), place, events);
    });
  return element('div', { class: 'grid' }, ...blocks);
}

/** The item of a list that a field belongs to; the others of its fields may leave it nothing to say. */
function itemAt(draft: Draft, path: string): Readonly<Record<string, unknown>> {
  const [list, index] = path.split('.');
  const items = list === 'bows' || list === 'cutouts' || list === 'doorways' ? draft[list] : [];
  return items[Number(index)] ?? {};
}

function listParts(list: FormList, state: FormState, events: FormEvents): HTMLElement[] {
  const items = itemsAt(state.draft, list.list);
  const listEvents: ItemEvents = {
    removed: (_, index) => events.removed(list.list, index),
    moved: (_, index, by) => events.moved(list.list, index, by),
  };
  const groups = items.map((_, i) => {
    const legend = element('legend', {}, list.heading.replace('#', String(i + 1)));
    const fields = fieldGrid(`${list.list}.${i}`, list.fields, state, events);
    const place = { list: list.list, index: i, count: items.length, name: `${list.item} ${i + 1}` };
    return element('fieldset', { class: 'item' }, legend, fields, itemButtons(place, listEvents));
  });
  const add = button(`Add a ${list.item}`, () => events.added(list.list), { id: `add-${list.list}` });
  return [...groups, add];
}
