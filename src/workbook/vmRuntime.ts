/** Runs the built script in Node, in a fresh context that has only the language's own globals. */
import { type Context, createContext, runInContext, Script } from 'node:vm';
import { type ScriptRuntime, scriptFunction, TimeLimitError, UNPROMISED_GLOBALS } from './runtime';

/** Present for the length of one call only. */
const CALL = '__call__';

export function createVmRuntime(): ScriptRuntime {
  const context = createContext(Object.create(null), { codeGeneration: { strings: false, wasm: false } });
  runInContext(UNPROMISED_GLOBALS.map((name) => `delete globalThis.${name};`).join(''), context);
  const rebuild = runInContext(REBUILD, context) as <Value>(value: Value) => Value;
  const callScript = new Script(`${CALL}()`);
  let functions: Readonly<Record<string, (...args: unknown[]) => unknown>> = {};
  return {
    load(code, services) {
      functions = evaluate(context, code, services);
    },
    has: (name) => Object.hasOwn(functions, name),
    call(name, args, limitMilliseconds) {
      if (!Object.hasOwn(functions, name)) throw new ReferenceError(`Script function not found: ${name}`);
      const inner = args.map(rebuild);
      // A formula that is recalculated during a call calls in turn.
      const before = Object.getOwnPropertyDescriptor(context, CALL);
      Object.defineProperty(context, CALL, { value: () => functions[name]?.(...inner), configurable: true });
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

function evaluate(context: Context, code: string, services: Readonly<Record<string, unknown>>) {
  const { parameters, body } = scriptFunction(code, Object.keys(services), []);
  const script = runInContext(`(function (${parameters.join(', ')}) {${body}})`, context, { filename: 'Code.js' });
  const values = parameters.map((name) =>
    Object.hasOwn(services, name) ? services[name] : runInContext(name, context),
  );
  return script(...values);
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
