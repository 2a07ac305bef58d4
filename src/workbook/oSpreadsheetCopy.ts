/** A range copied onto another of the same size: contents, formats, looks and borders. */
import type { Zone } from './engine';
import { everyCellOf } from './oSpreadsheetCells';
import type { Command } from './oSpreadsheetCommands';
import type { SpreadsheetModel } from './oSpreadsheetEngine';

interface Place {
  readonly tabId: string;
  readonly zone: Zone;
}

/** Commands for the cells that differ: a sheet is mostly blank on both sides. */
export function copyCommands(model: SpreadsheetModel, from: Place, to: Place): Command[] {
  const down = to.zone.top - from.zone.top;
  const right = to.zone.left - from.zone.left;
  return everyCellOf(from.zone).flatMap(({ row, column }) => {
    const source = { sheetId: from.tabId, row, col: column };
    const target = { sheetId: to.tabId, row: row + down, col: column + right };
    return [...cellCopy(model, source, target, right, down), ...borderCopy(model, source, target)];
  });
}

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

function cellCopy(model: SpreadsheetModel, source: Position, target: Position, right: number, down: number): Command[] {
  const cell = model.getters.getCell(source);
  if (!cell && !model.getters.getCell(target)) return [];
  const content = !cell
    ? ''
    : cell.isFormula
      ? model.getters.getTranslatedCellFormula(source.sheetId, right, down, cell.compiledFormula)
      : cell.content;
  return [{ type: 'UPDATE_CELL', ...target, content, style: cell?.style ?? null, format: cell?.format ?? '' }];
}

function borderCopy(model: SpreadsheetModel, source: Position, target: Position): Command[] {
  const border = model.getters.getCellBorder(source) ?? undefined;
  const before = model.getters.getCellBorder(target) ?? undefined;
  return border || before ? [{ type: 'SET_BORDER', ...target, border }] : [];
}
