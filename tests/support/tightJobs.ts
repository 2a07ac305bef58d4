/**
 * Tiny jobs whose rules leave few first pieces that go together: a stagger of a third to half a plank, lengths of whole
 * planks, halves and thirds. Small enough to try every plan of; the same for the same seed.
 */
import type { CutJob, JobRow, JobRun } from '../../src/cutting/job';
import { type SeededRandom, seededRandom } from './seededRandom';

/** Planks of 5 to `longest` units; 3 to 7 rows of one room, some with a second run; every fourth job has a rip pair, and fewer rows. */
export function tightJob(seed: number, longest = 9): CutJob {
  const random = seededRandom(seed);
  const plankLength = random.whole(5, longest);
  const part = (share: number): number => Math.floor(share * plankLength);
  const oneOf = (values: readonly number[]): number => values[random.whole(0, values.length - 1)] ?? 0;
  const usual = runLength(random, plankLength);
  const other = runLength(random, plankLength);
  const isRipped = random.whole(1, 4) === 1;
  const rowCount = random.whole(3, isRipped ? 4 : 7);
  const rows = Array.from({ length: rowCount }, (_, i): JobRow => {
    const isWallRow = isRipped && (i === 0 || i === rowCount - 1);
    return {
      room: 0,
      width: isWallRow ? 3 : 8,
      runs: rowRuns(random, { plankLength, length: oneOf([usual, usual, usual, other]) }),
    };
  });
  return {
    plankLength,
    plankWidth: 8,
    kerf: oneOf([0, 0, 1, 2]),
    minPiece: Math.max(1, oneOf([0, part(1 / 4), part(1 / 3), part(1 / 2) - 1, part(1 / 2)])),
    minStagger: oneOf([part(1 / 3), Math.ceil(plankLength / 3), part(0.4), part(0.45), part(1 / 2)]),
    alignedDistance: 1,
    rows,
    ripPairs: isRipped ? [[0, rowCount - 1]] : [],
  };
}

/** One to three planks, and of another one a half, a third, two thirds, all or any part. */
function runLength(random: SeededRandom, plankLength: number): number {
  const shares = [1 / 3, 1 / 2, 2 / 3, 1, random.whole(1, plankLength) / plankLength];
  const rest = Math.floor((shares[random.whole(0, shares.length - 1)] ?? 1) * plankLength);
  return random.whole(1, 3) * plankLength + rest;
}

function rowRuns(random: SeededRandom, run: { readonly plankLength: number; readonly length: number }): JobRun[] {
  const { plankLength, length } = run;
  const x = random.whole(1, 5) === 1 ? random.whole(0, plankLength) : 0;
  const first = { x, length };
  if (random.whole(1, 6) > 1) return [first];
  return [first, { x: x + length + 1, length: random.whole(1, 2 * plankLength) }];
}
