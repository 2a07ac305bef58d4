/**
 * The rest of a floor in the same planks with fewer offcuts waiting: pieces that keep the same end change planks, and runs
 * alike change places. No piece gets another length, so no cut and no plank more is needed.
 *
 * A move is taken when it costs little more than it saves; what that means is less and less, and nothing in the end.
 */

import { distinct, sumOf } from '../../geometry/lists';
import { leastDistance } from '../runs/joints';
import { drawBelow, type Seeded, seededFrom } from '../search/seeded';
import { jointsOf, type OpenRun } from './firstPieces';
import { jointsThatLie, type OnwardJob, type OnwardPiece, type OnwardPlan } from './onwardJob';

/** Our choice: what a move may cost at first, and later; moves for every run, and at most. */
const MAY_COST = [40, 20, 10, 4, 0];
const MOVES_A_RUN = 600;
const MOST_MOVES = 40_000;
/** Our choice: a pair of aligned joints counts like so much waiting. */
const ALIGNED = 12;
/** Runs on either side of the one aimed at that are tried. */
const BESIDE = 4;

/** A piece, the place of its run in laying order, and what it is cut from. */
interface Cut {
  readonly piece: OnwardPiece;
  readonly isLast: boolean;
  place: number;
  source: Source;
}

/** A plank or a piece in hand. */
interface Source {
  readonly capacity: number;
  readonly width: number;
  readonly stock?: number;
  readonly cuts: Cut[];
}

/** Where a run lies: places of runs beside it and two rows away in its room, and joints that lie there. */
interface Place {
  readonly near: readonly number[];
  readonly far: readonly number[];
  readonly lyingNear: readonly number[];
  readonly lyingFar: readonly number[];
}

/** @param rows legal rows of the rest; they come back where nothing is better */
export function withFewerWaiting(
  onward: OnwardJob,
  runs: readonly OpenRun[],
  rows: OnwardPlan['rows'],
): OnwardPlan['rows'] {
  const floor = new Rest(onward, runs, rows);
  const start = floor.cost();
  const moves = Math.min(MOST_MOVES, MOVES_A_RUN * runs.length) / MAY_COST.length;
  for (const most of MAY_COST) for (let move = 0; move < moves; move++) floor.tryAny(most);
  return floor.cost() < start ? floor.rows() : rows;
}

class Rest {
  private readonly places: readonly Place[];
  /** Pieces of each run, by its place. */
  private readonly laid: Cut[][];
  /** Pieces that may be cut from another plank. */
  private readonly shared: readonly Cut[];
  private readonly sources: readonly Source[];
  private readonly afterRow: Int32Array;
  private readonly seeded: Seeded = seededFrom(1);

  constructor(
    private readonly onward: OnwardJob,
    private readonly runs: readonly OpenRun[],
    rows: OnwardPlan['rows'],
  ) {
    const sources = new Map<string, Source>();
    this.places = runs.map((run) => placeOf(onward, runs, run));
    this.laid = runs.map(({ rowIndex, runIndex }, place) => {
      const pieces = rows[rowIndex].runs[runIndex];
      return pieces.map((piece, i): Cut => {
        const source = this.sourceOf(sources, piece);
        const cut = { piece, isLast: i === pieces.length - 1, place, source };
        source.cuts.push(cut);
        return cut;
      });
    });
    this.sources = [...sources.values()];
    this.shared = this.laid.flat().filter(({ piece }) => piece.from !== 'whole');
    this.afterRow = new Int32Array(onward.job.rows.length);
    for (const source of this.sources) this.count(source, 1);
  }

  /** Twice the squares of what waits after each row, and the rows waited; aligned joints. */
  cost(): number {
    let cost = 0;
    for (const waiting of this.afterRow) cost += 2 * waiting * waiting + waiting;
    this.places.forEach((_, place) => {
      cost += (ALIGNED * this.alignedAt(place)) / 2;
    });
    return cost;
  }

  /** A piece comes nearer to where the rest of its plank is used, if that may cost so much. */
  tryAny(most: number): void {
    if (this.shared.length === 0) return;
    const cut = this.shared[drawBelow(this.seeded, this.shared.length)];
    const { cuts, stock } = cut.source;
    const partner = cuts[drawBelow(this.seeded, cuts.length)];
    const aim = partner !== cut ? partner.place : stock === undefined ? cut.place : 0;
    const place = aim + drawBelow(this.seeded, 2 * BESIDE + 1) - BESIDE;
    if (place < 0 || place >= this.runs.length || place === cut.place) return;
    if (drawBelow(this.seeded, 2) === 0) this.tryExchange(cut, place, most);
    else this.trySwap(cut.place, place, most);
  }

  rows(): OnwardPlan['rows'] {
    const planks = new Map<Source, number>();
    const rows = this.onward.job.rows.map((): OnwardPiece[][] => []);
    this.runs.forEach(({ rowIndex }, place) => {
      const pieces = this.laid[place].map(({ piece: { length, from }, source }): OnwardPiece => {
        if (source.stock !== undefined) return { length, from, plank: -1, stock: source.stock };
        if (!planks.has(source)) planks.set(source, planks.size);
        return { length, from, plank: planks.get(source) as number };
      });
      rows[rowIndex].push(pieces);
    });
    return rows.map((row) => ({ runs: row }));
  }

  private sourceOf(sources: Map<string, Source>, { plank, stock }: OnwardPiece): Source {
    const { job, stock: inHand } = this.onward;
    const key = stock === undefined ? `plank ${plank}` : `stock ${stock}`;
    const { length, width = job.plankWidth } =
      stock === undefined ? { length: job.plankLength, width: job.plankWidth } : inHand[stock];
    const source = sources.get(key) ?? { capacity: length, width, stock, cuts: [] };
    sources.set(key, source);
    return source;
  }

  /** Two pieces that keep the same end change planks. */
  private tryExchange(cut: Cut, place: number, most: number): void {
    const { from } = cut.piece;
    const other = this.laid[place].find(({ piece, source }) => piece.from === from && source !== cut.source);
    if (!other) return;
    const exchange = (): void => {
      const { source } = cut;
      take(cut, other.source);
      take(other, source);
    };
    this.tried([cut.source, other.source], [], most, exchange);
  }

  /** Two runs alike change places. */
  private trySwap(a: number, b: number, most: number): void {
    if (!this.areAlike(this.runs[a], this.runs[b])) return;
    const sources = distinct([...this.laid[a], ...this.laid[b]].map(({ source }) => source));
    const swap = (): void => {
      [this.laid[a], this.laid[b]] = [this.laid[b], this.laid[a]];
      for (const place of [a, b]) for (const cut of this.laid[place]) cut.place = place;
    };
    this.tried(sources, [a, b], most, swap);
  }

  private areAlike(a: OpenRun, b: OpenRun): boolean {
    const { rows } = this.onward.job;
    const isSamePlace = a.x === b.x && a.length === b.length;
    return isSamePlace && a.width === b.width && rows[a.rowIndex].room === rows[b.rowIndex].room;
  }

  /** @param move done again it is undone */
  private tried(sources: readonly Source[], places: readonly number[], most: number, move: () => void): void {
    const alignedBefore = sumOf(places, (place) => this.alignedAt(place));
    let cost = 0;
    for (const source of sources) cost += this.count(source, -1);
    move();
    const isLegal = sources.every((source) => this.fits(source)) && places.every((place) => this.isStaggered(place));
    for (const source of sources) cost += this.count(source, 1);
    cost += ALIGNED * (sumOf(places, (place) => this.alignedAt(place)) - alignedBefore);
    if (isLegal && cost <= most) return;
    for (const source of sources) this.count(source, -1);
    move();
    for (const source of sources) this.count(source, 1);
  }

  /** Counts what waits of a plank in or out; answers what that costs. */
  private count({ cuts, stock }: Source, by: number): number {
    const rowOf = ({ place }: Cut): number => this.runs[place].rowIndex;
    const from = stock === undefined ? Math.min(...cuts.map(rowOf)) : 0;
    const to = Math.max(...cuts.map(rowOf));
    let cost = 0;
    for (let row = from; row < to; row++) {
      const waiting = this.afterRow[row];
      this.afterRow[row] = waiting + by;
      cost += 2 * ((waiting + by) * (waiting + by) - waiting * waiting) + by;
    }
    return cost;
  }

  /** Lengths, saw cuts and play fit in a plank; every row is as narrow as it. */
  private fits({ cuts, capacity, width }: Source): boolean {
    const { kerf, play = 0 } = this.onward.job;
    cuts.sort((a, b) => a.place - b.place || Number(a.isLast) - Number(b.isLast));
    let need = kerf * (cuts.length - 1);
    cuts.forEach(({ piece, isLast, place }, i) => {
      need += piece.length + (isLast && i > 0 ? play : 0);
      if (this.runs[place].width > width) need = Number.POSITIVE_INFINITY;
    });
    return need <= capacity;
  }

  private jointsAt(place: number): readonly number[] {
    return jointsOf(this.runs[place], this.laid[place][0].piece.length, this.onward.job.plankLength);
  }

  private isStaggered(place: number): boolean {
    const { near, lyingNear } = this.places[place];
    const joints = this.jointsAt(place);
    const { minStagger } = this.onward.job;
    if (leastDistance(joints, lyingNear) < minStagger) return false;
    return near.every((other) => leastDistance(joints, this.jointsAt(other)) >= minStagger);
  }

  /** Pairs of joints of a run that are aligned with others two rows away. */
  private alignedAt(place: number): number {
    const { far, lyingFar } = this.places[place];
    const { alignedDistance } = this.onward.job;
    const joints = this.jointsAt(place);
    const pairs = (others: readonly number[]): number =>
      sumOf(joints, (a) => others.filter((b) => Math.abs(a - b) < alignedDistance).length);
    return far.reduce((sum, other) => sum + pairs(this.jointsAt(other)), pairs(lyingFar));
  }
}

function take(cut: Cut, source: Source): void {
  cut.source.cuts.splice(cut.source.cuts.indexOf(cut), 1);
  source.cuts.push(cut);
  cut.source = source;
}

function placeOf(onward: OnwardJob, runs: readonly OpenRun[], run: OpenRun): Place {
  const { rows } = onward.job;
  const { rowIndex } = run;
  const { room } = rows[rowIndex];
  const isBy = (by: number) => (other: OpenRun) =>
    Math.abs(other.rowIndex - rowIndex) === by && rows[other.rowIndex].room === room;
  const placesBy = (by: number) => runs.flatMap((other, place) => (isBy(by)(other) ? [place] : []));
  return {
    near: placesBy(1),
    far: placesBy(2),
    lyingNear: jointsThatLie(onward, rowIndex),
    lyingFar: lyingTwoBack(onward, rowIndex),
  };
}

/** Joints that lie two rows before a row: of the first and the second row to lay in a room. */
function lyingTwoBack({ job: { rows }, before }: OnwardJob, rowIndex: number): readonly number[] {
  const { room } = rows[rowIndex];
  const lying = before.find((one) => one.room === room);
  if (!lying || rows[rowIndex - 2]?.room === room) return [];
  return rows[rowIndex - 1]?.room === room ? lying.joints : lying.joints2;
}
