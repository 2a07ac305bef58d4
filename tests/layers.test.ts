/** Who may import whom: a file imports its own folder or one to the left of it. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const source = resolve(import.meta.dirname, '../src');
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
const PACKAGE_FILE = { file: 'takeoff/text/unitLibrary.ts', name: 'mathjs' };

const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts') && name.includes('/'));

const folderOf = (file: string) => file.split('/')[0] ?? '';

function importsOf(file: string): string[] {
  const text = readFileSync(join(source, file), 'utf8');
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)\s[^'"]*?from\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map((match) => match[1] ?? match[2] ?? '');
}

/** The files that an import of `file` loads when it runs; one of types alone is gone by then. */
function loadedBy(file: string): string[] {
  const text = readFileSync(join(source, file), 'utf8');
  const found = text.matchAll(/(?:^|\n)(?:import|export)\s(?:([^'";]*?)\sfrom\s*)?['"](\.[^'"]+)['"]/g);
  return [...found]
    .filter(([, names = '']) => !isOfTypesAlone(names))
    .map(([, , name]) => `${relative(source, resolve(source, dirname(file), name)).replaceAll('\\', '/')}.ts`);
}

function isOfTypesAlone(names: string): boolean {
  if (names.startsWith('type ')) return true;
  const listed = /^\{([\s\S]*)\}$/
    .exec(names.trim())?.[1]
    .split(',')
    .map((name) => name.trim());
  return listed?.every((name) => name === '' || name.startsWith('type ')) ?? false;
}

/** The shortest way from a file back to itself along what the files load; null where there is none. */
function circleThrough(start: string, loads: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const ways = [[start]];
  const seen = new Set<string>();
  for (const way of ways) {
    for (const next of loads.get(way[way.length - 1]) ?? []) {
      if (next === start) return [...way, start];
      if (!seen.has(next)) ways.push([...way, next]);
      seen.add(next);
    }
  }
  return null;
}

/** The file without its comments and the words of its texts, so that only code is looked at. */
function codeOf(file: string): string {
  return readFileSync(join(source, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/.*$/gm, '$1')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''");
}

test('every folder of the sources has its place in the order', () => {
  expect([...new Set(files.map(folderOf))].filter((folder) => !(folder in ORDER))).toEqual([]);
});

test('every file imports only its own folder or one to the left', () => {
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((name) => name.startsWith('.'))
      .map((name) => relative(source, resolve(source, dirname(file), name)).replaceAll('\\', '/'))
      // The build is the workbook's business, not a folder of its own.
      .filter((target) => !(folderOf(file) === 'workbook' && target === 'build.mjs'))
      .filter((target) => {
        const [from, to] = [folderOf(file), folderOf(target)];
        return from !== to && !((ORDER[to] ?? Number.POSITIVE_INFINITY) < (ORDER[from] ?? -1));
      })
      .map((target) => `${file} -> ${target}`),
  );
  expect(wrong).toEqual([]);
});

test('no two files of the planner lead back to each other, by whatever way', () => {
  const cutting = files.filter((file) => folderOf(file) === 'cutting');
  const imported = (file: string): string[] =>
    importsOf(file).map((name) => join(dirname(file), name).replaceAll('\\', '/').concat('.ts'));
  const reachedFrom = (file: string): Set<string> => {
    const reached = new Set(imported(file));
    for (const next of reached) if (cutting.includes(next)) for (const further of imported(next)) reached.add(further);
    return reached;
  };
  expect(cutting.length).toBeGreaterThan(30);
  expect(cutting.filter((file) => reachedFrom(file).has(file))).toEqual([]);
});

describe('a circle of files', () => {
  const loads = new Map(files.map((file) => [file, loadedBy(file)]));

  test('is nowhere: no file loads itself through others', () => {
    expect(files.map((file) => circleThrough(file, loads)?.join(' -> ') ?? '').filter((way) => way !== '')).toEqual([]);
  });

  test('would be seen', () => {
    const made = new Map([
      ['a', ['b']],
      ['b', ['c', 'd']],
      ['c', []],
      ['d', ['a']],
    ]);
    expect(['a', 'c', 'd'].map((file) => circleThrough(file, made)?.join(' ') ?? '')).toEqual([
      'a b d a',
      '',
      'd a b d',
    ]);
    expect([...loads.values()].flat().length).toBeGreaterThan(files.length);
    const unknown = [...loads.values()].flat().filter((name) => !loads.has(name));
    expect(unknown.filter((name) => !name.endsWith('.mjs.ts'))).toEqual([]);
  });
});

test('every function and value that is exported is used in another file, and not by tests alone', () => {
  const folders = ['../src', '.'].map((folder) => resolve(import.meta.dirname, folder));
  const texts = new Map(
    folders.flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.(?:ts|mjs)$/.test(name))
        .map((name) => [join(folder, name), readFileSync(join(folder, name), 'utf8')] as const),
    ),
  );
  const usedIn = new Map<string, string[]>();
  for (const [path, text] of texts) {
    for (const word of new Set(text.match(/\w+/g))) usedIn.set(word, [...(usedIn.get(word) ?? []), path]);
  }
  const exported = files.flatMap((file) =>
    [...codeOf(file).matchAll(/^export (?:async )?(?:function\*?|const) (\w+)/gm)].map(([, name]) => ({ file, name })),
  );
  const unused = exported.filter(({ file, name }) => {
    const others = usedIn.get(name)?.filter((path) => path !== join(source, file)) ?? [];
    const isUsedHere = (codeOf(file).match(new RegExp(`\\b${name}\\b`, 'g')) ?? []).length > 1;
    return others.length === 0 || !(isUsedHere || others.some((path) => path.startsWith(source)));
  });
  expect(unused.map(({ file, name }) => `${file}: ${name}`)).toEqual([]);
  expect(exported.length).toBeGreaterThan(500);
});

test('sheet and sidebar never import each other', () => {
  const wrong = files.filter((file) => {
    const other = { sheet: 'sidebar', sidebar: 'sheet' }[folderOf(file)];
    return other !== undefined && importsOf(file).some((name) => name.includes(`/${other}/`));
  });
  expect(wrong).toEqual([]);
});

test('only the unit library uses a package, outside the embedded workbook', () => {
  const used = files
    .filter((file) => folderOf(file) !== 'workbook')
    .flatMap((file) =>
      importsOf(file)
        .filter((name) => !name.startsWith('.'))
        .map((name) => ({ file, name })),
    );
  expect(used).toEqual([PACKAGE_FILE]);
});

describe('the core', () => {
  const core = files.filter((file) => CORE.includes(folderOf(file)));

  test.each([
    ['a clock', /\bDate\b|\bperformance\b/],
    ['chance', /Math\.random/],
    ['the console', /\bconsole\b/],
    ['a page', /\bdocument\b|\bwindow\b/],
    [
      'a service',
      /\b(?:SpreadsheetApp|PropertiesService|HtmlService|LockService|Session|Utilities|Logger|GoogleAppsScript)\b/,
    ],
  ])('does not use %s', (_, pattern) => {
    expect(core.filter((file) => pattern.test(codeOf(file)))).toEqual([]);
  });
});

test('no class checks by realm stand in what runs on the platform', () => {
  const inBundle = files.filter((file) => folderOf(file) !== 'workbook' && folderOf(file) !== 'sidebar');
  expect(inBundle.filter((file) => /\binstanceof\s+(?:Date|Array|Object|Map|Set)\b/.test(codeOf(file)))).toEqual([]);
});

test('no file is longer than 400 lines', () => {
  const long = files.filter((file) => readFileSync(join(source, file), 'utf8').split('\n').length > 401);
  expect(long).toEqual([]);
});

test('everything is exported by name', () => {
  expect(files.filter((file) => /\bexport\s+default\b/.test(codeOf(file)))).toEqual([]);
});
