/**
 * Planning on: a cut list with what lies, what is cut and what is gone -> the plan of the whole floor in which all that lies
 * stays where it is, with its number, and the rest is planned anew.
 *
 * Rows up to the last one with a tick are finished as they were begun; the rows after it are planned by `planOnward`.
 */
import type { CutPlan, KeptEnd, PlannedPiece } from '../../cutting/job';
import { checkOnwardPlan } from '../../cutting/judge/onwardLaws';
import { carriedCount, rowsInParts } from '../../cutting/onward/inParts';
import { planOnward } from '../../cutting/onward/onward';
import type { OnwardJob, OnwardPlan } from '../../cutting/onward/onwardJob';
import { ledgerOf } from '../../cutting/plan/ledger';
import { brokenRules } from '../../cutting/plan/pairing';
import { planCuts } from '../../cutting/search';
import type { Ticks } from '../../geometry/length';
import type { LaidFloor } from '../reading/drawnRoom';
import { type ListedCut, type ListedRun, listedRows } from './asLaid';
import { type BegunPiece, type Books, beginBooks, finishRow } from './begunRows';
import { markedLengths } from './cutJob';
import { followedRows } from './followed';
import { type PlanksInHand, planksInHand } from './inHand';
import { asPlanned, unitsCutOf, unitsFound, unitsUp } from './listedUnits';
import { onwardProblemsOf } from './listMatches';
import type { PlannedFloors } from './planFloors';
import { withStrips } from './waitingStrips';

/** A floor planned on, and what there is to tell of it. */
export interface PlannedOn {
  readonly planned: PlannedFloors<LaidFloor>;
  /** Rows up to the last one with a tick. */
  readonly begunRowCount: number;
  /** Whole planks that the rest takes. */
  readonly wholeCount: number;
  /** Planks opened so far: cut, or spoilt. */
  readonly openedCount: number;
  readonly spoiltCount: number;
  /** With fewer offcuts going over to a second part: how many, and how many planks more; null where there is no such plan. */
  readonly fewerOver: { readonly carriedCount: number; readonly planks: number } | null;
  /** What is written on the offcut that a piece comes from, by the piece's label, where that is another label. */
  readonly writtenOn: ReadonlyMap<string, string>;
}

export type PlanOnAnswer = { readonly on: PlannedOn } | { readonly problems: readonly string[] };

/**
 * @param planned the floor as it would be planned from nothing: its rows and runs are those of the list
 * @param partEnd the last row of what is laid first; null where all is laid in one go
 */
export function planOn(
  planned: PlannedFloors<LaidFloor>,
  listed: readonly ListedCut[],
  partEnd: number | null = null,
): PlanOnAnswer {
  const rows = listedRows(listed);
  const problems = onwardProblemsOf(planned, rows);
  if (problems.length > 0) return { problems };
  const floor = new FloorOn(planned, rows, listed, partEnd);
  return { on: floor.plan() };
}

/** A piece with its place among the sources of the whole floor. */
interface PlacedCut {
  readonly length: Ticks;
  readonly from: KeptEnd;
  /** The plank: its number in the list, or a name of a new one. */
  readonly source: string;
  readonly isStrip?: true;
}

/** Holds the floor while it is planned on. */
class FloorOn {
  private readonly begunCount: number;
  private readonly hand: PlanksInHand;
  private readonly books: Books;
  private fewerOver: PlannedOn['fewerOver'] = null;

  constructor(
    private readonly planned: PlannedFloors<LaidFloor>,
    private readonly rows: readonly (readonly ListedRun[])[],
    private readonly listed: readonly ListedCut[],
    private readonly partEnd: number | null,
  ) {
    const last = listed.filter(({ isLaid }) => isLaid).reduce((row, piece) => Math.max(row, piece.rowNumber), 0);
    this.begunCount = rows.findIndex(([{ pieces }]) => pieces[0].rowNumber > last);
    if (this.begunCount < 0) this.begunCount = rows.length;
    this.hand = planksInHand(listed, planned.job, unitsCutOf(planned, rows));
    this.books = beginBooks(this.hand);
  }

  plan(): PlannedOn {
    const begun = this.rows.slice(0, this.begunCount).map((runs, i) => this.finished(runs, i));
    const onward = this.onwardJob(begun);
    const rows = this.rows.slice(this.begunCount);
    const followed = followedRows(rows, onward, this.books, (length, i, j, k) => {
      return asPlanned(this.planned, [this.begunCount + i, j, k], length) ?? unitsUp(this.planned, length);
    });
    const rest = this.best(onward, followed);
    const cuts = [...begun.map((runs) => runs.map((run) => run.map(placedOf))), ...this.restCuts(rest)];
    return this.told(cuts, rest);
  }

  /** A row that lies, or is begun, to its end. */
  private finished(runs: readonly ListedRun[], rowIndex: number): readonly (readonly BegunPiece[])[] {
    return runs.map((run, j) => {
      const { x0, x1 } = this.stretch(rowIndex, j);
      const size = { length: x1 - x0, unit: this.planned.grid.unit, markingStep: this.planned.grid.markingStep };
      return finishRow(run, size, this.books, this.planned.job);
    });
  }

  private onwardJob(begun: readonly (readonly (readonly BegunPiece[])[])[]): OnwardJob {
    const { job, grid } = this.planned;
    const rows = job.rows.slice(this.begunCount).map((row, i) => ({
      ...row,
      runs: row.runs.map((run, j) => {
        const found = this.rows[this.begunCount + i][j].found;
        return found === null ? run : { ...run, length: unitsFound(this.planned, found) };
      }),
    }));
    const joints = (back: number) => {
      const rowIndex = this.begunCount - back;
      return (begun[rowIndex] ?? []).flatMap((run, j) => {
        let at = job.rows[rowIndex].runs[j].x;
        return run.slice(0, -1).map(({ length }, k) => {
          at += asPlanned(this.planned, [rowIndex, j, k], length) ?? length / grid.unit;
          return at;
        });
      });
    };
    const widest = Math.max(job.plankWidth, ...job.rows.map(({ width }) => width));
    return {
      job: { ...job, rows, ripPairs: this.begunCount === 0 ? job.ripPairs : [] },
      before: { joints: joints(1), joints2: joints(2) },
      // A plank that is no whole number of steps wide is a unit narrower than its rows.
      stock: this.books.sources.map(({ length, ends, width = widest }) => ({ length, ends, width })),
      whole: 0,
    };
  }

  /** The fewest planks once strips that wait take their places; then the fewest offcuts that go over to a second part. */
  private best(onward: OnwardJob, followed: OnwardPlan['rows']): OnwardPlan {
    const found = planOnward(onward, followed, {}, planCuts);
    const strips = this.strips();
    const first = this.partEnd === null ? 0 : this.partEnd - this.begunCount;
    const isInParts = first > 0 && first < onward.job.rows.length;
    if (strips.length === 0 && !isInParts) return found;
    const others = [followed, ...(isInParts ? rowsInParts(onward, first) : [])].map((rows) => asTheyStand(found, rows));
    const legal = others.filter((plan) => checkOnwardPlan(onward, plan).length === 0);
    const plans = [found, ...legal].map((plan) => withStrips({ ...plan, bound: found.bound }, strips));
    const carried = (plan: OnwardPlan) => (isInParts ? carriedCount(plan.rows, first) : 0);
    const by = (a: OnwardPlan, b: OnwardPlan) => a.plankCount - b.plankCount || carried(a) - carried(b);
    const best = plans.reduce((one, plan) => (by(plan, one) < 0 ? plan : one));
    const [fewer] = plans.filter((plan) => carried(plan) < carried(best)).sort((a, b) => carried(a) - carried(b));
    if (fewer) this.fewerOver = { carriedCount: carried(fewer), planks: fewer.plankCount - best.plankCount };
    return best;
  }

  /** Strips of the first row that wait for the last one. */
  private strips(): readonly { readonly length: number; readonly from: KeptEnd; readonly index: number }[] {
    if (this.begunCount === 0) return [];
    return this.listed
      .filter(({ isStrip, isCut, isGone }) => isStrip && !isCut && !isGone)
      .map(({ length, from, plankNumber }) => ({ length: unitsUp(this.planned, length), from, index: plankNumber }));
  }

  private restCuts(rest: OnwardPlan): readonly (readonly (readonly PlacedCut[])[])[] {
    const { grid } = this.planned;
    const stretches = rest.rows.map(({ runs }, i) => ({
      width: 0,
      runs: runs.map((_, j) => this.stretch(this.begunCount + i, j)),
    }));
    const marked = markedLengths({ rows: rest.rows }, stretches, 0, grid);
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

  /** The whole floor as one plan, its planks numbered: those that are begun as before, new ones as they are needed. */
  private told(cuts: readonly (readonly (readonly PlacedCut[])[])[], rest: OnwardPlan): PlannedOn {
    const { planned, hand } = this;
    const numbers = new Map<string, number>();
    for (const { source } of cuts.flat(2)) if (/^\d+$/.test(source)) numbers.set(source, Number(source));
    const taken = new Set(numbers.values());
    let next = 1;
    for (const { source } of cuts.flat(2)) {
      if (numbers.has(source)) continue;
      while (taken.has(next)) next++;
      taken.add(next);
      numbers.set(source, next);
    }
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
          length: rows[i].runs[j].reduce((sum, { length }) => sum + length, 0),
        })),
      })),
    };
    const plankCount = numbers.size;
    const forced = this.books.loose;
    const bound = Math.min(plankCount, Math.max(0, plankCount - rest.plankCount + rest.bound - forced));
    const stop = bound === plankCount ? ('proved fewest' as const) : ('step limit' as const);
    const plan: CutPlan = { rows, plankCount, bound, stop, steps: 0, broken: brokenRules(markedJob, rows) };
    const opened = hand.begun.size + hand.spoilt.size;
    return {
      planned: { ...planned, job: markedJob, plan, markedJob, markedPlan: plan, ledger: ledgerOf(markedJob, plan) },
      begunRowCount: this.begunCount,
      wholeCount: plankCount - hand.begun.size,
      openedCount: opened,
      spoiltCount: hand.spoilt.size,
      fewerOver: this.fewerOver,
      writtenOn: this.writtenOn(cuts),
    };
  }

  private writtenOn(cuts: readonly (readonly (readonly PlacedCut[])[])[]): ReadonlyMap<string, string> {
    const written = new Map<string, string>();
    const marks = new Map(this.books.sources.map(({ name, mark }) => [name, mark]));
    cuts.forEach((runs, i) => {
      const { rowNumber } = this.rows[i][0].pieces[0];
      runs.flat().forEach(({ source, isStrip }, k) => {
        const listedPiece = this.rows[i].flatMap(({ pieces }) => pieces)[k];
        const mark = isStrip || listedPiece?.isLaid ? undefined : marks.get(source);
        if (!mark) return;
        const label = `${rowNumber}-${k + 1}`;
        if (mark !== label) written.set(label, mark);
        marks.delete(source);
      });
    });
    return written;
  }

  /** Of a run, ticks along the rows; as long as it was found. */
  private stretch(rowIndex: number, runIndex: number): { readonly x0: Ticks; readonly x1: Ticks } {
    const { x0, x1 } = this.planned.floors[0].layout.rows[rowIndex].runs[runIndex];
    const { found } = this.rows[rowIndex][runIndex];
    return { x0, x1: found === null ? x1 : x0 + found };
  }
}

/** Rows with their planks counted anew. */
function asTheyStand(found: OnwardPlan, rows: OnwardPlan['rows']): OnwardPlan {
  const planks = new Set(rows.flatMap(({ runs }) => runs.flat()).flatMap(({ plank }) => (plank < 0 ? [] : [plank])));
  const count = planks.size;
  return { ...found, rows, plankCount: count, short: count, stop: 'step limit', broken: [], bound: 0 };
}

function placedOf({ length, from, source, isStrip }: BegunPiece): PlacedCut {
  return { length, from, source, ...(isStrip && { isStrip }) };
}
