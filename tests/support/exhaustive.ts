/**
 * The truth about tiny jobs: the fewest planks of any legal plan, by trying every plan. Shares no code with the
 * product. For one plank count after another, pieces are placed one by one, in every open plank or a new one, at every
 * whole first piece. What can still matter later (room and ends left in the planks, joints of the row before, strips
 * on offer) is the state; each state is followed up once, with its fewest planks.
 */
import type { CutJob, JobRun } from '../../src/cutting/job';

type End = 'left' | 'right' | 'middle' | 'whole';

/**
 * An open plank as one number: 4 x the length left (the kerf before the next piece not yet taken off), + 2 when its left
 * factory end is gone, + 1 when its right one is.
 */
type OpenPlank = number;

/** What a first-row piece leaves for the last row of rip pair number `pair`. */
interface Strip {
  readonly pair: number;
  readonly end: End;
  readonly length: number;
}

interface State {
  readonly count: number;
  /** Ascending: planks alike are one choice. */
  readonly planks: readonly OpenPlank[];
  readonly strips: readonly Strip[];
  readonly before: readonly number[];
  readonly joints: readonly number[];
}

interface Trial {
  readonly job: CutJob;
  readonly mostPlanks: number;
  /** Open planks and strips that may be kept from one row to the next. */
  readonly mostWaiting: number;
}

interface PlacedRun extends JobRun {
  readonly rowIndex: number;
  /** Length of all runs after this one that no strip can fill, with a kerf for each piece. */
  readonly lengthAfter: number;
}

/** The fewest planks of any legal plan of `job`; null when there is none. For planks up to a dozen units long. */
export function fewestByTrial(job: CutJob): number | null {
  const runs = placedRuns(job);
  const pieces = runs.reduce((sum, run) => sum + Math.ceil(run.length / job.plankLength) + 1, 0);
  for (let mostPlanks = 0; mostPlanks <= pieces; mostPlanks += 1) {
    if (canBeLaid({ job, mostPlanks, mostWaiting: Number.POSITIVE_INFINITY }, runs)) return mostPlanks;
  }
  return null;
}

/** The fewest offcuts and strips that wait at once in any legal plan of `job` with so many planks; null when there is none. */
export function fewestWaitingByTrial(job: CutJob, mostPlanks: number): number | null {
  const runs = placedRuns(job);
  for (let mostWaiting = 0; mostWaiting <= mostPlanks + 2 * runs.length; mostWaiting += 1) {
    if (canBeLaid({ job, mostPlanks, mostWaiting }, runs)) return mostWaiting;
  }
  return null;
}

function placedRuns(job: CutJob): PlacedRun[] {
  const runs = job.rows.flatMap((row, rowIndex) => row.runs.map((run) => ({ ...run, rowIndex })));
  const needsPlank = (rowIndex: number): boolean => !job.ripPairs.some(([, last]) => last === rowIndex);
  return runs.map((run, index) => {
    const after = runs.slice(index + 1).filter((other) => needsPlank(other.rowIndex));
    const kerfs = after.reduce((sum, other) => sum + Math.ceil(other.length / job.plankLength) * job.kerf, 0);
    return { ...run, lengthAfter: kerfs + after.reduce((sum, other) => sum + other.length, 0) };
  });
}

/** Depth first, fewest planks first; a state once found wanting is not followed up again. */
function canBeLaid(trial: Trial, runs: readonly PlacedRun[]): boolean {
  const tried = new Set<string>();
  const layFrom = (index: number, state: State): boolean => {
    const run = runs[index];
    if (!run) return true;
    const key = `${index}:${state.count}:${keyOf(state)}`;
    if (tried.has(key)) return false;
    tried.add(key);
    const rowBefore = runs[index - 1]?.rowIndex ?? -1;
    const kept = rowBefore === run.rowIndex ? [state] : waysToKeep(state, trial.mostWaiting);
    const next = kept.flatMap((each) => layRun(trial, run, nextRow(trial.job, rowBefore, run.rowIndex, each)));
    return next.sort((a, b) => a.count - b.count).some((each) => layFrom(index + 1, each));
  };
  return layFrom(0, { count: 0, planks: [], strips: [], before: [], joints: [] });
}

/** Every way to keep no more than `most` open planks and strips for later rows; what is not used later need not wait. */
function waysToKeep(state: State, most: number): State[] {
  const { planks, strips } = state;
  if (planks.length + strips.length <= most) return [state];
  const ways: State[] = [];
  for (let kept = 0; kept < 2 ** (planks.length + strips.length); kept += 1) {
    const isKept = (index: number): boolean => ((kept >> index) & 1) === 1;
    const next = {
      ...state,
      planks: planks.filter((_, index) => isKept(index)),
      strips: strips.filter((_, index) => isKept(planks.length + index)),
    };
    if (next.planks.length + next.strips.length === most) ways.push(next);
  }
  return distinct(ways);
}

/** The joints of the row before, as far as the next run's row follows it in the same room. */
function nextRow(job: CutJob, rowBefore: number, rowIndex: number, state: State): State {
  if (rowBefore === rowIndex) return state;
  const isNeighbour = rowBefore === rowIndex - 1 && job.rows[rowBefore]?.room === job.rows[rowIndex]?.room;
  return { ...state, before: isNeighbour ? state.joints : [], joints: [] };
}

function distinct(states: readonly State[]): State[] {
  const best = new Map<string, State>();
  for (const state of states) {
    const key = keyOf(state);
    const known = best.get(key);
    if (!known || known.count > state.count) best.set(key, state);
  }
  return [...best.values()];
}

function keyOf(state: State): string {
  const strips = state.strips.map((strip) => `${strip.pair}${strip.end}${strip.length}`).sort();
  return `${state.planks}|${strips}|${state.before}|${state.joints}`;
}

function layRun(trial: Trial, run: PlacedRun, state: State): State[] {
  const { plankLength, minPiece, minStagger } = trial.job;
  if (run.length <= plankLength) {
    // The end a wall-to-wall piece keeps is free; it matters only where strips are matched by their ends.
    const ends: readonly End[] = trial.job.ripPairs.length > 0 ? ['middle', 'left', 'right'] : ['middle'];
    return placePiece(trial, run, { length: run.length, ends, endsAtWall: true, lengthAfter: run.lengthAfter }, state);
  }
  const laid: State[] = [];
  for (let first = Math.max(1, minPiece); first <= plankLength; first += 1) {
    const lengths = [first];
    let rest = run.length - first;
    for (; rest > plankLength; rest -= plankLength) lengths.push(plankLength);
    lengths.push(rest);
    if (rest < Math.max(1, minPiece)) continue;
    const joints = lengths.slice(0, -1).map((_, index) => run.x + first + index * plankLength);
    if (joints.some((a) => state.before.some((b) => Math.abs(a - b) < minStagger))) continue;
    laid.push(...layPieces(trial, run, lengths, { ...state, joints: [...state.joints, ...joints] }));
  }
  return laid;
}

function layPieces(trial: Trial, run: PlacedRun, lengths: readonly number[], state: State): State[] {
  const needsPlank = !trial.job.ripPairs.some(([, last]) => last === run.rowIndex);
  let states: State[] = [state];
  lengths.forEach((length, index) => {
    const end: End = index === 0 ? 'right' : 'left';
    const own = needsPlank ? lengths.slice(index + 1).reduce((sum, each) => sum + each + trial.job.kerf, 0) : 0;
    const endsAtWall = index === lengths.length - 1;
    const piece = { length, ends: [end], endsAtWall, lengthAfter: run.lengthAfter + own };
    states = distinct(states.flatMap((each) => placePiece(trial, run, piece, each)));
  });
  return states;
}

interface TriedPiece {
  readonly length: number;
  readonly ends: readonly End[];
  /** A last or wall-to-wall piece: it needs the play, unless it is laid first of its plank. */
  readonly endsAtWall: boolean;
  readonly lengthAfter: number;
}

/** Every way to get a piece that keeps one of its ends: a strip on offer, an open plank, a new one. */
function placePiece(trial: Trial, run: PlacedRun, piece: TriedPiece, state: State): State[] {
  const { job, mostPlanks } = trial;
  const ends: readonly End[] = piece.length === job.plankLength ? ['whole'] : piece.ends;
  const placed = ends.flatMap((end) => [
    ...fromStrips(job, run.rowIndex, { ...piece, end }, state),
    ...fromPlanks(job, { ...piece, end }, state).map((next) => offerStrip(job, run.rowIndex, { ...piece, end }, next)),
  ]);
  return placed.filter((next) => {
    const open = next.planks.reduce((sum, plank) => sum + Math.floor(plank / 4), 0);
    return (
      open + (mostPlanks - next.count) * (job.plankLength + job.kerf) >= piece.lengthAfter && next.count <= mostPlanks
    );
  });
}

function fromStrips(job: CutJob, rowIndex: number, piece: { length: number; end: End }, state: State): State[] {
  return state.strips.flatMap((strip, index) => {
    const isForRow = job.ripPairs[strip.pair]?.[1] === rowIndex;
    const isLongEnough = strip.length >= piece.length && (strip.end === piece.end || strip.end === 'whole');
    return isForRow && isLongEnough ? [{ ...state, strips: state.strips.filter((_, at) => at !== index) }] : [];
  });
}

function fromPlanks(
  job: CutJob,
  { length, end, endsAtWall }: { length: number; end: End; endsAtWall: boolean },
  state: State,
): State[] {
  const fresh: OpenPlank = 4 * (job.plankLength + job.kerf);
  const endBit = end === 'left' ? 2 : end === 'right' ? 1 : 0;
  return [...state.planks, fresh].flatMap((plank, index, planks) => {
    const isLaidFirst = index === state.planks.length;
    const play = endsAtWall && !isLaidFirst ? (job.play ?? 0) : 0;
    const cut = plank - 4 * (job.kerf + length + play) + endBit;
    if (plank === planks[index - 1] || cut < 0 || (plank & endBit) !== 0) return [];
    const others = state.planks.filter((_, at) => at !== index);
    const count = state.count + (index === state.planks.length ? 1 : 0);
    return [{ ...state, count, planks: isOpen(job, cut) ? [...others, cut].sort((a, b) => a - b) : others }];
  });
}

/** Whether any piece could still be cut from it. */
function isOpen(job: CutJob, plank: OpenPlank): boolean {
  const hasShortRuns = job.rows.some((row) => row.runs.some((run) => run.length <= job.plankLength));
  const least = hasShortRuns ? 1 : Math.max(1, job.minPiece);
  return plank >= 4 * (job.kerf + least) && (hasShortRuns || plank % 4 !== 3);
}

/** A piece of a pair's first row leaves a strip, if both widths and a kerf fit in the plank's. */
function offerStrip(job: CutJob, rowIndex: number, { length, end }: { length: number; end: End }, state: State): State {
  const widthOf = (index: number): number => job.rows[index]?.width ?? Number.POSITIVE_INFINITY;
  const pair = job.ripPairs.findIndex(
    ([first, last]) => first === rowIndex && widthOf(first) + widthOf(last) + job.kerf <= job.plankWidth,
  );
  return pair < 0 ? state : { ...state, strips: [...state.strips, { pair, end, length }] };
}
