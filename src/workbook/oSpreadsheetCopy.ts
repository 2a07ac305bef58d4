/** A range copied onto another of the same size: contents, formats, looks and borders. */
import type * as Library from '@odoo/o-spreadsheet';
import type { Zone } from './engine';
import type { Command } from './oSpreadsheetCommands';

export type SpreadsheetLibrary = typeof Library;
/** A workbook as the embedded spreadsheet holds it. */
export type SpreadsheetModel = InstanceType<SpreadsheetLibrary['Model']>;

interface Place {
  readonly tabId: string;
  readonly zone: Zone;
}

/** Commands for the cells that differ: a sheet is mostly blank on both sides. */
export function copyCommands(model: SpreadsheetModel, from: Place, to: Place): Command[] {
  const down = to.zone.top - from.zone.top;
  const right = to.zone.left - from.zone.left;
  const commands: Command[] = [];
  // Two places for all cells: there are 26,000 in an ordinary tab.
  const source = { sheetId: from.tabId, row: 0, col: 0 };
  const target = { sheetId: to.tabId, row: 0, col: 0 };
  for (source.row = from.zone.top; source.row <= from.zone.bottom; source.row++) {
    target.row = source.row + down;
    for (source.col = from.zone.left; source.col <= from.zone.right; source.col++) {
      target.col = source.col + right;
      const copied = cellCopy(model, source, target, right, down);
      if (copied) commands.push(copied);
      const border = borderCopy(model, source, target);
      if (border) commands.push(border);
    }
  }
  return commands;
}

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

function cellCopy(
  model: SpreadsheetModel,
  source: Position,
  target: Position,
  right: number,
  down: number,
): Command | null {
  const cell = model.getters.getCell(source);
  const before = model.getters.getCell(target);
  if (!cell && !before) return null;
  if (cell && before && isSame(cell, before)) return null;
  const content = !cell
    ? ''
    : cell.isFormula
      ? model.getters.getTranslatedCellFormula(source.sheetId, right, down, cell.compiledFormula)
      : cell.content;
  return { type: 'UPDATE_CELL', ...target, content, style: cell?.style ?? null, format: cell?.format ?? '' };
}

type LibraryCell = NonNullable<ReturnType<SpreadsheetModel['getters']['getCell']>>;

/** A formula is always copied: the same text may point elsewhere. */
function isSame(a: LibraryCell, b: LibraryCell): boolean {
  if (a.isFormula || b.isFormula || a.content !== b.content || (a.format ?? '') !== (b.format ?? '')) return false;
  if (a.style === b.style) return true;
  const [style = {}, other = {}] = [a.style, b.style];
  const names = Object.keys(style) as (keyof typeof style)[];
  return names.length === Object.keys(other).length && names.every((name) => style[name] === other[name]);
}

function borderCopy(model: SpreadsheetModel, source: Position, target: Position): Command | null {
  const border = model.getters.getCellBorder(source) ?? undefined;
  const before = model.getters.getCellBorder(target) ?? undefined;
  return border || before ? { type: 'SET_BORDER', ...target, border } : null;
}
