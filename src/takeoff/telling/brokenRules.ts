/** The rules that a plan breaks, in sentences: every rule with its worst place, and how many more places there are. */

import type { BrokenRule } from '../../cutting/job';
import { distinct } from '../../geometry/lists';
import { problems } from '../reading/problems';

/** The worst places of a rule that are told one by one. */
const MOST_TOLD = 3;

/**
 * Rule by rule, in the order in which they come first; of each the worst places first.
 *
 * @param tell the sentence about one place
 */
export function brokenRuleTexts(
  broken: readonly BrokenRule[],
  tell: (broken: BrokenRule) => string,
): readonly string[] {
  return distinct(broken.map(({ rule }) => rule)).flatMap((rule) => {
    const places = worstFirst(broken.filter((entry) => entry.rule === rule));
    const told = places.slice(0, MOST_TOLD).map(tell);
    const more = places.length - told.length;
    return more > 0 ? [...told, problems.morePlaces(rule, more)] : told;
  });
}

/** Why a stagger of more than half a plank cannot be kept; nothing of any other. @param plankLength in the unit of `broken` */
export function halfPlankTexts(broken: readonly BrokenRule[], plankLength: number): readonly string[] {
  const isOver = broken.some(({ rule, wanted }) => rule === 'minimum stagger' && 2 * wanted > plankLength);
  return isOver ? [problems.halfPlank()] : [];
}

/** The worst place of every rule that is broken. */
export function worstPlaces(broken: readonly BrokenRule[]): readonly BrokenRule[] {
  return distinct(broken.map(({ rule }) => rule)).map(
    (rule) => worstFirst(broken.filter((entry) => entry.rule === rule))[0],
  );
}

/** By how much of what is wanted is missing; places alike stay in laying order. */
function worstFirst(places: readonly BrokenRule[]): readonly BrokenRule[] {
  return [...places].sort((a, b) => a.found - b.found);
}
