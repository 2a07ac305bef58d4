/**
 * Rows whose strips serve some pieces of another and not others stay as they are in the plan at hand while the rest of
 * the floor is laid anew: a piece that a strip serves takes no plank.
 */
import { costsByPair, lastPieceOf, type PreparedJob, wholesOf } from '../runs/prepared';
import { matchStrips, NO_STRIP } from '../runs/strips';
import type { StripWait } from './sharing';
import type { Worth } from './worth';

export interface Pinned {
  /** First piece of each run that stays as it is; 0 for the others. */
  readonly firsts: Int32Array;
  /** 1 for an end piece that is a strip: 2r is the first piece of run r, 2r + 1 its last. */
  readonly isStrip: Uint8Array;
  /** Whole planks of each run that are strips. */
  readonly wholes: Int32Array;
  /** What the strips would cost by length (see `worth.ts`). */
  readonly saved: number;
  readonly strips: readonly StripWait[];
}

/** Planks to waste that are left when a strip is not saved up. */
const SPARE_KEPT = 0.5;

/**
 * What may stay as it is: strips wait all the while, so those that save least are left to waste as far as so many planks
 * allow, and failing that all are saved up. Nothing where a piece from wall to wall gives or takes a strip: it keeps an end
 * of its plank for it.
 */
export function pinnings(prepared: PreparedJob, at: Int32Array, worth: Worth, planks: number): readonly Pinned[] {
  const pinned = pinnedOf(prepared, at);
  if (!pinned) return [];
  const fewer = fewerStrips(prepared, pinned, worth, planks);
  return fewer === pinned ? [pinned] : [fewer, pinned];
}

function fewerStrips(prepared: PreparedJob, pinned: Pinned, worth: Worth, planks: number): Pinned {
  let fewer = pinned;
  for (;;) {
    const next = withoutShortest(prepared, fewer);
    if (!next || worth.spareOf(planks) + next.saved < SPARE_KEPT * worth.plank) return fewer;
    fewer = next;
  }
}

function pinnedOf(prepared: PreparedJob, at: Int32Array): Pinned | undefined {
  const { runs, plankLength, job } = prepared;
  const plank = plankLength + job.kerf + (job.play ?? 0);
  if (runs.some((run) => run.isWallToWall && costsByPair(run))) return undefined;
  const firsts = Int32Array.from(runs, (run) => (costsByPair(run) ? at[run.index] : 0));
  const isStrip = new Uint8Array(2 * runs.length);
  const wholes = new Int32Array(runs.length);
  const strips: StripWait[] = [];
  let saved = 0;
  for (const rows of prepared.stripRows) {
    if (rows.areLaidAlike) continue;
    const { wanted, sources, wholesDue } = matchStrips(prepared, rows, at);
    const wait = { from: runs[rows.first[0]].rowIndex, to: runs[rows.last[0]].rowIndex };
    wanted.ends.forEach(({ run, side, length }, i) => {
      if (sources[i] === NO_STRIP) return;
      isStrip[2 * run + (side === 'left' ? 1 : 0)] = 1;
      saved += length + job.kerf;
      strips.push(wait);
    });
    let served = wanted.wholes - wholesDue;
    saved += served * plank;
    for (let i = 0; i < served; i++) strips.push(wait);
    const serve = (count: number): number => {
      const now = Math.min(served, count);
      served -= now;
      return now;
    };
    // In the order in which the plan books them.
    for (const run of rows.last) {
      const isWhole = (length: number): number => Number(length === plankLength);
      isStrip[2 * run] ||= serve(isWhole(at[run]));
      wholes[run] = serve(wholesOf(runs[run], at[run]));
      isStrip[2 * run + 1] ||= serve(isWhole(lastPieceOf(runs[run], at[run], plankLength)));
    }
  }
  return { firsts, isStrip, wholes, saved, strips };
}

/** The same without the strip that saves least; undefined where all are of whole planks. */
function withoutShortest({ runs, plankLength, job }: PreparedJob, pinned: Pinned): Pinned | undefined {
  const { firsts, isStrip } = pinned;
  let shortest = -1;
  let least = plankLength;
  isStrip.forEach((is, piece) => {
    const first = firsts[piece >> 1];
    const length = (piece & 1) === 0 ? first : lastPieceOf(runs[piece >> 1], first, plankLength);
    if (is === 0 || length >= least) return;
    least = length;
    shortest = piece;
  });
  if (shortest < 0) return undefined;
  const without = isStrip.slice();
  without[shortest] = 0;
  const row = runs[shortest >> 1].rowIndex;
  const index = pinned.strips.findIndex(({ to }) => to === row);
  const strips = pinned.strips.filter((_, i) => i !== index);
  return { ...pinned, isStrip: without, saved: pinned.saved - least - job.kerf, strips };
}

/** The same for the floor from its last run back; its strips still wait as they did. */
export function turnedRound({ firsts, isStrip, wholes, ...rest }: Pinned): Pinned {
  const runs = firsts.length;
  return {
    ...rest,
    firsts: firsts.slice().reverse(),
    isStrip: isStrip.map((_, piece) => isStrip[2 * (runs - 1 - (piece >> 1)) + (piece & 1)]),
    wholes: wholes.slice().reverse(),
  };
}
