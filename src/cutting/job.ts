/**
 * What the search is given and what it answers. Lengths here are whole numbers of one unit (the marking step of the
 * floor, or whatever unit a file of jobs states): the search does not care which.
 */

/** A cutting job: runs to be filled from planks of one length, under the rules of the floor. */
export interface CutJob {
  readonly plankLength: number;
  /** Face width; decides whether two ripped strips fit on one plank. */
  readonly plankWidth: number;
  /** Width of the saw cut between two pieces of a plank, >= 0. */
  readonly kerf: number;
  /**
   * How much longer than drawn a piece that ends at a wall may turn out, >= 0; none where missing. Along a plank, in
   * laying order (rows, runs from the left, pieces from the left), every last or wall-to-wall piece but the piece laid
   * first counts as longer by this: it is cut from what is left, and has to have room to grow.
   */
  readonly play?: number;
  /** Least length of a first or last piece of a run longer than a plank; a piece of exactly this length is allowed. */
  readonly minPiece: number;
  /** Least distance of end joints in neighbouring rows of one room; exactly this distance is allowed. */
  readonly minStagger: number;
  /** Joints of rows i and i+2 nearer than this look aligned: counted against a plan's quality, never forbidden. */
  readonly alignedDistance: number;
  /** In laying order; the rows of one room are consecutive. */
  readonly rows: readonly JobRow[];
  /** [first row, last row] whose strips may come from one plank when both widths and a kerf fit in its width. */
  readonly ripPairs: readonly (readonly [number, number])[];
}

export interface JobRow {
  readonly room: number;
  /** Width the row is laid at. */
  readonly width: number;
  readonly runs: readonly JobRun[];
}

/** One unbroken wall-to-wall stretch of a row. */
export interface JobRun {
  /** Left end, in room coordinates: joints of different runs are compared there. */
  readonly x: number;
  readonly length: number;
}

/**
 * Which factory end a piece keeps. `whole` is an uncut plank; `middle` keeps none that is needed (a wall-to-wall
 * piece may come from anywhere).
 */
export type KeptEnd = 'left' | 'right' | 'middle' | 'whole';

export interface PlannedPiece {
  readonly length: number;
  /** Index of the plank it is cut from, 0 up; pieces with the same index share a plank. */
  readonly plank: number;
  readonly from: KeptEnd;
  /** A tongue-side strip left over when a first-row piece of the same plank was ripped; takes no length of its own. */
  readonly isStrip?: true;
}

export interface PlannedRow {
  readonly runs: readonly (readonly PlannedPiece[])[];
}

/** A rule that no plan could meet, where the nearest plan breaks it, and by how much. */
export interface BrokenRule {
  readonly rule: 'minimum piece' | 'minimum stagger';
  readonly rowIndex: number;
  readonly runIndex: number;
  /** What the plan has there, in the job's unit. */
  readonly found: number;
  readonly wanted: number;
}

export interface CutPlan {
  readonly rows: readonly PlannedRow[];
  readonly plankCount: number;
  /** No legal plan uses fewer planks than this. */
  readonly bound: number;
  readonly stop: 'proved fewest' | 'step limit';
  /** Work done, in steps of the search: the same for the same job everywhere. */
  readonly steps: number;
  /** Empty when the plan is legal. */
  readonly broken: readonly BrokenRule[];
}
