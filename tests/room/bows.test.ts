import { describe, expect, test } from 'vitest';
import { areaOf, contains } from '../../src/geometry/polygon';
import type { MeasuredBow } from '../../src/room/measured';
import { roomAreaOf, roomOf } from '../../src/room/outline';
import { feet, goodRoom, inches, rectangular, walked } from '../support/floors';
import { seededRandom } from '../support/seededRandom';

const SQUARE_INCH = inches(1) ** 2;
const SQUARE_FOOT = feet(1) ** 2;
const places = (wallNumber: number, ...list: readonly (readonly [number, number])[]): MeasuredBow => ({
  kind: 'places',
  wallNumber,
  places: list.map(([along, out]) => ({ along: inches(along), out: inches(out) })),
});
const curve = (wallNumber: number, rise: number): MeasuredBow => ({ kind: 'curve', wallNumber, rise: inches(rise) });
const areaWith = (...bows: readonly MeasuredBow[]) => roomAreaOf(goodRoom(rectangular(12, 10), { bows }));

describe('a wall that bows, by offsets from a straight line', () => {
  // The trapezoid rule of land surveying: strips between offsets at equal intervals. 0, 1/2, 1, 1/2, 0 in at every 36 in
  // of 144 in: 36 x (1/2 + 1 + 1/2) = 72 sq in.
  test.each([
    ['out', 1],
    ['into the room', -1],
  ])('%s: the area by the trapezoid rule', (_, way) => {
    for (let wall = 1; wall <= 4; wall += 2) {
      const bow = places(wall, [36, way / 2], [72, way], [108, way / 2]);
      expect(areaWith(bow) - 120 * SQUARE_FOOT).toBe(way * 72 * SQUARE_INCH);
    }
  });

  test('places may be given in any order, and a walk to the left bows the same way', () => {
    const bow = places(1, [108, 0.5], [36, 0.5], [72, 1]);
    expect(areaWith(bow) - 120 * SQUARE_FOOT).toBe(72 * SQUARE_INCH);
    const left = walked([12, -90], [10, -90], [12, -90], [10]);
    expect(roomAreaOf(goodRoom(left, { bows: [bow] })) - 120 * SQUARE_FOOT).toBe(72 * SQUARE_INCH);
  });

  test('a doorway lies in the face of the wall, and the face within it is gone', () => {
    const doorway = {
      wallNumber: 1,
      along: inches(60),
      width: inches(30),
      floor: 'goes on',
      depth: inches(5),
    } as const;
    const room = goodRoom(rectangular(12, 10), { bows: [places(1, [72, -2])], doorways: [doorway] });
    // Straight from 0 at 0 in to 2 in into the room at 72 in: 1 2/3 in at 60 in; and 1 1/2 in at 90 in.
    const [{ from, to }] = room.doorways;
    expect([from, to].map(({ y }) => (feet(10) - y) / inches(1))).toEqual([
      expect.closeTo(60 / 36, 3),
      expect.closeTo(1.5, 3),
    ]);
    expect(contains(room.open, { x: inches(75), y: feet(10) - inches(1) })).toBe(true);
    expect(contains(room.open, { x: inches(50), y: feet(10) - inches(1) })).toBe(false);
  });
});

describe('a curved wall, by chord and rise', () => {
  // Segment of a circle (any handbook of mensuration): r = c²/8h + h/2, area = r² (a - sin a) / 2 with a = 4 atan(2h/c).
  const segment = (chord: number, rise: number) => {
    const r = (chord * chord) / (8 * rise) + rise / 2;
    const a = 4 * Math.atan((2 * rise) / chord);
    return (r * r * (a - Math.sin(a))) / 2;
  };

  test.each([[1], [12], [36], [72]])('%s in of rise on a chord of 12 ft: the area of the segment', (rise) => {
    const more = (areaWith(curve(1, rise)) - 120 * SQUARE_FOOT) / SQUARE_INCH;
    // Straight pieces leave the arc by 1/32 in at most: of its length, under 230 in, a third of that on the average.
    expect(more).toBeLessThanOrEqual(segment(144, rise));
    expect(more).toBeGreaterThan(segment(144, rise) - (230 * 2) / 3 / 32 - 0.1);
  });

  test('into the room no floor is drawn inside the wall', () => {
    const random = seededRandom(3);
    for (let i = 0; i < 50; i++) {
      const rise = random.whole(1, 60);
      const room = goodRoom(rectangular(12, 10), { bows: [curve(1, -rise)] });
      const less = (120 * SQUARE_FOOT - areaOf([room.outline])) / SQUARE_INCH;
      expect(less).toBeGreaterThanOrEqual(segment(144, rise) * (1 - 1e-9));
      expect(less).toBeLessThan(segment(144, rise) + 230 / 16);
    }
  });
});

describe('what cannot be a wall is told', () => {
  const faultsWith = (...bows: readonly MeasuredBow[]) => {
    const result = roomOf({ shape: rectangular(12, 10), bows, cutouts: [], doorways: [] });
    return result.kind === 'faults' ? result.faults.map(({ code }) => code) : [];
  };
  test.each([
    ['no such wall', [places(5, [36, 1])]],
    ['bow off its wall', [places(1, [144, 1])]],
    ['bow off its wall', [places(1, [-3, 1])]],
    ['wall bows twice', [places(1, [36, 1]), curve(1, 4)]],
    ['curve too deep', [curve(1, 73)]],
    ['bowed walls meet', [places(1, [72, -121])]],
  ])('%s', (code, bows) => {
    expect(faultsWith(...bows)).toEqual([code]);
  });
});
