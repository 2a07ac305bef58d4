/** Where the built script runs: a realm of its own with the platform's globals and no others. */
export interface ScriptRuntime {
  /** Evaluates the script once; `services` are its only globals beside the language's own. */
  load(code: string, services: Readonly<Record<string, unknown>>): void;
  has(functionName: string): boolean;
  /**
   * Calls a function of the script.
   *
   * @param args rebuilt inside first, since a date or array of another realm is not an `instanceof` ours
   * @param limitMilliseconds how long it may run
   * @throws TimeLimitError when it ran longer, else whatever the function throws
   */
  call(functionName: string, args: readonly unknown[], limitMilliseconds: number): unknown;
  /** A plain value (text, number, boolean, null, undefined, date, arrays and objects of these) rebuilt inside. */
  inside<Value>(value: Value): Value;
}

/** A run that took longer than the platform allows. */
export class TimeLimitError extends Error {
  override readonly name = 'TimeLimitError';
}

/** What a person may start a run for, and how long the platform lets it last. */
export const TIME_LIMITS = { customFunction: 30_000, simpleTrigger: 30_000, script: 360_000 } as const;

/** Standard globals of the language that the platform does not promise: the script must do without them. */
export const UNPROMISED_GLOBALS = ['WebAssembly', 'SharedArrayBuffer', 'Atomics', 'Intl', 'Iterator'] as const;

/** Globals of the language that a script may count on; the three that cannot be names of parameters are left out. */
const LANGUAGE_GLOBALS: readonly string[] =
  `Array ArrayBuffer BigInt BigInt64Array BigUint64Array Boolean DataView Date Error EvalError Float32Array
  Float64Array Function Int16Array Int32Array Int8Array JSON Map Math Number Object Promise Proxy RangeError ReferenceError
  Reflect RegExp Set String Symbol SyntaxError TypeError URIError Uint16Array Uint32Array Uint8Array Uint8ClampedArray
  WeakMap WeakRef WeakSet decodeURI decodeURIComponent encodeURI encodeURIComponent escape isFinite isNaN parseFloat parseInt
  unescape`.split(/\s+/);

/** A script made into one function of its globals, which answers the functions that the script declares. */
export interface ScriptFunction {
  readonly parameters: readonly string[];
  readonly body: string;
}

/**
 * The globals are handed in as parameters, since looking up a global is slow in a context of Node (five to ten times
 * the time of a search), and since a page has many more of them than the script may see.
 *
 * @param covered names that are to be undefined inside
 */
export function scriptFunction(
  code: string,
  serviceNames: readonly string[],
  covered: readonly string[],
): ScriptFunction {
  const declared = [...code.matchAll(/^function (\w+)\(/gm)].map((match) => match[1]);
  const names = new Set([...LANGUAGE_GLOBALS, ...serviceNames, ...covered]);
  return { parameters: [...names], body: `${code}\nreturn { ${declared.join(', ')} };` };
}

/** Whether the language itself has this global, whatever else the script finds around it. */
export function isLanguageGlobal(name: string): boolean {
  return LANGUAGE_GLOBALS.includes(name);
}
