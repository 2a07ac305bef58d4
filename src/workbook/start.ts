/**
 * `npm start`: builds the add-on and serves the workbooks of a folder as a page, the last one first or the one named.
 * `--print` does the main job headless instead: fills the cut list of the demo's living room and prints it.
 */
import { builtAddOn } from './builtAddOn';
import { printDemo } from './printDemo';
import { servePage } from './server';
import { nodeDisk } from './shelf/disk';
import { openKeeper } from './shelf/keeper';
import { findGiven, folderFrom, portFrom, readArguments, runningAt, servedNotes } from './startArguments';

try {
  await start();
} catch (failure) {
  console.error((failure as Error).message);
  process.exitCode = 1;
}

async function start(): Promise<void> {
  const wanted = readArguments(process.argv.slice(2));
  if (wanted.print) return printDemo(await builtAddOn());
  const port = portFrom(process.env);
  const folder = folderFrom(wanted, process.env);
  const given = await findGiven(nodeDisk, folder, wanted.workbook);
  const running = await runningAt(nodeDisk, folder);
  if (running !== '') {
    console.log(`The workbooks in ${folder} are open already: ${running}${given.query}`);
    if (given.file) console.log('Bring the file in there: press Bring in .xlsx, or drop the file on the page.');
    return;
  }
  const keeper = await openKeeper({ disk: nodeDisk, folder, now: () => new Date(), given: given.file });
  const server = await servePage(await builtAddOn(), port, keeper);
  await keeper.setAddress(server.address);
  console.log(`Your workbooks lie in ${folder}.`);
  for (const note of servedNotes(port, server.address, process.env, process.platform)) console.log(note);
  console.log(`Open this address in a browser: ${server.address}${given.query}  (stop with Ctrl+C)`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, async () => {
      await server.close();
      await keeper.setAddress('');
      process.exit(0);
    });
  }
}
