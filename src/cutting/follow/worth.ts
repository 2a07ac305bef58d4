/**
 * What planks, pieces and offcuts are worth while a floor is laid row by row: the prices of the bound, which know which
 * lengths are hard to come by, or every unit alike where the bound needed none. What may be wasted in so many planks is
 * known by them beforehand.
 */
import type { Guide } from '../bound/bound';
import { isLaidItself, type PreparedJob, type PreparedRun } from '../runs/prepared';

export interface Worth {
  /** A whole plank. */
  readonly plank: number;
  /** The first so many units of the line of `boundRuns.ts`. */
  readonly upTo: Float64Array;
  /** What each run costs with those that keep away from it, by first piece; nothing for a piece from wall to wall. */
  readonly totals: readonly (Float64Array | undefined)[];
  /** What a piece from wall to wall costs at the least, by the index of its run. */
  readonly walls: Float64Array;
  /** What may be wasted in so many planks. */
  readonly spareOf: (planks: number) => number;
}

/** @param guide prices that were needed to show the bound, if any were */
export function worthOf(prepared: PreparedJob, guide: Guide | undefined): Worth {
  return (guide && worthByGuide(prepared, guide)) ?? worthByLength(prepared);
}

/** Undefined where the bound leaves out a row that is laid. */
function worthByGuide(prepared: PreparedJob, { runs, pricing, spareOf }: Guide): Worth | undefined {
  const totals: (Float64Array | undefined)[] = prepared.runs.map(() => undefined);
  runs.runs.forEach((run, i) => {
    totals[prepared.rowRuns[run.rowIndex][run.runIndex]] = pricing.totalsOf(i);
  });
  const isPriced = (run: PreparedRun): boolean =>
    !isLaidItself(run) || (run.isWallToWall ? !runs.rowsLeftOut.has(run.rowIndex) : totals[run.index] !== undefined);
  if (!prepared.runs.every(isPriced)) return undefined;
  const { plank, priceTo } = pricing;
  return { plank, upTo: priceTo, totals, walls: wallsOf(prepared, priceTo), spareOf };
}

function worthByLength(prepared: PreparedJob): Worth {
  const { kerf, play = 0 } = prepared.job;
  const plank = prepared.plankLength + kerf + play;
  const upTo = Float64Array.from({ length: plank + 1 }, (_, units) => units);
  return worthAlone(prepared, plank, upTo);
}

/** The same prices where no run is asked what those that keep away from it cost. */
export function worthAlone(prepared: PreparedJob, plank: number, upTo: Float64Array): Worth {
  const walls = wallsOf(prepared, upTo);
  const known = new Map<string, { readonly costs: Float64Array; readonly least: number }>();
  let least = 0;
  const totals = prepared.runs.map((run) => {
    if (!isLaidItself(run)) return undefined;
    least += run.quotient * plank + walls[run.index];
    if (run.isWallToWall) return undefined;
    const key = `${run.rest} ${run.quotient === 0}`;
    const kind = known.get(key) ?? costsOf(prepared, run, plank, upTo);
    known.set(key, kind);
    least += kind.least;
    return kind.costs;
  });
  return { plank, upTo, totals, walls, spareOf: (planks) => planks * plank - least };
}

/** What first and last piece of a run cost, a plank less where they are of two planks. */
function costsOf(
  { plankLength: L, job }: PreparedJob,
  { rest, low, high }: PreparedRun,
  plank: number,
  upTo: Float64Array,
) {
  const { kerf } = job;
  const costs = new Float64Array(L + 1).fill(Number.POSITIVE_INFINITY);
  for (let first = low.from; first <= low.to; first++)
    costs[first] = plank + upTo[first + kerf] - upTo[L - rest + first];
  for (let first = high.from; first <= high.to; first++) costs[first] = upTo[first + kerf] - upTo[first - rest];
  return { costs, least: costs.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) };
}

function wallsOf({ job, runs }: PreparedJob, upTo: Float64Array): Float64Array {
  const span = upTo.length - 1;
  const known = new Map<number, number>();
  return Float64Array.from(runs, ({ isWallToWall, length }) => {
    if (!isWallToWall) return 0;
    const units = length + job.kerf + (job.play ?? 0);
    let least = known.get(length) ?? upTo[span];
    if (!known.has(length))
      for (let end = units; end <= span; end++) least = Math.min(least, upTo[end] - upTo[end - units]);
    known.set(length, least);
    return least;
  });
}
