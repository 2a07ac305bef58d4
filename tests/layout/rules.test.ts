/** The table of rules: every rule in it does something. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { RULES } from '../../src/layout/rules';

const source = resolve(import.meta.dirname, '../../src');
/** All code but the table itself, without its comments. */
const code = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && name.replaceAll('\\', '/') !== 'layout/rules.ts')
  .map((name) => readFileSync(join(source, name), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, ''))
  .join('\n');

test.each(RULES.map(({ label, key }) => [label, key]))('%s is used somewhere', (_, key) => {
  expect(code).toMatch(new RegExp(`\\b${key}\\b`));
});
