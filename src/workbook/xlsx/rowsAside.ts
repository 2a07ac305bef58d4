/**
 * Rows of a tab's part that are right as the engine writes them: a drawing has thousands of cells that need nothing, and
 * taking them apart and putting them together again would be most of the work of a file.
 */
import type { OSpreadsheetEngine } from '../oSpreadsheetEngine';
import { placeIn } from './addresses';

const ROW = /<row r="(\d+)"[^>]*?(?:\/>|>[\s\S]*?<\/row>)/g;

export interface RowsAside {
  /** The part without those rows. */
  readonly xml: string;
  /** Texts of the rows, by their numbers from 1. */
  readonly rows: ReadonlyMap<number, string>;
}

/** Takes out the rows with a height of their own, without boxes and without what formulas answer. */
export function rowsAside(xml: string, engine: OSpreadsheetEngine, tabId: string): RowsAside {
  const rows = new Map<number, string>();
  const isAnswer = (address: string) => {
    const { row, column } = placeIn(address);
    if (engine.formula(tabId, row, column) !== '') return true;
    return engine.model.getters.getArrayFormulaSpreadingOn({ sheetId: tabId, row, col: column }) !== undefined;
  };
  const rest = xml.replace(ROW, (row, number) => {
    const cells = [...row.matchAll(/<c r="([A-Z]+\d+)"/g)];
    const isRight = /^<row [^>]*\bht="/.test(row) && !/ t="b"/.test(row) && !cells.some(([, at = '']) => isAnswer(at));
    if (isRight) rows.set(Number(number), row);
    return isRight ? '' : row;
  });
  return { xml: rest, rows };
}

/** The part with those rows in their places. */
export function withRowsAside(xml: string, aside: ReadonlyMap<number, string>): string {
  if (aside.size === 0) return xml;
  const rows = new Map(aside);
  for (const [row, number] of xml.matchAll(ROW)) rows.set(Number(number), row);
  const inOrder = [...rows].sort(([a], [b]) => a - b).map(([, row]) => row);
  return xml.replace(
    /<sheetData\s*\/>|<sheetData>[\s\S]*<\/sheetData>/,
    () => `<sheetData>${inOrder.join('')}</sheetData>`,
  );
}
