/** A piece in words, for the line under the drawing and for those who hear the page. */
import type { Units } from '../../geometry/length';
import type { FloorPiece } from '../../takeoff/result';
import { pieceText } from '../../takeoff/text/lengthText';

const KEPT: Readonly<Record<FloorPiece['keeps'], string>> = {
  'left end': 'keep its left factory end',
  'right end': 'keep its right factory end',
  'both ends': 'a whole plank',
  'no end': 'both ends cut',
};

/** `Piece 3-2: 45 1/2" long, 7 1/2" wide. From plank 7, keep its left end. Rip to ...` */
export function pieceWords(piece: FloorPiece, units: Units): string {
  return [`Piece ${piece.label}: ${sizeWords(piece, units)}.`, sourceWords(piece), ...piece.marks].join(' ');
}

/** `From plank 7, keep its left factory end. The rest: write 4-1 on it.` */
export function sourceWords({ plankNumber, keeps, stripOf, offcutOf, rest }: FloorPiece): string {
  const offcut = offcutOf === '' ? '' : `, the offcut of ${offcutOf}`;
  const strip = stripOf === '' ? '' : `, the strip of ${stripOf}`;
  const source = `From plank ${plankNumber}${offcut}${strip}, ${KEPT[keeps]}.`;
  return rest === '' ? source : `${source} The rest: ${rest}.`;
}

/** `45 1/2" long, 7 1/2" wide`, with both edges or both ends where they differ. */
export function sizeWords(piece: FloorPiece, units: Units): string {
  const show = pieceText(units);
  const { length, shortPoint, widthLeft, widthRight } = piece;
  const short = shortPoint === 0 ? 'the other edge runs out' : `${show(shortPoint)} along the shorter`;
  const long =
    shortPoint === length ? `${show(length)} long` : `${show(length)} along the longer edge (long point), ${short}`;
  const wide =
    widthLeft === widthRight
      ? `${show(widthLeft)} wide`
      : `${show(widthLeft)} wide at the left, ${show(widthRight)} at the right`;
  return `${long}, ${wide}`;
}
