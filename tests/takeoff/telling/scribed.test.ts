/** Rows against a wall that bows, and ends at a round hearth: sizes at the places where the wall was measured. */
import { describe, expect, test } from 'vitest';
import type { BowEntry, RoomEntry } from '../../../src/takeoff/entry';
import type { FloorPiece } from '../../../src/takeoff/result';
import { takeoff } from '../../../src/takeoff/takeoff';
import { lengthText } from '../../../src/takeoff/text/lengthText';
import { plainRoom } from '../../support/roomEntries';

const bow = (change: Partial<BowEntry>): BowEntry => ({
  kind: 'place',
  wall: 3,
  way: 'out',
  along: '',
  off: '',
  ...change,
});

function firstRow(bows: readonly BowEntry[], own: Partial<RoomEntry['rules']> = {}): readonly FloorPiece[] {
  const rules = { ...plainRoom.rules, firstRow: '4"', squareCut: 0, ...own };
  const result = takeoff({ ...plainRoom, bows, rules });
  if (result.status !== 'planned') throw new Error(JSON.stringify(result.problems));
  return result.takeoff.pieces.filter(({ rowNumber }) => rowNumber === 1);
}

/** Widths by place along the row, from the left end of the row, as the list says them. */
function widthsOf(pieces: readonly FloorPiece[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  let left = 0;
  for (const { marks, length } of pieces) {
    const scribe = marks.find((mark) => mark.startsWith('Scribe the start edge: '));
    for (const [, width, at] of (scribe ?? '').matchAll(/([\d /]+") at ([\d /]+)"/g)) {
      found.set(lengthText(left + inTicks(at), 'us', 'piece'), width.trim());
    }
    left += length;
  }
  return found;
}

function inTicks(inches: string): number {
  return inches.split(' ').reduce((sum, part) => {
    const [over, under = '1'] = part.split('/');
    return sum + (16_256 * Number(over)) / Number(under);
  }, 0);
}

// By hand. Wall 3 runs from right to left: 3 ft, 6 ft and 9 ft along it are 108", 72" and 36" from the left wall, and the row
// starts 3/8" from that. The row is 4" wide where the wall is straight, and wider by what the wall lies outside.
test('a wall that bows out by 1 1/4", 2" and 1/2"', () => {
  const bows = [bow({ along: 3, off: 1.25 }), bow({ along: 6, off: 2 }), bow({ along: 9, off: 0.5 })];
  const widths = widthsOf(firstRow(bows, { firstRow: '3"' }));
  // The first row is as wide as it is told at its widest: 3" there, less further in.
  expect([...widths.values()]).toContain('3"');
  expect(widths.get('71 5/8"')).toBe('3"');
  expect(widths.get('35 5/8"')).toBe('1 1/2"');
  expect(widths.get('107 5/8"')).toBe('2 1/4"');
});

test('a wall that bows in', () => {
  const bows = [bow({ way: 'in', along: 6, off: 1 })];
  expect(widthsOf(firstRow(bows)).get('71 5/8"')).toBe('3"');
});

test('is ripped along, not cut at an angle or notched', () => {
  for (const { cuts } of firstRow([
    bow({ along: 3, off: 1 }),
    bow({ along: 6, off: 2 }),
    bow({ along: 9, off: 0.5 }),
  ])) {
    expect(cuts).toContain('rip');
    expect(cuts).not.toContain('angled crosscut');
    expect(cuts).not.toContain('notch');
  }
});

function piecesOf(own: Partial<RoomEntry>): readonly FloorPiece[] {
  const result = takeoff({ ...plainRoom, ...own });
  if (result.status !== 'planned') throw new Error(JSON.stringify(result.problems));
  return result.takeoff.pieces;
}

const lastOf = (pieces: readonly FloorPiece[]) => {
  const last = Math.max(...pieces.map(({ rowNumber }) => rowNumber));
  return pieces.filter(({ rowNumber }) => rowNumber === last);
};

/** Widths by place along the last row, from the left end of the row; the ends of its pieces by their widths. */
function lastWidths(pieces: readonly FloorPiece[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  let left = 0;
  for (const { marks, length } of lastOf(pieces)) {
    const scribe = marks.find((mark) => mark.startsWith('Scribe the far edge: '));
    for (const [, width, at] of (scribe ?? '').matchAll(/([\d /]+") at ([\d /]+)"/g)) {
      found.set(lengthText(left + inTicks(at), 'us', 'piece'), width.trim());
    }
    left += length;
  }
  return found;
}

// By hand. Wall 1 runs from left to right: 3 ft, 6 ft and 9 ft along it are 35 5/8", 71 5/8" and 107 5/8" from where the row
// starts. The last row is 5 1/4" wide where the wall is straight (119 1/4" less 19 rows of 6"), gap taken off, and as much
// narrower as the wall stands in: 4 7/8", 4 1/4".
describe('the last row at a wall that bows in', () => {
  const bows = [
    bow({ wall: 1, way: 'in', along: 3, off: '3/8"' }),
    bow({ wall: 1, way: 'in', along: 6, off: '1"' }),
    bow({ wall: 1, way: 'in', along: 9, off: '1/2"' }),
  ];
  const own = (change: Partial<RoomEntry['rules']>) => ({
    bows,
    product: { ...plainRoom.product, plankLength: '48"', plankWidth: '6"' },
    shape: { kind: 'rectangle', length: "12'", width: "10'" } as const,
    rules: { ...plainRoom.rules, ...change },
  });

  test('has its widths at the places that were measured', () => {
    const widths = lastWidths(piecesOf(own({ squareCut: 0 })));
    expect(widths.get('35 5/8"')).toBe('4 7/8"');
    expect(widths.get('71 5/8"')).toBe('4 1/4"');
    // From 1" at 6 ft to 1/2" at 9 ft and nothing at 12 ft it is one straight line.
    expect(widths.has('107 5/8"')).toBe(false);
  });

  test('is ripped straight where the wall leaves the line by less than the square-cut tolerance', () => {
    // At 3 ft the wall turns by 1/4" in 36": a piece from 0 to 48" is off its line by 1/16" there, and by 5/16" where the
    // middle of the wall lies inside it.
    const pieces = piecesOf(own({}));
    const widths = lastWidths(pieces);
    expect(widths.get('71 5/8"')).toBe('4 1/4"');
    expect(widths.has('35 5/8"')).toBe(false);
    expect(
      lastOf(pieces).some(({ marks }) => marks.some((mark) => mark.startsWith('Rip to a taper along the far'))),
    ).toBe(true);
  });
});

// By hand: an arc of 48" by 8" has a radius of 24 x 24 / 16 + 4 = 40". With the gap of 3/8" its front is an arc of 40 3/8" round
// the same centre, which lies 18 - 40 = 22" behind the wall: at a height h from the middle of the hearth it stands
// root(40 3/8^2 - h^2) - 22 into the room, 18 3/8" in the middle.
test('ends at a hearth with a round front are scribed by lengths that lie on its circle', () => {
  const hearth = { kind: 'curved', wall: 4, along: "3'", off: 0, length: "4'", depth: '18"', rise: '8"' } as const;
  const pieces = piecesOf({
    cutouts: [hearth],
    product: { ...plainRoom.product, plankLength: '48"', plankWidth: '6"' },
    shape: { kind: 'rectangle', length: "12'", width: "10'" },
  });
  let found = 0;
  for (const { marks, rowNumber, length, polygon } of pieces) {
    const scribe = marks.find((mark) => mark.startsWith('Scribe the left end: '));
    if (!scribe || rowNumber > 20) continue;
    const right = Math.max(...polygon.map(({ x }) => x));
    // Rows of 6" from 3/8" on, the middle of the hearth 60" from the near wall.
    const low = 3 / 8 + 6 * (rowNumber - 1);
    for (const [, size, at] of scribe.matchAll(/([\d /]+")(?: long)? at (the start edge|the far edge|[\d /]+")/g)) {
      const y = low + (at === 'the start edge' ? 0 : at === 'the far edge' ? 6 : inTicks(at.replace('"', '')) / 16_256);
      const into = Math.sqrt(40.375 ** 2 - (y - 60) ** 2) - 22;
      const long = right / 16_256 - into;
      expect(Math.abs(inTicks(size.replace('"', '').trim()) / 16_256 - long)).toBeLessThan(3 / 16);
      expect(inTicks(size.replace('"', '').trim())).toBeLessThanOrEqual(length);
      found += 1;
    }
    expect(marks.join(' ')).not.toMatch(/join these corners/);
  }
  expect(found).toBeGreaterThan(12);
});
