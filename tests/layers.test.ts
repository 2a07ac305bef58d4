/** Who may import whom, and what the core does without; each rule is shown to see a file that breaks it. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';

const CORE = ['geometry', 'room', 'layout', 'cutting', 'takeoff', 'order'];
/** From left to right; `sheet` and `sidebar` stand side by side and never see each other. */
const ORDER: Readonly<Record<string, number>> = {
  ...Object.fromEntries(CORE.map((folder, i) => [folder, i])),
  tabs: CORE.length,
  sheet: CORE.length + 1,
  sidebar: CORE.length + 1,
  workbook: CORE.length + 2,
};
/** The one core file that may use a package, and the package. */
const PACKAGE_FILE = 'takeoff/text/unitLibrary.ts: mathjs';

/** Texts of files by their names below the sources, `cutting/job.ts`. */
type Files = ReadonlyMap<string, string>;

const source = join(import.meta.dirname, '../src');
const readAll = (folder: string, ending: RegExp): Files =>
  new Map(
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => ending.test(name))
      .map((name) => [name.replaceAll('\\', '/'), readFileSync(join(folder, name), 'utf8')]),
  );
const inSource = readAll(source, /\.(?:ts|mjs)$/);
const files: Files = new Map([...inSource].filter(([name]) => /\/.*\.ts$/.test(name)));
/** The sources with one file more, or one of them changed. */
const withFile = (name: string, text: string): Files => new Map([...files, [name, text]]);

const folderOf = (file: string) => file.split('/')[0] ?? '';

function importsOf(text: string): string[] {
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map((match) => match[1] ?? match[2] ?? '');
}

/** What `file` imports of ours, without an ending, for types alone too: a type belongs in the lower of two files. */
function importedBy(file: string, text: string): string[] {
  return importsOf(text)
    .filter((name) => name.startsWith('.'))
    .map((name) => posix.join(dirname(file), name));
}

/** The file without its comments and the words of its texts, so that only code is looked at. */
function codeOf(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/.*$/gm, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''");
}

/** Names of the files of some folders in whose code something is found. */
function filesWith(all: Files, pattern: RegExp, isLookedAt: (folder: string) => boolean): string[] {
  return [...all].filter(([file, text]) => isLookedAt(folderOf(file)) && pattern.test(codeOf(text))).map(([f]) => f);
}

function strangeFolders(all: Files): string[] {
  return [...new Set([...all.keys()].map(folderOf))].filter((folder) => !(folder in ORDER));
}

function wrongImports(all: Files): string[] {
  return [...all].flatMap(([file, text]) =>
    importedBy(file, text)
      // The build is the workbook's business, not a folder of its own.
      .filter((target) => !(folderOf(file) === 'workbook' && target === 'build.mjs'))
      .filter((target) => {
        const [from, to] = [folderOf(file), folderOf(target)];
        return from !== to && !((ORDER[to] ?? Number.POSITIVE_INFINITY) < (ORDER[from] ?? -1));
      })
      .map((target) => `${file} -> ${target}`),
  );
}

/** For every file that needs itself the shortest way back to it along what files import. */
function circles(all: Files): string[] {
  const needs = new Map([...all].map(([file, text]) => [file, importedBy(file, text).map((name) => `${name}.ts`)]));
  return [...needs.keys()].map((file) => circleThrough(file, needs)?.join(' -> ') ?? '').filter((way) => way !== '');
}

function circleThrough(start: string, needs: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const ways = [[start]];
  const seen = new Set<string>();
  for (const way of ways) {
    for (const next of needs.get(way[way.length - 1]) ?? []) {
      if (next === start) return [...way, start];
      if (!seen.has(next)) ways.push([...way, next]);
      seen.add(next);
    }
  }
  return null;
}

const EXPORTED = /^export (?:async )?(?:function\*?|const) (\w+)/gm;

/** What is exported and used in no other file, or by tests alone. */
function unusedExports(all: Files): string[] {
  const tests = [...readAll(import.meta.dirname, /\.(?:ts|mjs)$/)].map(([name, text]) => [`tests/${name}`, text]);
  const texts = new Map([...inSource, ...all, ...(tests as [string, string][])]);
  const usedIn = new Map<string, string[]>();
  for (const [path, text] of texts) {
    for (const word of new Set(text.match(/\w+/g))) usedIn.set(word, [...(usedIn.get(word) ?? []), path]);
  }
  const isUnused = (file: string, name: string, code: string) => {
    const others = usedIn.get(name)?.filter((path) => path !== file) ?? [];
    const isUsedHere = (code.match(new RegExp(`\\b${name}\\b`, 'g')) ?? []).length > 1;
    return others.length === 0 || !(isUsedHere || others.some((path) => !path.startsWith('tests/')));
  };
  return [...all].flatMap(([file, text]) => {
    const code = codeOf(text);
    const names = [...code.matchAll(EXPORTED)].map(([, name]) => name);
    return names.filter((name) => isUnused(file, name, code)).map((name) => `${file}: ${name}`);
  });
}

function packagesUsed(all: Files): string[] {
  return [...all]
    .filter(([file]) => folderOf(file) !== 'workbook')
    .flatMap(([file, text]) =>
      importsOf(text)
        .filter((name) => !name.startsWith('.'))
        .map((name) => `${file}: ${name}`),
    );
}

const inCore = (folder: string) => CORE.includes(folder);
const CLASS_CHECK = /\binstanceof\s+(?:Date|Array|Object|Map|Set)\b/;
/** Dates of a cell are made in another world than ours. */
const classChecks = (all: Files) =>
  filesWith(all, CLASS_CHECK, (folder) => folder !== 'workbook' && folder !== 'sidebar');
const defaultExports = (all: Files) => filesWith(all, /\bexport\s+default\b/, () => true);
const tooLong = (all: Files) => [...all].filter(([, text]) => text.split('\n').length > 401).map(([file]) => file);

/** Of each rule: what it finds in any files, and a file that breaks it. */
const RULES: readonly (readonly [string, (all: Files) => readonly string[], readonly [string, string], string])[] = [
  ['every folder of the sources has its place in the order', strangeFolders, ['helpers/list.ts', ''], 'helpers'],
  [
    'every file imports only its own folder or one to the left',
    wrongImports,
    ['layout/made.ts', "import { planCuts } from '../cutting/search';"],
    'layout/made.ts -> cutting/search',
  ],
  [
    'sheet and sidebar never import each other',
    wrongImports,
    ['sidebar/made.ts', "import { onOpen } from '../sheet/menu';"],
    'sidebar/made.ts -> sheet/menu',
  ],
  [
    'a type is imported from the left as well',
    wrongImports,
    ['room/made.ts', "import type { CutJob } from '../cutting/job';"],
    'room/made.ts -> cutting/job',
  ],
  [
    'no file needs itself through others, not for a type either',
    circles,
    ['cutting/job.ts', "import type { Searched } from './search';"],
    'cutting/job.ts -> cutting/search.ts -> cutting/job.ts',
  ],
  [
    'every function and value that is exported is used in another file',
    unusedExports,
    ['room/made.ts', `export function ${'nobody'}Calls() {}`],
    `room/made.ts: ${'nobody'}Calls`,
  ],
  [
    'and not by tests alone',
    unusedExports,
    ['room/made.ts', 'export const unusedExports = 1;'],
    'room/made.ts: unusedExports',
  ],
  [
    'only the unit library uses a package, outside the embedded workbook',
    (all) => packagesUsed(all).filter((used) => used !== PACKAGE_FILE),
    ['takeoff/made.ts', "import { sum } from 'mathjs';"],
    'takeoff/made.ts: mathjs',
  ],
  [
    'no class checks by realm stand in what runs on the platform',
    classChecks,
    ['sheet/made.ts', 'export const isDay = (cell: unknown) => cell instanceof Date;'],
    'sheet/made.ts',
  ],
  ['no file is longer than 400 lines', tooLong, ['room/made.ts', 'a();\n'.repeat(401)], 'room/made.ts'],
  ['everything is exported by name', defaultExports, ['sidebar/made.ts', 'export default 1;'], 'sidebar/made.ts'],
];

describe.each(RULES)('%s', (_, rule, [name, text], told) => {
  test('now', () => {
    expect(rule(files)).toEqual([]);
  });

  test('and a file that breaks it is told', () => {
    expect(rule(withFile(name, text))).toContain(told);
  });
});

test('the rules have read the sources', () => {
  expect(packagesUsed(files)).toEqual([PACKAGE_FILE]);
  expect([...files].flatMap(([file, text]) => importedBy(file, text)).length).toBeGreaterThan(files.size);
  expect([...files.values()].flatMap((text) => [...codeOf(text).matchAll(EXPORTED)]).length).toBeGreaterThan(500);
});

describe('the core', () => {
  test.each([
    ['a clock', /\bDate\b|\bperformance\b/, 'const now = Date.now();'],
    ['chance', /Math\.random/, 'const any = Math.random();'],
    ['the console', /\bconsole\b/, 'console.log(1);'],
    ['a page', /\bdocument\b|\bwindow\b/, 'const { title } = document;'],
    [
      'a service',
      /\b(?:SpreadsheetApp|PropertiesService|HtmlService|LockService|Session|Utilities|Logger|GoogleAppsScript)\b/,
      'const open = SpreadsheetApp.getActive();',
    ],
  ])('does not use %s, and would be told', (_, pattern, planted) => {
    expect(filesWith(files, pattern, inCore)).toEqual([]);
    for (const folder of CORE) {
      expect(filesWith(withFile(`${folder}/made.ts`, planted), pattern, inCore)).toEqual([`${folder}/made.ts`]);
    }
    const spoken = `/* ${planted} */\n// ${planted}\nconst told = '${planted}';`;
    expect(filesWith(withFile('room/made.ts', spoken), pattern, inCore)).toEqual([]);
  });
});
