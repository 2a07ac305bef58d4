import { join, resolve } from 'node:path';
import { buildAddOn } from '../../src/build.mjs';

/** Where a test run keeps its build: the same bytes as dist/, without touching it while tests run side by side. */
export const builtFolder = resolve(import.meta.dirname, '../../node_modules/.cache/plank-ledger/built');

/** Builds the add-on once before the tests. */
export async function setup(): Promise<void> {
  await buildAddOn(builtFolder);
}

/** Path of one built file. */
export function builtFile(name: 'Code.js' | 'Sidebar.html' | 'appsscript.json'): string {
  return join(builtFolder, name);
}
