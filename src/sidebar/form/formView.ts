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
  PRODUCT_MORE,
  PRODUCT_PLANKS,
  RECTANGLES,
  SHAPE_FIELDS,
  SHAPE_KIND_FIELD,
  UNITS_FIELD,
  WALLS,
} from './fields';
import { type FieldEvents, fieldBlock, problemBox, radioGroup } from './fieldView';
import type { FormState } from './formState';
import { type ItemEvents, itemButtons } from './itemButtons';
import { FOLDS, type Fold, setWords } from './setWords';

/** What a person does in the form. */
export interface FormEvents extends FieldEvents {
  added(list: ListPath): void;
  removed(list: ListPath, index: number): void;
  moved(list: ListPath, index: number, by: -1 | 1): void;
  /** Enter was pressed in an item of a list of lines. */
  entered(list: ListPath, index: number): void;
  /** A section that can be shut was opened or shut. */
  opened(section: string, isOpen: boolean): void;
}

/** What the form shows. */
export interface ShownForm {
  readonly state: FormState;
  /** The name that the room has while none is typed. */
  readonly suggestedName: string;
  isOpen(section: Fold): boolean;
}

const LENGTHS_HELP = {
  us: `Lengths as you write them: 12' 6 1/2", 150 1/2", 3.81 m. A bare number is feet for the room, inches for planks and rules.`,
  metric: `Lengths as you write them: 3.81 m, 381 cm, 12' 6". A bare number is metres for the room, millimetres for planks and rules.`,
};
const WALLS_HELP =
  'Walls are numbered W1, W2 in the drawing. Along is measured from where a wall starts, going round to the right.';
const DIAGONALS_HELP =
  'Out of square? Add diagonals from corner to corner: a room of 6 walls needs 3 of them. Corner 1 is where wall 1 starts.';
const BOWS_HELP =
  'Stretch a string from corner to corner and measure how far the wall lies off it, at a few places along it. For a bay or a round wall, how far the curve rises in the middle.';
const RULES_HELP =
  "Blank means the value that stands there faintly: common practice. The product's own instructions come first.";
const SHAPE_HELP: Readonly<Record<Draft['kind'], string>> = {
  rectangle: 'Stand so that you face the far wall. Length is along the far and near walls, width along the sides.',
  'four walls': 'For a room out of square. Wall 1 is the far one; the others follow round to the right.',
  'walls in order':
    'Wall 1 is the far one, from left to right; the others follow round to the right. The last turn may be blank.',
  rectangles:
    'Each is placed by its near left corner, measured from any one corner you choose. Minus is to the left, or nearer.',
};

/** The sections, ready to be put into the page: the measures and the planks first, the rest a line each. */
export function formSections(shown: ShownForm, events: FormEvents): readonly HTMLElement[] {
  const { state } = shown;
  const { draft } = state;
  const words = setWords(draft, nameOf(shown));
  const fields = (under: string, list: readonly EntryField[]) => fieldGrid(under, list, shown, events);
  const parts: Readonly<Record<Fold, readonly HTMLElement[]>> = {
    shape: kindParts(shown, events),
    cutouts: [
      note(`Columns, hearths, islands: anything that gets no floor, or stands over it. ${WALLS_HELP}`),
      ...listParts(CUTOUTS, shown, events),
    ],
    doorways: [note(WALLS_HELP), ...listParts(DOORWAYS, shown, events), element('div', { id: 'as-one' })],
    laying: [fields('rules', LAYING)],
    rules: [note(RULES_HELP), fields('rules', OTHER_RULES)],
    bows: [note(BOWS_HELP), ...listParts(BOWS, shown, events)],
    product: [fields('product', PRODUCT_MORE)],
    room: nameParts(shown, events),
  };
  return [
    section('Measures', 'shape', [...measureParts(shown, events), element('p', { class: 'echo', id: 'echo' })]),
    section('Planks', 'product', [fields('product', PRODUCT_PLANKS)]),
    ...FOLDS.map((fold) => foldOf(fold, words[fold], shown.isOpen(fold), parts[fold], events)),
  ];
}

/** Brings the lines of sections up to what is set in them now. */
export function showSettings(form: HTMLElement, shown: Omit<ShownForm, 'isOpen'>): void {
  const words = setWords(shown.state.draft, nameOf(shown));
  for (const fold of FOLDS) {
    const line = form.querySelector(`[data-section="${fold}"] .set`);
    if (line && line.textContent !== words[fold]) line.textContent = words[fold];
  }
}

function nameOf({ state, suggestedName }: Omit<ShownForm, 'isOpen'>): string {
  return state.draft.name.trim() || suggestedName;
}

const FOLD_HEADINGS: Readonly<Record<Fold, string>> = {
  shape: 'Measured by',
  cutouts: 'Cut-outs',
  doorways: 'Doorways',
  laying: 'Laying',
  rules: 'Rules',
  bows: 'Bowed walls',
  product: 'Product',
  room: 'Name, units',
};
/** Sections whose problems are told in the part that is always seen. */
const TOLD_ABOVE: readonly Fold[] = ['shape', 'product'];

function foldOf(
  fold: Fold,
  words: string,
  isOpen: boolean,
  parts: readonly HTMLElement[],
  events: FormEvents,
): HTMLElement {
  const summary = element('summary', {}, element('h2', {}, FOLD_HEADINGS[fold]), ' ', element('span', 'set', words));
  const told = TOLD_ABOVE.includes(fold) ? [] : [problemBox(fold === 'room' ? '' : fold)];
  const details = element('details', { open: isOpen, 'data-section': fold }, summary, ...told, ...parts);
  details.addEventListener('toggle', () => events.opened(fold, details.open));
  return details;
}

function nameParts(shown: ShownForm, events: FormEvents): HTMLElement[] {
  const { draft, unitsNote } = shown.state;
  return [
    fieldGrid('', [NAME_FIELD], shown, events),
    radioGroup('units', UNITS_FIELD.label, choicesOf(UNITS_FIELD), draft.units, events),
    ...(unitsNote === '' ? [] : [element('p', 'units-note', unitsNote)]),
    note(LENGTHS_HELP[draft.units]),
  ];
}

/** What is measured, in the way that is chosen. */
function measureParts(shown: ShownForm, events: FormEvents): HTMLElement[] {
  const { kind } = shown.state.draft;
  if (kind === 'walls in order') return wallLines(shown, events);
  if (kind === 'rectangles') return listParts(RECTANGLES, shown, events);
  return [fieldGrid('shape', SHAPE_FIELDS[kind], shown, events)];
}

function kindParts(shown: ShownForm, events: FormEvents): HTMLElement[] {
  const { kind } = shown.state.draft;
  const diagonals = [note(DIAGONALS_HELP), ...listParts(DIAGONALS, shown, events)];
  return [
    radioGroup('shape.kind', SHAPE_KIND_FIELD.formLabel, choicesOf(SHAPE_KIND_FIELD), kind, events),
    note(SHAPE_HELP[kind]),
    ...(kind === 'walls in order' ? diagonals : []),
  ];
}

function section(heading: string, path: string, parts: readonly HTMLElement[]): HTMLElement {
  const id = `section-${path}`;
  const title = element('h2', { id, class: 'heard' }, heading);
  return element('section', { 'aria-labelledby': id }, title, problemBox(path), ...parts);
}

function note(words: string): HTMLElement {
  return element('p', 'help', words);
}

function fieldGrid(under: string, fields: readonly EntryField[], shown: ShownForm, events: FieldEvents): HTMLElement {
  const { draft, ownPaths } = shown.state;
  const blocks = fields
    .map((field) => ({ field, path: under === '' ? field.key : `${under}.${field.key}` }))
    .filter(({ field, path }) => isAsked(field, itemAt(draft, path)))
    .map(({ field, path }) => {
      const place = { path, value: valueAt(draft, path), units: draft.units, isOwn: ownPaths.has(path) };
      const made = formField(field, draft.units);
      return fieldBlock(path === 'name' ? { ...made, blank: shown.suggestedName } : made, place, events);
    });
  return element('div', 'grid', ...blocks);
}

/** The item of a list that a field belongs to; the others of its fields may leave it nothing to say. */
function itemAt(draft: Draft, path: string): Readonly<Record<string, unknown>> {
  const [list, index] = path.split('.');
  const items = list === 'bows' || list === 'cutouts' || list === 'doorways' ? draft[list] : [];
  return items[Number(index)] ?? {};
}

function listParts(list: FormList, shown: ShownForm, events: FormEvents): HTMLElement[] {
  const items = itemsAt(shown.state.draft, list.list);
  const groups = items.map((_, i) => {
    const legend = element('legend', {}, list.heading.replace('#', String(i + 1)));
    const fields = fieldGrid(`${list.list}.${i}`, list.fields, shown, events);
    return element('fieldset', 'item', legend, fields, buttonsOf(list, i, items.length, events));
  });
  return [...groups, addButton(list, events)];
}

/** Walls a line each, in the order in which they are walked; Enter goes on to the next. */
function wallLines(shown: ShownForm, events: FormEvents): HTMLElement[] {
  const items = itemsAt(shown.state.draft, WALLS.list);
  const lines = items.map((_, i) => {
    const id = `line-${WALLS.list}-${i}`;
    const name = element('span', { id, class: 'line-name' }, `W${i + 1}`);
    const fields = fieldGrid(`${WALLS.list}.${i}`, WALLS.fields, shown, events);
    const line = element('div', { class: 'line', role: 'group', 'aria-labelledby': id }, name, fields);
    line.append(buttonsOf(WALLS, i, items.length, events, true));
    fields.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      events.entered(WALLS.list, i);
    });
    return line;
  });
  return [element('div', 'lines', ...lines), addButton(WALLS, events)];
}

function buttonsOf(list: FormList, index: number, count: number, events: FormEvents, isLine = false): HTMLElement {
  const itemEvents: ItemEvents = {
    removed: (_, at) => events.removed(list.list, at),
    moved: (_, at, by) => events.moved(list.list, at, by),
  };
  return itemButtons({ list: list.list, index, count, name: `${list.item} ${index + 1}`, isLine }, itemEvents);
}

function addButton({ list, item }: FormList, events: FormEvents): HTMLElement {
  return button(`Add a ${item}`, () => events.added(list), { id: `add-${list}` });
}
