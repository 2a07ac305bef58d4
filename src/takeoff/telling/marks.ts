/** What to mark on a piece, in sentences: rips, angled ends, tapers, cut corners, notches, holes. */
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks, type Units } from '../../geometry/length';
import { sideOf } from '../../geometry/point';
import { boundsOf, type Outline } from '../../geometry/polygon';
import type { Notch } from '../../layout/notches';
import type { LaidPiece } from '../../layout/pieces';
import type { Circle } from '../../layout/round';
import type { Row, RowLayout } from '../../layout/rows';
import type { Slant } from '../../layout/slants';
import { lengthText } from '../text/lengthText';
import { numberText } from '../text/numberText';

/**
 * Sentences in the order in which the cuts are made. Seen with the start wall behind you: `start edge` towards it,
 * `far edge` away from it, left and right as you look.
 * Ends are those of the rectangle that the piece is cut from, unless told as those of an edge.
 */
export function marksOf(piece: LaidPiece, row: Row, laid: Laid): readonly string[] {
  const { units } = laid;
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const tapers = piece.slants.filter((slant) => slant.kind === 'taper');
  const others = piece.slants.filter((slant) => slant.kind !== 'taper');
  return [
    ...ripMarks(piece, row, laid, show),
    ...(piece.slants.length + piece.notches.length > 1 ? [MARK_FIRST] : []),
    ...tapers.map((taper) => taperMark(piece, taper, show)),
    ...others.map((slant) => slantMark(slant, show)),
    ...piece.notches.map((notch) => notchMark(notch, piece, laid, show)),
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
  /** Whether it is the strip of another piece, and that is as wide as it must be; null or left out for no strip. */
  readonly strip?: 'as it is' | 'wider' | null;
}

type Show = (length: Ticks) => string;

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
  const ripped = off.filter(([, , taken]) => taken >= step);
  if (ripped.length === 0 || (ripped.length === 1 && isLoneTaper(piece, ripped[0][0]))) return [];
  // How much comes off a strip depends on how the piece before it was ripped; its other edge is the one that was sawn.
  if (strip && ripped.every(([edge]) => edge === 'far'))
    return [`Rip the strip to ${show(y1 - y0)} wide, off its sawn edge (far edge).`];
  const edges = ripped.map(([edge, lock, taken]) => `${show(taken)} off the ${edge} edge (${lock})`);
  return [`Rip to ${show(y1 - y0)} wide: ${edges.join(', ')}.`];
}

/** A taper alone says all there is to say of its edge; anything more is marked on the rectangle. */
function isLoneTaper({ slants, notches }: LaidPiece, edge: Slant['edge']): boolean {
  const [only] = slants;
  return slants.length + notches.length === 1 && only?.kind === 'taper' && only.edge === edge;
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

function notchMark(notch: Notch, piece: LaidPiece, { step, units }: Laid, show: Show): string {
  const { end, edge, opensTo, isSquare, round } = notch;
  const isAtEnd = notch.fromEnd < step;
  const edgeOrEnd = opensTo === 'edge' ? `${edge} edge` : `${end} end`;
  if (round) return roundMark(round, opensTo === 'nothing' ? 'hole' : `notch in the ${edgeOrEnd}`, piece, units);
  if (!isSquare) {
    const side = opensTo === 'edge' && isAtEnd && !notch.isFromCorner ? `${end} end` : edgeOrEnd;
    const place = opensTo === 'nothing' ? 'Hole' : `Notch in the ${side}`;
    return `${place}, see its drawing in the sidebar, or join these corners, each from the left end and from the start edge: ${cornersText(notch.outline, units, show)}.`;
  }
  const size = `${show(notch.length)} along by ${show(notch.depth)} across`;
  const fromEdge = `${show(notch.fromEdge)} from the ${edge} edge`;
  if (opensTo === 'nothing') return `Hole ${size}: ${show(notch.fromEnd)} from the ${end} end, ${fromEdge}.`;
  if (opensTo === 'end') return `Notch in the ${end} end, ${size}: ${fromEdge}.`;
  const fromEnd = isAtEnd ? `at the ${end} end` : `${show(notch.fromEnd)} from the ${end} end`;
  return `Notch in the ${edge} edge, ${size}: ${fromEnd}${notch.isFromCorner ? ' of that edge' : ''}.`;
}

/** To what lengths are shown. */
const SHOWN_STEP: Readonly<Record<Units, Ticks>> = { us: TICKS_PER_INCH / 16, metric: TICKS_PER_MM };

/** `1: 41", 7"; 2: 48", 0"`: corners that are none any more as they are shown are left out. */
function cornersText(outline: Outline, units: Units, show: Show): string {
  const step = SHOWN_STEP[units];
  const shown = outline.map(({ x, y }) => ({ x: step * Math.round(x / step), y: step * Math.round(y / step) }));
  return turningPointsOf(shown)
    .map(({ x, y }, i) => `${i + 1}: ${show(x)}, ${show(y)}`)
    .join('; ');
}

/** An outline without corners on a straight line and without lines that run back on themselves. */
function turningPointsOf(outline: Outline): Outline {
  const at = (i: number) => outline[(i + outline.length) % outline.length];
  const straight = outline.findIndex((p, i) => sideOf(at(i - 1), p, at(i + 1)) === 0);
  return straight < 0 || outline.length <= 3 ? outline : turningPointsOf(outline.filter((_, i) => i !== straight));
}

function roundMark({ centre, diameter }: Circle, what: string, piece: LaidPiece, units: Units): string {
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const { y0, y1 } = boundsOf(piece.shape);
  const nearer = (low: string, high: string, fromLow: Ticks, size: Ticks) => {
    const [name, distance] = 2 * fromLow <= size ? [low, fromLow] : [high, size - fromLow];
    return `${show(Math.abs(distance))} ${distance < 0 ? 'beyond' : 'from'} the ${name}`;
  };
  const fromEnd = nearer('left end', 'right end', centre.x, piece.length);
  const fromEdge = nearer('start edge', 'far edge', centre.y, y1 - y0);
  const mark = `Round ${what}, ${show(diameter)} across: ${units === 'us' ? 'center' : 'centre'} ${fromEnd}, ${fromEdge}.`;
  if (what !== 'hole') return mark;
  return `${mark} Cut the plank across through the middle of the hole to get it round a standing pipe.`;
}
