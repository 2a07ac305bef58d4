/** The comparison of the ways to lay a floor, as a table from which another way can be taken. */
import type { Takeoff } from '../../takeoff/result';
import { button, element } from '../parts/dom';
import { type ToldWay, toldWays } from './ways';

/** More ways than this are no help. */
const MOST_SHOWN = 8;

/** A heading and the table; nothing when no way was left open. */
export function waysElement(takeoff: Takeoff, taken: (way: ToldWay) => void): readonly HTMLElement[] {
  const ways = toldWays(takeoff);
  if (ways.length === 0) return [];
  const shown = ways.slice(0, MOST_SHOWN);
  const heads = ['Rows', 'First, last', 'Planks', 'Shortest'].map((head) => element('th', { scope: 'col' }, head));
  const table = element(
    'table',
    'ways',
    element('caption', {}, captionOf(ways.length)),
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...shown.map((way) => rowOf(way, taken))),
  );
  return [element('h3', {}, 'Ways to lay it'), table];
}

function captionOf(count: number): string {
  const shown = count > MOST_SHOWN ? `; the best ${MOST_SHOWN} are shown` : '';
  return `${count} were compared${shown}. The first is drawn. Near and far: where row 1 lies.`;
}

function rowOf(told: ToldWay, taken: (way: ToldWay) => void): HTMLElement {
  const { way, name, shortName, rips, planks, shortest, remark } = told;
  const choice = way.isChosen
    ? element('b', {}, 'chosen')
    : button('Take', () => taken(told), { class: 'take', 'aria-label': `Take: ${name}, first and last row ${rips}` });
  const words = remark === '' ? shortName : `${shortName} (${remark})`;
  // In the first column, not in one of its own: five do not fit beside a scroll bar.
  const row = element('th', { scope: 'row' }, `${words} `, choice);
  const cells = [rips, planks, shortest].map((cell) => element('td', {}, cell));
  return element('tr', { class: way.isChosen ? 'chosen' : '' }, row, ...cells);
}
