import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearestJoints, type StartedRow } from '../../../src/takeoff/planning/staggerCheck';

const PLANK = 480;

/** Least distance of any two joints, by trying all pairs; Infinity without joints. */
function byAllPairs(row: StartedRow, other: StartedRow, end: number): number {
  const joints = ({ firstPiece, plankLength, run }: StartedRow) => {
    const places: number[] = [];
    for (let at = firstPiece; at < (run ?? end); at += plankLength) places.push(at);
    return places;
  };
  const distances = joints(row).flatMap((a) => joints(other).map((b) => Math.abs(a - b)));
  return Math.min(Number.POSITIVE_INFINITY, ...distances);
}

test('the nearest joints are those that all pairs give', () => {
  const rows = fc.record({
    firstPiece: fc.integer({ min: 1, max: PLANK }),
    plankLength: fc.constantFrom(PLANK, 360),
    run: fc.integer({ min: 1, max: 3000 }),
  });
  fc.assert(
    fc.property(rows, rows, (row, other) => {
      const pair = nearestJoints(row, other);
      expect(pair?.distance ?? Number.POSITIVE_INFINITY).toBe(byAllPairs(row, other, 0));
      if (!pair) return;
      const a = row.firstPiece + (pair.jointNumber - 1) * row.plankLength;
      const b = other.firstPiece + (pair.otherJointNumber - 1) * other.plankLength;
      expect(Math.abs(a - b)).toBe(pair.distance);
    }),
    { seed: 3, numRuns: 2000 },
  );
});

test('rows of unknown length are taken as long: distances repeat with the plank', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: PLANK }), fc.integer({ min: 1, max: PLANK }), (first, second) => {
      const row = { firstPiece: first, plankLength: PLANK, run: null };
      const other = { firstPiece: second, plankLength: PLANK, run: null };
      const apart = Math.abs(first - second);
      expect(nearestJoints(row, other)?.distance).toBe(Math.min(apart, PLANK - apart));
    }),
    { seed: 4, numRuns: 1000 },
  );
});
