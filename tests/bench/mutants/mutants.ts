/**
 * Do the tests bite? Small changes are made in the files of the core, and the tests that come by each are run with it until
 * one fails, the quickest first: a change that no test notices is either no change of what the program does, or a hole in
 * the tests.
 *
 *   npm run bench -- mutants [--sample N] [--seed N] [--area NAME,NAME]
 *
 * All changes of a run are compiled once, each behind a switch (`switched` in `mutate.ts`), and tried in a process each.
 */
import { fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../../../src/build.mjs';
import { seededRandom } from '../../support/seededRandom';
import { benchTable } from '../benchTable';
import { type Area, sourcesAt, testsAt } from './areas';
import { bundled, type Placed } from './bundle';
import { mutantsOf, withoutTypes } from './mutate';
import type { Said, TestPlace } from './runner';

export interface MutantOptions {
  readonly sample: number;
  readonly seed: number;
  readonly areas: readonly Area[];
}

/** Tries a sample, the same number of each area, and tells each survivor as soon as it is known. */
export async function tryMutants({ sample, seed, areas }: MutantOptions, say: (line: string) => void): Promise<void> {
  const rows: (string | number)[][] = [];
  for (const { name, files, tests } of areas) {
    const start = performance.now();
    const all = files.flatMap(sourcesAt).flatMap(mutantsIn);
    const chosen = sampled(all, Math.ceil(sample / areas.length), seed).map((one, number) => ({ ...one, number }));
    const survivors = await survivorsOf(chosen, [...new Set(tests.flatMap(testsAt))], (line) =>
      say(`${name}, ${line}`),
    );
    const killed = chosen.length - survivors;
    const minutes = (performance.now() - start) / 60_000;
    rows.push([name, all.length, chosen.length, killed, (100 * killed) / chosen.length, minutes]);
  }
  const headings = ['area', 'changes', 'tried', 'noticed', 'per cent'].map((heading) => ({ heading }));
  for (const line of benchTable([...headings, { heading: 'minutes', decimals: 1 }], rows)) say(line);
}

function mutantsIn(file: string): readonly Omit<Placed, 'number'>[] {
  const code = withoutTypes(readFileSync(join(projectFolder, file), 'utf8'));
  return mutantsOf(code).map((mutant) => ({ ...mutant, file }));
}

/** So many of a list, each at most once. */
function sampled<T>(list: readonly T[], count: number, seed: number): readonly T[] {
  const random = seededRandom(seed);
  const left = [...list];
  return Array.from(
    { length: Math.min(count, list.length) },
    () => left.splice(random.whole(0, left.length - 1), 1)[0],
  );
}

/** How many changes no test notices. */
async function survivorsOf(
  mutants: readonly Placed[],
  tests: readonly string[],
  say: (line: string) => void,
): Promise<number> {
  const cache = join(projectFolder, 'node_modules/.cache/plank-ledger');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'mutants-'));
  try {
    const script = await bundled(folder, tests, mutants);
    const known = await recorded(script, tests);
    const noticing = new Set<Known>();
    let survivors = 0;
    for (const mutant of mutants) {
      const near = known.filter(({ reached }) => reached.has(mutant.number));
      const first = await noticedBy(script, mutant.number, near);
      if (first !== null) noticing.add(first);
      else say(`${mutant.file}:${mutant.told}${near.length === 0 ? '   (no test comes by it)' : ''}`);
      survivors += first === null ? 1 : 0;
    }
    // They ran in another order than that of their files: had one failed for that, it would be said to notice anything.
    if ((await noticedBy(script, NONE_OF_THEM, [...noticing])) !== null) throw new Error('A test fails alone.');
    return survivors;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A test, how long it takes and the changes it comes by. */
interface Known {
  readonly test: TestPlace;
  readonly ms: number;
  readonly reached: ReadonlySet<number>;
}

/** Every test as it is, the quickest first. @throws Error where one fails without a change */
async function recorded(script: string, tests: readonly string[]): Promise<readonly Known[]> {
  const known: Known[] = [];
  let constants: readonly number[] = [];
  let atLoad = { ms: 0, reached: [] as readonly number[] };
  await run({ script, number: -1, tests: [], mostMs: () => MOST_MS }, (said) => {
    if (said.kind === 'failed') throw new Error(`"${said.title}" fails as it is: ${said.why}`);
    if (said.kind === 'constants') constants = said.reached;
    if (said.kind === 'file') atLoad = said;
    if (said.kind !== 'ran') return;
    const reached = new Set([...constants, ...atLoad.reached, ...said.reached]);
    known.push({ test: said.test, ms: said.ms + atLoad.ms, reached });
  });
  if (known.length === 0) throw new Error(`No tests in ${tests.join(', ')}.`);
  return known.sort((a, b) => a.ms - b.ms);
}

/** No change has this number. */
const NONE_OF_THEM = 99_999;
/** For all tests of an area. */
const MOST_MS = 3_600_000;

/** The first of these tests that fails with a change, or hangs; null where none does. */
async function noticedBy(script: string, number: number, near: readonly Known[]): Promise<Known | null> {
  const knownAt = ({ file, index }: TestPlace) =>
    near.find(({ test }) => test.file === file && test.index === index) ?? near[0];
  const mostMs = (test: TestPlace) => (number === NONE_OF_THEM ? MOST_MS : 10_000 + 6 * knownAt(test).ms);
  if (near.length === 0) return null;
  let [last, isClean] = [near[0], false];
  await run({ script, number, tests: near.map(({ test }) => test), mostMs }, (said) => {
    if (said.kind === 'begun') last = knownAt(said.test);
    if (said.kind === 'clean') isClean = true;
  });
  return isClean ? null : last;
}

interface Trial {
  readonly script: string;
  /** Of the change; below 0 to record all tests. */
  readonly number: number;
  readonly tests: readonly TestPlace[];
  readonly mostMs: (test: TestPlace) => number;
}

/** Runs tests with one change in a process of its own, and ends it when a test takes longer than it may. */
function run({ script, number, tests, mostMs }: Trial, hear: (said: Said) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const env = { ...process.env, PLANK_LEDGER_MUTANT: String(number) };
    const child = fork(script, { cwd: projectFolder, env, stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
    let clock = setTimeout(() => child.kill('SIGKILL'), MOST_MS);
    child.on('message', (message) => {
      const said = message as Said;
      if (said.kind === 'begun') {
        clearTimeout(clock);
        clock = setTimeout(() => child.kill('SIGKILL'), mostMs(said.test));
      }
      try {
        hear(said);
      } catch (error) {
        child.kill('SIGKILL');
        reject(error);
      }
    });
    // Not when the process ends: messages may still be on their way then.
    child.on('disconnect', () => {
      clearTimeout(clock);
      child.kill('SIGKILL');
      resolve();
    });
    child.send(tests);
  });
}
