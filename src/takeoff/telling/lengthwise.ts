/**
 * Pieces that a wall or cut-out divides lengthwise: one plank, ripped into a piece on either side of it. The second, `5-2b`,
 * is a strip of the first, `5-2`, and keeps the same ends.
 */

import type { PlannedPiece } from '../../cutting/job';
import { floorToStep, type Ticks } from '../../geometry/length';
import { isFilled } from '../../geometry/lists';
import { boundsOf } from '../../geometry/polygon';
import type { LaidPiece } from '../../layout/pieces';
import { rowsOf } from '../text/plural';
import type { PlankUse } from './offcuts';

export interface LabelledPiece {
  readonly piece: LaidPiece;
  readonly label: string;
}

/** `3-2` for each piece: its row, and its place in the row across all its runs; `3-2b` for a part beyond the first. */
export function labelled(pieces: readonly LaidPiece[]): readonly LabelledPiece[] {
  let row = 0;
  let place = 0;
  return pieces.map((piece) => {
    if (piece.partNumber === 1) place = piece.rowNumber === row ? place + 1 : 1;
    row = piece.rowNumber;
    return { piece, label: `${row}-${place}${letterOf(piece.partNumber)}` };
  });
}

function letterOf(partNumber: number): string {
  return partNumber === 1 ? '' : String.fromCharCode('a'.charCodeAt(0) + partNumber - 1);
}

/** A part as it is marked: shorter than the whole, and without its ends, where it does not reach them. */
export function partAsPlanned(piece: LaidPiece, parts: readonly LabelledPiece[], planned: PlannedPiece, step: Ticks) {
  const all = boundsOf(parts.flatMap((part) => part.piece.shape));
  const { x0, x1 } = boundsOf(piece.shape);
  const [left, right] = [x0 - all.x0 < step, all.x1 - x1 < step];
  if (left && right) return planned;
  const length = Math.max(step, floorToStep(planned.length - (x0 - all.x0) - (all.x1 - x1), step));
  const keepsLeft = left && (planned.from === 'left' || planned.from === 'whole');
  const keepsRight = right && (planned.from === 'right' || planned.from === 'whole');
  const from: PlannedPiece['from'] = keepsLeft ? 'left' : keepsRight ? 'right' : 'middle';
  return { ...planned, length, from };
}

/**
 * Where a part comes from: the first from the plank, every other from what ripping the one before it leaves.
 *
 * @param rippedAt how long the plank is when it is ripped, ticks
 */
export function partUse(
  use: PlankUse,
  { partNumber }: LaidPiece,
  parts: readonly LabelledPiece[],
  rippedAt: Ticks,
): PlankUse {
  const [before, next] = [parts[partNumber - 2], parts[partNumber]];
  const strip = next ? `write ${next.label} on the strip` : '';
  if (!before) return { ...use, rest: [use.rest, strip].filter(isFilled).join(', ') };
  return {
    ...use,
    stripOf: before.label,
    stripSource: null,
    stockLength: rippedAt,
    offcutOf: '',
    restServes: false,
    rest: strip,
  };
}

/** Where a part is not locked to its row. */
export function gluedMarks({ gluedEnd }: LaidPiece, parts: readonly LabelledPiece[]): readonly string[] {
  return gluedEnd === null ? [] : [`Glue its ${gluedEnd} end to ${parts[0].label}: there is no lock.`];
}

/** The other parts of a piece, from the start edge up. */
export function partsBeyond<P extends { readonly label: string }>(
  { label }: P,
  all: ReadonlyMap<string, P>,
): readonly P[] {
  const parts: P[] = [];
  for (let part = all.get(label + letterOf(2)); part; part = all.get(label + letterOf(parts.length + 2)))
    parts.push(part);
  return parts;
}

/** What is said of rows that a wall runs inside of. @param pieces of this floor */
export function lengthwiseNotes(
  pieces: readonly { readonly label: string; readonly rowNumber: number }[],
): readonly string[] {
  const parts = pieces.filter(({ label }) => /[a-z]$/.test(label));
  if (parts.length === 0) return [];
  const { label } = parts[0];
  return [
    `A wall or cut-out runs inside ${rowsOf(parts)}: planks there are ripped into a strip for either side. Piece ${label} is what ripping ${label.slice(0, -1)} leaves, and so on.`,
  ];
}
