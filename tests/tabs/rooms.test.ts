import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkedEntry } from '../../src/tabs/checkedEntry';
import { entriesFromCells, roomColumn, roomsBlock, withRoom } from '../../src/tabs/rooms';
import type { EntryOf, RoomEntry, ShapeEntry, Typed } from '../../src/takeoff/entry';
import {
  BOW_FIELDS,
  CORNER_DIAGONAL_FIELDS,
  CUTOUT_FIELDS,
  DIAGONAL_FIELDS,
  DOORWAY_FIELDS,
  type EntryField,
  type EntrySection,
  NAME_FIELDS,
  PRODUCT_FIELDS,
  RECTANGLE_FIELDS,
  RECTANGLES_FIELDS,
  RULE_FIELDS,
  WALL_FIELDS,
} from '../../src/takeoff/entryFields';
import { blockValues } from '../support/blockValues';
import { smallEntry } from '../support/smallTakeoff';

/** What people type, what a spreadsheet would spoil, and anything else. */
const typed: fc.Arbitrary<Typed> = fc.oneof(
  fc.constantFrom<Typed>(
    '',
    ` 12' 6 1/2"`,
    '=1+1',
    '5/8',
    '+x',
    '@y',
    "'quoted",
    '(blank)',
    '((blank))',
    'wall 3',
    '🙂',
    'TRUE',
  ),
  fc.string({ maxLength: 20 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
);
const name = fc.oneof(fc.string({ maxLength: 30 }), fc.constantFrom('Den', '=Den', "Kid's room 🙂", 'Room', '12'));

/** Anything that may stand in the fields of a section. */
function anyOf<S extends EntrySection>({ fields }: S): fc.Arbitrary<EntryOf<S>> {
  const any = ({ use, choices }: EntryField): fc.Arbitrary<Typed> => {
    if (use === 'choice') return fc.constantFrom(...(choices ?? []).map(([value]) => value));
    return use === 'words' ? name : typed;
  };
  const parts = fields.map((field) => [field.key, any(field)] as const);
  return fc.record(Object.fromEntries(parts)) as unknown as fc.Arbitrary<EntryOf<S>>;
}

/** A last item that is all blank leaves no line in the tab. */
const listOf = <S extends EntrySection>(section: S, maxLength: number) =>
  fc.array(anyOf(section), { maxLength }).filter((items) => {
    const last = items[items.length - 1];
    return last === undefined || Object.values(last).some((value) => String(value) !== '');
  });
const kind = <K extends string>(name: K) => fc.record({ kind: fc.constant(name) });
const both = <A extends object, B extends object>(a: fc.Arbitrary<A>, b: fc.Arbitrary<B>) =>
  fc.tuple(a, b).map(([one, other]): A & B => ({ ...one, ...other }));

const shape: fc.Arbitrary<ShapeEntry> = fc.oneof(
  both(kind('rectangle'), anyOf(RECTANGLE_FIELDS)),
  both(both(kind('four walls'), fc.record({ walls: fc.tuple(typed, typed, typed, typed) })), anyOf(DIAGONAL_FIELDS)),
  both(
    kind('walls in order'),
    fc.record({ walls: listOf(WALL_FIELDS, 14), diagonals: listOf(CORNER_DIAGONAL_FIELDS, 6) }),
  ),
  both(kind('rectangles'), fc.record({ rectangles: listOf(RECTANGLES_FIELDS, 12) })),
);

const entry: fc.Arbitrary<RoomEntry> = both(
  anyOf(NAME_FIELDS),
  fc.record({
    shape,
    bows: listOf(BOW_FIELDS, 4),
    cutouts: listOf(CUTOUT_FIELDS, 3),
    doorways: listOf(DOORWAY_FIELDS, 3),
    product: anyOf(PRODUCT_FIELDS),
    rules: anyOf(RULE_FIELDS),
  }),
);

const sure = { seed: 20_261_125, numRuns: 300 };

describe('an entry from outside', () => {
  test('comes through whole: the table of fields is the entry, field by field', () => {
    fc.assert(
      fc.property(entry, (given) => {
        expect(checkedEntry(JSON.parse(JSON.stringify(given)))).toEqual({ ok: true, entry: given });
      }),
      sure,
    );
  });

  test('may be anything at all and is answered with sentences', () => {
    fc.assert(
      fc.property(fc.anything(), (anything) => {
        const checked = checkedEntry(anything);
        if (checked.ok) return;
        expect(checked.problems.length).toBeGreaterThan(0);
        for (const { text } of checked.problems) expect(text).toMatch(/^[A-Z][\s\S]*\.$/);
      }),
      sure,
    );
  });

  test.each([
    ['a number of units', { ...smallEntry, units: 5 }, 'units', /Units: "5" is not a choice. Choose us or metric\./],
    ['no shape', { ...smallEntry, shape: null }, 'shape.kind', /Measured as is blank/],
    [
      'a list for a length',
      { ...smallEntry, shape: { kind: 'rectangle', length: [1], width: 2 } },
      'shape.length',
      /Length: a number or text is wanted/,
    ],
    [
      'a date for a gap',
      { ...smallEntry, rules: { expansionGap: new Date(2026, 4, 8) } },
      'rules.expansionGap',
      /Expansion gap is a date/,
    ],
    ['text for the cut-outs', { ...smallEntry, cutouts: 'none' }, 'cutouts', /Cut-outs: a list is wanted/],
    [
      'too many doorways',
      { ...smallEntry, doorways: new Array(501).fill({}) },
      'doorways',
      /Doorways: there are 501. At most 500/,
    ],
    [
      'five walls in four',
      { ...smallEntry, shape: { kind: 'four walls', walls: [12, 10, 12, 10, 3], diagonal: 15 } },
      'shape.walls',
      /Walls: the room is measured as four walls, but 5 are typed/,
    ],
    ['a page of text', { ...smallEntry, name: 'x'.repeat(201) }, 'name', /Room has 201 characters. At most 200/],
  ])('%s is told at its field', (_, given, field, sentence) => {
    const checked = checkedEntry(given);
    expect(checked.ok).toBe(false);
    expect(checked.ok ? [] : checked.problems).toContainEqual({ field, text: expect.stringMatching(sentence) });
  });
});

describe('the Rooms tab', () => {
  test('gives back every entry exactly', () => {
    fc.assert(
      fc.property(fc.uniqueArray(entry, { maxLength: 4, selector: (room) => room.name.trim() }), (entries) => {
        const read = entriesFromCells(blockValues(roomsBlock(entries.map(roomColumn))));
        expect(read.rooms.map((room) => room.entry)).toEqual(entries);
        expect(read.problems).toEqual([]);
      }),
      sure,
    );
  });

  test('is a rectangle of cells, every typed one shown as text', () => {
    const block = roomsBlock([roomColumn({ ...smallEntry, name: '=Den' })]);
    expect(new Set(block.cells.map((row) => row.length))).toEqual(new Set([2]));
    expect(block.columnWidths).toHaveLength(2);
    expect(block.cells.flat().map((cell) => cell.value.kind)).not.toContain('formula');
    expect(block.cells.flat().map((cell) => cell.value)).toContainEqual({ kind: 'text', text: '=Den' });
  });

  test('a room of four walls with a line for a fifth is told, not read without it', () => {
    const column = new Map(
      roomColumn({
        ...smallEntry,
        shape: { kind: 'four walls', walls: [12, 10, 12, 10], diagonal: '', otherDiagonal: '' },
      }),
    );
    column.set('Wall 5', 3);
    const { rooms, problems } = entriesFromCells(blockValues(roomsBlock([column])));
    expect(rooms[0].entry).toBeNull();
    expect(problems).toEqual([expect.stringContaining('Walls: the room is measured as four walls, but 5 are typed.')]);
  });

  test('an empty tab has no rooms and nothing to say', () => {
    expect(entriesFromCells([])).toEqual({ rooms: [], problems: [], isReadable: true });
    expect(entriesFromCells([['', '']])).toEqual({ rooms: [], problems: [], isReadable: true });
  });

  test('a tab without its line of names is told, and not to be written over', () => {
    const read = entriesFromCells([['Length', '12']]);
    expect(read.isReadable).toBe(false);
    expect(read.problems[0]).toMatch(/no line "Room"/);
  });

  test('lines in another order, in capitals and with lines of the person between are read all the same', () => {
    const values = blockValues(roomsBlock([roomColumn(smallEntry)]));
    const turned = [...values].reverse().map(([label, ...rest]) => [String(label).toUpperCase(), ...rest]);
    const mixed = [
      ['ROOM', 'Cupboard'],
      ['my own remark', 'ask about the hinge'],
      ...turned.filter(([label]) => label !== 'ROOM'),
    ];
    expect(entriesFromCells(mixed).rooms.map((room) => room.entry)).toEqual([smallEntry]);
  });

  test('a damaged room is told by name, and the others are read', () => {
    const columns = [roomColumn(smallEntry), roomColumn({ ...smallEntry, name: 'Hall' })];
    const values = blockValues(roomsBlock(columns));
    const damaged = values.map((row) => (row[0] === 'Units' ? [row[0], 'furlongs', row[2]] : row));
    const read = entriesFromCells(damaged);
    expect(read.rooms.map((room) => room.entry?.name ?? null)).toEqual([null, 'Hall']);
    expect(read.problems).toEqual(['Cupboard: Units: "furlongs" is not a choice. Choose us or metric.']);
  });

  test('a damaged room and lines of the person are still there after another room was saved', () => {
    const values: unknown[][] = blockValues(
      roomsBlock([roomColumn(smallEntry), roomColumn({ ...smallEntry, name: 'Hall' })]),
    );
    for (const row of values) if (row[0] === 'Kind of floor') row[1] = new Date(2026, 4, 8);
    values.push(['Carpet to lift', 'yes', 'no']);
    const { rooms } = entriesFromCells(values);
    const again = blockValues(roomsBlock(withRoom(rooms, { ...smallEntry, name: 'Hall', units: 'metric' })));
    const line = (label: string) => again.find((row) => row[0] === label);
    expect(line('Carpet to lift')).toEqual(['Carpet to lift', 'yes', 'no']);
    expect(line('Kind of floor')).toEqual(['Kind of floor', '2026-05-08', 'laminate']);
    expect(line('Units')).toEqual(['Units', 'us', 'metric']);
    expect(line('Room')).toEqual(['Room', 'Cupboard', 'Hall']);
  });

  test('a date and a tick in a field are told as what they are', () => {
    const values: unknown[][] = blockValues(roomsBlock([roomColumn(smallEntry)]));
    for (const row of values) {
      if (row[0] === 'Expansion gap') row[1] = new Date(2026, 4, 8);
      if (row[0] === 'Kerf') row[1] = true;
    }
    expect(entriesFromCells(values).problems).toEqual([
      'Cupboard: Expansion gap is a date: the spreadsheet turns 5/8 into one. Clear the cell, set its format to plain text, and type 5/8".',
      `Cupboard: Kerf: a number or text is wanted. Type a length such as 12' 6" or 3.81 m.`,
    ]);
  });

  test('a doorway whose cells were cleared is gone, and the next moves up', () => {
    const doorway = (wall: number) => ({
      wall,
      along: 1,
      width: 3,
      floor: 'transition' as const,
      depth: '',
      leadsTo: '',
      itsDoorway: '',
      wallThickness: '',
    });
    const values = blockValues(roomsBlock([roomColumn({ ...smallEntry, doorways: [doorway(1), doorway(2)] })]));
    const cleared = values.map((row) => (String(row[0]).startsWith('Doorway 1') ? [row[0], ''] : row));
    expect(entriesFromCells(cleared).rooms[0].entry?.doorways).toEqual([doorway(2)]);
  });

  test('a name is the same in any case and with spaces around it, as it is for the job', () => {
    const named = (name: string) => ({ ...smallEntry, name });
    const saved = entriesFromCells(blockValues(roomsBlock([roomColumn(named('Den'))]))).rooms;
    expect(withRoom(saved, named(' den '))).toEqual([roomColumn(named(' den '))]);
    const twice = entriesFromCells(blockValues(roomsBlock([roomColumn(named('Den')), roomColumn(named('DEN'))])));
    expect(twice.problems).toEqual(['"DEN" is saved twice. The left one is read; rename the other.']);
    expect(twice.rooms.map((room) => room.entry)).toEqual([named('Den'), null]);
  });

  test('two rooms of one name, and a line that is there twice, are told', () => {
    const values = blockValues(roomsBlock([roomColumn(smallEntry), roomColumn(smallEntry)]));
    values.push(['Kerf', '1/4"', '1/4"']);
    const read = entriesFromCells(values);
    expect(read.problems).toEqual([
      'The line "Kerf" is there twice. The upper one is read.',
      '"Cupboard" is saved twice. The left one is read; rename the other.',
    ]);
    expect(read.rooms.map((room) => room.entry)).toEqual([smallEntry, null]);
  });

  test('whatever stands in the cells, reading never throws', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.double(),
      fc.boolean(),
      fc.date(),
      fc.constantFrom('', 'Room', 'Wall 1', 'Units', 'us', 'Cut-out 2'),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 12 }), (values) => {
        const read = entriesFromCells(values);
        for (const sentence of read.problems) expect(sentence).not.toMatch(/undefined|NaN|\[object/);
        roomsBlock(withRoom(read.rooms, smallEntry));
      }),
      sure,
    );
  });
});
