/** The built add-on: what it may contain, and that it loads on the platform as it is. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Node, parse, tokenizer } from 'acorn';
import { describe, expect, test } from 'vitest';
import { buildAddOn } from '../src/build.mjs';
import { findCellFunctions } from '../src/workbook/customFunctions';
import { nodeLibrary } from '../src/workbook/nodeLibrary';
import { addOnFiles } from './support/addOn';
import { evaluateBare } from './support/bareScript';

const files = await addOnFiles();
const code = files['Code.js'];
const page = files['Sidebar.html'];
const functions = findCellFunctions(code).filter(({ isHidden }) => !isHidden);
const NEEDED_FILE = /<link\b|<img\b[^>]*src=["']?http|<script[^>]*\bsrc=|@import|url\(\s*["']?http/i;
const program = parse(code, { ecmaVersion: 2019, sourceType: 'script' });
const pageScripts = [...page.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((match) => match[1] ?? '');

describe('Code.js', () => {
  test('is a script of ES2019: no optional chaining, class fields, private names or 1n', () => {
    expect(program.type).toBe('Program');
  });

  test('declares every function that may be called as a plain declaration', () => {
    const declared = program.body.flatMap((node) => (node.type === 'FunctionDeclaration' ? [node.id.name] : []));
    for (const name of [...functions.map((found) => found.name), 'onOpen', 'onInstall'])
      expect(declared).toContain(name);
    const others = program.body.filter((node) => node.type !== 'FunctionDeclaration').map((node) => node.type);
    expect(others).toEqual(['ExpressionStatement', 'VariableDeclaration']);
  });

  test('is at most 240 KB', () => {
    expect(Buffer.byteLength(code)).toBeLessThanOrEqual(240_000);
  });

  test('asks for the one spreadsheet it is in, on top', () => {
    expect(code.startsWith('/** @OnlyCurrentDoc */\n')).toBe(true);
  });

  test('keeps the notices of the packages in it', () => {
    const notice = code.slice(0, code.indexOf('"use strict"'));
    expect(notice).toContain('Copyright (c) 2026 the Plank Ledger authors');
    // mathjs, NOTICE file; Apache License 2.0, section 4(d).
    expect(notice).toContain('Copyright (C) 2013-2026 Jos de Jong');
    expect(notice).toContain('https://www.apache.org/licenses/LICENSE-2.0');
  });

  test('loads with the language alone and touches no service', () => {
    const { globals, touched } = evaluateBare(code);
    expect(touched).toEqual([]);
    expect(globals.toSorted()).toEqual(['__plankLedger', ...publicNames()].toSorted());
  });

  test('uses no global that the platform lacks', () => {
    expect(lackingIn(code)).toEqual([]);
  });

  test('has no regular expression with lookbehind or named groups', () => {
    expect(newPatternsIn(code)).toEqual([]);
  });

  test('is the same bytes when built again, as are the pages', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
    try {
      await buildAddOn(folder);
      const names = Object.keys(files);
      const same = Object.entries(files).filter(([name, text]) => readFileSync(join(folder, name), 'utf8') === text);
      expect(names).toHaveLength(4);
      expect(same.map(([name]) => name)).toEqual(names);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

/** Each of the checks above sees what it looks for. */
describe('a fault planted in a script is told', () => {
  const script = (text: string) => parse(text, { ecmaVersion: 2019, sourceType: 'script' });

  test.each(['var a = b?.c', 'class A { b = 1 }', 'class A { #b() {} }', 'var a = 1n', 'var a = b ?? c', 'import "a"'])(
    'a later language: %s',
    (text) => {
      expect(() => script(text)).toThrow(SyntaxError);
    },
  );

  test('a global that the platform lacks, and no member or key of its name', () => {
    expect(lackingIn('var a = b.fetch({ URL: 1 }).process; setTimeout(a); a = { b: crypto }')).toEqual([
      'setTimeout',
      'crypto',
    ]);
  });

  test.each(['/a(?<=b)/', '/(?<!b)a/', '/(?<name>a)/'])('a new kind of pattern: %s', (pattern) => {
    expect(newPatternsIn(`var a = ${pattern}, b = /(?:a)(?=b)(?!c)/`)).toEqual([pattern.slice(1, -1)]);
  });

  test('a service that is touched as it loads, and a name that it leaves behind', () => {
    expect(evaluateBare('var left = 1; SpreadsheetApp.getActive')).toEqual({
      globals: ['left'],
      touched: ['SpreadsheetApp.getActive'],
    });
    expect(() => evaluateBare('setTimeout(1)')).toThrow(/not defined/);
  });

  test.each([
    ['<link rel="stylesheet" href="a.css">', NEEDED_FILE],
    ['<img src="https://example.com/a.png">', NEEDED_FILE],
    ['<script src="a.js"></script>', NEEDED_FILE],
    ['<style>@import "a.css";</style>', NEEDED_FILE],
    ['<style>b { background: url("https://example.com/a.png") }</style>', NEEDED_FILE],
  ])('in the page: %s', (html, pattern) => {
    expect(`<!doctype html>${html}`).toMatch(pattern);
  });

  test('a template literal in the script of the page', () => {
    expect(tokensOf('var a = `b`')).toContain('template');
    expect(tokensOf('var a = "`b`"')).not.toContain('template');
  });
});

describe('custom functions', () => {
  test('there are as many as the core promises', () => {
    const names = functions.map((found) => found.name);
    for (const name of PROMISED) expect(names).toContain(name);
  });

  test.each(functions.map((found) => [found.name, found] as const))(
    '%s is documented, each parameter too',
    (_, found) => {
      expect(found.description).toMatch(/^[A-Z].{20,}[.)]$/);
      for (const parameter of found.parameters)
        expect(`${parameter.name}: ${parameter.description}`).toMatch(/^\w+: .{4,}\.$/);
    },
  );

  test.each(functions.map((found) => found.name))('%s is a name a spreadsheet takes', (name) => {
    expect(name).toMatch(/^PLANK_[A-Z_]*[A-Z]$/);
    // A name shaped like the address of a cell would be read as one.
    expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/);
    expect(BUILT_IN.has(name)).toBe(false);
  });

  test.each(functions.map((found) => found.name))('%s shows an example to the person who types it', (name) => {
    const help = new RegExp(`(/\\*\\*(?:[^*]|\\*(?!/))*\\*/)\\s*function ${name}\\(`).exec(code)?.[1] ?? '';
    expect(help).toContain(`${name}(`);
    expect(help).toContain('@return');
  });
});

describe('Sidebar.html', () => {
  test('is at most 450 KB', () => {
    expect(Buffer.byteLength(page)).toBeLessThanOrEqual(450_000);
  });

  test('needs nothing else: no file, no address but in words', () => {
    expect(page).not.toMatch(NEEDED_FILE);
  });

  test('has no scriptlet', () => {
    expect(page).not.toContain('<?');
  });

  test('has one script of ES2022 in it, without template literals', () => {
    expect(pageScripts).toHaveLength(1);
    const script = pageScripts[0] ?? '';
    parse(script, { ecmaVersion: 2022, sourceType: 'script' });
    // Public issue threads: the page service cuts // and /* out of template literals.
    expect(tokensOf(script)).not.toContain('template');
  });

  test('is one whole page with a title and a language', () => {
    expect(page).toMatch(/^<!doctype html>/i);
    expect(page).toMatch(/<html lang="en">/);
    expect(page).toMatch(/<title>[^<]+<\/title>/);
    expect(page).not.toMatch(/<!-- (?:style|script) -->/);
  });
});

describe('appsscript.json', () => {
  const manifest = JSON.parse(files['appsscript.json']);

  test('asks for the current spreadsheet and the sidebar, and nothing else', () => {
    expect(manifest.oauthScopes).toEqual([
      'https://www.googleapis.com/auth/spreadsheets.currentonly',
      'https://www.googleapis.com/auth/script.container.ui',
    ]);
  });

  test('names the runtime and the time zone', () => {
    expect([manifest.runtimeVersion, manifest.timeZone]).toEqual(['V8', 'Etc/UTC']);
  });
});

/** Functions of the first release, in the words of its documentation. */
const PROMISED = [
  'PLANK_AREA',
  'PLANK_ROOM_AREA',
  'PLANK_BOXES',
  'PLANK_LAST_ROW',
  'PLANK_ROWS',
  'PLANK_STAGGER',
  'PLANK_OFFCUTS',
  'PLANK_COUNT',
  'PLANK_CUTS',
  'PLANK_COMPARE',
  'PLANK_UNDERLAY',
  'PLANK_TRIM',
  'PLANK_MOVEMENT',
  'PLANK_EMC',
  'PLANK_LENGTH',
  'PLANK_LENGTH_TEXT',
];

/** Source: Apps Script guide, "V8 runtime overview"; the last four are not promised anywhere. */
const LACKING = [
  'setTimeout',
  'setInterval',
  'clearTimeout',
  'TextEncoder',
  'TextDecoder',
  'fetch',
  'URL',
  'URLSearchParams',
  'atob',
  'btoa',
  'crypto',
  'window',
  'document',
  'navigator',
  'performance',
  'process',
  'require',
  'structuredClone',
  'Intl',
  'WebAssembly',
  'BigInt',
];

/** Without ours, which another test's workbook may have put there. */
const { functionRegistry } = nodeLibrary().registries;
const BUILT_IN = new Set(
  functionRegistry.getKeys().filter((name) => functionRegistry.get(name).category !== 'Plank Ledger'),
);

function publicNames(): string[] {
  return program.body.flatMap((node) => (node.type === 'FunctionDeclaration' ? [node.id.name] : []));
}

function lackingIn(script: string): string[] {
  return identifiers(script).filter((name) => LACKING.includes(name));
}

/** Regular expressions of a later language: with lookbehind or named groups. */
function newPatternsIn(script: string): string[] {
  return regularExpressions(script).filter((pattern) => /\(\?<[=!a-zA-Z]/.test(pattern));
}

function tokensOf(script: string): string[] {
  return [...tokenizer(script, { ecmaVersion: 2022 })].map((token) => token.type.label);
}

/** Names used as variables: not members, not keys. */
function identifiers(script: string): string[] {
  const found = new Set<string>();
  walk(parse(script, { ecmaVersion: 2019, sourceType: 'script' }), (node, parent, key) => {
    const isName = node.type === 'Identifier';
    const isMember =
      parent?.type === 'MemberExpression' && key === 'property' && !(parent as { computed?: boolean }).computed;
    const isKey = parent?.type === 'Property' && key === 'key';
    if (isName && !isMember && !isKey) found.add((node as Node & { name: string }).name);
  });
  return [...found];
}

function regularExpressions(script: string): string[] {
  const found: string[] = [];
  walk(parse(script, { ecmaVersion: 2019, sourceType: 'script' }), (node) => {
    const { regex } = node as { regex?: { pattern: string } };
    if (regex) found.push(regex.pattern);
  });
  return found;
}

function walk(
  node: Node,
  visit: (node: Node, parent: Node | null, key: string) => void,
  parent: Node | null = null,
  key = '',
): void {
  visit(node, parent, key);
  for (const [name, value] of Object.entries(node)) {
    const children = Array.isArray(value) ? value : [value];
    for (const child of children) {
      if (child && typeof child === 'object' && typeof child.type === 'string') walk(child, visit, node, name);
    }
  }
}
