/** Which runs the bound looks at, and beside which: by hand. */
import { describe, expect, test } from 'vitest';
import { boundRunsOf } from '../../../src/cutting/bound/boundRuns';
import type { CutJob, JobRun } from '../../../src/cutting/job';

const LONG = 250;

/** Rows of these runs in one room, planks of 100, no piece under 20, joints 30 apart. */
function jobOf(rows: readonly (readonly JobRun[])[], rules: Partial<CutJob> = {}): CutJob {
  return {
    plankLength: 100,
    plankWidth: 10,
    kerf: 2,
    minPiece: 20,
    minStagger: 30,
    alignedDistance: 0,
    rows: rows.map((runs) => ({ room: 0, width: 10, runs })),
    ripPairs: [],
    ...rules,
  };
}

const run = (x: number, length = LONG): JobRun => ({ x, length });

/** Each run looked at as `row.run`, with the one it keeps stagger from. */
function treeOf(job: CutJob): string[] {
  const { runs } = boundRunsOf(job);
  const nameOf = ({ rowIndex, runIndex }: (typeof runs)[number]) => `${rowIndex}.${runIndex}`;
  return runs.map((one) => nameOf(one) + (one.parent < 0 ? '' : ` beside ${nameOf(runs[one.parent])}`));
}

describe('runs keep stagger from those', () => {
  test('of the rows next to them that lie beside them', () => {
    expect(treeOf(jobOf([[run(0)], [run(0)], [run(0)]]))).toEqual(['0.0', '1.0 beside 0.0', '2.0 beside 1.0']);
  });

  // By hand: the first run's last joint lies at most at 250 - 20, the other's first at least at x + 20; 30 apart they do
  // not meet from x + 20 - 230 = 30 on, so from x = 240.
  test.each([
    [239, ['0.0', '1.0 beside 0.0']],
    [240, ['0.0', '1.0']],
    [400, ['0.0', '1.0']],
  ])('a run that begins at %d, beside one that ends at 250', (x, tree) => {
    expect(treeOf(jobOf([[run(0)], [run(x)]]))).toEqual(tree);
    // The same turned round, the upper row first.
    expect(treeOf(jobOf([[run(x)], [run(0)]]))).toEqual(tree);
  });

  test('none of another room', () => {
    const job = jobOf([[run(0)], [run(0)]]);
    expect(treeOf({ ...job, rows: [job.rows[0], { ...job.rows[1], room: 1 }] })).toEqual(['0.0', '1.0']);
  });

  // A ring round a column: the lower row lies beside both pieces of the middle row, and so does the upper one. Overlaps
  // less 2 x 20, by hand: 210 with the left piece (0 to 250), 110 with the right one (450 to 600).
  test('round a column but for the loosest link', () => {
    const [lower, middle, upper] = [[run(0, 600)], [run(0, 250), run(450, 150)], [run(0, 590)]];
    expect(treeOf(jobOf([lower, middle, upper])).sort()).toEqual([
      '0.0',
      '1.0 beside 0.0',
      '1.1 beside 0.0',
      '2.0 beside 1.0',
    ]);
  });
});

describe('a run of 250 in planks of 100', () => {
  test('has two whole planks and 50 over; one of 300 two and a whole one over', () => {
    const [of250, of300] = boundRunsOf(jobOf([[run(0)], [run(0, 300)]])).runs;
    expect([of250.quotient, of250.rest]).toEqual([2, 50]);
    expect([of300.quotient, of300.rest]).toEqual([2, 100]);
  });

  test('one of a plank or less is a piece from wall to wall', () => {
    const { runs, shortLengths } = boundRunsOf(jobOf([[run(0, 100), run(200, 60)], [run(0, 60)], [run(0, 101)]]));
    expect(runs.map(({ length }) => length)).toEqual([101]);
    expect(shortLengths).toEqual([
      { length: 60, count: 2 },
      { length: 100, count: 1 },
    ]);
  });
});

describe('of two rows that may be strips of each other only one is counted', () => {
  const widths = (first: number, last: number) => (job: CutJob) => ({
    ...job,
    rows: job.rows.map((row, i) => ({ ...row, width: [first, 10, 10, last][i] })),
  });
  const rowsOf = (lengths: readonly number[]) => lengths.map((length) => [run(0, length)]);
  const leftOut = (lengths: readonly number[], ripPairs: CutJob['ripPairs'], [first, last] = [4, 4]) =>
    [...boundRunsOf(widths(first, last)(jobOf(rowsOf(lengths), { ripPairs }))).rowsLeftOut].sort();

  test('the longer one', () => {
    expect(leftOut([250, 250, 250, 290], [[0, 3]])).toEqual([0]);
    expect(leftOut([290, 250, 250, 250], [[0, 3]])).toEqual([3]);
    expect(leftOut([250, 250, 250, 250], [[0, 3]])).toEqual([3]);
  });

  // Row 3 may get strips of row 0 or of row 1: it is the one row that both pay for.
  test('the one that is in two pairs is left out, however long', () => {
    const both = (job: CutJob) => ({ ...job, rows: job.rows.map((row, i) => ({ ...row, width: i === 2 ? 10 : 4 })) });
    const job = jobOf(rowsOf([210, 220, 250, 290]), {
      ripPairs: [
        [0, 3],
        [1, 3],
      ],
    });
    expect([...boundRunsOf(both(job)).rowsLeftOut]).toEqual([3]);
  });

  // 4 + 4 + a blade of 2 is a plank of 10; 4 + 5 is more.
  test('both where the strips do not fit on a plank', () => {
    expect(leftOut([250, 250, 250, 290], [[0, 3]], [4, 5])).toEqual([]);
  });
});
