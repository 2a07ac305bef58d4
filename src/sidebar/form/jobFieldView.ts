/** Fields of the job that are chosen on the page: rooms by ticks, days by a picker, names from what is saved. */
import type { HouseEntry } from '../../order/houseEntry';
import { wordsText } from '../../order/words';
import type { RoomEntry } from '../../takeoff/entry';
import type { EntryField } from '../../takeoff/entryFields';
import { dayOf } from '../../takeoff/text/calendar';
import { nameKey, sameName } from '../../takeoff/text/names';
import { element } from '../parts/dom';
import { type FieldEvents, type FieldPlace, fieldBlock, fieldId, problemBox } from './fieldView';
import { jobFormField } from './job';
import { choicesFrom, isListOfRooms, namesOf } from './jobRooms';

/** What the fields are chosen from. */
export interface ChosenFrom {
  readonly job: HouseEntry;
  readonly rooms: readonly RoomEntry[];
}

/** Id of the page's list of saved rooms, offered where a neighbour may also be something else. */
const ROOM_NAMES = 'room-names';

/** A field of the job as one block. @param value as it stands in the job */
export function jobFieldBlock(
  at: string,
  field: EntryField,
  value: unknown,
  place: FieldPlace,
  { job, rooms }: ChosenFrom,
  events: FieldEvents,
): HTMLElement {
  const { key, use } = field;
  const isNeighbour = at === 'doorways' && key === 'neighbour';
  const shown = { ...jobFormField(field, place.units), ...(isNeighbour ? { offers: ROOM_NAMES } : {}) };
  if (isListOfRooms(at, key) && rooms.length > 0) {
    return roomTicks(place.path, shown.label, namesOf(rooms), value as readonly string[], events);
  }
  if (use === 'date' && isPickable(String(value))) return dateBlock(shown.label, place, events);
  const choices = choicesFrom(at, key, job, rooms);
  if (choices === null) return fieldBlock(shown, place, events);
  const asSaved = choices.find((choice) => nameKey(choice.value) === nameKey(String(value)));
  return fieldBlock({ ...shown, choices }, { ...place, value: asSaved?.value ?? place.value }, events);
}

/** A picker takes no other text than a day; what is typed otherwise is shown as it is, with what is wrong. */
function isPickable(value: string): boolean {
  return value.trim() === '' || (dayOf(value) !== null && /^\d{4}-\d\d-\d\d$/.test(value.trim()));
}

function dateBlock(label: string, { path, value }: FieldPlace, events: FieldEvents): HTMLElement {
  const box = element('input', { type: 'date', id: fieldId(path), value: String(value).trim() });
  box.addEventListener('input', () => events.changed(path, box.value, false));
  box.addEventListener('blur', () => events.left(path));
  return element(
    'div',
    { class: 'field', 'data-path': path },
    element('label', { for: box.id }, label),
    box,
    problemBox(path),
  );
}

/** One box to tick for each saved room; a name that is not saved any more can be taken out. */
function roomTicks(
  path: string,
  legend: string,
  names: readonly string[],
  value: readonly string[],
  events: FieldEvents,
): HTMLElement {
  const isTicked = (name: string) => value.some((other) => sameName(other, name));
  const gone = value.filter((name) => !names.some((other) => sameName(other, name)));
  const rows = [...names, ...gone].map((name, i) => {
    const id = i === 0 ? fieldId(path) : `${fieldId(path)}-${i}`;
    const box = element('input', { type: 'checkbox', id, value: name, checked: isTicked(name) });
    box.addEventListener('change', () => events.changed(path, wordsText(tickedIn(group)), false));
    box.addEventListener('blur', () => events.left(path));
    return element('div', 'radio', box, element('label', { for: id }, name));
  });
  const help = element('p', { class: 'help', id: `help-${path}` }, ticksHelp(path));
  const group = element(
    'fieldset',
    { class: 'choices wide', 'data-path': path, 'aria-describedby': help.id },
    element('legend', {}, legend),
    ...rows,
    help,
    problemBox(path),
  );
  return group;
}

function ticksHelp(path: string): string {
  return /tearOut$/.test(path) ? 'None ticked: no old floor comes out.' : 'None ticked: every room.';
}

function tickedIn(group: HTMLElement): readonly string[] {
  const boxes = [...group.querySelectorAll<HTMLInputElement>('input[type="checkbox"]')];
  return boxes.filter((box) => box.checked).map((box) => box.value);
}
