/** The main job without a page: the cut list of the demo's living room, filled and printed. */
import { fillCutList } from '../tabs/roomTabs';
import { takeoff } from '../takeoff/takeoff';
import { fillDemo } from './demo';
import { DEMO_ROOM } from './demoRoom';
import { addOnOf, createNodeWorkbook } from './nodeWorkbook';
import { textTable } from './textTable';
import { storeOf } from './workbookStore';

export async function printDemo(files: Parameters<typeof addOnOf>[0]): Promise<void> {
  const workbook = createNodeWorkbook(addOnOf(files));
  fillDemo(workbook);
  const result = takeoff(DEMO_ROOM);
  if (result.status === 'problems') throw new Error(result.problems.map(({ text }) => text).join(' '));
  const filled = await fillCutList(storeOf(workbook), result.takeoff);
  const sheet = filled && workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(filled.tab);
  if (!sheet) throw new Error('Internal: the cut list of the demo room was not filled.');
  const rows = sheet.getDataRange().getDisplayValues();
  console.log(textTable(rows.map((row) => row.map(boxed))));
}

/** A box to tick, as it looks on paper. */
function boxed(cell: string): string {
  return { TRUE: '[x]', FALSE: '[ ]' }[cell] ?? cell;
}
