/** The two ways to plan a floor, side by side: the fewest planks, or the easiest laying in the boxes that are bought anyway. */
import type { RulesEntry } from '../../takeoff/entry';
import type { Takeoff } from '../../takeoff/result';
import { plural } from '../../takeoff/text/plural';
import { firm } from './numbers';

/** What a floor may be planned for. */
export type Aim = RulesEntry['aim'];

/** The aim that a room does not have. */
export function otherAim(aim: Aim): Aim {
  return aim === 'easy' ? '' : 'easy';
}

/** `Easiest laying: 134 planks, 14 boxes, 1 offcut waiting at once`. */
export function aimWords(aim: Aim, { summary }: Takeoff): string {
  const { planksToBuy, boxCount, mostWaiting } = summary;
  const boxes = boxCount === null ? [] : [plural(boxCount, 'box', 'boxes')];
  const parts = [plural(planksToBuy, 'plank'), ...boxes, `${plural(mostWaiting, 'offcut')} waiting at once`];
  return `${aim === 'easy' ? 'Easiest laying' : 'Fewest planks'}: ${parts.map(firm).join(', ')}`;
}

/** Whether the other aim makes no other floor. */
export function areAlike(one: Takeoff, other: Takeoff): boolean {
  const [a, b] = [one.summary, other.summary];
  return a.planksToBuy === b.planksToBuy && a.boxCount === b.boxCount && a.mostWaiting === b.mostWaiting;
}
