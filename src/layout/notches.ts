/** The notches and holes of a piece: what is missing from its rectangle besides what its slanted cuts take off. */

import { intersect, subtract } from '../geometry/combine';
import { insetOf } from '../geometry/inset';
import type { Ticks } from '../geometry/length';
import { entryAfter } from '../geometry/lists';
import { distanceBetween } from '../geometry/point';
import { areaOf, type Bounds, boundsOf, type Outline, type Region, signedAreaOf } from '../geometry/polygon';
import { isSteep } from './narrowest';
import { type Circle, circleOf, outlineOfCircle } from './round';
import { envelopeOf, isOnLine, type Line, longEdgesOf, rectangleOf, type Size, type Slant } from './slants';

export interface Notch {
  /** Which end and edge it is open to, or else nearer to. */
  readonly end: 'left' | 'right';
  readonly edge: 'start' | 'far';
  /** What it opens to: `edge` where it is open to both an edge and an end, `nothing` for a hole. */
  readonly opensTo: 'edge' | 'end' | 'nothing';
  /** Distance of its near side from that end and from that edge of the rectangle: 0 = open to it. */
  readonly fromEnd: Ticks;
  readonly fromEdge: Ticks;
  /** Whether `fromEnd` is measured along the edge instead, from the corner that the slanted cuts leave it. */
  readonly isFromCorner: boolean;
  /** Along the piece and across it. */
  readonly length: Ticks;
  readonly depth: Ticks;
  /** Its place on the rectangle. A square one reaches over what slanted cuts take off, to the edge or end. */
  readonly box: Bounds;
  /** False when the outline is more than these dimensions tell (slanted or stepped). */
  readonly isSquare: boolean;
  /** Where it is a round cut-out or part of one; its centre from the left end and the start edge of the rectangle. */
  readonly round: Circle | null;
  /** Its corners from the left end and the start edge of the rectangle, anticlockwise. */
  readonly outline: Outline;
}

/** A piece before its notches: `all` slants of its outline, and those of them that are `marked`. */
export interface Uncut {
  readonly shape: Region;
  readonly size: Size;
  readonly all: readonly Slant[];
  readonly marked: readonly Slant[];
  /** What differs by less cannot be marked. */
  readonly step: Ticks;
}

/** Every notch and hole that is at least a marking step thick. */
export function notchesOf(piece: Uncut): readonly Notch[] {
  const { shape, size, all, step } = piece;
  if (areaOf(shape) === size.length * size.width) return [];
  return subtract([envelopeOf(all, size)], shape)
    .flatMap((outline) => markablePartsOf(outline, step))
    .map((outline) => notchOf(outline, piece));
}

/** Ticks that corners are moved by where outlines are moved in and out. */
const JITTER: Ticks = 4;

/** Half of what is so thin that it comes from rounding: corners beside slanted walls are rounded one by one. */
const HAIRLINE: Ticks = 8;

/** An outline without its hairlines, in parts where they alone held it together; no part thinner than a step. */
function markablePartsOf(outline: Outline, step: Ticks): readonly Outline[] {
  if (signedAreaOf(outline) <= 0 || coreOf([outline], step).length === 0) return [];
  const parts = intersect(grownBy(insetOf([outline], HAIRLINE), HAIRLINE + JITTER), [outline]);
  const thick = parts.filter((part) => signedAreaOf(part) > 0 && coreOf([part], step).length > 0);
  const [whole, kept] = [boundsOf([outline]), boundsOf(thick)];
  const isAll = thick.length === 1 && SIDES.every((side) => Math.abs(whole[side] - kept[side]) < step / 2);
  return isAll ? [outline] : thick;
}

const SIDES = ['x0', 'y0', 'x1', 'y1'] as const;

/** What of a region lies at least half a step from its edges; exactly a step thick is thick enough. */
function coreOf(region: Region, step: Ticks): Region {
  return insetOf(region, Math.max(1, Math.floor(step / 2) - 1));
}

/** A region and all that is nearer to it than a distance: what is left of its surroundings moves in. */
function grownBy(region: Region, distance: Ticks): Region {
  const { x0, y0, x1, y1 } = boundsOf(region);
  const away = 4 * distance;
  const [low, high] = [
    { x: x0 - away, y: y0 - away },
    { x: x1 + away, y: y1 + away },
  ];
  const sheet = [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }];
  return subtract([sheet], insetOf(subtract([sheet], region), Math.ceil(distance)));
}

/** Whether cutting out all of an outline takes away nothing of the piece that could be marked. */
function takesNoWood(outline: Outline, { shape, step }: Uncut): boolean {
  return coreOf(intersect([outline], shape), step).length === 0;
}

type Opening = Readonly<Record<Slant['end'] | Slant['edge'], Ticks>>;

function notchOf(outline: Outline, piece: Uncut): Notch {
  const { size, step } = piece;
  const opening = openingOf(outline, piece);
  const bounds = boundsOf([outline]);
  const reaching = reachingBox(bounds, opening, piece);
  const isSquare = takesNoWood(boxOutline(reaching), piece);
  const circle = circleOf(outline);
  const box = isSquare ? reaching : bounds;
  const edge = nearer(['start', 'far'], opening, [box.y0, size.width - box.y1]);
  const isInEdge = opening[edge] >= step;
  const corners = isInEdge && !isOpenToCut(outline, edge, piece) ? cornersOf(box, edge, piece) : null;
  const { from, to } = corners ?? { from: 0, to: size.length };
  const end = nearer(['left', 'right'], opening, [box.x0 - from, to - box.x1]);
  const isInEnd = opening[end] >= step;
  const isFromCorner = !isInEnd && (end === 'left' ? from : size.length - to) >= step;
  return {
    ...{ end, edge, isFromCorner, box, isSquare, outline },
    opensTo: isInEdge ? 'edge' : isInEnd ? 'end' : 'nothing',
    fromEnd: isInEnd ? 0 : Math.max(0, end === 'left' ? box.x0 - from : to - box.x1),
    fromEdge: isInEdge ? 0 : Math.max(0, edge === 'start' ? box.y0 : size.width - box.y1),
    length: box.x1 - box.x0,
    depth: box.y1 - box.y0,
    round: circle && takesNoWood(outlineOfCircle(circle), piece) ? circle : null,
  };
}

/** How much of an outline lies along each side of the rectangle, or along a slanted cut that is taken for it. */
function openingOf(outline: Outline, { size, all, step }: Uncut): Opening {
  const corners = rectangleOf(size);
  const side = (i: number): Line => ({ from: corners[i], to: corners[(i + 1) % 4] });
  const cuts = (name: keyof Opening) => all.filter((slant) => sideOf(slant) === name);
  const along = (name: keyof Opening, own: Line) =>
    lengthAlong(outline, [own], step / 2) + lengthAlong(outline, cuts(name), JITTER);
  return {
    start: along('start', side(0)),
    right: along('right', side(1)),
    far: along('far', side(2)),
    left: along('left', side(3)),
  };
}

/** The side of the piece that a slanted cut is taken for. */
function sideOf({ kind, end, edge, from, to }: Slant): keyof Opening {
  if (kind === 'end') return end;
  return kind === 'taper' || !isSteep(to.x - from.x, to.y - from.y) ? edge : end;
}

function lengthAlong(outline: Outline, lines: readonly Line[], within: Ticks): Ticks {
  return edgesOf(outline).reduce((sum, { from, to }) => {
    const isAlong = lines.some((line) => isOnLine(line, from, within) && isOnLine(line, to, within));
    return isAlong ? sum + distanceBetween(from, to) : sum;
  }, 0);
}

function edgesOf(outline: Outline): readonly Line[] {
  return outline.map((from, i) => ({ from, to: entryAfter(outline, i) }));
}

/** Beyond a slanted cut there is nothing of the piece: a notch open to it may be marked as far as the rectangle goes. */
function reachingBox({ x0, y0, x1, y1 }: Bounds, opening: Opening, { size, step }: Uncut): Bounds {
  return {
    x0: opening.left >= step ? 0 : x0,
    y0: opening.start >= step ? 0 : y0,
    x1: opening.right >= step ? size.length : x1,
    y1: opening.far >= step ? size.width : y1,
  };
}

function boxOutline({ x0, y0, x1, y1 }: Bounds): Outline {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

/** The side it is more open to; the nearer one where it is open to neither. */
function nearer<Side extends keyof Opening>(
  [low, high]: readonly [Side, Side],
  opening: Opening,
  [toLow, toHigh]: readonly [Ticks, Ticks],
): Side {
  if (opening[low] !== opening[high]) return opening[low] > opening[high] ? low : high;
  return toLow <= toHigh ? low : high;
}

/** Whether it opens to a slanted cut that is taken for the edge: then it is marked on the rectangle, from its end. */
function isOpenToCut(outline: Outline, edge: Slant['edge'], { all }: Uncut): boolean {
  const cuts = all.filter((slant) => sideOf(slant) === edge);
  return lengthAlong(outline, cuts, JITTER) > 0;
}

/** The corners that the slanted cuts leave an edge, where a notch lies between them. */
function cornersOf(box: Bounds, edge: Slant['edge'], { marked, size }: Uncut) {
  const stretch = longEdgesOf(marked, size)[edge];
  return stretch.from <= box.x0 && box.x1 <= stretch.to ? stretch : null;
}
