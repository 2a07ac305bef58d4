import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    // The last line says how many passed: CI and people read the same one.
    reporters: ['default', 'tests/support/closingLine.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
