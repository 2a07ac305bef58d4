/** What to mark on a piece, in sentences: rips, angled ends, tapers, cut corners, notches, holes. */
import type { Ticks, Units } from '../geometry/length';
import { boundsOf } from '../geometry/polygon';
import type { Notch, Slant } from '../layout/marking';
import type { LaidPiece } from '../layout/pieces';
import type { Row, RowLayout } from '../layout/rows';
import { lengthText } from './lengthText';
import { numberText } from './numberText';

/**
 * Sentences in the order in which the cuts are made. Seen with the start wall behind you: `start edge` towards it,
 * `far edge` away from it, left and right as you look.
 *
 */
export function marksOf(piece: LaidPiece, row: Row, laid: Laid): readonly string[] {
  const { step, units } = laid;
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const tapers = piece.slants.filter((slant) => slant.kind === 'taper');
  const others = piece.slants.filter((slant) => slant.kind !== 'taper');
  return [
    ...ripMarks(piece, row, laid, show),
    ...tapers.map((taper) => taperMark(piece, taper, show)),
    ...others.map((slant) => slantMark(slant, show)),
    ...piece.notches.map((notch) => notchMark(notch, step, show)),
  ];
}

/** How the floor lies that the piece belongs to. */
interface Laid {
  readonly layout: RowLayout;
  /**
   * Common practice: the tongue side to the start wall; but at a middle line the grooves of both sides meet, and a slip
   * tongue joins them.
   */
  readonly startEdge: 'tongue' | 'groove';
  /** What differs by less is not marked. */
  readonly step: Ticks;
  readonly units: Units;
}

type Show = (length: Ticks) => string;

function ripMarks(piece: LaidPiece, row: Row, { layout, startEdge, step }: Laid, show: Show): readonly string[] {
  const farEdge = startEdge === 'tongue' ? 'groove' : 'tongue';
  const { y0, y1 } = boundsOf(piece.shape);
  // Against the start wall planks are measured back from their far edge, elsewhere up from their start edge.
  const low = row.y1 <= layout.firstWidth ? row.y1 - layout.plankWidth : row.y0;
  const high = low + layout.plankWidth;
  const width = show(y1 - y0);
  const marks: string[] = [];
  // A taper along an edge says all there is to say of it.
  const isTapered = (edge: Slant['edge']) =>
    piece.slants.some((slant) => slant.kind === 'taper' && slant.edge === edge);
  if (y0 - low >= step && !isTapered('start'))
    marks.push(`Rip to ${width} wide: ${show(y0 - low)} off the start edge (${startEdge}).`);
  if (high - y1 >= step && !isTapered('far'))
    marks.push(`Rip to ${width} wide: ${show(high - y1)} off the far edge (${farEdge}).`);
  return marks;
}

function taperMark(piece: LaidPiece, { edge }: Slant, show: Show): string {
  const { widthLeft, widthRight } = piece;
  return `Rip to a taper along the ${edge} edge: ${show(widthLeft)} wide at the left end, ${show(widthRight)} at the right.`;
}

function slantMark({ kind, end, edge, along, across, degreesOffSquare }: Slant, show: Show): string {
  const angle = `${numberText(degreesOffSquare, 1)}° off square`;
  if (kind === 'corner')
    return `Cut off the ${end} corner at the ${edge} edge: ${show(along)} along, ${show(across)} across.`;
  const other = edge === 'start' ? 'far' : 'start';
  return `Angle the ${end} end, ${angle}: long point at the ${other} edge, ${show(along)} shorter at the ${edge} edge.`;
}

function notchMark(notch: Notch, step: Ticks, show: Show): string {
  const { end, edge, length, depth, isSquare } = notch;
  const fromEnd = notch.fromEnd < step ? 0 : notch.fromEnd;
  const fromEdge = notch.fromEdge < step ? 0 : notch.fromEdge;
  const size = `${show(length)} along by ${show(depth)} across`;
  const slanted = isSquare ? '' : ' Its sides are not square: take them from the drawing.';
  if (fromEdge > 0 && fromEnd > 0) {
    return `Hole ${size}: ${show(fromEnd)} from the ${end} end, ${show(fromEdge)} from the ${edge} edge.${slanted}`;
  }
  if (fromEdge > 0) return `Notch in the ${end} end, ${size}: ${show(fromEdge)} from the ${edge} edge.${slanted}`;
  const place = fromEnd > 0 ? `${show(fromEnd)} from the ${end} end` : `at the ${end} end`;
  return `Notch in the ${edge} edge, ${size}: ${place}.${slanted}`;
}
