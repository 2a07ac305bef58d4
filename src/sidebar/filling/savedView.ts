/** Rooms that are saved in the spreadsheet: opening one again, or going on to the next room. */
import { button, element } from '../parts/dom';

/** What a person wants of the saved rooms. */
export interface SavedEvents {
  /** A saved room is to be opened. */
  opened(name: string): void;
  /** A blank room is to be begun. */
  begun(): void;
}

/** The part of the page with the saved rooms. */
export interface SavedPart {
  readonly element: HTMLElement;
  /** The names of the rooms that can be opened, and what is wrong with those that cannot. */
  show(names: readonly string[], problems: readonly string[]): void;
}

/** @param isUnsaved whether something typed would be lost: then it is asked once more */
export function savedPart(isUnsaved: () => boolean, events: SavedEvents): SavedPart {
  const list = element('select', { id: 'saved-room' });
  const question = element('div', { class: 'question', role: 'alert' });
  const problemList = element('div', { role: 'status' });
  const ask = (words: string, go: () => void, back: HTMLElement) => {
    const leave = (then: () => void) => {
      question.replaceChildren();
      back.focus();
      then();
    };
    if (!isUnsaved()) return leave(go);
    const yes = button(words, () => leave(go), { class: 'answer' });
    const no = button('Keep typing', () => leave(() => {}), { class: 'answer' });
    question.replaceChildren(element('p', {}, 'What is typed here is not saved: fill the tabs to save it.'), yes, no);
    yes.focus();
  };
  const open = button('Open', () => ask(`Open ${list.value} all the same`, () => events.opened(list.value), open));
  const begin = button('New room', () => ask('Begin a new room all the same', events.begun, begin), {
    title: 'Blank room, same product and rules',
  });
  const choice = element('div', { class: 'saved' }, element('label', { for: 'saved-room' }, 'Saved rooms'), list, open);
  choice.hidden = true;
  return {
    element: element('div', {}, choice, begin, question, problemList),
    show(names, problems) {
      choice.hidden = names.length === 0;
      list.replaceChildren(...names.map((name) => element('option', { value: name }, name)));
      const sentences = problems.map((sentence) => element('li', {}, sentence));
      problemList.replaceChildren(...(sentences.length > 0 ? [element('ul', { class: 'notes' }, ...sentences)] : []));
    },
  };
}
