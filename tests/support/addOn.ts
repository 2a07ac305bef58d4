/**
 * The files of the add-on as the sources build them now: built once for both workers, the programs they start and later
 * runs, until a source changes. `tests/globals.test.ts` builds them anew and compares.
 */
import { keptAddOn } from '../../src/workbook/builtAddOn';

let files: ReturnType<typeof keptAddOn> | undefined;

export function addOnFiles(): ReturnType<typeof keptAddOn> {
  files ??= keptAddOn();
  return files;
}
