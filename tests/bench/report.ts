/** The tables of the bench. */

import { benchTable, type Cell } from './benchTable';
import type { CaseResult } from './compareCases';
import type { Waits } from './measure';
import { medianOf, sumOf } from './sums';

/** A line a case. */
export function caseTable(results: readonly CaseResult[]): string[] {
  const columns = [
    { heading: 'job' },
    { heading: 'category' },
    { heading: 'rows' },
    { heading: 'planks' },
    { heading: 'over best' },
    { heading: 'over bound' },
    { heading: 'least ms', decimals: 2 },
    { heading: 'median ms', decimals: 2 },
    { heading: 'count ms', decimals: 2 },
    { heading: 'steps' },
    { heading: 'aligned' },
    { heading: 'cuts' },
    { heading: 'waiting' },
    { heading: 'mean wait', decimals: 1 },
    { heading: 'HiGHS' },
    { heading: 'its ms' },
    { heading: 'carry' },
    { heading: 'its waiting' },
    { heading: 'keep' },
    { heading: 'area+10%' },
  ];
  return benchTable(columns, results.map(caseRow));
}

function caseRow(result: CaseResult): Cell[] {
  const { id, category, job, ours, exact } = result;
  return [
    id,
    category,
    job.rows.length,
    ours.plan.plankCount,
    overBest(result),
    ours.plan.plankCount - ours.plan.bound,
    ours.least,
    ours.median,
    ours.countMedian,
    ours.plan.steps,
    ours.alignedJoints,
    ours.cuts,
    ours.waits.most,
    ours.waits.mean,
    exact ? `${exact.planks ?? 'none'}${exact.status === 'proved fewest' ? '' : ' (not proved)'}` : 'not asked',
    exact?.ms ?? '-',
    result.carry,
    result.carryWaits.most,
    result.keep,
    result.areaAndTen,
  ];
}

/** A line a category, and one for all. */
export function categoryTable(results: readonly CaseResult[]): string[] {
  const categories = [...new Set(results.map(({ category }) => category))];
  const rows = categories.map((category) =>
    categoryRow(
      category,
      results.filter((r) => r.category === category),
    ),
  );
  const columns = [
    { heading: 'category' },
    { heading: 'jobs' },
    { heading: 'at best known' },
    { heading: 'worst over' },
    { heading: 'proved %' },
    { heading: 'median ms', decimals: 2 },
    { heading: 'slowest ms', decimals: 1 },
    { heading: 'none aligned %' },
    { heading: 'planks' },
    { heading: 'cuts' },
    { heading: 'carry %', decimals: 1 },
    { heading: 'keep %', decimals: 1 },
    { heading: 'area+10% %', decimals: 1 },
    { heading: 'area+10% short' },
  ];
  return benchTable(columns, [...rows, categoryRow('all', results)]);
}

function categoryRow(name: string, results: readonly CaseResult[]): Cell[] {
  const share = (isSo: (result: CaseResult) => boolean) => (100 * results.filter(isSo).length) / results.length;
  const times = results.map(({ ours }) => ours.median);
  const known = results.filter(({ best }) => best !== undefined);
  return [
    name,
    results.length,
    known.length === 0 ? '-' : known.filter((result) => Number(overBest(result)) <= 0).length,
    known.length === 0 ? '-' : Math.max(...known.map((result) => Number(overBest(result)))),
    share(({ ours }) => ours.plan.stop === 'proved fewest'),
    medianOf(times),
    Math.max(...times),
    share(({ ours }) => ours.alignedJoints === 0),
    sumOf(results.map(({ ours }) => ours.plan.plankCount)),
    sumOf(results.map(({ ours }) => ours.cuts)),
    percentMore(results, ({ carry }) => carry),
    percentMore(results, ({ keep }) => keep),
    percentMore(results, ({ areaAndTen }) => areaAndTen),
    results.filter(({ areaAndTen, ours }) => areaAndTen < ours.plan.bound).length,
  ];
}

/** Rows up to which a floor counts as an ordinary one. */
const ORDINARY_ROWS = 60;

/** Sentences on what lies about between rows, beside the practice of carrying the last offcut. */
export function waitingLines(results: readonly CaseResult[]): string[] {
  const ordinary = results.filter(({ job }) => job.rows.length <= ORDINARY_ROWS);
  const told = (name: string, waits: readonly Waits[], planks: number) =>
    `${name}: at most ${medianOf(waits.map(({ most }) => most))} (median), ${Math.max(...waits.map(({ most }) => most))} (worst);` +
    ` mean wait of the median job ${medianOf(waits.map(({ mean }) => mean)).toFixed(1)} rows; ${planks} planks.`;
  const legal = ordinary.filter(({ carry }) => Number.isFinite(carry));
  return [
    `${ordinary.length} jobs of up to ${ORDINARY_ROWS} rows.`,
    told(
      'Ours',
      ordinary.map(({ ours }) => ours.waits),
      sumOf(ordinary.map(({ ours }) => ours.plan.plankCount)),
    ),
    told(
      `Carry the last offcut, on the ${legal.length} it can lay`,
      legal.map(({ carryWaits }) => carryWaits),
      sumOf(legal.map(({ carry }) => carry)),
    ),
  ];
}

function overBest({ ours, best }: CaseResult): Cell {
  return best === undefined ? '-' : ours.plan.plankCount - best;
}

/** How many per cent more planks a practice takes in all. */
function percentMore(results: readonly CaseResult[], planksOf: (result: CaseResult) => number): number {
  const comparable = results.filter((result) => Number.isFinite(planksOf(result)));
  const ours = sumOf(comparable.map((result) => result.ours.plan.plankCount));
  return 100 * (sumOf(comparable.map(planksOf)) / ours - 1);
}

/** Sentences on the general solver: what it proved, where it agrees, and how the times compare at equal counts. */
export function solverLines(results: readonly CaseResult[], seconds: number): string[] {
  const asked = results.filter(({ exact }) => exact !== undefined);
  if (asked.length === 0) return ['The general solver was not asked.'];
  const proved = asked.filter(({ exact }) => exact?.status === 'proved fewest');
  const equal = proved.filter(({ exact, ours }) => exact?.planks === ours.plan.plankCount);
  const differing = proved.filter((result) => !equal.includes(result)).map(({ id }) => id);
  const better = asked.filter(({ exact, ours }) => (exact?.planks ?? Infinity) < ours.plan.plankCount);
  // The solver only counts, so it is held against our count: the second goals are ours alone.
  const ours = medianOf(equal.map((result) => result.ours.countMedian));
  const theirs = medianOf(equal.map(({ exact }) => exact?.ms ?? Number.NaN));
  const ratios = equal.map((result) => (result.exact?.ms ?? Number.NaN) / result.ours.countMedian);
  return [
    `HiGHS, ${seconds} s a job, our bound handed to it as a cut: ${proved.length} of ${asked.length} proved.`,
    `Equal counts on ${equal.length} of those${differing.length > 0 ? `; not on ${differing.join(', ')}` : ''}.`,
    `Fewer planks than ours on ${better.length} of ${asked.length}${better.length > 0 ? `: ${better.map(({ id }) => id).join(', ')}` : ''}.`,
    `At equal counts, median ms for the count alone: ours ${ours.toFixed(2)}, HiGHS ${theirs.toFixed(0)}, ratio ${(theirs / ours).toFixed(0)};` +
      ` median of the ratios ${medianOf(ratios).toFixed(0)}.`,
  ];
}
