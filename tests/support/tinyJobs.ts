/** Tiny random jobs, small enough to try every plan of; the same for the same seed. */
import type { CutJob, JobRow, JobRun } from '../../src/cutting/job';
import { type SeededRandom, seededRandom } from './seededRandom';

/**
 * Planks of 5 to 12 units; 1 to 5 rows in one or two rooms, one or two runs a row, some of them wall to wall; kerf 0 to
 * 2; every second room of several rows has a rip pair, whose widths may or may not fit on a plank.
 */
export function tinyJob(seed: number): CutJob {
  const random = seededRandom(seed);
  const plankLength = random.whole(5, 12);
  const roomCount = random.whole(1, 4) === 1 ? 2 : 1;
  const rows: JobRow[] = [];
  const ripPairs: [number, number][] = [];
  for (let room = 0; room < roomCount; room += 1) {
    const rowCount = random.whole(1, roomCount === 2 ? 2 : 5);
    const isRipped = rowCount > 1 && rowCount < 4 && random.whole(1, 3) > 1;
    if (isRipped) ripPairs.push([rows.length, rows.length + rowCount - 1]);
    // What strips may serve makes many plans: shorter runs keep their number small.
    const longest = (isRipped ? 2 : 3) * plankLength;
    const mostRuns = rowCount > 2 || roomCount > 1 ? 1 : 2;
    rows.push(...rowsOfRoom(random, { room, rowCount, plankLength, longest, mostRuns }));
  }
  return {
    plankLength,
    plankWidth: 8,
    kerf: random.whole(0, 2),
    minPiece: random.whole(1, Math.floor(plankLength / 2)),
    minStagger: random.whole(0, Math.floor(plankLength / 2)),
    alignedDistance: random.whole(0, 2),
    rows,
    ripPairs,
  };
}

function rowsOfRoom(
  random: SeededRandom,
  {
    room,
    rowCount,
    ...lengths
  }: { room: number; rowCount: number; plankLength: number; longest: number; mostRuns: number },
): JobRow[] {
  const usual = randomRuns(random, lengths);
  return Array.from({ length: rowCount }, (_, row) => ({
    room,
    width: row === 0 || row === rowCount - 1 ? random.whole(2, 6) : 8,
    runs: random.whole(1, 3) === 1 ? randomRuns(random, lengths) : usual,
  }));
}

function randomRuns(
  random: SeededRandom,
  { plankLength, longest, mostRuns }: { plankLength: number; longest: number; mostRuns: number },
): JobRun[] {
  const runs: JobRun[] = [];
  let x = random.whole(0, 2);
  for (let count = random.whole(1, 3) === 1 ? mostRuns : 1; count > 0; count -= 1) {
    const isShort = random.whole(1, 3) === 1;
    const length = isShort ? random.whole(1, plankLength) : random.whole(plankLength + 1, longest);
    runs.push({ x, length });
    x += length + random.whole(1, 3);
  }
  return runs;
}
