import { createNodeWorkbook, type NodeWorkbookOptions } from '../../src/workbook/nodeWorkbook';
import { PROBE_SCRIPT } from './probeScript';

/** A workbook with the probe script in place of the add-on, and short ways to type and read. */
export function probeWorkbook(options: NodeWorkbookOptions = {}) {
  const workbook = createNodeWorkbook({ code: PROBE_SCRIPT, pages: { Sidebar: '<p>page</p>' } }, options);
  const spreadsheet = workbook.spreadsheetApp.getActiveSpreadsheet();
  const sheet = spreadsheet.getActiveSheet();
  return {
    workbook,
    spreadsheet,
    sheet,
    /** Types into a cell and gives what stands there then. */
    typed(a1: string, text: string | number) {
      sheet.getRange(a1).setValue(text);
      return sheet.getRange(a1).getValue();
    },
    /** What a formula in H1 answers. */
    answer(formula: string) {
      sheet.getRange('H1').setFormula(formula);
      return sheet.getRange('H1').getValue();
    },
    /** What a person sees when pointing at a cell. */
    message(a1: string) {
      const range = sheet.getRange(a1);
      const tab = workbook.engine.tabs().find(({ name }) => name === sheet.getName());
      return workbook.engine.cell(tab?.id ?? '', range.getRow() - 1, range.getColumn() - 1).message;
    },
  };
}
