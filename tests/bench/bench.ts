/**
 * Benchmarks, never part of the tests:
 *
 *   npm run bench -- [--cases FILE] [--milp-seconds N] [--effort N]
 *   npm run bench -- floors
 *   npm run bench -- page
 *   npm run bench -- fill
 *   npm run bench -- beliefs
 *   npm run bench -- fuzz [--calls N] [--seed N]
 *   npm run bench -- mutants [--sample N] [--seed N] [--area NAME,NAME]
 *
 * Every plan is checked before it is timed. `--milp-seconds` limits the general solver a job (5 where it is missing, 0
 * leaves it out); `--effort` multiplies the limit of steps of our search. `floors` shows the table of four floors alone. The last table times the built add-on itself. `page`
 * is a bench of its own: how the page answers to typing, in a browser; `fill` times the tabs of
 * a house and counts the service calls; `beliefs` lists what is believed of the spreadsheet service. `fuzz` tries bad input by the million
 * (`fuzz.ts`), `mutants` whether the tests notice small changes (`mutants/mutants.ts`).
 */
import { resolve } from 'node:path';
import { planCuts } from '../../src/cutting/search';
import { beliefLines } from './beliefs';
import { readCases } from './caseFile';
import { coldReport } from './cold';
import { type CaseResult, compareCase } from './compareCases';
import { fillTables } from './fill';
import { floorsTable } from './floorsTable';
import { fuzz } from './fuzz';
import { growthTable } from './growth';
import { areasNamed } from './mutants/areas';
import { tryMutants } from './mutants/mutants';
import { pageTables } from './page';
import { caseTable, categoryTable, solverLines, waitingLines } from './report';

const USAGE =
  'Use: npm run bench, with any of --cases FILE, --milp-seconds N, --effort N; or npm run bench -- floors, page, fill, fuzz (--calls N, --seed N) or mutants (--sample N, --seed N, --area NAME,NAME).';

interface BenchOptions {
  readonly cases: string;
  readonly milpSeconds: number;
  readonly effort: number;
}

function valuesOf(args: readonly string[], known: readonly string[]): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  for (let i = 0; i < args.length; i += 2) {
    if (!known.includes(args[i]) || args[i + 1] === undefined)
      throw new Error(`"${args[i]}" is no option here, or lacks its value. ${USAGE}`);
    values.set(args[i], args[i + 1]);
  }
  return values;
}

function readOptions(args: readonly string[]): BenchOptions {
  const values = valuesOf(args, ['--cases', '--milp-seconds', '--effort']);
  const milpSeconds = Number(values.get('--milp-seconds') ?? 5);
  const effort = Number(values.get('--effort') ?? 1);
  if (!(milpSeconds >= 0)) throw new Error('--milp-seconds needs a number of seconds, 0 for none.');
  if (!(effort > 0)) throw new Error('--effort needs a number above 0.');
  return { cases: resolve(values.get('--cases') ?? 'tests/bench/cases.json'), milpSeconds, effort };
}

function say(title: string, lines: readonly string[]): void {
  process.stdout.write(`\n${title}\n\n${lines.join('\n')}\n`);
}

/** On a terminal only: the job at work, overwritten by the next. */
function showProgress(text: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r${text.padEnd(40)}\r`);
}

async function bench(options: BenchOptions): Promise<void> {
  const cases = readCases(options.cases);
  // All times are warm ones: the first jobs would otherwise be timed while the engine still compiles.
  for (const { job } of cases) planCuts(job);
  const results: CaseResult[] = [];
  for (const one of cases) {
    showProgress(one.id);
    results.push(await compareCase(one, options.effort, options.milpSeconds));
  }
  showProgress('');
  say('Jobs', caseTable(results));
  say(
    'By category (carry, keep, area+10%: planks more than ours; short: fewer than any plan can use)',
    categoryTable(results),
  );
  say('Offcuts and strips waiting at once', waitingLines(results));
  say('Four floors as typed, planned for the fewest planks and to be easy to lay', floorsTable());
  say('Beside a general solver', solverLines(results, options.milpSeconds));
  say('Growth with the rows: seeded rooms, three of each', await growthTable(options.effort));
  say('The built add-on', [await coldReport()]);
}

/** A million calls from a seed of the day, or as asked. */
function readFuzzOptions(args: readonly string[]): { readonly calls: number; readonly seed: number } {
  const values = valuesOf(args, ['--calls', '--seed']);
  const calls = Number(values.get('--calls') ?? 1_000_000);
  const seed = Number(values.get('--seed') ?? Math.floor(Date.now() / 86_400_000) * 10_000);
  if (!Number.isInteger(calls) || calls < 1) throw new Error('--calls needs a whole number above 0.');
  if (!Number.isInteger(seed)) throw new Error('--seed needs a whole number.');
  return { calls, seed };
}

/** A sample of every area from a fixed seed, or as asked. */
function readMutantOptions(args: readonly string[]): Parameters<typeof tryMutants>[0] {
  const values = valuesOf(args, ['--sample', '--seed', '--area']);
  const [sample, seed] = [Number(values.get('--sample') ?? 100), Number(values.get('--seed') ?? 1)];
  if (!(sample > 0) || !(seed >= 1)) throw new Error('--sample and --seed need numbers from 1 up.');
  return { sample, seed, areas: areasNamed(values.get('--area') ?? '') };
}

const write = (line: string) => process.stdout.write(`${line}\n`);

/** What was typed, read; a sentence and the end where it cannot be. */
function orStop<Options>(read: () => Options): Options {
  try {
    return read();
  } catch (error) {
    console.error((error as Error).message);
    process.exit(1);
  }
}

async function run(args: readonly string[]): Promise<void> {
  const [kind, ...options] = args;
  if (args.join() === 'page') say('Typing on the page', await pageTables());
  else if (args.join() === 'fill') {
    const { times, calls } = await fillTables();
    say('A house of five rooms, filled in Node', times);
    say('Calls of the services', calls);
  } else if (args.join() === 'floors') say('Four floors as typed', floorsTable());
  else if (args.join() === 'beliefs') say('What is believed of the spreadsheet service', beliefLines());
  else if (kind === 'fuzz') {
    const isClean = await fuzz(
      orStop(() => readFuzzOptions(options)),
      write,
    );
    if (!isClean) process.exitCode = 1;
  } else if (kind === 'mutants') {
    await tryMutants(
      orStop(() => readMutantOptions(options)),
      write,
    );
  } else await bench(orStop(() => readOptions(args)));
}

await run(process.argv.slice(2));
