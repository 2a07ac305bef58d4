/**
 * From first pieces to a plan: which pieces share a plank.
 *
 * Sweeping the places of `arcs.ts` from 1 to L and handing each stretch that begins the plank whose stretch has just
 * ended is optimal for intervals (U. I. Gupta, D. T. Lee and J. Leung, 1979), whichever free plank is taken, which
 * leaves the choice free for fewer cuts and shorter waits.
 */

import { lastOf, madeOf } from '../../geometry/lists';
import type { Shared } from '../follow/sharing';
import type { BrokenRule, CutJob, KeptEnd, PlannedPiece, PlannedRow } from '../job';
import { leastDistance } from '../runs/joints';
import { costsByPair, lastPieceOf, type PreparedJob, type PreparedRun, wholesOf } from '../runs/prepared';
import type { StripRows } from '../runs/stripRows';
import { matchStrips, type RowEnds, WHOLE_STRIP } from '../runs/strips';

/** More than any two rows lie apart. */
const ANY_ROWS = 2 ** 30;

interface Piece {
  readonly row: number;
  readonly length: number;
  from: KeptEnd;
  /** Where its stretch begins and ends on the plank. */
  readonly begin: number;
  readonly end: number;
  plank: number;
  isStrip: boolean;
  readonly isWallToWall: boolean;
}

/**
 * Books every piece to a plank; planks are numbered in the order in which laying first needs them.
 *
 * @param at first piece of every run (the place of a run that is one piece)
 * @param plankOf planks of the end pieces, where they are known (see `Shared`); else the sweep shares them out
 */
export function pairPieces(
  prepared: PreparedJob,
  at: Int32Array,
  plankOf?: Int32Array,
): { rows: PlannedRow[]; plankCount: number } {
  const { pieces, strips } = piecesOfAll(prepared, at);
  if (plankOf) sharePlanksAs(plankOf, pieces);
  else sharePlanksBySweep(pieces, prepared.plankLength);
  for (const { strip, source } of strips) {
    // A piece that has a plank already leaves its strip to waste: one fewer waits.
    strip.isStrip = strip.plank < 0 || plankOf === undefined || strip.plank >= plankOf.length;
    if (strip.isStrip) strip.plank = source.plank;
  }
  const numberOf = new Map<number, number>();
  const rows = prepared.rowRuns.map((indices) => ({
    runs: indices.map((index) => pieces[index].map((piece) => planned(piece, numberOf))),
  }));
  return { rows, plankCount: numberOf.size };
}

function piecesOfAll(prepared: PreparedJob, at: Int32Array): { pieces: Piece[][]; strips: TakenStrip[] } {
  const pieces = prepared.runs.map((run) => piecesOf(prepared, run, at[run.index]));
  return { pieces, strips: prepared.stripRows.flatMap((rows) => takeStrips(prepared, rows, at, pieces)) };
}

/** The planks the sweep shares the pieces out to, and what the search that follows must leave alone. */
export function sharedOf(prepared: PreparedJob, at: Int32Array): Shared {
  const { pieces, strips } = piecesOfAll(prepared, at);
  sharePlanksBySweep(pieces, prepared.plankLength);
  const plankOf = new Int32Array(2 * pieces.length).fill(-1);
  const numberOf = new Map<number, number>();
  const fixed = new Set<number>();
  pieces.forEach((ofRun, run) => {
    endsOf(ofRun).forEach((piece, side) => {
      if (piece.isStrip) return;
      const plank = numberOf.get(piece.plank) ?? numberOf.size;
      numberOf.set(piece.plank, plank);
      plankOf[2 * run + side] = plank;
      // A piece that keeps an end for its strip keeps its place on the plank.
      if (piece.isWallToWall && costsByPair(prepared.runs[run])) fixed.add(plank);
    });
  });
  return {
    plankOf,
    fixedPlanks: [...fixed],
    strips: strips.map(({ strip, source }) => ({ from: source.row, to: strip.row })),
  };
}

/** First and last piece of a run, or its only one. */
function endsOf<T>(pieces: readonly T[]): readonly T[] {
  return pieces.length === 1 ? pieces : [pieces[0], lastOf(pieces)];
}

/** Shares out planks that are known for the end pieces; whole planks between get planks of their own. */
function sharePlanksAs(plankOf: Int32Array, pieces: readonly (readonly Piece[])[]): void {
  let next = plankOf.length;
  pieces.forEach((ofRun, run) => {
    for (const piece of ofRun) piece.plank = next++;
    endsOf(ofRun).forEach((piece, side) => {
      piece.plank = plankOf[2 * run + side];
    });
  });
}

function sharePlanksBySweep(pieces: readonly (readonly Piece[])[], plankLength: number): void {
  sharePlanks(
    pieces.flat().filter((piece) => !piece.isStrip),
    plankLength,
  );
}

function piecesOf(prepared: PreparedJob, run: PreparedRun, at: number): Piece[] {
  const { plankLength: L, kerf } = prepared;
  const piece = (length: number, from: KeptEnd, begin: number, end: number): Piece => {
    const kept = length === L ? 'whole' : from;
    return {
      row: run.rowIndex,
      length,
      from: kept,
      begin,
      end,
      plank: -1,
      isStrip: false,
      isWallToWall: run.isWallToWall,
    };
  };
  if (run.isWallToWall) return [piece(run.length, 'middle', at - run.length - kerf, at)];
  const last = lastPieceOf(run, at, L);
  const wholes = madeOf(wholesOf(run, at), () => piece(L, 'whole', -1, L));
  return [piece(at, 'right', -1, at), ...wholes, piece(last, 'left', L - kerf - last, L)];
}

interface TakenStrip {
  readonly strip: Piece;
  readonly source: Piece;
}

/** Marks the pieces of a last row that are strips of the first, each with the piece it is ripped from. */
function takeStrips(prepared: PreparedJob, rows: StripRows, at: Int32Array, pieces: readonly Piece[][]): TakenStrip[] {
  const L = prepared.plankLength;
  const { wanted, given, sources } = matchStrips(prepared, rows, at);
  const wholesOf = (runs: readonly number[]): Piece[] =>
    runs.flatMap((run) => pieces[run].filter(({ length }) => length === L));
  const wholes = wholesOf(rows.first);
  const taken = wholesOf(rows.last).flatMap((strip) => takeStrip(strip, wholes.pop()));
  wanted.ends.forEach((end, i) => {
    const source =
      sources[i] === WHOLE_STRIP ? wholes.pop() : given.ends[sources[i]] && endPiece(pieces, given.ends[sources[i]]);
    taken.push(...takeStrip(endPiece(pieces, end), source));
  });
  return taken;
}

function endPiece(pieces: readonly Piece[][], { run, side }: RowEnds['ends'][number]): Piece {
  const ofRun = pieces[run];
  const piece = ofRun[side === 'left' ? ofRun.length - 1 : 0];
  piece.from = side;
  return piece;
}

function takeStrip(strip: Piece, source: Piece | undefined): TakenStrip[] {
  if (!source) return [];
  strip.isStrip = true;
  // A strip with walls at both ends keeps whatever ends its source does; one of a whole plank keeps its own side.
  if (strip.isWallToWall && strip.from !== 'whole') strip.from = source.from === 'whole' ? 'left' : source.from;
  return [{ strip, source }];
}

/**
 * The sweep. A piece goes onto a plank that it fills up exactly, else onto one whose other piece is laid in the nearest
 * row: that offcut waits least. Costs cut pieces x planks with room left.
 */
function sharePlanks(pieces: readonly Piece[], plankLength: number): void {
  let plankCount = 0;
  /** Planks with room left, in the order in which they were begun. */
  const open: { readonly plank: number; end: number; row: number }[] = [];
  const inOrder = [...pieces].sort((a, b) => a.begin - b.begin || b.end - a.end || a.row - b.row);
  for (const piece of inOrder) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < open.length && piece.begin >= 0; i++) {
      const { end, row } = open[i];
      if (end > piece.begin) continue;
      const wait = Math.abs(row - piece.row) + (end === piece.begin ? 0 : ANY_ROWS);
      if (wait < least) best = i;
      least = Math.min(least, wait);
    }
    const plank = best < 0 ? plankCount++ : open[best].plank;
    piece.plank = plank;
    const booked = piece.end < plankLength ? [{ plank, end: piece.end, row: piece.row }] : [];
    if (best < 0) open.push(...booked);
    else open.splice(best, 1, ...booked);
  }
}

function planned(piece: Piece, numberOf: Map<number, number>): PlannedPiece {
  const plank = numberOf.get(piece.plank) ?? numberOf.size;
  numberOf.set(piece.plank, plank);
  return piece.isStrip
    ? { length: piece.length, plank, from: piece.from, isStrip: true }
    : { length: piece.length, plank, from: piece.from };
}

/** Every rule the rows break: one entry a run and rule, the worst place of it. */
export function brokenRules(job: CutJob, rows: readonly PlannedRow[]): BrokenRule[] {
  const broken: BrokenRule[] = [];
  let before: number[] = [];
  job.rows.forEach((row, rowIndex) => {
    if (rowIndex > 0 && job.rows[rowIndex - 1].room !== row.room) before = [];
    const joints: number[] = [];
    row.runs.forEach((run, runIndex) => {
      const pieces = rows[rowIndex].runs[runIndex];
      const place = { rowIndex, runIndex };
      const shortest = run.length > job.plankLength ? Math.min(pieces[0].length, lastOf(pieces).length) : job.minPiece;
      if (shortest < job.minPiece)
        broken.push({ rule: 'minimum piece', ...place, found: shortest, wanted: job.minPiece });
      const own = jointsOf(run.x, pieces);
      const nearest = leastDistance(own, before);
      if (nearest < job.minStagger)
        broken.push({ rule: 'minimum stagger', ...place, found: nearest, wanted: job.minStagger });
      joints.push(...own);
    });
    before = joints;
  });
  return broken;
}

function jointsOf(x: number, pieces: readonly PlannedPiece[]): number[] {
  let joint = x;
  return pieces.slice(0, -1).map((piece) => {
    joint += piece.length;
    return joint;
  });
}
