/**
 * Bad input by the million: calls of every custom function with anything in their cells, then rooms, jobs and both kinds
 * of files with anything in their fields, then ranges of a hundred thousand cells.
 *
 *   npm run bench -- fuzz [--calls N] [--seed N]
 *
 * A thousand calls are drawn from each seed, one seed after the other, so that a run can be taken up where another ended
 * and what was found is found again by its seed.
 */
import fc from 'fast-check';
import * as functions from '../../src/sheet/functions';
import { callMaker, type Functions } from '../support/fuzz/anyCall';
import { brokenXlsx, richXlsx, xlsxFault } from '../support/fuzz/brokenXlsx';
import { drawn } from '../support/fuzz/draw';
import { hugeCalls } from '../support/fuzz/hugeCalls';
import { TRIALS, trialFault } from '../support/fuzz/trials';
import { complaintAbout } from '../support/fuzz/verdict';
import { seededRandom } from '../support/seededRandom';
import { xmlInNode } from '../support/xmlInNode';
import { benchTable } from './benchTable';

const CALLS_A_SEED = 1000;
/** One reading of a room or a job for so many calls. */
const CALLS_A_TRIAL = 20;
const FILES_A_SEED = 2;

interface Tally {
  count: number;
  reckoned: number;
  ms: number;
  slowest: number;
}

/** What is made of the calls so far: a line for each function. */
type Tallies = Map<string, Tally>;

export interface FuzzOptions {
  readonly calls: number;
  readonly seed: number;
}

/** Runs all of them and says how they went. @returns whether nothing was found */
export async function fuzz({ calls, seed }: FuzzOptions, say: (line: string) => void): Promise<boolean> {
  const tallies: Tallies = new Map();
  const batches = Math.ceil(calls / CALLS_A_SEED);
  say(`${batches * CALLS_A_SEED} calls, seeds ${seed} to ${seed + batches - 1}`);
  xmlInNode();
  const file = await richXlsx();
  let found = 0;
  for (let batch = 0; batch < batches; batch++) {
    const one = seed + batch;
    for (const fault of [callsOf(one, tallies), ...trialsOf(one, tallies), ...filesOf(file, one, tallies)]) {
      if (fault === null) continue;
      found += 1;
      say(`seed ${seed + batch}: ${fault}`);
    }
  }
  for (const line of tableOf(tallies)) say(line);
  say(`${found === 0 ? 'Nothing' : found} found. Go on with --seed ${seed + batches}.`);
  return hugeFound(say) === 0 && found === 0;
}

const offered = functions as unknown as Functions;
const makeCall = callMaker(offered);

/** The first of a seed's calls that is answered wrongly. It is not made smaller: that takes longer than to find it. */
function callsOf(seed: number, tallies: Tallies): string | null {
  const property = fc.property(drawn(makeCall), (call) => {
    const start = performance.now();
    const complaint = complaintAbout(call, offered[call.name]);
    count(tallies, call.name, performance.now() - start, call.reckoned !== undefined);
    if (complaint !== null) throw new Error(`${call.name}${shown(call.cells)} ${complaint}`);
  });
  return faultOf(fc.check(property, { seed, numRuns: CALLS_A_SEED, endOnFailure: true }));
}

function trialsOf(seed: number, tallies: Tallies): readonly (string | null)[] {
  const numRuns = Math.ceil(CALLS_A_SEED / CALLS_A_TRIAL / TRIALS.length);
  return TRIALS.map((make) => {
    const property = fc.property(drawn(make), (trial) => {
      const start = performance.now();
      const complaint = trialFault(trial);
      count(tallies, trial.name, performance.now() - start, trial.name === 'good room');
      if (complaint !== null) throw new Error(`${trial.name} ${shown(trial.given)} ${complaint}`);
    });
    return faultOf(fc.check(property, { seed, numRuns, endOnFailure: true }));
  });
}

/** Files of the other kind, broken: reading one takes as long as hundreds of calls. */
function filesOf(file: Uint8Array, seed: number, tallies: Tallies): readonly (string | null)[] {
  return Array.from({ length: FILES_A_SEED }, (_, i) => {
    const broken = brokenXlsx(file, seededRandom(seed * FILES_A_SEED + i + 1));
    const start = performance.now();
    const fault = xlsxFault(broken);
    count(tallies, '.xlsx file', performance.now() - start, false);
    return fault && `.xlsx file ${i + 1}: ${fault}`;
  });
}

function faultOf({
  failed,
  errorInstance,
}: {
  readonly failed: boolean;
  readonly errorInstance: unknown;
}): string | null {
  if (!failed) return null;
  return errorInstance instanceof Error ? errorInstance.message : String(errorInstance);
}

function shown(value: unknown): string {
  return fc.stringify(value).slice(0, 600);
}

function count(tallies: Tallies, name: string, ms: number, isReckoned: boolean): void {
  const tally = tallies.get(name) ?? { count: 0, reckoned: 0, ms: 0, slowest: 0 };
  tally.count += 1;
  tally.reckoned += isReckoned ? 1 : 0;
  tally.ms += ms;
  tally.slowest = Math.max(tally.slowest, ms);
  tallies.set(name, tally);
}

function tableOf(tallies: Tallies): readonly string[] {
  const headings = [
    ...[{ heading: 'what' }, { heading: 'calls' }, { heading: 'reckoned anew' }],
    ...[{ heading: 'ms each', decimals: 3 }, { heading: 'slowest, ms' }],
  ];
  const rows = [...tallies].sort(([a], [b]) => a.localeCompare(b));
  return benchTable(
    headings,
    rows.map(([name, { count: calls, reckoned, ms, slowest }]) => [name, calls, reckoned, ms / calls, slowest]),
  );
}

/** The service stops a cell after half a minute. */
const MOST_MS = 30_000;

/** Ranges of a hundred thousand cells in the place of every argument: answered or refused, and in time. */
function hugeFound(say: (line: string) => void): number {
  const tallies: Tallies = new Map();
  let found = 0;
  for (const { name, call, what } of hugeCalls()) {
    const made = call();
    const start = performance.now();
    const complaint = complaintAbout(made, offered[name]);
    const ms = performance.now() - start;
    count(tallies, name, ms, false);
    if (complaint === null && ms <= MOST_MS) continue;
    found += 1;
    say(`${name}, ${what}: ${complaint ?? `${Math.round(ms)} ms`}`);
  }
  say('Ranges of 100,000 cells');
  for (const line of tableOf(tallies)) say(line);
  say(`${found === 0 ? 'Nothing' : found} found.`);
  return found;
}
