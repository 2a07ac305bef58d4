/** Few offcuts waiting in the rest of a floor: waiting counted piece by piece, the laws of the rest kept, the same pieces. */
import { describe, expect, test } from 'vitest';
import type { CutJob } from '../../../src/cutting/job';
import { checkOnwardPlan } from '../../../src/cutting/judge/onwardLaws';
import { withFewerWaiting } from '../../../src/cutting/onward/fewerWaiting';
import { openRuns } from '../../../src/cutting/onward/firstPieces';
import { planOnward } from '../../../src/cutting/onward/onward';
import type { OnwardJob, OnwardPlan } from '../../../src/cutting/onward/onwardJob';
import { planCuts } from '../../../src/cutting/search';
import { mostWaiting } from '../../support/onwardWaiting';
import { FLOOR_KINDS, randomJob } from '../../support/randomJobs';
import { restOf } from '../../support/restOfFloor';

type Rows = OnwardPlan['rows'];

const piecesOf = (rows: Rows) =>
  rows
    .flatMap(({ runs }) => runs.flat())
    .map(({ length, from }) => `${length} ${from}`)
    .sort();

const job = (rowCount: number, length: number): CutJob => ({
  plankLength: 100,
  plankWidth: 10,
  kerf: 0,
  minPiece: 10,
  minStagger: 10,
  alignedDistance: 10,
  rows: Array.from({ length: rowCount }, () => ({ room: 0, width: 10, runs: [{ x: 0, length }] })),
  ripPairs: [],
});

describe('a rest', () => {
  test('of half planks: one offcut at a time', () => {
    // By hand: 150 is a plank and a half, so 8 rows take 12 planks. Beginning with 50 and with 100 in turn, a row's last piece
    // leaves the first one of the next: one waits. Every second row is then alike, so aligned joints do not count here.
    const onward: OnwardJob = {
      job: { ...job(8, 150), alignedDistance: 0 },
      before: [{ room: 0, joints: [75], joints2: [] }],
      stock: [],
      whole: 0,
    };
    const found = planOnward(onward);
    expect(found.plankCount).toBe(12);
    expect(mostWaiting(found.rows)).toBe(1);
  });

  test('with an offcut in hand: it is used first', () => {
    // By hand: every row begins with 40 and ends with 60, so that any row may take the 40 in hand; waiting for the last one it
    // would wait with one of the others. The stagger is none here, and no joints are told aligned.
    const onward: OnwardJob = {
      job: { ...job(4, 100 + 40 + 20), minStagger: 0, alignedDistance: 0 },
      before: [],
      stock: [{ length: 40, ends: 'right' }],
      whole: 0,
    };
    const row = (plank: number, first: object) => ({
      runs: [
        [
          { length: 40, from: 'right' as const, plank: -1, ...first },
          { length: 100, from: 'whole' as const, plank },
          { length: 20, from: 'left' as const, plank: plank + 1 },
        ],
      ],
    });
    const rows = [row(0, { plank: 7 }), row(2, { plank: 5 }), row(4, { plank: 3 }), row(6, { stock: 0 })];
    const better = withFewerWaiting(onward, openRuns(onward.job), rows);
    expect(better[0].runs[0][0].stock).toBe(0);
    expect(mostWaiting(better)).toBeLessThanOrEqual(1);
    expect(piecesOf(better)).toEqual(piecesOf(rows));
  });

  test('keeps away from joints that lie two rows back', () => {
    // By hand: the joint at 52 is 2 from the one at 50 two rows back; that of the other row, 80, is 30 from it.
    const onward: OnwardJob = {
      job: job(2, 150),
      before: [{ room: 0, joints: [20], joints2: [50] }],
      stock: [],
      whole: 0,
    };
    const row = (first: number, planks: readonly [number, number]) => ({
      runs: [
        [
          { length: first, from: 'right' as const, plank: planks[0] },
          { length: 150 - first, from: 'left' as const, plank: planks[1] },
        ],
      ],
    });
    const better = withFewerWaiting(onward, openRuns(onward.job), [row(52, [0, 1]), row(80, [2, 3])]);
    expect(better.map(({ runs }) => runs[0][0].length)).toEqual([80, 52]);
  });
});

test.each(FLOOR_KINDS)('%s: legal, the same pieces, and no more waiting than before', (kind) => {
  const whole = { ...randomJob(kind, 5), ripPairs: [], play: 4 };
  const plan = planCuts(whole);
  if (plan.broken.length > 0) return;
  const { onward, followed, plankCount } = restOf(whole, plan, Math.floor(whole.rows.length / 3));
  const found = { rows: followed, plankCount, short: plankCount, bound: 0, stop: 'step limit', broken: [] } as const;
  const rows = withFewerWaiting(onward, openRuns(onward.job), followed);
  expect(checkOnwardPlan(onward, { ...found, rows })).toEqual([]);
  expect(piecesOf(rows)).toEqual(piecesOf(followed));
  // What is counted is the sum of squares over all rows: the most may be one more where the others are fewer.
  expect(mostWaiting(rows)).toBeLessThanOrEqual(mostWaiting(followed) + 1);
});
