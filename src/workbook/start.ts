/**
 * `npm start`: builds the add-on, does the main job headless (fills the cut list of the demo's living room and prints
 * it), and serves the same workbook as a page. `--print` stops after printing.
 */
import { join } from 'node:path';
import { buildAddOn, projectFolder } from '../build.mjs';
import { fillDemo } from './demo';
import { DEMO_ROOM } from './demoRoom';
import { addOnOf, createNodeWorkbook } from './nodeWorkbook';
import { servePage } from './server';
import { textTable } from './textTable';

const PORT = 8600;
/** Set by hosts that give out a port. */
const port = Number(process.env.PORT ?? PORT);

const files = await buildAddOn(join(projectFolder, 'dist'));
const workbook = createNodeWorkbook(addOnOf(files));
fillDemo(workbook);
printCutList();
if (!process.argv.includes('--print')) {
  const { address } = await servePage(files, port);
  console.log(`\nThe workbook with the add-on beside it: ${address}  (stop with Ctrl+C)`);
}

function printCutList(): void {
  const filled = workbook.runFromPage('fillCutList', [DEMO_ROOM]) as FilledTab;
  const sheet = workbook.spreadsheetApp.getActiveSpreadsheet().getSheetByName(filled.tab);
  if (!sheet) throw new Error(`The cut list could not be filled: ${filled.problems.map(({ text }) => text).join(' ')}`);
  const rows = sheet.getDataRange().getDisplayValues();
  console.log(textTable(rows.map((row) => row.map(boxed))));
}

/** A box to tick, as it looks on paper. */
function boxed(cell: string): string {
  return { TRUE: '[x]', FALSE: '[ ]' }[cell] ?? cell;
}

/** The part of the script's answer that is needed here. */
interface FilledTab {
  readonly tab: string;
  readonly problems: readonly { readonly text: string }[];
}
