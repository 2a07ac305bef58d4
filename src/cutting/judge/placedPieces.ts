import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../job';

/** A piece of a plan with its place. */
export interface PlacedPiece extends PlannedPiece {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly pieceIndex: number;
  /** The last piece of its run, or its only one: it ends at a wall, and may turn out longer than drawn. */
  readonly endsAtWall: boolean;
}

/** Its name in the lines of the law; counted from 1. */
export function whereOf({ rowIndex, runIndex, pieceIndex }: PlacedPiece): string {
  return `${nameOfRun(rowIndex, runIndex)}, piece ${pieceIndex + 1}`;
}

/** All pieces in laying order. */
export function placedPieces(job: CutJob, plan: CutPlan): PlacedPiece[] {
  return job.rows.flatMap((row, rowIndex) =>
    row.runs.flatMap((_, runIndex) =>
      piecesOf(plan, rowIndex, runIndex).map((piece, pieceIndex, ofRun) => ({
        ...piece,
        rowIndex,
        runIndex,
        pieceIndex,
        endsAtWall: pieceIndex === ofRun.length - 1,
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
