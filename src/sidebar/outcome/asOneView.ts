/** The offer to lay a floor as one with the saved rooms its doorways lead to. */
import type { RoomEntry } from '../../takeoff/entry';
import { element } from '../parts/dom';

/** Fills its place; nothing is offered where no doorway leads into a saved room. */
export function showAsOne(
  place: HTMLElement,
  rooms: readonly RoomEntry[],
  isChosen: boolean,
  chosen: (isAsOne: boolean) => void,
): void {
  const names = rooms.map(({ name }) => name).join(', ');
  // Made anew only when other rooms are offered, so that it keeps the keyboard.
  if (place.dataset.rooms === names) return;
  place.dataset.rooms = names;
  place.replaceChildren(...(rooms.length === 0 ? [] : offer(names, isChosen, chosen)));
}

function offer(names: string, isChosen: boolean, chosen: (isAsOne: boolean) => void): readonly HTMLElement[] {
  const box = element('input', { type: 'checkbox', id: 'as-one-box', checked: isChosen });
  box.addEventListener('change', () => chosen(box.checked));
  const label = element('label', { for: box.id }, `Lay as one floor with ${names}`);
  const help =
    'The rows run through. The product, rules and direction of this room are used; the tabs carry the names of all.';
  return [element('div', 'radio', box, label), element('p', 'help', help)];
}
