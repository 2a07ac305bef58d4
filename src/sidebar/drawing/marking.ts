/**
 * The marking drawing of one piece: its true shape, start edge at the bottom as it is seen with the start wall behind
 * you, and every dimension to mark. Data only.
 */
import type { Ticks, Units } from '../../geometry/length';
import { type Bounds, boundsOf, type Region } from '../../geometry/polygon';
import { frameOf, regionToFrame } from '../../geometry/turn';
import { type Marking, markingOf } from '../../layout/marking';
import type { Notch } from '../../layout/notches';
import { usualLength } from '../../layout/rules';
import type { Slant } from '../../layout/slants';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { lengthText, readLength } from '../../takeoff/text/lengthText';
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
}

/** The marking drawing of a piece of this plan. */
export function markedPieceOf(piece: FloorPiece, plan: Takeoff): MarkedPiece {
  // Behind a middle line planks are turned round, and so is who lays them.
  const { isReversed } = plan.rows[piece.rowNumber - 1];
  const frame = frameOf([plan.outline], plan.rowAngle + (isReversed ? 180 : 0));
  const turned = regionToFrame(frame, regionOf(piece));
  const { x0, y0, x1, y1 } = boundsOf(turned);
  const shape = turned.map((outline) => outline.map(({ x, y }) => ({ x: x - x0, y: y - y0 })));
  const marking = markingOf(shape, stepOf(plan));
  const box = { x0: 0, y0: 0, x1: x1 - x0, y1: y1 - y0 };
  return {
    shape,
    length: box.x1,
    width: box.y1,
    ...restOf(piece, plan, box),
    dimensions: dimensionsOf(piece, marking, box, plan.units),
  };
}

/** The step to which cuts are marked. */
function stepOf({ entry, units }: Takeoff): Ticks {
  const typed = readLength(entry.rules.markingStep, 'plank', units);
  return typed.ok && typed.ticks > 0 ? typed.ticks : usualLength('markingStep', units);
}

function restOf({ keeps }: FloorPiece, plan: Takeoff, box: Bounds): Pick<MarkedPiece, 'restFrom' | 'restTo'> {
  const plank = readLength(plan.entry.product.plankLength, 'plank', plan.units);
  if (!plank.ok || plank.ticks <= box.x1) return { restFrom: null, restTo: null };
  if (keeps === 'left end') return { restFrom: box.x1, restTo: plank.ticks };
  return keeps === 'right end' ? { restFrom: box.x1 - plank.ticks, restTo: 0 } : { restFrom: null, restTo: null };
}

function dimensionsOf(piece: FloorPiece, marking: Marking, box: Bounds, units: Units): readonly Dimension[] {
  const show = (ticks: Ticks) => lengthText(ticks, units, 'piece');
  const { slants, notches } = marking;
  return [
    ...lengthDimensions(piece, marking, box, show),
    ...widthDimensions(piece, slants, box, show),
    ...slants.filter(({ kind }) => kind === 'corner').flatMap((corner) => cornerDimensions(corner, box, show)),
    ...notches.flatMap((notch) => notchDimensions(notch, box, show)),
  ];
}

type Show = (ticks: Ticks) => string;

function lengthDimensions(piece: FloorPiece, { longEdges }: Marking, box: Bounds, show: Show): readonly Dimension[] {
  const { start, far } = longEdges;
  const isStartShort = start.to - start.from <= far.to - far.from;
  const short = isStartShort ? start : far;
  if (short.to - short.from === box.x1) return [along('bottom', 0, box.x1, 'Length', show(piece.length))];
  const long = along(isStartShort ? 'top' : 'bottom', 0, box.x1, 'Length, to the long point', show(piece.length));
  if (piece.shortPoint === 0) return [long];
  return [
    long,
    along(isStartShort ? 'bottom' : 'top', short.from, short.to, 'Length, to the short point', show(piece.shortPoint)),
  ];
}

function widthDimensions(piece: FloorPiece, slants: readonly Slant[], box: Bounds, show: Show): readonly Dimension[] {
  const { widthLeft, widthRight } = piece;
  const tapers = slants.filter(({ kind }) => kind === 'taper');
  if (widthLeft === widthRight) return [along('left', 0, box.y1, 'Width', show(widthLeft))];
  const at = (end: Slant['end']) => {
    const taken = (edge: Slant['edge']) =>
      tapers.reduce((sum, taper) => sum + (taper.end === end && taper.edge === edge ? taper.across : 0), 0);
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
