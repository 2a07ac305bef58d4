/** The engine port over @odoo/o-spreadsheet (LGPL-3.0-or-later), which is loaded as it comes and never bundled. */
import { withDoubledQuotes, withoutDoubledQuotes } from './doubledQuotes';
import type { CellEdit, CellLook, Engine, FunctionDefinition, Zone } from './engine';
import { type LibraryCell, type LibraryStyle, readCell, readInput, writeAnswer } from './oSpreadsheetCells';
import { type Command, type CommandContext, commandsOf } from './oSpreadsheetCommands';
import { copyCommands, type SpreadsheetLibrary, type SpreadsheetModel } from './oSpreadsheetCopy';
import { installKept, keepText, keptTexts } from './oSpreadsheetKept';
import { installLateEvaluation } from './oSpreadsheetLate';
import { cellCommands, waitingEdits } from './oSpreadsheetWaiting';

export interface OSpreadsheetEngine extends Engine {
  /** What the grid on a page shows. */
  readonly model: SpreadsheetModel;
  /**
   * The whole workbook, to be opened again. With formulas as they are typed: the engine's shorter form can only be read
   * again where every function is known.
   */
  exported(): object;
}

const BATCH = 'PLANK_LEDGER_BATCH';

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
  installKept(library);
  for (const definition of saved.functions ?? []) defineFunction(library, definition);
  const blank = { sheets: [{ id: 'tab-1', name: 'Sheet1', rowNumber: 100, colNumber: 26 }], settings: { locale } };
  const model = new library.Model(
    saved.data ?? blank,
    { mode: 'normal', ...(saved.transport ? { transportService: saved.transport } : {}) },
    [...(saved.changes ?? [])] as never,
  );
  takeDoubledQuotes(model);
  sendAsTheyAre(model);
  const run = (list: readonly Command[]) => {
    if (list.length === 0) return;
    const refusals: string[] = [];
    const { isSuccessful, reasons } = model.dispatch(BATCH as never, { list, refusals, locale: undefined } as never);
    if (refusals[0] !== undefined) throw new Error(refusals[0]);
    if (!isSuccessful) throw new Error(`The embedded workbook takes no change now: ${reasons.join(', ')}`);
  };
  const writer = createWriter(model, run);
  return {
    model,
    ...readers(library, model, writer),
    apply(edits) {
      for (const edit of edits) {
        if (edit.kind === 'cell') writer.gather(edit);
        else {
          writer.flush();
          run(commandsOf(edit, writer.context));
        }
      }
    },
    flush: writer.flush,
    activate(tabId, zone) {
      writer.flush();
      if (model.getters.getActiveSheetId() !== tabId) {
        model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: model.getters.getActiveSheetId(), sheetIdTo: tabId });
      }
      if (zone) model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone });
    },
    addTab(name, position, rowCount, columnCount) {
      writer.flush();
      const sheetId = writer.context.newId();
      run([{ type: 'CREATE_SHEET', sheetId, name, position, rows: rowCount, cols: columnCount }]);
      return sheetId;
    },
    recalculate: () => void model.dispatch('EVALUATE_CELLS'),
    defineFunction: (definition) => defineFunction(library, definition),
    exported: () => model._exportData(false),
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

/**
 * Many commands as one: recalculated once, undone at once. A command that is refused is our mistake and says so, once the engine
 * is done: an error half way would leave it where it never works out a cell again.
 */
function installBatch(library: SpreadsheetLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(BATCH)) return;
  keepTextsAtTheRight(library);
  class Batch extends library.UIPlugin {
    handle({ type: batch, list = [], refusals = [] }: BatchCommand): void {
      if (batch !== BATCH) return;
      for (const { type, ...fields } of list) {
        const { isSuccessful, reasons } = this.dispatch(type as never, fields as never);
        if (isSuccessful || reasons.every(isHarmless)) continue;
        refusals.push(`The embedded workbook refused ${type}: ${reasons.join(', ')}`);
        return;
      }
    }
  }
  registry.add(BATCH, Batch as never);
}

/**
 * The engine exports no look that it takes for the usual one, and it takes a plain text such as `$5.00` for a number (19.3.7:
 * `extractCustomStyle` asks for the content alone): standing at the right, it would come back at the left.
 */
function keepTextsAtTheRight({ registries }: SpreadsheetLibrary): void {
  interface StyledCell {
    readonly format?: string;
    readonly style?: LibraryStyle;
  }
  const cells = registries.corePluginRegistry.get('cell').prototype as unknown as {
    extractCustomStyle(cell: StyledCell): LibraryStyle;
  };
  const extract = cells.extractCustomStyle;
  cells.extractCustomStyle = function (cell) {
    const style = extract.call(this, cell);
    return cell.format === '@' && cell.style?.align === 'right' ? { ...style, align: 'right' } : style;
  };
}

interface BatchCommand {
  readonly type: string;
  readonly list?: readonly Command[];
  readonly refusals?: string[];
}

/** Writing what already stands there is no mistake, nor is writing under a merged cell: what is written there is lost. */
function isHarmless(reason: string): boolean {
  return (
    reason === 'CellIsMerged' ||
    reason === 'NoChanges' ||
    reason === 'UnchangedSheetName' ||
    reason === 'ValuesNotChanged'
  );
}

interface Writer {
  readonly context: CommandContext;
  gather(edit: CellEdit): void;
  flush(): void;
  waiting(tabId: string, row: number, column: number): CellEdit | undefined;
}

function createWriter(model: SpreadsheetModel, run: (list: readonly Command[]) => void): Writer {
  const waiting = waitingEdits();
  const flush = () => {
    const edits = waiting.taken();
    if (edits.length > 0) run(cellCommands(model, edits));
  };
  return {
    context: contextOf(model),
    gather(edit) {
      // Plain text changes how the content before it is read: what was typed under another format is settled first.
      const settled = waiting.at(edit.tabId, edit.row, edit.column);
      const isPlain = (format: string | undefined) => format === '@';
      if (settled?.content && edit.content === undefined && edit.format !== undefined) {
        if (isPlain(settled.format) !== isPlain(edit.format)) flush();
      }
      waiting.add(edit);
    },
    flush,
    waiting: waiting.at,
  };
}

function contextOf(model: SpreadsheetModel): CommandContext {
  const { getters } = model;
  return {
    nameOf: (tabId) => getters.getSheetName(tabId),
    conditionalFormatIds: (tabId) => getters.getConditionalFormats(tabId).map((format) => format.id),
    validationsIn: (tabId, zone) => validationsIn(model, tabId, zone),
    copyCommands: ({ tabId, zone, to }) => copyCommands(model, { tabId, zone }, to),
    mergesIn: (tabId, zone) => getters.getMerges(tabId).filter((merge) => overlaps(merge, zone)),
    filters: (tabId) => filtersOf(model, tabId),
    isHidden: (tabId, axis, index) => getters.isHeaderHiddenByUser(tabId, axis === 'rows' ? 'ROW' : 'COL', index),
    hasNamedRange: (name) => getters.getNamedRange(name) !== undefined,
    newId: () => model.uuidGenerator.uuidv4(),
  };
}

function validationsIn(model: SpreadsheetModel, tabId: string, zone: Zone) {
  const { getters } = model;
  const cleared = getters.getRangeFromZone(tabId, zone);
  return getters
    .getDataValidationRules(tabId)
    .filter((rule) => rule.ranges.some((range) => overlaps(range.zone, zone)))
    .map((rule) => ({
      rule: { id: rule.id, criterion: rule.criterion, isBlocking: rule.isBlocking },
      rest: getters.recomputeRanges(rule.ranges, [cleared]).map((range) => ({ _sheetId: tabId, _zone: range.zone })),
    }));
}

function overlaps(a: Zone, b: Zone): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

type Readers = Pick<
  Engine,
  | 'tabs'
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
    tabs() {
      writer.flush();
      return getters.getSheetIds().map((id) => tabOf(model, id));
    },
    activeTab: () => getters.getActiveSheetId(),
    selection: () => getters.getSelectedZone(),
    cell(tabId, row, column) {
      writer.flush();
      const cell = getters.getEvaluatedCell({ sheetId: tabId, row, col: column });
      return readCell(cell as LibraryCell, library.helpers.isDateTimeFormat);
    },
    format: (tabId, row, column) =>
      writer.waiting(tabId, row, column)?.format ?? stored(tabId, row, column)?.format ?? '',
    content(tabId, row, column) {
      const cell = stored(tabId, row, column);
      const before = cell === undefined ? '' : cell.isFormula ? 'formula' : cell.content;
      return writer.waiting(tabId, row, column)?.content ?? before;
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
      const isUsed = (place: { readonly sheetId: string; readonly row: number; readonly col: number }) =>
        getters.getEvaluatedCell(place).type !== 'empty' || this.content(tabId, place.row, place.col) !== '';
      const places = getters.getEvaluatedCellsPositions(tabId).filter(isUsed);
      const last = (numbers: readonly number[]) => numbers.reduce((most, number) => Math.max(most, number), -1);
      return { row: last(places.map(({ row }) => row)), column: last(places.map(({ col }) => col)) };
    },
    columnWidth: (tabId, column) => getters.getColSize(tabId, column),
    rowHeight: (tabId, row) => getters.getUserRowSize(tabId, row) ?? getters.getRowSize(tabId, row),
    merges: (tabId) => getters.getMerges(tabId),
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

function filtersOf({ getters }: SpreadsheetModel, tabId: string): readonly Zone[] {
  return getters
    .getTables(tabId)
    .filter((table) => table.config.hasFilters)
    .map((table) => table.range.zone);
}

function tabOf(model: SpreadsheetModel, id: string) {
  const { getters } = model;
  const panes = getters.getPaneDivisions(id);
  return {
    id,
    name: getters.getSheetName(id),
    hidden: !getters.isSheetVisible(id),
    rowCount: getters.getNumberRows(id),
    columnCount: getters.getNumberCols(id),
    frozenRows: panes.ySplit,
    frozenColumns: panes.xSplit,
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
