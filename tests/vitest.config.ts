import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { UNIT_CLASS_FILE } from '../src/lengthUnitsOnly.mjs';

/** The package's front door takes seconds to load; the one class that is used does not. */
const unitClass = {
  name: 'unit class only',
  enforce: 'pre' as const,
  resolveId: (source: string, importer?: string) =>
    source === 'mathjs' && importer?.endsWith('unitLibrary.ts') ? { id: UNIT_CLASS_FILE, external: true } : null,
};

export default defineConfig({
  plugins: [unitClass],
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    // The last line says how many passed: CI and people read the same one.
    reporters: ['default', 'tests/support/closingLine.ts'],
    // Two cores are all a small machine has: both work.
    maxWorkers: '100%',
    // Long enough for a busy machine: a test that fails, fails by what it finds, not by its time.
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
