/** First pieces read from cells -> a verdict for each row, against the row before it. */

import type { FineTicks, Units } from '../geometry/length';
import { sumOf } from '../geometry/lists';
import { type JointPair, jointsWalked, nearestJoints, type StartedRow } from '../takeoff/planning/staggerCheck';
import { problems } from '../takeoff/reading/problems';
import type { Answers, CellAnswer } from './arguments';
import { type Fault, faultIn } from './cells';
import { typedLengthText } from './lengthFunctions';

/** One row as given: where it starts, and the distance its joints must keep. */
export interface GivenRow extends StartedRow {
  readonly minStagger: FineTicks;
  readonly units: Units;
}

/** A row from its arguments, unless its first piece cannot be one. */
export function startedRow(
  given: {
    readonly first_pieces: FineTicks;
    readonly plank_length: FineTicks;
    readonly min_stagger: FineTicks;
    readonly run: FineTicks | null;
  },
  units: Units,
): GivenRow | Fault {
  const { first_pieces: firstPiece, plank_length: plankLength, run } = given;
  const show = (length: FineTicks) => typedLengthText(length, units);
  if (firstPiece > plankLength) {
    return faultIn('first_pieces', (where) =>
      problems.firstPieceLongerThanPlank(where, show(firstPiece), show(plankLength)),
    );
  }
  if (run !== null && firstPiece > run) {
    return faultIn('first_pieces', (where) => problems.firstPieceLongerThanRun(where, show(firstPiece), show(run)));
  }
  return { firstPiece, plankLength, run, minStagger: given.min_stagger, units };
}

/**
 * Our choice: joints walked in one call, half a second of work without a compiler; 100,000 rows of one plank length take
 * less. More is short planks in very long rows.
 */
const MOST_JOINTS = 1_000_000;

/**
 * A verdict in the place of each row. A blank row has none, and the row after it cannot be told from: it lies beside
 * the blank one.
 *
 * @throws Error with a sentence when more joints would be compared than can be in time
 */
export function staggerVerdicts(rows: Answers<GivenRow>): Answers<CellAnswer> {
  const list = rows.flat();
  const jointCount = sumOf(list, (row, i) => (i > 0 ? walkedBeside(row, list[i - 1]) : 0));
  if (jointCount > MOST_JOINTS) throw new Error(problems.tooManyJoints('first_pieces', jointCount, MOST_JOINTS));
  const firstFilled = list.findIndex((row) => row !== '');
  const verdicts = list.map((row, i) => {
    if (row === '') return '';
    const before = i <= firstFilled ? undefined : list[i - 1];
    if (before === '') return problems.blankRowBefore(i);
    return before === undefined ? 'OK' : verdictOn(row, before, i);
  });
  const columnCount = rows[0].length;
  return rows.map((_, r) => verdicts.slice(r * columnCount, (r + 1) * columnCount));
}

function walkedBeside(row: GivenRow | '', before: GivenRow | ''): number {
  return row === '' || before === '' ? 0 : jointsWalked(row, before);
}

function verdictOn(row: GivenRow, before: GivenRow, rowNumberBefore: number): string {
  const pair = nearestJoints(row, before);
  if (pair === null || pair.distance >= row.minStagger) return 'OK';
  return tooNearText(pair, rowNumberBefore, row.minStagger, row.units);
}

function tooNearText(pair: JointPair, rowNumberBefore: number, minStagger: FineTicks, units: Units): string {
  const show = (length: FineTicks) => typedLengthText(length, units);
  const other = `joint ${pair.otherJointNumber} of row ${rowNumberBefore}`;
  if (pair.distance === 0) return `Joint ${pair.jointNumber} lines up with ${other}: ${show(minStagger)} is wanted`;
  const short = show(minStagger - pair.distance);
  const shortText = short === show(0) ? `less than ${units === 'us' ? '1/16"' : '1 mm'}` : short;
  return `Joint ${pair.jointNumber} is ${show(pair.distance)} from ${other}: ${shortText} too near`;
}
