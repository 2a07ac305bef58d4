import { afterAll, beforeAll, expect, test } from 'vitest';
import { type PageServer, servePage } from '../../src/workbook/server';

let server: PageServer;

beforeAll(async () => {
  server = await servePage({ 'Code.js': 'var built = 1;', 'Sidebar.html': '<p>é</p>' }, 0);
});

afterAll(() => server.close());

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
  const second = await servePage({ 'Code.js': '', 'Sidebar.html': '' }, port);
  expect(second.address).not.toBe(server.address);
  await second.close();
});
