/**
 * What a choice of first pieces saves: pieces cut from what is in hand, and planks that serve two pieces.
 *
 * Every end piece would take a plank of its own. One is saved for each that an offcut in hand serves, and for each pair, a
 * first piece and a last piece, that one plank serves. First pieces and offcuts with a left end on one side, last pieces and
 * offcuts with a right end on the other: the most that can be saved is a maximum matching of a bipartite graph, found by
 * augmenting paths (H. W. Kuhn, 1955).
 */
import type { CutJob } from '../job';
import type { StockPiece } from './onwardJob';

/** A first or last piece of a run longer than a plank; its place in laying order counts for play. */
export interface EndPiece {
  readonly run: number;
  readonly length: number;
  readonly width: number;
}

/** For every first piece and last piece what serves it: a piece in hand, or the plank of its partner; null a new plank. */
export interface Served {
  /** Index of the last piece that shares the plank of each first piece, or -1. */
  readonly partnerOfFirst: readonly number[];
  readonly stockOfFirst: readonly number[];
  readonly stockOfLast: readonly number[];
  readonly saved: number;
}

/** The most planks that can be saved. Firsts and lasts in laying order; a whole plank's length is never saved. */
export function mostSaved(
  job: CutJob,
  firsts: readonly EndPiece[],
  lasts: readonly EndPiece[],
  stock: readonly StockPiece[],
): Served {
  const rights = indicesOf(stock, 'right');
  const lefts = indicesOf(stock, 'left');
  const { plankLength, kerf, play = 0 } = job;
  const fits = (piece: EndPiece, held: StockPiece, room: number) =>
    piece.length < plankLength && piece.length + room <= held.length && piece.width <= (held.width ?? job.plankWidth);
  // Left side: first pieces, then offcuts with a left end. Right side: last pieces, then offcuts with a right end.
  const edges = firsts.map((first) => {
    const partners: number[] = [];
    rights.forEach((held, i) => {
      if (fits(first, stock[held], 0)) partners.push(lasts.length + i);
    });
    lasts.forEach((last, i) => {
      // The piece that is laid first is cut first; a last piece after it needs room to grow.
      const room = first.run <= last.run ? play : 0;
      if (first.length + kerf + last.length + room <= plankLength) partners.push(i);
    });
    return partners;
  });
  for (const held of lefts) {
    edges.push(lasts.flatMap((last, i) => (fits(last, stock[held], play) ? [i] : [])));
  }
  const { ofLeft, size } = matching(edges, lasts.length + rights.length);
  const heldBy = (right: number) => (right >= lasts.length ? rights[right - lasts.length] : -1);
  const stockOfLast = lasts.map(() => -1);
  ofLeft.slice(firsts.length).forEach((right, i) => {
    if (right >= 0) stockOfLast[right] = lefts[i];
  });
  return {
    partnerOfFirst: firsts.map((_, i) => (ofLeft[i] < lasts.length ? ofLeft[i] : -1)),
    stockOfFirst: firsts.map((_, i) => heldBy(ofLeft[i])),
    stockOfLast,
    saved: size,
  };
}

function indicesOf(stock: readonly StockPiece[], end: 'left' | 'right'): readonly number[] {
  // The shortest first: what fits them fits few others.
  return stock
    .map((piece, index) => ({ ...piece, index }))
    .filter(({ ends }) => ends === end || ends === 'both')
    .sort((a, b) => a.length - b.length)
    .map(({ index }) => index);
}

/** A maximum matching. @param edges for every vertex of the left side its neighbours, the preferred ones first */
function matching(edges: readonly (readonly number[])[], rightCount: number) {
  const ofRight = new Int32Array(rightCount).fill(-1);
  const ofLeft = new Int32Array(edges.length).fill(-1);
  const augment = (left: number, seen: Uint8Array): boolean => {
    for (const right of edges[left]) {
      if (seen[right]) continue;
      seen[right] = 1;
      if (ofRight[right] >= 0 && !augment(ofRight[right], seen)) continue;
      ofRight[right] = left;
      ofLeft[left] = right;
      return true;
    }
    return false;
  };
  let size = 0;
  edges.forEach((_, left) => {
    if (augment(left, new Uint8Array(rightCount))) size += 1;
  });
  return { ofLeft: [...ofLeft], size };
}
