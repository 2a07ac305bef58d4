/** Where rows start: the widest narrowest strip of all starts, told apart by an independent polygon library. */
import { FillRule, intersect } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { TICKS_PER_MM, type Ticks } from '../../src/geometry/length';
import { boundsOf, type Region } from '../../src/geometry/polygon';
import { rowsOf } from '../../src/layout/rows';
import { type FoundStart, findStart, leavesStrips } from '../../src/layout/starts';
import { type StopLine, stopLinesOf, stripAt } from '../../src/layout/stopLines';
import { openEndsOf } from '../../src/room/doorways';
import { floorAndBody, goodRoom, inches, rectangular } from '../support/floors';
import { rectangle, squareRegion } from '../support/randomRooms';
import { seededRandom } from '../support/seededRandom';

const mm = (count: number) => count * TICKS_PER_MM;

/** Narrowest strip of a right-angled floor in rows: Clipper cuts it into every other row, and rays across measure those. */
function narrowestByClipper(floor: Region, firstRow: Ticks, plankWidth: Ticks): Ticks {
  const { x0, x1, y0, y1 } = boundsOf(floor);
  const rowCount = Math.ceil((y1 - y0) / plankWidth) + 1;
  const bands = Array.from({ length: rowCount + 1 }, (_, i) => {
    return rectangle(x0, y0 + firstRow + (i - 1) * plankWidth, x1 - x0, plankWidth);
  });
  const widths = [0, 1].flatMap((odd) => {
    const rows = bands.filter((_, i) => i % 2 === odd).map((band) => band.map(({ x, y }) => ({ x, y })));
    const paths = floor.map((outline) => outline.map(({ x, y }) => ({ x, y })));
    return acrossOf(intersect(paths, rows, FillRule.NonZero));
  });
  return Math.min(...widths);
}

function acrossOf(paths: readonly (readonly { readonly x: number; readonly y: number }[])[]): readonly number[] {
  const edges = paths.flatMap((path) => path.map((from, i) => ({ from, to: path[(i + 1) % path.length] })));
  const stops = [...new Set(edges.map(({ from }) => from.x))].sort((a, b) => a - b);
  return stops.slice(1).flatMap((stop, i) => {
    const middle = (stop + stops[i]) / 2;
    const heights = edges
      .filter(({ from, to }) => from.x < middle !== to.x < middle)
      .map(({ from }) => from.y)
      .sort((a, b) => a - b);
    return heights.flatMap((height, k) => (k % 2 === 1 ? [height - heights[k - 1]] : []));
  });
}

const near = (floor: Region) => (plankWidth: Ticks, firstRow: Ticks | 'auto') =>
  rowsOf(floor, { plankWidth, minRip: mm(50), markingStep: mm(1), degrees: 0, startSide: 'near', firstRow });

describe('of all starts', () => {
  const random = seededRandom(16);
  const rooms = Array.from({ length: 24 }, () => ({
    floor: squareRegion(random, mm(4000), mm(400)),
    plankWidth: mm(random.whole(110, 240)),
  })).filter(({ floor }) => floor.length > 0);

  test('the one found leaves the widest narrowest strip, in random rooms with closets and holes', () => {
    expect(rooms.length).toBeGreaterThan(18);
    let moved = 0;
    for (const { floor, plankWidth } of rooms) {
      const lay = (firstRow: Ticks | 'auto') => near(floor)(plankWidth, firstRow);
      const plain = lay('auto');
      const lines = stopLinesOf(floor, plain.frame, []);
      const options = { plankWidth, minRip: mm(50), markingStep: mm(1) };
      const { chosen } = findStart(plain, lines, lay, options);
      const starts = [plankWidth, ...Array.from({ length: plankWidth / mm(1) - 1 }, (_, i) => mm(i + 1))];
      const widest = Math.max(...starts.map((firstRow) => narrowestByClipper(floor, firstRow, plankWidth)));
      expect(narrowestByClipper(floor, chosen.firstRow, plankWidth)).toBe(widest);
      expect(chosen.narrowest).toBe(widest);
      if (chosen.firstRow !== plain.firstWidth) moved++;
    }
    expect(moved).toBeGreaterThan(8);
  });
});

describe('a strip at a stop line', () => {
  const line = (floorLies: StopLine['floorLies'], low: number, high = low): StopLine => ({
    ...{ floorLies, low: mm(low), high: mm(high), length: mm(1000), doorwayDepth: 0 },
    middle: { x: 0, y: 0 },
  });
  // Seams at 100, 300, 500 mm.
  const at = (stop: StopLine) => stripAt(stop, mm(100), mm(200)) / TICKS_PER_MM;

  test.each([
    ['floor above, 60 mm under a seam', line('above', 240), 60],
    ['floor below, 140 mm over a seam', line('below', 240), 140],
    ['a seam right on the line leaves a whole plank above', line('above', 300), 200],
    ['and below', line('below', 300), 200],
    ['a wall out of square: its narrow end counts', line('above', 240, 260), 40],
    ['the same from below', line('below', 240, 260), 140],
    ['a wall that a seam crosses leaves a wedge', line('above', 290, 310), 0],
    ['the same from below', line('below', 290, 310), 0],
    ['a seam that it just reaches leaves a wedge too', line('above', 290, 300), 0],
    ['the same from below', line('below', 300, 310), 0],
  ])('%s', (_, stop, wanted) => {
    expect(at(stop)).toBe(wanted);
  });
});

describe('a doorway at the start wall', () => {
  const doorway = { wallNumber: 3, along: inches(8), width: inches(32), floor: 'transition' } as const;

  function startIn(depth: number): FoundStart {
    const room = goodRoom(rectangular(12, 10), { doorways: [{ ...doorway, depth: inches(depth) }] });
    const { floor, body } = floorAndBody(room, inches(3 / 8));
    const options = { plankWidth: inches(7.625), minRip: inches(2), markingStep: inches(1 / 16) };
    const lay = (firstRow: Ticks | 'auto') =>
      rowsOf(floor, { ...options, degrees: 0, startSide: 'near', firstRow, body });
    const plain = lay('auto');
    const lines = stopLinesOf(floor, plain.frame, openEndsOf(room.doorways));
    expect(leavesStrips(plain, lines, options)).toBe(true);
    return findStart(plain, lines, lay, options);
  }

  test('gets a whole plank notched into it, not a strip', () => {
    // By hand: 2 1/4 in deep and the gap of 3/8 in: 2 5/8 in. A plank of 7 5/8 in less that is 5 in in the room; 120 in
    // less two gaps and 5 in is 114 1/4 in: 14 rows and 7 1/2 in.
    const { chosen, layout } = startIn(2.25);
    expect(chosen.firstRow / inches(1)).toBe(5);
    expect(chosen.narrowest / inches(1)).toBe(5);
    expect(layout.rows).toHaveLength(16);
    expect(layout.rows[0].width / inches(1)).toBe(7.625);
    expect(layout.lastWidth / inches(1)).toBe(7.5);
  });

  test('goes before a wider strip elsewhere, but not before the minimum rip', () => {
    // 5 1/2 in and the gap: a whole plank leaves 1 3/4 in in the room, under the minimum rip of 2 in: a strip it is.
    const { chosen, layout } = startIn(5.5);
    expect(chosen.narrowest).toBeGreaterThanOrEqual(inches(2));
    expect(layout.rows[0].width).toBeLessThan(inches(7.625));
  });
});

describe('a seam just short of a hearth', () => {
  // By hand, mm, planks of 100: the start wall asks for a first row f of 50 at least; the near face of the hearth, at 362, for
  // 62 or more, or else 362 - f leaves 0 to 12 beyond 3 rows; the far wall, at 911, for 61 or less. No start does it all. With
  // 5 squared off, 58 leaves 4 at the hearth, which is none, and 911 - 58 = 8 rows and 53 at the far wall.
  const corners = [
    [0, 0],
    [3000, 0],
    [3000, 911],
    [0, 911],
    [0, 600],
    [400, 600],
    [400, 362],
    [0, 362],
  ];
  const floor: Region = [corners.map(([x, y]) => ({ x: mm(x), y: mm(y) }))];

  function startWith(squareCut: Ticks) {
    const options = { plankWidth: mm(100), minRip: mm(50), markingStep: mm(1), squareCut };
    const lay = (firstRow: Ticks | 'auto') => rowsOf(floor, { ...options, degrees: 0, startSide: 'near', firstRow });
    const plain = lay('auto');
    return findStart(plain, stopLinesOf(floor, plain.frame, []), lay, options);
  }

  test('is right on its face where less is squared off, and only where no start does without', () => {
    const { chosen, layout } = startWith(mm(5));
    expect([chosen.firstRow, chosen.narrowest, layout.lastWidth].map((width) => width / TICKS_PER_MM)).toEqual([
      58, 53, 53,
    ]);
    expect(Math.min(...layout.rows.map(({ narrowest }) => narrowest.width)) / TICKS_PER_MM).toBe(53);
    expect(startWith(0).chosen.narrowest / TICKS_PER_MM).toBeLessThan(50);
  });
});
