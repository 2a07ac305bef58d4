/**
 * A room by tape alone: walls in order with left and right turns, and distances between its corners -> the corners that
 * fit all of them best, found from the drawn shape. A room out of square stays out of square.
 *
 * n walls and n - 3 distances fix the shape of a room; more check one another, and least squares spreads what they disagree by
 * (weights 1 / length, as a tape errs by the length). Where there are fewer, the turns as typed hold the rest, as loosely
 * as walls are out of square.
 */

import { type Ticks, toTicks } from '../geometry/length';
import { addedUp, entryAfter, sumOf } from '../geometry/lists';
import { distanceBetween } from '../geometry/point';
import { firstMeeting, signedAreaOf } from '../geometry/polygon';
import { unitOf } from '../geometry/turn';
import { allowedMisfit, TAPE_READING, type WallCorners } from './corners';
import { bad, type Checked, good, type RoomFault, type RoomNote, type TapeResidual } from './faults';
import { leastSquares, type Observation, type Solution } from './leastSquares';
import type { MeasuredDistance, TapedWall } from './measured';
import { farSideUp, headingsOf } from './wallWalk';

/** Measures within this share of each other disagree alike. */
const ALIKE = 0.01;
/** A measure of which the others tell less than this share is held by itself alone: a slip in it cannot be seen. */
const LEAST_SHARE = 0.01;

/** A distance that was measured, between two corners counted from 0. */
export interface Tape {
  readonly what: 'wall' | 'diagonal';
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly length: Ticks;
}

/** A tape errs by a sixteenth of an inch in about fifteen feet (common practice): its variance for each tick of length. */
const TAPE_VARIANCE = (2 * TAPE_READING) ** 2 / (480 * TAPE_READING * 12);
/** How far a corner is out of its typed turn, radians: half a degree, an inch in ten feet. Our choice. */
const TURN_SIGMA = Math.PI / 360;
/** A measure further off than this many times what it may be is a slip. Our choice, as surveyors do (3 to 4). */
const MOST_SIGMAS = 3.5;

/**
 * The corners, wall 1 level on the far side, whichever way round the room was walked.
 *
 * @param walls the length of each, null where it was not measured, and the turn at its end in degrees, right positive
 * @param distances between two corners; corner i is where wall i starts
 */
export function cornersOfTape(
  walls: readonly TapedWall[],
  distances: readonly MeasuredDistance[],
): Checked<WallCorners> {
  const astray = distances.map((distance, i) => astrayFault(distance, i + 1, walls.length)).find((fault) => fault);
  if (astray) return bad(astray);
  if (walls.length < 3) return bad({ code: 'too few walls', found: walls.length });
  const { tapes, solution, corners, slip } = tapeFitOf(walls, distances);
  if (slip) return bad({ code: 'measure off', ...slip });
  const turned = wrongTurn(corners, turnsOf(walls));
  if (turned >= 0) return bad({ code: 'turn and diagonals disagree', wallNumber: turned + 1 });
  const placed = farSideUp(corners.map(({ x, y }) => ({ x: toTicks(x), y: toTicks(y) })));
  const meeting = firstMeeting(placed);
  if (meeting) return bad({ code: 'walls meet', wallNumbers: [meeting[0] + 1, meeting[1] + 1] });
  const measured = walls.map((wall, i) => wall.length ?? toTicks(apart(corners, i, (i + 1) % walls.length)));
  return good({ corners: placed, measured, holes: [], notes: notesOf(tapes, solution) });
}

/** The room that comes nearest to all distances, whether they agree or not: corners in ticks, not rounded. */
export interface TapeFit {
  readonly tapes: readonly Tape[];
  readonly solution: Solution;
  readonly corners: readonly Corner[];
  /** The measure that the others contradict, held against what they alone make it; null where they agree. */
  readonly slip: TapeResidual | null;
}

/** At least three walls; distances between two corners of theirs. */
export function tapeFitOf(walls: readonly TapedWall[], distances: readonly MeasuredDistance[]): TapeFit {
  const tapes = tapesOf(walls, distances);
  const solution = fitted(drawnCorners(walls, tapes), tapes, turnsOf(walls));
  const corners = cornersOfUnknowns(solution.unknowns);
  return { tapes, solution, corners, slip: slipOf(tapes, solution, perimeterOf(corners)) };
}

function astrayFault(
  { fromCorner, toCorner }: MeasuredDistance,
  diagonalNumber: number,
  cornerCount: number,
): RoomFault | null {
  const found = [fromCorner, toCorner].find((corner) => corner > cornerCount);
  if (found !== undefined) return { code: 'no such corner', diagonalNumber, found, cornerCount };
  return fromCorner === toCorner ? { code: 'diagonal of one corner', diagonalNumber } : null;
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** Every measured wall, then every distance. */
export function tapesOf(walls: readonly TapedWall[], distances: readonly MeasuredDistance[]): readonly Tape[] {
  const along = walls.flatMap(({ length }, i): Tape[] =>
    length === null ? [] : [{ what: 'wall', number: i + 1, from: i, to: (i + 1) % walls.length, length }],
  );
  const across = distances.map(
    ({ fromCorner, toCorner, length }, i): Tape => ({
      what: 'diagonal',
      number: i + 1,
      from: fromCorner - 1,
      to: toCorner - 1,
      length,
    }),
  );
  return [...along, ...across];
}

/** The turn at the end of each wall, degrees; the last one as all of them must add up. */
function turnsOf(walls: readonly TapedWall[]): readonly number[] {
  const turns = walls.map((wall) => wall.turn ?? 0);
  const before = addedUp(turns.slice(0, -1));
  return [...turns.slice(0, -1), (before < 0 ? -360 : 360) - before];
}

/** The walk as drawn; what it misses its start by is taken up evenly on the way round. */
function drawnCorners(walls: readonly TapedWall[], tapes: readonly Tape[]): readonly Corner[] {
  const usual = sumOf(tapes, (tape) => tape.length) / Math.max(1, tapes.length);
  const corners: Corner[] = [];
  let [x, y] = [0, 0];
  headingsOf(walls).forEach((heading, i) => {
    corners.push({ x, y });
    const { cosine, sine } = unitOf(heading);
    const length = walls[i].length ?? usual;
    x += length * cosine;
    y += length * sine;
  });
  return corners.map((corner, i) => ({ x: corner.x - (x * i) / walls.length, y: corner.y - (y * i) / walls.length }));
}

/** By the distances alone where they hold the room; else with the turns, which hold what is left. */
function fitted(drawn: readonly Corner[], tapes: readonly Tape[], turns: readonly number[]): Solution {
  const start = unknownsOf(drawn);
  const withTurns = leastSquares(start, (unknowns) => [
    ...tapeObservations(tapes, unknowns),
    ...turnObservations(turns, unknowns),
  ]);
  const alone = leastSquares(withTurns.unknowns, (unknowns) => tapeObservations(tapes, unknowns));
  return alone.isHeld ? alone : { ...withTurns, isHeld: false };
}

/**
 * Corner 1 stays at the origin and corner 2 on the level through it, or the room would slide and spin: unknown are x of
 * corner 2, and x and y of every corner after.
 */
function unknownsOf(corners: readonly Corner[]): number[] {
  const [first, second] = corners;
  const length = distanceBetween(first, second);
  const [ux, uy] = [(second.x - first.x) / length, (second.y - first.y) / length];
  const level = corners.map(({ x, y }) => ({
    x: (x - first.x) * ux + (y - first.y) * uy,
    y: (y - first.y) * ux - (x - first.x) * uy,
  }));
  return [level[1].x, ...level.slice(2).flatMap(({ x, y }) => [x, y])];
}

function cornersOfUnknowns(unknowns: readonly number[]): readonly Corner[] {
  const corners: Corner[] = [
    { x: 0, y: 0 },
    { x: unknowns[0], y: 0 },
  ];
  for (let i = 1; i < unknowns.length; i += 2) corners.push({ x: unknowns[i], y: unknowns[i + 1] });
  return corners;
}

/** Index of the unknown that is a corner's x (`axis` 0) or y (1); -1 where it is fixed. */
function unknownOf(corner: number, axis: 0 | 1): number {
  if (corner < 2) return corner === 1 && axis === 0 ? 0 : -1;
  return 2 * corner - 3 + axis;
}

function tapeObservations(tapes: readonly Tape[], unknowns: readonly number[]): readonly Observation[] {
  const corners = cornersOfUnknowns(unknowns);
  return tapes.map(({ from, to, length }) => {
    const far = Math.max(apart(corners, from, to), 1);
    const ux = (corners[to].x - corners[from].x) / far;
    const uy = (corners[to].y - corners[from].y) / far;
    const slopes = slopesOf([
      [from, -ux, -uy],
      [to, ux, uy],
    ]);
    return { misfit: length - far, weight: 1 / (TAPE_VARIANCE * length), slopes };
  });
}

/** How the direction of wall i to that of wall i + 1 turns, against the turn as typed. */
function turnObservations(turns: readonly number[], unknowns: readonly number[]): readonly Observation[] {
  const corners = cornersOfUnknowns(unknowns);
  return turns.map((turn, i) => {
    const [before, at, after] = [i, (i + 1) % turns.length, (i + 2) % turns.length];
    const [inX, inY] = [corners[at].x - corners[before].x, corners[at].y - corners[before].y];
    const [outX, outY] = [corners[after].x - corners[at].x, corners[after].y - corners[at].y];
    const wanted = (-turn * Math.PI) / 180;
    const found = Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
    const off = wanted - found;
    const misfit = off - 2 * Math.PI * Math.round(off / (2 * Math.PI));
    const [inSquare, outSquare] = [Math.max(1, inX * inX + inY * inY), Math.max(1, outX * outX + outY * outY)];
    const slopes = slopesOf([
      [before, -inY / inSquare, inX / inSquare],
      [at, inY / inSquare + outY / outSquare, -inX / inSquare - outX / outSquare],
      [after, -outY / outSquare, outX / outSquare],
    ]);
    return { misfit, weight: 1 / TURN_SIGMA ** 2, slopes };
  });
}

/** Slopes by corner, x and y, put on the unknowns they have. */
function slopesOf(byCorner: readonly (readonly [number, number, number])[]): Observation['slopes'] {
  return byCorner
    .flatMap(([corner, x, y]) => [[unknownOf(corner, 0), x] as const, [unknownOf(corner, 1), y] as const])
    .filter(([index]) => index >= 0);
}

function apart(corners: readonly Corner[], from: number, to: number): number {
  return distanceBetween(corners[from], corners[to]);
}

function perimeterOf(corners: readonly Corner[]): number {
  return sumOf(corners, (_, i) => apart(corners, i, (i + 1) % corners.length));
}

/** Every distance against what the room as drawn makes it. */
function residualsOf(tapes: readonly Tape[], { observations }: Solution): readonly TapeResidual[] {
  return tapes.map(({ what, number, length }, i) => {
    const drawn = toTicks(length - observations[i].misfit);
    return { what, number, found: length, drawn, by: drawn - length };
  });
}

/**
 * The measure that disagrees most with all the others, where that is more than may be spread. Each is held against what
 * the others alone make it (data snooping, after Baarda 1968; here from memory).
 */
function slipOf(tapes: readonly Tape[], solution: Solution, perimeter: number): TapeResidual | null {
  const { observations, checkedShares, isHeld } = solution;
  let worst = -1;
  let worstSigmas = isHeld ? 0 : MOST_SIGMAS;
  tapes.forEach((_, i) => {
    if (checkedShares[i] < LEAST_SHARE) return;
    const sigmas = Math.abs(observations[i].misfit) * Math.sqrt(observations[i].weight / checkedShares[i]);
    // Among equals, a diagonal rather than a wall: it is the harder to measure.
    if (sigmas >= worstSigmas * (1 - ALIKE)) [worst, worstSigmas] = [i, Math.max(sigmas, worstSigmas)];
  });
  if (worst < 0) return null;
  const { what, number, length } = tapes[worst];
  const wanted = toTicks(length - observations[worst].misfit / checkedShares[worst]);
  const by = wanted - length;
  return Math.abs(by) <= allowedMisfit(perimeter) ? null : { what, number, found: length, drawn: wanted, by };
}

/** The first wall whose turn at its end goes the other way than typed; -1 where none does. */
function wrongTurn(corners: readonly Corner[], turns: readonly number[]): number {
  const outline = corners.map(({ x, y }) => ({ x: toTicks(x), y: toTicks(y) }));
  const isClockwise = signedAreaOf(outline) < 0;
  const wantedClockwise = addedUp(turns) > 0;
  if (isClockwise !== wantedClockwise) return turns.length - 1;
  return turns.findIndex((turn, i) => {
    const [a, b, c] = [corners[i], entryAfter(corners, i), corners[(i + 2) % corners.length]];
    const cross = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    return Math.abs(turn) >= 5 && Math.sign(cross) === Math.sign(turn);
  });
}

function notesOf(tapes: readonly Tape[], solution: Solution): readonly RoomNote[] {
  const residuals = residualsOf(tapes, solution);
  const spread: RoomNote[] = residuals.some(({ by }) => Math.abs(by) > TAPE_READING)
    ? [{ code: 'measures spread', residuals }]
    : [];
  return solution.isHeld ? spread : [...spread, { code: 'held by turns' }];
}
