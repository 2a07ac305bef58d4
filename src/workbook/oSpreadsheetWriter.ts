/**
 * Edits wait until somebody asks for what they change, as the platform sends them in bundles. Then they are one command of
 * the engine, which works out rows, colours and what is in view once, and is undone at once.
 */
import type { CellEdit, Edit, Zone } from './engine';
import { type Command, type CommandContext, commandsOf, type TabEdit } from './oSpreadsheetCommands';
import { copyCommands, type SpreadsheetLibrary, type SpreadsheetModel } from './oSpreadsheetCopy';
import { cellCommands, waitingEdits } from './oSpreadsheetWaiting';

const BATCH = 'PLANK_LEDGER_BATCH';

/** Commands of one edit, made when those before it are carried out: they may depend on what stands there. */
type Making = () => readonly Command[];

export interface Writer {
  readonly context: CommandContext;
  apply(edit: Edit): void;
  /** Carries out every edit that waits, and then this. */
  run(command: Command): void;
  flush(): void;
  /** What waits for a cell; of edits that came before one of another kind, nothing does any longer. */
  waiting(tabId: string, row: number, column: number): CellEdit | undefined;
  /** Brings a tab to the front when the rest is carried out. */
  activate(tabId: string): void;
  activeTab(): string;
}

/** Edits that change neither which tabs there are nor how many rows and columns, so that those can be told without them. */
const WAITING: ReadonlySet<Edit['kind']> = new Set<Edit['kind']>([
  'unmerge',
  'border',
  'freeze',
  'resize',
  'hide',
  'show',
  'gridlines',
  'tab color',
  'validation',
  'clear validation',
  'copy',
]);

export function createWriter(model: SpreadsheetModel): Writer {
  const cells = waitingEdits();
  const context = contextOf(model);
  const { getters } = model;
  let before: Making[] = [];
  let front: string | null = null;
  const closeCells = () => {
    const edits = cells.taken();
    if (edits.length > 0) before.push(() => cellCommands(model, edits));
  };
  const flush = () => {
    closeCells();
    const list = before;
    before = [];
    if (list.length > 0) dispatchAll(model, list);
    const [from, to] = [getters.getActiveSheetId(), front];
    front = null;
    if (to !== null && to !== from) model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: from, sheetIdTo: to });
  };
  const gather = (edit: CellEdit) => {
    // Plain text changes how the content before it is read: what was typed under another format is settled first.
    const settled = cells.at(edit.tabId, edit.row, edit.column);
    const isPlain = (format: string | undefined) => format === '@';
    if (settled?.content && edit.content === undefined && edit.format !== undefined) {
      if (isPlain(settled.format) !== isPlain(edit.format)) flush();
    }
    cells.add(edit);
  };
  return {
    context,
    apply(edit) {
      if (edit.kind === 'cell') {
        gather(edit);
        return;
      }
      closeCells();
      before.push(() => commandsOf(edit as TabEdit, context));
      if (!WAITING.has(edit.kind)) flush();
    },
    run(command) {
      closeCells();
      before.push(() => [command]);
      flush();
    },
    flush,
    waiting(tabId, row, column) {
      if (before.length > 0) flush();
      return cells.at(tabId, row, column);
    },
    activate: (tabId) => {
      front = tabId;
    },
    activeTab: () => front ?? getters.getActiveSheetId(),
  };
}

/** @throws Error when the engine refuses a command */
function dispatchAll(model: SpreadsheetModel, list: readonly Making[]): void {
  const refusals: string[] = [];
  const { isSuccessful, reasons } = model.dispatch(BATCH as never, { list, refusals, locale: undefined } as never);
  if (refusals[0] !== undefined) throw new Error(refusals[0]);
  if (!isSuccessful) throw new Error(`The embedded workbook takes no change now: ${reasons.join(', ')}`);
}

interface BatchCommand {
  readonly type: string;
  readonly list?: readonly Making[];
  readonly refusals?: string[];
}

/**
 * Many commands as one: recalculated once, undone at once. A command that is refused is our mistake and says so, once the engine
 * is done: an error half way would leave it where it never works out a cell again.
 */
export function installBatch(library: SpreadsheetLibrary): void {
  const registry = library.registries.featurePluginRegistry;
  if (registry.contains(BATCH)) return;
  class Batch extends library.UIPlugin {
    handle({ type: batch, list = [], refusals = [] }: BatchCommand): void {
      if (batch !== BATCH) return;
      for (const made of list) {
        for (const { type, ...fields } of made()) {
          const { isSuccessful, reasons } = this.dispatch(type as never, fields as never);
          if (isSuccessful || reasons.every(isHarmless)) continue;
          refusals.push(`The embedded workbook refused ${type}: ${reasons.join(', ')}`);
          return;
        }
      }
    }
  }
  registry.add(BATCH, Batch as never);
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

function contextOf(model: SpreadsheetModel): CommandContext {
  const { getters } = model;
  return {
    nameOf: (tabId) => getters.getSheetName(tabId),
    conditionalFormatIds: (tabId) => getters.getConditionalFormats(tabId).map((format) => format.id),
    validationsIn: (tabId, zone) => validationsIn(model, tabId, zone),
    copyCommands: ({ tabId, zone, to }) => copyCommands(model, { tabId, zone }, to),
    mergesIn: (tabId, zone) => getters.getMerges(tabId).filter((merge) => overlaps(merge, zone)),
    filters: (tabId) => filtersOf(model, tabId),
    columnWidth: (tabId, column) => getters.getColSize(tabId, column),
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

/** Where a tab is filtered. */
export function filtersOf({ getters }: SpreadsheetModel, tabId: string): readonly Zone[] {
  return getters
    .getTables(tabId)
    .filter((table) => table.config.hasFilters)
    .map((table) => table.range.zone);
}
