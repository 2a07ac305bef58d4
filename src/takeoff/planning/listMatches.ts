/** Whether cut lists are of the floors as they are entered now, and what lies in them can be. */

import type { Ticks } from '../../geometry/length';
import { sumOf } from '../../geometry/lists';
import type { LaidFloor } from '../reading/drawnRoom';
import { planOnProblems as text } from '../reading/planOnProblems';
import { problems } from '../reading/problems';
import { pieceText } from '../text/lengthText';
import { type ListedCut, type ListedRun, listedRows } from './asLaid';
import { floorsOnLists } from './listedPlan';
import type { PlannedFloors } from './planFloors';

/** Marked pieces of a run add up to it less at most so many marking steps. */
const STEPS_SHORT = 3;

type Show = (ticks: Ticks) => string;

/**
 * Sentences; none where the rest can be planned.
 *
 * @param lists a list for each floor, in the order of the plan
 */
export function onwardProblemsOf(
  planned: PlannedFloors<LaidFloor>,
  lists: readonly (readonly ListedCut[])[],
): readonly string[] {
  const { read } = planned.floors[0];
  const show: Show = pieceText(read.units);
  const found = floorsOnLists(planned).flatMap((indices, i) => {
    const floors = indices.map((index) => planned.floors[index]);
    const own = listProblems(planned, floors, listedRows(lists[i]), show);
    return lists.length === 1 ? own : own.map((sentence) => problems.inRoom(floors[0].read.name, sentence));
  });
  return found.length > 0 ? found : overfull(lists.flat(), read.product.plankLength, show);
}

function listProblems(
  { grid, floors: all }: PlannedFloors<LaidFloor>,
  floors: readonly LaidFloor[],
  rows: readonly (readonly ListedRun[])[],
  show: Show,
): readonly string[] {
  const laid = floors.flatMap(({ layout }) => layout.rows);
  const [{ read }] = floors;
  const { plankLength, plankWidth } = all[0].read.product;
  const isSamePlank = read.product.plankLength === plankLength && read.product.plankWidth === plankWidth;
  if (!isSamePlank) return [text.otherPlank(all[0].read.name)];
  if (rows.length !== laid.length) return [text.otherRows(rows.length, laid.length)];
  const plank = plankLength;
  return rows.flatMap((runs, i) => {
    const row = laid[i];
    if (runs.length !== row.runs.length) return [text.otherRuns(row.rowNumber, runs.length, row.runs.length)];
    return runs.flatMap(({ pieces, found }, j): readonly string[] => {
      const { x0, x1 } = row.runs[j];
      const drawn = x1 - x0;
      const listed = sumOf(pieces, ({ length }) => length);
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
}

/** What is cut from a plank cannot be more than it. */
function overfull(pieces: readonly ListedCut[], plank: Ticks, show: Show): readonly string[] {
  const sums = new Map<number, number>();
  for (const { isCut, isStrip, plankNumber, cutLength } of pieces) {
    if (isCut && !isStrip) sums.set(plankNumber, (sums.get(plankNumber) ?? 0) + cutLength);
  }
  return [...sums].flatMap(([number, sum]) => (sum > plank ? [text.morePieces(number, show(sum), show(plank))] : []));
}
