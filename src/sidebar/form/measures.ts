/** The measures a room was given by (walls and diagonals), held against the room as it is drawn. */

import { type Ticks, toTicks, type Units } from '../../geometry/length';
import type { Point } from '../../geometry/point';
import { distanceBetween } from '../../geometry/point';
import type { Outline } from '../../geometry/polygon';
import { TAPE_READING } from '../../room/corners';
import type { MeasuredDistance, MeasuredShape, TapedWall } from '../../room/measured';
import { type Tape, tapeFitOf, tapesOf } from '../../room/taped';
import { farSideUp } from '../../room/wallWalk';
import type { RoomEntry } from '../../takeoff/entry';
import { readRoom } from '../../takeoff/reading/readRoom';
import { lengthText } from '../../takeoff/text/lengthText';

/** A measure from corner to corner, counted from 0, as it was found by tape. Lengths in ticks. */
export interface Measure extends Tape {
  /** As drawn less as measured. Null where nothing else tells the same. */
  readonly by: Ticks | null;
  /** Too far from what the others make it: nothing can be planned before it is measured again. */
  readonly isWorst: boolean;
}

/** A room that comes nearest to measures of which one contradicts the others. */
export interface Contradicted {
  readonly corners: Outline;
  readonly measures: readonly Measure[];
}

/** @param corners where the walls start, as drawn; with none of a room that was not measured along its walls */
export function measuresOf(entry: RoomEntry, corners: readonly Point[]): readonly Measure[] {
  const taped = tapedOf(entry);
  if (!taped || taped.walls.length !== corners.length) return [];
  const tapes = tapesOf(taped.walls, taped.distances);
  const measures = tapes.map((tape) => ({ ...tape, by: offBy(tape, corners), isWorst: false }));
  // n walls and n - 3 diagonals fix a room, and check nothing.
  const areChecked = tapes.length > 2 * corners.length - 3 || measures.some(({ by }) => Math.abs(by) > TAPE_READING);
  return areChecked ? measures : measures.map((measure) => ({ ...measure, by: null }));
}

/** The room whose worst measure is to be seen; null where no single one is at fault. */
export function contradictedOf(entry: RoomEntry): Contradicted | null {
  const taped = tapedOf(entry);
  if (!taped || taped.distances.length === 0) return null;
  const { walls, distances } = taped;
  if (distances.some(({ fromCorner, toCorner }) => Math.max(fromCorner, toCorner) > walls.length)) return null;
  if (distances.some(({ fromCorner, toCorner }) => fromCorner === toCorner)) return null;
  const { tapes, slip } = tapeFitOf(walls, distances);
  if (!slip) return null;
  // Drawn without it: spread over the others it would make all of them look wrong.
  const isSlip = ({ what, number }: Pick<Tape, 'what' | 'number'>) => what === slip.what && number === slip.number;
  const others = tapeFitOf(
    walls.map((wall, i) => (isSlip({ what: 'wall', number: i + 1 }) ? { ...wall, length: null } : wall)),
    distances.filter((_, i) => !isSlip({ what: 'diagonal', number: i + 1 })),
  );
  const corners = farSideUp(others.corners.map(({ x, y }) => ({ x: toTicks(x), y: toTicks(y) })));
  return { corners, measures: tapes.map((tape) => ({ ...tape, by: offBy(tape, corners), isWorst: isSlip(tape) })) };
}

/** As drawn less as measured. */
function offBy({ from, to, length }: Tape, corners: readonly Point[]): Ticks {
  return toTicks(distanceBetween(corners[from], corners[to])) - length;
}

/** `+1/8"`, `−1/16"`; `±0` within what a tape can be read to; '' where it is not known. */
export function byWords(by: Ticks | null, units: Units): string {
  if (by === null) return '';
  if (Math.abs(by) <= TAPE_READING) return '±0';
  return `${by > 0 ? '+' : '−'}${lengthText(Math.abs(by), units, 'piece')}`;
}

interface Taped {
  readonly walls: readonly TapedWall[];
  readonly distances: readonly MeasuredDistance[];
}

/** Walls and distances as typed; null where they cannot be read, or are none. */
function tapedOf(entry: RoomEntry): Taped | null {
  const { room } = readRoom(entry);
  const taped = room && tapedShape(room.measured.shape);
  return taped && taped.walls.length >= 3 ? taped : null;
}

function tapedShape(shape: MeasuredShape): Taped | null {
  if (shape.kind === 'taped') return shape;
  if (shape.kind === 'walls in order') return { walls: shape.walls, distances: [] };
  if (shape.kind !== 'four walls') return null;
  const { walls, diagonal, otherDiagonal } = shape;
  const across = (fromCorner: number, length: Ticks) => ({ fromCorner, toCorner: fromCorner + 2, length });
  return {
    walls: walls.map((length) => ({ length, turn: 90 })),
    distances: [across(1, diagonal), ...(otherDiagonal === null ? [] : [across(2, otherDiagonal)])],
  };
}
