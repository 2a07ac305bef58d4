/** A button whose work takes time. */
import { button } from './dom';

/** Does nothing while it, or another of the same `turn`, is still at work. It keeps the keyboard meanwhile. */
export function busyButton(
  words: string,
  press: () => Promise<void>,
  attributes: Record<string, string> = {},
  turn: Turn = newTurn(),
): HTMLButtonElement {
  const made = button(words, () => turn.take(press), attributes);
  turn.buttons.push(made);
  return made;
}

/** Buttons of which one works at a time. */
export interface Turn {
  readonly buttons: HTMLButtonElement[];
  take(work: () => Promise<void>): void;
}

/** A turn nobody has taken yet. */
export function newTurn(): Turn {
  const buttons: HTMLButtonElement[] = [];
  let isBusy = false;
  const set = (busy: boolean) => {
    isBusy = busy;
    for (const made of buttons) {
      if (busy) made.setAttribute('aria-disabled', 'true');
      else made.removeAttribute('aria-disabled');
    }
  };
  return {
    buttons,
    take(work) {
      if (isBusy) return;
      set(true);
      void work().finally(() => set(false));
    },
  };
}
