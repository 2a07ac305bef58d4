/**
 * A floor laid from both sides that meets at a row: planks cut on one side and on the other are the same ones where what
 * both cut from them fits in one. A way that must end with next to nothing left over is rarely met from one side alone.
 */
import { nearPairs } from '../runs/joints';
import type { PreparedJob, PreparedRun } from '../runs/prepared';
import { FIRST, LAST } from './offcuts';
import type { Laid } from './sweep';
import { ALIGNED } from './ways';

/** Where two halves meet: standings of both, and for each plank that goes on the one behind and the one in front. */
export interface Meeting {
  readonly front: number;
  readonly back: number;
  readonly planks: number;
  readonly price: number;
  /** Planks of the back half by those of the front half that they are. */
  readonly joined: ReadonlyMap<number, number>;
}

/** What the halves of one floor have to keep to where they meet. */
interface Seam {
  readonly prepared: PreparedJob;
  readonly at: Int32Array;
  /** Runs on both sides that keep stagger, and that may be aligned. */
  readonly neighbours: readonly (readonly [PreparedRun, PreparedRun])[];
  readonly twoAway: readonly (readonly [PreparedRun, PreparedRun])[];
  /** Runs whose first pieces matter there, of each side. */
  readonly frontRuns: readonly number[];
  readonly backRuns: readonly number[];
  readonly front: Laid;
  readonly back: Laid;
  /** Offcuts in front, of each standing the shortest first; where each is joined in the back, and those that are. */
  readonly inOrder: Int32Array;
  readonly partner: Int32Array;
  readonly taken: Uint8Array;
  /** Length that two rests of one plank have together at the least, and more where the later piece ends at a wall. */
  readonly least: number;
  readonly play: number;
  readonly hasWalls: boolean;
}

/**
 * @param front laid up to `row`, `back` laid backwards down to it
 * @param planks that may be used
 */
export function meetingOf(
  prepared: PreparedJob,
  row: number,
  front: Laid,
  back: Laid,
  planks: number,
): Meeting | undefined {
  const seam = seamOf(prepared, row, front, back);
  let best: Meeting | undefined;
  for (let i = 0; i < front.count; i++) {
    for (const index of seam.frontRuns) seam.at[index] = front.standings.at[i][index];
    for (let j = 0; j < back.count; j++) {
      const needed = front.standings.planks[i] + back.standings.planks[j] - planks;
      if (joinPlanks(seam, i, j, needed) < needed) continue;
      for (const index of seam.backRuns) seam.at[index] = back.standings.at[j][prepared.runs.length - 1 - index];
      const price = priceOf(seam, i, j);
      if (price < (best?.price ?? Number.POSITIVE_INFINITY)) best = meetingAt(seam, i, j, price);
    }
  }
  return best;
}

function seamOf(prepared: PreparedJob, row: number, front: Laid, back: Laid): Seam {
  const { runs, rowRuns, neighbours, job } = prepared;
  const of = (index: number): readonly PreparedRun[] => (rowRuns[index] ?? []).map((run) => runs[run]);
  const pairs = (a: number, b: number): (readonly [PreparedRun, PreparedRun])[] =>
    of(a).flatMap((one) => of(b).map((other) => [one, other] as const));
  const beside = pairs(row - 1, row).filter(([a, b]) => neighbours[a.index].includes(b.index));
  const isAligned = ([a, b]: readonly [PreparedRun, PreparedRun]): boolean =>
    a.room === b.room && !a.isWallToWall && !b.isWallToWall;
  return {
    prepared,
    at: new Int32Array(runs.length),
    neighbours: beside,
    twoAway: [...pairs(row - 2, row), ...pairs(row - 1, row + 1)].filter(isAligned),
    front,
    back,
    inOrder: shortestFirst(front),
    partner: new Int32Array(front.standings.room),
    taken: new Uint8Array(back.standings.room),
    frontRuns: [row - 2, row - 1].flatMap((index) => rowRuns[index] ?? []),
    backRuns: [row, row + 1].flatMap((index) => rowRuns[index] ?? []),
    least: prepared.plankLength + job.kerf,
    play: job.play ?? 0,
    hasWalls: runs.some((run) => run.isWallToWall),
  };
}

/** What the two halves cost together; infinite where joints come too near. */
function priceOf({ prepared, at, neighbours, twoAway, front, back }: Seam, i: number, j: number): number {
  const { minStagger, alignedDistance } = prepared.job;
  const laid = { prepared, at };
  for (const [a, b] of neighbours) if (nearPairs(laid, a, b, minStagger) > 0) return Number.POSITIVE_INFINITY;
  let price = front.standings.price[i] + back.standings.price[j];
  for (const [a, b] of twoAway) price += ALIGNED * nearPairs(laid, a, b, alignedDistance);
  return price;
}

/**
 * Joins as many planks as it can, each of the front with the one of the back that it leaves least of: writes into
 * `partner` the place of that offcut, and answers how many; gives up where they cannot be as many as are needed.
 */
function joinPlanks(seam: Seam, i: number, j: number, needed: number): number {
  const { inOrder, partner, taken, least, play, hasWalls } = seam;
  const [a, b] = [seam.front.standings, seam.back.standings];
  const [count, start, from] = [a.counts[i], i * a.room, j * b.room];
  let left = Math.min(count, b.counts[j]);
  if (left < needed) return 0;
  left = count;
  taken.fill(0, 0, b.counts[j]);
  let joined = 0;
  for (let k = 0; k < count; k++) {
    const one = inOrder[start + k];
    let best = -1;
    for (let other = from; other < from + b.counts[j]; other++) {
      if ((a.gives[one] | b.gives[other]) !== (FIRST | LAST) || taken[other - from] === 1) continue;
      // The later piece of the plank needs play where it ends at a wall.
      const grows = b.gives[other] === LAST && !hasWalls ? 0 : play;
      if (a.lengths[one] + b.lengths[other] < least + grows) continue;
      if (best < 0 || b.lengths[other] < b.lengths[best]) best = other;
    }
    partner[k] = best;
    if (best >= 0) {
      taken[best - from] = 1;
      joined++;
    } else if (--left < needed) return 0;
  }
  return joined;
}

function meetingAt({ front, back, inOrder, partner }: Seam, i: number, j: number, price: number): Meeting {
  const [a, b] = [front.standings, back.standings];
  const joined = new Map<number, number>();
  for (let k = 0; k < a.counts[i]; k++)
    if (partner[k] >= 0) joined.set(b.planksOf[partner[k]], a.planksOf[inOrder[i * a.room + k]]);
  return { front: i, back: j, planks: a.planks[i] + b.planks[j] - joined.size, price, joined };
}

/** Places of the offcuts of all standings, of each the shortest first. */
function shortestFirst({ standings, count }: Laid): Int32Array {
  const { room, counts, lengths } = standings;
  const places = Int32Array.from({ length: count * room }, (_, place) => place);
  for (let i = 0; i < count; i++)
    places.subarray(i * room, i * room + counts[i]).sort((p, q) => lengths[p] - lengths[q] || p - q);
  return places;
}
