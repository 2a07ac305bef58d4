/** Walls in order, each with the turn at its end -> corners, and how far the walk misses its start. */

import { type Ticks, toTicks } from '../geometry/length';
import { lastOf, sumOf } from '../geometry/lists';
import type { Point } from '../geometry/point';
import { firstMeeting, isSimple, signedAreaOf } from '../geometry/polygon';
import { unitOf } from '../geometry/turn';
import { allowedMisfit, TAPE_READING, type WallCorners } from './corners';
import { bad, type Checked, good, type RoomNote } from './faults';
import type { MeasuredWall } from './measured';
import { advisedDiagonals } from './tapeAdvice';

/** Our choice: of more walls nobody measures all diagonals. */
const MOST_ADVISED = 40;

/** A wall as walked: its length and direction. */
interface Leg {
  readonly length: number;
  readonly ux: number;
  readonly uy: number;
}

interface Way {
  readonly x: number;
  readonly y: number;
}

/** The corners of a walk round a room, wall 1 along the far side, whichever way round it was walked. */
export function cornersOfWalk(walls: readonly MeasuredWall[]): Checked<WallCorners> {
  if (walls.length < 3) return bad({ code: 'too few walls', found: walls.length });
  const missing = walls.findIndex((wall, i) => wall.turn === null && i < walls.length - 1);
  if (missing >= 0) return bad({ code: 'turn missing', wallNumber: missing + 1 });
  const turned = sumOf(walls, (wall) => wall.turn ?? 0);
  const wanted = turned < 0 ? -360 : 360;
  // Without its last turn the walk still says where it ends; with it, the sum shows a turn misread.
  if (lastOf(walls).turn && Math.abs(turned - wanted) > 1) {
    return bad({ code: 'turns do not add up', found: turned, wanted });
  }
  return closedWalk(walls);
}

function closedWalk(walls: readonly MeasuredWall[]): Checked<WallCorners> {
  const legs = legsOf(walls);
  const end = endOf(legs);
  const by = toTicks(Math.sqrt(end.x * end.x + end.y * end.y));
  // A walk to the left is turned half round when it is drawn (`farSideUp`), and so is what it misses.
  const heading = sumOf(walls, (wall) => wall.turn ?? 0) < 0 ? -1 : 1;
  const right = 0 + heading * toTicks(end.x);
  const far = 0 + heading * toTicks(end.y);
  const allowed = allowedMisfit(sumOf(legs, (leg) => leg.length));
  const corners = farSideUp(cornersOfLegs(spread(legs, takersOf(legs, by), end)));
  if (by > allowed) {
    const advised = corners.length <= MOST_ADVISED && isSimple(corners) ? advisedDiagonals(corners) : [];
    return bad({ code: 'does not close', right, far, by, allowed, advised });
  }
  const meeting = firstMeeting(corners);
  if (meeting) return bad({ code: 'walls meet', wallNumbers: [meeting[0] + 1, meeting[1] + 1] });
  const notes: RoomNote[] = by > TAPE_READING ? [{ code: 'misfit spread', right, far, by }] : [];
  return good({ corners, measured: walls.map((wall) => wall.length), holes: [], notes });
}

function legsOf(walls: readonly MeasuredWall[]): Leg[] {
  const headings = headingsOf(walls);
  return walls.map(({ length }, i) => {
    const { cosine, sine } = unitOf(headings[i]);
    return { length, ux: cosine, uy: sine };
  });
}

/** Degrees anticlockwise from wall 1 to each wall, as typed. */
export function headingsOf(walls: readonly Pick<MeasuredWall, 'turn'>[]): readonly number[] {
  let heading = 0;
  return walls.map(({ turn }) => {
    const own = heading;
    heading -= turn ?? 0;
    return own;
  });
}

function endOf(legs: readonly Leg[]): Way {
  return legs.reduce(({ x, y }, leg) => ({ x: x + leg.length * leg.ux, y: y + leg.length * leg.uy }), { x: 0, y: 0 });
}

/**
 * The legs that take the misfit. A slanted wall is never a round number: when the misfit is no more than a tape reading
 * for each of them, it is theirs alone, and the walls at right angles stay as typed.
 */
function takersOf(legs: readonly Leg[], by: Ticks): readonly Leg[] {
  const slanted = legs.filter(({ ux, uy }) => ux !== 0 && uy !== 0);
  const areAble = slanted.some((p) => slanted.some((q) => Math.abs(p.ux * q.uy - p.uy * q.ux) > 0.5));
  return areAble && by <= slanted.length * TAPE_READING ? slanted : legs;
}

/**
 * The legs made to close: directions stay, lengths change in proportion to themselves and to how far they run along the
 * misfit (least squares with weights 1 / length; surveyors know it as Crandall's rule, here from memory). So a room of
 * right angles stays one: what it misses sideways is shared by the walls that run sideways only.
 */
function spread(legs: readonly Leg[], takers: readonly Leg[], end: Way): readonly Leg[] {
  if (end.x === 0 && end.y === 0) return legs;
  let [xx, xy, yy] = [0, 0, 0];
  for (const { length, ux, uy } of takers) {
    xx += length * ux * ux;
    xy += length * ux * uy;
    yy += length * uy * uy;
  }
  const determinant = xx * yy - xy * xy;
  const shareX = (yy * end.x - xy * end.y) / determinant;
  const shareY = (xx * end.y - xy * end.x) / determinant;
  return legs.map((leg) => {
    if (!takers.includes(leg)) return leg;
    return { ...leg, length: leg.length * (1 - leg.ux * shareX - leg.uy * shareY) };
  });
}

function cornersOfLegs(legs: readonly Leg[]): Point[] {
  let x = 0;
  let y = 0;
  return legs.map(({ length, ux, uy }) => {
    const corner = { x: toTicks(x), y: toTicks(y) };
    x += length * ux;
    y += length * uy;
    return corner;
  });
}

/** A walk to the left has its first wall on the near side; turned half round, wall 1 is the far one again. */
export function farSideUp(corners: readonly Point[]): readonly Point[] {
  return signedAreaOf(corners) <= 0 ? corners : corners.map(({ x, y }) => ({ x: 0 - x, y: 0 - y }));
}
