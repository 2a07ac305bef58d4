/** What waits in the rest of a floor, counted piece by piece. */
import type { OnwardPlan } from '../../src/cutting/onward/onwardJob';

/** After each row, the planks and pieces in hand that are begun, or were there, and are wanted later. */
export function waitingAfter(rows: OnwardPlan['rows']): readonly number[] {
  const usedIn = rows.map(({ runs }) =>
    runs.flat().map(({ plank, stock }) => (stock === undefined ? `${plank}` : `in hand ${stock}`)),
  );
  return usedIn.map((_, row) => {
    const later = new Set(usedIn.slice(row + 1).flat());
    const begun = new Set(usedIn.slice(0, row + 1).flat());
    return [...later].filter((name) => name.startsWith('in hand') || begun.has(name)).length;
  });
}

/** The most of it after any row. */
export function mostWaiting(rows: OnwardPlan['rows']): number {
  return Math.max(0, ...waitingAfter(rows));
}
