/** Of a floor that is laid in two parts, what the second one takes over. */

import type { FewerOver } from '../../cutting/onward/inParts';
import { plural } from '../text/plural';

/**
 * What goes over with the furniture after a row.
 *
 * @param waiting what is written on the offcuts that go over
 * @param fewerOver with how many it takes how many planks more; null where fewer cannot go over
 */
export function carriedWords(rowNumber: number, waiting: readonly string[], fewerOver: FewerOver | null): string {
  const count = plural(waiting.length, 'offcut goes', 'offcuts go');
  const over =
    waiting.length === 0 ? 'no offcut goes over to the rest' : `${count} over to the rest: ${waiting.join(', ')}`;
  const fewer = fewerOver
    ? ` With ${fewerOver.carriedCount === 0 ? 'none' : fewerOver.carriedCount} it takes ${plural(fewerOver.planks, 'more plank')}.`
    : '';
  return `First up to row ${rowNumber}, then the other side: ${over}.${fewer}`;
}

/** Of a first part that lies to its end. */
export function partLiesWords(rowNumber: number): string {
  return `Lay first up to row ${rowNumber}: that row lies already, so this changes nothing.`;
}
