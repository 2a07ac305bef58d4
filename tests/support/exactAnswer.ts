/** A general solver's answer to the exact model of a job, and the cut plan it stands for. */
import type loadHighs from 'highs';
import type { CutJob, CutPlan, KeptEnd, PlannedPiece } from '../../src/cutting/job';
import { exactModel } from './exactModel';
import { type LongRun, modelRuns } from './exactRuns';
import { ENDS, stripPairs } from './exactStrips';

export type Solver = Awaited<ReturnType<typeof loadHighs>>;

export interface ExactAnswer {
  readonly status: 'proved fewest' | 'time limit' | 'no plan';
  /** Planks of the best plan found; undefined when none was. */
  readonly planks?: number;
  /** Values of the model's variables, by name. */
  readonly values: Readonly<Record<string, number>>;
}

/**
 * Solves the exact model.
 *
 * @param seconds time limit, of the wall clock
 * @param atLeast a lower bound handed to the solver as a cut; 0 lets it prove everything itself
 */
export function solveExactly(solver: Solver, job: CutJob, seconds: number, atLeast = 0): ExactAnswer {
  return solveText(solver, exactModel(job, { atLeast }), seconds);
}

function solveText(solver: Solver, text: string, seconds: number): ExactAnswer {
  const solution = solver.solve(text, { output_flag: false, time_limit: seconds, mip_feasibility_tolerance: 1e-9 });
  const columns = Object.entries(solution.Columns);
  const values = Object.fromEntries(columns.map(([name, column]) => [name, 'Primal' in column ? column.Primal : 0]));
  if (solution.Status === 'Infeasible') return { status: 'no plan', values };
  if (solution.Status === 'Optimal') return { status: 'proved fewest', planks: Math.round(values.planks), values };
  const found = Number.isFinite(solution.ObjectiveValue) && columns.length > 0;
  return { status: 'time limit', planks: found ? Math.round(values.planks) : undefined, values };
}

/**
 * The cut plan of an answer: its choices are held and the lengths solved again as whole numbers.
 *
 * @throws Error when the choices allow no whole lengths, which would be a mistake in the model
 */
export function planOfAnswer(solver: Solver, job: CutJob, answer: ExactAnswer): CutPlan {
  const lengthOrCount = /^(first|last)\d+$|^planks$/;
  const choices = Object.entries(answer.values).filter(([name]) => !lengthOrCount.test(name));
  const held = Object.fromEntries(choices.map(([name, value]) => [name, Math.round(value)]));
  const whole = solveText(solver, exactModel(job, { held }), 10);
  if (whole.status !== 'proved fewest') throw new Error('The choices of the exact model allow no whole lengths.');
  return planOf(job, whole.values);
}

/** Planks by the name of what is cut from them: `first3`, `last3`, `whole3_0` of a long run, `short2`. */
type Places = Map<string, number>;

function planOf(job: CutJob, values: Readonly<Record<string, number>>): CutPlan {
  const { long, short } = modelRuns(job);
  const strips = stripsServed(job, long, values);
  const { places, plankCount } = placesOf(job, values, strips);
  const piece = (name: string, length: number, from: KeptEnd): PlannedPiece => {
    const kept = length === job.plankLength ? 'whole' : from;
    const giver = strips.get(name);
    const plank = places.get(giver ?? name) ?? 0;
    return giver === undefined ? { length, plank, from: kept } : { length, plank, from: kept, isStrip: true };
  };
  const rows = job.rows.map((row) => ({ runs: row.runs.map((): PlannedPiece[] => []) }));
  long.forEach(({ rowIndex, runIndex, ...run }, i) => {
    rows[rowIndex].runs[runIndex] = [
      piece(`first${i}`, Math.round(values[`first${i}`]), 'right'),
      ...wholeNames(run.wholes, i, values).map((name) => piece(name, job.plankLength, 'whole')),
      piece(`last${i}`, Math.round(values[`last${i}`]), 'left'),
    ];
  });
  short.forEach(({ rowIndex, runIndex, length }, p) => {
    rows[rowIndex].runs[runIndex] = [piece(`short${p}`, length, 'middle')];
  });
  return { rows, plankCount, bound: plankCount, stop: 'proved fewest', steps: 0, broken: [] };
}

function wholeNames(wholes: number, i: number, values: Readonly<Record<string, number>>): string[] {
  return Array.from({ length: wholes - Math.round(values[`cutUp${i}`]) }, (_, n) => `whole${i}_${n}`);
}

function isChosen(values: Readonly<Record<string, number>>, name: string): boolean {
  return Math.round(values[name] ?? 0) === 1;
}

/** Which piece serves as a strip of which, by name. */
function stripsServed(
  job: CutJob,
  long: readonly LongRun[],
  values: Readonly<Record<string, number>>,
): Map<string, string> {
  const served = new Map<string, string>();
  for (const { pair, givers, takers } of stripPairs(job, long)) {
    const wholesOf = (runs: readonly number[]) => runs.flatMap((i) => wholeNames(long[i].wholes, i, values));
    const ends = (runs: readonly number[]) => runs.flatMap((i) => ENDS.map((end) => `${end}${i}`));
    for (const taker of ends(takers)) {
      const giver = givers.find((i) => isChosen(values, `strip_${taker}_${i}`));
      if (giver !== undefined) served.set(taker, `${taker.startsWith('first') ? 'first' : 'last'}${giver}`);
    }
    const asking = ends(takers).filter((taker) => isChosen(values, `strip_${taker}`));
    asking.push(...wholesOf(takers).slice(0, Math.round(values[`stripsOfWholes${pair}`])));
    const giving = [...wholesOf(givers), ...ends(givers).filter((giver) => isChosen(values, `whole_${giver}`))];
    asking.forEach((taker, n) => {
      served.set(taker, giving[n]);
    });
  }
  return served;
}

function placesOf(
  job: CutJob,
  values: Readonly<Record<string, number>>,
  strips: ReadonlyMap<string, string>,
): { readonly places: Places; readonly plankCount: number } {
  const { long, short } = modelRuns(job);
  const places: Places = new Map();
  let plankCount = 0;
  /** Puts a piece on the plank of another, or on a new one. */
  const place = (name: string, beside?: string) => {
    if (!strips.has(name)) places.set(name, beside === undefined ? plankCount++ : (places.get(beside) ?? 0));
  };
  const runs = long.map((_, i) => i);
  const named = (prefix: string, index: number) => (index < 0 ? undefined : `${prefix}${index}`);
  for (const i of runs) for (const name of [`first${i}`, ...wholeNames(long[i].wholes, i, values)]) place(name);
  for (const i of runs)
    place(
      `last${i}`,
      named(
        'first',
        runs.findIndex((j) => isChosen(values, `pair${i}_${j}`)),
      ),
    );
  short.forEach((_, p) => {
    const first = named(
      'first',
      runs.findIndex((i) => isChosen(values, `withFirst${p}_${i}`)),
    );
    const last = named(
      'last',
      runs.findIndex((i) => isChosen(values, `withLast${p}_${i}`)),
    );
    const opener = short.findIndex((_, o) => o !== p && isChosen(values, `withShort${p}_${o}`));
    place(`short${p}`, first ?? last ?? named('short', opener));
  });
  return { places, plankCount };
}
