// Runs a TypeScript file of this project in Node: node src/run.mjs FILE [arguments]
import { randomBytes } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { unitClassOnly } from './lengthUnitsOnly.mjs';

const [, , file, ...rest] = process.argv;
const cache = resolve(import.meta.dirname, '../node_modules/.cache/plank-ledger');
mkdirSync(cache, { recursive: true });
const outfile = join(cache, `${randomBytes(6).toString('hex')}.mjs`);
process.argv = [process.argv[0], resolve(file), ...rest];
try {
  await build({
    entryPoints: [file],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    plugins: [unitClassOnly],
    logLevel: 'error',
  });
  await import(pathToFileURL(outfile).href);
} finally {
  rmSync(outfile, { force: true });
}
