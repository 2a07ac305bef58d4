/** The last row of a floor that lies in part, at a far wall that was measured. */

import { type Ticks, ticksOfInches, ticksOfMm } from '../../geometry/length';
import { addedUp, lastOf } from '../../geometry/lists';
import { type WallRip, wallRipsOf } from '../../layout/wallRips';
import type { AsYouLay } from '../planning/asYouLay';
import { asYouLayProblems as text } from '../reading/asYouLayProblems';
import type { ReadRoom } from '../reading/readRoom';
import type { FloorPiece, Takeoff } from '../result';
import { wallCut, wallWords } from './wallRips';

export interface LastRow {
  readonly takeoff: Takeoff;
  readonly words: readonly string[];
}

/**
 * @param laidRowCount rows that lie to their end
 * @param wall as measured; `afterRow` is known here
 */
export function withMeasuredWall(
  takeoff: Takeoff,
  { rules, product, units }: Pick<ReadRoom, 'rules' | 'product' | 'units'>,
  wall: NonNullable<AsYouLay['wall']> & { readonly afterRow: number },
  show: (ticks: Ticks) => string,
): LastRow {
  const { rows, pieces } = takeoff;
  const last = lastOf(rows);
  const ofLast = pieces.filter(({ rowNumber }) => rowNumber === last.rowNumber);
  if (wall.afterRow >= last.rowNumber) return { takeoff, words: [text.lastRowLies()] };
  const lengths = ofLast.map(({ length }) => length);
  const row = addedUp(lengths);
  // The run may have been found longer than it was drawn.
  const places = wall.places.map((at, i) => (i === wall.places.length - 1 ? Math.max(at, row) : at));
  const own = {
    plankWidth: product.plankWidth,
    gap: rules.expansionGap,
    tolerance: units === 'us' ? ticksOfInches(1 / 8) : ticksOfMm(3),
    step: rules.markingStep,
  };
  const found = wallRipsOf(lengths, { places, distances: wall.distances }, own);
  const told = `Far wall, from row ${wall.afterRow}: ${wallWords(found, own, rules, show).join(' ')}`;
  const listed = last.rowNumber - wall.afterRow;
  if (found.wholeRowCount + 1 !== listed) {
    return { takeoff, words: [told, text.otherRowCount(found.wholeRowCount + 1, listed)] };
  }
  if (found.narrowest <= 0) return { takeoff, words: [told] };
  const rips = new Map(ofLast.map((piece, i) => [piece, found.rips[i]]));
  const ripped = pieces.map((piece) => {
    const rip = rips.get(piece);
    return rip ? withRip(piece, rip, product.plankWidth, show) : piece;
  });
  return { takeoff: { ...takeoff, pieces: ripped }, words: [told] };
}

function withRip(piece: FloorPiece, rip: WallRip, plankWidth: Ticks, show: (ticks: Ticks) => string): FloorPiece {
  const isRipped = Math.min(rip.left, rip.right, ...rip.scribed.map(({ width }) => width)) < plankWidth;
  const cuts = isRipped && !piece.cuts.includes('rip') ? [...piece.cuts, 'rip' as const] : piece.cuts;
  const scribe = rip.scribed.length > 0 ? [`As measured, ${wallCut(rip, show)}.`] : [];
  return { ...piece, widthLeft: rip.left, widthRight: rip.right, cuts, marks: [...piece.marks, ...scribe] };
}
