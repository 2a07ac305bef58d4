/** Where the rows could start, as a table: a column for each start, a line for each place where rows stop. */
import type { StartLine, Takeoff } from '../../takeoff/result';
import { pieceText } from '../../takeoff/text/lengthText';
import { button, element } from '../parts/dom';
import { firstRowText } from './ways';

/** More columns do not fit into the sidebar. */
const MOST_SHOWN = 4;

/**
 * A heading and the table; nothing where only one start was looked at.
 *
 * @param taken another first row was taken, as it is typed
 */
export function startsElement(takeoff: Takeoff, taken: (firstRow: string) => void): readonly HTMLElement[] {
  const { units } = takeoff;
  const shown = shownStarts(takeoff.starts);
  if (shown.length < 2) return [];
  const show = pieceText(units);
  const line = (name: string, cells: readonly (string | HTMLElement)[]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, name),
      ...cells.map((cell, i) => element('td', { class: shown[i].isChosen ? 'chosen' : '' }, cell)),
    );
  const heads = shown.map(({ firstRowWidth }) => element('th', { scope: 'col' }, show(firstRowWidth)));
  const take = ({ isChosen, firstRowWidth }: StartLine) =>
    isChosen
      ? element('b', {}, 'chosen')
      : button('Take', () => taken(firstRowText(firstRowWidth, units)), {
          class: 'take',
          'aria-label': `Take: first row ${show(firstRowWidth)}`,
        });
  const places = shown[0].strips.map(({ place }, at) => {
    return line(
      place,
      shown.map(({ strips }) => show(strips[at].width)),
    );
  });
  const narrowest = shown.map((start) => show(start.narrowest));
  const table = element(
    'table',
    'ways starts',
    element(
      'caption',
      {},
      'The strip that each first row leaves where rows stop. The first column is the usual start.',
    ),
    element('thead', {}, element('tr', {}, element('th', { scope: 'col' }, 'First row'), ...heads)),
    element('tbody', {}, ...places, line('Narrowest', narrowest), line('', shown.map(take))),
  );
  return [element('h3', {}, 'Where to start'), table];
}

/** The usual start, the chosen one, and the best of the others. */
function shownStarts(starts: readonly StartLine[]): readonly StartLine[] {
  const wanted = starts.filter(({ isUsual, isChosen }) => isUsual || isChosen);
  const others = starts.filter((start) => !wanted.includes(start)).slice(0, MOST_SHOWN - wanted.length);
  return starts.filter((start) => wanted.includes(start) || others.includes(start));
}
