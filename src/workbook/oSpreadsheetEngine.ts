/** The engine port over @odoo/o-spreadsheet (LGPL-3.0-or-later), which is loaded as it comes and never bundled. */
import type * as Library from '@odoo/o-spreadsheet';
import { withDoubledQuotes, withoutDoubledQuotes } from './doubledQuotes';
import type { CellEdit, CellLook, Engine, FunctionDefinition, Zone } from './engine';
import { type LibraryCell, type LibraryStyle, readCell, readInput, writeAnswer, writeStyle } from './oSpreadsheetCells';
import { type Command, type CommandContext, commandsOf } from './oSpreadsheetCommands';
import { copyCommands } from './oSpreadsheetCopy';

export type SpreadsheetLibrary = typeof Library;
export type SpreadsheetModel = InstanceType<SpreadsheetLibrary['Model']>;

export interface OSpreadsheetEngine extends Engine {
  /** What the grid on a page shows. */
  readonly model: SpreadsheetModel;
}

const BATCH = 'PLANK_LEDGER_BATCH';

/**
 * A workbook with one empty tab.
 *
 * @param locale the engine's own description of a locale; decides how typed numbers and dates are read
 */
export function createOSpreadsheetEngine(library: SpreadsheetLibrary, locale: LibraryLocale): OSpreadsheetEngine {
  installBatch(library);
  const model = new library.Model(
    { sheets: [{ id: 'tab-1', name: 'Sheet1', rowNumber: 100, colNumber: 26 }], settings: { locale } },
    { mode: 'normal' },
  );
  takeDoubledQuotes(model);
  const run = (list: readonly Command[]) => {
    if (list.length > 0) model.dispatch(BATCH as never, { list, locale: undefined } as never);
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
    defineFunction: (definition) => defineFunction(library, definition),
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

/** Many commands as one: recalculated once, undone at once. A command that is refused is our mistake and says so. */
function installBatch(library: SpreadsheetLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(BATCH)) return;
  class Batch extends library.UIPlugin {
    handle(command: { readonly type: string; readonly list?: readonly Command[] }): void {
      if (command.type !== BATCH) return;
      for (const { type, ...fields } of command.list ?? []) {
        const { isSuccessful, reasons } = this.dispatch(type as never, fields as never);
        if (!isSuccessful && !reasons.every(isHarmless)) {
          throw new Error(`The embedded workbook refused ${type}: ${reasons.join(', ')}`);
        }
      }
    }
  }
  registry.add(BATCH, Batch as never);
}

/** Writing what already stands there is no mistake. */
function isHarmless(reason: string): boolean {
  return reason === 'NoChanges' || reason === 'UnchangedSheetName' || reason === 'ValuesNotChanged';
}

interface Writer {
  readonly context: CommandContext;
  gather(edit: CellEdit): void;
  flush(): void;
  waiting(tabId: string, row: number, column: number): CellEdit | undefined;
}

function createWriter(model: SpreadsheetModel, run: (list: readonly Command[]) => void): Writer {
  /** Edits that wait, the later laid over the earlier of the same cell. */
  const waiting = new Map<string, CellEdit>();
  const keyOf = (tabId: string, row: number, column: number) => `${row},${column},${tabId}`;
  const flush = () => {
    const edits = [...waiting.values()];
    waiting.clear();
    run(edits.map((edit) => cellCommand(model, edit)));
  };
  return {
    context: contextOf(model),
    gather(edit) {
      const key = keyOf(edit.tabId, edit.row, edit.column);
      // Plain text changes how the content before it is read: what was typed under another format is settled first.
      const settled = waiting.get(key);
      const isPlain = (format: string | undefined) => format === '@';
      if (settled?.content && edit.content === undefined && edit.format !== undefined) {
        if (isPlain(settled.format) !== isPlain(edit.format)) flush();
      }
      const before = waiting.get(key);
      const look = { ...before?.look, ...edit.look };
      waiting.set(key, { ...before, ...edit, look });
    },
    flush,
    waiting: (tabId, row, column) => waiting.get(keyOf(tabId, row, column)),
  };
}

function cellCommand(model: SpreadsheetModel, edit: CellEdit): Command {
  const place = { sheetId: edit.tabId, row: edit.row, col: edit.column };
  const style = writeStyle(model.getters.getCell(place)?.style as LibraryStyle | undefined, edit.look ?? {});
  return {
    type: 'UPDATE_CELL',
    ...place,
    ...(Object.keys(edit.look ?? {}).length > 0 ? { style } : {}),
    ...(edit.format === undefined ? {} : { format: edit.format }),
    ...(edit.content === undefined ? {} : { content: withoutDoubledQuotes(edit.content) }),
  };
}

function contextOf(model: SpreadsheetModel): CommandContext {
  const { getters } = model;
  return {
    nameOf: (tabId) => getters.getSheetName(tabId),
    conditionalFormatIds: (tabId) => getters.getConditionalFormats(tabId).map((format) => format.id),
    validationsIn: (tabId, zone) => validationsIn(model, tabId, zone),
    copyCommands: ({ tabId, zone, to }) => copyCommands(model, { tabId, zone }, to),
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
  | 'columnWidth'
  | 'rowHeight'
  | 'merges'
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
    columnWidth: (tabId, column) => getters.getColSize(tabId, column),
    rowHeight: (tabId, row) => getters.getUserRowSize(tabId, row) ?? getters.getRowSize(tabId, row),
    merges: (tabId) => getters.getMerges(tabId),
  };
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
  if (functionRegistry.contains(definition.name)) functionRegistry.remove(definition.name);
  library.addFunction(definition.name, {
    description: definition.description,
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
