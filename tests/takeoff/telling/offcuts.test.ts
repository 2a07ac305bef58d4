import { describe, expect, test } from 'vitest';
import { ticksOfInches } from '../../../src/geometry/length';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import { planFloors } from '../../../src/takeoff/planning/planFloors';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import type { Takeoff } from '../../../src/takeoff/result';
import { floorTakeoffOf } from '../../../src/takeoff/telling/floorTakeoff';
import { plankUses } from '../../../src/takeoff/telling/offcuts';
import { plainRoom } from '../../support/roomEntries';

function room(name: string, length: number, width: number, rules: Partial<RoomEntry['rules']> = {}): RoomEntry {
  const shape = { kind: 'rectangle' as const, length, width };
  return { ...plainRoom, name, shape, rules: { ...plainRoom.rules, ...rules } };
}

function laid(entry: RoomEntry) {
  const { room: drawn } = drawRoom(entry);
  if (drawn === null) throw new Error(`${entry.name} can be drawn`);
  return chooseWay(drawn).planned.floors[0];
}

const planned = planFloors([room('Den', 11, 9.4), room('Hall', 9.1, 5)].map(laid));
const takeoffs = [0, 1].map((i) => floorTakeoffOf(planned, i, []));

describe('what waits after a row', () => {
  test('is as much as the books of the plan say, row by row, through all rooms', () => {
    const counts = takeoffs.flatMap(({ rows }) => rows.map(({ waiting }) => waiting.length));
    expect(Math.max(...counts)).toBeGreaterThan(0);
    expect(counts).toEqual(planned.ledger.waiting.afterRow);
  });

  test('is written on an offcut of a row already laid, and is laid later', () => {
    for (const { rows, pieces } of takeoffs) {
      for (const { rowNumber, waiting } of rows) {
        for (const label of waiting.filter((text) => /^\d/.test(text))) {
          const writer = pieces.find(({ rest }) =>
            rest.split(', ').some((part) => part.startsWith(`write ${label} on`)),
          );
          const piece = pieces.find((candidate) => candidate.label === label);
          expect(writer === undefined || writer.rowNumber <= rowNumber).toBe(true);
          expect(piece?.rowNumber).toBeGreaterThan(rowNumber);
        }
      }
    }
  });
});

describe('a plank that gives several pieces', () => {
  const own = takeoffs.flatMap(({ pieces }) => pieces);

  test('is cut in the order of laying, and each piece says what it is an offcut of', () => {
    const offcuts = own.filter(({ offcutOf }) => offcutOf !== '');
    expect(offcuts.length).toBeGreaterThan(3);
    for (const { pieces } of takeoffs) {
      for (const piece of pieces.filter(({ offcutOf }) => /^\d/.test(offcutOf))) {
        const source = pieces.find(({ label }) => label === piece.offcutOf);
        expect(source?.plankNumber).toBe(piece.plankNumber);
        expect(pieces.indexOf(source as (typeof pieces)[number])).toBeLessThan(pieces.indexOf(piece));
        expect(source?.rest).toContain(`write ${piece.label} on it`);
      }
    }
  });

  test('is crosscut before it is ripped where its rest serves', () => {
    const shared = own.filter(({ rest, cuts }) => rest.includes(' on it') && cuts.length > 0);
    expect(shared.filter(({ cuts }) => cuts.includes('rip')).length).toBeGreaterThan(0);
    for (const { cuts } of shared) expect(cuts[0]).toBe('crosscut');
  });

  test('a last piece from the rest of an earlier one may grow by what its plank has left', () => {
    // By hand: the plank less its pieces and a kerf after each, as far as there is wood.
    const { plankLength, kerf } = planned.markedJob;
    let found = 0;
    for (const booking of planned.ledger.planks) {
      const wood = booking.pieces.reduce((left, { length }) => left - length - kerf, plankLength);
      booking.pieces.forEach(({ rowIndex, runIndex, pieceIndex, from }, order) => {
        const piece = planned.markedPlan.rows[rowIndex].runs[runIndex][pieceIndex];
        const isShown = order > 0 && from !== 'right';
        if (isShown) found++;
        expect(plankUses(planned, 0).get(piece)?.mayGrow).toBe(isShown ? Math.max(0, wood) : null);
      });
    }
    expect(found).toBeGreaterThan(0);
  });
});

describe('what is ripped', () => {
  /** One row of 2 in by 60 in and so on: planks of 48 by 6 in, gap 0, kerf 1/8 in. */
  const narrow = (length: string, width: string, rules: Partial<RoomEntry['rules']> = {}): Takeoff => {
    const entry: RoomEntry = {
      ...plainRoom,
      shape: { kind: 'rectangle', length, width },
      product: { ...plainRoom.product, plankLength: '48"', plankWidth: '6"' },
      rules: {
        ...plainRoom.rules,
        expansionGap: 0,
        kerf: '1/8"',
        minPiece: '6"',
        minStagger: '6"',
        minRip: '1"',
        ...rules,
      },
    };
    return floorTakeoffOf(planFloors([laid(entry)]), 0, []);
  };

  test('a short piece off a plank whose rest is waste is ripped while the plank is long', () => {
    // A closet of one piece, 10 in by 4 in.
    const [piece] = narrow('10"', '4"').pieces;
    expect(piece.cuts).toEqual(['rip', 'crosscut']);
    expect(piece.marks.join(' ')).not.toContain('Too short');
  });

  test('one whose rest serves is cut off first, and says how to rip it', () => {
    // Two rows, 10 in by 6 in and 10 in by 4 in, of one plank; the second is the last cut. Turned round it is the first.
    const { pieces } = narrow('10"', '10"', { firstRow: '4"' });
    expect(pieces.map(({ plankNumber }) => plankNumber)).toEqual([1, 1]);
    expect(pieces[0].cuts).toEqual(['crosscut', 'rip']);
    expect(pieces[0].marks[0]).toMatch(/^Too short to rip on a table saw \(under 12"\): clamp it .* (jigsaw|hand saw)/);
  });

  test('a strip that is as wide as it must be is not ripped again', () => {
    // Rows of 3 in, 6 in and 2 7/8 in: 3 in, the kerf and 2 7/8 in are the plank. 11 7/8 in in all.
    const { pieces } = narrow('60"', '11 7/8"', { firstRow: '3"' });
    const strips = pieces.filter(({ stripOf }) => stripOf !== '');
    expect(strips.length).toBeGreaterThan(0);
    for (const { cuts, marks } of strips) {
      expect(cuts).not.toContain('rip');
      expect(marks).toEqual([]);
    }
  });

  test('a wider strip is ripped to its width off the edge that was sawn', () => {
    // Rows of 3 in, 6 in and 2 in: the strip is 2 7/8 in wide.
    const { pieces } = narrow('60"', '11"', { firstRow: '3"' });
    const strips = pieces.filter(({ stripOf }) => stripOf !== '');
    expect(strips.length).toBeGreaterThan(0);
    for (const { cuts, marks } of strips) {
      expect(cuts).toContain('rip');
      expect(marks).toEqual(['Rip the strip to 2" wide, off its sawn edge (far edge).']);
    }
  });
});

test('a floor through two rooms names the room at every piece; a row comes after what it locks into', () => {
  // A den and a hall of 10 by 10 ft side by side, a wall of 4 in between them; rows run through the doorway.
  const doorway = { floor: 'goes on' as const, along: 3, width: 3, depth: '', itsDoorway: 1, wallThickness: '4"' };
  const den = { ...room('Den', 10, 10), doorways: [{ ...doorway, wall: 2, leadsTo: 'Hall' }] };
  const hall = { ...room('Hall', 10, 10), doorways: [{ ...doorway, wall: 4, along: 4, leadsTo: 'Den' }] };
  const result = takeoffAsOne([den, hall]);
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  const { pieces } = result.takeoff;
  expect(new Set(pieces.map((piece) => piece.room))).toEqual(
    new Set(['Den', 'Hall', ...pieces.filter((p) => p.room.includes('+')).map((p) => p.room)]),
  );
  const border = ticksOfInches(120);
  for (const { room: named, polygon } of pieces) {
    const xs = polygon.map(({ x }) => x);
    if (Math.max(...xs) <= border) expect(named).toBe('Den');
    if (Math.min(...xs) >= border + ticksOfInches(4)) expect(named).toBe('Hall');
  }
  const rows = pieces.map(({ rowNumber }) => rowNumber);
  expect(rows).toEqual([...rows].sort((a, b) => a - b));
});
