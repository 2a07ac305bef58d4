/** Trim along the walls: what each wall needs, and the fewest sticks that give it. */
import { cutStock } from '../cutting/stock';
import type { Ticks } from '../geometry/length';
import { type Point, sideOf } from '../geometry/point';

/** A length of wall between two corners or casings. */
export interface TrimLength {
  /** `wall 3`, `wall 3 (2)` where a doorway divides it, `cut-out 1`. */
  readonly label: string;
  /** Along the wall, ticks. */
  readonly length: Ticks;
  /** What mitres at outside corners add: the long point stands past the wall by the trim's thickness. */
  readonly mitres: Ticks;
}

export interface TrimRun {
  readonly lengths: readonly TrimLength[];
  /** Corners where trim meets trim: it is coped or mitred in an inside corner, mitred at an outside one. */
  readonly insideCorners: number;
  readonly outsideCorners: number;
  /** Around round cut-outs, ticks: sticks do not bend, so it is told and not cut. */
  readonly roundLength: Ticks;
}

/** A piece to cut; several share a label where a wall is longer than a stick. */
export interface TrimPiece {
  readonly label: string;
  readonly length: Ticks;
  /** One of several joined end to end along one wall. */
  readonly scarfed: boolean;
}

export interface TrimCuts {
  readonly pieces: readonly TrimPiece[];
  /** A stick a line: indices of its pieces, longest first. */
  readonly sticks: readonly (readonly number[])[];
  readonly stickCount: number;
  readonly provedFewest: boolean;
}

/** The walls of one room as trim sees them. */
export interface WalledRoom {
  readonly outline: readonly Point[];
  readonly cutouts: readonly (readonly Point[])[];
  readonly doorways: readonly { readonly from: Point; readonly to: Point }[];
}

/** Our choice: an outline with more corners than this stands for a round column. */
const MOST_SQUARE_CORNERS = 8;
/** How near a jamb or a cut-out's corner must lie to a wall to be on it: what rounding on a slanted wall may move. */
const ON_WALL: Ticks = 640;
/** Common practice: no trim piece under a foot where two could be made alike. */
const SHORTEST_SCARF: Ticks = 12 * 16_256;

/**
 * Trim wanted along the outline, less doorways and what stands against a wall.
 *
 * @param thickness of the trim, ticks; each outside corner adds it to the lengths that meet there
 * @param aroundCutouts whether trim also goes round columns and hearths where they do not touch a wall
 */
export function trimRunOf(room: WalledRoom, thickness: Ticks, aroundCutouts: boolean): TrimRun {
  const open = room.doorways.map(({ from, to }): Gap => [from, to]);
  const rings = aroundCutouts ? room.cutouts.filter((ring) => ring.length <= MOST_SQUARE_CORNERS) : [];
  const round = aroundCutouts ? room.cutouts.filter((ring) => ring.length > MOST_SQUARE_CORNERS) : [];
  const walls = ringTrim(room.outline, 'wall', [...open, ...room.cutouts.flatMap(edgesOf)], thickness);
  const around = rings.map((ring, i) =>
    ringTrim(clockwise(ring), `cut-out ${i + 1} side`, edgesOf(room.outline), thickness),
  );
  const all = [walls, ...around];
  return {
    lengths: all.flatMap((part) => part.lengths),
    insideCorners: all.reduce((count, part) => count + part.insideCorners, 0),
    outsideCorners: all.reduce((count, part) => count + part.outsideCorners, 0),
    roundLength: Math.ceil(round.flatMap(edgesOf).reduce((length, [a, b]) => length + distance(a, b), 0)),
  };
}

/** Fewest sticks for all lengths together; a wall longer than a stick is scarfed, no other is. */
export function cutTrim(lengths: readonly TrimLength[], stockLength: Ticks, kerf: Ticks, thickness: Ticks): TrimCuts {
  const pieces = lengths.flatMap((wall) => piecesOf(wall, stockLength, thickness));
  const plan = cutStock(
    pieces.map((piece) => piece.length),
    stockLength,
    kerf,
  );
  return {
    pieces,
    sticks: plan.sticks,
    stickCount: plan.count,
    provedFewest: plan.stop === 'proved fewest',
  };
}

/**
 * Whole sticks and a rest; where the rest would be under a foot, it and the stick before it are made alike. A scarf is
 * cut at 45 degrees, so each joint takes the trim's thickness once more.
 */
function piecesOf({ label, length, mitres }: TrimLength, stockLength: Ticks, thickness: Ticks): TrimPiece[] {
  const pieces: Ticks[] = [];
  let left = length + mitres;
  while (left > stockLength) {
    pieces.push(stockLength);
    left -= stockLength - thickness;
  }
  if (pieces.length > 0 && left < Math.min(SHORTEST_SCARF, stockLength / 2)) {
    const both = stockLength + left;
    pieces[pieces.length - 1] = Math.ceil(both / 2);
    left = Math.floor(both / 2);
  }
  return [...pieces, left].map((piece) => ({ label, length: piece, scarfed: pieces.length > 0 }));
}

type Gap = readonly [Point, Point];

type RingTrim = Omit<TrimRun, 'roundLength'>;

/** Trim along one ring with the floor on its left: a left turn is an inside corner, a right turn an outside one. */
function ringTrim(ring: readonly Point[], name: string, gaps: readonly Gap[], thickness: Ticks): RingTrim {
  const count = ring.length;
  const walls = edgesOf(ring).map(([a, b]) => ({ size: distance(a, b), parts: trimmedParts(a, b, gaps) }));
  const turns = ring.map((corner, i) => {
    const [before, after] = [walls[(i + count - 1) % count], walls[i]];
    const meets = before.parts.some(([, to]) => to === before.size) && after.parts.some(([from]) => from === 0);
    return meets ? turnAt(ring[(i + count - 1) % count], corner, ring[(i + 1) % count]) : 0;
  });
  const mitres = turns.map((turn) => (turn < 0 ? thickness * Math.tan(-turn / 2) : 0));
  const lengths = walls.flatMap(({ size, parts }, i) =>
    parts.map(([from, to], j): TrimLength => {
      const past = (from === 0 ? mitres[i] : 0) + (to === size ? mitres[(i + 1) % count] : 0);
      const label = `${name} ${wallNumberOf(i, count)}${parts.length > 1 ? ` (${j + 1})` : ''}`;
      return { label, length: wholeTicks(to - from), mitres: wholeTicks(past) };
    }),
  );
  const insideCorners = turns.filter((turn) => turn > 0).length;
  return { lengths, insideCorners, outsideCorners: turns.filter((turn) => turn < 0).length };
}

/** What is left of the wall a -> b, as distances from a, once the gaps that lie on it are taken out. */
function trimmedParts(a: Point, b: Point, gaps: readonly Gap[]): (readonly [number, number])[] {
  const size = distance(a, b);
  const along = (p: Point) => ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / size;
  const off = (p: Point) => Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / size;
  const taken = gaps
    .filter((gap) => gap.every((point) => off(point) <= ON_WALL))
    .map(([from, to]) => [Math.min(along(from), along(to)), Math.max(along(from), along(to))] as const)
    .filter(([from, to]) => to > 0 && from < size)
    .sort((one, other) => one[0] - other[0]);
  const parts: (readonly [number, number])[] = [];
  let start = 0;
  for (const [from, to] of taken) {
    if (from - start > ON_WALL) parts.push([start, from]);
    start = Math.max(start, to);
  }
  if (size - start > ON_WALL) parts.push([start, size]);
  return parts;
}

/** Signed turn from a -> b to b -> c, radians, left positive. */
function turnAt(a: Point, b: Point, c: Point): number {
  if (sideOf(a, b, c) === 0) return 0;
  const turn = Math.atan2(c.y - b.y, c.x - b.x) - Math.atan2(b.y - a.y, b.x - a.x);
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

function edgesOf(ring: readonly Point[]): Gap[] {
  return ring.map((point, i) => [point, ring[(i + 1) % ring.length]]);
}

/** A cut-out walked so that the floor around it lies on the left. */
function clockwise(ring: readonly Point[]): readonly Point[] {
  const doubleArea = edgesOf(ring).reduce((area, [a, b]) => area + a.x * b.y - b.x * a.y, 0);
  return doubleArea > 0 ? [...ring].reverse() : ring;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** Upwards, but for the noise of the arithmetic. */
function wholeTicks(length: number): Ticks {
  return Math.ceil(length - 1e-6);
}

/**
 * Number of the wall along an edge of an outline: walls are counted clockwise from the far one, the outline runs
 * anticlockwise from the same corner.
 */
function wallNumberOf(edgeIndex: number, count: number): number {
  return ((2 * count - 2 - edgeIndex) % count) + 1;
}
