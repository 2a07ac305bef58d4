import { createContext, runInContext } from 'node:vm';
import { UNPROMISED_GLOBALS } from '../../src/workbook/runtime';

/** Services that the platform puts into the script's scope. */
export const SERVICE_NAMES = [
  'SpreadsheetApp',
  'HtmlService',
  'PropertiesService',
  'LockService',
  'Session',
  'Utilities',
  'Logger',
  'console',
  'CacheService',
  'UrlFetchApp',
  'ScriptApp',
] as const;

/** Evaluates a script with nothing but the language, and services that must not be touched. */
export function evaluateBare(code: string): { readonly globals: string[]; readonly touched: string[] } {
  const context = createContext(Object.create(null), { codeGeneration: { strings: false, wasm: false } });
  const touched: string[] = [];
  runInContext(UNPROMISED_GLOBALS.map((name) => `delete globalThis.${name};`).join(''), context);
  for (const name of SERVICE_NAMES) {
    const note = (_: unknown, member: PropertyKey) => void touched.push(`${name}.${String(member)}`);
    Object.defineProperty(context, name, { value: new Proxy({}, { get: note, has: () => false }), configurable: true });
  }
  const before = new Set(Object.getOwnPropertyNames(context));
  runInContext(code, context, { filename: 'Code.js' });
  return { globals: Object.getOwnPropertyNames(context).filter((name) => !before.has(name)), touched };
}
