/**
 * Plans every job of a file, for benchmarks, for judging from outside, and for trying the search on one's own jobs:
 *
 *   npm run plan -- --cases FILE --out FILE [--effort N]
 *
 *   npm run plan -- --rooms FILE_OR_FOLDER --out FILE
 *
 * The file of plans is `{ "plans": { id: { rows, bound, stop, ms } } }`; the forms are told in `jobFiles.ts`. Rooms are
 * planned from what a person typed, and the file is `{ "floors": { id: ... } }`, in millimetres; see `roomFiles.ts`.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { CutPlan } from '../cutting/job';
import { planOnward } from '../cutting/onward/onward';
import { planCuts } from '../cutting/search';
import { codeOf, standingIn, textOfFile } from './fileText';
import { type NamedJob, readJobFile, type WrittenPlan, writtenOnward, writtenPlan } from './jobFiles';
import { placeWords } from './roomFileFields';
import { floorsOfFiles } from './roomFiles';

/** What the command was asked to do. Paths as typed. */
export interface PlanRequest {
  readonly source: { readonly kind: 'cases' | 'rooms'; readonly path: string };
  readonly out: string;
  readonly effort: number;
}

const USAGE = 'Use: npm run plan -- (--cases FILE | --rooms FILE_OR_FOLDER) --out FILE [--effort N]';

/** Each option takes one value: what stands for it in messages. */
const OPTIONS: Readonly<Record<string, string>> = {
  '--cases': 'the file of jobs to plan',
  '--rooms': 'a room file, or a folder of them',
  '--out': 'the file to write the plans to',
  '--effort': 'a number above 0 that multiplies the work the search may do; 1 where it is missing',
};

/**
 * Runs the command.
 *
 * @param args what was typed after the command
 * @param say where a line of the report goes
 * @param folder what relative paths start from
 * @returns the exit code: 0 when every job was planned, 1 when something could not be read, planned or written
 */
export function planFiles(args: readonly string[], say: (line: string) => void, folder: string): number {
  try {
    const request = readPlanRequest(args);
    return request.source.kind === 'rooms' ? planRooms(request, say, folder) : planCases(request, say, folder);
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    return 1;
  }
}

/**
 * Reads the arguments.
 *
 * @throws Error with a sentence and the usage when an option is unknown, repeated, missing or without its value
 */
export function readPlanRequest(args: readonly string[]): PlanRequest {
  const values = new Map<string, string>();
  for (let i = 0; i < args.length; i += 2) {
    const option = args[i];
    if (!Object.hasOwn(OPTIONS, option)) throw new Error(`There is no option "${option}". ${USAGE}`);
    if (values.has(option)) throw new Error(`${option} is given twice. ${USAGE}`);
    const value = args[i + 1];
    if (value === undefined || Object.hasOwn(OPTIONS, value))
      throw new Error(`${option} needs ${OPTIONS[option]}. ${USAGE}`);
    values.set(option, value);
  }
  const wanted = (option: string): string => {
    const value = values.get(option);
    if (value === undefined) throw new Error(`${option} is missing: ${OPTIONS[option]}. ${USAGE}`);
    return value;
  };
  const effort = Number(values.get('--effort') ?? 1);
  if (!(effort > 0 && effort < Infinity)) {
    throw new Error(`--effort is "${values.get('--effort')}". It needs ${OPTIONS['--effort']}.`);
  }
  if (values.has('--cases') && values.has('--rooms')) throw new Error(`--cases or --rooms, not both. ${USAGE}`);
  const kind = values.has('--rooms') ? 'rooms' : 'cases';
  return { source: { kind, path: wanted(`--${kind}`) }, out: wanted('--out'), effort };
}

function planCases(request: PlanRequest, say: (line: string) => void, folder: string): number {
  const { jobs, problems } = readJobFile(readText(resolve(folder, request.source.path)));
  const failures = [...problems];
  const plans: Record<string, WrittenPlan> = {};
  for (const named of jobs) {
    try {
      const plan = planned(named, request.effort);
      plans[named.id] = plan.written;
      if (plan.note) say(plan.note);
    } catch (error) {
      failures.push(
        `Job "${named.id}" could not be planned: ${error instanceof Error ? error.message : String(error)}`,
      );
    }
  }
  writeText(resolve(folder, request.out), `${JSON.stringify({ plans })}\n`);
  for (const failure of failures) say(failure);
  say(`${summaryOf(Object.values(plans))} Written to ${request.out}.`);
  return failures.length === 0 ? 0 : 1;
}

function planRooms(request: PlanRequest, say: (line: string) => void, folder: string): number {
  const floors = floorsOfFiles(resolve(folder, request.source.path));
  writeText(resolve(folder, request.out), `${JSON.stringify({ floors })}\n`);
  const failed = Object.entries(floors).filter(([, { problems }]) => problems.length > 0);
  for (const [id, { problems }] of failed) {
    for (const { field, text } of problems) {
      // A sentence says the words of the form; a file goes by its fields.
      const isNamed = text.includes(field.slice(field.lastIndexOf('.') + 1));
      say(isNamed ? `${id}: ${text}` : `${id}: ${text} (${placeWords(field)})`);
    }
  }
  const count = Object.keys(floors).length;
  say(`${count - failed.length} of ${count} floors planned. Written to ${request.out}.`);
  return failed.length === 0 ? 0 : 1;
}

/** One plan, timed; `planCuts` answers none that breaks a law. */
function planned(named: NamedJob, effort: number): { readonly written: WrittenPlan; readonly note?: string } {
  const { id, job, onward } = named;
  const start = performance.now();
  const plan = onward ? planOnward(onward, undefined, {}, planCuts) : planCuts(job, { effort });
  const ms = performance.now() - start;
  const written = 'short' in plan ? writtenOnward(plan, ms) : writtenPlan(plan, ms);
  if (plan.broken.length === 0) return { written };
  return { written, note: `Job "${id}": no plan keeps every rule; the nearest one breaks ${brokenRules(plan)}.` };
}

function brokenRules(plan: Pick<CutPlan, 'broken'>): string {
  return plan.broken
    .map(({ rule, rowIndex, found, wanted }) => `the ${rule} in row ${rowIndex + 1} (${found} of ${wanted})`)
    .join(', ');
}

function summaryOf(plans: readonly WrittenPlan[]): string {
  const proved = plans.filter((plan) => plan.stop === 'proved fewest').length;
  const seconds = plans.reduce((sum, plan) => sum + plan.ms, 0) / 1000;
  const jobs = plans.length === 1 ? '1 job' : `${plans.length} jobs`;
  return `${jobs} planned in ${seconds.toFixed(2)} s, ${proved} proved fewest.`;
}

function readText(path: string): string {
  try {
    return textOfFile(path);
  } catch (error) {
    throw new Error(`The file of jobs cannot be read: ${path} (${codeOf(error)}).`);
  }
}

function writeText(path: string, text: string): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  } catch (error) {
    throw new Error(`The file of plans cannot be written: ${path} (${codeOf(error)}).`);
  }
}

if (process.argv[1]?.endsWith('planFiles.ts')) {
  const say = (line: string) => process.stdout.write(`${line}\n`);
  process.exitCode = planFiles(process.argv.slice(2), say, standingIn(process.env));
}
