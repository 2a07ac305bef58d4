/**
 * Runs in a process of its own, a child of `mutants.ts`: every test with no change in force, to learn its time and the changes
 * it comes by, or some of them with one change, until the first that fails. What is to be run and what came of it are messages.
 */
import fc from 'fast-check';
import { type Collected, closeAll, collect } from './collect';
import { inForce, takeReached } from './switch';

/** A test of a file, by its place there. */
export interface TestPlace {
  readonly file: number;
  readonly index: number;
}

export type Said =
  | { readonly kind: 'constants'; readonly reached: readonly number[] }
  | { readonly kind: 'file'; readonly file: number; readonly ms: number; readonly reached: readonly number[] }
  | { readonly kind: 'begun'; readonly test: TestPlace }
  | { readonly kind: 'ran'; readonly test: TestPlace; readonly ms: number; readonly reached: readonly number[] }
  | { readonly kind: 'failed'; readonly title: string; readonly why: string }
  | { readonly kind: 'clean' };

/** Files that are changed and test files, each as a function that loads it. */
export interface Loaders {
  readonly changed: readonly (() => Promise<unknown>)[];
  readonly tests: readonly (() => Promise<unknown>)[];
}

const say = (said: Said) => void process.send?.(said);

export function listen(loaders: Loaders): void {
  // A property that fails has told all that is asked here: no smaller example is looked for.
  fc.configureGlobal({ endOnFailure: true });
  process.once('message', async (asked: readonly TestPlace[]) => {
    await (inForce < 0 ? recordAll(loaders) : runUntilFailure(loaders, asked));
    process.disconnect();
  });
}

async function recordAll({ changed, tests }: Loaders): Promise<void> {
  for (const load of changed) await load();
  say({ kind: 'constants', reached: takeReached() });
  for (const [file, load] of tests.entries()) {
    const start = performance.now();
    const all = await collect(load);
    say({ kind: 'file', file, ms: performance.now() - start, reached: takeReached() });
    for (const [index, one] of all.entries()) {
      const begun = performance.now();
      if (!(await passes(one))) continue;
      say({ kind: 'ran', test: { file, index }, ms: performance.now() - begun, reached: takeReached() });
    }
  }
  await closeAll();
}

async function runUntilFailure({ tests }: Loaders, asked: readonly TestPlace[]): Promise<void> {
  const loaded = new Map<number, readonly Collected[]>();
  for (const test of asked) {
    say({ kind: 'begun', test });
    const all = loaded.get(test.file) ?? (await loadedOrTold(tests[test.file]));
    if (all === null || !(await passes(all[test.index]))) return closeAll();
    loaded.set(test.file, all);
  }
  await closeAll();
  say({ kind: 'clean' });
}

async function loadedOrTold(load: () => Promise<unknown>): Promise<readonly Collected[] | null> {
  try {
    return await collect(load);
  } catch (error) {
    say({ kind: 'failed', title: 'loading', why: String(error) });
    return null;
  }
}

/** A change in what tests are made from may leave one out: that is noticed too. */
async function passes(one: Collected | undefined): Promise<boolean> {
  try {
    if (one === undefined) throw new Error('There is no such test.');
    await one.run();
    return true;
  } catch (error) {
    say({ kind: 'failed', title: one?.title ?? '', why: String(error).slice(0, 500) });
    return false;
  }
}
