/**
 * A choice of first pieces that keeps every rule, or the nearest there is.
 *
 * A room that cannot keep the stagger asked for gets the widest that all of it can keep. A run that cannot keep the
 * minimum piece is cut as evenly as it can be (see `prepared.ts`).
 */
import { type BlockRoom, chooseBlock, emptyBlockRoom, extendPath } from './blocks';
import type { PreparedRun } from './prepared';
import { drawBelow } from './seeded';
import { findOpenings, noOpenings } from './stagger';
import { layAll, type Trial } from './trial';

/** Times a room is laid afresh before its stagger is given up: a row of runs needs one, a ring around a column a few. */
const ATTEMPTS = 12;

/** Mends the rooms whose joints are too near each other. Costs nothing where there are none. */
export function keepStagger(trial: Trial): void {
  const { prepared } = trial;
  const rooms = [...new Set(prepared.runs.filter((run) => isTooNear(trial, run)).map((run) => run.room))];
  if (rooms.length === 0) return;
  for (const room of rooms)
    mendRoom(
      trial,
      prepared.runs.filter((run) => run.room === room && !run.isWallToWall),
    );
  layAll(trial, trial.at);
}

function isTooNear(trial: Trial, run: PreparedRun): boolean {
  if (run.isWallToWall) return false;
  const openings = noOpenings();
  findOpenings(openings, run, trial);
  const at = trial.at[run.index];
  for (let i = 0; i < openings.count; i++) if (at >= openings.from[i] && at <= openings.to[i]) return false;
  return true;
}

/** Tries the stagger asked for, then halves the doubt: a room can always keep none at all. */
function mendRoom(trial: Trial, runs: readonly PreparedRun[]): void {
  const room = emptyBlockRoom(trial.prepared.plankLength, runs.length);
  let tooWide = trial.prepared.job.minStagger;
  if (layRoom(trial, runs, room)) return;
  let kept = 0;
  while (tooWide - kept > 1) {
    const tried = Math.floor((kept + tooWide) / 2);
    if (layRoomWith(trial, runs, room, tried)) kept = tried;
    else tooWide = tried;
  }
  layRoomWith(trial, runs, room, kept);
}

function layRoomWith(trial: Trial, runs: readonly PreparedRun[], room: BlockRoom, stagger: number): boolean {
  for (const run of runs) trial.stagger[run.index] = stagger;
  return layRoom(trial, runs, room);
}

/** Lays a room by paths from its first row to its last, each exactly, around those that lie already. */
function layRoom(trial: Trial, runs: readonly PreparedRun[], room: BlockRoom): boolean {
  const { at, prepared } = trial;
  const noPrices = new Int32Array(prepared.plankLength + 2);
  const free = (run: PreparedRun): boolean => at[run.index] === 0;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    for (const run of runs) at[run.index] = 0;
    for (const run of runs) if (run.stripFor >= 0) drawTiedPair(trial, run);
    const isLaid = runs.every((run) => {
      if (at[run.index] > 0) return true;
      const upward = extendPath(trial, [run], { direction: -1, size: runs.length, free }).reverse();
      return chooseBlock(trial, extendPath(trial, upward, { direction: 1, size: runs.length, free }), noPrices, room);
    });
    if (isLaid) return true;
  }
  return false;
}

/** Runs that are laid alike close a ring: their first piece is drawn, and the rows between have to fit. */
function drawTiedPair(trial: Trial, run: PreparedRun): void {
  const { at, seeded, prepared } = trial;
  if (!prepared.runs[run.stripFor].isTied) return;
  const lows = Math.max(0, run.lowTo - run.lowFrom + 1);
  const drawn = drawBelow(seeded, lows + Math.max(0, run.highTo - run.highFrom + 1));
  at[run.index] = drawn < lows ? run.lowFrom + drawn : run.highFrom + drawn - lows;
  at[run.stripFor] = at[run.index];
}
