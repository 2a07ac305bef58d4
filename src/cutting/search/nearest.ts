/**
 * A choice of first pieces that keeps every rule, or the nearest there is.
 *
 * A room that cannot keep the stagger asked for gets the widest that all of it can keep. A run that cannot keep the
 * minimum piece is cut as evenly as it can be (see `prepared.ts`).
 */

import { distinct } from '../../geometry/lists';
import { costsByPair, type PreparedJob, type PreparedRun } from '../runs/prepared';
import { nearAt } from '../runs/stagger';
import { type BlockMemory, chooseBlock, emptyBlockMemory, extendPath } from './blocks';
import { drawBelow } from './seeded';
import { layAll, setFirst, type Trial } from './trial';

/** Times a room is laid afresh before a stagger is given up, where one time is not proof enough. */
const MOST_ATTEMPTS = 12;
/** Runs from which on the stagger is only found to a fiftieth. */
const LARGE_ROOM = 200;
/** Places that all those times may visit together. */
const MOST_PLACES = 10_000_000;

/** Mends the rooms whose joints are too near each other. Costs nothing where there are none. */
export function keepStagger(trial: Trial): void {
  const { prepared } = trial;
  const rooms = distinct(prepared.runs.filter((run) => nearAt(trial, run) > 0).map((run) => run.room));
  if (rooms.length === 0) return;
  for (const room of rooms)
    mendRoom(
      trial,
      prepared.runs.filter((run) => run.room === room && !run.isWallToWall),
    );
  layAll(trial, trial.at);
}

/** Blocks do not move rows that strips join: where their joints lock each other, only the whole room can move. */
export function layStripRoomsAfresh(trial: Trial): void {
  const { runs, plankLength } = trial.prepared;
  const rooms = new Set(runs.filter(costsByPair).map((run) => run.room));
  for (const room of rooms) {
    const before = trial.at.slice();
    const ofRoom = runs.filter((run) => run.room === room && !run.isWallToWall);
    if (!layRoom(trial, ofRoom, emptyBlockMemory(plankLength, ofRoom.length))) trial.at.set(before);
    layAll(trial, trial.at);
  }
}

/** Tries the stagger asked for, then halves the doubt: a room can always keep none at all. */
function mendRoom(trial: Trial, runs: readonly PreparedRun[]): void {
  const memory = emptyBlockMemory(trial.prepared.plankLength, runs.length);
  if (layRoom(trial, runs, memory)) return;
  let tooWide = trial.prepared.job.minStagger;
  let kept = 0;
  let laid: Int32Array | undefined;
  const doubt = runs.length > LARGE_ROOM ? Math.ceil(tooWide / 50) : 1;
  while (tooWide - kept > doubt || !laid) {
    const tried = Math.floor((kept + tooWide) / 2);
    for (const run of runs) trial.stagger[run.index] = tried;
    if (layRoom(trial, runs, memory)) {
      kept = tried;
      laid = trial.at.slice();
    } else tooWide = tried;
  }
  for (const run of runs) trial.stagger[run.index] = kept;
  trial.at.set(laid);
}

/** Lays a room by paths from its first row to its last, each exactly, around those that lie already. */
function layRoom(trial: Trial, runs: readonly PreparedRun[], memory: BlockMemory): boolean {
  const { at, prepared } = trial;
  const noPrices = new Int32Array(prepared.plankLength + 2);
  const free = (run: PreparedRun): boolean => at[run.index] === 0;
  for (let attempt = 0; attempt < attemptsFor(prepared, runs); attempt++) {
    for (const run of runs) at[run.index] = 0;
    for (const run of runs) if (run.strips.role === 'leads') drawBoth(trial, run);
    const isLaid = runs.every((run) => {
      if (at[run.index] > 0) return true;
      const upward = extendPath(trial, [run], { direction: -1, size: runs.length, free }).reverse();
      return chooseBlock(trial, extendPath(trial, upward, { direction: 1, size: runs.length, free }), noPrices, memory);
    });
    if (isLaid) return true;
  }
  return false;
}

/** A single line of runs is laid exactly, the first time; branches, rings and rows laid alike fall as chance has it. */
function attemptsFor(prepared: PreparedJob, runs: readonly PreparedRun[]): number {
  const isLine = runs.every(
    (run) => run.strips.role !== 'leads' && rowsBesides(prepared, run, -1) && rowsBesides(prepared, run, 1),
  );
  if (isLine) return 1;
  return Math.max(1, Math.min(MOST_ATTEMPTS, Math.floor(MOST_PLACES / (runs.length * prepared.plankLength))));
}

/** Whether a run has no more than one neighbour in the row before (-1) or after (1). */
function rowsBesides(prepared: PreparedJob, run: PreparedRun, direction: number): boolean {
  const beside = prepared.neighbours[run.index].filter((i) => prepared.runs[i].rowIndex === run.rowIndex + direction);
  return beside.length <= 1;
}

/** Runs that are laid alike close a ring: their first piece is drawn, and the rows between have to fit. */
function drawBoth(trial: Trial, run: PreparedRun): void {
  const { low, high } = run;
  const lows = Math.max(0, low.to - low.from + 1);
  const drawn = drawBelow(trial.seeded, lows + Math.max(0, high.to - high.from + 1));
  setFirst(trial, run, drawn < lows ? low.from + drawn : high.from + drawn - lows);
}
