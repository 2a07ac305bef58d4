/** Runs cut at their end joints: every piece with its true shape and what to mark on it. Knows nothing of boxes. */
import type { Ticks } from '../geometry/length';
import { boundsOf, type Region } from '../geometry/polygon';
import { uprightStripOf } from '../geometry/strip';
import { regionToRoom } from '../geometry/turn';
import type { Bending } from './bends';
import { lengthwiseParts } from './lengthwise';
import { type Marking, markingOf } from './marking';
import { fullWidthOr, partsOfRun, type Row, type RowLayout, type Run } from './rows';
import type { Slant } from './slants';
import { type Seams, type SquaredOff, squaredOff } from './square';

/** What a piece needs to be cut with; a straight cut at a square angle is a crosscut. */
export type CutKind = 'crosscut' | 'rip' | 'angled crosscut' | 'notch';

export interface LaidPiece extends Marking {
  /** All counted from 1; pieces from left to right in their run. */
  readonly rowNumber: number;
  readonly runNumber: number;
  readonly pieceNumber: number;
  /** A wall or cut-out may divide a piece lengthwise: its parts, counted from 1. */
  readonly partNumber: number;
  /** In the laying frame; a hole where a cut-out lies inside. */
  readonly shape: Region;
  /** The same in the room. */
  readonly inRoom: Region;
  /** Whether it ends at a wall (or other edge of the floor) instead of a joint. */
  readonly endsAtWall: { readonly left: boolean; readonly right: boolean };
  /** The end that butts against the first part of the piece, where no lock holds it. */
  readonly gluedEnd: 'left' | 'right' | null;
  /** The most that squaring it adds to the gap at a wall, the ends of its run included. */
  readonly squaredBy: Ticks;
  /** Width along the row of the widest prong that is left off, since trim covers its place; 0 for none. */
  readonly leftOff: Ticks;
  /** Saw cuts it needs, in the order in which they are made. */
  readonly cuts: readonly CutKind[];
}

export interface PlankSize {
  readonly plankLength: Ticks;
  readonly plankWidth: Ticks;
  /** What differs by less than this cannot be marked and counts as straight or full. */
  readonly markingStep: Ticks;
  /** Edges out of square by less are squared off at their narrower end; 0 = none by default. */
  readonly squareCut?: Ticks;
  /** Width of the saw cut between two parts of a piece; 0 by default. */
  readonly kerf?: Ticks;
}

/**
 * The pieces of a layout in laying order. Together they are the floor, but for what is squared off at walls: neighbours
 * share their cut lines to the tick.
 *
 * @param joints row -> run -> places of its end joints in the laying frame, ascending, strictly inside the run
 * @param bending what is needed where walls bend; nothing in a plain rectangle
 * @throws RangeError when the joints do not match the rows and runs, or lie outside their run
 */
export function piecesOf(
  layout: RowLayout,
  joints: readonly (readonly (readonly Ticks[])[])[],
  plank: PlankSize,
  bending?: Bending,
): readonly LaidPiece[] {
  return layout.rows.flatMap((row, i) => piecesOfRow(layout, row, joints[i] ?? [], plank, bending));
}

/** Those of one row. @param joints run -> x of its end joints */
export function piecesOfRow(
  layout: RowLayout,
  row: Row,
  joints: readonly (readonly Ticks[])[],
  plank: PlankSize,
  bending?: Bending,
): readonly LaidPiece[] {
  return row.runs.flatMap((run, j) => {
    if (!joints[j]) throw new RangeError(`no joints for row ${row.rowNumber}, run ${run.runNumber}`);
    return piecesOfRun(layout, row, run, joints[j], plank, bending);
  });
}

function piecesOfRun(
  layout: RowLayout,
  { rowNumber, y0, y1 }: Row,
  run: Run,
  joints: readonly Ticks[],
  plank: PlankSize,
  bending?: Bending,
): readonly LaidPiece[] {
  const { runNumber, x0, x1 } = run;
  const stops = [x0, ...joints, x1];
  if (stops.some((stop, i) => i > 0 && stop <= stops[i - 1])) {
    throw new RangeError(`joints ${joints.join(' ')} of a run from ${x0} to ${x1}`);
  }
  const region = partsOfRun(run).flatMap(({ outline, holes }) => [outline, ...holes]);
  const { kerf = 0 } = plank;
  const floor = boundsOf(layout.floor);
  // At the ends of the floor no wood lies beyond.
  const levels = [y0, y1].filter((y) => y > floor.y0 && y < floor.y1);
  return stops.slice(1).flatMap((right, i) => {
    const cut = joints.length === 0 ? region : uprightStripOf(region, stops[i], right);
    const { region: squared, most } = squaredPiece(cut, { levels, uprights: joints }, plank, bending);
    const rest = bending?.withoutProngs?.(squared);
    const all = rest?.region ?? squared;
    // What is squared off the ends of a run concerns the pieces there.
    const squaredBy = Math.max(most, i === 0 || i === joints.length ? run.squaredBy : 0);
    const marked = (shape: Region) => markingOf(shape, plank.markingStep, bending?.unbend);
    const whole = marked(all);
    const parts = lengthwiseParts(all, whole.notches, Math.max(kerf, plank.markingStep));
    return parts.map(({ shape, gluedEnd }, part): LaidPiece => {
      const reach = boundsOf(shape);
      const endsAtWall = { left: i === 0 || reach.x0 > stops[i], right: i === joints.length || reach.x1 < right };
      const own = parts.length > 1 ? marked(shape) : whole;
      const marking = fullWhereRowsAre(own, plank.plankWidth);
      const cuts = cutsOf(marking, endsAtWall, plank);
      const inRoom = regionToRoom(layout.frame, shape);
      const numbers = { rowNumber, runNumber, pieceNumber: i + 1, partNumber: part + 1 };
      return {
        ...numbers,
        shape,
        inRoom,
        endsAtWall,
        gluedEnd,
        squaredBy,
        leftOff: rest?.widest ?? 0,
        cuts,
        ...marking,
      };
    });
  });
}

/**
 * A piece squared off, unless that would make it shorter: the plan holds its length, and a run's ends are square by now. Then
 * an edge that bends by less is made straight.
 */
function squaredPiece(whole: Region, seams: Seams, { squareCut = 0 }: PlankSize, bending?: Bending): SquaredOff {
  const squared = squaredOff(whole, seams, squareCut);
  const [before, after] = [boundsOf(whole), boundsOf(squared.region)];
  const isAsLong = before.x0 === after.x0 && before.x1 === after.x1;
  const { region, most } = isAsLong ? squared : { region: whole, most: 0 };
  const straight = squareCut > 0 ? bending?.straightened(region, seams.levels, squareCut) : null;
  return straight ? { region: straight.region, most: Math.max(most, straight.most) } : { region, most };
}

/** Rows lie between whole ticks; a piece that is off a plank's width by no more than that is as wide as the plank. */
function fullWhereRowsAre(marking: Marking, plankWidth: Ticks): Marking {
  const [widthLeft, widthRight] = [marking.widthLeft, marking.widthRight].map((width) =>
    fullWidthOr(width, plankWidth),
  );
  return { ...marking, widthLeft, widthRight };
}

/**
 * Rip first, then the ends, then notches: so every cut is made on the longest straight edge there is. What is scribed
 * besides all of an edge is sawn as a notch is.
 */
function cutsOf(marking: Marking, endsAtWall: LaidPiece['endsAtWall'], plank: PlankSize): readonly CutKind[] {
  const cuts: CutKind[] = [];
  const narrowest = Math.min(marking.widthLeft, marking.widthRight);
  if (marking.bends.some(({ isWhole }) => isWhole) || plank.plankWidth - narrowest >= plank.markingStep)
    cuts.push('rip');
  const isSquare = (end: 'left' | 'right') => !isAngledEnd(marking, end, plank.markingStep);
  const hasSquareEnd = (endsAtWall.left && isSquare('left')) || (endsAtWall.right && isSquare('right'));
  if (hasSquareEnd && plank.plankLength - marking.length >= plank.markingStep) cuts.push('crosscut');
  if (marking.slants.some((slant) => slant.kind !== 'taper')) cuts.push('angled crosscut');
  if (marking.notches.length > 0 || marking.bends.some(({ isWhole }) => !isWhole)) cuts.push('notch');
  return cuts;
}

/**
 * Whether slanted or scribed cuts take off all of an end, so that nothing of the factory end stays. `step` is the marking
 * step, ticks.
 */
export function isAngledEnd(
  { slants, offEnd, widthLeft, widthRight }: Marking,
  end: Slant['end'],
  step: Ticks,
): boolean {
  const cuts = slants.filter((slant) => slant.kind !== 'taper' && slant.end === end);
  return cuts.reduce((sum, { across }) => sum + across, step + offEnd[end]) > Math.max(widthLeft, widthRight);
}
