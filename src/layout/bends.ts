/**
 * Edges and ends that follow a wall or a hearth which is not straight: no straight cut makes them, they are scribed by
 * widths or lengths of the piece at places along them.
 */

import { intersect, unite } from '../geometry/combine';
import type { Ticks } from '../geometry/length';
import { lastOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { anticlockwise, areaOf, boundsOf, type Outline, type Region, signedAreaOf } from '../geometry/polygon';
import { turnAt } from '../geometry/turn';
import { offLine, placesToMark } from './bentLine';
import { ROUNDING, type Size, type Slant, type Stretch } from './slants';
import type { SquaredOff } from './square';

/** A long edge with the widths of the piece along it, or an end with its lengths across it. */
export interface Bend {
  readonly side: Slant['edge'] | Slant['end'];
  /** From its left end or its start edge on; `size` is measured from the opposite side of the rectangle. */
  readonly places: readonly { readonly at: Ticks; readonly size: Ticks }[];
  /** Whether it is all of an edge, from end to end. */
  readonly isWhole: boolean;
}

/** A piece without its bends: these are cut off a shape that is marked as any other. */
export interface Unbent {
  readonly bends: readonly Bend[];
  readonly rest: Region;
  /** How much narrower each end is where all of an edge bends. */
  readonly narrower: Readonly<Record<Slant['end'], Ticks>>;
  /** How much of each end bends cut off besides. */
  readonly offEnd: Readonly<Record<Slant['end'], Ticks>>;
  /** What they leave of the long edges. */
  readonly longEdges: Readonly<Record<Slant['edge'], Stretch>>;
}

/** Finds the bends of a piece: `unbend`. */
export type Unbend = typeof unbend;

/** How pieces of a room as it is are made: a plain rectangle needs nothing of it. */
export interface Bending {
  readonly unbend: Unbend;
  readonly straightened: typeof straightened;
  /** A piece without the prongs that trim covers; null where it has none. */
  readonly withoutProngs?: (piece: Region) => { readonly region: Region; readonly widest: Ticks } | null;
}

export const BENDING: Bending = { unbend, straightened };

/** Ticks: corners beside slanted walls are rounded one by one, and what they bend by less is straight. */
const HAIRLINE: Ticks = 16;
/** Our choice: where two edges turn by more, the wall has a corner; round cut-outs turn by 22.5 degrees, and have marks of their own. */
const MOST_DEGREES = 20;
/** Our choice: two edges that turn by more are cuts of their own. */
const MOST_DEGREES_OF_TWO = 12;

/**
 * @param shape with its lower left end at 0, 0
 * @param step bends that change a size by less cannot be marked, ticks
 */
function unbend(shape: Region, size: Size, step: Ticks): Unbent {
  const found = chainsOf(shape, size).flatMap((chain) => bentSideOf(chain, shape, size, step) ?? []);
  const bends = found.map(({ bend }) => bend);
  const rest = found.reduce((region, { beyond }) => unite(region, [beyond]), shape);
  const isAt = (end: Slant['end'], place: Ticks) => Math.abs(place - (end === 'left' ? 0 : size.length)) <= ROUNDING;
  const sumAt = (end: Slant['end'], isWhole: boolean) =>
    bends.reduce((sum, { side, places, isWhole: isAll }) => {
      const [first, last] = [places[0], lastOf(places)];
      if (side === end) return isWhole ? sum : sum + last.at - first.at;
      if (side === 'left' || side === 'right' || isAll !== isWhole) return sum;
      const place = end === 'left' ? first : last;
      return isAt(end, place.at) ? sum + size.width - place.size : sum;
    }, 0);
  return {
    bends,
    rest,
    narrower: { left: sumAt('left', true), right: sumAt('right', true) },
    offEnd: { left: sumAt('left', false), right: sumAt('right', false) },
    longEdges: { start: edgeLeft('start', bends, size), far: edgeLeft('far', bends, size) },
  };
}

/** What bends leave of a long edge: those along a part of it that reach an end, and those of the ends. */
function edgeLeft(edge: Slant['edge'], bends: readonly Bend[], { length, width }: Size): Stretch {
  let [from, to] = [0, length];
  for (const { side, places, isWhole } of bends) {
    const [first, last] = [places[0], lastOf(places)];
    const corner = edge === 'start' ? first : last;
    const reaches = Math.abs(corner.at - (edge === 'start' ? 0 : width)) <= ROUNDING;
    if (side === 'left' && reaches) from = Math.max(from, length - corner.size);
    if (side === 'right' && reaches) to = Math.min(to, corner.size);
    if (side !== edge || isWhole) continue;
    if (first.at <= ROUNDING) from = Math.max(from, last.at);
    else if (last.at >= length - ROUNDING) to = Math.min(to, first.at);
  }
  return { from, to: Math.max(from, to) };
}

/** Smooth stretches of the outlines round a piece, without what of them lies along its rectangle. */
function chainsOf(shape: Region, size: Size): readonly Outline[] {
  return shape
    .filter((outline) => outline.length > 4 && signedAreaOf(outline) > 0)
    .flatMap((outline) => smoothChains(outline, size));
}

function smoothChains(outline: Outline, size: Size): readonly Outline[] {
  const count = outline.length;
  const at = (i: number) => outline[(i + count) % count];
  const isCorner = (i: number) => turnAt(at(i - 1), at(i), at(i + 1)) >= MOST_DEGREES;
  const start = outline.findIndex((_, i) => isCorner(i));
  if (start < 0) return [];
  const chains: Point[][] = [];
  for (let i = start; i < start + count; i++) {
    if (isCorner(i)) chains.push([at(i)]);
    lastOf(chains).push(at(i + 1));
  }
  return chains.map((chain) => offRectangle(chain, size)).filter((chain) => chain.length > 2);
}

/** A chain without the edges at its ends that lie along the rectangle, where there is nothing to cut; all of an edge stays. */
function offRectangle(chain: Outline, { length, width }: Size): Outline {
  const isOn = (p: Point, q: Point, key: 'x' | 'y', side: Ticks) =>
    Math.abs(p[key] - side) <= ROUNDING && Math.abs(q[key] - side) <= ROUNDING;
  const isEnd = (p: Point, q: Point) => isOn(p, q, 'x', 0) || isOn(p, q, 'x', length);
  const between = trimmed(chain, isEnd);
  if (isAllAlong(between, length)) return between;
  return trimmed(between, (p, q) => isEnd(p, q) || isOn(p, q, 'y', 0) || isOn(p, q, 'y', width));
}

function trimmed(chain: Outline, isLeftOut: (from: Point, to: Point) => boolean): Outline {
  let [from, to] = [0, chain.length];
  while (to - from > 1 && isLeftOut(chain[from], chain[from + 1])) from++;
  while (to - from > 1 && isLeftOut(chain[to - 2], chain[to - 1])) to--;
  return chain.slice(from, to);
}

/** Whether a chain goes from one end of the piece to the other. */
function isAllAlong(chain: Outline, length: Ticks): boolean {
  const places = [chain[0].x, lastOf(chain).x];
  return Math.min(...places) <= ROUNDING && Math.max(...places) >= length - ROUNDING;
}

/** From left to right: x along the side and y how wide or long the piece is there. */
interface BentSide {
  readonly side: Bend['side'];
  readonly line: readonly Point[];
}

/** The wood lies to the left of the way. Null for a chain that turns back on itself. */
function sideOfChain(chain: Outline, { length, width }: Size): BentSide | null {
  const runs = (key: 'x' | 'y', sign: number) =>
    chain.every((p, i) => i === 0 || sign * (p[key] - chain[i - 1][key]) > 0);
  const [first, last] = [chain[0], lastOf(chain)];
  const isLong = Math.abs(last.x - first.x) >= Math.abs(last.y - first.y);
  const sides: readonly (readonly [boolean, () => BentSide])[] = [
    [runs('x', 1), () => ({ side: 'start', line: chain.map(({ x, y }) => ({ x, y: width - y })) })],
    [runs('x', -1), () => ({ side: 'far', line: [...chain].reverse() })],
    [runs('y', 1), () => ({ side: 'right', line: chain.map(({ x, y }) => ({ x: y, y: x })) })],
    [runs('y', -1), () => ({ side: 'left', line: chain.map(({ x, y }) => ({ x: y, y: length - x })).reverse() })],
  ];
  const found = (isLong ? sides : [...sides].reverse()).find(([isIt]) => isIt);
  return found ? found[1]() : null;
}

/** A chain as a bend, with what lies beyond it; null where it is straight, or where wood lies beyond. */
function bentSideOf(
  chain: Outline,
  shape: Region,
  size: Size,
  step: Ticks,
): { readonly bend: Bend; readonly beyond: Outline } | null {
  const bent = sideOfChain(chain, size);
  if (!bent) return null;
  const { side, line } = bent;
  const isEdge = side === 'start' || side === 'far';
  const [reach, full] = isEdge ? [size.length, size.width] : [size.width, size.length];
  const isWhole = isEdge && isAllAlong(chain, size.length);
  const turned = placesToMark(line, HAIRLINE);
  const isBent =
    turned.length > 3 ||
    (turned.length === 3 && (isWhole || turnAt(turned[0], turned[1], turned[2]) < MOST_DEGREES_OF_TWO));
  if (!isBent || line.every(({ y }) => full - y < step)) return null;
  const places = placesToMark(turned, step / 4).map(({ x, y }) => ({ at: x, size: y }));
  const beyond = beyondOf(chain, side, size);
  if (areaOf(intersect([beyond], shape)) > HAIRLINE * reach) return null;
  return { bend: { side, places, isWhole }, beyond };
}

/** What lies between a chain and the side of the rectangle that it faces. */
function beyondOf(chain: Outline, side: Bend['side'], { length, width }: Size): Outline {
  const onSide = ({ x, y }: Point): Point =>
    side === 'start'
      ? { x, y: 0 }
      : side === 'far'
        ? { x, y: width }
        : side === 'left'
          ? { x: 0, y }
          : { x: length, y };
  return anticlockwise([...chain, onSide(lastOf(chain)), onSide(chain[0])]);
}

/**
 * A piece with a long edge at a wall that bends by less than a layer would cut: straight there, at its narrower side. Where that
 * would be a taper of less than a layer cuts, it stays bent.
 *
 * @param levels where wood meets wood: no edge on one of them moves
 */
function straightened(piece: Region, levels: readonly Ticks[], tolerance: Ticks): SquaredOff | null {
  const { x0, y0, x1, y1 } = boundsOf(piece);
  const shape = shifted(piece, -x0, -y0);
  const size = { length: x1 - x0, width: y1 - y0 };
  for (const chain of chainsOf(shape, size)) {
    const bent = isAllAlong(chain, size.length) ? sideOfChain(chain, size) : null;
    if (bent?.side !== 'start' && bent?.side !== 'far') continue;
    const { side, line } = bent;
    const [first, last] = [line[0], lastOf(line)];
    const isSeam = chain.some(({ y }, i) => i > 0 && y === chain[i - 1].y && levels.includes(y + y0));
    const lean = Math.abs(last.y - first.y);
    if (isSeam || (lean > HAIRLINE && lean < tolerance)) continue;
    const offs = line.map((place) => offLine(place, first, last));
    const [low, most] = [Math.floor(Math.min(...offs)), Math.ceil(Math.max(...offs) - Math.min(...offs))];
    if (most >= tolerance || most <= HAIRLINE) continue;
    const inner = side === 'start' ? -low : low;
    const straight = [chain[0], lastOf(chain)].map(({ x, y }) => ({ x, y: y + inner }));
    const changed = withChain(shape, chain, straight);
    if (changed) return { region: shifted(changed, x0, y0), most };
  }
  return null;
}

function shifted(region: Region, byX: Ticks, byY: Ticks): Region {
  return region.map((outline) => outline.map(({ x, y }) => ({ x: x + byX, y: y + byY })));
}

/** The region with a chain of its outline replaced, whose ends move along upright edges; null where they are not upright. */
function withChain(shape: Region, chain: Outline, by: Outline): Region | null {
  const found = shape.find((outline) => outline.includes(chain[0]) && outline.includes(chain[1]));
  if (!found) return null;
  const from = found.indexOf(chain[0]);
  const rest = [...found.slice(from), ...found.slice(0, from)].slice(chain.length);
  const isUpright = (p: Point, q: Point) => Math.abs(p.x - q.x) <= ROUNDING;
  if (rest.length < 2 || !isUpright(lastOf(rest), by[0]) || !isUpright(rest[0], by[1])) return null;
  return shape.map((outline) => (outline === found ? [...by, ...rest] : outline));
}
