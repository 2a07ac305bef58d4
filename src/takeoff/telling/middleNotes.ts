/** How a floor is laid both ways from a line, in words. */

import type { Ticks } from '../../geometry/length';
import { entryAfter, lastOf, leastBy, sumOf } from '../../geometry/lists';
import type { Point } from '../../geometry/point';
import { toFrame, toRoom } from '../../geometry/turn';
import type { Row } from '../../layout/rows';
import type { Wall } from '../../room/walls';
import { staggerAcross } from '../planning/middleStart';
import type { PlannedFloors } from '../planning/planFloors';
import type { LaidFloor } from '../reading/drawnRoom';
import { lengthText, roomText } from '../text/lengthText';

type Show = (length: Ticks) => string;

/** @param aheadIndex of the part ahead of the line; the part behind it follows */
export function middleNotes(planned: PlannedFloors<LaidFloor>, aheadIndex: number): readonly string[] {
  const [ahead, behind] = [planned.floors[aheadIndex], planned.floors[aheadIndex + 1]];
  const { units, rules } = ahead.read;
  const show: Show = roomText(units);
  const behindRows = behind.layout.rows;
  const [first, last] = [behindRows[0].rowNumber, lastOf(behindRows).rowNumber];
  const joint = slipTongueLength(ahead, behind);
  const sentence =
    `Snap a line ${lineText(ahead, show)}. Lay rows 1 to ${ahead.layout.rows.length} ahead of it, grooves to the line. ` +
    `Then glue a slip tongue into the groove of row 1 along the line, ${show(joint)} of it, and lay rows ${first} to ${last} the other way, planks turned round.`;
  const stagger = staggerAcross(planned, aheadIndex);
  if (stagger === null || stagger >= rules.minStagger) return [sentence];
  const found = lengthText(stagger, units, 'piece');
  const wanted = lengthText(rules.minStagger, units, 'piece');
  return [
    sentence,
    `Across the line two joints are only ${found} apart; the minimum stagger is ${wanted}. Shift row ${first} on site.`,
  ];
}

/** Both ends of the line, each by a wall and how far along it. */
function lineText({ layout, room }: LaidFloor, show: Show): string {
  const { runs } = layout.rows[0];
  const ends = [Math.min(...runs.map((run) => run.x0)), Math.max(...runs.map((run) => run.x1))];
  const [from, to] = ends.map((x) => placeOnWall(toRoom(layout.frame, { x, y: 0 }), room.walls, show));
  return `from ${from} to ${to}`;
}

function placeOnWall(point: Point, walls: readonly Wall[], show: Show): string {
  const places = walls.map((wall) => ({ wall, ...placeAlong(point, wall) }));
  const { wall, along } = leastBy(places, (b) => b.distance);
  return `${show(along)} along wall ${wall.wallNumber}`;
}

/** The place of a wall nearest to a point. */
function placeAlong(point: Point, { from, length, along }: Wall): { readonly along: Ticks; readonly distance: number } {
  const [dx, dy] = [point.x - from.x, point.y - from.y];
  const at = Math.min(length, Math.max(0, dx * along.x + dy * along.y));
  const [missX, missY] = [dx - at * along.x, dy - at * along.y];
  return { along: Math.round(at), distance: Math.sqrt(missX * missX + missY * missY) };
}

/** How far planks lie on both sides of the line. */
function slipTongueLength(ahead: LaidFloor, behind: LaidFloor): Ticks {
  const seenAhead = (x: Ticks) => toFrame(ahead.layout.frame, toRoom(behind.layout.frame, { x, y: 0 })).x;
  const one = edgesOnLine(ahead.layout.rows[0]);
  const other = edgesOnLine(behind.layout.rows[0]).map(([x0, x1]) => [seenAhead(x1), seenAhead(x0)] as const);
  const shared = one.flatMap(([a0, a1]) => other.map(([b0, b1]) => Math.min(a1, b1) - Math.max(a0, b0)));
  return sumOf(shared, (length) => Math.max(0, length));
}

/** Corners turned by an angle are rounded one by one, so an edge on the line may lie this far off it. */
const ROUNDING: Ticks = 2;

/** Stretches of a row's outline that lie on the line it starts from. */
function edgesOnLine({ runs }: Row): readonly (readonly [Ticks, Ticks])[] {
  return runs.flatMap(({ part }) =>
    part.outline.flatMap((from, i): (readonly [Ticks, Ticks])[] => {
      const to = entryAfter(part.outline, i);
      const isOnLine = Math.abs(from.y) <= ROUNDING && Math.abs(to.y) <= ROUNDING;
      return isOnLine ? [[Math.min(from.x, to.x), Math.max(from.x, to.x)]] : [];
    }),
  );
}
