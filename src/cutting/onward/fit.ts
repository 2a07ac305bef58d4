/** An offcut in hand against a run: whether it serves as the first or the last piece, and the least change that makes it serve. */

import type { CutJob } from '../job';
import { leastDistance } from '../runs/joints';
import { jointsOf, lastAfter, mayBegin, type OpenRun } from './firstPieces';

/** What a piece needs: the right end of a first piece, the left end of a last one, none of a piece from wall to wall. */
export type NeededEnd = 'left' | 'right' | 'none';

/** Length of the piece that an offcut would have to be, when the run begins with `first`. */
export function pieceAt(run: OpenRun, first: number, needs: NeededEnd, plankLength: number): number {
  if (needs === 'none') return run.length;
  return needs === 'right' ? first : lastAfter(run, first, plankLength);
}

/**
 * The first piece nearest to the planned one with which an offcut is long enough: the planned one where it fits as it is.
 *
 * @param first as planned
 * @param beside joints of the rows before and after, room coordinates
 * @param length of the offcut
 * @returns null where no first piece keeps the minimum piece and the stagger
 */
export function nearestFirst(
  job: CutJob,
  run: OpenRun,
  first: number,
  needs: NeededEnd,
  beside: readonly number[],
  length: number,
): number | null {
  if (pieceAt(run, first, needs, job.plankLength) <= length) return first;
  if (needs === 'none') return null;
  const fits = (other: number) =>
    mayBegin(run, other, job) &&
    pieceAt(run, other, needs, job.plankLength) <= length &&
    leastDistance(jointsOf(run, other, job.plankLength), beside) >= job.minStagger;
  for (let by = 1; by <= job.plankLength; by++) {
    const found = [first - by, first + by].find(fits);
    if (found !== undefined) return found;
  }
  return null;
}
