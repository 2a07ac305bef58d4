/** The custom functions of a built script, found as the platform finds them, and how cells reach them. */
import type { AnswerValue, EngineCell, EngineInput, FunctionAnswer } from './engine';

/** A documented custom function. */
export interface CustomFunction {
  readonly name: string;
  /** Not shown where a person types a formula: no help is meant for it. */
  readonly isHidden: boolean;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional: boolean }[];
}

/** Days from the sheet's zero day, 30 Dec 1899, to 1 Jan 1970. */
const UNIX_EPOCH_SERIAL = 25_569;
const MILLISECONDS_PER_DAY = 86_400_000;

/**
 * Every declared function that a cell may call, in the order of the script. The platform asks for no more than a public name;
 * one whose help does not say `@customfunction` is hidden from whoever types.
 */
export function findCellFunctions(code: string): CustomFunction[] {
  const declared = code.matchAll(/(\/\*\*(?:[^*]|\*(?!\/))*\*\/)\s*function (\w+)\(([^)]*)\)/g);
  return [...declared]
    .filter(([, , name = '']) => !name.endsWith('_'))
    .map(([, help = '', name = '', parameters = '']) =>
      describe(name, help, parameters.split(/[\s,]+/).filter(Boolean)),
    );
}

function describe(name: string, help: string, declared: readonly string[]): CustomFunction {
  const text = help.slice(3, -2).replace(/^[ \t]*\* ?/gm, '');
  const [introduction = '', ...tags] = text.split(/^@/m);
  const documented = tags.filter((tag) => tag.startsWith('param')).map(readParameter);
  return {
    name,
    isHidden: !/@customfunction\b/.test(help),
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
export function passInput(input: EngineInput | undefined, timeZone: string): unknown {
  if (input === undefined) return undefined;
  return Array.isArray(input)
    ? input.map((row: readonly EngineCell[]) => row.map((cell) => passCell(cell, timeZone)))
    : passCell(input as EngineCell, timeZone);
}

/** A cell's value as the platform gives it to a script: blank is '', a date a Date, an error its code. */
export function passCell(cell: EngineCell, timeZone: string): string | number | boolean | Date {
  if (cell.value === null) return '';
  return cell.kind === 'date' ? instantOf(Number(cell.value), timeZone) : cell.value;
}

/** The instant at which clocks in the workbook's time zone show a sheet's date. */
function instantOf(serial: number, timeZone: string): Date {
  const asUtc = Math.round((serial - UNIX_EPOCH_SERIAL) * MILLISECONDS_PER_DAY);
  // The zone's lead at that instant is known once the instant is: the second look settles a change of clocks.
  const near = asUtc - leadOf(asUtc, timeZone);
  const settled = asUtc - leadOf(near, timeZone);
  // Clocks that go forward never show some times, in places a midnight among them: the day begins with the first that they show.
  const isShown = settled + leadOf(settled, timeZone) === asUtc;
  return new Date(isShown ? settled : Math.max(near, settled));
}

/** The sheet's number for an instant, as clocks in the workbook's time zone show it. */
export function serialOf(date: Date, timeZone: string): number {
  return (Number(date) + leadOf(Number(date), timeZone)) / MILLISECONDS_PER_DAY + UNIX_EPOCH_SERIAL;
}

/** How far clocks in a zone are ahead of UTC at an instant, ms. */
function leadOf(instant: number, timeZone: string): number {
  if (timeZone === 'Etc/UTC') return 0;
  const { year, month, day, hour, minute, second } = clockParts(instant, timeZone);
  return Date.UTC(year, month - 1, day, hour, minute, second) - Math.floor(instant / 1000) * 1000;
}

/** What calendar and clock show in a zone at an instant. @throws RangeError for a zone nobody knows */
export function clockParts(instant: number, timeZone: string) {
  const numeric = { year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric' } as const;
  const format = new Intl.DateTimeFormat('en-US', {
    ...numeric,
    minute: 'numeric',
    second: 'numeric',
    hourCycle: 'h23',
    timeZone,
  });
  const parts = new Map(format.formatToParts(instant).map(({ type, value }) => [type, Number(value)]));
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.get(type) ?? 0;
  return {
    year: part('year'),
    month: part('month'),
    day: part('day'),
    hour: part('hour'),
    minute: part('minute'),
    second: part('second'),
  };
}

/** What a function answered: one value, a list that fills downwards, or rows. */
export function takeAnswer(value: unknown, timeZone: string): FunctionAnswer {
  const take = (item: unknown) => takeValue(item, timeZone);
  if (!Array.isArray(value)) return { value: take(value) };
  return { rows: value.map((row) => (Array.isArray(row) ? row.map(take) : [take(row)])) };
}

function takeValue(value: unknown, timeZone: string): AnswerValue {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : '#NUM!';
  if (isDate(value)) return { serial: serialOf(value, timeZone) };
  return String(value);
}

/** True of a date from any realm. */
export function isDate(value: unknown): value is Date {
  return Object.prototype.toString.call(value) === '[object Date]';
}
