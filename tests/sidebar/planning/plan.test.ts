import { describe, expect, test } from 'vitest';
import { pieceWords } from '../../../src/sidebar/drawing/pieceWords';
import { headline, numberLines } from '../../../src/sidebar/outcome/numbers';
import { toldWays } from '../../../src/sidebar/outcome/ways';
import { planOf, roomsThrough } from '../../../src/sidebar/planning/plan';
import type { DoorwayEntry, RoomEntry } from '../../../src/takeoff/entry';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';
import { smallTakeoff } from '../../support/smallTakeoff';

const doorway = (wall: number, leadsTo: string): DoorwayEntry => ({
  wall,
  along: 3,
  width: 3,
  floor: 'goes on',
  depth: '2"',
  leadsTo,
  itsDoorway: '',
  wallThickness: '4"',
});
const hall: RoomEntry = { ...plainRoom, name: 'Hall', doorways: [doorway(3, 'Den')] };
// Its doorway in wall 1 faces the hall's in wall 3: both rooms are as long, and 12 - 3 - 3 ft are left on the other side.
const den: RoomEntry = { ...plainRoom, name: 'Den', doorways: [{ ...doorway(1, ''), along: 6 }] };
const shed: RoomEntry = { ...plainRoom, name: 'Shed' };

describe('rooms laid as one floor', () => {
  test('are those that doorways lead to, whichever side says so', () => {
    expect(roomsThrough(hall, [den, shed]).map(({ name }) => name)).toEqual(['Den']);
    expect(roomsThrough(den, [hall, shed]).map(({ name }) => name)).toEqual(['Hall']);
    expect(roomsThrough(shed, [hall, den])).toEqual([]);
  });

  test('go on through a room to the one behind it', () => {
    const study: RoomEntry = { ...plainRoom, name: 'Study', doorways: [doorway(2, ' hall ')] };
    expect(roomsThrough(den, [study, hall]).map(({ name }) => name)).toEqual(['Hall', 'Study']);
  });

  test('are planned under one name, whichever room the floor is planned from', () => {
    for (const plan of [planOf(hall, [den]), planOf(den, [hall])]) {
      const floor = { entry: { name: 'Den + Hall' }, rooms: ['Den', 'Hall'] };
      expect(plan).toMatchObject({ status: 'planned', takeoff: floor });
    }
  });

  test('that do not fit are told at the doorways', () => {
    const plan = planOf({ ...hall, doorways: [doorway(3, 'Elsewhere')] }, [den]);
    expect(plan).toMatchObject({ status: 'problems', problems: [{ field: 'doorways' }] });
  });
});

describe('the numbers', () => {
  test('are those of the takeoff, as they are said', () => {
    expect(headline(smallTakeoff).split('\u00a0').join(' ')).toBe('4 rows · 7 planks · 2 boxes · 29.2 % waste');
    const lines = new Map(numberLines(smallTakeoff).map(({ name, value, remark }) => [name, `${value}|${remark}`]));
    expect(lines.get('Planks to buy')).toBe('7|1 of them spare');
    expect(lines.get('The plan')).toBe('6 planks|cannot be done with fewer');
    expect(lines.get('First row')).toBe('5"|wide');
    expect(lines.get('Last row')).toBe('2"|wide');
    expect(lines.get('Shortest piece')).toBe('21 7/8"|');
    expect(lines.get('Closest end joints')).toBe('10 1/8"|');
    expect(lines.get('Usual rule (area + 10 %)')).toBe('2 boxes|the same');
    // 60 in by 17 in is 1020 square inches, 7.083 square feet.
    expect(lines.get('Floor inside the gap')).toBe('7.1 sq ft|');
  });

  test('say when the percentage rule would have left the floor short', () => {
    const { summary } = smallTakeoff;
    const counted = { ...smallTakeoff, summary: { ...summary, boxCount: null, tenPercentBoxes: null } };
    expect(numberLines(counted).find(({ name }) => name.startsWith('Usual rule'))).toMatchObject({
      remark: '2 planks short',
    });
  });

  test('of a piece say its size, its plank and where the rest goes', () => {
    expect(pieceWords(smallTakeoff.pieces[1], 'us')).toBe(
      'Piece 1-2: 24" long, 5" wide. From plank 2, keep its left factory end. The rest: write 2-1 on it.',
    );
  });
});

describe('the ways to lay a floor', () => {
  const open = takeoff({ ...plainRoom, rules: { ...plainRoom.rules, layDirection: 'best', startSide: 'best' } });
  if (open.status !== 'planned') throw new Error('It can be planned.');
  const ways = toldWays(open.takeoff);

  test('are told with the best first', () => {
    expect(ways.length).toBeGreaterThan(1);
    expect(ways.map(({ way }) => way.isChosen)).toEqual(ways.map((_, i) => i === 0));
  });

  test('lay the floor as told when one is taken', () => {
    for (const { way, rules } of ways) {
      const taken = takeoff({ ...plainRoom, rules: { ...plainRoom.rules, ...rules } });
      if (taken.status !== 'planned') throw new Error(JSON.stringify(taken.problems));
      const { summary } = taken.takeoff;
      expect([summary.rowCount, summary.plankCount]).toEqual([way.rowCount, way.plankCount]);
    }
  });

  test.each(['193 mm', '5 3/16"', '7.6"', '193.3 mm'])(
    'can be taken with planks %s wide, in either system',
    (plankWidth) => {
      for (const units of ['us', 'metric'] as const) {
        const size = { kind: 'rectangle', length: '12 ft', width: '10 ft' } as const;
        const product = { ...plainRoom.product, plankLength: '48"', plankWidth };
        const room: RoomEntry = { ...plainRoom, units, shape: size, product };
        const compared = takeoff({ ...room, rules: { ...room.rules, layDirection: 'best', startSide: 'best' } });
        if (compared.status !== 'planned') throw new Error(JSON.stringify(compared.problems));
        for (const { way, rules } of toldWays(compared.takeoff)) {
          const taken = takeoff({ ...room, rules: { ...room.rules, ...rules } });
          if (taken.status !== 'planned') throw new Error(JSON.stringify(taken.problems));
          expect(taken.takeoff.summary.firstRowWidth).toBe(way.firstRowWidth);
        }
      }
    },
  );

  test('say how many runs are too narrow, one or more', () => {
    const [first, ...rest] = open.takeoff.ways;
    const told = (narrowRunCount: number) =>
      toldWays({ ...open.takeoff, ways: [{ ...first, narrowRunCount }, ...rest] })[0].remark;
    expect([told(0), told(1), told(3)]).toEqual(['', '1 run too narrow', '3 runs too narrow']);
  });

  test('are not told when none was left open', () => {
    expect(toldWays(smallTakeoff)).toEqual([]);
  });
});
