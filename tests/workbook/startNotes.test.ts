/** What stands in the way of starting is told in a sentence: an old Node, a taken port, no screen. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'acorn';
import { afterAll, describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build.mjs';
import { nodeDisk } from '../../src/workbook/shelf/disk';
import { openKeeper } from '../../src/workbook/shelf/keeper';
import { findGiven, portFrom, servedNotes } from '../../src/workbook/startArguments';
import { keeperIn } from '../support/browser';
import { faultyDisk } from '../support/faultyDisk';
import { refusalOf } from '../support/refusal';
import { expectSentence } from '../support/sentence';

const { nodeProblem } = createRequire(import.meta.url)('../../src/nodeVersion.cjs') as {
  nodeProblem(version: string, wanted: string): string;
};

describe('the version of Node', () => {
  test.each(['20.19.0', '20.19.43', '20.20.1', '22.0.0', '100.1.0'])('%s will do', (version) => {
    expect(nodeProblem(version, '>=20.19')).toBe('');
  });

  test.each(['20.18.9', '18.20.4', '16.0.0', '4.9.1', '20.2.0'])(
    '%s will not, and the sentence says what will',
    (version) => {
      expect(nodeProblem(version, '>=20.19')).toContain(`Node 20.19 or newer is needed, and this is Node ${version}.`);
      expectSentence(nodeProblem(version, '>=20.19'));
    },
  );

  test('an old one is told before anything is installed or built', () => {
    const old = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '18.20.4' } })`;
    const { status, stderr, stdout } = began({}, '--import', `data:text/javascript,${encodeURIComponent(old)}`);
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/^Node 20\.19 or newer is needed, and this is Node 18\.20\.4\. .*\n$/);
  });

  // Node 10 has the syntax of 2018 and, loaded when it is asked for, `import()`. Source: its release notes.
  test('even one that knows no new syntax can read what tells it', () => {
    for (const file of ['src/ensure.cjs', 'src/nodeVersion.cjs']) {
      const text = readFileSync(join(projectFolder, file), 'utf8').replace('import(', 'require(');
      expect(() => parse(text, { ecmaVersion: 2018, sourceType: 'script' }), file).not.toThrow();
      expect([...text.matchAll(/require\('(.*?)'\)/g)].filter(([, name]) => !name.startsWith('.'))).toEqual([]);
    }
  });
});

/** What every command begins with, in a process of its own. */
function began(environment: Readonly<Record<string, string>>, ...options: readonly string[]) {
  const env = { ...process.env, ...environment };
  return spawnSync(process.execPath, [...options, join(projectFolder, 'src/ensure.cjs')], { encoding: 'utf8', env });
}

test('an option that npm kept for itself is told, with what to type', () => {
  const { status, stderr } = began({ npm_config_rooms: 'true', npm_lifecycle_event: 'plan' });
  expect(status).toBe(1);
  expect(stderr).toMatch(/^npm took --rooms .* npm run plan -- --rooms\n$/);
});

/** The program in a folder of its own, without packages, and npm with an empty cache that asks where nobody listens. */
test('packages that are missing, and nobody to ask for them, are told with what to type', () => {
  const clone = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
  const files = ['package.json', 'package-lock.json', 'src/install.mjs', 'src/findBrowser.mjs'];
  for (const file of files) cpSync(join(projectFolder, file), join(clone, file));
  const nobody = { npm_config_registry: 'http://127.0.0.1:9', npm_config_cache: join(clone, 'cache') };
  const env = { ...process.env, ...nobody };
  const { status, stderr } = spawnSync(process.execPath, [join(clone, 'src/install.mjs')], { encoding: 'utf8', env });
  rmSync(clone, { recursive: true });
  expect(status).toBe(1);
  const [installing, sentence, ...rest] = stderr.trim().split('\n');
  expect(installing).toBe('Installing the packages of package-lock.json ...');
  expect(sentence).toContain('http://127.0.0.1:9 does not answer (ECONNREFUSED). Connect');
  expect(sentence).toContain('npm ci');
  expectSentence(sentence ?? '');
  expect(rest).toEqual([]);
});

describe('what was typed after npm start --', () => {
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  test.each([
    ['Mill Lane', /^There is no workbook "Mill Lane" in /],
    ['Mill Lane.xlsx', /^There is no file .*Mill Lane\.xlsx, and no workbook "Mill Lane" in /],
    [join(folder, 'folder.xlsx'), /folder\.xlsx cannot be read: it is a folder\.$/],
  ])('%s is not there', async (typed, sentence) => {
    await nodeDisk.makeFolder(join(folder, 'folder.xlsx'));
    const failure = await findGiven(nodeDisk, folder, typed).catch((error: Error) => error);
    expect((failure as Error).message).toMatch(sentence);
    expectSentence((failure as Error).message);
  });

  test('a file where the folder should be, or above it, is told', async () => {
    const file = join(folder, 'a file');
    writeFileSync(file, '');
    for (const taken of [file, join(file, 'below')]) {
      const failure = await keeperIn(taken).catch((error: Error) => error);
      expect((failure as Error).message).toContain(`${taken}: a file stands where a folder is wanted. `);
      expectSentence((failure as Error).message);
    }
  });

  // Told to make a folder in /proc and those above it at once, Node 20 asks the system for ever.
  test.runIf(process.platform === 'linux')('a place where the system has no folders is told at once', async () => {
    const failure = await keeperIn('/proc/floors/of mine').catch((error: Error) => error);
    expect((failure as Error).message).toContain('/proc/floors/of mine: the folder is gone or cannot be made. ');
    expectSentence((failure as Error).message);
  });

  test('folders above the one named are made, and one that is there is taken', async () => {
    const deep = join(folder, 'of', 'mine');
    await nodeDisk.makeFolder(deep);
    await Promise.all([
      nodeDisk.makeFolder(deep),
      nodeDisk.makeFolder(join(deep, 'a')),
      nodeDisk.makeFolder(join(deep, 'a')),
    ]);
    expect(readdirSync(deep)).toEqual(['a']);
  });

  test('on a full disk a folder that was in use is opened, and a new one is told', async () => {
    const full = faultyDisk('disk full', 1);
    const options = { disk: { ...full, makeFolder: nodeDisk.makeFolder }, folder, now: () => new Date(0) };
    const failure = await openKeeper(options).catch((error: Error) => error);
    expect((failure as Error).message).toContain('the disk is full');
    const { token } = await keeperIn(folder);
    const none = { ...nodeDisk, writeNew: () => Promise.reject(Object.assign(new Error(), { code: 'ENOSPC' })) };
    expect((await openKeeper({ ...options, disk: none })).token).toBe(token);
  });
});

describe('the port', () => {
  test.each([
    [undefined, 8600],
    ['', 8600],
    ['0', 0],
    ['9000', 9000],
  ])('%j is %d', (given, port) => {
    expect(portFrom({ PORT: given })).toBe(port);
  });

  test.each(['abc', '-1', '65536', '80.5'])('%s is none', (given) => {
    const sentence = refusalOf(() => portFrom({ PORT: given }));
    expect(sentence).toContain(`PORT is "${given}".`);
    expectSentence(sentence);
  });
});

describe('where the page is served', () => {
  const screen = { DISPLAY: ':0' };
  test('at the port asked for, with a screen: nothing to say', () => {
    expect(servedNotes(8600, 'http://localhost:8600/', screen, 'linux')).toEqual([]);
    expect(servedNotes(0, 'http://localhost:41234/', screen, 'linux')).toEqual([]);
    expect(servedNotes(8600, 'http://localhost:8600/', {}, 'darwin')).toEqual([]);
  });

  test('a port that is taken, and no screen to show a browser on', () => {
    const notes = servedNotes(8600, 'http://localhost:41234/', {}, 'linux');
    expect(notes).toEqual([
      expect.stringMatching(/^Port 8600 is taken/),
      expect.stringMatching(/^There is no screen here/),
    ]);
    for (const note of notes) expectSentence(note);
  });
});
