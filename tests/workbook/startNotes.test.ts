/** What stands in the way of starting is told in a sentence: an old Node, a taken port, no screen. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build.mjs';
import { nodeProblem } from '../../src/nodeVersion.mjs';
import { portFrom, servedNotes } from '../../src/workbook/startArguments';
import { refusalOf } from '../support/refusal';
import { expectSentence } from '../support/sentence';

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
    const args = ['--import', `data:text/javascript,${encodeURIComponent(old)}`, join(projectFolder, 'src/ensure.mjs')];
    const { status, stderr, stdout } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/^Node 20\.19 or newer is needed, and this is Node 18\.20\.4\. .*\n$/);
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
