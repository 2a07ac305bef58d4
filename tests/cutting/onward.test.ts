/** Planning on: laws held by the judge, counts against the plan of the whole floor and against every plan of tiny jobs. */
import { describe, expect, test } from 'vitest';
import type { CutJob } from '../../src/cutting/job';
import { checkOnwardPlan } from '../../src/cutting/judge/onwardLaws';
import { planOnward } from '../../src/cutting/onward/onward';
import type { OnwardJob, StockPiece } from '../../src/cutting/onward/onwardJob';
import { planCuts } from '../../src/cutting/search';
import { fewestOnwardByTrial } from '../support/exhaustiveOnward';
import { FLOOR_KINDS, randomJob } from '../support/randomJobs';
import { restOf } from '../support/restOfFloor';
import { seededRandom } from '../support/seededRandom';
import { tinyJob } from '../support/tinyJobs';

const NOTHING = { before: [], stock: [], whole: 0 };
const lying = (...joints: number[]) => [{ room: 0, joints, joints2: [] }];
const SEEDS = [1, 2];
const floors = FLOOR_KINDS.flatMap((kind) => SEEDS.map((seed) => [`${kind} ${seed}`, randomJob(kind, seed)] as const));
const plain = (job: CutJob): CutJob => ({ ...job, ripPairs: [], play: 4 });

describe.each(floors)('%s', (_, whole) => {
  const job = plain(whole);
  const plan = planCuts(job);

  test('nothing laid and nothing in hand: the ordinary plan', () => {
    const onward = planOnward({ job, ...NOTHING }, undefined, {}, planCuts);
    expect(onward.rows).toEqual(plan.rows);
    expect(onward).toMatchObject({ plankCount: plan.plankCount, short: plan.plankCount, bound: plan.bound });
  });

  test('every row laid: nothing more', () => {
    expect(planOnward({ job: { ...job, rows: [] }, ...NOTHING })).toMatchObject({ plankCount: 0, short: 0, rows: [] });
  });

  test('planned on at any row, an unspoilt floor needs no more planks than it was planned with', () => {
    if (plan.broken.length > 0) return;
    const rows = [1, Math.floor(job.rows.length / 2), job.rows.length - 1].filter((row) => row < job.rows.length);
    for (const laid of new Set(rows)) {
      const { onward, followed, plankCount } = restOf(job, plan, laid);
      const found = planOnward(onward, followed);
      expect(checkOnwardPlan(onward, found)).toEqual([]);
      expect([laid, found.plankCount <= plankCount]).toEqual([laid, true]);
      expect(found.bound).toBeLessThanOrEqual(plankCount);
      const enough = planOnward({ ...onward, whole: plankCount }, followed);
      expect(enough.short).toBe(0);
    }
  });

  test('an offcut that is lost costs at most a plank for each piece it was to give', () => {
    if (plan.broken.length > 0) return;
    const { onward, followed } = restOf(job, plan, Math.floor(job.rows.length / 2));
    const found = planOnward(onward, followed);
    onward.stock.slice(0, 3).forEach((_lost, index) => {
      const served = found.rows.flatMap((row) => row.runs.flat()).filter((piece) => piece.stock === index).length;
      const stock = onward.stock.filter((_, i) => i !== index);
      const shifted = found.rows.map((row) => ({
        runs: row.runs.map((run) =>
          run.map((piece) =>
            piece.stock === undefined
              ? piece
              : { ...piece, ...(piece.stock === index ? {} : { stock: piece.stock - (piece.stock > index ? 1 : 0) }) },
          ),
        ),
      }));
      const without = withNewPlanks(shifted, index, found);
      const lost = planOnward({ ...onward, stock }, without);
      expect(lost.plankCount).toBeLessThanOrEqual(found.plankCount + Math.max(1, served));
    });
  });
});

/** Every piece that came from the lost offcut takes a new plank. */
function withNewPlanks(
  rows: ReturnType<typeof planOnward>['rows'],
  lost: number,
  found: ReturnType<typeof planOnward>,
): ReturnType<typeof planOnward>['rows'] {
  let next = found.plankCount;
  return rows.map((row, r) => ({
    runs: row.runs.map((run, u) =>
      run.map((piece, p) => {
        if (found.rows[r].runs[u][p].stock !== lost) return piece;
        const { length, from } = piece;
        return { length, from, plank: next++ };
      }),
    ),
  }));
}

test('on tiny jobs with pieces in hand: never below the truth, the bound never above it, and nearly always the truth', () => {
  const misses: number[] = [];
  let count = 0;
  for (let seed = 1; seed <= 120; seed++) {
    const random = seededRandom(seed);
    const job = { ...plain(tinyJob(seed)), play: 0 };
    const ends = ['left', 'right', 'none'] as const;
    const stock = Array.from({ length: random.whole(0, 3) }, (): StockPiece => {
      return { length: random.whole(1, job.plankLength - 1), ends: ends[random.whole(0, 2)] };
    });
    // Rows lie in every other room, the first among them or not.
    const rooms = [...new Set(job.rows.map(({ room }) => room))];
    const before = rooms.flatMap((room) => {
      const { x } = job.rows[job.rows.findIndex((row) => row.room === room)].runs[0];
      return random.whole(0, 1) === 1 ? [{ room, joints: [x + random.whole(1, job.plankLength)], joints2: [] }] : [];
    });
    const onward: OnwardJob = { job, before, stock, whole: 2 };
    const truth = fewestOnwardByTrial(onward);
    if (truth === null) continue;
    const found = planOnward(onward);
    if (found.broken.length > 0) continue;
    count += 1;
    expect([seed, checkOnwardPlan(onward, found)]).toEqual([seed, []]);
    expect([seed, found.plankCount >= truth, found.bound <= truth]).toEqual([seed, true, true]);
    if (found.plankCount > truth) misses.push(seed);
  }
  expect(count).toBeGreaterThan(60);
  // So many so far, and no more may be.
  expect(misses.length).toBeLessThanOrEqual(5);
});

describe('the judge', () => {
  const job: CutJob = {
    plankLength: 48,
    plankWidth: 6,
    kerf: 0,
    minPiece: 8,
    minStagger: 8,
    alignedDistance: 0,
    rows: [{ room: 0, width: 6, runs: [{ x: 0, length: 80 }] }],
    ripPairs: [],
  };
  // By hand: 80 is 40 + 40. With an offcut of 40 that has its right end only one plank is needed.
  const onward: OnwardJob = {
    job,
    before: lying(20),
    stock: [{ length: 40, ends: 'right' }],
    whole: 1,
  };
  const legal = {
    rows: [
      {
        runs: [
          [
            { length: 40, from: 'right' as const, plank: -1, stock: 0 },
            { length: 40, from: 'left' as const, plank: 0 },
          ],
        ],
      },
    ],
    plankCount: 1,
    short: 0,
    bound: 1,
    stop: 'proved fewest' as const,
    broken: [],
  };

  test('accepts a legal plan, and the planner finds one as good', () => {
    expect(checkOnwardPlan(onward, legal)).toEqual([]);
    expect(planOnward(onward)).toMatchObject({ plankCount: 1, short: 0, bound: 1 });
  });

  // By hand: a board of 100 in hand, planks of 48: 40 with its right end, 30 from wall to wall and a kerf are 71.
  test('a board longer than a plank may give more than a plank has, but no more than it has itself', () => {
    const rows = [...job.rows, { room: 1, width: 6, runs: [{ x: 0, length: 30 }] }];
    const longer = (length: number, play = 0): OnwardJob => {
      const stock = [{ length, ends: 'right' as const }];
      return { ...onward, job: { ...job, kerf: 1, play, rows }, stock };
    };
    const plan = {
      ...legal,
      rows: [...legal.rows, { runs: [[{ length: 30, from: 'middle' as const, plank: -1, stock: 0 }]] }],
    };
    expect(checkOnwardPlan(longer(100), plan)).toEqual([]);
    expect(checkOnwardPlan(longer(71), plan)).toEqual([]);
    expect(checkOnwardPlan(longer(70), plan).join()).toMatch(/71 is cut from 70/);
    expect(checkOnwardPlan(longer(74, 4), plan).join()).toMatch(/75 is cut from 74/);
    expect(planOnward(longer(100))).toMatchObject({ plankCount: 1, broken: [] });
  });

  // A joint at 40; the row that lies has one at 33. A second row of 44 + 36 has its own 4 from that of the first.
  test('a plan that says which joints lie too near is believed for those rows, if there is something they are near to', () => {
    const second = {
      runs: [
        [
          { length: 44, from: 'right' as const, plank: 1 },
          { length: 36, from: 'left' as const, plank: 2 },
        ],
      ],
    };
    const tooNear = (rowIndex: number, found: number) =>
      ({ rule: 'minimum stagger', rowIndex, runIndex: 0, found, wanted: 8 }) as const;
    const told = (joints: readonly number[], ...broken: ReturnType<typeof tooNear>[]) =>
      checkOnwardPlan(
        { ...onward, job: { ...job, rows: [job.rows[0], job.rows[0]] }, before: [{ room: 0, joints, joints2: [] }] },
        { ...legal, rows: [...legal.rows, second], plankCount: 3, short: 2, stop: 'step limit', broken },
      );
    expect(told([33], tooNear(0, 7), tooNear(1, 4))).toEqual([]);
    expect(told([33], tooNear(1, 4)).join()).toMatch(/^row 1: a joint at 40 is nearer than 8 to 33/);
    expect(told([33], tooNear(0, 7)).join()).toMatch(/^row 2, run 1: minimum stagger 4.*does not say so$/);
    expect(told([], tooNear(0, 7), tooNear(1, 4)).join()).toMatch(/^row 1, run 1: .*is not what the plan does$/);
  });

  test('a piece that is not in hand cannot be cut from', () => {
    expect(checkOnwardPlan({ ...onward, stock: [] }, legal)).toContainEqual('row 1: there is no piece 0 in hand');
  });

  test('nothing is the legal plan of no rows, and an offcut is no whole plank, however long', () => {
    const nothing = { ...legal, rows: [], plankCount: 0, bound: 0 };
    expect(checkOnwardPlan({ ...onward, job: { ...job, rows: [] } }, nothing)).toEqual([]);
    const rows = [{ room: 0, width: 6, runs: [{ x: 0, length: 48 }] }];
    const plan = { ...nothing, rows: [{ runs: [[{ length: 48, from: 'whole' as const, plank: -1, stock: 0 }]] }] };
    const inHand = { ...onward, job: { ...job, rows }, stock: [{ length: 48, ends: 'both' as const }] };
    expect(checkOnwardPlan(inHand, plan)).toEqual(['piece 0 in hand: it is no whole plank']);
  });

  test('an offcut has each of its ends once, and none it has lost', () => {
    const rows = [job.rows[0], { ...job.rows[0], room: 1 }];
    const second = [{ ...legal.rows[0].runs[0][0] }, { length: 40, from: 'left' as const, plank: 1 }];
    const plan = { ...legal, rows: [...legal.rows, { runs: [second] }], plankCount: 2, short: 1, bound: 2 };
    const told = (ends: StockPiece['ends']) =>
      checkOnwardPlan({ ...onward, job: { ...job, rows }, stock: [{ length: 90, ends }] }, plan);
    expect(told('both')).toEqual(['piece 0 in hand: 2 pieces keep its right end']);
    expect(told('right')).toEqual(['piece 0 in hand: 2 pieces keep its right end']);
    expect(checkOnwardPlan({ ...onward, stock: [{ length: 90, ends: 'none' }] }, legal)).toEqual([
      'piece 0 in hand: 1 pieces keep its right end',
    ]);
  });

  // By hand: two planks for a floor that has one, and a bound of two planks where one is used.
  test.each([
    [{ short: 1 }, 'short 1, planks 1, in hand 1'],
    [{ bound: 2 }, 'bound 2, planks 1'],
    [{ bound: 0 }, 'bound 0, planks 1'],
  ])('claims what is not so: %j', (claim, told) => {
    expect(checkOnwardPlan(onward, { ...legal, ...claim })).toEqual([told]);
  });

  test.each([
    ['the wrong end', { ...onward, stock: [{ length: 40, ends: 'left' as const }] }, /right end/],
    ['too short', { ...onward, stock: [{ length: 39, ends: 'right' as const }] }, /40 is cut from 39/],
    ['too narrow', { ...onward, stock: [{ length: 40, ends: 'right' as const, width: 5 }] }, /wider/],
    ['too near to the row that lies', { ...onward, before: lying(33) }, /nearer than 8/],
    ['planks counted wrongly', { ...onward, whole: 0 }, /short 0/],
  ])('%s', (_, changed, told) => {
    expect(checkOnwardPlan(changed, legal).join()).toMatch(told);
  });
});
