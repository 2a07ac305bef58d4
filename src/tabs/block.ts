/**
 * A tab as data: a rectangle of cells with their looks. Tab files make blocks, `writeTab.ts` writes them; nothing else
 * in the project calls a service to write a cell.
 */
import { lastOf, madeOf } from '../geometry/lists';

export interface TabBlock {
  /** Tab name wanted; another is used when a tab of that name is not ours. */
  readonly title: string;
  /** What marks the tab as ours in its developer metadata, such as `cut list/Living room`. */
  readonly mark: string;
  /** Rectangular: every row has the same number of cells. */
  readonly cells: readonly (readonly Cell[])[];
  /** Pixels, one a column. */
  readonly columnWidths: readonly number[];
  /** Rows of another height than the sheet's own, such as those of a drawing. */
  readonly heights?: readonly RowHeights[];
  readonly frozenRows: number;
  /** Columns that stay in view, none when left out. */
  readonly frozenColumns?: number;
  readonly showGridlines: boolean;
  /** A4/letter, rows to columns. */
  readonly landscape: boolean;
  /** Notes of a person at cells: row and column from 0, and text. Left out where the tab has none. */
  readonly notes?: readonly (readonly [number, number, string])[];
  /** Whether a line with a box to tick is another line as soon as any of it changes: a piece of another size is not done. */
  readonly hasExactTickLines?: true;
  /** What is remembered with the tab and never shown, such as which plan it is of. */
  readonly about?: string;
  /** `above`: put above what the tab holds, which stays as it is and moves down. Left out: in place of all of it. */
  readonly place?: 'above';
}

/** Rows of one height, one after the other. */
export interface RowHeights {
  readonly firstRowNumber: number;
  readonly rowCount: number;
  readonly pixels: number;
}

export interface Cell {
  readonly value: CellValue;
  readonly look: Look;
  /** Whose the value is; ours when left out. */
  readonly owner?: Owner;
}

/**
 * `person`: a person put it there, and it is never taken for ours again. An input is ours until a person changes it;
 * its name tells the inputs of one line apart.
 */
export type Owner = 'person' | { readonly input: string };

/**
 * `text` is written as text whatever it starts with, and may offer `choices`; `formula` is ours and starts with `=`; `tick` is a box to tick.
 */
export type CellValue =
  | { readonly kind: 'blank' }
  | { readonly kind: 'text'; readonly text: string; readonly choices?: readonly string[] }
  | { readonly kind: 'number'; readonly number: number; readonly format: string }
  | { readonly kind: 'formula'; readonly formula: string; readonly format: string }
  | { readonly kind: 'tick'; readonly ticked: boolean };

export interface Look {
  readonly bold: boolean;
  /** `#rrggbb` */
  readonly background: string;
  readonly color: string;
  readonly size: number;
  readonly align: 'left' | 'center' | 'right';
  readonly wrap: boolean;
}

export const INK = '#1f2321';
export const PAPER = '#ffffff';
/** Behind every other line of a list: enough to lead the eye across a printed page. */
export const BAND = '#efece4';
/** Behind headings; ink on it stays readable in black and white. */
export const HEADING = '#d6d0c0';

/** A tab that is looked at as a page. */
export const PAGE = { frozenRows: 0, showGridlines: false, landscape: false } as const;
/** A tab of lines under a line of headings, across the paper. */
export const LIST = { frozenRows: 1, showGridlines: true, landscape: true } as const;

/** Ordinary cells. */
export const PLAIN: Look = { bold: false, background: PAPER, color: INK, size: 10, align: 'left', wrap: false };
export const STRONG: Look = lookWith({ bold: true });
/** First line of a tab. */
export const TITLE: Look = lookWith({ bold: true, size: 14 });
/** Headings of columns and of sections. */
export const HEADED: Look = lookWith({ bold: true, background: HEADING });

/** A look like another but for some features. */
export function lookWith(changes: Partial<Look>, look: Look = PLAIN): Look {
  return { ...look, ...changes };
}

export function blankCell(look: Look = PLAIN): Cell {
  return { value: { kind: 'blank' }, look };
}

/** Blank cells of one look. */
export function blankCells(count: number, look?: Look): Cell[] {
  return madeOf(count, () => blankCell(look));
}

/** Text, shown as it is whatever it starts with. */
export function textCell(text: string, look: Look = PLAIN): Cell {
  return { value: { kind: 'text', text }, look };
}

/** Text that is chosen from a few, or typed; any other is let in too. */
export function choiceCell(text: string, choices: readonly string[], look: Look = PLAIN): Cell {
  return { value: { kind: 'text', text, choices }, look };
}

/** @param format as the spreadsheet writes formats: `0`, `#,##0.00`, `0.0%` */
export function numberCell(number: number, format: string, look: Look = PLAIN): Cell {
  return { value: { kind: 'number', number, format }, look };
}

/**
 * @param formula ours, starting with `=`; never made from what a person typed
 * @param format never automatic: a formula of automatic format takes over that of its operands, and 62 planks of a
 *   line with an allowance in per cent would be shown as 6200 %
 */
export function formulaCell(formula: string, format: string, look: Look = PLAIN): Cell {
  if (format === 'General' || format === '@') throw new Error(`Internal: ${formula} has no format of its own.`);
  return { value: { kind: 'formula', formula, format }, look };
}

/** A box to tick: whether it is ticked is the person's business. */
export function tickCell(ticked: boolean, look: Look = PLAIN): Cell {
  return { value: { kind: 'tick', ticked }, look, owner: 'person' };
}

export function ownedCell(cell: Cell, owner: Owner): Cell {
  return { ...cell, owner };
}

/** The same rows, each filled up with blank cells to `columnCount`; a blank cell takes the look of the row's last one. */
export function filledRows(rows: readonly (readonly Cell[])[], columnCount: number): readonly (readonly Cell[])[] {
  return rows.map((row) => {
    const last = row.length > 0 ? lastOf(row).look : PLAIN;
    return [...row, ...blankCells(columnCount - row.length, last)];
  });
}
