/**
 * Rows end with the piece that is cut. The last piece is measured in place, so `48, 48, 47 1/4` is laid without knowing the
 * room to a sixteenth, where `47 1/4, 48, 48` is not: its last plank fits, or it does not.
 */
import { lastOf } from '../../geometry/lists';
import type { CutJob, CutPlan, PlannedPiece } from '../job';
import { jointsOfRow } from '../judge/breaches';

/**
 * Runs that begin with a cut piece and end with a whole plank, turned about where both planks serve nothing else, the
 * stagger is kept and no joint more is aligned. Planks, cuts and what waits stay as they are.
 *
 * @param plan one that breaks no rule; any other stays as it is
 */
export function cutPiecesLast(job: CutJob, plan: CutPlan): CutPlan {
  if (plan.broken.length > 0) return plan;
  const planks = plan.rows.flatMap(({ runs }) => runs.flat().map(({ plank }) => plank));
  const uses = new Map<number, number>();
  for (const plank of planks) uses.set(plank, (uses.get(plank) ?? 0) + 1);
  const isAlone = ({ plank }: PlannedPiece) => uses.get(plank) === 1;
  const rows = [...plan.rows];
  const now = { ...plan, rows };
  /** Pairs of joints of a row and of those so many rows away that are nearer than a distance. */
  const near = (rowIndex: number, away: number, distance: number) =>
    [rowIndex - away, rowIndex + away]
      .filter((other) => job.rows[other]?.room === job.rows[rowIndex].room)
      .flatMap((other) => jointsOfRow(job, now, other))
      .flatMap((joint) => jointsOfRow(job, now, rowIndex).filter((own) => Math.abs(own - joint) < distance)).length;
  rows.forEach((row, r) => {
    row.runs.forEach((run, u) => {
      const [first, last] = [run[0], lastOf(run)];
      if (first.from !== 'right' || last.from !== 'whole' || !isAlone(first) || !isAlone(last)) return;
      const [before, aligned] = [rows[r], near(r, 2, job.alignedDistance)];
      // Planks keep their numbers in the order in which they are needed.
      const cut = { ...first, from: 'left' as const, plank: last.plank };
      const turned = [{ ...last, plank: first.plank }, ...run.slice(1, -1), cut];
      rows[r] = { runs: before.runs.map((other, i) => (i === u ? turned : other)) };
      if (near(r, 1, job.minStagger) > 0 || near(r, 2, job.alignedDistance) > aligned) rows[r] = before;
    });
  });
  return now;
}
