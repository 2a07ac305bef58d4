/**
 * A plan that people can follow: which pieces share a plank, and which of the runs alike lies where, so that few offcuts
 * wait and none for long, at no plank more than may be used.
 *
 * Planks tie the runs into paths and rings: a path whose rows follow each other waits one row, a ring folded flat two.
 * The search anneals from the plan that is there (S. Kirkpatrick, C. D. Gelatt and M. P. Vecchi, Science 220, 1983),
 * and aims: a piece goes over to planks cut in nearby rows, a run changes places with one near its partners.
 */
import { costsByPair, isLaidItself, type PreparedRun } from '../runs/prepared';
import { drawBelow, type Seeded } from '../search/seeded';
import type { Trial } from '../search/trial';
import type { Steps } from '../steps';
import {
  areAlike,
  costOf,
  type FollowWeights,
  leftByPartners,
  type Moving,
  movingOf,
  tryChangePlaces,
  tryFirst,
  tryGoOver,
} from './moves';
import { orderByPaths } from './pathOrder';
import { emptyPlank, isLast, type Shared, type Sharing, sharingOf } from './sharing';

/** What the search is for, and how long it may go on. */
export interface FollowGoal {
  readonly moves: number;
  /** Planks that may be used on top of those in use. */
  readonly spare: number;
  /** Whether few offcuts wait already: then it is only warmed up, and a share of the moves is enough. */
  readonly isInOrder?: boolean;
}

export interface Followed {
  readonly at: Int32Array;
  readonly shared: Shared;
  /** The most offcuts and strips that wait after a row, and rows they wait in all. */
  readonly most: number;
  readonly rowsWaited: number;
  readonly cuts: number;
  /** Whether all pieces fit their planks. */
  readonly fits: boolean;
}

/** What so many waiting offcuts cost after one row: their square, so that the most at once come down first. */
const priceOfWaiting = (count: number): number => 4 * count * count;

/** Against a row waited by the only offcut there is, which costs 6 in all. */
const WEIGHTS = { rowWaited: 2, cut: 30, cutAbove: 300, aligned: 300, stair: 1, over: 1000, plank: 4, turned: 3 };
/** Cuts above those of the plan at the start that are no dearer than others. */
const SPARE_CUTS = 1;
/** Weights while pieces do not fit their planks: what is missing is dear, and can be bought for a while. */
const WEIGHTS_TO_FIT = { ...WEIGHTS, cut: 0, cutAbove: 0, aligned: 0, stair: 0, over: 1, rowWaited: 0 };

/** What each that waits after a row above the most of a floor in order costs, where more than so many wait. */
const ABOVE_MOST = 400;
const FEW_ENOUGH = 5;

/** Heat at the start, the share of it that every level leaves, and the levels. */
const HEAT = 120;
const COOLING = 0.93;
/** Runs of a floor that is ordered first, and then only warmed up. */
export const MANY_RUNS = 100;
const LOW_HEAT = 30;
const LEVELS = 60;
/** Levels for a floor that is in order. */
const LEVELS_IN_ORDER = 15;
/** Levels at the start in which cuts are free to be more than there may be in the end. */
const CUTS_FREE_LEVELS = 35;
/** Per cent of the moves that change places, and go over; the others grow or shrink a first piece. */
const CHANGE_SHARE = 40;
const GO_OVER_SHARE = 40;
/** Per cent of the runs that change places with any other, not one near a partner. */
const ANYWHERE_SHARE = 10;
/** Per cent of the pieces that go over to a new plank, where there are any to spare. */
const NEW_PLANK_SHARE = 10;
/** Rows that count as near. */
const NEAR_ROWS = 3;
/** Per cent of the first pieces that grow or shrink by a little, per cent of the others that go as far as they can. */
const NUDGE_SHARE = 20;
const FULL_SHARE = 50;
const SMALL_NUDGE = 12;
const LARGE_NUDGE = 200;
/** What a move costs, in places visited. */
export const STEPS_A_MOVE = 30;

/** Searches from the choice and the planks that are given; the trial is laid as the answer says, but for its load. */
export function* follow(trial: Trial, shared: Shared, goal: FollowGoal): Steps<Followed> {
  const moving = startOf(trial, shared, WEIGHTS);
  const limit = moving.sharing.used + goal.spare;
  const { weights } = moving;
  const lenient = { ...weights, cutAbove: 0 };
  let best = standingOf(moving);
  // Where few wait, one more may be worth an aligned joint.
  const mostKept = goal.isInOrder && best.most > FEW_ENOUGH ? best.most : Number.POSITIVE_INFINITY;
  keepMost(moving.sharing, mostKept);
  const moves = trial.prepared.runs.length === 0 ? 0 : Math.ceil(goal.moves / LEVELS);
  const isLarge = trial.prepared.runs.length > MANY_RUNS;
  if (isLarge && !goal.isInOrder) orderByPaths(moving);
  let level = goal.isInOrder ? LEVELS - LEVELS_IN_ORDER : 0;
  for (let heat = isLarge || goal.isInOrder ? LOW_HEAT : HEAT; level < LEVELS; level++, heat *= COOLING) {
    moving.weights = level < CUTS_FREE_LEVELS ? lenient : weights;
    for (let move = 0; move < moves; move++) tryAny(moving, heat, limit);
    moving.weights = weights;
    if (costOf(moving) < best.cost) {
      const standing = standingOf(moving);
      if (standing.most <= mostKept) best = standing;
    }
    yield;
  }
  trial.steps += STEPS_A_MOVE * moves * LEVELS;
  trial.at.set(best.at);
  return { ...best, shared: { ...shared, plankOf: best.plankOf } };
}

/** Searches until all pieces fit their planks, with the play that the order of laying asks for. */
export function* makeFit(trial: Trial, shared: Shared, moves: number): Steps<Followed> {
  const moving = startOf(trial, shared, WEIGHTS_TO_FIT);
  const { sharing } = moving;
  const limit = sharing.used;
  const perLevel = Math.ceil(moves / LEVELS);
  for (let level = 0, heat = HEAT; level < LEVELS && sharing.over > 0; level++, heat *= COOLING) {
    for (let move = 0; move < perLevel && sharing.over > 0; move++) tryAny(moving, heat, limit);
    trial.steps += STEPS_A_MOVE * perLevel;
    yield;
  }
  const { at, plankOf, ...standing } = standingOf(moving);
  return { ...standing, at, shared: { ...shared, plankOf } };
}

function startOf(trial: Trial, shared: Shared, weights: Omit<FollowWeights, 'cutsFree'>): Moving {
  const most = 2 * trial.prepared.runs.length + shared.strips.length;
  const prices = Int32Array.from({ length: most + 2 }, (_, count) => priceOfWaiting(count));
  const sharing = sharingOf(trial, shared, prices);
  return movingOf(sharing, { ...weights, cutsFree: sharing.cuts + SPARE_CUTS });
}

/** Makes it dear that more wait than `most`; so many wait nowhere yet, so the books stay right. */
function keepMost({ priceOf }: Sharing, most: number): void {
  for (let count = most + 1; count < priceOf.length; count++) priceOf[count] += ABOVE_MOST * (count - most);
}

function standingOf(moving: Moving) {
  const { trial, plankOf, waiting, rowsWaited, cuts, over } = moving.sharing;
  return {
    cost: costOf(moving),
    at: trial.at.slice(),
    plankOf: plankOf.slice(),
    most: waiting.reduce((a, b) => Math.max(a, b), 0),
    rowsWaited,
    cuts,
    fits: over === 0,
  };
}

/**
 * What a move may cost now: `heat` x -ln of a chance, pieced together from the halvings of a drawn number, so that it is
 * the same everywhere. -log2 of x / 2, x from 1 to 2, is nearly 2 - x.
 */
function drawMost(seeded: Seeded, heat: number): number {
  const drawn = drawBelow(seeded, 2 ** 30 - 1) + 1;
  const halvings = Math.clz32(drawn) - 2;
  const x = ((drawn << halvings) >>> 6) / 2 ** 23;
  return Math.floor(heat * Math.LN2 * (halvings + 2 - x));
}

function tryAny(moving: Moving, heat: number, limit: number): void {
  const { prepared, seeded } = moving.sharing.trial;
  const run = prepared.runs[drawBelow(seeded, prepared.runs.length)];
  if (!isLaidItself(run)) return;
  const most = drawMost(seeded, heat);
  const kind = drawBelow(seeded, 100);
  if (kind < CHANGE_SHARE) changePlaces(moving, run, most);
  else if (kind < CHANGE_SHARE + GO_OVER_SHARE || run.isWallToWall) goOver(moving, run, most, limit);
  else grow(moving, run, most);
}

function changePlaces(moving: Moving, run: PreparedRun, most: number): void {
  const { sharing } = moving;
  const { prepared, seeded } = sharing.trial;
  const isAnywhere = drawBelow(seeded, 100) < ANYWHERE_SHARE;
  const row = isAnywhere
    ? drawBelow(seeded, prepared.rowRuns.length)
    : drawRowNear(sharing, rowOfPartner(sharing, run));
  const other = drawRunIn(sharing, row);
  if (other !== run && areAlike(run, other)) tryChangePlaces(moving, run, other, most);
}

/** The row of a piece that shares a plank with an end of the run; its own where there is none. */
function rowOfPartner({ trial, plankOf, firstOn, lastOn, rowOf }: Sharing, run: PreparedRun): number {
  const side = run.isWallToWall ? 0 : drawBelow(trial.seeded, 2);
  const plank = plankOf[2 * run.index + side];
  if (plank < 0) return run.rowIndex;
  const partner = side === 1 || lastOn[plank] < 0 ? firstOn[plank] : lastOn[plank];
  return partner < 0 ? run.rowIndex : rowOf[partner];
}

function drawRowNear({ trial }: Sharing, row: number): number {
  const { prepared, seeded } = trial;
  const reach = 1 + drawBelow(seeded, NEAR_ROWS);
  const near = row + drawBelow(seeded, 2 * reach + 1) - reach;
  return Math.max(0, Math.min(prepared.rowRuns.length - 1, near));
}

function drawRunIn({ trial }: Sharing, row: number): PreparedRun {
  const { rowRuns, runs } = trial.prepared;
  const inRow = rowRuns[row];
  return runs[inRow.length === 1 ? inRow[0] : inRow[drawBelow(trial.seeded, inRow.length)]];
}

function goOver(moving: Moving, run: PreparedRun, most: number, limit: number): void {
  const { sharing } = moving;
  const { trial, plankOf, firstOn, lastOn, wallsOn } = sharing;
  const { seeded } = trial;
  const piece = 2 * run.index + (run.isWallToWall ? 0 : drawBelow(seeded, 2));
  if (plankOf[piece] < 0) return;
  if (sharing.used < limit && drawBelow(seeded, 100) < NEW_PLANK_SHARE) {
    tryGoOver(moving, piece, emptyPlank(sharing, drawBelow(seeded, firstOn.length)), -1, most);
    return;
  }
  const to = drawPlankNear(sharing, run, piece);
  if (to < 0) return;
  let back = isLast(piece) ? lastOn[to] : firstOn[to];
  if (run.isWallToWall) {
    const walls = wallsOn[to];
    back = walls.length === 0 || drawBelow(seeded, 2) === 0 ? -1 : walls[drawBelow(seeded, walls.length)];
  }
  tryGoOver(moving, piece, to, back, most);
}

/** A plank that a piece of a row near by is cut from, of the other end than this piece; -1 where it takes none. */
function drawPlankNear(sharing: Sharing, run: PreparedRun, piece: number): number {
  const other = drawRunIn(sharing, drawRowNear(sharing, run.rowIndex));
  if (other.isWallToWall) return sharing.plankOf[2 * other.index];
  const side = run.isWallToWall ? drawBelow(sharing.trial.seeded, 2) : isLast(piece) ? 0 : 1;
  return sharing.plankOf[2 * other.index + side];
}

function grow(moving: Moving, run: PreparedRun, most: number): void {
  const { sharing, range } = moving;
  const { at, seeded } = sharing.trial;
  if (costsByPair(run)) return;
  const s = at[run.index];
  if (drawBelow(seeded, 100) < NUDGE_SHARE) {
    const by = 1 + drawBelow(seeded, drawBelow(seeded, 4) === 0 ? LARGE_NUDGE : SMALL_NUDGE);
    tryFirst(moving, run, drawBelow(seeded, 2) === 0 ? s + by : s - by, most);
    return;
  }
  leftByPartners(sharing, run, range);
  const [from, to] = range;
  if (to <= from) return;
  const end = drawBelow(seeded, 2) === 0 ? from : to;
  const first = drawBelow(seeded, 100) < FULL_SHARE ? end : from + drawBelow(seeded, to - from + 1);
  if (first !== s) tryFirst(moving, run, first, most);
}
