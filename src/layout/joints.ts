/** End joints and stagger, measured in the room: in the laying frame of a floor, not against the plank. */
import type { Ticks } from '../geometry/length';

/** Two end joints of neighbouring rows. */
export interface Stagger {
  readonly distance: Ticks;
  /** The later of the two rows, counted from 1. */
  readonly rowNumber: number;
  /** Places of the joint in that row and in the row before. */
  readonly x: Ticks;
  readonly before: Ticks;
}

/** Places of the end joints of a run whose pieces have these lengths, from its left end `x0`. Ticks. */
export function jointsOf(x0: Ticks, lengths: readonly Ticks[]): readonly Ticks[] {
  let x = x0;
  return lengths.slice(0, -1).map((length) => {
    x += length;
    return x;
  });
}

/** The two nearest joints of neighbouring rows; null when no two neighbours have joints. Ticks. */
export function tightestStagger(rows: readonly (readonly Ticks[])[]): Stagger | null {
  let tightest: Stagger | null = null;
  for (let i = 1; i < rows.length; i++) {
    for (const x of rows[i]) {
      for (const before of rows[i - 1]) {
        const distance = Math.abs(x - before);
        if (tightest === null || distance < tightest.distance) tightest = { distance, rowNumber: i + 1, x, before };
      }
    }
  }
  return tightest;
}

/** How many joints have one nearer than `distance` two rows before: the eye takes them for a line. `distance` in ticks. */
export function alignedJointCount(rows: readonly (readonly Ticks[])[], distance: Ticks): number {
  let count = 0;
  for (let i = 2; i < rows.length; i++) {
    count += rows[i].filter((x) => rows[i - 2].some((before) => Math.abs(x - before) < distance)).length;
  }
  return count;
}
