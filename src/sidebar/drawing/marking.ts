/**
 * The marking drawing of one piece: its true shape, start edge at the bottom as it is seen with the start wall behind
 * you, and every dimension to mark. Data only.
 */

import type { Ticks, Units } from '../../geometry/length';
import { sumOf } from '../../geometry/lists';
import type { Point } from '../../geometry/point';
import { type Bounds, boundsOf, type Region } from '../../geometry/polygon';
import { frameOf, regionToFrame } from '../../geometry/turn';
import { BENDING, type Bend } from '../../layout/bends';
import { type Marking, markingOf } from '../../layout/marking';
import type { Notch } from '../../layout/notches';
import type { Slant } from '../../layout/slants';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { lengthText, pieceText } from '../../takeoff/text/lengthText';
import { regionOf } from './drawing';

/** Beside which edge of the piece a dimension stands: start edge at the bottom. */
export type Side = 'top' | 'bottom' | 'left' | 'right';

/** A measured stretch beside the piece: along it (`top`, `bottom`) or across it (`left`, `right`). */
export interface Dimension {
  readonly side: Side;
  /** Ticks from the left end or from the start edge of the piece. */
  readonly from: Ticks;
  readonly to: Ticks;
  readonly name: string;
  readonly text: string;
}

/** A piece as it is marked, lengths in ticks. */
export interface MarkedPiece {
  /** The piece with its lower left end at 0, 0. */
  readonly shape: Region;
  readonly length: Ticks;
  readonly width: Ticks;
  /** The rest of the plank beyond a cut end, where an end of the plank is kept. */
  readonly restFrom: Ticks | null;
  readonly restTo: Ticks | null;
  readonly dimensions: readonly Dimension[];
  /** Of a piece that is scribed: its widths or lengths at places between its ends and edges. */
  readonly sizes: readonly MarkedSize[];
}

/** A line across the piece or along it and how wide or long it is there. Ticks. */
export interface MarkedSize {
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
}

/** The marking drawing of a piece of this plan. */
export function markedPieceOf(piece: FloorPiece, plan: Takeoff): MarkedPiece {
  // Behind a middle line planks are turned round, and so is who lays them.
  const { isReversed } = plan.rows[piece.rowNumber - 1];
  const frame = frameOf([plan.outline], plan.rowAngle + (isReversed ? 180 : 0));
  const turned = regionToFrame(frame, regionOf(piece));
  const { x0, y0, x1, y1 } = boundsOf(turned);
  const shape = turned.map((outline) => outline.map(({ x, y }) => ({ x: x - x0, y: y - y0 })));
  const marking = markingOf(shape, plan.markingStep, BENDING.unbend);
  const box = { x0: 0, y0: 0, x1: x1 - x0, y1: y1 - y0 };
  return {
    shape,
    length: box.x1,
    width: box.y1,
    ...restOf(piece, plan, box),
    dimensions: dimensionsOf(piece, marking, box, plan.units),
    sizes: marking.bends.flatMap((bend) => sizesOf(bend, box, plan.units)),
  };
}

/** What is told at the ends of the side itself is a dimension beside the piece. */
function sizesOf(bend: Bend, box: Bounds, units: Units): readonly MarkedSize[] {
  const isEdge = isEdgeBend(bend);
  const inner = bend.places.filter(({ at }) => at > AT_END && at < (isEdge ? box.x1 : box.y1) - AT_END);
  return inner.map(({ at, size }) => {
    const [from, to] = stretchOf(bend, size, box).map((place) => (isEdge ? { x: at, y: place } : { x: place, y: at }));
    return { from, to, text: lengthText(size, units, 'piece') };
  });
}

/** Ticks: what is nearer to an end is at it. */
const AT_END = 4;

function isEdgeBend({ side }: Bend): boolean {
  return side === 'start' || side === 'far';
}

/** Where a width or a length of it begins and ends: it is measured from the opposite side. */
function stretchOf({ side }: Bend, size: Ticks, box: Bounds): readonly [Ticks, Ticks] {
  if (side === 'start') return [box.y1 - size, box.y1];
  return side === 'left' ? [box.x1 - size, box.x1] : [0, size];
}

function restOf(
  { keeps }: FloorPiece,
  { plankLength }: Takeoff,
  box: Bounds,
): Pick<MarkedPiece, 'restFrom' | 'restTo'> {
  if (plankLength <= box.x1) return { restFrom: null, restTo: null };
  if (keeps === 'left end') return { restFrom: box.x1, restTo: plankLength };
  return keeps === 'right end' ? { restFrom: box.x1 - plankLength, restTo: 0 } : { restFrom: null, restTo: null };
}

function dimensionsOf(piece: FloorPiece, marking: Marking, box: Bounds, units: Units): readonly Dimension[] {
  const show = pieceText(units);
  const { slants, notches, bends } = marking;
  const isScribed = bends.some(({ isWhole }) => isWhole);
  return [
    ...lengthDimensions(piece, marking, box, show),
    ...(isScribed ? [] : widthDimensions(piece, slants, box, show)),
    ...bends.flatMap((bend) => bendDimensions(bend, box, show)),
    ...slants.filter(({ kind }) => kind === 'corner').flatMap((corner) => cornerDimensions(corner, box, show)),
    ...notches.flatMap((notch) => notchDimensions(notch, box, show)),
  ];
}

type Show = (ticks: Ticks) => string;

function lengthDimensions(
  piece: FloorPiece,
  { longEdges, bends }: Marking,
  box: Bounds,
  show: Show,
): readonly Dimension[] {
  // An end that is scribed tells the length of both edges itself.
  if (!bends.every(isEdgeBend)) return [];
  const { start, far } = longEdges;
  const isStartShort = start.to - start.from <= far.to - far.from;
  const short = isStartShort ? start : far;
  if (short.to - short.from === box.x1) return [along('bottom', 0, box.x1, 'Length', show(piece.length))];
  const long = along(
    isStartShort ? 'top' : 'bottom',
    0,
    box.x1,
    'Length of the longer edge (long point)',
    show(piece.length),
  );
  if (piece.shortPoint === 0) return [long];
  return [
    long,
    along(isStartShort ? 'bottom' : 'top', short.from, short.to, 'Length of the shorter edge', show(piece.shortPoint)),
  ];
}

/** Sizes at the ends of the side, and how far along it each size between them is taken. */
function bendDimensions(bend: Bend, box: Bounds, show: Show): readonly Dimension[] {
  const [low, high, opposite, reach, names] = isEdgeBend(bend)
    ? (['left', 'right', bend.side === 'start' ? 'top' : 'bottom', box.x1, ['Width', 'end', 'wide']] as const)
    : (['bottom', 'top', bend.side === 'left' ? 'right' : 'left', box.y1, ['Length', 'edge', 'long']] as const);
  const [size, part, adjective] = names;
  const nameOf = (side: Side) =>
    `${size} at the ${{ top: 'far', bottom: 'start', left: 'left', right: 'right' }[side]} ${part}`;
  return bend.places.map((place) => {
    const stretch = stretchOf(bend, place.size, box);
    if (place.at <= AT_END) return along(low, ...stretch, nameOf(low), show(place.size));
    if (place.at >= reach - AT_END) return along(high, ...stretch, nameOf(high), show(place.size));
    return along(opposite, 0, place.at, `To where it is ${show(place.size)} ${adjective}`, show(place.at));
  });
}

function widthDimensions(piece: FloorPiece, slants: readonly Slant[], box: Bounds, show: Show): readonly Dimension[] {
  const { widthLeft, widthRight } = piece;
  const tapers = slants.filter(({ kind }) => kind === 'taper');
  if (widthLeft === widthRight) return [along('left', 0, box.y1, 'Width', show(widthLeft))];
  const at = (end: Slant['end']) => {
    const taken = (edge: Slant['edge']) =>
      sumOf(tapers, (taper) => (taper.end === end && taper.edge === edge ? taper.across : 0));
    return [taken('start'), box.y1 - taken('far')] as const;
  };
  return [
    along('left', ...at('left'), 'Width at the left end', show(widthLeft)),
    along('right', ...at('right'), 'Width at the right end', show(widthRight)),
  ];
}

function cornerDimensions(corner: Slant, box: Bounds, show: Show): readonly Dimension[] {
  const { end, edge, along: long, across } = corner;
  const side = edge === 'start' ? 'bottom' : 'top';
  const name = `Corner cut off at the ${end} end, ${edge} edge`;
  const x = end === 'left' ? 0 : box.x1 - long;
  const y = edge === 'start' ? 0 : box.y1 - across;
  return [
    along(side, x, x + long, `${name}, along`, show(long)),
    along(end, y, y + across, `${name}, across`, show(across)),
  ];
}

function notchDimensions(notch: Notch, box: Bounds, show: Show): readonly Dimension[] {
  const { end, edge, opensTo, fromEnd, fromEdge, length, depth } = notch;
  const side = edge === 'start' ? 'bottom' : 'top';
  const name = opensTo === 'nothing' ? 'Hole' : 'Notch';
  const { x0: x, y0: y } = notch.box;
  const toEnd = end === 'left' ? ([x - fromEnd, x] as const) : ([x + length, x + length + fromEnd] as const);
  const toEdge = edge === 'start' ? ([0, y] as const) : ([y + depth, box.y1] as const);
  return [
    ...(fromEnd > 0 ? [along(side, ...toEnd, `${name}, from the ${end} end`, show(fromEnd))] : []),
    along(side, x, x + length, `${name}, along`, show(length)),
    ...(fromEdge > 0 ? [along(end, ...toEdge, `${name}, from the ${edge} edge`, show(fromEdge))] : []),
    along(end, y, y + depth, `${name}, across`, show(depth)),
  ];
}

function along(side: Side, from: Ticks, to: Ticks, name: string, text: string): Dimension {
  return { side, from, to, name, text };
}
