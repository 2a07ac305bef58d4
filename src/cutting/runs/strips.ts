/** Which strip serves which piece: one of the same side that is no longer; a strip of a whole plank serves any. */
import { lastPieceOf, type PreparedJob, wholesOf } from './prepared';
import type { StripRows } from './stripRows';

/** Which side of a plank a cut piece keeps; a middle piece has walls at both ends. */
export type Side = 'right' | 'left' | 'middle';

/** The cut pieces of a row, longest first, and its whole planks. */
export interface RowEnds {
  readonly ends: { readonly run: number; readonly side: Side; readonly length: number }[];
  wholes: number;
}

/** Source of a piece that a strip of a whole plank serves. */
export const WHOLE_STRIP = -2;
/** Source of a piece that no strip serves. */
export const NO_STRIP = -1;

export interface StripMatch {
  readonly wanted: RowEnds;
  readonly given: RowEnds;
  /** For each wanted end, the given end whose strip serves it, `WHOLE_STRIP` or `NO_STRIP`. */
  readonly sources: number[];
  /** Wanted whole planks that no strip serves. */
  wholesDue: number;
}

/**
 * Serves the pieces of the last row from strips of the first: whole from whole, then the longest first from the shortest
 * strip of its side that is long enough, then what is left from whole strips.
 *
 * @param at first piece of every run; 0 where it is not laid
 */
export function matchStrips(prepared: PreparedJob, rows: StripRows, at: Int32Array): StripMatch {
  const wanted = rowEnds(prepared, rows.last, at, 'wanted');
  const given = rowEnds(prepared, rows.first, at, 'given');
  const sources = wanted.ends.map(() => NO_STRIP);
  wanted.ends.forEach(({ side, length }, i) => {
    for (let j = given.ends.length - 1; j >= 0 && sources[i] === NO_STRIP; j--) {
      const isSide = side === 'middle' || given.ends[j].side === side;
      if (isSide && given.ends[j].length >= length && !sources.includes(j)) sources[i] = j;
    }
  });
  let spare = given.wholes - wanted.wholes;
  for (let i = 0; i < sources.length && spare > 0; i++) {
    if (sources[i] !== NO_STRIP) continue;
    sources[i] = WHOLE_STRIP;
    spare--;
  }
  return { wanted, given, sources, wholesDue: Math.max(0, wanted.wholes - given.wholes) };
}

function rowEnds(prepared: PreparedJob, runs: readonly number[], at: Int32Array, role: 'wanted' | 'given'): RowEnds {
  const { plankLength: L, kerf } = prepared;
  const row: RowEnds = { ends: [], wholes: 0 };
  const add = (run: number, side: Side, length: number): void => {
    if (length < L) row.ends.push({ run, side, length });
    else row.wholes++;
  };
  for (const index of runs) {
    const run = prepared.runs[index];
    const s = at[index];
    if (s === 0) continue;
    if (run.isWallToWall) {
      // A piece that begins or ends with its plank can keep that end for its strip.
      const end = s - run.length <= kerf ? 'right' : s === L ? 'left' : 'middle';
      add(index, role === 'wanted' ? 'middle' : end, run.length);
      continue;
    }
    add(index, 'right', s);
    add(index, 'left', lastPieceOf(run, s, L));
    row.wholes += wholesOf(run, s);
  }
  row.ends.sort((a, b) => b.length - a.length);
  return row;
}
