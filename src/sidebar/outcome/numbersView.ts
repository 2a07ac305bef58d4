/** The numbers of a floor on the page. */
import type { Takeoff } from '../../takeoff/result';
import { element } from '../parts/dom';
import { numberLines } from './numbers';

/** The list of numbers, and what to know about the floor. */
export function numbersElement(takeoff: Takeoff, ownWaste: number | null): readonly HTMLElement[] {
  const lines = numberLines(takeoff, ownWaste).map(({ name, value, remark }) => {
    const remarks = remark === '' ? [] : [element('span', 'remark', remark)];
    return element('div', {}, element('dt', {}, name), element('dd', {}, element('b', {}, value), ...remarks));
  });
  const notes = takeoff.notes.map((note) => element('li', {}, note));
  const list = element('dl', 'numbers', ...lines);
  return notes.length === 0
    ? [list]
    : [list, element('h3', { id: 'to-know' }, 'To know'), element('ul', 'notes', ...notes)];
}
