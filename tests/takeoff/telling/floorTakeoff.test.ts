import { expect, test } from 'vitest';
import { ticksOfInches } from '../../../src/geometry/length';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { planFloors } from '../../../src/takeoff/planning/planFloors';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import type { FloorPiece } from '../../../src/takeoff/result';
import { floorTakeoffOf } from '../../../src/takeoff/telling/floorTakeoff';
import { plainRoom } from '../../support/roomEntries';

/** A room whose last row is 17 in shorter than its first, and is ripped from the same planks. */
function cornerRoom(name: string, length: number): RoomEntry {
  const rectangle = { change: 'add' as const, fromLeft: 0, fromNear: 0, length, width: 4 };
  const corner = { change: 'take away' as const, fromLeft: 0, fromNear: 2, length: '17"', width: 2 };
  return {
    ...plainRoom,
    name,
    shape: { kind: 'rectangles', rectangles: [rectangle, corner] },
    rules: { ...plainRoom.rules, firstRow: '2 1/2"', minStagger: '6"' },
  };
}

const PLANK = ticksOfInches(48);
const KERF = ticksOfInches(1 / 8);

/** Crosscuts by the pieces as listed: between those of a plank, off its rest, and one for each strip cut shorter. */
function crosscutsOf(pieces: readonly FloorPiece[]): number {
  const own = pieces.filter((piece) => piece.stripOf === '');
  const lengthOf = new Map(own.map((piece) => [piece.label, piece.length]));
  const shortened = pieces.filter(({ stripOf, length }) => stripOf !== '' && (lengthOf.get(stripOf) ?? 0) > length);
  const planks = [...new Set(own.map((piece) => piece.plankNumber))].map((plankNumber) => {
    const lengths = own.filter((piece) => piece.plankNumber === plankNumber).map((piece) => piece.length);
    const used = lengths.reduce((sum, length) => sum + length, 0) + (lengths.length - 1) * KERF;
    return lengths.length - 1 + (used < PLANK ? 1 : 0);
  });
  return shortened.length + planks.reduce((sum, count) => sum + count, 0);
}

test('cuts of a floor among others count its shortened strips too', () => {
  const floors = [cornerRoom('Den', 4.5), cornerRoom('Hall', 6.3)].map((entry) => {
    const { room } = drawRoom(entry);
    if (room === null) throw new Error('the room can be drawn');
    return chooseWay(room).planned.floors[0];
  });
  const planned = planFloors(floors);
  for (const i of [0, 1]) {
    const { pieces, summary } = floorTakeoffOf(planned, i, []);
    const strips = pieces.filter((piece) => piece.stripOf !== '');
    expect(strips.length).toBeGreaterThan(0);
    // A strip comes off a piece of the first row, of the same plank and the same end.
    for (const strip of strips) {
      const source = pieces.find((piece) => piece.label === strip.stripOf);
      expect(source).toMatchObject({ rowNumber: 1, plankNumber: strip.plankNumber });
      expect([strip.keeps, 'both ends']).toContain(source?.keeps);
      expect(source?.rest).toContain(`write ${strip.label} on the strip`);
    }
    expect(summary.cutCount).toBe(crosscutsOf(pieces));
  }
});

test('a whole plank with an end cut at an angle keeps its other end', () => {
  // One row 6 in deep and 96 in long at its near side, its right end at 45 degrees: two planks of 48 in.
  const walls = [
    { length: '90"', turn: 45 },
    { length: `${Math.SQRT2 * 6} in`, turn: 135 },
    { length: '96"', turn: 'R' },
    { length: '6"', turn: 'R' },
  ];
  const entry: RoomEntry = {
    ...plainRoom,
    shape: { kind: 'walls in order', diagonals: [], walls },
    rules: { ...plainRoom.rules, expansionGap: 0 },
  };
  const { room } = drawRoom(entry);
  if (room === null) throw new Error('the room can be drawn');
  const { pieces, planks } = floorTakeoffOf(chooseWay(room).planned, 0, []);
  expect(pieces.map(({ label, length, keeps }) => [label, length / ticksOfInches(1), keeps])).toEqual([
    ['1-1', 48, 'both ends'],
    ['1-2', 48, 'left end'],
  ]);
  expect(planks.flatMap((plank) => plank.pieces.map(({ keeps }) => keeps))).toEqual(['both ends', 'left end']);
});
