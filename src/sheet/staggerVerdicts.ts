/** First pieces read from cells -> a verdict for each row, against the row before it. */
import type { Ticks, Units } from '../geometry/length';
import { type JointPair, nearestJoints, type StartedRow } from '../takeoff/planning/staggerCheck';
import { problems } from '../takeoff/reading/problems';
import { lengthText } from '../takeoff/text/lengthText';
import type { Answers, CellAnswer } from './arguments';
import { type Fault, faultIn } from './cells';

/** One row as given: where it starts, and the distance its joints must keep. */
export interface GivenRow extends StartedRow {
  readonly minStagger: Ticks;
  readonly units: Units;
}

/** A row from its arguments, unless its first piece cannot be one. */
export function startedRow(
  given: {
    readonly first_pieces: Ticks;
    readonly plank_length: Ticks;
    readonly min_stagger: Ticks;
    readonly run: Ticks | null;
  },
  units: Units,
): GivenRow | Fault {
  const { first_pieces: firstPiece, plank_length: plankLength, run } = given;
  const show = (length: Ticks) => lengthText(length, units, 'piece');
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

/** A verdict in the place of each row; blank rows are passed over, so that a row is held against the last one laid. */
export function staggerVerdicts(rows: Answers<GivenRow>): Answers<CellAnswer> {
  let before: { readonly row: GivenRow; readonly rowNumber: number } | undefined;
  let rowNumber = 0;
  return rows.map((line) =>
    line.map((row) => {
      rowNumber += 1;
      if (row === '') return '';
      const verdict = before === undefined ? 'OK' : verdictOn(row, before.row, before.rowNumber);
      before = { row, rowNumber };
      return verdict;
    }),
  );
}

function verdictOn(row: GivenRow, before: GivenRow, rowNumberBefore: number): string {
  const pair = nearestJoints(row, before);
  if (pair === null || pair.distance >= row.minStagger) return 'OK';
  return tooNearText(pair, rowNumberBefore, row.minStagger, row.units);
}

function tooNearText(pair: JointPair, rowNumberBefore: number, minStagger: Ticks, units: Units): string {
  const show = (length: Ticks) => lengthText(length, units, 'piece');
  const other = `joint ${pair.otherJointNumber} of row ${rowNumberBefore}`;
  if (pair.distance === 0) return `Joint ${pair.jointNumber} lines up with ${other}: ${show(minStagger)} is wanted`;
  const short = show(minStagger - pair.distance);
  const shortText = short === show(0) ? `less than ${units === 'us' ? '1/16"' : '1 mm'}` : short;
  return `Joint ${pair.jointNumber} is ${show(pair.distance)} from ${other}: ${shortText} too near`;
}
