/** Cell edits that wait, the later laid over the earlier of the same cell, and the commands that carry them out. */
import { withoutDoubledQuotes } from './doubledQuotes';
import type { CellEdit, CellLook, Zone } from './engine';
import { type LibraryStyle, writeStyle } from './oSpreadsheetCells';
import type { Command } from './oSpreadsheetCommands';
import type { SpreadsheetModel } from './oSpreadsheetCopy';

/** More columns than any tab has: a place in a tab is one whole number. */
const MOST_COLUMNS = 1 << 15;

type Waiting = { -readonly [Key in keyof CellEdit]: CellEdit[Key] } & { look: CellLook };

export interface WaitingEdits {
  add(edit: CellEdit): void;
  at(tabId: string, row: number, column: number): CellEdit | undefined;
  /** Everything that waits, in the order in which it came; nothing waits then. */
  taken(): readonly CellEdit[];
}

/** A tab of 14,000 cells is written by eight calls: each edit is laid over the one that waits, in place. */
export function waitingEdits(): WaitingEdits {
  const tabs = new Map<string, Map<number, Waiting>>();
  return {
    add(edit) {
      const cells = tabs.get(edit.tabId) ?? new Map<number, Waiting>();
      tabs.set(edit.tabId, cells);
      const place = edit.row * MOST_COLUMNS + edit.column;
      const before = cells.get(place);
      if (!before) {
        cells.set(place, { ...edit, look: { ...edit.look } });
        return;
      }
      if (edit.content !== undefined) before.content = edit.content;
      if (edit.format !== undefined) before.format = edit.format;
      if (edit.look) Object.assign(before.look, edit.look);
    },
    at: (tabId, row, column) => tabs.get(tabId)?.get(row * MOST_COLUMNS + column),
    taken() {
      if (tabs.size === 0) return [];
      const edits = [...tabs.values()].flatMap((cells) => [...cells.values()]);
      tabs.clear();
      return edits;
    },
  };
}

/**
 * A command for each cell that gets a content; cells that only get the same look and format share one. Those come first:
 * after each the engine measures the rows anew, and texts take long to measure.
 */
export function cellCommands(model: SpreadsheetModel, edits: readonly CellEdit[]): Command[] {
  const commands: Command[] = [];
  const painted = new Map<
    string,
    { readonly sheetId: string; readonly target: Zone[]; readonly [key: string]: unknown }
  >();
  for (const edit of edits) {
    const place = { sheetId: edit.tabId, row: edit.row, col: edit.column };
    const cell = model.getters.getCell(place);
    const look = edit.look ?? {};
    const hasLook = Object.keys(look).length > 0;
    if (cell || edit.content) {
      commands.push(cellCommand(edit, place, hasLook ? writeStyle(cell?.style as LibraryStyle, look) : null));
      continue;
    }
    const style = hasLook ? writeStyle(undefined, look) : undefined;
    const key = JSON.stringify([edit.tabId, edit.format, style]);
    const known = painted.get(key) ?? {
      sheetId: edit.tabId,
      target: [],
      ...(style ? { style } : {}),
      ...(edit.format ? { format: edit.format } : {}),
    };
    painted.set(key, known);
    addCell(known.target, edit.row, edit.column);
  }
  const isSeen = ({ style, format }: { readonly [key: string]: unknown }) =>
    style !== undefined || format !== undefined;
  const paints = [...painted.values()].filter(isSeen).map((paint) => ({ type: 'SET_FORMATTING', ...paint }));
  return [...paints, ...commands];
}

function cellCommand(edit: CellEdit, place: object, style: LibraryStyle | null): Command {
  return {
    type: 'UPDATE_CELL',
    ...place,
    ...(style === null ? {} : { style }),
    ...(edit.format === undefined ? {} : { format: edit.format }),
    ...(edit.content === undefined ? {} : { content: withoutDoubledQuotes(edit.content) }),
  };
}

/** Cells come row by row: one beside the last makes its zone wider. */
function addCell(zones: Zone[], row: number, column: number): void {
  const last = zones[zones.length - 1];
  if (last && last.top === row && last.right === column - 1) zones[zones.length - 1] = { ...last, right: column };
  else zones.push({ top: row, bottom: row, left: column, right: column });
}
