/**
 * `npm start`: builds the add-on, does the main job headless (fills the cut list of the demo's living room and prints
 * it), and serves the same workbook as a page. `--print` stops after printing.
 */
import { join } from 'node:path';
import { buildAddOn, projectFolder } from '../build.mjs';
import { fillCutList } from '../tabs/roomTabs';
import { takeoff } from '../takeoff/takeoff';
import { fillDemo } from './demo';
import { DEMO_ROOM } from './demoRoom';
import { addOnOf, createNodeWorkbook } from './nodeWorkbook';
import { servePage } from './server';
import { textTable } from './textTable';
import { storeOf } from './workbookStore';

const PORT = 8600;
/** Set by hosts that give out a port. */
const port = Number(process.env.PORT ?? PORT);

const { files } = await buildAddOn(join(projectFolder, 'dist'));
const workbook = createNodeWorkbook(addOnOf(files));
fillDemo(workbook);
await printCutList();
if (!process.argv.includes('--print')) {
  const { address } = await servePage(files, port);
  console.log(`\nThe workbook with the add-on beside it: ${address}  (stop with Ctrl+C)`);
}

async function printCutList(): Promise<void> {
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
