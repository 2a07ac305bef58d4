/**
 * Rows in ticks -> a cutting job in whole units, and back: the planned pieces as they are marked.
 *
 * The unit is the marking step whenever a plank is a whole number of steps; then what the search plans is what is
 * printed. Any other plank (1210 mm in a sheet of 1/16 in) is divided into as many equal units as steps fit in it, and
 * the rules are made stricter by what marking in whole steps may move, so that the marked pieces still obey them.
 */

import type { CutJob, CutPlan, JobRow } from '../../cutting/job';
import { floorToStep, OUTLINE_ROUNDING, type Ticks, toTicks } from '../../geometry/length';
import { addedUp, lastOf } from '../../geometry/lists';
import type { Rules } from '../../layout/rules';

/** How lengths of one floor go onto whole units. */
export interface Grid {
  /** Ticks of one unit; not whole when a plank is not a whole number of marking steps. */
  readonly unit: number;
  readonly markingStep: Ticks;
  /** As typed, so not always whole ticks: a run of whole planks must come out as that many of them. */
  readonly plankLength: number;
  readonly plankUnits: number;
}

/** One unbroken stretch of a row, in ticks along the rows; it may be known only to a tick or two. */
export interface Stretch {
  readonly x0: Ticks;
  readonly x1: Ticks;
}

export interface StretchRow {
  readonly width: Ticks;
  readonly runs: readonly Stretch[];
}

/** A plank's length, ticks as typed, divided into units no longer than the marking step. */
function gridOf(plankLength: number, markingStep: Ticks): Grid {
  const plankUnits = Math.max(1, Math.ceil(plankLength / markingStep));
  return { unit: plankLength / plankUnits, markingStep, plankLength, plankUnits };
}

/** Whether cut lengths planned on this grid are whole marking steps. */
function isMarked(grid: Grid): boolean {
  return grid.unit === grid.markingStep;
}

/**
 * The cutting job of several rooms laid from the same planks.
 *
 * @param rooms rows of each room in laying order, ticks
 * @param plankLength in ticks, as typed: not rounded to whole ones
 * @param plankWidth ticks; with `reuseStrips`, what is ripped off a first row may serve in the room's last row
 */
export function cutJobOf(
  rooms: readonly (readonly StretchRow[])[],
  plankLength: number,
  plankWidth: Ticks,
  rules: Rules,
  reuseStrips: boolean,
): { readonly job: CutJob; readonly grid: Grid } {
  const grid = gridOf(plankLength, rules.markingStep);
  const rows = rooms.flatMap((room, roomIndex) => room.map((row) => jobRowOf(row, roomIndex, grid)));
  const onUnits = rooms.every((room) => room.every((row) => row.runs.every((run) => run.x0 % grid.unit === 0)));
  const moved = isMarked(grid) ? 0 : grid.markingStep;
  const up = (length: Ticks, slack: Ticks) => Math.ceil((length + slack) / grid.unit);
  const job: CutJob = {
    plankLength: grid.plankUnits,
    plankWidth: Math.floor(plankWidth / grid.unit),
    kerf: up(rules.kerf, 2 * moved),
    play: up(rules.play, 0),
    minPiece: up(rules.minPiece, moved),
    // Without a stagger joints may line up, so what marking moves them by is no matter.
    minStagger: rules.minStagger === 0 ? 0 : up(rules.minStagger, (onUnits ? 0 : grid.unit) + moved),
    alignedDistance: up(rules.alignedDistance, 0),
    rows,
    ripPairs: reuseStrips ? ripPairsOf(rooms, plankWidth, rules.kerf) : [],
  };
  return { job, grid };
}

/** The cutting job of single runs, one per row, all starting at the same wall (`PLANK_OFFCUTS`, `PLANK_COUNT`); lengths in ticks as typed. */
export function cutJobOfRuns(
  runs: readonly number[],
  plankLength: number,
  rules: Rules,
): { readonly job: CutJob; readonly grid: Grid } {
  const rows = runs.map((length) => ({ width: 0, runs: [{ x0: 0, x1: length }] }));
  return cutJobOf([rows], plankLength, 0, rules, false);
}

/** Every piece of a plan as it is marked: row -> run -> lengths in ticks. See `markedRun`. */
export function markedLengths(
  plan: Pick<CutPlan, 'rows'>,
  rows: readonly StretchRow[],
  firstRowIndex: number,
  grid: Grid,
): readonly (readonly (readonly Ticks[])[])[] {
  return rows.map((row, i) =>
    row.runs.map((run, j) => {
      const units = plan.rows[firstRowIndex + i].runs[j].map((piece) => piece.length);
      return markedRun(units, run.x1 - run.x0, grid);
    }),
  );
}

/**
 * Marked lengths of one run: whole planks as they are, the first piece down to a marking step, the last piece what is
 * then left, down to a marking step. They add up to the run less at most two steps, which widen the gap at its end; a
 * run shorter than a step (the tip of a triangle) still gets a piece of one step.
 */
function markedRun(units: readonly number[], length: number, grid: Grid): Ticks[] {
  const marked = units.map((u) =>
    u === grid.plankUnits ? grid.plankLength : floorToStep(u * grid.unit, grid.markingStep),
  );
  const last = marked.length - 1;
  if (units[last] === grid.plankUnits) return marked.map(toTicks);
  const before = addedUp(marked.slice(0, last));
  const left = Math.max(grid.markingStep, floorToStep(length - before + OUTLINE_ROUNDING, grid.markingStep));
  // What the steps leave may come near a whole plank; the piece is cut all the same.
  marked[last] = Math.min(left, floorToStep(grid.plankLength - 1, grid.markingStep));
  return marked.map(toTicks);
}

function jobRowOf(row: StretchRow, room: number, grid: Grid): JobRow {
  const runs = row.runs.map((run) => ({
    x: Math.floor(run.x0 / grid.unit),
    length: Math.max(1, Math.floor((run.x1 - run.x0 + OUTLINE_ROUNDING) / grid.unit)),
  }));
  return { room, width: Math.ceil(row.width / grid.unit), runs };
}

/** [first row, last row] of every room whose two rips and a saw cut fit in one plank's width. */
function ripPairsOf(
  rooms: readonly (readonly StretchRow[])[],
  plankWidth: Ticks,
  kerf: Ticks,
): readonly (readonly [number, number])[] {
  const pairs: [number, number][] = [];
  let firstRow = 0;
  for (const room of rooms) {
    const lastRow = firstRow + room.length - 1;
    const fits = room.length > 1 && room[0].width + lastOf(room).width + kerf <= plankWidth;
    if (fits) pairs.push([firstRow, lastRow]);
    firstRow = lastRow + 1;
  }
  return pairs;
}
