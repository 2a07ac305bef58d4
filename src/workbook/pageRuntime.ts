/** Runs the built script in a browser page. The page shares its realm, so every browser global is covered up. */
import { isLanguageGlobal, type ScriptRuntime, scriptFunction, UNPROMISED_GLOBALS } from './runtime';

export function createPageRuntime(): ScriptRuntime {
  let functions: Readonly<Record<string, (...args: unknown[]) => unknown>> = {};
  return {
    load(code, services) {
      const { parameters, body } = scriptFunction(code, Object.keys(services), pageGlobals());
      const evaluate = new Function(...parameters, body);
      functions = evaluate(...parameters.map((name) => services[name] ?? languageGlobal(name)));
    },
    has: (name) => Object.hasOwn(functions, name),
    // In a page nothing can stop a run in the same thread, so the time limit is not kept here.
    call(name, args) {
      if (!Object.hasOwn(functions, name)) throw new ReferenceError(`Script function not found: ${name}`);
      return functions[name]?.(...args);
    },
    inside: (value) => value,
  };
}

/** What a page adds to the language: the names on the window that a frame without a page would not have. */
function pageGlobals(): string[] {
  const names = new Set<string>(UNPROMISED_GLOBALS);
  for (let holder: object | null = window; holder; holder = Object.getPrototypeOf(holder)) {
    for (const name of Object.getOwnPropertyNames(holder)) names.add(name);
  }
  return [...names].filter((name) => isParameterName(name));
}

/** Words of the language can be no parameters, and neither can what strict code keeps for itself. */
function isParameterName(name: string): boolean {
  return /^[A-Za-z_$][\w$]*$/.test(name) && !['arguments', 'eval', 'undefined', 'NaN', 'Infinity'].includes(name);
}

function languageGlobal(name: string): unknown {
  return isLanguageGlobal(name) ? (globalThis as Record<string, unknown>)[name] : undefined;
}
