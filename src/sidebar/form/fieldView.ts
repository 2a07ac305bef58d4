/** One field of the form on the page: its label, where to type or choose, its help, and the place of its problems. */
import type { Units } from '../../geometry/length';
import type { Typed } from '../../takeoff/entry';
import type { FieldUse } from '../../takeoff/fieldUse';
import { element } from '../parts/dom';
import { type Choice, type FormField, unitOf } from './fields';

/** What the form tells when a person works in it. */
export interface FieldEvents {
  /** Something was typed or chosen. `isChoice`: which fields are shown may depend on it. */
  changed(path: string, value: string, isChoice: boolean): void;
  /** The field was left. */
  left(path: string): void;
  /** A person wants to type a choice of their own, or takes that back. */
  ownChosen(path: string, isOwn: boolean): void;
}

/** Which field it is, and what stands in it. */
export interface FieldPlace {
  readonly path: string;
  readonly value: Typed;
  readonly units: Units;
  /** Whether the person has chosen to type a choice of their own. */
  readonly isOwn: boolean;
}

/** Id of the element a field is typed into. */
export function fieldId(path: string): string {
  return `field-${path}`;
}

/** Id of the list of problems of a field or section. */
export function problemId(path: string): string {
  return `problem-${path}`;
}

/** A field with its label, as one block. */
export function fieldBlock(field: FormField, place: FieldPlace, events: FieldEvents): HTMLElement {
  const { path, value } = place;
  const block = element('div', { class: field.isWide ? 'field wide' : 'field', 'data-path': path });
  if (field.own) block.append(...choiceOrOwn(field, place, events));
  else if (field.choices)
    block.append(...labelled(field, place, choiceBox(path, field.choices, String(value), events)));
  else block.append(...labelled(field, place, textBox(path, value, field, events)));
  block.append(problemBox(path));
  return block;
}

/** Where the problems of a field or section are told. */
export function problemBox(path: string): HTMLElement {
  return element('div', { class: 'problems', id: problemId(path), hidden: true });
}

/** A choice of which all are seen at once. */
export function radioGroup(
  path: string,
  legend: string,
  choices: readonly Choice[],
  value: string,
  events: FieldEvents,
): HTMLElement {
  const rows = choices.map((choice, i) => {
    const isChosen = choice.value === value;
    // The field's id is that of the chosen one, so that the way to the field leads there.
    const id = isChosen ? fieldId(path) : `${fieldId(path)}-${i}`;
    const input = element('input', { type: 'radio', name: path, id, value: choice.value, checked: isChosen });
    input.addEventListener('change', () => events.changed(path, choice.value, true));
    return element('div', 'radio', input, element('label', { for: id }, choice.words));
  });
  return element('fieldset', 'choices', element('legend', {}, legend), ...rows, problemBox(path));
}

function labelled(field: FormField, place: FieldPlace, box: HTMLElement): HTMLElement[] {
  const label = element('label', { for: box.id }, ...labelWords(field.label, field.use, place.units));
  if (!field.help) return [label, box];
  return [label, box, helpUnder(box, place.path, field.help)];
}

function labelWords(label: string, use: FieldUse, units: Units): (Node | string)[] {
  const unit = unitOf(use, units);
  return unit === '' ? [label] : [`${label} `, element('span', 'unit', `(${unit})`)];
}

function helpUnder(box: HTMLElement, path: string, help: string): HTMLElement {
  const id = `help-${path}`;
  box.setAttribute('data-help', id);
  box.setAttribute('aria-describedby', id);
  return element('p', { class: 'help', id }, help);
}

/** Takes text of any length: what is pasted is never cut short unsaid, and what is too long is told at the field. */
function textBox(
  path: string,
  value: Typed,
  { use, blank = '', offers = false }: Pick<FormField, 'use' | 'blank'> & { readonly offers?: string | false },
  events: FieldEvents,
): HTMLInputElement {
  const box = element('input', {
    type: 'text',
    id: fieldId(path),
    value: String(value),
    placeholder: blank,
    list: offers,
    autocomplete: 'off',
    spellcheck: 'false',
    autocapitalize: 'off',
    inputmode: use === 'count' || use === 'wall' ? 'numeric' : 'text',
  });
  box.addEventListener('input', () => events.changed(path, box.value, false));
  box.addEventListener('blur', () => events.left(path));
  return box;
}

function choiceBox(path: string, choices: readonly Choice[], value: string, events: FieldEvents): HTMLElement {
  const box = selectBox(fieldId(path), known(choices, value), value);
  box.addEventListener('change', () => events.changed(path, box.value, true));
  return box;
}

function selectBox(id: string, choices: readonly Choice[], value: string): HTMLSelectElement {
  const options = choices.map((choice) =>
    element('option', { value: choice.value, selected: choice.value === value }, choice.words),
  );
  return element('select', { id }, ...options);
}

/** A saved room may hold a choice that the form does not offer under that name, such as a default said outright. */
function known(choices: readonly Choice[], value: string): readonly Choice[] {
  return choices.some((choice) => choice.value === value) ? choices : [...choices, { value, words: value }];
}

const OWN = 'own';

function choiceOrOwn(field: FormField, place: FieldPlace, events: FieldEvents): HTMLElement[] {
  const { path, value, units } = place;
  const { choices = [], own, use } = field;
  const isOwn = own !== undefined && (place.isOwn || !choices.some((choice) => choice.value === value));
  const offered = own ? [...choices, { value: OWN, words: own.words }] : choices;
  const box = selectBox(`${fieldId(path)}-choice`, offered, isOwn ? OWN : String(value));
  box.addEventListener('change', () => {
    if (box.value === OWN) return events.ownChosen(path, true);
    events.ownChosen(path, false);
    events.changed(path, box.value, true);
  });
  const label = element('label', { for: box.id }, field.label);
  if (!isOwn || !own) {
    box.id = fieldId(path);
    label.htmlFor = box.id;
    return [label, box];
  }
  const typed = textBox(path, value, { use }, events);
  const ownLabel = element('label', { for: typed.id, class: 'own' }, ...labelWords(own.label, use, units));
  const parts = [label, box, ownLabel, typed];
  return field.help ? [...parts, helpUnder(typed, path, field.help)] : parts;
}
