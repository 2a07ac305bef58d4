/** What follows from the form, in numbers: the headline of the foot, the list of numbers, the ways to lay it. */
import type { Takeoff } from '../../takeoff/result';
import { plural } from '../../takeoff/text/plural';
import type { Sketch } from '../form/firstLook';
import { byId, element } from '../parts/dom';
import { headline } from './numbers';
import { numbersElement } from './numbersView';
import { startsElement } from './startsView';
import type { ToldWay } from './ways';
import { waysElement } from './waysView';

/**
 * @param ownWaste of this person's floors so far, on top of the area
 * @param taken another way to lay the floor, or another first row, was taken: the rules for it
 */
export function showNumbers(
  plan: Takeoff,
  ownWaste: number | null,
  taken: (rules: Partial<ToldWay['rules']>) => void,
): void {
  byId('numbers').replaceChildren(
    ...numbersElement(plan, ownWaste),
    ...waysElement(plan, ({ rules }) => taken(rules)),
    ...startsElement(plan, (firstRow) => taken({ firstRow })),
  );
  const words = headline(plan);
  byId('headline').textContent = words;
  // The same words are not said twice to those who hear the page.
  const heard = byId('heard');
  if (heard.textContent !== words) heard.textContent = words;
}

/** Nothing can be planned yet. */
export function showSketchNumbers(): void {
  const later = 'They appear here as soon as the room and the planks are typed.';
  byId('numbers').replaceChildren(element('p', 'help', later));
  byId('headline').textContent = '';
}

/** The rows are known at once; the planks are being worked out. */
export function showWorking(sketch: Sketch | null): void {
  const rows = sketch && sketch.rows.length > 0 ? `${plural(sketch.rows.length, 'row')} · ` : '';
  byId('headline').textContent = `${rows}planning ...`;
}
