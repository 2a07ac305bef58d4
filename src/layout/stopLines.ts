/**
 * The lines where rows stop: faces of walls and hearths, jambs, both sides of a partition, thresholds. Each is a stretch of
 * the floor's edge that runs along the rows, give or take what is out of square.
 */

import { OUTLINE_ROUNDING, type Ticks, ticksOfInches } from '../geometry/length';
import { entryBefore, lastOf, leastBy, sumOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import type { Region } from '../geometry/polygon';
import { type Frame, toFrame } from '../geometry/turn';
import { isOpenEdge, type OpenEnd } from '../room/doorways';

export interface StopLine {
  /** Whether the floor lies above it in the laying frame, so that rows begin there, or below it. */
  readonly floorLies: 'above' | 'below';
  /** Heights in the laying frame between which it runs; equal for a line that is level. */
  readonly low: Ticks;
  readonly high: Ticks;
  /** Along the rows. */
  readonly length: Ticks;
  /** The middle of its longest stretch, in the room. */
  readonly middle: Point;
  /** Of a threshold that rows begin at: how far it is from there to the face of the wall; else 0. */
  readonly doorwayDepth: Ticks;
}

/** Our choice: what leans more than 1 in 10 is a taper or an angled end, and no start makes its strip wider. */
const MOST_LEAN = 1 / 10;

/** Our choice: what is shorter lies beside a pipe, where the plank is bored or notched. */
const LEAST_LENGTH: Ticks = ticksOfInches(2);

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly dx: Ticks;
  readonly dy: Ticks;
  readonly y: Ticks;
}

/**
 * The stop lines of a floor, from the start wall on.
 *
 * @param floor in the room, after the gap
 * @param frame of the rows
 * @param openEnds where the floor ends in doorways
 */
export function stopLinesOf(floor: Region, frame: Frame, openEnds: readonly OpenEnd[]): readonly StopLine[] {
  const lines = floor.flatMap((outline) => {
    const turned = outline.map((point) => toFrame(frame, point));
    const edges = outline.map((from, i): Edge => {
      const next = (i + 1) % outline.length;
      const [dx, dy] = [turned[next].x - turned[i].x, turned[next].y - turned[i].y];
      return { from, to: outline[next], dx, dy, y: turned[i].y };
    });
    return stretchesOf(edges).map((stretch) => lineOf(stretch, edges, openEnds));
  });
  return lines.filter(({ length }) => length >= LEAST_LENGTH).sort((a, b) => a.low - b.low || a.high - b.high);
}

/** Edges along the rows, those that follow one another the same way together: the straight parts of a bowed wall. */
function stretchesOf(edges: readonly Edge[]): readonly (readonly Edge[])[] {
  const goOn = (one: Edge, next: Edge) => isAlong(one) && isAlong(next) && Math.sign(one.dx) === Math.sign(next.dx);
  const start = edges.findIndex((edge, i) => !goOn(entryBefore(edges, i), edge));
  const stretches: Edge[][] = [];
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[(Math.max(0, start) + i) % edges.length];
    if (!isAlong(edge)) continue;
    const open = lastOf(stretches);
    if (i > 0 && open && goOn(lastOf(open), edge) && lastOf(open).to === edge.from) open.push(edge);
    else stretches.push([edge]);
  }
  return stretches;
}

function isAlong({ dx, dy }: Edge): boolean {
  return dx !== 0 && Math.abs(dy) <= Math.abs(dx) * MOST_LEAN;
}

function lineOf(stretch: readonly Edge[], edges: readonly Edge[], openEnds: readonly OpenEnd[]): StopLine {
  const heights = stretch.flatMap(({ y, dy }) => [y, y + dy]);
  const longest = leastBy(stretch, (b) => -Math.abs(b.dx));
  const floorLies = longest.dx > 0 ? 'above' : 'below';
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const isLevel = high - low <= OUTLINE_ROUNDING;
  const isThreshold = floorLies === 'above' && stretch.some(({ from, to }) => isOpenEdge(openEnds, from, to));
  const at = edges.indexOf(stretch[0]);
  const jambs = [entryBefore(edges, at), edges[(at + stretch.length) % edges.length]];
  return {
    floorLies,
    low,
    high: isLevel ? low : high,
    length: sumOf(stretch, ({ dx }) => Math.abs(dx)),
    middle: middleOf(longest),
    doorwayDepth: isThreshold ? Math.min(...jambs.map(({ dy }) => Math.abs(dy))) : 0,
  };
}

function middleOf({ from, to }: Edge): Point {
  return { x: Math.round((from.x + to.x) / 2), y: Math.round((from.y + to.y) / 2) };
}

/**
 * Width of the strip between a stop line and the next seam between rows, at its narrowest; a seam right on the line leaves
 * a whole plank, one that crosses it leaves nothing.
 *
 * @param firstRow height of the first seam
 * @param near how near a seam lies right on the line, such as what is squared off
 */
export function stripAt(
  { floorLies, low, high }: StopLine,
  firstRow: Ticks,
  plankWidth: Ticks,
  near: Ticks = OUTLINE_ROUNDING,
): Ticks {
  const above = (height: Ticks) => {
    const rest = (((height - firstRow) % plankWidth) + plankWidth) % plankWidth;
    return rest <= near || plankWidth - rest <= near ? 0 : rest;
  };
  const [fromLow, fromHigh] = [above(low), above(high)];
  const isCrossed = high > low && fromLow + (high - low) >= plankWidth;
  if (isCrossed) return 0;
  if (floorLies === 'above') return plankWidth - fromHigh;
  return fromLow === 0 && high > low ? 0 : fromLow || plankWidth;
}

/** Whether the strip at a threshold ends in the doorway, where a whole plank could be notched into it. */
export function isInDoorway({ doorwayDepth }: StopLine, strip: Ticks, plankWidth: Ticks): boolean {
  return doorwayDepth > 0 && strip < plankWidth && strip <= doorwayDepth + OUTLINE_ROUNDING;
}
