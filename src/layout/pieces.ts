/** Runs cut at their end joints: every piece with its true shape and what to mark on it. Knows nothing of boxes. */
import type { Ticks } from '../geometry/length';
import type { Region } from '../geometry/polygon';
import { uprightStripOf } from '../geometry/strip';
import { regionToRoom } from '../geometry/turn';
import { type Marking, markingOf } from './marking';
import { fullWidthOr, type Row, type RowLayout, type Run } from './rows';
import type { Slant } from './slants';

/** What a piece needs to be cut with; a straight cut at a square angle is a crosscut. */
export type CutKind = 'crosscut' | 'rip' | 'angled crosscut' | 'notch';

export interface LaidPiece extends Marking {
  /** All counted from 1; pieces from left to right in their run. */
  readonly rowNumber: number;
  readonly runNumber: number;
  readonly pieceNumber: number;
  /** In the laying frame; two outlines where a cut-out divides the piece lengthwise, a hole where it lies inside. */
  readonly shape: Region;
  /** The same in the room. */
  readonly inRoom: Region;
  /** Whether it ends at a wall (or other edge of the floor) instead of a joint. */
  readonly endsAtWall: { readonly left: boolean; readonly right: boolean };
  /** Saw cuts it needs, in the order in which they are made. */
  readonly cuts: readonly CutKind[];
}

export interface PlankSize {
  readonly plankLength: Ticks;
  readonly plankWidth: Ticks;
  /** What differs by less than this cannot be marked and counts as straight or full. */
  readonly markingStep: Ticks;
}

/**
 * The pieces of a layout in laying order. Together they are the floor: neighbours share their cut lines to the tick.
 *
 * @param joints row -> run -> places of its end joints in the laying frame, ascending, strictly inside the run
 * @throws RangeError when the joints do not match the rows and runs, or lie outside their run
 */
export function piecesOf(
  layout: RowLayout,
  joints: readonly (readonly (readonly Ticks[])[])[],
  plank: PlankSize,
): readonly LaidPiece[] {
  return layout.rows.flatMap((row, i) =>
    row.runs.flatMap((run, j) => {
      const places = joints[i]?.[j];
      if (!places) throw new RangeError(`no joints for row ${row.rowNumber}, run ${run.runNumber}`);
      return piecesOfRun(layout, row, run, places, plank);
    }),
  );
}

function piecesOfRun(
  layout: RowLayout,
  { rowNumber }: Row,
  run: Run,
  joints: readonly Ticks[],
  plank: PlankSize,
): readonly LaidPiece[] {
  const { runNumber, part, x0, x1 } = run;
  const stops = [x0, ...joints, x1];
  if (stops.some((stop, i) => i > 0 && stop <= stops[i - 1])) {
    throw new RangeError(`joints ${joints.join(' ')} of a run from ${x0} to ${x1}`);
  }
  const region = [part.outline, ...part.holes];
  return stops.slice(1).map((right, i): LaidPiece => {
    const shape = joints.length === 0 ? region : uprightStripOf(region, stops[i], right);
    const endsAtWall = { left: i === 0, right: i === joints.length };
    const marking = fullWhereRowsAre(markingOf(shape, plank.markingStep), plank.plankWidth);
    const cuts = cutsOf(marking, endsAtWall, plank);
    const inRoom = regionToRoom(layout.frame, shape);
    return { rowNumber, runNumber, pieceNumber: i + 1, shape, inRoom, endsAtWall, cuts, ...marking };
  });
}

/** Rows lie between whole ticks; a piece that is off a plank's width by no more than that is as wide as the plank. */
function fullWhereRowsAre(marking: Marking, plankWidth: Ticks): Marking {
  const [widthLeft, widthRight] = [marking.widthLeft, marking.widthRight].map((width) =>
    fullWidthOr(width, plankWidth),
  );
  return { ...marking, widthLeft, widthRight };
}

/** Rip first, then the ends, then notches: so every cut is made on the longest straight edge there is. */
function cutsOf(marking: Marking, endsAtWall: LaidPiece['endsAtWall'], plank: PlankSize): readonly CutKind[] {
  const cuts: CutKind[] = [];
  if (plank.plankWidth - Math.min(marking.widthLeft, marking.widthRight) >= plank.markingStep) cuts.push('rip');
  const isSquare = (end: 'left' | 'right') => !isAngledEnd(marking, end, plank.markingStep);
  const hasSquareEnd = (endsAtWall.left && isSquare('left')) || (endsAtWall.right && isSquare('right'));
  if (hasSquareEnd && plank.plankLength - marking.length >= plank.markingStep) cuts.push('crosscut');
  if (marking.slants.some((slant) => slant.kind !== 'taper')) cuts.push('angled crosscut');
  if (marking.notches.length > 0) cuts.push('notch');
  return cuts;
}

/** Whether slanted cuts take off all of an end, so that nothing of the factory end stays. */
export function isAngledEnd({ slants, widthLeft, widthRight }: Marking, end: Slant['end'], step: Ticks): boolean {
  const cuts = slants.filter((slant) => slant.kind !== 'taper' && slant.end === end);
  return cuts.reduce((sum, { across }) => sum + across, step) > Math.max(widthLeft, widthRight);
}
