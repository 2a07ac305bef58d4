/** The first pieces that runs may begin with, and where their joints then lie. */
import type { CutJob } from '../job';

/** A run that is longer than a plank, or one piece from wall to wall (`isWallToWall`). */
export interface OpenRun {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly x: number;
  readonly length: number;
  readonly width: number;
  readonly isWallToWall: boolean;
}

/** All runs, in laying order. */
export function openRuns({ rows, plankLength }: CutJob): readonly OpenRun[] {
  return rows.flatMap((row, rowIndex) =>
    row.runs.map(({ x, length }, runIndex) => {
      return { rowIndex, runIndex, x, length, width: row.width, isWallToWall: length <= plankLength };
    }),
  );
}

/** The last piece of a run after a first piece and whole planks; 1 to a plank's length. */
export function lastAfter(run: OpenRun, first: number, plankLength: number): number {
  return ((run.length - first - 1) % plankLength) + 1;
}

/** Whole planks between the first and the last piece. */
export function wholesAfter(run: OpenRun, first: number, plankLength: number): number {
  return (run.length - first - lastAfter(run, first, plankLength)) / plankLength;
}

/** Whether a run may begin with this piece: neither end is under the minimum piece. */
export function mayBegin(run: OpenRun, first: number, { plankLength, minPiece }: CutJob): boolean {
  if (first < Math.max(1, minPiece) || first > plankLength || first >= run.length) return false;
  return lastAfter(run, first, plankLength) >= minPiece;
}

/** End joints of a run, room coordinates; none of a single piece. */
export function jointsOf(run: OpenRun, first: number, plankLength: number): readonly number[] {
  if (run.isWallToWall) return [];
  const joints: number[] = [];
  for (let at = run.x + first; at < run.x + run.length; at += plankLength) joints.push(at);
  return joints;
}
