/**
 * README.md and DEVELOPERS.md against the program. Their tables and examples are read and tried out, so that what they
 * say stays true: change a number there, or what the program answers, and a test here fails.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checkCutPlan } from '../src/cutting/plan/ledger';
import { planCuts } from '../src/cutting/search';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_METRE, type Ticks } from '../src/geometry/length';
import { RULES, RUN_LIMITS, type Rule } from '../src/layout/rules';
import type { RoomEntry, Typed } from '../src/takeoff/entry';
import { SHAPE_KIND_FIELDS } from '../src/takeoff/entryFields';
import type { Takeoff } from '../src/takeoff/result';
import { takeoff } from '../src/takeoff/takeoff';
import { KEPT_WORDS } from '../src/takeoff/telling/keptWords';
import { countryWords } from '../src/takeoff/text/countryWords';
import { lengthText, readLength } from '../src/takeoff/text/lengthText';
import { findCellFunctions } from '../src/workbook/customFunctions';
import { readJobFile } from '../src/workbook/jobFiles';
import { addOnOf, createNodeWorkbook } from '../src/workbook/nodeWorkbook';
import { readRoomFile } from '../src/workbook/roomFiles';
import { addOnFiles } from './support/addOn';
import { plainRoom } from './support/roomEntries';

const root = join(__dirname, '..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const developers = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const files = await addOnFiles();

describe('the walk through one room', () => {
  const typed = new Map(headingAfter('typed').map((field, i) => [field, plain(tableAfter('typed')[0][i])]));
  const planned = takeoffOf(walkedRoom(typed));
  const found = foundIn(planned);

  test.each(tableAfter('found').map(([name, value]) => [name, value]))('%s is %s', (name, value) => {
    expect(value).toBe(found[name]);
  });

  test('leaves no number of the takeoff untold', () => {
    expect(tableAfter('found').map(([name]) => name)).toEqual(Object.keys(found));
  });

  // The sums of the last column, in plain inches and with none of the program's own arithmetic.
  test('comes to the same by hand', () => {
    const [length, width, plankLength, plankWidth, gap, inBox] = [160, 129, 48, 7.5, 3 / 8, 10];
    const [run, depth] = [length - 2 * gap, width - 2 * gap];
    const fullRows = Math.floor(depth / plankWidth);
    const rest = depth - fullRows * plankWidth;
    const shared = (rest + plankWidth) / 2;
    const planks = Math.ceil(((fullRows + 1) * run) / plankLength);
    const [room, floor, bought] = [length * width, run * depth, planks * plankLength * plankWidth].map((a) => a / 144);
    const tenPercent = 1.1 * room;
    const [tenPercentPlanks, plankArea] = [Math.ceil((tenPercent * planks) / bought), bought / planks];
    const sums = new Map(tableAfter('found').map(([name, value, sum]) => [name, `${value}; ${sum}`]));
    const inches = (size: number) => lengthText(size * TICKS_PER_INCH, 'us', 'piece');
    const told: Readonly<Record<string, readonly string[]>> = {
      'Room, sq ft': [room.toFixed(2), inches(length), inches(width)],
      'Length of every row': [inches(run), inches(length), inches(gap)],
      Rows: [
        `${fullRows + 1};`,
        inches(width),
        inches(depth),
        `${fullRows} planks of ${inches(plankWidth)}`,
        inches(rest),
      ],
      'First row': [inches(shared), `${inches(rest)} is under`, `(${inches(rest)} + ${inches(plankWidth)}) / 2`],
      'Last row': [inches(shared)],
      Planks: [`${planks};`, `${fullRows + 1} rows x ${inches(run)}`, inches((fullRows + 1) * run)],
      Boxes: [`${Math.ceil(planks / inBox)};`, `${planks} planks`],
      Waste: [
        `${(100 * (1 - floor / bought)).toFixed(1)}%`,
        `${inches(run)} x ${inches(depth)}`,
        floor.toFixed(2),
        `${bought} bought`,
      ],
      'Area + 10 %, planks': [
        `${tenPercentPlanks};`,
        tenPercent.toFixed(2),
        `${plankArea === 2.5 ? '2 1/2' : ''} sq ft`,
      ],
      'Area + 10 %, boxes': [`${Math.ceil(tenPercentPlanks / inBox)};`],
    };
    expect(sums.get('Planks')).toContain(`${planks - 1} planks are only ${inches((planks - 1) * plankLength)}`);
    for (const [name, texts] of Object.entries(told)) for (const text of texts) expect(sums.get(name)).toContain(text);
  });

  test('begins its cut list as the program does', () => {
    const lines = tableAfter('cut list');
    expect(lines.length).toBeGreaterThanOrEqual(8);
    const pieces = planned.pieces.slice(0, lines.length).map((piece) => {
      const [length, width] = [piece.length, piece.widthLeft].map((ticks) => lengthText(ticks, 'us', 'piece'));
      return [piece.label, length, width, String(piece.plankNumber), KEPT_WORDS[piece.keeps], piece.rest];
    });
    expect(inReadme(pieces)).toBe(inReadme(lines));
  });
});

describe('an example of a function', () => {
  const workbook = createNodeWorkbook(addOnOf(files));
  const sheet = workbook.spreadsheetApp.getActiveSheet();
  const [[, ...firstLine], ...lines] = [headingAfter('sheet'), ...tableAfter('sheet')];
  const cells = lines.map(([, ...row]) => firstLine.map((_, i) => numberOrText(row[i] ?? '')));
  sheet.getRange(1, 1, cells.length, firstLine.length).setValues(cells);

  test.each(examplesOf(readme))('$formula', ({ formula, answer }) => {
    const [rowCount, columnCount] = [answer.length + 1, Math.max(...answer.map((row) => row.length)) + 1];
    const first = sheet.getRange(1, firstLine.length + 2);
    first.setFormula(inEngine(formula));
    workbook.engine.flush();
    const shown = sheet.getRange(1, firstLine.length + 2, rowCount, columnCount).getValues();
    first.clear();
    workbook.engine.flush();
    // One row and one column more than the example has, so that a larger answer is not taken for it.
    const toldRows = Array.from({ length: rowCount }, (_, r) => rowOf(columnCount, (c) => answer[r]?.[c] ?? ''));
    const shownRows = shown.map((row, r) => rowOf(columnCount, (c) => asPrecise(row[c], toldRows[r][c])));
    expect(inReadme(shownRows)).toBe(inReadme(toldRows));
  });

  test('stands under the heading of every function, with its arguments in order', () => {
    const headings = [...readme.matchAll(/^### (PLANK_\w+)\((.*)\)\n([\s\S]*?)(?=^##)/gm)];
    const told = headings.map(([, name, list]) => `${name}(${list})`);
    const shown = findCellFunctions(files['Code.js']).filter(({ isHidden }) => !isHidden);
    const functions = shown.map(
      ({ name, parameters }) =>
        `${name}(${parameters.map((parameter) => (parameter.optional ? `[${parameter.name}]` : parameter.name)).join(', ')})`,
    );
    expect([...told].sort()).toEqual([...functions].sort());
    const without = headings.filter(
      ([, name, , text]) => !examplesOf(text).some(({ formula }) => formula.includes(name)),
    );
    expect(without.map(([, name]) => name)).toEqual([]);
  });
});

describe('a length as it may be written', () => {
  const pairs = tableAfter('lengths').flatMap(([a, inches, b, inchesToo]) => [
    [a, inches],
    [b, inchesToo],
  ]);

  test.each(pairs)('%s is %s inches', (written, inches) => {
    const read = readLength((/`(.+?)`/.exec(written) as RegExpExecArray)[1], 'plank', 'us');
    expect(read).toEqual({ ok: true, ticks: Math.round(Number(inches) * TICKS_PER_INCH) });
  });
});

describe('the table of rules', () => {
  const rules: readonly Rule[] = RULES;
  const told = new Map(tableAfter('rules').map(([name, us, metric, source]) => [plain(name), { us, metric, source }]));
  const named = rules.flatMap((rule) => (rule.inRange ? [[rule.inRange, rule] as const] : []));

  test('names them all, in order', () => {
    expect([...told.keys()]).toEqual(named.map(([name]) => name));
  });

  test.each(named)('has %s with its defaults, and where they come from', (name, { blank, source }) => {
    const said = told.get(name);
    expect(said?.source).toBe(source);
    if (typeof blank === 'number') expect([said?.us, said?.metric]).toEqual([String(blank), String(blank)]);
    if (typeof blank !== 'object') return;
    const [us, metric] = blank;
    expect([said?.us, said?.metric]).toEqual([lengthText(us, 'us', 'piece'), lengthText(metric, 'metric', 'piece')]);
  });

  test('has the longest floors', () => {
    const shown = (limit: Ticks | null) => {
      if (limit === null) return 'no limit';
      return limit % TICKS_PER_FOOT === 0 ? `${limit / TICKS_PER_FOOT}'` : `${limit / TICKS_PER_METRE} m`;
    };
    const limits = Object.entries(RUN_LIMITS).map(([kind, { along, across }]) => [kind, shown(along), shown(across)]);
    expect(tableAfter('run limits').map((row) => row.slice(0, 3))).toEqual(limits);
  });
});

const sourceLines = sourceTexts(join(root, 'src')).flatMap((text) => text.split('\n'));

test('the sidebar has every choice and button that is told', () => {
  const [, sidebar] = /^## The sidebar\n([\s\S]*?)^## /m.exec(readme) as RegExpExecArray;
  const told = [...sidebar.matchAll(/\*\*[^*]+\*\*|\*([^*]+)\*/g)]
    .map(([, words = '']) => words.replace(/\s+/g, ' '))
    .filter((words) => words !== '' && !words.includes('>'));
  expect(told.length).toBeGreaterThan(10);
  // As a house in feet and inches shows them.
  const shown = [...sourceLines, ...sourceLines.map((line) => countryWords(line, 'us'))];
  expect(told.filter((words) => !shown.some((line) => line.includes(words)))).toEqual([]);
});

describe('a message that is explained', () => {
  const told = tableAfter('messages').flatMap(([messages]) =>
    [...messages.matchAll(/`(.+?)`/g)].map(([, text]) => text),
  );

  test.each(told)('%s is one the program gives', (text) => {
    // All its parts in one line of the program, in order; names and numbers of the person's stand between them.
    const parts = text.split('…').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
    const pattern = new RegExp(parts.join('.+'));
    const longest = text.split('…').reduce((a, b) => (a.length < b.length ? b : a));
    expect(text).toMatch(/\w{4}/);
    expect(sourceLines.some((line) => line.includes(longest) && pattern.test(line))).toBe(true);
  });
});

describe('a way to measure a room', () => {
  test.each(SHAPE_KIND_FIELDS.fields[0].choices.map(([kind, words]) => [words, kind]))(
    '%s is told in the README, and its room file in the guide',
    (words, kind) => {
      expect(readme.replace(/\s+/g, ' ')).toContain(`*${words}*`);
      expect(developers.split('\n').find((line) => line.startsWith('| `shape` |'))).toContain(`\`${kind}\``);
    },
  );
});

test('every npm command that is told is there', () => {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: object };
  const told = [...`${readme}${developers}`.matchAll(/`npm (?:run )?(\w+)/g)].map(([, name]) => name);
  expect(new Set(told.filter((name) => name !== 'ci' && !(name in scripts)))).toEqual(new Set());
  expect(told.length).toBeGreaterThan(5);
});

test('every file and folder that is told is there', () => {
  const named = [...`${readme}${developers}`.matchAll(/`((?:src|tests)\/[\w./-]*|\w+\/\w+\.ts)`/g)].map(
    ([, path]) => path,
  );
  const isThere = (path: string) => existsSync(join(root, path)) || existsSync(join(root, 'src', path));
  expect(named.filter((path) => !isThere(path))).toEqual([]);
  expect(named.length).toBeGreaterThan(20);
});

describe('the developers’ guide', () => {
  const examples = [...developers.matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) => text);

  test('has a room file that is planned as it says', () => {
    const file = JSON.parse(examples.find((text) => text.includes('"entry"')) as string);
    const { entries, problems } = readRoomFile(file, 'example');
    expect(problems).toEqual([]);
    const planned = takeoffOf(entries[0]);
    expect(file.expect).toEqual({
      rows: planned.summary.rowCount,
      planks: planned.summary.plankCount,
      firstRow: planned.summary.firstRowWidth / 640,
      lastRow: planned.summary.lastRowWidth / 640,
    });
  });

  test('has a job file that is planned', () => {
    const { jobs, problems } = readJobFile(examples.find((text) => text.includes('"instances"')) as string);
    expect(problems).toEqual([]);
    expect(jobs.flatMap(({ job }) => checkCutPlan(job, planCuts(job)))).toEqual([]);
  });
});

interface Example {
  readonly formula: string;
  readonly answer: readonly (readonly string[])[];
}

/** `=FORMULA -> answer`, cells parted by bars; lines without a formula go on with the answer above. */
function examplesOf(text: string): readonly Example[] {
  const blocks = [...text.matchAll(/```formulas\n([\s\S]*?)```/g)].map(([, block]) => block);
  return blocks.flatMap((block) =>
    block
      .split(/^(?==)/m)
      .filter((example) => example.trim() !== '')
      .map((example) => {
        const [formula, answer] = example.split(/\s+-> /);
        return { formula, answer: answer.trimEnd().split('\n').map(cellsOf) };
      }),
  );
}

function cellsOf(line: string): readonly string[] {
  return line.split('|').map((cell) => cell.trim());
}

function rowOf(columnCount: number, cell: (column: number) => string): readonly string[] {
  return Array.from({ length: columnCount }, (_, column) => cell(column));
}

/** Rows as the README writes them: what a failed test shows can be copied there, once it is known to be right. */
function inReadme(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `| ${row.join(' | ')} |`.replaceAll('|  |', '| |')).join('\n');
}

/** Rows of the table that follows the comment `<!-- mark... -->`, without its heading; code marks stay. */
function tableAfter(mark: string): readonly (readonly string[])[] {
  return linesAfter(mark).slice(2);
}

function headingAfter(mark: string): readonly string[] {
  return linesAfter(mark)[0];
}

function linesAfter(mark: string): readonly (readonly string[])[] {
  const table = new RegExp(`<!-- ${mark}\\b.*-->\\n((?:\\|.*\\|\\n)+)`).exec(readme);
  if (!table) throw new Error(`README.md has no table after <!-- ${mark} -->`);
  return table[1]
    .trimEnd()
    .split('\n')
    .map((line) => cellsOf(line.slice(1, -1)));
}

/** Without code marks. */
function plain(cell: string): string {
  return cell.replace(/`/g, '');
}

function numberOrText(cell: string): Typed {
  return cell !== '' && Number.isFinite(Number(cell)) ? Number(cell) : cell;
}

/** The embedded engine has no way to write an inch mark inside a text of a formula; the double prime means the same. */
function inEngine(formula: string): string {
  return formula.replaceAll('""', '″');
}

/** A number with as many decimals as the example shows, so that 9.2 may stand for 9.2466. */
function asPrecise(value: unknown, told: string): string {
  if (typeof value !== 'number') return String(value);
  return value.toFixed((told.split('.')[1] ?? '').length);
}

function walkedRoom(typed: ReadonlyMap<string, string>): RoomEntry {
  const field = (name: string): string => {
    const value = typed.get(name);
    if (value === undefined) throw new Error(`README.md does not say what is typed for ${name}`);
    return value;
  };
  const product = {
    ...plainRoom.product,
    plankLength: field('Plank length'),
    plankWidth: field('Plank width'),
    planksPerBox: field('Planks in a box'),
  };
  return { ...plainRoom, shape: { kind: 'rectangle', length: field('Length'), width: field('Width') }, product };
}

function takeoffOf(entry: RoomEntry): Takeoff {
  const result = takeoff(entry);
  if (result.status === 'problems') throw new Error(result.problems.map(({ text }) => text).join(' '));
  return result.takeoff;
}

/** What the walk tells, by its names, as it is shown. */
function foundIn({ summary, plan, pieces }: Takeoff): Readonly<Record<string, string>> {
  const show = (ticks: Ticks) => lengthText(ticks, 'us', 'piece');
  const rowLength = pieces.filter((piece) => piece.rowNumber === 1).reduce((sum, piece) => sum + piece.length, 0);
  return {
    'Room, sq ft': (summary.roomArea / TICKS_PER_FOOT ** 2).toFixed(2),
    'Length of every row': show(rowLength),
    Rows: String(summary.rowCount),
    'First row': show(summary.firstRowWidth),
    'Last row': show(summary.lastRowWidth),
    Planks: String(plan.plankCount),
    'The plan': summary.proof,
    Boxes: String(summary.boxCount),
    Waste: `${(100 * summary.waste).toFixed(1)}%`,
    'Area + 10 %, planks': String(summary.tenPercentPlanks),
    'Area + 10 %, boxes': String(summary.tenPercentBoxes),
    'Shortest piece': show(summary.shortestPiece),
    'Closest end joints': show(summary.tightestStagger ?? 0),
  };
}

function sourceTexts(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
}
