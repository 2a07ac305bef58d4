import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { UNIT_CLASS_FILE } from '../src/lengthUnitsOnly.mjs';

/** The package's front door takes seconds to load; the one class that is used does not. */
const unitClass = {
  name: 'unit class only',
  enforce: 'pre' as const,
  resolveId: (source: string, importer?: string) =>
    source === 'mathjs' && importer?.endsWith('unitLibrary.ts') ? { id: UNIT_CLASS_FILE, external: true } : null,
};

const root = resolve(import.meta.dirname, '..');

/** Tests that put another module in the place of one of ours: what they load must not be what the others have loaded. */
const withOtherModules = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .map((name) => `tests/${name.replaceAll('\\', '/')}`)
  .filter((name) => name.endsWith('.test.ts') && readFileSync(join(root, name), 'utf8').includes('vi.mock('));

export default defineConfig({
  plugins: [unitClass],
  root,
  test: {
    projects: [
      // Loading every module anew for every file costs more than the tests: a worker loads it once.
      {
        extends: true,
        test: { name: 'shared', include: ['tests/**/*.test.ts'], exclude: withOtherModules, isolate: false },
      },
      { extends: true, test: { name: 'apart', include: withOtherModules } },
    ],
    setupFiles: 'tests/support/ownTimers.ts',
    // The last line says how many passed: CI and people read the same one.
    reporters: ['default', 'tests/support/closingLine.ts'],
    // Two cores are all a small machine has: both work.
    maxWorkers: '100%',
    // Long enough for a busy machine: a test that fails, fails by what it finds, not by its time.
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
