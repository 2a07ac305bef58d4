/** Cells, errors and looks between the engine's own terms and the port's. */
import type { AnswerValue, CellLook, EngineCell, EngineInput, FunctionAnswer, Zone } from './engine';

/** What the engine passes to a function and shows of a cell. */
export interface LibraryCell {
  readonly value: string | number | boolean | null;
  readonly format?: string;
  readonly formattedValue?: string;
  readonly type?: string;
  readonly message?: string;
}

export type LibraryAnswer = LibraryCell | LibraryCell[][];

/** The engine's style of a cell, as far as the port can set it. */
export interface LibraryStyle {
  bold?: boolean;
  italic?: boolean;
  underline?: boolean;
  strikethrough?: boolean;
  align?: 'left' | 'center' | 'right';
  verticalAlign?: 'top' | 'middle' | 'bottom';
  wrapping?: 'overflow' | 'wrap' | 'clip';
  fillColor?: string;
  textColor?: string;
  fontSize?: number;
}

/** Format given to a date that a function answers with. */
const DATE_FORMAT = 'm/d/yyyy';

/** The engine's error codes that the platform spells differently. */
const ERROR_CODES: Readonly<Record<string, string>> = {
  '#ERROR': '#ERROR!',
  '#BAD_EXPR': '#ERROR!',
  '#SPILL!': '#REF!',
  '#REF': '#REF!',
  '#CYCLE': '#REF!',
};

const ERROR_CODE = /^#(?:[A-Z_/0]+[!?]?|N\/A)$/;

const EMPTY: EngineCell = { kind: 'empty', value: null, shown: '', message: '' };

/** A cell in the port's terms. @param isDateFormat the engine's own judgement of a number format */
export function readCell(cell: LibraryCell, isDateFormat: (format: string) => boolean): EngineCell {
  const { value } = cell;
  if (value === null || cell.type === 'empty') return EMPTY;
  const shown = cell.formattedValue ?? String(value);
  if (isError(cell)) {
    const code = ERROR_CODES[String(value)] ?? String(value);
    return { kind: 'error', value: code, shown: code, message: cell.message ?? '' };
  }
  return { kind: kindOf(value, cell.format ?? '', isDateFormat), value, shown, message: '' };
}

/** A cell evaluated by the engine says its type; an argument computed on the way has only its value. */
function isError({ type, value, message }: LibraryCell): boolean {
  if (type !== undefined) return type === 'error';
  return typeof value === 'string' && (message !== undefined || ERROR_CODE.test(value));
}

function kindOf(
  value: string | number | boolean,
  format: string,
  isDateFormat: (format: string) => boolean,
): EngineCell['kind'] {
  if (typeof value === 'boolean') return 'boolean';
  if (typeof value === 'string') return 'text';
  return format && isDateFormat(format) ? 'date' : 'number';
}

/** An argument: the engine hands a range over column by column, the platform row by row. */
export function readInput(
  input: LibraryCell | readonly (readonly LibraryCell[])[] | undefined,
  isDateFormat: (format: string) => boolean,
): EngineInput | undefined {
  if (input === undefined) return undefined;
  if (!Array.isArray(input)) return readCell(input as LibraryCell, isDateFormat);
  return transposed(input as readonly (readonly LibraryCell[])[]).map((row) =>
    row.map((cell) => readCell(cell, isDateFormat)),
  );
}

/** An answer: short rows are filled up with blanks, since the engine wants a rectangle. */
export function writeAnswer(answer: FunctionAnswer): LibraryAnswer {
  if ('error' in answer) return { value: '#ERROR', message: answer.error };
  if ('value' in answer) return writeValue(answer.value);
  const width = answer.rows.reduce((most, row) => Math.max(most, row.length), 0);
  if (width === 0) return { value: '' };
  const full = answer.rows.map((row) => Array.from({ length: width }, (_, column) => writeValue(row[column] ?? '')));
  return transposed(full);
}

function writeValue(value: AnswerValue): LibraryCell {
  if (typeof value === 'object' && value !== null) return { value: value.serial, format: DATE_FORMAT };
  return { value };
}

function transposed<Item>(rows: readonly (readonly Item[])[]): Item[][] {
  return (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] as Item));
}

/** The engine's style with the port's looks laid over it; a colour of `''` takes the colour away. */
export function writeStyle(before: LibraryStyle | undefined, look: CellLook): LibraryStyle {
  const style: LibraryStyle = { ...before, ...look };
  if (look.fillColor === '') delete style.fillColor;
  if (look.textColor === '') delete style.textColor;
  return style;
}

export function everyCellOf(zone: Zone): { row: number; column: number }[] {
  const cells = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    for (let column = zone.left; column <= zone.right; column++) cells.push({ row, column });
  }
  return cells;
}
