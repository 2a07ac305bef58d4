/** Rooms from files: what a person gets told of every file, and that no file and no room is lost. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { planFiles } from '../../src/workbook/planFiles';
import type { WrittenFloor } from '../../src/workbook/roomFiles';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'room-files-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});
beforeEach(() => {
  rmSync(join(folder, 'house'), { recursive: true, force: true });
  mkdirSync(join(folder, 'house'));
});

/** A closet of one row, planned in no time. By hand: 1 m by 0.15 m, and one plank of 1.2 m by 0.2 m covers it. */
const CLOSET = {
  units: 'metric',
  shape: { kind: 'rectangle', length: 1, width: 0.15 },
  product: { plankLength: 1200, plankWidth: 200 },
};

interface Run {
  readonly lines: readonly string[];
  readonly code: number;
  readonly floors: Readonly<Record<string, WrittenFloor>>;
}

function put(name: string, content: unknown): void {
  writeFileSync(join(folder, 'house', name), typeof content === 'string' ? content : JSON.stringify(content));
}

function plan(path = 'house'): Run {
  const lines: string[] = [];
  const code = planFiles(['--rooms', path, '--out', 'floors.json'], (line) => lines.push(line), folder);
  const { floors } = JSON.parse(readFileSync(join(folder, 'floors.json'), 'utf8'));
  return { lines, code, floors };
}

/** What is said of one file with this content. */
function toldOf(content: unknown): readonly string[] {
  put('room.json', content);
  const { lines, code, floors } = plan();
  expect(code).toBe(1);
  expect(floors.room.problems.length).toBeGreaterThan(0);
  expect(floors.room.pieces).toBeUndefined();
  expect(lines.at(-1)).toBe('0 of 1 floors planned. Written to floors.json.');
  return lines.slice(0, -1);
}

describe('a folder of files', () => {
  test('with broken ones among them: those are told, all others are planned', () => {
    for (let i = 1; i <= 20; i++) put(`room ${i}.json`, { entry: CLOSET });
    put('room 7.json', '{ "entry": { ');
    put('room 8.json', '[]');
    put('room 9.json', { entry: { ...CLOSET, shape: { kind: 'rectangle', length: 'long', width: 1 } } });
    mkdirSync(join(folder, 'house', 'attic.json'));
    put('notes.txt', 'not a room');
    const { lines, code, floors } = plan();
    expect(code).toBe(1);
    expect(Object.keys(floors)).toHaveLength(21);
    const planned = Object.keys(floors).filter((id) => floors[id].planks === 1);
    expect(planned).toHaveLength(17);
    expect(lines).toEqual([
      'attic: The file cannot be read: it is a folder.',
      expect.stringMatching(/^room 7: This is not JSON, as a room file is: /),
      'room 8: Found an empty list where a room is wanted, such as { "entry": { ... } }.',
      expect.stringMatching(/^room 9: Length: "long" is not a length\./),
      '17 of 21 floors planned. Written to floors.json.',
    ]);
  });

  test.each([
    ['that is not there', 'nowhere', /^The room files cannot be read: .*nowhere \(there is no such file\)\.$/],
    ['without room files', 'house', /^The folder .*house holds no room files: their names end in \.json\.$/],
  ])('%s is told', (_, path, sentence) => {
    const lines: string[] = [];
    const code = planFiles(['--rooms', path, '--out', 'floors.json'], (line) => lines.push(line), folder);
    expect([code, lines]).toEqual([1, [expect.stringMatching(sentence)]]);
  });

  test('with marks of byte order before the text', () => {
    const text = JSON.stringify({ entry: { ...CLOSET, name: 'Küche' } });
    put('plain.json', text);
    put('marked.json', `\uFEFF${text}`);
    writeFileSync(join(folder, 'house', 'wide.json'), Buffer.from(`\uFEFF${text}`, 'utf16le'));
    const { code, floors } = plan();
    expect(code).toBe(0);
    expect(Object.values(floors).map(({ name }) => name)).toEqual(['Küche', 'Küche', 'Küche']);
  });

  test('of jobs: a mark of byte order is taken there as well', () => {
    const job = { id: 'one', L: 1200, W: 200, k: 3, m: 200, S: 200, rows: [{ room: 0, runs: [{ x: 0, R: 1000 }] }] };
    writeFileSync(join(folder, 'jobs.json'), `\uFEFF${JSON.stringify({ instances: [job] })}`);
    expect(planFiles(['--cases', 'jobs.json', '--out', 'plans.json'], () => {}, folder)).toBe(0);
  });
});

describe('two rooms of one name', () => {
  const twice = [
    { ...CLOSET, name: 'Den' },
    { ...CLOSET, name: ' den' },
  ];
  test.each(['each on its own', 'sharing planks', 'as one floor', undefined])('laid %s are refused', (lay) => {
    expect(toldOf({ rooms: twice, lay })).toEqual([
      'room: den: two rooms have this name. Give each a name of its own.',
    ]);
  });

  test('are none where no names are typed: each takes the file and its number', () => {
    put('house.json', { rooms: [CLOSET, { ...CLOSET, name: '' }] });
    const { code, floors } = plan();
    expect(code).toBe(0);
    expect(Object.keys(floors)).toEqual(['house/house 1', 'house/house 2']);
  });
});

describe('a field that is none is told with the nearest', () => {
  const entry = (change: object) => ({ entry: { ...CLOSET, ...change } });
  test.each<[string, unknown, string]>([
    [
      'a rule',
      entry({ rules: { minStager: 300 } }),
      'entry, rules: "minStager" is not a field. The nearest is "minStagger".',
    ],
    ['a rule by its words', entry({ rules: { 'minimum stagger': 300 } }), 'The nearest is "minStagger".'],
    ['a part of the room', entry({ doorway: [] }), 'entry: "doorway" is not a field. The nearest is "doorways".'],
    [
      'a field of a second cut-out',
      entry({
        cutouts: [
          { wall: 1, length: 1, depth: 1 },
          { wall: 1, lenght: 1 },
        ],
      }),
      'entry, cutouts 2: "lenght" is not a field. The nearest is "length".',
    ],
    [
      'a field of another shape',
      entry({ shape: { kind: 'rectangle', length: 1, width: 1, diagonal: 2 } }),
      'entry, shape: "diagonal" is not a field of a room measured as rectangle. Known are kind, length, width.',
    ],
    ['a field of the file', { entri: CLOSET }, '"entri" is not a field.'],
    ['a field of a bare room', { ...CLOSET, rule: {} }, '"rule" is not a field. The nearest is "rules".'],
    [
      'a field of what is expected',
      { ...entry({}), expect: { plank: 1 } },
      'expect: "plank" is not a field. The nearest is "planks".',
    ],
    [
      'a field of the second room',
      { rooms: [CLOSET, { ...CLOSET, unit: 'us' }] },
      'rooms 2: "unit" is not a field. The nearest is "units".',
    ],
    [
      'a name that objects have',
      { entry: { ...CLOSET, constructor: 1 } },
      'entry: "constructor" is not a field. Known are name,',
    ],
  ])('%s', (_, content, sentence) => {
    expect(toldOf(content)).toEqual([expect.stringContaining(sentence)]);
  });
});

describe('a field of another form than its place is told', () => {
  const entry = (change: object) => ({ entry: { ...CLOSET, ...change } });
  test.each<[string, unknown, string]>([
    [
      'a product in words',
      entry({ product: 'oak' }),
      'entry, product: found "oak" where fields in braces should stand.',
    ],
    ['rules as a list', entry({ rules: ['kerf'] }), 'entry, rules: found a list where fields in braces should stand.'],
    [
      'a shape in words',
      entry({ shape: 'rectangle' }),
      'entry, shape: found "rectangle" where fields in braces should stand.',
    ],
    [
      'doorways that are no list',
      entry({ doorways: {} }),
      'entry, doorways: found fields in braces where a list should stand.',
    ],
    [
      'a doorway in words',
      entry({ doorways: ['far wall'] }),
      'entry, doorways 1: found "far wall" where fields in braces should stand.',
    ],
    [
      'a nothing among cut-outs',
      entry({ cutouts: [null] }),
      'entry, cutouts 1: found nothing where fields in braces should stand.',
    ],
    [
      'a switch for a length',
      entry({ rules: { kerf: true } }),
      'entry, rules, kerf: found true where a number or text should stand.',
    ],
    ['rooms that are none', { rooms: [] }, 'rooms: found an empty list where a list of rooms should stand.'],
    ['a room that is none', { rooms: [CLOSET, 3] }, 'rooms 2: found 3 where a room in braces should stand.'],
    ['no room', { entry: null }, 'entry: found nothing where a room in braces should stand.'],
    [
      'one room and several',
      { entry: CLOSET, rooms: [CLOSET] },
      'The file has both "entry" and "rooms". Keep one of them.',
    ],
    [
      'another way to lay',
      { rooms: [CLOSET], lay: 'together' },
      'lay: "together" is not a way to lay rooms. Choose as one floor,',
    ],
    [
      'a way to lay that is no text',
      { rooms: [CLOSET], lay: [{}] },
      'lay: found a list where a number or text should stand.',
    ],
    [
      'five walls of four',
      entry({ shape: { kind: 'four walls', walls: [1, 1, 1, 1, 1], diagonal: 1.41 } }),
      'entry, shape, walls: found a list of 5 where a list of four lengths should stand.',
    ],
    ['a shape that is none', entry({ shape: { kind: 'rectangel' } }), 'Measured as: "rectangel" is not a choice.'],
  ])('%s', (_, content, sentence) => {
    expect(toldOf(content)).toEqual([expect.stringContaining(sentence)]);
  });
});

test('rooms that share planks are laid each on its own, wherever their doorways lead', () => {
  const doorway = { wall: 1, along: 0.1, width: 0.8, floor: 'goes on', leadsTo: 'Hall' };
  put('house.json', {
    lay: 'sharing planks',
    rooms: [
      { ...CLOSET, name: 'Den', doorways: [doorway], product: { plankLength: 2100, plankWidth: 200 } },
      {
        ...CLOSET,
        name: 'Hall',
        doorways: [{ ...doorway, wall: 3, leadsTo: '' }],
        product: { plankLength: 2100, plankWidth: 200 },
      },
    ],
  });
  const { code, floors } = plan();
  expect(code).toBe(0);
  // By hand: two rows of 980 mm and a saw cut come out of one plank of 2100 mm.
  expect(Object.entries(floors).map(([id, { planks }]) => [id, planks])).toEqual([
    ['house/Den', 1],
    ['house/Hall', 1],
  ]);
});

test('any field may be blank and then has its default', () => {
  const blank = { name: '', units: '', cutouts: '', doorways: null, rules: '' };
  put('den.json', {
    entry: { ...CLOSET, ...blank, units: 'metric', product: { ...CLOSET.product, kind: '' } },
    lay: '',
  });
  put('us.json', {
    shape: { kind: 'rectangles', rectangles: [{ length: 1, width: '6"', fromLeft: null }] },
    product: { plankLength: 48, plankWidth: 7.5 },
    ...blank,
  });
  const { code, floors } = plan();
  expect(code).toBe(0);
  expect(floors.den.name).toBe('den');
  // By hand: a default gap of 10 mm at both walls, and of 3/8 in.
  expect(floors.den.rows?.[0].width).toBe(130);
  expect(floors.us.rows?.[0].width).toBe(5.25 * 25.4);
});

test('millimeters where units are left out are told as what they are', () => {
  const { units, ...entry } = CLOSET;
  expect(
    toldOf({
      entry: {
        ...entry,
        shape: { kind: 'rectangle', length: 4, width: 3 },
        product: { plankLength: 1285, plankWidth: 192 },
      },
    }),
  ).toEqual([
    // By hand: 1285 in are 107 ft and 1 in.
    'room: Plank length: 1285 is more than any plank has: at most 8 m (26 ft) long and 1 m (39 in) wide. A bare number here is in inches; for millimeters type 1285 mm, or set the units to metric. (product, plankLength)',
    'room: Plank width: 192 is more than any plank has: at most 8 m (26 ft) long and 1 m (39 in) wide. A bare number here is in inches; for millimeters type 192 mm, or set the units to metric. (product, plankWidth)',
  ]);
});

test('no words of the system or of the language reach a person, whatever stands in a file', () => {
  const rooms = join(__dirname, '../rooms');
  const name = readdirSync(rooms).find((file) => file === 'two rooms end to end.json') ?? '';
  cpSync(join(rooms, name), join(folder, 'whole.json'));
  const whole = readFileSync(join(folder, 'whole.json'), 'utf8');
  const odd: readonly unknown[] = [null, '', 0, -1, 1e300, true, [], {}, 'x', [1, 2, 3, 4, 5]];
  const paths = pathsOf(JSON.parse(whole)).filter(([first]) => first !== 'expect');
  paths.forEach((path, i) => {
    const content = JSON.parse(whole);
    const last = path.length - 1;
    const owner = path.slice(0, last).reduce((part, key) => part[key] as Parts, content as Parts);
    owner[path[last]] = odd[i % odd.length];
    put(`${i}.json`, content);
  });
  const { lines, floors } = plan();
  expect(paths.length).toBeGreaterThan(30);
  // One that is not laid as one floor any more gives two.
  expect(Object.keys(floors).length).toBeGreaterThanOrEqual(paths.length);
  const said = [...lines, ...Object.values(floors).flatMap(({ notes = [] }) => notes)];
  for (const line of said) expect(line).not.toMatch(/NaN|undefined|Internal|TypeError|destructure|E[A-Z]{5}|\[object/);
});

type Parts = Record<string, unknown>;

function pathsOf(value: unknown): readonly (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => [[key], ...pathsOf(part).map((rest) => [key, ...rest])]);
}
