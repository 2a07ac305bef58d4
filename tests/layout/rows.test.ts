import { describe, expect, test } from 'vitest';
import { areaOf, type Region } from '../../src/geometry/polygon';
import { degreesOf } from '../../src/layout/direction';
import { bandOf, narrowRunsOf, type RowLayout, type RowOptions, rowsOf } from '../../src/layout/rows';
import type { Room } from '../../src/room/outline';
import { feet, floorAndBody, goodRoom, inches, rectangular, walked } from '../support/floors';
import { rectangle } from '../support/randomRooms';

const [R, L] = [90, -90];
const PLAIN: RowOptions = {
  plankWidth: inches(7.5),
  minRip: inches(2),
  degrees: 0,
  startSide: 'near',
  firstRow: 'auto',
};

function laid(room: Room, options: Partial<RowOptions> = {}, gap = inches(3 / 8)): RowLayout {
  const { floor, body } = floorAndBody(room, gap);
  return rowsOf(floor, { ...PLAIN, body, ...options });
}

/** Runs of a row in inches: [x0, x1] each. */
function runsIn({ rows }: RowLayout, rowNumber: number): readonly (readonly number[])[] {
  return rows[rowNumber - 1].runs.map(({ x0, x1 }) => [x0 / inches(1), x1 / inches(1)]);
}

describe('a plain room', () => {
  test('12 by 10 ft, 7 1/2 in planks, 3/8 in gap', () => {
    // 120 - 0.75 = 119.25 = 15 x 7.5 + 6.75
    const layout = laid(goodRoom(rectangular(12, 10)));
    expect([layout.depth, layout.length].map((ticks) => ticks / inches(1))).toEqual([119.25, 143.25]);
    expect(layout.rows).toHaveLength(16);
    expect([layout.firstWidth, layout.lastWidth].map((ticks) => ticks / inches(1))).toEqual([7.5, 6.75]);
    expect(layout.rows.map((row) => row.width / inches(1))).toEqual([...Array(15).fill(7.5), 6.75]);
    expect(runsIn(layout, 1)).toEqual([[0, 143.25]]);
  });

  test('rows across the room, from the far side', () => {
    // 144 - 0.75 = 143.25 = 19 x 7.5 + 0.75: first and last (0.75 + 7.5) / 2 = 4.125
    const layout = laid(goodRoom(rectangular(12, 10)), { degrees: 90, startSide: 'far' });
    expect(layout.rows).toHaveLength(20);
    expect([layout.firstWidth, layout.lastWidth].map((ticks) => ticks / inches(1))).toEqual([4.125, 4.125]);
    expect(layout.frame.degrees).toBe(270);
  });

  test('a chosen first row leaves what it leaves', () => {
    // 119.25 - 5 = 114.25 = 15 x 7.5 + 1.75
    const layout = laid(goodRoom(rectangular(12, 10)), { firstRow: inches(5) });
    expect(layout.rows).toHaveLength(17);
    expect([layout.firstWidth, layout.lastWidth].map((ticks) => ticks / inches(1))).toEqual([5, 1.75]);
    expect(narrowRunsOf(layout, inches(2))).toEqual([
      { rowNumber: 17, runNumber: 1, place: expect.objectContaining({ width: inches(1.75) }) },
    ]);
  });

  test('a room shallower than a plank is one ripped row', () => {
    const layout = laid(goodRoom(rectangular(12, 0.5)));
    expect(layout.rows.map((row) => row.width / inches(1))).toEqual([5.25]);
  });
});

describe('rooms that are not', () => {
  test('an L both ways: rows get shorter, or longer', () => {
    const room = goodRoom(walked([12, R], [6, R], [5, L], [4, R], [7, R], [10]));
    // From the near side: 83.25 in long up to 48 - 0.375 of the body, the row over the step 143.25.
    const near = laid(room);
    expect(runsIn(near, 1)).toEqual([[0, 83.25]]);
    expect(runsIn(near, 16)).toEqual([[0, 143.25]]);
    const far = laid(room, { startSide: 'far' });
    // Looked at from the far side right and left change: the short part lies from 60 on.
    expect(runsIn(far, 1)).toEqual([[0, 143.25]]);
    expect(runsIn(far, 16)).toEqual([[60, 143.25]]);
  });

  test('a U: rows fall into two runs, the row at its foot is one with a notch', () => {
    const room = goodRoom(walked([4, R], [6, L], [4, L], [6, R], [4, R], [10, R], [12, R], [10]));
    const layout = laid(room);
    expect(runsIn(layout, 16)).toEqual([
      [0, 47.25],
      [96, 143.25],
    ]);
    // The foot is 48 - 0.375 - 0.375 = 47.25 in deep: row 7 lies from 45 to 52.5 and is notched from there.
    expect(layout.rows[6].runs).toHaveLength(1);
    expect(layout.rows[6].narrowest.width / inches(1)).toBe(2.25);
  });

  test('two columns: a row that splits in three', () => {
    const column = (along: number) =>
      ({
        kind: 'rectangle',
        wallNumber: 1,
        along: feet(along),
        off: feet(4),
        length: feet(1),
        depth: feet(2),
      }) as const;
    const layout = laid(goodRoom(rectangular(12, 10), { cutouts: [column(3), column(8)] }));
    // Columns from 48 to 72 in above the near wall, 35.25 to 48.75 and 95.25 to 108.75 with the gap, in the body.
    const three = layout.rows.filter((row) => row.runs.length === 3).map((row) => row.rowNumber);
    // Rows wholly between 47.25 and 72 of the body: 52.5 to 67.5; the ones at both ends are notched.
    expect(three).toEqual([8, 9]);
    expect(runsIn(layout, 8)).toEqual([
      [0, 35.25],
      [48, 95.25],
      [108, 143.25],
    ]);
  });

  test('a column inside one row leaves one run with a hole', () => {
    const pipe = { kind: 'round', wallNumber: 3, along: feet(6), off: inches(2), length: inches(1), depth: 0 } as const;
    const layout = laid(goodRoom(rectangular(12, 10), { cutouts: [pipe] }));
    expect(layout.rows[0].runs).toHaveLength(1);
    expect(layout.rows[0].runs[0].part.holes).toHaveLength(1);
    // Below the pipe 2 - 0.375 - 0.375 = 1.25 in of plank are left.
    expect(layout.rows[0].narrowest.width / inches(1)).toBeCloseTo(1.25, 3);
  });

  test('a doorway at the start wall gets a row of its own and the first row still starts at the wall', () => {
    const doorway = { wallNumber: 3, along: feet(2), width: feet(3), floor: 'transition', depth: inches(3) } as const;
    const layout = laid(goodRoom(rectangular(12, 10), { doorways: [doorway] }));
    expect(layout.rows).toHaveLength(17);
    expect(layout.rows[0].width / inches(1)).toBe(3.375);
    expect(runsIn(layout, 1)[0].map((x) => Math.round(x * 1000) / 1000)).toEqual([84, 119.25]);
    expect([layout.rows[1].y0, layout.firstWidth / inches(1)]).toEqual([0, 7.5]);
    // A ripped first row is wide enough to reach into the doorway: 4 in and 3 3/8 in are one plank.
    expect(laid(goodRoom(rectangular(12, 10), { doorways: [doorway] }), { firstRow: inches(4) }).rows[0].width).toBe(
      inches(7.375),
    );
  });

  test('1 in out of square over 12 ft: the last row tapers and is told at its narrowest', () => {
    // Floor 143.25 in along the near wall; the far wall falls by 1 in over 144 in, from 120 to 119 in.
    const floor: Region = [
      [
        { x: 0, y: 0 },
        { x: inches(144), y: 0 },
        { x: inches(144), y: inches(119) },
        { x: 0, y: inches(120) },
      ],
    ];
    const layout = rowsOf(floor, PLAIN);
    // 120 = 16 x 7.5: the last row is full at the left and 6 1/2 in at the right.
    expect(layout.rows).toHaveLength(16);
    const last = layout.rows[15];
    expect([last.width, last.narrowest.width, last.narrowest.x].map((ticks) => ticks / inches(1))).toEqual([
      7.5, 6.5, 144,
    ]);
  });

  test('angled ends are not narrow, a taper that runs out is', () => {
    const p = (x: number, y: number) => ({ x: inches(x), y: inches(y) });
    // A right triangle 100 in along and 100 in up: every row has one end at 45 degrees, the last is a tip of ends only.
    const steep = rowsOf([[p(0, 0), p(100, 0), p(0, 100)]], { ...PLAIN, minRip: inches(2) });
    expect(narrowRunsOf(steep, inches(2))).toEqual([]);
    // 100 in along and 15 in up: 3 in 20 is a taper, and it runs out to nothing in both rows.
    const flat = rowsOf([[p(0, 0), p(100, 0), p(0, 15)]], PLAIN);
    expect(flat.rows.map((row) => row.narrowest.width)).toEqual([0, 0]);
    expect(narrowRunsOf(flat, inches(2))).toHaveLength(2);
  });

  test('rows along a slanted wall: the first lies full against it', () => {
    // A right triangle of 120 by 90 in without a gap, its slope 150 in. The height on the slope is 120 x 90 / 150 = 72 in:
    // 9 full rows of 7 1/2 in and a tip of 4 1/2 in.
    const room = goodRoom(walked([10, 90 + 53.13010235415598], [12.5, 180 - 53.13010235415598], [7.5, 90]));
    const degrees = degreesOf({ along: 'wall', wallNumber: 2 }, room);
    const layout = laid(room, { degrees: degrees ?? 0, startSide: 'near' }, 0);
    const start =
      layout.rows[0].width === inches(7.5) ? layout : laid(room, { degrees: degrees ?? 0, startSide: 'far' }, 0);
    expect(start.rows).toHaveLength(10);
    expect(Math.abs(start.depth - inches(72))).toBeLessThan(4);
    const [along, tip] = [start.rows[0], start.rows[9]];
    expect(Math.abs(along.runs[0].x1 - along.runs[0].x0 - inches(150))).toBeLessThan(4);
    expect(along.narrowest.width).toBe(inches(7.5));
    expect(Math.abs(tip.width - inches(4.5))).toBeLessThan(4);
  });

  test('45 degrees in an L covers the floor', () => {
    const layout = laid(goodRoom(walked([12, R], [6, R], [5, L], [4, R], [7, R], [10])), { degrees: 45 });
    const covered = layout.rows.flatMap((row) => row.runs.flatMap(({ part }) => [part.outline, ...part.holes]));
    expect(Math.abs(areaOf(covered) - areaOf(layout.floor)) / areaOf(layout.floor)).toBeLessThan(1e-6);
    expect(layout.rows.some((row) => row.runs.length === 2)).toBe(true);
  });
});

test('a plank width misread is refused instead of filling memory', () => {
  // 100 in are 1,625,600 ticks.
  expect(() => rowsOf([rectangle(0, 0, inches(100), inches(100))], { ...PLAIN, plankWidth: 1 })).toThrow(
    new RangeError('1625600 rows'),
  );
  expect(() => rowsOf([rectangle(0, 0, 100, 20_001)], { ...PLAIN, plankWidth: 1 })).toThrow(RangeError);
  expect(() => rowsOf([rectangle(0, 0, 100, 100)], { ...PLAIN, plankWidth: 0 })).toThrow(RangeError);
});

// Above the first row two arms, of 40 in and of 1/32 in along the row: the second is shorter than a step of 1/16 in.
test('nor what is shorter', () => {
  const corners = [
    [0, 0],
    [100, 0],
    [100, 7.5],
    [50 + 1 / 32, 7.5],
    [50 + 1 / 32, 15],
    [50, 15],
    [50, 7.5],
    [40, 7.5],
    [40, 15],
    [0, 15],
  ];
  const floor = [corners.map(([x, y]) => ({ x: inches(x), y: inches(y) }))];
  const runsOf = (markingStep: number) =>
    rowsOf(floor, { ...PLAIN, firstRow: inches(7.5), markingStep }).rows.map(({ runs }) => runs.length);
  expect([runsOf(inches(1 / 16)), runsOf(inches(1 / 32)), runsOf(1)]).toEqual([
    [1, 1],
    [1, 2],
    [1, 2],
  ]);
});

// The far and the near edge were each rounded to a tick, so ten planks of 7 1/2 in may come out two ticks short.
test.each([
  [0, 0],
  [1, 0],
  [2, 0],
  [3, 3],
])('ten rows less %d ticks: the last is narrower by %d', (short, narrower) => {
  const layout = rowsOf([rectangle(0, 0, inches(100), inches(75) - short)], { ...PLAIN, firstRow: inches(7.5) });
  expect([layout.rows.length, layout.lastWidth]).toEqual([10, inches(7.5) - narrower]);
});

// Nine rows of 7 1/2 in and one of 2 in, the minimum: wide enough, and so is what both edges were rounded by.
test.each([
  [-1, 0],
  [0, 0],
  [2, 0],
  [3, 1],
])('a last row of the minimum rip less %d ticks: %d too narrow', (short, count) => {
  const layout = rowsOf([rectangle(0, 0, inches(100), inches(69.5) - short)], { ...PLAIN, firstRow: inches(7.5) });
  expect(layout.rows[9].narrowest.width).toBe(inches(2) - short);
  expect(narrowRunsOf(layout, inches(2))).toHaveLength(count);
});

// A wall of 1 in along all of it, 9 1/2 in above the near wall: row 2, from 7 1/2 to 15 in, lies 2 in below it and 4 1/2 above.
test.each([false, true])('a run on both sides of a wall is as narrow as the narrower side: turned %s', (isTurned) => {
  const [wall, far] = isTurned ? [12, 75] : [9.5, 75];
  const floor = [
    rectangle(0, 0, inches(100), inches(wall)),
    rectangle(0, inches(wall + 1), inches(100), inches(far - wall - 1)),
  ];
  const { rows } = rowsOf(floor, { ...PLAIN, firstRow: inches(7.5), kerf: inches(1 / 8) });
  expect([rows[1].runs.length, rows[1].runs[0].beside.length]).toEqual([1, 1]);
  expect(rows[1].runs[0].narrowest.width).toBe(inches(2));
});

test('a floor eaten by its gap has no rows', () => {
  expect(rowsOf([], PLAIN)).toMatchObject({ floor: [], firstWidth: 0, lastWidth: 0, rows: [], leftOff: [] });
});

test('what is narrower than a marking step is not laid', () => {
  // 15 in and 1/32 in deep: after two full rows a sliver of 1/32 in would be left.
  const floor = [rectangle(0, 0, inches(100), inches(15 + 1 / 32))];
  const step = { firstRow: inches(7.5), markingStep: inches(1 / 16) } as const;
  expect(rowsOf(floor, { ...PLAIN, ...step }).rows).toHaveLength(2);
  expect(rowsOf(floor, { ...PLAIN, ...step }).lastWidth).toBe(inches(7.5));
  expect(rowsOf(floor, { ...PLAIN, ...step, markingStep: 1 }).rows).toHaveLength(3);
});

// The U of above: its arms end at 47.25 and begin at 96 in of the body, row 16 lies from 112.5 in to the far gap.
test('the band of a row goes from its first run to its last, in the room', () => {
  const layout = laid(goodRoom(walked([4, R], [6, L], [4, L], [6, R], [4, R], [10, R], [12, R], [10])));
  const [near, far] = [layout, laid(goodRoom(rectangular(12, 10)), { startSide: 'far' })].map((one) => {
    const band = bandOf(one.rows[one.rows.length - 1], one.frame);
    const [xs, ys] = [band.map(({ x }) => x), band.map(({ y }) => y)];
    return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)].map((ticks) => ticks / inches(1));
  });
  expect([near[1] - near[0], near[3] - near[2]]).toEqual([143.25, 6.75]);
  // Laid from the far wall the last row lies at the near one.
  expect(far[3]).toBeLessThan(inches(12) / inches(1));
  expect([far[1] - far[0], far[3] - far[2]]).toEqual([143.25, 6.75]);
});

// 10 planks of 7 1/2 in are 75 in: what is left at the far wall is laid from a marking step of 1/16 in on.
test.each([
  [75 + 1 / 16, 11, 1 / 16],
  [75 + 1 / 17, 10, 7.5],
])('rows across %d in with a chosen first row: %d, the last %d in wide', (depth, count, last) => {
  const floor: Region = [rectangle(0, 0, inches(100), inches(depth))];
  const layout = rowsOf(floor, { ...PLAIN, firstRow: inches(7.5), markingStep: inches(1 / 16) });
  expect([layout.rows.length, layout.lastWidth]).toEqual([count, inches(last)]);
});

// By hand: two arms over a foot of one row, 7 1/2 in deep; the second row is 7 1/2 in wide in one arm and 5 in in the other.
test.each([false, true])(
  'a row is as narrow as the narrowest of its runs, as wide as the widest: turned %s',
  (isTurned) => {
    const corners = [
      [0, 0],
      [100, 0],
      [100, 12.5],
      [60, 12.5],
      [60, 7.5],
      [40, 7.5],
      [40, 15],
      [0, 15],
    ];
    const outline = corners.map(([x, y]) => ({ x: inches(isTurned ? 100 - x : x), y: inches(y) }));
    const { rows } = rowsOf([isTurned ? outline.reverse() : outline], { ...PLAIN, firstRow: inches(7.5) });
    expect(rows.map(({ width, narrowest, runs }) => [width, narrowest.width, runs.length])).toEqual([
      [inches(7.5), inches(7.5), 1],
      [inches(7.5), inches(5), 2],
    ]);
  },
);
