/**
 * What is left of the planks of a list: offcuts that wait with a number written on them, and pieces that are cut and do not
 * lie yet. Lengths are whole units of the job.
 */
import type { KeptEnd } from '../../cutting/job';
import type { StockPiece } from '../../cutting/onward/onwardJob';
import { lastOf } from '../../geometry/lists';
import { endAt, type ListedCut } from './asLaid';
import { type ListedPlan, writtenFor } from './listedPlan';

/** A piece that more can be cut from. */
export interface InHand extends StockPiece {
  /** Number of its plank, counted from 1. */
  readonly plankNumber: number;
  /** What is written on it, and the piece that it is kept for; '' and none of what a piece cut short left. */
  readonly mark: string;
  readonly keptFor?: ListedCut;
}

/** What became of the planks of a list. */
export interface PlanksInHand {
  readonly held: readonly InHand[];
  /** Numbers of the planks that gave a piece which is cut. */
  readonly begun: ReadonlySet<number>;
  /** Numbers of the planks that are gone whole: nothing that lies was cut from them. */
  readonly spoilt: ReadonlySet<number>;
}

/** Waste is nobody's: a rest counts as in hand only where a list has more to be cut from it, or where a piece was cut short. */
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
    if (isGone) continue;
    const length = cut.reduce((left, piece) => left - listed.unitsOf(piece) - job.kerf, job.plankLength);
    const waits = pieces.find((piece) => !piece.isCut);
    if (!waits) {
      const serves = length >= job.minPiece && cut.some((piece) => isCutShort(piece, listed));
      if (serves) held.push({ length, ends: endsLeft(cut, listed), plankNumber, mark: '' });
      continue;
    }
    const has = (end: 'left' | 'right') => !cut.some(({ from }) => from === end || from === 'whole');
    held.push({
      length,
      ends: has('left') ? (has('right') ? 'both' : 'left') : has('right') ? 'right' : 'none',
      plankNumber,
      mark: writtenFor(listed, waits, lastOf(cut)),
      keptFor: waits,
    });
  }
  return { held: held.filter(({ length }) => length > 0), begun, spoilt };
}

/** By more than the play, with which a piece is as it was drawn and its rest the waste that was listed. */
function isCutShort({ length, cutLength }: ListedCut, { planned: { job, grid } }: ListedPlan): boolean {
  return length - cutLength > (job.play ?? 0) * grid.unit;
}

/** Which end a piece took that needs none is not known: then its rest has none for sure. */
function endsLeft(cut: readonly ListedCut[], listed: ListedPlan): StockPiece['ends'] {
  const [kept] = cut.map((piece) => keptEnd(piece, listed));
  if (cut.length > 1 || kept === 'middle') return 'none';
  return kept === 'left' ? 'right' : 'left';
}

/** A whole plank that was cut short keeps the end that locks at its place. */
function keptEnd(piece: ListedCut, { rows, placeOf }: ListedPlan): KeptEnd {
  if (piece.from !== 'whole') return piece.from;
  const [row, run, place] = placeOf(piece);
  return endAt(place, rows[row][run].pieces.length);
}

/** A piece that is cut and waits: it keeps the end it was cut with. A whole plank that was only ripped is as good as new. */
function cutPiece(piece: ListedCut, listed: ListedPlan): readonly InHand[] {
  const { plankNumber, label } = piece;
  const { job } = listed.planned;
  const length = listed.unitsOf(piece);
  if (length >= job.plankLength) return [];
  const kept = keptEnd(piece, listed);
  const ends = kept === 'middle' || kept === 'whole' ? 'none' : kept;
  const { width } = job.rows[listed.placeOf(piece)[0]];
  return [{ length, ends, width, plankNumber, mark: label, keptFor: piece }];
}
