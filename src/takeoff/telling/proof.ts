import type { CutPlan } from '../../cutting/job';

/** Whether a count is known to be the least, in words. */
export function proofOf({ plankCount, bound, broken }: Pick<CutPlan, 'plankCount' | 'bound' | 'broken'>): string {
  if (broken.length > 0) return 'the nearest plan: no plan meets all the rules';
  const over = plankCount - bound;
  return over === 0 ? 'cannot be done with fewer' : `at most ${over} more than the fewest`;
}
