/** A floor that was laid row by row, told from the way it came about. */
import type { PreparedJob, PreparedRun } from '../runs/prepared';
import { type Laid, traceBack } from './sweep';

/** First pieces and planks of the end pieces (see `Shared`). */
export interface Swept {
  readonly at: Int32Array;
  readonly plankOf: Int32Array;
  readonly planks: number;
}

export function nothingSwept({ runs }: PreparedJob, planks: number): Swept {
  return { at: new Int32Array(runs.length), plankOf: new Int32Array(2 * runs.length).fill(-1), planks };
}

/**
 * Writes what standing `which` has laid.
 *
 * @param indexOf place of a run in the floor
 * @param numberOf number of a plank in the floor
 */
export function tellInto(
  { at, plankOf }: Swept,
  laid: Laid,
  which: number,
  indexOf: (run: PreparedRun) => number,
  numberOf: (plank: number) => number,
): void {
  traceBack(laid, which, (run, first, ofFirst, ofLast) => {
    const index = indexOf(run);
    at[index] = first;
    if (run.strips.role === 'leads') at[run.strips.follower] = first;
    plankOf[2 * index] = ofFirst < 0 ? ofFirst : numberOf(ofFirst);
    if (!run.isWallToWall) plankOf[2 * index + 1] = ofLast < 0 ? ofLast : numberOf(ofLast);
  });
}
