import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WrittenPiece } from '../../src/workbook/jobFiles';
import { planFiles, readPlanRequest } from '../../src/workbook/planFiles';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plan-files-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** A room of three rows of 3 m from planks of 1.2 m: 9 m and kerfs need 8 planks by length alone. */
const ROOM = {
  id: 'three rows',
  L: 1200,
  W: 190,
  k: 3,
  m: 200,
  S: 200,
  T: 50,
  rows: [0, 1, 2].map(() => ({ room: 0, width: 190, runs: [{ x: 0, R: 3000 }] })),
};

interface Run {
  readonly lines: readonly string[];
  readonly code: number;
}

function run(...args: string[]): Run {
  const lines: string[] = [];
  const code = planFiles(args, (line) => lines.push(line), folder);
  return { lines, code };
}

function jobsFile(name: string, content: unknown): string {
  writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return name;
}

interface PlansFile {
  readonly plans: Readonly<
    Record<
      string,
      {
        readonly rows: readonly { readonly runs: readonly (readonly WrittenPiece[])[] }[];
        readonly bound: number;
        readonly stop: string;
        readonly ms: number;
      }
    >
  >;
}

function plansIn(name: string): PlansFile {
  return JSON.parse(readFileSync(join(folder, name), 'utf8'));
}

describe('A file of jobs becomes a file of plans', () => {
  test('pieces that are strips are marked as twins of the rows they are ripped from', () => {
    // Rows of two planks, the first and the last of half a width: whole strips of the first make the last.
    const rows = [0, 1, 2].map((i) => ({ room: 0, width: i === 1 ? 190 : 90, runs: [{ x: 0, R: 2400 }] }));
    const room = { ...ROOM, S: 0, rows, twins: [[0, 2]] };
    run('--cases', jobsFile('twins.json', { instances: [room] }), '--out', 'twins-out.json');
    const [first, , last] = plansIn('twins-out.json').plans['three rows'].rows;
    expect(first.runs[0].some((piece) => 'twin' in piece)).toBe(false);
    expect(last.runs[0].map((piece) => piece.twin)).toEqual(last.runs[0].map(() => true));
    expect(last.runs[0].some((piece) => 'isStrip' in piece)).toBe(false);
  });

  test('every run is filled with pieces of the schema, and the plan says what is proved', () => {
    const done = run('--cases', jobsFile('jobs.json', { instances: [ROOM] }), '--out', 'plans.json');
    expect(done.code).toBe(0);
    const plan = plansIn('plans.json').plans['three rows'];
    expect(plan.rows).toHaveLength(3);
    for (const row of plan.rows) {
      expect(row.runs[0].reduce((sum, piece) => sum + piece.length, 0)).toBe(3000);
      for (const piece of row.runs[0]) expect(['left', 'right', 'middle', 'whole']).toContain(piece.from);
    }
    const planks = new Set(plan.rows.flatMap((row) => row.runs[0].map((piece) => piece.plank))).size;
    expect(planks).toBeGreaterThanOrEqual(8);
    expect(plan.bound).toBeLessThanOrEqual(planks);
    expect(['proved fewest', 'step limit']).toContain(plan.stop);
    expect(plan.ms).toBeGreaterThanOrEqual(0);
    expect(done.lines.join('\n')).toContain('1 job planned');
  });

  test('what else an instance carries is left alone, and the folder of the plans is made', () => {
    const jobs = jobsFile('more.json', { schema: {}, instances: [{ ...ROOM, category: 'rect', ref: { best: 8 } }] });
    expect(run('--cases', jobs, '--out', 'new/plans.json', '--effort', '0.5').code).toBe(0);
    expect(Object.keys(plansIn('new/plans.json').plans)).toEqual(['three rows']);
  });

  // By hand: 1900 is 1000 + 900, the least stagger 200 away from a joint at 700; the offcut of 1000 has its right end, so one
  // plank is needed for the last piece; none is in hand.
  test('the rest of a floor is planned on from what lies and what is in hand', () => {
    const rest = {
      ...ROOM,
      rows: [{ room: 0, width: 190, runs: [{ x: 0, R: 1900 }] }],
      before: { joints: [700], joints2: [] },
      stock: [{ length: 1000, ends: 'right' }],
      whole: 0,
    };
    expect(run('--cases', jobsFile('rest.json', { instances: [rest] }), '--out', 'rest-plan.json').code).toBe(0);
    const plan = Object.values(plansIn('rest-plan.json').plans)[0] as unknown as Record<string, unknown>;
    expect(plan).toMatchObject({ plankCount: 1, short: 1, bound: 1, stop: 'proved fewest' });
    const pieces = (plan.rows as { runs: { length: number; stock?: number; plank?: number }[][] }[])[0].runs[0];
    expect(pieces.map(({ stock, plank }) => [stock, plank])).toEqual([
      [0, undefined],
      [undefined, 0],
    ]);
    expect(Math.abs(pieces[0].length - 700)).toBeGreaterThanOrEqual(200);
  });

  test.each([
    ['before', { joints: 'none' }, /needs "before" to be/],
    ['before', [{ joints: [1] }], /needs "before" to be/],
    ['stock', [{ length: 0, ends: 'right' }], /needs each of "stock"/],
    ['stock', [{ length: 5, ends: 'up' }], /needs each of "stock"/],
    ['whole', -1, /needs "whole", a whole number of at least 0/],
    ['stok', [], /has no field "stok"; the nearest is "stock"/],
  ])('%s that cannot be is told', (key, value, sentence) => {
    const given = jobsFile('bad.json', { instances: [{ ...ROOM, [key]: value }] });
    expect(run('--cases', given, '--out', 'bad-plan.json').lines.join()).toMatch(sentence);
  });

  test('play is kept, none where it is missing: 597 and 600 and a kerf fill a plank of 1200', () => {
    const rows = [597, 600].map((R) => ({ room: 0, width: 190, runs: [{ x: 0, R }] }));
    const instances = [0, 1, undefined].map((play) => ({ ...ROOM, id: `play ${play}`, play, rows }));
    expect(run('--cases', jobsFile('play.json', { instances }), '--out', 'play-plans.json').code).toBe(0);
    const planks = Object.entries(plansIn('play-plans.json').plans).map(([id, plan]) => [
      id,
      new Set(plan.rows.flatMap((row) => row.runs[0].map((piece) => piece.plank))).size,
    ]);
    expect(planks).toEqual([
      ['play 0', 1],
      ['play 1', 2],
      ['play undefined', 1],
    ]);
    const below = { ...ROOM, play: -1 };
    expect(run('--cases', jobsFile('below.json', { instances: [below] }), '--out', 'below-plans.json').lines).toContain(
      'Job "three rows" needs "play", a whole number of at least 0, found -1.',
    );
  });

  test('a job that cannot be read is told, and the others are planned', () => {
    const instances = [{ ...ROOM, id: 'no kerf', k: undefined }, ROOM, { ...ROOM, id: 'half', L: 1200.5 }, ROOM];
    const done = run('--cases', jobsFile('mixed.json', { instances }), '--out', 'mixed-plans.json');
    expect(done.code).toBe(1);
    expect(done.lines.slice(0, 3)).toEqual([
      'Job "no kerf" needs "k", a whole number of at least 0, found none.',
      'Job "half" needs "L", a whole number of at least 1, found 1200.5.',
      'Job "three rows" has the same "id" as one before it.',
    ]);
    expect(Object.keys(plansIn('mixed-plans.json').plans)).toEqual(['three rows']);
  });

  test('a job that no plan can meet is planned as near as can be, and said', () => {
    const narrow = { ...ROOM, id: 'short runs', m: 800, rows: [{ room: 0, width: 190, runs: [{ x: 0, R: 1300 }] }] };
    const done = run('--cases', jobsFile('narrow.json', { instances: [narrow] }), '--out', 'narrow-plans.json');
    expect(done.code).toBe(0);
    expect(done.lines[0]).toMatch(/^Job "short runs": no plan keeps every rule; .* the minimum piece in row 1 /);
  });
});

/** The room without one field, and with others. */
function without(key: string, others: object): object {
  const rest = Object.fromEntries(Object.entries(ROOM).filter(([name]) => name !== key));
  return { ...rest, ...others };
}

describe('What is wrong with a job is said in words', () => {
  test.each<[string, unknown, string]>([
    ['a row without runs', { ...ROOM, rows: [{ room: 0 }] }, 'row 1 needs "runs", a list'],
    ['a run of no length', { ...ROOM, rows: [{ room: 0, runs: [{ x: 0, R: 0 }] }] }, 'row 1 needs "R"'],
    [
      'a run without a place',
      { ...ROOM, rows: [{ room: 0, runs: [{ R: 5 }] }] },
      'row 1 needs "x", a whole number, found none',
    ],
    ['no rows', { ...ROOM, rows: [] }, 'needs "rows", a list'],
    [
      'a pair of rows that is not there',
      { ...ROOM, twins: [[0, 3]] },
      'needs "twins", a list of [first row, last row] from 0 to 2',
    ],
    [
      'rooms mixed',
      { ...ROOM, rows: [0, 1, 0].map((room) => ({ room, runs: [{ x: 0, R: 9 }] })) },
      'has other rows between those of room 0',
    ],
    ['a field in a small letter', without('T', { t: 50 }), 'has no field "t"; the nearest is "T"'],
    ['a field mistyped', without('twins', { twin: [[0, 2]] }), 'has no field "twin"; the nearest is "twins"'],
    [
      'a field of a row mistyped',
      { ...ROOM, rows: [{ room: 0, with: 90, runs: [{ x: 0, R: 9 }] }] },
      'row 1 has no field "with"; the nearest is "width"',
    ],
    ['no name', { ...ROOM, id: undefined }, 'Job 1 of the file has no "id" text'],
    ['not an object', 7, 'is not an object'],
    ['a great deal', { id: 'all' }, '; and 3 more.'],
    // They would be planned without end, and run out of memory.
    [
      'more planks than any floor has',
      { ...ROOM, L: 1, rows: [{ room: 0, runs: [{ x: 0, R: 9_000_000_000_000 }] }] },
      'takes about 9000000000000 planks; at most 50000 are planned',
    ],
    ['a plank of more units than any has', { ...ROOM, L: 1e9 }, 'has planks of 1000000000 units'],
  ])('%s', (_, instance, sentence) => {
    const done = run('--cases', jobsFile('wrong.json', { instances: [instance] }), '--out', 'wrong-plans.json');
    expect(done.code).toBe(1);
    expect(done.lines[0]).toContain(sentence);
  });
});

describe('What cannot be read is told in one sentence', () => {
  test.each<[string, string, string]>([
    ['text that is no JSON', '{ "instances": [', 'The file of jobs is not JSON: '],
    ['a list instead of an object', '[]', 'The file of jobs has no list "instances"'],
    ['no instances', '{ "instances": [] }', 'The list "instances" of the file of jobs is empty.'],
  ])('%s', (_, text, sentence) => {
    const done = run('--cases', jobsFile('bad.json', text), '--out', 'bad-plans.json');
    expect([done.code, done.lines.length]).toEqual([1, 1]);
    expect(done.lines[0]).toContain(sentence);
  });

  test('a file that is not there, and a folder in its place', () => {
    expect(run('--cases', 'nowhere.json', '--out', 'x.json').lines[0]).toMatch(
      /nowhere\.json \(there is no such file\)/,
    );
    mkdirSync(join(folder, 'folder'));
    expect(run('--cases', 'folder', '--out', 'x.json').lines[0]).toMatch(/\(it is a folder\)/);
    const jobs = jobsFile('good.json', { instances: [ROOM] });
    expect(run('--cases', jobs, '--out', 'folder').lines.at(-1)).toMatch(
      /plans cannot be written: .*\(it is a folder\)/,
    );
  });
});

describe('Arguments', () => {
  test('are read in any order', () => {
    const request = { source: { kind: 'cases', path: 'a.json' }, out: 'b.json', effort: 4 };
    expect(readPlanRequest(['--effort', '4', '--out', 'b.json', '--cases', 'a.json'])).toEqual(request);
  });

  test.each<[string, string[], string]>([
    ['none', [], '--cases is missing'],
    ['no file to write', ['--cases', 'a.json'], '--out is missing'],
    ['an option without its value', ['--cases', '--out', 'b.json'], '--cases needs the file of jobs to plan'],
    ['a last option without its value', ['--cases', 'a.json', '--out'], '--out needs the file to write the plans to'],
    ['an unknown option', ['--case', 'a.json'], 'There is no option "--case"'],
    ['an option twice', ['--out', 'a', '--out', 'b'], '--out is given twice'],
    ['an effort of none', ['--cases', 'a', '--out', 'b', '--effort', '0'], '--effort is "0"'],
    ['an effort in words', ['--cases', 'a', '--out', 'b', '--effort', 'much'], '--effort is "much"'],
  ])('%s: a sentence that says what is wanted', (_, args, sentence) => {
    expect(() => readPlanRequest(args)).toThrow(sentence);
  });
});
