import { describe, expect, test } from 'vitest';
import {
  blankDraft,
  draftOf,
  entryOf,
  itemsAt,
  nextRoom,
  valueAt,
  withItemAdded,
  withItemMoved,
  withItemRemoved,
  withValue,
} from '../../../src/sidebar/form/draft';
import * as form from '../../../src/sidebar/form/fields';
import { checkedEntry } from '../../../src/tabs/checkedEntry';
import type { RoomEntry, ShapeEntry } from '../../../src/takeoff/entry';
import { ENTRY_SECTIONS, type EntryField } from '../../../src/takeoff/entryFields';
import { plainRoom } from '../../support/roomEntries';

const shapes: readonly ShapeEntry[] = [
  { kind: 'rectangle', length: `12' 6"`, width: 10 },
  { kind: 'four walls', walls: [1, 2, '3 m', 4], diagonal: 5, otherDiagonal: '6' },
  {
    kind: 'walls in order',
    diagonals: [],
    walls: [
      { length: 1, turn: 'R' },
      { length: 2, turn: -45 },
    ],
  },
  { kind: 'rectangles', rectangles: [{ change: 'take away', fromLeft: -1, fromNear: 2, length: 3, width: 4 }] },
];
const doorway = {
  wall: 2,
  along: 1,
  width: '32"',
  floor: 'goes on',
  depth: 3,
  leadsTo: 'Hall',
  itsDoorway: 2,
  wallThickness: 5,
} as const;
const cutout = { kind: 'round', wall: 4, along: 1, off: 2, length: 3, depth: 4, rise: '' } as const;

const fullRoom = (shape: ShapeEntry): RoomEntry => ({
  ...plainRoom,
  shape,
  doorways: [doorway],
  bows: [],
  cutouts: [cutout],
  rules: { ...plainRoom.rules, layDirection: 'wall 3', spare: 2, startSide: 'middle' },
});

describe('a saved room', () => {
  test.each(shapes)('measured as $kind comes out of the form as it went in', (shape) => {
    const entry = fullRoom(shape);
    expect(entryOf(draftOf(entry))).toEqual(entry);
  });
});

describe('a field', () => {
  const listed = (list: form.FormList) => list.fields.map(({ key }) => `${list.list}.${key}`);
  const under = (path: string, fields: readonly EntryField[]) => fields.map(({ key }) => `${path}.${key}`);
  const inForm = new Set<string>([
    'name',
    'units',
    'shape.kind',
    ...Object.values(form.SHAPE_FIELDS).flatMap((fields) => under('shape', fields)),
    ...[form.WALLS, form.DIAGONALS, form.RECTANGLES, form.BOWS, form.CUTOUTS, form.DOORWAYS].flatMap(listed),
    ...under('product', form.PRODUCT),
    ...under('rules', [...form.LAYING, ...form.OTHER_RULES]),
  ]);
  const inTable = ENTRY_SECTIONS.flatMap(({ at, fields }) =>
    fields.map(({ key }) => (at === '' ? key : `${at}.${key}`)),
  );

  test.each(inTable)('%s of the entry can be typed in the form', (path) => {
    expect(inForm.has(path)).toBe(true);
  });

  test.each([
    ['name', 'rectangle'],
    ['shape.length', 'rectangle'],
    ['shape.walls.2', 'four walls'],
    ['shape.walls.1.turn', 'walls in order'],
    ['shape.rectangles.0.fromNear', 'rectangles'],
    ['cutouts.0.off', 'rectangle'],
    ['doorways.0.leadsTo', 'rectangle'],
    ['product.boxCoverage', 'rectangle'],
    ['rules.gapBySpan', 'rectangle'],
  ] as const)('%s is read where it was written', (path, kind) => {
    const draft = withItemAdded(withItemAdded(withValue(blankDraft('us'), 'shape.kind', kind), 'cutouts'), 'doorways');
    const typed = withValue(draft, path, '7 1/2');
    expect(valueAt(typed, path)).toBe('7 1/2');
    const changed = JSON.stringify(typed).split('7 1/2').length - 1;
    expect(changed).toBe(1);
  });

  test('of a way to measure that is not chosen keeps what was typed', () => {
    const typed = withValue(blankDraft('us'), 'shape.length', '12');
    const there = withValue(typed, 'shape.kind', 'four walls');
    expect(valueAt(there, 'shape.length')).toBe('');
    expect(valueAt(withValue(there, 'shape.kind', 'rectangle'), 'shape.length')).toBe('12');
  });
});

test('a blank form of either system is an entry as far as its kinds go', () => {
  expect(checkedEntry(entryOf(blankDraft('us')))).toMatchObject({ ok: true });
  expect(checkedEntry(entryOf(blankDraft('metric')))).toMatchObject({ ok: true });
});

test('the next room keeps product, rules and units, and nothing of the room', () => {
  const next = entryOf(nextRoom(draftOf(fullRoom(shapes[0]))));
  expect(next.product).toEqual(plainRoom.product);
  expect(next.rules).toMatchObject({ spare: 2, startSide: 'middle', layDirection: '' });
  expect({ name: next.name, bows: next.bows, cutouts: next.cutouts, doorways: next.doorways }).toEqual({
    name: '',
    bows: [],
    cutouts: [],
    doorways: [],
  });
});

describe('walls in order', () => {
  const walls = ['1', '2', '3', '4', '5'].map((length) => ({ length, turn: 'R' }));
  const draft = draftOf({
    ...fullRoom({ kind: 'walls in order', diagonals: [], walls }),
    bows: [],
    cutouts: [{ ...cutout, wall: '4' }],
    doorways: [{ ...doorway, wall: 2 }],
  });

  test('that are removed renumber those after them where they are mentioned', () => {
    const { cutouts, doorways, rules } = withItemRemoved(draft, 'shape.walls', 0);
    expect([cutouts[0].wall, doorways[0].wall, rules.layDirection]).toEqual([3, 1, 'wall 2']);
  });

  test('that are removed are asked for again where something stood at them', () => {
    const { cutouts, doorways } = withItemRemoved(draft, 'shape.walls', 1);
    expect([cutouts[0].wall, doorways[0].wall]).toEqual([3, '']);
  });

  test('that change places take what stands at them along', () => {
    const moved = withItemMoved(draft, 'shape.walls', 1, 1);
    expect(itemsAt(moved, 'shape.walls').map((wall) => (wall as { length: string }).length)).toEqual([
      '1',
      '3',
      '2',
      '4',
      '5',
    ]);
    expect([moved.doorways[0].wall, moved.rules.layDirection]).toEqual([3, 'wall 2']);
  });

  test('stay where they are at the ends of the list', () => {
    expect(withItemMoved(draft, 'shape.walls', 0, -1)).toBe(draft);
    expect(withItemMoved(draft, 'shape.walls', 4, 1)).toBe(draft);
  });
});
