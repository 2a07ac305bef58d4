import { describe, expect, test } from 'vitest';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';

function notesOf(change: Partial<RoomEntry>): readonly string[] {
  const result = takeoff({ ...plainRoom, ...change });
  if (result.status === 'problems') throw new Error(result.problems[0].text);
  return result.takeoff.notes;
}

describe('a floor longer and wider than it may be', () => {
  // 60 ft by 40 ft: over the usual 12 m along and 8 m across of laminate, and over any limit typed here.
  const shape = { kind: 'rectangle' as const, length: 60, width: 40 };
  test.each([
    ['30', '', 'as entered', 'as usual for laminate'],
    ['', '20', 'as usual for laminate', 'as entered'],
    ['30', '20', 'as entered', 'as entered'],
    ['', '', 'as usual for laminate', 'as usual for laminate'],
  ])('limits of "%s" along and "%s" across are told apart from the usual ones', (along, across, basis, otherBasis) => {
    const rules = { ...plainRoom.rules, longestAlong: along, longestAcross: across };
    const notes = notesOf({ shape, rules }).filter((note) => note.includes('without an expansion joint'));
    expect(notes).toHaveLength(2);
    expect(notes[0]).toMatch(new RegExp(`along the rows; .*, ${basis}`));
    expect(notes[1]).toMatch(new RegExp(`across the rows; .*, ${otherBasis}`));
  });
});

// 12' less two gaps of 3/8" are three planks of 48" less 3/4": a joint of one row lies between two of the next.
test.each([
  ['24"', 0],
  ['24 1/16"', 1],
])('a stagger of %s, planks of 48": what no row can keep is told %i times', (minStagger, count) => {
  const notes = notesOf({ rules: { ...plainRoom.rules, minStagger } });
  expect(notes.filter((note) => /^Rows side by side .* half a plank at most/.test(note))).toHaveLength(count);
  expect(notes.some((note) => note.includes('less than the minimum stagger'))).toBe(count > 0);
});

// Planks of 48", two gaps of 3/8", trim that covers 3/4". By hand: 3' less the gaps is 35 1/4", six rows; 4' 13/16" less them is
// 48 1/16", of which each wall can take 1/32": a gap of 7/16" to the 1/16". Six runs of 48 1/16" are more than six planks; six pieces are six.
describe('runs a hair longer than a plank', () => {
  const room = (length: string, rules: Partial<RoomEntry['rules']> = {}): Partial<RoomEntry> => ({
    shape: { kind: 'rectangle', length, width: 3 },
    rules: { ...plainRoom.rules, expansionGap: '3/8"', trimCover: '3/4"', ...rules },
  });
  const wider = (length: string, rules: Partial<RoomEntry['rules']> = {}) =>
    notesOf(room(length, rules)).filter((note) => note.includes('longer than a plank'));

  test.each([
    [`4' 13/16"`, '1/16"', '7/16"'],
    [`4' 1 1/2"`, '3/4"', '3/4"'],
  ])('a room of %s: %s over, a gap of %s is offered', (length, over, gap) => {
    const sentence = `6 runs are up to ${over} longer than a plank: with an expansion gap of ${gap} each is one piece. Trim covers 3/4".`;
    expect(wider(length)).toEqual([sentence]);
    const planksWith = (expansionGap: string) => {
      const result = takeoff({ ...plainRoom, ...room(length, { expansionGap }) });
      return result.status === 'problems' ? 0 : result.takeoff.summary.plankCount;
    };
    expect(planksWith(gap)).toBe(6);
    expect(planksWith('3/8"')).toBeGreaterThan(6);
    expect(wider(length, { expansionGap: gap })).toEqual([]);
  });

  test('nothing is offered for a plank to the tick, nor where the trim is too narrow', () => {
    expect(wider(`4' 3/4"`)).toEqual([]);
    expect(wider(`4' 1 9/16"`)).toEqual([]);
    expect(wider(`4' 13/16"`, { trimCover: '3/8"' })).toEqual([]);
  });
});

describe('rows under the minimum rip', () => {
  /** From wall 3, the near one: so far along it and off it, inches. */
  const cutout = (along: number, off: number, length: number, depth: number) => ({
    kind: 'rectangle' as const,
    wall: 3,
    along: `${along}"`,
    off: `${off}"`,
    length: `${length}"`,
    depth: `${depth}"`,
    rise: '',
  });
  /** Rows of 6 in without a gap, divided by a wall in the middle; in each two cut-outs leave 1 in and 1/2 in. */
  const withNarrowRows = (rowCount: number): Partial<RoomEntry> => ({
    cutouts: [
      cutout(71, 0, 2, 120),
      ...Array.from({ length: rowCount }, (_, i) => [
        cutout(24, 6 * i + 1, 12, 5),
        cutout(108, 6 * i + 0.5, 12, 5.5),
      ]).flat(),
    ],
    rules: { ...plainRoom.rules, expansionGap: 0 },
  });
  const narrowNotes = (rowCount: number) =>
    notesOf(withNarrowRows(rowCount)).filter((note) => /at its narrowest|under it somewhere/.test(note));

  test.each([
    [4, '1 more row is under it somewhere.'],
    [5, '2 more rows are under it somewhere.'],
  ])('%i rows of two narrow runs each: every row is told once, at its narrowest', (rowCount, more) => {
    expect(narrowNotes(rowCount)).toEqual([
      'Row 1 is 1/2" at its narrowest, under the minimum rip of 2".',
      'Row 2 is 1/2" at its narrowest, under the minimum rip of 2".',
      'Row 3 is 1/2" at its narrowest, under the minimum rip of 2".',
      more,
    ]);
  });
});
