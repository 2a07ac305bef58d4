import { expect, test } from 'vitest';
import { checkCutPlan } from '../../../src/cutting/plan/ledger';
import { TICKS_PER_MM } from '../../../src/geometry/length';
import { areaOf } from '../../../src/geometry/polygon';
import { takeoffAsOne } from '../../../src/takeoff/planning/joinedFloor';
import { chooseWay } from '../../../src/takeoff/planning/ways';
import { drawRoom } from '../../../src/takeoff/reading/drawRoom';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';

const mm = (ticks: number) => ticks / TICKS_PER_MM;

const room = {
  ...plainRoom,
  units: 'metric' as const,
  shape: { kind: 'rectangle' as const, length: 5, width: 4 },
  doorways: [
    {
      wall: 2,
      along: 1.5,
      width: 0.9,
      floor: 'goes on' as const,
      depth: '60 mm',
      leadsTo: '',
      itsDoorway: '',
      wallThickness: '',
    },
  ],
  product: { ...plainRoom.product, plankLength: 1285, plankWidth: 192 },
  rules: { ...plainRoom.rules, startSide: 'middle' as const },
};

/*
 * By hand. Depth 4000 less two gaps of 10 is 3980, and 3980 = 20 x 192 + 140. The middle of the doorway is 2050 from the
 * near wall, 2040 from the gap. A line there would leave 3980 - 2040 = 1940 = 10 x 192 + 20: a row of 20 at the far
 * wall, under 50. Sharing what is left, both wall rows are (140 + 192) / 2 = 166, and the line is at a height that leaves
 * 166 over a whole number of rows: 10 x 192 + 166 = 2086 is 46 away, 70 + 10 x 192 = 1990 (wall rows of 70) is 50 away.
 * So 2086: 11 rows behind the line and, over 1894, 10 ahead.
 */
test('rows run both ways from a line through the doorway, and no wall row is a sliver', () => {
  const result = takeoff(room);
  expect(result.status).toBe('planned');
  if (result.status !== 'planned') return;
  const { rows, summary, notes, pieces, floor } = result.takeoff;
  expect(rows).toHaveLength(21);
  expect(rows.filter((row) => row.isReversed).map((row) => row.rowNumber)).toEqual([
    11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21,
  ]);
  expect([mm(summary.firstRowWidth), mm(summary.lastRowWidth)]).toEqual([166, 166]);
  // The line is 2.096 m from the near wall: 4 - 2.096 along wall 2 from the far corner, 2.096 along wall 4 from the near.
  expect(notes.join(' ')).toContain(
    'Snap a line from 2.096 m along wall 4 to 1.904 m along wall 2. Lay rows 1 to 10 ahead of it',
  );
  // From gap to gap, and 60 into the doorway: 5 m - 2 x 10 mm and 70 mm more.
  expect(notes.join(' ')).toContain('along the line, 5.05 m of it');
  expect(notes.join(' ')).toContain('lay rows 11 to 21 the other way');
  const covered = pieces.reduce((sum, piece) => sum + areaOf([piece.polygon, ...piece.holes]), 0);
  expect(covered).toBeCloseTo(areaOf(floor), -6);
});

test('both sides share planks by the laws, and joints keep their distance across the line too', () => {
  const { room: drawn } = drawRoom(room);
  if (drawn === null) throw new Error('the room was read');
  const { planned } = chooseWay(drawn);
  expect(planned.floors.map(({ part }) => part)).toEqual(['ahead', 'behind']);
  expect(checkCutPlan(planned.markedJob, { ...planned.markedPlan, stop: 'step limit' })).toEqual([]);
  const result = takeoff(room);
  if (result.status !== 'planned') throw new Error('the room was planned');
  const { pieces, summary } = result.takeoff;
  // Joints from the pieces' own outlines, in the room: ends that are not at a wall.
  const jointsOf = (rowNumber: number) => {
    const own = pieces.filter((piece) => piece.rowNumber === rowNumber);
    const ends = own.map(({ polygon }) => Math.max(...polygon.map(({ x }) => x)));
    return ends.filter((x) => x < Math.max(...ends));
  };
  const apart = jointsOf(1).flatMap((x) => jointsOf(11).map((other) => mm(Math.abs(x - other))));
  expect(Math.min(...apart)).toBeGreaterThanOrEqual(200);
  expect(mm(summary.tightestStagger ?? 0)).toBeGreaterThanOrEqual(200);
});

test('grooves meet at the line, so the wall rows lose their tongue', () => {
  const result = takeoff(room);
  if (result.status !== 'planned') throw new Error('the room was planned');
  const rips = result.takeoff.pieces.filter((piece) => piece.cuts.includes('rip'));
  expect(new Set(rips.map((piece) => piece.rowNumber))).toEqual(new Set([10, 21]));
  // Both lie at a wall, so neither can be angled in.
  expect(result.takeoff.notes.join(' ')).toContain('Row 10 and row 21: where a plank cannot be angled in');
  for (const piece of rips) expect(piece.marks[0]).toBe('Rip to 166 mm wide: 26 mm off the far edge (tongue).');
});

test('through a doorway the slip tongue is as long as the opening, and casings are undercut there', () => {
  // Two rooms one behind the other: the line lies in the wall between them, where only the doorway has floor on both
  // sides: 900 mm less a gap of 10 mm at each jamb.
  const product = room.product;
  const plain = { ...plainRoom, units: 'metric' as const, product };
  const near = {
    ...plain,
    name: 'Near',
    shape: { kind: 'rectangle' as const, length: 4, width: 3 },
    doorways: [
      {
        ...{ wall: 1, along: 1, width: 0.9, floor: 'goes on' as const, depth: '60 mm' },
        ...{ leadsTo: 'Far', itsDoorway: 1, wallThickness: '120 mm' },
      },
    ],
    rules: room.rules,
  };
  const far = {
    ...plain,
    name: 'Far',
    shape: { kind: 'rectangle' as const, length: 3, width: 3.5 },
    doorways: [
      {
        ...{ wall: 3, along: 1.2, width: 0.9, floor: 'goes on' as const, depth: '60 mm' },
        ...{ leadsTo: '', itsDoorway: '', wallThickness: '' },
      },
    ],
  };
  const result = takeoffAsOne([near, far]);
  expect(result.status === 'problems' ? result.problems : []).toEqual([]);
  if (result.status !== 'planned') return;
  const told = result.takeoff.notes.join(' ');
  expect(told).toContain('along the line, 0.88 m of it');
  expect(told).toContain('Undercut the casings of every doorway between the rooms');
});
