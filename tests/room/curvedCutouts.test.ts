/** Cut-outs with a curved front, by width, depth and rise: a hearth, half a column in a wall. */
import { describe, expect, test } from 'vitest';
import { areaOf, contains } from '../../src/geometry/polygon';
import type { MeasuredCutout } from '../../src/room/measured';
import { roomAreaOf, roomOf } from '../../src/room/outline';
import { drawRoom } from '../../src/takeoff/reading/drawRoom';
import { unlikeArea } from '../support/areaOracle';
import { feet, goodRoom, inches, rectangular } from '../support/floors';
import { plainRoom } from '../support/roomEntries';
import { seededRandom } from '../support/seededRandom';

const SQUARE_INCH = inches(1) ** 2;
const curved = (along: number, length: number, depth: number, rise: number, wallNumber = 1): MeasuredCutout => ({
  kind: 'curved',
  wallNumber,
  along: inches(along),
  off: 0,
  length: inches(length),
  depth: inches(depth),
  rise: inches(rise),
});
const taken = (cutout: MeasuredCutout) => {
  const room = goodRoom(rectangular(12, 10), { cutouts: [cutout] });
  return { room, area: (120 * 144 * SQUARE_INCH - roomAreaOf(room)) / SQUARE_INCH };
};

// Segment of a circle (any handbook of mensuration): r = c²/8h + h/2, area = r² (a - sin a) / 2 with a = 4 atan(2h/c).
const radiusOf = (chord: number, rise: number) => (chord * chord) / (8 * rise) + rise / 2;
function segment(chord: number, rise: number): number {
  const r = radiusOf(chord, rise);
  const a = 4 * Math.atan((2 * rise) / chord);
  return (r * r * (a - Math.sin(a))) / 2;
}

describe('a cut-out with a curved front', () => {
  // A hearth of 60 in by 24 in that rises 8 in: sides of 16 in, r = 3600/64 + 4 = 60 1/4 in.
  test.each([
    [60, 24, 8],
    [60, 30, 30],
    [36, 4, 4],
    [48, 20, 1],
  ])('%s in wide, %s in deep, rising %s in: the rectangle of its sides and the segment', (length, depth, rise) => {
    const { area } = taken(curved(40, length, depth, rise));
    const wanted = length * (depth - rise) + segment(length, rise);
    const arc = radiusOf(length, rise) * 4 * Math.atan((2 * rise) / length);
    // Drawn outside the arc, nowhere further from it than 1/32 in; at its ends on it.
    expect(area).toBeGreaterThan(wanted - 0.1);
    expect(area).toBeLessThan(wanted + arc / 32);
  });

  test('leaves no floor within its circle, and takes none a sixteenth beyond it', () => {
    const { room } = taken(curved(40, 60, 24, 8));
    const r = radiusOf(60, 8);
    const centre = { x: 70, y: 120 - 24 + r };
    for (let x = 41; x <= 99; x += 0.5) {
      const front = centre.y - Math.sqrt(r * r - (x - centre.x) ** 2);
      const at = (y: number) => contains(room.open, { x: inches(x), y: Math.round(inches(y)) });
      expect([x, at(front + 1 / 32), at(front - 1 / 16)]).toEqual([x, false, true]);
    }
  });

  test('at every wall and with gaps it is what Clipper2 makes of the circle and the rectangle', () => {
    const random = seededRandom(5);
    for (let i = 0; i < 60; i++) {
      const wallNumber = random.whole(1, 4);
      const [length, along] = [random.whole(12, 60), random.whole(0, 50)];
      const depth = random.whole(4, 40);
      const rise = random.whole(1, Math.min(Math.floor(length / 2), depth));
      const room = goodRoom(rectangular(12, 10), { cutouts: [curved(along, length, depth, rise, wallNumber)] });
      const r = radiusOf(length, rise);
      // In the frame of the wall: u along it, v into the room; then put into the room by hand.
      const place = (u: number, v: number) => {
        const [x, y] = [
          [u, 120 - v],
          [144 - v, 120 - u],
          [144 - u, v],
          [v, u],
        ][wallNumber - 1];
        return { x: Math.round(inches(x)), y: Math.round(inches(y)) };
      };
      const half = Math.asin(length / 2 / r);
      const arc = Array.from({ length: 401 }, (_, k) => half * (k / 200 - 1)).map((angle) =>
        place(along + length / 2 + r * Math.sin(angle), depth - r + r * Math.cos(angle)),
      );
      const exact = [place(along, 0), ...arc, place(along + length, 0)];
      const apart = unlikeArea(room.cutouts, [exact]) / SQUARE_INCH;
      expect(apart).toBeLessThan((2 * half * r) / 32 + 0.2);
    }
  });
});

test('more than half a circle, or deeper than the cut-out, is told', () => {
  for (const [length, depth, rise, most] of [
    [24, 30, 13, 12],
    [60, 8, 9, 8],
  ]) {
    const result = roomOf({ shape: rectangular(12, 10), cutouts: [curved(40, length, depth, rise)], doorways: [] });
    expect(result).toEqual({
      kind: 'faults',
      faults: [{ code: 'front too curved', cutoutNumber: 1, found: inches(rise), most: inches(most) }],
    });
  }
});

test('the rise is asked only of a curved front, and a bare number is in inches', () => {
  const hearth = { kind: 'curved', wall: 1, along: 3, off: '', length: 5, depth: 2, rise: 8 } as const;
  const area = (cutout: object) => {
    const { room } = drawRoom({ ...plainRoom, cutouts: [cutout as typeof hearth] });
    return room ? areaOf(room.room.cutouts) / feet(1) ** 2 : 0;
  };
  expect(area(hearth)).toBeCloseTo((60 * 16 + segment(60, 8)) / 144, 1);
  expect(area({ ...hearth, kind: 'rectangle' })).toBeCloseTo(10, 6);
  expect(drawRoom({ ...plainRoom, cutouts: [{ ...hearth, rise: '' }] }).problems.map(({ field }) => field)).toEqual([
    'cutouts.0.rise',
  ]);
});
