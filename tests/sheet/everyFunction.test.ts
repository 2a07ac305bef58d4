/** What every custom function owes: help that is true, and a sentence for whatever cannot be used. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import * as functions from '../../src/sheet/functions';
import { column, type Kind, SAMPLES } from '../support/functionSamples';
import { refusalOf } from '../support/refusal';
import { expectSentence } from '../support/sentence';

type Call = (...cells: unknown[]) => unknown;

const offered: Readonly<Record<string, unknown>> = { ...functions };
/** Those that are offered; one without a sample is asked for at the end. */
const names = Object.keys(offered).filter((name) => Object.hasOwn(SAMPLES, name));
const callOf = (name: string) => offered[name] as Call;
const goodCells = (name: string) => SAMPLES[name].arguments.map(({ good }) => good);

/** A cell put in the place of an argument: for a list or walls, in its first row. */
function withCell(name: string, index: number, cell: unknown): unknown[] {
  const cells = goodCells(name);
  const { kind, good } = SAMPLES[name].arguments[index];
  if (kind === 'list') cells[index] = [[cell], ...(good as unknown[]).slice(1)];
  else if (kind === 'walls') cells[index] = [[cell, 'R'], ...(good as unknown[]).slice(1)];
  else if (kind === 'rules') cells[index] = [['kerf', cell]];
  else cells[index] = cell;
  return cells;
}

describe.each(names)('%s', (name) => {
  const call = callOf(name);
  const given = SAMPLES[name].arguments;

  test('answers its sample with numbers or text', () => {
    const answer = call(...goodCells(name));
    const cells = (Array.isArray(answer) ? answer : [[answer]]).flat();
    expect(cells.length).toBeGreaterThan(0);
    for (const cell of cells) {
      expect(typeof cell === 'string' || Number.isFinite(cell)).toBe(true);
    }
  });

  test('takes what is left out as blank, in every way a sheet leaves it out', () => {
    const required = given.filter(({ blank }) => !blank).map(({ good }) => good);
    const answer = call(...required);
    for (const blank of ['', null, undefined, '  ', [['']]]) {
      expect(call(...given.map((argument) => (argument.blank ? blank : argument.good)))).toEqual(answer);
    }
  });

  const bad: readonly (readonly [string, unknown, readonly Kind[]])[] = [
    [
      'text',
      'twelve',
      [
        'count',
        'length',
        'gap',
        'area',
        'percentage',
        'species',
        'degrees',
        'any length',
        'list',
        'walls',
        'rules',
        'units',
      ],
    ],
    [
      'a unit of something else',
      '12 kg',
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'TRUE',
      true,
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'an error',
      '#DIV/0!',
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'a date',
      new Date(2026, 4, 8),
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'a date from another world',
      runInNewContext('new Date(2026, 4, 8)'),
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'list', 'walls', 'rules'],
    ],
    [
      'a negative number',
      -1,
      ['count', 'length', 'gap', 'area', 'percentage', 'species', 'list', 'walls', 'rules', 'units'],
    ],
    ['0', 0, ['length', 'area', 'species', 'list', 'walls', 'units']],
    [
      'none',
      Number.POSITIVE_INFINITY,
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'no number',
      Number.NaN,
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'a huge number',
      1e300,
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
    [
      'a big number',
      1e9,
      ['length', 'gap', 'area', 'percentage', 'species', 'degrees', 'any length', 'list', 'walls', 'rules', 'units'],
    ],
  ];

  test.each(bad)('has a sentence for %s in any argument', (_, cell, kinds) => {
    given.forEach(({ kind, name: argument }, index) => {
      if (!kinds.includes(kind)) return;
      const sentence = refusalOf(() => call(...withCell(name, index, cell)));
      expectSentence(sentence);
      // It says which argument, or which wall.
      expect(sentence).toMatch(kind === 'walls' ? /^Wall 1/ : new RegExp(`^${argument}`));
    });
  });

  test('says that a date is a date', () => {
    given.forEach(({ kind }, index) => {
      if (!['length', 'gap', 'any length', 'list', 'walls'].includes(kind)) return;
      const sentence = refusalOf(() => call(...withCell(name, index, new Date(2026, 4, 8))));
      expect(sentence).toContain('is a date');
      expect(sentence).toContain('5/8"');
    });
  });

  test('has a sentence for a blank where something must be', () => {
    given.forEach(({ blank, name: argument }, index) => {
      if (blank) return;
      const cells = goodCells(name);
      cells[index] = '';
      const sentence = refusalOf(() => call(...cells));
      expectSentence(sentence);
      expect(sentence).toMatch(new RegExp(`^${argument} is blank`));
    });
  });

  test('has a sentence for ranges that do not belong there', () => {
    const single = given.findIndex(({ kind }) => kind === 'length');
    if (SAMPLES[name].byCell) {
      const singles = given.flatMap(({ kind, blank }, index) => (kind === 'units' || blank ? [] : [index]));
      if (singles.length < 2) return;
      const cells = goodCells(name);
      cells[singles[0]] = column(1, 2, 3).map(() => [given[singles[0]].good]);
      cells[singles[1]] = column(1, 2).map(() => [given[singles[1]].good]);
      expect(refusalOf(() => call(...cells))).toContain('Give ranges of the same size');
      return;
    }
    const list = given.findIndex(({ kind }) => kind === 'list');
    const cells = goodCells(name);
    if (list >= 0)
      cells[list] = [
        [12, 12],
        [12, 12],
      ];
    else if (single >= 0 && name.startsWith('PLANK_CUTS')) cells[single] = column(12, 12);
    else return;
    expectSentence(refusalOf(() => call(...cells)));
  });

  test('takes 100,000 cells in one call', () => {
    const cells = goodCells(name);
    const big = given.findIndex(({ kind }) => kind === 'list');
    if (SAMPLES[name].byCell) {
      const one = call(...cells);
      // Laying out strips takes its time: there a sheet of mostly blank rows must do.
      const filled = name === 'PLANK_UNDERLAY' ? 50 : 2;
      cells[0] = Array.from({ length: 100_000 }, (_, row) => [row % filled === 0 ? cells[0] : '']);
      const answer = call(...cells) as unknown[][];
      expect(answer.length).toBe(100_000 - filled + 1);
      expect(answer[0]).toEqual(Array.isArray(one) ? one[0] : [one]);
      expect(answer[1].every((cell) => cell === '')).toBe(true);
      expect(answer[answer.length - 1]).toEqual(answer[0]);
    } else if (big >= 0) {
      cells[big] = Array.from({ length: 100_000 }, () => [(cells[big] as unknown[][])[0][0]]);
      if (name === 'PLANK_STAGGER') expect(call(...cells)).toHaveLength(100_000);
      else expectSentence(refusalOf(() => call(...cells)));
    } else if (given[0].kind === 'walls') {
      cells[0] = Array.from({ length: 100_000 }, () => [1, 'R']);
      expectSentence(refusalOf(() => call(...cells)));
    }
  });

  test('passes over 100,000 blank rows at the end of a range', () => {
    const cells = goodCells(name);
    const first = Array.isArray(cells[0]) ? (cells[0] as unknown[][]) : [[cells[0]]];
    const blanks = Array.from({ length: 100_000 }, () => first[0].map(() => ''));
    if (name === 'PLANK_CUTS') {
      expect(refusalOf(() => call([...first, ...blanks], ...cells.slice(1)))).toContain('Give a single cell');
      return;
    }
    const answer = call(...cells);
    const lines = Array.isArray(answer) ? answer : [[answer]];
    const open = call([...first, ...blanks], ...cells.slice(1));
    expect(Array.isArray(open) ? open : [[open]]).toEqual(lines);
  });
});

describe('the help a person reads while typing', () => {
  const sheetFolder = join(import.meta.dirname, '../../src/sheet');
  const sources = readdirSync(sheetFolder)
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(sheetFolder, file), 'utf8'))
    .join('\n');

  /** The block directly before a function, without its stars, and its parameters. */
  function helpOf(name: string): { readonly text: string; readonly parameters: readonly string[] } {
    const found = new RegExp(`(/\\*\\*(?:[^*]|\\*(?!/))*\\*/)\\s*export function ${name}\\(([^)]*)\\)`).exec(sources);
    if (!found) throw new Error(`${name} has no help directly before it`);
    const parameters = [...found[2].matchAll(/(\w+)\??:/g)].map((match) => match[1]);
    return { text: found[1].replace(/^\s*\*? ?|\/\*\*|\*\/$/gm, ''), parameters };
  }

  test('every PLANK_ function of the sources is offered, and has a sample here', () => {
    const declared = [...sources.matchAll(/export function (PLANK_\w+)\(/g)].map((match) => match[1]).sort();
    expect(Object.keys(offered).sort()).toEqual(declared);
    expect([...names].sort()).toEqual(declared);
    expect(Object.keys(SAMPLES)).toEqual(expect.arrayContaining(declared));
  });

  test.each(names)('%s: documented, with units, defaults and an example', (name) => {
    const { text, parameters } = helpOf(name);
    expect(text).toContain('@customfunction');
    expect(text).toMatch(/@return \{(number|string|range)\} ./);
    expect(text).toMatch(/Example: PLANK_/);
    expect(text).not.toMatch(/[<>`]/);
    expect(parameters).toEqual(SAMPLES[name].arguments.map((argument) => argument.name));
    for (const { name: argument, blank } of SAMPLES[name].arguments) {
      const line = new RegExp(`@param \\{[a-z|]+\\} ${blank ? `\\[${argument}\\]` : argument} (.+)`).exec(text);
      expect(line?.[1], `${name} ${argument}`).toMatch(/^[A-Z"].*\.$/);
      if (blank && !['rules'].includes(argument)) expect(line?.[1]).toMatch(/Blank|blank/);
    }
  });

  /** `PLANK_AREA("12' 6""", 10) is 125.` -> the call as a spreadsheet reads it, and what it is said to be. */
  const examples = names.flatMap((name) =>
    [...helpOf(name).text.matchAll(/(PLANK_\w+)\(([^()]*)\) is (.+?)(?=\.\s|\.$|:|, from| when| inches| for)/g)].map(
      (match) => ({
        name: match[1],
        typed: match[2],
        said: match[3],
      }),
    ),
  );
  const worked = examples.filter(({ typed }) => !/[A-Z]\d+:/.test(typed));

  test.each(worked)('$name($typed) is $said, as the help says', ({ name, typed, said }) => {
    const cells = [...typed.matchAll(/"((?:[^"]|"")*)"|([\d.]+)(%?)/g)].map(([, text, number, percent]) =>
      text === undefined ? Number(number) / (percent ? 100 : 1) : text.replace(/""/g, '"'),
    );
    const answer = [callOf(name)(...cells)].flat(2);
    const shown = answer.map((cell) =>
      typeof cell === 'number' ? String(Number(cell.toFixed(said === '9.2' ? 1 : 10))) : cell,
    );
    expect(shown.join(', ')).toBe(said);
  });

  test('most functions have an example that could be worked', () => {
    expect(new Set(worked.map(({ name }) => name)).size).toBeGreaterThanOrEqual(9);
  });
});
