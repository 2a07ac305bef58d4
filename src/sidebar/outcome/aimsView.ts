/** Both ways to plan a floor in one line on the page, and a button that takes the other. */
import type { Takeoff } from '../../takeoff/result';
import { button, byId, element } from '../parts/dom';
import { type Aim, aimWords, areAlike, otherAim } from './aims';

/** The place of the line is left empty until both are known. */
export function clearAims(): void {
  byId('aims').replaceChildren();
}

/** @param taken the floor is to be planned for the other aim */
export function showAims(aim: Aim, plan: Takeoff, other: Takeoff, taken: (aim: Aim) => void): void {
  const wanted = otherAim(aim);
  const own = element('b', {}, aimWords(aim, plan));
  const words = aimWords(wanted, other);
  const rest = areAlike(plan, other)
    ? ['. The other way to plan is the same here.']
    : [`. ${words}. `, button('Take it', () => taken(wanted), { class: 'take', 'aria-label': `Take: ${words}` })];
  byId('aims').replaceChildren(element('p', {}, own, ...rest));
}
