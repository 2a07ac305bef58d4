/** What is wrong with the rows of a plan, each at its place in the floor and with the field that changes it. */

import type { Ticks } from '../../geometry/length';
import { distinct, leastBy } from '../../geometry/lists';
import type { Point } from '../../geometry/point';
import { unitOf } from '../../geometry/turn';
import { middleOf } from '../../tabs/layDirectionText';
import { readRoom } from '../../takeoff/reading/readRoom';
import type { FloorPiece, Takeoff } from '../../takeoff/result';
import { lengthText } from '../../takeoff/text/lengthText';

/** A place of the floor that breaks a rule. */
export interface RowFault {
  /** In the room, where it is marked. */
  readonly at: Point;
  readonly words: string;
  /** Path of the field to change. */
  readonly field: string;
}

/** Widths read off an outline are rounded at both edges: half a millimetre under the rule is no fault. */
const ROUNDING: Ticks = 320;

/** Rules that could not be met first, then rows under the minimum rip, the narrowest first. */
export function rowFaultsOf(plan: Takeoff): readonly RowFault[] {
  const read = readRoom(plan.entry).room;
  if (!read) return [];
  const { minPiece, minStagger, minRip } = read.rules;
  const show = (length: Ticks) => lengthText(length, plan.units, 'piece');
  const broken = plan.plan.broken.flatMap(({ rule, rowIndex, runIndex }): readonly RowFault[] => {
    const [row, before] = [plan.rows[rowIndex], plan.rows[rowIndex - 1]];
    const own = plan.pieces.filter((piece) => piece.rowNumber === row?.rowNumber && piece.runNumber === runIndex + 1);
    if (own.length === 0) return [];
    if (rule === 'minimum stagger') {
      const found = closestJoint(plan, own, before?.rowNumber ?? 0);
      if (!found) return [];
      const words = `Row ${row.rowNumber}: a joint is ${show(found.apart)} from one of row ${before.rowNumber}, under the minimum stagger of ${show(minStagger)}.`;
      return [{ at: found.at, words, field: 'rules.minStagger' }];
    }
    const piece = leastBy(own, ({ length }) => length);
    const words = `Piece ${piece.label} is ${show(piece.length)} long, under the minimum piece of ${show(minPiece)}.`;
    return [{ at: middleOf(piece), words, field: 'rules.minPiece' }];
  });
  return [...broken, ...narrowFaults(plan, minRip, show)];
}

function narrowFaults(plan: Takeoff, minRip: Ticks, show: (length: Ticks) => string): readonly RowFault[] {
  const narrow = plan.rows.filter(({ narrowest }) => narrowest < minRip - ROUNDING);
  return [...narrow]
    .sort((one, other) => one.narrowest - other.narrowest)
    .map(({ rowNumber, narrowest, narrowestAt, polygon }) => {
      const own = plan.pieces.filter((piece) => piece.rowNumber === rowNumber);
      const isStrip = own.every(({ widthLeft, widthRight }) => Math.max(widthLeft, widthRight) < minRip);
      const words = `Row ${rowNumber} is ${show(narrowest)} at its narrowest, under the minimum rip of ${show(minRip)}. Try another first row.`;
      // A strip that is as narrow everywhere is marked in its middle.
      return { at: isStrip ? middleOf({ polygon }) : narrowestAt, words, field: 'rules.firstRow' };
    });
}

/** The joint of a run that is nearest to one of the row before, on the seam between the two. */
function closestJoint(
  { pieces, rowAngle }: Takeoff,
  run: readonly FloorPiece[],
  before: number,
): { at: Point; apart: Ticks } | null {
  const { cosine, sine } = unitOf(rowAngle);
  const endOf = ({ polygon }: FloorPiece) => Math.max(...polygon.map(({ x, y }) => x * cosine + y * sine));
  // Where a run ends there is a wall, and no joint.
  const jointsOf = (own: readonly FloorPiece[]) =>
    own
      .map(endOf)
      .sort((a, b) => a - b)
      .slice(0, -1);
  const others = pieces.filter(({ rowNumber }) => rowNumber === before);
  const runNumbers = distinct(others.map(({ runNumber }) => runNumber));
  const theirs = runNumbers.flatMap((number) => jointsOf(others.filter(({ runNumber }) => runNumber === number)));
  const pairs = jointsOf(run).flatMap((own) => theirs.map((other) => ({ own, apart: Math.abs(own - other) })));
  if (pairs.length === 0) return null;
  const { own, apart } = leastBy(pairs, (pair) => pair.apart);
  const low = Math.min(...run.flatMap(({ polygon }) => polygon.map(({ x, y }) => y * cosine - x * sine)));
  return { at: { x: own * cosine - low * sine, y: own * sine + low * cosine }, apart };
}
