/** Trim along the walls: what each wall needs, and the fewest sticks that give it. */

import { cutStock } from '../cutting/trim/stock';
import { subtract } from '../geometry/combine';
import {
  type FineTicks,
  fineTicksOf,
  OUTLINE_ROUNDING,
  TICKS_PER_FOOT,
  TICKS_PER_MM,
  type Ticks,
} from '../geometry/length';
import { entryAfter, entryBefore, sumOf } from '../geometry/lists';
import { distanceBetween, type Point, sideOf } from '../geometry/point';

/** A length of wall between two corners or casings. */
export interface TrimLength {
  /** `wall 3`, `wall 3 (2)` where a doorway or a hearth divides it, `cut-out 1`. */
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
  /** Whether its walls are counted clockwise, as they are unless the room was walked the other way round. */
  readonly isClockwise: boolean;
}

/** Our choice: an outline with more corners than this stands for a round column. */
const MOST_SQUARE_CORNERS = 8;
/** Our choice: how near a point must lie to a wall to be on it: what rounding on a slanted wall may move. */
const ON_WALL: Ticks = TICKS_PER_MM;
/** Common practice: no trim piece under a foot where two could be made alike. */
const SHORTEST_SCARF: Ticks = TICKS_PER_FOOT;

/**
 * Trim wanted along every edge of the floor, less doorways.
 *
 * @param thickness of the trim, ticks; each outside corner adds it to the lengths that meet there
 * @param aroundCutouts whether trim also goes round columns and hearths; it never goes behind them
 */
export function trimRunOf(room: WalledRoom, thickness: Ticks, aroundCutouts: boolean): TrimRun {
  const rings = subtract([room.outline], room.cutouts).map((ring) => sidesOf(ring, room, aroundCutouts));
  const turns = rings.map(turnsOf);
  const lengths = rings.flatMap((sides, i) => lengthsOf(sides, turns[i], thickness));
  const round = rings.flat().filter((side) => side.isRound);
  return {
    lengths: numbered(lengths),
    insideCorners: turns.flat().filter((turn) => turn > 0).length,
    outsideCorners: turns.flat().filter((turn) => turn < 0).length,
    roundLength: aroundCutouts ? wholeTicks(sumOf(round, (side) => side.size)) : 0,
  };
}

/**
 * Fewest sticks for all lengths together; a wall longer than a stick is scarfed, no other is. Walls are read off an
 * outline, so each piece may be longer than what was typed by its rounding: three of 2.9 ft come out of a stick of 8.7.
 */
export function cutTrim(lengths: readonly TrimLength[], stockLength: Ticks, kerf: Ticks, thickness: Ticks): TrimCuts {
  const pieces = lengths.flatMap((wall) => piecesOf(wall, stockLength, thickness));
  const least = pieces.map((piece) => Math.max(1, piece.length - OUTLINE_ROUNDING));
  const plan = cutStock(least, stockLength, kerf);
  return {
    pieces,
    sticks: plan.sticks,
    stickCount: plan.count,
    provedFewest: plan.stop === 'proved fewest',
  };
}

/** Sticks for plain lengths, butted where one is longer than a stick; all taken as they were typed. */
export function sticksFor(lengths: readonly FineTicks[], stockLength: FineTicks, kerf: FineTicks): number {
  const stick = { length: stockLength, thickness: 0, shortest: fineTicksOf(SHORTEST_SCARF), rounding: 0 };
  return cutStock(
    lengths.flatMap((length) => scarfed(length, stick)),
    stockLength,
    kerf,
  ).count;
}

function piecesOf({ label, length, mitres }: TrimLength, stockLength: Ticks, thickness: Ticks): TrimPiece[] {
  const stick = { length: stockLength, thickness, shortest: SHORTEST_SCARF, rounding: OUTLINE_ROUNDING };
  const pieces = scarfed(length + mitres, stick);
  return pieces.map((piece) => ({ label, length: piece, scarfed: pieces.length > 1 }));
}

/** A stick that a wall is made of: whole numbers of one unit. `rounding`: how much longer the wall may be than it is. */
interface Stick {
  readonly length: number;
  readonly thickness: number;
  readonly shortest: number;
  readonly rounding: number;
}

/**
 * Whole sticks and a rest; where the rest would be under a foot, it and the stick before it are made alike. A scarf is
 * cut at 45 degrees, so each joint takes the trim's thickness once more.
 */
function scarfed(length: number, stick: Stick): number[] {
  const pieces: number[] = [];
  let left = length;
  // Every stick was rounded too.
  while (left > stick.length + (stick.rounding > 0 ? stick.rounding + pieces.length : 0)) {
    pieces.push(stick.length);
    left -= stick.length - stick.thickness;
  }
  if (pieces.length > 0 && left < Math.min(stick.shortest, stick.length / 2)) {
    const both = stick.length + left;
    pieces[pieces.length - 1] = Math.ceil(both / 2);
    left = Math.floor(both / 2);
  }
  return [...pieces, Math.min(left, stick.length)];
}

type Edge = readonly [Point, Point];

/** One edge of the floor, and what of it gets trim, as distances from its start. */
interface Side {
  readonly edge: Edge;
  readonly size: number;
  readonly label: string;
  readonly parts: readonly (readonly [number, number])[];
  /** An edge of a round cut-out. */
  readonly isRound: boolean;
}

/** The edges of one ring, the floor on its left. */
function sidesOf(ring: readonly Point[], room: WalledRoom, aroundCutouts: boolean): Side[] {
  const walls = edgesOf(room.outline);
  const openings = room.doorways.map(({ from, to }): Edge => [from, to]);
  return edgesOf(ring).map((edge): Side => {
    const size = distance(...edge);
    const wallIndex = walls.findIndex((wall) => liesOn(edge, wall));
    if (wallIndex >= 0) {
      const label = `wall ${wallNumberOf(wallIndex, walls.length, room.isClockwise)}`;
      return { edge, size, label, parts: trimmedParts(edge, size, openings), isRound: false };
    }
    const cutoutIndex = room.cutouts.findIndex((cutout) => edgesOf(cutout).some((side) => liesOn(edge, side)));
    const isRound = (room.cutouts[cutoutIndex]?.length ?? 0) > MOST_SQUARE_CORNERS;
    const parts = aroundCutouts && !isRound ? [[0, size] as const] : [];
    return { edge, size, label: `cut-out ${cutoutIndex + 1}`, parts, isRound };
  });
}

/** Turns at the start of each side where trim meets trim, radians, left (an inside corner) positive; 0 elsewhere. */
function turnsOf(sides: readonly Side[]): number[] {
  return sides.map((side, i) => {
    const before = entryBefore(sides, i);
    const meets = before.parts.some(([, to]) => to === before.size) && side.parts.some(([from]) => from === 0);
    return meets ? turnAt(before.edge[0], ...side.edge) : 0;
  });
}

function lengthsOf(sides: readonly Side[], turns: readonly number[], thickness: Ticks): TrimLength[] {
  const mitres = turns.map((turn) => (turn < 0 ? thickness * Math.tan(-turn / 2) : 0));
  return sides.flatMap(({ size, label, parts }, i) =>
    parts.map(([from, to]): TrimLength => {
      const past = (from === 0 ? mitres[i] : 0) + (to === size ? mitres[(i + 1) % sides.length] : 0);
      return { label, length: wholeTicks(to - from), mitres: wholeTicks(past) };
    }),
  );
}

/** `wall 3 (1)`, `wall 3 (2)` where a wall or cut-out has several lengths. */
function numbered(lengths: readonly TrimLength[]): TrimLength[] {
  return lengths.map((length, i) => {
    const sameBefore = lengths.slice(0, i).filter((other) => other.label === length.label).length;
    const isAlone = lengths.filter((other) => other.label === length.label).length === 1;
    return isAlone ? length : { ...length, label: `${length.label} (${sameBefore + 1})` };
  });
}

function liesOn(edge: Edge, [a, b]: Edge): boolean {
  return edge.every((point) => offLine(a, b, point) <= ON_WALL && isBetween(a, b, point));
}

function offLine(a: Point, b: Point, p: Point): number {
  return Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / distance(a, b);
}

function isBetween(a: Point, b: Point, p: Point): boolean {
  const along = alongLine(a, b, p);
  return along >= -ON_WALL && along <= distance(a, b) + ON_WALL;
}

function alongLine(a: Point, b: Point, p: Point): number {
  return ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / distance(a, b);
}

/** What is left of an edge, as distances from its start, once the openings that lie on it are taken out. */
function trimmedParts([a, b]: Edge, size: number, openings: readonly Edge[]): (readonly [number, number])[] {
  const taken = openings
    .filter((opening) => opening.every((point) => offLine(a, b, point) <= ON_WALL))
    .map((opening) => opening.map((point) => alongLine(a, b, point)).sort((one, other) => one - other))
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

function edgesOf(ring: readonly Point[]): Edge[] {
  return ring.map((point, i) => [point, entryAfter(ring, i)]);
}

function distance(a: Point, b: Point): number {
  return distanceBetween(a, b);
}

/** Upwards, but for the noise of the arithmetic. */
function wholeTicks(length: number): Ticks {
  return Math.ceil(length - 1e-6);
}

/** Number of the wall along an edge: the outline starts where wall 1 starts and runs anticlockwise. */
function wallNumberOf(edgeIndex: number, count: number, isClockwise: boolean): number {
  return isClockwise ? count - edgeIndex : edgeIndex + 1;
}
