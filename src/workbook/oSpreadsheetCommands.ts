/** Edits of the port as commands of @odoo/o-spreadsheet. Cell edits are not here: they are gathered first. */
import type { Axis, BorderEdge, ConditionalRule, Edit, ValidationRule, Zone } from './engine';
import { everyCellOf } from './oSpreadsheetCells';

/** A command of the engine; which fields it needs is the engine's own affair. */
export interface Command {
  readonly type: string;
  readonly [field: string]: unknown;
}

/** What the commands need to know of the workbook as it stands. */
export interface CommandContext {
  nameOf(tabId: string): string;
  /** Ids of the conditional formats a tab has now. */
  conditionalFormatIds(tabId: string): readonly string[];
  /** Validation rules a tab has now that touch a zone, each with the ranges that would be left outside it. */
  validationsIn(
    tabId: string,
    zone: Zone,
  ): readonly { readonly rule: { readonly id: string }; readonly rest: readonly unknown[] }[];
  copyCommands(edit: Extract<TabEdit, { kind: 'copy' }>): Command[];
  mergesIn(tabId: string, zone: Zone): readonly Zone[];
  filters(tabId: string): readonly Zone[];
  columnWidth(tabId: string, column: number): number;
  isHidden(tabId: string, axis: Axis, index: number): boolean;
  hasNamedRange(name: string): boolean;
  newId(): string;
}

export type TabEdit = Exclude<Edit, { kind: 'cell' }>;

/** The commands that carry out one edit, in order. */
export function commandsOf(edit: TabEdit, context: CommandContext): Command[] {
  switch (edit.kind) {
    case 'clear':
      return clearCommands(edit.tabId, edit.zone, edit.what, context);
    case 'merge':
      return [{ type: 'ADD_MERGE', sheetId: edit.tabId, target: [edit.zone], force: true }];
    case 'unmerge':
      return context
        .mergesIn(edit.tabId, edit.zone)
        .map((zone) => ({ type: 'REMOVE_MERGE', sheetId: edit.tabId, target: [zone] }));
    case 'hide':
    case 'show':
      return hidingCommands(edit, context);
    case 'remove filters':
      return context.filters(edit.tabId).map((zone) => ({ type: 'REMOVE_TABLE', sheetId: edit.tabId, target: [zone] }));
    case 'filter':
      return [filterCommand(edit)];
    case 'filter values': {
      const value = { filterType: 'values', hiddenValues: edit.hidden };
      return [{ type: 'UPDATE_FILTER', sheetId: edit.tabId, row: edit.row, col: edit.column, value }];
    }
    case 'duplicate tab':
      return [{ type: 'DUPLICATE_SHEET', sheetId: edit.tabId, sheetIdTo: edit.newId, sheetNameTo: edit.name }];
    case 'border':
      return borderCommands(edit.tabId, edit.zone, edit.edge, edit.line);
    case 'freeze':
      return [freezeCommand(edit.tabId, edit.axis, edit.count)];
    case 'resize':
      return resizeCommands(edit, context);
    case 'insert':
    case 'delete':
      return [shapeCommand(edit, context)];
    case 'gridlines':
      return [{ type: 'SET_GRID_LINES_VISIBILITY', sheetId: edit.tabId, areGridLinesVisible: edit.visible }];
    case 'tab color':
      return [{ type: 'COLOR_SHEET', sheetId: edit.tabId, color: edit.color ?? undefined }];
    case 'tab visibility':
      return [{ type: edit.visible ? 'SHOW_SHEET' : 'HIDE_SHEET', sheetId: edit.tabId }];
    case 'rename tab':
      return [{ type: 'RENAME_SHEET', sheetId: edit.tabId, newName: edit.name, oldName: context.nameOf(edit.tabId) }];
    case 'delete tab':
      return [{ type: 'DELETE_SHEET', sheetId: edit.tabId, sheetName: context.nameOf(edit.tabId) }];
    case 'validation':
      return [validationCommand(edit.tabId, edit.zones, edit.rule, context)];
    case 'clear validation':
      return clearValidationCommands(edit.tabId, edit.zone, context);
    case 'copy':
      return context.copyCommands(edit);
    case 'conditional formats':
      return conditionalCommands(edit.tabId, edit.rules, context);
    case 'named range':
      return [nameCommand(edit, context)];
    case 'remove named range':
      return [{ type: 'DELETE_NAMED_RANGE', name: edit.name }];
  }
}

function filterCommand({ tabId, zone }: Extract<TabEdit, { kind: 'filter' }>): Command {
  const none = { bandedRows: false, bandedColumns: false, automaticAutofill: false, styleId: 'None' };
  const config = {
    ...none,
    hasFilters: true,
    totalRow: false,
    firstColumn: false,
    lastColumn: false,
    numberOfHeaders: 1,
  };
  const ranges = [{ _sheetId: tabId, _zone: zone }];
  return { type: 'CREATE_TABLE', sheetId: tabId, ranges, tableType: 'static', config };
}

/** Only columns of another width: the engine measures every cell of a column anew. */
function resizeCommands(
  { tabId, axis, first, count, pixels }: Extract<TabEdit, { kind: 'resize' }>,
  { columnWidth }: CommandContext,
): Command[] {
  const elements = Array.from({ length: count }, (_, i) => first + i).filter(
    (index) => axis === 'rows' || columnWidth(tabId, index) !== pixels,
  );
  if (elements.length === 0) return [];
  return [{ type: 'RESIZE_COLUMNS_ROWS', sheetId: tabId, dimension: dimensionOf(axis), elements, size: pixels }];
}

function nameCommand(
  { tabId, zone, name }: Extract<TabEdit, { kind: 'named range' }>,
  context: CommandContext,
): Command {
  const ranges = [{ _sheetId: tabId, _zone: zone }];
  return context.hasNamedRange(name)
    ? { type: 'UPDATE_NAMED_RANGE', oldRangeName: name, newRangeName: name, ranges }
    : { type: 'CREATE_NAMED_RANGE', name, ranges };
}

/** Only the rows or columns that are not so already. */
function hidingCommands(edit: Extract<TabEdit, { kind: 'hide' | 'show' }>, context: CommandContext): Command[] {
  const isHiding = edit.kind === 'hide';
  const elements = Array.from({ length: edit.count }, (_, i) => edit.first + i).filter(
    (index) => context.isHidden(edit.tabId, edit.axis, index) !== isHiding,
  );
  const type = isHiding ? 'HIDE_COLUMNS_ROWS' : 'UNHIDE_COLUMNS_ROWS';
  return elements.length === 0 ? [] : [{ type, sheetId: edit.tabId, dimension: dimensionOf(edit.axis), elements }];
}

function clearCommands(
  tabId: string,
  zone: Zone,
  what: 'all' | 'contents' | 'formats',
  context: CommandContext,
): Command[] {
  const contents: Command[] = everyCellOf(zone).map(({ row, column }) => ({
    type: 'UPDATE_CELL',
    sheetId: tabId,
    row,
    col: column,
    content: '',
  }));
  if (what === 'contents') return contents;
  const formats: Command[] = [
    { type: 'CLEAR_FORMATTING', sheetId: tabId, target: [zone] },
    { type: 'SET_ZONE_BORDERS', sheetId: tabId, target: [zone], border: { position: 'clear' } },
  ];
  if (what === 'formats') return formats;
  return [...contents, ...formats, ...clearValidationCommands(tabId, zone, context)];
}

const EDGES: Readonly<Record<BorderEdge, string>> = {
  left: 'left',
  top: 'top',
  right: 'right',
  bottom: 'bottom',
  'inner vertical': 'v',
  'inner horizontal': 'h',
};

function borderCommands(
  tabId: string,
  zone: Zone,
  edge: BorderEdge,
  line: { readonly style: string; readonly color: string } | null,
): Command[] {
  const inner =
    edge === 'inner vertical' ? zone.left < zone.right : edge !== 'inner horizontal' || zone.top < zone.bottom;
  if (!inner) return [];
  const border = { position: EDGES[edge], style: line?.style, color: line?.color };
  return [{ type: 'SET_ZONE_BORDERS', sheetId: tabId, target: [zone], border }];
}

function freezeCommand(tabId: string, axis: 'rows' | 'columns', count: number): Command {
  const noun = axis === 'rows' ? 'ROWS' : 'COLUMNS';
  if (count === 0) return { type: `UNFREEZE_${noun}`, sheetId: tabId };
  return { type: `FREEZE_${noun}`, sheetId: tabId, quantity: count };
}

function shapeCommand(edit: Extract<TabEdit, { kind: 'insert' | 'delete' }>, context: CommandContext): Command {
  const common = { sheetId: edit.tabId, sheetName: context.nameOf(edit.tabId), dimension: dimensionOf(edit.axis) };
  if (edit.kind === 'delete') {
    const elements = Array.from({ length: edit.count }, (_, i) => edit.first + i);
    return { type: 'REMOVE_COLUMNS_ROWS', ...common, elements };
  }
  // New rows stand before `first`; the engine names the row they follow, and there is none before the top one.
  const place = edit.first === 0 ? { base: 0, position: 'before' } : { base: edit.first - 1, position: 'after' };
  return { type: 'ADD_COLUMNS_ROWS', ...common, ...place, quantity: edit.count };
}

function validationCommand(
  tabId: string,
  zones: readonly Zone[],
  rule: ValidationRule,
  context: CommandContext,
): Command {
  const ranges = zones.map((zone) => ({ _sheetId: tabId, _zone: zone }));
  const written = { id: context.newId(), criterion: criterionOf(rule.criterion), isBlocking: rule.isBlocking };
  return { type: 'ADD_DATA_VALIDATION_RULE', sheetId: tabId, ranges, rule: written };
}

/** A rule that reaches beyond the zone is kept for what lies outside. */
function clearValidationCommands(tabId: string, zone: Zone, context: CommandContext): Command[] {
  return context
    .validationsIn(tabId, zone)
    .map(({ rule, rest }) =>
      rest.length === 0
        ? { type: 'REMOVE_DATA_VALIDATION_RULE', sheetId: tabId, id: rule.id }
        : { type: 'ADD_DATA_VALIDATION_RULE', sheetId: tabId, ranges: rest, rule },
    );
}

function criterionOf(criterion: ValidationRule['criterion']): Record<string, unknown> {
  switch (criterion.type) {
    case 'checkbox':
      return { type: 'isBoolean', values: [] };
    case 'list':
      return { type: 'isValueInList', values: [...criterion.values], displayStyle: 'arrow' };
    case 'number between':
      return { type: 'isBetween', values: [String(criterion.from), String(criterion.to)] };
  }
}

function conditionalCommands(tabId: string, rules: readonly ConditionalRule[], context: CommandContext): Command[] {
  const removals: Command[] = context
    .conditionalFormatIds(tabId)
    .map((id) => ({ type: 'REMOVE_CONDITIONAL_FORMAT', sheetId: tabId, id }));
  const additions: Command[] = rules.map((rule) => ({
    type: 'ADD_CONDITIONAL_FORMAT',
    sheetId: tabId,
    cf: {
      id: context.newId(),
      rule: { type: 'CellIsRule', operator: 'customFormula', values: [rule.formula], style: rule.look },
    },
    ranges: rule.zones.map((zone) => ({ _sheetId: tabId, _zone: zone })),
  }));
  return [...removals, ...additions];
}

function dimensionOf(axis: 'rows' | 'columns'): 'ROW' | 'COL' {
  return axis === 'rows' ? 'ROW' : 'COL';
}
