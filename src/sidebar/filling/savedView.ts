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
  /** The example is to be looked at. */
  example(): void;
  /** The example has been seen: a blank room is to be begun. */
  thrownAway(): void;
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
  const question = questionBox();
  const problemList = element('div', { role: 'status' });
  const told = toldLine();
  const turn = newTurn();
  const work = async (doing: Promise<readonly string[]>): Promise<void> => {
    told.textContent = (await doing.catch((error: Error) => [error.message])).join(' ');
  };
  const unsaved = (words: string, go: () => void, back: HTMLElement) => {
    if (!isUnsaved()) return go();
    const said = element('p', {}, 'What is typed here is not saved: fill the tabs to save it.');
    question.ask([said], words, 'Keep typing', go, back);
  };
  const open = button('Open', () => unsaved(`Open ${list.value} all the same`, () => openNow(list.value), open));
  // What was looked for is found: the room has the page to itself.
  const openNow = (name: string) =>
    turn.take(async () => {
      await work(events.opened(name));
      fold.open = told.textContent !== '';
    });
  const beginNow = () => {
    fold.open = false;
    events.begun();
  };
  const rename = button('Rename', () => {
    const name = list.value;
    const field = element('input', { id: 'new-room-name', value: name });
    const label = element('label', { for: field.id }, `New name of ${name}; its tabs follow`);
    const go = () => turn.take(() => work(events.renamed(name, field.value)));
    question.ask([label, field], 'Rename it', 'Keep its name', go, rename);
    field.select();
  });
  const remove = button('Remove', () => {
    const name = list.value;
    const words = `Remove ${name} from the saved rooms? Its cut list and floor plan stay, and say that the room is gone.`;
    const go = () => turn.take(() => work(events.removed(name)));
    question.ask([element('p', {}, words)], `Remove ${name}`, 'Keep it', go, remove);
  });
  const begin = button('New room', () => unsaved('Begin a new room all the same', beginNow, begin), {
    title: 'Blank room, same product and rules',
  });
  const label = element('label', { for: 'saved-room' }, 'Saved rooms');
  const choice = element('div', 'saved', label, list, open);
  const others = element('div', 'steps', rename, remove, begin);
  const names = element('span', 'set');
  const summary = element('summary', {}, element('h2', {}, 'Rooms'), ' ', names);
  const fold = element('details', { class: 'saved-rooms', hidden: true }, summary, choice, others, question.element);
  const example = examplePart(events);
  return {
    element: element('div', {}, fold, example, told, problemList),
    show(saved, problems) {
      fold.hidden = saved.length === 0;
      example.hidden = saved.length > 0;
      names.textContent = saved.join(', ');
      offer(list, saved);
      const sentences = problems.map((sentence) => element('li', {}, sentence));
      problemList.replaceChildren(...(sentences.length > 0 ? [element('ul', 'notes', ...sentences)] : []));
    },
  };
}

/** For the first use: a room to load, and to throw away. */
function examplePart(events: SavedEvents): HTMLElement {
  const part = element('p', 'example');
  const offer = () => part.replaceChildren('New here? ', load);
  const load = button(
    'Load an example room',
    () => {
      events.example();
      part.replaceChildren('An invented room to try things on. ', away);
    },
    'take',
  );
  const away = button(
    'Throw it away',
    () => {
      events.thrownAway();
      offer();
    },
    'take',
  );
  offer();
  return part;
}

/** The names to choose from; the chosen one stays where it still stands among them. */
function offer(list: HTMLSelectElement, names: readonly string[]): void {
  const chosen = list.value;
  list.replaceChildren(...names.map((name) => element('option', { value: name }, name)));
  if (names.includes(chosen)) list.value = chosen;
}

interface QuestionBox {
  readonly element: HTMLElement;
  /** Asks before something is done, with the answers below the words; then the keyboard is back at `back`. */
  ask(parts: readonly HTMLElement[], yes: string, no: string, go: () => void, back: HTMLElement): void;
}

function questionBox(): QuestionBox {
  const box = element('div', { class: 'question', role: 'alert' });
  const answer = (words: string, back: HTMLElement, then: () => void) => {
    const leave = () => {
      box.replaceChildren();
      back.focus();
      then();
    };
    return button(words, leave, 'answer');
  };
  return {
    element: box,
    ask(parts, yes, no, go, back) {
      const buttons = [answer(yes, back, go), answer(no, back, () => {})];
      box.replaceChildren(...parts, ...buttons);
      (box.querySelector<HTMLElement>('input') ?? buttons[0]).focus();
    },
  };
}
