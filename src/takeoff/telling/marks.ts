/** What to mark on a piece, in sentences: rips, angled ends, tapers, cut corners; notches and what is scribed from elsewhere. */
import type { Ticks, Units } from '../../geometry/length';
import { boundsOf } from '../../geometry/polygon';
import type { LaidPiece } from '../../layout/pieces';
import type { Row, RowLayout } from '../../layout/rows';
import type { LongEdge } from '../../layout/rules';
import type { Slant } from '../../layout/slants';
import { pieceText } from '../text/lengthText';
import { numberText } from '../text/numberText';

/** What is told of notches and of what is scribed. */
type ShapedMarks = (piece: LaidPiece, laid: Laid, show: Show) => readonly string[];

/**
 * Sentences in the order in which the cuts are made. Seen with the start wall behind you: `start edge` towards it,
 * `far edge` away from it, left and right as you look.
 * Ends are those of the rectangle that the piece is cut from, unless told as those of an edge.
 *
 * @param shaped nothing in a plain rectangle
 */
export function marksOf(piece: LaidPiece, row: Row, laid: Laid, shaped: ShapedMarks = () => []): readonly string[] {
  const { units } = laid;
  const show = pieceText(units);
  const tapers = piece.slants.filter((slant) => slant.kind === 'taper');
  const others = piece.slants.filter((slant) => slant.kind !== 'taper');
  return [
    ...ripMarks(piece, row, laid, show),
    ...(piece.slants.length + piece.bends.length + piece.notches.length > 1 ? [MARK_FIRST] : []),
    ...tapers.map((taper) => taperMark(piece, taper, show)),
    ...others.map((slant) => slantMark(slant, show)),
    ...shaped(piece, laid, show),
  ];
}

/** Else the first cut may take away the corner that the next is measured from. */
const MARK_FIRST = 'Mark every cut on the whole rectangle before making the first.';

/** How the floor lies that the piece belongs to. */
export interface Laid {
  readonly layout: RowLayout;
  /** At a middle line the grooves of both sides meet, and a slip tongue joins them. */
  readonly startEdge: LongEdge;
  /** What differs by less is not marked. */
  readonly step: Ticks;
  readonly units: Units;
  /** Whether it is the strip of another piece, and that is as wide as it must be; null or left out for no strip. */
  readonly strip?: 'as it is' | 'wider' | null;
  /** How long it is marked, in whole steps; as it is drawn when not given. */
  readonly length?: Ticks;
}

export type Show = (length: Ticks) => string;

function ripMarks(piece: LaidPiece, row: Row, laid: Laid, show: Show): readonly string[] {
  const { layout, startEdge, step, strip } = laid;
  if (strip === 'as it is') return [];
  const farEdge = startEdge === 'tongue' ? 'groove' : 'tongue';
  const { y0, y1 } = boundsOf(piece.shape);
  // Against the start wall planks are measured back from their far edge, elsewhere up from their start edge.
  const low = row.y1 <= layout.firstWidth ? row.y1 - layout.plankWidth : row.y0;
  const high = low + layout.plankWidth;
  const off: readonly (readonly [Slant['edge'], string, Ticks])[] = [
    ['start', startEdge, y0 - low],
    ['far', farEdge, high - y1],
  ];
  // An edge that is scribed is not ripped before, unless more is marked on the rectangle.
  const isAlone = piece.slants.length + piece.notches.length + piece.bends.length === 1;
  const scribed = isAlone ? piece.bends.filter(({ isWhole }) => isWhole).map(({ side }) => side) : [];
  const ripped = off.filter(([edge, , taken]) => taken >= step && !scribed.includes(edge));
  if (ripped.length === 0 || (ripped.length === 1 && isLoneTaper(piece, ripped[0][0]))) return [];
  // How much comes off a strip depends on how the piece before it was ripped; its other edge is the one that was sawn.
  const wide = scribed.length > 0 ? layout.plankWidth - ripped[0][2] : y1 - y0;
  if (strip && ripped.length === 1)
    return [`Rip the strip to ${show(y1 - y0)} wide, off its sawn edge (${ripped[0][0]} edge).`];
  const edges = ripped.map(([edge, lock, taken]) => `${show(taken)} off the ${edge} edge (${lock})`);
  return [`Rip to ${show(wide)} wide: ${edges.join(', ')}.`];
}

/** A taper alone says all there is to say of its edge; anything more is marked on the rectangle. */
function isLoneTaper({ slants, bends, notches }: LaidPiece, edge: Slant['edge']): boolean {
  const [only] = slants;
  return slants.length + bends.length + notches.length === 1 && only?.kind === 'taper' && only.edge === edge;
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
  return `Angle the ${end} end, ${angle}: the longer edge (long point) is the ${other} edge, the ${edge} edge is ${show(along)} shorter.`;
}
