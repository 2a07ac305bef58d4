/** A question on the page. */
import { button, element } from './dom';

/** Asks at a place of the page, and waits for the press of one of the answers. @returns which, from 0 */
export function asked(place: HTMLElement, words: string, answers: readonly string[]): Promise<number> {
  return new Promise((resolve) => {
    const press = (index: number) => {
      place.replaceChildren();
      resolve(index);
    };
    const buttons = answers.map((answer, i) => button(answer, () => press(i), 'answer'));
    place.replaceChildren(element('p', {}, words), ...buttons);
  });
}
