import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../job';

/** A piece of a plan with its place, as it is named in the lines of the law. */
export interface PlacedPiece extends PlannedPiece {
  readonly rowIndex: number;
  /** The last piece of its run, or its only one: it ends at a wall, and may turn out longer than drawn. */
  readonly endsAtWall: boolean;
  readonly where: string;
}

/** All pieces in laying order. */
export function placedPieces(job: CutJob, plan: CutPlan): PlacedPiece[] {
  return job.rows.flatMap((row, rowIndex) =>
    row.runs.flatMap((_, runIndex) =>
      piecesOf(plan, rowIndex, runIndex).map((piece, pieceIndex, ofRun) => ({
        ...piece,
        rowIndex,
        endsAtWall: pieceIndex === ofRun.length - 1,
        where: `${nameOfRun(rowIndex, runIndex)}, piece ${pieceIndex + 1}`,
      })),
    ),
  );
}

/** The pieces of one run; none where the plan does not have it. */
export function piecesOf(plan: CutPlan, rowIndex: number, runIndex: number): readonly PlannedPiece[] {
  return plan.rows[rowIndex]?.runs[runIndex] ?? [];
}

/** Counted from 1. */
export function nameOfRun(rowIndex: number, runIndex: number): string {
  return `row ${rowIndex + 1}, run ${runIndex + 1}`;
}

/** Whether a piece still has this factory end: an uncut plank has both. */
export function keepsEnd(piece: PlannedPiece, end: KeptEnd): boolean {
  return piece.from === end || piece.from === 'whole';
}
