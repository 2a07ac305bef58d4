/**
 * How many offcuts and strips wait between two parts of a floor, at the least, in any plan of so many planks.
 *
 * A plank that serves both parts waits between them. Let either part have prices of its own for the units of a plank (the
 * picture of `src/cutting/bound/boundRuns.ts`), worth a plank in all. Then a plank that serves one part bears pieces
 * worth a plank at most, and one that serves both bears more by no more than the two prices differ. What the parts cost
 * at the least beyond the planks of the plan must be borne by planks that serve both, which tells how many those are.
 * A strip spares no more than a plank.
 *
 * Good prices come from a linear program. Its numbers are not exact and need not be: the sum holds for any prices, and is
 * done in whole numbers.
 */
import { fewestPossible } from '../../src/cutting/bound/bound';
import { type BoundRuns, boundRunsOf } from '../../src/cutting/bound/boundRuns';
import { pricedRunsOf } from '../../src/cutting/bound/pricedRuns';
import type { CutJob } from '../../src/cutting/job';
import type { Solver } from './exactAnswer';
import { addRow, each, emptyProgram, type Program, type Terms, textOf } from './linearProgram';

/** What a plank costs, as in `pricedRuns.ts`, where prices that come to this are left as they are. */
const PLANK = 2 ** 20;

/** @returns for each row but the last, how many wait after it at the least in a plan of so many planks */
export function waitingAtLeast(solver: Solver, job: CutJob, planks: number): number[] {
  return job.rows.slice(1).map((_, row) => waitingBetween(solver, job, row + 1, planks));
}

/** @param row rows before the border */
export function waitingBetween(solver: Solver, job: CutJob, row: number, planks: number): number {
  const parts = [partOf(job, 0, row), partOf(job, row, job.rows.length)];
  const apart = parts.reduce((sum, part) => sum + fewestPossible(part), 0) - planks;
  const byPrices = betweenByPrices(solver, parts.map(boundRunsOf), planks, spansBorder(job, row));
  return Math.max(0, apart, byPrices);
}

/** The rows from `from` up to `to`, with the strips that are ripped and used in them. */
function partOf(job: CutJob, from: number, to: number): CutJob {
  const isIn = (row: number): boolean => row >= from && row < to;
  const ripPairs = job.ripPairs
    .filter(([first, last]) => isIn(first) && isIn(last))
    .map(([first, last]) => [first - from, last - from] as const);
  return { ...job, rows: job.rows.slice(from, to), ripPairs };
}

function spansBorder({ ripPairs }: CutJob, row: number): boolean {
  return ripPairs.some(([first, last]) => first < row && last >= row);
}

function betweenByPrices(solver: Solver, parts: readonly BoundRuns[], planks: number, hasStrips: boolean): number {
  const prices = pricesFor(solver, parts, planks);
  if (!prices) return 0;
  const priced = parts.map((part, i) => {
    const runs = pricedRunsOf(part);
    return { planks: runs.price(prices[i]), wholePlanks: runs.wholePlanks, ...runs.last() };
  });
  if (priced.some((part) => part.planks === Number.POSITIVE_INFINITY)) return 0;
  const [one, other] = priced;
  if (one.plank !== PLANK || other.plank !== PLANK) throw new Error('The prices of a plank do not come to one.');
  const due = one.least + other.least - (planks - one.wholePlanks - other.wholePlanks) * PLANK;
  const more = Math.max(mostOfBoth(parts, one.priceTo, other.priceTo) - PLANK, hasStrips ? PLANK : 0);
  return due <= 0 || more <= 0 ? 0 : Math.ceil(due / more);
}

/** The most that pieces of two parts on one plank may cost together. */
function mostOfBoth([{ shortLengths }, other]: readonly BoundRuns[], a: Float64Array, b: Float64Array): number {
  const end = a.length - 1;
  let most = 0;
  // Wall-to-wall pieces lie anywhere on the plank.
  if (shortLengths.length > 0 || other.shortLengths.length > 0) {
    for (let unit = 1; unit <= end; unit++) most += Math.max(a[unit] - a[unit - 1], b[unit] - b[unit - 1]);
    return most;
  }
  for (let unit = 0; unit <= end; unit++) most = Math.max(most, a[unit] + b[end] - b[unit], b[unit] + a[end] - a[unit]);
  return most;
}

/** Prices that ask for many planks which serve both parts; undefined where none are needed. */
function pricesFor(solver: Solver, parts: readonly BoundRuns[], planks: number): Float64Array[] | undefined {
  const [{ plankLength, kerf, play }] = parts;
  const span = plankLength + kerf + play;
  const program = emptyProgram();
  const wholes = parts.flatMap(({ runs }) => runs).reduce((sum, { quotient }) => sum + quotient, 0);
  addRow(program, { all: 1 }, '<=', planks - wholes);
  const depths = parts.map((part, i) => layPart(program, part, 'ab'[i], span));
  shareUnits(
    program,
    span,
    parts.some(({ shortLengths }) => shortLengths.length > 0),
  );
  // What the first part takes of a unit, and the second part of what is left: what one more would cost is its price.
  const first = program.rows.length;
  for (let unit = 1; unit <= span; unit++) {
    addRow(program, { [depths[0](unit)]: 1, [`given${unit}`]: -1 }, '<=', 0);
    addRow(program, { [depths[1](unit)]: 1, [`given${unit}`]: 1, all: -1 }, '<=', 0);
  }
  const { Status, Rows } = solver.solve(textOf(program, 'both'), { output_flag: false });
  if (Status !== 'Optimal') return undefined;
  const priceOf = (row: number): number => {
    const found = Rows[row];
    return found && 'Dual' in found ? Math.abs(found.Dual) : 0;
  };
  return [0, 1].map((part) =>
    inWholeNumbers(Float64Array.from({ length: span }, (_, i) => priceOf(first + 2 * i + part))),
  );
}

/** Prices in whole numbers, `PLANK` together, with none for unit 0; those of no worth are left to one unit. */
function inWholeNumbers(prices: Float64Array): Float64Array {
  const sum = prices.reduce((a, b) => a + b, 0);
  const whole = Float64Array.of(0, ...prices.map((price) => (sum > 0 ? Math.floor((price / sum) * PLANK) : 0)));
  whole[1] += PLANK - whole.reduce((a, b) => a + b, 0);
  return whole;
}

/** How many planks give a unit to the first part, where `both` of all planks may serve either. */
function shareUnits(program: Program, span: number, hasWalls: boolean): void {
  const units = Array.from({ length: span }, (_, i) => i + 1);
  if (hasWalls) {
    for (const unit of units) {
      addRow(program, { [`given${unit}`]: 1, one: -1 }, '>=', 0);
      addRow(program, { [`given${unit}`]: 1, one: -1, both: -1 }, '<=', 0);
    }
    return;
  }
  // Without wall-to-wall pieces a plank goes over from one part to the other once.
  for (const unit of units.slice(1))
    addRow(program, { [`given${unit - 1}`]: 1, [`given${unit}`]: -1, [`over${unit}`]: -1, [`back${unit}`]: 1 }, '=', 0);
  const over = units.slice(1).flatMap((unit) => [`over${unit}`, `back${unit}`]);
  addRow(program, { both: 1, ...each(over, -1) }, '=', 0);
}

/** Writes the ways to lay the runs of a part, whatever their stagger; answers the name of how many lie at a unit. */
function layPart(program: Program, part: BoundRuns, name: string, span: number): (unit: number) => string {
  const changes: Record<string, number>[] = Array.from({ length: span + 2 }, () => ({}));
  const depth = (unit: number): string => `${name}${unit}`;
  const cover = (way: string, from: number, to: number): void => {
    changes[from][way] = (changes[from][way] ?? 0) + 1;
    changes[to + 1][way] = (changes[to + 1][way] ?? 0) - 1;
  };
  kindsOf(part).forEach(({ count, waysOf }, kind) => {
    const ways = waysOf.map((stretches, i) => {
      const way = `${name}k${kind}_${i}`;
      for (const [from, to] of stretches) cover(way, from, to);
      return way;
    });
    addRow(program, each(ways, 1), '=', count);
  });
  for (let unit = 1; unit <= span; unit++) {
    const before: Terms = unit === 1 ? {} : { [depth(unit - 1)]: 1 };
    addRow(program, { ...changes[unit], ...before, [depth(unit)]: -1 }, '=', 0);
  }
  return depth;
}

type Stretch = readonly [from: number, to: number];

/** Runs alike, and the stretches that each way to lay one of them covers. */
function kindsOf({ plankLength: L, kerf, play, runs, shortLengths }: BoundRuns) {
  const counts = new Map<string, { rest: number; minPiece: number; count: number }>();
  for (const { rest, minPiece } of runs) {
    const known = counts.get(`${rest} ${minPiece}`);
    counts.set(`${rest} ${minPiece}`, { rest, minPiece, count: (known?.count ?? 0) + 1 });
  }
  const span = L + kerf + play;
  const long = [...counts.values()].map(({ rest, minPiece, count }) => {
    const waysOf: Stretch[][] = [];
    for (let s = minPiece; s <= rest - minPiece; s++)
      waysOf.push([
        [1, s + kerf],
        [L - rest + s + 1, span],
      ]);
    for (let s = Math.max(minPiece, rest); s <= Math.min(L, L + rest - minPiece); s++)
      waysOf.push([[s - rest + 1, s + kerf]]);
    return { count, waysOf };
  });
  const short = shortLengths.map(({ length, count }) => {
    const units = length + kerf + play;
    const waysOf = Array.from({ length: span - units + 1 }, (_, start): Stretch[] => [[start + 1, start + units]]);
    return { count, waysOf };
  });
  return [...long, ...short];
}
