/**
 * The books of a cut plan: every plank booked once to pieces, kerfs and what is left over, and the counts a plan is
 * judged by. The laws a plan must keep stand in `laws.ts`.
 */

import { lastOf, sumOf } from '../../geometry/lists';
import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../job';
import { jointsOfRow } from '../judge/breaches';
import { type Waiting, waitingOf } from './waiting';

export { checkCutPlan } from '../judge/laws';

/** A plan's books. Lengths in the job's unit. */
export interface Ledger {
  /** In the order of their index. */
  readonly planks: readonly PlankBooking[];
  /** Crosscuts: between the pieces of a plank, against its left-over, and where a strip is shortened. */
  readonly cutCount: number;
  /** Pairs of joints two rows apart in one room and nearer than the job's aligned distance. */
  readonly alignedJointCount: number;
  /** Least distance of two joints in neighbouring rows of a room; null when no two neighbouring rows have joints. */
  readonly tightestStagger: number | null;
  /** Shortest first or last piece of the runs longer than a plank; null when there is no such run. */
  readonly shortestEndPiece: number | null;
  /** Length of all planks less the length of all pieces cut from it: kerfs and left-overs together. */
  readonly waste: number;
  /** Offcuts and strips that lie about between rows. */
  readonly waiting: Waiting;
}

/** One plank: `pieceLength + kerfLength + leftOver` is the plank's length, to the unit, in every legal plan. */
export interface PlankBooking {
  readonly plank: number;
  /** In laying order; strips take no length and stand apart. */
  readonly pieces: readonly BookedPiece[];
  readonly strips: readonly BookedStrip[];
  readonly pieceLength: number;
  /** Kerfs between pieces, and the kerf against the left-over as far as there is anything to cut it from. */
  readonly kerfLength: number;
  readonly leftOver: number;
  /** Crosscuts this plank takes, those of its strips included. */
  readonly cutCount: number;
}

/** A piece with its place in the floor, counted from 0. */
export interface BookedPiece {
  readonly rowIndex: number;
  readonly runIndex: number;
  readonly pieceIndex: number;
  readonly length: number;
  readonly from: KeptEnd;
}

/** A strip with the piece of a first row that it is ripped from: null in a plan that breaks the law of strips. */
export interface BookedStrip extends BookedPiece {
  readonly source: BookedPiece | null;
}

/**
 * The books of `plan`; any plan whose rows and runs are those of the job can be booked, legal or not.
 *
 * @param order indices of the rows, where they are not laid as they stand
 */
export function ledgerOf(
  job: CutJob,
  plan: CutPlan,
  order: readonly number[] = plan.rows.map((_, row) => row),
): Ledger {
  const planks = [...piecesByPlank(plan, order).entries()]
    .sort(([a], [b]) => a - b)
    .map(([plank, booked]) => bookPlank(job, plank, booked));
  const joints = job.rows.map((_, rowIndex) => jointsOfRow(job, plan, rowIndex));
  const staggers = neighbouringJoints(job, joints, 1);
  const aligned = neighbouringJoints(job, joints, 2).filter((distance) => distance < job.alignedDistance);
  const ends = endPieceLengths(job, plan);
  return {
    planks,
    cutCount: sumOf(planks, (plank) => plank.cutCount),
    alignedJointCount: aligned.length,
    tightestStagger: least(staggers),
    shortestEndPiece: least(ends),
    waste: sumOf(planks, (plank) => job.plankLength - plank.pieceLength),
    waiting: waitingOf(job, planks, order),
  };
}

function piecesByPlank(
  plan: CutPlan,
  order: readonly number[],
): Map<number, { own: BookedPiece[]; strips: BookedPiece[] }> {
  const planks = new Map<number, { own: BookedPiece[]; strips: BookedPiece[] }>();
  const book = (piece: PlannedPiece, place: BookedPiece): void => {
    const entry = planks.get(piece.plank) ?? { own: [], strips: [] };
    planks.set(piece.plank, entry);
    (piece.isStrip ? entry.strips : entry.own).push(place);
  };
  for (const rowIndex of order) {
    plan.rows[rowIndex].runs.forEach((run, runIndex) => {
      run.forEach((piece, pieceIndex) => {
        book(piece, {
          rowIndex,
          runIndex,
          pieceIndex,
          length: piece.length,
          from: piece.from,
        });
      });
    });
  }
  return planks;
}

function bookPlank(
  job: CutJob,
  plank: number,
  { own, strips: unbooked }: { own: readonly BookedPiece[]; strips: readonly BookedPiece[] },
): PlankBooking {
  const strips = bookStrips(job, own, unbooked);
  const pieceLength = sumOf(own, (piece) => piece.length);
  const between = Math.max(0, own.length - 1) * job.kerf;
  const rest = job.plankLength - pieceLength - between;
  // A rest thinner than the blade becomes sawdust.
  const lastKerf = own.length > 0 && rest > 0 ? Math.min(job.kerf, rest) : 0;
  const crosscuts = own.length === 0 ? 0 : own.length - 1 + (rest > 0 ? 1 : 0);
  return {
    plank,
    pieces: own,
    strips,
    pieceLength,
    kerfLength: between + lastKerf,
    leftOver: rest - lastKerf,
    cutCount: crosscuts + strips.filter(({ length, source }) => source && source.length > length).length,
  };
}

/** Every strip with its source, the longest strip from the longest piece; in laying order. */
function bookStrips(job: CutJob, own: readonly BookedPiece[], strips: readonly BookedPiece[]): BookedStrip[] {
  const longestFirst = (a: BookedPiece, b: BookedPiece): number => b.length - a.length;
  const free = [...own].sort(longestFirst);
  const sources = new Map<BookedPiece, BookedPiece>();
  for (const strip of [...strips].sort(longestFirst)) {
    const index = free.findIndex((piece) => canBeRippedFrom(job, strip, piece));
    if (index >= 0) sources.set(strip, free.splice(index, 1)[0]);
  }
  return strips.map((strip) => ({ ...strip, source: sources.get(strip) ?? null }));
}

function canBeRippedFrom(job: CutJob, strip: BookedPiece, piece: BookedPiece): boolean {
  const paired = job.ripPairs.some(([first, last]) => first === piece.rowIndex && last === strip.rowIndex);
  return paired && (piece.from === strip.from || piece.from === 'whole') && piece.length >= strip.length;
}

/** Distances of all pairs of joints `apart` rows from each other, no change of room between them. */
function neighbouringJoints(job: CutJob, joints: readonly (readonly number[])[], apart: number): number[] {
  const distances: number[] = [];
  for (let later = apart; later < joints.length; later += 1) {
    const rooms = job.rows.slice(later - apart, later + 1).map((row) => row.room);
    if (rooms.some((room) => room !== rooms[0])) continue;
    for (const a of joints[later - apart] ?? []) {
      for (const b of joints[later] ?? []) distances.push(Math.abs(a - b));
    }
  }
  return distances;
}

function endPieceLengths(job: CutJob, plan: CutPlan): number[] {
  return plan.rows.flatMap((row, rowIndex) =>
    row.runs.flatMap((run, runIndex) => {
      const isLong = (job.rows[rowIndex]?.runs[runIndex]?.length ?? 0) > job.plankLength;
      const ends = [run[0], lastOf(run)];
      return isLong ? ends.flatMap((piece) => (piece ? [piece.length] : [])) : [];
    }),
  );
}

function least(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((a, b) => Math.min(a, b));
}
