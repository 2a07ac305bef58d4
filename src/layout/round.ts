/** Which notches and holes are round: cut-outs are drawn as regular polygons, and edges or ends may cut them off. */

import { type Ticks, toTicks } from '../geometry/length';
import { madeOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { distanceBetween } from '../geometry/point';
import type { Outline } from '../geometry/polygon';
import { ROUND_SIDES } from '../room/cutouts';

export interface Circle {
  readonly centre: Point;
  readonly diameter: Ticks;
}

/** Corners are rounded one by one where a room is turned and its walls moved in: a fifth of a millimetre covers it. */
const ROUNDING: Ticks = 128;

const TURN = (2 * Math.PI) / ROUND_SIDES;

/**
 * The circle that an outline was drawn round, whole or partly cut off: five corners in a row lie as in a regular
 * polygon, and nothing lies outside it. Null when it is no such outline.
 *
 * @param outline anticlockwise
 */
export function circleOf(outline: Outline): Circle | null {
  const at = (i: number) => outline[i % outline.length];
  const share = 1 / (2 - 2 * Math.cos(2 * TURN));
  for (let i = 0; i < outline.length; i++) {
    const middle = at(i + 2);
    const along = (key: 'x' | 'y') => toTicks(middle[key] + share * (at(i)[key] + at(i + 4)[key] - 2 * middle[key]));
    const centre = { x: along('x'), y: along('y') };
    const toCorner = distance(middle, centre);
    const side = 2 * toCorner * Math.sin(TURN / 2);
    const isCorner = (k: number) =>
      Math.abs(distance(at(i + k), centre) - toCorner) < ROUNDING &&
      Math.abs(distance(at(i + k), at(i + k + 1)) - side) < ROUNDING;
    if (
      side > 4 * ROUNDING &&
      [0, 1, 2, 3].every(isCorner) &&
      outline.every((p) => distance(p, centre) < toCorner + ROUNDING)
    )
      return { centre, diameter: toTicks(2 * toCorner * Math.cos(TURN / 2)) };
  }
  return null;
}

/** Corners on the circle, anticlockwise. */
export function outlineOfCircle({ centre, diameter }: Circle): Outline {
  return madeOf(2 * ROUND_SIDES, (i) => ({
    x: toTicks(centre.x + (diameter / 2) * Math.cos((i * TURN) / 2)),
    y: toTicks(centre.y + (diameter / 2) * Math.sin((i * TURN) / 2)),
  }));
}

function distance(p: Point, q: Point): number {
  return distanceBetween(p, q);
}
