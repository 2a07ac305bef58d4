/** Runs the built script in a browser page. The page shares its realm, so every browser global is covered up. */
import { type ScriptRuntime, UNPROMISED_GLOBALS } from './runtime';

/** The language's own globals: everything else a page has is hidden from the script. */
const LANGUAGE = new Set(
  `Array ArrayBuffer BigInt BigInt64Array BigUint64Array Boolean DataView Date Error EvalError Float32Array Float64Array
  Function Infinity Int16Array Int32Array Int8Array JSON Map Math NaN Number Object Promise Proxy RangeError ReferenceError
  Reflect RegExp Set String Symbol SyntaxError TypeError URIError Uint16Array Uint32Array Uint8Array Uint8ClampedArray
  WeakMap WeakRef WeakSet decodeURI decodeURIComponent encodeURI encodeURIComponent escape eval isFinite isNaN parseFloat
  parseInt undefined unescape`.split(/\s+/),
);

export function createPageRuntime(): ScriptRuntime {
  let functions: Readonly<Record<string, unknown>> = {};
  return {
    load(code, services) {
      const hidden = [...globalNames(), ...UNPROMISED_GLOBALS].filter(
        (name) => !LANGUAGE.has(name) && !(name in services),
      );
      const names = [...new Set([...Object.keys(services), ...hidden])];
      const declared = [...code.matchAll(/^function (\w+)\(/gm)].map((match) => match[1]);
      const evaluate = new Function(...names, `${code}\nreturn {${declared.join(', ')}};`);
      functions = evaluate(...names.map((name) => services[name]));
    },
    has: (name) => typeof functions[name] === 'function',
    // In a page nothing can stop a run in the same thread, so the time limit is not kept here.
    call(name, args) {
      const called = functions[name];
      if (typeof called !== 'function') throw new ReferenceError(`Script function not found: ${name}`);
      return called(...args);
    },
    inside: (value) => value,
  };
}

/** Names that can be parameters: what stands on the window and on its prototypes. */
function globalNames(): string[] {
  const names = new Set<string>();
  for (let holder: object | null = window; holder; holder = Object.getPrototypeOf(holder)) {
    for (const name of Object.getOwnPropertyNames(holder)) names.add(name);
  }
  return [...names].filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== 'arguments');
}
