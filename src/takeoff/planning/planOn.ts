/**
 * Planning on: cut lists with what lies, what is cut and what is gone -> the plan of the whole floor in which all that lies
 * stays where it is, with its number, and the rest is planned anew. Floors that share planks are planned on together, in one job
 * with all the rows left, and so are both sides of a middle line.
 *
 * Rows up to the last one with a tick are finished as they were begun, on each floor and side; the rows after them are planned
 * by `planOnward`.
 */

import type { BrokenRule, CutPlan, KeptEnd, PlannedPiece } from '../../cutting/job';
import type { FewerOver } from '../../cutting/onward/inParts';
import type { OnwardJob, OnwardPlan } from '../../cutting/onward/onwardJob';
import { ledgerOf } from '../../cutting/plan/ledger';
import { brokenRules } from '../../cutting/plan/pairing';
import type { Ticks } from '../../geometry/length';
import { sumOf } from '../../geometry/lists';
import type { LaidFloor } from '../reading/drawnRoom';
import type { ListedCut, ListedRun } from './asLaid';
import { type BegunPiece, type Books, beginBooks, finishRow } from './begunRows';
import { bestRest } from './bestRest';
import { markedLengths } from './cutJob';
import { followedRows } from './followed';
import { type PlanksInHand, planksInHand } from './inHand';
import { floorsOnLists, type ListedPlan, listedPlanOf, roomOf } from './listedPlan';
import { asPlanned, unitsFound, unitsUp } from './listedUnits';
import { onwardProblemsOf } from './listMatches';
import { floorIndexAt, type PlannedFloors } from './planFloors';
import { type LayingOrder, layingOrderOf, rowsBefore, type Side, sidesOf } from './sides';

/** Floors planned on, and what there is to tell of them. */
export interface PlannedOn {
  readonly planned: PlannedFloors<LaidFloor>;
  /** Every floor, and each side of a middle line. */
  readonly sides: readonly Side[];
  /** Index of the row to lay next; null when none is left to plan. */
  readonly nextRow: number | null;
  /** Whole planks that the rest takes. */
  readonly wholeCount: number;
  /** Planks opened so far: cut, or spoilt. */
  readonly openedCount: number;
  /** Planks spoilt, by the list that says so. */
  readonly spoiltCounts: readonly number[];
  /** With fewer offcuts going over to a second part; null where there is no such plan. */
  readonly fewerOver: FewerOver | null;
  /** What is written on the offcut that a piece comes from, by the piece's `pieceKey`, where that is another label. */
  readonly writtenOn: ReadonlyMap<string, string>;
}

/** A piece by its room and label. */
export function pieceKey(room: string, label: string): string {
  return `${room}\n${label}`;
}

export type PlanOnAnswer = { readonly on: PlannedOn } | { readonly problems: readonly string[] };

/** Which floor is planned on. Lists by their place. */
export interface Asked {
  readonly list: number;
  /** What is laid first, up to a row by its number; null where all is laid in one go. */
  readonly part: { readonly list: number; readonly end: number } | null;
}

/**
 * @param planned the floors as they would be planned from nothing: their rows and runs are those of the lists
 * @param lists a list for each floor, in the order of the plan; both sides of a middle line have one
 */
export function planOn(
  planned: PlannedFloors<LaidFloor>,
  lists: readonly (readonly ListedCut[])[],
  asked: Asked = { list: 0, part: null },
): PlanOnAnswer {
  const problems = onwardProblemsOf(planned, lists);
  if (problems.length > 0) return { problems };
  return { on: new FloorsOn(listedPlanOf(planned, lists), lists, asked).plan() };
}

/** A piece with its place among the sources of the whole floor. */
interface PlacedCut {
  readonly length: Ticks;
  readonly from: KeptEnd;
  /** The plank: its number in the list, or a name of a new one. */
  readonly source: string;
  readonly isStrip?: true;
}

type RowCuts = readonly (readonly PlacedCut[])[];

/** Holds the floors while they are planned on. Rows go by their index in the plan. */
class FloorsOn {
  private readonly planned: PlannedFloors<LaidFloor>;
  private readonly rows: readonly (readonly ListedRun[])[];
  private readonly sides: readonly Side[];
  /** The floor that is asked for, or both its sides. */
  private readonly own: readonly number[];
  private readonly order: LayingOrder;
  private readonly hand: PlanksInHand;
  private readonly books: Books;

  constructor(
    private readonly listed: ListedPlan,
    private readonly lists: readonly (readonly ListedCut[])[],
    private readonly asked: Asked,
  ) {
    this.planned = listed.planned;
    this.rows = listed.rows;
    this.sides = sidesOf(listed);
    this.own = floorsOnLists(this.planned)[asked.list];
    this.order = layingOrderOf(this.sides, asked.part ? floorsOnLists(this.planned)[asked.part.list] : []);
    this.hand = planksInHand(listed);
    this.books = beginBooks(this.hand);
  }

  plan(): PlannedOn {
    const begun = new Map(this.order.begun.map((row) => [row, this.finished(row)]));
    const onward = this.onwardJob(begun);
    const followed = followedRows(
      this.order.rest.map((row) => this.rows[row]),
      onward,
      this.books,
      (length, i, j, k) => asPlanned(this.planned, [this.order.rest[i], j, k], length) ?? unitsUp(this.planned, length),
    );
    const floors = { listed: this.listed, sides: this.sides, order: this.order };
    const { best, fewerOver } = bestRest(floors, onward, followed, this.firstPartCount());
    return { ...this.told(this.allCuts(begun, best), best), fewerOver };
  }

  /** A row that lies, or is begun, to its end. */
  private finished(row: number): readonly (readonly BegunPiece[])[] {
    return this.rows[row].map((run, j) => {
      const { x0, x1 } = this.stretch(row, j);
      const size = { length: x1 - x0, unit: this.planned.grid.unit, markingStep: this.planned.grid.markingStep };
      return finishRow(run, size, this.books, this.planned.job);
    });
  }

  private onwardJob(begun: ReadonlyMap<number, readonly (readonly BegunPiece[])[]>): OnwardJob {
    const { job, grid } = this.planned;
    const { rest } = this.order;
    const rows = rest.map((row) => ({
      ...job.rows[row],
      runs: job.rows[row].runs.map((run, j) => {
        const { found } = this.rows[row][j];
        return found === null ? run : { ...run, length: unitsFound(this.planned, found) };
      }),
    }));
    const joints = (row: number) =>
      (begun.get(row) ?? []).flatMap((run, j) => {
        let at = job.rows[row].runs[j].x;
        return run.slice(0, -1).map(({ length }, k) => {
          at += asPlanned(this.planned, [row, j, k], length) ?? length / grid.unit;
          return at;
        });
      });
    const widest = Math.max(job.plankWidth, ...job.rows.map(({ width }) => width));
    // The strips of a floor that is begun are already there, or gone.
    const ripPairs = job.ripPairs.filter((pair) => pair.every((row) => rest.includes(row)));
    return {
      job: { ...job, rows, ripPairs: ripPairs.map(([a, b]) => [rest.indexOf(a), rest.indexOf(b)] as const) },
      before: rowsBefore(this.planned, this.sides, joints),
      // A plank that is no whole number of steps wide is a unit narrower than its rows.
      stock: this.books.sources.map(({ length, ends, width = widest }) => ({ length, ends, width })),
    };
  }

  /** How many of the rows that are left are laid before the furniture goes over; none where all is laid in one go. */
  private firstPartCount(): number {
    const { part } = this.asked;
    if (!part) return 0;
    const from = this.planned.firstRows[floorsOnLists(this.planned)[part.list][0]];
    return this.order.rest.indexOf(from + part.end - 1) + 1;
  }

  /** Of every row of the plan. */
  private allCuts(
    begun: ReadonlyMap<number, readonly (readonly BegunPiece[])[]>,
    rest: OnwardPlan,
  ): readonly RowCuts[] {
    const left = this.restCuts(rest);
    return this.rows.map((_, row) => {
      return begun.get(row)?.map((run) => run.map(placedOf)) ?? left[this.order.rest.indexOf(row)];
    });
  }

  private restCuts(rest: OnwardPlan): readonly RowCuts[] {
    const stretches = rest.rows.map(({ runs }, i) => ({
      width: 0,
      runs: runs.map((_, j) => this.stretch(this.order.rest[i], j)),
    }));
    const marked = markedLengths({ rows: rest.rows }, stretches, 0, this.planned.grid);
    return rest.rows.map(({ runs }, i) =>
      runs.map((run, j) =>
        run.map((piece, k): PlacedCut => {
          const { from, plank, stock, isStrip } = piece;
          const strip = isStrip ? { isStrip } : {};
          if (stock !== undefined) return { length: marked[i][j][k], from, source: this.books.sources[stock].name };
          const source = isStrip && plank < 0 ? `${-plank}` : `rest ${plank}`;
          return { length: marked[i][j][k], from, source, ...strip };
        }),
      ),
    );
  }

  /** All floors as one plan, its planks numbered: those that are begun as before, new ones as they are needed. */
  private told(cuts: readonly RowCuts[], rest: OnwardPlan): Omit<PlannedOn, 'fewerOver'> {
    const { planned, hand, sides } = this;
    const order = [...this.order.begun, ...this.order.rest];
    const numbers = numbered(order.flatMap((row) => cuts[row].flat()));
    const rows = cuts.map((runs) => ({
      runs: runs.map((run) =>
        run.map(({ source, length, from, isStrip }): PlannedPiece => {
          return { length, plank: (numbers.get(source) as number) - 1, from, ...(isStrip && { isStrip }) };
        }),
      ),
    }));
    const markedJob = {
      ...planned.markedJob,
      play: 0,
      rows: planned.markedJob.rows.map((row, i) => ({
        ...row,
        runs: row.runs.map((run, j) => ({
          ...run,
          length: sumOf(rows[i].runs[j], ({ length }) => length),
        })),
      })),
    };
    const plan = planOf(rows, numbers.size, rest, this.books.loose, brokenRules(markedJob, rows));
    const ledger = ledgerOf(markedJob, plan, order);
    return {
      planned: { ...planned, job: markedJob, plan, markedJob, markedPlan: plan, ledger, order },
      sides,
      nextRow: this.nextRow(),
      wholeCount: numbers.size - hand.begun.size,
      openedCount: hand.begun.size + hand.spoilt.size,
      spoiltCounts: this.spoiltCounts(),
      writtenOn: this.writtenOn(cuts, order),
    };
  }

  /** On the floor that is asked for, as long as a row is left there. */
  private nextRow(): number | null {
    const { rest } = this.order;
    return rest.find((row) => this.own.includes(floorIndexAt(this.planned, row))) ?? rest[0] ?? null;
  }

  /** A plank that several lists say is spoilt counts in the first. */
  private spoiltCounts(): readonly number[] {
    const left = new Set(this.hand.spoilt);
    return this.lists.map((list) => {
      const own = new Set(
        list.filter(({ isGone, isStrip }) => isGone && !isStrip).map(({ plankNumber }) => plankNumber),
      );
      return [...own].filter((number) => left.delete(number)).length;
    });
  }

  private writtenOn(cuts: readonly RowCuts[], order: readonly number[]): ReadonlyMap<string, string> {
    const written = new Map<string, string>();
    const sources = new Map(this.books.sources.map((source) => [source.name, source]));
    for (const row of order) {
      const listed = this.rows[row].flatMap(({ pieces }) => pieces);
      const room = roomOf(this.listed, listed[0]);
      cuts[row].flat().forEach(({ source, isStrip }, k) => {
        const from = isStrip || listed[k]?.isLaid ? undefined : sources.get(source);
        if (!from || from.mark === '') return;
        if (from.keptFor !== listed[k]) written.set(pieceKey(room, `${listed[0].rowNumber}-${k + 1}`), from.mark);
        sources.delete(source);
      });
    }
    return written;
  }

  /** Of a run, ticks along the rows; as long as it was found. */
  private stretch(row: number, runIndex: number): { readonly x0: Ticks; readonly x1: Ticks } {
    const { floors, firstRows } = this.planned;
    const floorIndex = floorIndexAt(this.planned, row);
    const { x0, x1 } = floors[floorIndex].layout.rows[row - firstRows[floorIndex]].runs[runIndex];
    const { found } = this.rows[row][runIndex];
    return { x0, x1: found === null ? x1 : x0 + found };
  }
}

/** Planks by their names: those of the list keep their numbers, new ones take the free ones as they are needed. */
function numbered(cuts: readonly PlacedCut[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { source } of cuts) if (/^\d+$/.test(source)) numbers.set(source, Number(source));
  const taken = new Set(numbers.values());
  let next = 1;
  for (const { source } of cuts) {
    if (numbers.has(source)) continue;
    while (taken.has(next)) next++;
    taken.add(next);
    numbers.set(source, next);
  }
  return numbers;
}

/** @param loose pieces of begun rows that some other piece in hand might have served */
function planOf(
  rows: CutPlan['rows'],
  plankCount: number,
  rest: OnwardPlan,
  loose: number,
  broken: readonly BrokenRule[],
): CutPlan {
  const bound = Math.min(plankCount, Math.max(0, plankCount - rest.plankCount + rest.bound - loose));
  const stop = bound === plankCount ? ('proved fewest' as const) : ('step limit' as const);
  return { rows, plankCount, bound, stop, steps: 0, broken };
}

function placedOf({ length, from, source, isStrip }: BegunPiece): PlacedCut {
  return { length, from, source, ...(isStrip && { isStrip }) };
}
