/** Whether a cut list is of the floor as it is entered now, and what lies in it can be. */
import type { Ticks } from '../../geometry/length';
import type { LaidFloor } from '../reading/drawnRoom';
import { planOnProblems as text } from '../reading/planOnProblems';
import { lengthText } from '../text/lengthText';
import type { ListedCut, ListedRun } from './asLaid';
import type { PlannedFloors } from './planFloors';

/** Marked pieces of a run add up to it less at most so many marking steps. */
const STEPS_SHORT = 3;

/** Sentences; none where the rest can be planned. */
export function onwardProblemsOf(
  { floors, grid }: PlannedFloors<LaidFloor>,
  rows: readonly (readonly ListedRun[])[],
): readonly string[] {
  const [{ layout, read }] = floors;
  if (floors.length > 1) return [text.fromMiddle()];
  if (rows.length === 0) return [text.noList(read.name)];
  if (rows.length !== layout.rows.length) return [text.otherRows(rows.length, layout.rows.length)];
  const show = (ticks: number) => lengthText(ticks, read.units, 'piece');
  const plank = read.product.plankLength;
  const found = rows.flatMap((runs, i) => {
    const row = layout.rows[i];
    if (runs.length !== row.runs.length) return [text.otherRuns(row.rowNumber, runs.length, row.runs.length)];
    return runs.flatMap(({ pieces, found }, j): readonly string[] => {
      const { x0, x1 } = row.runs[j];
      const drawn = x1 - x0;
      const listed = pieces.reduce((sum, { length }) => sum + length, 0);
      const isSame = Math.abs(drawn - listed) <= STEPS_SHORT * grid.markingStep + grid.unit;
      if (found === null && !isSame) return [text.otherLength(row.rowNumber, show(listed), show(drawn))];
      if (found !== null && Math.abs(found - drawn) > plank / 2)
        return [text.foundFarOff(row.rowNumber, show(found), show(drawn))];
      const gap = pieces.findIndex(({ isLaid }, k) => isLaid && k > 0 && !pieces[k - 1].isLaid);
      if (gap > 0) return [text.ticksWithGap(pieces[gap].label, pieces[gap - 1].label)];
      const long = pieces.find(({ cutLength }) => cutLength > plank);
      return long ? [text.longerThanPlank(long.label, show(long.cutLength), show(plank))] : [];
    });
  });
  if (found.length > 0) return found;
  const pieces = rows.flat().flatMap((run) => run.pieces);
  return overfull(pieces, plank, show);
}

/** What is cut from a plank cannot be more than it. */
function overfull(pieces: readonly ListedCut[], plank: Ticks, show: (ticks: number) => string): readonly string[] {
  const sums = new Map<number, number>();
  for (const { isCut, isStrip, plankNumber, cutLength } of pieces) {
    if (isCut && !isStrip) sums.set(plankNumber, (sums.get(plankNumber) ?? 0) + cutLength);
  }
  return [...sums].flatMap(([number, sum]) => (sum > plank ? [text.morePieces(number, show(sum), show(plank))] : []));
}
