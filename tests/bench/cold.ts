/**
 * How long the built add-on takes to evaluate cold: every cell of a spreadsheet starts a run, and every run evaluates
 * the whole script. Median of 20 fresh processes, beside an empty script in as many: node src/run.mjs tests/bench/cold.ts
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addOnFiles } from '../../src/build.mjs';

const PROCESSES = 20;

/** Compiles and then evaluates one script in a bare context, and prints the milliseconds of each. */
const MEASURE = `
const { readFileSync } = require('node:fs');
const vm = require('node:vm');
const code = readFileSync(process.argv[1], 'utf8');
const context = vm.createContext(Object.create(null), { codeGeneration: { strings: false, wasm: false } });
const start = process.hrtime.bigint();
const script = new vm.Script(code);
const compiled = process.hrtime.bigint();
script.runInContext(context);
console.log([compiled - start, process.hrtime.bigint() - compiled].map((ns) => Number(ns) / 1e6).join(' '));
`;

export interface ColdTimes {
  readonly compiled: Spread;
  readonly evaluated: Spread;
  readonly together: Spread;
}

export interface Spread {
  readonly median: number;
  readonly least: number;
  readonly most: number;
}

/** Milliseconds of one process. */
type Run = readonly [compiled: number, evaluated: number];

/** Sizes and times of the built script and of an empty one. */
export async function measureCold(): Promise<{
  readonly bytes: number;
  readonly built: ColdTimes;
  readonly empty: ColdTimes;
}> {
  const code = (await addOnFiles())['Code.js'];
  const folder = mkdtempSync(join(tmpdir(), 'plank-ledger-cold-'));
  try {
    const times = { built: [] as Run[], empty: [] as Run[] };
    const [built, empty] = [join(folder, 'built.js'), join(folder, 'empty.js')];
    writeFileSync(built, code);
    writeFileSync(empty, '');
    // In turns, so that whatever else the computer does falls on both.
    for (let i = 0; i < PROCESSES; i++) {
      times.built.push(oneProcess(built));
      times.empty.push(oneProcess(empty));
    }
    return { bytes: Buffer.byteLength(code), built: timesOf(times.built), empty: timesOf(times.empty) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function oneProcess(file: string): Run {
  const [compiled, evaluated] = execFileSync(process.execPath, ['-e', MEASURE, file], { encoding: 'utf8' }).split(' ');
  return [Number(compiled), Number(evaluated)];
}

function timesOf(runs: readonly Run[]): ColdTimes {
  return {
    compiled: spreadOf(runs.map(([compiled]) => compiled)),
    evaluated: spreadOf(runs.map(([, evaluated]) => evaluated)),
    together: spreadOf(runs.map(([compiled, evaluated]) => compiled + evaluated)),
  };
}

function spreadOf(times: readonly number[]): Spread {
  const sorted = times.toSorted((a, b) => a - b);
  const [low, high] = [sorted[PROCESSES / 2 - 1] ?? 0, sorted[PROCESSES / 2] ?? 0];
  return { median: (low + high) / 2, least: sorted[0] ?? 0, most: sorted.at(-1) ?? 0 };
}

/** The measurement as lines of text. */
export async function coldReport(): Promise<string> {
  const { bytes, built, empty } = await measureCold();
  const line = (name: string, { median, least, most }: Spread) =>
    `${name.padEnd(24)}${median.toFixed(2).padStart(8)}${least.toFixed(2).padStart(8)}${most.toFixed(2).padStart(8)}`;
  return [
    `dist/Code.js: ${bytes.toLocaleString('en-US')} bytes; cold, ms, ${PROCESSES} fresh processes`,
    `${''.padEnd(24)}${'median'.padStart(8)}${'least'.padStart(8)}${'most'.padStart(8)}`,
    line('built add-on, compiled', built.compiled),
    line('built add-on, evaluated', built.evaluated),
    line('together', built.together),
    line('empty script, together', empty.together),
  ].join('\n');
}

if (process.argv[1]?.endsWith('cold.ts')) console.log(await coldReport());
