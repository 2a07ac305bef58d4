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
