import { describe, expect, test } from 'vitest';
import { boundsOf, type Region } from '../../src/geometry/polygon';
import { frameOf, regionToFrame, regionToRoom, toFrame, toRoom } from '../../src/geometry/turn';
import { rectangle } from '../support/randomRooms';
import { seededRandom } from '../support/seededRandom';

const room: Region = [rectangle(100, 200, 4000, 3000)];

describe('right angles', () => {
  test.each([
    [0, { x: 1100, y: 500 }, { x: 1000, y: 300 }],
    // Rows upwards: what lies to the left of them is up in the frame, so the room's right side is the start.
    [90, { x: 1100, y: 500 }, { x: 300, y: 3000 }],
    [180, { x: 1100, y: 500 }, { x: 3000, y: 2700 }],
    [270, { x: 1100, y: 500 }, { x: 2700, y: 1000 }],
  ])('%d degrees there and back is exact', (degrees, place, inFrame) => {
    const frame = frameOf(room, degrees);
    expect(toFrame(frame, place)).toEqual(inFrame);
    expect(toRoom(frame, inFrame)).toEqual(place);
    expect(regionToRoom(frame, regionToFrame(frame, room))).toEqual(room);
  });

  test('angles outside 0 to 360 come back in', () => {
    expect(frameOf(room, -90)).toEqual(frameOf(room, 270));
    expect(frameOf(room, 450)).toEqual(frameOf(room, 90));
  });
});

describe('other angles', () => {
  test('45 degrees: a square of side s is s times the square root of 2 across', () => {
    const frame = frameOf([rectangle(0, 0, 1_000_000, 1_000_000)], 45);
    const { x0, y0, x1, y1 } = boundsOf(regionToFrame(frame, [rectangle(0, 0, 1_000_000, 1_000_000)]));
    expect([x0, y0]).toEqual([0, 0]);
    expect([x1, y1]).toEqual([1_414_214, 1_414_214]);
  });

  test('there and back moves a point by at most a tick on each axis', () => {
    const random = seededRandom(5);
    for (let i = 0; i < 500; i++) {
      const frame = frameOf(room, random.whole(1, 35_999) / 100);
      const place = { x: random.whole(0, 6_000_000), y: random.whole(0, 6_000_000) };
      const back = toRoom(frame, toFrame(frame, place));
      expect(Math.max(Math.abs(back.x - place.x), Math.abs(back.y - place.y))).toBeLessThanOrEqual(1);
    }
  });

  test('walls along and across the rows are level and upright again', () => {
    const random = seededRandom(9);
    for (let i = 0; i < 300; i++) {
      const degrees = random.whole(1, 8999) / 100;
      const { cosine, sine } = frameOf(room, degrees);
      const [length, width] = [random.whole(100_000, 4_000_000), random.whole(100_000, 4_000_000)];
      const turned: Region = [
        rectangle(0, 0, length, width).map(({ x, y }) => ({
          x: Math.round(x * cosine - y * sine),
          y: Math.round(x * sine + y * cosine),
        })),
      ];
      const [a, b, c, d] = regionToFrame(frameOf(turned, degrees), turned)[0];
      expect([a.y === b.y, c.y === d.y, b.x === c.x, d.x === a.x]).toEqual([true, true, true, true]);
      expect(Math.abs(b.x - a.x - length)).toBeLessThanOrEqual(2);
    }
  });
});
