/** A linear program with choices, written as the LP text that general solvers read. */

/** Factors by variable. */
export type Terms = Readonly<Record<string, number>>;

/** A program being written: rows of the model, bounds of lengths, yes-or-no variables, whole-number variables. */
export interface Program {
  readonly rows: string[];
  readonly bounds: string[];
  readonly choices: string[];
  readonly whole: string[];
}

export function emptyProgram(): Program {
  return { rows: [], bounds: [], choices: [], whole: [] };
}

/** One factor for many variables. */
export function each(names: readonly string[], factor: number): Terms {
  return Object.fromEntries(names.map((name) => [name, factor]));
}

/** Adds the row `terms sense value`; a row without terms says nothing and is left out. */
export function addRow(program: Program, terms: Terms, sense: '<=' | '>=' | '=', value: number): void {
  const written = Object.entries(terms).map(
    ([name, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`,
  );
  if (written.length > 0) program.rows.push(`${written.join(' ')} ${sense} ${value}`);
}

/** The text, with one variable to be made as small as can be. */
export function textOf(program: Program, least: string): string {
  return [
    'Minimize',
    least,
    'Subject To',
    ...program.rows,
    'Bounds',
    ...program.bounds,
    'Binary',
    ...program.choices,
    'General',
    ...program.whole,
    'End',
  ].join('\n');
}
