/** Where a plan breaks minimum piece (law 2) and minimum stagger (law 5), against what it declares. */
import type { BrokenRule, CutJob, CutPlan } from '../job';
import { nameOfRun, piecesOf } from './placedPieces';

/** A breach the plan does not declare, and a declared one that is not what the plan does. */
export function ruleLaws(job: CutJob, plan: CutPlan): string[] {
  const breaches = breachesOf(job, plan);
  const undeclared = breaches.filter((breach) => !plan.broken.some((entry) => isSame(entry, breach)));
  const unfounded = plan.broken.filter((entry) => !breaches.some((breach) => isSame(entry, breach)));
  return [
    ...undeclared.map((breach) => `${describe(breach)}, and the plan does not say so`),
    ...unfounded.map((entry) => `${describe(entry)} is declared, and is not what the plan does`),
  ];
}

function isSame(a: BrokenRule, b: BrokenRule): boolean {
  const sameRun = a.rowIndex === b.rowIndex && a.runIndex === b.runIndex;
  return sameRun && a.rule === b.rule && a.found === b.found && a.wanted === b.wanted;
}

function describe({ rule, rowIndex, runIndex, found, wanted }: BrokenRule): string {
  return `${nameOfRun(rowIndex, runIndex)}: ${rule} ${found}, wanted ${wanted}`;
}

/** One entry a run and rule. */
function breachesOf(job: CutJob, plan: CutPlan): BrokenRule[] {
  return job.rows.flatMap((row, rowIndex) => {
    const isSameRoom = job.rows[rowIndex - 1]?.room === row.room;
    const before = isSameRoom ? jointsOfRow(job, plan, rowIndex - 1) : [];
    return row.runs.flatMap((run, runIndex) => {
      const lengths = piecesOf(plan, rowIndex, runIndex).map((piece) => piece.length);
      const ends = run.length > job.plankLength ? [...lengths.slice(0, 1), ...lengths.slice(-1)] : [];
      const shortest = Math.min(...ends, job.minPiece);
      const nearest = nearestDistance(jointsOfRun(run.x, lengths), before, job.minStagger);
      const rules: BrokenRule[] = [
        { rule: 'minimum piece', rowIndex, runIndex, found: shortest, wanted: job.minPiece },
        { rule: 'minimum stagger', rowIndex, runIndex, found: nearest, wanted: job.minStagger },
      ];
      return rules.filter(({ found, wanted }) => found < wanted);
    });
  });
}

/** Joints of all runs of a row, room coordinates. */
export function jointsOfRow(job: CutJob, plan: CutPlan, rowIndex: number): number[] {
  const runs = job.rows[rowIndex]?.runs ?? [];
  return runs.flatMap((run, runIndex) =>
    jointsOfRun(
      run.x,
      piecesOf(plan, rowIndex, runIndex).map((piece) => piece.length),
    ),
  );
}

/** Room coordinates of the joints of a run that starts at `x`. */
function jointsOfRun(x: number, lengths: readonly number[]): number[] {
  let joint = x;
  return lengths.slice(0, -1).map((length) => {
    joint += length;
    return joint;
  });
}

/** The least distance between two joints, or `wanted` when none are nearer than that. */
function nearestDistance(joints: readonly number[], others: readonly number[], wanted: number): number {
  let nearest = wanted;
  for (const a of joints) {
    for (const b of others) nearest = Math.min(nearest, Math.abs(a - b));
  }
  return nearest;
}
