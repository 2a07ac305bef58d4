/**
 * Ways to lay a floor: direction, start wall and width of the first row. What the entry leaves open is searched: each
 * candidate is planned, and the best is kept.
 */
import { layChoicesOf } from '../layout/choices';
import { degreesOf, directionsIn } from '../layout/direction';
import { narrowRunsOf, type RowLayout, rowsOf } from '../layout/rows';
import type { DrawnRoom } from './drawRoom';
import { type PlannedFloors, planFloors } from './planFloors';
import type { WayLine } from './result';

/** A floor divided into rows, not yet into pieces. */
export interface LaidFloor extends DrawnRoom {
  readonly layout: RowLayout;
  /** Direction of the rows, degrees anticlockwise from x of the room. */
  readonly degrees: number;
  /** Which side of the rows, seen along them, row 1 lies on. */
  readonly startSide: 'near' | 'far';
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
  const candidates = laidWays(drawn).map((laid) => {
    const planned = planFloors([laid]);
    return { planned, way: wayLineOf(planned, laid) };
  });
  const ranked = candidates.map((candidate, i) => ({ ...candidate, i })).sort((a, b) => byMerit(a, b) || a.i - b.i);
  return {
    planned: ranked[0].planned,
    ways: ranked.map(({ way }, i) => ({ ...way, isChosen: i === 0 })),
  };
}

function laidWays(drawn: DrawnRoom): readonly LaidFloor[] {
  const { read, room, floor, body } = drawn;
  const { rules, product, start } = read;
  const { minRip, kerf, markingStep } = rules;
  const options = { plankWidth: product.plankWidth, minRip, kerf, markingStep };
  const directions = start.direction === 'best' ? directionsIn(room) : [degreesOf(rules.layDirection, room.walls) ?? 0];
  const startSides = start.startSide === 'best' ? (['near', 'far'] as const) : [start.startSide];
  if (start.firstRow === 'best') {
    const choices = layChoicesOf(floor, body, { ...options, directions, startSides, widthCount: WIDTHS_A_SIDE });
    return choices.map(({ layout, degrees, startSide }) => ({ ...drawn, layout, degrees, startSide }));
  }
  const firstRow = start.firstRow;
  return directions.flatMap((degrees) =>
    startSides.map((startSide) => {
      const layout = rowsOf(floor, { ...options, degrees, startSide, firstRow, body });
      return { ...drawn, layout, degrees, startSide };
    }),
  );
}

function wayLineOf(planned: PlannedFloors<LaidFloor>, { layout, degrees, startSide, read }: LaidFloor): WayLine {
  const lengths = planned.markedPlan.rows.flatMap((row) => row.runs.flat().map((piece) => piece.length));
  return {
    degrees,
    startSide,
    rowCount: layout.rows.length,
    firstRowWidth: layout.firstWidth,
    lastRowWidth: layout.lastWidth,
    narrowRunCount: narrowRunsOf(layout, read.rules.minRip).length,
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
    a.planned.plan.broken.length - b.planned.plan.broken.length ||
    a.way.narrowRunCount - b.way.narrowRunCount ||
    a.way.plankCount - b.way.plankCount ||
    isShort(a) - isShort(b) ||
    unevenness(a) - unevenness(b)
  );
}
