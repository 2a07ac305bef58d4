/** Runs the built script in Node, in a fresh context that has only the language's own globals. */
import { createContext, runInContext, Script } from 'node:vm';
import { type ScriptRuntime, TimeLimitError, UNPROMISED_GLOBALS } from './runtime';

/** Present for the length of one call only, so that the script never meets it while it is loaded. */
const CALL = '__call__';

export function createVmRuntime(): ScriptRuntime {
  const context = createContext(Object.create(null), { codeGeneration: { strings: false, wasm: false } });
  runInContext(UNPROMISED_GLOBALS.map((name) => `delete globalThis.${name};`).join(''), context);
  const rebuild = runInContext(REBUILD, context) as <Value>(value: Value) => Value;
  const callScript = new Script(`${CALL}()`);
  const read = (name: string): unknown =>
    /^\w+$/.test(name) ? runInContext(`typeof ${name} === 'function' && ${name}`, context) : false;
  return {
    load(code, services) {
      for (const [name, service] of Object.entries(services)) {
        Object.defineProperty(context, name, { value: service, configurable: true, writable: true });
      }
      runInContext(code, context, { filename: 'Code.js' });
    },
    has: (name) => Boolean(read(name)),
    call(name, args, limitMilliseconds) {
      const called = read(name);
      if (typeof called !== 'function') throw new ReferenceError(`Script function not found: ${name}`);
      const inner = args.map(rebuild);
      const before = Object.getOwnPropertyDescriptor(context, CALL);
      Object.defineProperty(context, CALL, { value: () => called(...inner), configurable: true });
      try {
        return callScript.runInContext(context, { timeout: limitMilliseconds });
      } catch (error) {
        throw isTimeout(error) ? new TimeLimitError('Exceeded maximum execution time') : error;
      } finally {
        if (before) Object.defineProperty(context, CALL, before);
        else delete context[CALL];
      }
    },
    inside: rebuild,
  };
}

function isTimeout(error: unknown): boolean {
  return (error as { code?: unknown } | null)?.code === 'ERR_SCRIPT_EXECUTION_TIMEOUT';
}

/** Runs inside: copies plain data with the context's own Array, Object and Date. */
const REBUILD = `(function rebuild(value) {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) {
    const items = [];
    for (let i = 0; i < value.length; i++) items.push(rebuild(value[i]));
    return items;
  }
  if (Object.prototype.toString.call(value) === '[object Date]') return new Date(Number(value));
  const copy = {};
  for (const key of Object.keys(value)) copy[key] = rebuild(value[key]);
  return copy;
})`;
