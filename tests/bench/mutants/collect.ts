/**
 * What the tests import in place of vitest's `test` and `describe`, so that any of them can be run alone, in any order and
 * without loading anything twice. `expect` is vitest's own.
 */
export { expect } from 'vitest';

type Hook = () => unknown;

interface Group {
  readonly outer: Group | null;
  readonly title: string;
  readonly before: Hook[];
  readonly beforeEach: Hook[];
  readonly afterEach: Hook[];
  isBegun: boolean;
}

/** A test with its hooks; throws where it fails. */
export interface Collected {
  readonly title: string;
  readonly run: () => Promise<void>;
}

let group: Group = newGroup(null, '');
let collected: Collected[] = [];
const closing: Hook[] = [];

function newGroup(outer: Group | null, title: string): Group {
  return { outer, title, before: [], beforeEach: [], afterEach: [], isBegun: false };
}

/** The tests of the file that `load` imports, in its order. */
export async function collect(load: () => Promise<unknown>): Promise<readonly Collected[]> {
  [group, collected] = [newGroup(null, ''), []];
  await load();
  return collected;
}

/** Runs what the tests wanted done after all. */
export async function closeAll(): Promise<void> {
  for (const hook of closing.splice(0)) await hook();
}

function groupOf(title: string, body: () => void): void {
  const outer = group;
  group = newGroup(outer, title);
  body();
  group = outer;
}

/** A test, with vitest's options before what it does or not. */
function testOf(title: string, ...given: readonly unknown[]): void {
  const body = given.find((one) => typeof one === 'function') as Hook;
  const own = group;
  const groups: Group[] = [];
  for (let at: Group | null = own; at !== null; at = at.outer) groups.unshift(at);
  const run = async () => {
    for (const one of groups) {
      if (!one.isBegun) for (const hook of one.before) await hook();
      one.isBegun = true;
    }
    for (const hook of groups.flatMap((one) => one.beforeEach)) await hook();
    await body();
    for (const hook of groups.flatMap((one) => one.afterEach)) await hook();
  };
  collected.push({ title: [...groups.map((one) => one.title), title].filter(Boolean).join(' > '), run });
}

/**
 * `each` calls the body with the items of a row that is a list, and with any other row as it is. What is left out where another
 * program is missing is always left out: asking it again for every change would take minutes.
 */
function withEach(one: (title: string, body: () => void) => void) {
  const each = (table: readonly unknown[]) => (title: string, body: (...args: unknown[]) => void) => {
    for (const [index, row] of table.entries())
      one(`${title} [${index}]`, () => body(...(Array.isArray(row) ? row : [row])));
  };
  const skipIf = (_isSkipped: boolean) => (_title: string) => {};
  return Object.assign(one, { each, skipIf });
}

export const test = withEach(testOf);
export const describe = withEach(groupOf);
export const beforeAll = (hook: Hook) => void group.before.push(hook);
export const beforeEach = (hook: Hook) => void group.beforeEach.push(hook);
export const afterEach = (hook: Hook) => void group.afterEach.push(hook);
export const afterAll = (hook: Hook) => void closing.push(hook);
