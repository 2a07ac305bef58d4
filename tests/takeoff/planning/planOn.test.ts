/** Laws of planning on, held on many rooms: what lies stays, the whole floor is a legal plan, and it takes no planks too many. */

import { describe, expect, test } from 'vitest';
import { checkCutPlan } from '../../../src/cutting/judge/laws';
import { ticksOfInches } from '../../../src/geometry/length';
import { asLaid } from '../../../src/tabs/asLaid';
import { cutListBlock } from '../../../src/tabs/cutList';
import { BLANK_RULES, type RoomEntry } from '../../../src/takeoff/entry';
import { type ListedCut, listedRows } from '../../../src/takeoff/planning/asLaid';
import { planAwayFromCorners } from '../../../src/takeoff/planning/awayFromCorners';
import { planksInHand } from '../../../src/takeoff/planning/inHand';
import { floorsOnLists, listedPlanOf } from '../../../src/takeoff/planning/listedPlan';
import { staggerAcross } from '../../../src/takeoff/planning/middleStart';
import { type PlannedOn, pieceKey, planOn } from '../../../src/takeoff/planning/planOn';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { floorTakeoffOf } from '../../../src/takeoff/telling/floorTakeoff';
import { DEMO_ROOM } from '../../../src/workbook/demoRoom';
import { blockValues } from '../../support/blockValues';
import { plainRoom } from '../../support/roomEntries';
import { seededRandom } from '../../support/seededRandom';

/** Places at which a person stops, on each floor. Of five faults planted in planning on, eight places told no more than five. */
const STOPS = 5;

const rectangle = (
  length: number | string,
  width: number | string,
  rules: Partial<RoomEntry['rules']> = {},
): RoomEntry => ({
  ...plainRoom,
  shape: { kind: 'rectangle', length, width },
  rules: { ...BLANK_RULES, ...rules },
});

/** By hand: 108 1/4" less two gaps of 3/8" is a row of 3", 17 of 6" and one of 2 1/2", which with a saw cut is ripped off the 3" rows. */
const STRIPS = 'a room whose strips serve in the last row';

const ROOMS: readonly (readonly [string, RoomEntry])[] = [
  ['a plain room', rectangle(12, 10)],
  [STRIPS, rectangle(14.2, `9' 1/4"`, { firstRow: '3"' })],
  ['a passage of single pieces', rectangle(3.4, 9, { layDirection: 'length', startSide: 'far' })],
  ['runs a little longer than a plank', rectangle(4.6, 7, { layDirection: 'length' })],
  ['an L with a closet', DEMO_ROOM],
  [
    'a room with a hearth: two runs in some rows',
    {
      ...rectangle(15, 11),
      cutouts: [{ kind: 'rectangle', wall: 1, along: 5, off: 0, length: 4, depth: 2, rise: '' }],
    },
  ],
  [
    'a plank that is no whole number of steps',
    { ...rectangle(12, 8), product: { ...plainRoom.product, plankLength: '1210 mm' } },
  ],
];

function plannedAlone(entry: RoomEntry) {
  const { room, problems } = drawRoom(entry);
  if (room === null) throw new Error(problems[0].text);
  return chooseWay(room).planned;
}

/** The list of a floor as it is filled and read again. */
function listOf(planned: ReturnType<typeof plannedAlone>, floorIndex: number): readonly ListedCut[] {
  const takeoff = floorTakeoffOf(planned, floorIndex, []);
  const read = asLaid(blockValues(cutListBlock(takeoff)), takeoff.plankLength, takeoff.units);
  if (read.problems) throw new Error(read.problems[0]);
  return read.pieces;
}

function floorOf(entry: RoomEntry) {
  const planned = plannedAlone(entry);
  return { planned, listed: listOf(planned, 0) };
}

/** So many pieces lie, counted in laying order. */
function laidUpTo(listed: readonly ListedCut[], count: number): readonly ListedCut[] {
  return listed.map((piece, i) => ({ ...piece, isLaid: i < count, isCut: i < count }));
}

function stripsGone(now: readonly ListedCut[]): number {
  return now.filter(({ isGone, isStrip }) => isGone && isStrip).length;
}

/** By plank what is written on its rest: the piece it was kept for, where something that lies was cut from it. */
function writtenBefore(now: readonly ListedCut[]): Map<number, string> {
  const written = new Map<number, string>();
  for (const number of new Set(now.map(({ plankNumber }) => plankNumber))) {
    const pieces = now.filter(({ plankNumber, isStrip }) => plankNumber === number && !isStrip);
    const kept = pieces.find(({ isLaid }) => !isLaid);
    if (kept && pieces.some(({ isLaid }) => isLaid) && !pieces.some(({ isGone }) => isGone))
      written.set(number, kept.label);
  }
  return written;
}

function answerOf(planned: ReturnType<typeof floorOf>['planned'], ...lists: readonly (readonly ListedCut[])[]) {
  const answer = planOn(planned, lists);
  if ('problems' in answer) throw new Error(answer.problems.join(' '));
  return answer.on;
}

describe.each(ROOMS)('%s', (name, entry) => {
  const { planned, listed } = floorOf(entry);
  const planks = planned.markedPlan.plankCount;

  test('has strips where they serve', () => {
    expect(listed.some(({ isStrip }) => isStrip)).toBe(name === STRIPS);
  });

  test('nothing that happened: no more planks than planned, wherever one stops', () => {
    const random = seededRandom(7);
    for (let i = 0; i < STOPS; i++) {
      const count = random.whole(0, listed.length);
      const on = answerOf(planned, laidUpTo(listed, count));
      expect(checkCutPlan(on.planned.markedJob, on.planned.markedPlan)).toEqual([]);
      // Rests of planks that are no whole number of steps are counted down to a unit: a tight one may be a unit short.
      const more = planned.grid.unit === planned.grid.markingStep ? 0 : 1;
      expect(on.planned.markedPlan.plankCount, `${count} pieces lie`).toBeLessThanOrEqual(planks + more);
    }
    expect(answerOf(planned, laidUpTo(listed, listed.length)).wholeCount).toBe(0);
  });

  test('planks are spoilt: what lies stays, the rest is legal', () => {
    const random = seededRandom(8);
    for (let i = 0; i < STOPS; i++) {
      const count = random.whole(0, listed.length - 1);
      const gone = new Set([0, 1].map(() => listed[random.whole(0, listed.length - 1)].plankNumber));
      const now = laidUpTo(listed, count).map((piece) => ({
        ...piece,
        isGone: gone.has(piece.plankNumber) && !piece.isLaid,
      }));
      const on = answerOf(planned, now);
      expect(checkCutPlan(on.planned.markedJob, on.planned.markedPlan)).toEqual([]);
      const pieces = on.planned.markedPlan.rows.flatMap(({ runs }) => runs.flat());
      now.forEach(({ isLaid, length, plankNumber }, k) => {
        if (isLaid) expect([pieces[k].length, pieces[k].plank + 1]).toEqual([length, plankNumber]);
      });
      // What is cut from an offcut in hand says what is written on it, where that is another piece.
      const written = writtenBefore(now);
      const isBegun = (row: number) => now.some(({ isLaid, rowNumber }) => isLaid && rowNumber >= row);
      on.planned.markedPlan.rows.forEach(({ runs }, row) => {
        runs.flat().forEach(({ plank, isStrip }, k) => {
          const label = `${row + 1}-${k + 1}`;
          const mark =
            isStrip || now.some((piece) => piece.isLaid && piece.label === label) ? undefined : written.get(plank + 1);
          if (mark === undefined) return;
          written.delete(plank + 1);
          if (isBegun(row + 1)) return;
          expect(on.writtenOn.get(pieceKey(planned.floors[0].read.name, label))).toBe(
            mark === label ? undefined : mark,
          );
        });
      });
      // A plank in the place of each that is gone, and of each strip that is.
      expect(on.planned.markedPlan.plankCount).toBeLessThanOrEqual(planks + gone.size + stripsGone(now));
    }
  });
});

// By hand: 8' 3/4" less two gaps of 3/8" is 96", two planks of 48". At a stagger of half a plank rows of 48" + 48" and of 24" +
// 48" + 24" can only take turns: a joint a step off leaves no place for the next row.
describe('four runs of two planks, half a plank for the stagger, kerf and play 0', () => {
  const exact = { kerf: 0, play: 0 };
  const { planned, listed } = floorOf(rectangle(`8' 3/4"`, `2' 3/4"`, { ...exact, minStagger: '24"' }));
  const jointsOf = (on: PlannedOn) =>
    on.planned.markedPlan.rows.map(({ runs: [run] }) =>
      run.slice(0, -1).map((_, i) => run.slice(0, i + 1).reduce((sum, { length }) => sum + length, 0) / 16_256),
    );

  test('is kept to the row that lies, to a step', () => {
    for (let lying = 0; lying <= 4; lying++) {
      const on = answerOf(planned, laidUpTo(listed, listed.filter(({ rowNumber }) => rowNumber <= lying).length));
      expect(on.planned.markedPlan.broken).toEqual([]);
      const joints = jointsOf(on);
      expect(joints.map(String).sort()).toEqual(['24,72', '24,72', '48', '48']);
      for (const [i, row] of joints.slice(1).entries()) expect(String(row)).not.toBe(String(joints[i]));
      expect(on.planned.markedPlan.plankCount).toBe(8);
    }
  });

  // The same rows, drawn an inch shorter. Found as 96" they are eight planks to the tick; 1/16" more each is 384 1/4" in all.
  test.each([
    ['96"', 8],
    ['96 1/16"', 9],
  ] as const)('runs drawn as 95" and found as %s take %i planks', (found, planks) => {
    const short = floorOf(rectangle(`7' 11 3/4"`, `2' 3/4"`, exact));
    const ticks = ticksOfInches(planks === 8 ? 96 : 96.0625);
    const on = answerOf(
      short.planned,
      short.listed.map((p) => (p.run ? { ...p, run: { found: ticks } } : p)),
    );
    const { markedJob, markedPlan } = on.planned;
    expect(checkCutPlan(markedJob, markedPlan)).toEqual([]);
    expect(markedPlan.rows.map(({ runs: [run] }) => run.reduce((sum, { length }) => sum + length, 0))).toEqual(
      [1, 2, 3, 4].map(() => ticks),
    );
    expect([found, markedPlan.plankCount, markedPlan.bound]).toEqual([found, planks, planks]);
  });
});

/** By hand: 5' less two gaps of 3/8" is 59 1/4"; 1' 6 3/4" less them is three rows of 6". The first row begins with a whole plank. */
describe('the whole plank of 1-1 is cut at 20", kerf 1/8"', () => {
  const { planned, listed } = floorOf(rectangle(5, `1' 6 3/4"`, { play: 0 }));
  const cutShort = (more: Partial<ListedCut>) =>
    listed.map((piece, i) => (i === 0 ? { ...piece, isCut: true, cutLength: ticksOfInches(20), ...more } : piece));
  const heldOf = (list: readonly ListedCut[]) =>
    planksInHand(listedPlanOf(planned, [list])).held.map(({ length, ends, mark }) => [length / 16, ends, mark]);

  test('its left end is in hand, 27 7/8" long, unless it is lost', () => {
    expect(listed[0].from).toBe('whole');
    expect(heldOf(cutShort({ isLaid: true }))).toEqual([[27.875, 'left', '']]);
    expect(heldOf(cutShort({ isLaid: true, isGone: true }))).toEqual([]);
    // Not laid yet: the piece of 20" waits as well, with the right end.
    expect(heldOf(cutShort({}))).toEqual([
      [20, 'right', '1-1'],
      [27.875, 'left', ''],
    ]);
    // 7 7/8", under the minimum piece of 8", serves nowhere; a sixteenth within the play was no slip.
    expect(heldOf(cutShort({ isLaid: true, cutLength: ticksOfInches(40) }))).toEqual([]);
    const last = listed.findIndex(({ label }) => label === '1-2');
    const shorter = (inches: number, play: number) => {
      const list = listed.map((piece, i) =>
        i === last
          ? { ...piece, plankNumber: 99, isCut: true, isLaid: true, cutLength: piece.length - ticksOfInches(inches) }
          : piece,
      );
      const job = { ...planned.job, play: play * 16 };
      return planksInHand(listedPlanOf({ ...planned, job }, [list])).held.filter(({ mark }) => mark === '');
    };
    expect(shorter(1 / 16, 1 / 4)).toEqual([]);
    // A piece of 11 1/4" that kept its left end, a sixteenth shorter: 48 - 11 3/16 - 1/8 is 36 11/16", with the right end.
    expect(listed[last]).toMatchObject({ length: ticksOfInches(11.25), from: 'left' });
    expect(shorter(1 / 16, 0)).toMatchObject([{ length: 36.6875 * 16, ends: 'right' }]);
  });

  // Row 1 is 20" and 39 1/4" of a second plank, whose rest is 8 5/8". Rows 2 and 3 are 118 1/2": without the 27 7/8" they take
  // three more planks, as 96" and 8 5/8" are too short; with it 42 3/4" and 16 1/2", 31 3/8" and 27 7/8" come from two.
  test('and saves a plank', () => {
    const on = answerOf(planned, cutShort({ isLaid: true })).planned;
    expect(checkCutPlan(on.markedJob, on.markedPlan)).toEqual([]);
    expect([on.markedPlan.plankCount, on.markedPlan.broken]).toEqual([4, []]);
    const ofFirst = on.markedPlan.rows.flatMap(({ runs }) => runs.flat()).filter(({ plank }) => plank === 0);
    expect(ofFirst.map(({ from }) => from)).toEqual(['right', 'left']);
    expect(ofFirst[1].length).toBeLessThanOrEqual(ticksOfInches(27.875));
    expect(answerOf(planned, cutShort({ isLaid: true, isGone: true })).planned.markedPlan.plankCount).toBe(5);
  });
});

/** So many rows of each floor lie, or of each side of a middle line. */
function rowsLaid(
  planned: ReturnType<typeof plannedAlone>,
  lists: readonly (readonly ListedCut[])[],
  counts: readonly number[],
): readonly (readonly ListedCut[])[] {
  return floorsOnLists(planned).map((indices, i) => {
    const lying = indices.flatMap((f) => planned.floors[f].layout.rows.slice(0, counts[f])).map((row) => row.rowNumber);
    return lists[i].map((piece) => {
      const isLaid = lying.includes(piece.rowNumber);
      return { ...piece, isLaid, isCut: isLaid };
    });
  });
}

const named = (name: string, entry: RoomEntry): RoomEntry => ({ ...entry, name });
const TOGETHER: readonly (readonly [string, readonly RoomEntry[]])[] = [
  ['both ways from a middle line', [rectangle(12, 10, { startSide: 'middle' })]],
  ['a middle line and planks of no whole steps', [{ ...ROOMS[6][1], rules: { ...BLANK_RULES, startSide: 'middle' } }]],
  ['two rooms that share planks', [named('Den', rectangle(12.3, 7)), named('Hall', rectangle(5.7, 4))]],
  [
    'three rooms, their strips used in their last rows',
    // 54 1/4" less the gaps: 3", eight rows of 6" and 2 1/2".
    [6.2, 9.1, 4.4].map((length, i) => named(`Room ${i}`, rectangle(length, `4' 6 1/4"`, { firstRow: '3"' }))),
  ],
];

describe.each(TOGETHER)('%s', (_, entries) => {
  const alone = entries.map(plannedAlone);
  const planned =
    alone.length === 1
      ? alone[0]
      : planAwayFromCorners(
          alone.flatMap(({ floors }) => floors),
          {},
        );
  const lists = floorsOnLists(planned).map(([first]) => listOf(planned, first));
  if (planned.job.ripPairs.length > 0) expect(lists.flat().filter(({ isStrip }) => isStrip).length).toBeGreaterThan(3);
  const rowCounts = planned.floors.map(({ layout }) => layout.rows.length);
  const random = seededRandom(11);
  const more = planned.grid.unit === planned.grid.markingStep ? 0 : 1;
  const none = rowCounts.map(() => 0);
  const some = Array.from({ length: 5 }, () => rowCounts.map((count) => random.whole(0, 1) * random.whole(0, count)));

  /** The whole is legal, keeps its rules, also across the line, and what lies stays. */
  function judged(laid: readonly (readonly ListedCut[])[]) {
    const on = answerOf(planned, ...laid);
    const { markedJob, markedPlan } = on.planned;
    expect(checkCutPlan(markedJob, markedPlan)).toEqual([]);
    expect(markedPlan.broken).toEqual([]);
    const apart = planned.floors[0].part === 'ahead' ? staggerAcross(on.planned, 0) : null;
    if (apart !== null) expect(apart).toBeGreaterThanOrEqual(planned.floors[0].read.rules.minStagger);
    const listed = laid.flatMap(listedRows).map((runs) => runs.flatMap(({ pieces }) => pieces));
    listed.forEach((row, i) => {
      const pieces = markedPlan.rows[i].runs.flat();
      row.forEach(({ isLaid, length, plankNumber }, k) => {
        if (isLaid) expect([pieces[k].length, pieces[k].plank + 1]).toEqual([length, plankNumber]);
      });
    });
    return markedPlan.plankCount - planned.markedPlan.plankCount - more;
  }

  test.each([none, ...some].map((counts) => ({ counts })))(
    'rows $counts lie: no plank more than planned',
    ({ counts }) => {
      expect(judged(rowsLaid(planned, lists, counts))).toBeLessThanOrEqual(0);
    },
  );

  test('what lies on one floor is cut first, whichever comes first in the plan', () => {
    // Only the last floor lies: no piece of it is told as an offcut of a piece that is still to be laid.
    const counts = rowCounts.map((count, i) => (i === rowCounts.length - 1 ? Math.ceil(count / 2) : 0));
    const { planned: now, sides } = answerOf(planned, ...rowsLaid(planned, lists, counts));
    expect(sides.map(({ begunCount }) => begunCount)).toEqual(counts);
    // It goes on before the others, and they when all of it lies.
    const next = now.order?.find((row) =>
      sides.every((side) => row < side.firstRow || row >= side.firstRow + side.begunCount),
    );
    const last = sides[sides.length - 1];
    expect(next).toBe(last.firstRow + last.begunCount);
    const done = rowCounts.map((count, i) => (i === rowCounts.length - 1 ? count : 0));
    const asked = floorsOnLists(planned).length - 1;
    const answer = planOn(planned, rowsLaid(planned, lists, done), { list: asked, part: null });
    expect('on' in answer && answer.on.nextRow).toBe(0);
    const isLying = (row: number) =>
      sides.some((side) => row >= side.firstRow && row < side.firstRow + side.begunCount);
    for (const { pieces } of now.ledger.planks) {
      const lying = pieces.map(({ rowIndex }) => isLying(rowIndex));
      expect(lying).toEqual([...lying].sort((a, b) => Number(b) - Number(a)));
    }
  });

  test('all of it lies: nothing more is needed', () => {
    expect(answerOf(planned, ...rowsLaid(planned, lists, rowCounts)).wholeCount).toBe(0);
  });

  test.each(some.map((counts) => ({ counts })))(
    'rows $counts lie, planks are spoilt: at most one more for each, and for each strip',
    ({ counts }) => {
      const drawn = seededRandom(1 + counts.reduce((sum, count) => sum + count, 0));
      const laid = rowsLaid(planned, lists, counts);
      const open = laid.flat().filter(({ isLaid, isStrip }) => !isLaid && !isStrip);
      const gone = new Set([0, 1, 2].map(() => open[drawn.whole(0, open.length - 1)]?.plankNumber));
      const now = laid.map((list) => list.map((p) => ({ ...p, isGone: gone.has(p.plankNumber) && !p.isLaid })));
      expect(judged(now)).toBeLessThanOrEqual(gone.size + stripsGone(now.flat()));
    },
  );
});

describe.each([0, 1])('side %i of a middle line lies, every run on the other side is found longer', (lying) => {
  const planned = plannedAlone(rectangle(12, 10, { startSide: 'middle' }));
  const counts = planned.floors.map(({ layout }, side) => (side === lying ? layout.rows.length : 0));
  const [laid] = rowsLaid(planned, [listOf(planned, 0)], counts);

  test.each([1, 3, 6, 9, 14, 20])('by %i": planned anew, its first row keeps away from the line', (inches) => {
    const found = laid.map((piece, i) => {
      if (piece.isLaid || !piece.run) return piece;
      const pieces = laid.slice(i).filter(({ rowNumber }) => rowNumber === piece.rowNumber);
      const drawn = pieces.reduce((sum, { length }) => sum + length, 0);
      return { ...piece, run: { found: drawn + ticksOfInches(inches) } };
    });
    const on = answerOf(planned, found);
    expect(checkCutPlan(on.planned.markedJob, on.planned.markedPlan)).toEqual([]);
    expect(staggerAcross(on.planned, 0)).toBeGreaterThanOrEqual(planned.floors[0].read.rules.minStagger);
  });
});
