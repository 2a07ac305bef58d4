/** Which piece is cut from which plank or piece in hand, for given first pieces. */
import { addedUp, madeOf } from '../../geometry/lists';
import type { CutJob, KeptEnd } from '../job';
import { lastAfter, type OpenRun, wholesAfter } from './firstPieces';
import type { OnwardJob, OnwardPiece } from './onwardJob';
import { type EndPiece, mostSaved } from './savings';

/** A plank or a piece in hand, and what is cut from it so far. */
interface Source {
  readonly capacity: number;
  readonly width: number;
  readonly lengths: number[];
  /** Pieces that need room to grow where they are not the first to be laid. */
  growing: number;
}

interface Booked {
  readonly runs: (readonly OnwardPiece[])[];
  readonly plankCount: number;
}

export function bookPieces(
  onward: OnwardJob,
  runs: readonly OpenRun[],
  firsts: readonly number[],
): { readonly rows: readonly { readonly runs: Booked['runs'] }[]; readonly plankCount: number } {
  const { job, stock } = onward;
  const held: Source[] = stock.map(({ length, width = job.plankWidth }) => {
    return { capacity: length, width, lengths: [], growing: 0 };
  });
  const planks: Source[] = [];
  const pieces: (OnwardPiece | null)[][] = runs.map(() => []);
  bookEnds(onward, runs, firsts, { held, planks, pieces });
  bookWallToWall(job, runs, { held, planks, pieces });
  return { rows: numbered(job, runs, pieces as OnwardPiece[][]), plankCount: planks.length };
}

interface Books {
  readonly held: Source[];
  readonly planks: Source[];
  readonly pieces: (OnwardPiece | null)[][];
}

function bookEnds(onward: OnwardJob, runs: readonly OpenRun[], firsts: readonly number[], books: Books): void {
  const { job, stock } = onward;
  const { plankLength } = job;
  const long = runs.flatMap((run, index) => (run.isWallToWall ? [] : [{ run, index }]));
  const end = (index: number, length: number): EndPiece => ({ run: index, length, width: runs[index].width });
  const heads = long.map(({ index }) => end(index, firsts[index]));
  const tails = long.map(({ run, index }) => end(index, lastAfter(run, firsts[index], plankLength)));
  const { partnerOfFirst, stockOfFirst, stockOfLast } = mostSaved(job, heads, tails, stock);
  const plankOfTail = tails.map(() => -1);
  const put = (length: number, kept: KeptEnd, plank: number, isGrowing: boolean): OnwardPiece => {
    const source = books.planks[plank];
    source.lengths.push(length);
    if (isGrowing) source.growing += 1;
    return { length, from: length === plankLength ? 'whole' : kept, plank };
  };
  const open = () => books.planks.push({ capacity: plankLength, width: job.plankWidth, lengths: [], growing: 0 }) - 1;
  const hold = (length: number, kept: KeptEnd, index: number, isGrowing: boolean): OnwardPiece | null => {
    const source = books.held[index];
    const { kerf, play = 0 } = job;
    const need = source.lengths.length > 0 ? kerf + play : 0;
    if (length + need > source.capacity - addedUp(source.lengths)) return null;
    source.lengths.push(length);
    if (isGrowing) source.growing += 1;
    return { length, from: kept, plank: -1, stock: index };
  };
  long.forEach(({ run, index }, i) => {
    const { length } = heads[i];
    const fromHeld = stockOfFirst[i] >= 0 ? hold(length, 'right', stockOfFirst[i], false) : null;
    const plank = fromHeld ? -1 : open();
    if (partnerOfFirst[i] >= 0 && plank >= 0) plankOfTail[partnerOfFirst[i]] = plank;
    const first = fromHeld ?? put(length, 'right', plank, false);
    const wholes = madeOf(wholesAfter(run, length, plankLength), () => put(plankLength, 'whole', open(), false));
    books.pieces[index] = [first, ...wholes, null];
  });
  long.forEach(({ index }, i) => {
    const { length } = tails[i];
    const fromHeld = stockOfLast[i] >= 0 ? hold(length, 'left', stockOfLast[i], true) : null;
    const plank = plankOfTail[i] >= 0 ? plankOfTail[i] : -1;
    books.pieces[index][books.pieces[index].length - 1] =
      fromHeld ?? put(length, 'left', plank >= 0 ? plank : open(), true);
  });
}

/** The longest first, each from what is left of the shortest that it fits: in hand, then begun, then new. */
function bookWallToWall(job: CutJob, runs: readonly OpenRun[], { held, planks, pieces }: Books): void {
  const { plankLength } = job;
  const single = runs.flatMap((run, index) => (run.isWallToWall ? [{ run, index }] : []));
  for (const { run, index } of single.sort((a, b) => b.run.length - a.run.length)) {
    const { length } = run;
    const isFit = (source: Source) => run.width <= source.width && needWith(job, source, length) <= source.capacity;
    const from: KeptEnd = length === plankLength ? 'whole' : 'middle';
    const inHand = length < plankLength ? tightest(held, isFit) : -1;
    const begun = inHand < 0 && length < plankLength ? tightest(planks, isFit) : -1;
    const plank =
      begun >= 0 || inHand >= 0
        ? begun
        : planks.push({ capacity: plankLength, width: job.plankWidth, lengths: [], growing: 0 }) - 1;
    const source = inHand >= 0 ? held[inHand] : planks[plank];
    source.lengths.push(length);
    source.growing += 1;
    pieces[index] = [inHand >= 0 ? { length, from, plank: -1, stock: inHand } : { length, from, plank }];
  }
}

/** What a source would have to hold; with several pieces every one that ends at a wall is given room to grow. */
function needWith({ kerf, play = 0 }: CutJob, { lengths, growing }: Source, length: number): number {
  const sum = lengths.reduce((total, other) => total + other, length);
  return lengths.length === 0 ? sum : sum + kerf * lengths.length + play * (growing + 1);
}

function tightest(sources: readonly Source[], isFit: (source: Source) => boolean): number {
  const left = ({ capacity, lengths }: Source) => capacity - addedUp(lengths);
  let best = -1;
  sources.forEach((source, i) => {
    if (isFit(source) && (best < 0 || left(source) < left(sources[best]))) best = i;
  });
  return best;
}

/** Planks in the order in which laying first needs them. */
function numbered({ rows }: CutJob, runs: readonly OpenRun[], pieces: readonly (readonly OnwardPiece[])[]) {
  const numbers = new Map<number, number>();
  const numberOf = (piece: OnwardPiece): OnwardPiece => {
    if (piece.plank < 0) return piece;
    if (!numbers.has(piece.plank)) numbers.set(piece.plank, numbers.size);
    return { ...piece, plank: numbers.get(piece.plank) as number };
  };
  const ofRow = rows.map((): (readonly OnwardPiece[])[] => []);
  runs.forEach((run, i) => {
    ofRow[run.rowIndex].push(pieces[i].map(numberOf));
  });
  return ofRow.map((ofRuns) => ({ runs: ofRuns }));
}
