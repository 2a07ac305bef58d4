import { mkdtempSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type PageServer, servePage } from '../../src/workbook/server';
import { keeperIn } from '../support/browser';
import { seededRandom } from '../support/seededRandom';

const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
let server: PageServer;

beforeAll(async () => {
  server = await servePage(
    { 'Code.js': 'var built = 1;', 'Sidebar.html': '<p>é</p>', 'Check.html': '' },
    0,
    await keeperIn(folder),
  );
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

/** What comes back to a request written letter by letter: `fetch` would put an address right before it is sent. */
function answerTo(request: string): Promise<string> {
  return new Promise((done) => {
    const socket = connect(Number(new URL(server.address).port), 'localhost');
    let text = '';
    socket.setEncoding('latin1');
    socket.on('data', (part) => {
      text += part;
    });
    socket.on('error', () => {});
    socket.on('close', () => done(text));
    socket.end(request);
  });
}

const get = (path: string) => fetch(new URL(path, server.address));

test('the built files are served as they are', async () => {
  expect(await (await get('addon/Code.js')).text()).toBe('var built = 1;');
  expect(await (await get('addon/Sidebar.html')).text()).toBe('<p>é</p>');
});

test.each([
  ['', 'text/html'],
  ['page.js', 'text/javascript'],
  ['page.css', 'text/css'],
  ['scriptRun.js', 'text/javascript'],
  ['engine/o_spreadsheet.js', 'text/javascript'],
  ['engine/o_spreadsheet.xml', 'text/xml'],
  ['engine/LICENSE.txt', 'text/plain'],
])('/%s is there', async (path, type) => {
  const response = await get(path);
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toContain(type);
});

test('nothing else of the computer is served', async () => {
  for (const path of [
    'package.json',
    '../package.json',
    '%2e%2e/package.json',
    'engine/../../package.json',
    'constructor',
  ]) {
    expect((await get(path)).status).toBe(404);
  }
});

test('a port that is taken gives way to a free one', async () => {
  const port = Number(new URL(server.address).port);
  const second = await servePage({ 'Code.js': '', 'Sidebar.html': '', 'Check.html': '' }, port, await keeperIn(folder));
  expect(second.address).not.toBe(server.address);
  await second.close();
});

describe('a request that is none is refused, and the next one is answered', () => {
  const asked = (target: string) => `GET ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`;
  test.each([
    ['no address: two slashes', asked('//'), '404'],
    ['no address: a port that is no number', asked('//:x'), '404'],
    ['no address: half a bracket', asked('http://['), '404'],
    ['a per cent sign alone', asked('/%'), '404'],
    ['a query alone is the page', asked('/?locale=%'), '200'],
    ['a star', `OPTIONS * HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`, '404'],
    ['a way through', `CONNECT localhost:80 HTTP/1.1\r\nHost: x\r\n\r\n`, ''],
    ['a line that is no request', 'hello\r\n\r\n', '400'],
    ['no host', 'GET / HTTP/1.1\r\n\r\n', '400'],
    ['a header too long', `GET / HTTP/1.1\r\nHost: x\r\nA: ${'a'.repeat(100_000)}\r\n\r\n`, '431'],
  ])('%s', async (_, request, status) => {
    expect((await answerTo(request)).slice(9, 12)).toBe(status);
    expect((await get('')).status).toBe(200);
  });

  test('targets of any characters', async () => {
    const { whole } = seededRandom(25);
    const signs = '/\\.:?#%[]@*~{}<>|^`"\'&=+;,!$()aZ0\t\u00e9';
    for (let i = 0; i < 200; i++) {
      const written = Array.from({ length: whole(1, 12) }, () => signs.charAt(whole(0, signs.length - 1)));
      await answerTo(asked(`${whole(1, 5) > 1 ? '/' : ''}${written.join('')}`));
    }
    expect((await get('')).status).toBe(200);
  });
});
