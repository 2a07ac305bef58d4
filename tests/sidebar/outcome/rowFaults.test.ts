/** What is wrong with the rows: where it is, in words, and which field changes it. */
import { expect, test } from 'vitest';
import { drawingOf } from '../../../src/sidebar/drawing/drawing';
import { rowFaultsOf } from '../../../src/sidebar/outcome/rowFaults';
import type { RoomEntry } from '../../../src/takeoff/entry';
import type { Takeoff } from '../../../src/takeoff/result';
import { takeoff } from '../../../src/takeoff/takeoff';
import { inches } from '../../support/floors';
import { plainRoom } from '../../support/roomEntries';

function planned(own: Partial<RoomEntry['rules']>, length = 12): Takeoff {
  const shape = { kind: 'rectangle', length, width: 10 } as const;
  const result = takeoff({ ...plainRoom, shape, rules: { ...plainRoom.rules, ...own } });
  if (result.status !== 'planned') throw new Error(JSON.stringify(result.problems));
  return result.takeoff;
}

test('a floor that keeps its rules has none', () => {
  expect(rowFaultsOf(planned({}))).toEqual([]);
});

// By hand: 10 ft less both gaps is 119 1/4"; a first row of 4" and 19 of 6" leave 1 1/4" for row 21.
test('a strip of the last row, at that row', () => {
  const plan = planned({ firstRow: '4"' });
  const [fault, ...more] = rowFaultsOf(plan);
  expect(more).toEqual([]);
  expect(fault.words).toBe('Row 21 is 1 1/4" at its narrowest, under the minimum rip of 2". Try another first row.');
  expect(fault.field).toBe('rules.firstRow');
  expect(fault.at.y).toBeGreaterThan(inches(120 - 3 / 8 - 1.25));
  expect(fault.at.y).toBeLessThan(inches(120 - 3 / 8));
});

// By hand: half a plank is 24", and two joints in each 48" cannot be 30" apart.
test('joints that are too near, on the seam of their rows', () => {
  const plan = planned({ minStagger: 30 });
  const faults = rowFaultsOf(plan);
  expect(faults).toHaveLength(plan.plan.broken.length);
  expect(faults.length).toBeGreaterThan(0);
  for (const { at, words, field } of faults) {
    const [, row, found] =
      /^Row (\d+): a joint is ([\d /]+)" from one of row \d+, under the minimum stagger of 30"/.exec(words) ?? [
        '',
        '',
        '',
      ];
    expect(field).toBe('rules.minStagger');
    const ends = (rowNumber: number) =>
      plan.pieces
        .filter((piece) => piece.rowNumber === rowNumber)
        .slice(0, -1)
        .map(({ polygon }) => Math.max(...polygon.map(({ x }) => x)));
    expect(Math.min(...ends(Number(row)).map((x) => Math.abs(x - at.x)))).toBeLessThan(2);
    const apart = Math.min(...ends(Number(row) - 1).map((x) => Math.abs(x - at.x)));
    const [whole, part = '0/1'] = (found.includes(' ') ? found : `${found} 0/1`).split(' ');
    const [over, under] = part.split('/').map(Number);
    expect(Math.abs(apart - inches(Number(whole) + over / under))).toBeLessThanOrEqual(inches(1 / 16));
  }
});

// By hand: 9 ft less both gaps is 107 1/4", and less one whole plank 59 1/4": one of the two ends is under 30".
test('an end piece that is too short, on that piece', () => {
  const plan = planned({ minPiece: 30, minStagger: 0 }, 9);
  const faults = rowFaultsOf(plan);
  expect(faults.length).toBeGreaterThan(0);
  for (const { at, words, field } of faults) {
    const [, label] = /^Piece (\S+) is .* long, under the minimum piece of 30"\.$/.exec(words) ?? [];
    const piece = plan.pieces.find((one) => one.label === label);
    expect(piece?.length).toBeLessThan(inches(30));
    const xs = piece?.polygon.map(({ x }) => x) ?? [];
    expect(at.x).toBeGreaterThan(Math.min(...xs));
    expect(at.x).toBeLessThan(Math.max(...xs));
    expect(field).toBe('rules.minPiece');
  }
});

test('marks in the drawing never cover each other', () => {
  const { faults } = drawingOf(planned({ minStagger: 30 }), { width: 280, height: 250 });
  expect(faults.length).toBeGreaterThan(4);
  faults.forEach(({ x, y }, i) => {
    for (const other of faults.slice(0, i)) expect(Math.hypot(other.x - x, other.y - y)).toBeGreaterThanOrEqual(15);
  });
});
