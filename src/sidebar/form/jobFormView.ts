import { HOUSE_SECTIONS, type HouseSection } from '../../order/houseFields';
import { jobItems } from '../../tabs/job';
import { countryWords } from '../../takeoff/text/countryWords';
import { button, element } from '../parts/dom';
import { choicesOf, UNITS_FIELD } from './fields';
import { type FieldEvents, problemBox, radioGroup } from './fieldView';
import { type ItemEvents, itemButtons } from './itemButtons';
import { jobPath, shownValue } from './job';
import { type ChosenFrom, jobFieldBlock } from './jobFieldView';
import { namesOf } from './jobRooms';
import { isBlankPart, stateOf, unneededParts } from './jobState';
import { USUAL } from './usualLines';

/** What a person does in the form of the job. */
export interface JobFormEvents extends FieldEvents, ItemEvents {
  added(at: string): void;
  opened(at: string, isOpen: boolean): void;
  /** The usual lines of a part are asked for. */
  usualWanted(at: string): void;
}

/** What the form of the job shows. */
export interface JobFormState extends ChosenFrom {
  isOpen(at: string): boolean;
}

/** What each list of the job holds, as its section is headed. */
const LIST_HEADINGS: Readonly<Record<string, string>> = {
  floors: 'Products',
  trims: 'Trim',
  transitions: 'Bars at doorways',
  doorways: 'Doorways',
  appliances: 'Appliances',
  stairs: 'Stairs',
  extras: 'Other items',
  labour: 'Work',
  pace: 'Minutes of work',
  site: 'The house',
  alternatives: 'Alternatives to offer',
  terms: 'Tax and margin',
};

/** Ids of the fields of the job begin so: those of the room go by the same paths. */
export const JOB = 'job.';

/** What the fold of the parts goes by that these floors do not need: no place of the job. */
const UNNEEDED = 'unneeded';

/** The sections of the job, all but the first of them shut, and those that these floors do not need in one fold at the end. */
export function jobSections(state: JobFormState, events: JobFormEvents): readonly HTMLElement[] {
  const { job, rooms } = state;
  const unneeded = unneededParts(job, rooms).filter((section) => isBlankPart(section, job));
  const needed = HOUSE_SECTIONS.filter((section) => !unneeded.includes(section));
  return [
    ...needed.map((section) =>
      section.at === '' ? firstSection(section, state, events) : shutSection(section, state, events),
    ),
    ...(unneeded.length > 0 ? [unneededFold(unneeded, state, events)] : []),
  ];
}

function unneededFold(parts: readonly HouseSection[], state: JobFormState, events: JobFormEvents): HTMLElement {
  const details = element(
    'details',
    { open: state.isOpen(UNNEEDED) },
    element(
      'summary',
      {},
      element('h2', {}, 'Not needed'),
      element('span', 'state', parts.map(({ heading }) => heading.toLowerCase()).join(', ')),
    ),
    element('p', 'help', 'Said under Products, Fastening: floating, glued or nailed.'),
    ...parts.map((section) => shutSection(section, state, events)),
  );
  details.addEventListener('toggle', () => events.opened(UNNEEDED, details.open));
  return details;
}

function firstSection(section: HouseSection, state: JobFormState, events: JobFormEvents): HTMLElement {
  const { job, rooms } = state;
  const grid = (keys: readonly string[]) => {
    const fields = section.fields.filter(({ key }) => keys.includes(key));
    return itemGrid({ ...section, fields }, 0, state, events);
  };
  return element(
    'section',
    { 'aria-labelledby': 'job-heading' },
    element('h2', { id: 'job-heading' }, 'The whole job'),
    element('p', { class: 'help', id: stateId('') }, stateOf(section, job, rooms)),
    problemBox(JOB),
    radioGroup(`${JOB}units`, UNITS_FIELD.label, choicesOf(UNITS_FIELD), job.units, events),
    grid(['currency', 'rooms']),
    element('p', { class: 'help', id: 'job-rooms' }, roomsWords(namesOf(rooms))),
    grid(['shareOffcuts']),
  );
}

/** Said where there is no room to tick. */
export function roomsWords(rooms: readonly string[]): string {
  return rooms.length === 0 ? 'No room is saved yet.' : '';
}

function shutSection(section: HouseSection, state: JobFormState, events: JobFormEvents): HTMLElement {
  const { at, heading, isList } = section;
  const { job, rooms } = state;
  const items = jobItems(job, section);
  const words = (text: string) => countryWords(text, job.units);
  const title = `${words(LIST_HEADINGS[at] ?? heading)}${isList && items.length > 0 ? ` (${items.length})` : ''}`;
  const parts = items.map((_, i) => itemBlock(section, i, state, events));
  const add = isList
    ? [button(`Add: ${words(heading).toLowerCase()}`, () => events.added(at), { id: `add-${JOB}${at}` })]
    : [];
  const details = element(
    'details',
    { open: state.isOpen(at) },
    element(
      'summary',
      {},
      element('h2', {}, title),
      element('span', { class: 'state', id: stateId(at) }, stateOf(section, job, rooms)),
    ),
    problemBox(`${JOB}${at}`),
    ...parts,
    ...usualButton(section, state, events),
    ...add,
  );
  details.addEventListener('toggle', () => events.opened(at, details.open));
  return details;
}

/** Id of the words that say how far a part is. */
export function stateId(at: string): string {
  return `state-${JOB}${at}`;
}

/** While a part has no line, or no size of a roll. */
function usualButton({ at, isList }: HouseSection, { job }: JobFormState, events: JobFormEvents): HTMLElement[] {
  const words = USUAL[at];
  const part = (job as unknown as Readonly<Record<string, unknown>>)[at];
  const isBlank = isList
    ? (part as readonly unknown[]).length === 0
    : String((part as { readonly width?: unknown }).width ?? '') === '';
  if (words === undefined || !isBlank) return [];
  return [button(countryWords(words, job.units), () => events.usualWanted(at), { id: `usual-${JOB}${at}` })];
}

function itemBlock(section: HouseSection, index: number, state: JobFormState, events: JobFormEvents): HTMLElement {
  const items = jobItems(state.job, section);
  const fields = itemGrid(section, index, state, events);
  if (!section.isList) return fields;
  const name = countryWords(`${section.heading} ${index + 1}`, state.job.units);
  // By the paths of the page: the form of a room has a list of doorways too.
  const buttons = itemButtons(
    { list: `${JOB}${section.at}`, index, count: items.length, name },
    {
      removed: () => events.removed(section.at, index),
      moved: (_, __, by) => events.moved(section.at, index, by),
    },
  );
  return element('fieldset', 'item', element('legend', {}, name), fields, buttons);
}

function itemGrid(section: HouseSection, index: number, state: JobFormState, events: FieldEvents): HTMLElement {
  const { units } = state.job;
  const item = jobItems(state.job, section)[index];
  const blocks = section.fields.map((field) => {
    const path = `${JOB}${jobPath(section, index, field.key)}`;
    const value = item[field.key];
    const place = { path, value: shownValue(value), units, isOwn: false };
    return jobFieldBlock(section.at, field, value, place, state, events);
  });
  return element('div', 'grid', ...blocks);
}
