/**
 * The laws of a cut plan. This file is the judge: it shares nothing with the search but the types of a job.
 *
 * 1. Every run is filled exactly, by pieces of whole length no longer than a plank; `whole` is an uncut plank.
 * 2. A run longer than a plank begins with a piece that kept its right factory end, ends with one that kept its left
 *    one, has whole planks between, and neither end is under the minimum piece.
 * 3. A run no longer than a plank is one piece.
 * 4. A plank gives at most one piece with its left end and one with its right end; what is cut from it, the kerfs
 *    between and the play fit in its length. Play: in laying order, every last or wall-to-wall piece of a plank but the
 *    piece laid first has that much room to grow.
 * 5. Joints of neighbouring rows of a room keep the minimum stagger.
 * 6. A strip comes from a first-row piece of its rip pair on the same plank, at least as long and with the same
 *    kept end (or whole), when both widths and a kerf fit in the plank's width. One strip a piece.
 * 7. What the plan says of itself is so: planks, bound, proof, and each rule it declares broken.
 */

import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../job';
import { ruleLaws } from './breaches';
import { keepsEnd, nameOfRun, type PlacedPiece, piecesOf, placedPieces, whereOf } from './placedPieces';
import { plankLaws, stripLaws } from './plankLaws';

const KEPT_ENDS: readonly KeptEnd[] = ['left', 'right', 'middle', 'whole'];

/**
 * Every law that `plan` breaks, one readable line each with the numbers to replay it; empty when it is legal. Rows,
 * runs, pieces and planks are counted from 1 in the lines.
 *
 * A plan that declares rules broken is measured against what it declares: each breach of minimum piece or stagger
 * needs its entry, and each entry its breach. An entry stands for one run: `found` is the shorter of its end pieces,
 * or the least distance of its joints to those of the row before.
 */
export function checkCutPlan(job: CutJob, plan: CutPlan): readonly string[] {
  if (!matchesRows(job, plan)) return ['the rows and runs of the plan are not those of the job'];
  const pieces = placedPieces(job, plan);
  return [
    ...runLaws(job, plan),
    ...pieceLaws(job, pieces),
    ...plankLaws(job, pieces),
    ...stripLaws(job, pieces),
    ...ruleLaws(job, plan),
    ...claimLaws(plan, pieces),
  ];
}

function matchesRows(job: CutJob, plan: CutPlan): boolean {
  return (
    plan.rows.length === job.rows.length &&
    plan.rows.every((row, rowIndex) => row.runs.length === job.rows[rowIndex]?.runs.length)
  );
}

/** Laws 1 to 3, without the lengths of single pieces. */
function runLaws(job: CutJob, plan: CutPlan): string[] {
  return job.rows.flatMap((row, rowIndex) =>
    row.runs.flatMap(({ length }, runIndex) => {
      const name = nameOfRun(rowIndex, runIndex);
      const pieces = piecesOf(plan, rowIndex, runIndex);
      const filled = pieces.reduce((sum, piece) => sum + piece.length, 0);
      const fill = filled === length ? [] : [`${name}: pieces fill ${filled} of ${length}`];
      return [...fill, ...(length > job.plankLength ? longRunLaws(name, pieces) : shortRunLaws(name, pieces))];
    }),
  );
}

function shortRunLaws(name: string, pieces: readonly PlannedPiece[]): string[] {
  return pieces.length === 1 ? [] : [`${name}: ${pieces.length} pieces where one plank reaches`];
}

function longRunLaws(name: string, pieces: readonly PlannedPiece[]): string[] {
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  if (!first || !last || pieces.length < 2) return [`${name}: ${pieces.length} pieces, longer than a plank`];
  const broken: string[] = [];
  if (!keepsEnd(first, 'right')) broken.push(`${name}: the first piece is cut from ${first.from}, not right or whole`);
  if (!keepsEnd(last, 'left')) broken.push(`${name}: the last piece is cut from ${last.from}, not left or whole`);
  pieces.slice(1, -1).forEach((piece, index) => {
    if (piece.from !== 'whole') broken.push(`${name}, piece ${index + 2}: ${piece.from} between the ends, not whole`);
  });
  return broken;
}

/** Law 1 for single pieces. */
function pieceLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
  const full = job.plankLength;
  return pieces.flatMap((piece) => {
    const { length, from, plank } = piece;
    const broken: string[] = [];
    if (!isWhole(length, 1) || length > full) broken.push(`length ${length}, wanted 1 to ${full}`);
    if (!KEPT_ENDS.includes(from)) broken.push(`kept end ${from}`);
    if ((from === 'whole') !== (length === full)) broken.push(`${from} of length ${length}, plank ${full}`);
    if (!isWhole(plank, 0)) broken.push(`plank index ${plank}`);
    return broken.map((breach) => `${whereOf(piece)}: ${breach}`);
  });
}

function isWhole(value: number, least: number): boolean {
  return Number.isInteger(value) && value >= least;
}

/** Law 7, what is said of planks, bound, steps and proof. */
function claimLaws({ plankCount, bound, stop, steps }: CutPlan, pieces: readonly PlacedPiece[]): string[] {
  const used = new Set(pieces.map((piece) => piece.plank));
  const highest = pieces.reduce((most, piece) => Math.max(most, piece.plank), -1);
  const broken: string[] = [];
  if (plankCount !== used.size) broken.push(`plank count ${plankCount}, planks used ${used.size}`);
  if (highest >= used.size) broken.push(`plank ${highest + 1} is used, and only ${used.size} planks are`);
  if (!isWhole(bound, 0) || bound > plankCount) broken.push(`bound ${bound}, plank count ${plankCount}`);
  if (!isWhole(steps, 0)) broken.push(`steps ${steps}`);
  if (stop !== 'proved fewest' && stop !== 'step limit') broken.push(`stop: ${stop}`);
  if (stop === 'proved fewest' && bound !== plankCount) {
    broken.push(`proved fewest, with bound ${bound} and plank count ${plankCount}`);
  }
  return broken;
}
