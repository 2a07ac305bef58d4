/**
 * Rows that share their strips: what is ripped off a first row may serve in the last row of its pair, where both widths
 * and a kerf fit in a plank's width.
 */
import type { CutJob } from '../job';

/** A first row that is ripped, and the last row that its strips may serve. */
export interface StripRows {
  /** Indices of their runs. */
  readonly first: readonly number[];
  readonly last: readonly number[];
  /** Runs of equal lengths in rows that are no neighbours: laid alike, the last row takes no plank at all. */
  readonly areLaidAlike: boolean;
}

/** The rip pairs whose strips fit; a row is in one pair at most. */
export function stripRowsOf(job: CutJob, rowRuns: readonly (readonly number[])[], mayLayAlike: boolean): StripRows[] {
  const paired = new Set<number>();
  return job.ripPairs.flatMap(([first, last]) => {
    const [a, b] = [job.rows[first], job.rows[last]];
    if (!a || !b) throw new RangeError(`There are no rows ${first} and ${last} to pair.`);
    const fits = a.width + b.width + job.kerf <= job.plankWidth;
    if (!fits || first === last || paired.has(first) || paired.has(last)) return [];
    paired.add(first).add(last);
    const isAlike = a.runs.length === b.runs.length && a.runs.every((run, i) => run.length === b.runs[i].length);
    return [
      {
        first: rowRuns[first],
        last: rowRuns[last],
        areLaidAlike: mayLayAlike && isAlike && Math.abs(last - first) > 1,
      },
    ];
  });
}
