/** A job as a file that `npm run plan -- --cases` reads: told with whatever goes wrong, so that it can be planned again. */
import type { CutJob } from '../job';
import type { OnwardJob } from '../onward/onwardJob';

/** A job as a file of jobs. @param onward what lies and what is in hand, where the job is the rest of a floor */
export function jobFileOf(job: CutJob, onward?: OnwardJob): string {
  const { plankLength: L, plankWidth: W, kerf: k, minPiece: m, minStagger: S, alignedDistance: T, play = 0 } = job;
  const rows = job.rows.map(({ room, width, runs }) => ({
    room,
    width,
    runs: runs.map(({ x, length }) => ({ x, R: length })),
  }));
  const rest = onward && {
    before: onward.before.map(({ room, joints, joints2 }) => ({ room, joints, joints2 })),
    stock: onward.stock.map(({ length, ends, width }) => ({ length, ends, width })),
    whole: onward.whole,
  };
  return JSON.stringify({
    instances: [{ id: 'to replay', L, W, k, m, S, T, play, rows, twins: job.ripPairs, ...rest }],
  });
}
