/** A floor as it lies: the pieces of a cut list with what a person has put beside them. Lengths in ticks. */

import type { KeptEnd } from '../../cutting/job';
import type { Ticks } from '../../geometry/length';
import { lastOf } from '../../geometry/lists';

/** One piece of a cut list, and what became of it. */
export interface ListedCut {
  readonly label: string;
  readonly rowNumber: number;
  /** As listed. */
  readonly length: Ticks;
  /** As it was cut: the listed length unless another was typed. */
  readonly cutLength: Ticks;
  readonly from: KeptEnd;
  /** Number of the plank it was to be cut from, counted from 1. */
  readonly plankNumber: number;
  readonly isStrip: boolean;
  readonly isLaid: boolean;
  /** Cut, whether it lies or not. */
  readonly isCut: boolean;
  /** Spoilt or lost: what it was to be cut from; of a piece that is cut, the rest of its plank. */
  readonly isGone: boolean;
  /** The run that begins with it; null for any other piece. `found` is null where it is as drawn. */
  readonly run: { readonly found: Ticks | null } | null;
}

/** A run of the list: its pieces from the left, and its length where another was found than drawn. */
export interface ListedRun {
  readonly pieces: readonly ListedCut[];
  readonly found: Ticks | null;
}

/** Pieces by rows and runs, in laying order. */
export function listedRows(listed: readonly ListedCut[]): readonly (readonly ListedRun[])[] {
  const rows = new Map<number, { pieces: ListedCut[]; found: Ticks | null }[]>();
  for (const piece of listed) {
    const runs = rows.get(piece.rowNumber) ?? [];
    rows.set(piece.rowNumber, runs);
    if (piece.run || runs.length === 0) runs.push({ pieces: [], found: piece.run?.found ?? null });
    lastOf(runs).pieces.push(piece);
  }
  return [...rows.values()];
}

/** The end that locks there: a piece between two others has both, so it is a whole plank. */
export function endAt(index: number, pieceCount: number): KeptEnd {
  if (pieceCount === 1) return 'middle';
  return index === 0 ? 'right' : index === pieceCount - 1 ? 'left' : 'middle';
}
