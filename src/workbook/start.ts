/** `npm start`: builds the add-on, runs it headless on the demo, prints a cut list, and serves the page. */
import { join } from 'node:path';
import { buildAddOn, projectFolder } from '../build.mjs';
import { fillDemo } from './demo';
import { addOnOf, createNodeWorkbook } from './nodeWorkbook';
import { servePage } from './server';
import { textTable } from './textTable';

const PORT = 8600;

const files = await buildAddOn(join(projectFolder, 'dist'));

const workbook = createNodeWorkbook(addOnOf(files));
fillDemo(workbook);
console.log(textTable(workbook.spreadsheetApp.getActiveSheet().getDataRange().getDisplayValues()));

if (!process.argv.includes('--print')) {
  const { address } = await servePage(files, PORT);
  console.log(`\nThe workbook with the add-on is at ${address}  (stop with Ctrl+C)`);
}
