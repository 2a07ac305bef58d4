/** What can be done with an item of a list on the page. */
import { button, element } from '../parts/dom';

/** Which item it is. */
export interface ItemPlace {
  /** Path of its list. */
  readonly list: string;
  readonly index: number;
  readonly count: number;
  /** What it is called in the words of buttons: `wall 2`. */
  readonly name: string;
  /** Whether it stands in one line, where there is no room for words on a button. */
  readonly isLine?: boolean;
}

/** What a person does with it. */
export interface ItemEvents {
  removed(list: string, index: number): void;
  /** One place up (-1) or down (1). */
  moved(list: string, index: number, by: -1 | 1): void;
}

/** Buttons that move an item and remove it. One that would move it out of its list does nothing, and keeps the keyboard. */
export function itemButtons({ list, index, count, name, isLine = false }: ItemPlace, events: ItemEvents): HTMLElement {
  const move = (by: -1 | 1, sign: string, way: string) => {
    const isEnd = index + by < 0 || index + by >= count;
    return button(sign, () => (isEnd ? undefined : events.moved(list, index, by)), {
      id: moveButtonId(list, index, by),
      'aria-label': `Move ${name} ${way}`,
      title: `Move ${way}`,
      'aria-disabled': isEnd && 'true',
    });
  };
  const remove = button(isLine ? '×' : 'Remove', () => events.removed(list, index), {
    'aria-label': `Remove ${name}`,
    title: 'Remove',
  });
  return element('div', 'item-buttons', move(-1, '↑', 'up'), move(1, '↓', 'down'), remove);
}

/** Id of the button that moves an item up (-1) or down (1). */
export function moveButtonId(list: string, index: number, by: -1 | 1): string {
  return `${by < 0 ? 'up' : 'down'}-${list}-${index}`;
}
