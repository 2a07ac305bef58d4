/** FRONT DOOR of the planner: the fewest planks a floor can be laid with, and which pieces share them. */
import { addArc, emptyLoads, type Loads } from './arcs';
import type { CutJob, CutPlan } from './job';
import { brokenRules, pairPieces } from './pairing';
import { type PreparedJob, type PreparedRun, prepareJob } from './prepared';
import { markForbidden } from './stagger';

const SWEEPS = 6;

/**
 * Plans the cuts of a floor.
 *
 * @param options `effort` multiplies the limit of steps; 1 where it is missing
 * @returns a legal plan; where no plan is legal, the nearest one, with the rules it breaks
 * @throws RangeError if a number of the job is not whole or a run is not longer than 0
 */
export function planCuts(job: CutJob, _options: { effort?: number } = {}): CutPlan {
  const prepared = prepareJob(job);
  const { at, steps } = levelled(prepared);
  const { rows, plankCount } = pairPieces(prepared, at);
  const bound = lengthBound(job);
  return {
    rows,
    plankCount,
    bound,
    stop: bound === plankCount ? 'proved fewest' : 'step limit',
    steps,
    broken: brokenRules(job, rows),
  };
}

/** Only until the real bound stands. */
function lengthBound(job: CutJob): number {
  const strips = new Set(job.ripPairs.map(([, last]) => last));
  const rows = job.rows.filter((_, i) => !strips.has(i));
  return Math.ceil(rows.flatMap((row) => row.runs).reduce((sum, run) => sum + run.length, 0) / job.plankLength);
}

/** Lays the runs one by one where the load is least, then again and again with all others in place. */
function levelled(prepared: PreparedJob): { at: Int32Array; steps: number } {
  const at = new Int32Array(prepared.runs.length);
  const loads = emptyLoads(prepared);
  let steps = 0;
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (const run of prepared.runs) {
      if (at[run.index] > 0 && run.stripOf < 0) addArc(loads, run, at[run.index], prepared.kerf, -1);
      at[run.index] = bestPlace(prepared, loads, run, at);
      if (run.stripOf < 0) addArc(loads, run, at[run.index], prepared.kerf, 1);
      steps += prepared.plankLength;
    }
  }
  return { at, steps };
}

function bestPlace(prepared: PreparedJob, loads: Loads, run: PreparedRun, at: Int32Array): number {
  const L = prepared.plankLength;
  const sums = new Float64Array(L + 1);
  for (let a = 1; a <= L; a++) sums[a] = sums[a - 1] + loads.depth[a];
  const marks = new Int32Array(L + 2);
  for (const other of prepared.neighbours[run.index]) {
    if (at[other] > 0) markForbidden(marks, run, prepared.runs[other], at[other], prepared);
  }
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  let forbidden = 0;
  const reach = run.rest + prepared.kerf;
  for (let s = 1; s <= L; s++) {
    forbidden += marks[s];
    if (!((s >= run.lowFrom && s <= run.lowTo) || (s >= run.highFrom && s <= run.highTo))) continue;
    const own =
      s >= run.rest
        ? sums[s] - sums[Math.max(0, s - reach)]
        : sums[s] + sums[L] - sums[Math.max(0, Math.min(L, s + L - reach))];
    const tied = run.stripOf >= 0 && s !== at[run.stripOf] ? 1e6 : 0;
    const cost = forbidden * 1e9 + own + tied;
    if (cost < least) {
      least = cost;
      best = s;
    }
  }
  return best;
}
