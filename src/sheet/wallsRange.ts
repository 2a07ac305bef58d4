/** The `walls` argument: two columns, one row per wall: its length and the turn at its end. */
import type { Units } from '../geometry/length';
import { signedAreaOf } from '../geometry/polygon';
import type { MeasuredWall } from '../room/measured';
import { cornersOfWalk } from '../room/wallWalk';
import { problems } from '../takeoff/reading/problems';
import { degreesOfTurn } from '../takeoff/reading/readFields';
import { roomFaultText } from '../takeoff/reading/roomProblems';
import { cellsOf, filledCount, sizeText } from './arguments';
import { type Fault, foundIn, isBlank, isFault, lengthAbove0, typedOf } from './cells';

/** Our choice: many more than any room has; every wall is held against every other. */
const MOST_WALLS = 1000;

/**
 * Area inside the walls, square ticks.
 *
 * @throws Error with the first problem as its message: a cell that cannot be read, or walls that make no room
 */
export function walledArea(given: unknown, units: Units): number {
  const walk = cornersOfWalk(wallsOf(given, units));
  if (walk.faults === null) return Math.abs(signedAreaOf(walk.value.corners));
  const [first, ...more] = walk.faults;
  // A range of walls has no place for diagonals, so none are advised.
  const told = first.code === 'does not close' ? { ...first, advised: [] } : first;
  throw new Error(problems.andMore(roomFaultText(told, units), more.length));
}

function wallsOf(given: unknown, units: Units): readonly MeasuredWall[] {
  const rows = cellsOf(given);
  const wallCount = filledCount(rows, (row) => row.every(isBlank));
  if (wallCount === 0) throw new Error(problems.emptyList('walls'));
  if (wallCount > MOST_WALLS) throw new Error(problems.tooManyRows('walls', wallCount, MOST_WALLS));
  if (rows[0].length !== 2) throw new Error(problems.wallsColumns(sizeText(rows)));
  const sentences: string[] = [];
  const noteOr = <T>(value: T | Fault, where: string, otherwise: T): T => {
    if (!isFault(value)) return value;
    sentences.push(value.says(where));
    return otherwise;
  };
  const readLength = lengthAbove0('room');
  const walls = rows.slice(0, wallCount).map(([length, turn], index) => ({
    length: noteOr(readLength(isBlank(length) ? '' : length, units), `Wall ${index + 1}`, 0),
    turn: noteOr(turnOf(turn), `Turn after wall ${index + 1}`, null),
  }));
  if (sentences.length > 0) throw new Error(problems.andMore(sentences[0], sentences.length - 1));
  return walls;
}

/** Null for a blank turn: only the last wall may have one. */
function turnOf(cell: unknown): number | null | Fault {
  if (isBlank(cell)) return null;
  const degrees = degreesOfTurn(typedOf(cell));
  return degrees ?? { says: (where) => problems.turn(where, foundIn(cell)) };
}
