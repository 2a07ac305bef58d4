/**
 * What may pass between a page and the script through google.script.run: text, numbers, booleans, null, and arrays
 * and objects of these. Source: Apps Script guide, HTML service, "Communicate with server functions", parameters and
 * return values.
 */

/** A legal copy of a value. @throws TypeError where the platform would refuse it @param what named in the message */
function legalCopy(value: unknown, what: string): unknown {
  return copy(value, what, []);
}

function copy(value: unknown, what: string, holders: readonly object[]): unknown {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  // A missing value inside an array arrives as null.
  if (value === undefined) return holders.length > 0 ? null : undefined;
  if (typeof value !== 'object') throw new TypeError(`${what}: a ${typeof value} cannot be passed`);
  if (holders.includes(value)) throw new TypeError(`${what}: an object that contains itself cannot be passed`);
  const inner = [...holders, value];
  if (Array.isArray(value)) return value.map((item) => copy(item, what, inner));
  const kind = Object.prototype.toString.call(value).slice(8, -1);
  if (kind !== 'Object') throw new TypeError(`${what}: a ${kind} cannot be passed`);
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  return Object.fromEntries(entries.map(([key, item]) => [key, copy(item, what, inner)]));
}

/** Legal copies of all arguments of a call. */
export function legalArguments(functionName: string, args: readonly unknown[]): unknown[] {
  return args.map((value, i) => legalCopy(value, `google.script.run.${functionName}, argument ${i + 1}`));
}

/** A legal copy of what a call answered. */
export function legalResult(functionName: string, value: unknown): unknown {
  return legalCopy(value, `google.script.run.${functionName}, return value`);
}

/** Names ending in an underscore are private: no page may call them. */
export function isPrivate(functionName: string): boolean {
  return functionName.endsWith('_');
}
