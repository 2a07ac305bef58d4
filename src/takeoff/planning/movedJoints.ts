/** Ways to move the joints of a run in a plan: all of them together, or by a change of places with a run alike. */

import type { CutJob, CutPlan, PlannedPiece } from '../../cutting/job';
import { distinct, lastOf, sumOf } from '../../geometry/lists';

export interface RunPlace {
  readonly rowIndex: number;
  readonly runIndex: number;
}

interface PiecePlace extends RunPlace {
  readonly pieceIndex: number;
}

/** A plan with the runs whose joints are not where they were. */
export interface Move {
  readonly plan: CutPlan;
  readonly runs: readonly RunPlace[];
  /** Crosscuts more than before. */
  readonly cuts: number;
}

/** Where the pieces of each plank lie, in laying order. */
export type Planks = ReadonlyMap<number, readonly PiecePlace[]>;

export function planksOf({ rows }: CutPlan): Planks {
  const planks = new Map<number, PiecePlace[]>();
  rows.forEach(({ runs }, rowIndex) => {
    runs.forEach((pieces, runIndex) => {
      pieces.forEach(({ plank }, pieceIndex) => {
        const own = planks.get(plank);
        if (own) own.push({ rowIndex, runIndex, pieceIndex });
        else planks.set(plank, [{ rowIndex, runIndex, pieceIndex }]);
      });
    });
  });
  return planks;
}

export function jointsOf({ rows }: CutJob, plan: CutPlan, { rowIndex, runIndex }: RunPlace): readonly number[] {
  let { x } = rows[rowIndex].runs[runIndex];
  return piecesOf(plan, { rowIndex, runIndex })
    .slice(0, -1)
    .map(({ length }) => {
      x += length;
      return x;
    });
}

/** Joints of the row so many rows on, where it is of the same room. */
export function jointsOfRow(job: CutJob, plan: CutPlan, rowIndex: number, step: number): readonly number[] {
  const row = job.rows[rowIndex + step];
  if (row?.room !== job.rows[rowIndex].room) return [];
  return row.runs.flatMap((_, runIndex) => jointsOf(job, plan, { rowIndex: rowIndex + step, runIndex }));
}

function piecesOf(plan: CutPlan, { rowIndex, runIndex }: RunPlace): readonly PlannedPiece[] {
  return plan.rows[rowIndex].runs[runIndex];
}

/**
 * The run shifted to either side, the least first: its first piece grows by what its last one loses, or the other way. Planks,
 * and what shares them, stay as they are.
 *
 * @param farthest most that it is shifted, in the unit of the job
 */
export function* shifts(
  job: CutJob,
  plan: CutPlan,
  planks: Planks,
  place: RunPlace,
  farthest: number,
): Generator<Move> {
  for (let by = 1; by <= farthest; by++) {
    for (const shift of [by, -by]) {
      const runs = runsShifted(job, plan, planks, place, shift);
      if (!runs) continue;
      const changes = runs.map((run) => [run, shiftedPieces(piecesOf(plan, run), shift)] as const);
      const next = withRuns(plan, changes);
      const touched = runs.flatMap((run) => piecesOf(plan, run).map(({ plank }) => plank));
      const cuts = (of: CutPlan) => sumOf(distinct(touched), (plank) => cutsOf(job, piecesAt(of, planks, plank)));
      yield { plan: next, runs, cuts: cuts(next) - cuts(plan) };
    }
  }
}

/**
 * The runs that have to move along: an end that grows takes from what its plank has left, or else from the end of another
 * run that is cut from it, whose other end then grows. Null where a plank has nothing to give, or gives strips.
 */
function runsShifted(
  job: CutJob,
  plan: CutPlan,
  planks: Planks,
  place: RunPlace,
  shift: number,
): readonly RunPlace[] | null {
  const runs: RunPlace[] = [];
  for (let run = place; ; ) {
    const pieces = piecesOf(plan, run);
    const [first, last] = [pieces[0], lastOf(pieces)];
    // A whole plank at an end may be cut, and cannot grow.
    const [grown, shrunk] = shift > 0 ? [first, last] : [last, first];
    const [ownEnd, otherEnd] = shift > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const);
    if (pieces.length < 2 || grown.from !== ownEnd || (shrunk.from !== otherEnd && shrunk.from !== 'whole'))
      return null;
    const [most, least] = [grown.length + Math.abs(shift), shrunk.length - Math.abs(shift)];
    if (most >= job.plankLength || least < job.minPiece) return null;
    const givesStrips = [grown, shrunk].some(({ plank }) =>
      piecesAt(plan, planks, plank).some(({ isStrip }) => isStrip),
    );
    if (givesStrips) return null;
    runs.push(run);
    const shared = planks.get(grown.plank) ?? [];
    const giver = shared.find((at) => piecesOf(plan, at)[at.pieceIndex].from === otherEnd);
    if (giver?.rowIndex === place.rowIndex && giver.runIndex === place.runIndex) return runs;
    if (spareOf(job, piecesAt(plan, planks, grown.plank)) >= Math.abs(shift)) return runs;
    if (!giver) return null;
    run = giver;
  }
}

function piecesAt(plan: CutPlan, planks: Planks, plank: number): readonly PlannedPiece[] {
  return (planks.get(plank) ?? []).map((at) => piecesOf(plan, at)[at.pieceIndex]);
}

/** What a plank has left beyond its pieces and kerfs. */
function restOf({ plankLength, kerf }: CutJob, pieces: readonly PlannedPiece[]): number {
  return plankLength - sumOf(pieces, ({ length }) => length) - (pieces.length - 1) * kerf;
}

/** The same beyond its play. */
function spareOf(job: CutJob, pieces: readonly PlannedPiece[]): number {
  const growing = pieces.slice(1).filter(({ from }) => from === 'left' || from === 'middle').length;
  return restOf(job, pieces) - growing * (job.play ?? 0);
}

function cutsOf(job: CutJob, pieces: readonly PlannedPiece[]): number {
  return pieces.length - 1 + (restOf(job, pieces) > 0 ? 1 : 0);
}

function shiftedPieces(pieces: readonly PlannedPiece[], shift: number): readonly PlannedPiece[] {
  const last = pieces.length - 1;
  return pieces.map((piece, i): PlannedPiece => {
    if (i > 0 && i < last) return piece;
    return { ...piece, length: piece.length + (i === 0 ? shift : -shift), from: i === 0 ? 'right' : 'left' };
  });
}

function withRuns(plan: CutPlan, changes: readonly (readonly [RunPlace, readonly PlannedPiece[]])[]): CutPlan {
  const rows = [...plan.rows];
  for (const [{ rowIndex, runIndex }, pieces] of changes) {
    rows[rowIndex] = { runs: rows[rowIndex].runs.map((run, k) => (k === runIndex ? pieces : run)) };
  }
  return { ...plan, rows };
}

/** The run in the place of one alike in another row of its room, and that in its place; the nearest rows first. */
export function* exchanges(job: CutJob, plan: CutPlan, place: RunPlace): Generator<Move> {
  const { room, runs } = job.rows[place.rowIndex];
  const own = runs[place.runIndex];
  const alike = job.rows.flatMap((row, rowIndex) =>
    row.runs.flatMap((run, runIndex) => {
      const isAlike = row.room === room && rowIndex !== place.rowIndex && run.x === own.x && run.length === own.length;
      return isAlike ? [{ rowIndex, runIndex }] : [];
    }),
  );
  const away = (other: RunPlace) => Math.abs(other.rowIndex - place.rowIndex);
  for (const other of alike.sort((a, b) => away(a) - away(b))) {
    const changes = [
      [place, piecesOf(plan, other)],
      [other, piecesOf(plan, place)],
    ] as const;
    yield { plan: withRuns(plan, changes), runs: [place, other], cuts: 0 };
  }
}
