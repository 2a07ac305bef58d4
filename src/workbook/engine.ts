/**
 * What the embedded workbook needs from a spreadsheet engine, and nothing more: another engine can take the place of
 * this one by answering these questions. Rows and columns count from 0; a zone includes its last row and column.
 */
export interface Engine {
  tabs(): readonly EngineTab[];
  /** How many rows and columns of a tab stay in view. */
  frozen(tabId: string): { readonly rows: number; readonly columns: number };
  activeTab(): string;
  /** The cells a person has selected in the active tab. */
  selection(): Zone;
  activate(tabId: string, zone?: Zone): void;
  /** Adds an empty tab and returns its id. The name must not be taken yet. */
  addTab(name: string, position: number, rowCount: number, columnCount: number): string;
  /** What stands in a cell after recalculation. */
  cell(tabId: string, row: number, column: number): EngineCell;
  /** The number format a cell was given, `''` for none. Asks for no recalculation. */
  format(tabId: string, row: number, column: number): string;
  look(tabId: string, row: number, column: number): CellLook;
  /** What was last typed, a formula or a leading apostrophe included. Asks for no recalculation. */
  content(tabId: string, row: number, column: number): string;
  /** The formula as typed, `''` where there is none. */
  formula(tabId: string, row: number, column: number): string;
  /** The last row and column with anything in them, -1 on an empty tab. */
  used(tabId: string): { readonly row: number; readonly column: number };
  columnWidth(tabId: string, column: number): number;
  rowHeight(tabId: string, row: number): number;
  /** Merged zones of a tab. */
  merges(tabId: string): readonly Zone[];
  /** Where a tab is filtered. */
  filters(tabId: string): readonly Zone[];
  /** Whether a row is hidden by a filter. */
  isFiltered(tabId: string, row: number): boolean;
  /** Whether a row or column is hidden, by a person, a script or a filter. */
  isHidden(tabId: string, axis: Axis, index: number): boolean;
  /** Whether a cell has a box to tick. */
  hasTickBox(tabId: string, row: number, column: number): boolean;
  /** Applies edits in order; they may wait until something asks for what they change, so that many are carried out at once. */
  apply(edits: readonly Edit[]): void;
  /** Carries out every edit that waits. */
  flush(): void;
  defineFunction(definition: FunctionDefinition): void;
  /** Works every cell out anew. */
  recalculate(): void;
  /** Texts saved with the workbook, by name. */
  kept(): Readonly<Record<string, string>>;
  /** Saves a text with the workbook; undefined forgets it. */
  keep(name: string, text: string | undefined): void;
  /** Whenever anything has changed, by whomever. */
  onChange(listener: () => void): void;
}

export interface EngineTab {
  readonly id: string;
  readonly name: string;
  readonly hidden: boolean;
  readonly rowCount: number;
  readonly columnCount: number;
}

export interface Zone {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface EngineCell {
  readonly kind: 'empty' | 'text' | 'number' | 'date' | 'boolean' | 'error';
  /** Null when empty; a date is days since 30 Dec 1899; an error is the platform's own code such as `#REF!`. */
  readonly value: string | number | boolean | null;
  /** As displayed. */
  readonly shown: string;
  /** Why, for an error; `''` otherwise. */
  readonly message: string;
}

export interface CellLook {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strikethrough?: boolean;
  readonly align?: 'left' | 'center' | 'right';
  readonly verticalAlign?: 'top' | 'middle' | 'bottom';
  readonly wrapping?: 'overflow' | 'wrap' | 'clip';
  /** `#rrggbb`, or `''` for none. */
  readonly fillColor?: string;
  readonly textColor?: string;
  /** Points. */
  readonly fontSize?: number;
}

/** A value, a format and looks for one cell; what is left out stays as it is. */
export interface CellEdit {
  readonly kind: 'cell';
  readonly tabId: string;
  readonly row: number;
  readonly column: number;
  /** As typed: a formula starts with `=`, an apostrophe in front keeps text as it is. */
  readonly content?: string;
  readonly format?: string;
  readonly look?: CellLook;
}

export type BorderEdge = 'left' | 'top' | 'right' | 'bottom' | 'inner vertical' | 'inner horizontal';

export type Edit =
  | CellEdit
  | {
      readonly kind: 'clear';
      readonly tabId: string;
      readonly zone: Zone;
      readonly what: 'all' | 'contents' | 'formats';
    }
  | { readonly kind: 'merge' | 'unmerge'; readonly tabId: string; readonly zone: Zone }
  | {
      readonly kind: 'border';
      readonly tabId: string;
      readonly zone: Zone;
      readonly edge: BorderEdge;
      /** Null takes the border away. */
      readonly line: {
        readonly style: 'thin' | 'medium' | 'thick' | 'dashed' | 'dotted';
        readonly color: string;
      } | null;
    }
  | { readonly kind: 'freeze'; readonly tabId: string; readonly axis: Axis; readonly count: number }
  | {
      readonly kind: 'resize';
      readonly tabId: string;
      readonly axis: Axis;
      readonly first: number;
      readonly count: number;
      /** Null fits the contents as far as the engine can tell. */
      readonly pixels: number | null;
    }
  | {
      readonly kind: 'insert' | 'delete';
      readonly tabId: string;
      readonly axis: Axis;
      readonly first: number;
      readonly count: number;
    }
  | {
      readonly kind: 'hide' | 'show';
      readonly tabId: string;
      readonly axis: Axis;
      readonly first: number;
      readonly count: number;
    }
  /** The tables of a tab, which are the engine's filters; their cells stay. */
  | { readonly kind: 'remove filters'; readonly tabId: string }
  | { readonly kind: 'filter'; readonly tabId: string; readonly zone: Zone }
  /** Hides the rows of a filter that show one of the values in a column of it. */
  | {
      readonly kind: 'filter values';
      readonly tabId: string;
      readonly row: number;
      readonly column: number;
      readonly hidden: readonly string[];
    }
  | { readonly kind: 'duplicate tab'; readonly tabId: string; readonly newId: string; readonly name: string }
  | { readonly kind: 'gridlines'; readonly tabId: string; readonly visible: boolean }
  | { readonly kind: 'tab color'; readonly tabId: string; readonly color: string | null }
  | { readonly kind: 'tab visibility'; readonly tabId: string; readonly visible: boolean }
  | { readonly kind: 'rename tab'; readonly tabId: string; readonly name: string }
  | { readonly kind: 'delete tab'; readonly tabId: string }
  | {
      readonly kind: 'validation';
      readonly tabId: string;
      readonly zones: readonly Zone[];
      readonly rule: ValidationRule;
    }
  | { readonly kind: 'clear validation'; readonly tabId: string; readonly zone: Zone }
  | {
      readonly kind: 'copy';
      readonly tabId: string;
      readonly zone: Zone;
      readonly to: { readonly tabId: string; readonly zone: Zone };
    }
  | { readonly kind: 'conditional formats'; readonly tabId: string; readonly rules: readonly ConditionalRule[] }
  | { readonly kind: 'named range'; readonly name: string; readonly tabId: string; readonly zone: Zone }
  | { readonly kind: 'remove named range'; readonly name: string };

export type Axis = 'rows' | 'columns';

export interface ValidationRule {
  readonly criterion:
    | { readonly type: 'checkbox' }
    | { readonly type: 'list'; readonly values: readonly string[] }
    | { readonly type: 'number between'; readonly from: number; readonly to: number };
  /** Whether a value that fails is refused rather than only marked. */
  readonly isBlocking: boolean;
}

export interface ConditionalRule {
  readonly zones: readonly Zone[];
  /** Formula that must be true, for the first cell of the zones. */
  readonly formula: string;
  readonly look: CellLook;
}

/** A custom function: cells come in as the platform passes them, the answer goes out as the platform takes it. */
export interface FunctionDefinition {
  readonly name: string;
  /** Left out where functions are listed. */
  readonly isHidden: boolean;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional: boolean }[];
  /** @param inputs one an argument: a cell, or rows of cells; undefined where it was left out. */
  readonly compute: (inputs: readonly (EngineInput | undefined)[]) => FunctionAnswer;
}

export type EngineInput = EngineCell | readonly (readonly EngineCell[])[];

export type AnswerValue = string | number | boolean | null | { readonly serial: number };

export type FunctionAnswer =
  | { readonly rows: readonly (readonly AnswerValue[])[] }
  | { readonly value: AnswerValue }
  | { readonly error: string };
