import { expect, test } from 'vitest';
import { TICKS_PER_MM, ticksOfMm } from '../../../src/geometry/length';
import type { Outline, Region } from '../../../src/geometry/polygon';
import { markingOf } from '../../../src/layout/marking';
import type { LaidPiece } from '../../../src/layout/pieces';
import type { Row, RowLayout } from '../../../src/layout/rows';
import { marksOf } from '../../../src/takeoff/telling/marks';
import { shapedMarks } from '../../../src/takeoff/telling/shapedMarks';

/** Planks 1285 x 192 mm, a row past the first that is laid whole. */
const WIDTH = 192;
const layout = { plankWidth: ticksOfMm(WIDTH), firstWidth: 0 } as RowLayout;
const row = { y0: 0, y1: ticksOfMm(WIDTH) } as Row;
const MARK_FIRST = 'Mark every cut on the whole rectangle before making the first.';

const mm = (...places: readonly (readonly [number, number])[]): Outline =>
  places.map(([x, y]) => ({ x: ticksOfMm(x), y: ticksOfMm(y) }));

function told(...shape: Region): readonly string[] {
  const piece = { ...markingOf(shape, TICKS_PER_MM), shape } as unknown as LaidPiece;
  return marksOf(piece, row, { layout, startEdge: 'tongue', step: TICKS_PER_MM, units: 'metric' }, shapedMarks);
}

/** Sixteen sides round a circle, from half a side on. */
function round(x: number, y: number, radius: number, turn = 0.5): (readonly [number, number])[] {
  const toCorner = radius / Math.cos(Math.PI / 16);
  return Array.from({ length: 16 }, (_, i) => {
    const angle = (Math.PI * (i + turn)) / 8;
    return [x + toCorner * Math.cos(angle), y + toCorner * Math.sin(angle)];
  });
}

test('an end with two slants: each from the corner of the rectangle', () => {
  // Slants along 284 : 142 = 2 : 1 and 6 : 50. The first, drawn on from (994, 192) through (1278, 50), meets x = 1284
  // at 50 - 3 = 47: 290 along, 145 across. The second, from (1284, 0), meets the far edge at 1284 - 192 * 6 / 50 =
  // 1260.96: 23 shorter, atan(6 / 50) = 6.84 degrees.
  expect(told(mm([0, 0], [1284, 0], [1278, 50], [994, 192], [0, 192]))).toEqual([
    MARK_FIRST,
    'Cut off the right corner at the far edge: 290 mm along, 145 mm across.',
    'Angle the right end, 6.8° off square: the longer edge (long point) is the start edge, the far edge is 23 mm shorter.',
  ]);
});

test('an angled corner and then a square step: scribed by the widths it leaves, not a notch in the whole edge', () => {
  expect(told(mm([0, 0], [1220, 0], [1043, 177], [1043, 192], [0, 192]))).toEqual([
    'Scribe the far edge: 177 mm wide at 1043 mm, 0 mm at the right end.',
  ]);
});

test('a V-shaped end is told by its points', () => {
  expect(told(mm([0, 0], [1000, 0], [900, 90], [1000, 192], [0, 192]))).toEqual([
    'Scribe the right end: 1000 mm long at the start edge, 900 mm at 90 mm, 1000 mm at the far edge.',
  ]);
});

test('a notch in the short edge is measured from the corner which that edge has', () => {
  // The right end is 192 shorter at the start edge: its corner is at 808. The notch ends at 614, 194 from there.
  expect(told(mm([0, 0], [494, 0], [494, 12], [614, 12], [614, 0], [808, 0], [1000, 192], [0, 192]))).toEqual([
    MARK_FIRST,
    'Angle the right end, 45° off square: the longer edge (long point) is the far edge, the start edge is 192 mm shorter.',
    'Notch in the start edge, 120 mm along by 12 mm across: 194 mm from the right end of that edge.',
  ]);
});

test('a square notch alone keeps its plain words', () => {
  expect(told(mm([0, 0], [1000, 0], [1000, 150], [900, 150], [900, 192], [0, 192]))).toEqual([
    'Notch in the far edge, 100 mm along by 42 mm across: at the right end.',
  ]);
});

test.each([0.5, 0, 0.2])('a pipe in the middle is a round hole, however its corners are turned (%f)', (turn) => {
  const hole = [...round(120, 132, 40, turn)].reverse();
  expect(told(mm([0, 0], [1000, 0], [1000, 192], [0, 192]), mm(...hole))).toEqual([
    'Round hole, 80 mm across: centre 120 mm from the left end, 60 mm from the far edge. Cut the plank across through the middle of the hole to get it round a standing pipe.',
  ]);
});

test('a pipe on a row line is a round notch in that edge', () => {
  // Of the circle round (500, 202) with radius 40 only what is under 192: its middle is 10 beyond the far edge.
  const below = round(500, 202, 40).filter(([, y]) => y < 192);
  // The sides at both ends are cut off at 192: their lower corners are level with each other, their upper above it.
  const left = below.reduce((a, b) => (b[0] < a[0] ? b : a));
  const right = below.reduce((a, b) => (b[0] > a[0] ? b : a));
  const [over] = round(500, 202, 40)
    .filter(([x, y]) => y > 192 && x > 500)
    .sort((a, b) => a[1] - b[1]);
  const out = right[0] + ((over[0] - right[0]) * (192 - right[1])) / (over[1] - right[1]);
  const arc = [...below].sort((a, b) => b[0] - a[0]);
  expect(left[0] + right[0]).toBeCloseTo(1000, 6);
  const shape = mm([0, 0], [1300, 0], [1300, 192], [out, 192], ...arc, [1000 - out, 192], [0, 192]);
  expect(told(shape)).toEqual([
    'Round notch in the far edge, 80 mm across: centre 500 mm from the left end, 10 mm beyond the far edge.',
  ]);
});

test('tapers off both edges are each told by what they take off', () => {
  expect(told(mm([0, 20], [1000, 0], [1000, 192], [0, 182]))).toEqual([
    MARK_FIRST,
    'Rip a taper off the start edge: 20 mm off at the left end, nothing at the other.',
    'Rip a taper off the far edge: 10 mm off at the left end, nothing at the other.',
  ]);
});

test('a notch is told though a hairline hangs on it', () => {
  // A column of 20 x 20 mm at a wall that slants 20 in 1000; above it the wall was rounded 1 tick to the inside.
  const at = (x: number) => 172 + x / 50;
  const [left, ...others] = mm(
    [0, 0],
    [1000, 0],
    [1000, 192],
    [420, at(420)],
    [420, 160],
    [400, 160],
    [400, at(400)],
    [0, 172],
  );
  const rounded = others.map((p, i) => (i === 5 ? { ...p, y: p.y - 1 } : p));
  const marks = told([left, ...rounded]);
  expect(marks).toHaveLength(3);
  expect(marks.slice(1)).toEqual([
    'Rip to a taper along the far edge: 172 mm wide at the left end, 192 mm at the right.',
    // To the far edge of the whole rectangle: 192 - 160.
    'Notch in the far edge, 20 mm along by 32 mm across: 400 mm from the left end.',
  ]);
});

test('a notch at an angled end is marked to the end of the rectangle', () => {
  // The right end is 64 mm shorter at the far edge; the notch takes 50 mm more of that edge, 24 deep.
  expect(told(mm([0, 0], [1000, 0], [944, 168], [886, 168], [886, 192], [0, 192]))).toEqual([
    MARK_FIRST,
    'Angle the right end, 18.4° off square: the longer edge (long point) is the start edge, the far edge is 64 mm shorter.',
    'Notch in the far edge, 114 mm along by 24 mm across: at the right end.',
  ]);
});

test('a notch that ends at the corner of the short edge is told from that corner', () => {
  // The corner of the start edge is at 808; half a millimetre of the edge is left between it and the notch.
  expect(told(mm([0, 0], [687.5, 0], [687.5, 12], [807.5, 12], [807.5, 0], [808, 0], [1000, 192], [0, 192]))).toEqual([
    MARK_FIRST,
    'Angle the right end, 45° off square: the longer edge (long point) is the far edge, the start edge is 192 mm shorter.',
    'Notch in the start edge, 120 mm along by 12 mm across: at the right end of that edge.',
  ]);
});

test('a short tip is crosscut at both corners, not ripped to tapers', () => {
  const row60 = { y0: 0, y1: ticksOfMm(60) } as Row;
  const shape = [mm([0, 12], [24, 36], [0, 60])];
  const piece = { ...markingOf(shape, TICKS_PER_MM), shape } as unknown as LaidPiece;
  const laid = { plankWidth: ticksOfMm(72), firstWidth: 0 } as RowLayout;
  expect(
    marksOf(piece, row60, { layout: laid, startEdge: 'tongue', step: TICKS_PER_MM, units: 'metric' }, shapedMarks),
  ).toEqual([
    'Rip to 48 mm wide: 12 mm off the start edge (tongue), 12 mm off the far edge (groove).',
    MARK_FIRST,
    'Cut off the right corner at the start edge: 24 mm along, 24 mm across.',
    'Cut off the right corner at the far edge: 24 mm along, 24 mm across.',
  ]);
});

test('a rip takes off the edge that lies towards its wall, whichever that is', () => {
  // Row 1 is laid 100 of 192 wide against the start wall: 92 off towards it. Row 9 ends 42 short of its far edge.
  const laidRow = (startEdge: 'tongue' | 'groove', y0: number, y1: number, height: number) => {
    const shape = [mm([0, y0], [1285, y0], [1285, y0 + height], [0, y0 + height])];
    const piece = { ...markingOf(shape, TICKS_PER_MM), shape } as unknown as LaidPiece;
    const own = { y0: ticksOfMm(y0), y1: ticksOfMm(y1) } as Row;
    const laid = { plankWidth: ticksOfMm(WIDTH), firstWidth: ticksOfMm(100) } as RowLayout;
    return marksOf(piece, own, { layout: laid, startEdge, step: TICKS_PER_MM, units: 'metric' }, shapedMarks);
  };
  expect(laidRow('tongue', 0, 100, 100)).toEqual(['Rip to 100 mm wide: 92 mm off the start edge (tongue).']);
  expect(laidRow('groove', 0, 100, 100)).toEqual(['Rip to 100 mm wide: 92 mm off the start edge (groove).']);
  expect(laidRow('tongue', 1636, 1828, 150)).toEqual(['Rip to 150 mm wide: 42 mm off the far edge (groove).']);
  expect(laidRow('groove', 1636, 1828, 150)).toEqual(['Rip to 150 mm wide: 42 mm off the far edge (tongue).']);
});
