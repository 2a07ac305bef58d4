/** The laws of single planks: what one gives along its length (4), and the strips ripped from it (6). */
import type { CutJob } from '../job';
import { keepsEnd, type PlacedPiece, whereOf } from './placedPieces';

/** Law 4: what one plank gives. Pieces come in laying order. */
export function plankLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
  const own = groupByPlank(pieces.filter((piece) => !piece.isStrip));
  return [...own].flatMap(([plank, cut]) => {
    const name = `plank ${plank + 1}`;
    const broken: string[] = [];
    for (const end of ['left', 'right'] as const) {
      const count = cut.filter((piece) => piece.from === end).length;
      if (count > 1) broken.push(`${name}: ${count} pieces keep its ${end} end`);
    }
    if (cut.length > 1 && cut.some((piece) => piece.from === 'whole')) {
      broken.push(`${name}: whole, and ${cut.length - 1} other pieces from it`);
    }
    const length = cut.reduce((sum, piece) => sum + piece.length, 0);
    const kerfs = (cut.length - 1) * job.kerf;
    const play = playOf(job, cut);
    const sum = length + kerfs + play;
    if (sum > job.plankLength) {
      const withPlay = play > 0 ? ` + play ${play}` : '';
      broken.push(`${name}: pieces ${length} + kerfs ${kerfs}${withPlay} = ${sum}, plank ${job.plankLength}`);
    }
    return broken;
  });
}

/** Room to grow: for every piece that ends at a wall, but for the one of the plank that is laid first. */
function playOf(job: CutJob, cut: readonly PlacedPiece[]): number {
  return (job.play ?? 0) * cut.slice(1).filter((piece) => piece.endsAtWall).length;
}

function groupByPlank(pieces: readonly PlacedPiece[]): Map<number, PlacedPiece[]> {
  const planks = new Map<number, PlacedPiece[]>();
  for (const piece of pieces) {
    const group = planks.get(piece.plank);
    if (group) group.push(piece);
    else planks.set(piece.plank, [piece]);
  }
  return planks;
}

/** Law 6: strips. Longest strips choose first, so a strip goes without only if no choice could serve all. */
export function stripLaws(job: CutJob, pieces: readonly PlacedPiece[]): string[] {
  const own = groupByPlank(pieces.filter((piece) => !piece.isStrip));
  const strips = groupByPlank(pieces.filter((piece) => piece.isStrip));
  return [...strips].flatMap(([plank, onPlank]) => {
    const free = longestFirst(own.get(plank) ?? []);
    return longestFirst(onPlank).flatMap((strip) => {
      const firstRows = firstRowsOf(job, strip.rowIndex);
      if (firstRows.length === 0) return [`${whereOf(strip)}: a strip in a row of no rip pair that fits the width`];
      const index = free.findIndex((piece) => givesStrip(piece, strip, firstRows));
      if (index >= 0) free.splice(index, 1);
      return index >= 0
        ? []
        : [`${whereOf(strip)}: no piece of plank ${plank + 1} gives a ${strip.from} of ${strip.length}`];
    });
  });
}

function longestFirst(pieces: readonly PlacedPiece[]): PlacedPiece[] {
  return [...pieces].sort((a, b) => b.length - a.length);
}

/** First rows whose strip fits beside the row at `lastIndex` in the width of one plank. */
function firstRowsOf(job: CutJob, lastIndex: number): number[] {
  const widthOf = (rowIndex: number): number => job.rows[rowIndex]?.width ?? Number.POSITIVE_INFINITY;
  return job.ripPairs
    .filter(([first, last]) => last === lastIndex && widthOf(first) + widthOf(last) + job.kerf <= job.plankWidth)
    .map(([first]) => first);
}

function givesStrip(piece: PlacedPiece, strip: PlacedPiece, firstRows: readonly number[]): boolean {
  return firstRows.includes(piece.rowIndex) && keepsEnd(piece, strip.from) && piece.length >= strip.length;
}
