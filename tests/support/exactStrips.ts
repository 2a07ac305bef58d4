/**
 * The part of the exact model that lets strips ripped from the first row serve in the last.
 *
 * A piece of the last row may be the strip of a first-row piece that keeps the same end and is at least as long, or of
 * a whole plank; each first-row piece has one strip. `strip_first4_2`: the first piece of run 4 is the strip of the
 * first piece of run 2; `strip_first4`, of a whole plank; `stripsOfWholes3` counts the whole strips of pair 3;
 * `whole_first2`: the first piece of run 2 is a whole plank itself.
 */
import type { CutJob } from '../../src/cutting/job';
import { canPair, fitsBeside, type LongRun, leastPiece, type ModelRuns, modelRuns, pairName } from './exactRuns';
import { addRow, each, type Program } from './linearProgram';

/** A rip pair wide enough to share planks: its number, and its long runs in the first and in the last row. */
export interface StripPair {
  readonly pair: number;
  readonly givers: readonly number[];
  readonly takers: readonly number[];
}

/** The two ends of a run that are cut. */
export const ENDS = ['first', 'last'] as const;

/** Rip pairs whose two widths and a kerf fit in a plank. */
export function stripPairs(job: CutJob, long: ModelRuns['long']): StripPair[] {
  const runsOf = (row: number) => long.map((_, i) => i).filter((i) => long[i].rowIndex === row);
  return job.ripPairs.flatMap(([first, last], pair) => {
    const fits = job.rows[first].width + job.rows[last].width + job.kerf <= job.plankWidth;
    return fits ? [{ pair, givers: runsOf(first), takers: runsOf(last) }] : [];
  });
}

/** Names of all variables that each save a plank by a strip. */
export function stripNames(job: CutJob, long: ModelRuns['long']): string[] {
  return stripPairs(job, long).flatMap(({ pair, givers, takers }) => [
    `stripsOfWholes${pair}`,
    ...ENDS.flatMap((end) => takers.flatMap((taker) => servedNames(end, taker, givers))),
  ]);
}

/** Adds the strips of every rip pair. */
export function addStrips(program: Program, job: CutJob, { long }: ModelRuns): void {
  for (const strips of stripPairs(job, long)) {
    const { pair, givers, takers } = strips;
    const wholes = `stripsOfWholes${pair}`;
    program.whole.push(wholes);
    const cutUp = (runs: readonly number[]) =>
      each(
        runs.map((i) => `cutUp${i}`),
        1,
      );
    addRow(program, { [wholes]: 1, ...cutUp(takers) }, '<=', laidWhole(long, takers));
    const fromWholes = ENDS.flatMap((end) => takers.map((taker) => `strip_${end}${taker}`));
    const wholeEnds = ENDS.flatMap((end) => givers.map((giver) => `whole_${end}${giver}`));
    const asked = { [wholes]: 1, ...each(fromWholes, 1), ...each(wholeEnds, -1) };
    addRow(program, { ...asked, ...cutUp(givers) }, '<=', laidWhole(long, givers));
    for (const end of ENDS) {
      addGivers(program, job, end, strips);
      addTakers(program, job, end, strips);
    }
  }
}

function laidWhole(long: readonly LongRun[], runs: readonly number[]): number {
  return runs.reduce((sum, i) => sum + long[i].wholes, 0);
}

type End = (typeof ENDS)[number];

function servedNames(end: End, taker: number, givers: readonly number[]): string[] {
  return [`strip_${end}${taker}`, ...givers.map((giver) => `strip_${end}${taker}_${giver}`)];
}

/** An end piece gives one strip, as a whole plank or as itself. */
function addGivers(program: Program, job: CutJob, end: End, { givers, takers }: StripPair): void {
  for (const giver of givers) {
    const whole = `whole_${end}${giver}`;
    program.choices.push(whole);
    addRow(program, { [`${end}${giver}`]: 1, [whole]: -job.plankLength }, '>=', 0);
    const given = takers.map((taker) => `strip_${end}${taker}_${giver}`);
    addRow(program, each([whole, ...given], 1), '<=', 1);
  }
}

/** An end piece served by a strip is no longer than its giver, and opens no plank for anything else. */
function addTakers(program: Program, job: CutJob, end: End, { givers, takers }: StripPair): void {
  const { long, short } = modelRuns(job);
  const slack = job.plankLength - leastPiece(job);
  for (const taker of takers) {
    const served = servedNames(end, taker, givers);
    program.choices.push(...served);
    for (const giver of givers) {
      const lengths = { [`${end}${taker}`]: 1, [`${end}${giver}`]: -1 };
      addRow(program, { ...lengths, [`strip_${end}${taker}_${giver}`]: slack }, '<=', slack);
    }
    const mates = long.map((_, j) => (end === 'last' ? pairName(taker, j) : pairName(j, taker)));
    addRow(program, each([...served, ...(canPair(job) ? mates : [])], 1), '<=', 1);
    short.forEach(({ length }, p) => {
      const beside = end === 'last' ? `withLast${p}_${taker}` : `withFirst${p}_${taker}`;
      if (fitsBeside(job, length)) addRow(program, each([...served, beside], 1), '<=', 1);
    });
  }
}
