/** What to mark on a piece, in sentences: rips, angled ends, tapers, cut corners, notches, holes. */
import type { Ticks, Units } from '../../geometry/length';
import { boundsOf, type Outline } from '../../geometry/polygon';
import type { Notch, Slant } from '../../layout/marking';
import type { LaidPiece } from '../../layout/pieces';
import type { Circle } from '../../layout/round';
import type { Row, RowLayout } from '../../layout/rows';
import { lengthText } from '../text/lengthText';
import { numberText } from '../text/numberText';

/**
 * Sentences in the order in which the cuts are made. Seen with the start wall behind you: `start edge` towards it,
 * `far edge` away from it, left and right as you look.
 * Ends are those of the rectangle that the piece is cut from, unless told as those of an edge.
 */
export function marksOf(piece: LaidPiece, row: Row, laid: Laid): readonly string[] {
  const { step, units } = laid;
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const tapers = piece.slants.filter((slant) => slant.kind === 'taper');
  const others = piece.slants.filter((slant) => slant.kind !== 'taper');
  return [
    ...ripMarks(piece, row, laid, show),
    ...(piece.slants.length + piece.notches.length > 1 ? [MARK_FIRST] : []),
    ...tapers.map((taper) => taperMark(piece, taper, show)),
    ...others.map((slant) => slantMark(slant, show)),
    ...piece.notches.map((notch) => notchMark(notch, piece, step, show)),
  ];
}

/** Else the first cut may take away the corner that the next is measured from. */
const MARK_FIRST = 'Mark every cut on the whole rectangle before making the first.';

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
  // A taper alone says all there is to say of its edge; anything more is marked on the rectangle.
  const isTapered = (edge: Slant['edge']) =>
    piece.slants.length + piece.notches.length === 1 &&
    piece.slants.some((slant) => slant.kind === 'taper' && slant.edge === edge);
  if (y0 - low >= step && !isTapered('start'))
    marks.push(`Rip to ${width} wide: ${show(y0 - low)} off the start edge (${startEdge}).`);
  if (high - y1 >= step && !isTapered('far'))
    marks.push(`Rip to ${width} wide: ${show(high - y1)} off the far edge (${farEdge}).`);
  return marks;
}

function taperMark(piece: LaidPiece, { end, edge, across }: Slant, show: Show): string {
  const { widthLeft, widthRight, slants } = piece;
  if (slants.filter(({ kind }) => kind === 'taper').length > 1)
    return `Rip a taper off the ${edge} edge: ${show(across)} off at the ${end} end, nothing at the other.`;
  return `Rip to a taper along the ${edge} edge: ${show(widthLeft)} wide at the left end, ${show(widthRight)} at the right.`;
}

function slantMark({ kind, end, edge, along, across, degreesOffSquare }: Slant, show: Show): string {
  const angle = `${numberText(degreesOffSquare, 1)}° off square`;
  if (kind === 'corner')
    return `Cut off the ${end} corner at the ${edge} edge: ${show(along)} along, ${show(across)} across.`;
  const other = edge === 'start' ? 'far' : 'start';
  return `Angle the ${end} end, ${angle}: long point at the ${other} edge, ${show(along)} shorter at the ${edge} edge.`;
}

function notchMark(notch: Notch, piece: LaidPiece, step: Ticks, show: Show): string {
  const { end, edge, isHole, isSquare, round } = notch;
  const isAtEnd = notch.fromEnd < step;
  const isInEdge = notch.fromEdge < step;
  if (round)
    return roundMark(round, isHole ? 'hole' : `notch in the ${isInEdge ? `${edge} edge` : `${end} end`}`, piece, show);
  if (!isSquare) {
    const place = isHole ? 'Hole' : `Notch in the ${isInEdge && !isAtEnd ? `${edge} edge` : `${end} end`}`;
    return `${place}, corners told from the left end and from the start edge: ${cornersText(notch.outline, show)}.`;
  }
  const size = `${show(notch.length)} along by ${show(notch.depth)} across`;
  const fromEdge = `${show(notch.fromEdge)} from the ${edge} edge`;
  if (isHole) return `Hole ${size}: ${show(notch.fromEnd)} from the ${end} end, ${fromEdge}.`;
  if (!isInEdge) return `Notch in the ${end} end, ${size}: ${fromEdge}.`;
  if (isAtEnd) return `Notch in the ${edge} edge, ${size}: at the ${end} end.`;
  const { from, to } = piece.longEdges[edge];
  const ofEdge = (end === 'left' ? from : piece.length - to) < step ? '' : ' of that edge';
  return `Notch in the ${edge} edge, ${size}: ${show(notch.fromEnd)} from the ${end} end${ofEdge}.`;
}

/** `1: 41", 7"; 2: 48", 0"`: what shows as the same place is told once. */
function cornersText(outline: Outline, show: Show): string {
  const places = outline.map(({ x, y }) => `${show(x)}, ${show(y)}`);
  return places
    .filter((place, i) => place !== places[(i + 1) % places.length])
    .map((place, i) => `${i + 1}: ${place}`)
    .join('; ');
}

function roundMark({ centre, diameter }: Circle, what: string, piece: LaidPiece, show: Show): string {
  const { y0, y1 } = boundsOf(piece.shape);
  const nearer = (low: string, high: string, fromLow: Ticks, size: Ticks) => {
    const [name, distance] = 2 * fromLow <= size ? [low, fromLow] : [high, size - fromLow];
    return `${show(Math.abs(distance))} ${distance < 0 ? 'beyond' : 'from'} the ${name}`;
  };
  const fromEnd = nearer('left end', 'right end', centre.x, piece.length);
  const fromEdge = nearer('start edge', 'far edge', centre.y, y1 - y0);
  const mark = `Round ${what}, ${show(diameter)} across: centre ${fromEnd}, ${fromEdge}.`;
  if (what !== 'hole') return mark;
  return `${mark} Cut the plank across through the middle of the hole to get it round a standing pipe.`;
}
