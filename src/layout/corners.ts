/** Corners of walls, hearths and jambs that reach into a row: places along it where no end joint should lie. */

import type { Ticks } from '../geometry/length';
import { distinct, entryAfter, entryBefore } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { turnAt } from '../geometry/turn';
import type { RowLayout } from './rows';

/** Our choice: what turns by less is part of a curve or of a bowed wall; round cut-outs turn by 22.5 degrees. */
const LEAST_TURN_DEGREES = 30;

/** Our choice: an edge that leans less than 1 in 10 stands across the rows. */
const MOST_LEAN = 1 / 10;

/** Row -> run -> places of such corners between its ends, ascending, laying frame. Ticks. */
export function cornersInRuns({ floor, rows }: RowLayout): readonly (readonly (readonly Ticks[])[])[] {
  const corners = floor.flatMap((outline) =>
    outline.filter((at, i) => {
      const [before, after] = [entryBefore(outline, i), entryAfter(outline, i)];
      return (isAcross(before, at) || isAcross(at, after)) && turnAt(before, at, after) >= LEAST_TURN_DEGREES;
    }),
  );
  return rows.map(({ y0, y1, runs }) => {
    const inRow = corners.filter(({ y }) => y >= y0 && y <= y1).map(({ x }) => x);
    return runs.map(({ x0, x1 }) => distinct(inRow.filter((x) => x > x0 && x < x1)).sort((a, b) => a - b));
  });
}

function isAcross(from: Point, to: Point): boolean {
  return Math.abs(to.x - from.x) <= Math.abs(to.y - from.y) * MOST_LEAN;
}
