import type { CutPlan } from '../../cutting/job';

type Proof = Pick<CutPlan, 'plankCount' | 'bound' | 'broken'>;

/** Whether a count is known to be the least, in words. */
export function proofOf({ plankCount, bound, broken }: Proof): string {
  if (broken.length > 0) return 'the nearest plan: no plan meets all the rules';
  const over = plankCount - bound;
  return over === 0 ? 'cannot be done with fewer' : `at most ${over} more than the fewest`;
}

/** What a table says under a plan that may not be the fewest; nothing where it is proved, or breaks rules. */
export function proofNotes({ plankCount, bound, broken }: Proof): readonly string[] {
  const over = plankCount - bound;
  if (broken.length > 0 || over === 0) return [];
  return [`${plankCount} planks are not proved to be the fewest: at most ${over} fewer may be possible.`];
}
