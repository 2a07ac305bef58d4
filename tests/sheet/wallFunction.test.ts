import { describe, expect, test } from 'vitest';
import { PLANK_LAST_RIPS } from '../../src/sheet/functions';

const column = (...cells: unknown[]) => cells.map((cell) => [cell]);

describe('rips to a measured wall', () => {
  test('a wall that runs out straight: each piece tapers, its neighbours meet it', () => {
    // By hand: over 12 ft the wall goes from 4 1/8 to 3 3/4, 1/8 in every 4 ft. The gap is 3/8, so 3 3/4 at the left end.
    // At 30 in it is 4 1/8 - 30/48 of 1/8 = 4.046875, less 3/8 = 3.671875: 3 5/8 in whole sixteenths, rounded down.
    // At 78 in: 4 - 30/48 of 1/8 - 3/8 = 3.546875: 3 1/2. At 126 in: 3 7/8 - 30/48 of 1/8 - 3/8 = 3.421875: 3 3/8.
    // At 143 1/4 in: 3 3/4 + 3/4 in of 48 at 1/8 = 3.752, less 3/8 = 3.377: 3 3/8.
    expect(PLANK_LAST_RIPS(column(30, 48, 48, 17.25), 4, column(4.125, 4, 3.875, 3.75), 7.5)).toEqual([
      ['Next is the last one, 3 3/8" to 3 3/4" wide.', '', '', ''],
      ['piece', 'left', 'right', 'cut'],
      [1, 3.75, 3.625, 'rip, tapered'],
      [2, 3.625, 3.5, 'rip, tapered'],
      [3, 3.5, 3.375, 'rip, tapered'],
      [4, 3.375, 3.375, 'rip'],
    ]);
  });

  test('a belly in the wall is scribed where it leaves the straight line by more than the tolerance', () => {
    // By hand: 4 1/8 at 0 and 8 ft, 3 1/2 at 4 ft. Halfway between, at 2 and 6 ft, 3 13/16: less 3/8 is 3 7/16 at both ends
    // of a piece from 24 to 72 in. Its straight line is 5/16 off the wall at 4 ft, where 3 1/2 - 3/8 = 3 1/8 are left.
    const lines = PLANK_LAST_RIPS(column(24, 48, 24), 4, column(4.125, 3.5, 4.125), 7.5);
    expect(lines.slice(2)).toEqual([
      [1, 3.75, 3.4375, 'rip, tapered'],
      [2, 3.4375, 3.4375, 'scribe: 3 1/8" at 24" from its left end'],
      [3, 3.4375, 3.75, 'rip, tapered'],
    ]);
    // 1/8 off, and 3/16: where no tolerance is typed it is 1/8.
    const inTheMiddle = (at4ft: number) =>
      PLANK_LAST_RIPS(column(24, 48, 24), 4, column(4.125, at4ft, 4.125), 7.5)[3][3];
    expect([3.875, 3.75].map(inTheMiddle)).toEqual(['rip', expect.stringMatching(/^scribe/)]);
    // 5/16 off and no more: with that tolerance a straight rip will do.
    expect(PLANK_LAST_RIPS(column(24, 48, 24), 4, column(4.125, 3.5, 4.125), 7.5, '', '', '5/16"')[3][3]).toBe('rip');
  });

  test('it tells in time that the last row will be too narrow, and what the next row has to be', () => {
    // By hand: 16 1/2 and 16 1/4 less 3/8 are two rows of 7 1/2 and 1 1/8 to 7/8. To have 2 in everywhere 1 1/8 more is needed:
    // 7 1/2 - 1 1/8 = 6 3/8.
    const [first, second] = PLANK_LAST_RIPS(column(48), 4, column(16.5, 16.25), 7.5);
    expect(first[0]).toBe('2 whole rows, then the last one, 7/8" to 1 1/8" wide.');
    expect(second[0]).toBe(
      'Under the minimum rip of 2". Rip one of the rows still to be laid to 6 3/8": then the last one is 2" or more. Its sawn edge has no lock: join it with a glued slip tongue. Or glue each narrow piece to its plank before you set the two.',
    );
    expect(PLANK_LAST_RIPS(column(48), 4, column(1.5, 1.5), 7.5)[1][0]).toMatch(
      /^Under the minimum rip of 2"\. Take that row up, and glue/,
    );
    // By hand: 15 5/8 less 3/8 is two rows of 7 1/2 and 1/4; left off, the gap is 5/8, and trim of 3/4 hides it. 7/16 would
    // make it 13/16, and trim does not.
    const told = (distance: number) => String(PLANK_LAST_RIPS(column(48), 4, column(distance, distance), 7.5)[1][0]);
    expect(told(15.625)).toMatch(/ Or leave it off, where trim hides a gap of 5\/8"\.$/);
    expect(told(15.75)).toMatch(/ Or leave it off, where trim hides a gap of 3\/4"\.$/);
    expect(told(15.8125)).not.toContain('leave it off');
    expect(PLANK_LAST_RIPS(column(48), 4, column(14, 8), 7.5)[1][0]).toMatch(/too far out of line/);
  });

  test('a wall that comes nearer than the gap leaves no piece there', () => {
    expect(PLANK_LAST_RIPS(column(48), 4, column(3, 0.25), 7.5)[3]).toEqual([
      1,
      2.625,
      -0.125,
      'runs out: no piece at the narrow end',
    ]);
  });

  test('in millimetres', () => {
    // By hand: 120 and 114 less 10; half way 117.
    expect(PLANK_LAST_RIPS(column(600, 600), 1.2, column(120, 114), 192, '', '', '', 'metric').slice(2)).toEqual([
      [1, 110, 107, 'rip, tapered'],
      [2, 107, 104, 'rip, tapered'],
    ]);
  });

  test.each([
    [[column(48), 4, column(4), 7.5], 'distances has one distance. Measure at both ends of the row at least.'],
    [[column(48, 48), 4, column(4, 4), 7.5], 'The pieces are 96" together, and the distances reach 48".'],
  ])('what cannot be is told', (cells, sentence) => {
    expect(() => PLANK_LAST_RIPS(...(cells as Parameters<typeof PLANK_LAST_RIPS>))).toThrow(sentence);
  });
});
