/** The custom functions of a built script, found as the platform finds them, and how cells reach them. */
import type { AnswerValue, EngineCell, EngineInput, FunctionAnswer } from './engine';

/** A documented custom function. */
export interface CustomFunction {
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional: boolean }[];
}

/** Days from the sheet's zero day, 30 Dec 1899, to 1 Jan 1970. */
const UNIX_EPOCH_SERIAL = 25_569;
const MILLISECONDS_PER_DAY = 86_400_000;

/** Every declared function whose help says `@customfunction`, in the order of the script. */
export function findCustomFunctions(code: string): CustomFunction[] {
  const declared = code.matchAll(/(\/\*\*(?:[^*]|\*(?!\/))*\*\/)\s*function (\w+)\(([^)]*)\)/g);
  return [...declared]
    .filter((match) => /@customfunction\b/.test(match[1] ?? ''))
    .map(([, help = '', name = '', declared = '']) => describe(name, help, declared.split(/[\s,]+/).filter(Boolean)));
}

function describe(name: string, help: string, declared: readonly string[]): CustomFunction {
  const text = help.slice(3, -2).replace(/^[ \t]*\* ?/gm, '');
  const [introduction = '', ...tags] = text.split(/^@/m);
  const documented = tags.filter((tag) => tag.startsWith('param')).map(readParameter);
  return {
    name,
    description: oneLine(introduction),
    parameters: declared.map(
      (parameter) =>
        documented.find((found) => found.name === parameter) ?? { name: parameter, description: '', optional: true },
    ),
  };
}

function readParameter(tag: string) {
  const match = /^param\s+(?:\{[^}]*\}\s+)?(\[?)(\w+)(?:=[^\]]*)?\]?\s*(?:-\s*)?([\s\S]*)$/.exec(tag);
  return { name: match?.[2] ?? '', description: oneLine(match?.[3] ?? ''), optional: match?.[1] === '[' };
}

function oneLine(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}

/** An argument as the platform passes it: a single cell's value, or rows of values. */
export function passInput(input: EngineInput | undefined): unknown {
  if (input === undefined) return undefined;
  return Array.isArray(input) ? input.map((row) => row.map(passCell)) : passCell(input as EngineCell);
}

/** A cell's value as the platform gives it to a script: blank is '', a date a Date, an error its code. */
export function passCell(cell: EngineCell): string | number | boolean | Date {
  if (cell.value === null) return '';
  return cell.kind === 'date' ? dateOf(Number(cell.value)) : cell.value;
}

/** The instant of a sheet's date, in the workbook's time zone (UTC). */
function dateOf(serial: number): Date {
  return new Date(Math.round((serial - UNIX_EPOCH_SERIAL) * MILLISECONDS_PER_DAY));
}

/** The sheet's number for an instant. */
export function serialOf(date: Date): number {
  return Number(date) / MILLISECONDS_PER_DAY + UNIX_EPOCH_SERIAL;
}

/** What a function answered: one value, a list that fills downwards, or rows. */
export function takeAnswer(value: unknown): FunctionAnswer {
  if (!Array.isArray(value)) return { value: takeValue(value) };
  return { rows: value.map((row) => (Array.isArray(row) ? row.map(takeValue) : [takeValue(row)])) };
}

function takeValue(value: unknown): AnswerValue {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : '#NUM!';
  if (isDate(value)) return { serial: serialOf(value) };
  return String(value);
}

/** True of a date from any realm. */
export function isDate(value: unknown): value is Date {
  return Object.prototype.toString.call(value) === '[object Date]';
}
