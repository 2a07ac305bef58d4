/**
 * What is left of the planks of a list: offcuts that wait with a number written on them, and pieces that are cut and do not
 * lie yet. Lengths are whole units of the job.
 */

import type { StockPiece } from '../../cutting/onward/onwardJob';
import { lastOf, sumOf } from '../../geometry/lists';
import type { ListedCut } from './asLaid';
import { type ListedPlan, writtenFor } from './listedPlan';

/** A piece that more can be cut from. */
export interface InHand extends StockPiece {
  /** Number of its plank, counted from 1. */
  readonly plankNumber: number;
  /** What is written on it, and the piece that it is kept for. */
  readonly mark: string;
  readonly keptFor: ListedCut;
}

/** What became of the planks of a list. */
export interface PlanksInHand {
  readonly held: readonly InHand[];
  /** Numbers of the planks that gave a piece which is cut. */
  readonly begun: ReadonlySet<number>;
  /** Numbers of the planks that are gone whole: nothing that lies was cut from them. */
  readonly spoilt: ReadonlySet<number>;
}

/** Waste is nobody's: a rest counts as in hand only where a list has more to be cut from it. */
export function planksInHand(listed: ListedPlan): PlanksInHand {
  const { job } = listed.planned;
  const planks = new Map<number, ListedCut[]>();
  for (const piece of listed.pieces) {
    if (!piece.isStrip) planks.set(piece.plankNumber, [...(planks.get(piece.plankNumber) ?? []), piece]);
  }
  const begun = new Set<number>();
  const spoilt = new Set<number>();
  const held: InHand[] = [];
  for (const [plankNumber, pieces] of planks) {
    const isGone = pieces.some((piece) => piece.isGone);
    const cut = pieces.filter((piece) => piece.isCut);
    if (cut.length === 0 && isGone) spoilt.add(plankNumber);
    if (cut.length === 0) continue;
    begun.add(plankNumber);
    held.push(...cut.filter(({ isLaid }) => !isLaid).flatMap((piece) => cutPiece(piece, listed)));
    const waits = pieces.find((piece) => !piece.isCut);
    if (!waits || isGone) continue;
    const used = sumOf(cut, (piece) => listed.unitsOf(piece) + job.kerf);
    const has = (end: 'left' | 'right') => !cut.some(({ from }) => from === end || from === 'whole');
    held.push({
      length: job.plankLength - used,
      ends: has('left') ? (has('right') ? 'both' : 'left') : has('right') ? 'right' : 'none',
      plankNumber,
      mark: writtenFor(listed, waits, lastOf(cut)),
      keptFor: waits,
    });
  }
  return { held: held.filter(({ length }) => length > 0), begun, spoilt };
}

/** A piece that is cut and waits: it keeps the end it was cut with. A whole plank that was only ripped is as good as new. */
function cutPiece(piece: ListedCut, { planned, placeOf, unitsOf }: ListedPlan): readonly InHand[] {
  const { from, plankNumber, label } = piece;
  if (from === 'whole') return [];
  const ends = from === 'middle' ? 'none' : from;
  const { width } = planned.job.rows[placeOf(piece)[0]];
  return [{ length: unitsOf(piece), ends, width, plankNumber, mark: label, keptFor: piece }];
}
