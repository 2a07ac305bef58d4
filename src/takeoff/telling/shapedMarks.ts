/** What to mark on a piece of a room as it is: notches, holes, and edges and ends that are scribed. */

import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks, type Units } from '../../geometry/length';
import { lastOf } from '../../geometry/lists';
import { type Point, sideOf } from '../../geometry/point';
import { boundsOf, type Outline } from '../../geometry/polygon';
import type { Bend } from '../../layout/bends';
import type { Notch } from '../../layout/notches';
import type { LaidPiece } from '../../layout/pieces';
import type { Circle } from '../../layout/round';
import type { Size } from '../../layout/slants';
import { pieceText } from '../text/lengthText';
import type { Laid, Show } from './marks';

/** Sentences for `marksOf`, in the order in which the cuts are made. */
export function shapedMarks(piece: LaidPiece, laid: Laid, show: Show): readonly string[] {
  return [
    ...piece.bends.map((bend) => scribeMark(bend, piece, laid, show)),
    ...piece.notches.map((notch) => notchMark(notch, piece, laid, show)),
    ...(piece.leftOff > 0 ? [`Its prong of ${show(piece.leftOff)} is left off: the trim covers the place.`] : []),
  ];
}

/** `Scribe the far edge: 4 1/2" wide at the left end, 4" at 36", ...`: widths from the other edge, lengths from the other end. */
function scribeMark(
  { side, places }: Scribed,
  piece: LaidPiece,
  { step, length = piece.length }: Laid,
  show: Show,
): string {
  const isEdge = side === 'start' || side === 'far';
  const { y0, y1 } = boundsOf(piece.shape);
  const [low, high, reach] = isEdge ? ['left end', 'right end', piece.length] : ['start edge', 'far edge', y1 - y0];
  const sizes = places.map(({ at, size }, i) => {
    const place = at < step / 2 ? `the ${low}` : reach - at < step / 2 ? `the ${high}` : show(at);
    const marked = isEdge ? size : Math.max(0, size - (piece.length - length));
    return `${show(marked)}${i > 0 ? '' : isEdge ? ' wide' : ' long'} at ${place}`;
  });
  return `Scribe the ${side} ${isEdge ? 'edge' : 'end'}: ${sizes.join(', ')}.`;
}

type Scribed = Pick<Bend, 'side' | 'places'>;

/** A notch that is not square, by what it leaves along a side that it opens to; null where that goes up and down in steps. */
function scribedNotch({ edge, end, opensTo, outline }: Notch, size: Size, step: Ticks): Scribed | null {
  if (opensTo === 'nothing') return null;
  const sides = opensTo === 'edge' ? [edge, end] : [end, edge];
  for (const side of sides) {
    const places = leftBeside(outline, side, size, step);
    if (places) return { side, places };
  }
  return null;
}

/** Widths or lengths that it leaves, along the stretch that it takes; null where it does not open to all of the side. */
function leftBeside(outline: Outline, side: Bend['side'], { length, width }: Size, step: Ticks): Bend['places'] | null {
  const full = side === 'start' || side === 'far' ? width : length;
  const seen: Record<Bend['side'], () => Outline> = {
    far: () => outline,
    left: () => outline.map(({ x, y }) => ({ x: y, y: length - x })),
    start: () => outline.map(({ x, y }) => ({ x, y: width - y })).reverse(),
    right: () => outline.map(({ x, y }) => ({ x: y, y: x })).reverse(),
  };
  const [first, ...others] = fromLowest(seen[side]());
  const to = others.findIndex(({ x }, i) => i === others.length - 1 || others[i + 1].x <= x);
  const [low, high] = [[first, ...others.slice(0, to + 1)], others.slice(to + 1)];
  // What lies between it and the side is all missing: upright at both ends, and open along the side.
  const isOnSide = ({ y }: Point) => full - y < step;
  const meets = (at: Point, other: Point | undefined) => isOnSide(at) || Math.abs((other ?? at).x - at.x) < step;
  const isOpen = high.every(isOnSide) && meets(low[to + 1], high[0]) && meets(first, lastOf(high));
  const isForward = low.every(({ x }, i) => i === 0 || x > low[i - 1].x);
  return isOpen && isForward && low.length > 1 ? low.map(({ x, y }) => ({ at: x, size: y })) : null;
}

/** Begun at the corner that is farthest left, the lowest of several. */
function fromLowest(outline: Outline): Outline {
  const first = outline.reduce((a, b) => (b.x < a.x || (b.x === a.x && b.y < a.y) ? b : a));
  const index = outline.indexOf(first);
  return [...outline.slice(index), ...outline.slice(0, index)];
}

function notchMark(notch: Notch, piece: LaidPiece, laid: Laid, show: Show): string {
  const { step, units } = laid;
  const { end, edge, opensTo, isSquare, round } = notch;
  const isAtEnd = notch.fromEnd < step;
  const edgeOrEnd = opensTo === 'edge' ? `${edge} edge` : `${end} end`;
  if (round) return roundMark(round, opensTo === 'nothing' ? 'hole' : `notch in the ${edgeOrEnd}`, piece, units);
  const { y0, y1 } = boundsOf(piece.shape);
  const scribed = isSquare ? null : scribedNotch(notch, { length: piece.length, width: y1 - y0 }, step);
  if (scribed) return scribeMark(scribed, piece, laid, show);
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

function roundMark(circle: Circle, what: string, piece: LaidPiece, units: Units): string {
  const mark = `Round ${what}, ${placeOfCircle(circle, piece, units)}.`;
  if (what !== 'hole') return mark;
  return `${mark} Cut the plank across through the middle of the hole to get it round a standing pipe.`;
}

/** `2" across: center 3" from the left end, 1/4" beyond the far edge`. @param circle from the left end and start edge of the piece */
export function placeOfCircle({ centre, diameter }: Circle, piece: LaidPiece, units: Units): string {
  const show = pieceText(units);
  const { y0, y1 } = boundsOf(piece.shape);
  const nearer = (low: string, high: string, fromLow: Ticks, size: Ticks) => {
    const [name, distance] = 2 * fromLow <= size ? [low, fromLow] : [high, size - fromLow];
    return `${show(Math.abs(distance))} ${distance < 0 ? 'beyond' : 'from'} the ${name}`;
  };
  const fromEnd = nearer('left end', 'right end', centre.x, piece.length);
  const fromEdge = nearer('start edge', 'far edge', centre.y, y1 - y0);
  return `${show(diameter)} across: ${units === 'us' ? 'center' : 'centre'} ${fromEnd}, ${fromEdge}`;
}
