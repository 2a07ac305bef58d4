/**
 * The exact model of a cutting job as a mixed integer linear program, in the LP format that general solvers read: what
 * `planCuts` is compared with.
 *
 * Modelled: handed ends (one first piece and one last piece a plank at most), the minimum piece, the kerf, the stagger
 * of every pair of joints in neighbouring rows of a room, wall-to-wall pieces from anywhere in a plank and any number
 * of them, planks of several rooms, and first-row strips serving in the last row. Left out: rip pairs whose rows hold
 * a wall-to-wall run, or that share a row with another pair; `outsideModel` names such jobs, and they are skipped.
 *
 * A run longer than a plank is `wholes` planks of length L and a rest r, 0 < r <= L. Its cut pieces are s (first) and
 * e (last): s + e = r + L b, where b = 1 when one more plank is cut up instead of laid whole. First pieces open planks;
 * pair = 1 when the last piece of one run comes from the plank of the first piece of another, or of its own. So
 *
 *   planks = sum of (wholes - b + 2) - sum of pair + planks opened for wall-to-wall pieces - strips served.
 *
 * Lengths stay continuous: with the pairing and the sides of the stagger fixed, what is left are difference constraints
 * with whole numbers, whose corners are whole.
 */
import type { CutJob } from '../../src/cutting/job';
import { canPair, fitsBeside, type LongRun, leastPiece, type ModelRuns, modelRuns, pairName } from './exactRuns';
import { addStrips, stripNames } from './exactStrips';
import { addRow, each, emptyProgram, type Program, type Terms, textOf } from './linearProgram';

/** Why a job is outside the model; undefined when it is inside. */
export function outsideModel(job: CutJob): string | undefined {
  const rows = job.ripPairs.flat();
  if (new Set(rows).size !== rows.length) return 'a row belongs to two rip pairs';
  const shortRuns = rows.some((row) => job.rows[row].runs.some((run) => run.length <= job.plankLength));
  return shortRuns ? 'a rip pair has a wall-to-wall run' : undefined;
}

export interface ModelOptions {
  /** A lower bound known already, handed over as a cut; 0 for none. */
  readonly atLeast?: number;
  /** Choices held fast, by variable. Lengths are then asked to be whole, which costs nothing more. */
  readonly held?: Readonly<Record<string, number>>;
}

/**
 * LP text of the model. Variables, all numbered from 0: `planks`; `first3`, `last3` and `cutUp3` (b) of long run 3;
 * `pair2_3`, last piece of run 2 with first piece of run 3; `withFirst4_3`, `withLast4_3`, `withShort4_5`: short run 4
 * comes from the plank of first piece 3, of last piece 3, of short run 5 (`withShort4_4`: it opens a plank);
 * `above2_3_1`, side of a stagger zone; `strip...`, see `exactStrips.ts`.
 */
export function exactModel(job: CutJob, options: ModelOptions = {}): string {
  const runs = modelRuns(job);
  const program = emptyProgram();
  runs.long.forEach((run, i) => {
    addRun(program, job, run, i);
  });
  if (canPair(job)) addPairing(program, job, runs);
  addShortRuns(program, job, runs);
  if (job.minStagger > 0) addStagger(program, job, runs);
  addStrips(program, job, runs);
  addCount(program, job, runs);
  addRow(program, { planks: 1 }, '>=', options.atLeast ?? 0);
  program.whole.push('planks');
  for (const [name, value] of Object.entries(options.held ?? {})) addRow(program, { [name]: 1 }, '=', value);
  if (options.held) program.whole.push(...runs.long.map((_, i) => `first${i}`));
  return textOf(program, 'planks');
}

function addRun(program: Program, job: CutJob, run: LongRun, i: number): void {
  const { plankLength } = job;
  const least = leastPiece(job);
  program.bounds.push(`${least} <= first${i} <= ${plankLength}`, `${least} <= last${i} <= ${plankLength}`);
  program.choices.push(`cutUp${i}`);
  addRow(program, { [`first${i}`]: 1, [`last${i}`]: 1, [`cutUp${i}`]: -plankLength }, '=', run.rest);
}

/** Which last piece shares a plank with which first piece: each with one at most, lengths and kerf within the plank. */
function addPairing(program: Program, job: CutJob, { long, short }: ModelRuns): void {
  const { plankLength, kerf } = job;
  const slack = plankLength + kerf;
  const leastTaken = kerf + leastPiece(job);
  for (let i = 0; i < long.length; i++) {
    for (let j = 0; j < long.length; j++) {
      const pair = pairName(i, j);
      program.choices.push(pair);
      const beside = besideTerms(job, short, (p) => `withFirst${p}_${j}`);
      const lengths = { [`last${i}`]: 1, [`first${j}`]: 1, ...beside };
      addRow(program, { ...lengths, [pair]: slack }, '<=', plankLength - kerf + slack);
    }
    // A run's own last piece fits beside its first only when no further plank is cut up.
    addRow(program, { [pairName(i, i)]: 1, [`cutUp${i}`]: 1 }, '<=', 1);
    const asLast = long.map((_, j) => pairName(i, j));
    const asFirst = long.map((_, j) => pairName(j, i));
    addRow(program, each(asLast, 1), '<=', 1);
    addRow(program, each(asFirst, 1), '<=', 1);
    // Not needed, but they bring the fractional model nearer: a shared plank leaves room for the other's minimum.
    addRow(program, { [`last${i}`]: 1, ...each(asLast, leastTaken) }, '<=', plankLength);
    addRow(program, { [`first${i}`]: 1, ...each(asFirst, leastTaken) }, '<=', plankLength);
  }
}

/** What the wall-to-wall pieces that could join an end piece take of its plank, a kerf each included. */
function besideTerms(job: CutJob, short: ModelRuns['short'], nameOf: (p: number) => string): Terms {
  const fitting = short.flatMap(({ length }, p) => (fitsBeside(job, length) ? [[nameOf(p), length + job.kerf]] : []));
  return Object.fromEntries(fitting);
}

/** Every wall-to-wall piece comes from the plank of a first piece, of an unpaired last piece, or of a short run. */
function addShortRuns(program: Program, job: CutJob, { long, short }: ModelRuns): void {
  const places: string[][] = short.map(() => []);
  long.forEach((_, i) => {
    const pairs = canPair(job) ? long.map((_, j) => pairName(i, j)) : [];
    short.forEach(({ length }, p) => {
      if (!fitsBeside(job, length)) return;
      places[p].push(`withFirst${p}_${i}`, `withLast${p}_${i}`);
      addRow(program, { [`withLast${p}_${i}`]: 1, ...each(pairs, 1) }, '<=', 1);
    });
    const besideFirst = besideTerms(job, short, (p) => `withFirst${p}_${i}`);
    const besideLast = besideTerms(job, short, (p) => `withLast${p}_${i}`);
    addRow(program, { [`first${i}`]: 1, ...besideFirst }, '<=', job.plankLength);
    addRow(program, { [`last${i}`]: 1, ...besideLast }, '<=', job.plankLength);
  });
  short.forEach((_, opener) => {
    for (const p of addShortPlank(program, job, { short, opener })) places[p].push(`withShort${p}_${opener}`);
  });
  for (const names of places) {
    program.choices.push(...names);
    addRow(program, each(names, 1), '=', 1);
  }
}

/** The plank that a wall-to-wall piece may open for itself and shorter ones; answers the pieces that may lie on it. */
function addShortPlank(
  program: Program,
  job: CutJob,
  { short, opener }: { readonly short: ModelRuns['short']; readonly opener: number },
): number[] {
  const room = job.plankLength - short[opener].length;
  const joining = short.map((_, p) => p).filter((p) => p > opener && short[p].length + job.kerf <= room);
  const lengths = joining.map((p) => [`withShort${p}_${opener}`, short[p].length + job.kerf]);
  addRow(program, { ...Object.fromEntries(lengths), [`withShort${opener}_${opener}`]: -room }, '<=', 0);
  return [opener, ...joining];
}

/**
 * Joints of run i stand at x + s + tL, t = 0 ... wholes - b. Two runs keep the stagger when the difference of their
 * first joints is not within it of uL, for every u that a pair of joints brings about: it lies below or above each of
 * those zones.
 */
function addStagger(program: Program, job: CutJob, { long }: ModelRuns): void {
  long.forEach((upper, j) => {
    long.forEach((lower, i) => {
      const neighbours = lower.rowIndex + 1 === upper.rowIndex;
      if (neighbours && job.rows[lower.rowIndex].room === job.rows[upper.rowIndex].room) {
        addZones(program, job, { run: lower, index: i }, { run: upper, index: j });
      }
    });
  });
}

interface NumberedRun {
  readonly run: LongRun;
  readonly index: number;
}

function addZones(program: Program, job: CutJob, lower: NumberedRun, upper: NumberedRun): void {
  // The difference of the two first pieces lies within this either way.
  const most = job.plankLength - leastPiece(job);
  let before: string | undefined;
  for (let u = -lower.run.wholes; u <= upper.run.wholes; u++) {
    const middle = u * job.plankLength - (lower.run.x - upper.run.x);
    const start = middle - job.minStagger;
    const end = middle + job.minStagger;
    if (start >= most || end <= -most) continue;
    const above = `above${lower.index}_${upper.index}_${u + lower.run.wholes}`;
    program.choices.push(above);
    const difference = { [`first${lower.index}`]: 1, [`first${upper.index}`]: -1 };
    // The outermost joint is there only while the run's last whole plank is laid uncut.
    const lowerGone = u === -lower.run.wholes ? [`cutUp${lower.index}`] : [];
    const gone = u === upper.run.wholes ? [...lowerGone, `cutUp${upper.index}`] : lowerGone;
    addRow(program, { ...difference, [above]: -end - most, ...each(gone, end + most) }, '>=', -most);
    addRow(program, { ...difference, [above]: start - most, ...each(gone, start - most) }, '<=', start);
    if (before) addRow(program, { [above]: 1, [before]: -1 }, '<=', 0);
    before = above;
  }
}

/** Counts the planks, as at the top of this file. */
function addCount(program: Program, job: CutJob, { long, short }: ModelRuns): void {
  const most = long.reduce((sum, run) => sum + run.wholes + 2, 0);
  const cutUp = long.map((_, i) => `cutUp${i}`);
  const pairs = canPair(job) ? long.flatMap((_, i) => long.map((_, j) => pairName(i, j))) : [];
  const opened = short.map((_, p) => `withShort${p}_${p}`);
  const strips = stripNames(job, long);
  const saved = [...cutUp, ...pairs, ...strips];
  addRow(program, { planks: 1, ...each(saved, 1), ...each(opened, -1) }, '=', most);
  // Not needed, but it brings the fractional model near the truth: pieces with a kerf each come from planks with one
  // kerf more. A strip saves at most that much length too.
  const lengths = job.rows.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.length, 0);
  const given = each(['planks', ...strips], job.plankLength + job.kerf);
  addRow(program, { ...given, ...each(cutUp, job.kerf) }, '>=', lengths + job.kerf * (most + short.length));
}
