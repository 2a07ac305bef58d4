import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
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
