/** The line under a button that says what became of pressing it. */
import { element } from './dom';

/** Said when nothing was filled because of what stands in the form: it holds until that is put right. */
export const NOT_FILLED = 'Not filled yet: fix what is marked above.';

/** A line whose words are heard as well, and come into view: it may lie under the edge of a low page. */
export function toldLine(): HTMLElement {
  const line = element('p', { role: 'status', class: 'told' });
  const told = () => {
    // What is to be put right has the keyboard then, and stays in view.
    if (line.textContent !== '' && line.textContent !== NOT_FILLED) line.scrollIntoView({ block: 'nearest' });
  };
  new MutationObserver(told).observe(line, { childList: true, characterData: true, subtree: true });
  return line;
}

/** Takes back that nothing was filled, once there is nothing more to put right; any other words stay. */
export function takeBackNotFilled(line: HTMLElement): void {
  if (line.textContent === NOT_FILLED) line.textContent = '';
}
