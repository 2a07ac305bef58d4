/**
 * Benchmarks, never part of the tests:
 *
 *   npm run bench -- [--cases FILE] [--milp-seconds N] [--effort N]
 *
 * Every plan is checked before it is timed. `--milp-seconds` limits the general solver a job (5 where it is missing, 0
 * leaves it out); `--effort` multiplies the limit of steps of our search. The last table times the built add-on itself.
 */
import { resolve } from 'node:path';
import { planCuts } from '../../src/cutting/search';
import { readCases } from './caseFile';
import { coldReport } from './cold';
import { type CaseResult, compareCase } from './compareCases';
import { growthTable } from './growth';
import { caseTable, categoryTable, solverLines, waitingLines } from './report';

interface BenchOptions {
  readonly cases: string;
  readonly milpSeconds: number;
  readonly effort: number;
}

function readOptions(args: readonly string[]): BenchOptions {
  const values = new Map<string, string>();
  for (let i = 0; i < args.length; i += 2) {
    const known = ['--cases', '--milp-seconds', '--effort'].includes(args[i]);
    if (!known || args[i + 1] === undefined)
      throw new Error(`"${args[i]}" is no option of the bench, or lacks its value.`);
    values.set(args[i], args[i + 1]);
  }
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
  say('Beside a general solver', solverLines(results, options.milpSeconds));
  say('Growth with the rows: seeded rooms, three of each', growthTable(options.effort));
  say('The built add-on', [await coldReport()]);
}

await bench(readOptions(process.argv.slice(2)));
