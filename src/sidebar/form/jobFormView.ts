/** The form of the whole job on the page, made from the table of its fields. */
import type { Units } from '../../geometry/length';
import type { HouseEntry } from '../../order/houseEntry';
import { HOUSE_SECTIONS, type HouseSection } from '../../order/houseFields';
import { wordsText } from '../../order/words';
import { button, element } from '../parts/dom';
import { choicesOf, UNITS_FIELD } from './fields';
import { type FieldEvents, fieldBlock, problemBox, radioGroup } from './fieldView';
import { type ItemEvents, itemButtons } from './itemButtons';
import { jobFormField, jobItems, jobPath, shownValue } from './job';

/** What a person does in the form of the job. */
export interface JobFormEvents extends FieldEvents, ItemEvents {
  added(at: string): void;
  opened(at: string, isOpen: boolean): void;
}

/** What the form of the job shows. */
export interface JobFormState {
  readonly job: HouseEntry;
  readonly openSections: ReadonlySet<string>;
  /** Names of the rooms that are saved. */
  readonly rooms: readonly string[];
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
  terms: 'Tax and margin',
};

/** Ids of the fields of the job begin so: those of the room go by the same paths. */
export const JOB = 'job.';

/** The sections of the job, all but the first of them shut. */
export function jobSections(state: JobFormState, events: JobFormEvents): readonly HTMLElement[] {
  return HOUSE_SECTIONS.map((section) =>
    section.at === '' ? firstSection(section, state, events) : shutSection(section, state, events),
  );
}

function firstSection(section: HouseSection, state: JobFormState, events: JobFormEvents): HTMLElement {
  const { job, rooms } = state;
  const grid = (keys: readonly string[]) => {
    const fields = section.fields.filter(([key]) => keys.includes(key));
    return itemGrid({ ...section, fields }, 0, jobItems(job, section)[0], job.units, events);
  };
  return element(
    'section',
    { 'aria-labelledby': 'job-heading' },
    element('h2', { id: 'job-heading' }, 'The whole job'),
    problemBox(JOB),
    radioGroup(`${JOB}units`, UNITS_FIELD.label, choicesOf(UNITS_FIELD), job.units, events),
    grid(['currency', 'rooms']),
    element('p', { class: 'help', id: 'job-rooms' }, roomsWords(rooms)),
    grid(['shareOffcuts']),
  );
}

/** Which rooms there are to be named. */
export function roomsWords(rooms: readonly string[]): string {
  return rooms.length === 0 ? 'No room is saved yet.' : `Blank means every saved room: ${wordsText(rooms)}.`;
}

function shutSection(section: HouseSection, state: JobFormState, events: JobFormEvents): HTMLElement {
  const { at, heading, isList } = section;
  const { job, openSections } = state;
  const items = jobItems(job, section);
  const title = `${LIST_HEADINGS[at] ?? heading}${isList && items.length > 0 ? ` (${items.length})` : ''}`;
  const parts = items.map((_, i) => itemBlock(section, i, job, events));
  const add = isList
    ? [button(`Add: ${heading.toLowerCase()}`, () => events.added(at), { id: `add-${JOB}${at}` })]
    : [];
  const details = element(
    'details',
    { open: openSections.has(at) },
    element('summary', {}, element('h2', {}, title)),
    problemBox(`${JOB}${at}`),
    ...parts,
    ...add,
  );
  details.addEventListener('toggle', () => events.opened(at, details.open));
  return details;
}

function itemBlock(section: HouseSection, index: number, job: HouseEntry, events: JobFormEvents): HTMLElement {
  const items = jobItems(job, section);
  const fields = itemGrid(section, index, items[index], job.units, events);
  if (!section.isList) return fields;
  const name = `${section.heading} ${index + 1}`;
  // By the paths of the page: the form of a room has a list of doorways too.
  const buttons = itemButtons(
    { list: `${JOB}${section.at}`, index, count: items.length, name },
    {
      removed: () => events.removed(section.at, index),
      moved: (_, __, by) => events.moved(section.at, index, by),
    },
  );
  return element('fieldset', { class: 'item' }, element('legend', {}, name), fields, buttons);
}

function itemGrid(
  section: HouseSection,
  index: number,
  item: Readonly<Record<string, unknown>>,
  units: Units,
  events: FieldEvents,
): HTMLElement {
  const blocks = section.fields.map((field) => {
    const path = `${JOB}${jobPath(section, index, field[0])}`;
    return fieldBlock(
      jobFormField(field, units),
      { path, value: shownValue(item[field[0]]), units, isOwn: false },
      events,
    );
  });
  return element('div', { class: 'grid' }, ...blocks);
}
