import { isDate } from '../customFunctions';
import type { Book } from './book';

/**
 * A service object as the script sees it: every call is counted and checked, and a member that the platform has but
 * this layer does not is refused loudly instead of being undefined.
 *
 * @param service the platform's name of the class, such as `Range`
 * @param members what is implemented
 */
export function strict<Service extends object>(book: Book, service: string, members: object): Service {
  const wrapped = new Map<string, unknown>();
  return new Proxy(members, {
    get(target, name) {
      if (typeof name === 'symbol') return undefined;
      if (name === 'toString') return () => service;
      if (!Object.hasOwn(target, name))
        throw new Error(`${service}.${name} is not implemented in the embedded workbook`);
      const member = (target as Record<string, unknown>)[name];
      if (typeof member !== 'function') return member;
      if (!wrapped.has(name)) wrapped.set(name, guarded(book, service, name, member));
      return wrapped.get(name);
    },
    set(_, name) {
      throw new Error(`${service}.${String(name)} cannot be set`);
    },
  }) as Service;
}

function guarded(book: Book, service: string, name: string, member: CallableFunction) {
  return (...args: unknown[]): unknown => {
    book.access.enter(service, name);
    const result = member(...args);
    return Array.isArray(result) || isDate(result) ? insideOf(book, result) : result;
  };
}

/** Values go into the script's realm; lists of service objects stay as they are. */
function insideOf(book: Book, result: unknown): unknown {
  const first = Array.isArray(result) ? (Array.isArray(result[0]) ? result[0][0] : result[0]) : result;
  const isService = typeof first === 'object' && first !== null && !isDate(first);
  return isService ? result : book.inside(result);
}

/** An enumeration of the platform: a member that is not listed is refused. */
export function enumeration<Names extends string>(service: string, names: readonly Names[]): Record<Names, Names> {
  const members = Object.fromEntries(names.map((name) => [name, name])) as Record<Names, Names>;
  return new Proxy(members, {
    get(target, name) {
      if (typeof name === 'symbol') return undefined;
      if (!Object.hasOwn(target, name))
        throw new Error(`${service}.${name} is not implemented in the embedded workbook`);
      return target[name as Names];
    },
  });
}
