/** The drawing against the floor it is of: areas on paper are areas of the pieces, to scale. */
import { describe, expect, test } from 'vitest';
import { areaOf, contains } from '../../../src/geometry/polygon';
import { drawingOf, regionOf } from '../../../src/sidebar/drawing/drawing';
import { markedPieceOf } from '../../../src/sidebar/drawing/marking';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import type { Takeoff } from '../../../src/takeoff/result';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';

const rules = (own: Partial<RoomEntry['rules']>) => ({ ...plainRoom.rules, ...own });
const bay = [
  [4, -45],
  [3, 45],
  [5, 45],
  [3, -45],
  [4, 'R'],
  [11, 'R'],
  [`17' 2 15/16"`, 'R'],
  [11, 'R'],
] as const;
const rooms: readonly (readonly [string, RoomEntry])[] = [
  ['rectangle', plainRoom],
  ['rectangle laid at 45 degrees', { ...plainRoom, rules: rules({ layDirection: 45 }) }],
  ['rectangle begun in the middle', { ...plainRoom, rules: rules({ startSide: 'middle' }) }],
  ['rectangle begun at the far side', { ...plainRoom, rules: rules({ startSide: 'far' }) }],
  [
    'bay window',
    {
      ...plainRoom,
      shape: { kind: 'walls in order', diagonals: [], walls: bay.map(([length, turn]) => ({ length, turn })) },
    },
  ],
  [
    'room with a column and a doorway',
    {
      ...plainRoom,
      bows: [],
      cutouts: [{ kind: 'rectangle', wall: 1, along: 5, off: 3, length: 1.5, depth: 1.25, rise: '' }],
      doorways: [
        {
          wall: 3,
          along: 4,
          width: '32"',
          floor: 'transition',
          depth: '4"',
          leadsTo: '',
          itsDoorway: '',
          wallThickness: '',
        },
      ],
    },
  ],
];

function named(wanted: string): RoomEntry {
  const room = rooms.find(([name]) => name === wanted);
  if (!room) throw new Error(`There is no ${wanted} here.`);
  return room[1];
}

function planned(entry: RoomEntry): Takeoff {
  const result = takeoff(entry);
  if (result.status !== 'planned') throw new Error(JSON.stringify(result.problems));
  return result.takeoff;
}

/** Area that a path encloses on paper, by the shoelace sum; holes are drawn the other way round. */
function paperArea(path: string): number {
  const outlines = path.split('Z').filter((part) => part !== '');
  return outlines.reduce((sum, outline) => {
    const points = outline
      .slice(1)
      .split('L')
      .map((pair) => pair.split(',').map(Number));
    const doubled = points.reduce((total, [x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length];
      return total + x * nextY - nextX * y;
    }, 0);
    // y runs down on paper.
    return sum - doubled / 2;
  }, 0);
}

describe.each(rooms)('the drawing of a %s', (_, entry) => {
  const plan = planned(entry);
  const drawing = drawingOf(plan, { width: 280, height: 250 });

  test('shows every piece with its area, to scale', () => {
    expect(drawing.pieces).toHaveLength(plan.pieces.length);
    for (const { piece, path } of drawing.pieces) {
      const expected = areaOf(regionOf(piece)) * drawing.scale.perTick ** 2;
      // Corners stand to a thousandth of a unit.
      expect(Math.abs(paperArea(path) - expected)).toBeLessThan(0.2);
    }
  });

  test('shows pieces that fill the floor', () => {
    const pieces = drawing.pieces.reduce((sum, { path }) => sum + paperArea(path), 0);
    expect(pieces / paperArea(drawing.floor)).toBeCloseTo(1, 3);
  });

  test('stays on its paper', () => {
    expect(drawing.height).toBeLessThanOrEqual(250.001);
    const numbers = drawing.outline.match(/-?[\d.]+/g)?.map(Number) ?? [];
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...numbers)).toBeLessThanOrEqual(280);
  });

  test('numbers pieces or rows, and none smaller than can be read', () => {
    const sizes = drawing.pieces.flatMap(({ label }) => (label ? [label.size] : []));
    expect(Math.min(...sizes, 9)).toBeGreaterThanOrEqual(9);
    const numbered = sizes.length * 2 > drawing.pieces.length;
    expect(drawing.rows.numbers.length > 0).toBe(!numbered);
    // Large enough, every piece of some length has its number.
    const large = drawingOf(plan, { width: 1000, height: 900 });
    const wide = large.pieces.filter(({ piece }) => piece.length * large.scale.perTick > 60 && piece.cuts.length === 0);
    expect(wide.filter(({ label }) => label === null)).toEqual([]);
  });

  test('numbers the walls outside the room', () => {
    const { wallNumbers } = drawing;
    const wallCount = entry.shape.kind === 'walls in order' ? entry.shape.walls.length : 4;
    expect(wallNumbers.map(({ wallNumber }) => wallNumber)).toEqual(Array.from({ length: wallCount }, (_, i) => i + 1));
    const perTick = drawing.scale.perTick;
    const origin = drawing.scale.place({ x: 0, y: 0 });
    const inRoom = ({ x, y }: { x: number; y: number }) => ({
      x: Math.round((x - origin.x) / perTick),
      y: Math.round((origin.y - y) / perTick),
    });
    expect(wallNumbers.filter((place) => contains([plan.outline], inRoom(place)))).toEqual([]);
  });

  test('tints by where the wood of a piece comes from, as the books of the plan have it', () => {
    for (const { piece, tint, isRipped } of drawing.pieces) {
      const plank = plan.planks.find(({ plankNumber }) => plankNumber === piece.plankNumber);
      const isFirst = plank?.pieces[0].label === piece.label;
      expect(tint === 'offcut', piece.label).toBe(!isFirst);
      if (tint === 'whole') expect(plank?.pieces.filter(({ stripOf }) => stripOf === '')).toHaveLength(1);
      expect(isRipped).toBe(piece.marks.some((mark) => mark.startsWith('Rip')));
    }
  });
});

test('the numbers of a joined floor stand outside all its rooms, beside the walls that notes name', () => {
  const doorway = {
    floor: 'goes on',
    width: '32"',
    depth: '',
    leadsTo: '',
    itsDoorway: '',
    wallThickness: '',
  } as const;
  const hall: RoomEntry = {
    ...plainRoom,
    name: 'Hall',
    shape: { kind: 'rectangle', length: 14, width: 5 },
    doorways: [{ ...doorway, wall: 1, along: 2, leadsTo: 'Den', wallThickness: '5"' }],
  };
  const den: RoomEntry = {
    ...plainRoom,
    name: 'Den',
    shape: { kind: 'rectangle', length: 8, width: 9 },
    doorways: [{ ...doorway, wall: 3, along: 3 }],
  };
  const result = takeoffAsOne([hall, den]);
  if (result.status !== 'planned') throw new Error(JSON.stringify(result.problems));
  const plan = result.takeoff;
  const { wallNumbers, scale } = drawingOf(plan, { width: 280, height: 250 });
  const { perTick, place } = scale;
  const origin = place({ x: 0, y: 0 });
  for (const { x, y, wallNumber } of wallNumbers) {
    const at = { x: Math.round((x - origin.x) / perTick), y: Math.round((origin.y - y) / perTick) };
    expect(contains([plan.outline], at), `W${wallNumber}`).toBe(false);
    const wall = plan.walls.find((mark) => mark.wallNumber === wallNumber);
    if (!wall) throw new Error(`There is a wall ${wallNumber}.`);
    const [a, b] = [place(wall.from), place(wall.to)];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const away = Math.abs((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / length;
    expect(away, `W${wallNumber}`).toBeLessThan(20);
  }
  // The near wall of the den, number 7, has the hall on its other side.
  expect(wallNumbers.map(({ wallNumber }) => wallNumber)).toEqual([1, 2, 3, 4, 5, 6, 8]);
});

test('what stands over the floor is drawn apart, with its place in the form', () => {
  const column = { kind: 'rectangle', wall: 3, along: 5, off: 3, length: 1, depth: 1, rise: '' } as const;
  const radiator = { ...column, kind: 'covered', wall: 1, off: 0 } as const;
  const drawing = drawingOf(planned({ ...plainRoom, cutouts: [radiator, column] }), { width: 300, height: 300 });
  expect(drawing.cutouts).toHaveLength(1);
  expect(drawing.covered.map(({ place }) => place)).toEqual([0]);
  // Both are a foot square.
  expect(Math.abs(paperArea(drawing.covered[0].d))).toBeCloseTo(Math.abs(paperArea(drawing.cutouts[0])), 0);
});

describe('the marking drawing', () => {
  test.each(rooms)('of each piece of a %s has its area and the lengths of the list', (_, entry) => {
    const plan = planned(entry);
    for (const piece of plan.pieces) {
      const marked = markedPieceOf(piece, plan);
      expect(areaOf(marked.shape) / areaOf(regionOf(piece))).toBeCloseTo(1, 4);
      // Marked to 1/16 in; what is over goes into the gap.
      expect(Math.abs(marked.length - piece.length)).toBeLessThanOrEqual(16_256 / 8);
    }
  });

  test('of a room begun in the middle is turned round with the planks', () => {
    const column = { kind: 'rectangle', wall: 3, along: 5, off: 1.9, length: 1, depth: 0.6, rise: '' } as const;
    const plan = planned({ ...named('rectangle begun in the middle'), cutouts: [column] });
    const turned = plan.rows.filter(({ isReversed }) => isReversed).map(({ rowNumber }) => rowNumber);
    const notched = plan.pieces.filter(({ cuts, rowNumber }) => cuts.includes('notch') && turned.includes(rowNumber));
    // The sentences of the cut list name the edge; the dimension stands beside the same one.
    const sides = notched.flatMap((piece) => {
      const edge = /^Notch in the (start|far) edge/m.exec(piece.marks.join('\n'))?.[1];
      const dimension = markedPieceOf(piece, plan).dimensions.find(({ name }) => name === 'Notch, along');
      return edge && dimension ? [[edge, dimension.side]] : [];
    });
    expect(sides.length).toBeGreaterThan(0);
    for (const [edge, side] of sides) expect(side).toBe(edge === 'start' ? 'bottom' : 'top');
  });

  // By hand: a row 6 in wide that ends at a wall of 45 degrees is 6 in shorter at one edge than at the other.
  test('of a mitred piece gives the long and the short point', () => {
    const plan = planned(named('rectangle laid at 45 degrees'));
    const mitred = plan.pieces.filter((piece) => piece.shortPoint > 0 && piece.length - piece.shortPoint > 0);
    const one = mitred.find((piece) => Math.abs(piece.length - piece.shortPoint - 6 * 16_256) < 16_256 / 16);
    if (!one) throw new Error('A full row ends at a wall.');
    const names = markedPieceOf(one, plan).dimensions.map(({ name }) => name);
    expect(names).toEqual(['Length of the longer edge (long point)', 'Length of the shorter edge', 'Width']);
  });

  test('of a piece beside a column gives the place and both sides of the notch', () => {
    const plan = planned(named('room with a column and a doorway'));
    const notched = plan.pieces.find((piece) => piece.cuts.includes('notch') && piece.rowNumber > 1);
    if (!notched) throw new Error('The column stands in a row.');
    const names = markedPieceOf(notched, plan).dimensions.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['Notch, along', 'Notch, across']));
  });
});
