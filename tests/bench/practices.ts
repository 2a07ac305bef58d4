/**
 * Three plain practices that a plan is compared with. Common practice, all three: carry the last offcut into the next
 * run; keep every offcut and look for the shortest that will do; order the area and ten per cent.
 *
 * The first two lay the runs in order, as one does without a plan: each first piece has to keep the stagger to the row
 * before. Where none does, the longest piece that keeps the minimum is laid and the plan is not legal. Strips of a
 * ripped first row are not kept.
 */
import type { CutJob, CutPlan, JobRun, KeptEnd, PlannedPiece } from '../../src/cutting/job';

/**
 * What an offcut is and which factory end it still has: none for `middle`; `either` where a wall-to-wall piece may have
 * been cut from whichever end is not wanted.
 */
interface Offcut {
  readonly plank: number;
  readonly length: number;
  readonly end: 'left' | 'right' | 'either' | 'middle';
}

/** Where pieces come from: a new plank or an offcut, and what becomes of the rest. */
interface Source {
  /** A first piece of one of the lengths allowed (by length); the length chosen. */
  readonly first: (allowed: readonly boolean[]) => { readonly length: number; readonly plank: number };
  readonly last: (length: number) => number;
  readonly wallToWall: (length: number) => number;
  readonly whole: () => number;
  readonly plankCount: () => number;
}

/** Planks of area and ten per cent, rounded up. */
export function areaPlusTenPercent(job: CutJob): number {
  const area = job.rows.reduce((sum, row) => sum + row.width * row.runs.reduce((all, run) => all + run.length, 0), 0);
  return Math.ceil((110 * area) / (100 * job.plankLength * job.plankWidth));
}

/** Only what the last piece left is carried to the next run; a new plank is cut back as little as the rules allow. */
export function carryLastOffcut(job: CutJob): CutPlan {
  const { plankLength, kerf } = job;
  let planks = 0;
  let carried: Offcut | undefined;
  const carry = (plank: number, length: number) => {
    carried = length > 0 ? { plank, length, end: 'right' } : undefined;
  };
  return layRuns(job, {
    first: (allowed) => {
      const offcut = carried;
      carried = undefined;
      const length = offcut ? longestAllowed(allowed, offcut.length) : 0;
      if (offcut && length > 0) return { length, plank: offcut.plank };
      return { length: longestAllowed(allowed, plankLength), plank: planks++ };
    },
    last: (length) => {
      carry(planks, plankLength - length - kerf);
      return planks++;
    },
    wallToWall: (length) => {
      const from = carried && carried.length >= length ? carried : { plank: planks++, length: plankLength };
      carry(from.plank, from.length - length - kerf);
      return from.plank;
    },
    whole: () => planks++,
    plankCount: () => planks,
  });
}

/** Every offcut is kept, and the shortest that meets the rules is taken first. */
export function keepAllOffcuts(job: CutJob): CutPlan {
  const { plankLength, kerf } = job;
  let planks = 0;
  const pile: Offcut[] = [];
  const keep = (offcut: Offcut) => {
    if (offcut.length > 0) pile.push(offcut);
    pile.sort((a, b) => a.length - b.length || a.plank - b.plank);
  };
  /** Takes the shortest that will do off the pile and puts back what is left beside a piece and its kerf. */
  const take = (willDo: (offcut: Offcut) => number, endLeft: (offcut: Offcut) => Offcut['end']) => {
    const at = pile.findIndex((offcut) => willDo(offcut) > 0);
    if (at < 0) return undefined;
    const [offcut] = pile.splice(at, 1);
    const length = willDo(offcut);
    keep({ plank: offcut.plank, length: offcut.length - length - kerf, end: endLeft(offcut) });
    return { length, plank: offcut.plank };
  };
  const cutNew = (length: number, end: Offcut['end']) => {
    keep({ plank: planks, length: plankLength - length - kerf, end });
    return { length, plank: planks++ };
  };
  const longEnough = (length: number, end?: Offcut['end']) => (offcut: Offcut) =>
    offcut.length >= length && (end === undefined || has(offcut, end)) ? length : 0;
  return layRuns(job, {
    first: (allowed) =>
      take(
        (offcut) => (has(offcut, 'right') ? longestAllowed(allowed, offcut.length) : 0),
        () => 'middle',
      ) ?? cutNew(longestAllowed(allowed, plankLength), 'left'),
    last: (length) => (take(longEnough(length, 'left'), () => 'middle') ?? cutNew(length, 'right')).plank,
    wallToWall: (length) => (take(longEnough(length), (offcut) => offcut.end) ?? cutNew(length, 'either')).plank,
    whole: () => planks++,
    plankCount: () => planks,
  });
}

function has(offcut: Offcut, end: Offcut['end']): boolean {
  return offcut.end === end || offcut.end === 'either';
}

function longestAllowed(allowed: readonly boolean[], most: number): number {
  for (let length = most; length > 0; length--) if (allowed[length]) return length;
  return 0;
}

function layRuns(job: CutJob, source: Source): CutPlan {
  let before: number[] = [];
  const rows = job.rows.map((row, rowIndex) => {
    if (job.rows[rowIndex - 1]?.room !== row.room) before = [];
    const joints: number[] = [];
    const runs = row.runs.map((run) => {
      const pieces = layRun(job, run, before, source);
      let at = run.x;
      for (const piece of pieces.slice(0, -1)) {
        at += piece.length;
        joints.push(at);
      }
      return pieces;
    });
    before = joints;
    return { runs };
  });
  return { rows, plankCount: source.plankCount(), bound: 0, stop: 'step limit', steps: 0, broken: [] };
}

function layRun(job: CutJob, run: JobRun, before: readonly number[], source: Source): PlannedPiece[] {
  const { plankLength } = job;
  const piece = (length: number, plank: number, from: KeptEnd): PlannedPiece => ({
    length,
    plank,
    from: length === plankLength ? 'whole' : from,
  });
  if (run.length <= plankLength) return [piece(run.length, source.wallToWall(run.length), 'middle')];
  const first = source.first(allowedFirstPieces(job, run, before));
  const pieces = [piece(first.length, first.plank, 'right')];
  let left = run.length - first.length;
  for (; left > plankLength; left -= plankLength) pieces.push(piece(plankLength, source.whole(), 'whole'));
  pieces.push(piece(left, source.last(left), 'left'));
  return pieces;
}

/** By length, whether a first piece keeps the minimum at both ends and the stagger; failing that, the minimum alone. */
function allowedFirstPieces(job: CutJob, run: JobRun, before: readonly number[]): boolean[] {
  const longEnough = Array.from({ length: job.plankLength + 1 }, (_, first) => {
    const last = (run.length - first) % job.plankLength || job.plankLength;
    return first >= Math.max(1, job.minPiece) && first < run.length && last >= job.minPiece;
  });
  const allowed = longEnough.slice();
  for (const joint of before) {
    for (let back = joint - run.x; back > -job.minStagger; back -= job.plankLength) {
      const to = Math.min(job.plankLength, back + job.minStagger - 1);
      for (let first = Math.max(0, back - job.minStagger + 1); first <= to; first++) {
        const jointsAt = joint - run.x - back;
        if (first + jointsAt < run.length) allowed[first] = false;
      }
    }
  }
  if (allowed.includes(true)) return allowed;
  return longEnough.includes(true) ? longEnough : longEnough.map((_, first) => first > 0 && first < run.length);
}
