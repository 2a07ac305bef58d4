/**
 * Files of cutting jobs: one JSON object with `instances`, each a job in whole numbers of one unit.
 *
 *   { "instances": [{ "id", "L", "W", "k", "m", "S", "T"?, "play"?, "rows": [{ "room", "width"?, "runs": [{ "x", "R" }] }],
 *     "twins"?: [[first row, last row]] }] }
 *
 * L plank length, W its width, k kerf, m minimum piece, S minimum stagger, T aligned-joint distance, play (none where
 * missing); x left end of a run in room coordinates, R its length. Of a floor that lies in part, a job is the rest, with
 * what lies and what is in hand (`cutting/onward`), each of them optional:
 *
 *   "before": [{ "room", "joints": [...], "joints2": [...] }], of one room { "joints", "joints2" } alone: the room of the first
 *   row; "whole": whole planks in hand (none where missing),
 *   "stock": [{ "length", "ends": "left" | "right" | "both" | "none", "width"? }]
 *
 * In its plan a piece that is cut from one of them says `stock`, its place in that list, instead of `plank`; `plankCount` is
 * whole planks used, `short` those to buy. What else an instance carries (its category, known
 * counts) is left alone, unless it is a field of these under a mistyped name.
 */

import type { CutJob, CutPlan, JobRow, PlannedPiece } from '../cutting/job';
import type { OnwardJob, OnwardPlan, RowsBefore, StockPiece } from '../cutting/onward/onwardJob';
import { MOST_PLANKS } from '../takeoff/reading/limits';
import { capital } from '../takeoff/text/capital';
import { nearestWord } from './nearestWord';

/** A job and the name it goes by in its file. */
export interface NamedJob {
  readonly id: string;
  readonly job: CutJob;
  /** Of a floor that lies in part: with what lies and what is in hand. */
  readonly onward?: OnwardJob;
}

/** What was read from a file of jobs: the jobs that can be planned, and a sentence for each that cannot. */
export interface JobFile {
  readonly jobs: readonly NamedJob[];
  readonly problems: readonly string[];
}

/** A piece as it stands in a file of plans. */
export interface WrittenPiece extends Omit<PlannedPiece, 'isStrip' | 'plank'> {
  readonly plank?: number;
  readonly stock?: number;
  readonly twin?: true;
}

/** A plan as it stands in a file of plans. */
export interface WrittenPlan {
  readonly plankCount?: number;
  readonly short?: number;
  readonly rows: readonly { readonly runs: readonly (readonly WrittenPiece[])[] }[];
  readonly bound: number;
  readonly stop: CutPlan['stop'];
  /** Time the plan took, milliseconds. */
  readonly ms: number;
}

/**
 * Reads the text of a job file.
 *
 * @throws Error with a sentence when the text is no JSON or has no list of instances; single bad jobs are told in
 *   `problems` and left out
 */
export function readJobFile(text: string): JobFile {
  const instances = instancesOf(parsed(text));
  const jobs: NamedJob[] = [];
  const problems: string[] = [];
  instances.forEach((instance, index) => {
    const id = isObject(instance) && typeof instance.id === 'string' && instance.id !== '' ? instance.id : undefined;
    const name = id === undefined ? `job ${index + 1} of the file` : `job "${id}"`;
    const found = problemsOf(instance);
    if (id === undefined) found.unshift('has no "id" text');
    if (jobs.some((other) => other.id === id)) found.push('has the same "id" as one before it');
    if (found.length === 0 && id !== undefined) jobs.push(namedJob(id, instance as Instance));
    else problems.push(`${capital(name)} ${found.slice(0, MOST_PROBLEMS_TOLD).join('; ')}${andMore(found.length)}.`);
  });
  return { jobs, problems };
}

function namedJob(id: string, instance: Instance): NamedJob {
  const job = jobOf(instance);
  const { before, stock, whole } = instance;
  if (before === undefined && stock === undefined && whole === undefined) return { id, job };
  const begun = before === undefined ? [] : Array.isArray(before) ? before : [before];
  const lying = begun.map(({ room = job.rows[0].room, joints = [], joints2 = [] }: LyingRows) => {
    return { room, joints, joints2 };
  });
  return { id, job, onward: { job, before: lying, stock: stock ?? [], whole: whole ?? 0 } };
}

/** What lies in a room, as it stands in a file. */
type LyingRows = Partial<RowsBefore>;

/** The job of an instance whose numbers are known to be in order. */
export function jobOf(instance: Instance): CutJob {
  return {
    plankLength: instance.L,
    plankWidth: instance.W,
    kerf: instance.k,
    play: instance.play ?? 0,
    minPiece: instance.m,
    minStagger: instance.S,
    alignedDistance: instance.T ?? 0,
    rows: instance.rows.map(
      (row): JobRow => ({
        room: row.room,
        width: row.width ?? instance.W,
        runs: row.runs.map(({ x, R }) => ({ x, length: R })),
      }),
    ),
    ripPairs: instance.twins ?? [],
  };
}

/**
 * The plan as it is written to a file, where a strip is called a twin. Lengths stay in the units of the job file;
 * `ms` is milliseconds.
 */
export function writtenPlan(plan: CutPlan, ms: number): WrittenPlan {
  const rows = plan.rows.map((row) => ({
    runs: row.runs.map((run) =>
      run.map(({ isStrip, ...piece }) => (isStrip ? { ...piece, twin: true as const } : piece)),
    ),
  }));
  return { rows, bound: plan.bound, stop: plan.stop, ms: Math.round(ms * 1000) / 1000 };
}

/** The plan of a rest as it is written to a file. */
export function writtenOnward(plan: OnwardPlan, ms: number): WrittenPlan {
  const rows = plan.rows.map((row) => ({
    runs: row.runs.map((run) =>
      run.map(({ isStrip, plank, stock, ...piece }) => ({
        ...piece,
        ...(stock === undefined ? { plank } : { stock }),
        ...(isStrip && { twin: true as const }),
      })),
    ),
  }));
  const { plankCount, short, bound, stop } = plan;
  return { plankCount, short, rows, bound, stop, ms: Math.round(ms * 1000) / 1000 };
}

/** An instance as it stands in a file, once its numbers are known to be in order. */
export interface Instance {
  readonly id: string;
  readonly L: number;
  readonly W: number;
  readonly k: number;
  readonly m: number;
  readonly S: number;
  readonly T?: number;
  readonly play?: number;
  readonly rows: readonly {
    readonly room: number;
    readonly width?: number;
    readonly runs: readonly { readonly x: number; readonly R: number }[];
  }[];
  readonly twins?: readonly (readonly [number, number])[];
  readonly before?: LyingRows | readonly LyingRows[];
  readonly stock?: readonly StockPiece[];
  readonly whole?: number;
}

const MOST_PROBLEMS_TOLD = 3;

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Error(`The file of jobs is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function instancesOf(content: unknown): readonly unknown[] {
  if (!isObject(content) || !Array.isArray(content.instances)) {
    throw new Error('The file of jobs has no list "instances": an object such as { "instances": [...] } is wanted.');
  }
  if (content.instances.length === 0) throw new Error('The list "instances" of the file of jobs is empty.');
  return content.instances;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The numbers of an instance, and the least each may be. */
const NUMBERS: readonly (readonly [key: string, least: number])[] = [
  ['L', 1],
  ['W', 1],
  ['k', 0],
  ['m', 0],
  ['S', 0],
];

/** What is wrong with an instance, as ends of a sentence that begins with its name. */
function problemsOf(instance: unknown): string[] {
  if (!isObject(instance)) return ['is not an object'];
  const numbers = [
    ...mistypedProblems(instance, ['id', ...NUMBERS.map(([key]) => key), 'T', 'play', 'rows', 'twins', ...ONWARD_KEYS]),
    ...NUMBERS.flatMap(([key, least]) => wholeNumberProblem(instance, key, least)),
  ];
  for (const key of ['T', 'play', 'whole'])
    if (instance[key] !== undefined) numbers.push(...wholeNumberProblem(instance, key, 0));
  if (!Array.isArray(instance.rows) || instance.rows.length === 0) return [...numbers, 'needs "rows", a list'];
  const rows: readonly unknown[] = instance.rows;
  const rowProblems = rows.flatMap((row, index) => rowProblemsOf(row).map((found) => `row ${index + 1} ${found}`));
  if (rowProblems.length > 0) return [...numbers, ...rowProblems];
  return [
    ...numbers,
    ...(numbers.length > 0 ? [] : sizeProblems(instance as unknown as Instance)),
    ...roomProblems(rows as Instance['rows']),
    ...twinProblems(instance.twins, rows.length),
    ...onwardProblems(instance),
  ];
}

/** A field nobody knows is left alone; one that stands in the place of a known one, mistyped, is not. */
function mistypedProblems(owner: Record<string, unknown>, keys: readonly string[]): string[] {
  const missing = new Map(keys.filter((key) => !(key in owner)).map((key) => [key, []]));
  return Object.keys(owner).flatMap((key) => {
    const nearest = keys.includes(key) ? null : nearestWord(key, missing);
    return nearest ? [`has no field "${key}"; the nearest is "${nearest}"`] : [];
  });
}

function wholeNumberProblem(owner: Record<string, unknown>, key: string, least: number): string[] {
  const value = owner[key];
  if (Number.isSafeInteger(value) && (value as number) >= least) return [];
  const atLeast = least === Number.MIN_SAFE_INTEGER ? '' : ` of at least ${least}`;
  return [`needs "${key}", a whole number${atLeast}, found ${JSON.stringify(value) ?? 'none'}`];
}

function rowProblemsOf(row: unknown): string[] {
  if (!isObject(row)) return ['is not an object'];
  if (!Array.isArray(row.runs) || row.runs.length === 0) {
    return [...mistypedProblems(row, ['room', 'width', 'runs']), 'needs "runs", a list'];
  }
  const runs: readonly unknown[] = row.runs;
  if (!runs.every(isObject)) return ['needs each of its "runs" to be { "x", "R" }'];
  return [
    ...mistypedProblems(row, ['room', 'width', 'runs']),
    ...wholeNumberProblem(row, 'room', 0),
    ...(row.width === undefined ? [] : wholeNumberProblem(row, 'width', 1)),
    ...runs.flatMap((run) => [
      ...mistypedProblems(run, ['x', 'R']),
      ...wholeNumberProblem(run, 'x', Number.MIN_SAFE_INTEGER),
      ...wholeNumberProblem(run, 'R', 1),
    ]),
  ];
}

/** Our choice: units of a plank, with many times as many as the finest marking step makes of the longest. */
const MOST_UNITS = 1_000_000;

/** What no floor has would be planned without end. */
function sizeProblems({ L, rows }: Instance): string[] {
  const planks = rows.reduce((sum, row) => row.runs.reduce((part, { R }) => part + R / L, sum), 0);
  return [
    ...(L > MOST_UNITS ? [`has planks of ${L} units; at most ${MOST_UNITS} are planned, so take a larger unit`] : []),
    ...(planks > MOST_PLANKS ? [`takes about ${Math.ceil(planks)} planks; at most ${MOST_PLANKS} are planned`] : []),
  ];
}

/** Rows of a room have to follow one another, or stagger would be held against the wrong row. */
function roomProblems(rows: Instance['rows']): string[] {
  const left = new Set<number>();
  for (let i = 1; i < rows.length; i++) {
    if (rows[i].room === rows[i - 1].room) continue;
    left.add(rows[i - 1].room);
    if (left.has(rows[i].room)) return [`has other rows between those of room ${rows[i].room}, at row ${i + 1}`];
  }
  return [];
}

function twinProblems(twins: unknown, rowCount: number): string[] {
  if (twins === undefined) return [];
  const isRow = (value: unknown) => Number.isInteger(value) && (value as number) >= 0 && (value as number) < rowCount;
  const isPair = (pair: unknown) => Array.isArray(pair) && pair.length === 2 && pair.every(isRow);
  if (Array.isArray(twins) && twins.every(isPair)) return [];
  return [`needs "twins", a list of [first row, last row] from 0 to ${rowCount - 1}`];
}

const ONWARD_KEYS = ['before', 'stock', 'whole'];
const ENDS: readonly unknown[] = ['left', 'right', 'both', 'none'];

function onwardProblems({ before, stock }: Record<string, unknown>): string[] {
  const isWhole = (value: unknown) => Number.isSafeInteger(value);
  const areJoints = (value: unknown) => value === undefined || (Array.isArray(value) && value.every(isWhole));
  const isLying = (rows: unknown) => isObject(rows) && areJoints(rows.joints) && areJoints(rows.joints2);
  const isOfRoom = (rows: unknown) => isLying(rows) && isObject(rows) && isWhole(rows.room);
  const isBefore = Array.isArray(before) ? before.every(isOfRoom) : before === undefined || isLying(before);
  const isHeld = (piece: unknown) =>
    isObject(piece) &&
    isWhole(piece.length) &&
    (piece.length as number) > 0 &&
    ENDS.includes(piece.ends) &&
    (piece.width === undefined || (isWhole(piece.width) && (piece.width as number) > 0));
  const isStock = stock === undefined || (Array.isArray(stock) && stock.every(isHeld));
  return [
    ...(isBefore
      ? []
      : [
          'needs "before" to be { "joints", "joints2" }, lists of whole numbers, or a list of { "room", "joints", "joints2" }',
        ]),
    ...(isStock ? [] : ['needs each of "stock" to be { "length", "ends", "width" }, ends left, right, both or none']),
  ];
}

function andMore(count: number): string {
  return count > MOST_PROBLEMS_TOLD ? `; and ${count - MOST_PROBLEMS_TOLD} more` : '';
}
