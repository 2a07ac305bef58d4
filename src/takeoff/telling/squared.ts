/** What is cut square, left off or cannot be made at the walls of a floor, in sentences. */

import type { Ticks } from '../../geometry/length';
import { regionToFrame } from '../../geometry/turn';
import { prongsOf } from '../../layout/prongs';
import { unmakeableStrips } from '../../layout/strips';
import type { LaidFloor } from '../reading/drawnRoom';
import type { FloorPiece } from '../result';
import { countryWords } from '../text/countryWords';
import { pieceText } from '../text/lengthText';
import { rowsOf } from '../text/plural';

type ToldPiece = Pick<FloorPiece, 'label' | 'length' | 'cuts' | 'polygon' | 'holes' | 'squaredBy'>;

/** Nothing where every piece is cut to the wall. @param pieces of this floor */
export function squaredNotes(laid: LaidFloor, pieces: readonly ToldPiece[]): readonly string[] {
  const { rules, units } = laid.read;
  const show = pieceText(units);
  const squared = pieces.filter(({ squaredBy }) => squaredBy > 0);
  const most = Math.max(0, ...squared.map(({ squaredBy }) => squaredBy));
  const gap = rules.expansionGap + most;
  const notes: string[] = [];
  if (squared.length > 0) {
    const pieceWords = squared.length === 1 ? 'One piece is' : `${squared.length} pieces are`;
    notes.push(
      `${pieceWords} cut square or straight where the wall is out by less than ${show(rules.squareCut)}; the gap there is up to ${show(gap)}.`,
    );
    if (gap > rules.trimCover)
      notes.push(`Trim covers ${show(rules.trimCover)}: choose wider trim, or a smaller square-cut tolerance.`);
  }
  return [
    ...notes,
    ...leftOffNotes(laid, show),
    ...unmakeableNotes(laid, show),
    ...prongNotes(laid, pieces, show),
    ...shortNotes(laid, pieces, show),
  ];
}

/** Pieces shorter than can be made: between a wall and a cut-out, or at the tip of a slant. */
function shortNotes({ read }: LaidFloor, pieces: readonly ToldPiece[], show: (length: Ticks) => string): string[] {
  const { leastStrip } = read.rules;
  const short = pieces.filter(({ length }) => length < leastStrip);
  if (short.length === 0) return [];
  const labels =
    short.length === 1 ? `Piece ${short[0].label} is` : `${short.length} pieces, such as ${short[0].label}, are`;
  return [
    `${labels} shorter than can be made (${show(leastStrip)}): leave ${short.length === 1 ? 'it' : 'them'} off where something covers the place.`,
  ];
}

/** Prongs beside notches, which stand across the grain: no other first row makes them wider. */
function prongNotes(
  { layout, read }: LaidFloor,
  pieces: readonly ToldPiece[],
  show: (length: Ticks) => string,
): string[] {
  const { leastStrip } = read.rules;
  return pieces
    .filter(({ cuts }) => cuts.includes('notch'))
    .flatMap(({ label, polygon, holes }) => {
      const widths = prongsOf(regionToFrame(layout.frame, [polygon, ...holes]), leastStrip).map(({ width }) => width);
      if (widths.length === 0) return [];
      const neighbour = countryWords('neighbour', read.units);
      return [
        `Piece ${label} keeps a prong of ${show(Math.min(...widths))} beside its notch, narrower than can be made (${show(leastStrip)}): glue the piece to its ${neighbour} before the notch is cut, or cover the place.`,
      ];
    });
}

function leftOffNotes({ layout }: LaidFloor, show: (length: Ticks) => string): readonly string[] {
  if (layout.leftOff.length === 0) return [];
  const widest = Math.max(...layout.leftOff.map(({ width }) => width));
  return [`Left off under the trim: strips of up to ${show(widest)} at ${rowsOf(layout.leftOff)}.`];
}

function unmakeableNotes({ layout, read }: LaidFloor, show: (length: Ticks) => string): readonly string[] {
  const strips = unmakeableStrips(layout, read.rules.leastStrip);
  if (strips.length === 0) return [];
  const narrowest = Math.min(...strips.map(({ width }) => width));
  return [
    `A strip of ${show(narrowest)} at ${rowsOf(strips)} is narrower than can be made (${show(read.rules.leastStrip)}): start with another first row, or cover the place.`,
  ];
}
