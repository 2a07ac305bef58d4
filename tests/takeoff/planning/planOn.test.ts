/** Laws of planning on, held on many rooms: what lies stays, the whole floor is a legal plan, and it takes no planks too many. */

import { describe, expect, test } from 'vitest';
import { checkCutPlan } from '../../../src/cutting/judge/laws';
import { asLaid } from '../../../src/tabs/asLaid';
import { cutListBlock } from '../../../src/tabs/cutList';
import { BLANK_RULES, type RoomEntry } from '../../../src/takeoff/entry';
import type { ListedCut } from '../../../src/takeoff/planning/asLaid';
import { planOn } from '../../../src/takeoff/planning/planOn';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { floorTakeoffOf } from '../../../src/takeoff/telling/floorTakeoff';
import { DEMO_ROOM } from '../../../src/workbook/demoRoom';
import { blockValues } from '../../support/blockValues';
import { plainRoom } from '../../support/roomEntries';
import { seededRandom } from '../../support/seededRandom';

const rectangle = (length: number, width: number, rules: Partial<RoomEntry['rules']> = {}): RoomEntry => ({
  ...plainRoom,
  shape: { kind: 'rectangle', length, width },
  rules: { ...BLANK_RULES, ...rules },
});

const ROOMS: readonly (readonly [string, RoomEntry])[] = [
  ['a plain room', rectangle(12, 10)],
  ['a room whose strips serve in the last row', rectangle(14.2, 9.3, { firstRow: '3"' })],
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

function floorOf(entry: RoomEntry) {
  const { room, problems } = drawRoom(entry);
  if (room === null) throw new Error(problems[0].text);
  const { planned, ways } = chooseWay(room);
  const takeoff = floorTakeoffOf(planned, 0, ways);
  const read = asLaid(blockValues(cutListBlock(takeoff)), takeoff.plankLength, takeoff.units);
  if ('problems' in read) throw new Error(read.problems[0]);
  return { planned, listed: read.pieces };
}

/** So many pieces lie, counted in laying order. */
function laidUpTo(listed: readonly ListedCut[], count: number): readonly ListedCut[] {
  return listed.map((piece, i) => ({ ...piece, isLaid: i < count, isCut: i < count }));
}

function answerOf(planned: ReturnType<typeof floorOf>['planned'], listed: readonly ListedCut[]) {
  const answer = planOn(planned, [listed]);
  if ('problems' in answer) throw new Error(answer.problems.join(' '));
  return answer.on;
}

describe.each(ROOMS)('%s', (_, entry) => {
  const { planned, listed } = floorOf(entry);
  const random = seededRandom(7);
  const planks = planned.markedPlan.plankCount;

  test('nothing that happened: no more planks than planned, wherever one stops', () => {
    for (let i = 0; i < 8; i++) {
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
    for (let i = 0; i < 8; i++) {
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
      // A plank in the place of each that is gone.
      expect(on.planned.markedPlan.plankCount).toBeLessThanOrEqual(planks + gone.size);
    }
  });
});
