/** Who may ask for workbooks, and what becomes of names, files and letters made to do harm. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { request as requestBy } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type PageServer, servePage } from '../../../src/workbook/server';
import type { Keeper } from '../../../src/workbook/shelf/keeper';
import { keeperIn } from '../../support/browser';

const outside = mkdtempSync(join(tmpdir(), 'plank-ledger-'));
const folder = join(outside, 'workbooks');
let keeper: Keeper;
let server: PageServer;

beforeAll(async () => {
  keeper = await keeperIn(folder);
  server = await servePage({ 'Code.js': '', 'Sidebar.html': '', 'Check.html': '' }, 0, keeper);
  await asked('list');
});
afterAll(async () => {
  await server.close();
  rmSync(outside, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly text: string;
}

/** A request with any headers at all: `fetch` would set some of them itself. */
function sent(
  target: string,
  headers: Readonly<Record<string, string>> = {},
  body: string | Buffer = '',
  method = 'POST',
): Promise<Answer> {
  return new Promise((done, fail) => {
    const { port } = new URL(server.address);
    const request = requestBy({ host: 'localhost', port, path: `/${target}`, method, headers }, (response) => {
      let text = '';
      response.on('data', (part) => {
        text += part;
      });
      response.on('close', () => done({ status: response.statusCode ?? 0, text }));
    });
    request.on('error', fail);
    request.end(body);
  });
}

/** As the page asks. */
const asked = (action: string, body: unknown = {}) =>
  sent(`workbooks/${action}`, { 'plank-ledger-token': keeper.token }, JSON.stringify(body));

const names = async () => JSON.parse((await asked('list')).text).workbooks.map(({ name }: { name: string }) => name);

describe('refused', () => {
  const CREATE = 'workbooks/blank';
  const body = JSON.stringify({ name: 'Written from elsewhere' });
  test.each<[string, () => Promise<Answer>]>([
    ['no token', () => sent(CREATE, {}, body)],
    ['another token', () => sent(CREATE, { 'plank-ledger-token': 'a'.repeat(48) }, body)],
    ['a token cut short', () => sent(CREATE, { 'plank-ledger-token': keeper.token.slice(1) }, body)],
    ['a page of another address', () => sent(CREATE, withToken({ origin: 'https://example.com' }), body)],
    ['a page that hides its address', () => sent(CREATE, withToken({ origin: 'null' }), body)],
    ['a page of another port here', () => sent(CREATE, withToken({ origin: 'http://localhost:1' }), body)],
    ['another name that leads here', () => sent(CREATE, withToken({ host: 'floors.example.com' }), body)],
    ['such a name for the page, which holds the token', () => sent('', { host: 'floors.example.com:8600' }, '', 'GET')],
    ['a name that only begins like ours', () => sent(CREATE, withToken({ host: 'localhost.example.com' }), body)],
    ['what a picture or a link can ask', () => sent('workbooks/list', withToken({}), '', 'GET')],
    ['a question before writing from elsewhere', () => sent(CREATE, { origin: 'https://example.com' }, '', 'OPTIONS')],
  ])('%s', async (_, ask) => {
    const { status, text } = await ask();
    expect(status).toBe(403);
    expect(text).not.toContain(keeper.token);
    expect(await names()).toEqual(['Demo house', 'Half-laid floor']);
  });

  const withToken = (headers: Readonly<Record<string, string>>) => ({ 'plank-ledger-token': keeper.token, ...headers });
});

test('other computers cannot reach it', async () => {
  const own = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const addresses = own.filter(({ internal, family }) => !internal && family === 'IPv4').map(({ address }) => address);
  const port = Number(new URL(server.address).port);
  const reached = (host: string) =>
    new Promise<boolean>((done) => {
      const socket = connect(port, host, () => done(socket.destroy() && true)).on('error', () => done(false));
    });
  for (const address of addresses) expect([address, await reached(address)]).toEqual([address, false]);
});

describe('names that would leave the folder, or that no file can have', () => {
  const BAD = [
    '../out',
    '..',
    '.hidden',
    'a/b',
    'a\\b',
    '/etc/passwd',
    'C:out',
    'a\0b',
    'a\u202eb',
    '',
    ' ',
    'CON',
    'aux.x',
  ];
  test.each(BAD)('%j', async (bad) => {
    const requests: readonly (readonly [string, object])[] = [
      ['blank', { name: bad }],
      ['rename', { name: 'Demo house', to: bad }],
      ['rename', { name: bad, to: 'Mine' }],
      ['copy', { name: bad }],
      ['remove', { name: bad }],
      ['earlier', { name: bad }],
      ['goBack', { name: bad, stamp: '2026-03-04T05-06-07Z' }],
      ['goBack', { name: 'Demo house', stamp: bad }],
      ['takeFromBin', { id: bad }],
      ['takeWhole', { name: bad, data: { revisionId: 'x' }, seen: [] }],
      [`open?name=${encodeURIComponent(bad)}`, {}],
      [`take?name=${encodeURIComponent(bad)}`, {}],
      [`listen?name=${encodeURIComponent(bad)}`, {}],
    ];
    for (const [action, body] of requests) {
      const { status, text } = await asked(action, body);
      expect([action, status]).toEqual([action, expect.toSatisfy((one: number) => one === 400 || one === 404)]);
      expect(JSON.parse(text).problem).toMatch(/^.*[.:/\\a-z]$/s);
    }
    expect(await names()).toEqual(['Demo house', 'Half-laid floor']);
    expect(readdirSync(outside)).toEqual(['workbooks']);
  });

  test('a file that is brought in gets a name that can be one', async () => {
    const made = await asked('bringIn', { name: '../../Mill: Lane?', from: '', data: { revisionId: 'x' } });
    expect(JSON.parse(made.text)).toEqual({ name: 'Mill Lane' });
    await asked('remove', { name: 'Mill Lane' });
    expect(readdirSync(outside)).toEqual(['workbooks']);
  });
});

describe('what is no request of the page is told, and the next one is answered', () => {
  const take = 'workbooks/take?name=Demo%20house';
  test.each<[string, string, string | Buffer, number]>([
    ['no JSON', 'workbooks/blank', '{"name":', 400],
    ['another kind of JSON', 'workbooks/blank', '[1', 400],
    ['no name', 'workbooks/blank', '{}', 400],
    ['a name that is a number', 'workbooks/blank', '{"name":5}', 400],
    ['nothing to ask for', 'workbooks/format', '{}', 404],
    ['what every object has', 'workbooks/constructor', '{}', 404],
    ['what every object comes from', 'workbooks/__proto__', '{}', 404],
    ['no workbook of this name', 'workbooks/open?name=Nowhere', '', 404],
    ['a change that is none', take, 'null', 400],
    ['a change without a kind', take, '{"nextRevisionId":"x"}', 400],
    [
      'a whole workbook that is none',
      take,
      '{"type":"SNAPSHOT","serverRevisionId":"START_REVISION","nextRevisionId":"x"}',
      400,
    ],
    ['data that is none', 'workbooks/bringIn', '{"name":"x","data":5}', 400],
    ['letters that are none', take, Buffer.from([0xff, 0xfe, 0]), 400],
    ['more than 64 MB', take, Buffer.alloc(64 * 1024 * 1024 + 1, 32), 413],
    ['a file that nobody named', 'workbooks/given', '', 404],
  ])('%s', async (_, target, body, status) => {
    const answer = await sent(target, { 'plank-ledger-token': keeper.token }, body).catch(() => undefined);
    // Too much may be cut off before all of it is sent.
    if (status !== 413 || answer) {
      expect(answer?.status).toBe(status);
      expect(JSON.parse(answer?.text ?? '').problem).toMatch(/\.$/);
    }
    expect(await names()).toEqual(['Demo house', 'Half-laid floor']);
  });
});
