/** The engine port over @odoo/o-spreadsheet (LGPL-3.0-or-later), which is loaded as it comes and never bundled. */
import { withDoubledQuotes, withoutDoubledQuotes } from './doubledQuotes';
import type { CellLook, Engine, FunctionDefinition } from './engine';
import { type LibraryCell, readCell, readInput, writeAnswer } from './oSpreadsheetCells';
import type { SpreadsheetLibrary, SpreadsheetModel } from './oSpreadsheetCopy';
import { installLateDrawing } from './oSpreadsheetDrawn';
import { installKept, keepText, keptTexts } from './oSpreadsheetKept';
import { installLateEvaluation } from './oSpreadsheetLate';
import { installTextsAtTheRight } from './oSpreadsheetRight';
import { createWriter, filtersOf, installBatch, type Writer } from './oSpreadsheetWriter';

export interface OSpreadsheetEngine extends Engine {
  /** What the grid on a page shows. */
  readonly model: SpreadsheetModel;
  /**
   * The whole workbook, to be opened again. With formulas as they are typed: the engine's shorter form can only be read
   * again where every function is known.
   */
  exported(): object;
}

/** A workbook as it was saved, and the way to the other windows that show it. */
export interface SavedWorkbook {
  /** What the engine exported, or blank for a new workbook. */
  readonly data?: object;
  /** Changes made since, in the engine's own messages. */
  readonly changes?: readonly object[];
  /** Functions that its formulas use. A formula with a name that is unknown as it is read would stay an error. */
  readonly functions?: readonly FunctionDefinition[];
  /** Carries the engine's messages between windows; without it the workbook is alone. */
  readonly transport?: SpreadsheetModel['config']['transportService'];
}

/**
 * A saved workbook, or one with a single empty tab.
 *
 * @param locale the engine's own description of a locale; decides how typed numbers and dates are read. A saved
 *   workbook has its own
 */
export function createOSpreadsheetEngine(
  library: SpreadsheetLibrary,
  locale: LibraryLocale,
  saved: SavedWorkbook = {},
): OSpreadsheetEngine {
  installBatch(library);
  installLateEvaluation(library);
  installLateDrawing(library);
  installKept(library);
  installTextsAtTheRight(library);
  for (const definition of saved.functions ?? []) defineFunction(library, definition);
  const blank = { sheets: [{ id: 'tab-1', name: 'Sheet1', rowNumber: 100, colNumber: 26 }], settings: { locale } };
  const model = new library.Model(
    saved.data ?? blank,
    { mode: 'normal', ...(saved.transport ? { transportService: saved.transport } : {}) },
    [...(saved.changes ?? [])] as never,
  );
  takeDoubledQuotes(model);
  sendAsTheyAre(model);
  const writer = createWriter(model);
  return {
    model,
    ...readers(library, model, writer),
    apply(edits) {
      for (const edit of edits) writer.apply(edit);
    },
    flush: writer.flush,
    activate(tabId, zone) {
      writer.activate(tabId);
      if (!zone) return;
      writer.flush();
      model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone });
    },
    addTab(name, position, rowCount, columnCount) {
      const sheetId = writer.context.newId();
      writer.run({ type: 'CREATE_SHEET', sheetId, name, position, rows: rowCount, cols: columnCount });
      return sheetId;
    },
    recalculate: () => void model.dispatch('EVALUATE_CELLS'),
    defineFunction: (definition) => defineFunction(library, definition),
    exported() {
      writer.flush();
      return model._exportData(false);
    },
    kept: () => keptTexts(model),
    keep: (name, text) => keepText(model, name, text),
    onChange: (listener) => model.on('update', {}, listener),
  };
}

/** One locale as the engine describes it. */
export interface LibraryLocale {
  readonly name: string;
  readonly code: string;
  readonly thousandsSeparator: string;
  readonly decimalSeparator: string;
  readonly weekStart: number;
  readonly dateFormat: string;
  readonly timeFormat: string;
  readonly formulaArgSeparator: string;
}

/** What a person types into the grid goes straight to the model. */
function takeDoubledQuotes(model: SpreadsheetModel): void {
  const dispatch = model.dispatch as (type: string, payload: Readonly<Record<string, unknown>>) => unknown;
  const readable = (type: string, payload: Readonly<Record<string, unknown>>) =>
    type === 'UPDATE_CELL' && typeof payload?.content === 'string'
      ? dispatch(type, { ...payload, content: withoutDoubledQuotes(payload.content) })
      : dispatch(type, payload);
  model.dispatch = readable as typeof model.dispatch;
}

/**
 * The engine shortens commands before it sends them, and fails at it where a formula with an area follows one with a single
 * cell (19.3.7: `squishOneReference` reads the second corner of both). Nothing is sent beyond this computer: they go as they are.
 */
function sendAsTheyAre(model: SpreadsheetModel): void {
  const { session } = model as unknown as {
    readonly session: { readonly commandSquisher: { squish: <Commands>(commands: Commands) => Commands } };
  };
  session.commandSquisher.squish = (commands) => commands;
}

type Readers = Pick<
  Engine,
  | 'tabs'
  | 'frozen'
  | 'activeTab'
  | 'selection'
  | 'cell'
  | 'format'
  | 'content'
  | 'look'
  | 'formula'
  | 'used'
  | 'columnWidth'
  | 'rowHeight'
  | 'merges'
  | 'filters'
  | 'isFiltered'
  | 'isHidden'
  | 'hasTickBox'
>;

function readers(library: SpreadsheetLibrary, model: SpreadsheetModel, writer: Writer): Readers {
  const { getters } = model;
  const stored = (tabId: string, row: number, column: number) => getters.getCell({ sheetId: tabId, row, col: column });
  return {
    // Nothing that waits changes them.
    tabs: () => getters.getSheetIds().map((id) => tabOf(model, id)),
    frozen(tabId) {
      writer.flush();
      const { xSplit, ySplit } = getters.getPaneDivisions(tabId);
      return { rows: ySplit, columns: xSplit };
    },
    activeTab: writer.activeTab,
    selection() {
      writer.flush();
      return getters.getSelectedZone();
    },
    cell(tabId, row, column) {
      writer.flush();
      const cell = getters.getEvaluatedCell({ sheetId: tabId, row, col: column });
      return readCell(cell as LibraryCell, library.helpers.isDateTimeFormat);
    },
    format: (tabId, row, column) =>
      writer.waiting(tabId, row, column)?.format ?? stored(tabId, row, column)?.format ?? '',
    content(tabId, row, column) {
      const waiting = writer.waiting(tabId, row, column)?.content;
      if (waiting !== undefined) return waiting;
      const cell = stored(tabId, row, column);
      return cell === undefined ? '' : cell.isFormula ? 'formula' : cell.content;
    },
    look(tabId, row, column) {
      writer.flush();
      return (stored(tabId, row, column)?.style ?? {}) as CellLook;
    },
    formula(tabId, row, column) {
      writer.flush();
      const cell = stored(tabId, row, column);
      if (!cell?.isFormula) return '';
      return withDoubledQuotes(getters.getCellText({ sheetId: tabId, row, col: column }, { showFormula: true }));
    },
    used(tabId) {
      writer.flush();
      return lastUsed(model, tabId);
    },
    columnWidth(tabId, column) {
      writer.flush();
      return getters.getColSize(tabId, column);
    },
    rowHeight(tabId, row) {
      writer.flush();
      return getters.getUserRowSize(tabId, row) ?? getters.getRowSize(tabId, row);
    },
    merges(tabId) {
      writer.flush();
      return getters.getMerges(tabId);
    },
    filters: (tabId) => filtersOf(model, tabId),
    isFiltered(tabId, row) {
      writer.flush();
      return getters.isRowHidden(tabId, row) && !getters.isHeaderHiddenByUser(tabId, 'ROW', row);
    },
    isHidden(tabId, axis, index) {
      writer.flush();
      return axis === 'rows' ? getters.isRowHidden(tabId, index) : getters.isColHidden(tabId, index);
    },
    hasTickBox(tabId, row, column) {
      writer.flush();
      const rule = getters.getValidationRuleForCell({ sheetId: tabId, row, col: column });
      return rule?.criterion.type === 'isBoolean';
    },
  };
}

/** Only cells beyond those found so far are looked at. */
function lastUsed({ getters }: SpreadsheetModel, tabId: string): { readonly row: number; readonly column: number } {
  const last = { row: -1, column: -1 };
  for (const place of getters.getEvaluatedCellsPositions(tabId)) {
    const { row, col } = place;
    if (row <= last.row && col <= last.column) continue;
    const cell = getters.getCell(place);
    const isBlank = !cell?.isFormula && (cell?.content ?? '') === '';
    if (isBlank && getters.getEvaluatedCell(place).type === 'empty') continue;
    last.row = Math.max(last.row, row);
    last.column = Math.max(last.column, col);
  }
  return last;
}

function tabOf(model: SpreadsheetModel, id: string) {
  const { getters } = model;
  return {
    id,
    name: getters.getSheetName(id),
    hidden: !getters.isSheetVisible(id),
    rowCount: getters.getNumberRows(id),
    columnCount: getters.getNumberCols(id),
  };
}

/** The registry of functions is one for all workbooks of a page or process: the last definition of a name counts. */
function defineFunction(library: SpreadsheetLibrary, definition: FunctionDefinition): void {
  const { functionRegistry } = library.registries;
  // Capitals make no difference in a cell; the engine knows functions by their capitals.
  const name = definition.name.toUpperCase();
  if (functionRegistry.contains(name)) functionRegistry.remove(name);
  library.addFunction(name, {
    description: definition.description,
    hidden: definition.isHidden,
    category: 'Plank Ledger',
    args: definition.parameters.map((parameter) => ({
      ...parameter,
      type: ['ANY'],
      acceptMatrix: true,
      acceptErrors: true,
      // The platform calls a function with however few arguments; what is missing is the function's own affair.
      optional: true,
    })),
    compute: (...inputs) =>
      writeAnswer(
        definition.compute(inputs.map((input) => readInput(input as LibraryCell, library.helpers.isDateTimeFormat))),
      ) as never,
  });
}
