import { describe, expect, test } from 'vitest';
import { blankDraft, draftOf, entryOf, valueAt, withValue } from '../../../src/sidebar/form/draft';
import { switchWords, withUnits } from '../../../src/sidebar/form/unitSwitch';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';

describe('changing to metric', () => {
  test.each([
    ['shape.length', '12', '12 ft'],
    ['shape.length', '12 1/2', '12 1/2 ft'],
    ['shape.length', 12.5, '12.5 ft'],
    ['shape.length', `12' 6"`, `12' 6"`],
    ['shape.length', '3.81 m', '3.81 m'],
    ['shape.length', 'about 12', 'about 12'],
    ['shape.length', '', ''],
    ['shape.length', '0', '0'],
    ['product.plankWidth', '7 1/2', '7 1/2 in'],
    ['product.boxCoverage', '19.63', '19.63 sq ft'],
    ['product.planksPerBox', '8', '8'],
    ['product.pricePerBox', '50', '50'],
    ['rules.expansionGap', '3/8', '3/8 in'],
    ['rules.firstRow', '5', '5 in'],
    ['rules.firstRow', 'best', 'best'],
    ['rules.longestAlong', '30', '30 ft'],
    ['rules.layDirection', '45', '45'],
  ])('%s: %s stands there as %s', (path, before, after) => {
    const { draft } = withUnits(withValue(blankDraft('us'), path, before), 'metric');
    expect(valueAt(draft, path)).toBe(after);
  });

  // By hand: 1/8 in = 3.175 mm for every 10 ft = 3.048 m is 1.0417 mm for every metre.
  test('a gap for every 10 ft becomes one for every metre', () => {
    const { draft } = withUnits(withValue(blankDraft('us'), 'rules.gapBySpan', '1/8'), 'metric');
    expect(valueAt(draft, 'rules.gapBySpan')).toBe('1.04 mm');
  });

  test('leaves the floor as it was', () => {
    const before = takeoff(plainRoom);
    const rules = {
      ...plainRoom.rules,
      expansionGap: 0.375,
      minStagger: 8,
      minPiece: 8,
      minRip: 2,
      kerf: 0.125,
      play: 0.25,
      markingStep: 0.0625,
      alignedDistance: 2,
    };
    const after = takeoff(entryOf(withUnits(draftOf({ ...plainRoom, rules }), 'metric').draft));
    if (before.status !== 'planned' || after.status !== 'planned') throw new Error('Both can be planned.');
    expect(after.takeoff.floor).toEqual(before.takeoff.floor);
    expect(after.takeoff.pieces.map(({ length }) => length)).toEqual(before.takeoff.pieces.map(({ length }) => length));
  });

  test('reaches the ways to measure that are not chosen, and lists', () => {
    const entry: RoomEntry = {
      ...plainRoom,
      shape: { kind: 'walls in order', diagonals: [], walls: [{ length: 4, turn: -45 }] },
      bows: [],
      cutouts: [{ kind: 'round', wall: 1, along: 2, off: 3, length: 4, depth: '', rise: '' }],
    };
    const { draft, changes } = withUnits(withValue(draftOf(entry), 'shape.kind', 'rectangle'), 'metric');
    const back = withValue(draft, 'shape.kind', 'walls in order');
    expect(valueAt(back, 'shape.walls.0.length')).toBe('4 ft');
    expect(valueAt(back, 'shape.walls.0.turn')).toBe(-45);
    expect([2, 3, 4].map((n) => `${n} ft`)).toEqual(
      ['along', 'off', 'length'].map((key) => valueAt(back, `cutouts.0.${key}`)),
    );
    expect(changes).toContainEqual({ before: '4', after: '4 ft' });
    expect(draft.units).toBe('metric');
  });
});

test('changing to feet gives metres and millimetres their units', () => {
  const typed = withValue(withValue(blankDraft('metric'), 'shape.width', '3,81'), 'product.plankLength', '1285');
  const { draft } = withUnits(typed, 'us');
  expect([valueAt(draft, 'shape.width'), valueAt(draft, 'product.plankLength')]).toEqual(['3,81 m', '1285 mm']);
});

test('what was changed is said, and nothing when nothing was', () => {
  const switched = withUnits(withValue(blankDraft('us'), 'shape.width', '12'), 'metric');
  expect(switchWords(switched)).toBe('What you typed keeps its units: 12 is now 12 ft.');
  expect(switchWords(withUnits(blankDraft('us'), 'metric'))).toBe('');
});
