/** Serves the page with the add-on's built files to this computer only. */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { build } from 'esbuild';
import { projectFolder } from '../build.mjs';

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
 * Starts serving.
 *
 * @param addOn texts of the built files
 * @param port 0 takes any free one; a port that is in use gives way to a free one
 */
export async function servePage(
  addOn: Readonly<Record<'Code.js' | 'Sidebar.html', string>>,
  port: number,
): Promise<PageServer> {
  const texts = new Map([
    ...(await pageFiles()),
    ['addon/Code.js', addOn['Code.js']],
    ['addon/Sidebar.html', addOn['Sidebar.html']],
  ]);
  const server = createServer(async (request, response) => {
    const name = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1) || 'index.html';
    const body = texts.get(name) ?? (await packageFile(name));
    const type = TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'text/plain';
    if (body === undefined) response.writeHead(404).end('Not found');
    else response.writeHead(200, { 'content-type': `${type}; charset=utf-8`, 'cache-control': 'no-store' }).end(body);
  });
  await listen(server, port).catch(() => listen(server, 0));
  return {
    address: `http://localhost:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
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
async function pageFiles(): Promise<[name: string, text: string][]> {
  const folder = join(projectFolder, 'src/workbook/page');
  const [page, scriptRun, html, css] = await Promise.all([
    bundled(join(folder, 'page.ts')),
    bundled(join(folder, 'scriptRun.ts')),
    readFile(join(folder, 'page.html'), 'utf8'),
    readFile(join(folder, 'page.css'), 'utf8'),
  ]);
  return [
    ['index.html', html],
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
