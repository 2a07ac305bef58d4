/** Of the ways to plan the rest of floors that lie in part, the best. */
import type { CutPlan } from '../../cutting/job';
import { bestInParts, type FewerOver, rowsInParts } from '../../cutting/onward/inParts';
import { legalPlans, planOnward } from '../../cutting/onward/onward';
import type { OnwardJob, OnwardPlan } from '../../cutting/onward/onwardJob';
import { planCuts } from '../../cutting/search';
import type { ListedPlan } from './listedPlan';
import { unitsUp } from './listedUnits';
import { staggerAcross } from './middleStart';
import { floorIndexAt } from './planFloors';
import type { LayingOrder, Side } from './sides';
import { type WaitingStrip, withStrips } from './waitingStrips';

/** The floors, and how far they lie. */
interface FloorsInPart {
  readonly listed: ListedPlan;
  readonly sides: readonly Side[];
  readonly order: LayingOrder;
}

interface BestRest {
  readonly best: OnwardPlan;
  /** With fewer offcuts going over to a second part; null where there is no such plan. */
  readonly fewerOver: FewerOver | null;
}

/**
 * The rules kept, on both sides of a middle line too; the fewest planks once strips that wait take their places; then the fewest
 * offcuts that go over to a second part.
 *
 * @param followed the rest as it is listed
 * @param firstPart how many of the rows that are left are laid before the furniture goes over; 0 where all are laid in one go
 */
export function bestRest(
  floors: FloorsInPart,
  onward: OnwardJob,
  followed: OnwardPlan['rows'],
  firstPart: number,
): BestRest {
  const found = planOnward(onward, followed, {}, planCuts);
  const strips = stripsOf(floors);
  const isInParts = firstPart > 0 && firstPart < onward.job.rows.length;
  const lines = openLines(floors);
  if (strips.length === 0 && !isInParts && lines.length === 0) return { best: found, fewerOver: null };
  const others = [followed, ...(isInParts ? rowsInParts(onward, firstPart) : [])];
  const legal = legalPlans(onward, others, found.bound);
  const plans = [found, ...legal].map((plan) => withStrips({ ...plan, bound: found.bound }, strips));
  const faults = plans.map(
    (plan) => plan.broken.length + lines.filter((ahead) => isLineBroken(floors, ahead, plan)).length,
  );
  const fewest = plans.filter((_, i) => faults[i] === Math.min(...faults));
  return bestInParts(fewest, isInParts ? firstPart : 0);
}

/** Strips of first rows that lie, each for the last row of its floor. */
function stripsOf({ listed, sides, order }: FloorsInPart): readonly WaitingStrip[] {
  return listed.pieces.flatMap((piece): WaitingStrip[] => {
    const { length, from, plankNumber, isStrip, isCut, isGone } = piece;
    const [row] = listed.placeOf(piece);
    const { begunCount } = sides[floorIndexAt(listed.planned, row)];
    if (!isStrip || isCut || isGone || begunCount === 0) return [];
    return [{ length: unitsUp(listed.planned, length), from, index: plankNumber, row: order.rest.indexOf(row) }];
  });
}

/** Sides ahead of a middle line on which nothing lies, nor behind it: the planner knows of no joints across such a line. */
function openLines({ listed, sides }: FloorsInPart): readonly Side[] {
  const isAhead = ({ floorIndex }: Side) => listed.planned.floors[floorIndex].part === 'ahead';
  return sides.filter((side, i) => isAhead(side) && side.begunCount + sides[i + 1].begunCount === 0);
}

/** Whether the first rows on both sides of a line come too near to each other. */
function isLineBroken({ listed, sides, order }: FloorsInPart, ahead: Side, { rows }: OnwardPlan): boolean {
  const { planned } = listed;
  const firsts = [ahead.firstRow, sides[ahead.floorIndex + 1].firstRow];
  const planRows = planned.markedPlan.rows.map((row, i) =>
    firsts.includes(i) ? inTicks(rows[order.rest.indexOf(i)], planned.grid.unit) : row,
  );
  const apart = staggerAcross({ ...planned, markedPlan: { ...planned.markedPlan, rows: planRows } }, ahead.floorIndex);
  return apart !== null && apart < planned.floors[ahead.floorIndex].read.rules.minStagger;
}

function inTicks({ runs }: OnwardPlan['rows'][number], unit: number): CutPlan['rows'][number] {
  return { runs: runs.map((run) => run.map((piece) => ({ ...piece, length: piece.length * unit }))) };
}
