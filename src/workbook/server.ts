/** Serves the page with the add-on's built files, and the workbooks of a folder, to this computer only. */
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { build } from 'esbuild';
import { projectFolder } from '../build.mjs';
import type { Keeper } from './shelf/keeper';
import { answerRequest, isOurHost, REQUESTS } from './shelf/requests';

export interface PageServer {
  /** Such as `http://localhost:8600/`. */
  readonly address: string;
  close(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  xml: 'text/xml',
  txt: 'text/plain',
};

/** Files served as they come from their packages: the engine is never bundled. */
const PACKAGE_FILES = new Map<string, readonly [packageName: string, file: string]>([
  ['engine/o_spreadsheet.js', ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.min.iife.js']],
  ['engine/o_spreadsheet.css', ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.css']],
  ['engine/o_spreadsheet.xml', ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.xml']],
  ['engine/LICENSE.txt', ['@odoo/o-spreadsheet', 'LICENSE']],
  ['engine/owl.js', ['@odoo/owl', 'dist/owl.iife.min.js']],
  ['engine/owl-LICENSE.txt', ['@odoo/owl', 'LICENSE']],
  ['engine/bootstrap.css', ['bootstrap', 'dist/css/bootstrap.min.css']],
  ['engine/bootstrap-LICENSE.txt', ['bootstrap', 'LICENSE']],
]);

/**
 * What the page may do: load from here alone, so that nothing can be sent anywhere. The grid makes functions of its
 * templates and the add-on's script is evaluated, hence `unsafe-eval`; the sidebar's page
 * has its script inside, and plans in a thread made from it.
 */
const POLICY = [
  "default-src 'self'",
  "script-src 'self' 'unsafe-inline' 'unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const HEADERS = {
  'cache-control': 'no-store',
  'content-security-policy': POLICY,
  'x-content-type-options': 'nosniff',
  'cross-origin-resource-policy': 'same-origin',
};

/**
 * Starts serving.
 *
 * @param addOn texts of the built files
 * @param port 0 takes any free one; a port that is in use gives way to a free one
 */
export async function servePage(
  addOn: Readonly<Record<'Code.js' | 'Sidebar.html' | 'Check.html', string>>,
  port: number,
  keeper: Keeper,
): Promise<PageServer> {
  const texts = new Map([
    ...(await pageFiles(keeper.token)),
    ['addon/Code.js', addOn['Code.js']],
    ['addon/Sidebar.html', addOn['Sidebar.html']],
    ['addon/Check.html', addOn['Check.html']],
  ]);
  const server = createServer((request, response) => {
    answer(request, texts, keeper, response).catch(() => {
      // A file of a package that is gone, or a person who left: the next request is answered all the same.
      if (!response.headersSent) response.writeHead(500);
      response.end('This file cannot be read');
    });
  });
  await listen(server, port).catch(() => listen(server, 0));
  return {
    address: `http://localhost:${(server.address() as AddressInfo).port}/`,
    async close() {
      await keeper.desk.flush().catch(() => {});
      await new Promise<void>((done) => {
        server.close(() => done());
        server.closeAllConnections();
      });
    },
  };
}

async function answer(
  request: IncomingMessage,
  texts: ReadonlyMap<string, string>,
  keeper: Keeper,
  response: ServerResponse,
): Promise<void> {
  if (!isOurHost(request)) {
    response.writeHead(403).end('This program answers on localhost only');
    return;
  }
  const target = (request.url ?? '/').replace(/^\//, '');
  if (target.startsWith(REQUESTS)) return answerRequest(keeper, target.slice(REQUESTS.length), request, response);
  const name = nameIn(request.url ?? '/');
  const body = texts.get(name) ?? (await packageFile(name));
  const type = TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'text/plain';
  if (body === undefined) response.writeHead(404).end('Not found');
  else response.writeHead(200, { ...HEADERS, 'content-type': `${type}; charset=utf-8` }).end(body);
}

/** The file asked for. Cut out as text: what a request asks for need not be an address, and `//` is none. */
function nameIn(target: string): string {
  return target.replace(/[?#].*$/s, '').replace(/^\//, '') || 'index.html';
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((done, fail) => {
    server.once('error', fail);
    server.listen(port, 'localhost', () => {
      server.off('error', fail);
      done();
    });
  });
}

/** The page's own files: two scripts built in memory, the rest as written. */
async function pageFiles(token: string): Promise<[name: string, text: string][]> {
  const folder = join(projectFolder, 'src/workbook/page');
  const [page, scriptRun, html, css] = await Promise.all([
    bundled(join(folder, 'page.ts')),
    bundled(join(folder, 'scriptRun.ts')),
    readFile(join(folder, 'page.html'), 'utf8'),
    readFile(join(folder, 'page.css'), 'utf8'),
  ]);
  return [
    ['index.html', html.replace('{{token}}', token)],
    ['page.css', css],
    ['page.js', page],
    ['scriptRun.js', scriptRun],
  ];
}

async function bundled(entry: string): Promise<string> {
  const options = { bundle: true, write: false, format: 'iife', target: 'es2022', logLevel: 'error' } as const;
  const result = await build({ ...options, entryPoints: [entry], absWorkingDir: projectFolder });
  return result.outputFiles[0]?.text ?? '';
}

async function packageFile(name: string): Promise<Buffer | undefined> {
  const found = PACKAGE_FILES.get(name);
  if (!found) return undefined;
  const [packageName, file] = found;
  return readFile(join(projectFolder, 'node_modules', packageName, file));
}
