/**
 * A tab as data: a rectangle of cells with their looks. Tab files make blocks, `writeTab.ts` writes them; nothing else
 * in the project calls a service to write a cell.
 */
export interface TabBlock {
  /** Tab name wanted; another is used when a tab of that name is not ours. */
  readonly title: string;
  /** What marks the tab as ours in its developer metadata, such as `cut list/Living room`. */
  readonly mark: string;
  /** Rectangular: every row has the same number of cells. */
  readonly cells: readonly (readonly Cell[])[];
  /** Pixels, one a column. */
  readonly columnWidths: readonly number[];
  /** Pixels, one for all rows; 0 leaves the sheet's own. */
  readonly rowHeight: number;
  readonly frozenRows: number;
  readonly showGridlines: boolean;
  /** A4/letter, rows to columns. */
  readonly landscape: boolean;
}

export interface Cell {
  readonly value: CellValue;
  readonly look: Look;
}

/**
 * `text` is written as text whatever it starts with; `formula` is ours and starts with `=`; `tick` is a box to tick;
 * `input` is a number a person may change.
 */
export type CellValue =
  | { readonly kind: 'blank' }
  | { readonly kind: 'text'; readonly text: string }
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
