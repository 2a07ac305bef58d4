/** Whole planks first, the cut piece last: hand-made plans of planks of 48 and runs of 110, 48 + 48 + 14. */
import { describe, expect, test } from 'vitest';
import type { CutJob, CutPlan, PlannedPiece } from '../../../src/cutting/job';
import { cutPiecesLast } from '../../../src/cutting/plan/cutLast';
import { checkCutPlan } from '../../../src/cutting/plan/ledger';
import { planCuts } from '../../../src/cutting/search';

const jobOf = (rowCount: number, changes: Partial<CutJob> = {}): CutJob => ({
  ...{ plankLength: 48, plankWidth: 6, kerf: 0, minPiece: 8, minStagger: 8, alignedDistance: 2, ripPairs: [] },
  rows: Array.from({ length: rowCount }, () => ({ room: 0, width: 6, runs: [{ x: 0, length: 110 }] })),
  ...changes,
});

/** A run of these pieces, each from a plank of its own, counted on. */
function run(lengths: readonly number[], firstPlank: number): PlannedPiece[] {
  return lengths.map((length, i) => {
    const from = length === 48 ? 'whole' : i === 0 ? 'right' : 'left';
    return { length, plank: firstPlank + i, from };
  });
}

function planOf(...rows: PlannedPiece[][]): CutPlan {
  const plankCount = 1 + Math.max(...rows.flat().map(({ plank }) => plank));
  return {
    rows: rows.map((pieces) => ({ runs: [pieces] })),
    plankCount,
    bound: 0,
    stop: 'step limit',
    steps: 0,
    broken: [],
  };
}

const lengthsIn = ({ rows }: CutPlan) => rows.map(({ runs }) => runs[0].map(({ length }) => length));

describe('a run that begins with the cut piece', () => {
  test('is turned about: the piece that is measured in place is the cut one, and keeps its left end', () => {
    const job = jobOf(1);
    const plan = cutPiecesLast(job, planOf(run([14, 48, 48], 0)));
    expect(lengthsIn(plan)).toEqual([[48, 48, 14]]);
    expect(plan.rows[0].runs[0].map(({ from }) => from)).toEqual(['whole', 'whole', 'left']);
    expect(checkCutPlan(job, plan)).toEqual([]);
  });

  // Joints at 14 and 62; turned about, at 48 and 96. In the next row one at 41, 7 away, or two rows on one at 47.
  test('stays where a joint would come too near one of the next row, or in line with one two rows on', () => {
    const near = planOf(run([14, 48, 48], 0), run([41, 48, 21], 3));
    expect(lengthsIn(cutPiecesLast(jobOf(2), near))).toEqual([
      [14, 48, 48],
      [41, 48, 21],
    ]);
    const inLine = planOf(run([14, 48, 48], 0), run([30, 48, 32], 3), run([47, 48, 15], 6));
    expect(lengthsIn(cutPiecesLast(jobOf(3), inLine))[0]).toEqual([14, 48, 48]);
    expect(lengthsIn(cutPiecesLast(jobOf(3, { alignedDistance: 0 }), inLine))[0]).toEqual([48, 48, 14]);
  });

  // The rest of its plank, 34 with the left end, is the last piece of the next row.
  test('stays where the rest of its plank serves another row', () => {
    const shared = planOf(run([14, 48, 48], 0), [
      { length: 28, plank: 3, from: 'right' },
      { length: 48, plank: 4, from: 'whole' },
      { length: 34, plank: 0, from: 'left' },
    ]);
    expect(lengthsIn(cutPiecesLast(jobOf(2), shared))[0]).toEqual([14, 48, 48]);
  });
});

test('a floor of one row begins with a whole plank', () => {
  expect(lengthsIn(planCuts(jobOf(1)))).toEqual([[48, 48, 14]]);
});
