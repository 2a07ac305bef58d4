import type { CutJob } from '../job';
import type { StockPiece } from './onwardJob';

/**
 * How many planks a choice of end pieces saves, quickly and never too many: each offcut in hand takes the longest end piece
 * that it can serve, then each last piece, the longest first, any first piece that fits beside it with kerf and play.
 */
export function quickSaved(
  { plankLength, kerf, play = 0 }: CutJob,
  firsts: readonly number[],
  lasts: readonly number[],
  stock: readonly StockPiece[],
): number {
  const up = (a: number, b: number) => a - b;
  const ends = [...firsts].sort(up);
  const tails = [...lasts].sort(up);
  let saved = 0;
  for (const { length, ends: has } of [...stock].sort((a, b) => a.length - b.length)) {
    const isTaken = has !== 'left' && takeLongest(ends, length, plankLength);
    if (isTaken || (has !== 'right' && takeLongest(tails, length - play, plankLength))) saved += 1;
  }
  let beside = 0;
  let used = 0;
  for (let i = tails.length - 1; i >= 0; i--) {
    const room = plankLength - kerf - play - tails[i];
    while (beside < ends.length && ends[beside] <= room) beside += 1;
    if (beside > used) used += 1;
  }
  return saved + used;
}

/** Takes the longest that fits out of an ascending list. */
function takeLongest(lengths: number[], room: number, plankLength: number): boolean {
  for (let i = lengths.length - 1; i >= 0; i--) {
    if (lengths[i] > room || lengths[i] === plankLength) continue;
    lengths.splice(i, 1);
    return true;
  }
  return false;
}
