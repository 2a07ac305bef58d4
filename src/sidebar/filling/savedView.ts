/** Rooms that are saved in the spreadsheet: opening, renaming, removing one, or going on to the next room. */
import { newTurn } from '../parts/busyButton';
import { button, element } from '../parts/dom';
import { toldLine } from '../parts/toldLine';

/** What a person wants of the saved rooms. Sentences that come back are told. */
export interface SavedEvents {
  /** A saved room is to be opened, as it stands in its tab now. */
  opened(name: string): Promise<readonly string[]>;
  renamed(name: string, newName: string): Promise<readonly string[]>;
  removed(name: string): Promise<readonly string[]>;
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
  const told = toldLine();
  const turn = newTurn();
  const leave = (back: HTMLElement) => {
    question.replaceChildren();
    back.focus();
  };
  const work = async (doing: Promise<readonly string[]>): Promise<void> => {
    told.textContent = (await doing.catch((error: Error) => [error.message])).join(' ');
  };
  /** Asks before something is done, with the answers below the words. */
  const ask = (
    parts: readonly (HTMLElement | string)[],
    yes: string,
    no: string,
    go: () => void,
    back: HTMLElement,
  ) => {
    const answer = (words: string, then: () => void) =>
      button(
        words,
        () => {
          leave(back);
          then();
        },
        { class: 'answer' },
      );
    const buttons = [answer(yes, go), answer(no, () => {})];
    question.replaceChildren(...parts, ...buttons);
    (question.querySelector<HTMLElement>('input') ?? buttons[0]).focus();
  };
  const unsaved = (words: string, go: () => void, back: HTMLElement) => {
    if (!isUnsaved()) return go();
    const said = element('p', {}, 'What is typed here is not saved: fill the tabs to save it.');
    ask([said], words, 'Keep typing', go, back);
  };
  const open = button('Open', () => unsaved(`Open ${list.value} all the same`, () => openNow(list.value), open));
  const openNow = (name: string) => turn.take(() => work(events.opened(name)));
  const rename = button('Rename', () => {
    const name = list.value;
    const field = element('input', { id: 'new-room-name', value: name });
    const label = element('label', { for: field.id }, `New name of ${name}; its tabs follow`);
    const go = () => turn.take(() => work(events.renamed(name, field.value)));
    ask([label, field], 'Rename it', 'Keep its name', go, rename);
    field.select();
  });
  const remove = button('Remove', () => {
    const name = list.value;
    const words = `Remove ${name} from the saved rooms? Its cut list and floor plan stay, and say that the room is gone.`;
    const go = () => turn.take(() => work(events.removed(name)));
    ask([element('p', {}, words)], `Remove ${name}`, 'Keep it', go, remove);
  });
  const begin = button('New room', () => unsaved('Begin a new room all the same', events.begun, begin), {
    title: 'Blank room, same product and rules',
  });
  const label = element('label', { for: 'saved-room' }, 'Saved rooms');
  const choice = element('div', { class: 'saved' }, label, list, open);
  const others = element('div', { class: 'steps' }, rename, remove);
  choice.hidden = others.hidden = true;
  return {
    element: element('div', {}, choice, others, begin, question, told, problemList),
    show(names, problems) {
      choice.hidden = others.hidden = names.length === 0;
      const chosen = list.value;
      list.replaceChildren(...names.map((name) => element('option', { value: name }, name)));
      if (names.includes(chosen)) list.value = chosen;
      const sentences = problems.map((sentence) => element('li', {}, sentence));
      problemList.replaceChildren(...(sentences.length > 0 ? [element('ul', { class: 'notes' }, ...sentences)] : []));
    },
  };
}
