/** What the form says it has understood: echoes of measures, walls that are still open, lines of sections. */
import { describe, expect, test } from 'vitest';
import { TICKS_PER_FOOT } from '../../../src/geometry/length';
import { fieldOfMark, marksOfField } from '../../../src/sidebar/drawing/drawnFields';
import { blankDraft } from '../../../src/sidebar/form/draft';
import { echoWords } from '../../../src/sidebar/form/echo';
import { firstLookAt } from '../../../src/sidebar/form/firstLook';
import { openWalkOf, walkWords } from '../../../src/sidebar/form/openWalk';
import { setWords } from '../../../src/sidebar/form/setWords';
import type { RoomEntry } from '../../../src/takeoff/entry';
import { plainRoom } from '../../support/roomEntries';

const echo = (entry: RoomEntry) => echoWords(entry, firstLookAt(entry));
const rectangle = (length: string, width: string): RoomEntry => ({
  ...plainRoom,
  cutouts: [],
  shape: { kind: 'rectangle', length, width },
});

describe('the echo of the measures', () => {
  test('has both sides and the area', () => {
    // By hand: 116.25 in x 97 in is 11,276.25 sq in, and 144 of them are a sq ft: 78.3.
    expect(echo(rectangle('9-8 1/4', `8' 1`))).toBe(`9' 8 1/4" × 8' 1" = 78.3 sq ft`);
  });

  test('has what is known of a room that is half typed', () => {
    expect(echo(rectangle(`13' 4"`, ''))).toBe(`13' 4" × ?`);
    expect(echo(rectangle('', ''))).toContain('A bare number: feet.');
  });

  test('has the area without cut-outs beside it', () => {
    const cutouts = [{ kind: 'rectangle', wall: 1, along: 2, off: 0, length: 4, depth: 2, rise: '' }] as const;
    // By hand: 12 ft x 10 ft, less 4 ft x 2 ft.
    expect(echo({ ...rectangle('12', '10'), cutouts })).toBe(
      `12' 0" × 10' 0" = 120 sq ft, 112 sq ft without the cut-outs`,
    );
  });
});

describe('walls that are still open', () => {
  const wall = (length: string, turn: string) => ({ length, turn });

  test('go as they were walked, and say how far it is to the start', () => {
    const walk = openWalkOf([wall("4'", 'R'), wall("3'", 'R'), wall('', 'R')], 'us');
    // By hand: right 4 ft, then towards the near side 3 ft; back is the long side of 3, 4, 5.
    expect(walk?.corners.map(({ x, y }) => [x / TICKS_PER_FOOT, y / TICKS_PER_FOOT])).toEqual([
      [0, 0],
      [4, 0],
      [4, -3],
    ]);
    expect(walk && walkWords(walk, 'us')).toBe(`2 walls walked; 5' 0" straight back to the start.`);
  });

  test('end at the first that cannot be read, and at a turn that is not known', () => {
    expect(openWalkOf([wall('a bit', 'R')], 'us')).toBeNull();
    expect(openWalkOf([wall("4'", ''), wall("3'", 'R')], 'us')?.corners).toHaveLength(2);
    expect(openWalkOf([wall("4'", 'L'), wall("3'", 'R')], 'us')?.corners[2].y).toBe(3 * TICKS_PER_FOOT);
  });

  test('are drawn while the room is not closed, and no longer', () => {
    const walls = [wall("4'", 'R'), wall("3'", 'R'), wall("4'", 'R'), wall('', 'R')];
    const open = { ...plainRoom, shape: { kind: 'walls in order', walls, diagonals: [] } } as const;
    expect(firstLookAt(open).walk?.corners).toHaveLength(4);
    const closed = { ...open, shape: { ...open.shape, walls: [...walls.slice(0, 3), wall("3'", 'R')] } };
    expect(firstLookAt(closed)).toMatchObject({ walk: null, sketch: { walls: { length: 4 } } });
  });
});

test('the rows are known before anything is planned', () => {
  // By hand: 120 in less two gaps of 3/8 in is 119 1/4: 19 planks of 6 in and 5 1/4.
  const { sketch } = firstLookAt(rectangle('12', '10'));
  expect(sketch?.rows).toHaveLength(20);
  const open = { ...rectangle('12', '10'), rules: { ...plainRoom.rules, layDirection: 'best' } };
  expect(firstLookAt(open).sketch?.rows).toEqual([]);
});

test('a section that is shut shows what is set in it', () => {
  const blank = blankDraft('us');
  expect(setWords(blank, 'Room 1')).toMatchObject({
    shape: 'length and width',
    cutouts: 'none',
    laying: 'along the length, from the near side',
    rules: 'the usual ones',
    product: 'laminate',
    room: 'Room 1, feet and inches',
  });
  const set = { ...blank, rules: { ...blank.rules, kerf: '0', layDirection: 'width', firstRow: '5"' } };
  expect(setWords(set, 'Den')).toMatchObject({ laying: 'along the width, first row width 5"', rules: 'kerf 0' });
});

test.each([
  ['wall 3', 'rectangle', 'shape.length'],
  ['wall 2', 'rectangle', 'shape.width'],
  ['wall 2', 'four walls', 'shape.walls.1'],
  ['wall 2', 'walls in order', 'shape.walls.1.length'],
  ['corner 0', 'walls in order', 'shape.walls.0.turn'],
  ['wall 2', 'rectangles', ''],
] as const)('%s of a room measured by %s leads to %s, and back', (mark, kind, path) => {
  expect(fieldOfMark(mark, kind)).toBe(path);
  if (path !== '') expect(marksOfField(path)).toContain(mark);
});

test.each(['cutout 1', 'doorway 2'])('%s leads to its field, and back', (mark) => {
  expect(marksOfField(fieldOfMark(mark, 'rectangle'))).toEqual([mark]);
});
