/**
 * Ways to lay a floor: direction, start wall and width of the first row. What the entry leaves open is searched: each
 * candidate is planned, and the best is kept.
 */
import { layChoicesOf } from '../../layout/choices';
import { degreesOf, directionsIn } from '../../layout/direction';
import { narrowRunsOf, type RowLayout, rowsOf } from '../../layout/rows';
import type { DrawnRoom } from '../reading/drawRoom';
import { problems } from '../reading/problems';
import type { Problem, WayLine } from '../result';
import { lengthText } from '../text/lengthText';
import { middleStarts, staggerAcross } from './middleStart';
import { type PlannedFloors, planFloors } from './planFloors';

/** A floor divided into rows, not yet into pieces. */
export interface LaidFloor extends DrawnRoom {
  readonly layout: RowLayout;
  /** Direction of the rows, degrees anticlockwise from x of the room. */
  readonly degrees: number;
  /** Which side of the rows, seen along them, row 1 lies on. */
  readonly startSide: 'near' | 'far';
  /** `ahead` and `behind` of a middle line stand one after the other among planned floors, and are shown as one. */
  readonly part: 'whole' | 'ahead' | 'behind';
}

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
 * a plank saved by a sliver is none), fewest planks, no piece under the minimum, first and last row alike.
 */
export function chooseWay(drawn: DrawnRoom): ChosenWay {
  const line = drawn.read.start.startSide === 'middle' ? chooseLine(drawn) : null;
  if (line) return ranked([line]);
  const laid = laidWays(drawn);
  if (laid.length === 1) return ranked([candidateOf(laid[0], 1)]);
  const first = ranked(laid.map((floors) => candidateOf(floors, FIRST_LOOK)));
  let best: Candidate | null = null;
  const looked = first.candidates.map((quick) => {
    if (best !== null && !mayBeat(quick, best)) return quick;
    const full = candidateOf(quick.planned.floors, 1);
    if (best === null || byMerit(full, best) < 0) best = full;
    return full;
  });
  return ranked(looked);
}

/** Share of the search's steps that a first look at a way takes. */
const FIRST_LOOK = 0.1;

function candidateOf(floors: readonly LaidFloor[], effort: number): Candidate {
  const planned = planFloors(floors, effort);
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

/** What is wrong with a floor that no way gives a row, such as one narrower than a marking step. */
export function rowProblemsOf(drawn: DrawnRoom): readonly Problem[] {
  const { name, units, rules, start } = drawn.read;
  // What is searched takes in what is plain: looking at that is quick.
  const firstRow = start.firstRow === 'best' ? 'auto' : start.firstRow;
  const startSide = start.startSide === 'middle' ? 'near' : start.startSide;
  const plain = { ...drawn, read: { ...drawn.read, start: { ...start, firstRow, startSide } } } as const;
  if (laidWays(plain).length > 0) return [];
  const text = problems.noRow(name, lengthText(rules.markingStep, units, 'piece'));
  return [{ field: 'rules.markingStep', text }];
}

/** Directions to try, degrees: the ruled one, or all worth trying. */
function directionsOf({ read, room }: DrawnRoom): readonly number[] {
  if (read.start.direction === 'best') return directionsIn(room);
  return [degreesOf(read.rules.layDirection, room.walls) ?? 0];
}

/** Each way as the floors it is planned as. Every one of them has rows. */
function laidWays(drawn: DrawnRoom): readonly (readonly LaidFloor[])[] {
  const { read, floor, body } = drawn;
  const { rules, product, start } = read;
  const { minRip, kerf, markingStep } = rules;
  const { plankWidth, asTyped } = product;
  const options = { plankWidth, typedWidth: asTyped.width, minRip, kerf, markingStep };
  const directions = directionsOf(drawn);
  const startSides =
    start.startSide === 'best'
      ? (['near', 'far'] as const)
      : [start.startSide === 'far' ? ('far' as const) : ('near' as const)];
  if (start.firstRow === 'best') {
    const choices = layChoicesOf(floor, body, { ...options, directions, startSides, widthCount: WIDTHS_A_SIDE });
    return choices.map(({ layout, degrees, startSide }) => [{ ...drawn, layout, degrees, startSide, part: 'whole' }]);
  }
  const firstRow = start.firstRow;
  const ways = directions.flatMap((degrees) =>
    startSides.map((startSide) => {
      const layout = rowsOf(floor, { ...options, degrees, startSide, firstRow, body });
      return [{ ...drawn, layout, degrees, startSide, part: 'whole' as const }];
    }),
  );
  return ways.filter(haveRows);
}

function haveRows(floors: readonly LaidFloor[]): boolean {
  return floors.every(({ layout }) => layout.rows.length > 0);
}

function wayLineOf(planned: PlannedFloors<LaidFloor>): WayLine {
  const [first] = planned.floors;
  const last = planned.floors[planned.floors.length - 1];
  const isMiddle = last.part === 'behind';
  const lengths = planned.markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length));
  const narrowRuns = planned.floors.flatMap(({ layout, read }) => narrowRunsOf(layout, read.rules.minRip));
  return {
    degrees: first.degrees,
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

/** Efforts to plan a line with: the two sides are planned apart, and another plan may keep the stagger across it. */
const LINE_EFFORTS = [1, 0.6, 0.8, 1.2, 1.5, 2];

/** The line nearest to the wanted place whose two sides keep their joints apart; null for a floor too narrow for one. */
function chooseLine(drawn: DrawnRoom): Candidate | null {
  let nearest: Candidate | null = null;
  for (const floors of middleStarts(drawn, directionsOf(drawn)[0])) {
    for (const effort of LINE_EFFORTS) {
      const candidate = candidateOf(floors, effort);
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
