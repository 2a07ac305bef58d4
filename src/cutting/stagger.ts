/**
 * Stagger: which first pieces of a run are kept away by the joints of a run in a neighbouring row.
 *
 * The joints of a run are all places x + s, x + s + L, ... strictly inside it, so a joint of the other run forbids
 * the first pieces whose joints come nearer than the minimum stagger: a window on the circle of L places, cut off
 * where this run ends.
 */
import type { PreparedJob, PreparedRun } from './prepared';

/**
 * Marks in `marks` (a difference array over first pieces 1..L: +1 where a forbidden stretch begins, -1 behind its
 * end) the first pieces of `run` that come too near a joint of `other`, whose first piece is `at`.
 * Costs one step a joint of `other` near the ends of `run`, and one for all others.
 */
export function markForbidden(
  marks: Int32Array,
  run: PreparedRun,
  other: PreparedRun,
  at: number,
  prepared: PreparedJob,
): void {
  const L = prepared.plankLength;
  const reach = prepared.job.minStagger - 1;
  const left = run.x + 1;
  const right = run.x + run.length - 1;
  const end = Math.min(other.x + other.length - 1, right + reach);
  const skipped = Math.max(0, Math.ceil((left - reach - other.x - at) / L));
  let isInnerMarked = false;
  for (let joint = other.x + at + skipped * L; joint <= end; joint += L) {
    const isInner = joint - reach >= left && joint + reach <= right;
    if (isInner && isInnerMarked) continue;
    isInnerMarked = isInnerMarked || isInner;
    markWindow(marks, Math.max(left, joint - reach) - run.x, Math.min(right, joint + reach) - run.x, L);
  }
}

/** Marks the first pieces that have a joint within from..to, counted from the start of the run. */
function markWindow(marks: Int32Array, from: number, to: number, L: number): void {
  if (to < from) return;
  if (to - from >= L - 1) {
    marks[1]++;
    marks[L + 1]--;
    return;
  }
  const first = ((from - 1) % L) + 1;
  const last = ((to - 1) % L) + 1;
  marks[first]++;
  marks[last + 1]--;
  if (last >= first) return;
  marks[1]++;
  marks[L + 1]--;
}
