/**
 * Ways to lay a floor: direction, start wall and width of the first row. What the entry leaves open is searched: each
 * candidate is planned, and the best is kept.
 */

import type { PlanOptions } from '../../cutting/search';
import { finished, type Steps } from '../../cutting/steps';
import { lastOf } from '../../geometry/lists';
import { layChoicesOf } from '../../layout/choices';
import { degreesOf, directionsIn, type RowDirection } from '../../layout/direction';
import { narrowRunsOf } from '../../layout/rows';
import type { DrawnRoom, LaidFloor, RowsOneWay } from '../reading/drawnRoom';
import { problems } from '../reading/problems';
import type { Problem, WayLine } from '../result';
import { lengthText } from '../text/lengthText';
import { planAwayInSteps } from './awayFromCorners';
import { withoutUnmakeable } from './cuttable';
import { middleStarts, staggerAcross } from './middleStart';
import type { PlannedFloors } from './planFloors';
import { layRows, rowOptionsOf, usualStart } from './usualStart';

export interface ChosenWay {
  readonly planned: PlannedFloors<LaidFloor>;
  /** Every candidate, the best first. */
  readonly ways: readonly WayLine[];
}

/** Widths of the first row that are planned for each direction and start wall, when the width is left open. */
const WIDTHS_A_SIDE = 4;

/**
 * The best way to lay a floor of those the entry leaves open.
 *
 * In this order: no rule broken, no run under the minimum rip where that can be avoided (it is a rule of the floor, and
 * saving a plank is not worth a sliver at the wall), fewest planks, no piece under the minimum, first and last row alike.
 */
export function chooseWay(drawn: DrawnRoom): ChosenWay {
  return finished(chooseWayInSteps(drawn));
}

/** The same in steps. */
export function* chooseWayInSteps(drawn: DrawnRoom): Steps<ChosenWay> {
  const line = drawn.read.start.startSide === 'middle' ? yield* chooseLine(drawn) : null;
  if (line) return ranked([line]);
  const laid = yield* laidWays(drawn);
  if (laid.length === 1) return ranked([yield* candidateOf(laid[0], { effort: 1 })]);
  const quick: Candidate[] = [];
  for (const floors of laid) {
    quick.push(yield* candidateOf(floors, { effort: FIRST_LOOK }));
    yield;
  }
  let best: Candidate | null = null;
  const looked: Candidate[] = [];
  for (const candidate of ranked(quick).candidates) {
    const isHopeless: boolean = best !== null && !mayBeat(candidate, best);
    const full: Candidate = isHopeless ? candidate : yield* candidateOf(candidate.planned.floors, { effort: 1 });
    looked.push(full);
    if (!isHopeless && (best === null || byMerit(full, best) < 0)) best = full;
    yield;
  }
  return ranked(looked);
}

/** Share of the search's steps that a first look at a way takes. */
const FIRST_LOOK = 0.1;

function* candidateOf(floors: readonly LaidFloor[], options: PlanOptions): Steps<Candidate> {
  const planned = yield* planAwayInSteps(floors, options);
  return { planned, way: wayLineOf(planned) };
}

/** Whether planning a way with more effort could put it before the best: only if its bound allows as few planks. */
function mayBeat(quick: Candidate, best: Candidate): boolean {
  if (quick.way.narrowRunCount > best.way.narrowRunCount) return false;
  const isProved = quick.planned.plan.stop === 'proved fewest';
  return quick.way.bound < best.way.plankCount || (!isProved && quick.way.bound === best.way.plankCount);
}

function ranked(candidates: readonly Candidate[]): ChosenWay & { readonly candidates: readonly Candidate[] } {
  const inOrder = candidates.map((candidate, i) => ({ ...candidate, i })).sort((a, b) => byMerit(a, b) || a.i - b.i);
  return {
    planned: inOrder[0].planned,
    ways: inOrder.map(({ way }, i) => ({ ...way, isChosen: i === 0 })),
    candidates: inOrder,
  };
}

/** The rows of the first way that has any; null for a floor that no way gives a row. */
export function checkedRowsOf(drawn: DrawnRoom): RowsOneWay | null {
  const { start } = drawn.read;
  const startSide = start.startSide === 'far' ? 'far' : 'near';
  // What is searched takes in what is plain: looking at that is quick.
  const firstRow = start.firstRow === 'best' ? 'auto' : start.firstRow;
  for (const { degrees } of directionsOf(drawn)) {
    const layout = layRows(drawn, degrees, startSide, firstRow);
    if (layout.rows.length > 0) return { degrees, startSide, firstRow, layout };
  }
  return null;
}

/** What is wrong with a floor without rows, such as one narrower than a marking step. */
export function noRowProblem({ read }: DrawnRoom): Problem {
  const { name, units, rules } = read;
  return { field: 'rules.markingStep', text: problems.noRow(name, lengthText(rules.markingStep, units, 'piece')) };
}

/** Directions to try: the ruled one, or all worth comparing. */
function directionsOf({ read, room, entry, others }: DrawnRoom): readonly RowDirection[] {
  // Walls of a joined floor have numbers that its rooms do not have: there an angle is typed.
  const named = (way: RowDirection) =>
    others && way.typed.startsWith('wall') ? { ...way, typed: String(way.degrees) } : way;
  if (read.start.direction === 'best') return directionsIn(room).map(named);
  const typed = String(entry.rules.layDirection);
  return [{ degrees: degreesOf(read.rules.layDirection, room) ?? 0, typed }];
}

/** Each way as the floors it is planned as. Every one of them has rows. */
function* laidWays(drawn: DrawnRoom): Steps<readonly (readonly LaidFloor[])[]> {
  const { start } = drawn.read;
  const startSides =
    start.startSide === 'best'
      ? (['near', 'far'] as const)
      : [start.startSide === 'far' ? ('far' as const) : ('near' as const)];
  const ways: (readonly LaidFloor[])[] = [];
  for (const { degrees, typed: layDirection } of directionsOf(drawn)) {
    for (const startSide of startSides) {
      const layouts = layoutsOf(drawn, degrees, startSide);
      ways.push(
        ...layouts.map((laid) => [{ ...drawn, ...laid, degrees, layDirection, startSide, part: 'whole' } as const]),
      );
      yield;
    }
  }
  return ways.filter(haveRows);
}

/** The rows of a floor that leaves nothing to be searched, before anything is planned; null for any other. */
export function rowsAtOnce(drawn: DrawnRoom): LaidFloor | null {
  const { direction, startSide, firstRow } = drawn.read.start;
  if (direction === 'best' || firstRow === 'best' || startSide === 'best' || startSide === 'middle') return null;
  return finished(laidWays(drawn))[0]?.[0] ?? null;
}

/** The rows one way: as the first row is ruled, or those worth comparing where its width is left open. */
function layoutsOf(
  drawn: DrawnRoom,
  degrees: number,
  startSide: 'near' | 'far',
): readonly Pick<LaidFloor, 'layout' | 'start'>[] {
  const { floor, body, read } = drawn;
  const { firstRow } = read.start;
  const options = rowOptionsOf(drawn);
  if (firstRow !== 'auto' && firstRow !== 'best')
    return [{ layout: layRows(drawn, degrees, startSide, firstRow), start: null }];
  const usual = usualStart(drawn, degrees, startSide);
  if (firstRow === 'auto') {
    const layout = withoutUnmakeable(usual.layout, drawn, { ...options, degrees, startSide, firstRow });
    return [{ layout, start: layout === usual.layout ? usual.start : null }];
  }
  const { kerf, markingStep } = read.rules;
  const choices = layChoicesOf(floor, body, {
    ...{ ...options, kerf, markingStep, directions: [degrees], startSides: [startSide], widthCount: WIDTHS_A_SIDE },
    plain: usual.plain,
  });
  const others = choices.filter(({ firstWidth }) => firstWidth !== usual.layout.firstWidth);
  const { layout, start } = usual;
  return [{ layout, start }, ...others.map((other) => ({ layout: other.layout, start: null }))];
}

function haveRows(floors: readonly LaidFloor[]): boolean {
  return floors.every(({ layout }) => layout.rows.length > 0);
}

function wayLineOf(planned: PlannedFloors<LaidFloor>): WayLine {
  const [first] = planned.floors;
  const last = lastOf(planned.floors);
  const isMiddle = last.part === 'behind';
  const lengths = planned.markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length));
  const narrowRuns = planned.floors.flatMap(({ layout, read }) => narrowRunsOf(layout, read.rules.minRip));
  return {
    degrees: first.degrees,
    layDirection: first.layDirection,
    startSide: isMiddle ? 'middle' : first.startSide,
    rowCount: planned.job.rows.length,
    firstRowWidth: isMiddle ? last.layout.lastWidth : first.layout.firstWidth,
    lastRowWidth: first.layout.lastWidth,
    narrowRunCount: narrowRuns.length,
    plankCount: planned.plan.plankCount,
    bound: planned.plan.bound,
    shortestPiece: Math.min(...lengths),
    isChosen: false,
  };
}

interface Candidate {
  readonly planned: PlannedFloors<LaidFloor>;
  readonly way: WayLine;
}

function byMerit(a: Candidate, b: Candidate): number {
  const minPiece = a.planned.job.minPiece * a.planned.grid.unit;
  const isShort = ({ way }: Candidate) => Number(way.shortestPiece < minPiece);
  const unevenness = ({ way }: Candidate) => Math.abs(way.firstRowWidth - way.lastRowWidth);
  return (
    a.planned.markedPlan.broken.length - b.planned.markedPlan.broken.length ||
    a.way.narrowRunCount - b.way.narrowRunCount ||
    a.way.plankCount - b.way.plankCount ||
    isShort(a) - isShort(b) ||
    unevenness(a) - unevenness(b)
  );
}

/** Ways to plan a line: the two sides are planned apart, and another plan may keep the stagger across it. */
const LINE_OPTIONS: readonly PlanOptions[] = [
  { effort: 1 },
  ...[1, 0.6, 0.8, 1.2, 1.5, 2].map((effort) => ({ effort, isRowByRow: false })),
];

/** The line nearest to the wanted place whose two sides keep their joints apart; null for a floor too narrow for one. */
function* chooseLine(drawn: DrawnRoom): Steps<Candidate | null> {
  let nearest: Candidate | null = null;
  for (const floors of middleStarts(drawn, directionsOf(drawn)[0])) {
    for (const options of LINE_OPTIONS) {
      const candidate = yield* candidateOf(floors, options);
      if (!isLineAligned(candidate)) return candidate;
      nearest ??= candidate;
    }
  }
  return nearest;
}

/** Whether joints on the two sides of a middle line are nearer than the stagger. */
function isLineAligned({ planned }: Candidate): boolean {
  const stagger = staggerAcross(planned, 0);
  return stagger !== null && stagger < planned.floors[0].read.rules.minStagger;
}
