/** End joints beside corners of hearths and jambs: moved away where no plank and no rule is lost by it. */
import { describe, expect, test } from 'vitest';
import type { CutJob, CutPlan, KeptEnd } from '../../../src/cutting/job';
import { checkCutPlan } from '../../../src/cutting/plan/ledger';
import { planCutsInSteps } from '../../../src/cutting/search';
import { cornersInRuns } from '../../../src/layout/corners';
import { awayFromCorners } from '../../../src/takeoff/planning/awayFromCorners';
import { planFloors } from '../../../src/takeoff/planning/planFloors';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { jointPlaces } from '../../../src/takeoff/telling/cutList';
import { plainEntry } from '../../support/bareTakeoff';
import { seededRandom } from '../../support/seededRandom';

/** Rows of one run from x = 0, planks of 48 without kerf or play. */
function jobOf(length: number, rowCount: number, rules: Partial<CutJob> = {}): CutJob {
  const rows = Array.from({ length: rowCount }, () => ({ room: 0, width: 6, runs: [{ x: 0, length }] }));
  return {
    ...{ plankLength: 48, plankWidth: 6, kerf: 0, minPiece: 8, minStagger: 0, alignedDistance: 0, rows, ripPairs: [] },
    ...rules,
  };
}

type Cut = readonly [length: number, from: KeptEnd, plank: number];

function planOf(plankCount: number, ...rows: readonly (readonly Cut[])[]): CutPlan {
  const pieces = rows.map((row) => ({ runs: [row.map(([length, from, plank]) => ({ length, from, plank }))] }));
  return { rows: pieces, plankCount, bound: 1, stop: 'step limit', steps: 0, broken: [] };
}

const lengthsOf = ({ rows }: CutPlan) => rows.map(({ runs }) => runs[0].map(({ length }) => length));

describe('a joint on a corner', () => {
  // By hand: joints at 26 and 74, a corner at 74; 4 away is far enough, and both planks have 22 left.
  test('moves with all joints of its run, by as little as is enough', () => {
    const job = jobOf(100, 1);
    const plan = planOf(3, [
      [26, 'right', 0],
      [48, 'whole', 1],
      [26, 'left', 2],
    ]);
    const moved = awayFromCorners(job, plan, [[[74]]], 4);
    expect(lengthsOf(moved)).toEqual([[30, 48, 22]]);
    expect(checkCutPlan(job, moved)).toEqual([]);
  });

  // Each plank is the first piece of one row and the last of the other, to the unit: 20 + 28 = 48.
  test('takes along the run that shares its planks, where these have nothing left', () => {
    const job = jobOf(96, 2);
    const first: Cut[] = [
      [20, 'right', 0],
      [48, 'whole', 1],
      [28, 'left', 2],
    ];
    const second: Cut[] = [
      [20, 'right', 2],
      [48, 'whole', 3],
      [28, 'left', 0],
    ];
    const moved = awayFromCorners(job, planOf(4, first, second), [[[20]], [[]]], 4);
    expect(lengthsOf(moved)).toEqual([
      [24, 48, 24],
      [24, 48, 24],
    ]);
    expect(checkCutPlan(job, moved)).toEqual([]);
  });

  // By hand: 58 with pieces of 29 at least is 29 and 29, and nothing else.
  test('stays where moving it would break a rule or take a plank', () => {
    const job = jobOf(58, 1, { minPiece: 29 });
    const plan = planOf(2, [
      [29, 'right', 0],
      [29, 'left', 1],
    ]);
    expect(awayFromCorners(job, plan, [[[29]]], 4)).toBe(plan);
  });

  // A run that begins or ends with a whole plank cannot be shifted without another cut: joints at 8 and 56, or 48 and 96.
  test('goes where a run alike was, and that takes its place', () => {
    const job = jobOf(104, 2, { minStagger: 8 });
    const first: Cut[] = [
      [8, 'right', 0],
      [48, 'whole', 1],
      [48, 'whole', 2],
    ];
    const second: Cut[] = [
      [48, 'whole', 3],
      [48, 'whole', 4],
      [8, 'left', 5],
    ];
    const moved = awayFromCorners(job, planOf(6, first, second), [[[56]], [[]]], 4);
    expect(lengthsOf(moved)).toEqual([
      [48, 48, 8],
      [8, 48, 48],
    ]);
    expect(checkCutPlan(job, moved)).toEqual([]);
  });
});

/** A room of inches with a hearth, a closet and a doorway somewhere. */
function randomRoom(seed: number) {
  const random = seededRandom(seed);
  const [length, width] = [random.whole(120, 240), random.whole(90, 180)];
  const hearth = {
    kind: 'rectangle',
    wall: random.whole(1, 4),
    along: `${random.whole(20, 50)}"`,
    off: 0,
    length: `${random.whole(24, 40)}"`,
    depth: `${random.whole(10, 30)}"`,
    rise: '',
  } as const;
  return plainEntry('Room', `${length}"`, `${width}"`, { cutouts: [hearth] });
}

test('in random rooms with hearths joints at corners are moved where that costs nothing, and no plank, rule or offcut is lost', () => {
  let before = 0;
  let after = 0;
  for (let seed = 1; seed <= 45; seed++) {
    const { room } = drawRoom(randomRoom(seed));
    if (!room) continue;
    const moved = chooseWay(room).planned;
    const { floors } = moved;
    const { minRip, markingStep } = room.read.rules;
    const plain = planFloors(floors, {}, planCutsInSteps);
    const near = ([planned]: readonly (typeof plain)[], reach = minRip) => {
      const joints = jointPlaces(planned, 0);
      return cornersInRuns(floors[0].layout).flatMap((row, r) =>
        row.flatMap((corners, k) =>
          corners.flatMap((x) => joints[r][k].filter((joint) => Math.abs(joint - x) < reach)),
        ),
      ).length;
    };
    before += near([plain]);
    after += near([moved]);
    expect(near([moved])).toBeLessThanOrEqual(near([plain]));
    expect(checkCutPlan(moved.markedJob, { ...moved.markedPlan, stop: 'step limit' })).toEqual([]);
    expect(moved.plan.plankCount).toBe(plain.plan.plankCount);
    expect(moved.plan.broken.length).toBe(plain.plan.broken.length);
    expect(moved.ledger.waiting.most).toBeLessThanOrEqual(plain.ledger.waiting.most);
    expect(moved.ledger.alignedJointCount).toBeLessThanOrEqual(plain.ledger.alignedJointCount);
    expect(moved.ledger.cutCount - plain.ledger.cutCount).toBeLessThanOrEqual(
      // Joints are kept away by a step or two more than the rip, as the grid rounds.
      near([plain], minRip + 2 * markingStep),
    );
  }
  expect(before).toBeGreaterThan(5);
  // Row by row plans leave few ways to shift a run: a good third is moved.
  expect(after).toBeLessThan(0.7 * before);
});
