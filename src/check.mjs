// Everything that is checked without running it: node src/check.mjs. Every part runs, whatever the others found.
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';

const [, , typed] = process.argv;
if (typed !== undefined) {
  console.error(`${typed}: npm run check takes nothing, it looks at everything.`);
  process.exit(1);
}

const root = resolve(import.meta.dirname, '..');
const PARTS = [
  ['types of the add-on', 'tsc', ['-p', 'tsconfig.json']],
  ['types of the workbook, the page and the tests', 'tsc', ['-p', 'src/workbook/tsconfig.json']],
  ['style', 'biome', ['check', '.']],
];

const failed = PARTS.filter(([title, program, args]) => {
  console.log(`\n${title}: ${program} ${args.join(' ')}`);
  const { status } = spawnSync(join(root, 'node_modules/.bin', program), args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  return status !== 0;
}).map(([title]) => title);

console.log(failed.length === 0 ? '\nAll checks passed.' : `\nNot right yet: ${failed.join('; ')}.`);
process.exitCode = failed.length === 0 ? 0 : 1;
