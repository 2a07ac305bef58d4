import { describe, expect, test } from 'vitest';
import { areaOf, boundsOf, partsOf } from '../../src/geometry/polygon';
import { bodyOf, floorOf } from '../../src/room/floor';
import { joinRooms, type RoomJoin } from '../../src/room/join';
import type { MeasuredDoorway } from '../../src/room/measured';
import type { Room } from '../../src/room/outline';
import { unlikeArea } from '../support/areaOracle';
import { cornersInInches, feet, goodRoom, inches, rectangular } from '../support/floors';

function opening(wallNumber: number, along: number, width = 3): MeasuredDoorway {
  return { wallNumber, along: feet(along), width: feet(width), floor: 'goes on', depth: 0 };
}

function joined(rooms: readonly Room[], joins: readonly RoomJoin[]) {
  const result = joinRooms(rooms, joins);
  if (result.faults) throw new Error(JSON.stringify(result.faults));
  return result.joined;
}

const join = (room: number, doorway: number, toRoom: number, toDoorway: number): RoomJoin => ({
  room,
  doorway,
  toRoom,
  toDoorway,
  wallThickness: inches(6),
});

describe('two rooms side by side', () => {
  // 12 x 10 ft with a doorway 3 ft wide in its right wall, 2 to 5 ft from the far corner; 8 x 10 ft with one in its left
  // wall, which runs up from the near corner: 5 to 8 ft.
  const left = goodRoom(rectangular(12, 10), { doorways: [opening(2, 2)] });
  const right = goodRoom(rectangular(8, 10), { doorways: [opening(4, 5)] });

  test('are one outline with a passage through the wall', () => {
    const { room, passages, rooms } = joined([left, right], [join(1, 1, 2, 1)]);
    expect(cornersInInches(room.outline)).toEqual(
      [
        '0,0',
        '144,0',
        '144,60',
        '150,60',
        '150,0',
        '246,0',
        '246,120',
        '150,120',
        '150,96',
        '144,96',
        '144,120',
        '0,120',
      ].sort(),
    );
    expect(passages).toHaveLength(1);
    expect(passages[0].widthsDiffer).toBe(0);
    expect(rooms.map(({ firstWallNumber }) => firstWallNumber)).toEqual([1, 5]);
    expect(room.walls.map(({ wallNumber }) => wallNumber)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(room.doorways).toEqual([]);
  });

  test('get floor through the passage, less the gap at its jambs', () => {
    const { room } = joined([left, right], [join(1, 1, 2, 1)]);
    const floor = floorOf(room, inches(1));
    // 142 x 118 + 94 x 118 + the passage (36 - 2) x (6 + 2)
    expect(areaOf(floor) / inches(1) ** 2).toBe(142 * 118 + 94 * 118 + 34 * 8);
    expect(floor).toHaveLength(1);
    expect(unlikeArea(floor, bodyOf(room, inches(1)))).toBe(0);
  });

  test('it does not matter from which side they are joined, nor how the second was held', () => {
    const plain = floorOf(joined([left, right], [join(1, 1, 2, 1)]).room, inches(1));
    expect(unlikeArea(floorOf(joined([left, right], [join(2, 1, 1, 1)]).room, inches(1)), plain)).toBe(0);
    // Measured facing its right side: what was the left wall is now the near one, run from right to left.
    const turned = goodRoom(rectangular(10, 8), { doorways: [opening(3, 5)] });
    expect(unlikeArea(floorOf(joined([left, turned], [join(1, 1, 2, 1)]).room, inches(1)), plain)).toBe(0);
  });

  test('the narrower of two doorways counts', () => {
    const wide = goodRoom(rectangular(8, 10), { doorways: [opening(4, 4, 5)] });
    const { room, passages } = joined([left, wide], [join(1, 1, 2, 1)]);
    expect(passages[0].widthsDiffer).toBe(feet(2));
    expect(areaOf(floorOf(room, inches(1))) / inches(1) ** 2).toBe(142 * 118 + 94 * 118 + 34 * 8);
  });
});

describe('three rooms and more', () => {
  test('two rooms and a hall through two doorways', () => {
    // Hall 20 x 4 ft below; rooms of 9 x 10 ft above it at both ends, 2 ft apart but for their walls.
    const end: MeasuredDoorway = { ...opening(4, 0.5), floor: 'transition', depth: inches(4) };
    const hall = goodRoom(rectangular(20, 4), { doorways: [opening(1, 3), opening(1, 14), end] });
    const room = goodRoom(rectangular(9, 10), { doorways: [opening(3, 3)] });
    const { room: all, rooms } = joined([hall, room, room], [join(1, 1, 2, 1), join(1, 2, 3, 1)]);
    expect(rooms).toHaveLength(3);
    expect(areaOf([all.outline]) / feet(1) ** 2).toBe(80 + 90 + 90 + 2 * 3 * 0.5);
    // The door at the end of the hall is left, with its wall numbered on.
    expect(all.doorways.map(({ doorwayNumber, wallNumber }) => [doorwayNumber, wallNumber])).toEqual([[1, 4]]);
    // Its floor ends 4 in beyond the hall's left end, without a gap there.
    const floor = floorOf(all, inches(3 / 8));
    expect(partsOf(floor)).toHaveLength(1);
    const hallEnd = Math.min(...rooms[0].outline.map((p) => p.x));
    expect(boundsOf(floor).x0).toBe(hallEnd - inches(4));
  });

  test('four rooms in a ring go round a block of walls', () => {
    // 10 x 10 ft rooms with 6 in walls: the second right of the first, the third below that, the fourth below the first.
    const [a, b] = [opening(2, 3.5), opening(3, 3.5)];
    const first = goodRoom(rectangular(10, 10), { doorways: [a, b] });
    const second = goodRoom(rectangular(10, 10), { doorways: [opening(4, 3.5), opening(3, 3.5)] });
    const third = goodRoom(rectangular(10, 10), { doorways: [opening(1, 3.5), opening(4, 3.5)] });
    const fourth = goodRoom(rectangular(10, 10), { doorways: [opening(1, 3.5), opening(2, 3.5)] });
    const ring = [join(1, 1, 2, 1), join(2, 2, 3, 1), join(3, 2, 4, 2), join(4, 1, 1, 2)];
    const { room } = joined([first, second, third, fourth], ring);
    expect(areaOf(floorOf(room, 0)) / feet(1) ** 2).toBe(4 * 100 + 4 * 3 * 0.5);
    // The cross of walls between the four: 6 in wide, from doorway to doorway.
    expect(room.cutouts).toHaveLength(1);
    expect(areaOf(room.cutouts) / feet(1) ** 2).toBe(4 * 3.5 * 0.5 + 0.25);
  });
});

describe('joins that cannot be', () => {
  const room = goodRoom(rectangular(12, 10), { doorways: [opening(2, 2), opening(4, 2), opening(1, 1)] });
  const small = goodRoom(rectangular(5, 5), { doorways: [opening(4, 1), opening(3, 1)] });

  test.each<readonly [string, readonly Room[], readonly RoomJoin[], unknown]>([
    [
      'a doorway that is not there',
      [room, small],
      [join(1, 4, 2, 1)],
      { code: 'no such doorway', roomNumber: 1, found: 4 },
    ],
    ['a room that is not there', [room], [join(1, 1, 2, 1)], { code: 'no such doorway', roomNumber: 2, found: 1 }],
    ['a room without a join', [room, small], [], { code: 'room not joined', roomNumber: 2 }],
    [
      'doorways that miss each other',
      [room, small],
      [join(1, 1, 2, 1), join(1, 3, 2, 2)],
      { code: 'doorways do not meet', joinNumber: 2 },
    ],
    [
      'rooms on top of each other',
      [room, small, room],
      [join(1, 1, 2, 1), join(1, 1, 3, 2)],
      { code: 'rooms overlap', roomNumbers: [2, 3] },
    ],
  ])('%s', (_, rooms, joins, fault) => {
    expect(joinRooms(rooms, joins).faults?.[0]).toMatchObject(fault as object);
  });
});
